package ground

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// drift is how far off a taped mark may stand: it moves by t₁·d₁ + t₂·d₂ + …, each tᵢ from −1 to 1, one for each tape that fixes it. A mark with coordinates
// has none.
//
// Each d is the first-order move of the least-squares place for that tape's error, e·N⁻¹u with N = Σ uuᵀ over the tapes' directions u. The error e is the
// tape's own and that of the mark it starts from; that several tapes may start from one mark is left out of account, which errs on the large side.
type drift []spec.Point

// along returns how far off the mark may be at worst in a direction, a vector of length one.
func (d drift) along(u spec.Point) (sum measure.Length) {
	for _, by := range d {
		sum += measure.Abs(dot(by, u))
	}
	return sum
}

// most returns how far off the mark may be at worst: the longest of the sums with every choice of signs. Of those only the corners of the figure that they
// fill can be it, and at a corner all signs agree with one direction, square to one of the moves.
func (d drift) most() measure.Length {
	worst := measure.Length(0)
	for _, by := range d {
		square := spec.Point{X: -by.Y, Y: by.X}
		var sum spec.Point
		for _, other := range d {
			if dot(other, square) < 0 {
				other = spec.Point{X: -other.X, Y: -other.Y}
			}
			sum = add(sum, other)
		}
		for _, turned := range []spec.Point{sum, sub(sum, along(spec.Point{}, by, 2))} { // by itself lies across: either sign
			worst = max(worst, Distance(spec.Point{}, turned))
		}
	}
	return worst
}

// drifting returns the drift of a mark at p that is fixed by tapes, each with its error.
func drifting(p spec.Point, circles []circle) drift {
	shortest := slices.MinFunc(circles, func(a, b circle) int { return cmp.Compare(a.radius, b.radius) }).radius
	n := normalOf(p, circles)
	det := n.det()
	var d drift
	for _, c := range circles {
		u := unit(sub(p, c.centre))
		e := c.err
		bound := max(shortest, 2*e) // where the tapes run in one line the first order says nothing
		by := spec.Point{X: -u.Y * bound, Y: u.X * bound}
		if move := (spec.Point{X: (n.yy*u.X - n.xy*u.Y) * e, Y: (n.xx*u.Y - n.xy*u.X) * e}); Distance(spec.Point{}, move) < bound*det {
			by = spec.Point{X: move.X / det, Y: move.Y / det}
		}
		d = append(d, by)
	}
	return d
}

// normal is the matrix N = Σ uuᵀ over the directions u of tapes.
type normal struct{ xx, xy, yy measure.Length }

// normalOf returns it for tapes to p.
func normalOf(p spec.Point, circles []circle) (n normal) {
	for _, c := range circles {
		u := unit(sub(p, c.centre))
		n.xx, n.xy, n.yy = n.xx+measure.Length(u.X*u.X), n.xy+measure.Length(u.X*u.Y), n.yy+measure.Length(u.Y*u.Y)
	}
	return n
}

func (n normal) det() measure.Length { return measure.Length(n.xx*n.yy) - measure.Length(n.xy*n.xy) }

// unit returns the vector of length one in v's direction, or none for none.
func unit(v spec.Point) spec.Point {
	l := measure.Length(math.Sqrt(float64(dot(v, v))))
	if l == 0 {
		return v
	}
	return spec.Point{X: v.X / l, Y: v.Y / l}
}
