// Package power plans how the strings are fed: which end of a wrap has the prongs, which strings hang end to end behind one plug, where each
// cord and three-way goes, which outlet and circuit feeds it, with the amps at every plug and the volts at the last bulb.
//
// The aims, in this order: everything fed; what the spec's split asks for; nothing over a way; no more than the spec's together behind one plug of a
// cord, but for a ridge in a run of its own, which its labels and volts bound; fewest cords and three-ways together; fewest joints and open sockets low down; money. Circuits only as many as
// these ask for: another outlet is taken up where it saves more cords than the one piece that it counts as.
//
// The way through the files, in the order of the work. Feed (feed.go) makes a plan for each way that is open and keeps the best. Strings are plugged end to end into runs, as
// long as labels, volts and together allow (runs.go, meet.go, limit.go), in each way that is open for ridge and bridged bays (joining.go). Each run may be fed at either end that the spec leaves open, from either wall where its plug hangs over
// the opening (unit.go). Runs are shared out over circuits and outlets (assign.go, package sharing). For each outlet (feeder.go) ends and walls are searched (search.go,
// bound.go); for each choice what is wanted at each foot (stop.go) is parted into lines (wall.go), and each line of cord is laid by a dynamic program over the places in walking
// order that knows every cord sold, every cord with several sockets, and three-ways, so that no fewer pieces do for that choice (line.go, liner.go; lengths from way.go, keepoff.go and lane.go).
// The thinnest cord is taken that carries the amps and keeps the loss within 3 % (grow.go, cord.go); cords that the organiser owns go in where they do (shed.go). Then
// everything gets its name (piece.go), is counted (count.go) and spoken of (findings.go, runsays.go, remedies.go). Plan and its parts stand here.
//
// Never: a cord or three-way in a string's own socket (UL 588 leaves them out of what a string may feed), a three-way in a three-way, more than two
// plugs stacked, a cord on the ground over a way or across the opening without a cover.
//
// What is claimed: the fewest circuits where sharing proves it; the fewest pieces where every choice of ends, walls and directions was tried.
package power

