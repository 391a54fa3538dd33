package draw

import "hoopwright/draw/paper"

// crop returns the pieces of a line that lie within the room.
func crop(points []paper.Point, room paper.Rect) [][]paper.Point {
	var pieces [][]paper.Point
	for i := 1; i < len(points); i++ {
		p, q, ok := cropSegment(points[i-1], points[i], room)
		if !ok {
			continue
		}
		if n := len(pieces); n > 0 && pieces[n-1][len(pieces[n-1])-1] == p {
			pieces[n-1] = append(pieces[n-1], q)
			continue
		}
		pieces = append(pieces, []paper.Point{p, q})
	}
	return pieces
}

// cropSegment cuts a segment to the room, side by side (the method of Liang and Barsky), and reports whether any is left.
func cropSegment(p, q paper.Point, room paper.Rect) (paper.Point, paper.Point, bool) {
	d := q.Sub(p)
	from, to := 0.0, 1.0
	for _, side := range [4][2]paper.Length{{-d.X, p.X - room.X}, {d.X, room.Right() - p.X}, {-d.Y, p.Y - room.Y}, {d.Y, room.Bottom() - p.Y}} {
		run, free := float64(side[0]), float64(side[1])
		switch {
		case run == 0 && free < 0:
			return p, q, false
		case run < 0:
			from = max(from, free/run)
		case run > 0:
			to = min(to, free/run)
		}
	}
	if from >= to {
		return p, q, false
	}
	start, end := p, q
	if from > 0 {
		start = p.Add(d.Times(from))
	}
	if to < 1 {
		end = p.Add(d.Times(to))
	}
	return start, end, true
}
