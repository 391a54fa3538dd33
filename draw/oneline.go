package draw

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
)

// OneLine is the diagram of what a feeder feeds along one wall: a station for each place where something is plugged in, in walking order from arch 1; cords as lines
// from station to station in lanes beside them; at each station its tap, the chains that plug in there with their strings as boxes, and the cord that comes.
//
// It is made of rows, so that a long wall goes on from page to page.
type OneLine struct {
	Rows []LineRow

	units    measure.System
	feeder   power.Feeder
	stations []lineStation
	cords    []lineCord
	lanes    int
	x        lineColumns
	runs     map[string]string // where a string hangs, by its name
	boxWide  paper.Length
	plugLine paper.Length // from a node's edge to the box of a chain of one
}

// LineRow is one band of the diagram.
type LineRow struct {
	Height paper.Length
	Keep   bool // stays with the row before it

	station int
	first   bool         // the station's first row: its ports and its name
	plug    *power.Plug  // that leaves the station in this row
	chain   *power.Chain // whose strings are drawn here: all of a plug in its own row, or some in a row of boxes
	from    int          // first string of a row of boxes
	to      int          // past the last one
}

// lineStation is a place on the wall. The outlet is one too.
type lineStation struct {
	name   string // short: L3, crown 1
	detail string // where on it, if not at its foot
	joint  int    // −1 for an outlet that only has a cord in it
	outlet bool
	top    int // its first row
	end    int // past its last one
	ports  []linePort
}

// lineCord is a cord from station to station.
type lineCord struct {
	number   int
	from, to int // stations
	lane     int // 0 is nearest the stations
	joint    int // that it goes to
}

// linePort is a cord's end at a station.
type linePort struct {
	cord   int // index
	source bool
	up     bool         // its line goes toward arch 1
	dy     paper.Length // from the middle of the station's node
}

// NewOneLine lays the diagram out for a width. It has no rows where the feeder feeds nothing along that wall.
func NewOneLine(p *layout.Plan, f power.Feeder, wall spec.Side, width paper.Length) *OneLine {
	o := &OneLine{units: p.Spec.Units, feeder: f, runs: stringRuns(p.Strings)}
	o.place(wall)
	if len(o.stations) == 0 {
		return o
	}
	o.strings(p.Power.Chains)
	o.stretch()
	o.measure(width)
	o.fill(p.Power.Chains)
	return o
}

// stringRuns tells where each string hangs.
func stringRuns(all []lights.String) map[string]string {
	out := map[string]string{}
	for _, s := range all {
		out[s.Name] = s.Run.String()
	}
	return out
}

// place puts the feeder's joints on this wall in walking order, with the outlet before the first that a cord from it reaches.
func (o *OneLine) place(wall spec.Side) {
	joints := o.feeder.Joints
	var order []int
	for i, j := range joints {
		if j.Arch > 0 && j.Wall == wall {
			order = append(order, i)
		}
	}
	if len(order) == 0 {
		return
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(joints[a].Arch, joints[b].Arch), cmp.Compare(joints[a].Climb, joints[b].Climb))
	})
	root := -1 // the joint that is the outlet itself, a tap in it
	if joints[0].Arch == 0 {
		root = 0
	}
	at := map[int]int{}
	for _, i := range order {
		if _, seen := at[-1]; !seen && joints[i].From == root {
			at[-1] = len(o.stations)
			o.stations = append(o.stations, lineStation{name: "outlet", joint: root, outlet: true})
		}
		at[i] = len(o.stations)
		name, detail := StationName(joints[i])
		o.stations = append(o.stations, lineStation{name: name, detail: detail, joint: i})
	}
	for _, i := range order {
		from := at[-1]
		if joints[i].From != root {
			from = at[joints[i].From]
		}
		o.cords = append(o.cords, lineCord{number: joints[i].Cord, from: from, to: at[i], joint: i})
	}
}

// StationName shortens the words of a place: the foot of a leg goes by its stake, and what is higher up by its stake and the rest of the words.
func StationName(j power.Joint) (name, detail string) {
	name = fmt.Sprint(j.Wall.Letter(), j.Arch)
	switch at := j.End.At; {
	case at.Spot == lights.AtFoot:
		return name, ""
	case at.Spot == lights.AtCrown:
		return at.String(), ""
	case at.Spot == lights.Along && at.Part.IsLeg():
		return name, at.Words.Tape(at.Tape) + " up"
	case at.Spot == lights.AtArch:
		return name, at.Part.String()
	default:
		return name, at.String()
	}
}

// chainOf returns a chain by its name.
func chainOf(chains []power.Chain, name string) *power.Chain {
	return &chains[slices.IndexFunc(chains, func(c power.Chain) bool { return c.Name == name })]
}

// strings finds the width of a string's box: its longest run.
func (o *OneLine) strings(chains []power.Chain) {
	o.boxWide = 17
	for _, j := range o.feeder.Joints {
		for _, p := range j.Plugs {
			for _, name := range p.Chains {
				c := chainOf(chains, name)
				o.plugLine = max(o.plugLine, matedLong+paper.Cell.Width(c.Name)+paper.Floor.Width(measure.Watts(c.Watts))+1.8)
				for _, s := range c.Strings {
					o.boxWide = max(o.boxWide, paper.Floor.Width(o.runs[s])+2.2, paper.CellSmall.Width(s)+2.2)
				}
			}
		}
	}
}
