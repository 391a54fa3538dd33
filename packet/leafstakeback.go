package packet

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// back is what stands behind a plan: what is said aloud, the tables that found no room in front, the order of work with the checks where they are done, what is read when
// something is off. Behind a further plan it is nothing where all of that stands in front.
func (p stakePart) back(tables, asides []block.Block) []block.Block {
	if p.First > 1 {
		return append(tables, asides...)
	}
	checks := slices.IndexFunc(tables, func(b block.Block) bool { return b.Name == "checks" })
	if checks < 0 {
		checks = len(tables)
	}
	var aloud []block.Block
	if lines := p.dayLines(); len(lines) > 0 {
		beside := heardAndAsk(p.spec)
		if drives(p.words.plan) { // who is asked stands with the callers
			beside = beside[:1]
		}
		aloud = append(aloud, saidBeside(beside, lines...))
	}
	return slices.Concat(aloud, tables[:checks], p.work(tables[checks:]), asides)
}

// dayLines are the lines said aloud: what the tasks warn of.
func (s *stakeLeaf) dayLines() (list []string) {
	for w := crew.NoWarning + 1; w < crew.Warnings; w++ {
		if slices.ContainsFunc(s.tasks, func(t crew.Task) bool { return t.Warning == w }) {
			list = append(list, warned[w])
		}
	}
	if slices.ContainsFunc(s.tasks, func(t crew.Task) bool { return t.Action == crew.SetBases }) {
		list = append(list, "Gloves on. Lift bags with the knees, boards by two. Cap each bar at once.")
	}
	return list
}

// checkCures is the block of what is done when a check is off.
const checkCures = "cures of checks"

// asides are what is read when something is off, first what belongs to driving: behind the first plan the ladder for a stake that will not go and the cures of the checks; on a
// further one the pull test of its first stake and what ends the work until someone has been asked. On the first that stands before anything is driven.
func (p stakePart) asides() (list []block.Block) {
	var cures []block.Block
	add := func(to *[]block.Block, name string, t crew.Task, body block.Body) {
		*to = append(*to, block.Block{Name: name, Facts: p.told(t), Body: body})
	}
	framed := func(text string) block.Body {
		return block.Framed{Pen: paper.Thin, Blocks: []block.Block{block.Paragraph(text)}}
	}
	for _, t := range p.tasks {
		switch {
		case p.First > 1 && t.Action == crew.PullTest:
			next := 2 * min(p.First, p.Last-1) // its first arch stands from the plan before
			begins, test, ends := p.driveSteps(doing(t.Action)(p.words, t))
			t.Of.Stakes, t.IfOff = p.ground.Stakes[next:next+1], nil
			add(&list, "pull test", t, step(t, 0, p.words.pullAgain(t, begins, test, ends), 0))
		case p.First > 1:
		case t.Action == crew.CheckDots:
			add(&cures, checkCures, t, framed(p.words.checksOff(t)))
		case t.Action == crew.DriveStakes:
			add(&list, "will not go", t, framed(p.words.wontGo(t)))
		}
	}
	if p.First > 1 {
		list = append(list, p.stopBox())
	}
	return append(list, cures...)
}

// stopName is the name of the box that ends the work.
const stopName = "stop"

// stopBox is what ends the work until someone has been asked.
func (s *stakeLeaf) stopBox() block.Block {
	near, loose := "", "moving by hand"
	var facts []block.Fact
	for _, t := range s.tasks {
		switch t.Action {
		case crew.ReadTicket:
			clear := s.units.Inches(clearOf(t))
			near, facts = ", under "+clear+" from a marked line", []block.Fact{{What: "clear of a marked line", Value: clear}}
		case crew.PullTest:
			loose = "by hand looser than L1"
		}
	}
	if !drives(s.words.plan) {
		return block.Box(stopName, "STOP, ask: a check stays off; a dot is in a bed or on a cover; a board rocks; a bar leans.")
	}
	box := block.Box(stopName, "STOP. Pipe or cable hit, hiss, smell: all away, "+emergency(s.spec, "ring the emergency number")+
		", then ask. Ask: a check stays off; a dot on hard ground, in a bed, by a wire not drawn"+near+"; a stake "+loose+"; a hollow sound.")
	box.Facts = facts
	return box
}

