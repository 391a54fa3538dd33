package packet

import (
	"cmp"
	"fmt"
	"slices"
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
	on   []time.Time
	list []hazard
}

// readAloud is the board's back: whom to ring, then the dangers in the order of the work.
func (b *binder) readAloud() []block.Block {
	list := []block.Block{b.phones()}
	for _, part := range b.hazards() {
		if len(part.list) == 0 {
			continue
		}
		var days []string
		for _, d := range part.on {
			if !d.IsZero() {
				days = append(days, d.Format("Mon 2 Jan"))
			}
		}
		when := cmp.Or(say.And(days), "________")
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

// phones is the box that is wanted first when something has happened. What the foot of every side and the map tell is not repeated: only what the spec leaves open.
func (b *binder) phones() block.Block {
	site := b.spec.Site
	var open, first block.Blanks
	if site.Address == "" {
		open = append(open, block.Blank{Word: "This place is", Share: 2})
	}
	if site.Emergency == "" {
		open = append(open, block.Blank{Word: "Emergency number"})
	}
	if !slices.ContainsFunc(site.Places, func(p spec.SitePlace) bool { return p.For == spec.FirstAid }) {
		first = block.Blanks{{Word: "First-aid box is at"}}
	}
	var lines []block.Block
	for _, line := range []block.Blanks{open, {{Word: "In charge"}, {Word: "Phone"}}, {{Word: "Switches the power off"}, {Word: "Decides to close"}}, append(first, block.Blank{Word: "Locating ticket"})} {
		if len(line) > 0 {
			lines = append(lines, block.Block{Body: line})
		}
	}
	return block.Block{Name: "phones", Body: block.Framed{Blocks: lines}}
}

// hazards are the dangers of each part of the work that this tunnel has, each with what to do.
func (b *binder) hazards() (list []aloud) {
	d, site, joints := b.spec.Dates, b.spec.Site, b.spec.Arch.Joints
	build := d.Build
	if build.IsZero() {
		build = b.spec.Crew.Date
	}
	part := func(name string, on ...time.Time) { list = append(list, aloud{part: name, on: on}) }
	add := func(have bool, what, words string) {
		if last := &list[len(list)-1]; have {
			last.list = append(last.list, hazard{what, words})
		}
	}
	stakes, arches, strings := len(b.plan.Stakes) > 0, len(b.plan.Kinds) > 0, len(b.plan.Strings) > 0
	call, device := "the locating service", "an RCD of 30 mA or less"
	if crew.LikelyNEC(b.spec) {
		call, device = "811", "GFCI protection"
	}

	driven, first, second, bare := drives(b.plan), "Before any stake", "Stakes", "Bare stakes"
	if !driven {
		first, second, bare = "Before any foot", "Feet", "Bare bars"
	}
	part(first, d.Mark, build)
	add(driven, "Buried lines", "A stake through gas or power can kill: no stake before all that "+call+" told have marked or answered.")
	for _, l := range site.Buried {
		add(true, l.Name, fmt.Sprintf("Lies under here: nothing goes into its band on the map, leaf %d.", leafNumber("day")))
	}
	add(len(site.Overhead) == 0, "Overhead wires", "None is on the plan: look up all the same.")
	for _, l := range site.Overhead {
		add(true, l.Name, "Hangs overhead. Electricity jumps to a pipe or ladder: one person only watches.")
	}
	part(second, build)
	add(driven, "Hammer", "Crushed fingers, splinters of steel: stand two paces off.")
	add(stakes, bare, "A spike for whoever falls. A cap comes off only as the pipe goes on.")
	add(driven && site.Soil == spec.Frozen, "Frozen ground", "Stakes glance off, and go slack in the thaw: look at each again after it.")
	part("Cutting and raising", build)
	add(arches, "Saw", "Goggles on, pipe clamped, hands a forearm off.")
	add(arches, "Bent pipe", "A spring: faces out of its plane, goggles on.")
	add(arches, "A lone arch", "Falls along the walk. Whoever holds it does nothing else.")
	add(arches && joints == spec.Glued, "Primer and cement", "They burn, and the vapour harms: open air, gloves, no flame, lids on.")
	add(arches && joints == spec.Pinned, "Screw points", "They tear hands and wires: file each flush on the inside.")
	add(arches, "Ladder", "A stepladder only: never against pipe, never after dark.")
	part("Lights and power", build)
	add(strings, "Water and electricity", "Only outlets with "+device+"; no plug on the ground.")
	for _, c := range b.plan.Circuits {
		add(strings && c.Lights > 0 && !c.Spec.GFCI, "Circuit "+c.Name, "No such protection is known: ask a licensed electrician before plugging in.")
	}
	add(strings, "Warm plug", "The start of a fire: press TEST, unplug it, ask.")
	part("While people walk through", d.Open)
	add(arches, "Wind", b.shutWords()+" all out, every way barred. Hang no cover, no sign.")
	add(arches, "Thunder, ice", fmt.Sprintf("All out. When to open again: leaf %d.", leafNumber("nights")))
	add(arches, "Crowd", fmt.Sprintf("A fall in a crush piles people up: %s inside at most, the watcher too, counted at every way.", block.Figure(fmt.Sprint(b.plan.MostInside()))))
	add(arches, "Tripping", "Nobody looks down here: clear cord, line, mud and ice from the walk.")
	add(arches && strings, "Fire", "Pipe and wire burn: no flame near. People out first, then the power.")
	part("Taking down", d.Down)
	add(strings, "Live wires", "Pull every plug first, and say so.")
	add(arches, "Old pipe", "A season makes it crack, cold more so: goggles on.")
	return list
}
