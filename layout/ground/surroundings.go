package ground

import (
	"fmt"
	"math"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// bay is the ground between two neighbouring arches, or under a lone arch, with the height of the higher crown.
type bay struct {
	corners []spec.Point // left, right, next right, next left
	crown   measure.Length
	name    string
}

func (t tunnel) bays() []bay {
	feet := t.feet()
	if len(t.stations) == 1 {
		return []bay{{feet[0][:], t.crowns[0], "the arch"}}
	}
	var list []bay
	for i := range len(t.stations) - 1 {
		list = append(list, bay{
			[]spec.Point{feet[i][0], feet[i][1], feet[i+1][1], feet[i+1][0]},
			max(t.crowns[i], t.crowns[i+1]), fmt.Sprintf("bay %d", i+1),
		})
	}
	return list
}

// surroundings says what the tunnel stands in or under.
func surroundings(t tunnel) []finding.Finding {
	bays := t.bays()
	var found []finding.Finding
	for i, o := range t.spec.Site.Overhead {
		if f, ok := overhead(t.spec, o, fmt.Sprintf("site.overhead[%d]", i), bays); ok {
			found = append(found, f)
		}
	}
	for i, f := range t.spec.Site.Features {
		if f, ok := obstacle(t, f, fmt.Sprintf("site.features[%d]", i), bays); ok {
			found = append(found, f)
		}
	}
	return found
}

// overhead measures, in space, from the line to the block of air that the tunnel and the people who raise it fill: as wide as
// the stakes and as high as the crowns and working room above them. The line's height counts from the ground beneath
// it. A keep distance that the spec did not give never forbids building, save where the line touches the tunnel itself.
func overhead(s *spec.Spec, o spec.Overhead, key string, bays []bay) (finding.Finding, bool) {
	u, lim := s.Units, limitsIn(s.Units)
	least, where, touches := measure.Length(math.Inf(1)), "", false
	low, high := box(o.Line, o.Keep)
	for _, b := range bays {
		if !overlap(low, high, b.corners) {
			continue
		}
		aside := pathToOutline(o.Line, b.corners)
		above := max(o.Height-b.crown-lim.work, 0)
		if gap := measure.Length(math.Sqrt(float64(aside*aside) + float64(above*above))); gap < least {
			least, where = gap, b.name
		}
		touches = touches || aside == 0 && o.Height <= b.crown
	}
	if least >= o.Keep-slack {
		return finding.Finding{}, false
	}
	level := finding.MustFix
	if !s.Given(key+".keep") && !touches {
		level = finding.LookAt
	}
	comes := fmt.Sprintf("comes within %s of the tunnel and the %s above its crowns that people and pipes need, nearest", u.Room(least), u.Room(lim.work))
	if least == 0 {
		comes = fmt.Sprintf("crosses the tunnel or the %s above its crowns that people and pipes need,", u.Room(lim.work))
	}
	return finding.Finding{
		Level: level, Code: "near-overhead-line", Sheet: "safety", Key: key, Pos: s.Position(key),
		Text: fmt.Sprintf("Overhead line %s, %s up, %s at %s; keep %s away. Move the tunnel, and ask the line's owner before a pipe or ladder goes up near it.",
			o.Name, u.Room(o.Height), comes, where, u.Room(o.Keep)),
	}, true
}

// obstacle reports a feature with a height that the tunnel runs into. It forbids building where a leg would rise through it, or
// where it blocks an arch up to the crown; otherwise it stands in the walk, which is for the organiser to judge.
func obstacle(t tunnel, f spec.Feature, key string, bays []bay) (finding.Finding, bool) {
	if f.Height <= 0 {
		return finding.Finding{}, false
	}
	u, lim := t.spec.Units, limitsIn(t.spec.Units)
	var legs, blocked []string
	low, high := box(f.Outline, lim.edge)
	if len(f.Outline) == 0 {
		low, high = box([]spec.Point{f.At}, f.Radius+lim.edge)
	}
	for i, feet := range t.feet() {
		if !overlap(low, high, feet[:]) {
			continue
		}
		for side, foot := range feet {
			if toFeature(foot, f) < lim.edge-slack {
				legs = append(legs, fmt.Sprintf("%s%d", spec.Side(side).Letter(), i+1))
			}
		}
		if f.Height >= t.crowns[i] && toOutline(f, feet[:]) == 0 {
			blocked = append(blocked, fmt.Sprint(i+1))
		}
	}
	result := finding.Finding{Level: finding.MustFix, Code: "feature-in-tunnel", Sheet: "stake", Key: key, Pos: t.spec.Position(key)}
	switch {
	case len(legs) > 0:
		result.Text = fmt.Sprintf("The feature %s, %s high, is where %s %s: the pipe must clear it by %s. Move the tunnel.",
			f.Name, u.Room(f.Height), verb(legs, "leg", "legs")+" "+names(legs), verb(legs, "rises", "rise"), u.Inches(lim.edge))
		return result, true
	case len(blocked) > 0:
		result.Text = fmt.Sprintf("The feature %s, %s high, stands across %s %s: the pipe cannot pass over it. Move the tunnel.",
			f.Name, u.Room(f.Height), verb(blocked, "arch", "arches"), names(blocked))
		return result, true
	}
	for _, b := range bays {
		if overlap(low, high, b.corners) && toOutline(f, b.corners) == 0 {
			result.Level = finding.LookAt
			result.Text = fmt.Sprintf("The feature %s, %s high, stands within the tunnel at %s: see that people can pass it, or move the tunnel.", f.Name, u.Room(f.Height), b.name)
			return result, true
		}
	}
	return finding.Finding{}, false
}

// toOutline returns the distance from a feature to an outline, zero where they share a point.
func toOutline(f spec.Feature, outline []spec.Point) measure.Length {
	if len(f.Outline) == 0 {
		if inside(f.At, outline) {
			return 0
		}
		return max(min(toPath(f.At, outline), toSegment(f.At, outline[len(outline)-1], outline[0]))-f.Radius, 0)
	}
	if inside(outline[0], f.Outline) {
		return 0
	}
	return pathToOutline(append(f.Outline[:len(f.Outline):len(f.Outline)], f.Outline[0]), outline)
}

// pathToOutline returns the distance from an open path to a closed outline, zero where the path enters it.
func pathToOutline(path, outline []spec.Point) measure.Length {
	centre, reach := ring(outline)
	least := measure.Length(math.Inf(1))
	for i, p := range path {
		q := path[max(i-1, 0)]
		if toSegment(centre, q, p)-reach >= least {
			continue // this piece cannot come nearer than what was found
		}
		if inside(p, outline) {
			return 0
		}
		for j, a := range outline {
			least = min(least, apart(q, p, a, outline[(j+1)%len(outline)]))
		}
	}
	return least
}

// ring returns a circle that holds the points.
func ring(points []spec.Point) (centre spec.Point, radius measure.Length) {
	for _, p := range points {
		centre = along(centre, p, 1/measure.Length(len(points)))
	}
	for _, p := range points {
		radius = max(radius, distance(centre, p))
	}
	return centre, radius
}

// overlap reports whether the box around the points and the given box have a point in common: a quick look before a slow one.
func overlap(low, high spec.Point, points []spec.Point) bool {
	from, to := box(points, 0)
	return from.X <= high.X && to.X >= low.X && from.Y <= high.Y && to.Y >= low.Y
}

// edges returns how many edges one look at the surroundings of an arch takes.
func (t tunnel) edges() int {
	n := 0
	for _, o := range t.spec.Site.Overhead {
		n += 4 * len(o.Line)
	}
	for _, f := range t.spec.Site.Features {
		if f.Height > 0 {
			n += 8 * (len(f.Outline) + 1)
		}
	}
	return n
}
