package measure

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

const (
	minus   = "−"      // U+2212, as wide as a digit's plus
	apart   = "\u00a0" // no-break space between thousands
	noValue = "—"      // for what is no finite number
)

// feetInches prints feet and inches with primes, 22′-6 1/2″, to the nearest 1/den of an inch; under a foot the inches alone, 6 1/2″.
// den is a power of two.
func feetInches(l Length, den int) string {
	sign, steps, ok := stepsOf(l, den)
	if !ok {
		return noValue
	}
	foot := int64(12 * den)
	if steps < foot {
		return sign + mixed(steps, int64(den)) + "″"
	}
	inches := mixed(steps%foot, int64(den))
	if part := steps % foot; 0 < part && part < int64(den) {
		inches = "0 " + inches // 8′-7/8″ would be read as 8 ft 7 in
	}
	return fmt.Sprintf("%s%s′-%s″", sign, grouped(strconv.FormatInt(steps/foot, 10)), inches)
}

// inchFraction prints inches as one number, 151 7/8 in, to the nearest 1/den of an inch. den is a power of two.
func inchFraction(l Length, den int) string {
	if text := bareInches(l, den); text != noValue {
		return text + " in"
	}
	return noValue
}

func bareInches(l Length, den int) string {
	sign, steps, ok := stepsOf(l, den)
	if !ok {
		return noValue
	}
	return sign + mixed(steps, int64(den))
}

// stepsOf counts the length in whole steps of 1/den in, sign apart. It is false for lengths that no count can hold.
func stepsOf(l Length, den int) (sign string, steps int64, ok bool) {
	n := math.Round(math.Abs(l.Inches()) * float64(den))
	if math.IsNaN(n) || n > 1<<53 {
		return "", 0, false
	}
	if l < 0 && n > 0 {
		sign = minus
	}
	return sign, int64(n), true
}

// mixed prints steps of 1/den as a whole number with a reduced fraction.
func mixed(steps, den int64) string {
	whole, part := steps/den, steps%den
	for part > 0 && part%2 == 0 && den%2 == 0 {
		part, den = part/2, den/2
	}
	switch {
	case part == 0:
		return grouped(strconv.FormatInt(whole, 10))
	case whole == 0:
		return fmt.Sprintf("%d/%d", part, den)
	}
	return fmt.Sprintf("%s %d/%d", grouped(strconv.FormatInt(whole, 10)), part, den)
}

// fixed prints a number to a count of decimals with its thousands apart, and never minus nought.
func fixed(v float64, places int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return noValue
	}
	s := strconv.FormatFloat(math.Abs(v), 'f', places, 64)
	whole, decimals, point := strings.Cut(s, ".")
	if s = grouped(whole); point {
		s += "." + decimals
	}
	if v < 0 && strings.Trim(s, "0.") != "" {
		return minus + s
	}
	return s
}

// decimal prints a number to at most a count of decimals, without trailing noughts.
func decimal(v float64, most int) string {
	s := fixed(v, most)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// grouped puts a no-break space between thousands.
func grouped(whole string) string {
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + apart + whole[i:]
	}
	return whole
}
