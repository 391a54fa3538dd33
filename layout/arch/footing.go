package arch

import (
	"fmt"
	"strings"

	"hoopwright/layout/anchor"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// footings works out how deep the stakes must stand in still air, for each soil that the spec's word stands for.
func (m *model) footings(k *Kind) {
	bar := m.spec.Stake.Bar
	if bar.Diameter <= 0 || m.spec.Foot != nil {
		return
	}
	for _, soil := range anchor.Named(m.in.Soil.String()) {
		k.Footings = append(k.Footings, Footing{Soil: soil, Depth: soil.Depth(bar.Diameter, k.Thrust, k.FootMoment)})
	}
}

// bar reports a bar that does not fit its pipe or does not bear the foot.
func (j *judge) bar() {
	u, bar, pipe := j.units, j.spec.Stake.Bar, j.spec.Pipe
	key, _ := j.in.path("stake.bar")
	if bar.OverRibs > pipe.ID() {
		j.add(j.must("stake.bar"), codeThick, key, "the %s bar measures %s over its ribs and does not enter %s, %s inside. Take a thinner bar.",
			bar.Name, u.Size(bar.OverRibs), pipe.Name, u.Size(pipe.ID()))
	}
	first := j.spec.Left[0]
	if n := len(j.spec.Right); n > 0 {
		first = min(first, j.spec.Right[0])
	}
	if show := j.spec.Stake.Showing(); show > first {
		key, _ := j.in.path("stake.length", "stake.depth")
		j.add(j.must("stake.length", "stake.depth"), codeSleeve, key, "the bar shows %s, more than the %s of the lowest stick, and meets its joint. Drive it deeper, or take a shorter bar or a longer stick.",
			u.Inches(show), u.Cut(first))
	}
	if yields := anchor.Yields(bar.Diameter, bar.Yield); j.kind.FootMoment > yields {
		j.add(j.must("stake.bar"), codeYields, key, "in still air the foot asks %s of the bar, which takes a lasting bend at %s. Take a thicker bar, or let the legs stand nearer to plumb.",
			moment(j.kind.FootMoment, u), moment(yields, u))
	}
}

// stake reports a stake that its soil does not hold in still air.
func (j *judge) stake() {
	u, stake := j.units, j.spec.Stake
	var short []string
	least := measure.Length(0)
	for _, f := range j.kind.Footings {
		if f.Depth > stake.Depth {
			short = append(short, fmt.Sprintf("%s (%s) needs %s", f.Soil.Name, f.Soil.Assumed, u.Inches(f.Depth)))
			least = max(least, f.Depth)
		}
	}
	if len(short) == 0 {
		return
	}
	remedy := "Drive it " + u.Inches(least) + " deep, and pull on one before trusting any."
	if least > stake.Length {
		remedy = "No depth of this bar does. Take a thicker bar, or bring the feet nearer to where the legs stand plumb."
	}
	key, _ := j.in.path("stake.depth")
	j.add(finding.LookAt, codeShallow, key, "%s deep, a stake does not hold even still air (%s and %s at the ground): soil that is %s. %s",
		u.Inches(stake.Depth), u.Force(measure.Abs(j.kind.Thrust)), moment(j.kind.FootMoment, u), strings.Join(short, ", "), remedy)
}

// moment prints N·m in the packet's units.
func moment(m float64, u measure.System) string {
	if u == measure.Metric {
		return fmt.Sprintf("%.1f N·m", m)
	}
	return fmt.Sprintf("%.0f lb·in", m/float64(measure.PoundForce)/measure.Inch.Metres())
}
