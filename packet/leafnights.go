package packet

import (
	"cmp"
	"fmt"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// nightsLeaf is what the evening watch works from: in front whom to ring, the noon call and the checks; behind what to do when it happens, and a line a night.
func (b *binder) nightsLeaf() []folio {
	stand := b.standing()
	if len(stand) == 0 {
		return nil
	}
	front := []block.Block{{Name: "start", Body: block.Blanks{{Word: "Start when"}, {Word: b.nightsAfter()}}}, b.nightBox(stand)}
	front = append(front, b.noonCall()...)
	front = append(front, b.nightChecks())
	front = append(front, b.nightWatch()...)
	return []folio{{
		front: side{title: "Nights: open or not", blocks: front},
		back:  side{title: "Nights: the log", blocks: b.nightLog()},
	}}
}

// nightsAfter says whose work is signed before the first night.
func (b *binder) nightsAfter() string {
	if len(b.plan.Strings) > 0 {
		return fmt.Sprintf("has signed leaf %d: power", leafNumber("power"))
	}
	return fmt.Sprintf("has signed leaf %d: raise", leafNumber("raise"))
}

// tasksOf lists the tasks of a phase.
func (b *binder) tasksOf(phase crew.Phase) (list []crew.Task) {
	for _, t := range b.plan.Crew.Tasks {
		if t.Phase == phase {
			list = append(list, t)
		}
	}
	return list
}

// nightBox is what is wanted first when something has happened, and how many may be inside.
func (b *binder) nightBox(stand []arch.Arch) block.Block {
	most := fmt.Sprint(b.plan.MostInside())
	site := b.spec.Site
	list := []block.Block{saidOrBlank("Place", site.Address), saidOrBlank("Emergency", site.Emergency)}
	if len(b.plan.Strings) > 0 {
		list = append(list, saidOrBlank("Power off", b.powerOff()+", by ____________"))
	}
	way := "Both ends open."
	if n := len(stand); n > 1 {
		way = fmt.Sprintf("In at arch %d, out at arch %d.", stand[0].Number, stand[n-1].Number)
	}
	number := paper.Large.Sized(36)
	return block.Block{Name: "whom to ring", Gap: 1, Facts: []block.Fact{{What: "People inside, at most", Value: most}}, Body: block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 4, Cols: []block.Column{
		{Share: 1, Blocks: list},
		{Width: number.Width(most) + 1, Blocks: []block.Block{{Body: block.Words{Text: most, Lettering: number}}}},
		{Width: 48, Blocks: []block.Block{{Body: block.Words{Text: "inside at most, children too; the fire authority may say fewer. " + way, Lettering: paper.Floor}}}},
	}}}}}}
}

// saidOrBlank is a word with what the spec says of it, or a line to write on.
func saidOrBlank(word, said string) block.Block {
	if said == "" {
		return block.Block{Body: block.Blanks{{Word: word}}}
	}
	return block.Block{Gap: 0.6, Body: block.Words{Text: block.Figure(word+":") + " " + said, Figures: paper.Strong}}
}

// powerOff names the breakers, and the outlets whose plugs are pulled, as short as it goes; the circuits' full story is the power crew's.
func (b *binder) powerOff() string {
	for _, p := range b.spec.Site.Places {
		if p.For == "power off" {
			return p.Name
		}
	}
	var breakers, outlets []string
	for _, c := range b.plan.Circuits {
		if c.Lights > 0 {
			breakers, outlets = append(breakers, cmp.Or(c.Spec.BreakerNo, "____")), append(outlets, c.Outlets...)
		}
	}
	const named = 3
	if len(outlets) > named {
		return fmt.Sprintf("leaf %d, front", leafNumber("power"))
	}
	return fmt.Sprintf("%s %s, or plugs at %s", say.Agree(len(breakers), "breaker", "breakers"), say.And(breakers), say.And(outlets))
}

// decision is one answer of the noon call: its word, when it is given, what is sent.
type decision struct{ word, when, send string }

// noonCall is who decides, and the answers side by side.
func (b *binder) noonCall() []block.Block {
	answers := b.decisions()
	return []block.Block{block.Heading("The noon call: one person decides"),
		{Name: "who calls", Body: block.Blanks{{Word: "Calls"}, {Word: "Phone", Share: 0.8}, {Word: "If away", Share: 0.8}, {Word: "Sends to", Share: 0.8}}},
		{Name: "open or not", Gap: 1, Body: answers, Facts: b.decisionFacts()}}
}

// decisionFacts are the figures of the answers.
func (b *binder) decisionFacts() []block.Fact {
	gust, _ := b.closeAt()
	facts := []block.Fact{{What: b.closedAs(), Value: b.insideWords()}, {What: "closed at gusts of, by meter", Value: b.spec.Units.Speed(gust.Local)}}
	if flat, ok := b.flatAt(); ok {
		facts = append(facts, block.Fact{What: "laid flat at gusts of", Value: b.spec.Units.Speed(flat.Called())})
	}
	return facts
}

// decisions are the answers of the noon call.
type decisions []decision

const decisionPad paper.Length = 2.2

// parts are what stands in an answer's box.
func (d decision) parts() []block.Block {
	return []block.Block{{Body: block.Words{Text: d.word, Lettering: paper.Heading}}, {Body: block.Words{Text: d.when}},
		{Gap: 1, Body: block.Words{Text: "Send: " + d.send, Lettering: paper.Floor}}}
}

