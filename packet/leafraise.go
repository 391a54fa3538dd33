package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// raising writes the leaf of the crew that raises the arches.
type raising struct {
	draw.Raising
	u      measure.System
	room   paper.Rect // of the body of a front
	climbs bool       // the crowns are out of reach from the ground
	tasks  raisingTasks
	stand  []arch.Arch
	shapes []crew.Shape
	ways   layout.WaysOut
	order
}

// raiseLeaf is what the raising crew works from: in front the arch to scale with what is measured on it, behind the pictures in order. Arches of
// another shape have profiles of their own on further sheets.
func (b *binder) raiseLeaf() []folio {
	r, ok := b.raising()
	if !ok {
		return nil
	}
	front, fits := r.whole(r.front(r.bays()))
	back := r.back(nil)
	if !fits {
		front, back = r.front(nil), r.back(r.bays())
	}
	list := []folio{{front: side{title: "Raise: the arch", toScale: true, blocks: front}, back: side{title: "Raise: the order", blocks: back}}}
	other := r.otherShapes()
	if len(other) == 0 {
		list[0].back.blocks, _ = r.whole(append(back, r.whatHangs()...))
		return list
	}
	more := side{title: "Raise: other arches", toScale: true} // what is hung goes there too: there is a sheet for it
	return append(list, folio{front: side{title: more.title, toScale: true, blocks: append(other, r.whatHangs()...)}, back: more})
}

// raising is what the leaf is written from; not ok where nothing stands.
func (b *binder) raising() (r raising, ok bool) {
	pictures, ok := draw.NewRaising(b.plan)
	if !ok {
		return r, false
	}
	_, room := b.newSide(false)
	r = raising{Raising: pictures, u: b.spec.Units, room: room, climbs: b.ladder(), tasks: raisingTasksOf(b.plan), stand: standingOf(b.plan), ways: b.plan.WaysOut()}
	r.FromFar = r.ways.First(r.stand[0].Number) == spec.Right
	r.shapes = crew.Shapes(r.stand, r.u)
	r.order = r.inOrder()
	return r, true
}

// whole sets blocks no more tightly than it takes to have all of their words on one side; false and as they are where that is not to be had.
func (r raising) whole(blocks []block.Block) (set []block.Block, fits bool) {
	for t := block.Loose; t <= block.Tightest; t++ {
		if set = block.Tight(blocks, t); block.Height(set, r.room.W) <= r.room.H {
			return set, true
		}
	}
	return blocks, false
}

// standingOf lists the arches that have a shape.
func standingOf(p *layout.Plan) []arch.Arch {
	return slices.DeleteFunc(slices.Clone(p.Arches), func(a arch.Arch) bool { return a.Kind == nil })
}

// front is the first arch to scale, what is wrong where it comes out different, what is measured and signed, what more is told: the arch as large as all of that leaves room.
func (r raising) front(more []block.Block) []block.Block {
	const least = 40 // 1:40 is the smallest scale at which the profile is still worth its place beside other things
	var list []block.Block
	for _, s := range draw.ProfileScales(r.u) {
		list = r.frontAt(s, more)
		fits := r.profile(r.shapes[0]).Width(s) < r.room.W*0.66 && block.Height(list, r.room.W) <= r.room.H
		if fits || s.Ratio >= least { // what is too long goes on on the back
			break
		}
	}
	return list
}

func (r raising) frontAt(s paper.Scale, more []block.Block) []block.Block {
	first := r.shapes[0]
	p := r.profile(first)
	picture := []block.Block{r.titleOf(first, s), {Name: "profile", Gap: 1, Body: profileBody{p, s}}}
	people := r.people()
	told := append(slices.Clone(people), r.faults(p.Kind)...)
	var top block.Columns
	for under := range len(people) + 1 { // so much stands under the picture as makes it all lowest
		sides := block.Columns{Gap: 5, Cols: []block.Column{{Width: p.Width(s), Blocks: slices.Concat(picture, told[:under])}, {Share: 1, Blocks: told[under:]}}}
		if under == 0 || sides.Height(r.room.W) < top.Height(r.room.W) {
			top = sides
		}
	}
	list := []block.Block{{Name: "profile", Body: top, Facts: append(r.profileFacts(p), block.Fact{What: "scale of the profile", Value: s.Words})}, r.holdTable()}
	return slices.Concat(list, r.crowns(), more, r.joining(), []block.Block{r.signatures()})
}

