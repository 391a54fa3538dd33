package place

import "hoopwright/draw/paper"

// box is an oriented rectangle: a text as it is turned, or an area kept free.
type box struct {
	centre paper.Point
	dir    paper.Point  // unit vector along the width
	w, h   paper.Length // half the width, half the height
}

func upright(r paper.Rect) box { return box{r.Centre(), paper.Point{X: 1}, r.W / 2, r.H / 2} }

// grown returns the box with d added on each side.
func (b box) grown(d paper.Length) box { b.w += d; b.h += d; return b }

// local returns p in the box's own frame: along the width, and across it to the left.
func (b box) local(p paper.Point) paper.Point {
	d := p.Sub(b.centre)
	return paper.Point{X: dot(d, b.dir), Y: dot(d, b.dir.Left())}
}

// bounds returns the upright rectangle about the box.
func (b box) bounds() paper.Rect {
	hx := abs(b.dir.X)*b.w + abs(b.dir.Y)*b.h
	hy := abs(b.dir.Y)*b.w + abs(b.dir.X)*b.h
	return paper.Rect{X: b.centre.X - hx, Y: b.centre.Y - hy, W: 2 * hx, H: 2 * hy}
}

// meets reports whether two boxes share any area: no axis of either parts them.
func (b box) meets(o box) bool {
	d := o.centre.Sub(b.centre)
	for _, axis := range [4]paper.Point{b.dir, b.dir.Left(), o.dir, o.dir.Left()} {
		if abs(dot(d, axis)) >= b.along(axis)+o.along(axis) {
			return false
		}
	}
	return true
}

// along returns half the box's shadow on an axis.
func (b box) along(axis paper.Point) paper.Length {
	return abs(dot(b.dir, axis))*b.w + abs(dot(b.dir.Left(), axis))*b.h
}

// cut returns the stretch of the segment p–q inside the box as shares of its length, and whether there is any.
func (b box) cut(p, q paper.Point) (from, to float64, ok bool) {
	return paper.Rect{X: -b.w, Y: -b.h, W: 2 * b.w, H: 2 * b.h}.Part(b.local(p), b.local(q))
}

// struck reports whether the segment p–q comes nearer to the box than a gap.
func (b box) struck(p, q paper.Point, gap paper.Length) bool {
	_, _, hit := b.grown(gap).cut(p, q)
	return hit
}

// distance returns how far p lies outside the box, 0 within.
func (b box) distance(p paper.Point) paper.Length {
	l := b.local(p)
	return paper.Point{X: max(0, abs(l.X)-b.w), Y: max(0, abs(l.Y)-b.h)}.Long()
}

func dot(p, q paper.Point) paper.Length { return p.X*q.X + p.Y*q.Y }

func abs(l paper.Length) paper.Length { return max(l, -l) }
