package draw

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Unfolded is a part of the tunnel laid open and seen from above, the way in at the foot: the ridge up the middle, each arch's legs laid flat to either side, the
// rows of the walls between. Across, everything is where the tape along the pipe says; along, arches stand evenly. Every string is an arrow from its prongs to its
// socket with its number and a box to tick.
type Unfolded struct {
	Plan        *layout.Plan
	First, Last int // arches whose strings it has, with the ridge pieces and bays beyond each; arch Last+1 is shown where there is one

	beside map[string]int // how many strings lie between a string and its pipe
}

// White space of the picture.
const (
	unfoldEdge  paper.Length = 10  // beyond the first and the last arch: a word
	laneLeast   paper.Length = 2.4 // from climb to climb, at least
	unfoldLane  paper.Length = 4.2 // from an end arch to the first way up from row to row, and on to the next
	unfoldPitch paper.Length = 13  // from arch to arch, at least
	unfoldRows  paper.Length = 1.5 // more where rows cross the legs' strings and leave less room beside these
	unfoldWay   paper.Length = 9   // of a way out between the climbs from row to row at both its sides
	besideStep  paper.Length = 6.8 // from a string to the next on the same pipe
	unfoldBest  paper.Length = 30  // from arch to arch, at most
	crownOff    paper.Length = 5   // of a leg's string from the crown
	ridgeOff    paper.Length = 1.8 // of a ridge's string from the crown
	aloneOff    paper.Length = 2.8 // the same where none of its neighbours is plugged into it
	unfoldUnit  paper.Length = 4   // of the rows' unit outside the feet
	rowLine     paper.Length = 5   // of the rows' figures under the first arch
	rowApart    paper.Length = 2.6 // between two rows' figures: a figure's own blank is less
	legLeast    paper.Length = 68  // from foot to crown, at least
	hopRadius   paper.Length = 1.4 // of a line over the ridge's
)

// Unfold returns the whole tunnel unfolded.
func Unfold(plan *layout.Plan) Unfolded {
	return Unfolded{Plan: plan, First: 1, Last: len(plan.Arches), beside: sideBySide(plan)}
}

// mostRowLines is in how many lines rows' figures stand at most.
const mostRowLines = 4

// unfoldFewest is how many arches a part of a tunnel shows at least.
const unfoldFewest = 4

// Cut parts the picture in two, as many arches in the first part as the height allows; false where that are hardly any.
func (u Unfolded) Cut(height paper.Length) (first, rest Unfolded, ok bool) {
	fits := int((height - u.edges()) / u.least()) // the arch beyond is shown too
	last := min(u.First+fits-1, u.Last-unfoldFewest)
	if last-u.First+1 < unfoldFewest {
		return u, u, false
	}
	first, rest = u, u
	first.Last, rest.First = last, last+1
	return first, rest, true
}

// least is the least distance from arch to arch on paper.
func (u Unfolded) least() paper.Length {
	least := unfoldPitch + besideStep*paper.Length(u.deepest())
	if slices.ContainsFunc(u.Plan.Wraps, func(w lights.Wrap) bool { return w.On.Kind != lights.Ridge && len(w.Strings) > 1 }) {
		least += besideStep // numbers that find no room in their lines
	}
	if rows := u.Plan.Spec.Lights.Rows; rows != nil {
		least += unfoldRows
		if len(rows.Gaps) > 0 {
			climbs := laneLeast * paper.Length(u.lanes())
			least = max(least, unfoldWay+climbs+max(climbs, besideStep*paper.Length(u.deepest())))
		}
	}
	return least
}

// lane is the step from climb to climb at a way out or at the tunnel's end.
func (v *unfolding) lane(arch int) paper.Length {
	if arch == 1 || arch == len(v.Plan.Arches) {
		return unfoldLane
	}
	return max(laneLeast, min(unfoldLane, (v.pitch-unfoldWay)/2/paper.Length(max(1, v.lanes()))))
}

// deepest is how many strings lie beside another on one arch, at most.
func (u Unfolded) deepest() (most int) {
	for _, s := range u.Plan.Strings {
		if s.Run.Kind != lights.Ridge {
			most = max(most, u.beside[s.Name])
		}
	}
	return most
}

