package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/stock"
)

// powering writes the leaf of the power crew: in front what is plugged into what, behind the order of the work, the tests and what to do when it trips.
type powering struct {
	plan  *layout.Plan
	u     measure.System
	tasks []crew.Task
	drawn bool // how cords lie stands here: the map has no room for them
}

// powerLeaf makes the leaf of a tunnel that has lights.
func (b *binder) powerLeaf() []folio {
	p := powering{plan: b.plan, u: b.spec.Units, tasks: tasksOf(b.plan, crew.Powering)}
	p.tasks = slices.CompactFunc(p.tasks, func(a, b crew.Task) bool { return a.Action == crew.PlugRuns && b.Action == a.Action }) // all outlets are one step
	diagram := draw.NewCircuits(b.plan)
	if diagram.Empty() {
		return nil
	}
	front := []block.Block{{Name: "start", Body: block.Blanks{{Word: fmt.Sprintf("Start joining when leaf %d, caps counted, is signed by", leafNumber("raise")), Share: 1.3}, {Word: "Electrician, phone"}}}}
	circuits := block.Block{Name: "circuits", Gap: 1.5, Body: diagram, Facts: p.facts()}
	f := folio{front: side{title: "Power: what plugs into what"}}
	if len(b.plan.Power.Feeders) == 0 {
		f.front.blocks = append(front, p.missing(), circuits)
		return []folio{f}
	}
	_, maps, drawn := b.day()
	p.drawn = drawn
	front = slices.Concat(front, p.key(), []block.Block{circuits})
	f.front.blocks, f.back = front, side{title: "Power: order, tests", blocks: p.order()}
	// What is done when it trips stands beside what is plugged into what, where there is room.
	_, room := b.newSide(false)
	if more := append(front[:len(front):len(front)], p.trips()...); block.Height(more, room.W) <= room.H {
		f.front.blocks, f.front.title = more, f.front.title+", trips"
	} else {
		f.back.blocks, f.back.title = append(f.back.blocks, p.trips()...), f.back.title+", trips"
	}
	if p.drawn {
		f.back.blocks = append(f.back.blocks, b.cordPlan(maps, f)...)
	}
	return []folio{f}
}

// cordPlan is how cords lie: on a side of their own where that takes no further sheet, else in what the leaf's last side leaves free if they can be drawn there.
func (b *binder) cordPlan(maps siteMaps, f folio) []block.Block {
	_, room := b.newSide(true)
	sides, left := setting{binder: b}.folio(f).sides, room
	left.H -= block.Height(sides[len(sides)-1].blocks, room.W) + mapGap
	if len(sides)%2 == 0 && left.H >= mapLeast {
		if list := maps.cords(left); block.Height(list, room.W) <= left.H {
			return list
		}
	}
	return maps.cords(room)
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
	last := slices.IndexFunc(p.tasks, func(t crew.Task) bool { return t.Action == crew.PlugRuns })
	text := fmt.Sprintf("Bring list: leaf %d; leaves %d, %d. Left: where to join; LAST: at the outlet, step %d. L3: left foot of arch\u00a03, seen from the entrance.",
		leafNumber("stock"), leafNumber("day"), leafNumber("nights"), last+1)
	return []block.Block{{Name: "how the diagram is read", Gap: 1, Body: block.Words{Lettering: paper.Floor, Text: text}}, {Name: "key", Gap: 1, Body: draw.CircuitKey()}}
}

// facts are the diagram's figures.
func (p powering) facts() (list []block.Fact) {
	add := func(what, value string) { list = append(list, block.Fact{What: what, Value: value}) }
	for _, c := range p.plan.Power.Cords {
		add("length of cord "+c.Name, stock.Sold(c.Length, p.u))
	}
	for _, o := range p.plan.Spec.Site.Outlets {
		add("most taken at outlet "+o.Name, draw.MostTaken(p.plan.Power, o.Name))
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
