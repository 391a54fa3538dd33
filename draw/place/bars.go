package place

import (
	"fmt"
	"math"
	"strconv"

	"hoopwright/draw/paper"
)

// The room that MeasureBars takes.
const (
	MeasureBarsWidth  paper.Length = 112
	MeasureBarsHeight paper.Length = 15.4
)

// MeasureBars draws two bars on one line to check the printer by, 4 in above and 100 mm below, both from one zero. The top left corner of what is drawn is
// the point. A reader lays a ruler on it: the ruler's numbers must be the bar's.
func MeasureBars(page *paper.Page, at paper.Point) {
	const four, hundred = 4 * 25.4, 100
	l := paper.Floor
	up, down := l.Extent("0")
	zero := paper.Point{X: at.X + 2, Y: at.Y + MeasureBarsHeight/2}
	page.Line(zero, paper.Point{X: zero.X + four, Y: zero.Y}, paper.Thick)
	tick := func(x, long paper.Length, pen paper.Pen) {
		page.Line(paper.Point{X: zero.X + x, Y: zero.Y}, paper.Point{X: zero.X + x, Y: zero.Y + long}, pen)
	}
	for i := range 9 {
		x := paper.Length(i) * 12.7
		if i%2 == 1 {
			tick(x, -1.6, paper.Thin)
			continue
		}
		tick(x, -3, paper.Thin)
		s := fmt.Sprint(i / 2)
		if i == 8 {
			s = "4 in"
		}
		tickLabel(page, zero.X+x, zero.Y-3.2-down, s, l)
	}
	for i := range 11 {
		x := paper.Length(i) * hundred / 10
		if i%2 == 1 {
			tick(x, 1.6, paper.Thin)
			continue
		}
		tick(x, 3, paper.Thin)
		s := fmt.Sprint(i * 10)
		if i == 10 {
			s = "100 mm"
		}
		tickLabel(page, zero.X+x, zero.Y+3.8+up, s, l)
	}
}

// tickLabel sets a number with its figures, not its unit, centred on a tick.
func tickLabel(page *paper.Page, x, y paper.Length, s string, l paper.Lettering) {
	figures := s
	for i, r := range s {
		if r == ' ' {
			figures = s[:i]
			break
		}
	}
	page.Text(paper.Point{X: x - l.Width(figures)/2, Y: y}, paper.AtLeft, s, l)
}

// GroundBar draws a bar of round real lengths to a drawing's scale, no longer than the width, and returns the length it takes. unit is what its
// numbers count (304.8 mm for feet, 1000 mm for metres) and word its name. A bar stays true when a copy is made smaller; a ratio does not.
func GroundBar(page *paper.Page, at paper.Point, width paper.Length, s paper.Scale, unit float64, word string) paper.Length {
	const parts = groundParts
	l := paper.Floor
	step := groundStep(width, s, unit, word)
	up, _ := l.Extent("0")
	const high = 1.6
	y := at.Y + up + 1.2
	for i := range parts + 1 {
		x := at.X + 3 + s.Length(float64(i)*step*unit)
		label := groundNumber(float64(i) * step)
		if i == parts {
			label += " " + word
		}
		tickLabel(page, x, at.Y+up, label, l)
		if i == parts {
			break
		}
		r := paper.Rect{X: x, Y: y, W: s.Length(step * unit), H: high}
		if i%2 == 0 {
			page.Fill(paper.Box(r), paper.Black)
		}
		page.Stroke(paper.Box(r), paper.Thin)
	}
	return 3 + s.Length(parts*step*unit)
}

// groundParts is how many parts a ground bar has.
const groundParts = 4

// groundStep is the real length of one part, in units.
func groundStep(width paper.Length, s paper.Scale, unit float64, word string) float64 {
	room := float64(width-paper.Floor.Width(" "+word)) - 6
	return roundBelow(room * s.Ratio / unit / groundParts)
}

// groundNumber prints a length on the bar: 0.6, not the dust of 3 × 0.2.
func groundNumber(v float64) string { return strconv.FormatFloat(math.Round(v*1e6)/1e6, 'g', -1, 64) }

// GroundBarEnd is what stands at the end of the bar that GroundBar draws: "40 ft".
func GroundBarEnd(width paper.Length, s paper.Scale, unit float64, word string) string {
	return groundNumber(groundParts*groundStep(width, s, unit, word)) + " " + word
}

// roundBelow returns the largest of 1, 2 and 5 times a power of ten that is not above v.
func roundBelow(v float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(v)))
	switch {
	case v >= 5*p:
		return 5 * p
	case v >= 2*p:
		return 2 * p
	}
	return p
}
