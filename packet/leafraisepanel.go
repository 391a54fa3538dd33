package packet

import (
	"fmt"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
)

// panel is one picture of an order of work: its number over a box to tick, the picture, and beside it what to do and what to do if it does not come out.
type panel struct {
	action crew.Action // what is told in it
	number int
	large  bool   // over the whole width, its picture over half of it
	do     string // with its figures marked
	off    string // empty for none
	hold   bool
	facts  []block.Fact
	paint  func(page *paper.Page, room paper.Rect)
}

// Room in a panel.
const (
	panelLeast  paper.Length = 30  // its height
	panelMost   paper.Length = 46  // beyond it a picture gains nothing
	panelWide   paper.Length = 35  // of the picture
	panelMargin paper.Length = 7.8 // left of the picture: the number over the box to tick
	panelInset  paper.Length = 1.1
	panelGap    paper.Length = 1.8 // from the picture to the words
	largeLeast  paper.Length = 48
	largeMost   paper.Length = 80
	largeWide   paper.Length = 95
)

// size is the width of the picture, and the least and the greatest height that it is worth.
func (p panel) size() (wide, least, most paper.Length) {
	if p.large {
		return largeWide, largeLeast, largeMost
	}
	return panelWide, panelLeast, panelMost
}

func (p panel) words() []block.Words {
	list := []block.Words{{Text: p.do}}
	if p.off != "" {
		list = append(list, block.Words{Text: p.off, Lettering: paper.Floor, Figures: paper.CellSmall})
	}
	return list
}

// Height implements block.Body.
func (p panel) Height(width paper.Length) paper.Length {
	wide, least, _ := p.size()
	h := 2 * panelInset
	for _, w := range p.words() {
		h += w.Height(width - 2*panelInset - panelMargin - wide - panelGap)
	}
	return max(h, least)
}

// Most lets the picture take room that is left over.
func (p panel) Most(width paper.Length) paper.Length {
	_, _, most := p.size()
	return max(p.Height(width), most)
}

// Draw implements block.Body.
func (p panel) Draw(page *paper.Page, box paper.Rect) []string {
	pen := paper.Thin
	if p.hold {
		pen = paper.Emphasis
	}
	page.Stroke(paper.Box(box), pen)
	in := box.Inset(panelInset)
	margin, rest := in.SplitLeft(panelMargin)
	wide, _, _ := p.size()
	picture, words := rest.SplitLeft(wide)
	number := paper.StakeName
	if p.number > 9 {
		number = paper.Cell
	}
	page.Text(paper.Point{X: margin.X + 3.2, Y: in.Y + 5.4}, paper.AtMiddle, fmt.Sprint(p.number), number)
	page.TickBox(paper.Point{X: margin.X + 0.35, Y: in.Y + 7.6})
	p.paint(page, picture)
	_, words = words.SplitLeft(panelGap)
	y := words.Y
	for _, w := range p.words() {
		w.Draw(page, paper.Rect{X: words.X, Y: y, W: words.W})
		y += w.Height(words.W)
	}
	return nil
}

// panelRows sets panels two in a row, save those that take a whole one.
func panelRows(panels []panel) []block.Block {
	const across = 2
	var list []block.Block
	for len(panels) > 0 {
		n := 1
		for n < across && n < len(panels) && !panels[0].large && !panels[n].large {
			n++
		}
		row := block.Columns{Gap: 1.6}
		var facts []block.Fact
		for _, p := range panels[:n] {
			row.Cols = append(row.Cols, block.Column{Share: 1, Blocks: []block.Block{{Name: fmt.Sprintf("picture %d", p.number), Body: p}}})
			facts = append(facts, p.facts...)
		}
		list = append(list, block.Block{Name: fmt.Sprintf("pictures from %d on", panels[0].number), Gap: 1.4, Body: row, Facts: facts})
		panels = panels[n:]
	}
	return list
}
