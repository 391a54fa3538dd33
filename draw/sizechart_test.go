package draw

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

var charts = []struct {
	name, example string
	swap          []string
}{
	{"garden", "garden.yaml", nil},
	{"metric", "schoolyard.yaml", nil},
	{"three quarter inch", "parkwalk.yaml", nil},
	{"wide and low", "garden.yaml", []string{"span: 7 ft\n", "span: 12 ft\n"}},
	{"all but flat", "garden.yaml", []string{"span: 7 ft\n", "span: 19 ft\n"}},
	{"bent too tight throughout", "garden.yaml", []string{"pvc sch40 1/2 in", "pvc sch40 1 in", "sticks: [10 ft, 10 ft]", "sticks: [5 ft, 5 ft]", "span: 7 ft\n", "span: 4 ft\n", "from: 6 ft", "from: 3 ft"}},
}

var chartRoom = paper.Rect{X: 20, Y: 100, W: 187.9, H: SizeChartHeight}

func drawnChart(p *layout.Plan, room paper.Rect) (*paper.Page, SizeChart) {
	k := p.Kinds[0]
	c := SizeChart{Sizes: p.Sizes(k, arch.SpansAbout(k.Span, p.Spec.Units)), Chosen: k, Units: p.Spec.Units}
	page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
	c.Draw(page, room)
	return page, c
}

// ruler reads a scale off the numbers beside an axis: a number's value in the packet's unit by its place on paper.
type ruler struct{ a, b, va, vb float64 }

func (r *ruler) read(at paper.Length, value float64) {
	if r.va == r.vb {
		r.a, r.va = float64(at), value
	}
	r.b, r.vb = float64(at), value
}

func (r ruler) at(v float64) float64 { return r.a + (v-r.va)/(r.vb-r.va)*(r.b-r.a) }

// rulers reads both axes of a chart as a reader does.
func rulers(page *paper.Page, box paper.Rect) (x, y ruler) {
	for _, op := range page.Ops {
		s, ok := op.(paper.Text)
		v, err := strconv.ParseFloat(strings.ReplaceAll(s.String, "\u00a0", ""), 64)
		if !ok || err != nil || s.Lettering != paper.Floor {
			continue
		}
		w := paper.Floor.Width(s.String)
		if s.At.Y > box.Bottom()+0.1 && s.At.X+w/2 > box.X-1 {
			x.read(s.At.X+w/2, v)
		} else if s.At.X+w < box.X {
			y.read(s.At.Y-paper.Floor.Ascent()*0.45, v)
		}
	}
	return x, y
}

// frameOf finds the frame of the plot: the first closed box.
func frameOf(page *paper.Page) paper.Rect {
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && len(s.Path) == 5 && s.Path[4].Verb == paper.Close {
			a, b := s.Path[0].To, s.Path[2].To
			return paper.Rect{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y}
		}
	}
	return paper.Rect{}
}

// TestSizeChartIsTrueToItsAxes measures the curves by the numbers on the axes: at every span solved to 0.1 mm, and between two of them, where the arch
// is solved anew, to half a millimetre. Where head height is about to be lost the width falls off steeply, and the last stretch is left out.
func TestSizeChartIsTrueToItsAxes(t *testing.T) {
	widths := 0
	for _, c := range charts {
		t.Run(c.name, func(t *testing.T) {
			p := changed(t, c.example, c.swap...)
			page, chart := drawnChart(p, chartRoom)
			x, y := rulers(page, frameOf(page))
			unit := float64(measure.Inch)
			if p.Spec.Units == measure.Metric {
				unit = 1
			}
			on := func(span, value measure.Length) paper.Point {
				return paper.Point{X: paper.Length(x.at(float64(span) / unit)), Y: paper.Length(y.at(float64(value) / unit))}
			}
			var curves [2][]paper.Point
			for _, op := range page.Ops {
				if s, ok := op.(paper.Stroke); ok && len(s.Path) > 1 && s.Path[1].Verb == paper.Cubic {
					n := 0
					if s.Pen.Dash != nil {
						n = 1
					}
					curves[n] = s.Path.Flatten(16)[0]
				}
			}
			for n, of := range []func(arch.Size) measure.Length{crown, headWidth} {
				var spans []measure.Length
				for i, s := range chart.Sizes {
					if of(s) <= 0 || len(curves[n]) == 0 && n == 1 { // one width alone is no curve
						continue
					}
					if d := off(on(s.Span, of(s)), curves[n]); d > 0.1 {
						t.Errorf("curve %d is %.2f mm off at %v", n, d, s.Span)
					}
					if i > 0 && of(chart.Sizes[i-1]) > 0 && (i+1 == len(chart.Sizes) || of(chart.Sizes[i+1]) > 0) {
						spans = append(spans, (s.Span+chart.Sizes[i-1].Span)/2)
					}
				}
				for _, s := range p.Sizes(p.Kinds[0], spans) {
					if d := off(on(s.Span, of(s)), curves[n]); d > 0.5 {
						t.Errorf("curve %d is %.2f mm off between, at %v", n, d, s.Span)
					}
				}
				if n == 0 && len(spans) < 3 {
					t.Errorf("only %d stretches of the crown's curve", len(spans))
				}
			}

			if len(curves[1]) > 0 {
				widths++
			}

			// The dots lie where the plan has the arch, with its figures in words.
			k := chart.Chosen
			want := []measure.Length{k.Crown}
			if k.HeadWidth > 0 {
				want = append(want, k.HeadWidth)
			}
			var dots []paper.Point
			said := ""
			for _, op := range page.Ops {
				switch op := op.(type) {
				case paper.Fill:
					if pts := op.Path.Flatten(4)[0]; len(pts) > 12 && op.Colour == paper.Black {
						dots = append(dots, pts[0].Add(pts[len(pts)/2]).Times(0.5))
					}
				case paper.Text:
					said += op.String + "\n"
				}
			}
			if len(dots) != len(want) {
				t.Fatalf("%d dots, want %d", len(dots), len(want))
			}
			for i, v := range want {
				if d := dots[i].Sub(on(k.Span, v)).Long(); d > 0.1 {
					t.Errorf("dot %d is %.2f mm off", i, d)
				}
				if !strings.Contains(said, p.Spec.Units.Inches(v)) {
					t.Errorf("nowhere %s in %q", p.Spec.Units.Inches(v), said)
				}
			}
			if !strings.Contains(said, p.Spec.Units.Inches(k.Span)) || !strings.Contains(said, "H: crown height") {
				t.Errorf("span or name missing in %q", said)
			}
		})
	}
	if widths < 4 {
		t.Errorf("only %d curves of widths", widths)
	}
}

