package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// back is the order of the work: what is said aloud, the pictures, then what comes when all arches stand.
func (r raising) back() []block.Block {
	list := append(r.startAfter(), r.aloud())
	list = append(list, r.bays()...)
	panels := r.panels()
	list = append(list, panelRows(panels)...)
	after, number := r.after(len(panels) + 1)
	list = append(list, after...)
	if !r.hangs() {
		return list
	}
	list = append(list, panelRows(r.hung(number))...)
	return append(list, r.rowTable()...)
}

// stepNumbers are the numbers of the steps, each by the action that it is told for.
func (r raising) stepNumbers() map[crew.Action]int {
	numbers := map[crew.Action]int{}
	panels := r.panels()
	for _, p := range panels {
		numbers[p.action] = p.number
	}
	next := len(panels)
	for _, t := range r.tasks() {
		if r.step(t).Text != "" {
			next++
			numbers[t.Action] = max(numbers[t.Action], next)
		}
	}
	if r.hangs() {
		for _, p := range r.hung(next + 1) {
			numbers[p.action] = p.number
		}
	}
	return numbers
}

// startAfter are the signatures without which nothing begins.
func (r raising) startAfter() []block.Block {
	blanks := block.Blanks{{Word: fmt.Sprintf("Start when signed: leaf %d, stakes", leafNumber("stakes"))}}
	if len(r.plan.Wraps) > 0 {
		blanks = append(blanks, block.Blank{Word: fmt.Sprintf("leaf %d, lights", leafNumber("lights"))})
	}
	return []block.Block{{Name: "start", Body: blanks}}
}

// tasks are the tasks of raising and hanging, in order, and the lights that go on from the ladder.
func (r raising) tasks() []crew.Task {
	return slices.DeleteFunc(slices.Clone(r.plan.Crew.Tasks), func(t crew.Task) bool {
		return t.Phase != crew.Raising && t.Phase != crew.Hanging && t.Action != crew.WindInPlace
	})
}

// task returns the first task of an action, that of one arch if its number is not 0.
func (r raising) task(action crew.Action, number int) (crew.Task, bool) {
	for _, t := range r.tasks() {
		if t.Action == action && (number == 0 || slices.Contains(t.Of.Arches, number)) {
			return t, true
		}
	}
	return crew.Task{}, false
}

// wantedOf returns the first figure of a kind that a task wants.
func wantedOf(t crew.Task, what crew.Wanted) (crew.Figure, bool) {
	i := slices.IndexFunc(t.Want, func(f crew.Figure) bool { return f.What == what })
	if i < 0 {
		return crew.Figure{}, false
	}
	return t.Want[i], true
}

// aloud is what is said before the first arch: three lines, and who heard them.
func (r raising) aloud() block.Block {
	u := r.spec.Units
	t, _ := r.task(crew.CheckDay, 0)
	gust, _ := wantedOf(t, crew.GustBelow)
	cold, _ := wantedOf(t, crew.WarmerThan)
	blows := fmt.Sprintf("gusts %s (%s)", block.Figure(u.Speed(gust.Gust)), signOf(weather.Gust{Forecast: gust.Gust}))
	calm := len(r.plan.Weather.Bears) > 0 && r.plan.Weather.Calm()
	if calm {
		blows = "any wind"
	}
	lines := []string{
		"A bent arch springs: nobody under it till both legs are on stakes, no face near.",
		fmt.Sprintf("No raising: %s, %s or less, thunder, dusk.", blows, block.Figure(u.Temperature(cold.Cold))),
		"Gloves, eye protection. Stop and ask: a crack, a moving stake, a figure off.",
	}
	for i, line := range r.spec.Site.Overhead {
		if w, ok := r.watch(i); ok {
			lines = append(lines, fmt.Sprintf("Overhead, %s: pipe, ladder, people stay %s away. One person only watches it.", line.Name, block.Figure(u.Room(w.Length))))
		}
	}
	var blocks []block.Block
	for _, l := range lines {
		blocks = append(blocks, block.Block{Body: block.Words{Text: l}})
	}
	heard := block.Blanks{{Word: "Heard by all"}}
	if r.spec.Crew.Ask == (spec.Person{}) {
		heard = append(heard, block.Blank{Word: "Ask, phone"})
	}
	blocks = append(blocks, block.Block{Body: heard})
	facts := []block.Fact{{What: "raising cold", Value: u.Temperature(cold.Cold)}}
	if !calm {
		facts = append(facts, block.Fact{What: "raising gust", Value: u.Speed(gust.Gust)})
	}
	return block.Block{Name: "said aloud", Gap: 1, Body: block.Framed{Blocks: blocks}, Facts: facts}
}

