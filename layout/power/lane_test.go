package power

import (
	"math"
	"slices"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

const guyAhead = 2600 * measure.Millimetre

// guyedTunnel has its last arch's guys straight ahead of its feet.
func guyedTunnel() Input {
	in := tunnel(3)
	for side, x := range map[spec.Side]measure.Length{spec.Left: -half, spec.Right: half} {
		in.Ground.Stakes = append(in.Ground.Stakes, ground.Stake{StakeID: ground.StakeID{Arch: 3, Side: side, Guy: true}, X: x, Y: 2*bay + guyAhead})
	}
	in.legs(label("led", 4.8, catalog.LED))
	return in
}

// inLane is how much of a path lies between the guys' stakes and the feet, or straight beyond them as wide as the opening: told by steps of a millimetre.
func inLane(path []spec.Point) (long measure.Length) {
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		n := int(ground.Distance(a, b))
		for k := range n {
			t := measure.Length(k) / measure.Length(n)
			x, ahead := measure.Abs(a.X+t*(b.X-a.X)), a.Y+t*(b.Y-a.Y)-2*bay
			if ahead > 1 && ahead < guyAhead && x < half-practice.CordsClear || ahead >= guyAhead && x < 499 {
				long++
			}
		}
	}
	return long
}

// From an outlet ahead of the exit a cord goes round outside the guy's stake, as long as its two straights, and crosses no lane; from one amidst the lane it leaves that square to it.
func TestCordsKeepOutOfLanes(t *testing.T) {
	hyp := func(x, y measure.Length) measure.Length { return measure.Length(math.Hypot(float64(x), float64(y))) }
	const clear = practice.CordsClear
	round := hyp(clear, guyAhead+clear) // from the corner outside the stake to the foot
	for _, c := range []struct {
		x, ahead, lies, within measure.Length
		told                   bool
	}{
		{-700, 6000, hyp(half+clear-700, 6000-guyAhead-clear) + round, 0, true},
		{-100, 6000, 500 + clear - 100 + hyp(half-500, 6000-guyAhead-clear) + round, 400, true},
		{-2500, 3000, hyp(2500-half, 3000), 0, false},
		{-700, 12000, hyp(half+clear-700, 12000-guyAhead-clear) + round, 0, false},
	} {
		in := guyedTunnel()
		in.outlet("porch", c.x, 2*bay+c.ahead, 120, 15)
		s := newSite(in)
		a := s.approach(in.Spec.Site.Outlets[0], spec.Left)
		if math.Abs(float64(a.lies-c.lies)) > 1 {
			t.Errorf("from %v, %v ahead: %v long by %v, want %v", c.x, c.ahead, a.lies, a.path, c.lies)
		}
		if in := inLane(a.path); math.Abs(float64(in-c.within)) > 3 {
			t.Errorf("from %v, %v ahead: %v of it in the lane, want %v", c.x, c.ahead, in, c.within)
		}
		p := Feed(in)
		checkPlan(t, in, p)
		if told := slices.Contains(codes(p), "outlet-in-lane"); told != c.told {
			t.Errorf("from %v, %v ahead: told %v", c.x, c.ahead, told)
		}
	}
}

// From an outlet nearly amidst a bay a cord lies straight to either foot; to one farther on, along the wall from the nearer of the two.
func TestCordsLieStraightToEitherFoot(t *testing.T) {
	in := tunnel(4)
	in.legs(label("led", 4.8, catalog.LED))
	in.outlet("porch", half+4000, 1.5*bay+20, 120, 15)
	s := newSite(in)
	a := s.approach(in.Spec.Site.Outlets[0], spec.Right)
	rise := practice.OutletRise(in.Spec.Units)
	slant := func(y measure.Length) measure.Length { return measure.Length(math.Hypot(4000, float64(y))) }
	for arch, want := range []measure.Length{slant(0.5*bay+20) + bay, slant(0.5*bay + 20), slant(0.5*bay - 20), slant(0.5*bay-20) + bay} {
		if got := s.toFoot(a, spec.Right, arch); math.Abs(float64(got-want-rise)) > 0.01 {
			t.Errorf("to foot %d %v, want %v", arch+1, got, want+rise)
		}
		var lies measure.Length
		path := s.pathTo(a, spec.Right, arch)
		for i := 1; i < len(path); i++ {
			lies += ground.Distance(path[i-1], path[i])
		}
		if math.Abs(float64(lies-want)) > 0.01 || path[len(path)-1] != s.feet[spec.Right][arch].At() {
			t.Errorf("to foot %d by %v, %v long", arch+1, path, lies)
		}
	}
	checkPlan(t, in, Feed(in))
}
