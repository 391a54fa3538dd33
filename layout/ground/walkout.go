package ground

import (
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// OnWayOut names what lies where an arch's foot is walked straight outward from its stake by a length, with room for who walks beside it: features, and the posts and walls that marks and
// outlets stand for. What is hard and flat is paving: it is walked on.
func (l Layout) OnWayOut(s *spec.Spec, foot StakeID, out measure.Length) (names []string) {
	from, ok := l.Stake(foot)
	if !ok {
		return nil
	}
	heading := l.Stations[foot.Arch-1].Heading
	outward, room := rightOf(heading), practice.OnGround(s.Units).Aside
	if foot.Side == spec.Left {
		outward = spec.Point{X: -outward.X, Y: -outward.Y}
	}
	ahead := spec.Point{X: -outward.Y, Y: outward.X}
	end := along(from.At(), outward, out)
	way := []spec.Point{along(from.At(), ahead, -room), along(from.At(), ahead, room), along(end, ahead, room), along(end, ahead, -room)}
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
