// Cords and three-ways by name, as a feeder is followed from its outlet.

package power

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Cord is one cord as it lies.
type Cord struct {
	Name    string         `json:"name"`   // C1, C2 … in the order of laying
	From    lights.End     `json:"from"`   // its plug
	To      lights.End     `json:"to"`     // its last socket in use
	FedBy   string         `json:"fed_by"` // the cord, three-way or outlet that its plug is in
	Gauge   string         `json:"gauge"`
	Length  measure.Length `json:"length_mm"` // as sold
	Sockets int            `json:"sockets"`   // 1, or so many in line

	Amps   measure.Current `json:"amps"`
	Outlet string          `json:"outlet"`
	Places []lights.End    `json:"at"`   // of its sockets in use, from its plug on
	Path   []Spot          `json:"path"` // where it lies
	Open   int             `json:"open"` // sockets that nothing is plugged into

	Kind   string           `json:"-"` // catalog name
	May    measure.Current  `json:"-"` // by gauge and length
	Limit  Limit            `json:"-"` // that comes nearest to binding at its plug
	Lies   measure.Length   `json:"-"`
	Feeder string           `json:"-"`
	Joints []int            `json:"-"`    // of that feeder, at its sockets
	Lifts  bool             `json:"-"`    // it leads from a plug within reach to sockets that hang higher than one reaches from the ground
	Tied   measure.Length   `json:"-"`    // its share of what is tied to pipe or row, out of reach or over a way: 0 where nothing is
	Over   bool             `json:"over"` // it passes the opening or a side way: overhead, or on the ground under a cover
	Passes [][2]lights.Part `json:"-"`    // the legs that it goes up and down there

	inline *catalog.Inline // it has several sockets
}

// Laid reports whether a part of it lies on the ground: from an outlet, or along the feet.
func (c Cord) Laid() bool {
	return c.From.At.Spot == lights.AtOutlet || c.Lies-c.Tied > practice.EndSlack
}

// Hung reports whether a part of it is tied to pipe or row where nobody reaches from the ground, or over a way.
func (c Cord) Hung() bool { return c.Tied > 0 }

// HungTies are the zip ties that hold what is hung of it.
func (c Cord) HungTies() int { return int(math.Ceil(float64(c.Tied / practice.CordStep))) }

// Spot is a point of a cord's path.
type Spot struct {
	X measure.Length `json:"x_mm"`
	Y measure.Length `json:"y_mm"`
}

// Tap is a three-way, or whatever makes several sockets of one.
type Tap struct {
	Name    string     `json:"name"` // T1, T2 … in the order of laying
	At      lights.End `json:"at"`
	Sockets int        `json:"sockets"`
	FedBy   string     `json:"fed_by"`
	Open    int        `json:"open"`
}

// outletName is how a piece is said to be plugged into an outlet.
func outletName(name string) string { return "outlet " + name }

// reach is how a joint is led to from its outlet.
type reach struct {
	socket string         // what a plug at the joint goes into
	cords  []string       // in line, by their names
	lies   measure.Length // of the path that they take
	stock  measure.Length // of the cords
	path   []spec.Point
}

// follow follows a feeder from its outlet outward and along the walls: it numbers cords and three-ways in the order of laying, lists them, and says of each run how it
// is fed.
func (f *feeding) follow(one *Feeder) {
	at := make([]reach, len(one.Joints))
	for i := range one.Joints {
		j := &one.Joints[i]
		r, end := reach{socket: outletName(one.Outlet)}, outletEnd(f.sources[one.source].outlet)
		if j.From >= 0 {
			r, end = at[j.From], one.Joints[j.From].End
		}
		r.lies += j.Lies
		r.path = slices.Compact(slices.Concat(r.path, j.Path))
		first := len(f.plan.Cords)
		if len(j.Cords) > 0 || j.Socket > 1 {
			r.socket = f.cord(one, i, r.socket, end)
		}
		r.cords = slices.Clone(r.cords)
		for _, c := range f.plan.Cords[first:] {
			r.cords, r.stock = append(r.cords, c.Name), r.stock+c.Length
		}
		if j.Taps > 0 {
			j.Tap = len(f.plan.Taps) + 1
			tap := Tap{Name: fmt.Sprintf("T%d", j.Tap), At: j.End, Sockets: j.Fans, FedBy: r.socket, Open: j.free()}
			f.plan.Taps = append(f.plan.Taps, tap)
			r.socket = tap.Name
		}
		at[i] = r
		for _, p := range j.Plugs {
			f.hang(one, i, p, r)
		}
	}
}

