package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
)

// powering writes the leaf of the power crew: in front what is plugged into what, behind the order of the work, the tests and what to do when it trips.
type powering struct {
	*binder
	u measure.System
}

// powerLeaf makes the leaf of a tunnel that has lights.
func (b *binder) powerLeaf() []folio {
	p := powering{b, b.spec.Units}
	diagram := draw.NewCircuits(b.plan)
	if diagram.Empty() {
		return nil
	}
	front := []block.Block{{Name: "start", Body: block.Blanks{{Word: "Start when"}, {Word: p.startAfter()}}}}
	if len(b.plan.Power.Feeders) == 0 {
		front = append(front, p.missing())
	} else {
		front = append(front, p.key())
	}
	front = append(front, block.Block{Name: "circuits", Gap: 1.5, Body: diagram, Facts: p.facts()})
	_, room := b.newSide(false)
	if left := room.H - block.Height(front, room.W); left >= planLeast && len(b.plan.Power.Feeders) > 0 {
		front = append(front, p.cordPlan(left)...)
	}
	title, back := "Power: what plugs into what", "Power: order, tests, trips"
	f := folio{front: side{title: title, blocks: front}}
	if len(b.plan.Power.Feeders) > 0 {
		f.back = side{title: back, blocks: p.back()}
	}
	return []folio{f}
}

// planLeast is the room that is left over on the front of a short tunnel in which a plan of the cords is worth drawing.
const planLeast paper.Length = 90

// cordPlan shows where the cords of a short tunnel lie, where all of it has room.
func (p powering) cordPlan(left paper.Length) []block.Block {
	const head = 20 // heading and words
	fit := func(box paper.Rect) *draw.CordPlan { return draw.NewCordPlan(p.plan, draw.Scales(p.u), box) }
	if len(fit(paper.Rect{W: p.bodyWidth(), H: left - head}).Sections) != 1 {
		return nil
	}
	return []block.Block{block.Heading("Where the cords lie"), {Name: "words of the plan", Keep: true, Body: block.Words{Lettering: paper.Floor, Text: cordsDrawnApart}},
		{Name: "plan of the cords", Gap: 1, Body: block.Picture{Least: left - head, Paint: func(page *paper.Page, box paper.Rect) []string {
			c := fit(box)
			return c.Draw(place.NewBoard(page, box), box, c.Sections[0])
		}}}}
}

// startAfter says whose work has to be signed before.
func (p powering) startAfter() string {
	return fmt.Sprintf("has signed leaf %d: raise", leafNumber("raise"))
}

// missing says which figures the spec lacks before anything can be fed.
func (p powering) missing() block.Block {
	var lack []string
	if len(p.spec.Power.Circuits) == 0 {
		lack = append(lack, "power.circuits: volts, breaker, "+device(p.volts())+", other load")
	}
	if len(p.spec.Site.Outlets) == 0 {
		lack = append(lack, "site.outlets: place, circuit, where each is reset, what else it feeds")
	}
	if len(lack) == 0 {
		lack = append(lack, fmt.Sprintf("an outlet that suits these strings: see leaf %d", leafNumber("board")))
	}
	return block.Box("still missing", "Plug nothing in from this leaf. The spec still lacks: "+strings.Join(lack, "; ")+". Fill it in and print again.")
}

// key says how the diagram is read.
func (p powering) key() block.Block {
	text := fmt.Sprintf("Bring: leaf %d. Map: leaf %d. Fill in blanks first. Tick each plug.", leafNumber("stock"), leafNumber("day"))
	if kinds := p.cordKinds(); len(kinds) == 1 {
		text += " Cords: " + kinds[0] + "."
	}
	text += " L3: left foot of arch 3; crown 3: its top. Right: taken of allowed; 2/4: strings."
	return block.Block{Name: "key", Gap: 1, Body: block.Columns{Gap: 4, Cols: []block.Column{
		{Width: 74, Blocks: []block.Block{{Body: block.Picture{Least: 17.3, Paint: draw.CircuitKey}}}},
		{Share: 1, Blocks: []block.Block{{Body: block.Words{Lettering: paper.Floor, Text: text}}}}}}}
}

// cordKinds are the kinds of cord, as printed.
func (p powering) cordKinds() (list []string) {
	seen := map[string]bool{}
	for _, c := range p.plan.Power.Cords {
		if !seen[c.Kind] {
			seen[c.Kind] = true
			list = append(list, strings.ReplaceAll(c.Kind, "mm2", "mm²"))
		}
	}
	return list
}

// facts are the diagram's figures.
func (p powering) facts() (list []block.Fact) {
	add := func(what, value string) { list = append(list, block.Fact{What: what, Value: value}) }
	limit := func(name string, l power.Limit) { add("limit at the plug of "+name, draw.LimitWords(l)) }
	for _, c := range p.plan.Power.Cords {
		add("length of cord "+c.Name, draw.StockWords([]measure.Length{c.Length}, p.u))
		limit(c.Name, c.Limit)
	}
	for _, c := range p.plan.Power.Chains {
		limit("run "+c.Name, c.Limit)
	}
	for _, c := range p.plan.Power.Circuits {
		add("breaker of circuit "+c.Name, measure.Amps(c.Spec.Breaker))
	}
	for _, o := range p.spec.Site.Outlets {
		for _, l := range p.plan.Power.Limits(o) {
			if l.Kind == power.BreakerAmps || l.Kind == power.TimerAmps {
				add(fmt.Sprintf("limit %d at outlet %s", l.Kind, o.Name), measure.Amps(measure.Current(l.Of)))
			}
		}
	}
	return list
}

// volts is the volts of the first circuit in use: the world whose words are used.
func (b *binder) volts() measure.Voltage {
	for _, d := range b.plan.Power.Feeders {
		return d.Volts
	}
	return measure.By(b.spec.Units, measure.Voltage(120), 230)
}

// device is what protects people at an outlet, by the name of its world.
func device(v measure.Voltage) string {
	if v >= 200 {
		return "RCD"
	}
	return "GFCI"
}

// withArticle says a GFCI, an RCD.
func withArticle(device string) string {
	if device == "RCD" {
		return "an " + device
	}
	return "a " + device
}
