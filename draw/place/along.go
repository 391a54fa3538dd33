package place

import "hoopwright/draw/paper"

// Along sets a text parallel to the stretch from one point to another, over it, else under it, at the middle or as near it as is free, reading
// from the bottom or the right. It reports whether it found a place. Use it for the names of lines: a pipe, a cord, an edge.
func (b *Board) Along(from, to paper.Point, s string, l paper.Lettering) bool {
	run := to.Sub(from)
	dir := readable(run.Unit())
	angle := dir.Angle()
	up, down := l.Extent(s)
	slack := run.Long()/2 - l.Width(s)/2
	if slack < 0 {
		return false
	}
	mid := from.Add(to).Times(0.5)
	const gap, step = 1.2, 4
	for shift := paper.Length(0); shift <= slack; shift += step {
		for _, across := range [2]paper.Length{gap + down, -gap - up} {
			for _, sign := range [2]paper.Length{1, -1} {
				centre := mid.Add(dir.Times(float64(sign * shift))).Add(dir.Left().Times(float64(across)))
				if b.SetFree(centre, angle, s, l) {
					return true
				}
			}
		}
	}
	return false
}

// OnLine sets a text on the line from one point to another, at the middle or as near it as is free, reading from the bottom or the right. Draw the line
// afterwards and round its texts. It reports whether it found a place.
func (b *Board) OnLine(from, to paper.Point, s string, l paper.Lettering) bool {
	const end = 1 // of the line, that stays to be seen beyond the text
	run := to.Sub(from)
	u := readable(run.Unit())
	if u.Y > 0.9 { // nearly upright: read from the right, not from the left
		u = u.Times(-1)
	}
	angle := u.Angle()
	up, down := l.Extent(s)
	drop := paper.Polar((down-up)/2, angle).Left()
	for _, share := range []float64{0.5, 0.38, 0.62, 0.3, 0.7, 0.22, 0.78} {
		if l.Width(s)/2+end > run.Long()*paper.Length(min(share, 1-share)) {
			continue
		}
		if b.SetFree(from.Add(run.Times(share)).Add(drop), angle, s, l) {
			return true
		}
	}
	return false
}
