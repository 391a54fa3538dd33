package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// lowering writes the leaf of the crew that takes the tunnel down: people who have not seen it go up.
type lowering struct {
	*binder
	words taskWords
	tasks []crew.Task
}

// takedownLeaf is what the take-down crew works from: in front what can hurt them and the order of the work; behind what is counted in, how it is kept, and
// what next year wants to know.
func (b *binder) takedownLeaf() []folio {
	l := lowering{b, newTaskWords(b.plan), b.tasksOf(crew.TakeDown)}
	if len(l.tasks) == 0 {
		return nil
	}
	front := append([]block.Block{l.stopBox()}, l.order()...)
	return []folio{{
		front: side{title: "Take down: the order", blocks: front},
		back:  side{title: "Take down: counted, kept", blocks: l.back()},
	}}
}

// task returns the task of an action.
func (l lowering) task(action crew.Action) (crew.Task, bool) {
	i := slices.IndexFunc(l.tasks, func(t crew.Task) bool { return t.Action == action })
	if i < 0 {
		return crew.Task{}, false
	}
	return l.tasks[i], true
}

// wanted returns the first figure of a kind that the task of an action wants.
func (b *binder) wanted(action crew.Action, what crew.Wanted) crew.Figure {
	i := slices.IndexFunc(b.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == action })
	if i < 0 {
		return crew.Figure{}
	}
	return figureOf(b.plan.Crew.Tasks[i], what)
}

// figureOf returns the first figure of a kind that a task wants.
func figureOf(t crew.Task, what crew.Wanted) crew.Figure {
	i := slices.IndexFunc(t.Want, func(f crew.Figure) bool { return f.What == what })
	if i < 0 {
		return crew.Figure{}
	}
	return t.Want[i]
}

// stopBox is each danger in short, for people who hear of it for the first time.
func (l lowering) stopBox() block.Block {
	u := l.spec.Units
	t, _ := l.task(crew.LowerArches)
	gust, cold, slow := u.Speed(figureOf(t, crew.GustBelow).Gust), u.Temperature(figureOf(t, crew.WarmerThan).Cold), u.Temperature(figureOf(t, crew.SlowBelow).Cold)
	facts := []block.Fact{{What: "take-down gust", Value: gust}, {What: "take-down cold", Value: cold}, {What: "take-down, slowly below", Value: slow}}
	var lines []block.Block
	add := func(when bool, name, do string) {
		if when {
			lines = append(lines, block.Block{Gap: 0.6, Body: block.Words{Text: block.Figure(name+":") + " " + do, Figures: paper.Strong}})
		}
	}
	climber := "ridge, caps"
	if l.ladder() {
		climber = "climbs, caps"
	}
	add(true, "People", fmt.Sprintf("%d, %d or older. Foot 1, Foot 2: legs. Crown: the top, then the ladder’s foot. Ladder: %s. Guard: the lone arch. Bring: leaf %d, Raising, Take-down.",
		len(t.Who.Roles), practice.Least, climber, leafNumber("stock")))
	add(len(l.plan.Strings) > 0, "Live wires", "step 1 first, signed.")
	add(true, "Bent pipe", "a spring, brittle by now. Eye protection on, nobody under an arch with a foot off.")
	add(true, "Another day", fmt.Sprintf("gusts of %s, thunder, dusk, %s or colder. Below %s bend slowly.", block.Figure(gust), block.Figure(cold), block.Figure(slow)))
	add(true, "Bare stake", "a spike: cap at once.")
	add(l.ladder(), "Ladder", "stepladder fully open, never against pipe.")
	for _, line := range l.spec.Site.Overhead {
		add(true, "Overhead, "+line.Name, fmt.Sprintf("pipe, ladder and people %s away. One person watches it.", u.Room(line.Keep)))
		facts = append(facts, block.Fact{What: "kept from " + line.Name + ", take-down", Value: u.Room(line.Keep)})
	}
	add(true, "Stop, ask "+cmp.Or(strings.TrimSpace(l.spec.Crew.Ask.Name+" "+l.spec.Crew.Ask.Phone), "________________"), "a crack, a stuck stake, a count that is off. Anyone calls stop.")
	lines = append(lines, block.Block{Body: block.Blanks{{Word: l.readOn()}, {Word: "heard by all, signed", Share: 1.4}}})
	return block.Block{Name: "stop box", Body: block.Framed{Blocks: lines}, Facts: facts}
}

// readOn says when the stop box is read aloud.
func (l lowering) readOn() string {
	if day := l.spec.Dates.Down; !day.IsZero() {
		return day.Format("Mon 2 Jan 2006") + ", read aloud by"
	}
	return "Read aloud by"
}

// held names the stakes of an arch's guys, or of a bay's brace.
func (l lowering) held(is func(ground.Stake) bool) (names []string) {
	for _, s := range l.plan.Stakes {
		if s.Guy && is(s) && !slices.Contains(names, s.Pair()) {
			names = append(names, s.Pair())
		}
	}
	return names
}

func (l lowering) guysOf(number int) []string {
	return l.held(func(s ground.Stake) bool { return s.Bay == 0 && s.Arch == number })
}

// order are the tasks by number, up to the stakes out of the ground and everything looked over; what is counted and kept stands behind.
func (l lowering) order() []block.Block {
	var list []block.Block
	number := 0
	var lower []string
	for _, t := range l.tasks {
		switch t.Action {
		case crew.Store, crew.NextYear:
			continue
		case crew.LowerArches:
			panels := l.panels()
			for i := range panels {
				number++
				panels[i].number = number
				lower = append(lower, fmt.Sprint(number))
			}
			list = append(list, panelRows(panels)...)
			continue
		}
		step := l.step(t)
		number++
		step.Number = number
		if t.Action == crew.TakeStrings { // rows and drops catch the most wind
			lower = append(lower, fmt.Sprint(number))
		}
		list = append(list, block.Block{Name: fmt.Sprintf("step %d", number), Gap: 1.4, Body: step, Facts: l.facts(t)})
	}
	return append(list, l.laidFlat(lower))
}

