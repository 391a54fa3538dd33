// A task and its parts.

package crew

import (
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Phases that come after the day of building.
const (
	Nights   Phase = "nights"
	TakeDown Phase = "takedown"
)

// Task is one thing to do, as values: whoever prints it makes the words. Tasks of a phase that come back later, such as the cutting of the ridge
// in the middle of the raising, stand in the list where they are done.
type Task struct {
	Phase   Phase
	Action  Action
	Of      Scope
	Who     Who
	Minutes float64 // clock time with those people at it
	Warning Warning // said before it
	Want    []Figure
	IfOff   []Cure // in the order they are tried
	Uses    []Need
	Sets    int      // minutes that what was made lies then, before it is bent
	Hold    bool     // nobody goes on before it is signed
	Record  []Record // what is written down
}

// Scope is what a task concerns. Numbers are those of arches and bays; Wraps, Rows and Strings index the lists of lights.Layout, Runs those of
// Input.Chains, Buried and Overhead those of spec.Site.
type Scope struct {
	Dots             []ground.Dot
	Stakes           []ground.Stake
	Arches, Bays     []int
	Walls            []spec.Side
	Wraps, Rows      []int
	Strings          []int
	Runs             []int
	Outlets          []string // names of the spec
	Buried, Overhead []int
}

// Role is what one of the people who raise an arch does.
type Role int

// The roles.
const (
	Foot1   Role = iota // at the left foot
	Foot2               // at the right foot
	Crown               // carries the crown
	Ladder              // on the ladder, or at its foot
	Guard               // holds arch 1 until it is guyed, and does nothing else
	Watcher             // of a line overhead, and does nothing else
)

// Who does a task: people by role, or any number of them.
type Who struct {
	Roles  []Role
	People int  // at it; the roles' number where there are roles
	Grown  bool // all of them practice.Least years old or more
}

// Figure is something wanted, of one part of the tunnel: one of the quantities with its limit, or a state that What names alone.
type Figure struct {
	What   Wanted
	Arches []int // or bays, which follow from What
	Bays   []int
	Walls  []spec.Side
	Stakes []ground.Stake
	Checks []ground.Check // of dots: alike, the first one's distance and limit hold for all
	Line   int            // of Buried or Overhead, counted from 0
	Outlet string

	Length, Limit measure.Length
	Angle         measure.Angle
	Force         measure.Force
	Amps          measure.Current
	Gust          measure.Speed
	Cold          measure.Temperature
	Count         int
	Minutes       int
}

// Cure is what is done when a task is off. Up to By it does; beyond, the next one.
type Cure struct {
	Do   Remedy
	By   measure.Length // 0: whatever the amount
	Then measure.Length // what it changes by then: of the crown, lower positive; per inch (10 mm) for SlideTheRow
}

// Need is a thing used, with how many of it: a tool is there once for all its tasks, of material every task takes its own.
type Need struct {
	Thing  Thing
	Count  int
	Length measure.Length // of a tape, stick, line, of each; of a stepladder the height worked at
}

// Record is what is written down.
type Record int

// The records. Every hold has Signed beside them.
const (
	Found     Record = iota // each figure as found
	Worst                   // of figures alike, the worst
	Ticket                  // its number
	FirstDay                // it is good from
	LastDay                 // it is good to
	MarkTapes               // chosen marks with their tapes to the corners
	Named                   // who does it
	Moved                   // what was moved, and how far
	TimeDone
)

// people returns how many do it.
func (w Who) people() int {
	if n := len(w.Roles); n > 0 {
		return n
	}
	return max(1, w.People)
}
