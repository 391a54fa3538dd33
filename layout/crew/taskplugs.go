// Joints and open ends of lights, and who plugs and covers them: whoever has them in reach, so that nobody climbs for them again.

package crew

import (
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/practice"
)

// joins calls joint for every two strings of a run that are plugged together, and end for the string whose socket is its last. What nothing feeds is left alone.
func (in Input) joins(joint func(one, two lights.Run), end func(last lights.Run, at lights.Spot)) {
	for _, c := range in.Chains {
		for i, r := range c.Runs {
			switch {
			case c.Outlet == "":
			case i+1 < len(c.Runs):
				joint(r, c.Runs[i+1])
			default:
				end(r, c.To)
			}
		}
	}
}

// plugs adds to a task the joints of lights that come within reach with arches and ridge pieces, and the sockets there that stay open: those of two legs while their arch lies
// flat, those at the ends of a ridge piece once it is in. It returns their minutes. What is at a foot waits for the cords; rows and drops are plugged as they are hung.
func (b *tasker) plugs(t *Task, arches, bays []int) (minutes float64) {
	legs, ridge := Figure{What: Plugged}, Figure{What: Plugged}
	legEnds, ridgeEnds := Figure{What: EndsShut}, Figure{What: EndsShut}
	add := func(f *Figure, list *[]int, number int) {
		*list = append(*list, number)
		f.Count++
	}
	b.joins(func(one, two lights.Run) {
		bay := 0
		for _, r := range []lights.Run{one, two} {
			if r.Kind == lights.Ridge {
				bay = max(bay, r.Number)
			}
		}
		switch {
		case one.Drop || two.Drop || one.Part == two.Part:
		case bay > 0 && slices.Contains(bays, bay):
			add(&ridge, &ridge.Bays, bay)
		case one.IsLeg() && two.IsLeg() && one.Number == two.Number && slices.Contains(arches, one.Number):
			add(&legs, &legs.Arches, one.Number)
		}
	}, func(last lights.Run, at lights.Spot) {
		switch {
		case last.Drop || at == lights.AtFoot:
		case last.Kind == lights.Ridge && slices.Contains(bays, last.Number):
			add(&ridgeEnds, &ridgeEnds.Bays, last.Number)
		case last.IsLeg() && slices.Contains(arches, last.Number):
			add(&legEnds, &legEnds.Arches, last.Number)
		}
	})
	for _, f := range []Figure{legs, ridge, legEnds, ridgeEnds} {
		if f.Count > 0 {
			slices.Sort(f.Arches)
			slices.Sort(f.Bays)
			f.Arches, f.Bays = slices.Compact(f.Arches), slices.Compact(f.Bays)
			t.Want = append(t.Want, f)
		}
	}
	return t.covers(legs.Count+ridge.Count, legEnds.Count+ridgeEnds.Count)
}

// hung counts the joints of what hangs and the sockets of it that stay open, of the strings that a task hangs: a joint of two goes with the drop of them, else with the first
// that is on a row.
func (b *tasker) hung(of func(lights.Run) bool) (joints, open int) {
	b.joins(func(one, two lights.Run) {
		for _, r := range []lights.Run{one, two} {
			if r.Drop || r.IsRow() && !two.Drop {
				joints += b2i(of(r))
				return
			}
		}
	}, func(last lights.Run, _ lights.Spot) { open += b2i((last.Drop || last.IsRow()) && of(last)) })
	return joints, open
}

// covers adds what so many joints and open sockets take to a task, and returns its minutes.
func (t *Task) covers(joints, open int) (minutes float64) {
	if joints > 0 {
		t.Uses = append(t.Uses, many(PlugCovers, joints))
	}
	if open > 0 {
		t.Uses = append(t.Uses, many(SocketCovers, open))
	}
	return practice.MinutesPlug * float64(joints+open)
}

// used is how many of a thing a task takes.
func used(t Task, thing Thing) (n int) {
	for _, u := range t.Uses {
		n += b2i(u.Thing == thing) * u.Count
	}
	return n
}
