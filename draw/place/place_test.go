package place

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"hoopwright/draw/paper"
)

// quad is a text's four corners, worked out here from the page's operations alone.
type quad [4]paper.Point

func quadOf(t paper.Text) quad {
	up, down := t.Lettering.Extent(t.String)
	w := t.Lettering.Width(t.String)
	sin, cos := math.Sincos(t.Angle)
	var q quad
	for i, c := range [4][2]paper.Length{{0, down}, {w, down}, {w, -up}, {0, -up}} {
		x, y := float64(c[0]), float64(c[1])
		q[i] = paper.Point{X: t.At.X + paper.Length(x*cos+y*sin), Y: t.At.Y + paper.Length(-x*sin+y*cos)}
	}
	return q
}

// holds reports whether the point lies inside the quad, by the sign of its area with each edge.
func (q quad) holds(p paper.Point) bool {
	pos, neg := false, false
	for i := range q {
		a, b := q[i], q[(i+1)%4]
		v := (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
		pos, neg = pos || v > 1e-9, neg || v < -1e-9
	}
	return !(pos && neg)
}

// OnText samples two texts: any of a fine lattice of one inside the other.
func onText(a, b quad) bool {
	const n = 24
	if far := a[0].Sub(a[2]).Long() + b[0].Sub(b[2]).Long(); a[0].Sub(b[0]).Long() > far {
		return false // no two of their points can meet
	}
	for i := range n + 1 {
		for j := range n + 1 {
			u, v := float64(i)/n, float64(j)/n
			p := a[0].Times((1 - u) * (1 - v)).Add(a[1].Times(u * (1 - v))).Add(a[2].Times(u * v)).Add(a[3].Times((1 - u) * v))
			if b.holds(p) {
				return true
			}
		}
	}
	return false
}

// struck returns the texts that a stroke runs through, sampled every 0.2 mm, and the pairs of texts that share ground. Strokes are
// fraction bars' neighbours only in the PDF, so every stroke on the page counts.
func faults(page *paper.Page) []string {
	var quads []quad
	var names []string
	for _, op := range page.Ops {
		if t, ok := op.(paper.Text); ok {
			quads = append(quads, quadOf(t))
			names = append(names, t.String)
		}
	}
	var bad []string
	for i := range quads {
		for j := range i {
			if onText(quads[i], quads[j]) || onText(quads[j], quads[i]) {
				bad = append(bad, fmt.Sprintf("%q on %q", names[i], names[j]))
			}
		}
	}
	var paths []paper.Path
	for _, op := range page.Ops {
		switch op := op.(type) {
		case paper.Stroke:
			paths = append(paths, op.Path)
		case paper.Fill:
			if op.Colour != paper.White {
				paths = append(paths, op.Path)
			}
		}
	}
	for _, path := range paths {
		for _, pts := range path.Flatten(0.01) {
			for i := 1; i < len(pts); i++ {
				run := pts[i].Sub(pts[i-1])
				n := int(run.Long()/0.2) + 1
				for k := range n + 1 {
					p := pts[i-1].Add(run.Times(float64(k) / float64(n)))
					for q := range quads {
						if quads[q][0].Sub(p).Long() < quads[q][0].Sub(quads[q][2]).Long()+0.1 && quads[q].holds(p) {
							bad = append(bad, fmt.Sprintf("line through %q at %.1f %.1f", names[q], p.X, p.Y))
							k = n
						}
					}
				}
			}
		}
	}
	return bad
}

func sheet() *paper.Page { return &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}} }

var live = paper.Rect{X: 20, Y: 22, W: 183, H: 240}

