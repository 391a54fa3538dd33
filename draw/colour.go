package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/layout/catalog"
)

// glows are the hues of lights as ink shows them on white paper. Our own choice of inks: far enough apart that no two are taken for each other, red and
// green apart in lightness too.
var glows = map[catalog.Hue]paper.Colour{
	catalog.WarmWhite: {R: 255, G: 208, B: 96}, catalog.CoolWhite: {R: 205, G: 232, B: 255}, catalog.White: {R: 255, G: 244, B: 214},
	catalog.Red: {R: 200, G: 16, B: 30}, catalog.Green: {R: 0, G: 158, B: 90}, catalog.Blue: {R: 0, G: 92, B: 185},
	catalog.Amber: {R: 255, G: 160, B: 0}, catalog.Orange: {R: 240, G: 120, B: 0}, catalog.Yellow: {R: 255, G: 225, B: 0},
	catalog.Pink: {R: 255, G: 130, B: 170}, catalog.Purple: {R: 120, G: 50, B: 150}, catalog.Turquoise: {R: 64, G: 200, B: 200},
}

// glow returns the inks of a string's bulbs in turn, by its label's colour.
func glow(label string) []paper.Colour {
	var inks []paper.Colour
	for _, hue := range catalog.Hues(label) {
		inks = append(inks, glows[hue])
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
