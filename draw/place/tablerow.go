package place

import "hoopwright/draw/paper"

// lines returns a cell's text as set.
func (t Table) lines(r Row, column int) []string {
	if column >= len(r.Cells) {
		return nil
	}
	c := t.Columns[column]
	return wrapped(r.Cells[column], c.Lettering, c.Width-2*padSide)
}

// wrapped returns a text's lines at a width: none of an empty one.
func wrapped(s string, l paper.Lettering, width paper.Length) []string {
	if s == "" {
		return nil
	}
	return l.Wrap(s, width)
}

func (t Table) headingLines(r Row) []string {
	return paper.Strong.Wrap(r.Heading, t.width()-2*padSide)
}

func (t Table) width() paper.Length {
	w := paper.Length(0)
	for _, c := range t.Columns {
		w += c.Width
	}
	return w
}

func (t Table) rowHeight(r Row) paper.Length {
	if r.Heading != "" {
		return linesHeight(t.headingLines(r), paper.Strong)
	}
	h := t.RowMin
	for i, c := range t.Columns {
		h = max(h, linesHeight(t.lines(r, i), c.Lettering))
		if t.ticked(r, i) {
			h = max(h, paper.TickBoxSide+2*tickMargin)
		}
	}
	return max(h, linesHeight([]string{"x"}, paper.Floor)) + t.noteHeight(r)
}

// noteLines returns a row's note as set.
func (t Table) noteLines(r Row) []string {
	return wrapped(r.Note, paper.Floor, t.width()-t.Columns[0].Width-2*padSide-0.1)
}

// noteAcross returns how far the row's note reaches from the table's left side.
func (t Table) noteAcross(r Row) paper.Length {
	return t.Columns[0].Width + paper.Floor.Widest(t.noteLines(r)) + 2*padSide
}

// noteHeight returns the height of a row's note, which stands closer to the row's cells than rows do to each other.
func (t Table) noteHeight(r Row) paper.Length {
	return max(0, linesHeight(t.noteLines(r), paper.Floor)-noteCloser)
}

func linesHeight(lines []string, l paper.Lettering) paper.Length {
	if len(lines) == 0 {
		return 0
	}
	return 2*padAbove + blockSize(lines, l).H
}

// ticked reports whether the row has a tick box in the column.
func (t Table) ticked(r Row, column int) bool {
	return t.Columns[column].Tick && r.Heading == "" && (column >= len(r.Cells) || r.Cells[column] == "")
}

func (t Table) headHeight() paper.Length {
	h := paper.Length(0)
	for _, c := range t.Columns {
		h = max(h, linesHeight(t.headLines(c), t.Head))
	}
	return h
}

func (t Table) headLines(c Column) []string {
	return wrapped(c.Head, t.Head, c.Width-2*padSide)
}

// drawHead draws the column heads, set at their foot, over a thick rule, and returns the y below.
func (t Table) drawHead(page *paper.Page, x, y paper.Length) paper.Length {
	h := t.headHeight()
	right := x + t.width()
	page.Line(paper.Point{X: x, Y: y}, paper.Point{X: right, Y: y}, paper.Thick)
	if h == 0 {
		return y
	}
	at := x
	for _, c := range t.Columns {
		lines := t.headLines(c)
		top := y + h - linesHeight(lines, t.Head)
		setCell(page, paper.Rect{X: at, Y: top, W: c.Width}, lines, c.Align, t.Head)
		at += c.Width
	}
	t.uprights(page, x, y, y+h, 0)
	page.Line(paper.Point{X: x, Y: y + h}, paper.Point{X: right, Y: y + h}, paper.Thick)
	return y + h
}

// drawRow draws a row and the thin rule under it, and returns the y below.
func (t Table) drawRow(page *paper.Page, x, y paper.Length, r Row) paper.Length {
	h := t.rowHeight(r)
	right := x + t.width()
	if r.Total {
		page.Line(paper.Point{X: x, Y: y}, paper.Point{X: right, Y: y}, paper.Thick)
	}
	across := paper.Length(0)
	if r.Heading != "" {
		across = t.width()
		setCell(page, paper.Rect{X: x, Y: y, W: across}, t.headingLines(r), paper.AtLeft, paper.Strong)
	} else {
		at := x
		for i, c := range t.Columns {
			if t.ticked(r, i) {
				c.tickBoxes(page, paper.Point{X: at, Y: y + tickMargin})
			}
			lines := t.lines(r, i)
			top := y
			if len(lines) == 1 { // a single line is centred on the row's first line, whatever its neighbours' size
				top += max(0, (t.firstLine(r)-linesHeight(lines, c.Lettering))/2)
			}
			setCell(page, paper.Rect{X: at, Y: top, W: c.Width}, lines, c.Align, c.Lettering)
			at += c.Width
		}
		first := t.Columns[0].Width
		setCell(page, paper.Rect{X: x + first, Y: y + h - t.noteHeight(r) - noteCloser, W: t.width() - first}, t.noteLines(r), paper.AtLeft, paper.Floor)
	}
	foot := y + h // of the cells
	if note := t.noteHeight(r); note > 0 {
		foot -= note + noteCloser
		t.uprights(page, x, foot, y+h, t.noteAcross(r))
	}
	t.uprights(page, x, y, foot, across)
	page.Line(paper.Point{X: x, Y: y + h}, paper.Point{X: right, Y: y + h}, paper.Thin)
	return y + h
}

// boxGap is the room between tick boxes side by side.
const boxGap paper.Length = 1.8

// tickBoxes draws a row's tick boxes in the middle of the column that begins at the point.
func (c Column) tickBoxes(page *paper.Page, at paper.Point) {
	n := paper.Length(max(1, c.Boxes))
	at.X += (c.Width - n*paper.TickBoxSide - (n-1)*boxGap) / 2
	for range max(1, c.Boxes) {
		page.TickBox(at)
		at.X += paper.TickBoxSide + boxGap
	}
}

// firstLine returns the height of the row's tallest first line, a tick box included.
func (t Table) firstLine(r Row) paper.Length {
	h := paper.Length(0)
	for i, c := range t.Columns {
		if lines := t.lines(r, i); len(lines) > 0 {
			h = max(h, linesHeight(lines[:1], c.Lettering))
		}
		if t.ticked(r, i) {
			h = max(h, paper.TickBoxSide+2*tickMargin)
		}
	}
	return h
}

// uprights draws the upright rules of one row: at the sides, before the second column of a row with a note, and between columns as far as what lies across them leaves room.
func (t Table) uprights(page *paper.Page, x, top, bottom, across paper.Length) {
	at := x
	for i := 0; i <= len(t.Columns); i++ {
		if at-x >= across || i == 0 || i == len(t.Columns) || i == 1 && across < t.width() {
			page.Line(paper.Point{X: at, Y: top}, paper.Point{X: at, Y: bottom}, paper.Thin)
		}
		if i < len(t.Columns) {
			at += t.Columns[i].Width
		}
	}
}

// setCell sets a cell's lines from its top.
func setCell(page *paper.Page, cell paper.Rect, lines []string, align paper.Align, l paper.Lettering) {
	x := [...]paper.Length{paper.AtLeft: cell.X + padSide, paper.AtMiddle: cell.X + cell.W/2, paper.AtRight: cell.Right() - padSide}[align]
	setLines(page, paper.Point{X: x, Y: cell.Y + padAbove}, lines, align, l)
}