// watch is the distance kept from an overhead line, counted from 0.
func (r raising) watch(line int) (crew.Figure, bool) {
	for _, t := range r.tasks() {
		if f, ok := wantedOf(t, crew.KeepOverhead); ok && f.Line == line {
			return f, true
		}
	}
	return crew.Figure{}, false
}

// panels are the pictures in the order of the tasks.
func (r raising) panels() []panel {
	first := r.stand[0]
	var list []panel
	add := func(p panel, ok bool) {
		if ok {
			p.number = len(list) + 1
			list = append(list, p)
		}
	}
	add(r.together(first))
	add(r.tiedFlat())
	add(r.leftFoot(first), true)
	add(r.rightFoot(first), true)
	add(r.heldUp(first), true)
	add(r.measured(first), true)
	if len(r.stand) > 1 {
		add(r.second(first, r.stand[1]), true)
	}
	if len(r.stand) > 2 {
		add(r.others(), true)
	}
	return list
}

func (r raising) together(a arch.Arch) (panel, bool) {
	if _, ok := r.task(crew.JoinCrown, a.Number); !ok {
		return panel{}, false
	}
	do, off := "Legs in to their lines.", "Not in: twist, wipe."
	if r.wholeWraps() {
		do += " Then its lights go on."
	}
	if legs := r.plugged(func(f crew.Figure) []int { return f.Arches }); len(legs) > 0 {
		where := "Plug leg to leg"
		if len(legs) < len(r.stand) {
			where = say.Capital(say.Numbered("arch", legs)) + ": plug leg to leg"
		}
		do += " " + where + ", tie."
		off += " Plugs short: open one turn."
	}
	stub := len(r.plan.Ridge) > 0
	if stub && len(r.stand) > 2 {
		do = fmt.Sprintf("Tee on arches %d, %d, cross on others. ", a.Number, r.stand[len(r.stand)-1].Number) + do
	}
	return panel{action: crew.JoinCrown, do: do, off: off,
		paint: func(page *paper.Page, room paper.Rect) []string { return r.Together(page, room, stub) }}, true
}

// plugged gathers the arches at whose crowns legs are plugged together, or the bays whose ridge pieces are plugged to what is beside them.
func (r raising) plugged(of func(crew.Figure) []int) (numbers []int) {
	for _, t := range r.tasks() {
		for _, f := range t.Want {
			if f.What == crew.Plugged {
				numbers = append(numbers, of(f)...)
			}
		}
	}
	return numbers
}

// wholeWraps reports whether lights run over the crown, so that both legs are in it before.
func (r raising) wholeWraps() bool {
	return slices.ContainsFunc(r.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.JoinForWrap })
}

func (r raising) leftFoot(a arch.Arch) panel {
	return panel{action: crew.SetLeft, do: fmt.Sprintf("Crown lifts from beside. Leg %s over its stake to the ground, cap off as it comes.", block.Figure(fmt.Sprintf("L%d", a.Number))),
		off:   "Stuck: wipe, never hammer.",
		paint: func(page *paper.Page, room paper.Rect) []string { return r.LeftFoot(page, room, a.Number) }}
}

func (r raising) rightFoot(a arch.Arch) panel {
	return panel{action: crew.WalkRight, do: fmt.Sprintf("Crown steps clear. Walk leg %s over its stake, slowly. Hold till both are down. Caps in bucket.", block.Figure(fmt.Sprintf("R%d", a.Number))),
		off:   "Crack: walk it back, ask.",
		paint: func(page *paper.Page, room paper.Rect) []string { return r.RightFoot(page, room, a.Number) }}
}

// leans is what is done where an arch leans by itself.
const leans = "If it leans: arch off, caps on, call the stake crew."