// wide is the width of an answer: the last says most.
func (list decisions) wide(i int, width paper.Length) paper.Length {
	const last = 1.5
	one := width / (paper.Length(len(list)) + last - 1)
	if i == len(list)-1 {
		return last * one
	}
	return one
}

// Height implements block.Body.
func (list decisions) Height(width paper.Length) paper.Length {
	high := paper.Length(0)
	for i, d := range list {
		high = max(high, block.Height(d.parts(), list.wide(i, width)-2*decisionPad))
	}
	return high + 2*decisionPad
}

// Draw implements block.Body.
func (list decisions) Draw(page *paper.Page, box paper.Rect) []string {
	x := box.X
	for i, d := range list {
		cell := paper.Rect{X: x, Y: box.Y, W: list.wide(i, box.W), H: list.Height(box.W)}
		x += cell.W
		page.Stroke(paper.Box(cell), paper.Thin)
		in := cell.Inset(decisionPad)
		for _, part := range d.parts() {
			in.Y += part.Gap
			part.Body.Draw(page, in)
			in.Y += part.Body.Height(in.W)
		}
	}
	return nil
}

func (b *binder) decisions() decisions {
	gust, calm := b.closeAt()
	if calm {
		return decisions{{"CLOSED", "In any wind: as planned it bears none to speak of. The board says what to mend first.", "“CLOSED until it is mended.”"}}
	}
	at := block.Figure(b.insideWords())
	list := decisions{
		{"OPEN", "Gusts below " + at + " till shut, no thunder, ice, snow.", "“OPEN tonight.”"},
		{"CLOSED", fmt.Sprintf("%s or more%s, thunder, ice, snow.", at, toldBy(gust)), "“CLOSED tonight.”"}}
	if flat, ok := b.flatAt(); ok {
		d := b.plan.Weather.Drill(len(b.plan.Strings) > 0)
		list = append(list, decision{"LAY FLAT", fmt.Sprintf("%s forecast by tomorrow’s end: CLOSED, flat today by daylight: %.0f minutes, leaf %d.", block.Figure(b.spec.Units.Speed(flat.Called())), d.Minutes, leafNumber("takedown")),
			fmt.Sprintf("“LAY FLAT today at ____. %d people, %d or older.”", d.People, practice.Least)})
	}
	return list
}

// nightChecks are the checks of an evening by number, as the log has them.
func (b *binder) nightChecks() block.Block {
	w := newTaskWords(b.plan)
	u := b.spec.Units
	t := block.Table{Table: place.Table{Columns: []place.Column{{Width: 7, Lettering: paper.CellSmall}, {Head: "Checks before opening", Width: 54, Lettering: paper.Strong.Sized(11)},
		{Head: "Want", Lettering: paper.Floor}, {Head: "If not", Width: 60, Lettering: paper.Floor}}}}
	for _, task := range b.tasksOf(crew.Nights) {
		if task.Action == crew.NoonCall || task.Action == crew.NightClose {
			continue
		}
		in := w.of(task)
		t.Rows = append(t.Rows, place.Row{Cells: []string{fmt.Sprint(len(t.Rows) + 1), in.Do, in.Want, in.IfOff}})
	}
	return block.Block{Name: "checks", Gap: 3, Body: t, Facts: []block.Fact{{What: "a stake moves by hand, less than", Value: u.Inches(practice.PullMoves(u))},
		{What: "crown under its mark, less than", Value: u.Inches(practice.CrownFell(u))}}}
}

// nightWatch is what is written down once for all nights, who watches, and the shutting.
func (b *binder) nightWatch() []block.Block {
	first := block.Blanks{}
	for _, f := range b.wanted(crew.NightPipe, crew.CrownKept).Arches {
		first = append(first, block.Blank{Word: fmt.Sprint("crown ", f)})
	}
	first[0].Word = "First night, tape the crown stick at " + first[0].Word
	hours := block.Blanks{{Word: "Open from"}, {Word: "to"}}
	shut := ""
	if len(b.plan.Strings) > 0 {
		lit := "lights on"
		if b.spec.Given("power.evenings.hours") {
			lit = fmt.Sprintf("lit %g hours, from", b.spec.Power.Evenings.Hours)
		}
		hours = append(hours, block.Blank{Word: lit}, block.Blank{Word: "to"})
		shut = fmt.Sprintf(" Timers darken it %d minutes later.", practice.TimerAfter)
	}
	text := fmt.Sprintf("%s %d people: one counts in, one out, one walks. Bring: leaf %d, Nights.", block.Figure("Watch:"), practice.Watchers, leafNumber("stock"))
	for _, t := range b.tasksOf(crew.Nights) {
		if t.Action == crew.NightClose {
			in := newTaskWords(b.plan).of(t)
			text += "\n" + block.Figure("At closing:") + " " + in.Do + " " + in.Want + shut
		}
	}
	list := []block.Block{{Name: "first night", Body: first}, {Name: "hours", Body: hours}, {Name: "the watch", Gap: 1, Body: block.Words{Text: text, Figures: paper.Strong}}}
	if len(b.nightNames()) > mostInOne {
		list = append(list, block.Block{Name: "trips", Gap: 1.5, Body: writing{"Trips, mended: night, outlet, run", 1}})
	}
	return list
}
