package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
)

// nightsLeaf is what the evening watch works from: in front whom to ring, the noon call, the checks and what to do when; behind a line a night.
func (b *binder) nightsLeaf() []folio {
	stand := b.standing()
	if len(stand) == 0 {
		return nil
	}
	front := []block.Block{{Name: "start", Body: block.Blanks{{Word: "Start when"}, {Word: b.nightsAfter()}}}, b.nightBox(stand)}
	front = append(front, b.noonCall()...)
	front = append(front, b.nightChecks())
	front = append(front, casesBlocks("When it happens", b.worstCases())...)
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
	list := []block.Block{saidOrBlank("Place", site.Address), saidOrBlank("Emergency", site.Emergency), saidOrBlank("Power off", b.powerOff())}
	if len(b.plan.Strings) == 0 {
		list = list[:2]
	}
	way := "Both ends open."
	if n := len(stand); n > 1 {
		way = fmt.Sprintf("One way: in at arch %d, out at arch %d.", stand[0].Number, stand[n-1].Number)
	}
	number := paper.Large.Sized(36)
	return block.Block{Name: "whom to ring", Gap: 1, Facts: []block.Fact{{What: "People inside, at most", Value: most}}, Body: block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 4, Cols: []block.Column{
		{Share: 1, Blocks: list},
		{Width: number.Width(most) + 1, Blocks: []block.Block{{Body: block.Words{Text: most, Lettering: number}}}},
		{Width: 48, Blocks: []block.Block{{Body: block.Words{Text: "people inside at most, or the fire authority's figure. " + way, Lettering: paper.Floor}}}},
	}}}}}}
}

// saidOrBlank is a word with what the spec says of it, or a line to write on.
func saidOrBlank(word, said string) block.Block {
	if said == "" {
		return block.Block{Body: block.Blanks{{Word: word}}}
	}
	return block.Block{Gap: 0.6, Body: block.Words{Text: block.Figure(word+":") + " " + said, Figures: paper.Strong}}
}

// powerOff names the outlets whose plugs are pulled, each with its breaker, as short as it goes; the circuits' full story is the power crew's.
func (b *binder) powerOff() string {
	for _, p := range b.spec.Site.Places {
		if p.For == "power off" {
			return p.Name
		}
	}
	var words []string
	for _, c := range b.plan.Circuits {
		if c.Lights <= 0 {
			continue
		}
		word := "plugs at " + strings.Join(c.Outlets, ", ")
		if c.Spec.BreakerNo != "" {
			word += " (breaker " + c.Spec.BreakerNo + ")"
		}
		words = append(words, word)
	}
	const named = 2
	if len(words) > named {
		return fmt.Sprintf("leaf %d, front", leafNumber("power"))
	}
	return strings.Join(words, "; ")
}

// decision is one answer of the noon call: its word, when it is given, what is sent.
type decision struct{ word, when, send string }

// noonCall is who decides, and the answers side by side.
func (b *binder) noonCall() []block.Block {
	answers := b.decisions()
	return []block.Block{block.Heading("The noon call: one person decides"),
		{Name: "who calls", Body: block.Blanks{{Word: "Calls"}, {Word: "Phone", Share: 0.8}, {Word: "If away", Share: 0.8}}},
		{Name: "open or not", Gap: 1, Body: answers, Facts: b.decisionFacts()}}
}

// decisionFacts are the figures of the answers.
func (b *binder) decisionFacts() []block.Fact {
	gust, _ := b.closeAt()
	facts := []block.Fact{{What: b.closedAs(), Value: b.insideWords()}, {What: "closed at gusts of, both ways", Value: b.gustWords(gust)}}
	if flat, ok := b.flatAt(); ok {
		facts = append(facts, block.Fact{What: "laid flat at gusts of", Value: b.gustWords(flat)})
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

// Height implements block.Body.
func (list decisions) Height(width paper.Length) paper.Length {
	high := paper.Length(0)
	for _, d := range list {
		high = max(high, block.Height(d.parts(), width/paper.Length(len(list))-2*decisionPad))
	}
	return high + 2*decisionPad
}

// Draw implements block.Body.
func (list decisions) Draw(page *paper.Page, box paper.Rect) []string {
	wide := box.W / paper.Length(len(list))
	for i, d := range list {
		cell := paper.Rect{X: box.X + wide*paper.Length(i), Y: box.Y, W: wide, H: list.Height(box.W)}
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
		{"OPEN", "Forecast till shut: gusts below " + at + ", no thunder, no ice, no snow.", "“OPEN tonight.”"},
		{"CLOSED", fmt.Sprintf("Gusts of %s or more, thunder, ice or snow.", b.gustWords(gust)), "“CLOSED tonight.”"}}
	if flat, ok := b.flatAt(); ok {
		list = append(list, decision{"LAY FLAT", fmt.Sprintf("Gusts of %s forecast by the end of tomorrow: lay it flat today, by daylight (leaf %d).", block.Figure(b.spec.Units.Speed(flat.Called())), leafNumber("takedown")),
			fmt.Sprintf("“LAY FLAT today at ____. %d people, 16 or older.”", practice.Raisers)})
	}
	return list
}

// nightChecks are the checks of an evening by number, as the log has them, and the shutting.
func (b *binder) nightChecks() block.Block {
	w := newTaskWords(b.plan)
	u := b.spec.Units
	t := block.Table{Table: place.Table{Columns: []place.Column{{Width: 7, Lettering: paper.CellSmall}, {Head: "Checks before opening", Width: 58, Lettering: paper.Strong.Sized(11)},
		{Head: "Want", Lettering: paper.Floor}, {Head: "If not", Width: 48, Lettering: paper.Floor}}}}
	for _, task := range b.tasksOf(crew.Nights) {
		if task.Action == crew.NoonCall {
			continue
		}
		number := fmt.Sprint(len(t.Rows) + 1)
		if task.Action == crew.NightClose {
			number = ""
		}
		in := w.of(task)
		t.Rows = append(t.Rows, place.Row{Cells: []string{number, in.Do, in.Want, in.IfOff}})
	}
	return block.Block{Name: "checks", Gap: 3, Body: t, Facts: []block.Fact{{What: "a stake moves by hand, less than", Value: u.Inches(practice.PullMoves(u))},
		{What: "crown lower than the night before, less than", Value: u.Inches(practice.CrownFell(u))}}}
}
