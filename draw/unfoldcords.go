package draw

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// feed is a cord that a string's prongs go into: its sign, and where its socket is.
type feed struct {
	name string
	box  paper.Rect
	at   paper.Point
}

// cordNames says of each string that begins a run what its prongs go into: the cord C3, or an outlet itself.
func (v *unfolding) cordNames() map[string]string {
	names := map[string]string{}
	for _, c := range v.Plan.Chains {
		for _, f := range v.Plan.Power.Feeders {
			if f.Name != c.Feeder || len(c.Strings) == 0 {
				continue
			}
			names[c.Strings[0]] = "outlet"
			if n := f.Joints[c.Joint].Cord; n > 0 {
				names[c.Strings[0]] = "C" + fmt.Sprint(n)
			}
			if n := f.Joints[c.Joint].Tap; n > 0 {
				names[c.Strings[0]] = "T" + fmt.Sprint(n)
			}
		}
	}
	return names
}

// cordSign is the size of a cord's sign, and drawCordSign draws it.
func cordSign(name string) paper.Rect { return paper.Rect{W: unfoldNumber.Width(name) + 1.6, H: 5} }

func drawCordSign(b *place.Board, r paper.Rect, name string) {
	outlinedBox(b, r, paper.Thick)
	centredText(b, r.Centre(), name, unfoldNumber)
}

// cords finds each cord that feeds a string its sign's place, near the prongs: with a line to them that crosses nothing, else one that crosses another string, else on
// top of another string.
func (v *unfolding) cords() {
	const reach, off paper.Length = 24, 1.2
	for _, s := range v.strands {
		if !s.begins || s.cord == "" {
			continue
		}
		at, sign := s.path[0], cordSign(s.cord)
		around := v.around(at, reach+max(sign.W, sign.H))
		onTop := func(r paper.Rect) bool {
			near := nearestIn(r, at)
			return near.Sub(at).Long() > off && v.onPicture(r) && !slices.ContainsFunc(around.taken, func(o paper.Rect) bool { return boxesMeet(o, r) }) && around.clear(near, at)
		}
		free := func(r paper.Rect) bool { return onTop(r) && around.apartFrom(r.Inset(-labelPad), noStrand) }
		var box paper.Rect
		ok := false
		for _, fits := range []func(paper.Rect) bool{func(r paper.Rect) bool { return free(r) && around.alone(nearestIn(r, at), at) }, free, onTop} {
			if box, ok = v.nearest(sign, at, reach, fits); ok {
				break
			}
		}
		if !ok {
			v.missing = append(v.missing, s.cord+" at "+s.Name)
			continue
		}
		v.taken, v.said = append(v.taken, box.Inset(-labelPad)), append(v.said, box)
		v.feeds = append(v.feeds, feed{s.cord, box, at})
	}
}

// around returns the picture with no more than what comes within a reach of a point: a place there is sought among thousands.
func (v *unfolding) around(at paper.Point, reach paper.Length) *unfolding {
	room := paper.Rect{X: at.X - reach, Y: at.Y - reach, W: 2 * reach, H: 2 * reach}
	far := func(r paper.Rect) bool { return !boxesMeet(r, room) }
	apart := func(a, b paper.Point) bool { return far(about(a, b)) }
	w := *v
	w.taken, w.said = slices.DeleteFunc(slices.Clone(v.taken), far), slices.DeleteFunc(slices.Clone(v.said), far)
	w.feeds = slices.DeleteFunc(slices.Clone(v.feeds), func(f feed) bool { return apart(nearestIn(f.box, f.at), f.at) })
	w.joints = slices.DeleteFunc(slices.Clone(v.joints), func(j [2]paper.Point) bool { return apart(j[0], j[1]) })
	w.strands = nil
	for _, s := range v.strands {
		if !far(s.label) || s.leader != nil && !apart(s.leader[0], s.leader[1]) || slices.ContainsFunc(longestFirst(s.path), func(p [2]paper.Point) bool { return !apart(p[0], p[1]) }) {
			w.strands = append(w.strands, s)
		}
	}
	return &w
}

// mateNames writes the names of strings that are plugged in elsewhere along a leg, beside where they are.
func (v *unfolding) mateNames() {
	const reach, beside paper.Length = 12, 2.5
	for _, m := range v.mates {
		name := paper.Rect{W: unfoldNumber.Width(m.name) + 1, H: 4}
		around := v.around(m.at, reach+name.W)
		free := func(r paper.Rect) bool { return v.onPicture(r) && around.apartFrom(r, noStrand) }
		box, ok := v.nearest(name, m.at, reach, func(r paper.Rect) bool {
			return free(r) && !around.led(r) && around.clear(nearestIn(r, m.at), m.at)
		})
		if !ok { // over a leader, which then stops at it
			box, ok = v.nearest(name, m.at, reach, free)
		}
		if !ok {
			v.missing = append(v.missing, m.name+" at its socket")
			continue
		}
		v.taken, v.said = append(v.taken, box), append(v.said, box)
		if near := nearestIn(box, m.at); near.Sub(m.at).Long() > beside {
			v.Line(near, m.at, paper.Thin)
		}
		centredText(v.Board, box.Centre(), m.name, unfoldNumber)
	}
}

// alone reports whether a line to a string's end crosses no other string, sign or joint.
func (v *unfolding) alone(from, to paper.Point) bool {
	to = to.Add(from.Sub(to).Unit().Times(0.3)) // short of the end itself
	return !v.anyLine(noStrand, func(a, b paper.Point) bool { return cross(from, to, a, b) })
}

// cross reports whether two lines, from a to b and from c to d, have a point in common.
func cross(a, b, c, d paper.Point) bool {
	side := func(o, p, q paper.Point) float64 {
		u, w := p.Sub(o), q.Sub(o)
		return float64(u.X)*float64(w.Y) - float64(u.Y)*float64(w.X)
	}
	return side(a, b, c)*side(a, b, d) <= 0 && side(c, d, a)*side(c, d, b) <= 0
}

// feed draws a cord with its sign as far as its socket, which is drawn with the prongs in it.
func (v *unfolding) feed(f feed) {
	v.Line(nearestIn(f.box, f.at), f.at, paper.Thick)
	v.Fill(paper.Box(f.box), paper.White)
	drawCordSign(v.Board, f.box, f.name)
}

// joint draws a line from a socket to the prongs that go into it elsewhere: in a bow over the ridge's strings, which it has nothing to do with.
func (v *unfolding) joint(a, b paper.Point) {
	if a.Y != b.Y || (a.X < v.middle) == (b.X < v.middle) || len(v.Plan.Ridge) == 0 {
		v.Line(a, b, paper.Thick)
		return
	}
	if a.X > b.X {
		a, b = b, a
	}
	bow := paper.Arc(paper.Point{X: v.middle, Y: a.Y}, hopRadius, math.Pi, 0)
	bow[0].Verb = paper.Line
	path := append(paper.Path{{Verb: paper.Move, To: a}}, bow...)
	v.Stroke(append(path, paper.Step{Verb: paper.Line, To: b}), paper.Thick)
}
