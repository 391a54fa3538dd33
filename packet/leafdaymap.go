package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/power"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// siteMaps are the map of the site and, where cords lie too close on it, plans of them.
type siteMaps struct {
	plan *layout.Plan
	room paper.Rect // of a side's body that is left for them
	over bool       // the run sheet goes on above them
}

const (
	mapLeast paper.Length = 80 // where less is left under the run sheet, the map has a side of its own
	mapGap   paper.Length = 3  // over what is said aloud
	mapWidth paper.Length = 52 // where the map's longer names are broken
	mapLong               = 40 // arches: a longer tunnel has its cords' plans on this leaf
)

// under is the map under what is said aloud; none where nothing stands.
func (m siteMaps) under(more string) (*draw.SitePlan, []block.Block) {
	if len(m.plan.Stakes) == 0 {
		return &draw.SitePlan{Sections: []draw.Section{{}}, Cords: true}, nil
	}
	said := m.said(more)
	room := m.room
	room.H -= said.Body.Height(room.W) + mapGap
	plan := m.fitted(room)
	if len(plan.Sections) == 1 {
		return plan, []block.Block{said, m.picture(plan, 0, plan.Height(), room.H)}
	}
	room.H -= paper.Heading.Leading() + 1
	plan = m.fitted(room)
	list := []block.Block{said}
	for i, s := range plan.Sections {
		list = append(list, block.Heading("Arches "+say.Range(s.First, s.Last)), m.picture(plan, i, room.H, room.H))
	}
	return plan, list
}

func (m siteMaps) fitted(room paper.Rect) *draw.SitePlan {
	return draw.NewSitePlan(m.plan, draw.Scales(m.plan.Spec.Units), room)
}

// picture is the i-th map.
func (m siteMaps) picture(plan *draw.SitePlan, i int, least, best paper.Length) block.Block {
	return block.Block{Name: "site map", Gap: mapGap, Facts: m.facts(plan), Body: block.Picture{Least: least, Best: best, Paint: func(page *paper.Page, box paper.Rect) []string {
		return plan.Draw(page, box, i, m.words())
	}}}
}

// cords are the plans of the cords where the map has no room for them, a long tunnel's stretches side by side.
func (m siteMaps) cords(room paper.Rect) (list []block.Block) {
	room.H -= paper.Heading.Leading() + paper.Floor.Leading() + 4
	c := draw.NewCordPlan(m.plan, draw.Scales(m.plan.Spec.Units), room)
	for _, row := range c.Rows(room) {
		list = append(list, block.Heading("Cords, arches "+say.Range(row[0].First, row[len(row)-1].Last)),
			block.Block{Name: "scale of the cords", Gap: 1, Keep: true, Body: block.Words{Lettering: paper.Floor, Text: cordsDrawnApart + " Scale " + c.Scale.Words + "."}},
			block.Block{Name: "plan of the cords", Gap: 1, Facts: []block.Fact{{What: "scale of the cord plan", Value: c.Scale.Words}}, Body: block.Picture{Least: c.Height(row), Best: room.H, Paint: func(page *paper.Page, box paper.Rect) (missing []string) {
				for k, column := range c.Columns(box, row) {
					missing = append(missing, c.Draw(place.NewBoard(page, column), column, row[k])...)
				}
				return missing
			}}})
	}
	return list
}

const cordsDrawnApart = "Cords lie on the ground, outside against the feet; here drawn apart. Dotted: overhead. Diamonds: guy stakes."

