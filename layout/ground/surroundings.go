package ground

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// bay is the ground between two neighbouring arches, or under a lone arch: as wide as they are up to some height.
type bay struct {
	corners []spec.Point   // left, right, next right, next left
	crown   measure.Length // the higher one
	stick   measure.Length // the longest pipe that may stand upright there
	name    string
}

func (t tunnel) bays(height measure.Length) []bay {
	stick := func(arch int) measure.Length {
		if arch < len(t.shapes) {
			return t.shapes[arch].Stick
		}
		return 0
	}
	left, right := t.outer(0, height)
	if len(t.stations) == 1 {
		return []bay{{[]spec.Point{left, right}, t.crowns[0], stick(0), "the arch"}}
	}
	var list []bay
	for i := 1; i < len(t.stations); i++ {
		nextLeft, nextRight := t.outer(i, height)
		list = append(list, bay{
			[]spec.Point{left, right, nextRight, nextLeft},
			max(t.crowns[i-1], t.crowns[i]), max(stick(i-1), stick(i)), fmt.Sprintf("bay %d", i),
		})
		left, right = nextLeft, nextRight
	}
	return list
}

// surroundings says what the tunnel stands in or under.
func surroundings(t tunnel) []finding.Finding {
	var found []finding.Finding
	bays := t.bays(overAll)
	for i, o := range t.spec.Site.Overhead {
		if f, ok := overhead(t.spec, o, fmt.Sprintf("site.overhead[%d]", i), bays); ok {
			found = append(found, f)
		}
	}
	for i, f := range t.spec.Site.Features {
		if level, text := obstacle(t, f); text != "" {
			found = append(found, finding.Finding{Level: level, Code: "feature-in-tunnel", Key: fmt.Sprintf("site.features[%d]", i), Text: text})
		}
	}
	return found
}

