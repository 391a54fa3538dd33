package catalog

import (
	"fmt"
	"strings"

	"hoopwright/layout/measure"
)

const (
	typical      = "typical of what is sold, check the label"
	miniSource   = typical + "; about 5 W a hundred LEDs is published, the rest is common practice, no source"
	incandSource = typical + "; 0.4 W a lamp, 0.34 A at 120 V, three end to end at most and 210 W through a 3 A plug fuse are published"
)

// What most labels do not say, for thin twisted wire with small LEDs: common practice, no source.
const (
	usualWire = 0.15 * inch
	usualMass = 0.015 * measure.PoundPerFoot
)

// Most watts through a string's own plug, where its label does not say: 210 W at 120 V, 400 W at 230 V.
const (
	mostWatts120 measure.Power = 210
	mostWatts230 measure.Power = 400
)

// PlugFuse is in the plug of a 120 V string (UL 588): 3 A as published, 5 A in some of large lamps, so read the plug. At 230 V only the plugs of BS 1363
// have a fuse, of 3 or 13 A.
const PlugFuse measure.Current = 3

// colour is the last word of a string's name and what it stands for.
type colour struct{ word, means string }

var (
	warm  = colour{"warm", "warm white"}
	cool  = colour{"cool", "cool white"}
	multi = colour{"multi", "many colours"}
	plain = []colour{{"red", "red"}, {"green", "green"}, {"blue", "blue"}, {"amber", "amber"}}
)

// Strings returns the generic strings: 120 V first, then 230 V, then low voltage. All are typical; a label always wins.
func Strings() []String {
	var list []String
	for _, c := range append([]colour{warm, cool, multi}, plain...) {
		list = append(list, mini(c, 50, 3, 3.5, 40), mini(c, 70, 4, 4.8, 30), mini(c, 100, 3, 4.8, 25))
	}
	list = append(list, incandescent())
	for _, c := range []colour{warm, multi} {
		list = append(list, screwIn(c, "c7", 0.045, 4), screwIn(c, "c9", 0.06, 5))
	}
	for _, c := range []colour{warm, cool} {
		list = append(list, drop(c))
	}
	for _, c := range []colour{warm, cool, multi} {
		list = append(list, mains230(c, 50, 3), mains230(c, 100, 6))
	}
	return append(list, lowVoltage(warm))
}

// mini takes the spacing of its lamps in inches. Lead 12 in, tail 3 in.
func mini(c colour, bulbs int, spacing measure.Length, watts measure.Power, chain int) String {
	return String{
		Name:   fmt.Sprintf("mini led %d %s", bulbs, c.word),
		Length: (15 + measure.Length(bulbs-1)*spacing) * inch, Lead: 12 * inch, Tail: 3 * inch,
		Bulbs: bulbs, Watts: watts, Amps: measure.Current(watts / 120), Volts: 120,
		Mass: usualMass, Wire: usualWire, Gauge: measure.AWG(22),
		Colour: c.means, MostChain: chain, MostWatts: mostWatts120, Fuse: PlugFuse,
		Source: miniSource,
	}
}

// incandescent is the hundred-lamp string of small glass lamps, 2 1/2 in apart.
func incandescent() String {
	return String{
		Name:   "mini incandescent 100 warm",
		Length: 262.5 * inch, Lead: 12 * inch, Tail: 3 * inch,
		Bulbs: 100, Watts: 40, Amps: 0.34, Lamp: Incandescent, Volts: 120,
		Mass: 0.02 * measure.PoundPerFoot, Wire: 0.2 * inch, Gauge: measure.AWG(22),
		Colour: warm.means, MostChain: 3, MostWatts: mostWatts120, Fuse: PlugFuse,
		Source: incandSource,
	}
}

// screwIn is a string of 25 large LED lamps a foot apart.
func screwIn(c colour, lamp string, weight measure.LineMass, watts measure.Power) String {
	return String{
		Name:   fmt.Sprintf("%s led 25 %s", lamp, c.word),
		Length: 25 * measure.Foot, Lead: 6 * inch, Tail: 6 * inch,
		Bulbs: 25, Watts: watts, Amps: measure.Current(watts / 120), Volts: 120,
		Mass: weight * measure.PoundPerFoot, Wire: 0.2 * inch, Gauge: measure.AWG(20),
		Colour: c.means, MostChain: 20, MostWatts: mostWatts120, Fuse: PlugFuse,
		Source: typical + "; lamps 12 in apart; common practice, no source",
	}
}