// said is what is said aloud when everyone has come, and who has heard it.
func (m siteMaps) said(more string) block.Block {
	site := m.plan.Spec.Site
	var points []string
	for _, use := range []string{spec.FirstAid, spec.PowerOff, spec.WaterOff} {
		k := slices.IndexFunc(site.Places, func(p spec.SitePlace) bool { return p.For == use })
		switch {
		case k >= 0:
			points = append(points, use+" "+site.Places[k].Name)
		case use != spec.WaterOff: // which few need
			points = append(points, use+" ____________")
		}
	}
	var ground []string
	if len(site.Buried) == 0 && drives(m.plan) {
		ground = append(ground, "Nothing goes in before utilities and owner have marked.")
	}
	hard := slices.ContainsFunc(site.Features, func(f spec.Feature) bool { return f.Hard })
	wide, close := "Hatching", "Hatched"
	if len(site.Buried) > 0 || hard {
		if len(site.Overhead) > 0 { // near a wire stakes go in, no ladder goes up
			wide, close = "Wide hatching", "Close-hatched"
		}
		ground = append(ground, close+" ground: no stake, no digging.")
	}
	if hard {
		ground = append(ground, "No wheels over cords.")
	}
	if len(site.Overhead) > 0 {
		near, keep := "", "outside the tunnel no ladder, carry pipe flat."
		for i := range site.Overhead {
			near = cmp.Or(near, ownersYes(m.plan, i))
		}
		if near != "" {
			keep = "no ladder, no upright pipe" + near + "."
		}
		ground = append(ground, wide+", near a wire: "+keep)
	}
	var facts []block.Fact
	if ways := m.plan.WaysOut(); ways.Long > 0 { // known before a stake is driven
		ground = append(ground, "To raise: "+besideWalk(ways, m.plan.Spec.Units))
		facts = []block.Fact{{What: "clear to raise", Value: m.plan.Spec.Units.Room(ways.Long)}}
	}
	text := "Say aloud and point: " + strings.Join(points, ", ") + ".\n" + strings.Join(ground, " ") + "\n" +
		"Trouble: stop, meet at __________, count heads, ring " + emergency(m.plan.Spec, "__________") + ". Heard by all, A: __________" + more
	return block.Block{Name: "said aloud", Gap: mapGap, Facts: facts, Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: block.Words{Text: text, Lettering: paper.Floor}}}}}
}

// words are the words of the map's signs.
func (m siteMaps) words() draw.SiteWords {
	u := m.plan.Spec.Units
	broken := func(text string) string { return strings.Join(paper.Floor.Wrap(text, mapWidth), "\n") }
	return draw.SiteWords{
		Outlet: func(o spec.Outlet) string { return broken(m.outlet(o)) },
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
			return broken(fmt.Sprintf("%s, %s up: stay %s from it", l.Name, u.Room(l.Height), u.Room(l.Keep)))
		},
	}
}

// outlet says which breaker an outlet is on and where it is reset, with blanks for what the spec leaves open.
func (m siteMaps) outlet(o spec.Outlet) string {
	if !slices.ContainsFunc(m.plan.Power.Feeders, func(f power.Feeder) bool { return f.Outlet == o.Name }) && len(m.plan.Power.Feeders) > 0 {
		return o.Name + " outlet:\nnot used"
	}
	breaker, reset := "____", o.ResetAt
	for _, c := range m.plan.Spec.Power.Circuits {
		if c.Name == o.Circuit && c.BreakerNo != "" {
			breaker = c.BreakerNo
		}
	}
	if reset == "" {
		reset = "________________"
	}
	return fmt.Sprintf("%s outlet:\nbreaker %s, reset: %s", o.Name, breaker, reset)
}

// facts are the figures on the map.
func (m siteMaps) facts(plan *draw.SitePlan) []block.Fact {
	list := []block.Fact{{What: "scale of the site map", Value: plan.Scale.Words}, {What: "bar of the site map", Value: plan.Bar()}}
	u, site := m.plan.Spec.Units, m.plan.Spec.Site
	for _, l := range site.Buried {
		list = append(list, block.Fact{What: "keep from " + l.Name, Value: u.Inches(l.Keep)})
	}
	for _, l := range site.Overhead {
		list = append(list, block.Fact{What: "keep from " + l.Name, Value: u.Room(l.Keep)}, block.Fact{What: "height of " + l.Name, Value: u.Room(l.Height)})
	}
	return list
}