// Crowds of labels among lines: whatever is set is set clear, by a check that shares nothing with the placer.
func TestLabelsKeepClear(t *testing.T) {
	for seed := range uint64(12) {
		rnd := rand.New(rand.NewPCG(seed, 1))
		somewhere := func() paper.Point {
			return paper.Point{X: live.X + paper.Length(rnd.Float64())*live.W, Y: live.Y + paper.Length(rnd.Float64())*live.H}
		}
		page := sheet()
		b := NewBoard(page, live)
		for range 20 {
			b.Line(somewhere(), somewhere(), paper.Thin)
		}
		for range 3 {
			b.Stroke(paper.Circle(somewhere(), 15), paper.Hidden)
		}
		set := 0
		for i := range 60 {
			at := somewhere()
			b.Mark(at, 1)
			b.Page.Fill(paper.Circle(at, 1), paper.White)
			l := Label{At: at, Text: fmt.Sprintf("L%d", i), Lettering: paper.Dimension, Clear: 1, Leader: End(i % 4)}
			if i%3 == 0 {
				l.Text = fmt.Sprintf("L%d 14′-3 5/8″\nfrom zero", i)
			}
			before := len(page.Ops)
			if b.Label(l) {
				set++
			} else if len(page.Ops) != before {
				t.Fatal("a label that found no place left something on the page")
			}
		}
		if set < 30 {
			t.Errorf("seed %d: only %d of 60 labels found a place", seed, set)
		}
		for _, f := range faults(page) {
			t.Errorf("seed %d: %s", seed, f)
		}
	}
}

// With an empty board the label goes where it is wanted.
func TestLabelGoesWhereWanted(t *testing.T) {
	at := paper.Point{X: 100, Y: 150}
	for _, tt := range []struct {
		toward paper.Point
		ok     func(q quad) bool
	}{
		{paper.Point{}, func(q quad) bool { return q[0].X > at.X }},
		{paper.Point{X: -1}, func(q quad) bool { return q[1].X < at.X }},
		{paper.Point{Y: -1}, func(q quad) bool { return q[0].Y < at.Y }},
		{paper.Point{Y: 1}, func(q quad) bool { return q[2].Y > at.Y }},
	} {
		b := NewBoard(sheet(), live)
		if !b.Label(Label{At: at, Text: "R3", Lettering: paper.StakeName, Toward: tt.toward}) {
			t.Fatal("no place on an empty board")
		}
		if len(b.Page.Ops) != 1 {
			t.Fatalf("%d operations, want the text alone", len(b.Page.Ops))
		}
		if q := quadOf(b.Page.Ops[0].(paper.Text)); !tt.ok(q) {
			t.Errorf("towards %v: set at %v", tt.toward, q)
		}
	}
}

// A board with no room anywhere says so.
func TestLabelFindsNoPlace(t *testing.T) {
	b := NewBoard(sheet(), live)
	b.Keep(live)
	if b.Label(Label{At: live.Centre(), Text: "R3", Lettering: paper.Body}) {
		t.Error("a label was set where no place is free")
	}
}

// Of two neighbouring marks a label without a leader lies nearer to its own.
func TestLabelBelongsToItsMark(t *testing.T) {
	b := NewBoard(sheet(), live)
	p, q := paper.Point{X: 100, Y: 100}, paper.Point{X: 106, Y: 100}
	b.Mark(p, 1)
	b.Mark(q, 1)
	for _, at := range []paper.Point{p, q} {
		if !b.Label(Label{At: at, Text: "R1", Lettering: paper.StakeName, Clear: 1, Leader: NoLeader}) {
			t.Fatal("not set")
		}
		last := b.Page.Ops[len(b.Page.Ops)-1].(paper.Text)
		bx := textBox(last.At, 0, last.String, last.Lettering)
		other := p
		if at == p {
			other = q
		}
		if bx.distance(at) >= bx.distance(other) {
			t.Errorf("label of %v is %.1f mm from it, %.1f mm from its neighbour", at, bx.distance(at), bx.distance(other))
		}
	}
}

func TestDimensionsKeepClear(t *testing.T) {
	for seed := range uint64(12) {
		rnd := rand.New(rand.NewPCG(seed, 2))
		page := sheet()
		b := NewBoard(page, live)
		for i := range 18 {
			from := paper.Point{X: 40 + paper.Length(rnd.Float64())*120, Y: 50 + paper.Length(rnd.Float64())*180}
			to := from.Add(paper.Polar(paper.Length(3+rnd.Float64()*50), rnd.Float64()*2*math.Pi))
			before := len(page.Ops)
			d := Dimension{From: from, To: to, Offset: paper.Length(rnd.Float64()*16 - 8), Text: "3′-4 1/2″", Lettering: paper.DimSmall, Ends: Ends(i % 2)}
			if !b.Dimension(d) && len(page.Ops) != before {
				t.Fatal("a dimension that found no place left something on the page")
			}
		}
		for _, f := range faults(page) {
			t.Errorf("seed %d: %s", seed, f)
		}
	}
}

