package draw

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// Fit returns past which row a page of that height must stop, beginning with row from; at least one row goes on.
func (o *OneLine) Fit(from int, height paper.Length) int {
	to := from + 1
	for to < len(o.Rows) && o.Height(from, to+1) <= height {
		to++
	}
	for to < len(o.Rows) && to > from+1 && o.Rows[to].Keep {
		to--
	}
	return to
}

// Height returns what rows from…to−1 take on a page.
func (o *OneLine) Height(from, to int) paper.Length {
	h := headHeight + o.noteHeight(from) + o.noteHeight(to)
	for _, r := range o.Rows[from:to] {
		h += r.Height
	}
	return h
}

// passing names the cords that pass from row at−1 to row at, as at a page's end.
func (o *OneLine) passing(at int) string {
	var words []string
	for _, c := range o.cords {
		lo, hi := c.ends()
		if o.stations[lo].top < at && o.stations[hi].top >= at {
			words = append(words, fmt.Sprintf("%d (%s to %s)", c.number, o.stations[c.from].name, o.stations[c.to].name))
		}
	}
	if len(words) == 0 {
		return "no cord"
	}
	return "cord " + strings.Join(words, ", ")
}

// noteLines is what stands at a page's end about the cords that go on, and on the next one's top; nothing at the diagram's own ends.
func (o *OneLine) noteLines(lead string, at int) []string {
	if at == 0 || at == len(o.Rows) {
		return nil
	}
	return paper.Floor.Wrap(lead+o.passing(at), o.x.right)
}

// The leads of the notes, and the height they are set in.
const (
	fromBefore = "From the page before: "
	goesOn     = "Goes on, next page: "
)

func (o *OneLine) noteHeight(at int) paper.Length {
	n := len(o.noteLines(fromBefore, at))
	if n == 0 {
		return 0
	}
	return paper.Floor.Leading()*paper.Length(n) + 1 + lanePast
}

// linePage is a diagram being drawn: rows from…to−1 in a room.
type linePage struct {
	*OneLine
	board    *place.Board
	room     paper.Rect
	from, to int
	tops     []paper.Length // of the rows drawn
	foot     paper.Length   // below the last row
}

// Draw draws rows from…to−1 from the room's top.
func (o *OneLine) Draw(board *place.Board, room paper.Rect, from, to int) {
	s := linePage{OneLine: o, board: board, room: room, from: from, to: to}
	s.heads()
	y := room.Y + headHeight
	s.note(y, fromBefore, from)
	y += o.noteHeight(from)
	for _, r := range o.Rows[from:to] {
		s.tops = append(s.tops, y)
		y += r.Height
	}
	s.foot = y
	s.note(y+lanePast, goesOn, to)
	for i := from; i < to; i++ {
		s.row(i)
	}
	s.lines()
}

// at returns a point by its distance from the room's left edge.
func (s *linePage) at(x, y paper.Length) paper.Point { return paper.Point{X: s.room.X + x, Y: y} }

// heads draws the columns' heads over a thick rule.
func (s *linePage) heads() {
	y := s.room.Y + 4
	l := paper.Strong.Sized(11)
	heads := []lineHead{{0, "Done"}, {s.x.name + 5, "At"}, {s.x.plugs + 3, "Plug in here\nchain, string"}, {s.x.cord + 1, "Cord coming in\nstock, lies, amps"}}
	if bulb := s.x.plugs + s.plugLine + s.boxWide + cupRadius + 1.2; bulb+endVoltWide+6 < s.x.cord {
		heads = append(heads, lineHead{bulb, "Last bulb\nvolts, lost"})
	}
	for _, h := range heads {
		for i, line := range strings.Split(h.text, "\n") {
			lettering := l
			if i > 0 {
				lettering = paper.Floor
			}
			s.board.Text(s.at(h.x, y+paper.Length(i)*4.7), paper.AtLeft, line, lettering)
		}
	}
	s.board.Text(s.at(s.x.lanes, y), paper.AtLeft, "Cords", l)
	rule := s.room.Y + headHeight - 0.6
	s.board.Line(s.at(0, rule), s.at(s.x.right, rule), paper.Thick)
}

// lineHead is a column's head: what it is, and under it what stands there.
type lineHead struct {
	x    paper.Length
	text string
}

// note says which cords pass between two pages.
func (s *linePage) note(y paper.Length, lead string, at int) {
	for i, line := range s.noteLines(lead, at) {
		s.board.Text(s.at(0, y+4.2+paper.Floor.Leading()*paper.Length(i)), paper.AtLeft, line, paper.Floor)
	}
}

// rowTop returns the top of a row that is drawn.
func (s *linePage) rowTop(i int) paper.Length { return s.tops[i-s.from] }

// nodeMid returns the middle of a station's node in its first row.
func (s *linePage) nodeMid(st lineStation) paper.Length {
	return s.rowTop(st.top) + s.Rows[st.top].Height/2
}
