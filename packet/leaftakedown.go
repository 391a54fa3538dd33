package packet

import (
	"cmp"
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
}

// takedownLeaf is what the take-down crew works from: in front what can hurt them and the order of the work; behind what is counted in, how it is kept, and
// what next year wants to know.
func (b *binder) takedownLeaf() []folio {
	l := lowering{b.plan, b.spec.Units, tasksOf(b.plan, crew.TakeDown), standingOf(b.plan), b.ladder()}
	if len(l.tasks) == 0 {
		return nil
	}
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
	roles := "Crown: the top. Ladder: ridge"
	if l.ladder {
		roles = "Crown: holds the ladder. Ladder: climbs"
	}
	add("People", fmt.Sprintf("%d, %d or older. Foot 1, Foot 2: the legs. %s, caps. Guard: the arch that stays. %s a crack, a wrong count.",
		practice.Raisers, practice.Least, roles, block.Figure("Anyone stops, asks "+askWhom(l.plan.Spec)+":")))
	bring := append([]string{fmt.Sprintf("leaf %d, small bags, punch", leafNumber("tags"))}, brought(l.plan, true, crew.TakeDown)...)
	add("Bring", strings.Join(bring, ", ")+".")
	facts = append(facts, bringFacts("take-down", bring)...)
	add("Bent pipe", "a spring, brittle by now. Eye protection on, nobody under an arch with a foot off.")
	add("No start, no LAY FLAT", fmt.Sprintf("dusk, thunder, gusts of %s, %s or colder. Slow below %s. %s", block.Figure(gust), block.Figure(cold), block.Figure(slow), l.midway()))
	bare := "cap at once" + l.capped() + "."
	if l.ladder {
		bare += " " + block.Figure("Stepladder:") + " fully open, never against pipe."
	}
	add("Bare "+upright(l.stand[0].Kind), bare)
	for _, line := range l.plan.Spec.Site.Overhead {
		add("Overhead, "+line.Name, fmt.Sprintf("pipe, ladder and people %s away. One person watches it.", u.Room(line.Keep)))
		facts = append(facts, block.Fact{What: "kept from " + line.Name + ", take-down", Value: u.Room(line.Keep)})
	}
	read := "Read aloud by"
	if day := l.plan.Spec.Dates.Down; !day.IsZero() {
		read = day.Format("Mon 2 Jan 2006") + ", read aloud by"
	}
	lines = append(lines, block.Block{Body: block.Blanks{{Word: read}, {Word: "heard by all, signed", Share: 1.4}}})
	return block.Block{Name: "stop box", Body: block.Framed{Blocks: lines}, Facts: facts}
}

// midway is what is done where weather or dusk comes with an arch half down.
func (l lowering) midway() string {
	on := ""
	if held := heldBy(l.plan).pick("guys", "braces"); held != nil && len(l.stand) > 1 {
		on = say.And(held) + " on the last standing, "
	}
	return block.Figure("Midway:") + " finish the arch with a foot off, start no other, " + on + "ask."
}

// capped says which stakes wear their caps all the time: those that no pipe stands on.
func (l lowering) capped() string {
	if !slices.ContainsFunc(l.plan.Stakes, func(s ground.Stake) bool { return s.Guy && !s.Base }) {
		return ""
	}
	return "; " + say.And(heldBy(l.plan).pick("guys’", "braces’")) + " caps stay"
}

// heldBy names the stakes of an arch's guys and braces.
func (l lowering) heldBy(number int) (names []string) {
	for _, s := range l.plan.Stakes {
		if s.Guy && s.Arch == number && !slices.Contains(names, s.Pair()) {
			names = append(names, s.Pair())
		}
	}
	return names
}

