package main

import (
	"fmt"
	"regexp"
	"strings"

	"hoopwright/layout/measure"
)

// The least and the most that a span or a height may be, as in a spec.
const leastSpan, mostSpan, mostHeight = 12 * measure.Inch, 40 * measure.Foot, 30 * measure.Foot

// rangeOf reads the option that stands for a key as one length or a range: 5 ft to 10 ft, 5 to 10 ft, 5-10 ft, or 5-10, which are feet or metres by the units. Both ends are 0 where nothing is
// written.
func rangeOf(key, text string, most measure.Length, u measure.System) (from, to measure.Length, err error) {
	if text == "" {
		return 0, 0, nil
	}
	from, to, err = ends(strings.TrimSpace(text), u)
	if err != nil {
		said, _, _ := strings.Cut(err.Error(), ", as in ") // the option's own example serves better
		return 0, 0, badWish(key, "%s", said)
	}
	for _, end := range []measure.Length{from, to} {
		if end < leastSpan || end > most*(1+1e-9) {
			return 0, 0, badWish(key, "%s is not between 12 in and %.0f ft", u.Written(end), float64(most/measure.Foot))
		}
	}
	if from > to {
		return 0, 0, badWish(key, "the range %q runs backwards; the lower end comes first", text)
	}
	return from, to, nil
}

// rangeMarks part the ends of a range. A hyphen may also stand within a length, 7'-6", so each is tried.
var rangeMarks = regexp.MustCompile(`\s+to\s+|\s*(?:\.\.+|…|–|—|-)\s*`)

// ends reads one length, or two parted by a mark of a range. An end without a unit takes that of the other.
func ends(text string, u measure.System) (from, to measure.Length, err error) {
	if from, err = measure.ParseLength(text); err == nil {
		return from, from, nil
	}
	for _, at := range rangeMarks.FindAllStringIndex(text, -1) {
		first, last := withUnit(text[:at[0]], text[at[1]:], u)
		low, lowErr := measure.ParseLength(first)
		high, highErr := measure.ParseLength(last)
		if lowErr == nil && highErr == nil {
			return low, high, nil
		}
	}
	if first, last, isRange := strings.Cut(text, " to "); isRange { // which of the two is wrong
		first, last = withUnit(first, last, u)
		if _, err = measure.ParseLength(first); err == nil {
			_, err = measure.ParseLength(last)
		}
	}
	return 0, 0, err
}

var (
	bareNumber = regexp.MustCompile(`^[0-9 ./]+$`)
	unitAfter  = regexp.MustCompile(`^[0-9 ./]+([A-Za-z'"′″]+)`)
)

// withUnit gives a bare end of a range the unit of the other, or feet or metres where neither has one.
func withUnit(first, last string, u measure.System) (string, string) {
	unit := measure.By(u, "ft", "m")
	if at := unitAfter.FindStringSubmatch(last); at != nil {
		unit = at[1]
	}
	for _, end := range []*string{&first, &last} {
		if bareNumber.MatchString(*end) {
			*end = fmt.Sprintf("%s %s", *end, unit)
		}
	}
	return first, last
}
