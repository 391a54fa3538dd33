package draw

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// ring goes round every bulb, so that a grey copy still shows it.
var ring = paper.Thin

const (
	bulbRadius = paper.Length(0.85) // at the first arch
	bulbLeast  = paper.Length(0.36) // smaller ones are drawn so large, fewer of them
	bulbFar    = paper.Length(0.15) // still smaller ones are left out: arches lie too close
	ringLeast  = paper.Length(0.5)  // smaller ones are dots: a ring would fill in
	bulbRound  = paper.Length(0.75) // how far bulbs of a wrap stand off the pipe at the first arch
	bulbApart  = 2.9                // radii from bulb to bulb on paper, at least
)

// bulbs draws bulbs along a line in space, count of them if there is room for so many: near ones as rings, which glow on paper, far
// ones as dots. at gives the line by shares from 0 to 1; size is a bulb's radius at the first arch, and round how far they stand off the line to either side in turn.
func (p *perspective) bulbs(at func(share float64) spot, count int, size, round paper.Length, inks []paper.Colour) {
	middle := at(0.5)
	r := size * paper.Length(p.share(middle))
	if r < bulbFar {
		return
	}
	r = max(r, bulbLeast)
	a, okA := p.sight.at(at(0))
	b, okB := p.sight.at(at(1))
	m, okM := p.sight.at(middle)
	if !okA || !okB || !okM {
		return
	}
	long := m.Sub(a).Long() + b.Sub(m).Long()
	n := min(count, int(long/(bulbApart*r)))
	for i := range n {
		share := (float64(i) + 0.5) / float64(n)
		s := at(share)
		q, ok := p.sight.at(s)
		if next, there := p.sight.at(at(share + 0.25/float64(n))); ok && there {
			side := next.Sub(q).Unit().Left().Times(float64(round) * p.share(s))
			if i%2 == 1 {
				side = side.Times(-1)
			}
			q = q.Add(side)
		}
		r := max(bulbLeast, size*paper.Length(p.share(s)))
		if !ok || !p.room.Inset(r).Contains(q) {
			continue
		}
		disc := paper.Bead(q, r)
		if r < ringLeast {
			p.page.Fill(disc, paper.Black)
			continue
		}
		p.page.Fill(disc, inks[i%len(inks)])
		p.page.Stroke(disc, ring)
	}
}

// wraps draws the bulbs of an arch's wraps.
func (p *perspective) wraps(number int) {
	length := p.kind(number).Length
	for _, w := range append(p.wound[lights.Leg(spec.Left, number)], p.wound[lights.Part{Kind: lights.Arch, Number: number}]...) {
		p.winding(w, func(tape measure.Length) spot { return p.onPipe(number, tape) })
	}
	for _, w := range p.wound[lights.Leg(spec.Right, number)] {
		p.winding(w, func(tape measure.Length) spot { return p.onPipe(number, length-tape) })
	}
}

// ridgeWraps draws the bulbs of a bay's ridge piece.
func (p *perspective) ridgeWraps(bay int) {
	a, b := p.crown(bay), p.crown(bay+1)
	centres := p.plan.Ridge[bay-1].Centres
	for _, w := range p.wound[lights.Part{Kind: lights.Ridge, Number: bay}] {
		p.winding(w, func(tape measure.Length) spot { return a.towards(b, float64(tape/centres)) })
	}
}

// winding draws a wrap's bulbs on the pipe that at gives by the wrap's own tape.
func (p *perspective) winding(w lights.Wrap, at func(measure.Length) spot) {
	p.bulbs(func(share float64) spot { return at(w.From + (w.To-w.From)*measure.Length(share)) }, w.Label.Bulbs*len(w.Strings), bulbRadius, bulbRound, glow(w.Label.Colour))
}

// rows draws the rows of both walls from one drawn arch to the next: a line at its sag, with bulbs.
func (p *perspective) rows(from, to int) {
	for _, path := range p.plan.Lights.Paths {
		if path.First > from || path.Last < to {
			continue
		}
		for _, row := range p.plan.Lights.Rows {
			if row.Wall == path.Wall && slices.Contains(path.Rows, row.Number) {
				p.row(row, path, from, to)
			}
		}
	}
}

