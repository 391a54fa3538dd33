package power

import (
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// longWalk is a walk at the limit of the spec: 240 arches, two strings a leg and one a ridge piece, 40 circuits: 1199 strings.
func longWalk() Input {
	in := tunnel(240)
	leg, _ := catalog.FindString("mini led 100 warm")
	ridge, _ := catalog.FindString("mini led 50 warm")
	in.legs(leg)
	in.legs(leg)
	in.ridge(ridge)
	for i := range 40 {
		in.outlet(letters(i), measure.Length(i%2)*8000-4000, measure.Length(i)*9000, 120, 20)
	}
	in.Spec.Power.Split = spec.SplitArches
	return in
}

// One circuit could carry every second arch's amps, but not 350 m of cord: circuits are taken up until no last bulb loses more than 3 %, and no more than that.
func TestLongWalk(t *testing.T) {
	in := longWalk()
	p := Feed(in)
	checkPlan(t, in, p)
	if p.Missing != 0 {
		t.Errorf("%v A missing", p.Missing)
	}
	for _, c := range p.Chains {
		if c.Drop > dropSeen+1e-9 {
			t.Fatalf("run %s loses %.2f %% with circuits to spare", c.Name, 100*c.Drop)
		}
	}
	if used := p.inUse(); used < 4 || used > 16 {
		t.Errorf("%d of %d circuits in use", used, len(p.Circuits))
	}
	if n := p.Pieces(); n > 480 {
		t.Errorf("%d cords and three-ways for 240 arches", n)
	}
}

// BenchmarkLongWalk feeds the walk at the limit of the spec.
func BenchmarkLongWalk(b *testing.B) {
	in := longWalk()
	for b.Loop() {
		Feed(in)
	}
}

// With one circuit and nothing else to be had, the loss is told.
func TestDropIsTold(t *testing.T) {
	for lamp, level := range map[catalog.Lamp]string{catalog.LED: "note", catalog.Incandescent: "look at"} {
		in := tunnel(78)
		in.legs(label("s", 12, lamp))
		in.outlet("porch", -4000, -1000, 120, 20)
		p := Feed(in)
		checkPlan(t, in, p)
		worst := 0.0
		for _, c := range p.Chains {
			worst = max(worst, c.Drop)
		}
		found := false
		for _, f := range p.Findings {
			if f.Code == "drop-over-5-percent" {
				found = f.Level.String() == level
			}
		}
		if found != (worst > dropFar) || worst < dropSeen {
			t.Errorf("%v: worst drop %v, findings %v", lamp, worst, p.Findings)
		}
	}
}

// Sixty arches with outlets at one end, or at both: circuits are taken up for the volts' sake, and given back where they do not help.
func TestCircuitsForTheVolts(t *testing.T) {
	var circuits []int
	for _, watts := range []measure.Power{1, 20} {
		in := tunnel(60)
		in.legs(label("s", watts, catalog.LED))
		for i := range 2 {
			in.outlet(letters(2*i), -3000, measure.Length(i)*60*bay, 120, 20)
			in.outlet(letters(2*i+1), 3000, measure.Length(i)*60*bay, 120, 20)
		}
		p := Feed(in)
		checkPlan(t, in, p)
		circuits = append(circuits, p.inUse())
	}
	if circuits[0] != 1 || circuits[1] < 2 {
		t.Errorf("%v circuits for 1 W and 20 W strings", circuits)
	}
}

// dropOf returns the share of its volts that a run loses by itself.
func dropOf(in Input, c Chain) float64 {
	var run []lights.String
	for _, name := range c.Strings {
		for _, s := range in.Strings {
			if s.Name == name {
				run = append(run, s)
			}
		}
	}
	_, lost := along(run)
	return float64(lost / run[0].Label.Volts)
}
