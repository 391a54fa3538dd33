package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

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
	_, room := r.newSide(false)
	picture := []block.Block{r.titleOf(r.groups[0], s), {Name: "profile", Gap: 1, Body: profileBody{p, s}}}
	told := append(r.people(), r.faults(p.Kind)...)
	var top block.Columns
	for under := range len(r.people()) + 1 { // so much stands under the picture as makes it all lowest
		sides := block.Columns{Gap: 5, Cols: []block.Column{{Width: p.Width(s), Blocks: slices.Concat(picture, told[:under])}, {Share: 1, Blocks: told[under:]}}}
		if under == 0 || sides.Height(room.W) < top.Height(room.W) {
			top = sides
		}
	}
	rows, facts := r.holds(r.groups[0])
	all, more := r.heldOnAll()
	shown := append(r.profileFacts(p), r.faultFacts(p.Kind)...)
	shown = append(shown, block.Fact{What: "scale of the profile", Value: s.Words})
	list := []block.Block{{Name: "profile", Body: top, Facts: shown}, holdTable(append(rows, all...), append(facts, more...), false)}
	list = append(list, r.crowns()...)
	list = append(list, r.joining()...)
	return append(list, r.signatures())
}

// titleOf names every arch that a profile stands for.
func (r raising) titleOf(g archGroup, s paper.Scale) block.Block {
	text := say.Capital(say.Numbered("arch", g.numbers())) + " from the entrance, " + s.Words
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
	crown, ladder := "Crown: lifts, then holds the ladder", "Ladder: climbs"
	if !r.ladder() {
		crown, ladder = "Crown: lifts", "Ladder: helps at the top"
	}
	guard := "Guard: holds arch 1, nothing else"
	if _, ok := r.task(crew.StretchGuys, r.stand[0].Number); ok && len(r.stand) > 1 {
		guard = fmt.Sprintf("Guard: holds arch 1 till arch %d joins", r.stand[1].Number)
	}
	bring := fmt.Sprintf("Bring: see leaf %d.", leafNumber("stock"))
	if len(r.plan.Strings) > 0 {
		bring = fmt.Sprintf("Bring leaf %d; see leaf %d.", leafNumber("lights"), leafNumber("stock"))
	}
	return []block.Block{{Name: "bring", Gap: 1, Body: block.Words{Text: bring}},
		{Name: "people", Gap: 1.6, Body: block.Words{Text: "Five people, 16 or older\nFoot 1, Foot 2: the legs\n" + crown + "\n" + ladder + "\n" + guard}}}
}

// faults says what to look at where the arch is farther off than it may be: what shows beyond that, what does it, what to do.
func (r raising) faults(k *arch.Kind) []block.Block {
	m, ok := k.Moves()
	if !ok {
		return nil
	}
	line := func(name, text string) block.Block {
		return block.Block{Name: name, Gap: 1.6, Body: block.Words{Text: text}}
	}
	list := []block.Block{block.Heading("Beyond Within"), line("feet", fmt.Sprintf("Feet: a stake off its dot, not as moved on leaf %d. Arch off, caps on, call the stake crew.", leafNumber("stakes")))}
	effect, by := r.beyond(k, arch.Move{Crown: m.By / 2}, m.By)
	list = append(list, line("foot", fmt.Sprintf("%s: one leg end over %s up. Push it down.", effect, by)))
	effect, by = r.beyond(k, m.Long, m.By)
	mend := "Push it to the stop."
	if k.Spec.OneStick {
		mend = "Measure the stick."
	}
	list = append(list, line("pipe", fmt.Sprintf("%s: over %s too much pipe. %s Reverse: too little; measure sticks.", effect, by, mend)))
	if m.Lean != (arch.Move{}) {
		effect, by = r.beyond(k, m.Lean, m.By)
		list = append(list, line("stakes", fmt.Sprintf("%s: stake tops over %s out. As for feet.", effect, by)))
	}
	return append(list, block.Block{Name: "still off", Gap: 1.6, Body: block.Words{Lettering: paper.Strong, Text: "Still off: ask. Force nothing."}})
}

// faultFacts are what the faults do.
func (r raising) faultFacts(k *arch.Kind) []block.Fact {
	m, ok := k.Moves()
	if !ok {
		return nil
	}
	var list []block.Fact
	for _, f := range []struct {
		what string
		move arch.Move
	}{{"leg end above ground at the limit", arch.Move{Crown: m.By / 2}}, {"too much pipe at the limit", m.Long}, {"stake tops out at the limit", m.Lean}} {
		if f.move == (arch.Move{}) {
			continue
		}
		effect, by := r.beyond(k, f.move, m.By)
		list = append(list, block.Fact{What: f.what, Value: by}, block.Fact{What: f.what + ", what shows", Value: effect})
	}
	return list
}

// beyond scales a move, which so much of a fault makes, to where the height or the width first leaves what is held: what shows from there on, that one first,
// and how large the fault is by then.
func (r raising) beyond(k *arch.Kind, m arch.Move, by measure.Length) (effect, fault string) {
	u := r.spec.Units
	times, leaves := math.Inf(1), ""
	moves := map[string]measure.Length{draw.HeightWord: m.Crown, draw.WidthWord: m.Shoulder}
	for _, h := range r.held(k) {
		if move := moves[h.name]; move != 0 && math.Abs(float64(h.give/move)) < times {
			times, leaves = math.Abs(float64(h.give/move)), h.name
		}
	}
	if math.IsInf(times, 1) {
		times = 1
	}
	var parts []string
	for _, p := range []struct{ what, more, less string }{{draw.HeightWord, "too high", "too low"}, {draw.WidthWord, "too wide", "too narrow"}} {
		l, way := moves[p.what]*measure.Length(times), p.more
		if l < 0 {
			l, way = -l, p.less
		}
		switch l = u.Taped(l); {
		case l == 0:
		case p.what == leaves:
			parts = slices.Insert(parts, 0, fmt.Sprintf("Over %s %s", u.Inches(l), way))
		default:
			parts = append(parts, fmt.Sprintf("about %s %s", u.Inches(l), way))
		}
	}
	return strings.Join(parts, ", "), u.Inches(u.Taped(by * measure.Length(times)))
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
