package draw

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
)

// sign is what lies at one place of a path: the end of a string, the start of the next, or both, plugged together or not.
type sign struct {
	at          lights.End
	socket, bar bool
	joined      bool
	words       string
}

// plugs draws where the strings begin and end, and then the words beside them, so that no word lies where another's sign comes.
func (v *wallView) plugs() {
	var labels []place.Label
	for _, p := range v.paths {
		for _, s := range v.signs(p) {
			if l, here := v.sign(s, p); here {
				labels = append(labels, l)
			}
		}
	}
	var later []place.Label
	for _, l := range labels {
		if !v.inLine(l, false) && !v.inLine(l, true) {
			later = append(later, l)
		}
	}
	for _, l := range later { // what finds no room here either is in the list under the wall
		v.Label(l)
	}
}

// inLine sets a sign's words on its row, beside it, the row's line cleared for them, where rows are far enough apart: between legs, or over one of them.
func (v *wallView) inLine(l place.Label, over bool) bool {
	const gap, high paper.Length = 0.8, 4.2
	if v.rowGap() < high+0.6 {
		return false
	}
	w := l.Lettering.Width(l.Text) + 2*gap
	for _, side := range []paper.Length{1, -1} {
		r := paper.Rect{X: l.At.X + side*l.Clear, Y: l.At.Y - high/2, W: w, H: high}
		if !over {
			r.X = v.pastLeg(r.X, side)
		}
		if side < 0 {
			r.X -= w
		}
		if v.crossesLeg(r) != over || !v.open(r) {
			continue
		}
		v.Page.Fill(paper.Box(r), paper.White)
		v.taken = append(v.taken, r)
		v.Text(paper.Point{X: r.X + gap, Y: l.At.Y + l.Lettering.Ascent()*0.37}, paper.AtLeft, l.Text, l.Lettering)
		return true
	}
	return false
}

// pastLeg returns where words beside a sign begin: at x, or beyond a leg that stands just there.
func (v *wallView) pastLeg(x, side paper.Length) paper.Length {
	const near, off = 6, 1.5
	for n := v.First; n <= v.Last; n++ {
		if leg := v.x(v.along(n)); (leg-x)*side > -off && (leg-x)*side < near {
			return leg + side*off
		}
	}
	return x
}

// crossesLeg reports whether a leg stands in a box.
func (v *wallView) crossesLeg(r paper.Rect) bool {
	for n := v.First; n <= v.Last; n++ {
		if x := v.x(v.along(n)); x > r.X-1 && x < r.Right()+1 {
			return true
		}
	}
	return false
}

// open reports whether a box lies between the outermost legs and clear of signs and words.
func (v *wallView) open(r paper.Rect) bool {
	left, right := v.x(v.along(v.leftmost())), v.x(v.along(v.First+v.Last-v.leftmost()))
	return r.X > left && r.Right() < right && !slices.ContainsFunc(v.taken, func(o paper.Rect) bool {
		return o.X < r.Right() && r.X < o.Right() && o.Y < r.Bottom() && r.Y < o.Bottom()
	})
}

// rowGap is how near two rows come to each other on paper.
func (v *wallView) rowGap() paper.Length {
	least := paper.Length(math.Inf(1))
	for i := 1; i < len(v.rows); i++ {
		for n := v.First; n <= v.Last; n++ {
			least = min(least, v.Scale.Length(float64(v.rows[i].Marks[n-1].Z-v.rows[i-1].Marks[n-1].Z)))
		}
	}
	return least
}

// signs lists a path's ends and splices in its order.
func (v *wallView) signs(p lights.Path) []sign {
	var on []lights.String
	for _, s := range v.plan.Strings {
		if slices.Contains(p.Strings, s.Name) {
			on = append(on, s)
		}
	}
	var list []sign
	for i, s := range on {
		if i == 0 {
			list = append(list, sign{at: s.From, bar: true, words: "start " + s.Name})
		}
		end := sign{at: s.To, socket: true, words: "end " + s.Name}
		if i+1 < len(on) {
			next := on[i+1]
			end.bar, end.joined, end.words = true, v.joined(s.Name, next.Name), fmt.Sprintf("%s–%d", s.Name, next.Number)
			if !end.joined {
				end.words = "end " + s.Name + ", start " + next.Name
			}
		}
		list = append(list, end)
	}
	return list
}

