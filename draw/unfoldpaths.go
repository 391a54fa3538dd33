package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// strand is one string on the picture: the way it takes there.
type strand struct {
	lights.String
	path         []paper.Point // from the prongs; the part of it that is on this picture
	begins, ends bool          // whether its prongs and its socket are on this picture
	own          bool          // its middle is on this picture: here it is ticked
	into         bool          // its prongs go into another string's socket
	cord         string        // that they go into, as drawn
	onward       bool          // another's prongs go into its socket
	afoot        bool          // from elsewhere, and that is at a foot
	label        paper.Rect    // its number's
	form         form          // how that stands
	leader       []paper.Point // from it to the string, where it stands far off
}

// gather lists the strings that are on the picture, with their ways.
func (v *unfolding) gather() {
	paths := map[string]lights.Path{}
	for _, p := range v.Plan.Lights.Paths {
		for _, name := range p.Strings {
			paths[name] = p
		}
	}
	into, onward := map[string]bool{}, map[string]bool{}
	for _, c := range v.Plan.Chains {
		for k := 1; k < len(c.Strings); k++ {
			into[c.Strings[k]], onward[c.Strings[k-1]] = true, true
		}
	}
	cords := v.cordNames()
	for _, s := range v.Plan.Strings {
		st := strand{String: s, into: into[s.Name], cord: cords[s.Name], onward: onward[s.Name]}
		if p, ok := paths[s.Name]; ok {
			v.inRows(&st, p)
		} else {
			v.onPipe(&st)
		}
		if len(st.path) > 1 {
			v.strands = append(v.strands, st)
		}
	}
	v.join()
}

// aLine is how far apart two lines are at least that are seen as two.
const aLine paper.Length = 3

// join lists the lines from sockets to prongs that go into them and are drawn elsewhere.
func (v *unfolding) join() {
	byName := map[string]*strand{}
	for i := range v.strands {
		byName[v.strands[i].Name] = &v.strands[i]
	}
	for _, c := range v.Plan.Chains {
		for k := 1; k < len(c.Strings); k++ {
			from, to := byName[c.Strings[k-1]], byName[c.Strings[k]]
			if from != nil && to != nil && from.ends && to.begins && from.path[len(from.path)-1] != to.path[0] {
				a, b := from.path[len(from.path)-1], to.path[0]
				v.joints = append(v.joints, [2]paper.Point{a, b})
				from.afoot = from.To.At.Spot == lights.AtFoot
				switch {
				case abs(a.Y-b.Y) > aLine || (a.X < v.middle) != (b.X < v.middle):
				case from.afoot:
					v.mates = append(v.mates, feed{name: to.Name, at: a})
				default:
					v.mates = append(v.mates, feed{name: from.Name, at: b})
				}
			}
		}
	}
}

// shortest is how long a string is drawn that covers next to nothing: its two ends have room.
const shortest paper.Length = 10

// onPipe is the way of a string that is wound on pipe or hangs from it: straight.
func (v *unfolding) onPipe(st *strand) {
	n := st.Run.Number
	if st.Run.Kind != lights.Ridge && (n < v.First || n > v.Last) {
		return
	}
	a, b := v.spot(st.From, *st), v.spot(st.To, *st)
	if a == b { // both its ends are said to be at one place: it is drawn from there along its pipe, away from the end of that
		away := paper.Point{Y: -shortest}
		if st.Run.Kind != lights.Ridge {
			away = paper.Point{X: shortest}
			if (a.X < v.middle) != (st.From.At.Spot == lights.AtFoot) {
				away.X = -shortest
			}
		}
		b = a.Add(away)
	}
	toward := b.Sub(a).Unit()
	a, b = a.Add(toward.Times(float64(clearOf(st.From.At, *st, st.into)))), b.Sub(toward.Times(float64(clearOf(st.To.At, *st, st.onward))))
	if st.Run.Kind == lights.Ridge {
		v.keep(st, []paper.Point{a, b}, 0)
		return
	}
	st.path, st.begins, st.ends, st.own = []paper.Point{a, b}, true, true, true
	st.apart(st.From.At.Spot == lights.Along, st.To.At.Spot == lights.Along)
}

// apart draws back the ends of a string that others may touch and none is plugged into.
func (s *strand) apart(from, to bool) {
	const least = 4 * aloneOff // of a string that is drawn shorter
	trim := func(end, next *paper.Point) {
		if way := next.Sub(*end); way.Long() > least {
			*end = end.Add(way.Unit().Times(float64(aloneOff)))
		}
	}
	last := len(s.path) - 1
	if last < 1 {
		return
	}
	if from && s.begins && !s.into {
		trim(&s.path[0], &s.path[1])
	}
	if to && s.ends && !s.onward {
		trim(&s.path[last], &s.path[last-1])
	}
}

// keep keeps what of a string's way lies between the first arch and the one beyond the last; at the tunnel's ends also what lies past them.
func (v *unfolding) keep(st *strand, way []paper.Point, past paper.Length) {
	low, high := v.y(float64(v.First)), v.y(float64(v.shown()))
	if v.First == 1 {
		low += past
	}
	if v.shown() == len(v.Plan.Arches) {
		high -= past
	}
	const hair = 1e-6
	in := func(q paper.Point) bool {
		return q.Y <= low+hair && (q.Y > high+hair || v.shown() == len(v.Plan.Arches) && q.Y >= high-hair)
	}
	if st.path = clipped(way, high, low); len(st.path) > 1 {
		st.begins, st.ends, st.own = in(way[0]), in(way[len(way)-1]), in(halfway(way))
	}
}

