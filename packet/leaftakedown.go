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
}

// takedownLeaf is what the take-down crew works from: in front what can hurt them and the order of the work; behind what is counted in, how it is kept, and
// what next year wants to know.
func (b *binder) takedownLeaf() []folio {
	l := lowering{b.plan, b.spec.Units, tasksOf(b.plan, crew.TakeDown), standingOf(b.plan), b.ladder(), nil}
	if len(l.tasks) == 0 {
		return nil
	}
	l.off = l.freedBefore()
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
	add("People", fmt.Sprintf("%d, %d or older. Foot 1, 2: the legs. %s, caps. Guard: only the next arch. %s a crack, a wrong count.",
		crew.Raisers(l.plan.Spec), practice.Least, roles, block.Figure(strings.TrimSpace("Anyone stops, asks "+ask.Name+" "+ask.Phone)+":")))
	bring := append([]string{fmt.Sprintf("leaf %d, tag bags, punch", leafNumber("tags"))}, brought(l.plan, true, crew.TakeDown)...)
	add("Bring", strings.Join(bring, ", ")+".")
	facts = append(facts, bringFacts("take-down", bring)...)
	add("Bent pipe", "a spring, brittle by now. Eye protection on, nobody under an arch with a foot off.")
	add("Stop, no start, no LAY FLAT", fmt.Sprintf("dusk, thunder, gusts of %s, %s or colder. Slow below %s. %s",
		block.Figure(gust), block.Figure(cold), block.Figure(slow), block.Figure("Stopped midway,")+" "+midway(l.plan, " the arch", " the next", "bare")+"; ask. "+mending[crew.WarmWater]))
	bare := "cap at once" + l.capped() + "."
	if l.ladder {
		bare += " " + block.Figure("Stepladder:") + " fully open, never against pipe."
	}
	add("Bare "+upright(l.stand[0].Kind), bare)
	clear, out := l.wayOut()
	add("Way out", clear)
	facts = append(facts, block.Fact{What: "walked out at the take-down", Value: out})
	for _, line := range l.plan.Spec.Site.Overhead {
		add("Overhead, "+line.Name, fmt.Sprintf("leaf %d. Pipe, ladder, people %s away. One person only watches it.", leafNumber("day"), u.Room(line.Keep)))
		facts = append(facts, block.Fact{What: "kept from " + line.Name + ", take-down", Value: u.Room(line.Keep)})
	}
	read := "Read aloud by"
	if day := l.plan.Spec.Dates.Down; !day.IsZero() {
		read = day.Format("Mon 2 Jan 2006") + " or later, read aloud by"
	}
	lines = append(lines, block.Block{Body: append(block.Blanks{{Word: read}}, heardAndAsk(l.plan.Spec)...)})
	return block.Block{Name: "stop box", Body: block.Framed{Blocks: lines}, Facts: facts}
}

// midway is what is done where a stop comes with an arch half up or half down. Thunder leaves no time for it; else the legs at a row's open end are tied to what stands in the
// ground beyond it, for nothing else holds them for the night: with guys, where there are any.
func midway(p *layout.Plan, arch, end, which string) string {
	do := "thunder: loose foot out, go in; else finish" + arch
	if len(standingOf(p)) < 2 {
		return do
	}
	tie := "tie"
	if heldBy(p).guys {
		tie = "guy"
	}
	return fmt.Sprintf("%s, %s%s head-high, low to %s %ss", do, tie, end, which, strings.Join(standsOn(p), "s or "))
}

// capped says which stakes wear their caps all the time: those that no pipe stands on.
func (l lowering) capped() string {
	if !slices.ContainsFunc(l.plan.Stakes, staysCapped) {
		return ""
	}
	return "; " + strings.Join(heldBy(l.plan).pick("guys’", "braces’"), ", ") + " caps stay"
}

// freedBefore names what holds each arch lengthwise. An inner arch's guys that reach past others are freed before the farthest of those: it would be walked out through them.
func (l lowering) freedBefore() map[int][2][]string {
	with := map[int]int{} // by the number of the arch that they hold
	for _, s := range l.plan.Stakes {
		if !s.Guy {
			continue
		}
		with[s.Arch] = max(with[s.Arch], s.Arch)
		for _, a := range l.stand {
			if leg, ok := l.plan.Ground.Stake(ground.Leg(s.Side, a.Number)); ok && s.Bay == 0 && leg.Along < s.Along {
				with[s.Arch] = max(with[s.Arch], a.Number)
			}
		}
	}
	off := map[int][2][]string{}
	for _, s := range l.plan.Stakes {
		if at, k := with[s.Arch], s.Kind()-ground.OfGuy; s.Guy && !slices.Contains(off[at][k], s.Pair()) {
			names := off[at]
			names[k] = append(names[k], s.Pair())
			off[at] = names
		}
	}
	return off
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
		if slices.Contains([]crew.Action{crew.UntieLine, crew.TakeStrings}, t.Action) { // rows and drops catch the most wind
			flat = append(flat, number)
		}
		list = append(list, block.Block{Name: fmt.Sprintf("step %d", number), Gap: 1.4, Body: step, Facts: facts})
	}
	return append(list, l.laidFlat(flat))
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
	foot := fmt.Sprintf("All beside: Foot 2, Crown lift R%d %s, step out; Ladder %s. "+
		"Walk till L%d is slack: lift off, cap, carry clear.",
		last, high, block.Figure("caps"), last)
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
	return append(list, panel{number: done + len(list) + 1, do: foot, facts: facts, paint: func(page *paper.Page, room paper.Rect) { pictures.RightFoot(page, room, last) }})
}

