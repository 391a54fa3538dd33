package layout_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// hair is what rounding may move a length by, mm.
const hair measure.Length = 1e-6

func apart(a, b spec.Point) measure.Length {
	return measure.Length(math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)))
}

func kindsPartArches(t *testing.T, p *layout.Plan) {
	var all []int
	for i, k := range p.Kinds {
		all = append(all, k.Numbers...)
		if i > 0 && p.Kinds[i-1].Numbers[0] > k.Numbers[0] {
			t.Errorf("kind %d comes before its lower-numbered neighbour", i)
		}
		for _, n := range k.Numbers {
			if p.Arches[n-1].Kind != k || p.Arches[n-1].Number != n {
				t.Errorf("arch %d is of another kind", n)
			}
		}
	}
	slices.Sort(all)
	if len(all) != p.Spec.Tunnel.Arches || len(slices.Compact(all)) != len(all) {
		t.Errorf("the kinds hold arches %v", all)
	}
}

// archAddsUp: the pipe from foot to foot is sticks, what the crown joint adds (twice a take-off under a ridge, else a coupling's stop), and the
// stop of each coupling.
func archAddsUp(t *testing.T, p *layout.Plan) {
	for _, a := range p.Arches {
		pipe := a.Spec.Pipe
		leg := func(sticks []measure.Length) (sum measure.Length) {
			for i, s := range sticks {
				if i > 0 {
					sum += pipe.CouplingStop
				}
				sum += s
			}
			return sum
		}
		joint := pipe.CouplingStop
		switch {
		case a.Spec.OneStick:
			joint = 0
		case len(p.Ridge) > 0:
			joint = 2 * pipe.TakeOff
		}
		near(t, fmt.Sprintf("arch %d", a.Number), a.Length, leg(a.Left)+joint+leg(a.Right), hair)
	}
}

func archFigures(t *testing.T, p *layout.Plan) {
	for _, a := range p.Arches {
		first, last := a.Curve[0], a.Curve[len(a.Curve)-1]
		near(t, "crown", a.PointAt(a.CrownTape).Y, a.Crown, 1e-3)
		if has(p, "no-arch") {
			continue // what is drawn then may be a sketch
		}
		near(t, "level span", last.X-first.X, a.Span, 0.05)
		near(t, "fall of the ground", last.Y-first.Y, a.RightGround-a.LeftGround, 0.05)
		near(t, "strain", measure.Length(a.Strain)*a.BendRadius, a.Spec.Pipe.OD/2, hair)
		if a.Clear >= a.Crown || a.Widest < a.Span || a.LoadFactor < 0 || a.LoadFactor > 20 || a.BendAt < 0 || a.BendAt > a.Length {
			t.Errorf("arch %d: clear %v under %v, widest %v of %v, load factor %v, bend at %v", a.Number, a.Clear, a.Crown, a.Widest, a.Span, a.LoadFactor, a.BendAt)
		}
		if a.LoadFactor != min(a.Sideways, a.Along) || (a.LoadFactorWay == "along") != (a.Along < a.Sideways) {
			t.Errorf("arch %d: %v %s of %v and %v", a.Number, a.LoadFactor, a.LoadFactorWay, a.Sideways, a.Along)
		}
	}
	// What hangs lowest over the walk takes from the clear height of its own arches alone.
	for _, a := range p.Arches {
		hang := measure.Length(0)
		for _, d := range p.Spec.Lights.Drops {
			for _, w := range d.Where {
				if w.Part != spec.RidgePieces && w.Bound != spec.Whole && w.To <= p.Spec.Tunnel.OpeningHeight {
					continue // beside the walk, not over it
				}
				beside := w.Part == spec.RidgePieces && len(p.Ridge) > 0 && (w.Of == nil || slices.Contains(w.Of, a.Number) || slices.Contains(w.Of, a.Number-1))
				if beside || w.Part != spec.RidgePieces && (w.Of == nil || slices.Contains(w.Of, a.Number)) {
					hang = max(hang, d.Hang)
				}
			}
		}
		if low := a.Crown - a.Spec.Pipe.OD/2 - hang; a.Clear > low+hair || a.Clear < low-2*measure.Inch {
			t.Errorf("arch %d: clear height %v, with drops of %v under a crown of %v", a.Number, a.Clear, hang, a.Crown)
		}
	}
}

