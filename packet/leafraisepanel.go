package packet

import (
	"fmt"
	"slices"

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
	small  bool // words at the least size, where room is short
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
	if p.small {
		list[0].Lettering = paper.Floor
	}
	if p.off != "" {
		list = append(list, block.Words{Text: p.off, Lettering: paper.Floor, Figures: paper.CellSmall})
	}
	return list
}

// Tight implements block's tighter.
func (p panel) Tight(t block.Tightness) block.Body {
	p.small = t == block.Tightest
	return p
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

// panelRow is panels beside each other, of one width; tightly set, who has more to say takes of the other's.
type panelRow struct {
	block.Columns
	level bool
}

// Tight implements block's tighter.
func (r panelRow) Tight(t block.Tightness) block.Body {
	return panelRow{r.Columns.Tight(t).(block.Columns), len(r.Cols) > 1}
}

// at is the row at a width: as low as it can be, the panels no more apart in width than that takes.
func (r panelRow) at(width paper.Length) block.Columns {
	const most, step = 14, 1 // that one gives the other, in hundredths of the row
	best := r.Columns
	for by := step; r.level && by <= most; by += step {
		for _, way := range [2]int{by, -by} {
			trial := r.Columns
			trial.Cols = slices.Clone(r.Cols)
			trial.Cols[0].Share, trial.Cols[1].Share = float64(50+way), float64(50-way)
			if trial.Height(width) < best.Height(width) {
				best = trial
			}
		}
	}
	return best
}

// Height implements block.Body.
func (r panelRow) Height(width paper.Length) paper.Length { return r.at(width).Height(width) }

// Most implements block's grower.
func (r panelRow) Most(width paper.Length) paper.Length { return r.at(width).Most(width) }

// Draw implements block.Body.
func (r panelRow) Draw(page *paper.Page, box paper.Rect) []string { return r.at(box.W).Draw(page, box) }

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
		list = append(list, block.Block{Name: fmt.Sprintf("pictures from %d on", panels[0].number), Gap: 1.4, Body: panelRow{Columns: row}, Facts: facts})
		panels = panels[n:]
	}
	return list
}
