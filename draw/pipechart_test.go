package draw

import (
	"math"
	"slices"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// wound is an invented wrap: a 20 ft string of 60 bulbs at 1 1/2 in on a pipe of 0.84 in.
func wound() lights.Wrap {
	return lights.Wrap{On: lights.Leg(spec.Left, 1), Pitch: 1.5 * inch, Turns: 60, Strings: []string{"S1"}, From: 0, To: 90 * inch, PipeEnd: 91 * inch, Covers: 1,
		Label: catalog.String{Name: "set", Length: 240 * inch, Lead: 12 * inch, Bulbs: 60, Wire: 0.15 * inch}}
}

// Marks and bands lie along the pipe in proportion to their tapes, with what comes there; figures that would touch stand on two lines.
func TestPipeChartIsInProportion(t *testing.T) {
	chart := PipeChart{Long: 120 * inch, Start: "foot", End: "crown end", Marks: []measure.Length{30 * inch, 60 * inch, 61 * inch, 90 * inch}, Units: measure.Imperial}
	line := PipeLine{To: 119 * inch, Bare: []lights.Band{{From: 80 * inch, To: 83 * inch}}}
	for i, m := range chart.Marks {
		line.At = append(line.At, PipeMark{m, []string{"24", "50", "51", "75"}[i]})
	}
	page := &paper.Page{}
	if missing := append(chart.Ruler(page, room), chart.Line(page, room, line)...); len(missing) > 0 {
		t.Errorf("missing %v", missing)
	}
	var ticks []float64
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && s.Pen.Width == paper.Emphasis.Width {
			ticks = append(ticks, float64(s.Path[0].To.X-room.X-chartSide)/float64(room.W-2*chartSide))
		}
	}
	for i, m := range chart.Marks {
		if i >= len(ticks) || math.Abs(ticks[i]-float64(m/chart.Long)) > 1e-9 {
			t.Errorf("marks at %v of the pipe, want %v in of 120", ticks, m.Inches())
		}
	}
	for _, want := range []string{"foot", "crown end", "30 in", "60", "61", "90", "24", "50", "51", "75", "80 to 83"} {
		if !slices.Contains(texts(page), want) {
			t.Errorf("%q is missing: %q", want, texts(page))
		}
	}
}

// Each turn of the wire starts one pitch further on, reaches over the pipe to both sides by half a wire, goes half a pitch along in front (the other half is behind), from the upper edge
// to the lower as a right-handed screw's thread does, or the other way where it is mirrored.
func TestWrapTurnsAreTrueToScale(t *testing.T) {
	for _, ratio := range []float64{1, 2} {
		for _, mirror := range []bool{false, true} {
			page := &paper.Page{}
			WrapTurns{Scale: paper.Scale{Ratio: ratio}, Pipe: 0.84 * inch, Wrap: wound(), Mirror: mirror}.Draw(page, room)
			var starts []float64
			for _, op := range page.Ops {
				s, ok := op.(paper.Stroke)
				if !ok || s.Pen.Colour != paper.White {
					continue
				}
				a, b := s.Path[0].To, s.Path[len(s.Path)-1].To
				if along := float64(b.X - a.X); math.Abs(along-1.5*25.4/ratio/2) > 0.1 {
					t.Errorf("a strand in front goes %.2f mm along", along)
				}
				if wide := math.Abs(float64(b.Y - a.Y)); math.Abs(wide-0.99*25.4/ratio) > 0.1 {
					t.Errorf("a strand is %.2f mm wide, want pipe and one wire, %.2f", wide, 0.99*25.4/ratio)
				}
				if down := b.Y > a.Y; down == mirror {
					t.Errorf("mirror %v: the wire in front runs the wrong way", mirror)
				}
				starts = append(starts, float64(a.X))
			}
			if len(starts) < 3 {
				t.Fatalf("%d turns", len(starts))
			}
			for i := 1; i < len(starts); i++ {
				if step := starts[i] - starts[i-1]; math.Abs(step-1.5*25.4/ratio) > 0.1 {
					t.Errorf("turns are %.2f mm apart", step)
				}
			}
		}
	}
}
