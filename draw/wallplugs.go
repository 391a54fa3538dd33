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

// plugs draws where a path's strings begin and end.
func (v *wallView) plugs(p lights.Path) {
	for _, s := range v.signs(p) {
		v.sign(s, p)
	}
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
			next := on[i+1].Name
			end.bar, end.joined, end.words = true, v.joined(s.Name, next), s.Name+" to "+next
			if !end.joined {
				end.words = "end " + s.Name + ", start " + next
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

// sign draws one of them with its words.
func (v *wallView) sign(s sign, p lights.Path) {
	at, toward, ok := v.spot(s.at, slices.Index(v.kinds, p.Kind), p)
	if !ok {
		return
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
	v.Keep(paper.Rect{X: at.X - half, Y: at.Y - 2, W: 2 * half, H: 4})
	v.Label(place.Label{At: at, Text: s.words, Lettering: signLettering, Clear: half, Toward: paper.Point{Y: -1}, Leader: place.Bare})
}

// signLettering is of the words at a plug.
var signLettering = paper.Strong.Sized(11)

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
	}
}

// SeenFrom says how the picture of a wall is to be held against it.
func (w WallStrip) SeenFrom() string {
	hand := map[spec.Side]string{spec.Left: "left", spec.Right: "right"}[w.Side]
	return fmt.Sprintf("seen from inside: face to it, the entrance is at your %s", hand)
}
