package draw

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// row draws one row without its cords.
func (s *linePage) row(i int) {
	r := s.Rows[i]
	st := s.stations[r.station]
	top := s.rowTop(i)
	if r.first {
		if i > s.from {
			s.board.Line(s.at(0, top), s.at(s.x.lanes-1.5, top), paper.Thin)
			s.board.Line(s.at(s.x.plugs+2, top), s.at(s.x.right, top), paper.Thin)
		}
		s.name(st, top, r.Height)
		s.node(st)
		s.arrival(st, top, r.Height)
	}
	switch {
	case r.plug != nil:
		s.plugRow(st, r, top)
	case r.chain != nil:
		s.boxes(i, top)
	}
}

// name draws the tick box and what the station is called.
func (s *linePage) name(st lineStation, top, height paper.Length) {
	mid := top + height/2
	if !st.outlet {
		s.board.Page.TickBox(s.at(0.4, mid-paper.TickBoxSide/2))
	}
	l := nameLettering(st.name)
	name, detail := s.nameLines(st)
	y := mid - s.nameHeight(st)/2
	for _, line := range name {
		s.board.Text(s.at(s.x.name, y+l.Leading()*0.78), paper.AtLeft, line, l)
		y += l.Leading()
	}
	for _, line := range detail {
		s.board.Text(s.at(s.x.name, y+paper.Floor.Leading()*0.78), paper.AtLeft, line, paper.Floor)
		y += paper.Floor.Leading()
	}
}

// node draws a station's taps, or the outlet, with its ports to the cords.
func (s *linePage) node(st lineStation) {
	mid := s.nodeMid(st)
	h := s.nodeHeight(st)
	taps := 0
	if st.joint >= 0 {
		taps = s.feeder.Joints[st.joint].Taps
	}
	if taps > 0 || st.outlet {
		foot := mid + h/2
		for i := st.top + 1; i < min(st.end, s.to); i++ { // a station with more plugs has a longer node
			if s.Rows[i].plug != nil {
				foot = s.rowTop(i) + rowHeight/2 + 3
			}
		}
		r := paper.Rect{X: s.room.X + s.x.node, Y: mid - h/2, W: nodeWide, H: foot - mid + h/2}
		outlinedBox(s.board, r, paper.Thick)
		c := r.Centre()
		if foot > mid+h/2 {
			c.Y = mid
		}
		switch {
		case st.outlet && taps == 0:
			OutletSymbol(s.board, paper.Point{X: c.X - 2.9, Y: c.Y}, paper.Point{X: 1})
		default:
			centredText(s.board, paper.Point{X: c.X, Y: c.Y - 2.3}, fmt.Sprint(s.feeder.Joints[st.joint].Fans), paper.CellSmall)
			centredText(s.board, paper.Point{X: c.X, Y: c.Y + 2.3}, "way", paper.Floor)
		}
	}
	for _, p := range st.ports {
		y := mid + p.dy
		switch {
		case p.source: // the cord's prongs in the node's socket
			Mated(s.board, s.at(s.x.node, y), paper.Point{X: -1})
		case s.cords[p.cord].number == 0: // no cord between: plugged straight in
		case taps > 0: // the tap's prongs in the cord's socket
			Mated(s.board, s.at(s.x.node-matedLong, y), paper.Point{X: 1})
		default: // what plugs in here goes straight into the cord's socket
			s.board.Line(s.at(s.x.node-matedLong, y), s.at(s.x.plugs, y), paper.Thick)
		}
	}
}

// arrival tells of the cord that comes to a station.
func (s *linePage) arrival(st lineStation, top, height paper.Length) {
	first, second := s.arrivalWords(st)
	mid := top + height/2
	s.board.Text(s.at(s.x.cord+1, mid-1.3), paper.AtLeft, first, paper.CellSmall)
	s.board.Text(s.at(s.x.cord+1, mid+4.1), paper.AtLeft, second, paper.Floor)
}

// arrivalWords says in two lines which cord comes to a station.
func (o *OneLine) arrivalWords(st lineStation) (first, second string) {
	if st.outlet {
		return "Start here", measure.Amps(o.feeder.Amps) + " in all"
	}
	j := o.feeder.Joints[st.joint]
	switch {
	case j.Cord == 0:
		return "No cord", "plug into the outlet"
	case j.Socket > 1:
		return fmt.Sprintf("%d: socket %d", j.Cord, j.Socket), fmt.Sprintf("lies %s, %s", o.units.Room(j.Lies), measure.Amps(j.Amps))
	}
	over := ""
	if j.Over {
		over = ", over a way"
	}
	what := StockWords(j.Cords, o.units)
	if j.Socket > 0 {
		what += fmt.Sprintf(", %d sockets", j.Of)
	}
	return fmt.Sprintf("%d: %s", j.Cord, what), fmt.Sprintf("lies %s, %s%s", o.units.Room(j.Lies), measure.Amps(j.Amps), over)
}

// StockWords says what cords to take for one line: 25 ft, or 100 + 50 ft.
func StockWords(cords []measure.Length, units measure.System) string {
	var words []string
	for _, l := range cords {
		words = append(words, fmt.Sprintf("%.0f", soldLength(l, units)))
	}
	unit := " ft"
	if units == measure.Metric {
		unit = " m"
	}
	return strings.Join(words, " + ") + unit
}

// soldLength returns a cord's length in feet or metres.
func soldLength(l measure.Length, units measure.System) float64 {
	if units == measure.Metric {
		return l.Metres()
	}
	return float64(l / measure.Foot)
}
