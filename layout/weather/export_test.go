package weather

import "slices"

// First returns the least gust of one way at which something gives in any soil it may be.
func (w *Weather) First(way Way) Limit {
	curves := slices.DeleteFunc(slices.Clone(w.curves), func(c *curve) bool { return c.way != way })
	least := Limit{Gust: mostGust}
	for _, soil := range w.of.soils() {
		if l := w.of.limit(curves, w.of.checks(soil, w.Feet), false); l.Gust < least.Gust {
			least = l
		}
	}
	return least
}
