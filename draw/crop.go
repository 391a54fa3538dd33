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

// cropOutline returns the part of a closed outline inside the box: cut by one side after the other (Sutherland and Hodgman, 1974).
// Nothing is left of one that lies outside.
func cropOutline(outline []paper.Point, box paper.Rect) []paper.Point {
	inside := []func(p paper.Point) paper.Length{
		func(p paper.Point) paper.Length { return p.X - box.X },
		func(p paper.Point) paper.Length { return box.Right() - p.X },
		func(p paper.Point) paper.Length { return p.Y - box.Y },
		func(p paper.Point) paper.Length { return box.Bottom() - p.Y },
	}
	for _, depth := range inside {
		var kept []paper.Point
		for i, p := range outline {
			before := outline[(i+len(outline)-1)%len(outline)]
			dp, db := depth(p), depth(before)
			if (dp < 0) != (db < 0) {
				kept = append(kept, before.Add(p.Sub(before).Times(float64(db/(db-dp)))))
			}
			if dp >= 0 {
				kept = append(kept, p)
			}
		}
		outline = kept
	}
	if len(outline) < 3 {
		return nil
	}
	return outline
}
