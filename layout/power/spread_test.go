package power

import (
	"slices"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// worstOf walks a plan's joints and returns the most cords in line behind which something is plugged in, the greatest loss at a last bulb, and
// at how many places more than three things plug in.
func worstOf(p Plan) (line int, drop float64, stacked int) {
	for _, d := range p.Feeders {
		for i, j := range d.Joints {
			if len(j.Plugs)+j.Onward > 3 {
				stacked++
			}
			n := 0
			for k := i; k >= 0; k = d.Joints[k].From {
				n += len(d.Joints[k].Cords)
			}
			line = max(line, n)
		}
	}
	for _, c := range p.Chains {
		drop = max(drop, c.Drop)
	}
	return line, drop, stacked
}

// park is a walk of sixty arches with two outlets, one a side, at some places along it; its ridge is of another kind than its legs. Figures
// invented.
func park(at ...measure.Length) Input {
	in := tunnel(60)
	in.legs(label("leg", 5, catalog.LED))
	ridge := label("ridge", 4, catalog.LED)
	ridge.Length, ridge.MostChain = 4000, 60
	in.ridge(ridge)
	for i, y := range at {
		in.outlet(letters(2*i), -3000, y, 120, 20)
		in.outlet(letters(2*i+1), 3000, y, 120, 20)
	}
	in.Spec.Power.Split = true
	return in
}

// Outlets at both ends and in the middle: all are used, though two circuits would carry the amps, and then no more than five cords are in line,
// nothing loses more than 5 %, no tap sits in a tap, and each foot is fed from the nearest outlet of its side, or one hardly farther.
func TestParkUsesTheOutletsAtHand(t *testing.T) {
	places := []measure.Length{-1000, 30 * bay, 60 * bay}
	in := park(places...)
	p := Feed(in)
	checkPlan(t, in, p)
	if line, drop, stacked := worstOf(p); line > 5 || drop > 0.05 || stacked > 0 {
		t.Errorf("%d cords in line, %.2f %% lost, %d taps in taps", line, 100*drop, stacked)
	}
	for _, c := range p.Circuits {
		if c.Lights == 0 {
			t.Errorf("circuit %s feeds nothing", c.Name)
		}
	}
	for _, d := range p.Feeders {
		k := slices.IndexFunc(in.Spec.Site.Outlets, func(o spec.Outlet) bool { return o.Name == d.Outlet })
		for _, j := range d.Joints {
			y := measure.Length(j.Arch-1) * bay
			own, best := apart(y, in.Spec.Site.Outlets[k].At.Y), measure.Length(1e9)
			for _, q := range places {
				best = min(best, apart(y, q))
			}
			if own > best+2*bay {
				t.Errorf("%s is fed from %s, %v away, with one at %v", j.At, d.Outlet, own, best)
			}
		}
	}
}

// A circuit that neither shortens lines nor saves volts is not taken up.
func TestNoCircuitForNothing(t *testing.T) {
	in := tunnel(8)
	in.legs(label("led", 4.8, catalog.LED))
	for i := range 3 {
		in.outlet(letters(2*i), -3000, measure.Length(i)*4*bay, 120, 20)
		in.outlet(letters(2*i+1), 3000, measure.Length(i)*4*bay, 120, 20)
	}
	in.Spec.Power.Split = true
	p := Feed(in)
	checkPlan(t, in, p)
	used := 0
	for _, c := range p.Circuits {
		if c.Lights > 0 {
			used++
		}
	}
	if line, _, _ := worstOf(p); used != 2 || line > 5 {
		t.Errorf("%d circuits for two short walls, %d cords in line", used, line)
	}
}

// An outlet with one socket halfway along a wall sends a cord each way from one tap at the nearest foot, which holds three things.
func TestBothWaysWithoutTapInTap(t *testing.T) {
	in := tunnel(9)
	for n := range 9 {
		in.hang(lights.Leg(spec.Left, n+1), label("led", 4.8, catalog.LED), foot(spec.Left, n+1), top(spec.Left, n+1))
	}
	in.outlet("post", -3000, 4*bay, 120, 20)
	in.Spec.Site.Outlets[0].Sockets = 1
	p := Feed(in)
	checkPlan(t, in, p)
	if line, _, stacked := worstOf(p); line > 5 || stacked > 0 || len(p.Feeders) != 1 || p.Feeders[0].Joints[0].Onward != 2 {
		t.Errorf("%d cords in line, %d taps in taps, findings %v", line, stacked, codes(p))
	}
}

// With the circuits chosen, free sockets of an outlet shorten the line by a cord straight to its far half.
func TestFreeSocketsShortenTheLine(t *testing.T) {
	var lines []int
	for _, sockets := range []int{1, 4} {
		in := tunnel(30)
		for n := range 30 {
			in.hang(lights.Leg(spec.Left, n+1), label("led", 0.5, catalog.LED), foot(spec.Left, n+1), top(spec.Left, n+1))
		}
		in.outlet("post", -3000, 0, 120, 20)
		in.Spec.Site.Outlets[0].Sockets = sockets
		p := Feed(in)
		checkPlan(t, in, p)
		line, _, _ := worstOf(p)
		if told := slices.Contains(codes(p), "cords-in-line"); told != (line > 5) {
			t.Errorf("%d cords in line, told: %v", line, told)
		}
		lines = append(lines, line)
	}
	if lines[0] <= 5 || lines[1] > 5 {
		t.Errorf("%v cords in line with one socket and with four", lines)
	}
}

// Chains that use up the 5 % alone, though their label allows more strings, are cut shorter once their cords take them over.
func TestLongChainsLeaveVoltsForTheirCords(t *testing.T) {
	in := park(-1000, 30*bay, 60*bay)
	long := feed(in, newSite(in), ownShares[0])
	if _, drop, _ := worstOf(long); drop <= 0.05 {
		t.Fatalf("the uncut chains lose only %.2f %%: nothing to mend", 100*drop)
	}
	p := Feed(in)
	if _, drop, _ := worstOf(p); drop > 0.05 {
		t.Errorf("%.2f %% lost", 100*drop)
	}
	most := func(p Plan) int {
		n := 0
		for _, c := range p.Chains {
			n = max(n, len(c.Strings))
		}
		return n
	}
	if most(p) >= most(long) {
		t.Errorf("%d strings in line, uncut %d", most(p), most(long))
	}
}

// A cord up to the crown starts at a foot with a socket free where one is near.
func TestCrownHangsFromAFreeSocket(t *testing.T) {
	in := tunnel(12)
	in.legs(label("leg", 4.8, catalog.LED))
	ridge := label("ridge", 1, catalog.LED)
	ridge.MostChain = 4
	in.ridge(ridge)
	in.outlet("a", -3000, -1000, 120, 20)
	in.outlet("b", 3000, -1000, 120, 20)
	p := Feed(in)
	checkPlan(t, in, p)
	crowns := 0
	for _, d := range p.Feeders {
		for _, j := range d.Joints {
			if j.Climb > tapReach {
				crowns++
			}
		}
	}
	if _, _, stacked := worstOf(p); crowns != 3 || stacked > 0 {
		t.Errorf("%d chains fed at crowns, %d taps in taps", crowns, stacked)
	}
}

// apart returns how far apart two places along the walk are.
func apart(a, b measure.Length) measure.Length { return max(a-b, b-a) }
