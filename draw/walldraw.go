package draw

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Lettering of the words left of a strip: row, letter, mark.
var rowLettering = paper.DimSmall

const (
	rowLabelStep paper.Length = 5  // between the words of two rows
	rowNumber    paper.Length = 6  // right edge of a row's number
	rowLetter    paper.Length = 11 // middle of its letter
	rowMark      paper.Length = 15 // left edge of its mark
	rowLead      paper.Length = 6  // from its mark to the strip, for a bent line
)

func (w WallStrip) stake(arch int) ground.Stake { return w.plan.Ground.Stakes[2*(arch-1)+int(w.Side)] }

func (w WallStrip) labelsWide() paper.Length {
	widest := paper.Length(0)
	for _, r := range w.rows {
		widest = max(widest, rowLettering.Width(w.plan.Spec.Units.Inches(r.Tape)))
	}
	return rowMark + widest + rowLead
}

// wallView is a strip on its board.
type wallView struct {
	WallStrip
	*place.Board
	foot  paper.Point // of the arch drawn at the left, at the lowest ground
	low   measure.Length
	kinds []string
	taken []paper.Rect // signs, arrows and words on the rows
}

// Draw draws the strip in the room, which is as wide as the page and as high as the strip.
func (w WallStrip) Draw(page *paper.Page, room paper.Rect) {
	v := &wallView{WallStrip: w, Board: place.NewBoard(page, room), kinds: RowKinds(w.plan)}
	v.low, _ = w.levels()
	v.foot = paper.Point{X: room.X + w.labels + w.beside(v.leftmost()), Y: room.Bottom() - w.below()}
	v.legs()
	for _, p := range v.paths {
		v.path(p)
	}
	v.labelsOfRows(room)
	v.waysOut()
	v.plugs()
	v.ways()
}

// x returns the place on paper of a distance along the wall.
func (v *wallView) x(along measure.Length) paper.Length {
	return v.foot.X + v.Scale.Length(math.Abs(float64(along-v.along(v.leftmost()))))
}

// leftmost returns the arch drawn at the left.
func (w WallStrip) leftmost() int {
	if w.Side == spec.Right {
		return w.Last
	}
	return w.First
}

func (v *wallView) y(z measure.Length) paper.Length {
	return v.foot.Y - v.Scale.Length(float64(z-v.low))
}

// onward is the direction on paper from an arch to the next.
func (v *wallView) onward() paper.Point { return paper.Point{X: paper.Length(1 - 2*int(v.Side))} }

// legs draws the ground, the legs and their names.
func (v *wallView) legs() {
	for n := v.First; n <= v.Last; n++ {
		x, ground := v.x(v.along(n)), v.y(v.stake(n).Ground)
		top := v.y(v.rows[len(v.rows)-1].Marks[n-1].Z) - legPast
		v.Line(paper.Point{X: x, Y: ground}, paper.Point{X: x, Y: top}, paper.Emphasis)
		v.Text(paper.Point{X: x, Y: v.foot.Y + 7.5}, paper.AtMiddle, v.stake(n).String(), paper.StakeName)
		if n > v.First {
			a, b := paper.Point{X: v.x(v.along(n - 1)), Y: v.y(v.stake(n - 1).Ground)}, paper.Point{X: x, Y: ground}
			if v.Side == spec.Right {
				a, b = b, a
			}
			v.Ground(a, b)
		}
		word := map[bool]string{n == 1: "entrance", n == len(v.plan.Arches): "exit"}[true]
		if word != "" {
			v.Text(paper.Point{X: x, Y: v.foot.Y + 13}, paper.AtMiddle, word, paper.Floor)
			continue
		}
		if n == v.First || n == v.Last {
			v.Line(paper.Point{X: x, Y: top}, paper.Point{X: x, Y: top - 3}, paper.Thin)
			align, at := paper.AtLeft, paper.Point{X: x - 1, Y: top - 4}
			if n != v.leftmost() {
				align, at.X = paper.AtRight, x+1
			}
			v.Text(at, align, "match line "+v.stake(n).String(), paper.Floor)
		}
	}
}

// path draws a path's rows and the climbs between them, with the way they run.
func (v *wallView) path(p lights.Path) {
	first, last := max(p.First, v.First), min(p.Last, v.Last)
	k := slices.Index(v.kinds, p.Kind)
	pen := KindPen(k)
	for i, number := range p.Rows {
		r := v.rows[number-1]
		if first < last {
			v.row(r, first, last, pen, k)
		}
		if i+1 == len(p.Rows) {
			break
		}
		end := p.Last
		if r.Back {
			end = p.First
		}
		if first < last && end >= v.First && end <= v.Last {
			v.climb(r, v.rows[p.Rows[i+1]-1], end, end == p.Last, pen, k)
		}
	}
}

// row draws a row from arch to arch, a dot at each tie, an arrowhead where it runs.
func (v *wallView) row(r lights.Row, first, last int, pen paper.Pen, k int) {
	var line []paper.Point
	for n := first; n < last; n++ {
		const pieces = 12
		for i := range pieces + 1 {
			if i > 0 || n == first {
				line = append(line, v.inBay(r, n, float64(i)/pieces))
			}
		}
	}
	v.Stroke(paper.Polyline(line...), pen)
	for n := first; n <= last; n++ {
		v.Fill(paper.Circle(v.inBay(r, min(n, last-1), float64(n-min(n, last-1))), 0.9), paper.Black)
	}
}

