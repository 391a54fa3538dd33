package spec

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// rule is what the value of a key may be: in words, and how it is read into what a pointer points to. Where read is nil the key has keys or items of its own, or its section reads it.
type rule struct {
	takes func(units measure.System) string
	read  func(f field, into any) bool
	must  bool // the key is wanted wherever its section is given
}

// ruled makes a rule of how a value is read and what to say of it.
func ruled[T any](takes func(measure.System) string, read func(f field) (T, bool)) rule {
	return rule{takes: takes, read: func(f field, into any) bool {
		v, ok := read(f)
		if ok {
			*into.(*T) = v
		}
		return ok
	}}
}

// must makes a rule of a key that is wanted wherever its section is given.
func must(r rule) rule {
	r.must = true
	return r
}

// says makes words that are the same in both systems.
func says(text string) func(measure.System) string {
	return func(measure.System) string { return text }
}

// told is the rule of a key that its section reads.
func told(text string) rule { return rule{takes: says(text)} }

// inner is the rule of a key that has keys or items of its own.
var inner rule

// within is the rule of a quantity between two limits.
func within[T ~float64](k *kind[T], low, high T) rule {
	return bounds[T]{k, low, high}.rule()
}

// Limits of words and lists.
const (
	longestName = 60   // characters of a name: it must fit a label
	longestText = 200  // characters of any other text
	mostItems   = 1000 // of one list
)

func text(longest int) rule {
	return ruled(says("text on one line, at most "+strconv.Itoa(longest)+" characters"), func(f field) (string, bool) { return f.text(longest) })
}

var (
	bareNumber  = regexp.MustCompile(`^-?[0-9]+(\.[0-9]+)?$`)
	wholeNumber = regexp.MustCompile(`^(0|-?[1-9][0-9]*)$`)
	fromUTC     = regexp.MustCompile(`^UTC(?:([+-](?:[1-9]|1[0-4]))(?::(15|30|45))?)?$`)
	clockTime   = regexp.MustCompile(`^([01]?[0-9]|2[0-3]):[0-5][0-9]$`)
)

// count is the rule of a whole number within limits, number that of a plain decimal one.
func count(low, high int) rule {
	return ruled(says("a whole number, "+strconv.Itoa(low)+" to "+strconv.Itoa(high)), func(f field) (int, bool) {
		v, ok := f.number("a whole number in plain digits", wholeNumber, float64(low), float64(high))
		return int(v), ok
	})
}

func number(low, high float64) rule {
	return ruled(says("a plain number, "+round(low)+" to "+round(high)), func(f field) (float64, bool) {
		return f.number("a plain number such as 5 or 0.25", bareNumber, low, high)
	})
}

// number reads a number of a form within limits.
func (f field) number(wanted string, form *regexp.Regexp, low, high float64) (float64, bool) {
	s, ok := f.scalar()
	v, err := strconv.ParseFloat(s, 64)
	switch {
	case !ok:
	case !form.MatchString(s):
		f.failWith(f.other(numberMeant(s)), "is %s; %s is wanted", quote(s), wanted)
	case err != nil || v < low || v > high:
		f.fail("is %s; %s to %s is wanted", quote(s), round(low), round(high))
	default:
		return v, true
	}
	return 0, false
}

// oneOf is the rule of a value that is named by one of a few words, its own.
func oneOf[T interface{ String() string }](values ...T) rule {
	return choice(values, namesOf(values, T.String)...)
}

// choice is the rule of a value that is named by one of as many words.
func choice[T any](values []T, words ...string) rule {
	return ruled(says(say.Or(words)), func(f field) (none T, ok bool) {
		if i, ok := f.word(words...); ok {
			return values[i], true
		}
		return none, false
	})
}

// either is the rule of what is false by the first word and true by the second.
func either(first, second string) rule { return choice([]bool{false, true}, first, second) }

// word reads a value as one of a few words and returns which.
func (f field) word(words ...string) (int, bool) {
	s, ok := f.scalar()
	i := slices.Index(words, s)
	if ok && i < 0 {
		f.failWith(f.other(f.wordMeant(s, words)), "is %s; %s is wanted", quote(s), say.Or(words))
	}
	return i, ok && i >= 0
}

var yes = ruled(says("true or false"), field.yes)

func (f field) yes() (bool, bool) {
	switch s, ok := f.scalar(); {
	case !ok:
	case s == "true" || s == "false":
		return s == "true", true
	case slices.Contains([]string{"no", "off", "n", "false", "none"}, strings.ToLower(s)):
		f.failWith(f.keyed("false"), "%s is a word here, not a no", quote(s))
	default:
		f.fail("is %s; true or false is wanted", quote(s))
	}
	return false, false
}

// day is the rule of a calendar day, clock that of a time of day.
var (
	day   = ruled(says("a day from 2000 to 2100, as year-month-day"), field.day)
	clock = ruled(says("hours and minutes, 0:00 to 23:59"), field.clock)
)

func (f field) day() (t time.Time, ok bool) {
	s, ok := f.scalar()
	t, err := time.Parse(time.DateOnly, s)
	switch {
	case !ok:
	case err != nil:
		f.failWith(f.other(dayMeant(s, f.spec.Units)), "is %s; a day of the calendar is wanted, as year-month-day", quote(s))
	case t.Year() < 2000 || t.Year() > 2100:
		f.fail("is %s; a year from 2000 to 2100 is wanted", quote(s))
	default:
		return t, true
	}
	return t, false
}

