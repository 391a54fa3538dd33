package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/power"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// order is the order of the work: what is said aloud, the steps with their tests.
func (p powering) order() []block.Block {
	dry := "Dry hands, dry plugs."
	if plugsHigh(p.plan.Power) {
		dry += " Stepladder held, off the pipe, by daylight."
	}
	list := []block.Block{saidBeside(heardAndAsk(p.plan.Spec), dry,
		"Prongs meet prongs: stop, call the wrapping crew. Never prongs at both ends.",
		fmt.Sprintf("%s empty till checks are signed. Mending %s: a licensed electrician.", say.Capital(p.outlets()), say.Agree(len(p.tasks[0].Of.Outlets), "it", "them")))}
	for i, t := range p.tasks {
		list = append(list, p.step(i+1, t))
	}
	return list
}

// step is one task, with what it holds for. What is among the ten checks, or in what is done, is not said again.
func (p powering) step(number int, t crew.Task) block.Block {
	in := newTaskWords(p.plan).of(t)
	b := block.Block{Name: fmt.Sprintf("power, step %d", number), Gap: 1.2}
	s := block.Step{Number: number, Text: in.Do, NoTick: t.Action == crew.CheckCords}
	word := "Signed"
	switch t.Action {
	case crew.TestOutlets, crew.TestLoaded:
		s.Then = in.IfOff
	case crew.FeelPlugs:
		s.Text += " " + in.IfOff
	case crew.DarkWalk:
		s.Text += " " + in.Want + " " + in.IfOff
		word = fmt.Sprintf("Leaf %d done", leafNumber("power"))
	case crew.LayCords:
		if p.drawn {
			s.Text += " Ways: drawn last."
		} else {
			s.Text += fmt.Sprintf(" Ways: leaf %d.", leafNumber("day"))
		}
	case crew.JoinPlugs:
		b.Facts = []block.Fact{{What: "joints off the ground", Value: p.u.Inches(practice.JointHigh(p.u))}}
	case crew.SetTimers:
		s.Text += fmt.Sprintf(" Hours: leaf %d.", leafNumber("nights"))
		b.Facts = []block.Fact{{What: "size of the timers", Value: timerSize(p.plan.Power)}}
	}
	if t.Hold {
		s.Sign, s.Aside, s.Hold = []block.Blank{{Word: word}}, signWide, t.Action != crew.CheckCords
	}
	b.Body = s
	if t.Action == crew.CheckCords {
		b.Body = block.Framed{Blocks: []block.Block{{Body: s}, {Gap: 0.6, Body: checkGrid(p.checks())}}}
	}
	return b
}

// signWide is the room of a line to sign on beside a step.
const signWide paper.Length = 36

// checks are looked at with everything joined and nothing plugged into an outlet.
func (p powering) checks() []string {
	w := p.plan.Power
	laid := "only " + say.Count(len(w.Cords), "cord")
	if n := len(w.Taps); n > 0 {
		laid += ", " + say.Count(n, "three-way")
	}
	joints := say.Count(w.Covered(), "joint") + " covered"
	if w.Boxed > 0 {
		joints += fmt.Sprintf(", %d boxed", w.Boxed)
	}
	if w.Supplies > 0 {
		joints += " with " + say.Count(w.Supplies, "supply")
	}
	return []string{
		laid,
		"all marked for outdoors",
		"no cut, no tape",
		"no tight coil, no pinch",
		"outlet to feet: hip-high ribbon",
		"no prongs meet prongs",
		joints,
		say.Count(w.Open, "open socket") + " covered",
		"sockets tied up, looped",
		p.outlets() + " empty, dry",
	}
}

// outlets is what those in use are called together.
func (p powering) outlets() string { return say.Agree(len(p.tasks[0].Of.Outlets), "outlet", "outlets") }

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

