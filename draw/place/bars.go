package place

import (
	"math"
	"strconv"

	"hoopwright/draw/paper"
)

// GroundBar draws a bar of round real lengths to a drawing's scale, no longer than the width, and returns the length it takes. unit is what its
// numbers count (304.8 mm for feet, 1000 mm for metres) and word its name. A bar stays true when a copy is made smaller; a ratio does not.
func GroundBar(page *paper.Page, at paper.Point, width paper.Length, s paper.Scale, unit float64, word string) paper.Length {
	l := paper.Floor
	step := groundStep(width, s, unit, word)
	up, _ := l.Extent("0")
	const high = 1.6
	y := at.Y + up + 1.2
	for i := range groundParts + 1 {
		x := at.X + 3 + s.Length(float64(i)*step*unit)
		label := groundNumber(float64(i) * step)
		left := paper.Point{X: x - l.Width(label)/2, Y: at.Y + up} // the figures' middle is on the tick, not the unit's
		if i == groundParts {
			page.Text(left, paper.AtLeft, label+" "+word, l)
			break
		}
		page.Text(left, paper.AtLeft, label, l)
		r := paper.Rect{X: x, Y: y, W: s.Length(step * unit), H: high}
		if i%2 == 0 {
			page.Fill(paper.Box(r), paper.Black)
		}
		page.Stroke(paper.Box(r), paper.Thin)
	}
	return 3 + s.Length(groundParts*step*unit)
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
