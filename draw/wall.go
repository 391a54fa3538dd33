package draw

import (
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// WallStrip is a part of one wall of rows, unrolled along its stakes and seen from inside the walk with the face to the wall: the arches of the left wall run from left to
// right, those of the right wall from right to left. Heights and distances are to scale, the sag too.
type WallStrip struct {
	Side        spec.Side
	First, Last int // arches, First < Last
	Scale       paper.Scale

	plan   *layout.Plan
	rows   []lights.Row  // of this wall
	paths  []lights.Path // likewise
	labels paper.Length  // width of the words left of the strip
}

// White space of a strip.
const (
	laneWide   paper.Length = 3.4 // from climb to climb at the end of a wall
	laneOff    paper.Length = 5   // from the end arch to the first climb
	wallAbove  paper.Length = 6.5 // over the highest leg: the words of a match line
	wallBelow  paper.Length = 9   // under the lowest ground: stake names
	wallWay    paper.Length = 6   // and under those: entrance and exit
	legPast    paper.Length = 4   // of a leg above its highest row
	rowGap     paper.Length = 6   // between rows on paper, where that shows some bays
	rowGapLess paper.Length = 2.9 // at least, so that patterns stay apart
)

// RowKinds returns the kinds of string that hang in rows, in the order of the rows. The k-th goes by the k-th letter.
func RowKinds(plan *layout.Plan) []string {
	var kinds []string
	for _, r := range plan.Lights.Rows {
		if !slices.Contains(kinds, r.Kind) {
			kinds = append(kinds, r.Kind)
		}
	}
	return kinds
}

// KindLetter returns the letter that a kind of string in rows goes by.
func KindLetter(kinds []string, kind string) string {
	return string(rune('A' + slices.Index(kinds, kind)%26))
}

// KindPen returns the pen of the k-th kind: told apart by its pattern, its colour a second code.
func KindPen(k int) paper.Pen {
	dashes := [...][]paper.Length{nil, {3.2, 1.6}, {7, 1.6, 1, 1.6}, {1, 1.4}}
	colours := [...]paper.Colour{paper.Black, paper.Blue, paper.Vermillion, paper.Black}
	return paper.Pen{Width: 0.8, Dash: dashes[k%len(dashes)], Colour: colours[k%len(colours)]}
}

// WallStrips cuts one wall into strips that fit the width, each as high as the height allows; none where the wall has no rows.
func WallStrips(plan *layout.Plan, side spec.Side, series []paper.Scale, width, height paper.Length) []WallStrip {
	w := WallStrip{Side: side, First: 1, Last: len(plan.Arches), plan: plan}
	for _, r := range plan.Lights.Rows {
		if r.Wall == side && len(r.Marks) == w.Last {
			w.rows = append(w.rows, r)
		}
	}
	for _, p := range plan.Lights.Paths {
		if p.Wall == side {
			w.paths = append(w.paths, p)
		}
	}
	if len(w.rows) == 0 || w.Last < 2 {
		return nil
	}
	w.labels = w.labelsWide()
	w.Scale = w.scaleFor(series, width, height)
	bays := len(plan.Arches) - 1
	strips := w.cut(bays, width)
	each := (bays + len(strips) - 1) / len(strips) // no strip of a bay or two is left at the end
	return w.cut(each, width)
}

// cut cuts the wall into strips of so many bays, or as many as the width allows.
func (w WallStrip) cut(most int, width paper.Length) (strips []WallStrip) {
	end := len(w.plan.Arches)
	for from := 1; from < end; {
		s := w
		s.First, s.Last = from, from+1
		for s.Last < end && s.Last-from < most && s.wide(from, s.Last+1) <= width {
			s.Last++
		}
		strips = append(strips, s)
		from = s.Last
	}
	return strips
}

// scaleFor returns the largest scale at which the whole wall goes on one strip, else the smallest that keeps rows well apart on paper; where rows are so close that this shows
// few bays, the smallest that keeps them just apart.
func (w WallStrip) scaleFor(series []paper.Scale, width, height paper.Length) paper.Scale {
	apart := w.rows[0].Tape // of a single row, from the ground
	if len(w.rows) > 1 {
		apart = measure.Length(math.Inf(1))
	}
	for i := 1; i < len(w.rows); i++ {
		apart = min(apart, w.rows[i].Tape-w.rows[i-1].Tape)
	}
	whole, well, just := -1, 0, 0
	for i, s := range series {
		gap := s.Length(float64(apart))
		w.Scale = s
		low := w.Height() <= height
		if low && gap >= rowGap && w.wide(1, len(w.plan.Arches)) <= width {
			whole = i
			break
		}
		if gap >= rowGap {
			well = i
		}
		if gap >= rowGapLess {
			just = i
		}
	}
	const bays = 4
	w.Scale = series[well]
	switch {
	case whole >= 0:
		return series[whole]
	case w.Height() <= height && w.wide(1, min(len(w.plan.Arches), 1+bays)) <= width:
		return series[well]
	}
	return series[just]
}

// wide returns the width of a strip from one arch to another.
func (w WallStrip) wide(first, last int) paper.Length {
	return w.labels + w.beside(first) + w.Scale.Length(math.Abs(float64(w.along(last)-w.along(first)))) + w.beside(last)
}

// beside is the room beyond a strip's outermost arch: for the climbs from row to row and the plugs where a wall ends, for half a name elsewhere.
func (w WallStrip) beside(arch int) paper.Length {
	if arch == 1 || arch == len(w.plan.Arches) {
		return laneOff + laneWide*paper.Length(len(RowKinds(w.plan))) + 2
	}
	return 9
}

// along returns how far along its wall an arch's stake is.
func (w WallStrip) along(arch int) measure.Length { return w.stake(arch).Running }

// Height returns the strip's height on paper.
func (w WallStrip) Height() paper.Length {
	low, high := w.levels()
	lines := paper.Length(len(w.rows)) * rowLabelStep
	return wallAbove + max(w.Scale.Length(float64(high-low))+legPast, lines) + w.below()
}

// below is the room under the lowest ground.
func (w WallStrip) below() paper.Length {
	if w.First == 1 || w.Last == len(w.plan.Arches) {
		return wallBelow + wallWay
	}
	return wallBelow
}

// levels returns the lowest ground and the highest mark of the strip, above the datum.
func (w WallStrip) levels() (low, high measure.Length) {
	low, high = measure.Length(math.Inf(1)), measure.Length(math.Inf(-1))
	for n := w.First; n <= w.Last; n++ {
		low = min(low, w.stake(n).Ground)
		for _, r := range w.rows {
			high = max(high, r.Marks[n-1].Z)
		}
	}
	return low, high
}

// KindPattern names the k-th kind's line.
func KindPattern(k int) string {
	return [...]string{"full", "dashed", "chain", "dotted"}[k%4]
}
