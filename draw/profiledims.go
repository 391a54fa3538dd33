package draw

import (
	"fmt"
	"math"

	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// wordLettering is for what is written under a number on the picture.
var wordLettering = paper.Body

// heightRoom returns the room for the heights at the crown, right of everything: a gap, the line and two lines of words along it.
func (p Profile) heightRoom() paper.Length { return ladderGap + 1 + 2*heightPitch() }

// heightPitch is the distance between lines of words along an upright line.
func heightPitch() paper.Length {
	up, down := paper.Dimension.Extent("1/2")
	return up + down + 0.3
}

// heights draws the crown's height as an upright line at x, with its number and what is clear under it on its right.
func (f *elevation) heights(x paper.Length) {
	k := f.Kind
	crown := f.on(k.PointAt(k.CrownTape))
	foot, top := paper.Point{X: x, Y: f.origin.Y}, paper.Point{X: x, Y: crown.Y}
	f.LineRound(crown.Add(paper.Point{X: 5}), top.Add(paper.Point{X: 1.5}), paper.Thin)
	if k.LeftGround != k.RightGround { // the ground line itself is not where the height is taken from
		f.LineRound(f.origin, foot.Add(paper.Point{X: 2}), paper.Centre)
	}
	f.upright(foot, top)
	up, _ := paper.Dimension.Extent("1/2")
	mid := (foot.Y + top.Y) / 2
	crownWords := f.crownWords()
	for i, tries := range [2][]string{{crownWords + ", " + f.plusMinus(), crownWords}, {fmt.Sprintf("clear under the crown %s", f.Units.Inches(k.Clear)), fmt.Sprintf("clear %s", f.Units.Inches(k.Clear))}} {
		for _, s := range tries {
			half := paper.Dimension.Width(s) / 2
			if y := min(max(mid, f.room.Y+half), f.room.Bottom()-half); 2*half <= f.room.H {
				f.TurnedText(paper.Point{X: x + 1 + up + paper.Length(i)*heightPitch(), Y: y}, math.Pi/2, s, paper.Dimension)
				break
			}
		}
	}
}

// crownWords says how high the crown is. The picture is at least as tall as they are long.
func (p Profile) crownWords() string { return fmt.Sprintf("crown %s up", p.Units.Inches(p.Kind.Crown)) }

// upright draws an upright dimension line with a head at both ends.
func (f *elevation) upright(foot, top paper.Point) {
	f.LineRound(foot, top, paper.Thin)
	f.Arrowhead(foot, foot.Sub(top), paper.Black)
	f.Arrowhead(top, top.Sub(foot), paper.Black)
}

// widths draws the clear widths at shoulder and head height and the widest place, as far as they do not crowd one another.
func (f *elevation) widths() {
	k := f.Kind
	const apart = 14 // mm, for a number over and words under each line
	var drawn []paper.Length
	width := func(at measure.Length, a, b arch.Point, number, name string) {
		y := f.at(0, at).Y
		for _, o := range drawn {
			if y-o < apart && o-y < apart {
				return
			}
		}
		drawn = append(drawn, y)
		f.between(f.on(a), f.on(b), number, name, fmt.Sprintf(", %s up", f.Units.Inches(f.roughly(at))))
	}
	if a, b, ok := k.Inside(k.ShoulderHeight); ok {
		width(k.ShoulderHeight, a, b, f.Units.Inches(k.ShoulderWidth)+" clear", "shoulder height")
	}
	if a, b, ok := k.Inside(k.HeadHeight); ok {
		width(k.HeadHeight, a, b, f.Units.Inches(k.HeadWidth)+" clear", "head height")
	}
	if a, b, ok := k.Across(k.WidestAt); ok && k.Widest > k.Span+measure.Millimetre {
		width(k.WidestAt, a, b, f.Units.Inches(k.Widest), "widest, pipe middles")
	}
}

// between draws a width from one place to another with its number over the line and its words under it, both under it where there is
// no room above.
func (f *elevation) between(from, to paper.Point, number, name, at string) {
	rise, fall := paper.Dimension.Extent(number)
	up, _ := wordLettering.Extent(name)
	const gap = 1.3
	switch {
	case f.centred(from, to, -gap-fall, number, paper.Dimension):
		_ = f.centred(from, to, gap+up, name+at, wordLettering) || f.centred(from, to, gap+up, name, wordLettering)
	case at != "" && f.centred(from, to, gap+rise, number+at, paper.Dimension):
	default:
		f.centred(from, to, gap+rise, number, paper.Dimension)
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

// roughly rounds a height that nobody measures to the inch or 10 mm.
func (p Profile) roughly(l measure.Length) measure.Length {
	step := measure.By(p.Units, measure.Inch, 10*measure.Millimetre)
	return measure.Length(math.Round(float64(l/step))) * step
}

// opening draws the box that stays clear for people, and says so in it.
func (f *elevation) opening() {
	w, h := f.OpeningWidth, f.OpeningHeight
	if w <= 0 || h <= 0 {
		return
	}
	lines := [2]string{"opening kept clear:", fmt.Sprintf("%s wide, %s high", f.Units.Inches(w), f.Units.Inches(h))}
	for y := f.origin.Y - 3; y > f.at(0, h).Y; y -= 2 {
		upper, lower := paper.Point{X: f.origin.X, Y: y - wordLettering.Leading()}, paper.Point{X: f.origin.X, Y: y}
		if f.FreeText(upper, 0, lines[0], wordLettering) && f.FreeText(lower, 0, lines[1], wordLettering) {
			f.TurnedText(upper, 0, lines[0], wordLettering)
			f.TurnedText(lower, 0, lines[1], wordLettering)
			break
		}
	}
	pen := paper.Pen{Width: paper.Thin.Width, Dash: []paper.Length{2, 1.2}}
	a, b := f.at(-w/2, f.ground(-w/2)), f.at(w/2, f.ground(w/2))
	c, d := f.at(w/2, f.ground(w/2)+h), f.at(-w/2, f.ground(-w/2)+h)
	for _, e := range [3][2]paper.Point{{a, d}, {d, c}, {c, b}} {
		f.LineRound(e[0], e[1], pen)
	}
}
