package draw

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// key sets the scale with its bar, and what the signs on the map mean.
func (d *siteSheet) key(box paper.Rect) {
	b := place.NewBoard(d.b.Page, box)
	unit, word := d.unit()
	place.GroundBar(d.b.Page, paper.Point{X: box.X, Y: box.Y + 1}, siteBar, d.Scale, unit, word)
	b.Page.Text(paper.Point{X: box.X + siteBar + 8, Y: box.Y + 5.5}, paper.AtLeft, "Scale "+d.Scale.Words, paper.Floor)
	x, y := box.X, box.Y+12.2
	for _, s := range d.keySigns() {
		w := s.wide + 1.5 + paper.Floor.Width(s.words)
		if x+w > box.Right() {
			x, y = box.X, y+5.4
		}
		s.draw(b, paper.Point{X: x + s.wide/2, Y: y})
		b.Page.Text(paper.Point{X: x + s.wide + 1.5, Y: y + 1.5}, paper.AtLeft, s.words, paper.Floor)
		x += w + 4
	}
	box.Y += siteFoot + 1
	b.Page.Paragraph(box, strings.Join(underLines(d.under, box.W), "\n"), paper.Floor)
}

// siteBar is the room of the bar of the scale.
const siteBar paper.Length = 70

// unit is what the bar of the scale counts.
func (s *SitePlan) unit() (float64, string) {
	u := s.plan.Spec.Units
	return float64(measure.By(u, measure.Foot, measure.Metre)), measure.By(u, "ft", "m")
}

// Bar is what stands at the end of the bar of the scale.
func (s *SitePlan) Bar() string {
	unit, word := s.unit()
	return place.GroundBarEnd(siteBar, s.Scale, unit, word)
}

// keySigns are the signs that this map has, each drawn about its middle.
func (d *siteSheet) keySigns() (list []keyItem) {
	line := func(pen paper.Pen) func(*place.Board, paper.Point) {
		half := paper.Length(5)
		if len(pen.Dash) > 0 {
			half = max(6.5, pen.Dash[0]+pen.Dash[1]) // of every pen a gap is seen
		}
		return func(b *place.Board, at paper.Point) {
			b.Page.Line(at.Add(paper.Point{X: -half}), at.Add(paper.Point{X: half}), pen)
		}
	}
	add := func(have bool, wide paper.Length, words string, draw func(*place.Board, paper.Point)) {
		if have {
			list = append(list, keyItem{wide, words, draw})
		}
	}
	site := d.plan.Spec.Site
	first := 0
	for i, way := range d.ways {
		if n := d.cords.cords[i].number; len(way) > 0 && (first == 0 || n < first) {
			first = n
		}
	}
	over := slices.ContainsFunc(slices.Concat(d.ways...), func(g leg) bool { return g.over })
	overhead := "cord overhead"
	if site.Cords.Cover() {
		overhead += " or under a cover"
	}
	var lines []string
	kinds := []ground.Kind{ground.OfLeg, ground.OfGuy, ground.OfBrace}
	add(true, 2, d.standsOn(kinds[0], "stake", "base"), func(b *place.Board, at paper.Point) { b.Page.Fill(paper.Circle(at, 0.9), paper.Black) })
	for i, words := range [][3]string{{"guy", "guy stake", "guy weight"}, {"brace", "brace stake", "brace weight"}} {
		if ends := d.standsOn(kinds[1+i], words[1], words[2]); ends != "" {
			add(true, 3, ends, func(b *place.Board, at paper.Point) { guySign(b, at, kinds[1+i]) })
			lines = append(lines, words[0])
		}
	}
	add(len(lines) > 0, 13, strings.Join(lines, ", "), line(paper.Hidden))
	seen := func(m ground.Mark) bool { _, ok := d.shown(m.At); return ok }
	add(slices.ContainsFunc(d.plan.Ground.Marks, seen), 4, "mark", markSign)
	add(len(site.Outlets) > 0, 5, "outlet", outletSquare)
	add(first > 0, 14, "cord, its number", func(b *place.Board, at paper.Point) {
		centredText(b, at, fmt.Sprintf("C%d", first), paper.CellSmall)
		b.LineRound(at.Add(paper.Point{X: -7}), at.Add(paper.Point{X: 7}), paper.Thick)
	})
	add(over, 13, overhead, line(overCordPen))
	add(len(site.Buried) > 0, 13, "buried", line(buriedPen))
	add(len(site.Overhead) > 0, 24, "overhead", line(overheadPen))
	hard := func(f spec.Feature) bool { return f.Hard && cropOutline(d.m.outline(f), d.room) != nil }
	add(slices.ContainsFunc(site.Features, hard), 8, "hard ground", func(b *place.Board, at paper.Point) {
		swatch := paper.Rect{X: at.X - 4, Y: at.Y - 1.8, W: 8, H: 3.6}
		b.Hatch(paper.Box(swatch), hardAngle, hardApart)
		b.Page.Stroke(paper.Box(swatch), paper.Thin)
	})
	return list
}

// standsOn names what the stakes of a kind are: driven, on a base, or either; nothing where there are none.
func (d *siteSheet) standsOn(kind ground.Kind, driven, based string) string {
	var words []string
	for _, s := range d.plan.Stakes {
		word := driven
		if s.Base {
			word = based
		}
		if s.Kind() == kind && !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	return say.Or(words)
}
