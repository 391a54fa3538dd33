package paper

import (
	"slices"
	"strings"
)

// units are what a number is not parted from.
var units = strings.Fields("in ft yd mm cm m lb lbf oz kg g N kN W kW Wh kWh A V Ω mph km/h m/s °F °C % AWG h min s")

// Words breaks a text into what a line may be broken between: at spaces and tabs, but never between a number and its fraction or its unit,
// nor at a no-break space.
func Words(s string) []string {
	fields := strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\t' || r == '\n' || r == '\r' })
	words := fields[:0]
	for _, w := range fields {
		n := len(words)
		if n > 0 && numeric(words[n-1]) && (beginsFraction(w) || slices.Contains(units, strings.TrimRight(w, ".,;:)"))) {
			words[n-1] += " " + w
			continue
		}
		words = append(words, w)
	}
	return words
}

// numeric reports whether a word ends in a figure, as a number does that waits for its fraction or its unit.
func numeric(w string) bool { return w[len(w)-1] >= '0' && w[len(w)-1] <= '9' }

// beginsFraction reports whether a word begins with a figure, a stroke and a figure, as 3/8 does.
func beginsFraction(w string) bool {
	over, under, ok := strings.Cut(w, "/")
	return ok && over != "" && strings.Trim(over, "0123456789") == "" && under != "" && under[0] >= '0' && under[0] <= '9'
}
