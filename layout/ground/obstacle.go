package ground

import (
	"fmt"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// obstacle tells of a feature with a height that the tunnel runs into; nothing where it does not. It forbids building where a leg would rise through it, swing out into it, or
// where it blocks an arch up to the crown; otherwise it stands in the walk, which is for the organiser to judge.
func obstacle(t tunnel, f spec.Feature) (level finding.Level, text string) {
	if f.Height <= 0 {
		return 0, ""
	}
	u, lim := t.spec.Units, practice.OnGround(t.spec.Units)
	height := f.Height + lim.Edge
	low, high := box(f.Outline, lim.Edge)
	if len(f.Outline) == 0 {
		low, high = box([]spec.Point{f.At}, f.Radius+lim.Edge)
	}
	m := meetings(t, f, height, lim.Edge, low, high)
	feature := fmt.Sprintf("The feature %s, %s high,", f.Name, u.Room(f.Height))
	switch {
	case len(m.legs) > 0:
		text = fmt.Sprintf("%s is where %s %s %s: the pipe must clear it by %s.",
			feature, say.Agree(len(m.legs), "leg", "legs"), say.Some(m.legs, mostNames), say.Agree(len(m.legs), "rises", "rise"), u.Inches(lim.Edge))
		if m.swing > lim.Tape {
			text += fmt.Sprintf(" It swings out %s beyond its stake below that height.", u.Inches(m.swing))
		}
		return finding.MustFix, text + " Move the tunnel."
	case len(m.blocked) > 0:
		return finding.MustFix, fmt.Sprintf("%s stands across %s %s: the pipe cannot pass over it. Move the tunnel.",
			feature, say.Agree(len(m.blocked), "arch", "arches"), say.Some(m.blocked, mostNames))
	}
	for _, b := range t.bays(f.Height) {
		if overlap(low, high, b.corners) && toOutline(f, b.corners) == 0 {
			return finding.LookAt, fmt.Sprintf("%s stands within the tunnel at %s: see that people can pass it, or move the tunnel.", feature, b.name)
		}
	}
	return 0, ""
}

// met is what of a tunnel a feature meets.
type met struct {
	legs    []string       // whose pipe rises through it
	blocked []string       // arches it stands across
	swing   measure.Length // how far pipe that meets it lies outside its stake
}

// meetings finds what of the tunnel, up to a height, comes nearer to a feature than the edge it must clear; low and high bound the feature.
func meetings(t tunnel, f spec.Feature, height, edge measure.Length, low, high spec.Point) met {
	var m met
	for i := range t.stations {
		left, right := t.outer(i, height)
		if !overlap(low, high, []spec.Point{left, right}) {
			continue
		}
		half := t.spans[i] / 2
		atFoot := [2]bool{toFeature(t.across(i, -half), f) < edge-slack, toFeature(t.across(i, half), f) < edge-slack}
		leg := func(side int) string { return fmt.Sprintf("%s%d", spec.Side(side).Letter(), i+1) }
		stretches := t.low(i, height)
		for side, r := range stretches {
			meets := toOutline(f, []spec.Point{t.across(i, r.left), t.across(i, r.right)}) < edge-slack
			switch {
			case len(stretches) == 1 && meets && atFoot == [2]bool{}:
				m.blocked = append(m.blocked, fmt.Sprint(i+1))
			case len(stretches) == 2 && meets:
				m.legs = append(m.legs, leg(side))
				if !atFoot[side] {
					m.swing = max(m.swing, max(r.right, -r.left)-half)
				}
			}
		}
		for side, at := range atFoot {
			if at && len(stretches) == 1 {
				m.legs = append(m.legs, leg(side))
			}
		}
	}
	return m
}

// toOutline returns the distance from a feature to an outline, zero where they share a point.
func toOutline(f spec.Feature, outline []spec.Point) measure.Length {
	if len(f.Outline) == 0 {
		if Inside(f.At, outline) {
			return 0
		}
		return max(min(toPath(f.At, outline), toSegment(f.At, outline[len(outline)-1], outline[0]))-f.Radius, 0)
	}
	if Inside(outline[0], f.Outline) {
		return 0
	}
	return pathToOutline(append(f.Outline[:len(f.Outline):len(f.Outline)], f.Outline[0]), outline)
}
