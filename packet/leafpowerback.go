package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// back is the order of the work: what is said aloud, the steps with their tests, then what to do when it trips and when a string is dead.
func (p powering) back() []block.Block {
	list := []block.Block{saidAloud("Dry hands, dry plugs. No cord in an outlet till the ten checks are signed.",
		"Prongs facing prongs: stop, call the wrapping crew. Never prongs at both ends.",
		"No ladder in the dark. Outlets, breakers: a licensed electrician.")}
	number := 0
	for i, t := range p.tasks {
		if t.Action == crew.PlugRuns && p.tasks[i-1].Action == crew.PlugRuns {
			continue // all outlets are one step
		}
		number++
		list = append(list, p.step(number, t))
	}
	return slices.Concat(list, p.trips(), p.dead())
}

// step is one task, with what it holds for. What is among the ten checks, or in what is done, is not said again.
func (p powering) step(number int, t crew.Task) block.Block {
	in := newTaskWords(p.plan).of(t)
	b := block.Block{Name: fmt.Sprintf("power, step %d", number), Gap: 1.2}
	s := block.Step{Number: number, Text: in.Do, NoTick: t.Action == crew.CheckCords}
	word := "Signed"
	switch t.Action {
	case crew.TestOutlets:
		s.Then = in.IfOff
	case crew.FeelPlugs:
		s.Text += " " + in.Want + " " + in.IfOff
	case crew.DarkWalk:
		s.Text += " " + in.Want + " " + in.IfOff
		word = fmt.Sprintf("Leaf %d done", leafNumber("power"))
	case crew.JoinPlugs:
		b.Facts = []block.Fact{{What: "joints off the ground", Value: p.u.Inches(practice.JointHigh(p.u))}}
	case crew.SetTimers:
		b.Facts = []block.Fact{{What: "timers off after closing, minutes", Value: fmt.Sprint(practice.TimerAfter)}, {What: "size of the timers", Value: timerSize(p.plan.Power)}}
	}
	b.Body = framedLike(s)
	if t.Hold {
		signed := signedStep(s, word)
		if t.Action == crew.CheckCords {
			signed.Blocks = append(signed.Blocks, block.Block{Gap: 0.6, Body: checkGrid(p.checks())})
		}
		b.Body = signed
	}
	return b
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
	laid := "only " + say.Count(len(w.Cords), "cord")
	if n := len(w.Taps); n > 0 {
		laid += ", " + say.Count(n, "three-way")
	}
	return []string{
		laid,
		"each marked for outdoor use",
		"no cut, no tape, all pins whole",
		"no tight coil, no pinch under a foot",
		"none to trip over",
		"no prongs facing prongs",
		fmt.Sprintf("a cover on each of %s", say.Count(w.Covered(), "joint")),
		fmt.Sprintf("a cover on %s", say.Count(w.Open, "open socket")),
		"every joint tied up, looped",
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
	high := ""
	switch feet := p.lowPlugs(); {
	case len(feet) > 4:
		high = " (fed high up: pull its cord at the foot)"
	case len(feet) > 0:
		high = fmt.Sprintf(" (fed high up: pull %s)", say.And(feet))
	}
	steps := []string{
		"Torches on, way in shut. Walk people out.",
		fmt.Sprintf("Pull every cord at that outlet, press %s. Trips empty, or a breaker tripped: electrician.", block.Figure("RESET")),
		"Pull every run" + high + ". One run in, then its outlet’s cord. Cord out before each next run, until it trips.",
		"Cord and that run out, socket covered, dried by daylight. RESET, others in, cord last: open.",
		fmt.Sprintf("Log it (leaf %d, back): night, outlet, run. Twice: leave it off, ask.", leafNumber("nights")),
	}
	list := []block.Block{block.Heading(fmt.Sprintf("When %s trips", withArticle(device(p.plan))))}
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
func (p powering) dead() []block.Block {
	return []block.Block{{Name: "dead string", Gap: 2, Body: block.Words{Figures: paper.Strong, Text: block.Figure("Dead string:") +
		" by daylight, unplug its run, cover that socket. First dark one: plug pushed in, fuse, else a spare."}}}
}