// free counts the sockets of a joint's three-way that nothing is plugged into.
func (j Joint) free() int { return j.Fans - len(j.Plugs) - j.Onward }

// hang says of the runs behind a plug at a joint how they are fed.
func (f *feeding) hang(one *Feeder, joint int, p Plug, r reach) {
	stacked := len(p.runs) == 2 && !p.Supply // the first plug has the other in its back
	if stacked {
		f.chains[p.runs[0]].Limit = nearest(behind(f.both(p.runs[0], p.runs[1]), f.in.Spec.Power.Together)...)
	}
	cold := f.in.Spec.Weather.Cold
	arrives := one.Joints[joint].Volts
	for k, n := range p.runs {
		c, own := &f.chains[n], f.runs[n].lost
		c.Outlet, c.Circuit, c.Feeder, c.Joint = one.Outlet, one.Circuit, one.Name, joint
		c.Cords, c.Cord, c.Lies, c.Path, c.FedBy = r.cords, r.stock, r.lies, r.path, r.socket
		if stacked && k > 0 {
			c.FedBy = p.Chains[0]
		}
		if c.Cord > 0 {
			c.Gauge = one.Gauge
		}
		inCold := own * measure.Voltage(copper(cold, stringWarm))
		if p.Supply {
			c.EndVolts, c.Of, c.ColdVolts = c.Volts-own, c.Volts, c.Volts-inCold
		} else {
			c.EndVolts, c.Of, c.ColdVolts = arrives-own, one.Volts, one.Volts-(one.Volts-arrives)*measure.Voltage(copper(cold, warmth(one.cord)))-inCold
		}
		c.Drop = float64((c.Of - c.EndVolts) / c.Of)
		c.Limit = nearest(c.Limit, Limit{VoltsLost, c.Drop, usualDrop(f.runs[n].label)})
	}
}

// cord lists the cords that end at a joint, or puts the joint on the list of the cord that it is a socket of, and returns its name.
func (f *feeding) cord(one *Feeder, i int, from string, at lights.End) string {
	p, j := &f.plan, &one.Joints[i]
	if j.Socket > 1 {
		c := &p.Cords[one.Joints[j.From].Cord-1]
		j.Cord = one.Joints[j.From].Cord
		c.Places, c.Joints, c.To = append(c.Places, j.End), append(c.Joints, i), j.End
		c.Open += j.Skips + j.Spare
		c.Lies += j.Lies
		c.Over, c.Passes = c.Over || j.Over, append(c.Passes, f.site.passed(j.Path)...)
		c.Path = append(c.Path, spots(j.Path)[1:]...)
		return c.Name
	}
	for k, l := range j.Cords {
		c := Cord{
			Name: fmt.Sprintf("C%d", len(p.Cords)+1), From: at, To: j.End, FedBy: from, Gauge: one.Gauge, Length: l, Sockets: 1,
			Amps: j.Amps, Outlet: one.Outlet, Path: spots(j.Path), Places: []lights.End{}, Kind: one.Cord, Lies: j.Lies, Tied: j.Tied / measure.Length(len(j.Cords)), Feeder: one.Name, Over: j.Over, Passes: f.site.passed(j.Path),
			Lifts: k == 0 && j.Climb > practice.HipReach && (j.From < 0 || one.Joints[j.From].Climb <= practice.HipReach),
		}
		if k == len(j.Cords)-1 {
			c.Places, c.Joints = []lights.End{j.End}, []int{i}
			if j.Socket > 0 {
				c.Sockets, c.Open, c.inline = j.Of, j.Skips+j.Spare, j.inline
			}
		}
		p.Cords = append(p.Cords, c)
		from, at = c.Name, j.End
	}
	j.Cord = len(p.Cords)
	return from
}

// spots turns a path into what is printed of it.
func spots(path []spec.Point) []Spot {
	out := make([]Spot, len(path))
	for i, p := range path {
		out[i] = Spot{p.X, p.Y}
	}
	return out
}

func outletEnd(o spec.Outlet) lights.End {
	return lights.End{At: lights.Place{Spot: lights.AtOutlet, Outlet: o.Name}, X: o.At.X, Y: o.At.Y}
}
