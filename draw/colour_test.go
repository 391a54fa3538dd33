package draw

import (
	"testing"

	"hoopwright/layout/catalog"
)

// No two hues share an ink, and each has one.
func TestInksAreApart(t *testing.T) {
	for a := catalog.WarmWhite; a <= catalog.Turquoise; a++ {
		if _, ok := glows[a]; !ok {
			t.Errorf("hue %d has no ink", a)
		}
		for b := a + 1; b <= catalog.Turquoise; b++ {
			p, q := glows[a], glows[b]
			dr, dg, db := int(p.R)-int(q.R), int(p.G)-int(q.G), int(p.B)-int(q.B)
			if dr*dr+dg*dg+db*db < 40*40 {
				t.Errorf("hues %d and %d have inks %v and %v, hardly apart", a, b, p, q)
			}
		}
	}
}