// order are the tasks by number, up to the stakes out of the ground and everything looked over; what is counted and kept stands behind.
func (l lowering) order() []block.Block {
	var list []block.Block
	number := 0
	var flat []string // what of it is done where it is laid flat before a storm
	for _, t := range l.tasks {
		switch t.Action {
		case crew.Store, crew.NextYear:
			continue
		case crew.LowerArches:
			panels := l.panels(number)
			for _, p := range panels {
				number = p.number
				flat = append(flat, fmt.Sprint(number))
			}
			list = append(list, panelRows(panels)...)
			continue
		}
		step, facts := l.step(t)
		number++
		step.Number = number
		if slices.Contains([]crew.Action{crew.Unplug, crew.UntieLine, crew.TakeStrings}, t.Action) { // rows and drops catch the most wind
			flat = append(flat, fmt.Sprint(number))
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
	high, out := l.units.Inches(l.units.Taped(kind.Spec.Stake.Showing())), l.units.Room(kind.Length-kind.Span)
	foot := fmt.Sprintf("Foot 1 holds L%d. Foot 2 lifts R%d %s off its %s. Ladder, outside, %s it. Walk R%d out; L%d slack: lift it off, cap. Then straight, %s.",
		last, last, high, upright(kind), block.Figure("caps"), last, last, out)
	if n > 1 {
		before, first, joined := l.stand[n-2].Number, l.stand[0].Number, len(l.plan.Ridge) > 0
		list = append(list, panel{number: done + 1, do: l.freed(before, last), paint: func(page *paper.Page, room paper.Rect) {
			pictures.Second(page, room, before, last, joined, l.ladder)
		}})
		foot += l.again(done+1, before, first)
	}
	facts := []block.Fact{{What: "lifted at the take-down", Value: high}, {What: "walked out at the take-down", Value: out}}
	return append(list, panel{number: done + len(list) + 1, do: foot, facts: facts, paint: func(page *paper.Page, room paper.Rect) { pictures.RightFoot(page, room, last) }})
}

// again says which steps take down the arches before the last, and when their guys and braces come off.
func (l lowering) again(free, before, first int) string {
	if before == first {
		return fmt.Sprintf(" Step %d again: arch %d%s.", free+1, first, l.offAt(first))
	}
	var off []string
	for _, a := range slices.Backward(l.stand[:len(l.stand)-1]) {
		if at := l.offAt(a.Number); at != "" {
			off = append(off, at)
		}
	}
	if len(off) > 2 {
		off = []string{", each with its " + say.And(heldBy(l.plan).pick("guys", "braces"))}
	}
	return fmt.Sprintf(" Steps %d, %d again: arch %d to %d%s.", free, free+1, before, first, strings.Join(off, ""))
}

// offAt says which guys and braces come off at an arch.
func (l lowering) offAt(number int) string {
	if names := l.heldBy(number); len(names) > 0 {
		return fmt.Sprintf("; %s off at %d", strings.Join(names, ", "), number)
	}
	return ""
}

// freed says how the last arch is freed from the one before it, and which guys or braces come off.
func (l lowering) freed(before, last int) string {
	do := fmt.Sprintf("Far end first: arch %s. Foot 1, Foot 2 hold it, Guard arch %d.", block.Figure(fmt.Sprint(last)), before)
	if len(l.plan.Ridge) > 0 {
		if slices.ContainsFunc(l.plan.Lights.Wraps, ofRidge) {
			do += " Unplug the ridge string."
		}
		do += fmt.Sprintf(" Ridge piece out of crown %s, then %d.", block.Figure(fmt.Sprint(before)), last)
	}
	if off := l.heldBy(last); len(off) > 0 {
		do += fmt.Sprintf(" Then its %s off: %s. Others stay.", say.And(heldBy(l.plan).pick("guys", "braces")), say.And(off))
	}
	if l.ladder {
		do += " Ladder away."
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

// laidFlat says what of the order is done where it is laid flat before a storm, and until when; the leaf of the evenings calls for it, and says what raises it again.
func (l lowering) laidFlat(steps []string) block.Block {
	lit := ""
	if len(l.plan.Strings) > 0 {
		lit = ", wraps on, strings off cords"
	}
	gust := l.units.Speed(l.lowered(crew.GustBelow).Gust)
	text := fmt.Sprintf("%s, if leaf %d calls it: by daylight, before gusts pass %s, %s %s%s. Carry pipe outside the L %ss, tie with %s.",
		block.Figure("LAY FLAT"), leafNumber("nights"), gust, say.Agree(len(steps), "step", "steps"), say.And(steps), lit, strings.Join(standsOn(l.plan), "s or "), fetchWords[crew.StringLine])
	return block.Block{Name: "laid flat", Gap: 2, Facts: []block.Fact{{What: "laid flat before gusts of", Value: gust}},
		Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: block.Words{Text: text, Figures: paper.Strong}}}}}
}

// askWhom is whom the crews ask, or a line to write the name on.
func askWhom(s *spec.Spec) string {
	return cmp.Or(strings.TrimSpace(s.Crew.Ask.Name+" "+s.Crew.Ask.Phone), "________________")
}
