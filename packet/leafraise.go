package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// raising writes the leaf of the crew that raises the arches.
type raising struct {
	*binder
	draw.Raising
	stand  []arch.Arch
	groups []archGroup
}

// raiseLeaf is what the raising crew works from: in front the arch to scale with what is measured on it, behind the pictures in order. Arches of
// another shape have profiles of their own on further sheets.
func (b *binder) raiseLeaf() []folio {
	pictures, ok := draw.NewRaising(b.plan)
	if !ok {
		return nil
	}
	r := raising{b, pictures, b.standing(), archGroups(b.plan.Kinds)}
	order := []folio{{front: side{title: "Raise: the arch", toScale: true, blocks: r.front()}, back: side{title: "Raise: the order", blocks: r.back()}}}
	if more := r.otherShapes(); len(more) > 0 {
		order = append(order, folio{front: side{title: "Raise: other arches", toScale: true, blocks: more}, back: side{title: "Raise: other arches", toScale: true}})
	}
	return order
}

// standing lists the arches that have a shape.
func (b *binder) standing() []arch.Arch {
	return slices.DeleteFunc(slices.Clone(b.plan.Arches), func(a arch.Arch) bool { return a.Kind == nil })
}

// front is the first arch to scale, what is wrong where it comes out different, and what is measured and signed: the arch as large as all of that leaves room.
func (r raising) front() []block.Block {
	_, room := r.newSide(false)
	var list []block.Block
	for _, s := range draw.ProfileScales(r.spec.Units) {
		list = r.frontAt(s)
		if p := r.profile(r.groups[0]); p.Width(s) < room.W*0.66 && block.Height(list, room.W) <= room.H {
			return list
		}
		if s.Ratio >= leastRatio {
			break // what is too long goes on on the back
		}
	}
	return list
}

// leastRatio is the smallest scale at which the profile is still worth its place beside other things: 1:40.
const leastRatio = 40

func (r raising) frontAt(s paper.Scale) []block.Block {
	p := r.profile(r.groups[0])
	top := block.Columns{Gap: 5, Cols: []block.Column{
		{Width: p.Width(s), Blocks: []block.Block{r.titleOf(r.groups[0], s), {Name: "profile", Gap: 1, Body: profileBody{p, s}}}},
		{Share: 1, Blocks: append(r.people(), r.faults(p.Kind)...)}}}
	rows, facts := r.holds(r.groups[0])
	all, more := r.heldOnAll()
	told := append(r.profileFacts(p), r.faultFacts(p.Kind)...)
	told = append(told, block.Fact{What: "scale of the profile", Value: s.Words})
	list := []block.Block{{Name: "profile", Body: top, Facts: told}, holdTable(append(rows, all...), append(facts, more...), false)}
	list = append(list, r.crowns()...)
	if !r.hangs() {
		list = append(list, r.bays()...)
	}
	return list
}

// titleOf names every arch that a profile stands for.
func (r raising) titleOf(g archGroup, s paper.Scale) block.Block {
	text := say.Capital(say.Numbered("arch", g.numbers())) + " from the entrance, " + s.Words
	if drawn := r.alike(g, r.held(g[0]), 0); len(drawn) < len(g.numbers()) {
		text += "; figures of " + say.Numbered("arch", drawn)
	}
	return block.Block{Name: "title of the profile", Body: block.Words{Text: text, Lettering: paper.Strong}}
}

func (r raising) profile(g archGroup) draw.Profile {
	t := r.spec.Tunnel
	return draw.Profile{Kind: g[0], Units: r.spec.Units, OpeningWidth: t.OpeningWidth, OpeningHeight: t.OpeningHeight}
}

// profileFacts are the figures that a profile alone tells; what is measured is told with its limits in the table of holds.
func (r raising) profileFacts(p draw.Profile) []block.Fact {
	u, who := p.Units, say.Numbered("arch", p.Kind.Numbers)
	return []block.Fact{{What: "bend radius, " + who, Value: u.Inches(u.Taped(p.Kind.BendRadius))}, {What: "shoulder height, " + who, Value: u.Inches(p.Kind.ShoulderHeight)}}
}

// profileBody is a profile at its scale.
type profileBody struct {
	draw.Profile
	scale paper.Scale
}

// Height implements block.Body.
func (p profileBody) Height(paper.Length) paper.Length { return p.Profile.Height(p.scale) }

// Draw implements block.Body.
func (p profileBody) Draw(page *paper.Page, box paper.Rect) []string {
	box.H = p.Profile.Height(p.scale)
	return p.Profile.Draw(page, box, p.scale)
}

