package place

import (
	"math"
	"slices"

	"hoopwright/draw/paper"
)

// Running is a row of dimensions to the right of one zero, all measured from it, so that no error adds to the next. Their numbers stand over it and read upward.
type Running struct {
	Origin    paper.Point
	Offset    paper.Length // from the origin up to the dimension line
	Stops     []Stop       // from left to right
	Lettering paper.Lettering
}

// Stop is one running dimension.
type Stop struct {
	Along paper.Length // from the zero
	Text  string
}

// Running draws the zero as a circle, an arrow at each stop and each number at the end of its extension line. Crowded numbers are spread, their extension lines bent to
// reach them; the whole row of numbers moves out until it is free. It reports false, and leaves numbers out, where some found no place.
func (b *Board) Running(r Running) bool {
	if len(r.Stops) == 0 {
		return true
	}
	row := rowOf(r)
	fits := b.reachFree(&row)
	b.LineRound(row.over(0, 0), row.over(r.Stops[len(r.Stops)-1].Along, 0), paper.Thin)
	b.Fill(paper.Circle(row.over(0, 0), zeroRadius), paper.White)
	b.Stroke(paper.Circle(row.over(0, 0), zeroRadius), paper.Thin)
	for i := range r.Stops {
		b.stopEnd(row, i)
		if fits[i] {
			b.extend(row, i)
		}
	}
	for i, s := range r.Stops {
		if fits[i] {
			centre, _ := row.number(i, row.reach)
			b.TurnedText(centre, math.Pi/2, s.Text, r.Lettering)
		}
	}
	return !slices.Contains(fits, false)
}

// runningRow is where the parts of a running dimension go.
type runningRow struct {
	Running
	places []paper.Length // of the numbers along the line, spread
	bend   paper.Length   // room for bent extension lines
	reach  paper.Length   // from the line to the numbers
}

// rowOf spreads the numbers of a running dimension along its line.
func rowOf(r Running) runningRow {
	row := runningRow{Running: r}
	var spots []paper.Length
	least := paper.Length(0) // between numbers
	for _, s := range r.Stops {
		spots = append(spots, s.Along)
		up, down := r.Lettering.Extent(s.Text)
		least = max(least, up+down+textGap)
	}
	row.places = Spread(spots, slices.Repeat([]paper.Length{least}, len(spots)))
	for i, spot := range spots {
		row.bend = max(row.bend, min(6, abs(row.places[i]-spot)))
	}
	return row
}

// over returns the point so far over the line, a distance from its zero.
func (r runningRow) over(s, up paper.Length) paper.Point {
	return paper.Point{X: r.Origin.X + s, Y: r.Origin.Y - r.Offset - up}
}

// number returns where a number goes at a reach from the line: in line with its extension line.
func (r runningRow) number(i int, reach paper.Length) (centre paper.Point, bx box) {
	text := r.Stops[i].Text
	up, down := r.Lettering.Extent(text)
	half := r.Lettering.Width(text) / 2
	centre = r.over(r.places[i], reach+half).Add(paper.Point{X: (up - down) / 2})
	return centre, textBox(centre.Add(paper.Point{Y: half}), math.Pi/2, text, r.Lettering)
}

// reachFree moves the row of numbers out to the first reach at which all are free, else to the one at which most are, and says which are.
func (b *Board) reachFree(r *runningRow) []bool {
	const first, step, tries = extensionPast + lineGap + 0.4, 3, 12
	most, best := -1, []bool(nil)
	for k := range tries {
		reach := first + r.bend + paper.Length(k*step)
		free, count := make([]bool, len(r.Stops)), 0
		for i := range r.Stops {
			if _, bx := r.number(i, reach); within(bx, b.Area) && b.free(bx) {
				free[i] = true
				count++
			}
		}
		if count > most {
			r.reach, most, best = reach, count, free
		}
		if count == len(r.Stops) {
			break
		}
	}
	return best
}

// extend draws a stop's extension line to its number, bent where the number was moved aside.
func (b *Board) extend(r runningRow, i int) {
	spot, end := r.Stops[i].Along, r.reach-lineGap-0.4
	if r.places[i] == spot {
		b.Line(r.over(spot, 0), r.over(spot, end), paper.Thin)
		return
	}
	b.Stroke(paper.Polyline(r.over(spot, 0), r.over(spot, max(0.5, end-r.bend)), r.over(r.places[i], end)), paper.Thin)
}

// stopEnd draws the end of the line at a stop: an arrowhead pointing away from zero, or where the zero or the stop before is too near for one, a slanting tick.
func (b *Board) stopEnd(r runningRow, i int) {
	at, along := r.Stops[i].Along, paper.Point{X: 1}
	near := at - zeroRadius
	for _, s := range r.Stops[:i] {
		if s.Along < at {
			near = min(near, at-s.Along)
		}
	}
	foot := r.over(at, 0)
	switch {
	case at <= zeroRadius: // the zero itself
	case near > headLong+0.5:
		b.Arrowhead(foot, along, paper.Black)
	default:
		b.Line(foot.Sub(slanting(along)), foot.Add(slanting(along)), paper.Thick)
	}
}

const zeroRadius paper.Length = 1.5

// Spread moves places on a line, given in order, the least (in squares) that keeps each its distance from the one before. Places that would collide are pooled and share
// their shift (pool adjacent violators, Barlow et al., Statistical Inference under Order Restrictions, 1972).
func Spread(spots, least []paper.Length) []paper.Length {
	type pool struct {
		sum   paper.Length // of spot − sum of the distances to it
		count int
	}
	var pools []pool
	far := make([]paper.Length, len(spots)) // from the first, where all are as close as may be
	for i, s := range spots {
		if i > 0 {
			far[i] = far[i-1] + least[i]
		}
		pools = append(pools, pool{s - far[i], 1})
		for n := len(pools); n > 1; n = len(pools) {
			a, c := pools[n-2], pools[n-1]
			if a.sum/paper.Length(a.count) < c.sum/paper.Length(c.count) {
				break
			}
			pools = append(pools[:n-2], pool{a.sum + c.sum, a.count + c.count})
		}
	}
	places := make([]paper.Length, 0, len(spots))
	for _, p := range pools {
		for range p.count {
			i := len(places)
			v := p.sum/paper.Length(p.count) + far[i]
			if abs(v-spots[i]) < 0.05 { // not worth a bend
				v = spots[i]
			}
			places = append(places, v)
		}
	}
	return places
}