// panels are the pictures of an arch that comes down.
func (l lowering) panels() []panel {
	pictures, ok := draw.NewRaising(l.plan)
	if !ok {
		return nil
	}
	pictures.Down = true
	stand := l.standing()
	last := stand[len(stand)-1].Number
	var list []panel
	if len(stand) > 1 {
		before, joined := stand[len(stand)-2].Number, len(l.plan.Ridge) > 0
		list = append(list, panel{do: l.freed(before, last, stand[0].Number), paint: func(page *paper.Page, room paper.Rect) {
			pictures.Second(page, room, before, last, joined, l.ladder())
		}})
	}
	foot := panel{do: fmt.Sprintf("Foot 1 holds L%d. Foot 2 lifts the right foot off, Ladder %s R%d. Walk it out till the pipe lies straight. Then L%d.", last, block.Figure("caps"), last, last),
		paint: func(page *paper.Page, room paper.Rect) { pictures.RightFoot(page, room, last) }}
	if len(stand) > 1 {
		foot.do += fmt.Sprintf(" Next, all the same: arch %d, down to arch %d.", stand[len(stand)-2].Number, stand[0].Number)
	}
	return append(list, foot)
}

// freed says how the last arch is freed from the one before it, which guys come off and which stay.
func (l lowering) freed(before, last, first int) string {
	do := fmt.Sprintf("Arch %s first: Guard holds it.", block.Figure(fmt.Sprint(last)))
	if n := len(l.plan.Ridge); n > 0 {
		if slices.ContainsFunc(l.plan.Lights.Wraps, ofRidge) {
			do += " Unplug the ridge string."
		}
		do += fmt.Sprintf(" Ridge piece out of crown %s, then %d.", block.Figure(fmt.Sprint(before)), last)
		if braces := l.held(func(s ground.Stake) bool { return s.Bay == l.plan.Ridge[n-1].Bay }); len(braces) > 0 {
			do += fmt.Sprintf(" Off with it: %s %s.", say.Agree(len(braces), "brace", "braces"), say.And(braces))
		}
	}
	if guys := l.guysOf(last); len(guys) > 0 {
		do += fmt.Sprintf(" Now its guys off: %s.", say.And(guys))
	}
	if guys := l.guysOf(first); len(guys) > 0 {
		do += fmt.Sprintf(" %s to the end.", say.And(guys)+say.Agree(len(guys), " stays", " stay"))
	}
	return do
}

// step is a task as a step to tick. Its weather stands in the stop box.
func (l lowering) step(t crew.Task) block.Step {
	told := []crew.Wanted{crew.SetMarked, crew.CrownFound, crew.NoneLeft, crew.AsDrawn, crew.EndsTogether, crew.PipeSound} // in what is done, or overleaf
	plain := t
	plain.Want = slices.DeleteFunc(slices.Clone(t.Want), func(f crew.Figure) bool { return slices.Contains(told, f.What) })
	plain.IfOff = slices.DeleteFunc(slices.Clone(t.IfOff), func(c crew.Cure) bool { return c.Do == crew.NeverGoOn })
	in := l.words.of(plain)
	s := block.Step{Text: eachOnce([]string{in.Do, in.Want, in.IfOff}), Hold: t.Hold}
	switch {
	case t.Action == crew.MeasureSag:
		for _, f := range t.Want {
			s.Sign = append(s.Sign, block.Blank{Word: fmt.Sprintf("Arch %d: %s, found", f.Arches[0], l.spec.Units.Inches(f.Length))})
		}
	case t.Hold:
		s.Sign, s.Aside = []block.Blank{{Word: "Signed"}}, signWide
	}
	return s
}

// facts are the figures of a step.
func (l lowering) facts(t crew.Task) (list []block.Fact) {
	for _, f := range t.Want {
		if f.What == crew.CrownFound {
			list = append(list, block.Fact{What: fmt.Sprintf("late crown, arch %d", f.Arches[0]), Value: l.spec.Units.Inches(f.Length)})
		}
	}
	return list
}

// laidFlat says what of the order is done where it is laid flat before a storm, and in what weather that may be.
func (l lowering) laidFlat(lower []string) block.Block {
	crowns, stays := "ridge pieces", ""
	if len(l.plan.Strings) > 0 {
		lower = append([]string{"1"}, lower...)
		crowns, stays = "strings, cords and ridge pieces", ", wraps on"
	}
	do := fmt.Sprintf("%s %s%s", say.Agree(len(lower), "Step", "Steps"), say.And(lower), stays)
	if len(l.plan.Ridge) > 0 {
		do += ", after freeing " + crowns + " at every crown"
	}
	t, _ := l.task(crew.LowerArches)
	text := fmt.Sprintf("%s by daylight, done before gusts pass %s; in cold slowly. %s. Tie each flat along its row, stakes capped. Too late: leaf %d. Up again: leaf %d.", block.Figure("LAY FLAT for a storm:"),
		l.spec.Units.Speed(figureOf(t, crew.GustBelow).Gust), do, leafNumber("nights"), leafNumber("raise"))
	return block.Block{Name: "laid flat", Gap: 2, Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: block.Words{Text: text, Figures: paper.Strong}}}}}
}