// titleOf names every arch that a profile stands for.
func (r raising) titleOf(s crew.Shape, scale paper.Scale) block.Block {
	text := say.Capital(say.Numbered("arch", s.Numbers())) + " from the entrance, " + scale.Words
	return block.Block{Name: "title of the profile", Body: block.Words{Text: text, Lettering: paper.Strong}}
}

func (r raising) profile(s crew.Shape) draw.Profile {
	t := r.Plan.Spec.Tunnel
	return draw.Profile{Kind: s[0].Kind, Units: r.u, OpeningWidth: t.OpeningWidth, OpeningHeight: t.OpeningHeight, Said: s[0].Number != r.stand[0].Number}
}

// profileFacts are the figures that a profile alone tells; what is measured is told with its limits in the table of holds.
func (r raising) profileFacts(p draw.Profile) []block.Fact {
	who := say.Numbered("arch", p.Kind.Numbers)
	return []block.Fact{{What: "bend radius, " + who, Value: r.u.Inches(r.u.Taped(p.Kind.BendRadius))}, {What: "shoulder height, " + who, Value: r.u.Inches(p.Kind.ShoulderHeight)}}
}

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
	crown, ladder := "Crown: lifts, holds the ladder", "Ladder: climbs"
	if !r.climbs {
		crown, ladder = "Crown: lifts", "Ladder: helps at the top"
	}
	guard := "Guard: holds arch 1, does nothing else"
	if r.onLine() {
		guard = r.newest()
	} else if (len(r.heldTo(r.stand[0].Number)) > 0 || r.tiesBay()) && len(r.stand) > 1 {
		guard = fmt.Sprintf("Guard: holds arch 1 till arch %d joins", r.stand[1].Number)
	}
	bring := fmt.Sprintf("Copies of leaves %d, %d", leafNumber("stakes"), leafNumber("stock"))
	if len(r.Plan.Strings) > 0 {
		bring += fmt.Sprintf(", %d", leafNumber("lights"))
	}
	sheets := ""
	if len(r.shapes) > 1 && r.hangs() {
		sheets = " Steps: back, next sheet."
	}
	takes, watching := crew.Raisers(r.Plan.Spec), ""
	for _, l := range r.Plan.Spec.Site.Overhead {
		watching += "\nOne more: only watches the wire (" + l.Name + "), calls stop"
	}
	list := []block.Block{block.Paragraph(bring + "." + sheets)}
	if more := r.sideBySide(); len(more) > 0 {
		words := fmt.Sprintf("Second crew, %d more: arches by leaf %d", takes, leafNumber("day"))
		if fresh := r.Plan.Crew.Schedule.BegunApart(); len(fresh) > 0 {
			words += fmt.Sprintf("; begin %s as arch 1: Guard, %s till neighbours join", say.Numbers(fresh), r.freshTies())
		}
		list = append(list, block.Paragraph(words+"."))
	}
	return append(list, block.Paragraph(fmt.Sprintf("%d people, %d or older\nFoot 1, 2: the legs\n%s\n%s\n%s%s", takes, practice.Least, crown, ladder, guard, watching)))
}

// newest is what the guard does where a line alone joins the arches: toward the open end nothing holds the row but the arch that stands last, and that one by hand till the next is on the line.
func (r raising) newest() string {
	last, guyed := r.stand[len(r.stand)-1].Number, ""
	if slices.ContainsFunc(r.Plan.Stakes, func(s ground.Stake) bool { return s.Guy && s.Arch == last }) {
		guyed = fmt.Sprintf(", %d till tied to its stakes", last)
	}
	return "Guard: holds the newest arch till the next is knotted" + guyed
}

// raisingOf is what is raised of a plan, without its leaf.
func raisingOf(plan *layout.Plan) raising {
	return raising{Raising: draw.Raising{Plan: plan}, u: plan.Spec.Units, tasks: raisingTasksOf(plan), stand: standingOf(plan)}
}

