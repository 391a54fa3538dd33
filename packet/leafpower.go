package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/stock"
)

// powering writes the leaf of the power crew: in front what is plugged into what, behind the order of the work, the tests and what to do when it trips.
type powering struct {
	plan  *layout.Plan
	u     measure.System
	wide  paper.Length // of a side's body
	tasks []crew.Task
}

// powerLeaf makes the leaf of a tunnel that has lights.
func (b *binder) powerLeaf() []folio {
	p := powering{b.plan, b.spec.Units, b.bodyWidth(), tasksOf(b.plan, crew.Powering)}
	diagram := draw.NewCircuits(b.plan)
	if diagram.Empty() {
		return nil
	}
	front := []block.Block{{Name: "start", Body: block.Blanks{{Word: fmt.Sprintf("Start when raising (leaf %d) is signed by", leafNumber("raise"))}}}}
	circuits := block.Block{Name: "circuits", Gap: 1.5, Body: diagram, Facts: p.facts()}
	f := folio{front: side{title: "Power: what plugs into what"}}
	if len(b.plan.Power.Feeders) == 0 {
		f.front.blocks = append(front, p.missing(), circuits)
		return []folio{f}
	}
	front = slices.Concat(front, p.key(), []block.Block{circuits})
	_, room := b.newSide(false)
	if left := room.H - block.Height(front, room.W); left >= planLeast {
		front = append(front, p.cordPlan(left)...)
	}
	f.front.blocks, f.back = front, side{title: "Power: order, tests, trips", blocks: p.back()}
	return []folio{f}
}

// planLeast is the room that is left over on the front of a short tunnel in which a plan of the cords is worth drawing.
const planLeast paper.Length = 62

// cordPlan shows where the cords of a short tunnel lie, where all of it has room.
func (p powering) cordPlan(left paper.Length) []block.Block {
	const head = 20 // heading and words
	fit := func(box paper.Rect) *draw.CordPlan { return draw.NewCordPlan(p.plan, draw.Scales(p.u), box) }
	if len(fit(paper.Rect{W: p.wide, H: left - head}).Sections) != 1 {
		return nil
	}
	return []block.Block{block.Heading("Where the cords lie"), {Name: "words of the plan", Keep: true, Body: block.Words{Lettering: paper.Floor, Text: cordsDrawnApart}},
		{Name: "plan of the cords", Gap: 1, Body: block.Picture{Least: left - head, Paint: func(page *paper.Page, box paper.Rect) []string {
			c := fit(box)
			return c.Draw(place.NewBoard(page, box), box, c.Sections[0])
		}}}}
}

// missing says which figures the spec lacks before anything can be fed.
func (p powering) missing() block.Block {
	var lack []string
	if len(p.plan.Spec.Power.Circuits) == 0 {
		lack = append(lack, "power.circuits: volts, breaker, "+device(p.plan)+", other load")
	}
	if len(p.plan.Spec.Site.Outlets) == 0 {
		lack = append(lack, "site.outlets: place, circuit, where each is reset, what else it feeds")
	}
	if len(lack) == 0 {
		lack = append(lack, fmt.Sprintf("an outlet that suits these strings: see leaf %d", leafNumber("board")))
	}
	return block.Box("still missing", "Plug nothing in from this leaf. The spec still lacks: "+strings.Join(lack, "; ")+". Fill it in and print again.")
}

// key says how the diagram is read.
func (p powering) key() []block.Block {
	text := fmt.Sprintf("Order: overleaf. Outlet rows last. Bring: leaf %d. L3: left foot of arch 3, seen from the entrance. Far right: taken of allowed.", leafNumber("stock"))
	return []block.Block{{Name: "how the diagram is read", Gap: 1, Body: block.Words{Lettering: paper.Floor, Text: text}}, {Name: "key", Gap: 1, Body: draw.CircuitKey(len(p.plan.Power.Taps) > 0)}}
}

// facts are the diagram's figures.
func (p powering) facts() (list []block.Fact) {
	add := func(what, value string) { list = append(list, block.Fact{What: what, Value: value}) }
	limit := func(name string, l power.Limit) { add("limit at the plug of "+name, draw.LimitWords(l)) }
	for _, c := range p.plan.Power.Cords {
		add("length of cord "+c.Name, stock.Sold(c.Length, p.u))
		limit(c.Name, draw.CordLimit(p.plan, c))
	}
	for _, c := range p.plan.Power.Chains {
		limit("run "+c.Name, c.Limit)
	}
	for _, c := range p.plan.Power.Circuits {
		add("breaker of circuit "+c.Name, measure.Amps(c.Spec.Breaker))
	}
	return list
}

// device is what protects people at an outlet, by the name of the world whose volts the first circuit in use has.
func device(p *layout.Plan) string {
	volts := measure.By(p.Spec.Units, measure.Voltage(120), 230)
	if len(p.Power.Feeders) > 0 {
		volts = p.Power.Feeders[0].Volts
	}
	if volts >= 200 {
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
