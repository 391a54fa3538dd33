package packet

import (
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
)

// sizesOn counts the pages of a flow, and those that have the chart.
func sizesOn(f *flow) (pages, charts int) {
	for _, l := range f.leaves {
		for _, op := range l.page.Ops {
			if s, ok := op.(paper.Text); ok && strings.HasPrefix(s.String, "Before buying") {
				charts++
			}
		}
	}
	return len(f.leaves), charts
}

// TestSizesTakeWhatRoomThereIs: the chart goes to the foot of the first page with room, above nothing and over nothing, and never takes a page.
func TestSizesTakeWhatRoomThereIs(t *testing.T) {
	plan := example(t, "garden.yaml")
	b := &binder{skies: skies{plan}, spec: plan.Spec, size: paper.Rect{W: 215.9, H: 279.4}}
	for _, c := range []struct {
		left   paper.Length // on each of the pages in turn
		more   paper.Length
		charts int
	}{{40, 60, 0}, {60, 70, 1}, {120, 120, 1}, {95, 10, 1}, {5, 150, 1}} {
		f := b.newFlow("Purpose.", "")
		var ends []paper.Length
		for i, left := range []paper.Length{c.left, c.more} {
			if i > 0 {
				f.turn()
			}
			f.page.Fill(paper.Box(f.take(f.room.H-left)), paper.Black)
			ends = append(ends, f.room.Y)
		}
		before := []int{len(f.leaves[0].page.Ops), len(f.leaves[1].page.Ops)}
		b.archSizes(f)
		pages, charts := sizesOn(f)
		if pages != 2 || charts != c.charts {
			t.Errorf("with %v and %v mm left: %d charts on %d pages, want %d on 2", c.left, c.more, charts, pages, c.charts)
		}
		_, live := b.newPage()
		for i, l := range f.leaves {
			for _, op := range l.page.Ops[before[i]:] {
				var at []paper.Point
				switch op := op.(type) {
				case paper.Text:
					at = []paper.Point{{X: op.At.X, Y: op.At.Y - op.Lettering.Ascent()}, {X: op.At.X, Y: op.At.Y}}
					if op.Angle != 0 {
						at = at[1:]
					}
				case paper.Stroke:
					for _, piece := range op.Path.Flatten(2) {
						at = append(at, piece...)
					}
				}
				for _, q := range at {
					if q.Y < ends[i] || q.Y > live.Bottom() {
						t.Fatalf("%v at %v, above %v or below %v", op, q, ends[i], live.Bottom())
					}
				}
			}
		}
	}
}

// TestSizesOfASketch: where no arch stands there is nothing to compare with.
func TestSizesOfASketch(t *testing.T) {
	sketch := *example(t, "garden.yaml")
	sketch.Kinds = []*arch.Kind{arch.Sketch(arch.Input{Spec: sketch.Kinds[0].Spec})}
	plan := &sketch
	b := &binder{skies: skies{plan}, spec: plan.Spec, size: paper.Rect{W: 215.9, H: 279.4}}
	if _, _, ok := b.sizeChart(); ok {
		t.Error("a chart of a sketch")
	}
}
