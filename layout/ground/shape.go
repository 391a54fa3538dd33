package ground

import (
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Shape is what an arch fills of the air: its solved curve, and its whole pipe, which is joined on the ground and springs upright over its first stake where the other foot is let go.
type Shape struct {
	Curve []spec.Point // left foot to right: X to the right from the middle of the ground line, Y up from it; shared by arches that are alike
	Stick measure.Length
}

// reach is a stretch of an arch's plane across the walk, counted from the centreline, right positive.
type reach struct{ left, right measure.Length }

// low is what an arch fills, on the plan, up to a height above its ground line: a stretch for each leg, or the whole of it in one where the crown is no higher.
type low []reach

func (t tunnel) low(arch int, height measure.Length) low {
	half := t.spans[arch] / 2
	if arch >= len(t.shapes) || len(t.shapes[arch].Curve) < 2 {
		if height >= t.crowns[arch] {
			return low{{-half, half}}
		}
		return low{{-half, -half}, {half, half}}
	}
	curve := t.shapes[arch].Curve
	key := lowKey{&curve[0], height}
	if found, ok := t.lows[key]; ok {
		return found
	}
	left, end := climb(curve, height, 0, 1)
	found := low{left}
	if end < len(curve) {
		right, _ := climb(curve, height, len(curve)-1, -1)
		found = append(found, right)
	}
	t.lows[key] = found
	return found
}

// lowKey names what low has worked out before.
type lowKey struct {
	curve  *spec.Point
	height measure.Length
}

// climb follows a curve from an end up to a height above the line between its ends and returns the stretch it passes over, and the index it stopped at.
func climb(curve []spec.Point, height measure.Length, from, step int) (r reach, end int) {
	first, last := curve[0], curve[len(curve)-1]
	above := func(p spec.Point) measure.Length {
		if last.X == first.X {
			return p.Y - first.Y
		}
		return p.Y - first.Y - (last.Y-first.Y)*((p.X-first.X)/(last.X-first.X))
	}
	r = reach{curve[from].X, curve[from].X}
	for end = from; end >= 0 && end < len(curve); end += step {
		p := curve[end]
		if up := above(p); up > height && end != from {
			before := curve[end-step]
			if rise := up - above(before); rise > 0 {
				p = along(before, sub(p, before), max(height-above(before), 0)/rise)
			}
			r.take(p.X)
			return r, end
		}
		r.take(p.X)
	}
	return r, end
}

func (r *reach) take(x measure.Length) { r.left, r.right = min(r.left, x), max(r.right, x) }

// outer returns the outermost points that an arch reaches up to a height, on the plan.
func (t tunnel) outer(arch int, height measure.Length) (left, right spec.Point) {
	stretches := t.low(arch, height)
	whole := reach{stretches[0].left, stretches[len(stretches)-1].right}
	for _, r := range stretches {
		whole.take(r.left)
		whole.take(r.right)
	}
	return t.across(arch, whole.left), t.across(arch, whole.right)
}

// across returns a point of an arch's plane on the plan.
func (t tunnel) across(arch int, x measure.Length) spec.Point {
	s := t.stations[arch]
	return along(s.At, rightOf(s.Heading), x)
}

// overAll is a height over every crown.
var overAll = measure.Length(math.Inf(1))
