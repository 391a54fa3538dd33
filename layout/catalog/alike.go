package catalog

import (
	"slices"
	"strings"
	"unicode"
)

// Words splits what a person writes of a thing into the words that names are made of: in one spelling, plurals without their s, and what the trade calls otherwise by the catalog's own word.
func Words(text string) []string {
	words := strings.FieldsFunc(key(text), func(r rune) bool { return unicode.IsSpace(r) || r == '-' || r == ',' })
	for i, w := range words {
		if len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") {
			w = w[:len(w)-1]
		}
		if own, ok := otherwise[w]; ok {
			w = own
		}
		words[i] = w
	}
	return words
}

// otherwise is what things are called besides.
var otherwise = map[string]string{"icicle": "drop", "curtain": "drop", "light": "string", "rebar": "bar", "rod": "bar", "conduit": "pipe", "tube": "pipe", "bulb": "lamp", "color": "colour", "coloured": "colour", "yellow": "amber"}

// Alike returns the one of names that has the most words of what was written, in whatever order, or "" where none has a word of letters in common with it. Sizes alone make nothing alike: a half-inch pipe
// of another plastic is another pipe. Of equals the shorter wins, then the earlier.
func Alike(text string, names []string) string {
	written := Words(text)
	best, most, rest := "", 0, 0
	for _, name := range names {
		words := Words(name)
		shared, named := 0, false
		for _, w := range written {
			if slices.Contains(words, w) {
				shared++
				named = named || !units[w] && !strings.ContainsFunc(w, func(r rune) bool { return !unicode.IsLetter(r) })
			}
		}
		if left := len(words) - shared; named && (shared > most || shared == most && left < rest) {
			best, most, rest = name, shared, left
		}
	}
	return best
}

// units are words of letters that name nothing.
var units = map[string]bool{"in": true, "mm": true, "cm": true, "m": true, "ft": true, "v": true, "w": true, "awg": true, "no.": true, "to": true}