// people says who does it.
func (r raising) people() []block.Block {
	crown, ladder := "Crown: the top, then holds the ladder", "Ladder: climbs"
	if !r.ladder() {
		crown, ladder = "Crown: the top", "Ladder: helps at the top"
	}
	guard := "Guard: holds arch 1, nothing else"
	if _, ok := r.task(crew.StretchGuys, r.stand[0].Number); ok && len(r.stand) > 1 {
		guard = fmt.Sprintf("Guard: holds arch 1 till arch %d is joined", r.stand[1].Number)
	}
	text := "Foot 1, Foot 2: the legs\n" + crown + "\n" + ladder + "\n" + guard
	return []block.Block{{Name: "people", Body: block.Words{Text: "Five people, 16 or older", Lettering: paper.Strong}}, {Name: "people", Body: block.Words{Text: text}}}
}

// faults says what to look at where the arch comes out otherwise, in four lines: what is off, what that does, what to move.
func (r raising) faults(k *arch.Kind) []block.Block {
	m, ok := k.Moves()
	if !ok {
		return nil
	}
	u := r.spec.Units
	by := u.Inches(m.By)
	line := func(name, what string, move arch.Move, mend string) block.Block {
		return block.Block{Name: name, Gap: 1.6, Body: block.Words{Text: fmt.Sprintf("%s: %s → %s", what, r.effect(move), mend)}}
	}
	list := []block.Block{block.Heading("If it is off, in this order"),
		line("foot", "A foot "+by+" off the ground", arch.Move{Crown: m.By / 2}, "press it down.")}
	if k.Spec.OneStick {
		list = append(list, line("stick", by+" too much pipe", m.Long, "measure the stick."))
	} else {
		list = append(list, line("sockets", by+" too much pipe", m.Long, "drive the sockets home."))
	}
	if m.Lean != (arch.Move{}) {
		list = append(list, line("stakes", "Stake tops "+by+" out", m.Lean, "drive again, beside the hole."))
	}
	list = append(list, line("feet", "Feet "+by+" too wide", m.Wider, "one stake again, on its dot."))
	return append(list, block.Block{Name: "still off", Gap: 1.6, Body: block.Words{Lettering: paper.Strong, Text: "Still off: stop and ask. Force nothing."}})
}

// faultFacts are what the faults do.
func (r raising) faultFacts(k *arch.Kind) []block.Fact {
	m, ok := k.Moves()
	if !ok {
		return nil
	}
	by := r.spec.Units.Inches(m.By)
	return []block.Fact{{What: "a foot off the ground by " + by, Value: r.effect(arch.Move{Crown: m.By / 2})}, {What: "too much pipe by " + by, Value: r.effect(m.Long)},
		{What: "stake tops out by " + by, Value: r.effect(m.Lean)}, {What: "feet too wide by " + by, Value: r.effect(m.Wider)}, {What: "how much a fault is told for", Value: by}}
}

// effect says by how much a fault moves crown and width.
func (r raising) effect(m arch.Move) string {
	u := r.spec.Units
	part := func(what string, l measure.Length) string {
		way := "up"
		if l < 0 {
			l, way = -l, "down"
		}
		if l = u.Taped(l); l == 0 {
			return ""
		}
		return fmt.Sprintf("%s %s %s", what, u.Inches(l), way)
	}
	crown, width := part("crown", m.Crown), part("width", m.Shoulder)
	switch {
	case crown == "" && width == "":
		return "hardly shows"
	case width == "":
		return crown
	case crown == "":
		return width
	}
	return crown + ", " + width
}

// otherShapes are the profiles of arches that differ from the first by more than what is held, each beside its holds.
func (r raising) otherShapes() []block.Block {
	var list []block.Block
	for _, g := range r.groups[1:] {
		p := r.profile(g)
		rows, facts := r.holds(g)
		s := p.Scale(draw.ProfileScales(r.spec.Units), paper.Rect{W: 86, H: 82})
		list = append(list, block.Block{Name: "profile of " + say.Numbered("arch", g.numbers()), Gap: 5, Body: block.Columns{Gap: 5, Cols: []block.Column{
			{Width: p.Width(s), Blocks: []block.Block{{Name: "profile", Body: profileBody{p, s}}}},
			{Share: 1, Blocks: []block.Block{r.titleOf(g, s), holdTable(rows, facts, true), {Name: "signed", Body: block.Blanks{{Word: "Signed"}}}}}}}, Facts: r.profileFacts(p)})
	}
	return list
}
