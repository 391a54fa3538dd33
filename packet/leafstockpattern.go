package packet

import (
	"fmt"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// Room about one pattern of cuts.
const (
	titleHigh    paper.Length = 7
	boxPitch                  = paper.TickBoxSide + 1.6
	boxFives     paper.Length = 2.4 // more between fives
	boxesInRow                = 20
	namesAtPiece paper.Length = 75 // longest names that stand at their piece; longer ones stand below
)

// cutPicture is a pattern of cuts: which sticks, a box to tick for each, one of them drawn to scale, the names to write.
type cutPicture struct {
	title, names string
	count        int // of sticks cut so
	stick        draw.Stick
	scale        paper.Scale
}

// cutPicture readies a pattern; useful is the least length of an offcut worth keeping, trial says that other ridge pieces wait for the first.
func (b *binder) cutPicture(p pattern, scale paper.Scale, useful measure.Length, trial bool) cutPicture {
	c := cutPicture{title: p.title(b.spec.Units), count: len(p.bars), scale: scale, stick: draw.Stick{Bar: p.bars[0], Units: b.spec.Units, Under: p.spans(true, trial)}}
	if p.bars[0].Offcut >= useful {
		c.stick.Keep = true
	}
	for _, span := range c.stick.Under {
		if paper.Body.Width(span.Text) > namesAtPiece {
			c.stick.Under, c.names = p.spans(false, trial), "Names: "+p.names()+"."
			break
		}
	}
	return c
}

// boxes returns the title as it stands before its boxes, and how many they are: one a stick, or one for so many sticks where those would not fit behind it.
func (c cutPicture) boxes(width paper.Length) (title string, count int) {
	title, count = c.title, c.count
	for _, each := range []int{5, 10, 25, 50, 100} {
		if paper.Strong.Width(title)+boxesWidth(count)+4 <= width {
			break
		}
		title, count = fmt.Sprintf("%s, a box for %d", c.title, each), (c.count+each-1)/each
	}
	return title, count
}

// Height implements block.Body.
func (c cutPicture) Height(width paper.Length) paper.Length {
	h := titleHigh + c.stick.Height(c.scale, width)
	if c.names != "" {
		h += block.Words{Text: c.names}.Height(width)
	}
	return h
}

// Draw implements block.Body.
func (c cutPicture) Draw(page *paper.Page, box paper.Rect) []string {
	top, box := box.SplitTop(titleHigh)
	title, count := c.boxes(top.W)
	page.Text(paper.Point{X: top.X, Y: top.Y + 5.2}, paper.AtLeft, title, paper.Strong)
	boxesToTick(page, paper.Point{X: top.Right() - boxesWidth(count), Y: top.Y + 0.6}, count)
	box = c.stick.Draw(page, box, c.scale)
	if c.names != "" {
		block.Words{Text: c.names}.Draw(page, box)
	}
	return nil
}

// boxesWidth returns the width of a row of tick boxes.
func boxesWidth(n int) paper.Length {
	return paper.Length(n)*boxPitch + paper.Length((n-1)/5)*boxFives - (boxPitch - paper.TickBoxSide) + 0.7
}

// boxesToTick draws tick boxes in fives.
func boxesToTick(page *paper.Page, at paper.Point, n int) {
	for i := range n {
		page.TickBox(at)
		at.X += boxPitch
		if i%5 == 4 {
			at.X += boxFives
		}
	}
}

// facts declares the figures on the drawing.
func (p pattern) facts(u measure.System) []block.Fact {
	bar := p.bars[0]
	what := fmt.Sprintf("cut %d, ", p.number)
	list := []block.Fact{{What: what + "stick", Value: bar.Size(u)}}
	for i, piece := range bar.Pieces {
		list = append(list, block.Fact{What: fmt.Sprintf("%spiece %d", what, i+1), Value: u.Cut(piece.Length)}, block.Fact{What: fmt.Sprintf("%ssaw mark %d", what, i+1), Value: u.Cut(piece.Mark)})
	}
	return list
}
