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

// Stretch is a range of spans.
type Stretch struct {
	From, To measure.Length
	Why      string // what is wrong with it: too tight, falls, no arch
}

// Barred returns the spans that cannot be built, from the first of the sizes to the last, their spans rising: where the bend is too tight for the
// pipe or no arch stands. Between two sizes the bend's end is where the strength comes to 1 by a straight line from the one to
// the other, and a fall's end is midway.
func Barred(sizes []Size) []Stretch {
	var list []Stretch
	for i, s := range sizes {
		if s.Buildable() {
			continue
		}
		why := s.Standing.String()
		if s.Standing < Falls {
			why = s.Bend.String()
		}
		from, to := s.Span, s.Span
		if i > 0 {
			from = border(sizes[i-1], s)
		}
		if i+1 < len(sizes) {
			to = border(s, sizes[i+1])
		}
		if n := len(list); n > 0 && list[n-1].Why == why && list[n-1].To >= from {
			list[n-1].To = to
			continue
		}
		list = append(list, Stretch{from, to, why})
	}
	return list
}

// border returns the span between two neighbours at which the one ceases to be what it is.
func border(a, b Size) measure.Length {
	share := 0.5
	if a.Standing < Falls && b.Standing < Falls && (a.Bend == TooTight) != (b.Bend == TooTight) {
		share = (1 - a.Strength) / (b.Strength - a.Strength)
	}
	return a.Span + (b.Span-a.Span)*measure.Length(share)
}