// stationsFollow walks the route in steps of a millimetre, turning by the bend's curve at each, and meets every arch on its way. The ground
// at an arch is as the spec lists it, linear between, level beyond.
func stationsFollow(t *testing.T, p *layout.Plan) {
	site := p.Spec.Site
	given := measure.Length(0)
	for _, l := range site.Route {
		given += l.Straight + l.Radius*measure.Length(math.Abs(float64(l.Turn)))
	}
	x, y, heading, walked := float64(site.Start.X), float64(site.Start.Y), float64(site.Heading), 0.0
	next := 0
	for _, l := range site.Route {
		long, curve := float64(l.Straight), 0.0
		switch {
		case l.Rest:
			long = float64(p.Spec.Tunnel.Length-given) + 1
		case l.Turn != 0:
			long, curve = float64(l.Radius)*math.Abs(float64(l.Turn)), math.Copysign(1/float64(l.Radius), float64(l.Turn))
		}
		for done := 0.0; done < long && next < len(p.Arches); {
			station := p.Ground.Stations[next]
			if walked >= float64(station.Along)-1e-6 {
				near(t, fmt.Sprintf("arch %d", next+1), apart(station.At, spec.Point{X: measure.Length(x), Y: measure.Length(y)}), 0, 0.01)
				near(t, "heading, rad", measure.Length(station.Heading), measure.Length(heading), 1e-6)
				next++
				continue
			}
			step := min(1, long-done, float64(station.Along)-walked)
			sin, cos := math.Sincos(heading + curve*step/2)
			x, y, heading = x+step*sin, y+step*cos, heading+curve*step
			done, walked = done+step, walked+step
		}
	}
	if next < len(p.Arches)-1 { // the last may stand a hair beyond the route's end
		t.Errorf("the route reaches arch %d", next)
	}
	if len(site.Levels) == 0 {
		return
	}
	for i := range p.Arches {
		before, after := site.Levels[0], site.Levels[len(site.Levels)-1]
		for _, l := range site.Levels {
			if l.Arch <= i+1 {
				before = l
			}
		}
		for _, l := range slices.Backward(site.Levels) {
			if l.Arch >= i+1 {
				after = l
			}
		}
		share := measure.Length(0)
		switch {
		case i+1 < before.Arch:
			after = before
		case i+1 > after.Arch:
			before = after
		case after.Arch > before.Arch:
			share = measure.Length(i+1-before.Arch) / measure.Length(after.Arch-before.Arch)
		}
		near(t, "ground at "+p.Stakes[2*i].String(), p.Stakes[2*i].Ground, before.Left+(after.Left-before.Left)*share, hair)
		near(t, "ground at "+p.Stakes[2*i+1].String(), p.Stakes[2*i+1].Ground, before.Right+(after.Right-before.Right)*share, hair)
	}
}

