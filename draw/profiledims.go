package draw

import (
	"math"
	"slices"

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
	f.twoHeaded(foot, top)
	up, _ := paper.Dimension.Extent("1/2")
	words := f.crownWords()
	half := paper.Dimension.Width(words) / 2
	y := min(max((foot.Y+top.Y)/2, f.room.Y+half), f.room.Bottom()-half)
	f.TurnedText(paper.Point{X: x + 1 + up, Y: y}, math.Pi/2, words, paper.Dimension)
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
	if k := f.Kind; k.ShoulderWidth > 0 {
		if a, b, ok := k.Inside(k.ShoulderHeight); ok {
			f.between(f.on(a), f.on(b), WidthWord+" "+f.taped(k.ShoulderWidth), f.Units.Inches(k.ShoulderHeight)+" up")
		}
	}
}

// between draws a width from one place to another with its number and its words along the line. Where the words find no place the table alone says them.
func (f *elevation) between(from, to paper.Point, number, words string) {
	if !f.Along(from, to, number, paper.Dimension) && !f.Label(place.Label{At: from.Add(to).Times(0.5), Text: number, Lettering: paper.DimSmall, Toward: paper.Point{Y: 1}, Leader: place.Arrow}) {
		f.lost = append(f.lost, number)
	}
	if words != "" {
		f.Along(from, to, words, wordLettering)
	}
	f.twoHeaded(from, to)
}

// twoHeaded draws a dimension's line with a head at both ends, round what stands in its way.
func (f *elevation) twoHeaded(from, to paper.Point) {
	f.LineRound(from, to, paper.Thin)
	f.Arrowhead(from, from.Sub(to), paper.Black)
	f.Arrowhead(to, to.Sub(from), paper.Black)
}

// feet names the stakes and draws the distance between them, under the ground.
func (f *elevation) feet() {
	left, right := f.foot(spec.Left), f.foot(spec.Right)
	up, _ := paper.StakeName.Extent("L")
	f.Text(left.Add(paper.Point{X: -5.5, Y: 3.2 + up}), paper.AtMiddle, spec.Left.Letter(), paper.StakeName)
	f.Text(right.Add(paper.Point{X: 5.5, Y: 3.2 + up}), paper.AtMiddle, spec.Right.Letter(), paper.StakeName)
	y := max(left.Y, right.Y) + spanRow
	f.between(paper.Point{X: left.X, Y: y}, paper.Point{X: right.X, Y: y}, FeetWord+" "+f.taped(f.Kind.Span), "")
}

// Under the ground, from the lower foot: the span's dimension line, and the end of all.
const (
	spanRow     paper.Length = 9.5
	underground paper.Length = 12
)

// stands reports whether a box stays clear for people.
func (p Profile) stands() bool { return p.OpeningWidth > 0 && p.OpeningHeight > 0 }

// openingPen is that of the box that stays clear.
var openingPen = paper.Pen{Width: paper.Thin.Width, Dash: []paper.Length{2, 1.2}}

// corner returns a corner of the box that stays clear: side −1 or 1, at a height over the ground there.
func (f *elevation) corner(side, high measure.Length) paper.Point {
	x := side * f.OpeningWidth / 2
	return f.at(x, f.ground(x)+high)
}

// openingTop draws the top of the box that stays clear.
func (f *elevation) openingTop() {
	if f.stands() {
		f.LineRound(f.corner(-1, f.OpeningHeight), f.corner(1, f.OpeningHeight), openingPen)
	}
}

// opening draws the sides of the box that stays clear for people, and says so in it unless another profile has: in two lines, or three where it is narrow on paper.
func (f *elevation) opening() {
	if !f.stands() {
		return
	}
	const words, apart = "stays clear", 6
	wide, high := f.Units.Ground(f.OpeningWidth), "× "+f.Units.Ground(f.OpeningHeight)
	lines := []string{words, wide + " " + high} // from below
	if wordLettering.Width(lines[1])+2 > f.scale.Length(float64(f.OpeningWidth)) {
		lines = []string{words, high, wide}
	}
	over := func(i int) paper.Length { return paper.Length(i) * apart }
	for y := f.origin.Y - 4; !f.Said; y -= 2 {
		if y-over(len(lines)-1) <= f.at(0, f.OpeningHeight).Y {
			f.lost = append(f.lost, words+" "+wide+" "+high)
			break
		}
		free := true
		for i, s := range lines {
			free = free && f.FreeText(paper.Point{X: f.origin.X, Y: y - over(i)}, 0, s, wordLettering)
		}
		if free {
			for i, s := range lines {
				f.TurnedText(paper.Point{X: f.origin.X, Y: y - over(i)}, 0, s, wordLettering)
			}
			break
		}
	}
	for _, side := range [2]measure.Length{-1, 1} {
		f.LineRound(f.corner(side, 0), f.corner(side, f.OpeningHeight), openingPen)
	}
}

// tight returns the places where the pipe bends tighter than a little farther on both ways: at the crown, and in the legs of a tall arch.
func (p Profile) tight() []arch.Point {
	const aside = 50 * measure.Millimetre
	k := p.Kind
	return slices.DeleteFunc(slices.Clone(k.LeastRadii()), func(q arch.Point) bool {
		return k.PointAt(q.Tape-aside).Radius < q.Radius || k.PointAt(q.Tape+aside).Radius < q.Radius
	})
}

// radii names the bend's radius at each tight place, in two short lines where there is height for them, as r where there is hardly room.
func (f *elevation) radii() {
	for _, q := range f.tight() {
		radius := f.taped(q.Radius)
		l := place.Label{At: f.on(q), Align: paper.AtMiddle, Toward: paper.Polar(-1, float64(q.Heading)+math.Pi/2), Clear: f.pipeWide() / 2, Leader: place.Arrow, Pointed: true}
		set := false
		for _, lettering := range []paper.Lettering{wordLettering, paper.DimSmall} {
			for _, word := range []string{"radius\n", "radius ", "r "} {
				l.Text, l.Lettering = word+radius, lettering
				set = set || f.Label(l)
			}
		}
		if !set {
			f.lost = append(f.lost, l.Text)
		}
	}
}
