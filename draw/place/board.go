// Package place sets things on a page so that they can be read there: labels where nothing crosses them, dimensions, leaders, hatching,
// tables that go on from sheet to sheet, bars to check the printer by.
//
// A Board is a page that remembers what lies on it. Draw the lines first and the labels last: each label tries places round its anchor,
// nearest first, and takes the first that no text and no line touches; farther off it draws a leader that crosses no text. What finds
// no place is not drawn and the method says so.
package place

import (
	"slices"

	"hoopwright/draw/paper"
)

// The white space kept about a text.
const (
	textGap paper.Length = 1.2 // to another text
	lineGap paper.Length = 1.0 // to the edge of a line
)

// Board is a page with a record of the texts, lines and kept areas on it.
type Board struct {
	Page *paper.Page
	Area paper.Rect // where labels may go
	Led  float64    // what the leaders so far cost: of two ways to set labels the one is better that costs less

	drawn  []paper.Op // what is to be recorded as soon as anybody looks: most boards set no label
	things []thing
	marks  []paper.Point
	cells  map[cell][]int // things by the cells of a square grid they touch
}

// NewBoard returns a board over the page. What the page already holds is recorded too.
func NewBoard(page *paper.Page, area paper.Rect) *Board {
	return &Board{Page: page, Area: area, drawn: slices.Clip(page.Ops), cells: map[cell][]int{}}
}

type kind int

const (
	text kind = iota
	line
	area
)

// thing is something on the board that a text must not touch.
type thing struct {
	kind kind
	box  box // of a text or an area
	a, b paper.Point
	half paper.Length // half of a line's width

	bounds paper.Rect // about all of it
}

// Stroke draws a line along the path; labels set later keep off it.
func (b *Board) Stroke(path paper.Path, pen paper.Pen) {
	b.Page.Stroke(path, pen)
	b.noteLast()
}

// Line draws a straight line; labels set later keep off it.
func (b *Board) Line(from, to paper.Point, pen paper.Pen) { b.Stroke(paper.Polyline(from, to), pen) }

// LineRound draws a straight line with a gap wherever a text already lies in its way.
func (b *Board) LineRound(from, to paper.Point, pen paper.Pen) {
	for _, piece := range b.roundTexts(from, to, lineGap+pen.Width/2) {
		b.Line(piece[0], piece[1], pen)
	}
}

// Fill colours the inside of the path; labels set later keep off it. A white fill clears what is beneath and keeps nothing off.
func (b *Board) Fill(path paper.Path, c paper.Colour) {
	b.Page.Fill(path, c)
	b.noteLast()
}

// Text sets a line of lettering where it is told to, free or not; labels set later keep off it.
func (b *Board) Text(at paper.Point, align paper.Align, s string, l paper.Lettering) {
	b.Page.Text(at, align, s, l)
	b.noteLast()
}

// TurnedText sets a line of lettering whose baseline is centred on the point and turned about it; labels set later keep off it.
func (b *Board) TurnedText(centre paper.Point, angle float64, s string, l paper.Lettering) {
	b.Page.TurnedText(centre, angle, s, l)
	b.noteLast()
}

// Keep keeps labels out of the area: a table, a picture, the title block.
func (b *Board) Keep(r paper.Rect) { b.note(thing{kind: area, box: upright(r)}) }

// Mark records a place that labels belong to, with the radius of what is drawn there. Labels keep off it, and no label without a leader is set nearer to
// another's mark than to its own.
func (b *Board) Mark(at paper.Point, radius paper.Length) {
	b.marks = append(b.marks, at)
	if radius > 0 {
		b.Keep(paper.Rect{X: at.X - radius, Y: at.Y - radius, W: 2 * radius, H: 2 * radius})
	}
}

// Free reports whether the area is free of texts, lines and kept areas.
func (b *Board) Free(r paper.Rect) bool { return b.free(upright(r)) }

// FreeText reports whether a line of lettering centred on the point and turned about it would lie within the board's area and touch nothing.
func (b *Board) FreeText(centre paper.Point, angle float64, s string, l paper.Lettering) bool {
	at := centre.Sub(paper.Polar(l.Width(s)/2, angle))
	bx := textBox(at, angle, s, l)
	return within(bx, b.Area) && b.free(bx)
}

// SetFree sets a line of lettering centred on the point and turned about it if it is free there, and reports whether it is.
func (b *Board) SetFree(centre paper.Point, angle float64, s string, l paper.Lettering) bool {
	free := b.FreeText(centre, angle, s, l)
	if free {
		b.TurnedText(centre, angle, s, l)
	}
	return free
}

// textBox returns the box about a line of lettering.
func textBox(at paper.Point, angle float64, s string, l paper.Lettering) box {
	up, down := l.Extent(s)
	w := l.Width(s)
	dir := paper.Polar(1, angle)
	return box{at.Add(dir.Times(float64(w / 2))).Add(dir.Left().Times(float64((up - down) / 2))), dir, w / 2, (up + down) / 2}
}

func within(bx box, r paper.Rect) bool {
	o := bx.bounds()
	return o.X >= r.X && o.Y >= r.Y && o.Right() <= r.Right() && o.Bottom() <= r.Bottom()
}

// free reports whether the box keeps its distance from everything on the board.
func (b *Board) free(bx box) bool {
	wide := bx.grown(textGap)
	return !b.near(wide.bounds(), func(t *thing) bool {
		switch t.kind {
		case line:
			return bx.struck(t.a, t.b, lineGap+t.half)
		case text:
			return wide.meets(t.box)
		default:
			return bx.meets(t.box)
		}
	})
}

// roundTexts returns what is left of a segment when the texts in its way, grown by gap, are cut out. Scraps under a millimetre go too, unless
// the whole is one.
func (b *Board) roundTexts(p, q paper.Point, gap paper.Length) [][2]paper.Point {
	var cuts [][2]float64
	b.near(paper.Bounds(p, q).Inset(-gap), func(t *thing) bool {
		if t.kind == text {
			if from, to, hit := t.box.grown(gap).cut(p, q); hit {
				cuts = append(cuts, [2]float64{from, to})
			}
		}
		return false
	})
	var pieces [][2]paper.Point
	run := q.Sub(p)
	for _, f := range paper.Without(cuts) {
		if whole := f == [2]float64{0, 1}; whole || paper.Length(f[1]-f[0])*run.Long() >= 1 {
			pieces = append(pieces, [2]paper.Point{p.Add(run.Times(f[0])), p.Add(run.Times(f[1]))})
		}
	}
	return pieces
}