// freshTies is how the first bay of a stretch is tied that is begun apart: as bay 1, to its own feet. What stands on the next stakes then stands in nobody’s way.
func (r raising) freshTies() string {
	if r.tiesBay() {
		return fmt.Sprintf("step %d’s ties", r.step[crew.MeasureBay])
	}
	return crossed
}

// sideBySide lists the arches that a second crew raises while the first is at others; none where one crew raises all.
func (r raising) sideBySide() (arches []int) {
	var before []crew.Stint
	for _, j := range r.Plan.Crew.Schedule.Jobs {
		if j.Work != crew.RaiseOthers {
			continue
		}
		if slices.ContainsFunc(j.Stints, func(s crew.Stint) bool {
			return slices.ContainsFunc(before, func(o crew.Stint) bool { return o.Day == s.Day && o.Begin < s.End && s.Begin < o.End })
		}) {
			arches = append(arches, say.From(j.First, j.Last)...)
		}
		before = append(before, j.Stints...)
	}
	return arches
}

// faults says what to look at where the arch is farther off than it may be: how it shows, what does it, what to do.
func (r raising) faults(k *arch.Kind) []block.Block {
	m, ok := k.Moves()
	if !ok {
		return nil
	}
	heading := "Off past Within"
	if drives(r.Plan) { // what is stood on bases is moved by nobody
		heading += fmt.Sprintf(", unless moved, leaf %d", leafNumber("stakes"))
	}
	pipe := "leg"
	if k.Spec.OneStick {
		pipe = "stick"
	}
	list := []block.Block{block.Heading(heading), block.Paragraph("Feet: arch off, caps on, call " + groundOf(r.Plan).crew + ".")}
	short := fmt.Sprintf("a %s is short: measure it, leaf %d.", pipe, leafNumber("stock"))
	if r.Plan.Spec.Found.Wrapped && len(k.Left) > 0 { // that leaf cuts none
		short = fmt.Sprintf("a %s is short of %s: ask.", pipe, block.Figure(r.u.Cut(k.Spec.Pipe.Joined(k.Left))))
	}
	for _, f := range []struct {
		move arch.Move
		does string
	}{{arch.Move{Crown: m.By / 2}, "push both legs down."}, {arch.Move{Crown: -m.Long.Crown, Shoulder: -m.Long.Shoulder}, short},
		{m.Lean, upright(k) + "s lean. As Feet."}} {
		if shows := showing(f.move); shows != "" {
			list = append(list, block.Paragraph(shows+": "+f.does))
		}
	}
	return append(list, block.Block{Name: "still off", Gap: 1.6, Body: block.Words{Lettering: paper.Strong, Text: "Still off: ask. Force nothing."}})
}

// showing says how a move shows on an arch; empty where nothing moves.
func showing(m arch.Move) string {
	var parts []string
	for _, p := range []struct {
		by         measure.Length
		more, less string
	}{{m.Crown, "high", "low"}, {m.Shoulder, "wide", "narrow"}} {
		switch {
		case p.by > 0:
			parts = append(parts, p.more)
		case p.by < 0:
			parts = append(parts, p.less)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "Too " + say.And(parts)
}

// otherShapes are the profiles of arches that differ from the first by more than what is held, each beside its holds.
func (r raising) otherShapes() []block.Block {
	var list []block.Block
	for _, s := range r.shapes[1:] {
		p := r.profile(s)
		table, wide := r.holdTableOf(s)
		scale := p.Scale(draw.ProfileScales(r.u), paper.Rect{W: r.room.W - wide - 5, H: 100})
		list = append(list, block.Block{Name: "profile of " + say.Numbered("arch", s.Numbers()), Gap: 5, Facts: r.profileFacts(p), Body: block.Columns{Gap: 5, Cols: []block.Column{
			{Width: p.Width(scale), Blocks: []block.Block{{Name: "profile", Body: profileBody{p, scale}}}},
			{Share: 1, Blocks: []block.Block{r.titleOf(s, scale), table, {Name: "signed", Body: block.Blanks{{Word: "Signed"}}}}}}}})
	}
	return list
}
