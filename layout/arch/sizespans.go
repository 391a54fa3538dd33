package arch

import (
	"math"

	"hoopwright/layout/measure"
)

// Steps between the spans of a table of sizes, rising.
var (
	imperialSteps = []measure.Length{1 * measure.Inch, 2 * measure.Inch, 3 * measure.Inch, 4 * measure.Inch, 6 * measure.Inch, 12 * measure.Inch, 24 * measure.Inch, 48 * measure.Inch}
	metricSteps   = []measure.Length{20, 50, 100, 200, 250, 500, 1000, 2000}
)

// MostSpans is how many spans SpansBetween returns at most.
const MostSpans = 12

// SpansBetween returns spans from one to another, both with them, a round step apart in between.
func SpansBetween(from, to measure.Length, units measure.System) []measure.Length {
	step := stepOver(to-from, MostSpans-2, units)
	spans := []measure.Length{from}
	for next := measure.RoundUp(from+step/1000, step); next < to-step/1000; next += step {
		spans = append(spans, next)
	}
	if to > from {
		spans = append(spans, to)
	}
	return spans
}

// SpansAbout returns eleven round spans a round step apart, from about half of one to half as much again.
func SpansAbout(span measure.Length, units measure.System) []measure.Length {
	const each = 5 // to each side
	step := stepOver(span, 2*each+2, units)
	middle := max(measure.Length(math.Round(float64(span/step))), each+1)
	var spans []measure.Length
	for i := -each; i <= each; i++ {
		spans = append(spans, (middle+measure.Length(i))*step)
	}
	return spans
}

// stepOver returns the least step that crosses the length in so many steps or fewer.
func stepOver(length measure.Length, most int, units measure.System) measure.Length {
	steps := imperialSteps
	if units == measure.Metric {
		steps = metricSteps
	}
	for _, s := range steps {
		if length <= s*measure.Length(most)*(1+1e-9) {
			return s
		}
	}
	return steps[len(steps)-1]
}
