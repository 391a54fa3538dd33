package draw

import (
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/catalog"
)

// glows are the colours that strings are sold in, by the words of their labels, as ink shows them on white paper. Our own choice of inks: far enough apart
// that no two are taken for each other, red and green apart in lightness too.
var glows = []struct {
	word string
	ink  paper.Colour
}{
	{"warm", paper.Colour{R: 255, G: 208, B: 96}}, {"cool", paper.Colour{R: 205, G: 232, B: 255}}, {"cold", paper.Colour{R: 205, G: 232, B: 255}},
	{"white", paper.Colour{R: 255, G: 244, B: 214}}, {"red", paper.Colour{R: 200, G: 16, B: 30}}, {"green", paper.Colour{R: 0, G: 158, B: 90}},
	{"blue", paper.Colour{R: 0, G: 92, B: 185}}, {"amber", paper.Colour{R: 255, G: 160, B: 0}}, {"orange", paper.Colour{R: 240, G: 120, B: 0}},
	{"yellow", paper.Colour{R: 255, G: 225, B: 0}}, {"pink", paper.Colour{R: 255, G: 130, B: 170}}, {"purple", paper.Colour{R: 120, G: 50, B: 150}},
	{"violet", paper.Colour{R: 120, G: 50, B: 150}}, {"turquoise", paper.Colour{R: 64, G: 200, B: 200}}, {"teal", paper.Colour{R: 0, G: 128, B: 128}},
}

// manyColours is what a string of many colours shows, in turn.
var manyColours = []paper.Colour{{R: 200, G: 16, B: 30}, {R: 0, G: 158, B: 90}, {R: 0, G: 92, B: 185}, {R: 255, G: 160, B: 0}}

// glow returns the inks of a string's bulbs in turn, by the words of its label's colour: every colour that it names, in the order named, many colours for
// a string of many, white where it names none that is known.
func glow(label string) []paper.Colour {
	words := strings.FieldsFunc(strings.ToLower(label), func(r rune) bool { return r < 'a' || r > 'z' })
	var inks []paper.Colour
	for _, w := range words {
		if w == "many" || w == "multi" || w == "multicolour" || w == "multicolor" {
			return manyColours
		}
		for _, g := range glows {
			if g.word == w {
				inks = append(inks, g.ink)
			}
		}
	}
	switch {
	case len(inks) == 0:
		return []paper.Colour{paper.White}
	case len(inks) == 2 && (words[0] == "warm" || words[0] == "cool" || words[0] == "cold") && words[1] == "white":
		return inks[:1]
	}
	return inks
}

// StringInks returns the inks of a string's bulbs in turn, by its label's colour or, where that is not told, by the words of its name.
func StringInks(s catalog.String) []paper.Colour {
	if s.Colour != "" {
		return glow(s.Colour)
	}
	return glow(s.Name)
}