// sideBySide tells the strings that share a pipe apart: which lies on it, and which beside, one further out each, so that no two lie in one line.
func sideBySide(plan *layout.Plan) map[string]int {
	type line struct {
		ridge  bool
		number int
	}
	type span struct{ from, to float64 }
	taken := map[line][][]span{}
	out := map[string]int{}
	for _, s := range plan.Strings {
		if s.Run.IsRow() {
			continue
		}
		k := line{s.Run.Kind == lights.Ridge, s.Run.Number}
		if k.ridge {
			k.number = 0
		}
		a, b := position(plan, s.From, s), position(plan, s.To, s)
		here := span{min(a, b), max(a, b)}
		lane := slices.IndexFunc(taken[k], func(on []span) bool {
			return !slices.ContainsFunc(on, func(o span) bool { return o.from < here.to-1e-3 && here.from < o.to-1e-3 })
		})
		if lane < 0 {
			lane = len(taken[k])
			taken[k] = append(taken[k], nil)
		}
		taken[k][lane] = append(taken[k][lane], here)
		out[s.Name] = lane
	}
	return out
}

// position is where an end of a string on pipe is: on the ridge counted in arches along the tunnel, else across, from -1 at the left foot over the crown to 1 at the right.
func position(plan *layout.Plan, e lights.End, s lights.String) float64 {
	at, run := e.At, s.Run.Part
	if at.Part != (lights.Part{}) {
		run = at.Part
	}
	n := run.Number
	switch {
	case at.Spot == lights.AtCrown && s.Run.Kind == lights.Ridge:
		return float64(at.Arch)
	case at.Spot == lights.AtCrown:
		return 0
	case run.Kind == lights.Ridge:
		piece, off := plan.Ridge[n-1].Cut, plan.Spec.Ridge.Pipe.TakeOff
		return float64(n) + float64((at.Tape+off)/(piece+2*off))
	}
	tape := at.Tape
	if at.Spot == lights.AtFoot {
		tape = 0
	}
	k := plan.Arches[n-1]
	crown, right := k.CrownTape, k.Length-k.CrownTape
	switch {
	case run.Kind == lights.LegRight:
		return 1 - float64(tape/right)
	case run.Kind == lights.Arch && tape > crown:
		return float64((tape - crown) / right)
	}
	return float64(tape/crown) - 1
}

// edges is the room beyond the first and the last arch.
func (u Unfolded) edges() paper.Length {
	return 2*(unfoldEdge+unfoldLane*paper.Length(u.lanes())) + u.under()
}

// under is the room under an arch that strings beside its pipe take, and the rows' figures that do not stand in one line.
func (u Unfolded) under() paper.Length {
	const spare = 3.4 // over one line of figures
	return besideStep*paper.Length(u.deepest()) + max(0, rowLine*paper.Length(u.rowLines()-1)-spare)
}

// rowLines is in how many lines the rows' figures stand under the first arch, so that none lies on the next row's.
func (u Unfolded) rowLines() int {
	rows, lines := u.Plan.Lights.Rows, 1
	for i := 1; i < len(rows) && u.First == 1; i++ {
		if rows[i].Wall == rows[i-1].Wall {
			apart := legLeast * paper.Length((rows[i].Tape-rows[i-1].Tape)/u.Plan.Arches[0].CrownTape)
			wide := paper.CellSmall.Width(u.Plan.Spec.Units.BareInches(rows[i].Tape)) + rowApart
			lines = max(lines, int(math.Ceil(float64(wide/apart))))
		}
	}
	return min(lines, mostRowLines)
}

// lanes is how many kinds of string climb from row to row side by side.
func (u Unfolded) lanes() int {
	return len(u.kindsOf(func(p lights.Path) bool { return len(p.Rows) > 1 }))
}

// kindsOf are the kinds of string that hang on some paths of rows.
func (u Unfolded) kindsOf(some func(lights.Path) bool) (kinds []string) {
	for _, p := range u.Plan.Lights.Paths {
		if some(p) && !slices.Contains(kinds, p.Kind) {
			kinds = append(kinds, p.Kind)
		}
	}
	return kinds
}

// shown is the last arch on the picture.
func (u Unfolded) shown() int { return min(u.Last+1, len(u.Plan.Arches)) }

// Least is the height that the picture needs, and Best what it can use.
func (u Unfolded) Least() paper.Length {
	return u.edges() + u.least()*paper.Length(u.shown()-u.First)
}

// Best is the height that the picture can use.
func (u Unfolded) Best() paper.Length {
	return u.edges() + max(u.least(), unfoldBest)*paper.Length(u.shown()-u.First)
}

// unfolding is the picture being drawn.
type unfolding struct {
	Unfolded
	*place.Board
	room    paper.Rect
	half    paper.Length // from foot to crown
	middle  paper.Length // x of the ridge
	foot    paper.Length // y of the first arch
	pitch   paper.Length
	kinds   []string
	strands []strand
	joints  [][2]paper.Point // from a socket to the prongs in it, where those are drawn elsewhere
	mates   []feed           // strings that are plugged into another elsewhere along a leg, whose line hides the way there
	feeds   []feed
	taken   []paper.Rect // labels, signs and words
	said    []paper.Rect // words alone
	missing []string
}

