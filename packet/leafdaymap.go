package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// mapLeast is the least height of a map: a smaller one is drawn on a side of its own.
const mapLeast paper.Length = 118

// siteMaps is the map of the site, parted where the tunnel is long, and plans of the cords where they do not fit on it.
func (b *binder) siteMaps() []block.Block {
	if len(b.plan.Stakes) == 0 {
		return nil
	}
	said := b.mapSaid()
	_, body := b.newSide(true)
	const gap = 2
	body.H -= said.Body.Height(body.W) + gap
	series := draw.Scales(b.spec.Units)
	whole := draw.NewSitePlan(b.plan, series, body)
	list := []block.Block{said}
	if len(whole.Sections) == 1 {
		one := block.Block{Name: "site map", Gap: gap, Facts: b.mapFacts(whole), Body: b.oneMap(whole.Height(), body.H)}
		if small := draw.NewSitePlan(b.plan, series, paper.Rect{W: body.W, H: mapLeast}); len(small.Sections) == 1 && small.Cords == whole.Cords {
			one.Short = b.oneMap(small.Height(), body.H)
		}
		list = append(list, one)
	} else {
		list = append(list, b.mapParts(body)...)
	}
	if !whole.Cords {
		list = append(list, b.cordMaps()...)
	}
	return list
}

// oneMap is the whole site on one map, at the scale that its room allows.
func (b *binder) oneMap(least, best paper.Length) block.Body {
	return block.Picture{Least: least, Best: best, Paint: func(page *paper.Page, box paper.Rect) []string {
		return draw.NewSitePlan(b.plan, draw.Scales(b.spec.Units), box).Draw(page, box, 0, b.mapWords())
	}}
}

// mapParts are the maps of a long tunnel, a stretch a side.
func (b *binder) mapParts(room paper.Rect) (list []block.Block) {
	room.H -= paper.Heading.Leading() + 1
	plan := draw.NewSitePlan(b.plan, draw.Scales(b.spec.Units), room)
	for i, s := range plan.Sections {
		list = append(list, block.Heading("Arches "+say.Range(s.First, s.Last)), block.Block{Name: "site map", Gap: 1, Facts: b.mapFacts(plan), Body: block.Picture{Least: room.H, Paint: func(page *paper.Page, box paper.Rect) []string {
			return plan.Draw(page, box, i, b.mapWords())
		}}})
	}
	return list
}

// cordMaps are the plans of the cords of a long tunnel, its stretches side by side.
func (b *binder) cordMaps() (list []block.Block) {
	_, room := b.newSide(true)
	room.H -= paper.Heading.Leading() + paper.Floor.Leading() + 4
	c := draw.NewCordPlan(b.plan, draw.Scales(b.spec.Units), room)
	for _, row := range c.Rows(room) {
		list = append(list, block.Heading("Cords, arches "+say.Range(row[0].First, row[len(row)-1].Last)),
			block.Block{Name: "scale of the cords", Gap: 1, Keep: true, Body: block.Words{Lettering: paper.Floor, Text: cordsDrawnApart + " Scale " + c.Scale.Words + "."}},
			block.Block{Name: "plan of the cords", Gap: 1, Facts: []block.Fact{{What: "scale of the cord plan", Value: c.Scale.Words}}, Body: block.Picture{Least: room.H, Paint: func(page *paper.Page, box paper.Rect) (missing []string) {
				for k, column := range c.Columns(box, row) {
					missing = append(missing, c.Draw(place.NewBoard(page, column), column, row[k])...)
				}
				return missing
			}}})
	}
	return list
}

const cordsDrawnApart = "Cords lie on the ground, outside against the feet; here drawn apart."

// mapSaid is what is said aloud when everyone has come, and who has heard it.
func (b *binder) mapSaid() block.Block {
	at := func(use string) string {
		for _, p := range b.spec.Site.Places {
			if p.For == use {
				return p.Name
			}
		}
		return "____________"
	}
	text := "Say aloud and point: first aid is at " + at(spec.FirstAid) + ", power goes off at " + at(spec.PowerOff) + ".\n" +
		"Hatched ground: no stake, no digging. Below a wire: no ladder, no upright pipe.\n" +
		"If something happens: stop, walk to the way in, count heads. Heard by ______________"
	return block.Block{Name: "said aloud", Gap: 3, Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: block.Words{Text: text, Lettering: paper.Floor}}}}}
}

// mapWidth is where the map's longer names are broken.
const mapWidth paper.Length = 52

// mapWords are the words of the map's signs.
func (b *binder) mapWords() draw.SiteWords {
	u := b.spec.Units
	broken := func(text string) string { return strings.Join(paper.Floor.Wrap(text, mapWidth), "\n") }
	return draw.SiteWords{
		Outlet: func(o spec.Outlet) string { return broken(b.outletWords(o)) },
		Place: func(p spec.SitePlace) string {
			if p.For == "" || p.For == p.Name {
				return broken(p.Name)
			}
			return broken(strings.TrimSpace(p.For + ": " + p.Name))
		},
		Buried: func(l spec.Buried) string {
			return broken(fmt.Sprintf("%s in the ground: no stake within %s", l.Name, u.Inches(l.Keep)))
		},
		Overhead: func(l spec.Overhead) string {
			return broken(fmt.Sprintf("%s overhead: stay %s away", l.Name, u.Room(l.Keep)))
		},
	}
}

// outletWords say which breaker an outlet is on and where it is reset, with blanks for what the spec leaves open.
func (b *binder) outletWords(o spec.Outlet) string {
	breaker, reset := "___", o.ResetAt
	for _, c := range b.spec.Power.Circuits {
		if c.Name == o.Circuit && c.BreakerNo != "" {
			breaker = c.BreakerNo
		}
	}
	if reset == "" {
		reset = "____"
	}
	return fmt.Sprintf("%s outlet:\nbreaker %s, reset at %s", o.Name, breaker, reset)
}

// mapFacts are the figures on the map.
func (b *binder) mapFacts(plan *draw.SitePlan) []block.Fact {
	list := []block.Fact{{What: "scale of the site map", Value: plan.Scale.Words}, {What: "bar of the site map", Value: plan.Bar()}}
	for _, l := range b.spec.Site.Buried {
		list = append(list, block.Fact{What: "keep from " + l.Name, Value: b.spec.Units.Inches(l.Keep)})
	}
	for _, l := range b.spec.Site.Overhead {
		list = append(list, block.Fact{What: "keep from " + l.Name, Value: b.spec.Units.Room(l.Keep)})
	}
	return list
}
