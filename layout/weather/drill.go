package weather

import (
	"math"

	"hoopwright/layout/practice"
)

// Act is one step of laying the tunnel flat.
type Act int

// The acts, in the order they are done: in daylight, and before gusts pass those that arches are raised in. Once it is too late for them nothing is touched, both ends are barred, and
// everyone stays twice the crown's height away.
const (
	Unplug    Act = iota // every plug at every outlet, the cords off strings and arches
	Unhang               // strings in rows and drops, which hold arch to arch
	FreeRidge            // each ridge piece out of one of its sockets
	Untie                // guys and braces, of one arch after the other as it comes to it
	SpringOff            // the last arch first: off its stakes, both feet together
	TieDown              // flat along its row, to its stakes
	CapStakes
)

// Step is an act with how many times it is done and how long it takes.
type Step struct {
	Act     Act
	Count   int
	Minutes float64 // of the whole crew, for all of them
}

// Drill is how the tunnel is laid flat.
type Drill struct {
	Steps   []Step
	Minutes float64
	Apart   float64 // m, twice the highest crown: how near anyone comes when it is too late
}

// Minutes of the whole crew for one of each; an arch takes as long as where nothing presses, practice.MinutesDown. Common practice, no source.
const (
	drillUnplug  = 10.0
	drillUnhang  = 1.0
	drillRidge   = 1.0
	drillUntie   = 1.0
	drillTieDown = 2.0
	drillCap     = 0.2
	drillSpring  = practice.MinutesDown - drillRidge - 2*drillCap
)

// Drill returns the lay-flat drill. lit says whether there is anything to unplug, hung how many strings hang in rows and drops.
func (w *Weather) Drill(lit bool, hung int) Drill {
	t := w.of
	n := len(t.Arches)
	var d Drill
	add := func(act Act, count int, each float64) {
		if count > 0 {
			d.Steps = append(d.Steps, Step{act, count, each * float64(count)})
			d.Minutes += each * float64(count)
		}
	}
	if lit {
		add(Unplug, 1, drillUnplug)
	}
	add(Unhang, hung, drillUnhang)
	if t.joined() {
		add(FreeRidge, n-1, drillRidge)
	}
	ties := 0
	if len(t.kinds) > 0 {
		ties = 2 * len(t.holds())
	}
	add(Untie, ties, drillUntie)
	add(SpringOff, n, drillSpring)
	add(TieDown, n, drillTieDown)
	add(CapStakes, 2*n, drillCap)
	d.Minutes = 5 * math.Ceil(d.Minutes/5)
	for _, a := range t.Arches {
		d.Apart = max(d.Apart, 2*a.Crown.Metres())
	}
	return d
}
