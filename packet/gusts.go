package packet

import (
	"hoopwright/layout/measure"
)

// What the leaves of the season ask of the weather: all of it goes through these few functions.

// closeAt is the forecast gust from which on nobody is inside; calm where there is no gust to name, for it bears no wind to speak of.
func (b *binder) closeAt() (gust measure.Speed, calm bool) {
	w := b.plan.Weather
	return b.insideGust(), len(w.Bears) > 0 && w.Calm()
}

// flatAt is the forecast gust before which the tunnel is laid flat; not ok where none is worked out, or where it is closed in any wind.
func (b *binder) flatAt() (gust measure.Speed, ok bool) {
	w := b.plan.Weather
	return w.Down, len(w.Bears) > 0 && !w.Calm()
}

// stripAt is the forecast gust before which rows and drops are taken off; not ok where that gains next to nothing.
func (b *binder) stripAt() (gust measure.Speed, ok bool) {
	w := b.plan.Weather
	return w.Strip, len(w.Bears) > 0 && !w.Calm() && w.Strip > 0
}

// gustOverMean is how many times the mean wind a gust comes to over ground with trees and houses; between 1.4 and 1.7 (from memory). A higher factor takes a
// milder wind for the sign of a gust: the side of caution.
const gustOverMean = 1.6

// winds are the mean winds from which on something shows on land, mildest first: the Beaufort scale's forces 2 to 7, in m/s (from memory).
var winds = []struct {
	from measure.Speed
	sign string
}{
	{1.6, "leaves rustle"}, {3.4, "leaves and twigs keep moving"}, {5.5, "small branches keep moving"}, {8.0, "small trees sway"},
	{10.8, "large branches move"}, {13.9, "whole trees move"},
}

// signOf is what is seen on land in a wind whose gusts come to that: the sign that shows at or below it.
func signOf(gust measure.Speed) string {
	sign := winds[0].sign
	for _, w := range winds {
		if w.from*gustOverMean <= gust {
			sign = w.sign
		}
	}
	return sign
}
