package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
)

// plugRow draws the line from a station to a chain of one string with its box, or to what stands in the rows below.
func (s *linePage) plugRow(st lineStation, r LineRow, top paper.Length) {
	y := top + rowHeight/2
	if r.first {
		y = s.nodeMid(st)
	}
	right := paper.Point{X: 1}
	tap := st.outlet || s.feeder.Joints[st.joint].Taps > 0
	if tap {
		Mated(s.board, s.at(s.x.plugs, y), right)
	} else {
		Mated(s.board, s.at(s.x.plugs-0.2, y), right)
	}
	start := s.x.plugs + matedLong
	if r.chain != nil {
		end := s.x.plugs + s.plugLine
		s.board.Line(s.at(start-0.5, y), s.at(end, y), paper.Thick)
		s.chainWords(start+0.4, y, r.chain)
		s.stringBox(end, y-boxHigh/2, r.chain.Strings[0])
		s.ending(end+s.boxWide, y, r.chain)
		return
	}
	s.plugHead(r, start, y)
}

// plugHead draws what leads from a plug to the rows of boxes under it: a line that turns down, through a supply where there is one.
func (s *linePage) plugHead(r LineRow, x, y paper.Length) {
	left := x + 4
	if r.plug.Supply {
		l := paper.CellSmall
		w := l.Width("supply") + 4
		s.board.Line(s.at(x-0.5, y), s.at(left, y), paper.Thick)
		outlinedBox(s.board, paper.Rect{X: s.room.X + left, Y: y - 4, W: w, H: 8}, paper.Thick)
		s.board.Text(s.at(left+2, y+1.6), paper.AtLeft, "supply", l)
		left += w
	}
	s.board.Text(s.at(left+2, y+1.6), paper.AtLeft, measure.Amps(r.plug.Amps)+" through this plug", paper.Floor)
}

// chainWords sets a chain's letter and watts over its line and the amps through its plug under it.
func (s *linePage) chainWords(x, y paper.Length, c *power.Chain) {
	s.board.Text(s.at(x, y-1.2), paper.AtLeft, c.Name, paper.Cell)
	s.board.Text(s.at(x+paper.Cell.Width(c.Name)+1.2, y-1.2), paper.AtLeft, measure.Watts(c.Watts), paper.Floor)
	s.board.Text(s.at(x, y+4.5), paper.AtLeft, measure.Amps(c.Running[0]), paper.Floor)
}

// stringBox draws a string: its number and where it hangs.
func (s *linePage) stringBox(x, y paper.Length, name string) {
	r := paper.Rect{X: s.room.X + x, Y: y, W: s.boxWide, H: boxHigh}
	outlinedBox(s.board, r, paper.Thick)
	s.board.Text(paper.Point{X: r.X + r.W/2, Y: r.Y + 4.7}, paper.AtMiddle, name, paper.CellSmall)
	s.board.Text(paper.Point{X: r.X + r.W/2, Y: r.Y + 9.4}, paper.AtMiddle, s.runs[name], paper.Floor)
}

// ending draws a chain's last socket and sets the volts at its last bulb and the share lost beside it.
func (s *linePage) ending(x, y paper.Length, c *power.Chain) {
	Socket(s.board, s.at(x, y), paper.Point{X: 1})
	x += cupRadius + 1.2
	s.board.Text(s.at(x, y-1.2), paper.AtLeft, measure.Volts(c.EndVolts), paper.Floor)
	s.board.Text(s.at(x, y+4.5), paper.AtLeft, lostWords(c.Drop), paper.Floor)
}

// lostWords prints a share of volts lost to a tenth of a per cent.
func lostWords(share float64) string {
	tenths := math.Round(share * 1000)
	if tenths == 0 {
		return "none lost"
	}
	return "−" + measure.Percent(measure.Share(tenths/1000))
}