func (f field) clock() (time.Duration, bool) {
	s, ok := f.scalar()
	if ok && !clockTime.MatchString(s) {
		f.failWith(f.other(clockMeant(s)), "is %s; hours and minutes from 0:00 to 23:59 are wanted", quote(s))
		ok = false
	}
	t, _ := time.Parse("15:04", s)
	return time.Duration(t.Hour())*time.Hour + time.Duration(t.Minute())*time.Minute, ok
}

var price = number(0, dearest)

// known is the rule of a name that a catalog knows, however it is spelt.
func known[T any](takes, sort string, find func(string) (T, bool), names func() []string) rule {
	return ruled(says(takes), func(f field) (T, bool) { return found(f, sort, find, names, "") })
}

// found reads the name of a thing of some sort. Own is how the spec describes one of its own, where it can.
func found[T any](f field, sort string, find func(string) (T, bool), names func() []string, own string) (v T, ok bool) {
	name, ok := f.text(longestText)
	if !ok {
		return v, false
	}
	if v, ok = find(name); !ok {
		f.unknownName(sort, name, names(), own)
	}
	return v, ok
}

// several is the rule of one thing or a list of them, at least one.
func several[T any](takes, sort string, read func(f field) (T, bool)) rule {
	return ruled(says(takes), func(f field) (list []T, ok bool) {
		items := f.texts()
		for _, item := range items {
			if v, ok := read(item); ok {
				list = append(list, v)
			}
		}
		if len(items) == 0 && len(f.node.Content) == 0 {
			f.fail("names no %s", sort)
		}
		return list, true
	})
}

var (
	bar  = known("a bar of the catalog: "+strings.Join(barNames(), ", "), "bar", catalog.FindBar, barNames)
	cord = known("a cord of the catalog: "+strings.Join(cordNames(), ", "), "cord", catalog.FindCord, cordNames)
)

// bounds are the least and the most that the reader takes of one quantity.
type bounds[T ~float64] struct {
	kind      *kind[T]
	low, high T
}

func (b bounds[T]) rule() rule {
	return ruled(func(units measure.System) string { return measure.Name(b.low) + ", " + b.in(units) }, b.of)
}

func (b bounds[T]) of(f field) (T, bool) {
	s, ok := f.scalar()
	if !ok {
		return 0, false
	}
	if len(s) > longestText {
		f.fail("is longer than %d characters", longestText)
		return 0, false
	}
	v, err := measure.Parse[T](s)
	if err != nil {
		text, _, _ := strings.Cut(err.Error(), ", as in ") // the example of the key itself serves better
		f.failWith(f.other(b.meant(s)), "%s", text)
		return 0, false
	}
	if !b.hold(v) {
		f.fail("is %s; %s is wanted", quote(s), b.in(f.spec.Units))
		return 0, false
	}
	return v, true
}

// slack is how far beyond a limit a quantity may lie, as a share of it: 12 × 25.4 is not 304.8 in binary.
const slack = 1e-9

func (b bounds[T]) hold(v T) bool {
	return v >= b.low-slack*measure.Abs(b.low) && v <= b.high+slack*measure.Abs(b.high)
}

func (b bounds[T]) in(s measure.System) string {
	return b.kind.print(s, b.low) + " to " + b.kind.print(s, b.high)
}

const (
	inch   = measure.Inch
	foot   = measure.Foot
	degree = measure.Degree
)

// kind is a sort of quantity: how it is printed in a spec, and the unit of that size in which it is written in full where that is not exact.
type kind[T ~float64] struct {
	print func(measure.System, T) string
	unit  string
	size  T
}

// The sorts of quantity.
var (
	lengths      = &kind[measure.Length]{measure.System.Written, "mm", 1}
	masses       = &kind[measure.Mass]{measure.System.Mass, "kg", 1}
	lineMasses   = &kind[measure.LineMass]{measure.System.LineMass, "kg/m", 1}
	pressures    = &kind[measure.Pressure]{measure.System.Pressure, "MPa", measure.MPa}
	temperatures = &kind[measure.Temperature]{measure.System.Temperature, "C", 1}
	speeds       = &kind[measure.Speed]{measure.System.Speed, "m/s", 1}
	angles       = inOne[measure.Angle]("deg", degree)
	currents     = inOne[measure.Current]("A", 1)
	voltages     = inOne[measure.Voltage]("V", 1)
	powers       = inOne[measure.Power]("W", 1)
	areas        = inOne[measure.Area]("mm2", 1)
	shares       = inOne[measure.Share]("%", 0.01)

	sorts = []interface {
		typed(value any, units measure.System) (string, bool)
	}{lengths, masses, lineMasses, pressures, temperatures, speeds, angles, currents, voltages, powers, areas, shares}
)

// inOne is a sort of quantity that has one unit in both systems.
func inOne[T ~float64](unit string, size T) *kind[T] {
	return &kind[T]{func(_ measure.System, v T) string { return round(float64(v/size)) + " " + unit }, unit, size}
}

// round prints a number of the spec's own units with no more digits than it has.
func round(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) }

// sameness is how near to a value what is written must come, as a share of it: what multiplying leaves in the last bits is no difference.
const sameness = 1e-12

// typed prints a value of the sort as one types it, so that it is read back the same: as it is printed, or else in full.
func (k *kind[T]) typed(value any, units measure.System) (string, bool) {
	v, ok := value.(T)
	if !ok {
		return "", false
	}
	text := k.print(units, v)
	if back, err := measure.Parse[T](text); err != nil || measure.Abs(back-v) > sameness*measure.Abs(v) {
		text = strconv.FormatFloat(float64(v/k.size), 'f', -1, 64) + " " + k.unit
	}
	return text, true
}