// Draw draws the picture and returns the strings whose number found no place.
func (u Unfolded) Draw(page *paper.Page, room paper.Rect) (missing []string) {
	v := &unfolding{Unfolded: u, Board: place.NewBoard(page, room), room: room, kinds: stringKinds(u.Plan)}
	names := paper.Length(0)
	for n := u.First; n <= u.shown(); n++ {
		names = max(names, paper.StakeName.Width(spec.Right.Letter()+fmt.Sprint(n)))
	}
	v.half = room.W/2 - names - 3
	v.middle = room.X + room.W/2
	edge := (u.edges() - u.under()) / 2
	if gaps := u.shown() - u.First; gaps > 0 {
		v.pitch = min(max(u.least(), unfoldBest), (room.H-u.edges())/paper.Length(gaps))
	}
	tall := v.pitch*paper.Length(u.shown()-u.First) + u.edges()
	v.foot = room.Y + min(room.H, tall) - edge - u.under()
	v.gather()
	v.signs()
	v.waysOut()
	v.words()
	v.rowNames()
	v.legNames()
	v.cords()
	v.labels()
	v.mateNames()
	v.frame()
	for _, j := range v.joints {
		v.joint(j[0], j[1])
	}
	for _, s := range v.strands {
		v.strand(s)
	}
	for _, f := range v.feeds {
		v.feed(f)
	}
	return v.missing
}

// y is where a place along the tunnel comes, counted in arches.
func (v *unfolding) y(pos float64) paper.Length {
	return v.foot - v.pitch*paper.Length(pos-float64(v.First))
}

// across returns where a tape up a leg comes.
func (v *unfolding) across(number int, side spec.Side, tape measure.Length) paper.Length {
	k := v.Plan.Arches[number-1]
	off := func(crown measure.Length) paper.Length { return v.half * paper.Length(1-min(1, tape/crown)) }
	if side == spec.Right {
		return v.middle + off(k.Length-k.CrownTape)
	}
	return v.middle - off(k.CrownTape)
}

// legNames writes each leg's name beside its foot.
func (v *unfolding) legNames() {
	up, _ := paper.StakeName.Extent("L")
	for n := v.First; n <= v.shown(); n++ {
		for _, side := range []spec.Side{spec.Left, spec.Right} {
			name := side.Letter() + fmt.Sprint(n)
			wide := paper.StakeName.Width(name)
			at := paper.Point{X: v.middle - v.half - 2.5 - wide, Y: v.y(float64(n)) + up/2}
			if side == spec.Right {
				at.X = v.middle + v.half + 2.5
			}
			v.Text(at, paper.AtLeft, name, paper.StakeName)
			box := paper.Rect{X: at.X, Y: at.Y - up, W: wide, H: up}
			v.taken, v.said = append(v.taken, box), append(v.said, box)
		}
	}
}

// frame draws the pipes as thin lines that stop at labels and signs.
func (v *unfolding) frame() {
	for n := v.First; n <= v.shown(); n++ {
		y := v.y(float64(n))
		v.pieces(paper.Point{X: v.middle - v.half, Y: y}, paper.Point{X: v.middle + v.half, Y: y}, func(a, b paper.Point) { v.Line(a, b, paper.Thin) })
		if n < v.shown() && len(v.Plan.Ridge) > 0 {
			v.pieces(paper.Point{X: v.middle, Y: y}, paper.Point{X: v.middle, Y: v.y(float64(n + 1))}, func(a, b paper.Point) { v.Line(a, b, paper.Thin) })
		}
	}
}

// words says which end is which.
func (v *unfolding) words() {
	edge := (v.edges()-v.under())/2 - unfoldEdge
	low, high := "entrance", "exit"
	if v.First > 1 {
		low = "arch " + fmt.Sprint(v.First-1) + " and those before it: the side before"
	}
	if v.shown() > v.Last {
		high = "arch " + fmt.Sprint(v.shown()) + " and on: the next side"
	}
	for _, w := range []struct {
		text string
		y    paper.Length
	}{{low, v.foot + v.under() + edge + 8.8}, {high, v.y(float64(v.shown())) - edge - 5.2}} {
		wide := paper.Strong.Width(w.text)
		v.Text(paper.Point{X: v.middle, Y: w.y}, paper.AtMiddle, w.text, paper.Strong)
		box := paper.Rect{X: v.middle - wide/2, Y: w.y - 4, W: wide, H: 5}
		v.taken, v.said = append(v.taken, box), append(v.said, box)
	}
}