import (
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Input is everything that the feeding follows from.
type Input struct {
	Spec    *spec.Spec
	Strings []lights.String // in the order they hang
	Turned  []lights.String // the same as they lie with all that is open turned, see lights.Turn
	Lines   []lights.Line   // which strings lie end to end: each string is on one
	Ground  ground.Layout
	Crowns  []measure.Length // height of each arch's crown above its ground line, arch 1 first
}

// Chain is strings plugged end to end behind one plug: on paper a run of strings.
type Chain struct {
	Name     string          `json:"name"` // A, B … in plan order
	Strings  []string        `json:"strings"`
	Watts    measure.Power   `json:"watts"`
	Amps     measure.Current `json:"amps"`    // through its first plug, at its own volts
	Outlet   string          `json:"outlet"`  // empty where nothing can feed it
	FedBy    string          `json:"fed_by"`  // the cord C3 or three-way T1 that its plug is in, or the outlet; the run A whose plug's back it is in
	Cord     measure.Length  `json:"cord_mm"` // stock length to lay, all cords in line together; 0 where the string reaches the outlet
	Gauge    string          `json:"cord_gauge"`
	EndVolts measure.Voltage `json:"end_volts"` // at the last bulb

	On      []lights.Run    `json:"-"` // that its strings lie along, first to last
	From    lights.End      `json:"-"` // its first plug
	To      lights.End      `json:"-"` // its last socket, to be covered
	Limit   Limit           `json:"-"` // that comes nearest to binding at its first plug
	Circuit string          `json:"-"`
	Feeder  string          `json:"-"` // that it hangs on; empty where nothing feeds it
	Joint   int             `json:"-"` // of that feeder, where it is plugged in
	Cords   []string        `json:"-"` // cords in line from the outlet, by their names
	Lies    measure.Length  `json:"-"` // length of the path that the cords take
	Path    []spec.Point    `json:"-"` // where they lie
	Volts   measure.Voltage `json:"-"` // of its strings, as labelled
	Kind    string          `json:"-"` // of its first string
	Drop    float64         `json:"-"` // share of the supply voltage lost at the last bulb

	Of        measure.Voltage `json:"-"` // the volts that Drop is a share of: the circuit's, behind a supply the strings'
	ColdVolts measure.Voltage `json:"-"` // at the last bulb with all copper as cold as the spec's weather; EndVolts are figured warm
}

// Feeder is all that is plugged into one socket of an outlet: cords and three-ways that branch but never meet again.
type Feeder struct {
	Name    string // F1, F2 …
	Outlet  string
	Circuit string
	Cord    string // its one kind of cord, a catalog name; empty where it has none
	Gauge   string // of that cord
	Joints  []Joint
	Amps    measure.Current // through its plug at the outlet
	Volts   measure.Voltage // of the circuit
	Limit   Limit           // that comes nearest to binding, from its plug in the outlet on: breaker, timer, or what a cord carries

	source int          // of feeding.sources
	cord   catalog.Cord // Cord's
	least  float64      // A, of all that may bind from its plug on
}

// Joint is a place on a feeder with a socket to plug into: the outlet's own, the end of a cord, or one of a cord's several. A joint comes after
// the one it is fed from.
type Joint struct {
	End    lights.End       // where: foot of leg L3, crown 1, outlet porch
	Wall   spec.Side        // along which it is fed
	Arch   int              // nearest arch; 0 at the outlet itself
	Climb  measure.Length   // from that arch's foot: level distance and height
	Cord   int              // number of its cord over all feeders, from 1; 0 without one
	Socket int              // which of its cord's sockets in line this is, from 1, the first that is used; 0 of a plain cord
	Of     int              // sockets that its cord has in all; 0 without one
	Skips  int              // sockets of its cord right before it that nothing is plugged into
	Spare  int              // sockets of its cord after it that nothing is plugged into
	From   int              // the joint it is fed from; −1 for the outlet
	Lies   measure.Length   // length of its cord's path from that joint
	Tied   measure.Length   // of that up legs, along arches and ridge, out of reach from the ground or over a way
	Copper measure.Length   // of the cord from that joint
	Cords  []measure.Length // stock lengths in line that end here; none where it is plugged straight in or on the same cord as the joint before
	Path   []spec.Point     // where its cord lies, both ends included
	Over   bool             // the cord passes the opening over an arch, or a way
	Amps   measure.Current  // through its cord
	Volts  measure.Voltage  // that arrive
	Taps   int              // three-ways here
	Tap    int              // number of the three-way over all feeders, from 1; 0 without one
	Fans   int              // sockets of that three-way
	Plugs  []Plug           // of runs and supplies
	Onward int              // cords that are plugged in here

	inline *catalog.Inline // its cord, where that has several sockets
}

// Plug is what a socket feeds: one run, two where the one sits in the back of the other's plug, or one low-voltage supply with its runs.
type Plug struct {
	Chains []string
	Supply bool
	Amps   measure.Current // at the circuit's volts; of a supply by its own watts
	Open   int             // sockets of the supply that nothing is plugged into

	runs []int // Chains, counted from 0
}

// Lot is a number of like cords to buy.
type Lot struct {
	Name    string
	Length  measure.Length
	Sockets int // 1, or so many in line
	Count   int
}

// Timer is one to buy, in an outlet's socket.
type Timer struct {
	Outlet string
	Amps   measure.Current // through it
	Size   measure.Current // the least that it may be sold for
	Plugs  int             // that go into it
}

// Circuit is one breaker with what it carries.
type Circuit struct {
	Name    string          `json:"name"`
	Amps    measure.Current `json:"amps"`         // lights and other load
	Allowed measure.Current `json:"allowed_amps"` // for continuous load

	Spec    spec.Circuit    `json:"-"`
	Lights  measure.Current `json:"-"`
	Outlets []string        `json:"-"`
	Chains  []string        `json:"-"`
}

// Plan is how everything is fed.
type Plan struct {
	Chains   []Chain
	Feeders  []Feeder
	Circuits []Circuit // every circuit of the spec, in its order
	Cords    []Cord    // every cord, in the order of laying
	Lots     []Lot     // the same to buy, by kind and length
	Taps     []Tap     // every three-way, in the order of laying
	Turned   []bool    // by line of the input: it lies turned

	Joints int              // plugs put together, of runs, supplies, cords and three-ways; not what is in an outlet, under the outlet's own cover
	Links  int              // strings plugged into strings
	Boxed  int              // of the joints: they lie in a plug box and take no cover
	Open   int              // sockets that nothing is plugged into: string ends and spare ones, those of supplies too; each is covered
	Timers []Timer          // to buy, for outlets in use that have none
	Boxes  []lights.Place   // where three or more plugs meet low down: each takes a box off the ground
	Bare   []string         // outlets in use without a GFCI or RCD: each takes a portable one
	Covers []measure.Length // cord covers as sold, the longest first, where a cord crosses a way on the ground
	Gain   *BackSocket      // what a socket in the back of plugs would save; nil where nothing

	Fewest       int  // circuits, or GFCIs where one circuit has several, that carry all that can be fed
	FewestProven bool // no fewer do, nor could more amps be fed
	PiecesProven bool // no fewer cords and three-ways together feed the same from the same outlets, whatever is plugged in where

	Supplies int             // low-voltage supplies in all, each in a box
	Missing  measure.Current // that no circuit has left for lights
	Watts    measure.Power
	KWh      float64 // over the season, zero where evenings are not given
	Findings []finding.Finding

	apart int // supplies where nothing else takes a box
	mark  mark
	kept  bool // the split is kept, or none was asked for
}

// Pieces returns how many cords and three-ways there are together.
func (p Plan) Pieces() int { return len(p.Cords) + len(p.Taps) }

// Covered returns how many joints each take a plug cover: all that is put together outside the outlets and the plug boxes.
func (p Plan) Covered() int { return p.Joints + p.Links - p.Boxed }

// PlugBoxes returns how many boxes there are off the ground and dry: one where several plugs meet low down, one about every other supply.
func (p Plan) PlugBoxes() int { return len(p.Boxes) + p.apart }

// Loose returns how many sockets of cords that lead from an outlet stay free on the way to the first foot, where no pipe is to tie them to.
func (p Plan) Loose() (n int) {
	for _, c := range p.Cords {
		if c.FedBy != outletName(c.Outlet) || len(c.Joints) == 0 {
			continue
		}
		for _, f := range p.Feeders {
			if f.Name == c.Feeder {
				n += f.Joints[c.Joints[0]].Skips
			}
		}
	}
	return n
}

// High returns at how many crowns something of the feeders is joined.
func (p Plan) High() int {
	crowns := map[int]bool{}
	for _, f := range p.Feeders {
		for _, j := range f.Joints {
			if at := j.End.At; at.Spot == lights.AtCrown {
				crowns[at.Arch] = true
			}
		}
	}
	return len(crowns)
}

// BackSocket is what a socket in the back of the strings' plugs would save, if their labels allow one.
type BackSocket struct {
	Strings []string // kinds of which it is not known
	Pieces  int      // cords and three-ways fewer
}
