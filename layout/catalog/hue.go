package catalog

import "strings"

// Hue is a colour that lights are sold in.
type Hue int

// The hues.
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
