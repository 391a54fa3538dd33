// Package lights gives every light string its place: wraps round legs and ridge, rows along the walls, drops. It knows
// where each string's prongs and socket end up, and what hangs on each arch.
//
// A wrap is a helix on a cylinder that runs through the wire's middle: its diameter is the pipe's outside and one wire. The
// whole string, its unlit lead and tail too, lies on the pipe. A row is a chain of shallow parabolas from arch to arch.
// Strings are laid end to end along such a path, and every path keeps its account: the strings' lengths add up to what
// lies on it and what is left over.
//
// Lay does it. Loads is what hangs on one arch by it, before any is laid: the arch's curve needs it. Lengths are mm.
package lights

import (
	"math"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// mostStrings is where laying stops: far above what any crew hangs, far below what would tire a machine.
const mostStrings = 20000

// End is where one end of a string is.
type End struct {
	At Place          `json:"at"`
	X  measure.Length `json:"x_mm"` // on the site plan
	Y  measure.Length `json:"y_mm"`
	Z  measure.Length `json:"z_mm"` // above the datum

	Arch int       `json:"-"` // nearest arch
	Side spec.Side `json:"-"` // wall it is on, or nearest to; the ridge is between both and says Left
	Row  RowSpot   `json:"-"` // of a string in rows
}

// RowSpot is a place on a wall's rows: on a row at an arch or in a bay, or on a leg between two rows of a kind.
type RowSpot struct {
	Row   int            // number, 0 where it is not on a row; of the upper one on a leg
	Bay   int            // 0 on a leg
	Share float64        // of the bay, from its arch of the lower number
	Tape  measure.Length // on a leg, or where the row passes one: up from the ground
}

// String is one light string in its place. From is the end with the prongs, To the end with the socket.
type String struct {
	Name     string         `json:"name"` // S1, S2 … in the order they hang
	Kind     string         `json:"string"`
	Run      Run            `json:"run"`
	From     End            `json:"from"`
	To       End            `json:"to"`
	Used     measure.Length `json:"used_mm"`
	LeftOver measure.Length `json:"left_over_mm"`
	Watts    measure.Power  `json:"watts"`

	Off  measure.Length `json:"off_mm"`  // of its lead, kept off the pipe to reach the string before it
	Free measure.Length `json:"free_mm"` // of it, hanging at both its ends for the plugs

	Number int            `json:"-"` // of its name
	Label  catalog.String `json:"-"`
}

// Wrap is the helix on one stretch of pipe.
type Wrap struct {
	On    Part           `json:"on"`
	Pitch measure.Length `json:"pitch_mm"`
	Turns float64        `json:"turns"`

	Strings  []string       `json:"-"` // in order from the stretch's start
	Label    catalog.String `json:"-"`
	From, To measure.Length `json:"-"` // tape along the leg from its ground point, or along the ridge piece from its end nearer arch 1
	PipeEnd  measure.Length `json:"-"` // tape of the end of the pipe that it is on
	Flags    []Flag         `json:"-"`
	Bare     []Band         `json:"-"` // between From and To, in rising order
	Mirror   bool           `json:"-"` // wound the other way, so that the pair looks symmetrical
	Crown    bool           `json:"-"` // prongs at the stretch's end, not its start
	Open     bool           `json:"-"` // that is left to the power plan
	Covers   float64        `json:"-"` // share of the stretch the strings reach; 1 where they reach
}

// Wound returns the tapes between which the wrap's strings reach: all of its stretch, or from the prongs as far as they go.
func (w Wrap) Wound() (from, to measure.Length) {
	short := (w.To - w.From) * measure.Length(1-w.Covers)
	if w.Crown {
		return w.From + short, w.To
	}
	return w.From, w.To - short
}

// CountTurns is so many turns as a wrapper lays a tape along.
const CountTurns = 10

// Counted returns what a wrapper is told of a wrap: the length that ten turns take, as finely as a short tape is read, and how many turns, to the half, of that
// length fit between its bare ends.
func (w Wrap) Counted(u measure.System) (turns float64, ten measure.Length) {
	from, to := w.Wound()
	room := to - from
	for _, b := range w.Bare {
		room -= max(0, min(to, b.To)-max(from, b.From))
	}
	grid := practice.ShortTapeRead(u)
	ten = measure.Length(math.Round(float64(CountTurns*w.Pitch/grid))) * grid
	return math.Floor(float64(2*CountTurns*(room+grid/2)/ten)) / 2, ten
}

// Flag is a tape mark that a numbered bulb must meet, to judge the pitch by while wrapping.
type Flag struct {
	Tape   measure.Length // measured as the wrap's From and To are
	Bulb   int            // from the prongs, 1 first
	String string         // the string the bulb is on
}

// Row is one line of lights along a wall.
type Row struct {
	Wall    spec.Side
	Number  int              // from the ground up
	Tape    measure.Length   // along each leg from the ground
	Heights []measure.Length // true height at each arch, above its ground line
	Marks   []End            // the same marks on the site
	Kind    string
	Strings []string // in path order
}

// part returns the row as a part that strings are on.
func (r Row) part() Part { return RowOf(r.Wall, r.Number) }

// Path is one unbroken line of a kind along a wall: along its lowest row, up the end arch to its next, and back. A side way
// out breaks a wall, and a new path begins beyond it.
type Path struct {
	Wall        spec.Side
	Kind        string
	First, Last int   // arches it runs between, First < Last
	Rows        []int // row numbers in the order it takes them
	Back        bool  // its first row runs from Last to First, its second the other way
	Length      measure.Length
	Strings     []string
	LeftOver    measure.Length // of the last string
}

// Ends are the arches that the row of an index in Rows begins and ends at.
func (p Path) Ends(row int) (from, to int) {
	if p.Back != (row%2 == 1) {
		return p.Last, p.First
	}
	return p.First, p.Last
}

// Drop is one string hung below the pipe.
type Drop struct {
	On     Part // it starts on
	String string
	Hang   measure.Length // below the pipe
	Lowest measure.Length // above the ground line
}

// Line is strings that lie end to end, by their places in Layout.Strings: from First on, in order from the prongs. Turned, the first has its prongs at
// the other end.
type Line struct {
	First, Count int
	Open         bool // which end has the prongs is left to the power plan
	Wrap, Path   int  // of Layout.Wraps or Layout.Paths, −1 for none
}

// Layout is every string in its place.
type Layout struct {
	Strings  []String
	Lines    []Line
	Wraps    []Wrap
	Rows     []Row
	Paths    []Path // of the rows
	Pulls    []endPull
	Drops    []Drop
	Ties     int          // zip ties of what is wound: see practice.WrapTies
	LegTies  map[Part]int // of them, on each leg
	HungTies int          // of what hangs, which comes off wherever arches are laid flat
	Findings []finding.Finding
}
