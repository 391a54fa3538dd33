package packet

import (
	"cmp"
	"fmt"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// watch writes the leaf of the people who keep the tunnel open of an evening.
type watch struct {
	skies
	units measure.System
	words taskWords
	tasks []crew.Task
	stand []arch.Arch
	lit   bool
	room  paper.Rect // of a side
}

// nightsLeaf is what the evening watch works from: in front whom to ring, the noon call and the checks; behind what to do when it happens, and a line a night.
func (b *binder) nightsLeaf() []folio {
	_, room := b.newSide(true)
	w := watch{b.skies, b.spec.Units, newTaskWords(b.plan), tasksOf(b.plan, crew.Nights), standingOf(b.plan), len(b.plan.Strings) > 0, room}
	if len(w.stand) == 0 {
		return nil
	}
	before := "raise"
	if w.lit {
		before = "power"
	}
	signed := fmt.Sprintf("has signed leaf %d: %s", leafNumber(before), before)
	front := []block.Block{{Name: "start", Body: block.Blanks{{Word: "Start when"}, {Word: signed}}}, w.box()}
	front = append(front, w.noonCall()...)
	front = append(front, w.checks())
	front = append(front, w.evening()...)
	return []folio{{
		front: side{title: "Nights: open or not", blocks: front},
		back:  side{title: "Nights: the log", blocks: w.log()},
	}}
}

// box is what is wanted first when something has happened, and how many may be inside.
func (w watch) box() block.Block {
	most := fmt.Sprint(w.plan.MostInside())
	site := w.plan.Spec.Site
	list := []block.Block{saidOrBlank("Place", site.Address), saidOrBlank("Emergency", site.Emergency)}
	if w.lit {
		list = append(list, saidOrBlank("Power off", w.powerOff()), block.Block{Body: block.Blanks{{Word: "Who switches"}, {Word: "Electrician"}}})
	}
	way := "Both ends open."
	if n := len(w.stand); n > 1 {
		way = fmt.Sprintf("In at arch %d, out at arch %d.", w.stand[0].Number, w.stand[n-1].Number)
	}
	number := paper.Large.Sized(36)
	return block.Block{Name: "whom to ring", Gap: 1, Facts: []block.Fact{{What: "People inside, at most", Value: most}}, Body: block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 4, Cols: []block.Column{
		{Share: 1, Blocks: list},
		{Width: number.Width(most) + 1, Blocks: []block.Block{{Body: block.Words{Text: most, Lettering: number}}}},
		{Width: 48, Blocks: []block.Block{{Body: block.Words{Text: "inside at most, watchers too. Fire authority said: ____ " + way, Lettering: paper.Floor}}}},
	}}}}}}
}

// saidOrBlank is a word with what the spec says of it, or a line to write on.
func saidOrBlank(word, said string) block.Block {
	if said == "" {
		return block.Block{Body: block.Blanks{{Word: word + ", write it now"}}}
	}
	return block.Block{Gap: 0.6, Body: block.Words{Text: block.Figure(word+":") + " " + said, Figures: paper.Strong}}
}

// powerOff names the breakers, each with its outlets while they are few, and where they are; the circuits' full story is the power crew's.
func (w watch) powerOff() string {
	const few = 3
	at := "________"
	for _, p := range w.plan.Spec.Site.Places {
		if p.For == "power off" {
			at = p.Name
		}
	}
	var breakers []string
	outlets := 0
	for _, c := range w.plan.Circuits {
		if c.Lights > 0 {
			breakers = append(breakers, cmp.Or(c.Spec.BreakerNo, "____"))
			outlets += len(c.Outlets)
		}
	}
	if outlets <= few {
		breakers = nil
		for _, c := range w.plan.Circuits {
			if c.Lights > 0 {
				breakers = append(breakers, fmt.Sprintf("%s (%s)", cmp.Or(c.Spec.BreakerNo, "____"), strings.Join(c.Outlets, ", ")))
			}
		}
	}
	return fmt.Sprintf("%s %s, at %s", say.Agree(len(breakers), "breaker", "breakers"), say.And(breakers), at)
}

// decision is one answer of the noon call: its word, when it is given, and what is sent where that is more than the word.
type decision struct{ word, when, send string }

// noonCall is who decides, and the answers side by side.
func (w watch) noonCall() []block.Block {
	answers := w.decisions()
	return []block.Block{block.Heading("The noon call, by forecast: one person decides"),
		{Name: "who calls", Body: block.Blanks{{Word: "Calls"}, {Word: "Phone", Share: 0.8}, {Word: "If away", Share: 0.8}, {Word: "Sends to", Share: 0.8}}},
		{Name: "open or not", Gap: 1, Body: answers, Facts: w.decisionFacts()}}
}

// decisionFacts are the figures of the answers.
func (w watch) decisionFacts() []block.Fact {
	gust, _ := w.closeAt()
	facts := []block.Fact{{What: w.closedAs(), Value: w.insideWords()}, {What: "closed at gusts of, by meter", Value: w.units.Speed(gust.Local)}}
	if flat, ok := w.flatAt(); ok {
		facts = append(facts, block.Fact{What: "laid flat at gusts of", Value: w.units.Speed(flat.Called())})
	}
	return facts
}

