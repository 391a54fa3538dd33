package place

import (
	"math"
	"strings"

	"hoopwright/draw/paper"
)

// noteLast has the operation just drawn recorded.
func (b *Board) noteLast() { b.drawn = append(b.drawn, b.Page.Ops[len(b.Page.Ops)-1]) }

// offLine is how far a curve's record may leave it: a bulb becomes a square on its corner, and the gap to a line stays one.
const offLine paper.Length = 0.3

// look records what was drawn since it was last called. A filled shape is its outline with lines across it, close enough that no text fits between.
func (b *Board) look() {
	for _, op := range b.drawn {
		switch op := op.(type) {
		case paper.Stroke:
			b.noteLines(op.Path.Flatten(offLine), op.Pen.Width/2)
		case paper.Fill:
			if op.Colour == paper.White {
				continue
			}
			pieces := op.Path.Flatten(offLine)
			b.noteLines(pieces, 0)
			for _, s := range hatchLines(pieces, 0, 2) {
				b.note(thing{kind: line, a: s[0], b: s[1]})
			}
		case paper.Text:
			if strings.TrimSpace(op.String) != "" {
				b.note(thing{kind: text, box: textBox(op.At, op.Angle, op.String, op.Lettering)})
			}
		}
	}
	b.drawn = b.drawn[:0:0]
}

func (b *Board) noteLines(pieces [][]paper.Point, half paper.Length) {
	for _, pts := range pieces {
		for i := 1; i < len(pts); i++ {
			b.note(thing{kind: line, a: pts[i-1], b: pts[i], half: half})
		}
	}
}

// cell is a square of the grid that things are looked up by.
type cell struct{ x, y int32 }

const cellSide = 10

// mostCell is the farthest cell from the origin: what lies beyond 10 m is off every sheet.
const mostCell = 1000

// cellsOf returns the cells that a rectangle touches, none where it is not a number.
func cellsOf(r paper.Rect) (lo, hi cell) {
	if math.IsNaN(float64(r.X + r.Y + r.W + r.H)) {
		return cell{1, 1}, cell{}
	}
	index := func(l paper.Length) int32 {
		return int32(math.Floor(float64(max(-mostCell*cellSide, min(mostCell*cellSide, l)) / cellSide)))
	}
	return cell{index(r.X), index(r.Y)}, cell{index(r.Right()), index(r.Bottom())}
}

// note records a thing. A long line is entered piece by piece, so that it does not fill the cells of the whole rectangle about it.
func (b *Board) note(t thing) {
	if t.bounds = t.box.bounds(); t.kind == line {
		t.bounds = paper.Bounds(t.a, t.b).Inset(-t.half)
	}
	id := len(b.things)
	b.things = append(b.things, t)
	if t.kind != line {
		b.enter(id, t.bounds)
		return
	}
	run := t.b.Sub(t.a)
	n := int(min(mostCell, max(1, math.Ceil(float64(run.Long()/cellSide)))))
	for i := range n {
		p, q := t.a.Add(run.Times(float64(i)/float64(n))), t.a.Add(run.Times(float64(i+1)/float64(n)))
		b.enter(id, paper.Bounds(p, q).Inset(-t.half))
	}
}

func (b *Board) enter(id int, r paper.Rect) {
	lo, hi := cellsOf(r)
	for x := lo.x; x <= hi.x; x++ {
		for y := lo.y; y <= hi.y; y++ {
			c := cell{x, y}
			if ids := b.cells[c]; len(ids) == 0 || ids[len(ids)-1] != id {
				b.cells[c] = append(ids, id)
			}
		}
	}
}

// near calls yield with the things near a rectangle, some more than once, until yield returns true, and reports whether it did.
func (b *Board) near(r paper.Rect, yield func(*thing) bool) bool {
	b.look()
	r = r.Inset(-lineGap - 1) // a thing's gap may reach over from the next cell
	lo, hi := cellsOf(r)
	for x := lo.x; x <= hi.x; x++ {
		for y := lo.y; y <= hi.y; y++ {
			for _, id := range b.cells[cell{x, y}] {
				if t := &b.things[id]; t.bounds.X <= r.Right() && r.X <= t.bounds.Right() && t.bounds.Y <= r.Bottom() && r.Y <= t.bounds.Bottom() && yield(t) {
					return true
				}
			}
		}
	}
	return false
}

// state is how much the page and the record hold.
type state struct{ ops, things, marks int }

func (b *Board) state() state {
	b.look()
	return state{len(b.Page.Ops), len(b.things), len(b.marks)}
}

// restore takes back everything drawn and recorded since the state.
func (b *Board) restore(s state) {
	b.Page.Ops, b.drawn, b.things, b.marks = b.Page.Ops[:s.ops], nil, b.things[:s.things], b.marks[:s.marks]
	for c, ids := range b.cells {
		for len(ids) > 0 && ids[len(ids)-1] >= s.things {
			ids = ids[:len(ids)-1]
		}
		b.cells[c] = ids
	}
}
