package draw

import (
	"math"
	"slices"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// wound is an invented wrap: a 20 ft string of 60 bulbs at 1 1/2 in on a pipe of 0.84 in.
func wound() lights.Wrap {
	return lights.Wrap{On: lights.Leg(spec.Left, 1), Pitch: 1.5 * inch, Turns: 60, Strings: []string{"S1"}, From: 0, To: 90 * inch, PipeEnd: 91 * inch, Covers: 1,
		Label: catalog.String{Name: "set", Length: 240 * inch, Lead: 12 * inch, Bulbs: 60, Wire: 0.15 * inch},
		Flags: []lights.Flag{{Tape: 30 * inch, Bulb: 17, String: "S1"}, {Tape: 60 * inch, Bulb: 38, String: "S1"}}}
}

// strands returns the paths of the wire drawn on a page.
func strands(page *paper.Page) []paper.Path {
	var out []paper.Path
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && s.Pen.Colour == paper.White {
			out = append(out, s.Path)
		}
	}
	return out
}

// Each turn of the wire starts one pitch above the last, reaches over the pipe to both sides by half a wire, rises half a pitch in front (the other half is behind), and climbs to
// the right, or to the left where it is mirrored.
func TestWrapDetailIsTrueToScale(t *testing.T) {
	for _, ratio := range []float64{1, 2} {
		for _, mirror := range []bool{false, true} {
			page := &paper.Page{}
			d := WrapDetail{Scale: paper.Scale{Ratio: ratio}, Pipe: 0.84 * inch, Wrap: wound(), Mirror: mirror, Units: measure.Imperial}
			d.Draw(place.NewBoard(page, room), room)
			all := strands(page)
			if len(all) < 3 {
				t.Fatalf("%d turns", len(all))
			}
			pitch := 1.5 * 25.4 / ratio
			for i, s := range all {
				a, b := s[0].To, s[len(s)-1].To
				if rise := float64(a.Y - b.Y); math.Abs(rise-pitch/2) > 0.1 {
					t.Errorf("a strand in front rises %.2f mm, want %.2f", rise, pitch/2)
				}
				if wide := math.Abs(float64(b.X - a.X)); math.Abs(wide-0.99*25.4/ratio) > 0.1 {
					t.Errorf("a strand is %.2f mm wide, want pipe and one wire, %.2f", wide, 0.99*25.4/ratio)
				}
				if right := b.X > a.X; right == mirror {
					t.Errorf("mirror %v: the wire in front climbs to the wrong side", mirror)
				}
				if i > 0 {
					if step := float64(all[i-1][0].To.Y - a.Y); math.Abs(step-pitch) > 0.1 {
						t.Errorf("turns are %.2f mm apart, want %.2f", step, pitch)
					}
				}
			}
			if !slices.Contains(texts(page), "1 1/2 in") {
				t.Errorf("the pitch is not written: %q", texts(page))
			}
		}
	}
}

// The flags lie along the run where a ruler at its scale finds them, with their bulbs.
func TestWrapRunIsTrueToScale(t *testing.T) {
	page := &paper.Page{}
	r := WrapRun{Scale: paper.Scale{Ratio: 24}, Wrap: wound(), Start: "foot", End: "crown", Units: measure.Imperial}
	r.Draw(place.NewBoard(page, room), room)
	var ticks []float64
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && s.Pen.Width == paper.Emphasis.Width {
			ticks = append(ticks, float64(s.Path[0].To.Y))
		}
	}
	if len(ticks) != 2 || math.Abs(ticks[0]-ticks[1]-30*25.4/24) > 0.1 {
		t.Errorf("flags at %v, want two, 30 in apart at 1:24", ticks)
	}
	for _, want := range []string{"30 in", "bulb 17", "60 in", "bulb 38", "prongs at 0 in", "socket 1 in before it"} {
		if !slices.Contains(texts(page), want) {
			t.Errorf("%q is missing: %q", want, texts(page))
		}
	}
}

// Where a wrap's ends are, in words: from the pipe's end where it stops close to it, else by the tape; the prongs where they are; a string that does not reach, where it stops.
func TestWrapEnds(t *testing.T) {
	for _, c := range []struct {
		change func(*lights.Wrap)
		want   [2]string
	}{
		{func(*lights.Wrap) {}, [2]string{"prongs at 0 in", "socket 1 in before it"}},
		{func(w *lights.Wrap) { w.Crown = true }, [2]string{"socket at 0 in", "prongs 1 in before it"}},
		{func(w *lights.Wrap) { w.PipeEnd = w.To }, [2]string{"prongs at 0 in", "socket at the end"}},
		{func(w *lights.Wrap) { w.From, w.To = 10*inch, 50*inch }, [2]string{"prongs at 10 in", "socket at 50 in"}},
		{func(w *lights.Wrap) { w.Covers = 0.5 }, [2]string{"prongs at 0 in", "socket at 45 in"}},
		{func(w *lights.Wrap) { w.Covers, w.Crown = 0.5, true }, [2]string{"socket at 45 in", "prongs 1 in before it"}},
	} {
		w := wound()
		c.change(&w)
		if got := WrapEnds(w, measure.Imperial); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// The bar's black part is the lights' share of it, beside the other load's.
func TestLoadBar(t *testing.T) {
	page := &paper.Page{}
	LoadBar(place.NewBoard(page, room), paper.Rect{X: 30, Y: 50, W: 100, H: 4}, 0.25, 0.5)
	for _, op := range page.Ops {
		if f, ok := op.(paper.Fill); ok {
			if from, to := f.Path[0].To.X, f.Path[1].To.X; from != 55 || to != 105 {
				t.Errorf("lights from %v to %v, want 55 to 105", from, to)
			}
			return
		}
	}
	t.Error("no black part")
}