// rowNames writes under arch 1 the tape at which each row is tied, the unit at the feet.
func (v *unfolding) rowNames() {
	if v.First > 1 {
		return
	}
	y := v.foot + v.under() + (v.edges()-v.under())/2 - unfoldEdge + 8.8
	write := func(x paper.Length, text string) {
		wide := paper.CellSmall.Width(text)
		at := paper.Point{X: x, Y: y}
		box := paper.Rect{X: at.X - (wide+rowApart)/2, Y: at.Y - 4, W: wide + rowApart, H: rowLine}
		on := func(o paper.Rect) bool { return boxesMeet(o, box) }
		for n := 1; slices.ContainsFunc(v.said, on); n++ {
			if n == v.rowLines() {
				v.missing = append(v.missing, "row at "+text)
				return
			}
			box.Y, at.Y = box.Y-rowLine, at.Y-rowLine
		}
		v.Text(at, paper.AtMiddle, text, paper.CellSmall)
		v.taken, v.said = append(v.taken, box), append(v.said, box)
	}
	for i, r := range v.Plan.Lights.Rows {
		if i == 0 || v.Plan.Lights.Rows[i-1].Wall != r.Wall {
			out := v.across(1, r.Wall, 0)
			write(out+(out-v.middle)*unfoldUnit/v.half, measure.By(v.Plan.Spec.Units, "in", "mm"))
		}
		write(v.across(1, r.Wall, r.Tape), v.Plan.Spec.Units.BareInches(r.Tape))
	}
}

// waysOut hatches each bay that the rows leave open.
func (v *unfolding) waysOut() {
	rows := v.Plan.Spec.Lights.Rows
	if rows == nil || len(v.Plan.Lights.Rows) == 0 {
		return
	}
	top := slices.MaxFunc(v.Plan.Lights.Rows, func(a, b lights.Row) int { return cmp.Compare(a.Tape, b.Tape) }).Tape
	for _, side := range rows.Walls {
		for n := v.First; n < v.shown(); n++ {
			if !slices.ContainsFunc(v.Plan.Lights.Paths, func(p lights.Path) bool { return p.Wall == side && p.First <= n && n < p.Last }) {
				v.wayOut(side, n, top)
			}
		}
	}
}

// between is what of a bay is free from one place across to another: under the strings beside the pipe of the arch beyond, and between the climbs from row to row.
func (v *unfolding) between(bay int, left, right paper.Length) (from, high paper.Length) {
	const socket, beside, climb = 3, cupRadius + 0.2, 1.2 // what they take
	beyond, here := v.y(float64(bay+1)), v.y(float64(bay))
	from, to := beyond+socket, here-socket
	for _, s := range v.strands {
		for i := 1; i < len(s.path); i++ {
			a, b := s.path[i-1], s.path[i]
			switch {
			case a.Y != b.Y || a.Y <= beyond || a.Y >= here || max(a.X, b.X) < left || min(a.X, b.X) > right:
			case !s.Run.IsRow():
				from = max(from, a.Y+beside)
			case a.Y < (beyond+here)/2:
				from = max(from, a.Y+climb)
			default:
				to = min(to, a.Y-climb)
			}
		}
	}
	return from, to - from
}

// wayOut hatches what the strings leave of one bay of a wall from the feet to the topmost row, round its words.
func (v *unfolding) wayOut(side spec.Side, bay int, top measure.Length) {
	const words = "leave open"
	low, high := v.across(bay, side, 0), v.across(bay, side, top)
	wide := paper.Strong.Width(words) + 3
	area := paper.Rect{X: min(low, high), W: max(high-low, low-high, wide)}
	if side == spec.Right {
		area.X = low - area.W
	}
	if area.Y, area.H = v.between(bay, area.X, area.Right()); area.H < paper.Strong.Ascent() {
		v.missing = append(v.missing, fmt.Sprintf("%s from arch %d to %d", words, bay, bay+1))
		return
	}
	c := area.Centre()
	half := min(3, area.H/2)
	text := paper.Rect{X: c.X - wide/2, Y: c.Y - half, W: wide, H: 2 * half}
	v.Text(paper.Point{X: c.X, Y: c.Y + 1.2}, paper.AtMiddle, words, paper.Strong)
	v.Stroke(paper.Box(area), paper.Thin)
	for _, part := range []paper.Rect{
		{X: area.X, Y: area.Y, W: area.W, H: text.Y - area.Y}, {X: area.X, Y: text.Bottom(), W: area.W, H: area.Bottom() - text.Bottom()},
		{X: area.X, Y: text.Y, W: text.X - area.X, H: text.H}, {X: text.Right(), Y: text.Y, W: area.Right() - text.Right(), H: text.H},
	} {
		if part.W > 0.5 && part.H > 0.5 {
			v.Hatch(paper.Box(part), 0.8, 2.2)
		}
	}
	v.taken, v.said = append(v.taken, area), append(v.said, text)
}