// joined reports whether one string's prongs go into the other's socket.
func (v *wallView) joined(socket, prongs string) bool {
	return slices.ContainsFunc(v.plan.Chains, func(c power.Chain) bool {
		k := slices.Index(c.Strings, prongs)
		return k > 0 && c.Strings[k-1] == socket
	})
}

// sign draws one of them and returns the words for it; none where that is on another strip.
func (v *wallView) sign(s sign, p lights.Path) (place.Label, bool) {
	at, toward, here := v.spot(s.at, slices.Index(v.kinds, p.Kind), p)
	if !here {
		return place.Label{}, false
	}
	const half paper.Length = 2.6
	if s.socket != s.bar && s.at.Row.Bay > 0 { // an end of the path is at a leg: it stands out from it
		if s.bar {
			at = at.Sub(toward.Times(float64(half)))
		} else {
			at = at.Add(toward.Times(float64(half)))
		}
	} else {
		v.Page.Fill(paper.Box(paper.Rect{X: at.X - half, Y: at.Y - 1, W: 2 * half, H: 2}), paper.White)
	}
	switch {
	case s.joined:
		Mated(v.Board, at.Sub(toward.Times(float64(matedLong/2))), toward)
	case s.socket && s.bar:
		Socket(v.Board, at.Sub(toward.Times(float64(half))), toward)
		Prongs(v.Board, at.Add(toward.Times(float64(half+1))), toward.Times(-1))
	case s.socket:
		v.Line(at.Sub(toward.Times(float64(half))), at, paper.Thick)
		Socket(v.Board, at, toward)
	default:
		v.Line(at, at.Add(toward.Times(float64(half))), paper.Thick)
		Prongs(v.Board, at, toward.Times(-1))
	}
	v.keep(paper.Rect{X: at.X - half, Y: at.Y - 2, W: 2 * half, H: 4})
	return place.Label{At: at, Text: s.words, Lettering: signLettering, Clear: half, Toward: paper.Point{Y: -1}, Leader: place.Bare}, true
}

// signLettering is of the words at a plug.
var signLettering = paper.Strong.Sized(11)

// keep notes what no words may lie on.
func (v *wallView) keep(r paper.Rect) {
	v.Keep(r)
	v.taken = append(v.taken, r)
}

// spot returns where on paper a place on the rows is and which way the string runs there; not ok where that is on another strip.
func (v *wallView) spot(e lights.End, k int, p lights.Path) (at, toward paper.Point, ok bool) {
	r := v.rows[e.Row.Row-1]
	if e.Row.Bay == 0 { // climbing
		if e.Arch < v.First || e.Arch > v.Last {
			return at, toward, false
		}
		x := v.lane(e.Arch, e.Arch == p.Last, k)
		return paper.Point{X: x, Y: v.y(e.Z)}, paper.Point{Y: -1}, true
	}
	pos := float64(e.Row.Bay) + e.Row.Share
	if pos < float64(v.First)-1e-9 || pos > float64(v.Last)+1e-9 || v.First > 1 && pos < float64(v.First)+1e-9 {
		return at, toward, false
	}
	toward = v.onward()
	if r.Back {
		toward = toward.Times(-1)
	}
	return v.inBay(r, e.Row.Bay, e.Row.Share), toward, true
}

// waysOut writes into each bay that the rows leave open what it is.
func (v *wallView) waysOut() {
	for n := v.First; n < v.Last; n++ {
		if slices.ContainsFunc(v.paths, func(p lights.Path) bool { return p.First <= n && n < p.Last }) {
			continue
		}
		mid := paper.Point{X: (v.x(v.along(n)) + v.x(v.along(n+1))) / 2, Y: v.y(v.low + 36*measure.Inch)}
		v.TurnedText(mid, math.Pi/2, "way out", paper.Strong)
		v.taken = append(v.taken, paper.Rect{X: mid.X - 4, Y: mid.Y - 9, W: 5, H: 18})
	}
}

// SeenFrom says how the picture of a wall is to be held against it.
func (w WallStrip) SeenFrom() string {
	hand := map[spec.Side]string{spec.Left: "left", spec.Right: "right"}[w.Side]
	return fmt.Sprintf("seen from inside: face to it, the entrance is at your %s", hand)
}
