package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// hazard is what can hurt someone in one part of the work, in a line.
type hazard struct{ what, words string }

// aloud is one part of the work: its dangers are read aloud by its lead on its day, before it begins.
type aloud struct {
	part, reader string
	list         []hazard
}

// readAloud is the board's back: whom to ring, then the dangers in the order of the work.
func (b *binder) readAloud() []block.Block {
	list := []block.Block{b.phones()}
	for _, part := range b.hazards() {
		if len(part.list) == 0 {
			continue
		}
		list = append(list, block.Block{Name: part.part, Gap: 4, Keep: true, Body: partHead{part.part, "reader " + part.reader}})
		for _, h := range part.list {
			list = append(list, block.Block{Name: h.what, Gap: 1, Body: block.Words{Lettering: paper.Floor, Figures: paper.Strong.Sized(11), Text: block.Figure(say.Capital(h.what)+".") + " " + h.words}})
		}
	}
	return list
}

// readOn are blanks for who reads on the days on which any of some works is done, a day's own open where none is known; of more than two days for the first and for those after.
func (b *binder) readOn(works ...crew.Work) string {
	s := b.plan.Crew.Schedule
	var days []string
	for k, d := range s.Days {
		if !slices.ContainsFunc(s.Jobs, func(j crew.Job) bool {
			return slices.Contains(works, j.Work) && slices.ContainsFunc(j.Stints, func(st crew.Stint) bool { return st.Day == k })
		}) {
			continue
		}
		on := "________"
		if !d.Date.IsZero() {
			on = d.Date.Format("Mon 2 Jan")
		}
		days = append(days, reads+" "+on)
	}
	if last := len(days) - 1; last > 1 {
		days = []string{days[0], strings.Replace(days[last], reads, reads+" daily to", 1)}
	}
	return cmp.Or(strings.Join(days, ", "), reads+" ________")
}

// reads is a blank for who reads.
const reads = "____________"

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
	var open block.Blanks
	if drives(b.plan) && !crew.LikelyNEC(b.spec) {
		open = append(open, block.Blank{Word: "Locating service, phone"})
	}
	if site.Address == "" {
		open = append(open, block.Blank{Word: "This place is", Share: 2})
	}
	lead := "Read a day’s parts"
	if placed(site, spec.FirstAid) {
		lead = fmt.Sprintf("First-aid box: map, leaf %d. ", leafNumber("day")) + lead
	} else {
		open = append(open, block.Blank{Word: "First-aid box is at"})
	}
	var who block.Blanks // who decides if it is open, and the switches of the nights, are on their leaf
	if len(b.plan.Strings) > 0 {
		who = block.Blanks{{Word: "Power-off person while building"}}
		if !placed(site, spec.PowerOff) { // else it is on every foot
			who = append(who, block.Blank{Word: "switch at"})
		}
	}
	var lines []block.Block
	for _, line := range []block.Blanks{open, who} {
		if len(line) > 0 {
			lines = append(lines, block.Block{Body: line})
		}
	}
	lines = append(lines, block.Block{Gap: 1, Body: remarkWords(lead + " to all before its work begins. Anyone may call stop. Local codes, licensed people, the owner and the emergency services overrule every leaf.")})
	return block.Block{Name: "phones", Body: block.Framed{Blocks: lines}}
}

// placed reports whether the spec says where something is.
func placed(site spec.Site, what string) bool {
	return slices.ContainsFunc(site.Places, func(p spec.SitePlace) bool { return p.For == what })
}

