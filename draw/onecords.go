package draw

import (
	"fmt"

	"hoopwright/draw/paper"
)

// lines draws the cords in their lanes with their numbers. Where one crosses another its upright line is broken: they are not joined.
func (s *linePage) lines() {
	var stubs []stub
	uprights := make([][2]paper.Length, len(s.cords))
	for i, c := range s.cords {
		lo, hi := c.ends()
		if s.stations[hi].top < s.from || s.stations[lo].top >= s.to {
			continue
		}
		from, shownFrom := s.endOf(i, c.from, true)
		to, shownTo := s.endOf(i, c.to, false)
		uprights[i] = [2]paper.Length{min(from, to), max(from, to)}
		for _, e := range []struct {
			y     paper.Length
			shown bool
		}{{from, shownFrom}, {to, shownTo}} {
			if e.shown {
				x := s.laneX(c.lane)
				stubs = append(stubs, stub{cord: i, y: e.y, from: x})
				s.board.Line(s.at(x, e.y), s.at(s.x.node-matedLong+0.3, e.y), paper.Thick)
			}
		}
	}
	for i, span := range uprights {
		if span[1] > span[0] {
			s.upright(i, span[0], span[1], stubs)
		}
	}
}

// stub is the level line from a cord's lane to a station.
type stub struct {
	cord    int
	y, from paper.Length // from its lane's x to the stations
}

// endOf returns how far down the page a cord's upright line begins or ends, and whether its station is on the page.
func (s *linePage) endOf(cord, station int, source bool) (y paper.Length, shown bool) {
	st := s.stations[station]
	if st.top < s.from {
		return s.tops[0] - lanePast, false
	}
	if st.top >= s.to {
		return s.foot + lanePast, false
	}
	for _, p := range st.ports {
		if p.cord == cord && p.source == source {
			return s.nodeMid(st) + p.dy, true
		}
	}
	return 0, false
}

// upright draws a cord's line along its lane, broken for its number where nothing else lies, and where other cords cross it.
func (s *linePage) upright(cord int, top, bottom paper.Length, stubs []stub) {
	c := s.cords[cord]
	x := s.laneX(c.lane)
	const hop = 1.1
	pieces := [][2]paper.Length{{top, bottom}}
	cut := func(from, to paper.Length) {
		var left [][2]paper.Length
		for _, p := range pieces {
			for _, q := range [][2]paper.Length{{p[0], min(p[1], from)}, {max(p[0], to), p[1]}} {
				if q[1] > q[0] {
					left = append(left, q)
				}
			}
		}
		pieces = left
	}
	for _, k := range stubs {
		if k.cord != cord && k.from < x && k.y > top+hop/2 && k.y < bottom-hop/2 {
			cut(k.y-hop, k.y+hop)
		}
	}
	pen := paper.Thick
	if c.number == 0 {
		pen = paper.HiddenBar
	} else if y, ok := s.numberAt(x, top, bottom, fmt.Sprint(c.number)); ok {
		up, _ := laneNumber.Extent("0")
		cut(y-up/2-1, y+up/2+1)
		s.board.Text(s.at(x, y+up*0.47), paper.AtMiddle, fmt.Sprint(c.number), laneNumber)
	}
	for _, p := range pieces {
		s.board.Line(s.at(x, p[0]), s.at(x, p[1]), pen)
	}
}

// numberAt finds where on an upright line its number may stand, the middle first.
func (s *linePage) numberAt(x, top, bottom paper.Length, text string) (paper.Length, bool) {
	up, _ := laneNumber.Extent(text)
	w := laneNumber.Width(text)
	mid := (top + bottom) / 2
	for step := paper.Length(0); step <= (bottom-top)/2-up/2-0.6; step += 0.5 {
		for _, y := range []paper.Length{mid + step, mid - step} {
			if s.board.Free(paper.Rect{X: s.room.X + x - w/2, Y: y - up/2, W: w, H: up}) {
				return y, true
			}
		}
	}
	return 0, false
}