// The number of a lone dimension stands over its line, whichever way the points are given, and reads from the bottom or the right.
func TestDimensionReads(t *testing.T) {
	a := paper.Point{X: 100, Y: 150}
	for _, run := range []paper.Point{{X: 60}, {X: -60}, {Y: 60}, {Y: -60}, {X: 40, Y: 40}, {X: -40, Y: 40}} {
		b := NewBoard(sheet(), live)
		if !b.Dimension(Dimension{From: a, To: a.Add(run), Text: "4′-6″", Lettering: paper.Dimension}) {
			t.Fatal("not set")
		}
		for _, op := range b.Page.Ops {
			if txt, ok := op.(paper.Text); ok {
				if txt.Angle <= -math.Pi/2+1e-6 || txt.Angle > math.Pi/2+1e-6 {
					t.Errorf("run %v: text turned %.0f°", run, txt.Angle*180/math.Pi)
				}
				q := quadOf(txt)
				mid := q[0].Add(q[2]).Times(0.5)
				if off := mid.Sub(a.Add(run.Times(0.5))).Long(); off > 5 {
					t.Errorf("run %v: number %.1f mm from the middle of its line", run, off)
				}
			}
		}
		if f := faults(b.Page); f != nil {
			t.Error(f)
		}
	}
}

// Crowded running dimensions: all set, in order, none on another, each number level with its stop where there is room.
func TestRunning(t *testing.T) {
	for _, gap := range []paper.Length{20, 7, 4, 2} {
		page := sheet()
		b := NewBoard(page, live)
		origin := paper.Point{X: 60, Y: 200}
		r := Running{Origin: origin, Offset: 10, Lettering: paper.DimSmall}
		for i := range 7 {
			r.Stops = append(r.Stops, Stop{Along: gap * paper.Length(i), Text: fmt.Sprintf("%d′-6″", 4*i)})
		}
		if !b.Running(r) {
			t.Errorf("gap %v: not all set", gap)
		}
		if f := faults(page); f != nil {
			t.Errorf("gap %v: %v", gap, f)
		}
		n := 0
		last := paper.Length(math.Inf(-1))
		for _, op := range page.Ops {
			if txt, ok := op.(paper.Text); ok {
				n++
				q := quadOf(txt)
				x := q[0].Add(q[2]).Times(0.5).X
				if x <= last {
					t.Errorf("gap %v: numbers out of order", gap)
				}
				last = x
			}
		}
		if n != len(r.Stops) {
			t.Errorf("%d numbers for %d stops", n, len(r.Stops))
		}
	}
}

// Spread against brute force: no feasible placement on a fine lattice has a smaller sum of squares.
func TestSpreadIsLeast(t *testing.T) {
	cost := func(p, q []paper.Length) (c float64) {
		for i := range p {
			c += float64((p[i] - q[i]) * (p[i] - q[i]))
		}
		return c
	}
	spots := []paper.Length{0, 1, 1.5, 6}
	least := []paper.Length{0, 2, 1.5, 2.25}
	got := Spread(spots, least)
	for i := 1; i < len(got); i++ {
		if got[i]-got[i-1] < least[i]-0.11 {
			t.Fatalf("%v: closer than %v", got, least)
		}
	}
	best := math.Inf(1)
	const h = 0.25
	for a := -3.0; a < 3; a += h {
		for b := a + float64(least[1]); b < 5; b += h {
			for c := b + float64(least[2]); c < 7; c += h {
				for d := c + float64(least[3]); d < 9; d += h {
					best = min(best, cost([]paper.Length{paper.Length(a), paper.Length(b), paper.Length(c), paper.Length(d)}, spots))
				}
			}
		}
	}
	if c := cost(got, spots); c > best+1e-9 {
		t.Errorf("spread costs %v, lattice found %v", c, best)
	}
}

// A bar of short steps is labelled without the dust of binary arithmetic.
func TestGroundBarLabels(t *testing.T) {
	page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
	GroundBar(page, paper.Point{X: 30, Y: 200}, 40, paper.Scale{Ratio: 20, Words: "1:20"}, 1000, "m")
	labels := 0
	for _, op := range page.Ops {
		if text, ok := op.(paper.Text); ok {
			labels++
			if len(text.String) > len("0.8 m") {
				t.Errorf("a step is labelled %q", text.String)
			}
		}
	}
	if labels < 3 {
		t.Errorf("%d labels on the bar", labels)
	}
}
