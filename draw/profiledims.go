package draw

import (
	"fmt"
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// wordLettering is for what is written under a number on the picture.
var wordLettering = paper.Body

// What is measured has the same name on the picture and in the table of what is held.
const (
	FeetWord   = "Feet"
	HeightWord = "Height"
	WidthWord  = "Width"
)

// taped prints a length of the standing arch as a tape over grass reads it.
func (p Profile) taped(l measure.Length) string { return p.Units.Inches(p.Units.Taped(l)) }

// heightRoom returns the room for the crown's height, right of everything: the line and its words along it.
func (p Profile) heightRoom() paper.Length {
	up, down := paper.Dimension.Extent("1/2")
	return 2*aside + 1.5 + up + down
}

// crownWords says how high the crown is. The picture is at least as tall as they are long.
func (p Profile) crownWords() string { return HeightWord + " " + p.taped(p.Kind.Crown) }

// crownHeight draws the crown's height as an upright line at x.
func (f *elevation) crownHeight(x paper.Length) {
	k := f.Kind
	crown := f.on(k.PointAt(k.CrownTape))
	foot, top := paper.Point{X: x, Y: f.origin.Y}, paper.Point{X: x, Y: crown.Y}
	f.LineRound(crown.Add(paper.Point{X: 5}), top.Add(paper.Point{X: 1.5}), paper.Thin)
	if k.LeftGround != k.RightGround { // the ground line itself is not where the height is taken from
		f.LineRound(f.origin, foot.Add(paper.Point{X: 2}), paper.Centre)
	}
	f.upright(foot, top)
	up, _ := paper.Dimension.Extent("1/2")
	words := f.crownWords()
	half := paper.Dimension.Width(words) / 2
	y := min(max((foot.Y+top.Y)/2, f.room.Y+half), f.room.Bottom()-half)
	f.TurnedText(paper.Point{X: x + 1 + up, Y: y}, math.Pi/2, words, paper.Dimension)
}

// upright draws an upright dimension line with a head at both ends.
func (f *elevation) upright(foot, top paper.Point) {
	f.LineRound(foot, top, paper.Thin)
	f.Arrowhead(foot, foot.Sub(top), paper.Black)
	f.Arrowhead(top, top.Sub(foot), paper.Black)
}

// keepWidth keeps the line of the clear width free of what is named before it.
func (f *elevation) keepWidth() {
	if a, b, ok := f.Kind.Inside(f.Kind.ShoulderHeight); ok && f.Kind.ShoulderWidth > 0 {
		from, to := f.on(a), f.on(b)
		f.Keep(paper.Rect{X: from.X, Y: min(from.Y, to.Y) - 0.1, W: to.X - from.X, H: max(from.Y-to.Y, to.Y-from.Y) + 0.2})
	}
}

// width draws the clear width at shoulder height.
func (f *elevation) width() {
	k := f.Kind
	a, b, ok := k.Inside(k.ShoulderHeight)
	if !ok || k.ShoulderWidth <= 0 {
		return
	}
	f.between(f.on(a), f.on(b), WidthWord+" "+f.taped(k.ShoulderWidth), fmt.Sprintf("%s up", f.Units.Inches(k.ShoulderHeight)))
}

// between draws a width from one place to another with its number over the line and its words under it, both under it where there is
// no room above.
func (f *elevation) between(from, to paper.Point, number, words string) {
	rise, fall := paper.Dimension.Extent(number)
	up, _ := wordLettering.Extent(words)
	const gap = 1.3
	switch {
	case f.centred(from, to, -gap-fall, number, paper.Dimension):
		if words != "" && !f.centred(from, to, gap+up, words, wordLettering) {
			f.lost = append(f.lost, words)
		}
	case f.centred(from, to, gap+rise, number, paper.Dimension):
		if words != "" {
			f.centred(from, to, 2*gap+rise+fall+up, words, wordLettering) // else the table alone says it
		}
	default:
		if !f.Label(place.Label{At: from.Add(to).Times(0.5), Text: number, Lettering: paper.DimSmall, Toward: paper.Point{Y: 1}, Leader: place.Arrow}) {
			f.lost = append(f.lost, number)
		}
	}
	f.LineRound(from, to, paper.Thin)
	way := to.Sub(from)
	f.Arrowhead(from, way.Times(-1), paper.Black)
	f.Arrowhead(to, way, paper.Black)
}

// centred sets a line of lettering along the way from one place to another, its baseline so far under it, at the middle or as near to it as
// is free. It reports whether it found a place.
func (f *elevation) centred(from, to paper.Point, under paper.Length, s string, l paper.Lettering) bool {
	const step = 2
	run := to.Sub(from)
	u := run.Unit()
	angle := math.Atan2(float64(-u.Y), float64(u.X))
	mid := from.Add(to).Times(0.5).Sub(u.Left().Times(float64(under)))
	slack := (run.Long() - l.Width(s)) / 2
	for shift := paper.Length(0); shift <= slack; shift += step {
		for _, x := range [2]paper.Length{shift, -shift} {
			if p := mid.Add(u.Times(float64(x))); f.FreeText(p, angle, s, l) {
				f.TurnedText(p, angle, s, l)
				return true
			}
		}
	}
	return false
}

// feet names the stakes and draws the distance between them, under the ground.
func (f *elevation) feet() {
	left, right := f.foot(spec.Left), f.foot(spec.Right)
	for _, side := range [2]spec.Side{spec.Left, spec.Right} {
		foot, sign := f.foot(side), paper.Length(-1)
		if side == spec.Right {
			sign = 1
		}
		up, _ := paper.StakeName.Extent("L")
		f.Text(paper.Point{X: foot.X + sign*5.5, Y: foot.Y + 3.2 + up}, paper.AtMiddle, side.Letter(), paper.StakeName)
	}
	y := max(left.Y, right.Y) + spanRow
	f.between(paper.Point{X: left.X, Y: y}, paper.Point{X: right.X, Y: y}, FeetWord+" "+f.taped(f.Kind.Span), "")
}

// Under the ground, from the lower foot: the span's dimension line, and the end of all.
const (
	spanRow     paper.Length = 9.5
	underground paper.Length = 12
)

// opening draws the box that stays clear for people, and says so in it.
func (f *elevation) opening() {
	w, h := f.OpeningWidth, f.OpeningHeight
	if w <= 0 || h <= 0 {
		return
	}
	size := f.Units.Ground(w) + " × " + f.Units.Ground(h)
	const words, apart = "stays clear", 6
	placed := false
	for y := f.origin.Y - 4; y-apart > f.at(0, h).Y && !placed; y -= 2 {
		low, high := paper.Point{X: f.origin.X, Y: y}, paper.Point{X: f.origin.X, Y: y - apart}
		if f.FreeText(low, 0, words, wordLettering) && f.FreeText(high, 0, size, wordLettering) {
			f.TurnedText(low, 0, words, wordLettering)
			f.TurnedText(high, 0, size, wordLettering)
			placed = true
		}
	}
	if !placed {
		f.lost = append(f.lost, words+" "+size)
	}
	pen := paper.Pen{Width: paper.Thin.Width, Dash: []paper.Length{2, 1.2}}
	a, b := f.at(-w/2, f.ground(-w/2)), f.at(w/2, f.ground(w/2))
	c, d := f.at(w/2, f.ground(w/2)+h), f.at(-w/2, f.ground(-w/2)+h)
	for _, e := range [3][2]paper.Point{{a, d}, {d, c}, {c, b}} {
		f.LineRound(e[0], e[1], pen)
	}
}

// tight returns the places where the pipe bends tighter than a little farther on both ways: at the crown, and in the legs of a tall arch.
func (p Profile) tight() []arch.Point {
	const aside = 50 * measure.Millimetre
	k := p.Kind
	var list []arch.Point
	for _, q := range k.LeastRadii() {
		before, after := k.PointAt(q.Tape-aside), k.PointAt(q.Tape+aside)
		if before.Radius >= q.Radius && after.Radius >= q.Radius {
			list = append(list, q)
		}
	}
	return list
}
