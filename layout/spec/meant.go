package spec

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"hoopwright/layout/measure"
)

// What a value was likely meant to be, so that a message shows the writer's own figure put right and not somebody else's. Nothing here is ever taken for a value.

var (
	wordy = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅓", " 1/3", "⅔", " 2/3",
		"‘", "'", "“", `"`, "„", `"`, "«", "", "»", "")
	quotes       = "\"'“”„‘’«»"
	unitWords    = slip(`(?i)\b(amps?|amperes?|volts?|watts?|degrees?|pounds?|ounces?|percent|meters?|metres?|millimet(?:er|re)s?|centimet(?:er|re)s?|fet|feets|inchs|ins)\b\.?`)
	shortUnits   = map[string]string{"a": "A", "v": "V", "wat": "W", "deg": "deg", "pou": "lb", "oun": "oz", "per": "%", "met": "m", "mil": "mm", "cen": "cm", "fe": "ft", "in": "in"} // by how a word begins, none as another
	hedges       = slip(`(?i)^(about|approx\.?|approximately|ca\.?|circa|~|≈|=)\s*`)
	numberRun    = slip(`[0-9]+(?:\.[0-9]+)?`)
	decimalComma = slip(`^([^0-9]*[0-9]+),([0-9]{1,2}[^0-9]*)$`)
	dashRange    = regexp.MustCompile(`^([1-9][0-9]*|last)\s*[-–—]\s*([1-9][0-9]*|last)$`)
	numbersBy    = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
)

// readings are other ways to read a written quantity, the likelier first.
func readings(s string) []string {
	s, _, _ = strings.Cut(s, "//")
	s, _, _ = strings.Cut(s, " (")
	s = strings.TrimRight(strings.TrimSpace(s), ";,.")
	s = hedges().ReplaceAllString(s, "")
	plain := unitWords().ReplaceAllStringFunc(s, func(word string) string {
		for start, unit := range shortUnits {
			if strings.HasPrefix(strings.ToLower(word), start) {
				return unit
			}
		}
		return word
	})
	bare := strings.Join(strings.Fields(wordy.Replace(strings.Trim(plain, quotes))), " ")
	return []string{bare, strings.Join(strings.Fields(wordy.Replace(plain)), " "), strings.ReplaceAll(bare, ",", "."), strings.ReplaceAll(bare, ",", "")}
}

// meant returns a quantity as it was likely meant, in the words of the writer, or nothing.
func (b bounds[T]) meant(s string) string {
	for _, text := range readings(s) {
		if v, err := measure.Parse[T](text); err == nil && b.hold(v) && text != s {
			return text
		}
	}
	return ""
}

func (f field) wordMeant(s string, words []string) string {
	bare := strings.ToLower(strings.Trim(s, quotes+" ."))
	for _, w := range words {
		if strings.ToLower(w) == bare {
			return w
		}
	}
	if near := f.nearest(bare, words); near != "" {
		return near
	}
	for _, w := range words {
		if slices.Contains(strings.Fields(bare), w) {
			return w
		}
	}
	return ""
}

// numberMeant returns the number that a text likely means, or nothing: $4.35, 5 h, six.
func numberMeant(s string) string {
	if i := slices.Index(numbersBy, strings.ToLower(s)); i >= 0 {
		return fmt.Sprint(i)
	}
	s = decimalComma().ReplaceAllString(s, "$1.$2")
	if found := numberRun().FindAllString(strings.ReplaceAll(s, ",", ""), -1); len(found) == 1 {
		if n := strings.TrimLeft(found[0], "0"); n != "" && n[0] != '.' {
			return n
		}
		return found[0]
	}
	return ""
}

// dayMeant returns the day that a text likely means. Month or day first is told by the units: 11/21/2026 is American.
func dayMeant(s string, units measure.System) string {
	forms := []string{"2006/1/2", "Jan 2 2006", "January 2 2006", "2 Jan 2006", "2 January 2006"}
	forms = append(forms, measure.By(units, []string{"1/2/2006", "2/1/2006"}, []string{"2/1/2006", "1/2/2006"})...)
	plain := strings.NewReplacer(",", "", "-", "/", ".", "/").Replace(strings.Trim(s, quotes))
	for _, form := range forms {
		if t, err := time.Parse(form, plain); err == nil {
			return t.Format(time.DateOnly)
		}
	}
	return ""
}

func clockMeant(s string) string {
	bare := strings.ToUpper(strings.ReplaceAll(strings.ReplaceAll(s, " ", ""), ".", ""))
	for _, form := range []string{"3PM", "3:04PM", "15H04", "15H", "1504", "15"} {
		if t, err := time.Parse(form, bare); err == nil {
			return t.Format("15:04")
		}
	}
	return ""
}

// other shows a value as it was likely meant in the place of the key's example, where there is one.
func (f field) other(meant string) string {
	if meant == "" {
		return exampleOf(f.table, f.spec.Units)
	}
	return f.keyed(meant)
}
