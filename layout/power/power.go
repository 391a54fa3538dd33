// Package power plans how the strings are fed: strings end to end into chains, a cord from an outlet to each chain's first
// plug, chains on circuits, with the amps at every plug and the volts at the last bulb.
//
// The rules, in the order they are applied. A string plugs into the nearest socket of its own kind that its prongs reach, as
// far as its label allows and the last bulb keeps its volts, and less far where the cords before it then take the loss over 5 % (join.go,
// near.go, limit.go). Chains go to the fewest circuits that carry them, left and right walls apart where the spec asks for it (share.go,
// sides.go). One more circuit than the fewest is taken up while it brings a loss over 5 % down, or more than five cords in line: a crew uses
// the outlet that is near rather than cords past half the walk (assign.go). Each outlet feeds each of its walls by one line of cord laid
// outside the wall, with three-way taps at the feet and cords up the legs to what starts at a crown (feeder.go, tree.go); its free sockets
// are taken only where the line is still too long or a tap would sit in a tap (outlet.go, spread.go). The thinnest cord that carries the amps and keeps the
// drop within 3 % is taken (cord.go, copper.go), a thicker one where less is to be bought of it; cords that the organiser owns go in
// where they do, longer ones for shorter ones (shed.go). A cord never crosses the opening at walking height: the far wall is reached over the first
// arch (way.go, keepoff.go).
//
// What is claimed: the fewest circuits are searched for and proven where the search ends (exact.go); the cords are counted against how many places no tap
// can share (places.go); owned cords are given so that what is left to buy is worth least. Chains and the lines of cords are laid by
// the rules above, and nothing is claimed of them.
package power

import (
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
	Ground  ground.Layout
	Crowns  []measure.Length // height of each arch's crown above its ground line, arch 1 first
}

// Chain is strings plugged end to end behind one plug.
type Chain struct {
	Name     string          `json:"name"` // A, B … in plan order
	Strings  []string        `json:"strings"`
	Watts    measure.Power   `json:"watts"`
	Amps     measure.Current `json:"amps"`    // through its first plug, at its own volts
	Outlet   string          `json:"outlet"`  // empty where nothing can feed it
	Cord     measure.Length  `json:"cord_mm"` // stock length to lay, all cords in line together; 0 where the string reaches the outlet
	Gauge    string          `json:"cord_gauge"`
	EndVolts measure.Voltage `json:"end_volts"` // at the last bulb

	Circuit string            `json:"-"`
	Feeder  string            `json:"-"` // that it hangs on; empty where nothing feeds it
	Joint   int               `json:"-"` // of that feeder, where it is plugged in
	Cords   []string          `json:"-"` // cord names as sold, in line from the outlet
	Lies    measure.Length    `json:"-"` // length of the path that the cord takes
	Path    []spec.Point      `json:"-"` // where the cord lies
	Running []measure.Current `json:"-"` // amps through each string's plug, first to last
	Volts   measure.Voltage   `json:"-"` // of its strings, as labelled
	Kind    string            `json:"-"` // of its strings
	Drop    float64           `json:"-"` // share of the supply voltage lost at the last bulb
	Limit   string            `json:"-"` // what ended the chain, in words

	MostWatts measure.Power   `json:"-"` // that its first plug may carry by the label, zero where not known
	Of        measure.Voltage `json:"-"` // the volts that Drop is a share of: the circuit's, behind a supply the strings'
	ColdVolts measure.Voltage `json:"-"` // at the last bulb with all copper as cold as the spec's weather; EndVolts are figured warm
}

// Feeder is all that is plugged into one socket of an outlet: cords and three-way taps that branch but never meet again.
// It stands on one wall, unless it begins with a tap at the outlet that sends a cord to each.
type Feeder struct {
	Name    string // F1, F2 …
	Outlet  string
	Circuit string
	Cord    string // its one kind of cord, a catalog name; empty where it has none
	Gauge   string // of that cord
	Joints  []Joint
	Amps    measure.Current // through its plug at the outlet
	Volts   measure.Voltage // of the circuit
	Crosses bool            // some cord of it gets to the far wall at arch 1
}

// Joint is a place on a feeder where something is plugged in: the outlet's own socket, or the end of a cord. With more than
// one thing to plug in there, it has three-way taps. A joint comes after the one it is fed from.
type Joint struct {
	At     string           // in words: "foot of leg L3", "crown 1", "outlet porch"
	Wall   spec.Side        // along which it is fed
	Arch   int              // nearest arch; 0 at the outlet itself
	Climb  measure.Length   // from that arch's foot: level distance and height
	Cord   int              // number of its cord over all feeders, from 1; 0 without one
	From   int              // the joint it is fed from; −1 for the outlet
	Lies   measure.Length   // length of its cord's path; 0 without a cord
	Cords  []measure.Length // stock lengths in line; none where it is plugged straight in
	Path   []spec.Point     // where its cord lies, both ends included
	Over   bool             // the cord passes the opening at arch 1
	Amps   measure.Current  // through its cord
	Volts  measure.Voltage  // that arrive
	Taps   int              // three-way taps here; each after the first sits in a socket of the one before
	Plugs  []Plug           // of chains and supplies
	Onward int              // cords that go on from here
}

// Plug is what a joint feeds: one chain, or one low-voltage supply with its chains.
type Plug struct {
	Chains []string
	Supply bool
	Amps   measure.Current // at the circuit's volts; of a supply by its own watts
}

// Cord is a number of like cords to buy.
type Cord struct {
	Name   string
	Length measure.Length
	Count  int
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

// PluggedAt says where a chain's first plug goes in: "foot of leg L3", "outlet porch"; empty where nothing feeds it.
func (p Plan) PluggedAt(c Chain) string {
	for _, f := range p.Feeders {
		if f.Name == c.Feeder {
			return f.Joints[c.Joint].At
		}
	}
	return ""
}

// Plan is how everything is fed.
type Plan struct {
	Chains   []Chain
	Feeders  []Feeder
	Circuits []Circuit // every circuit of the spec, in its order
	Cords    []Cord    // all feeders' cords, by kind and length
	Taps     int       // three-way taps in all

	Fewest       int  // circuits, or GFCIs where one circuit has several, that carry all that can be fed; more may be in use for shorter lines
	FewestProven bool // no fewer do, nor could more amps be fed
	CordsProven  bool // what is fed cannot be fed by fewer cords

	Supplies int             // low-voltage supplies in all
	Missing  measure.Current // that no circuit has left for lights
	Watts    measure.Power
	KWh      float64 // over the season, zero where evenings are not given
	Cost     float64 // in the spec's currency, zero where no price is given
	Findings []finding.Finding
}