// decisions are the answers of the noon call.
type decisions []decision

const decisionPad paper.Length = 2.2

// parts are what stands in an answer's box.
func (d decision) parts() []block.Block {
	list := []block.Block{{Body: block.Words{Text: d.word, Lettering: paper.Heading}}, {Body: block.Words{Text: d.when}}}
	if d.send != "" {
		list = append(list, block.Block{Gap: 1, Body: block.Words{Text: "Send: " + d.send, Lettering: paper.Floor}})
	}
	return list
}

// wide is the width of an answer: the last says most.
func (list decisions) wide(i int, width paper.Length) paper.Length {
	shares := []paper.Length{0.8, 1.1, 1.5}[:len(list)]
	sum := paper.Length(0)
	for _, s := range shares {
		sum += s
	}
	return width * shares[i] / sum
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

func (w watch) decisions() decisions {
	shut := "Bar both ends."
	if w.lit {
		shut = "Bar both ends, timers off."
	}
	gust, calm := w.closeAt()
	if calm {
		return decisions{{"CLOSED", "In any wind: as planned it bears none to speak of. The board says what to mend first. " + shut, ""}}
	}
	at := block.Figure(w.insideWords())
	list := decisions{
		{"OPEN", "Gusts below " + at + " till shut, no thunder, ice, snow.", ""},
		{"CLOSED", fmt.Sprintf("%s or more%s, thunder, ice, snow, no call by dusk. %s", at, toldBy(gust), shut), ""}}
	if flat, ok := w.flatAt(); ok {
		d := w.plan.Weather.Drill(w.lit)
		list = append(list, decision{"LAY FLAT", fmt.Sprintf("%s or more forecast before tomorrow ends: CLOSED, flat today by daylight (leaf %d), %.0f minutes.", block.Figure(w.units.Speed(flat.Called())), leafNumber("takedown"), d.Minutes),
			fmt.Sprintf("“LAY FLAT today at ____. %d people, %d or older.”", d.People, practice.Least)})
	}
	return list
}

// checks are the checks of an evening by number, as the log has them.
func (w watch) checks() block.Block {
	t := block.Table{Table: place.Table{Columns: []place.Column{{Width: 7, Lettering: paper.CellSmall}, {Head: "Checks before opening", Width: 62, Lettering: paper.Strong.Sized(11)},
		{Head: "Want", Lettering: paper.Floor}, {Head: "If not", Width: 55, Lettering: paper.Floor}}}}
	for _, task := range w.checked() {
		in := w.words.of(task)
		t.Rows = append(t.Rows, place.Row{Cells: []string{fmt.Sprint(len(t.Rows) + 1), in.Do, in.Want, in.IfOff}})
	}
	return block.Block{Name: "checks", Gap: 3, Body: t, Facts: []block.Fact{{What: "a stake moves by hand, less than", Value: w.units.Inches(practice.PullMoves(w.units))},
		{What: "crown under its mark, less than", Value: w.units.Inches(practice.CrownFell(w.units))}}}
}

// checked are the tasks between the noon call and the shutting.
func (w watch) checked() (list []crew.Task) {
	for _, t := range w.tasks {
		if t.Action != crew.NoonCall && t.Action != crew.NightClose {
			list = append(list, t)
		}
	}
	return list
}

// evening is what is written down once for all nights, who watches, and the shutting.
func (w watch) evening() []block.Block {
	var first block.Blanks
	bring := brought(w.plan, true, crew.Nights)
	text := fmt.Sprintf("%s %d people: one counts in, one out, one walks.\n%s %s", block.Figure("Watch:"), practice.Watchers, block.Figure("Bring:"), strings.Join(bring, ", "))
	hours, shut := block.Blanks{{Word: "Open from"}, {Word: "to"}}, ""
	if w.lit {
		lit := "lights on"
		if w.plan.Spec.Given("power.evenings.hours") {
			lit = fmt.Sprintf("lit %g hours, from", w.plan.Spec.Power.Evenings.Hours)
		}
		hours = append(hours, block.Blank{Word: lit}, block.Blank{Word: "to"})
		shut = fmt.Sprintf(" A timer darkens it %d minutes later.", practice.TimerAfter)
		text += fmt.Sprintf(", leaf %d", leafNumber("power"))
	}
	for _, t := range w.tasks {
		for _, n := range figureOf(t, crew.CrownKept).Arches {
			first = append(first, block.Blank{Word: fmt.Sprint("crown ", n)})
		}
		if t.Action == crew.NightClose {
			in := w.words.of(t)
			text += ".\n" + block.Figure("At closing:") + " " + in.Do + " " + in.Want + shut
		}
	}
	first[0].Word = "First night, mark the stick, write here: " + first[0].Word
	return []block.Block{{Name: "first night", Body: first}, {Name: "hours", Body: hours}, {Name: "the watch", Gap: 1, Body: block.Words{Text: text, Figures: paper.Strong}, Facts: bringFacts("nights", bring)}}
}