// again says which steps take down the arches before the last, and what is taken off first of those that are held.
func (l lowering) again(free, before, first int) string {
	if before == first {
		return fmt.Sprintf(" Step %d again: arch %d%s.", free+1, first, l.offAt(", ", first))
	}
	var off []string
	for _, a := range slices.Backward(l.stand[:len(l.stand)-1]) {
		if at := l.offAt(fmt.Sprintf(". At arch %d: ", a.Number), a.Number); at != "" {
			off = append(off, at)
		}
	}
	if len(off) > 2 {
		off = []string{". At each: " + say.And(heldBy(l.plan).pick("its guys, any past it", "braces")) + " off first"}
	}
	return fmt.Sprintf(" Steps %d, %d again: arch %d to %d%s.", free, free+1, before, first, strings.Join(off, ""))
}

// offAt says, after some words, which guys and braces come off at an arch.
func (l lowering) offAt(words string, number int) string {
	if held := l.off[number]; len(held[0])+len(held[1]) > 0 {
		return words + strings.Join(slices.Concat(held[0], held[1]), ", ") + " off first"
	}
	return ""
}

// freed says how the last arch is freed from the one before it: what holds it comes off while the ridge still does, as it went on after the ridge.
func (l lowering) freed(before, last int) string {
	do := fmt.Sprintf("Far end first: arch %s. Foot 1, 2 hold it, Guard arch %d. ", block.Figure(fmt.Sprint(last)), before) + l.takenOff(last)
	if len(l.plan.Ridge) > 0 {
		if slices.ContainsFunc(l.plan.Lights.Wraps, ofRidge) {
			do += "Unplug ridge string. "
		}
		do += fmt.Sprintf("Bow ridge out of crown %s, then %d. ", block.Figure(fmt.Sprint(before)), last)
		if l.ladder {
			do += "Stepladder away. "
		}
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

// wayOut says how far beside the walk the ground is kept clear for a leg that is walked out, and at which arches something of the site lies there.
func (l lowering) wayOut() (words, far string) {
	var out measure.Length
	for _, a := range l.stand {
		out = max(out, a.Length-a.Span)
	}
	far = l.units.Room(out)
	words = fmt.Sprintf("%s clear right of each R.", block.Figure(far))
	var names [2][]string // in the way of the right leg alone, of both
	var arches [2][]int
	for _, a := range l.stand {
		there := l.plan.Ground.OnWayOut(l.plan.Spec, ground.Leg(spec.Right, a.Number), a.Length-a.Span)
		if len(there) == 0 {
			continue
		}
		k := min(1, len(l.plan.Ground.OnWayOut(l.plan.Spec, ground.Leg(spec.Left, a.Number), a.Length-a.Span)))
		arches[k] = append(arches[k], a.Number)
		for _, f := range there {
			if !slices.Contains(names[k], f.Name) {
				names[k] = append(names[k], f.Name)
			}
		}
	}
	for k, do := range [2]string{"walk L out", "ask"} {
		if arches[k] != nil {
			words += fmt.Sprintf(" %s at %s: %s.", say.Capital(say.And(names[k])), say.Numbered("arch", arches[k]), do)
		}
	}
	return words, far
}

// laidFlat says what of the order is done where it is laid flat before a storm, and until when; the leaf of the evenings calls for it, and says what raises it again.
func (l lowering) laidFlat(steps []int) block.Block {
	dark := ""
	if len(l.plan.Strings) > 0 {
		dark = "unplug all, cords off strings and arches, "
	}
	gust := l.units.Speed(l.lowered(crew.GustBelow).Gust)
	text := fmt.Sprintf("%s, if leaf %d calls it: by daylight, before gusts pass %s: %s%s. Tie pipe to the L %ss with %s.",
		block.Figure("LAY FLAT"), leafNumber("nights"), gust, dark, say.Numbered("step", steps), strings.Join(standsOn(l.plan), "s or "), fetchWords[crew.StringLine])
	return block.Block{Name: "laid flat", Gap: 2, Facts: []block.Fact{{What: "laid flat before gusts of", Value: gust}},
		Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: block.Words{Text: text, Figures: paper.Strong}}}}}
}
