package draw

import "hoopwright/draw/paper"

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
