package packet

import (
	"fmt"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
)

// panel is one picture of an order of work: its number over a box to tick, the picture, and beside it what to do and what to do if it does not come out.
type panel struct {
	number int
	do     string // with its figures marked
	off    string // empty for none
	hold   bool
	facts  []block.Fact
	paint  func(page *paper.Page, room paper.Rect) (missing []string)
}

// Room in a panel.
const (
	panelLeast  paper.Length = 30  // its height
	panelMost   paper.Length = 46  // beyond it a picture gains nothing
	panelWide   paper.Length = 35  // of the picture
	panelMargin paper.Length = 7.8 // left of the picture: the number over the box to tick
	panelInset  paper.Length = 1.1
	panelGap    paper.Length = 1.8 // from the picture to the words
)

func (p panel) words() []block.Words {
	list := []block.Words{{Text: p.do}}
	if p.off != "" {
		list = append(list, block.Words{Text: p.off, Lettering: paper.Floor, Figures: paper.CellSmall})
	}
	return list
}

// Height implements block.Body.
func (p panel) Height(width paper.Length) paper.Length {
	h := 2 * panelInset
	for _, w := range p.words() {
		h += w.Height(width - 2*panelInset - panelMargin - panelWide - panelGap)
	}
	return max(h, panelLeast)
}

// Most lets the picture take room that is left over.
func (p panel) Most(width paper.Length) paper.Length { return max(p.Height(width), panelMost) }

// Draw implements block.Body.
func (p panel) Draw(page *paper.Page, box paper.Rect) (missing []string) {
	pen := paper.Thin
	if p.hold {
		pen = paper.Emphasis
	}
	page.Stroke(paper.Box(box), pen)
	in := box.Inset(panelInset)
	margin, rest := in.SplitLeft(panelMargin)
	picture, words := rest.SplitLeft(panelWide)
	number := paper.StakeName
	if p.number > 9 {
		number = paper.Cell
	}
	page.Text(paper.Point{X: margin.X + 3.2, Y: in.Y + 5.4}, paper.AtMiddle, fmt.Sprint(p.number), number)
	page.TickBox(paper.Point{X: margin.X + 0.35, Y: in.Y + 7.6})
	missing = p.paint(page, picture)
	_, words = words.SplitLeft(panelGap)
	y := words.Y
	for _, w := range p.words() {
		w.Draw(page, paper.Rect{X: words.X, Y: y, W: words.W})
		y += w.Height(words.W)
	}
	return missing
}

// panelRows sets panels two in a row.
func panelRows(panels []panel) []block.Block {
	const across = 2
	var list []block.Block
	for i := 0; i < len(panels); i += across {
		row := block.Columns{Gap: 1.6}
		var facts []block.Fact
		for k := range across {
			col := block.Column{Share: 1}
			if i+k < len(panels) {
				col.Blocks = []block.Block{{Name: fmt.Sprintf("picture %d", panels[i+k].number), Body: panels[i+k]}}
				facts = append(facts, panels[i+k].facts...)
			}
			row.Cols = append(row.Cols, col)
		}
		list = append(list, block.Block{Name: fmt.Sprintf("pictures from %d on", panels[i].number), Gap: 1.4, Body: row, Facts: facts})
	}
	return list
}
