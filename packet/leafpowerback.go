package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// back is the order of the work: what is said aloud, the steps with their tests, then what to do when it trips and when a string is dead.
func (p powering) back() []block.Block {
	list := []block.Block{p.aloud()}
	number := 0
	for _, t := range p.tasksOf(crew.Powering) {
		if t.Action == crew.PlugRuns && number > 0 && p.plugged(t) > 0 {
			continue // all outlets are one step
		}
		number++
		list = append(list, p.step(number, t)...)
	}
	list = append(list, p.trips()...)
	return append(list, p.dead())
}

// plugged is how many outlets' plugging was told before.
func (p powering) plugged(t crew.Task) int {
	for i, o := range p.outletsInUse() {
		if o == t.Of.Outlets[0] {
			return i
		}
	}
	return 0
}

// outletsInUse names the outlets that something is plugged into, in the order of the work.
func (p powering) outletsInUse() (names []string) {
	for _, t := range p.tasksOf(crew.Powering) {
		if t.Action == crew.PlugRuns {
			names = append(names, t.Of.Outlets...)
		}
	}
	return names
}

// aloud is what is said before the first cord is laid.
func (p powering) aloud() block.Block {
	lines := []string{
		"Dry hands, dry plugs. Nothing in an outlet before the ten checks.",
		"Prongs facing prongs: turn the string round. No adaptor: it kills.",
		"No ladder in the dark. Outlets, breakers: a licensed electrician.",
	}
	return block.Block{Name: "said aloud", Body: block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 3, Cols: []block.Column{
		{Share: 1, Blocks: []block.Block{{Body: block.Words{Lettering: paper.Floor, Text: strings.Join(lines, "\n")}}}}, {Width: 34, Blocks: []block.Block{{Gap: 4, Body: block.Blanks{{Word: "Heard by"}}}}}}}}}}}
}

// step is one task, with what it holds for.
func (p powering) step(number int, t crew.Task) []block.Block {
	in := newTaskWords(p.plan).of(t)
	s := block.Step{Number: number, Text: in.Do, Then: strings.TrimSpace(in.Want + " " + in.IfOff)}
	one := func(facts ...block.Fact) []block.Block {
		b := block.Block{Name: fmt.Sprintf("power, step %d", number), Gap: 1.2, Body: s, Facts: facts}
		if t.Hold {
			b.Body = signedStep(s)
		}
		return []block.Block{b}
	}
	switch t.Action {
	case crew.LayCords:
		s.Then = "" // all of it is among the checks
		return one(block.Fact{What: "joints off the ground", Value: p.handHigh()})
	case crew.CheckCords:
		head := block.Words{Text: fmt.Sprintf("%d  %s", number, in.Do), Lettering: paper.Strong}
		return []block.Block{{Name: "checks before power", Gap: 1.2, Body: block.Framed{Blocks: []block.Block{
			{Body: block.Columns{Gap: 3, Cols: []block.Column{{Share: 1, Blocks: []block.Block{{Gap: 2, Body: head}}}, {Width: signWide, Blocks: []block.Block{{Body: block.Blanks{{Word: "Signed"}}}}}}}},
			{Gap: 0.6, Body: checkGrid(p.checks())}}}}}
	case crew.PlugRuns:
		s.Then = ""
		for _, o := range p.outletsInUse() {
			s.Text += fmt.Sprintf(" %s: %s in all.", say.Capital(o), block.Figure(p.ampsAt(o)))
		}
		return one(p.lightUpFacts()...)
	case crew.FeelPlugs:
		s.Text, s.Then = s.Text+" "+s.Then, ""
	case crew.SetTimers:
		s.Then = ""
		return one(block.Fact{What: "timers off after closing, minutes", Value: fmt.Sprint(practice.TimerAfter)}, block.Fact{What: "size of the timers", Value: timerSize(p.plan.Power)})
	}
	return one()
}

// signWide is the room of a line to sign on beside a step.
const signWide paper.Length = 36

// signedStep is a step that nobody goes on from before it is signed: the line to sign on stands beside it.
func signedStep(s block.Step) block.Framed {
	return block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 3, Cols: []block.Column{
		{Share: 1, Blocks: []block.Block{{Body: s}}}, {Width: signWide, Blocks: []block.Block{{Body: block.Blanks{{Word: "Signed"}}}}}}}}}}
}

// checks are looked at with everything laid and nothing plugged into an outlet.
func (p powering) checks() []string {
	w := p.plan.Power
	laid := say.Count(len(w.Cords), "cord")
	if n := len(w.Taps); n > 0 {
		laid += ", " + say.Count(n, "three-way")
	}
	return []string{
		laid + ", none more",
		"an outdoor mark on each",
		"no cut, no tape, all pins whole",
		"no coil, no pinch under a foot",
		"none where people walk",
		"no prongs facing prongs",
		fmt.Sprintf("a cover on each of %s", say.Count(w.Joints+w.Links, "joint")),
		fmt.Sprintf("a cover on %s", say.Count(w.Open, "open socket")),
		"every joint tied up, loop below it",
		"outlet covers shut over the plug",
	}
}

// checkGrid sets checks in two columns, each with a box to tick.
func checkGrid(checks []string) block.Columns {
	half := (len(checks) + 1) / 2
	column := func(from int, list []string) (blocks []block.Block) {
		for i, c := range list {
			blocks = append(blocks, block.Block{Gap: 0.6, Body: block.Step{Number: from + i, Text: c}})
		}
		return blocks
	}
	return block.Columns{Gap: 4, Cols: []block.Column{{Share: 1, Blocks: column(1, checks[:half])}, {Share: 1, Blocks: column(half+1, checks[half:])}}}
}

// ampsAt is what the lights at an outlet take in all.
func (p powering) ampsAt(outlet string) string {
	var amps measure.Current
	for _, d := range p.plan.Power.Feeders {
		if d.Outlet == outlet {
			amps += d.Amps
		}
	}
	return measure.Amps(amps)
}

func (p powering) lightUpFacts() (list []block.Fact) {
	for _, o := range p.outletsInUse() {
		list = append(list, block.Fact{What: "amps in all at outlet " + o, Value: p.ampsAt(o)})
	}
	return list
}

// trips is what is done when it goes dark, in order.
func (p powering) trips() []block.Block {
	kind := device(p.volts())
	steps := []string{
		"Torches on. Way in shut, people walked out. Leave it off.",
		fmt.Sprintf("Dry hands: pull the cord at the outlet. Press %s. Trips with nothing in it: electrician.", block.Figure("RESET")),
		"Unplug every run. Cord in, then run by run, downward on the front, until one trips it.",
		"That run is wet or hurt: dry it, tie it higher, try once more. Else leave it unplugged.",
		"Write night, outlet and run in the log. Twice: leave it off, ask.",
	}
	list := []block.Block{block.Heading(fmt.Sprintf("When %s or a breaker trips", withArticle(kind)))}
	for i, s := range steps {
		list = append(list, block.Block{Name: "trip drill", Gap: 0.6, Body: block.Step{Number: i + 1, Text: s, NoTick: true}})
	}
	return list
}

// dead is what is done with a string that stays dark.
func (p powering) dead() block.Block {
	return block.Block{Name: "dead string", Gap: 2, Body: block.Words{Figures: paper.Strong, Text: block.Figure("A dead string") +
		" waits for daylight, its run unplugged. Then: its fuse, its plug, a spare string."}}
}

// handHigh is how far off the ground a joint is kept, as printed.
func (b *binder) handHigh() string { return b.spec.Units.Inches(practice.JointHigh(b.spec.Units)) }