// row draws one row of a path from one drawn arch to the next: bulbs only in a bay by itself.
func (p *perspective) row(row lights.Row, path lights.Path, from, to int) {
	ends := [2]spot{}
	for i, n := range [2]int{from, to} {
		tape := row.Tape
		if row.Wall == spec.Right {
			tape = p.kind(n).Length - tape
		}
		ends[i] = p.onPipe(n, tape)
	}
	sag := measure.Length(0)
	if to == from+1 {
		sag = p.plan.Spec.Lights.Rows.Sag
	}
	at := func(share float64) spot {
		return ends[0].towards(ends[1], share).below(sag * measure.Length(4*share*(1-share)))
	}
	var wire []spot
	for i := range 9 {
		wire = append(wire, at(float64(i)/8))
	}
	p.stroke(wire, paper.Thin)
	if to == from+1 {
		p.bulbs(at, rowBulbs, bulbRadius*0.8, 0, p.rowGlow(path))
	}
}

// rowGlow is the colour of the strings of a path.
func (p *perspective) rowGlow(path lights.Path) []paper.Colour {
	if len(path.Strings) == 0 {
		return []paper.Colour{paper.White}
	}
	return glow(p.hung[path.Strings[0]].Label.Colour)
}

// rowBulbs is how many bulbs of a row a bay shows at most.
const rowBulbs = 12

// drops draws the drops that begin at a drawn arch or between it and the next: threads of changing length below the pipe.
func (p *perspective) drops(from, to int) {
	for _, d := range p.plan.Lights.Drops {
		string, ok := p.hung[d.String]
		if !ok || d.Hang <= 0 {
			continue
		}
		number := d.On.Number
		var line []spot
		start, end := spot{string.From.X, string.From.Y, string.From.Z}, spot{string.To.X, string.To.Y, string.To.Z}
		if d.On.Kind == lights.Ridge {
			line = append(append([]spot{start}, p.crownsBetween(start, end)...), end)
		} else if number = string.From.Arch; number > 0 {
			line = stretchOf(p.curve(number), start, end)
		}
		if number >= from && number < max(to, from+1) {
			p.threads(line, d.Hang)
		}
	}
}

// threads hangs threads along a line in space, no closer on paper than a copy keeps apart.
func (p *perspective) threads(line []spot, hang measure.Length) {
	last := paper.Point{X: -threadApart}
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		n := max(1, int(distance(a, b)/threadStep))
		for k := range n {
			top := a.towards(b, (float64(k)+0.5)/float64(n))
			at, ok := p.sight.at(top)
			if !ok || at.Sub(last).Long() < threadApart || paper.Length(p.scale(top)*float64(hang)) < threadApart {
				continue
			}
			last = at
			p.stroke([]spot{top, top.below(hang * threadShare[(i+k)%len(threadShare)])}, paper.Thin)
		}
	}
}

const (
	threadStep  = 150 * measure.Millimetre // from thread to thread, as such strings are commonly made
	threadApart = paper.Length(1.1)
)

// threadShare is how long the threads of such a string are in turn.
var threadShare = [...]measure.Length{1, 0.6, 0.85, 0.5}

// crownsBetween returns the drawn tunnel's crowns on the way along the ridge from one spot to another.
func (p *perspective) crownsBetween(a, b spot) []spot {
	var between []spot
	for n := range p.plan.Arches {
		if p.stands(n + 1) {
			if c := p.crown(n + 1); distance(a, c) < distance(a, b) && distance(c, b) < distance(a, b) {
				between = append(between, c)
			}
		}
	}
	return between
}

// stretchOf cuts a finely sampled curve to the part between two spots on it.
func stretchOf(curve []spot, a, b spot) []spot {
	i, k := nearest(curve, a, distance), nearest(curve, b, distance)
	return curve[min(i, k) : max(i, k)+1]
}

// nearest returns the index of the point of a curve that is nearest to another.
func nearest[Point any, Length cmp.Ordered](curve []Point, to Point, distance func(a, b Point) Length) int {
	best := 0
	for i, p := range curve {
		if distance(p, to) < distance(curve[best], to) {
			best = i
		}
	}
	return best
}

func distance(a, b spot) measure.Length {
	x, y, z := float64(b.X-a.X), float64(b.Y-a.Y), float64(b.Z-a.Z)
	return measure.Length(math.Sqrt(x*x + y*y + z*z))
}
