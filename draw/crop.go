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

// cropSegment cuts a segment to the room and reports whether any is left.
func cropSegment(p, q paper.Point, room paper.Rect) (paper.Point, paper.Point, bool) {
	from, to, ok := room.Part(p, q)
	start, end, way := p, q, q.Sub(p)
	if from > 0 {
		start = p.Add(way.Times(from))
	}
	if to < 1 {
		end = p.Add(way.Times(to))
	}
	return start, end, ok
}
