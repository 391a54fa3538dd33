package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/layout/power"
)

// Sizes of the diagram.
const (
	rowHeight   paper.Length = 12.4
	portPitch   paper.Length = 4
	nodeWide    paper.Length = 9
	nodeLeast   paper.Length = 9
	boxHigh     paper.Length = 11
	boxRow      paper.Length = 19 // a row of boxes with the amps over its plugs
	boxGap      paper.Length = 7  // between boxes: a socket with prongs in it
	headHeight  paper.Length = 11
	lanePast    paper.Length = 4.5 // how far a line goes on at a page's end: room for its number
	endVoltWide paper.Length = 15.6
)

// lineColumns are the left edges of the diagram's columns, from the room's left edge.
type lineColumns struct{ name, lanes, node, plugs, cord, right paper.Length }

// measure sets the columns for a width by what stands in them.
func (o *OneLine) measure(width paper.Length) {
	number, name, cord := paper.Length(4), paper.Length(12), paper.Length(35)
	for _, c := range o.cords {
		number = max(number, laneNumber.Width(fmt.Sprint(c.number)))
	}
	for _, s := range o.stations {
		for _, word := range paper.Words(s.name) {
			name = max(name, min(30, nameLettering(s.name).Width(word)))
		}
		for _, word := range paper.Words(s.detail) {
			name = max(name, min(30, paper.Floor.Width(word)))
		}
		first, second := o.arrivalWords(s)
		cord = max(cord, paper.CellSmall.Width(first), paper.Floor.Width(second))
	}
	o.x.name = 8
	o.x.lanes = o.x.name + name + 1
	o.x.node = o.x.lanes + paper.Length(o.lanes)*min(number+1, 60/paper.Length(max(1, o.lanes))) + matedLong + 1
	o.x.plugs = o.x.node + nodeWide
	o.x.cord = width - cord - 1
	o.x.right = width
}

// laneX returns where a lane lies from the room's left edge.
func (o *OneLine) laneX(lane int) paper.Length {
	room := o.x.node - matedLong - 1 - o.x.lanes
	return o.x.node - matedLong - 1 - room*(paper.Length(lane)+0.5)/paper.Length(max(1, o.lanes))
}

// laneNumber is the lettering of a cord's number on its line.
var laneNumber = paper.CellSmall.Sized(11)

// nameLettering returns the lettering of a station's name: large for a leg's stake, which goes by letter and number.
func nameLettering(name string) paper.Lettering {
	switch {
	case name == "outlet":
		return paper.Heading
	case len(name) <= 4:
		return paper.StakeName
	}
	return paper.CellSmall
}

// fill makes the rows.
func (o *OneLine) fill(chains []power.Chain) {
	for i := range o.stations {
		s := &o.stations[i]
		s.top = len(o.Rows)
		if s.joint >= 0 {
			for k := range o.feeder.Joints[s.joint].Plugs {
				o.plug(i, &o.feeder.Joints[s.joint].Plugs[k], chains)
			}
		}
		if len(o.Rows) == s.top {
			o.Rows = append(o.Rows, LineRow{Height: rowHeight, station: i})
		}
		first := &o.Rows[s.top]
		first.first = true
		first.Height = max(first.Height, o.nodeHeight(*s)+2.2, o.nameHeight(*s)+2)
		s.end = len(o.Rows)
	}
}

// nameLines breaks a station's name and detail to their column.
func (o *OneLine) nameLines(s lineStation) (name, detail []string) {
	wide := o.x.lanes - o.x.name - 1
	name = nameLettering(s.name).Wrap(s.name, wide)
	if s.detail != "" {
		detail = paper.Floor.Wrap(s.detail, wide)
	}
	return name, detail
}

// nameHeight returns how tall a station's name with its detail is.
func (o *OneLine) nameHeight(s lineStation) paper.Length {
	name, detail := o.nameLines(s)
	return nameLettering(s.name).Leading()*paper.Length(len(name)) + paper.Floor.Leading()*paper.Length(len(detail))
}

// nodeHeight returns how tall a station's node must be for its ports.
func (o *OneLine) nodeHeight(s lineStation) paper.Length {
	return max(nodeLeast, portPitch*paper.Length(len(s.ports))+0.4)
}

// plug adds the rows of one plug: a chain of one string takes one row; of more, its strings go in rows of boxes under it.
func (o *OneLine) plug(at int, p *power.Plug, chains []power.Chain) {
	room := o.x.cord - o.x.plugs
	one := chainOf(chains, p.Chains[0])
	if !p.Supply && len(one.Strings) == 1 && o.plugLine+o.boxWide+cupRadius+endVoltWide <= room {
		o.Rows = append(o.Rows, LineRow{Height: rowHeight, station: at, plug: p, chain: one, to: 1})
		return
	}
	o.Rows = append(o.Rows, LineRow{Height: rowHeight, station: at, plug: p})
	for _, name := range p.Chains {
		c := chainOf(chains, name)
		for k := 0; k < len(c.Strings); {
			to := min(k+o.perRow(at, cupRadius+7), len(c.Strings))
			if to == len(c.Strings) && to-k > o.perRow(at, cupRadius+endVoltWide) {
				to--
			}
			o.Rows = append(o.Rows, LineRow{Height: boxRow, Keep: k == 0, station: at, chain: c, from: k, to: to})
			k = to
		}
	}
}

// boxesLeft is where a station's rows of boxes begin: under its node, or beside it where more than one plug makes the node long.
func (o *OneLine) boxesLeft(station int) paper.Length {
	if j := o.stations[station].joint; len(o.feeder.Joints[j].Plugs) > 1 {
		return o.x.plugs + 4
	}
	return o.x.node + 4
}

// perRow returns how many boxes fit side by side at a station before an end of some width.
func (o *OneLine) perRow(station int, end paper.Length) int {
	return max(1, int((o.x.right-o.boxesLeft(station)-end)/(o.boxWide+boxGap)))
}