// overhead measures, in space, from the line to the block of air that the tunnel and the people who raise it fill: as wide as the arches at their widest, and as
// high as the crowns with working room for people and ladders above them, or as the whole pipe of an arch, sprung upright over its first stake, whichever is more. The line's height
// counts from the ground beneath it. A keep distance that the spec did not give never forbids building, save where the line touches the tunnel itself.
func overhead(s *spec.Spec, o spec.Overhead, key string, bays []bay) (finding.Finding, bool) {
	u, lim := s.Units, practice.OnGround(s.Units)
	least, touches := overAll, false
	var nearest bay
	low, high := box(o.Line, o.Keep)
	for _, b := range bays {
		if !overlap(low, high, b.corners) {
			continue
		}
		aside := pathToOutline(o.Line, b.corners)
		above := max(o.Height-max(b.crown+lim.Work, b.stick), 0)
		if gap := measure.Length(math.Sqrt(float64(aside*aside) + float64(above*above))); gap < least {
			least, nearest = gap, b
		}
		touches = touches || aside == 0 && o.Height <= b.crown
	}
	if least >= o.Keep-slack {
		return finding.Finding{}, false
	}
	level, orAsk := finding.MustFix, ""
	if !s.Given(key+".keep") && !touches {
		level, orAsk = finding.LookAt, "; else no ladder, no upright pipe without its owner's written yes"
	}
	what := fmt.Sprintf("the tunnel and the %s above its crowns that people and ladders need", u.Room(lim.Work))
	if nearest.stick > nearest.crown+lim.Work {
		what = fmt.Sprintf("an arch's pipe of %s sprung upright over a stake", u.Room(nearest.stick))
	}
	comes := fmt.Sprintf("comes within %s of %s, nearest", u.Room(least), what)
	if least == 0 {
		comes = fmt.Sprintf("crosses %s,", what)
	}
	return finding.Finding{
		Level: level, Code: "near-overhead-line", Key: key,
		Text: fmt.Sprintf("%s, %s up, %s at %s; keep %s away. Move the tunnel, print again%s.",
			say.Capital(o.Name), u.Room(o.Height), comes, nearest.name, u.Room(o.Keep), orAsk),
	}, true
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
		if Inside(p, outline) {
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
		radius = max(radius, Distance(centre, p))
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

// OnWayOut names what lies where an arch's foot is walked straight outward from its stake by a length, with room for who walks beside it: features, and the posts and walls that marks and
// outlets stand for. What is hard and flat is paving: it is walked on.
func (l Layout) OnWayOut(s *spec.Spec, foot StakeID, out measure.Length) (names []string) {
	way := l.WayOut(s, foot, out)
	if way == nil {
		return nil
	}
	for _, f := range s.Site.Features {
		if paved := f.Hard && f.Height == 0; !paved && toOutline(f, way) == 0 {
			names = append(names, f.Name)
		}
	}
	stands := func(name string, at spec.Point) {
		if toOutline(spec.Feature{At: at}, way) == 0 && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, m := range l.Marks {
		stands(m.Name, m.At)
	}
	for _, o := range s.Site.Outlets {
		stands(o.Name, o.At)
	}
	return names
}

// WayOut is the ground beside an arch's stake that OnWayOut looks at; none where there is no such stake.
func (l Layout) WayOut(s *spec.Spec, foot StakeID, out measure.Length) []spec.Point {
	from, ok := l.Stake(foot)
	if !ok {
		return nil
	}
	outward, room := l.outward(foot.Arch, foot.Side), practice.OnGround(s.Units).Aside
	return before(along(from.At(), aheadOf(outward), -room), along(from.At(), aheadOf(outward), room), outward, outward, out)
}

// BeforeWay is the ground that a side way opens onto, as far as people need it; none where there is no such bay.
func (l Layout) BeforeWay(s *spec.Spec, w spec.Way) []spec.Point {
	from, starts := l.Stake(Leg(w.Wall, w.Bay))
	to, ends := l.Stake(Leg(w.Wall, w.Bay+1))
	if !starts || !ends {
		return nil
	}
	return before(from.At(), to.At(), l.outward(w.Bay, w.Wall), l.outward(w.Bay+1, w.Wall), practice.OnGround(s.Units).Ahead)
}

// BeforeEnd is the ground before the entrance or beyond the exit, as wide as the opening with half a person's room on either side.
func (l Layout) BeforeEnd(s *spec.Spec, exit bool) []spec.Point {
	at, ahead := l.Stations[0], measure.Length(-1)
	if exit {
		at, ahead = l.Stations[len(l.Stations)-1], 1
	}
	lim, right := practice.OnGround(s.Units), rightOf(at.Heading)
	half := (s.Tunnel.OpeningWidth + lim.Aside) / 2
	on := along(spec.Point{}, aheadOf(right), ahead)
	return before(along(at.At, right, -half), along(at.At, right, half), on, on, lim.Ahead)
}

// outward is the direction from an arch's middle to its foot on a side.
func (l Layout) outward(arch int, side spec.Side) spec.Point {
	right := rightOf(l.Stations[arch-1].Heading)
	if side == spec.Left {
		return spec.Point{X: -right.X, Y: -right.Y}
	}
	return right
}

// aheadOf turns a direction a quarter to the left.
func aheadOf(right spec.Point) spec.Point { return spec.Point{X: -right.Y, Y: right.X} }

// before is the ground from a line between two points outward, at each in its own direction.
func before(a, b, outA, outB spec.Point, far measure.Length) []spec.Point {
	return []spec.Point{a, b, along(b, outB, far), along(a, outA, far)}
}

// Standing names the features with a height that reach into some ground.
func Standing(s *spec.Spec, there []spec.Point) (names []string) {
	for _, f := range s.Site.Features {
		if f.Height > 0 && toOutline(f, there) == 0 {
			names = append(names, f.Name)
		}
	}
	return names
}

// Unsure lists, by number, the hard features whose height the spec does not give, taken as paving, that reach into some ground.
func Unsure(s *spec.Spec, there []spec.Point) (list []int) {
	for i, f := range s.Site.Features {
		if f.Hard && !s.Given(fmt.Sprintf("site.features[%d].height", i)) && toOutline(f, there) == 0 {
			list = append(list, i)
		}
	}
	return list
}
