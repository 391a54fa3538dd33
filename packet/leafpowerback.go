package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// back is the order of the work: what is said aloud, the steps with their tests, then what to do when it trips and when a string is dead.
func (p powering) back() []block.Block {
	list := []block.Block{p.aloud()}
	number, plugging := 0, false
	for _, t := range tasksOf(p.plan, crew.Powering) {
		if t.Action == crew.PlugRuns {
			if plugging {
				continue // all outlets are one step
			}
			plugging = true
		}
		number++
		list = append(list, p.step(number, t)...)
	}
	list = append(list, p.trips()...)
	return append(list, p.dead())
}

// aloud is what is said before the first cord is laid.
func (p powering) aloud() block.Block {
	lines := []string{
		"Dry hands, dry plugs. No cord in an outlet before the ten checks.",
		"Prongs facing prongs: turn the string round. Never an adaptor: it kills.",
		"No ladder in the dark. Outlets, breakers: a licensed electrician.",
	}
	return block.Block{Name: "said aloud", Gap: 2, Body: block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 3, Cols: []block.Column{
		{Share: 1, Blocks: []block.Block{{Body: block.Words{Lettering: paper.Floor, Text: strings.Join(lines, "\n")}}}}, {Width: 34, Blocks: []block.Block{{Gap: 4, Body: block.Blanks{{Word: "Heard by"}}}}}}}}}}}
}

// step is one task, with what it holds for.
func (p powering) step(number int, t crew.Task) []block.Block {
	in := newTaskWords(p.plan).of(t)
	s := block.Step{Number: number, Text: in.Do, Then: strings.TrimSpace(in.Want + " " + in.IfOff)}
	word := "Signed"
	if t.Action == crew.DarkWalk {
		word = fmt.Sprintf("Leaf %d done", leafNumber("power"))
	}
	one := func(facts ...block.Fact) []block.Block {
		b := block.Block{Name: fmt.Sprintf("power, step %d", number), Gap: 1.2, Body: s, Facts: facts}
		if t.Hold {
			b.Body = signedStep(s, word)
		} else {
			b.Body = framedLike(s)
		}
		return []block.Block{b}
	}
	switch t.Action {
	case crew.LayCords:
		s.Then = "" // all of it is among the checks
	case crew.JoinPlugs:
		s.Then = ""
		return one(block.Fact{What: "joints off the ground", Value: p.handHigh()})
	case crew.CheckCords:
		head := block.Words{Text: fmt.Sprintf("%d  %s", number, in.Do), Lettering: paper.Strong}
		return []block.Block{{Name: "checks before power", Gap: 1.2, Body: block.Framed{Blocks: []block.Block{
			{Body: block.Columns{Gap: 3, Cols: []block.Column{{Share: 1, Blocks: []block.Block{{Gap: 2, Body: head}}}, {Width: signWide, Blocks: []block.Block{{Body: block.Blanks{{Word: "Signed"}}}}}}}},
			{Gap: 0.6, Body: checkGrid(p.checks())}}}}}
	case crew.PlugRuns:
		s.Then = ""
	case crew.TestLoaded:
		s.Then = "As in step 1, all its runs."
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
func signedStep(s block.Step, word string) block.Framed {
	return block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 3, Cols: []block.Column{
		{Share: 1, Blocks: []block.Block{{Body: s}}}, {Width: signWide, Blocks: []block.Block{{Body: block.Blanks{{Word: word}}}}}}}}}}
}

// framedLike is a step without a frame, in line with those that have one.
func framedLike(s block.Step) block.Columns {
	inset := block.Framed{}.Height(0) / 2
	return block.Columns{Cols: []block.Column{{Width: inset}, {Share: 1, Blocks: []block.Block{{Body: s}}}, {Width: inset}}}
}

// checks are looked at with everything joined and nothing plugged into an outlet.
func (p powering) checks() []string {
	w := p.plan.Power
	laid := say.Count(len(w.Cords), "cord")
	if n := len(w.Taps); n > 0 {
		laid += ", " + say.Count(n, "three-way")
	}
	return []string{
		laid + ", none more",
		"each marked for outdoor use",
		"no cut, no tape, all pins whole",
		"no coil, no pinch under a foot",
		"none to trip over",
		"no prongs facing prongs",
		fmt.Sprintf("a cover on each of %s", say.Count(w.Covered(), "joint")),
		fmt.Sprintf("a cover on %s", say.Count(w.Open, "open socket")),
		"every joint tied up, loop below it",
		"outlets empty, dry",
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

// trips is what is done when it goes dark, in order: nobody climbs, so a run that is fed high up is parted at the foot of its cord.
func (p powering) trips() []block.Block {
	kind := device(p.volts())
	high := ""
	switch feet := p.lowPlugs(); {
	case len(feet) > 4:
		high = " (fed high up: pull its cord at the foot)"
	case len(feet) > 0:
		high = fmt.Sprintf(" (fed high up: pull %s)", say.And(feet))
	}
	steps := []string{
		"Torches on, way in shut. Walk people out first.",
		fmt.Sprintf("Pull every cord at that outlet, press %s. Trips with nothing in it: electrician.", block.Figure("RESET")),
		"Unplug every run" + high + ". Cords in, then run by run as drawn, until one trips it.",
		"What trips it stays out, its socket covered, till dried by daylight.",
		"Log night, outlet, run. Twice: leave it off, ask.",
	}
	list := []block.Block{block.Heading(fmt.Sprintf("When %s or a breaker trips", withArticle(kind)))}
	for i, s := range steps {
		list = append(list, block.Block{Name: "trip drill", Gap: 0.6, Body: block.Step{Number: i + 1, Text: s, NoTick: true}})
	}
	return list
}

// lowPlugs are the cords, each with the place of its plug, that are pulled from the ground in place of runs whose own plugs hang out of reach.
func (p powering) lowPlugs() (list []string) {
	for _, c := range p.plan.Power.Cords {
		if c.Lifts {
			list = append(list, c.Name+" at "+draw.PlaceName(c.From.At))
		}
	}
	return list
}

// dead is what is done with a string that stays dark.
func (p powering) dead() block.Block {
	return block.Block{Name: "dead string", Gap: 2, Body: block.Words{Figures: paper.Strong, Text: block.Figure("Dead string:") +
		" by daylight, unplug its run at its plug end, cover that socket. The first dark one: fuse, plug, a spare."}}
}

// handHigh is how far off the ground a joint is kept, as printed.
func (b *binder) handHigh() string { return b.spec.Units.Inches(practice.JointHigh(b.spec.Units)) }
