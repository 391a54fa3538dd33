package packet

import (
	"fmt"
	"slices"
	"strings"

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

// lowering writes the leaf of the crew that takes the tunnel down: people who have not seen it go up.
type lowering struct {
	plan   *layout.Plan
	units  measure.System
	tasks  []crew.Task
	stand  []arch.Arch
	ladder bool
	off    map[int][2][]string // the stakes of guys and of braces that are freed before an arch is, by its number
	ways   layout.WaysOut
}

// takedownLeaf is what the take-down crew works from: in front what can hurt them and the order of the work; behind what is counted in, how it is kept, and
// what next year wants to know.
func (b *binder) takedownLeaf() []folio {
	l := lowering{b.plan, b.spec.Units, tasksOf(b.plan, crew.TakeDown), standingOf(b.plan), b.ladder(), nil, layout.WaysOut{}}
	if len(l.tasks) == 0 {
		return nil
	}
	l.off, l.ways = l.freedBefore(), b.plan.WaysOut()
	front := append([]block.Block{l.stopBox()}, l.order()...)
	return []folio{{
		front: side{title: "Take down: the order", blocks: front},
		back:  side{title: "Take down: counted, kept", blocks: l.back()},
	}}
}

// tasksOf lists the tasks of a phase.
func tasksOf(p *layout.Plan, phase crew.Phase) (list []crew.Task) {
	for _, t := range p.Crew.Tasks {
		if t.Phase == phase {
			list = append(list, t)
		}
	}
	return list
}

// figureOf returns the first figure of a kind that a task wants.
func figureOf(t crew.Task, what crew.Wanted) crew.Figure {
	for _, f := range t.Want {
		if f.What == what {
			return f
		}
	}
	return crew.Figure{}
}

// lowered returns a figure that the taking down of the arches wants.
func (l lowering) lowered(what crew.Wanted) (f crew.Figure) {
	for _, t := range l.tasks {
		if t.Action == crew.LowerArches {
			f = figureOf(t, what)
		}
	}
	return f
}

// stopBox is each danger in short, for people who hear of it for the first time.
func (l lowering) stopBox() block.Block {
	u := l.units
	gust, cold, slow := u.Speed(l.lowered(crew.GustBelow).Gust), u.Temperature(l.lowered(crew.WarmerThan).Cold), u.Temperature(l.lowered(crew.SlowBelow).Cold)
	facts := []block.Fact{{What: "take-down gust", Value: gust}, {What: "take-down cold", Value: cold}, {What: "take-down, slowly below", Value: slow}}
	var lines []block.Block
	add := func(name, do string) {
		lines = append(lines, block.Block{Gap: 0.6, Body: block.Words{Text: block.Figure(name+":") + " " + do, Figures: paper.Strong}})
	}
	roles := "Crown: lifts. Ladder: ridge"
	if l.ladder {
		roles = "Crown: lifts, holds the ladder. Ladder: climbs"
	}
	ask := l.plan.Spec.Crew.Ask
	people := fmt.Sprint(crew.Raisers(l.plan.Spec))
	if crews := l.plan.Crew.Lowerers; crews > 1 { // one would be at it past dusk
		people = fmt.Sprintf("%d crews of %s, as LAY FLAT; each", crews, people)
	}
	add("People", fmt.Sprintf("%s, %d or older. Foot 1, 2: the legs. %s, caps. Guard: holds the next arch throughout. %s a crack, a wrong count.",
		people, practice.Least, roles, block.Figure(strings.TrimSpace("Anyone stops, asks "+ask.Name+" "+ask.Phone)+":")))
	bring := append([]string{"all leaves, tag bags, punch"}, brought(l.plan, true, crew.TakeDown)...)
	add("Bring", strings.Join(bring, ", ")+".")
	facts = append(facts, bringFacts("take-down", bring)...)
	add("Bent pipe", "a spring, brittle by now. Eye protection on, nobody under an arch with a foot off.")
	add("Stop, no start, no LAY FLAT", fmt.Sprintf("dusk, thunder, gusts of %s, %s or colder. Slow below %s. %s",
		block.Figure(gust), block.Figure(cold), block.Figure(slow), block.Figure("Stopped midway,")+" "+l.midway()+"; ask. "+mending[crew.WarmWater]))
	bare := "cap at once" + l.capped() + "."
	if l.ladder {
		bare += " " + block.Figure("Stepladder:") + " open, never against pipe."
	}
	add("Bare "+upright(l.stand[0].Kind), bare)
	out := u.Room(l.ways.Long)
	add("Way out", besideWalk(l.ways, l.units))
	facts = append(facts, block.Fact{What: "walked out at the take-down", Value: out})
	for _, line := range l.plan.Spec.Site.Overhead {
		add("Overhead, "+line.Name, fmt.Sprintf("leaf %d. Pipe, ladder, people %s away. One person does nothing but watch it.", leafNumber("day"), u.Room(line.Keep)))
		facts = append(facts, block.Fact{What: "kept from " + line.Name + ", take-down", Value: u.Room(line.Keep)})
	}
	read := "Read aloud by"
	if day := l.plan.Spec.Dates.Down; !day.IsZero() {
		read = day.Format("Mon 2 Jan 2006") + " or later, read aloud by"
	}
	lines = append(lines, block.Block{Body: append(block.Blanks{{Word: read}}, heardAndAsk(l.plan.Spec)...)})
	return block.Block{Name: "stop box", Body: block.Framed{Blocks: lines}, Facts: facts}
}

// midway is what is done where a stop comes with an arch half down. Thunder leaves no time for more; else the legs at the row's open end are tied both ways, for what held them that way
// is off.
func (l lowering) midway() string {
	do := "thunder: unbend what is bent, go in; else finish the arch"
	if len(l.stand) > 1 {
		do += fmt.Sprintf(", tie the next head-high both ways to %ss, builder’s line", strings.Join(standsOn(l.plan), "s or "))
		if first := l.stand[0].Number; !firstHeld(l.plan, first) {
			do += fmt.Sprintf("; arch %d alone: off too", first)
		}
	}
	return do
}

// capped says which stakes wear their caps all the time: those that no pipe stands on.
func (l lowering) capped() string {
	if !slices.ContainsFunc(l.plan.Stakes, staysCapped) {
		return ""
	}
	return "; " + strings.Join(capped(l.plan).pick("guys’", "braces’"), ", ") + " caps stay"
}

// freedBefore names what holds each arch lengthwise. A guy that reaches past arches beyond its own is freed before the farthest of those, which would be walked out through it; the
// others of its arch stay.
func (l lowering) freedBefore() map[int][2][]string {
	off := map[int][2][]string{}
	for _, s := range l.plan.Stakes {
		if !s.Guy {
			continue
		}
		at, k := reachOf(l.plan, s), s.Kind()-ground.OfGuy
		if names := off[at]; !slices.Contains(names[k], s.Pair()) {
			names[k] = append(names[k], s.Pair())
			off[at] = names
		}
	}
	return off
}

// reachOf is the last arch that a guy goes to or past; of a brace its own.
func reachOf(p *layout.Plan, s ground.Stake) int {
	at := s.Arch
	for _, a := range standingOf(p) {
		if leg, ok := p.Ground.Stake(ground.Leg(s.Side, a.Number)); ok && s.Bay == 0 && leg.Along <= s.Along {
			at = max(at, a.Number)
		}
	}
	return at
}

// takenOff has guys and braces taken off from the ground, while two hold the arch that is next and before anything else is moved.
func (l lowering) takenOff(number int) string {
	var words []string
	for k, names := range l.off[number] {
		if len(names) > 0 {
			words = append(words, [2]string{"frees guys at ", "takes off braces "}[k]+say.And(names))
		}
	}
	if words == nil {
		return ""
	}
	return "Crown " + strings.Join(words, ", ") + ". "
}

// order are the tasks by number, up to the stakes out of the ground and everything looked over; what is counted and kept stands behind.
func (l lowering) order() []block.Block {
	var list []block.Block
	number := 0
	var flat []int // what of it is done where it is laid flat before a storm
	for _, t := range l.tasks {
		switch t.Action {
		case crew.Store, crew.NextYear:
			continue
		case crew.LowerArches:
			panels := l.panels(number)
			for _, p := range panels {
				number = p.number
				flat = append(flat, number)
			}
			list = append(list, panelRows(panels)...)
			continue
		}
		step, facts := l.step(t)
		number++
		step.Number = number
		if slices.Contains([]crew.Action{crew.CoilCords, crew.TakeStrings}, t.Action) { // legs are carried where cords lie; rows and drops catch the most wind
			flat = append(flat, number)
		}
		list = append(list, block.Block{Name: fmt.Sprintf("step %d", number), Gap: 1.4, Body: step, Facts: facts})
	}
	return append([]block.Block{l.laidFlat(flat)}, list...)
}

// panels are the pictures of an arch that comes down, numbered on from what was done before.
func (l lowering) panels(done int) []panel {
	pictures, ok := draw.NewRaising(l.plan)
	if !ok {
		return nil
	}
	pictures.Down = true
	n := len(l.stand)
	last := l.stand[n-1].Number
	var list []panel
	kind := l.stand[n-1].Kind
	high := l.units.Inches(l.units.Taped(kind.Spec.Stake.Showing()))
	stays := l.ways.First(last)
	pictures.FromFar = stays == spec.Right
	down := ""
	if slices.Contains(standsOn(l.plan), "base") {
		down = "tie-downs off; "
	}
	foot := fmt.Sprintf("All beside: %sFoot 2, Crown lift %s %s, step out; Ladder, beside, %s. "+
		"Walk till %s is slack: lift off, cap, carry clear.",
		down, ground.Leg(stays.Other(), last), high, block.Figure("caps"), ground.Leg(stays, last))
	if n > 1 {
		before, first, joined := l.stand[n-2].Number, l.stand[0].Number, len(l.plan.Ridge) > 0
		list = append(list, panel{number: done + 1, do: l.freed(before, last), paint: func(page *paper.Page, room paper.Rect) {
			pictures.Second(page, room, before, last, joined, l.ladder)
		}})
		foot += l.again(done+1, before, first)
	} else {
		foot = "Foot 1, 2 hold it. " + l.takenOff(last) + foot
	}
	facts := []block.Fact{{What: "lifted at the take-down", Value: high}}
	return append(list, panel{number: done + len(list) + 1, do: foot, facts: facts, paint: func(page *paper.Page, room paper.Rect) { pictures.LastFoot(page, room, last) }})
}

// again says which steps take down the arches before the last, which way, and what is taken off first of those that are held.
func (l lowering) again(free, before, first int) string {
	words := fmt.Sprintf(" Steps %d, %d again: arch %d to %d", free, free+1, before, first)
	if before == first {
		words = fmt.Sprintf(" Step %d again: arch %d", free+1, first)
	}
	var off []string
	tied, ties := l.tied(), ""
	for _, a := range slices.Backward(l.stand[:len(l.stand)-1]) {
		if bay := a.Number - 1; slices.Contains(tied, bay) {
			off, ties = append(off, fmt.Sprintf("%d: bay %d’s ties", a.Number, bay)), "ties, "
		}
		if held := l.off[a.Number]; len(held[0])+len(held[1]) > 0 {
			off = append(off, fmt.Sprintf("%d: %s", a.Number, strings.Join(slices.Concat(held[0], held[1]), ", ")))
		}
	}
	words += l.otherWays()
	switch {
	case len(off) > offMost:
		words += ". At each, off first: " + ties + say.And(heldBy(l.plan).pick("its guys, any past it", "braces"))
	case off != nil:
		words += ". Off first, at arch " + strings.Join(off, "; ")
	}
	return words + "."
}

// tied are the bays that are tied so that they stand by themselves: bay 1, and the lowest of each crew.
func (l lowering) tied() (bays []int) {
	if raisingOf(l.plan).tiesBay() {
		bays = []int{1}
	}
	if flat := l.plan.LaidFlat(); flat.Crews > 1 {
		for _, s := range flat.Drill.Stretches(flat.Crews) {
			if s[0] > 1 {
				bays = append(bays, s[0])
			}
		}
	}
	return bays
}

// offMost is of how many arches it is told by name what comes off.
const offMost = 4

// otherWays says of the arches before the last where it is not the leg on the last one's side that goes out.
func (l lowering) otherWays() (words string) {
	last := l.stand[len(l.stand)-1].Number
	stays := l.ways.First(last)
	for k, arches := range [2][]int{l.ways.Unlike(last, l.stand), l.ways.Ask} {
		if before := slices.DeleteFunc(slices.Clone(arches), func(a int) bool { return a == last }); len(before) > 0 {
			words += [2]string{fmt.Sprintf(", %s for %s at ", stays.Letter(), stays.Other().Letter()), ", ask at "}[k] + say.Numbers(before)
		}
	}
	return words
}

// freed says how the last arch is freed from the one before it: what holds it comes off while the ridge still does, as it went on after the ridge.
func (l lowering) freed(before, last int) string {
	do := ""
	if raisingOf(l.plan).tiesBay() && before > 1 { // as it stood while it was raised, held from one side alone
		do = "Bay 1: " + crossed + ". "
	}
	do += fmt.Sprintf("Far end first: arch %s. Foot 1, 2 hold it, Guard arch %d. ", block.Figure(fmt.Sprint(last)), before)
	if len(l.plan.Power.Cords) == 0 && used(l.plan, crew.BarrierNet) > 0 { // else they come off with the cords
		do += "Nets off. "
	}
	do += l.takenOff(last)
	lined, untie := used(l.plan, crew.CrownLine) > 0, fmt.Sprintf("Untie crown line at crown %d", last)
	if len(l.plan.Ridge) > 0 {
		if slices.ContainsFunc(l.plan.Lights.Wraps, ofRidge) {
			do += "Uncover, unplug ridge string. "
		}
		bow := "Bow"
		if lined {
			bow = untie + ", bow"
		}
		if l.plan.Spec.Arch.Joints == spec.Pinned {
			bow = "Screws out, bow"
		}
		do += fmt.Sprintf("%s ridge out of crown %s, then %d. ", bow, block.Figure(fmt.Sprint(before)), last)
	} else if lined {
		do += untie + ". "
	}
	if l.ladder && (lined || len(l.plan.Ridge) > 0) {
		do += "Stepladder away. "
	}
	return do
}

// step is a task as a step to tick, with its figures. The weather stands in the stop box, and a crown's figure beside its blank.
func (l lowering) step(t crew.Task) (block.Step, []block.Fact) {
	var facts []block.Fact
	var sign []block.Blank
	for _, f := range t.Want {
		if f.What == crew.CrownFound {
			high := l.units.Inches(l.units.Taped(f.Length))
			sign = append(sign, block.Blank{Word: fmt.Sprintf("Arch %d: %s", f.Arches[0], high)})
			facts = append(facts, block.Fact{What: fmt.Sprintf("late crown, arch %d", f.Arches[0]), Value: high})
		}
	}
	if sign != nil || t.Action == crew.PullStakes { // how many they are stands where they are ticked
		t.Want = nil
	}
	in := newTaskWords(l.plan).of(t)
	s := block.Step{Text: eachOnce([]string{in.Do, in.Want, in.IfOff}), Hold: t.Hold, Sign: sign}
	if t.Hold {
		s.Sign, s.Aside = []block.Blank{{Word: "Signed"}}, signWide
	}
	return s, facts
}

// besideWalk says how far beside the walk the ground is clear for a leg that is walked out or an arch that lies flat, and on which side.
func besideWalk(w layout.WaysOut, u measure.System) string {
	words := u.Room(w.Long) + " clear right of R"
	if w.Left != nil {
		words += fmt.Sprintf(", at %s left of L", say.Numbered("arch", w.Left))
	}
	if w.Ask != nil {
		words += fmt.Sprintf("; at %s ask", say.Numbered("arch", w.Ask))
	}
	return words + "."
}

// laidFlat says what of the order is done where it is laid flat before a storm, and by whom where one crew is too slow; until when stands in the stop box. The leaf of the evenings
// calls for it, and says what raises it again.
func (l lowering) laidFlat(steps []int) block.Block {
	dark, covers, lying := "", "", "whole arches"
	if len(l.plan.Strings) > 0 {
		dark, covers = "unplug all, ", ", covers back on open plugs, bags over other ends"
	}
	if len(l.plan.Ridge) > 0 {
		lying = "whole arches, ridge pieces"
	}
	if heldBy(l.plan).braces && !l.plan.Spec.Braces.Line {
		lying += ", braces"
	}
	text := fmt.Sprintf("%s (leaf %d): %s%s%s. Tie %s flat along the L %ss, %s.",
		block.Figure("LAY FLAT"), leafNumber("nights"), dark, say.Numbered("step", steps), covers, lying, strings.Join(standsOn(l.plan), "s or "), fetchWords[crew.StringLine])
	return block.Block{Name: "laid flat", Gap: 2,
		Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: block.Words{Text: text + l.byCrews(steps), Figures: paper.Strong}}}}}
}

