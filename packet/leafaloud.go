package packet

import (
	"time"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// hazard is what can hurt someone in one part of the work, in a line.
type hazard struct{ what, words string }

// aloud is one part of the work: its dangers are read aloud by its lead on its day, before it begins.
type aloud struct {
	part string
	on   time.Time
	list []hazard
}

// readAloud is the board's back: whom to ring, then the dangers in the order of the work.
func (b *binder) readAloud() []block.Block {
	list := []block.Block{b.phones()}
	for _, part := range b.hazards() {
		if len(part.list) == 0 {
			continue
		}
		when := "________"
		if !part.on.IsZero() {
			when = part.on.Format("Mon 2 Jan")
		}
		list = append(list, block.Block{Name: part.part, Gap: 4, Keep: true, Body: partHead{part.part, "read by ______________ " + when}})
		for _, h := range part.list {
			list = append(list, block.Block{Name: h.what, Gap: 1, Body: block.Words{Lettering: paper.Floor, Figures: paper.Strong.Sized(11), Text: block.Figure(say.Capital(h.what)+".") + " " + h.words}})
		}
	}
	return append(list, block.Block{Name: "whose word counts", Gap: 3, Body: block.Framed{Blocks: []block.Block{{Body: block.Words{Lettering: paper.Floor,
		Text: "Anyone may call stop. Local codes, licensed people, the owner and the emergency services overrule every leaf."}}}}})
}

// partHead is a heading with who reads its part aloud.
type partHead struct{ part, reader string }

// Height implements block.Body.
func (partHead) Height(paper.Length) paper.Length { return paper.Strong.Leading() + 1 }

// Draw implements block.Body.
func (h partHead) Draw(page *paper.Page, box paper.Rect) []string {
	base := box.Y + paper.Strong.Ascent()
	page.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, h.part, paper.Strong.Sized(13))
	page.Text(paper.Point{X: box.Right(), Y: base}, paper.AtRight, h.reader, paper.Floor)
	page.Line(paper.Point{X: box.X, Y: base + 1.4}, paper.Point{X: box.Right(), Y: base + 1.4}, paper.Thin)
	return nil
}

// phones is the box that is wanted first when something has happened. What the foot of every side tells is not repeated: only what the spec leaves open.
func (b *binder) phones() block.Block {
	var lines []block.Block
	line := func(blanks ...block.Blank) {
		lines = append(lines, block.Block{Body: block.Blanks(blanks)})
	}
	site := b.spec.Site
	var open []block.Blank
	if site.Address == "" {
		open = append(open, block.Blank{Word: "This place is", Share: 2})
	}
	if site.Emergency == "" {
		open = append(open, block.Blank{Word: "Emergency number"})
	}
	if len(open) > 0 {
		line(open...)
	}
	line(block.Blank{Word: "In charge"}, block.Blank{Word: "Phone"})
	line(block.Blank{Word: "Switches the power off"}, block.Blank{Word: "Decides to close"})
	line(block.Blank{Word: "First-aid box is at"}, block.Blank{Word: "Locating ticket"})
	return block.Block{Name: "phones", Body: block.Framed{Blocks: lines}}
}

// hazards are the dangers of each part of the work that this tunnel has.
func (b *binder) hazards() []aloud {
	d := b.spec.Dates
	build := d.Build
	if build.IsZero() {
		build = b.spec.Crew.Date
	}
	return []aloud{
		{"Before any stake", d.Mark, b.groundHazards()},
		{"Stakes", build, b.stakeHazards()},
		{"Cutting and raising", build, b.archHazards()},
		{"Lights and power", build, b.lightHazards()},
		{"While people walk through", d.Open, b.openHazards()},
		{"Taking down", d.Down, b.downHazards()},
	}
}

func (b *binder) groundHazards() []hazard {
	call := "the locating service"
	if crew.LikelyNEC(b.spec) {
		call = "811"
	}
	list := []hazard{{"Buried lines", "A stake through gas or power can kill: none before " + call + " has answered."}}
	for _, l := range b.spec.Site.Buried {
		list = append(list, hazard{l.Name, "Lies under here: its owner marks it."})
	}
	if len(b.spec.Site.Overhead) == 0 {
		return append(list, hazard{"Overhead wires", "None is on the plan: look up all the same."})
	}
	for _, l := range b.spec.Site.Overhead {
		list = append(list, hazard{l.Name, "Hangs overhead. Electricity jumps to a pipe or ladder: one person only watches."})
	}
	return list
}

func (b *binder) stakeHazards() []hazard {
	if len(b.plan.Stakes) == 0 {
		return nil
	}
	list := []hazard{{"Hammer", "Crushed fingers, splinters of steel: stand two paces off."}, {"Bare stakes", "A spike for whoever falls. A cap comes off only as the pipe goes on."}}
	if b.spec.Site.Soil == spec.Frozen {
		list = append(list, hazard{"Frozen ground", "Stakes glance off, and go slack in the thaw: look at each again after it."})
	}
	return list
}

func (b *binder) archHazards() []hazard {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	list := []hazard{
		{"Saw", "Goggles on, pipe clamped, hands a forearm off."},
		{"Bent pipe", "A spring: faces out of its plane, goggles on."},
		{"A lone arch", "Goes over lengthwise. Whoever holds it does nothing else."},
	}
	switch b.spec.Arch.Joints {
	case spec.Glued:
		list = append(list, hazard{"Primer and cement", "They burn, and the vapour harms: open air, gloves, no flame, lids on."})
	case spec.Pinned:
		list = append(list, hazard{"Screw points", "They tear hands and wires: file each flush on the inside."})
	}
	return append(list, hazard{"Ladder", "A stepladder only: never against pipe, never after dark."})
}

func (b *binder) lightHazards() []hazard {
	if len(b.plan.Strings) == 0 {
		return nil
	}
	device := "an RCD of 30 mA or less"
	if crew.LikelyNEC(b.spec) {
		device = "GFCI protection"
	}
	list := []hazard{{"Water and electricity", "Only outlets with " + device + "; no plug on the ground."}}
	for _, c := range b.plan.Circuits {
		if c.Lights > 0 && !c.Spec.GFCI {
			list = append(list, hazard{"Circuit " + c.Name, "No such protection is known: ask a licensed electrician before plugging in."})
		}
	}
	return append(list, hazard{"Warm plug", "The start of a fire: pull it, ask."})
}

func (b *binder) openHazards() []hazard {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	list := []hazard{
		{"Wind, ice, thunder", "The watch says when it closes. A cover or sign catches wind: never hang one."},
		{"Crowd", "A fall in a crush is a pile of people."},
		{"Tripping", "Nobody looks down here: no cord, line, mud or ice where they walk."},
	}
	if len(b.plan.Strings) > 0 {
		list = append(list, hazard{"Fire", "Pipe and wire burn: no flame near. People out first, then the power."})
	}
	return list
}

func (b *binder) downHazards() []hazard {
	var list []hazard
	if len(b.plan.Strings) > 0 {
		list = append(list, hazard{"Live wires", "Pull every plug first, and say so."})
	}
	if len(b.plan.Kinds) > 0 {
		list = append(list, hazard{"Cold pipe", "It cracks more easily after a season: goggles on."})
	}
	return list
}