// trips is what is done when it goes dark, in order. Nobody climbs, so what is fed high up is parted at the foot of its cord; nobody opens a joint while a cord is in at
// the outlet, no socket is bare when it goes in, and RESET comes last; every way through it ends in people let in, CLOSED or an electrician. Then what is done with a string that stays dark.
func (p powering) trips() []block.Block {
	w := p.plan.Power
	cord := several("cord", len(w.Feeders), func(i int) string { return w.Feeders[i].Outlet })
	timer := several("timer", len(w.Timers), func(i int) string { return w.Timers[i].Outlet })
	pull, in, rest := cord, timer+" ON", cord
	if len(w.Timers) > 0 {
		pull, in = timer+" and "+cord, timer+" in, ON"
	}
	if slices.ContainsFunc(w.Cords, func(c power.Cord) bool { return c.Lifts && c.From.At.Spot == lights.AtOutlet }) { // pulled with the runs, it stays out
		rest = "other cords"
	}
	runs, dead := p.pulled()
	high := ""
	if feet := p.lowPlugs(); len(feet) > 0 {
		high = ", a high one by its cord at the " + footOrOutlet(w)
		if len(feet) <= 4 {
			high = ", a high one by its cord: " + say.And(feet)
		}
	}
	covers := "Cover sockets (joints’ covers)"
	if w.Boxed > 0 {
		covers += ", shut boxes"
	}
	steps := []string{
		fmt.Sprintf("Pull %s at the dead outlet, %s. Trips empty, or a breaker tripped: CLOSED, electrician.", pull, block.Figure("RESET")),
		fmt.Sprintf("Pull its %s%s. %s. %s, %s in, RESET. Trips: %s out, CLOSED, go to\u00a0e.", runs, high, covers, say.Capital(in), rest, pull),
		fmt.Sprintf("%s out, put one back, %s in, RESET. Trips: %[2]s out, that one out, covered. So one by one.", say.Capital(cord), cord),
		fmt.Sprintf("All tried: %s in, RESET, AUTO. One plug pulled at most, rest lit: let people in. Else, or trips again: CLOSED.", cord),
		fmt.Sprintf("Log it: leaf %d, back. By daylight dry what is out, back to\u00a0b. Trips again: electrician.", leafNumber("nights")),
	}
	list := []block.Block{block.Heading(fmt.Sprintf("When %s trips: people out, dry hands", withArticle(device(p.plan))))}
	for i, s := range steps {
		list = append(list, block.Block{Name: "trip drill", Gap: 0.6, Body: block.Step{Letter: string(rune('a' + i)), Text: s, NoTick: true}})
	}
	return append(list, block.Block{Name: "dead string", Gap: 2, Body: block.Words{Figures: paper.Strong, Text: block.Figure("Dead string:") +
		" note the first dark one. By daylight, outlet’s " + cord + " out: push plug in, " + dead + ", else a spare."}})
}

// pulled is what is parted from its cord where it trips, and what is tried on a dead string. What a supply feeds is pulled with it, for no outlet sees what is behind one; and
// no string behind it has a fuse of its own.
func (p powering) pulled() (runs, dead string) {
	fed, behind := false, p.plan.Power.Supplies > 0
	for _, f := range p.plan.Power.Feeders {
		for _, j := range f.Joints {
			fed = fed || slices.ContainsFunc(j.Plugs, func(plug power.Plug) bool { return !plug.Supply })
		}
	}
	switch {
	case behind && fed:
		return "runs, supplies by their mains plug", "fit its spare fuse, try another supply"
	case behind:
		return "supplies’ mains plugs", "try another supply"
	}
	return "runs", "fit its spare fuse"
}

// several is what is at an outlet: of n such things several where any outlet has several.
func several(thing string, n int, outlet func(int) string) string {
	at := map[string]bool{}
	for i := range n {
		if at[outlet(i)] {
			return thing + "s"
		}
		at[outlet(i)] = true
	}
	return thing
}

// lifting is a cord that is pulled from the ground, with the runs that it feeds, in place of runs whose own plugs hang out of reach.
type lifting struct {
	cord power.Cord
	runs string
}

func liftings(p power.Plan) (list []lifting) {
	for _, c := range p.Cords {
		if !c.Lifts {
			continue
		}
		var runs []string
		for _, run := range p.Chains {
			if slices.Contains(run.Cords, c.Name) {
				runs = append(runs, run.Name)
			}
		}
		list = append(list, lifting{c, strings.Join(runs, ", ")})
	}
	return list
}

// lowPlugs names those cords, each with the place of its plug and its runs.
func (p powering) lowPlugs() (list []string) {
	for _, l := range liftings(p.plan.Power) {
		list = append(list, fmt.Sprintf("%s at %s (%s)", l.cord.Name, draw.PlaceName(l.cord.From.At), l.runs))
	}
	return list
}

// footOrOutlet is where a plug or a cord is pulled from the ground: at its foot, but for cords that lead up from an outlet in one piece.
func footOrOutlet(p power.Plan) string {
	var there []string
	for _, l := range liftings(p) {
		if l.cord.From.At.Spot == lights.AtOutlet {
			there = append(there, l.runs+": "+l.cord.Name)
		}
	}
	if there == nil {
		return "foot"
	}
	return "foot (" + strings.Join(there, ", ") + " at outlet)"
}