// boxes draws some of a chain's strings side by side, each plugged into the one before, with the amps over each plug.
func (s *linePage) boxes(i int, top paper.Length) {
	r := s.Rows[i]
	y := top + boxRow - boxHigh/2 - 2
	x := s.boxesLeft(r.station)
	for k := r.from; k < r.to; k++ {
		switch {
		case k == 0:
			s.lead(i, x, y)
			s.chainHead(x+2, top, r.chain, s.Rows[s.headOf(i)].plug.Supply)
		case k == r.from:
			s.board.Arrow(s.at(x-3, y), s.at(x+3.6, y), paper.Thick)
			s.board.Line(s.at(x+3, y), s.at(x+boxGap, y), paper.Thick)
		default:
			Mated(s.board, s.at(x, y), paper.Point{X: 1})
			s.board.Line(s.at(x+matedLong-0.3, y), s.at(x+boxGap, y), paper.Thick)
		}
		if k > 0 {
			s.board.Text(s.at(x+boxGap/2, top+5), paper.AtMiddle, measure.Amps(r.chain.Running[k]), paper.Floor)
		}
		x += boxGap
		s.stringBox(x, y-boxHigh/2, r.chain.Strings[k])
		x += s.boxWide
	}
	if r.to == len(r.chain.Strings) {
		s.ending(x, y, r.chain)
		return
	}
	s.board.Line(s.at(x, y), s.at(x+3, y), paper.Thick)
	s.board.Arrow(s.at(x+2, y), s.at(x+7, y), paper.Thick)
}

// chainHead sets a chain's letter over its first box with its watts, or behind a supply with the amps through its first plug.
func (s *linePage) chainHead(x, top paper.Length, c *power.Chain, supplied bool) {
	text := measure.Watts(c.Watts)
	if supplied {
		text = measure.Amps(c.Running[0])
	}
	s.board.Text(s.at(x, top+5), paper.AtLeft, c.Name, paper.Cell)
	s.board.Text(s.at(x+1.5+paper.Cell.Width(c.Name), top+5), paper.AtLeft, text, paper.Floor)
}

// headOf returns which row has the plug that a row of boxes belongs to.
func (s *linePage) headOf(i int) int {
	for s.Rows[i].plug == nil {
		i--
	}
	return i
}

// lead draws the line from a plug's head down to a chain's first box; behind a supply the chain has prongs of its own.
func (s *linePage) lead(i int, x, y paper.Length) {
	head := s.headOf(i)
	start := s.tops[0]
	if head >= s.from {
		start = s.rowTop(head) + rowHeight/2
		if s.Rows[head].first {
			start = s.nodeMid(s.stations[s.Rows[head].station])
		}
		bend := start + 5.6 // below the node and the supply
		from := s.at(s.x.plugs+matedLong-0.5, start)
		if s.Rows[head].plug.Supply {
			from = s.at(s.x.plugs+matedLong+8, start+4)
		}
		turn := paper.Point{X: max(from.X, s.room.X+s.x.plugs+matedLong+2), Y: start}
		if s.Rows[head].plug.Supply {
			turn = from
		}
		if x < s.x.plugs { // back under the node
			s.board.Stroke(paper.Polyline(from, turn, paper.Point{X: turn.X, Y: bend}, s.at(x, bend)), paper.Thick)
			start = bend
		} else {
			s.board.Line(from, paper.Point{X: s.room.X + x, Y: from.Y}, paper.Thick)
		}
	}
	if s.Rows[head].plug.Supply {
		s.board.LineRound(s.at(x, start), s.at(x, y), paper.Thick)
		Mated(s.board, s.at(x, y), paper.Point{X: 1})
		s.board.Line(s.at(x+matedLong-0.3, y), s.at(x+boxGap, y), paper.Thick)
		return
	}
	s.board.LineRound(s.at(x, start), s.at(x, y), paper.Thick)
	s.board.Line(s.at(x, y), s.at(x+boxGap, y), paper.Thick)
}