// heldUp guys the first arch, or has it held by a person.
func (r raising) heldUp(a arch.Arch) panel {
	p := panel{action: crew.StretchGuys, paint: func(page *paper.Page, room paper.Rect) []string { return r.Held(page, room, a.Number) }}
	t, ok := r.task(crew.StretchGuys, a.Number)
	pegs, braced := r.task(crew.FixBraces, a.Number)
	switch {
	case ok:
	case braced:
		p.do, p.off = "Guard holds it plumb. "+r.braceWords(pegs), "Pegs stay capped."
		return p
	default:
		p.do = fmt.Sprintf("Guard holds arch %d, and nothing else, until the %s is joined.", a.Number, block.Figure("last arch"))
		if len(r.stand) == 1 || len(r.plan.Ridge) == 0 {
			p.do = fmt.Sprintf("Guard holds arch %d %s while it is measured. Nothing else holds it.", a.Number, block.Figure("upright"))
		}
		p.off = leans
		return p
	}
	taut, _ := wantedOf(t, crew.GuyTaut)
	p.do = fmt.Sprintf("Guard holds it plumb. Tighten guys to %s alike: a finger moves each %s.", stakeNames(t.Of.Stakes), block.Figure(r.spec.Units.Inches(taut.Length)))
	if a.Number == 1 && len(r.stand) > 1 {
		p.do += " Nets on."
	}
	if braced {
		p.do += " " + r.braceWords(pegs)
	}
	p.off = "Guy stakes stay capped."
	p.facts = []block.Fact{{What: "a finger moves a guy", Value: r.spec.Units.Inches(taut.Length)}}
	return p
}

// braceWords say how braces are fixed, and how high on the legs.
func (r raising) braceWords(t crew.Task) string {
	mark, _ := wantedOf(t, crew.BraceMark)
	how := "Clamp a brace to each leg, %s up, and to %s, outside the pipe."
	if r.spec.Braces.Line {
		how = "Buckle a line from each leg, %s up, to %s, in the wall."
	}
	return fmt.Sprintf(how, block.Figure(r.spec.Units.Inches(r.spec.Units.Taped(mark.Length))), stakeNames(t.Of.Stakes))
}

func (r raising) measured(a arch.Arch) panel {
	do := fmt.Sprintf("Measure arch %d, fill in the front, %s.", a.Number, block.Figure("sign"))
	return panel{action: crew.MeasureArch, do: do, off: "Off: list in front.", hold: true,
		paint: func(page *paper.Page, room paper.Rect) []string { return r.Measured(page, room, a.Number, r.ladder()) }}
}

func (r raising) second(first, a arch.Arch) panel {
	joined := len(r.plan.Ridge) > 0
	p := panel{action: crew.RaiseSame, paint: func(page *paper.Page, room paper.Rect) []string {
		return r.Second(page, room, first.Number, a.Number, joined, r.ladder())
	}}
	if !joined {
		p.do = fmt.Sprintf("Arch %s the same way. Hold it until it stands plumb.", block.Figure(fmt.Sprint(a.Number)))
		p.off = leans
		return p
	}
	p.action, p.hold = crew.MeasureBay, true
	p.do = fmt.Sprintf("Arch %d the same. Ridge 1 into crown %s, then crown %d. Measure crown 1 to 2, %s.", a.Number, block.Figure(fmt.Sprint(a.Number)), first.Number, block.Figure("sign"))
	p.off = "Off: twist, push home."
	if len(r.plan.Ridge) > 1 {
		p.off = "Off: push home. The cutting crew waits: tell it."
	}
	return p
}

// others stands the rest one by one.
func (r raising) others() panel {
	third, last := r.stand[2].Number, r.stand[len(r.stand)-1].Number
	joined, to := len(r.plan.Ridge) > 0, min(r.stand[0].Number+3, last)
	p := panel{action: crew.RaiseRest, off: "It leans: do not go on.", paint: func(page *paper.Page, room paper.Rect) []string {
		return r.Running(page, room, r.stand[0].Number, to, joined)
	}}
	t, _ := r.task(crew.RaiseRest, 0)
	p.do = r.wrapInPlace() + fmt.Sprintf("%s %s the same", say.Agree(last-third+1, "Arch", "Arches"), block.Figure(say.Numbers(say.From(third, last))))
	if joined {
		p.do += "; hold each till its ridge is in"
		if len(r.plugged(bayNumbers)) > 0 {
			p.do += ", plugged"
		}
	}
	if joined && len(r.readings()) > 1 {
		p.do += ", taped"
		p.off = "Long: push in. Short: ask."
	}
	p.do += "."
	if held := r.heldAtOnce(t); len(t.Of.Stakes) <= mostStakes {
		p.do += held[0] + held[1]
	} else {
		var names []string
		for i, name := range [2]string{"guys", "braces"} {
			if held[i] != "" {
				names = append(names, name)
			}
		}
		p.do += fmt.Sprintf(" Then %s, as in front.", say.And(names))
	}
	return p
}

