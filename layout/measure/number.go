package measure

import (
	"cmp"
	"errors"
	"strconv"
	"strings"
	"unicode"
)

// mostNumber bounds every written number, so that no sum, conversion or printing of what was read can overflow.
const mostNumber = 1e9

var (
	errNoNumber = errors.New("does not begin with a number")
	errExponent = errors.New("has an exponent: write the number out in full")
	errTooLarge = errors.New("is too large")
	errPoint    = errors.New("has a point with no digit after it")
	errNought   = errors.New("divides by nought")
	errImproper = errors.New("has more than a whole in its fraction")
)

// plain returns the text with every spelling of minus, slash, quote and space made one.
func plain(text string) string {
	s := strings.Map(func(r rune) rune {
		switch r {
		case '−', '–':
			return '-'
		case '⁄':
			return '/'
		case '′', '’':
			return '\''
		case '″', '”':
			return '"'
		case '²':
			return '2'
		}
		if unicode.IsSpace(r) {
			return ' '
		}
		return r
	}, text)
	s = strings.ReplaceAll(s, "''", `"`)
	return strings.TrimSpace(s)
}

// number reads 7, 7.5, .5, 1/2 or 6 1/2 from the start of plain text and returns the rest. A fraction may also hang on a hyphen, 6-1/2,
// and thousands may stand apart, 6 860 or 6_860, as this package prints them.
func number(s string) (float64, string, error) {
	whole, rest := thousands(s)
	if strings.HasPrefix(rest, ".") {
		decimals, after := digits(rest[1:])
		switch {
		case decimals == "" && whole == "":
			return 0, s, errNoNumber
		case decimals == "":
			return 0, s, errPoint
		}
		v, err := value(whole + "." + decimals)
		return ended(v, after, err)
	}
	if whole == "" {
		return 0, s, errNoNumber
	}
	if over, after, ok := slash(rest); ok {
		v, err := fraction(whole, over)
		return ended(v, after, err)
	}
	v, err := value(whole)
	if err != nil {
		return 0, s, err
	}
	// A fraction after the whole number: spaces or one hyphen, then digits and a slash.
	part, hyphen := strings.CutPrefix(rest, "-")
	if !hyphen {
		part = strings.TrimLeft(rest, " ")
	}
	if above, after := digits(part); above != "" && part != rest {
		if over, after, ok := slash(after); ok {
			f, err := fraction(above, over)
			if err == nil && f >= 1 {
				err = errImproper
			}
			return ended(v+f, after, err)
		}
	}
	return ended(v, rest, nil)
}

// ended refuses what may not follow a number directly.
func ended(v float64, rest string, err error) (float64, string, error) {
	if err == nil && len(rest) > 1 && (rest[0] == 'e' || rest[0] == 'E') && strings.ContainsRune("+-0123456789", rune(rest[1])) {
		err = errExponent
	}
	return v, rest, err
}

func digits(s string) (string, string) {
	i := 0
	for i < len(s) && s[i] >= '0' && s[i] <= '9' {
		i++
	}
	return s[:i], s[i:]
}

// thousands splits off a whole number whose groups of three may stand apart.
func thousands(s string) (string, string) {
	whole, rest := digits(s)
	if len(whole) > 3 || strings.HasPrefix(whole, "0") {
		return whole, rest
	}
	for whole != "" && rest != "" && (rest[0] == ' ' || rest[0] == '_') {
		group, after := digits(rest[1:])
		if len(group) != 3 || strings.HasPrefix(after, "/") {
			break
		}
		whole, rest = whole+group, after
	}
	return whole, rest
}

func slash(s string) (string, string, bool) {
	if !strings.HasPrefix(s, "/") {
		return "", s, false
	}
	over, rest := digits(s[1:])
	return over, rest, over != ""
}

func fraction(above, over string) (float64, error) {
	a, wrongAbove := value(above)
	o, wrongOver := value(over)
	err := cmp.Or(wrongAbove, wrongOver)
	if err == nil && o == 0 {
		err = errNought
	}
	return a / o, err
}

func value(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || v > mostNumber {
		return 0, errTooLarge
	}
	return v, nil
}