// byCrews says where each crew begins that lays it flat, what it ties so that nothing falls when its neighbours leave, and what each brings.
func (l lowering) byCrews(steps []int) string {
	flat := l.plan.LaidFlat()
	if flat.Crews < 2 {
		return ""
	}
	var rows, bays, parted []string
	most := 0
	for _, s := range flat.Drill.Stretches(flat.Crews) {
		rows, most = append(rows, fmt.Sprintf("%d to %d", s[1], s[0])), max(most, s[1]-s[0]+1)
	}
	for _, bay := range slices.DeleteFunc(l.tied(), func(bay int) bool { return bay == 1 }) { // of that one it is told for all
		bays, parted = append(bays, fmt.Sprint(bay)), append(parted, fmt.Sprint(bay-1))
	}
	var own []string
	for _, n := range l.plan.Crew.Kit(crew.TakeDown) {
		switch n.Thing {
		case crew.Bags:
			if len(l.plan.Strings) > 0 {
				own = append(own, "bags")
			}
		case crew.Cutters, crew.Gloves, crew.EyeProtection, crew.Stepladder, crew.Screwdriver, crew.StringLine:
			own = append(own, fetchWords[n.Thing])
		case crew.Caps: // all are in a bucket since the raising
			own = append(own, say.Count(min(n.Count, 2*most), fetchWords[n.Thing]))
		}
	}
	out := ""
	if bays != nil {
		out = fmt.Sprintf(" First tie %s %s: %s.", say.Agree(len(bays), "bay", "bays"), say.And(bays), crossed)
		out += l.parted(steps[len(steps)-2], parted)
	}
	return fmt.Sprintf(" %d crews: arches %s.%s Each brings %s.", flat.Crews, say.And(rows), out, say.And(own))
}

// parted says what is then taken out of the bays between stretches, as a step does it.
func (l lowering) parted(step int, bays []string) string {
	what := ""
	switch {
	case len(l.plan.Ridge) > 0:
		what = "ridge " + say.And(bays) + " out"
	case crownLines(l.plan) > 0:
		what = crownLine + " off between " + say.And(bays) + " and the next"
	default:
		return ""
	}
	return fmt.Sprintf(" Then, as step %d, %s.", step, what)
}

// crossed is how a bay is tied so that it stands along the walk by itself, whatever becomes of its neighbours: each arch is kept from leaning away from the other, by feet that stay till it comes down.
const crossed = "builder’s line, each arch head-high to the other’s feet"