// TestSizeChartHatchesWhatIsBarred: hatching and its edges lie over the barred spans and nowhere else, and the reason is written.
func TestSizeChartHatchesWhatIsBarred(t *testing.T) {
	for _, c := range charts {
		t.Run(c.name, func(t *testing.T) {
			page, chart := drawnChart(changed(t, c.example, c.swap...), chartRoom)
			box := frameOf(page)
			first, last := chart.Sizes[0].Span, chart.Sizes[len(chart.Sizes)-1].Span
			at := func(span measure.Length) float64 {
				return float64(box.X + box.W*paper.Length((span-first)/(last-first)))
			}
			barred := arch.Barred(chart.Sizes)
			covered := make([]bool, len(barred))
			said := ""
			for _, op := range page.Ops {
				if s, ok := op.(paper.Text); ok {
					said += s.String + "\n"
				}
				s, ok := op.(paper.Stroke)
				if !ok || s.Pen.Width != paper.Hatching.Width {
					continue
				}
				middle := s.Path[0].To.Add(s.Path[1].To).Times(0.5)
				within := false
				for i, b := range barred {
					if x := float64(middle.X); x > at(b.From)-0.01 && x < at(b.To)+0.01 {
						within, covered[i] = true, true
					}
				}
				if !within || !box.Inset(-0.01).Contains(s.Path[0].To) || !box.Inset(-0.01).Contains(s.Path[1].To) {
					t.Fatalf("a hatch line from %v to %v, barred %v", s.Path[0].To, s.Path[1].To, barred)
				}
			}
			for i, b := range barred {
				if !covered[i] && at(b.To)-at(b.From) > 3 {
					t.Errorf("%v is not hatched", b)
				}
				if !strings.Contains(said, b.Why) {
					t.Errorf("nowhere %q in %q", b.Why, said)
				}
			}
			if len(barred) == 0 {
				t.Errorf("nothing barred: the case tests nothing")
			}
		})
	}
}

// TestSizeChartStaysInItsRoom: at its height and at its least, letters large enough to read.
func TestSizeChartStaysInItsRoom(t *testing.T) {
	for _, c := range charts {
		p := changed(t, c.example, c.swap...)
		for _, h := range []paper.Length{SizeChartLeast, SizeChartHeight} {
			room := chartRoom
			room.H = h
			page, _ := drawnChart(p, room)
			for _, op := range page.Ops {
				var points []paper.Point
				switch op := op.(type) {
				case paper.Stroke:
					for _, piece := range op.Path.Flatten(4) {
						points = append(points, piece...)
					}
				case paper.Text:
					points = []paper.Point{op.At, op.At.Add(paper.Polar(op.Lettering.Width(op.String), op.Angle))}
					if op.Lettering.Size < 11 {
						t.Errorf("%q in %v pt", op.String, op.Lettering.Size)
					}
				}
				for _, q := range points {
					if !room.Contains(q) || math.IsNaN(float64(q.X+q.Y)) {
						t.Fatalf("%s: %v reaches %v, outside %v", c.name, op, q, room)
					}
				}
			}
		}
	}
}