// hazards are the dangers of each part of the work that this tunnel has, each with what to do.
func (b *binder) hazards() (list []aloud) {
	site, joints := b.spec.Site, b.spec.Arch.Joints
	driven := drives(b.plan)
	part := func(name, reader string) { list = append(list, aloud{part: name, reader: reader}) }
	add := func(have bool, what, words string) {
		if last := &list[len(list)-1]; have {
			last.list = append(last.list, hazard{what, words})
		}
	}
	stakes, arches, strings := len(b.plan.Stakes) > 0, len(b.plan.Kinds) > 0, len(b.plan.Strings) > 0
	cuts := device(b.plan)
	protection := map[string]string{"RCD": "an RCD of 30 mA or less", "GFCI": "GFCI protection"}[cuts]
	part("Before anything stands", b.readOn(crew.MarkGround, crew.TryArch, crew.TryStake, crew.Drive, crew.RaiseFirst, crew.RaiseOthers))
	add(driven, "Buried lines", "A stake through gas or power can kill: none before every company has marked or answered.")
	for _, l := range site.Buried {
		add(true, l.Name, fmt.Sprintf("Lies under here: no stake, no spade in its band on the map, leaf %d.", leafNumber("day")))
	}
	add(len(site.Overhead) == 0, "Overhead wires", "None on the plan: look up, keep pipe and ladder "+b.spec.Units.Room(practice.KeepOverhead(b.spec.Units))+" off.")
	for i, l := range site.Overhead {
		add(true, l.Name, "Overhead. Electricity jumps to pipe or ladder: none within "+b.spec.Units.Room(l.Keep)+ownersYes(b.plan, i)+". One person does nothing but watch it.")
	}
	based := slices.ContainsFunc(b.plan.Stakes, func(s ground.Stake) bool { return s.Base })
	part(map[[2]bool]string{{true, true}: "Stakes, feet", {true, false}: "Stakes", {false, true}: "Feet"}[[2]bool{driven, based}], b.readOn(crew.TryStake, crew.Drive))
	add(driven, "Hammer", "Crushed fingers, flying steel: eye protection on, others two paces off, nobody holds the stake.")
	add(based, "Weights", "No arch goes on a foot before all its bags lie.")
	add(stakes, "Bare steel", "A spike for whoever falls: cap or pipe on it, always.")
	add(driven && site.Soil == spec.Frozen, "Frozen ground", "Stakes glance off, and go slack in the thaw: look at each again after it.")
	tight := ""
	if finding.Has(b.plan.Findings, "bends-too-tight") {
		tight = " Near its strength: stored indoors, never heated."
	}
	part("Cutting and raising", b.readOn(crew.TryArch, crew.MakeLegs, crew.CutRidges, crew.WrapRidges, crew.RaiseFirst, crew.RaiseOthers, crew.HoldRidge, crew.HangLights, crew.TryWay))
	add(arches, "Saw", "Eye protection on, pipe clamped, hands a forearm off.")
	add(arches, "Bent pipe", "A spring: no face near, eye protection on."+tight)
	add(arches, "A lone arch", "Falls along the walk: one person does nothing but hold it.")
	add(cemented(b.plan) > 0, "Primer and cement", "They burn, and the vapour harms: open air, gloves, no flame, lids on.")
	add(arches && joints == spec.Pinned, "Screw points", "They tear hands and wires: file each flush on the inside.")
	add(arches, "Ladder", "A stepladder only: never against pipe, never after dark.")
	part("Lights and power", b.readOn(crew.TryOutlets, crew.TryStrings, crew.WrapLegs, crew.WrapRidges, crew.HangLights, crew.Lay, crew.HangUp, crew.PlugIn))
	add(strings, "Water and electricity", "Only outlets with "+protection+"; no plug on the ground.")
	for _, c := range b.plan.Circuits {
		add(strings && c.Lights > 0 && !c.Spec.GFCI, "Circuit "+c.Name, "No such protection is known: ask a licensed electrician before plugging in.")
	}
	add(strings, "Warm plug", "The start of a fire: press TEST on the "+cuts+", unplug, tell the organiser.")
	part(fmt.Sprintf("While people walk through (rules: leaf %d)", leafNumber("nights")), reads+" every evening")
	add(arches, "Wind, thunder, ice", "Everyone out: pipe gives way, lightning strikes. Hang no cloth, no sign on arches.")
	add(arches, "Crowd", "A fall in a crush piles people up: count at each way in.")
	mind := ""
	if heldBy(b.plan).guys {
		mind = "mind guys, "
	}
	add(arches, "Tripping", "Nobody looks down here: "+mind+"clear cords, mud, ice.")
	add(arches && strings, "Fire", "Pipe and wire burn: no flame near.")
	part("Taking down, laying flat", reads+" ________")
	add(arches, "All again", returning(stakes, strings, len(site.Overhead) > 0))
	return list
}

// cemented is for how many minutes cement sets; 0 where nothing is cemented.
func cemented(p *layout.Plan) (sets int) {
	for _, t := range p.Crew.Tasks {
		sets = max(sets, t.Sets)
	}
	return sets
}

// nearWire is the finding of a wire that an upright pipe may come too near to.
const nearWire = "near-overhead-line"

// ownersYes is what the i-th wire forbids work beside it without, where that cannot keep off.
func ownersYes(p *layout.Plan, i int) string {
	if slices.ContainsFunc(p.Findings, func(f finding.Finding) bool {
		return f.Code == nearWire && f.Key == fmt.Sprintf("site.overhead[%d]", i)
	}) {
		return " without its owner’s written yes"
	}
	return ""
}

// returning is what hurts once more as arches come off, said in full where they do.
func returning(stakes, strings, wires bool) string {
	again := "Pipe springs, brittle by now, arches fall"
	if stakes {
		again += ", steel is bare"
	}
	if strings {
		again += ", plugs are live"
	}
	if wires {
		again += ", a wire hangs overhead"
	}
	return fmt.Sprintf("%s: read the box, leaf %d.", again, leafNumber("takedown"))
}