// emergency is the number to ring for help; where nobody has given it and it differs from land to land, the words.
func emergency(s *spec.Spec, words string) string {
	if crew.LikelyNEC(s) {
		words = "911"
	}
	return cmp.Or(s.Site.Emergency, words)
}

// work are the steps of marking, of calling and waiting, and of driving, before it what stops it. Owners of private lines are asked in the same step as the locating service, and who reads
// the ticket looks up too. checks stand before the step that does them.
func (s *stakeLeaf) work(checks []block.Block) (list []block.Block) {
	if drives(s.words.plan) {
		list = append(list, s.callers())
	}
	list = append(list, s.markHead())
	number, before, after, marking := 0, "", "", true
	for i, t := range s.tasks {
		if marking && t.Phase == crew.Driving {
			what := "Drive"
			if s.spec.Arch.Foot != nil {
				what = "Stand feet"
			}
			list, marking = append(list, phaseHead(what, s.spec.Dates.Build), s.stopBox()), false
		}
		text := doing(t.Action)(s.words, t)
		switch t.Action {
		case crew.AskOwner:
			before = text + " "
			continue
		case crew.MarkPrivate:
			after += " " + text
			continue
		case crew.CheckDots:
			if list = append(list, checks...); len(s.parts) > 1 {
				text = "All plans painted: check in each table’s order, write the worst."
			}
		case crew.CallLocator:
			text = before + text + after + " Wait until all have marked or answered."
		case crew.ReadTicket:
			if next := s.tasks[i+1]; next.Action == crew.LookUp { // one signature for what is looked at before anything is driven
				text += " " + doing(next.Action)(s.words, next)
				t.Want = slices.Concat(t.Want, next.Want)
			}
		case crew.LookUp:
			if !marking && s.tasks[i-1].Action == crew.ReadTicket {
				continue
			}
		}
		number++
		list = append(list, block.Block{Name: fmt.Sprintf("step %d", number), Gap: 0.4, Facts: s.told(t), Body: step(t, number, text, s.body.W)})
	}
	for i := range list[1:] { // clear of the frame of a hold
		if hold, ok := list[i].Body.(block.Step); ok && hold.Hold || list[i].Name == stopName {
			list[i+1].Gap = underHold
		}
	}
	return list
}

// driveSteps are the numbers of the first and the last step of driving, and of the one with a test's words: the same behind every further plan.
func (s *stakeLeaf) driveSteps(words string) (first, test, last int) {
	if s.driving == nil {
		s.driving = s.work(nil)
		s.driving = s.driving[max(0, slices.IndexFunc(s.driving, func(b block.Block) bool { return b.Name == stopName })):]
	}
	for _, b := range s.driving {
		if step, ok := b.Body.(block.Step); ok {
			if last = step.Number; first == 0 {
				first = last
			}
			if step.Text == words {
				test = last
			}
		}
	}
	return first, test, last
}

// markHead heads the marking: of all plans, for some checks run from one to the next, and the call tells of the dots of all.
func (s *stakeLeaf) markHead() block.Block {
	day, late := crew.MarkOn(s.spec, drives(s.words.plan))
	mark := "Mark"
	if len(s.parts) > 1 {
		mark += " all plans"
	}
	if late { // others may look for the day that was given
		mark += " and call"
	}
	return phaseHead(mark, day)
}

const underHold paper.Length = 1 // below the frame of a hold

