package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// CureLines says what would bring a tunnel that misses its gusts to them, one change a line as it is pasted into the spec, with what it gains and costs.
func CureLines(p *layout.Plan) (lines []string) {
	u, b := p.Spec.Units, &binder{plan: p, spec: p.Spec}
	for _, c := range p.Cures() {
		lines = append(lines, fmt.Sprintf("%s   # %s: then nobody inside from %s, flat before %s; %+.0f%s", specLine(c.Change, u), c.Change.Key, b.shortGust(c.Inside), b.shortGust(c.Down), c.Price, b.currencyWords()))
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
func specLine(c weather.Change, u measure.System) string {
	value := ""
	length := u.Written
	switch v := c.Value.(type) {
	case measure.Length:
		value = length(v)
	case catalog.Bar:
		value = v.Name
	case []int:
		value = numberSet(v)
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
	case spec.Braces:
		value = fmt.Sprintf("{bays: %s, from: %s}", numberSet(v.Bays), length(v.From))
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
