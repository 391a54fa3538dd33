package ground

import (
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// OnWayOut lists the features that lie where an arch's foot is walked straight outward from its stake by a length, with room for who walks beside it. What is hard and flat is
// paving: it is walked on.
func (l Layout) OnWayOut(s *spec.Spec, foot StakeID, out measure.Length) (list []spec.Feature) {
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
			list = append(list, f)
		}
	}
	return list
}
