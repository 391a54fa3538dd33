package packet

import (
	"fmt"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
	"hoopwright/layout/stock"
)

// Room about one pattern of cuts.
const (
	titleHigh    paper.Length = 7
	titleRise    paper.Length = 5.8 // of a title beside the figures, from the stick up
	boxGap       paper.Length = 1.6
	boxPitch                  = paper.TickBoxSide + boxGap
	namesAtPiece paper.Length = 75 // longest names that stand at their piece; longer ones stand below
)

// cutPicture is a pattern of cuts: which sticks, a box to tick for each, two where some of its pieces are cut later, one of them drawn to scale, the names to write.
type cutPicture struct {
	title, names string
	count        int // of sticks cut so
	twice        bool
	stick        draw.Stick
	scale        paper.Scale
	close        bool // title and boxes stand at the right of the stick where there is room
}

// newCutPicture readies a pattern but for its scale; keep is that the offcut is worth keeping, trial that others wait for the first.
func newCutPicture(p pattern, u measure.System, keep, trial bool) cutPicture {
	c := cutPicture{title: p.title(u), count: len(p.bars), stick: draw.Stick{Bar: p.bars[0], Units: u, Under: p.spans(true, trial), Keep: keep}}
	waits := func(id stock.PieceID) bool { return trial && id.Ridge() && !id.Trial() } // and stands behind what does not
	pieces := p.bars[0].Pieces
	c.twice = !waits(pieces[0].ID) && waits(pieces[len(pieces)-1].ID)
	for _, span := range c.stick.Under {
		if paper.Body.Width(span.Text) > namesAtPiece {
			c.stick.Under, c.names = p.spans(false, trial), "Names: "+p.names()+"."
			break
		}
	}
	return c
}

// boxes returns the title as it stands before its boxes, and how many they are: one a stick, behind the title or in a row of their own; one for so
// many sticks where even that were too many.
func (c cutPicture) boxes(width paper.Length) (title string, count int) {
	title, count = c.title, c.count
	for _, each := range []int{2, 5, 10, 25, 50, 100} {
		if c.boxed(count) <= width {
			break
		}
		title, count = fmt.Sprintf("%s, a box for %d", c.title, each), (c.count+each-1)/each
	}
	return title, count
}

// boxed is how wide so many boxes stand, with their words where they are for two cuts.
func (c cutPicture) boxed(count int) (wide paper.Length) {
	for _, word := range c.turns() {
		wide += paper.Body.Width(word) + paper.Length(count)*boxPitch
	}
	return wide
}

// turns are the words before a pattern's boxes: none where all of it is cut at once.
func (c cutPicture) turns() []string {
	if c.twice {
		if c.stick.Bar.Pieces[0].ID.Trial() {
			return []string{"first  ", "  wait  "}
		}
		return []string{"now  ", "  wait  "}
	}
	return []string{""}
}

// cutHead is where a pattern's title and boxes stand, from the picture's top left corner.
type cutHead struct {
	high  paper.Length // free above the stick
	align paper.Align
	title paper.Point // its baseline
	boxes paper.Point
}

// head finds the place of title and boxes: above the stick, the boxes behind the title or in a row of their own; close, at the stick's right.
func (c cutPicture) head(width paper.Length) cutHead {
	title, count := c.boxes(width)
	long, wide := paper.Strong.Width(title), c.boxed(count)
	if c.close {
		if h, ok := c.atRight(width, long, wide); ok {
			return h
		}
	}
	h := cutHead{high: titleHigh, title: paper.Point{Y: 5.2}, boxes: paper.Point{X: width - wide + boxGap - 0.35, Y: 0.6}}
	if long+wide+4 > width {
		h.high, h.boxes = titleHigh+boxPitch, paper.Point{X: 0.35, Y: titleHigh}
	}
	return h
}

// atRight finds the place at the stick's right: the title beside the figures, the boxes beside the stick or below; false where there is none.
func (c cutPicture) atRight(width, long, wide paper.Length) (cutHead, bool) {
	above, beside, below := c.stick.Free(c.scale, width)
	h := cutHead{high: max(0, titleRise-above.H), align: paper.AtRight, boxes: paper.Point{X: width - wide + boxGap - 0.35}}
	bar := h.high + beside.Y
	h.title = paper.Point{X: width, Y: bar - 1.8}
	h.boxes.Y = bar + (beside.H-paper.TickBoxSide)/2
	ok := wide+2 <= beside.W
	if !ok {
		h.boxes.Y = h.high + below.Y + 2
		ok = wide+4 <= below.W && below.H >= paper.TickBoxSide+2
	}
	return h, ok && long+3 <= above.W
}

// Tight implements what a body that can be set more closely is.
func (c cutPicture) Tight(block.Tightness) block.Body {
	c.close = true
	return c
}

// Height implements block.Body.
func (c cutPicture) Height(width paper.Length) paper.Length {
	h := c.head(width).high + c.stick.Height(c.scale, width)
	if c.names != "" {
		h += block.Words{Text: c.names}.Height(width)
	}
	return h
}

// Draw implements block.Body.
func (c cutPicture) Draw(page *paper.Page, box paper.Rect) []string {
	title, count := c.boxes(box.W)
	h, corner := c.head(box.W), paper.Point{X: box.X, Y: box.Y}
	page.Text(corner.Add(h.title), h.align, title, paper.Strong)
	at := corner.Add(h.boxes)
	for _, word := range c.turns() {
		page.Text(at.Add(paper.Point{Y: 4.6}), paper.AtLeft, word, paper.Body)
		at.X += paper.Body.Width(word)
		for range count {
			page.TickBox(at)
			at.X += boxPitch
		}
	}
	_, box = box.SplitTop(h.high)
	box = c.stick.Draw(page, box, c.scale)
	if c.names != "" {
		block.Words{Text: c.names}.Draw(page, box)
	}
	return nil
}

// facts declares the figures on the drawing.
func (p pattern) facts(c cutPicture) []block.Fact {
	bar, u := p.bars[0], c.stick.Units
	what := fmt.Sprintf("cut %d, ", p.number)
	list := []block.Fact{{What: what + "stick", Value: bar.Size(u)}}
	if c.stick.Keep && c.stick.Fresh == 0 {
		list = append(list, block.Fact{What: what + "offcut to keep", Value: u.Cut(bar.Offcut)})
	}
	for i, piece := range bar.Pieces {
		list = append(list, block.Fact{What: fmt.Sprintf("%spiece %d", what, i+1), Value: u.Cut(piece.Length)})
		if i < len(bar.Pieces)-c.stick.Fresh {
			list = append(list, block.Fact{What: fmt.Sprintf("%ssaw mark %d", what, i+1), Value: u.Cut(piece.Mark)})
		}
	}
	return list
}
