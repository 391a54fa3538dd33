package catalog

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// find returns the row whose name is the same but for case, spaces and the spelling of units.
func find[T any](rows []T, name string, of func(T) string) (T, bool) {
	for _, row := range rows { // as written first: it is the usual case, and keys cost more than the rest of the look-up
		if of(row) == name {
			return row, true
		}
	}
	wanted := key(name)
	for _, row := range rows {
		if key(of(row)) == wanted {
			return row, true
		}
	}
	var none T
	return none, false
}

var (
	marks = strings.NewReplacer(`"`, " in ", "″", " in ", "”", " in ", "''", " in ", "⁄", "/", "½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅜", " 3/8", "⅝", " 5/8", "²", "2", "#", " no. ", "\u00a0", " ")
	words = strings.NewReplacer(" inches ", " in ", " inch ", " in ", " schedule 40 ", " sch40 ", " sch 40 ", " sch40 ", " volts ", " v ", " volt ", " v ")
	// A number runs into its unit, 1/2in; a whole number is tied to its fraction, 1-1/4; a number sign stands without its blank, no.4.
	unitRunOn  = regexp.MustCompile(`(^|[ /.\d])(\d+)(in|inch|inches|mm2?|cm|m|ft|awg|v|volts?)\b`)
	tiedHalves = regexp.MustCompile(`(\d)-(\d+/\d)`)
	numberSign = regexp.MustCompile(`\bno(\. *| +)(\d)`)
)

// key returns a name in the one spelling that names are compared by.
func key(name string) string {
	s := marks.Replace(strings.ToLower(name))
	s = unitRunOn.ReplaceAllString(s, "$1$2 $3")
	s = tiedHalves.ReplaceAllString(s, "$1 $2")
	s = numberSign.ReplaceAllString(s, "no. $2")
	s = words.Replace(" " + strings.Join(strings.Fields(s), " ") + " ")
	return strings.TrimSpace(s)
}

// Nearest returns the one of names that was most likely meant, or "" where none is near. A name is near when few letters are wrong
// for its length, one and a fifth of them; or when the whole of what was written begins it. The earlier of two equals wins.
func Nearest(name string, names []string) string {
	written := key(name)
	limit := 1 + utf8.RuneCountInString(written)/5
	nearest, least := "", limit+1
	for _, candidate := range names {
		whole := key(candidate)
		d := distance(written, whole)
		if d > limit && len(written) >= 3 && strings.HasPrefix(whole, written) {
			d = limit
		}
		if d < least {
			nearest, least = candidate, d
		}
	}
	return nearest
}

// distance counts the letters to add, drop, change or swap with their neighbour to turn one word into the other
// (optimal string alignment).
func distance(from, to string) int {
	a, b := []rune(from), []rune(to)
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		before, last, row = last, row, before
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := last[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(change, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return row[len(b)]
}

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
