package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
)

const backGap paper.Length = 0.5 // between steps

// aloud is what is said before the work begins, and who heard it.
func (s *stakeLeaf) aloud() block.Block {
	list := []block.Block{{Body: block.Blanks{{Word: "Say aloud before you begin. Heard by"}, {Word: "Ask, phone"}}}}
	list[0].Gap = 0
	for _, l := range s.dayLines() {
		list = append(list, block.Block{Body: block.Words{Text: l, Lettering: paper.Strong}})
	}
	return block.Block{Name: "said aloud", Body: block.Framed{Blocks: list, Pen: paper.Thick}}
}

// dayLines are the lines said aloud: what the tasks warn of, save of wires, which are told where one looks up.
func (s *stakeLeaf) dayLines() (list []string) {
	for _, w := range crew.Warnings() {
		line := map[crew.Warning]string{
			crew.PaintOnly:   "Marking: paint only. Nothing goes into the ground before every buried line is marked.",
			crew.BuriedKills: "Driving: a stake through a buried line can kill. The locator’s paint shows its middle.",
			crew.NoHolding:   "Gloves and eye protection on. Nobody holds a stake that is hit. Cap each at once.",
		}[w]
		if line != "" && slices.ContainsFunc(s.tasks, func(t crew.Task) bool { return t.Warning == w }) {
			list = append(list, line)
		}
	}
	return list
}

// asides are what is read when something is off: the cures of the checks, the ladder for a stake that will not go, what ends the work until someone has been asked.
func (s *stakeLeaf) asides() (list []block.Block) {
	for _, t := range s.tasks {
		text := ""
		switch t.Action {
		case crew.CheckDots:
			text = s.words.checksOff(t)
		case crew.DriveStakes:
			text = s.words.wontGo(t)
		default:
			continue
		}
		list = append(list, block.Block{Name: text, Gap: stakeGap, Facts: s.curesTold(t), Body: block.Framed{Pen: paper.Thin, Blocks: []block.Block{{Body: block.Words{Text: text}}}}})
	}
	return append(list, block.Box("stop", "STOP and ask: a check stays off; a mark is not as named; a dot is on hard ground or in a bed; a stake moves by hand; you meet pipe, cable or wire."))
}

// work are the steps of marking and of driving. Owners of private lines are asked in the same step as the locating service.
func (s *stakeLeaf) work() (list []block.Block) {
	number, before := 0, ""
	for _, p := range []crew.Phase{crew.Marking, crew.Driving} {
		list = append(list, s.dayOf(p))
		for _, t := range s.tasks {
			text := doing(t.Action)(s.words, t)
			switch {
			case t.Phase != p:
				continue
			case t.Action == crew.MarkPrivate || t.Action == crew.AskOwner:
				before += text + " "
				continue
			case t.Action == crew.CallLocator:
				text = before + text
			}
			number++
			list = append(list, block.Block{Name: fmt.Sprintf("step %d", number), Gap: backGap, Facts: s.figuresTold(t), Body: s.step(t, number, text)})
		}
	}
	return list
}

// step is a task as a step. What has a box to tick in the table has none here.
func (s *stakeLeaf) step(t crew.Task, number int, text string) block.Step {
	step := block.Step{Number: number, Text: text, Hold: t.Hold, NoTick: t.Phase == crew.Marking && !t.Hold || t.Action == crew.DriveStakes}
	for _, r := range t.Record {
		if word := recordWords[r]; word != "" {
			step.Sign = append(step.Sign, block.Blank{Word: word})
		}
	}
	if t.Hold {
		step.Sign = append(step.Sign, block.Blank{Word: "Signed"})
		if len(step.Sign) == 1 {
			step.Aside = 42
		}
	}
	return step
}

// figuresTold are the figures of a step.
func (s *stakeLeaf) figuresTold(t crew.Task) (list []block.Fact) {
	told := func(what, value string) { list = append(list, block.Fact{What: what, Value: value}) }
	for _, f := range t.Want {
		switch f.What {
		case crew.ClearOfLine:
			told("keep from marked lines", s.units.Inches(f.Limit))
		case crew.KeepOverhead:
			told("keep from wires", s.units.Room(f.Length))
		case crew.DepthTaped:
			told("depth of stakes, "+s.words.whose(f.Stakes), s.units.Inches(f.Length))
		case crew.Shows:
			told("shows of stakes, "+s.words.whose(f.Stakes), s.units.Inches(f.Length))
		case crew.PullUp:
			told("pull test, height", s.units.Inches(f.Length))
		case crew.PullForce:
			told("pull test, force", s.units.Scale(f.Force))
		case crew.PullMoves:
			told("pull test, gives less than", s.units.Inches(f.Length))
		case crew.FootWidth:
			told("feet, give or take", s.units.Inches(f.Limit))
		}
	}
	for _, c := range t.IfOff {
		if c.Do == crew.DriveDeeper {
			told("pull test, deeper", s.units.Inches(c.By))
		}
	}
	return list
}

// curesTold are the figures of what is done when something is off.
func (s *stakeLeaf) curesTold(t crew.Task) (list []block.Fact) {
	what := map[crew.Remedy]string{crew.BesideHole: "stake off its dot", crew.MoveAcross: "stake moved across", crew.MoveAlong: "stakes moved along", crew.MoveGuy: "guy stake or peg moved"}
	for _, c := range t.IfOff {
		switch {
		case what[c.Do] != "":
			list = append(list, block.Fact{What: what[c.Do] + ", at most", Value: s.units.Inches(c.By)})
		case c.Do == crew.SlideTheRow:
			list = append(list, block.Fact{What: "row slid for each of difference", Value: s.units.Inches(s.units.Taped(c.Then))}, block.Fact{What: "difference of diagonals", Value: measure.By(s.units, "1 inch", "10 mm")})
		}
	}
	return list
}

// recordWords are the words before what is written down; what has a column of its own has none.
var recordWords = map[crew.Record]string{crew.Ticket: "Ticket", crew.FirstDay: "good from", crew.LastDay: "to"}

// dayOf heads a phase with its day, its people and how long it takes.
func (s *stakeLeaf) dayOf(p crew.Phase) block.Block {
	people, minutes := 0, 0.0
	for _, t := range s.tasks {
		if t.Phase == p {
			people, minutes = max(people, t.Who.People), minutes+t.Minutes
		}
	}
	day, what := s.b.spec.Dates.Mark, "Mark"
	if p == crew.Driving {
		day, what = s.b.spec.Dates.Build, "Drive"
		if s.b.spec.Arch.Foot != nil {
			what = "Stand"
		}
	}
	if !day.IsZero() {
		what += ", " + day.Format("Monday 2 January")
	}
	head := block.Heading(fmt.Sprintf("%s: %d people, %s", what, people, roughly(minutes)))
	head.Gap = 1.4
	return head
}

// roughly prints minutes in quarter hours.
func roughly(minutes float64) string {
	q := int(minutes/15 + 0.999)
	switch {
	case q < 4:
		return fmt.Sprintf("%d min", 15*q)
	case q%4 == 0:
		return fmt.Sprintf("%d h", q/4)
	}
	return fmt.Sprintf("%d h %d", q/4, q%4*15)
}
