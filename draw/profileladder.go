package draw

import (
	"fmt"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// ladder is a column of numbers beside a leg, each joined to its mark on the pipe: how far along the tape, how high above the ground.
type ladder struct {
	title string
	heads []string
	rungs []rung
}

// rung is one mark: its place on the pipe and the cells of its line.
type rung struct {
	at    arch.Point
	cells []string
}

// same reports whether two ladders print the same numbers.
func (l ladder) same(o ladder) bool {
	return slices.EqualFunc(l.rungs, o.rungs, func(a, b rung) bool { return slices.Equal(a.cells, b.cells) })
}

// Lettering and white space of a ladder.
var (
	rungLettering = paper.Dimension
	headLettering = paper.Strong.Sized(11)
)

const (
	cellGap  paper.Length = 2.5 // between columns
	lineRoom paper.Length = 1.2 // from a number to its line
	straight paper.Length = 2   // the straight start of a line to its mark
	elbow    paper.Length = 5   // the slanting part of it
	tickPast paper.Length = 1   // a mark's tick reaches past the pipe by it
)

// columns returns the widths of the ladder's columns.
func (l ladder) columns() []paper.Length {
	w := make([]paper.Length, len(l.heads))
	for i, h := range l.heads {
		w[i] = headLettering.Width(h)
		for _, r := range l.rungs {
			w[i] = max(w[i], rungLettering.Width(r.cells[i]))
		}
	}
	return w
}

// across returns the width of the ladder's numbers.
func (l ladder) across() paper.Length {
	sum := -cellGap
	for _, w := range l.columns() {
		sum += w + cellGap
	}
	return max(sum, headLettering.Width(l.title))
}

// width returns the room the ladder takes with the start of its lines.
func (l ladder) width() paper.Length {
	if l.rungs == nil {
		return 0
	}
	return l.across() + lineRoom + straight
}

// tapeLadder returns the marks every foot or half metre along a leg, as far as its crown fitting.
func (p Profile) tapeLadder(side spec.Side) ladder {
	k := p.Kind
	step, print := measure.Foot, func(l measure.Length) string { return fmt.Sprintf("%.0f′", float64(l/measure.Foot)) }
	if p.Units == measure.Metric {
		step, print = 500*measure.Millimetre, p.tall
	}
	l := ladder{title: side.String() + " leg", heads: []string{"tape", "up," + unit(p.Units)}}
	for step*mostRungs < k.Length/2 {
		step *= 2
	}
	end := k.CrownTape
	if side == spec.Right {
		end = k.Length - k.CrownTape
	}
	for tape := step; tape < end-step/5; tape += step {
		at := tape
		if side == spec.Right {
			at = k.Length - tape
		}
		l.rungs = append(l.rungs, rung{k.PointAt(at), []string{print(tape), p.tall(k.HeightAt(side, tape))}})
	}
	return l
}

// rowLadder returns the marks of the rows of lights on the right leg.
func (p Profile) rowLadder() ladder {
	k := p.Kind
	if len(p.Rows) == 0 {
		return ladder{}
	}
	l := ladder{title: p.RowsWord, heads: []string{"row", "tape", "up," + unit(p.Units)}}
	stride := 1
	for len(p.Rows)/stride > mostRungs {
		stride++
	}
	for i := 0; i < len(p.Rows); i += stride {
		tape := p.Rows[i]
		l.rungs = append(l.rungs, rung{k.PointAt(k.Length - tape),
			[]string{fmt.Sprint(i + 1), p.tall(tape), p.tall(k.HeightAt(spec.Right, tape))}})
	}
	return l
}

// mostRungs is how many lines of numbers a ladder holds at most.
const mostRungs = 14

// ladder draws the numbers beside a leg, spread where they crowd, and a line from each to its tick on the pipe.
func (f *elevation) ladder(l ladder, side spec.Side) {
	if len(l.rungs) == 0 {
		return
	}
	up, down := rungLettering.Extent("1/2")
	least := up + down + 0.6
	lean := f.pipeWide()/2 + tickPast
	room := f.foot(side).Y - f.room.Y
	for n := len(l.rungs); paper.Length(n)*least > room && n > 1; n = len(l.rungs) { // low arch: every second rung, and so on
		var kept []rung
		for i := 1; i < n; i += 2 {
			kept = append(kept, l.rungs[i])
		}
		l.rungs = kept
	}

	ends := make([]paper.Point, len(l.rungs)) // of the ticks, on the outside of the pipe
	spots := make([]paper.Length, len(l.rungs))
	for i, r := range l.rungs {
		out := paper.Polar(1, float64(r.at.Heading)).Left().Times(float64(lean))
		ends[i] = f.on(r.at).Add(out)
		f.Line(ends[i], f.on(r.at).Sub(out), paper.Thick)
		spots[i] = -ends[i].Y
	}
	places := place.Spread(spots, least)
	for i, top := len(places)-1, -f.room.Y-least/2; i >= 0 && places[i] > top; i, top = i-1, top-least {
		places[i] = top
	}

	sign, inner := paper.Length(-1), f.left
	x := inner - straight - lineRoom - l.across()
	if side == spec.Right {
		sign, inner = 1, f.edge
		x = inner + straight + lineRoom
	}
	var column []paper.Length // the right edges
	for _, w := range l.columns() {
		column = append(column, x+w)
		x += w + cellGap
	}
	for i, r := range l.rungs {
		mid := -places[i]
		start := paper.Point{X: inner + sign*straight, Y: mid}
		bend, meet := paper.Point{X: inner, Y: mid}, paper.Point{X: inner - sign*elbow, Y: ends[i].Y}
		if (meet.X-ends[i].X)*sign < 0 { // the mark is at the leg's widest
			meet = ends[i]
		}
		f.Stroke(paper.Polyline(start, bend, meet, ends[i]), paper.Thin)
		for c, s := range r.cells {
			rise, fall := rungLettering.Extent(s)
			f.Text(paper.Point{X: column[c], Y: mid + (rise-fall)/2}, paper.AtRight, s, rungLettering)
		}
	}
	// The heads stand at the ladder's foot, where the tape begins.
	y := f.foot(side).Y - headLettering.Descent()
	if least := -places[0] + least/2 + 0.5 + headLettering.Leading() + headLettering.Ascent(); l.title != "" && y < least {
		y = least
	}
	for c, h := range l.heads {
		f.Text(paper.Point{X: column[c], Y: y}, paper.AtRight, h, headLettering)
	}
	f.Text(paper.Point{X: column[len(column)-1], Y: y - headLettering.Leading()}, paper.AtRight, l.title, headLettering)
}