func stakesStand(t *testing.T, p *layout.Plan) {
	guys := 0
	for i, a := range p.Arches {
		l, r, at := p.Stakes[2*i], p.Stakes[2*i+1], p.Ground.Stations[i]
		if l.String() != fmt.Sprintf("L%d", a.Number) || r.String() != fmt.Sprintf("R%d", a.Number) {
			t.Fatalf("arch %d stands on %s and %s", a.Number, l.StakeID, r.StakeID)
		}
		near(t, "span", apart(l.At(), r.At()), a.Span, 1e-3)
		near(t, "middle", apart(spec.Point{X: (l.X + r.X) / 2, Y: (l.Y + r.Y) / 2}, at.At), 0, 1e-3)
		near(t, "along", l.Along, measure.Length(i)*p.Spec.Tunnel.Spacing, 1e-3)
		near(t, "offsets", l.Offset+r.Offset, 0, hair)
		near(t, "offset", r.Offset, a.Span/2, hair)
		// Square to the way: the line from left to right has no part along the heading.
		sin, cos := math.Sincos(float64(at.Heading))
		near(t, "square", (r.X-l.X)*measure.Length(sin)+(r.Y-l.Y)*measure.Length(cos), 0, 1e-3)
		near(t, "fall", r.Ground-l.Ground, a.RightGround-a.LeftGround, hair)
	}
	pegs := 0
	for _, s := range p.Stakes[2*len(p.Arches):] {
		if s.Bay > 0 {
			// In its bay, in the wall, short of the neighbour's foot; never on it.
			pegs++
			bay := s.Bay
			if !slices.Contains(p.Spec.Braces.Bays, bay) || s.String()[0] != 'P' || s.Arch != bay && s.Arch != bay+1 || (s.Offset < 0) != (s.Side == spec.Left) {
				t.Errorf("peg %+v", s)
			}
			leg, next := p.Stakes[2*s.Arch-2], p.Stakes[2*(2*bay+1-s.Arch)-2]
			near(t, "peg", max(s.Along-leg.Along, leg.Along-s.Along), p.Spec.Tunnel.Spacing-practice.PegShort(p.Spec.Units), 1e-3)
			if gap := max(s.Along-next.Along, next.Along-s.Along); gap < 100 || gap > 200 {
				t.Errorf("peg %s stands %v from the neighbour", s, gap)
			}
			continue
		}
		guys++
		if !s.Guy || s.String()[0] != 'G' || !slices.Contains(p.Spec.Guys.Arches, s.Arch) || (s.Offset < 0) != (s.Side == spec.Left) {
			t.Errorf("guy stake %+v", s)
		}
	}
	if pegs < 2*len(p.Spec.Braces.Bays) {
		t.Errorf("%d pegs for bays %v", pegs, p.Spec.Braces.Bays)
	}
	if guys < 2*len(p.Spec.Guys.Arches) {
		t.Errorf("%d guy stakes for arches %v", guys, p.Spec.Guys.Arches)
	}
}

func tapesAgree(t *testing.T, p *layout.Plan) {
	at := map[ground.StakeID]spec.Point{}
	for _, s := range p.Stakes {
		at[s.StakeID] = s.At()
	}
	mark := map[string]spec.Point{}
	for _, m := range p.Ground.Marks {
		mark[m.Name] = m.At
	}
	for _, tie := range p.Ties {
		near(t, tie.Stake.String()+" from "+tie.MarkA, tie.A, apart(at[tie.Stake], mark[tie.MarkA]), hair)
		near(t, tie.Stake.String()+" from "+tie.MarkB, tie.B, apart(at[tie.Stake], mark[tie.MarkB]), hair)
		if tie.MarkC != "" {
			near(t, tie.Stake.String()+" from "+tie.MarkC, tie.C, apart(at[tie.Stake], mark[tie.MarkC]), hair)
		}
		reach := 100 * measure.Foot // of a tape that checks
		if p.Spec.Units == measure.Metric {
			reach = 30 * measure.Metre
		}
		third := false
		for name, m := range mark {
			third = third || name != tie.MarkA && name != tie.MarkB && apart(at[tie.Stake], m) < reach
		}
		if tie.MarkA == tie.MarkB || tie.MarkA == tie.MarkC || tie.MarkB == tie.MarkC || third && tie.MarkC == "" || tie.MarkC != "" && len(mark) < 3 {
			t.Errorf("%s is tied to %q, %q and %q", tie.Stake, tie.MarkA, tie.MarkB, tie.MarkC)
		}
	}
	if len(mark) >= 2 && len(p.Ties) != len(p.Stakes) {
		t.Errorf("%d ties for %d stakes", len(p.Ties), len(p.Stakes))
	}
	for _, d := range p.Diagonals {
		near(t, fmt.Sprintf("%v to %v", d.From, d.To), d.Distance, apart(at[d.From], at[d.To]), hair)
	}
	var want, got []string
	for n := 1; n < len(p.Arches); n++ {
		want = append(want, fmt.Sprintf("L%d R%d", n, n+1), fmt.Sprintf("R%d L%d", n, n+1))
	}
	if n := len(p.Arches); n > 1 {
		want = append(want, fmt.Sprintf("L1 R%d", n), fmt.Sprintf("R1 L%d", n))
	}
	for _, d := range p.Diagonals {
		got = append(got, d.From.String()+" "+d.To.String())
	}
	if !slices.Equal(got, want) {
		t.Errorf("diagonals %v, want %v", got, want)
	}
}