// callers are who calls, and who comes back once all have marked: written down before the first step, for some go home after it.
func (s *stakeLeaf) callers() block.Block {
	who := block.Blanks{{Word: "Who calls"}}
	if !crew.LikelyNEC(s.spec) { // its number differs from land to land
		who = append(who, block.Blank{Word: "Locators’ number"})
	}
	if slices.ContainsFunc(s.tasks, func(t crew.Task) bool { return t.Action == crew.FlagDots }) {
		who = append(who, block.Blank{Word: "Who flags, when"})
	}
	return block.Block{Name: "callers", Body: append(who, heardAndAsk(s.spec)[1:]...)}
}

// step is a task as a step, its signature beside the words where that is lower at a width. What has a box to tick in the table has none here.
func step(t crew.Task, number int, text string, width paper.Length) block.Step {
	step := block.Step{Number: number, Text: text, Hold: t.Hold, NoTick: t.Phase == crew.Marking && !t.Hold || t.Action == crew.DriveStakes || t.Action == crew.TapeDepths}
	for _, r := range t.Record {
		if word := recordWords[r]; word != "" {
			step.Sign = append(step.Sign, block.Blank{Word: word})
		}
	}
	if t.Hold {
		signed := "Signed"
		if t.Action == crew.MeasureWidths || t.Action == crew.WeighDown { // the first arches go up while others' stakes are driven
			signed = "Signed to arch"
		}
		step.Sign = append(step.Sign, block.Blank{Word: signed})
	}
	if beside := step; len(step.Sign) == 1 && width > 0 {
		if beside.Aside = 42; beside.Height(width) < step.Height(width) {
			return beside
		}
	}
	return step
}

// recordWords are the words before what is written down; what has a column of its own has none.
var recordWords = map[crew.Record]string{crew.Ticket: "Ticket", crew.FirstDay: "good from", crew.LastDay: "to"}

// What the figures of tasks are of.
var (
	wantedFigures = map[crew.Wanted]string{
		crew.ClearOfLine: "keep from marked lines", crew.KeepOverhead: "keep from wires", crew.DepthTaped: "depth of stakes", crew.Shows: "shows of stakes",
		crew.PullUp: "pull test, height", crew.PullForce: "pull test, force", crew.PullMoves: "pull test, gives less than", crew.FootWidth: "feet, give or take",
	}
	curesFigures = map[crew.Remedy]string{
		crew.BesideHole: "stake off its dot, at most", crew.MoveAcross: "stake moved across, at most", crew.MoveAlong: "stakes moved along, at most", crew.MoveGuy: "guy or brace stake moved, at most",
		crew.DriveDeeper: "pull test, deeper", crew.SlideTheRow: "row slid for each of difference",
	}
)

// told are the figures of a task, and of its cures.
func (s *stakeLeaf) told(t crew.Task) (list []block.Fact) {
	add := func(what, value string) {
		if what != "" {
			list = append(list, block.Fact{What: what, Value: value})
		}
	}
	u := s.units
	for _, f := range t.Want {
		what, value := wantedFigures[f.What], u.Inches(f.Length)
		switch f.What {
		case crew.ClearOfLine:
			value = u.Inches(clearOf(t)) // of several lines the widest is told
		case crew.FootWidth:
			value = u.Inches(f.Limit)
		case crew.KeepOverhead:
			value = u.Room(f.Length)
		case crew.PullForce:
			value = u.Scale(f.Force)
		case crew.DepthTaped, crew.Shows:
			what += ", " + s.words.whose(f.Stakes)
		}
		add(what, value)
	}
	for _, c := range t.IfOff {
		value := c.By
		if c.Do == crew.SlideTheRow {
			value = u.Taped(c.Then)
			add("difference of diagonals", measure.By(u, "1 inch", "10 mm"))
		}
		add(curesFigures[c.Do], u.Inches(value))
	}
	return list
}

// phaseHead heads a phase with its day, and where its people and its things are told.
func phaseHead(what string, day time.Time) block.Block {
	if !day.IsZero() {
		what += ", " + day.Format("Monday 2 January 2006")
	}
	head := block.Heading(fmt.Sprintf("%s. Who: leaf %d. Bring: leaf %d", what, leafNumber("day"), leafNumber("stock")))
	head.Gap = 0.8
	return head
}
