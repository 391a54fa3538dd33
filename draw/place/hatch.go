package place

import (
	"math"
	"slices"

	"hoopwright/draw/paper"
)

// hatchSpacing is the least distance between hatch lines; closer ones fill in when copied.
const hatchSpacing paper.Length = 2

// Hatch fills the outline with parallel lines at an angle (radians, counter-clockwise from the right as seen on paper), spacing apart but never closer than
// hatchSpacing. Texts already within are left clear; labels set later keep off the lines.
func (b *Board) Hatch(outline paper.Path, angle float64, spacing paper.Length) {
	for _, s := range hatchLines(outline.Flatten(0.02), angle, max(spacing, hatchSpacing)) {
		b.LineRound(s[0], s[1], paper.Hatching)
	}
}

// hatchLines returns the pieces of parallel lines inside the closed outlines, by the even-odd rule. Lines lie on a grid fixed to the page, so that
// neighbouring areas match.
func hatchLines(outlines [][]paper.Point, angle float64, spacing paper.Length) [][2]paper.Point {
	dir := paper.Polar(1, angle)
	across := dir.Left()
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, pts := range outlines {
		for _, p := range pts {
			v := float64(dot(p, across))
			lo, hi = min(lo, v), max(hi, v)
		}
	}
	if !(hi > lo) || (hi-lo)/float64(spacing) > 1e5 { // nothing, or something no sheet holds
		return nil
	}
	var lines [][2]paper.Point
	for k := math.Ceil(lo / float64(spacing)); k*float64(spacing) < hi; k++ {
		level := paper.Length(k) * spacing
		var hits []float64
		for _, pts := range outlines {
			for i := range pts {
				p, q := pts[i], pts[(i+1)%len(pts)]
				vp, vq := dot(p, across)-level, dot(q, across)-level
				if (vp < 0) != (vq < 0) {
					t := float64(vp / (vp - vq))
					hits = append(hits, float64(dot(p.Add(q.Sub(p).Times(t)), dir)))
				}
			}
		}
		slices.Sort(hits)
		for i := 1; i < len(hits); i += 2 {
			base := across.Times(float64(level))
			lines = append(lines, [2]paper.Point{base.Add(dir.Times(hits[i-1])), base.Add(dir.Times(hits[i]))})
		}
	}
	return lines
}

// Ground draws the ground line of a section with short slanting strokes under it. The ground lies to the right of the way from one end to the other as
// seen on paper: below, for a line drawn left to right.
func (b *Board) Ground(from, to paper.Point) {
	b.LineRound(from, to, paper.Thick)
	run := to.Sub(from)
	u := run.Unit()
	down := u.Left().Times(-1)
	slant := down.Sub(u).Unit().Times(3)
	const group, pitch = 3, 1.8 // strokes in a group, distance between them
	for s := paper.Length(4); s+group*pitch < run.Long(); s += 14 {
		for i := range group {
			p := from.Add(u.Times(float64(s) + float64(i)*pitch))
			b.LineRound(p, p.Add(slant), paper.Thin)
		}
	}
}