// mostStakes is how many stakes of guys and braces are named in a picture's words.
const mostStakes = 2

// heldAtOnce says to which stakes the guys and the braces of a task's arches go, each empty where there are none.
func (r raising) heldAtOnce(t crew.Task) (held [2]string) {
	guys, pegs := r.fixed(t)
	if len(guys) > 0 {
		held[0] = " Guys of " + guysTo(guys) + "."
	}
	if len(pegs) > 0 {
		held[1] = " Braces of " + guysTo(pegs) + "."
	}
	return held
}

// fixed parts a task's stakes into those of guys and the pegs of braces.
func (r raising) fixed(t crew.Task) (guys, pegs []ground.Stake) {
	for _, s := range t.Of.Stakes {
		switch {
		case s.Bay > 0:
			pegs = append(pegs, s)
		case s.Guy:
			guys = append(guys, s)
		}
	}
	return guys, pegs
}

// bayNumbers are the bays of a figure.
func bayNumbers(f crew.Figure) []int { return f.Bays }

// wrapInPlace has ridge 1 wrapped where it is.
func (r raising) wrapInPlace() string {
	t, ok := r.task(crew.WindInPlace, 0)
	if !ok {
		return ""
	}
	w := r.plan.Lights.Wraps[t.Of.Wraps[0]]
	return fmt.Sprintf("Wrap ridge %d there (%s, leaf %d). ", w.On.Number, say.And(w.Strings), leafNumber("lights"))
}

// joining tells of the arches after the second what is too long for their picture: the stakes of their guys, which way round ridge pieces with lights go in, and at
// which crowns two of them are plugged together.
func (r raising) joining() []block.Block {
	var words []string
	t, ok := r.task(crew.RaiseRest, 0)
	if len(t.Of.Stakes) > mostStakes {
		for _, held := range r.heldAtOnce(t) {
			if held != "" {
				words = append(words, strings.TrimSpace(held))
			}
		}
	}
	if prongs := r.ridgeProngs(); ok && prongs != "" {
		words = append(words, prongs)
	}
	if len(words) == 0 {
		return nil
	}
	step := fmt.Sprintf("Step %d. ", r.stepNumbers()[crew.RaiseRest])
	return []block.Block{{Name: "joining", Gap: 2, Body: block.Words{Text: step + strings.Join(words, " ")}}}
}

// ridgeProngs says which way round ridge pieces with lights go in and at which crowns they are plugged together, where that is short.
func (r raising) ridgeProngs() string {
	var toward [2][]int // arch 1, the last arch
	for _, w := range r.plan.Wraps {
		if w.On.Kind != lights.Ridge {
			continue
		}
		k := 0
		if w.Crown {
			k = 1
		}
		toward[k] = append(toward[k], w.On.Number)
	}
	bays := r.plugged(bayNumbers)
	slices.Sort(bays)
	bays = slices.Compact(bays)
	const few = 8 // stretches of numbers
	var words []string
	runs := len(say.Runs(bays))
	for k, list := range toward {
		slices.Sort(list)
		if list = slices.Compact(list); len(list) > 0 {
			runs += len(say.Runs(list))
			words = append(words, fmt.Sprintf("%s toward arch %d", say.Numbers(list), [2]int{r.stand[0].Number, r.stand[len(r.stand)-1].Number}[k]))
		}
	}
	switch {
	case len(words) == 0:
		return ""
	case runs > few:
		return fmt.Sprintf("Ridge lights face and plug as leaf %d draws.", leafNumber("lights"))
	}
	text := "Prongs of ridge " + strings.Join(words, "; ") + "."
	if len(bays) > 0 {
		text += " Plug at " + say.Numbered("crown", bays) + ": prongs to prongs there, turn one round."
	}
	var apart []int // crowns that ridge pieces meet at and are not plugged
	for bay := r.stand[0].Number + 1; bay < r.stand[len(r.stand)-1].Number; bay++ {
		if !slices.Contains(bays, bay) {
			apart = append(apart, bay)
		}
	}
	if len(bays) > 0 && len(apart) > 0 {
		text += " Never at " + say.Numbered("crown", apart) + "."
	}
	return text
}
