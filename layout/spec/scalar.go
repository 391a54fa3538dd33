package spec

import (
	"hoopwright/layout/say"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"gopkg.in/yaml.v3"
)

// What the reader takes of words and plain numbers. What it takes of quantities is in limits.go.
const (
	longestName = 60   // characters of a name: it must fit a label
	longestText = 200  // characters of any other text
	mostItems   = 1000 // of one list
)

var (
	bareNumber  = regexp.MustCompile(`^-?[0-9]+(\.[0-9]+)?$`)
	wholeNumber = regexp.MustCompile(`^(0|-?[1-9][0-9]*)$`)
	clockTime   = regexp.MustCompile(`^([01]?[0-9]|2[0-3]):[0-5][0-9]$`)
)

// scalar returns a plain value as it is written, without its quotes.
func (f field) scalar() (string, bool) {
	if !f.is(yaml.ScalarNode) {
		return "", false
	}
	if f.node.Style&yaml.TaggedStyle != 0 {
		f.failWith(f.keyed(strconv.Quote(brief(strings.TrimSpace(f.node.Tag+" "+f.node.Value)))), "carries the YAML tag %s; write the value alone, or in quotes where it begins with !", quote(f.node.Tag))
		return "", false
	}
	return strings.TrimSpace(f.node.Value), true
}

// text returns one line of text of at most so many characters.
func (f field) text(longest int) (string, bool) {
	f.takes("text on one line, at most %d characters", longest)
	s, ok := f.scalar()
	switch {
	case !ok:
		return "", false
	case s == "":
		f.fail("is empty")
	case strings.ContainsFunc(s, unicode.IsControl):
		f.fail("must be one line of plain text")
	case len([]rune(s)) > longest:
		f.fail("is longer than %d characters", longest)
	default:
		f.spec.Texts = append(f.spec.Texts, Text{f.path, s})
		return s, true
	}
	return "", false
}

// nameFits reports whether a key of the spec's own can stand on a label.
func (f field) nameFits(at *yaml.Node, name string) bool {
	switch {
	case strings.ContainsFunc(name, unicode.IsControl):
		f.failAt(at, "", "a name must be one line of plain text")
	case len([]rune(name)) > longestName:
		f.failAt(at, "", "a name has at most %d characters", longestName)
	default:
		f.spec.Texts = append(f.spec.Texts, Text{f.path, name})
		return true
	}
	return false
}

// text reads one line of text.
func (m mapping) text(key string, into *string) bool { return m.line(key, into, longestText) }

// name reads a name.
func (m mapping) name(key string, into *string) bool { return m.line(key, into, longestName) }

func (m mapping) line(key string, into *string, longest int) bool {
	f, ok := m.value(key)
	if !ok {
		return false
	}
	s, ok := f.text(longest)
	if ok {
		*into = s
	}
	return ok
}

// texts returns one text or a list of them.
func (f field) texts() []field {
	if f.node.Kind == yaml.ScalarNode {
		return []field{f}
	}
	items, _ := f.list()
	return items
}

// yes reads true or false.
func (m mapping) yes(key string, into *bool) {
	f, ok := m.value(key)
	if !ok {
		return
	}
	f.takes("true or false")
	switch s, ok := f.scalar(); {
	case !ok:
	case s == "true" || s == "false":
		*into = s == "true"
	case slices.Contains([]string{"no", "off", "n", "false", "none"}, strings.ToLower(s)):
		f.failWith(key+": false", "%s is a word here, not a no", quote(s))
	default:
		f.fail("is %s; true or false is wanted", quote(s))
	}
}

// word reads one of a few words and returns which.
func (m mapping) word(key string, words ...string) (int, bool) {
	f, ok := m.value(key)
	if !ok {
		return 0, false
	}
	return f.word(words...)
}

// word reads a value as one of a few words and returns which.
func (f field) word(words ...string) (int, bool) {
	s, ok := f.scalar()
	if !ok {
		return 0, false
	}
	f.takes("%s", say.Or(words))
	i := slices.Index(words, s)
	if i < 0 {
		f.failWith(f.other(f.wordMeant(s, words)), "is %s; %s is wanted", quote(s), say.Or(words))
	}
	return i, i >= 0
}

// count reads a whole number within limits.
func (m mapping) count(key string, into *int, low, high int) bool {
	f, ok := m.value(key)
	if !ok {
		return false
	}
	var v float64
	if ok = f.figure("a whole number", "a whole number in plain digits", wholeNumber, &v, float64(low), float64(high)); ok {
		*into = int(v)
	}
	return ok
}

// number reads a plain decimal number within limits.
func (f field) number(into *float64, low, high float64) bool {
	return f.figure("a plain number", "a plain number such as 5 or 0.25", bareNumber, into, low, high)
}

// figure reads a number of a form within limits.
func (f field) figure(takes, wanted string, form *regexp.Regexp, into *float64, low, high float64) bool {
	s, ok := f.scalar()
	if !ok {
		return false
	}
	f.takes("%s, %s to %s", takes, round(low), round(high))
	v, err := strconv.ParseFloat(s, 64)
	switch {
	case !form.MatchString(s):
		f.failWith(f.other(numberMeant(s)), "is %s; %s is wanted", quote(s), wanted)
	case err != nil || v < low || v > high:
		f.fail("is %s; %s to %s is wanted", quote(s), round(low), round(high))
	default:
		*into = v
		return true
	}
	return false
}

func (m mapping) number(key string, into *float64, low, high float64) bool {
	f, ok := m.value(key)
	return ok && f.number(into, low, high)
}

// day reads a calendar day.
func (m mapping) day(key string, into *time.Time) {
	f, ok := m.value(key)
	if !ok {
		return
	}
	s, ok := f.scalar()
	if !ok {
		return
	}
	f.takes("a day from 2000 to 2100, as year-month-day")
	t, err := time.Parse(time.DateOnly, s)
	switch {
	case err != nil:
		f.failWith(f.other(dayMeant(s, f.spec.Units)), "is %s; a day of the calendar is wanted, as year-month-day", quote(s))
	case t.Year() < 2000 || t.Year() > 2100:
		f.fail("is %s; a year from 2000 to 2100 is wanted", quote(s))
	default:
		*into = t
	}
}

// clock reads a time of day.
func (m mapping) clock(key string, into *time.Duration) {
	f, ok := m.value(key)
	if !ok {
		return
	}
	s, ok := f.scalar()
	if !ok {
		return
	}
	f.takes("hours and minutes, 0:00 to 23:59")
	if !clockTime.MatchString(s) {
		f.failWith(f.other(clockMeant(s)), "is %s; hours and minutes from 0:00 to 23:59 are wanted", quote(s))
		return
	}
	hours, minutes, _ := strings.Cut(s, ":")
	h, _ := strconv.Atoi(hours)
	min, _ := strconv.Atoi(minutes)
	*into = time.Duration(h)*time.Hour + time.Duration(min)*time.Minute
}