// drop is a string with short ends hanging from it; its length is along the pipe it hangs from.
func drop(c colour) String {
	return String{
		Name:   "drop led 100 " + c.word,
		Length: 7 * measure.Foot, Lead: 12 * inch, Tail: 3 * inch,
		Bulbs: 100, Watts: 4.8, Amps: 4.8 / 120, Volts: 120,
		Mass: 0.12 * measure.PoundPerFoot, Wire: usualWire, Gauge: measure.AWG(22),
		Colour: c.means, Drop: 12 * inch, MostChain: 20, MostWatts: mostWatts120, Fuse: PlugFuse,
		Source: miniSource,
	}
}

// mains230 is a string on rubber cord that plugs end to end at 230 V, lamps 90 mm apart.
func mains230(c colour, bulbs int, watts measure.Power) String {
	return String{
		Name:   fmt.Sprintf("led %d %s 230 V", bulbs, c.word),
		Length: measure.Length(bulbs) * 100 * mm, Lead: 500 * mm, Tail: 100 * mm,
		Bulbs: bulbs, Watts: watts, Amps: measure.Current(watts / 230), Volts: 230,
		Mass: 0.04, Wire: 5 * mm, Gauge: 0.5,
		Colour: c.means, MostChain: 20, MostWatts: mostWatts230,
		Source: typical + "; common practice, no source",
	}
}

// lowVoltage hangs on a supply that feeds several end to end.
func lowVoltage(c colour) String {
	return String{
		Name:   fmt.Sprintf("led 100 %s 31 V", c.word),
		Length: 10 * measure.Metre, Lead: 100 * mm, Tail: 100 * mm,
		Bulbs: 100, Watts: 6, Amps: 6.0 / 31, Volts: 31, Supply: &Supply{Watts: 36, Sockets: 1},
		Mass: 0.022, Wire: 4 * mm, Gauge: 0.25,
		Colour: c.means, MostChain: 5, MostWatts: 36,
		Source: typical + "; common practice, no source",
	}
}

// FindString returns the string of that name, however it is spelt.
func FindString(name string) (String, bool) {
	return find(Strings(), name, func(s String) string { return s.Name })
}

// Hue is a colour that lights are sold in.
type Hue int

const (
	WarmWhite Hue = iota
	CoolWhite
	White
	Red
	Green
	Blue
	Amber
	Orange
	Yellow
	Pink
	Purple
	Turquoise
)

// hueWords are the words that labels use. A warm or a cool white is told by its first word alone.
var hueWords = map[string]Hue{
	"warm": WarmWhite, "cool": CoolWhite, "cold": CoolWhite, "white": White, "red": Red, "green": Green, "blue": Blue, "amber": Amber, "orange": Orange, "gold": Amber,
	"yellow": Yellow, "pink": Pink, "purple": Purple, "violet": Purple, "turquoise": Turquoise, "teal": Turquoise,
}

// manyHues is what a string of many colours shows, in turn.
var manyHues = []Hue{Red, Green, Blue, Amber}

// Hues reads the colour on a string's label: every hue that it names, in the order named; those of a string of many colours; white where it names none that
// is known.
func Hues(label string) []Hue {
	var hues []Hue
	for _, w := range strings.FieldsFunc(strings.ToLower(label), func(r rune) bool { return r < 'a' || r > 'z' }) {
		if w == "many" || w == "multi" || w == "multicolour" || w == "multicolor" {
			return manyHues
		}
		hue, known := hueWords[w]
		n := len(hues)
		if !known || hue == White && n > 0 && (hues[n-1] == WarmWhite || hues[n-1] == CoolWhite) {
			continue
		}
		hues = append(hues, hue)
	}
	if len(hues) == 0 {
		return []Hue{White}
	}
	return hues
}