// ways draws which way each row runs, once on a strip, where nothing else is on it.
func (v *wallView) ways() {
	for _, p := range v.paths {
		first, last := max(p.First, v.First), min(p.Last, v.Last)
		if first >= last {
			continue
		}
		for _, number := range p.Rows {
			r := v.rows[number-1]
			toward := v.onward()
			if r.Back {
				toward = toward.Times(-1)
			}
			v.way(v.free(r, first, last), toward, KindPen(slices.Index(v.kinds, p.Kind)).Colour)
		}
	}
}

// free returns the place on a row nearest to the middle of a strip that neither sign nor words take.
func (v *wallView) free(r lights.Row, first, last int) paper.Point {
	middle := (first + last - 1) / 2
	for away := 0; away <= last-first; away++ {
		for _, bay := range []int{middle - away, middle + away} {
			if bay < first || bay >= last {
				continue
			}
			for _, share := range []float64{0.5, 0.3, 0.7} {
				at := v.inBay(r, bay, share)
				if r := (paper.Rect{X: at.X - 2.4, Y: at.Y - 1.9, W: 4.8, H: 3.8}); v.open(r) && !v.crossesLeg(r) {
					return at
				}
			}
		}
	}
	return v.inBay(r, middle, 0.5)
}

// way draws which way a string runs: a head that stands out from the line it is on.
func (v *wallView) way(at, toward paper.Point, c paper.Colour) {
	const long, half = 3.8, 1.5
	tip, foot := at.Add(toward.Times(long/2)), at.Sub(toward.Times(long/2))
	side := toward.Left().Times(half)
	v.Fill(paper.Polygon(tip, foot.Add(side), foot.Sub(side)), c)
	v.taken = append(v.taken, paper.Rect{X: at.X - long/2 - 0.5, Y: at.Y - long/2, W: long + 1, H: long})
}

// inBay returns the place on paper of a share of the way along a row in a bay, the sag counted.
func (v *wallView) inBay(r lights.Row, bay int, share float64) paper.Point {
	a, b := r.Marks[bay-1], r.Marks[bay]
	t := measure.Length(share)
	sag := v.plan.Spec.Lights.Rows.Sag * 4 * t * (1 - t)
	return paper.Point{X: v.x(v.along(bay) + (v.along(bay+1)-v.along(bay))*t), Y: v.y(a.Z + (b.Z-a.Z)*t - sag)}
}

// lane returns the x of a kind's climbs beside an end arch: beyond it, where the wall or its block ends.
func (v *wallView) lane(arch int, beyond bool, k int) paper.Length {
	out := v.onward().X
	if !beyond {
		out = -out
	}
	return v.x(v.along(arch)) + out*(laneOff+laneWide*paper.Length(k))
}

// climb draws the way up an end leg from one row to the next of its kind, drawn beside the leg.
func (v *wallView) climb(below, above lights.Row, arch int, beyond bool, pen paper.Pen, k int) {
	leg, x := v.x(v.along(arch)), v.lane(arch, beyond, k)
	low, high := v.y(below.Marks[arch-1].Z), v.y(above.Marks[arch-1].Z)
	v.Stroke(paper.Polyline(paper.Point{X: leg, Y: low}, paper.Point{X: x, Y: low}, paper.Point{X: x, Y: high}, paper.Point{X: leg, Y: high}), pen)
	v.way(paper.Point{X: x, Y: (low + high) / 2}, paper.Point{Y: -1}, pen.Colour)
}

// labelsOfRows sets each row's number, letter and mark at the strip's left.
func (v *wallView) labelsOfRows(room paper.Rect) {
	n := v.leftmost()
	spots := make([]paper.Length, len(v.rows))
	for i, r := range v.rows {
		spots[i] = -v.y(r.Marks[n-1].Z)
	}
	places := place.Spread(spots, rowLabelStep)
	for i, top := len(places)-1, -room.Y-rowLabelStep*3/2; i >= 0 && places[i] > top; i, top = i-1, top-rowLabelStep {
		places[i] = top
	}
	edge := room.X + v.labels - rowLead
	head := -places[len(places)-1] - rowLabelStep/2 - 1.5
	v.Text(paper.Point{X: room.X, Y: head}, paper.AtLeft, "row", paper.Floor)
	v.Text(paper.Point{X: edge, Y: head}, paper.AtRight, "mark", paper.Floor)
	for i, r := range v.rows {
		y := -places[i]
		up, down := rowLettering.Extent("1/2")
		base := y + (up-down)/2
		v.Text(paper.Point{X: room.X + rowNumber, Y: base}, paper.AtRight, fmt.Sprint(r.Number), rowLettering)
		v.Text(paper.Point{X: room.X + rowLetter, Y: base}, paper.AtMiddle, KindLetter(v.kinds, r.Kind), paper.Heading)
		v.Text(paper.Point{X: edge, Y: base}, paper.AtRight, v.plan.Spec.Units.Inches(r.Tape), rowLettering)
		if places[i] != spots[i] {
			v.Line(paper.Point{X: edge + 1, Y: y}, paper.Point{X: edge + rowLead - 0.5, Y: -spots[i]}, paper.Thin)
		}
	}
}
