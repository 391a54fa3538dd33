// Package say puts counts, numbers and names into English: "1 string", "3 to 5 and 8", "a, b and c". It is for whatever prints words: sheets,
// findings, the command; nothing that it returns is meant to be read back.
package say

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Count returns a count with its noun in the singular or the plural: "1 string", "0 inches", "12 left stakes".
func Count(n int, noun string) string {
	return fmt.Sprint(n, " ", Agree(n, noun, plural(noun)))
}

// plural returns the plural of a regular noun, which may have words before it and an "of …" behind it: "strings", "boxes", "batteries", "inches of pipe".
func plural(noun string) string {
	noun, of, found := strings.Cut(noun, " of ")
	if found {
		of = " of " + of
	}
	switch last := noun[max(0, len(noun)-2):]; {
	case strings.HasSuffix(last, "s"), strings.HasSuffix(last, "x"), strings.HasSuffix(last, "z"), last == "ch", last == "sh":
		return noun + "es" + of
	case strings.HasSuffix(last, "y") && !strings.ContainsAny(last[:1], "aeiou"):
		return noun[:len(noun)-1] + "ies" + of
	}
	return noun + "s" + of
}

// Agree returns what goes with a count: one with 1, more with any other.
func Agree(n int, one, more string) string {
	if n == 1 {
		return one
	}
	return more
}

// And lists words as a sentence does: "a", "a and b", "a, b and c".
func And(words []string) string { return list(words, " and ") }

// Or lists words of which one is meant: "a", "a or b", "a, b or c".
func Or(words []string) string { return list(words, " or ") }

func list(words []string, last string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + last + words[n-1]
}

// Some lists words as And does, but of more than most+1 only the first ones, with a count of the others: "a, b and 7 more".
func Some(words []string, most int) string {
	if n := len(words); n > most+1 {
		return fmt.Sprintf("%s and %d more", strings.Join(words[:most], ", "), n-most)
	}
	return And(words)
}

// Capital returns a text with its first letter as a capital.
func Capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(r)) + s[size:]
}
