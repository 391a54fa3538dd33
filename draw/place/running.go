package place

import (
	"slices"

	"hoopwright/draw/paper"
)

// Running is a row of dimensions all measured from one zero, so that no error adds to the next.
type Running struct {
	Origin    paper.Point
	Along     paper.Point  // direction measured in
	Offset    paper.Length // from the origin to the dimension line, to the left of the direction as seen on paper; negative to the right
	Stops     []Stop       // in order along the line
	Lettering paper.Lettering
}

// Stop is one running dimension.
type Stop struct {
	At   paper.Point // the thing measured to; its extension line begins clear of it
	Text string
}

// Running draws the zero as a circle, an arrow at each stop and each number at the end of its extension line. Crowded numbers are spread, their extension lines bent to
// reach them; the whole row of numbers moves out until it is free. It reports false, and leaves numbers out, where some found no place.
func (b *Board) Running(r Running) bool {
	if len(r.Stops) == 0 {
		return true
	}
	row := rowOf(r)
	fits := b.reachFree(&row)
	lo, hi := min(0, row.spots[0]), max(0, row.spots[len(row.spots)-1])
	b.LineRound(row.on(lo), row.on(hi), paper.Thin)
	b.zeroCircle(row.zero)
	for i, s := range r.Stops {
		foot := row.on(row.spots[i])
		if start := s.At.Add(foot.Sub(s.At).Unit().Times(float64(extensionGap))); dot(foot.Sub(start), row.out) > 0 {
			b.LineRound(start, foot, paper.Thin)
		}
		b.stopEnd(foot, row.along, row.spots, i)
		if fits[i] {
			b.extend(row, i)
		}
	}
	all := true
	for i, s := range r.Stops {
		if !fits[i] {
			all = false
			continue
		}
		centre, _ := row.number(i, row.reach)
		b.TurnedText(centre, angleOf(readable(row.out)), s.Text, r.Lettering)
	}
	return all
}

// runningRow is where the parts of a running dimension go.
type runningRow struct {
	Running
	along, out paper.Point    // unit vectors: along the line, and from it towards the numbers
	zero       paper.Point    // on the line
	spots      []paper.Length // of the stops, along the line
	places     []paper.Length // of their numbers, spread
	bend       paper.Length   // room for bent extension lines
	reach      paper.Length   // from the line to the numbers
}

// rowOf spreads the numbers of a running dimension along its line.
func rowOf(r Running) runningRow {
	row := runningRow{Running: r, along: r.Along.Unit()}
	row.out = row.along.Left()
	if r.Offset < 0 {
		row.out = row.out.Times(-1)
	}
	row.zero = r.Origin.Add(row.out.Times(float64(abs(r.Offset))))
	least := paper.Length(0) // between numbers
	for _, s := range r.Stops {
		row.spots = append(row.spots, dot(s.At.Sub(r.Origin), row.along))
		up, down := r.Lettering.Extent(s.Text)
		least = max(least, up+down+textGap)
	}
	row.places = Spread(row.spots, slices.Repeat([]paper.Length{least}, len(row.spots)))
	for i := range row.spots {
		row.bend = max(row.bend, min(6, abs(row.places[i]-row.spots[i])))
	}
	return row
}

// on returns the point of the line a distance from its zero.
func (r runningRow) on(s paper.Length) paper.Point { return r.zero.Add(r.along.Times(float64(s))) }

// number returns where a number goes at a reach from the line: in line with its extension line.
func (r runningRow) number(i int, reach paper.Length) (centre paper.Point, bx box) {
	dir, text := readable(r.out), r.Stops[i].Text
	up, down := r.Lettering.Extent(text)
	half := r.Lettering.Width(text) / 2
	centre = r.on(r.places[i]).Add(r.out.Times(float64(reach + half))).Sub(dir.Left().Times(float64((up - down) / 2)))
	return centre, textBox(centre.Sub(dir.Times(float64(half))), angleOf(dir), text, r.Lettering)
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
	foot := r.on(r.spots[i])
	end := r.reach - lineGap - 0.4
	tip := r.on(r.places[i]).Add(r.out.Times(float64(end)))
	if r.places[i] == r.spots[i] {
		b.Line(foot, tip, paper.Thin)
		return
	}
	elbow := max(0.5, end-r.bend)
	b.Stroke(paper.Polyline(foot, foot.Add(r.out.Times(float64(elbow))), tip), paper.Thin)
}

// stopEnd draws the end of the line at a stop: an arrowhead pointing away from zero, or where the zero or the stop before is too near for one, a slanting tick.
func (b *Board) stopEnd(foot, u paper.Point, spots []paper.Length, i int) {
	near := abs(spots[i]) - zeroRadius
	for k, s := range spots {
		if between := s * spots[i]; k != i && between > 0 && abs(s) < abs(spots[i]) {
			near = min(near, abs(spots[i])-abs(s))
		}
	}
	switch {
	case abs(spots[i]) <= zeroRadius: // the zero itself
	case near > headLong+0.5:
		if spots[i] < 0 {
			u = u.Times(-1)
		}
		b.Arrowhead(foot, u, paper.Black)
	default:
		b.Line(foot.Sub(slanting(u)), foot.Add(slanting(u)), paper.Thick)
	}
}

const zeroRadius paper.Length = 1.5

// zeroCircle draws the circle that running dimensions begin from.
func (b *Board) zeroCircle(at paper.Point) {
	b.Fill(paper.Circle(at, zeroRadius), paper.White)
	b.Stroke(paper.Circle(at, zeroRadius), paper.Thin)
}

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