// tapeOverCrowns: on a straight row a tape pulled tight from crown to crown is at each crown between as high as the highest chord from a crown before it to one behind, or as the crown itself; on a
// bend it is as long as the pieces it is held to.
func tapeOverCrowns(t *testing.T, p *layout.Plan) {
	for from := 1; from <= len(p.Ridge); from++ {
		for to := from + 1; to <= min(from+8, len(p.Ridge)+1); to++ {
			var level, high []float64
			pieces := 0.0
			for n := from; n <= to; n++ {
				c, along := crownOf(p, n), 0.0
				if n > from {
					b := crownOf(p, n-1)
					along = level[n-1-from] + math.Hypot(c[0]-b[0], c[1]-b[1])
					pieces += float64(p.Ridge[n-2].Centres)
				}
				level, high = append(level, along), append(high, c[2])
			}
			tape := make([]float64, len(level))
			for k := range tape {
				tape[k] = high[k]
				for i := range k {
					for j := k + 1; j < len(level); j++ {
						tape[k] = max(tape[k], high[i]+(high[j]-high[i])*(level[k]-level[i])/(level[j]-level[i]))
					}
				}
			}
			want := 0.0
			for k := 1; k < len(tape); k++ {
				want += math.Hypot(level[k]-level[k-1], tape[k]-tape[k-1])
			}
			if !p.Ground.Straight {
				want = pieces
			}
			near(t, fmt.Sprintf("tape from crown %d to %d", from, to), p.Crew.Crowns.Apart(from, to), measure.Length(want), 1e-3)
		}
	}
}

// ridgeReaches: a piece and both take-offs make up the distance of the crowns to within the saw's grid. On a bend the distance is the arc's.
func ridgeReaches(t *testing.T, p *layout.Plan) {
	if want := max(p.Spec.Tunnel.Arches-1, 0); p.Spec.Ridge.Present && len(p.Ridge) != want || !p.Spec.Ridge.Present && len(p.Ridge) > 0 {
		t.Fatalf("%d ridge pieces", len(p.Ridge))
	}
	grid := p.Spec.Units.Grid()
	for i, r := range p.Ridge {
		a, b := p.Arches[i], p.Arches[i+1]
		reach := r.Cut + a.Spec.Pipe.TakeOff + b.Spec.Pipe.TakeOff - r.Centres
		if r.Bay != i+1 || reach < -grid/8-hair || reach >= grid {
			t.Errorf("bay %d: %v between centres, cut %v", r.Bay, r.Centres, r.Cut)
		}
		steps := float64(r.Cut / grid)
		near(t, "on the grid", measure.Length(steps), measure.Length(math.Round(steps)), 1e-6)
		chord, turn := crownGap(p, i), math.Abs(float64(p.Ground.Stations[i+1].Heading-p.Ground.Stations[i].Heading))
		if turn == 0 {
			near(t, fmt.Sprintf("ridge %d", r.Bay), r.Centres, chord, hair)
		} else if r.Centres < chord || float64(r.Centres) > float64(chord)*turn/2/math.Sin(turn/2)*(1+1e-9) {
			t.Errorf("ridge %d: %v over a chord of %v that turns %v", r.Bay, r.Centres, chord, turn)
		}
	}
}

// place is a point in space: x, y, z.
type place [3]float64

func (a place) to(b place) measure.Length {
	x, y, z := a[0]-b[0], a[1]-b[1], a[2]-b[2]
	return measure.Length(math.Sqrt(x*x + y*y + z*z))
}

// onArch returns a point of an arch's plane in space, worked out from its stakes: x from the middle of its ground line to the right.
func onArch(p *layout.Plan, number int, x, y measure.Length) place {
	l, r := p.Stakes[2*number-2], p.Stakes[2*number-1]
	share := float64(x/(r.Offset-l.Offset)) + 0.5
	return place{float64(l.X) + share*float64(r.X-l.X), float64(l.Y) + share*float64(r.Y-l.Y), float64(l.Ground+r.Ground)/2 + float64(y)}
}

func crownOf(p *layout.Plan, number int) place {
	a := p.Arches[number-1]
	c := a.PointAt(a.CrownTape)
	return onArch(p, number, c.X, c.Y)
}

func crownGap(p *layout.Plan, bay int) measure.Length { return crownOf(p, bay+1).to(crownOf(p, bay+2)) }
