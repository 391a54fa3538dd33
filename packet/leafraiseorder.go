package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/say"
)

// back is the order of the work: what is said aloud, the pictures, then what comes when all arches stand.
func (r raising) back() []block.Block {
	list := []block.Block{{Name: "start", Body: block.Blanks{{Word: "Start when"}, {Word: r.startAfter()}}}, r.aloud()}
	panels := r.panels()
	list = append(list, panelRows(panels)...)
	after, number := r.after(len(panels) + 1)
	list = append(list, after...)
	if !r.hangs() {
		return list
	}
	list = append(list, panelRows(r.hung(number))...)
	return append(list, r.bays()...)
}

// startAfter says whose work has to be signed before.
func (r raising) startAfter() string {
	words := fmt.Sprintf("has signed leaf %d: stakes driven", leafNumber("stakes"))
	if len(r.plan.Wraps) > 0 {
		words += fmt.Sprintf(", leaf %d: lights on", leafNumber("lights"))
	}
	return words
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
	blows := "in gusts of " + block.Figure(u.Speed(gust.Gust))
	calm := len(r.plan.Weather.Bears) > 0 && r.plan.Weather.Calm()
	if calm {
		blows = "in any wind"
	}
	lines := []string{
		"A bent arch is a spring: nobody under it, no face near it. Gloves, eye protection.",
		fmt.Sprintf("No raising %s, at %s or colder, in thunder or at dusk.", blows, block.Figure(u.Temperature(cold.Cold))),
		"Stop and ask: a crack, a stake that moves, a figure off. Anyone may call stop.",
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
	blocks = append(blocks, block.Block{Body: block.Blanks{{Word: "Heard by all: signed"}, {Word: "Guard is", Share: 0.7}}})
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
	t, ok := r.task(crew.JoinCrown, a.Number)
	if !ok {
		return panel{}, false
	}
	f, _ := wantedOf(t, crew.SocketMarks)
	depth, fitting := r.spec.Units.Cut(f.Length), r.spec.CrownFitting(a.Number).String()
	do := fmt.Sprintf("Drive both legs into the %s, up to the mark.", fitting)
	switch {
	case r.wholeWraps():
		do += " Then its lights go on."
	case r.Wrapped:
		do += " Lights are on already."
	}
	stub := len(r.plan.Ridge) > 0
	return panel{do: do, off: "If not: twist, wipe, drive again.", facts: []block.Fact{{What: "socket depth of a leg", Value: depth}},
		paint: func(page *paper.Page, room paper.Rect) []string { return r.Together(page, room, depth, stub) }}, true
}

// wholeWraps reports whether lights run over the crown, so that both legs are in it before.
func (r raising) wholeWraps() bool {
	return slices.ContainsFunc(r.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.JoinForWrap })
}

func (r raising) leftFoot(a arch.Arch) panel {
	return panel{do: fmt.Sprintf("Left leg over %s, to the ground. Cap off only as it comes.", block.Figure(fmt.Sprintf("L%d", a.Number))),
		off:   "If not: lift it off, wipe the stake, never hammer.",
		paint: func(page *paper.Page, room paper.Rect) []string { return r.LeftFoot(page, room, a.Number) }}
}

func (r raising) rightFoot(a arch.Arch) panel {
	return panel{do: fmt.Sprintf("Walk the right leg to %s, slowly. Hold on till both feet are down. Caps in the bucket.", block.Figure(fmt.Sprintf("R%d", a.Number))),
		off:   "A crack: walk it back, take a spare stick.",
		paint: func(page *paper.Page, room paper.Rect) []string { return r.RightFoot(page, room, a.Number) }}
}

// heldUp guys the first arch, or has it held by a person.
func (r raising) heldUp(a arch.Arch) panel {
	p := panel{paint: func(page *paper.Page, room paper.Rect) []string { return r.Held(page, room, a.Number) }}
	t, ok := r.task(crew.StretchGuys, a.Number)
	if !ok {
		p.do = fmt.Sprintf("Guard holds arch %d, and nothing else, until the %s is joined.", a.Number, block.Figure("last arch"))
		if len(r.stand) == 1 || len(r.plan.Ridge) == 0 {
			p.do = fmt.Sprintf("Guard holds arch %d %s while it is measured. Nothing else holds it.", a.Number, block.Figure("upright"))
		}
		p.off = "If it leans: drive that stake again, upright."
		return p
	}
	taut, _ := wantedOf(t, crew.GuyTaut)
	p.do = fmt.Sprintf("Guard holds it plumb. Hook guys to %s: a finger moves each %s.", stakeNames(t.Of.Stakes), block.Figure(r.spec.Units.Inches(taut.Length)))
	p.off = "If not: slacken one side, draw in the other."
	p.facts = []block.Fact{{What: "a finger moves a guy", Value: r.spec.Units.Inches(taut.Length)}}
	return p
}

func (r raising) measured(a arch.Arch) panel {
	do := fmt.Sprintf("Measure arch %d, up to mid pipe. Fill in the front, %s.", a.Number, block.Figure("sign"))
	if len(r.stand) > 1 {
		do += " No other before."
	}
	return panel{do: do, off: "If not: faults on the front.", hold: true,
		paint: func(page *paper.Page, room paper.Rect) []string { return r.Measured(page, room, a.Number, r.ladder()) }}
}

func (r raising) second(first, a arch.Arch) panel {
	joined := len(r.plan.Ridge) > 0
	p := panel{paint: func(page *paper.Page, room paper.Rect) []string {
		return r.Second(page, room, first.Number, a.Number, joined, r.ladder())
	}}
	if !joined {
		p.do = fmt.Sprintf("Arch %s the same way. Hold it until it stands plumb.", block.Figure(fmt.Sprint(a.Number)))
		p.off = "If it leans: drive that stake again, upright."
		return p
	}
	p.hold = true
	p.do = fmt.Sprintf("Arch %d the same. Ridge piece into crown %s first, then %d. Tape it, %s the front.", a.Number, block.Figure(fmt.Sprint(a.Number)), first.Number, block.Figure("sign"))
	p.off = "If not: the saw cuts the others longer or shorter."
	return p
}

// others stands the rest one by one.
func (r raising) others() panel {
	third, last := r.stand[2].Number, r.stand[len(r.stand)-1].Number
	joined, to := len(r.plan.Ridge) > 0, min(r.stand[0].Number+3, last)
	p := panel{paint: func(page *paper.Page, room paper.Rect) []string {
		return r.Running(page, room, r.stand[0].Number, to, joined)
	}}
	p.do = fmt.Sprintf("%s the same, one by one", say.Agree(last-third+1, "Arch", "Arches")+" "+block.Figure(say.Numbers(say.From(third, last))))
	t, _ := r.task(crew.RaiseRest, 0)
	if joined {
		p.do += ", held till joined"
	}
	p.do += "."
	if len(r.guyedIn(t)) > 0 {
		p.do += " Hook guys at once."
	}
	p.off = "If it leans: do not go on."
	if joined && len(r.readings()) > 1 {
		p.off = "Long: sockets home. Short: next piece longer."
	}
	return p
}

// guyedIn lists the arches of a task that have guys of their own.
func (r raising) guyedIn(t crew.Task) []int {
	var list []int
	for _, s := range t.Of.Stakes {
		if s.Guy && !slices.Contains(list, s.Arch) {
			list = append(list, s.Arch)
		}
	}
	return list
}