// halfway returns the middle of a line.
func halfway(line []paper.Point) paper.Point {
	left := long(line) / 2
	for i := 1; i < len(line); i++ {
		step := line[i].Sub(line[i-1])
		if step.Long() >= left {
			return line[i-1].Add(step.Unit().Times(float64(left)))
		}
		left -= step.Long()
	}
	return line[len(line)-1]
}

// long returns the length of a line.
func long(line []paper.Point) (sum paper.Length) {
	for i := 1; i < len(line); i++ {
		sum += line[i].Sub(line[i-1]).Long()
	}
	return sum
}

// clearOf is how far from a place an end of a string is drawn, for others meet there: farther where none of them is plugged into it.
func clearOf(at lights.Place, st strand, joined bool) paper.Length {
	switch {
	case at.Spot != lights.AtCrown:
		return 0
	case st.Run.Kind == lights.Ridge && !joined:
		return aloneOff
	case st.Run.Kind == lights.Ridge:
		return ridgeOff
	}
	return crownOff
}

// spot is where an end of a string on pipe comes.
func (v *unfolding) spot(e lights.End, st strand) paper.Point {
	at, off := position(v.Plan, e, st.String), besideStep*paper.Length(v.beside[st.Name])
	if st.Run.Kind == lights.Ridge {
		return paper.Point{X: v.middle - off, Y: v.y(at)}
	}
	return paper.Point{X: v.middle + v.half*paper.Length(at), Y: v.y(float64(st.Run.Number)) + off}
}

// along is a place on the rows' way: which of its rows, or the climb before that row, and how far along the tunnel, counted in arches, or up the leg.
type along struct {
	row   int // index in the path's rows
	climb bool
	pos   float64        // on a row
	tape  measure.Length // on a climb
}

// place finds where on a path an end is.
func (p rowWay) place(e lights.End) along {
	k := slices.Index(p.Rows, e.Row.Row)
	if e.Row.Bay == 0 {
		return along{row: k, climb: true, tape: e.Row.Tape}
	}
	return along{row: k, pos: float64(e.Row.Bay) + e.Row.Share}
}

// rowWay is a path of rows on the picture.
type rowWay struct {
	lights.Path
	v    *unfolding
	lane paper.Length // of its climbs, counted from the end arch
}

// x is where a tape comes on this path's wall at an arch.
func (p rowWay) x(number int, tape measure.Length) paper.Length {
	return p.v.across(number, p.Wall, tape)
}

func (p rowWay) row(k int) lights.Row {
	i := slices.IndexFunc(p.v.Plan.Lights.Rows, func(r lights.Row) bool { return r.Wall == p.Wall && r.Number == p.Rows[k] })
	return p.v.Plan.Lights.Rows[i]
}

// end returns the arch at which a row of the path ends, and which way on paper leads beyond it.
func (p rowWay) end(k int) (number int, beyond paper.Length) {
	_, number = p.Ends(k)
	if beyond = p.lane * p.v.lane(number); number != p.First {
		beyond = -beyond
	}
	return number, beyond
}

// point is a place of the path on paper.
func (p rowWay) point(a along) paper.Point {
	if a.climb {
		n, beyond := p.end(a.row - 1)
		return paper.Point{X: p.x(n, a.tape), Y: p.v.y(float64(n)) + beyond}
	}
	return paper.Point{X: p.x(min(p.Last, int(a.pos)), p.row(a.row).Tape), Y: p.v.y(a.pos)}
}

// climbs returns the corners of the way up from the row before k.
func (p rowWay) climbs(k int) []paper.Point {
	n, beyond := p.end(k - 1)
	low, high := p.x(n, p.row(k-1).Tape), p.x(n, p.row(k).Tape)
	y := p.v.y(float64(n)) + beyond
	return []paper.Point{{X: low, Y: y}, {X: high, Y: y}}
}

// inRows is the way of a string in rows: along them, and up the end arch from one to the next. Of what goes beyond the picture the part on it is kept.
func (v *unfolding) inRows(st *strand, path lights.Path) {
	kinds := v.kindsOf(func(lights.Path) bool { return true })
	p := rowWay{path, v, paper.Length(1 + slices.Index(kinds, path.Kind))}
	from, to := p.place(st.From), p.place(st.To)
	if from.row < 0 || to.row < 0 {
		return
	}
	way := []paper.Point{p.point(from)}
	if from.climb {
		way = append(way, p.climbs(from.row)[1])
	}
	for k := from.row + 1; k <= to.row; k++ {
		corners := p.climbs(k)
		if k == to.row && to.climb {
			corners = corners[:1]
		}
		way = append(way, corners...)
	}
	way = append(way, p.point(to))
	v.keep(st, way, v.edges())
	st.apart(true, true)
}

// clipped returns the longest unbroken part of a line that lies between two heights on paper.
func clipped(line []paper.Point, top, bottom paper.Length) (best []paper.Point) {
	const far = 1e6
	for _, piece := range crop(line, paper.Rect{X: -far, Y: top, W: 2 * far, H: bottom - top}) {
		if long(piece) > long(best) {
			best = piece
		}
	}
	return best
}
