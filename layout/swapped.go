package layout

import (
	"fmt"

	"hoopwright/layout/finding"
	"hoopwright/layout/spec"
)

// Above this ratio of width to height an opening is asked about. Our own choice: a door is twice as high as wide, and a walk for three abreast not much wider than high.
const wideOpening = 1.3

// swapped asks about figures that look as if one stood in the place of the other.
func swapped(s *spec.Spec) (list []finding.Finding) {
	u, t := s.Units, s.Tunnel
	if t.OpeningWidth > wideOpening*t.OpeningHeight && s.Given("tunnel.opening") {
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "opening-wider-than-high", Key: "tunnel.opening", Text: fmt.Sprintf(
			"The opening is %s wide and only %s high. If the two are not swapped, leave them.", u.Room(t.OpeningWidth), u.Room(t.OpeningHeight))})
	}
	a := s.Arch
	if a.Height > 0 && a.Span > 0 && a.Height < t.OpeningHeight && a.Span >= t.OpeningHeight {
		list = append(list, finding.Finding{Level: finding.LookAt, Code: "span-height-swapped", Key: "arch.height", Text: fmt.Sprintf(
			"The arch is to be %s high over a span of %s, lower than the opening of %s. Span and height may stand in each other’s place.", u.Room(a.Height), u.Room(a.Span), u.Room(t.OpeningHeight))})
	}
	return list
}
