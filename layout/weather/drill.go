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
	Coil                 // the cords, for legs are carried where they lie
	Unhang               // strings in rows and drops, which hold arch to arch
	UntieLine            // off each crown as its arch is next: nothing else keeps ridge pieces in dry sockets
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
	Minutes float64 // of one crew
	arches  int
	work    float64 // minutes of one crew, not rounded
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
	drillCoil    = practice.MinutesCoil / float64(practice.Raisers) // everyone coils one
	drillSpring  = practice.MinutesDown - drillRidge - 2*drillCap
)

// Comes is what comes off arches that are laid flat.
type Comes struct {
	Lit   bool // there is something to unplug
	Cords int
	Hung  int  // strings in rows and drops
	Line  bool // crowns are tied together
	Pins  bool // a screw in each of the ridge's sockets
}

// Drill returns the lay-flat drill.
func (w *Weather) Drill(off Comes) Drill {
	t := w.of
	n := len(t.Arches)
	d := Drill{arches: n}
	add := func(act Act, count int, each float64) {
		if count > 0 {
			d.Steps = append(d.Steps, Step{act, count, each * float64(count)})
			d.work += each * float64(count)
		}
	}
	if off.Lit {
		add(Unplug, 1, drillUnplug)
	}
	add(Coil, off.Cords, drillCoil)
	add(Unhang, off.Hung, drillUnhang)
	if off.Line {
		add(UntieLine, n, practice.MinutesKnot)
	}
	if t.joined() {
		each := drillRidge
		if off.Pins {
			each += 2 * practice.MinutesUnscrew
		}
		add(FreeRidge, n-1, each)
	}
	ties := 0
	if len(t.kinds) > 0 {
		ties = 2 * len(t.holds())
	}
	add(Untie, ties, drillUntie)
	add(SpringOff, n, drillSpring)
	add(TieDown, n, drillTieDown)
	add(CapStakes, 2*n, drillCap)
	d.Minutes = d.By(1)
	for _, a := range t.Arches {
		d.Apart = max(d.Apart, 2*a.Crown.Metres())
	}
	return d
}

// By is how many minutes so many crews take, each on its own stretch of the arches. Where more than one is at it, each ties its lowest bay first: that loses its neighbour.
func (d Drill) By(crews int) float64 {
	longest := (d.arches + crews - 1) / crews
	minutes := d.work * float64(longest) / float64(d.arches)
	if crews > 1 {
		minutes += drillTieDown
	}
	return 5 * math.Ceil(minutes/5-1e-9)
}

// Crews is how many crews lay it flat within so many minutes; where none can, a crew an arch.
func (d Drill) Crews(within float64) int {
	for n := 1; n < d.arches; n++ {
		if d.By(n) <= within {
			return n
		}
	}
	return d.arches
}

// Stretches are the first and the last arch of each of so many crews.
func (d Drill) Stretches(crews int) (list [][2]int) {
	longest := (d.arches + crews - 1) / crews
	for last := d.arches; last > 0; last -= longest {
		list = append(list, [2]int{max(1, last-longest+1), last})
	}
	return list
}
