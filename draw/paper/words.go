package paper

import (
	"regexp"
	"strings"
)

var (
	fractionWord = regexp.MustCompile(`^[0-9]+/[0-9]+`)
	unitWord     = regexp.MustCompile(`^(in|ft|yd|mm|cm|m|lb|lbf|oz|kg|g|N|kN|W|kW|Wh|kWh|A|V|Ω|mph|km/h|m/s|°F|°C|%|AWG|h|min|s)[.,;:)]*$`)
)

// Words breaks a text into what a line may be broken between: at spaces and tabs, but never between a number and its fraction or its unit,
// nor at a no-break space.
func Words(s string) []string {
	var words []string
	for _, w := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\t' || r == '\n' || r == '\r' }) {
		n := len(words)
		if n > 0 && numeric(words[n-1]) && (fractionWord.MatchString(w) || unitWord.MatchString(w)) {
			words[n-1] += " " + w
			continue
		}
		words = append(words, w)
	}
	return words
}

// numeric reports whether a word ends in a figure, as a number does that waits for its fraction or its unit.
func numeric(w string) bool { return w[len(w)-1] >= '0' && w[len(w)-1] <= '9' }
