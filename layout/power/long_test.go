package power

import (
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// A walk at the limit of the spec: 240 arches, two strings a leg and a ridge of another kind, 40 circuits. One circuit could carry a wall's
// amps, but not 350 m of thin cord: circuits are taken up until no cord loses too much and no more than
// eight are in line, or there are no more.
func TestLongWalk(t *testing.T) {
	in := tunnel(240)
	leg, _ := catalog.FindString("mini led 100 warm")
	ridge, _ := catalog.FindString("mini led 50 warm")
	in.legs(leg)
	in.legs(leg)
	in.ridge(ridge)
	for i := range 40 {
		in.outlet(letters(i), measure.Length(i%2)*8000-4000, measure.Length(i)*9000, 120, 20)
	}
	in.Spec.Power.Split = true
	p := Feed(in)
	checkPlan(t, in, p)
	if p.Missing != 0 {
		t.Errorf("%v A missing", p.Missing)
	}
	for _, d := range p.Feeders {
		for i, j := range d.Joints {
			if lost := float64((d.Volts - j.Volts) / d.Volts); lost > dropFar {
				t.Errorf("feeder %s joint %d: %.1f %% lost in cords with circuits to spare", d.Name, i, 100*lost)
			}
		}
	}
	used := 0
	for _, c := range p.Circuits {
		if c.Lights > 0 {
			used++
		}
	}
	line := 0
	for _, c := range p.Chains {
		line = max(line, len(c.Cords))
	}
	if used < 4 || line > mostInLine && used < len(p.Circuits) {
		t.Errorf("%d of %d circuits in use with %d cords in line", used, len(p.Circuits), line)
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
		if worst < dropFar || !found {
			t.Errorf("%v: worst drop %v, findings %v", lamp, worst, p.Findings)
		}
	}
}

// Sixty arches with outlets on both sides, at one end or both: circuits are taken up for the sake of shorter lines, and chains end before they
// alone lose 5 % of their volts.
func TestCircuitsShortenLines(t *testing.T) {
	var lines, circuits []int // with outlets at one end, and at both
	for _, outlets := range []int{1, 2} {
		in := tunnel(60)
		in.legs(label("s", 0.5, catalog.LED))
		in.legs(label("s", 0.5, catalog.LED)) // no socket left to fan out from
		in.ridge(label("r", 5, catalog.LED))
		for i := range outlets {
			in.outlet(letters(2*i), -3000, measure.Length(i)*60*bay, 120, 20)
			in.outlet(letters(2*i+1), 3000, measure.Length(i)*60*bay, 120, 20)
		}
		p := Feed(in)
		checkPlan(t, in, p)
		line, used := 0, 0
		for _, c := range p.Chains {
			line = max(line, len(c.Cords))
			if own := dropOf(in, c); own > dropFar && len(c.Strings) > 1 {
				t.Errorf("chain %s of %d strings alone loses %.1f %%", c.Name, len(c.Strings), 100*own)
			}
		}
		for _, c := range p.Circuits {
			if c.Lights > 0 {
				used++
			}
		}
		lines, circuits = append(lines, line), append(circuits, used)
	}
	if lines[1] >= lines[0] || circuits[1] <= circuits[0] {
		t.Errorf("%v cords in line on %v circuits: outlets at the far end should shorten them", lines, circuits)
	}
}

// dropOf returns the share of its volts that a chain loses by itself.
func dropOf(in Input, c Chain) float64 {
	var labels []catalog.String
	var amps []measure.Current
	for _, name := range c.Strings {
		for _, s := range in.Strings {
			if s.Name == name {
				labels, amps = append(labels, s.Label), append(amps, ampsOf(s.Label))
			}
		}
	}
	_, lost := dropAlong(labels, amps)
	return float64(lost / labels[0].Volts)
}
