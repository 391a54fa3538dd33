package draw

import (
	"math"
	"strings"
	"testing"

	"hoopwright/draw/paper"
)

// A bend half made is as long as the pipe, and ends where it is drawn to end.
func TestHalfMadeBendKeepsItsLength(t *testing.T) {
	r, ok := NewRaising(example(t, "garden"))
	if !ok {
		t.Fatal("no arch stands")
	}
	for _, wide := range []float64{1, 1.12, 1.75} {
		s := r.newScene(&paper.Page{}, paper.Rect{W: 70, H: 36}, 3000, 6000, 2500)
		points := s.bent(r.drawnOut(wide, 200))
		long := paper.Length(0)
		for i := 1; i < len(points); i++ {
			long += points[i].Sub(points[i-1]).Long()
		}
		if want := s.long(r.First.Length); math.Abs(float64(long-want)) > 0.05 {
			t.Errorf("drawn out %v times: %.2f mm of pipe, want %.2f", wide, long, want)
		}
		first, last := points[0], points[len(points)-1]
		if got, want := last.X-first.X, s.long(r.First.Span)*paper.Length(wide); math.Abs(float64(got-want)) > 0.05 {
			t.Errorf("drawn out %v times: %.2f mm from foot to foot, want %.2f", wide, got, want)
		}
		if lift := first.Y - last.Y; math.Abs(float64(lift-s.long(200))) > 0.05 {
			t.Errorf("lifted %.2f mm, want %.2f", lift, s.long(200))
		}
	}
}

// The footprint's box holds every stake, and its sizes are the stakes' own: on a straight walk the span across, first to last guy along.
func TestFootprintIsTrue(t *testing.T) {
	plan := example(t, "garden")
	f, ok := NewFootprint(plan)
	if !ok {
		t.Fatal("no footprint")
	}
	// 7 ft of span; 22 ft 6 in of walk and a guy of 5 ft at either end: the spec's own figures.
	if w, l := f.Width.Inches(), f.Length.Inches(); math.Abs(w-84) > 0.01 || math.Abs(l-(270+120)) > 0.01 {
		t.Errorf("%.2f by %.2f in, want 84 by 390", w, l)
	}
}

// Nobody is drawn under an arch whose foot is off its stake: every head is beyond the foot that stays or beyond the one that is carried.
func TestNobodyUnderASprungArch(t *testing.T) {
	r, ok := NewRaising(example(t, "garden"))
	if !ok {
		t.Fatal("no arch stands")
	}
	for _, down := range []bool{false, true} {
		r.Down = down
		page := &paper.Page{}
		r.LastFoot(page, paper.Rect{W: 70, H: 60}, 6)
		var feet []paper.Length // of the pipe
		for _, op := range page.Ops {
			line, ok := op.(paper.Stroke)
			if ok && line.Pen.Width == pipeOnPaper {
				feet = []paper.Length{line.Path[0].To.X, line.Path[len(line.Path)-1].To.X}
			}
		}
		heads := 0
		for _, op := range page.Ops {
			body, ok := op.(paper.Fill)
			if !ok || body.Colour != paper.White {
				continue
			}
			low, high := body.Path[0].To, body.Path[0].To
			for _, step := range body.Path {
				if step.Verb != paper.Close {
					low.X, low.Y, high.X, high.Y = min(low.X, step.To.X), min(low.Y, step.To.Y), max(high.X, step.To.X), max(high.Y, step.To.Y)
				}
			}
			if wide := high.X - low.X; math.Abs(float64(wide-(high.Y-low.Y))) > 1e-6 {
				continue
			}
			heads++
			if mid := (low.X + high.X) / 2; mid > feet[0] && mid < feet[1] {
				t.Errorf("taken down %v: a head at %.1f mm, between the feet at %.1f", down, mid, feet)
			}
		}
		if heads != 2 {
			t.Errorf("taken down %v: %d heads, want 2", down, heads)
		}
	}
}

// However narrow an arch is, its pipe, drawn out or standing on a slope, stays under the names of people, and a crown's words stay in its picture.
func TestRaisingStaysInItsRoom(t *testing.T) {
	const source = `hoopwright: 1
title: Narrow
tunnel: {arches: 4, spacing: 11 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [[66 in], [66 in]], height: SIZE, stake: {bar: 12 mm, length: 54 in, depth: 20 in}}
site: {levels: [{arch: 1, left: 0 in, right: 20 in}]}
`
	room := paper.Rect{W: 35, H: 27.8}
	for _, height := range []string{"55 in", "60 in"} {
		r, ok := NewRaising(solved(t, []byte(strings.ReplaceAll(source, "SIZE", height))))
		if !ok {
			t.Fatal("no arch stands")
		}
		for name, draw := range map[string]func(*paper.Page){
			"first foot": func(p *paper.Page) { r.FirstFoot(p, room, 1) },
			"last foot":  func(p *paper.Page) { r.LastFoot(p, room, 1) },
			"dropped":    func(p *paper.Page) { r.Dropped(p, room, true, true) },
		} {
			page := &paper.Page{}
			draw(page)
			for _, op := range page.Ops {
				if line, ok := op.(paper.Stroke); ok && line.Pen.Width == pipeOnPaper {
					for _, step := range line.Path {
						if step.To.Y < room.Y+nameRow {
							t.Errorf("%s, %s: pipe at %.1f mm, among the names", height, name, step.To.Y)
							break
						}
					}
				}
			}
		}
		page := &paper.Page{}
		r.Together(page, room, "ridge this way")
		words := at(t, page, "ridge this way")
		if _, down := words.Lettering.Extent(words.String); words.At.Y+down > room.Bottom() {
			t.Errorf("words down to %.1f mm, the picture to %.1f", words.At.Y+down, room.Bottom())
		}
	}
}
