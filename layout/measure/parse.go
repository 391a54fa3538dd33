package measure

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Parse reads a quantity as people write it: a length in ft, in, mm, cm or m, or feet with inches (7 ft 6 in, 7' 6", 7'-6", 22′-6 1/2″); an angle in deg; a mass in lb, oz, kg or g; a mass per length in lb/ft or
// kg/m; a pressure in psi or MPa; A, V, W and kW; a conductor's size in mm2, or as an AWG gauge from 0 to 40; a speed in mph, m/s or km/h; a temperature in F or C; a share in %, 80 % is 0.8.
func Parse[Q ~float64](text string) (Q, error) {
	v, err := kindOf(Q(0)).read(text)
	return Q(v), err
}

// ParseLength reads a length.
func ParseLength(text string) (Length, error) { return Parse[Length](text) }

// SystemOf returns the system that a written length belongs to: feet and inches are imperial, the rest metric. It is false
// where the text is no length, or a bare 0.
func SystemOf(length string) (System, bool) {
	_, err := ParseLength(length)
	word := strings.ToLower(plain(length))
	switch {
	case err != nil || strings.Trim(word, "-0. ") == "":
		return Imperial, false
	case strings.Contains(word, "m"):
		return Metric, true
	}
	return Imperial, true
}

// read returns the text's quantity in the kind's base unit. A bare 0 is read where nought is the same in every unit.
func (k *kind) read(text string) (float64, error) {
	s := plain(text)
	switch {
	case s == "":
		return 0, fmt.Errorf("nothing is written; %s", k.wanted())
	case strings.Contains(s, ","):
		return 0, k.comma(text)
	case strings.ContainsAny(s, glyphs):
		return 0, k.refuse(text, "has a fraction in one character: write it with a slash, as in 1/2")
	}
	unsigned, negative := strings.CutPrefix(s, "-")
	v, rest, err := number(strings.TrimLeft(unsigned, " "))
	if err != nil {
		return 0, k.refuse(text, err.Error())
	}
	word, rest := unitWord(rest)
	if word == "" && rest == "" {
		if v == 0 && k != &temperatures {
			return 0, nil
		}
		return 0, k.missing(text, v)
	}
	u, err := k.unit(text, word, rest)
	if err != nil {
		return 0, err
	}
	if strings.TrimLeft(rest, " ") != "" {
		if v, u, err = k.inches(text, u, v, rest); err != nil {
			return 0, err
		}
	}
	if negative {
		v = -v
	}
	base, err := u.convert(v)
	if err != nil {
		return 0, k.refuse(text, err.Error())
	}
	return base + 0, nil // + 0 turns −0 into 0
}

// glyphs are fractions in one character, which print and read badly.
const glyphs = "½¼¾⅛⅜⅝⅞⅓⅔"

// inches reads what may follow whole feet, inches under twelve after a space or a hyphen or neither, and returns the whole in inches.
func (k *kind) inches(text string, first unit, feet float64, rest string) (float64, unit, error) {
	if k != &lengths || first.name != "ft" {
		return 0, unit{}, k.refuse(text, fmt.Sprintf("goes on after its unit with %q", strings.TrimSpace(rest)))
	}
	// A hyphen joins, 7'-6" or 7' - 6"; one that leans on the inches alone would be a sign.
	written, joined := strings.CutPrefix(strings.TrimLeft(rest, " "), "-")
	if joined && rest[0] == ' ' && !strings.HasPrefix(written, " ") {
		return 0, unit{}, k.refuse(text, "has a minus that is not in front")
	}
	v, tail, err := number(strings.TrimLeft(written, " "))
	if err != nil {
		return 0, unit{}, k.refuse(text, fmt.Sprintf("goes on after the feet with %q, which is no number of inches", strings.TrimSpace(rest)))
	}
	word, tail := unitWord(tail)
	u, _ := k.find(word)
	switch {
	case word == "" && tail == "":
		return 0, unit{}, k.refuse(text, "needs a unit after its last number too")
	case u.name != "in" || strings.TrimLeft(tail, " ") != "":
		return 0, unit{}, k.refuse(text, "can only go on with inches after the feet")
	case feet != math.Trunc(feet):
		return 0, unit{}, k.refuse(text, "has a part of a foot before its inches")
	case v >= 12:
		return 0, unit{}, k.refuse(text, "has twelve inches or more after its feet")
	}
	return 12*feet + v, u, nil
}

// unit finds the word among the kind's units, or says what is wrong with it.
func (k *kind) unit(text, word, rest string) (unit, error) {
	if u, ok := k.find(word); ok {
		return u, nil
	}
	if word == "" {
		return unit{}, k.refuse(text, fmt.Sprintf("cannot be read from %q on", rest))
	}
	for _, other := range kinds {
		if _, ok := other.find(word); ok {
			return unit{}, fmt.Errorf("%s is %s; %s is wanted, written %s", strings.TrimSpace(text), other.name, k.name, k.written())
		}
	}
	return unit{}, k.refuse(text, fmt.Sprintf("has an unknown unit, %q", word))
}

// unitWord splits off the unit at the start: one mark, or letters with perhaps a slash and letters; mm2 takes its digit along.
func unitWord(s string) (string, string) {
	s = strings.TrimLeft(s, " ")
	if s != "" && strings.ContainsRune(`'"%`, rune(s[0])) {
		return s[:1], s[1:]
	}
	end := letters(s)
	if strings.HasPrefix(s[end:], "/") {
		if more := letters(s[end+1:]); end > 0 && more > 0 {
			end += 1 + more
		}
	}
	if number, _ := digits(s[end:]); strings.EqualFold(s[:end], "mm") && number == "2" {
		end++
	}
	return s[:end], s[end:]
}

// letters returns the length in bytes of the letters and degree signs at the start.
func letters(s string) int {
	for i, r := range s {
		if !unicode.IsLetter(r) && r != '°' || r == utf8.RuneError {
			return i
		}
	}
	return len(s)
}

func (k *kind) refuse(text, why string) error {
	return fmt.Errorf("%q %s; %s", text, why, k.wanted())
}

// missing says that a number stands without a unit, and what may have been meant.
func (k *kind) missing(text string, v float64) error {
	number := strings.TrimSpace(text)
	meant := []string{number + " " + k.units[0].name}
	switch {
	case k == &shares && v <= 1: // 0.8 was hardly meant as 0.8 %
		meant = append(meant, decimal(v*100, 2)+" %")
	case len(k.units) > 1:
		meant = append(meant, number+" "+k.units[1].name)
	}
	return fmt.Errorf("%s needs a unit: %s; %s", number, strings.Join(meant, " or "), k.wanted())
}

// comma says how to write a quantity without its comma: a point, nothing, or either where both are plausible.
func (k *kind) comma(text string) error {
	s := plain(text)
	i := strings.IndexByte(s, ',')
	after, _ := digits(s[i+1:])
	between := i > 0 && s[i-1] >= '0' && s[i-1] <= '9' && after != ""
	var meant []string
	try := func(written string) {
		if _, err := k.read(written); err == nil {
			meant = append(meant, written)
		}
	}
	if between {
		try(s[:i] + "." + s[i+1:])
	}
	if !between || len(after) == 3 {
		try(s[:i] + s[i+1:])
	}
	if len(meant) == 0 {
		return k.refuse(text, "has a comma")
	}
	return fmt.Errorf("%q has a comma: write %s; %s", text, strings.Join(meant, " or "), k.wanted())
}
