package power

import (
	"fmt"
	"slices"

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

	Kind   string          `json:"-"` // catalog name
	May    measure.Current `json:"-"` // by gauge and length
	Limit  Limit           `json:"-"` // that comes nearest to binding at its plug
	Lies   measure.Length  `json:"-"`
	Feeder string          `json:"-"`
	Joints []int           `json:"-"`    // of that feeder, at its sockets
	Lifts  bool            `json:"-"`    // it leads from a plug within reach to sockets that hang higher than one reaches from the ground
	Over   bool            `json:"over"` // it passes the opening or a side way: overhead, or on the ground under a cover
}

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

	Feeder string `json:"-"`
	Joint  int    `json:"-"`
}

// outletName is how a piece is said to be plugged into an outlet.
func outletName(name string) string { return "outlet " + name }

// number numbers cords and three-ways in the order of laying, from each outlet outward and along the walls, and lists them.
func (f *feeding) number() {
	p := &f.plan
	for d := range p.Feeders {
		one := &p.Feeders[d]
		socket := make([]string, len(one.Joints)) // what a plug at each joint goes into
		line := make([][]string, len(one.Joints)) // cords from the outlet to each joint
		for i := range one.Joints {
			j := &one.Joints[i]
			from := outletName(one.Outlet)
			at := f.outletEnd(one.Outlet)
			if j.From >= 0 {
				from, at = socket[j.From], one.Joints[j.From].End
			}
			if j.From >= 0 {
				line[i] = slices.Clone(line[j.From])
			}
			first := len(p.Cords)
			if socket[i] = from; len(j.Cords) > 0 || j.Socket > 1 {
				socket[i] = f.cord(one, i, from, at)
			}
			for _, c := range p.Cords[first:] {
				line[i] = append(line[i], c.Name)
			}
			if j.Taps > 0 {
				p.Taps = append(p.Taps, Tap{
					Name: fmt.Sprintf("T%d", len(p.Taps)+1), At: j.End, Sockets: j.Fans, FedBy: socket[i], Feeder: one.Name, Joint: i,
					Open: j.Fans - len(j.Plugs) - j.Onward,
				})
				j.Tap = len(p.Taps)
				socket[i] = p.Taps[j.Tap-1].Name
			}
			for _, plug := range j.Plugs {
				for k, name := range plug.Chains {
					c := &f.chains[f.index[name]]
					c.Cords = line[i]
					if c.FedBy = socket[i]; k > 0 && !plug.Supply {
						c.FedBy = plug.Chains[0]
					}
				}
			}
		}
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
		c.Over = c.Over || j.Over
		c.Path = append(c.Path, spots(j.Path)[1:]...)
		return c.Name
	}
	for k, l := range j.Cords {
		c := Cord{
			Name: fmt.Sprintf("C%d", len(p.Cords)+1), From: at, To: j.End, FedBy: from, Gauge: one.Gauge, Length: l, Sockets: 1,
			Amps: j.Amps, Outlet: one.Outlet, Path: spots(j.Path), Places: []lights.End{}, Kind: one.Cord, Lies: j.Lies, Feeder: one.Name, Over: j.Over,
			Lifts: k == 0 && j.Climb > practice.HipReach && (j.From < 0 || one.Joints[j.From].Climb <= practice.HipReach),
		}
		if k == len(j.Cords)-1 {
			c.Places, c.Joints = []lights.End{j.End}, []int{i}
			if j.Socket > 0 {
				c.Sockets, c.Open = j.Of, j.Skips+j.Spare
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

// outletEnd returns the place of an outlet.
func (f *feeding) outletEnd(name string) lights.End {
	out := lights.End{At: lights.Place{Spot: lights.AtOutlet, Outlet: name}}
	for _, o := range f.in.Spec.Site.Outlets {
		if o.Name == name {
			out.X, out.Y = o.At.X, o.At.Y
		}
	}
	return out
}
