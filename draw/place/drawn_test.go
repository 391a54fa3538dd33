package place

import (
	"math"
	"testing"

	"hoopwright/draw/paper"
)

// Everything the package draws, once on one sheet: no text touched, nothing thinner than may be, no type under the floor.
func TestDemoPage(t *testing.T) {
	page := demoPage()
	for _, f := range faults(page) {
		t.Error(f)
	}
	for _, op := range page.Ops {
		switch op := op.(type) {
		case paper.Stroke:
			if op.Pen.Width < 0.35 && op.Pen.Width != paper.Hatching.Width {
				t.Errorf("a pen of %v mm", op.Pen.Width)
			}
		case paper.Text:
			if op.Lettering.Size < 11 {
				t.Errorf("%q at %v pt", op.String, op.Lettering.Size)
			}
		}
	}
}

// The hatch of a polygon covers its area: the lines' total length times their spacing, against the shoelace formula. Every line's middle lies inside.
func TestHatchCoversArea(t *testing.T) {
	shape := []paper.Point{{X: 10, Y: 10}, {X: 90, Y: 20}, {X: 80, Y: 90}, {X: 50, Y: 40}, {X: 15, Y: 85}}
	area := 0.0
	for i, p := range shape {
		q := shape[(i+1)%len(shape)]
		area += float64(p.X*q.Y-q.X*p.Y) / 2
	}
	for _, angle := range []float64{0, 0.3, math.Pi / 4, math.Pi / 2, 2.2} {
		const spacing = 0.5
		sum := 0.0
		for _, s := range hatchLines([][]paper.Point{shape}, angle, spacing) {
			sum += float64(s[1].Sub(s[0]).Long()) * spacing
			if !inside(shape, s[0].Add(s[1]).Times(0.5)) {
				t.Fatalf("angle %v: a line outside the shape", angle)
			}
		}
		if math.Abs(sum/math.Abs(area)-1) > 0.01 {
			t.Errorf("angle %v: hatched %v of %v mm²", angle, sum, math.Abs(area))
		}
	}
}

// inside by winding angle.
func inside(shape []paper.Point, p paper.Point) bool {
	turn := 0.0
	for i, a := range shape {
		b := shape[(i+1)%len(shape)]
		u, v := a.Sub(p), b.Sub(p)
		turn += math.Atan2(float64(u.X*v.Y-u.Y*v.X), float64(dot(u, v)))
	}
	return math.Abs(turn) > 3
}

func TestGroundBar(t *testing.T) {
	for _, s := range append(append([]paper.Scale{}, paper.ImperialScales...), paper.MetricScales...) {
		for _, unit := range []struct {
			mm   float64
			word string
		}{{304.8, "ft"}, {1000, "m"}} {
			page := sheet()
			w := GroundBar(page, paper.Point{X: 20, Y: 30}, 90, s, unit.mm, unit.word)
			if w > 90 || w < 15 {
				t.Errorf("%s in %s: bar takes %v of 90 mm", s.Words, unit.word, w)
			}
		}
	}
}

// A dimension line leaves a gap at a text in its way.
func TestLineRound(t *testing.T) {
	b := NewBoard(sheet(), live)
	b.Text(paper.Point{X: 100, Y: 100}, paper.AtMiddle, "brick path", paper.Body)
	b.LineRound(paper.Point{X: 50, Y: 99}, paper.Point{X: 150, Y: 99}, paper.Thin)
	if n := len(b.Page.Ops); n != 3 {
		t.Errorf("%d operations, want the text and two pieces of line", n)
	}
	if f := faults(b.Page); f != nil {
		t.Error(f)
	}
}

// A board takes note of what its page already holds.
func TestNewBoardReadsPage(t *testing.T) {
	page := sheet()
	page.Line(paper.Point{X: 50, Y: 50}, paper.Point{X: 150, Y: 50}, paper.Thin)
	page.Text(paper.Point{X: 60, Y: 100}, paper.AtLeft, "word", paper.Body)
	page.Fill(paper.Box(paper.Rect{X: 150, Y: 150, W: 30, H: 30}), paper.Black)
	b := NewBoard(page, live)
	for _, r := range []paper.Rect{{X: 90, Y: 48, W: 10, H: 4}, {X: 61, Y: 97, W: 5, H: 5}, {X: 160, Y: 160, W: 8, H: 4}} {
		if b.Free(r) {
			t.Errorf("%v counts as free", r)
		}
	}
	if !b.Free(paper.Rect{X: 100, Y: 200, W: 10, H: 10}) {
		t.Error("an empty place does not count as free")
	}
}

// Numbers that are none place nothing and hang nothing.
func TestNotANumber(t *testing.T) {
	nan := paper.Length(math.NaN())
	b := NewBoard(sheet(), live)
	b.Line(paper.Point{X: nan}, paper.Point{X: 5}, paper.Thin)
	b.Line(paper.Point{X: paper.Length(math.Inf(1))}, paper.Point{X: 5}, paper.Thin)
	if b.Label(Label{At: paper.Point{X: nan}, Text: "x", Lettering: paper.Body}) {
		t.Error("a label was set nowhere")
	}
	if b.Dimension(Dimension{From: paper.Point{X: nan}, To: paper.Point{X: 5}, Text: "x", Lettering: paper.Body}) {
		t.Error("a dimension was set nowhere")
	}
}
