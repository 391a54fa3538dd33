package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// CureLines says what would bring a tunnel that misses its gusts to them, one change a line as it is pasted into the spec, with what it gains and costs. What was chosen to hold it comes first, for a
// spec that gives guys or braces leaves neither open.
func CureLines(p *layout.Plan) (lines []string) {
	b := &binder{skies: skies{p}, spec: p.Spec}
	cures, reached := p.Cures()
	held := func(c weather.Cure) bool { return c.Change.Key == "guys" || c.Change.Key == "braces" }
	if slices.ContainsFunc(cures, held) && p.Weather.Bracing.Chosen {
		if len(p.Spec.Guys.Arches) > 0 {
			lines = append(lines, specLine(weather.Change{Key: "guys", Value: p.Spec.Guys}, p.Spec)+"   # as chosen")
		}
		if len(p.Spec.Braces.Bays) > 0 {
			lines = append(lines, specLine(weather.Change{Key: "braces", Value: p.Spec.Braces}, p.Spec)+"   # as chosen")
		}
	}
	for _, c := range cures {
		if c.Inside.Called() == 0 {
			lines = append(lines, fmt.Sprintf("%s   # %s: not yet enough for any wind; %+.0f%s", specLine(c.Change, p.Spec), c.Change.Key, c.Price, currencyWords(b.spec)))
			continue
		}
		lines = append(lines, fmt.Sprintf("%s   # %s: then nobody inside from %s, flat before %s; %+.0f%s", specLine(c.Change, p.Spec), c.Change.Key, b.shortGust(c.Inside), b.shortGust(c.Down), c.Price, currencyWords(b.spec)))
	}
	if !reached {
		aim := p.Spec.Weather
		lines = append(lines, fmt.Sprintf("# no stakes, guys, braces or span that may be chosen bring this arch to %s inside and %s standing: take thicker pipe or shorter sticks, or aim lower", b.spec.Units.Speed(aim.Inside), b.spec.Units.Speed(aim.Stand)))
	}
	return lines
}

// shortGust prints a gust as forecast, or as measured where no forecast tells.
func (b *binder) shortGust(g weather.Gust) string {
	if g.Forecast == 0 {
		return b.spec.Units.Speed(g.Local) + " measured"
	}
	return b.spec.Units.Speed(g.Forecast)
}

// specLine writes a change as its key stands in the spec.
func specLine(c weather.Change, s *spec.Spec) string {
	value := ""
	length := s.Units.Written
	stake := func(v spec.Stake) string {
		lean := ""
		if v.Lean != 0 {
			lean = fmt.Sprintf(", lean: %.4g deg", float64(v.Lean/measure.Degree))
		}
		return fmt.Sprintf("{bar: %s, length: %s, depth: %s%s}", v.Bar.Name, length(v.Length), length(v.Depth), lean)
	}
	switch v := c.Value.(type) {
	case measure.Length:
		value = length(v)
	case spec.Stake:
		value = stake(v)
	case [2][]measure.Length:
		var legs []string
		for _, leg := range v {
			var sticks []string
			for _, s := range leg {
				sticks = append(sticks, length(s))
			}
			legs = append(legs, "["+strings.Join(sticks, ", ")+"]")
		}
		value = "[" + strings.Join(legs, ", ") + "]"
	case spec.Guys:
		if value = "none"; len(v.Arches) == 0 {
			break
		}
		ends := ""
		if s.Arch.Foot == nil {
			ends = ", stake: " + stake(v.Stake)
		}
		value = fmt.Sprintf("{arches: %s, from: %s, out: %s%s}", numberSet(v.Arches), length(v.From), length(v.Out), ends)
	case spec.Braces:
		if value = "none"; len(v.Bays) == 0 {
			break
		}
		kind := ""
		if v.Line {
			kind = ", kind: line"
		}
		value = fmt.Sprintf("{bays: %s, from: %s%s}", numberSet(v.Bays), length(v.From), kind)
	}
	return c.Key[strings.LastIndexByte(c.Key, '.')+1:] + ": " + value
}

func numberSet(list []int) string {
	var words []string
	for _, n := range list {
		words = append(words, fmt.Sprint(n))
	}
	return "[" + strings.Join(words, ", ") + "]"
}
