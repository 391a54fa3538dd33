package place

import "hoopwright/draw/paper"

// Running is a row of dimensions all measured from one zero, so that no error adds to the next.
type Running struct {
	Origin    paper.Point
	Along     paper.Point  // direction measured in
	Offset    paper.Length // from the origin to the dimension line, to the left of the direction as seen on paper; negative to the right
	Stops     []Stop       // in order along the line
	Lettering paper.Lettering
	OffPage   bool // the zero lies off the page: the line comes in through a break before the first stop
}

// Stop is one running dimension.
type Stop struct {
	At   paper.Point // the thing measured to; its extension line begins clear of it
	Text string
}

// Running draws the zero as a circle, an arrow at each stop and each number at the end of its extension line. Crowded numbers are spread, their extension lines bent to
// reach them; the whole row of numbers moves out until it is free. It reports false, and leaves numbers out, where some found no place.
func (b *Board) Running(r Running) bool {
	u := r.Along.Unit()
	out := u.Left() // from the line towards the numbers
	if r.Offset < 0 {
		out = out.Times(-1)
	}
	if len(r.Stops) == 0 {
		return true
	}
	offset := abs(r.Offset)
	zero := r.Origin.Add(out.Times(float64(offset)))
	on := func(s paper.Length) paper.Point { return zero.Add(u.Times(float64(s))) }

	spots := make([]paper.Length, len(r.Stops)) // along the line
	least := paper.Length(0)                    // between numbers
	for i, s := range r.Stops {
		spots[i] = dot(s.At.Sub(r.Origin), u)
		up, down := r.Lettering.Extent(s.Text)
		least = max(least, up+down+textGap)
	}
	places := Spread(spots, least)

	// A number lies in line with its extension line.
	dir := readable(out)
	angle := angleOf(dir)
	number := func(i int, reach paper.Length) (centre paper.Point, bx box) {
		up, down := r.Lettering.Extent(r.Stops[i].Text)
		half := r.Lettering.Width(r.Stops[i].Text) / 2
		centre = on(places[i]).Add(out.Times(float64(reach + half))).Sub(dir.Left().Times(float64((up - down) / 2)))
		return centre, textBox(centre.Sub(dir.Times(float64(half))), angle, r.Stops[i].Text, r.Lettering)
	}
	bend := paper.Length(0) // room for bent extension lines
	for i := range spots {
		bend = max(bend, min(6, abs(places[i]-spots[i])))
	}
	const first, step, tries = extensionPast + lineGap + 0.4, 3, 12
	reach, most := paper.Length(0), -1
	for k := range tries {
		d := first + bend + paper.Length(k*step)
		fits := 0
		for i := range r.Stops {
			if _, bx := number(i, d); within(bx, b.Area) && b.free(bx) {
				fits++
			}
		}
		if fits > most {
			reach, most = d, fits
		}
		if fits == len(r.Stops) {
			break
		}
	}
	fits := make([]bool, len(r.Stops))
	for i := range r.Stops {
		_, bx := number(i, reach)
		fits[i] = within(bx, b.Area) && b.free(bx)
	}

	lo, hi := min(0, spots[0]), max(0, spots[len(spots)-1])
	if r.OffPage {
		const tail = 9
		lo = spots[0]
		b.BreakLine(on(lo-tail), on(lo))
	}
	b.LineRound(on(lo), on(hi), paper.Thin)
	if !r.OffPage {
		b.zeroCircle(zero)
	}
	for i, s := range r.Stops {
		foot := on(spots[i])
		if start := s.At.Add(foot.Sub(s.At).Unit().Times(float64(extensionGap))); dot(foot.Sub(start), out) > 0 {
			b.LineRound(start, foot, paper.Thin)
		}
		b.stopEnd(foot, u, spots, i)
		if !fits[i] {
			continue
		}
		end := reach - lineGap - 0.4
		if places[i] == spots[i] {
			b.Line(foot, on(places[i]).Add(out.Times(float64(end))), paper.Thin)
		} else {
			elbow := max(0.5, end-bend)
			b.Stroke(paper.Polyline(foot, foot.Add(out.Times(float64(elbow))), on(places[i]).Add(out.Times(float64(end)))), paper.Thin)
		}
	}
	for i, s := range r.Stops {
		if fits[i] {
			centre, _ := number(i, reach)
			b.TurnedText(centre, angle, s.Text, r.Lettering)
		}
	}
	return most == len(r.Stops)
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

// Spread moves places on a line, given in order, the least (in squares) that keeps them a distance apart. Places that would collide are pooled and share
// their shift (pool adjacent violators, Barlow et al., Statistical Inference under Order Restrictions, 1972).
func Spread(spots []paper.Length, least paper.Length) []paper.Length {
	type pool struct {
		sum   paper.Length // of spot − index·least
		count int
	}
	var pools []pool
	for i, s := range spots {
		pools = append(pools, pool{s - paper.Length(i)*least, 1})
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
			v := p.sum/paper.Length(p.count) + paper.Length(i)*least
			if abs(v-spots[i]) < 0.05 { // not worth a bend
				v = spots[i]
			}
			places = append(places, v)
		}
	}
	return places
}
