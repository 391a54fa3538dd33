package ground

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Levels returns the heights of the ground above the datum at an arch's left and right stake: linear between the arches
// the spec lists, level beyond the first and last of them, zero where it lists none.
func Levels(s *spec.Spec, arch int) (left, right measure.Length) {
	at := levelAt(s.Site.Levels, float64(arch))
	return at[spec.Left], at[spec.Right]
}

// levelAt is Levels at a place between arches too, by side: 2.5 is midway from arch 2 to arch 3.
func levelAt(levels []spec.Level, arch float64) (sides [2]measure.Length) {
	if len(levels) == 0 {
		return sides
	}
	byArch := func(a, b spec.Level) int { return cmp.Compare(a.Arch, b.Arch) }
	if !slices.IsSortedFunc(levels, byArch) {
		levels = slices.Clone(levels)
		slices.SortStableFunc(levels, byArch)
	}
	for i, to := range levels {
		if float64(to.Arch) < arch {
			continue
		}
		if i == 0 {
			return [2]measure.Length{to.Left, to.Right}
		}
		from := levels[i-1]
		t := measure.Length((arch - float64(from.Arch)) / float64(to.Arch-from.Arch))
		return [2]measure.Length{from.Left + (to.Left-from.Left)*t, from.Right + (to.Right-from.Right)*t}
	}
	last := levels[len(levels)-1]
	return [2]measure.Length{last.Left, last.Right}
}

// slopes returns the steepest slopes of the walk's surface, rise over run, none negative: along its middle from arch to arch, and across it from stake to stake.
func slopes(t tunnel) (lengthwise, across float64) {
	var before measure.Length
	for i := range t.stations {
		left, right := Levels(t.spec, i+1)
		across = max(across, math.Abs(float64((right-left)/t.spans[i])))
		middle := (left + right) / 2
		if i > 0 && t.spec.Tunnel.Spacing > 0 {
			lengthwise = max(lengthwise, math.Abs(float64((middle-before)/t.spec.Tunnel.Spacing)))
		}
		before = middle
	}
	return lengthwise, across
}

// The slopes at which a walking surface still counts as accessible: 2010 ADA Standards 403.3, running slope and cross slope; 405.2, a ramp. From memory.
const (
	runningSlope = 1. / 20
	crossSlope   = 1. / 48
	rampSlope    = 1. / 12
)

// walkFindings reports, for information, a walk that is steeper than wheelchairs go with ease.
func walkFindings(t tunnel) []finding.Finding {
	lengthwise, across := slopes(t)
	var parts []string
	if lengthwise > runningSlope+1e-9 {
		part := fmt.Sprintf("1 in %.0f along (1 in %.0f is an accessible walk, 1 in %.0f a ramp with rails)", 1/lengthwise, 1/runningSlope, 1/rampSlope)
		if lengthwise > rampSlope+1e-9 {
			part = fmt.Sprintf("1 in %.1f along (steeper than a ramp, 1 in %.0f; an accessible walk has 1 in %.0f)", 1/lengthwise, 1/rampSlope, 1/runningSlope)
		}
		parts = append(parts, part)
	}
	if across > crossSlope+1e-9 {
		parts = append(parts, fmt.Sprintf("1 in %.0f across (steeper than 1 in %.0f wheels drift)", 1/across, 1/crossSlope))
	}
	if len(parts) == 0 {
		return nil
	}
	return []finding.Finding{{
		Level: finding.Note, Code: "walk-slopes", Key: "site.levels",
		Text: "The ground that people walk on slopes up to " + strings.Join(parts, ", and ") + ". Whoever comes on wheels is helped.",
	}}
}

// slopeFindings warns where the ground is so steep that a tape laid on it reads long: 1 in 50 adds 0.02 %, 1 in 10 half a
// percent (Pythagoras).
func slopeFindings(t tunnel) []finding.Finding {
	const steep = .02
	n := len(t.stations)
	var sums [2]measure.Length // by which a tape along each side reads too much
	var run measure.Length
	var grade float64
	for arch := 2; arch <= n; arch++ {
		before, here := levelAt(t.spec.Site.Levels, float64(arch-1)), levelAt(t.spec.Site.Levels, float64(arch))
		d := t.spec.Tunnel.Spacing
		for side := range sums {
			rise := here[side] - before[side]
			grade = max(grade, math.Abs(float64(rise/d)))
			sums[side] += measure.Length(math.Sqrt(float64(d*d)+float64(rise*rise))) - d
		}
		run += d
	}
	if grade < steep {
		return nil
	}
	u := t.spec.Units
	return []finding.Finding{{
		Level: finding.Note, Code: holdLevel, Key: "site.levels",
		Text: fmt.Sprintf("The ground rises or falls up to %.0f in 100 along the tunnel: a tape laid on it over the whole %s reads %s too much. "+
			"Hold it level, in short lengths if need be.", 100*grade, u.Tape(run), u.Inches(max(sums[0], sums[1]))),
	}}
}

const holdLevel = "hold-tape-level"

// Slopes reports whether the ground is so steep that a tape laid on it reads too much.
func (l Layout) Slopes() bool {
	return slices.ContainsFunc(l.Findings, func(f finding.Finding) bool { return f.Code == holdLevel })
}
