package packet

import (
	"cmp"
	"fmt"
	"slices"
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
	open := fmt.Sprintf("Open when leaf %d is signed", leafNumber(before))
	if _, ok := w.flatAt(); ok {
		open += ", after LAY FLAT signed again"
	}
	front := []block.Block{{Name: "start", Body: block.Blanks{{Word: open + ". Seen by"}}}, w.box()}
	front = append(front, w.noonCall()...)
	front = append(front, w.evening()...)
	front = append(front, w.checks())
	year := ""
	if open := w.plan.Spec.Dates.Open; !open.IsZero() {
		year = open.Format(", 2006")
	}
	return []folio{{
		front: side{title: "Nights: open or not", blocks: front},
		back:  side{title: "Nights: the log" + year, blocks: w.log()},
	}}
}

// box is what is wanted first when something has happened, and how many may be inside.
func (w watch) box() block.Block {
	most, watcher := w.plan.MostInside(), "the watcher outside"
	if most > 1 {
		watcher = say.Count(most-1, "visitor") + ", 1 watcher"
	}
	site := w.plan.Spec.Site
	list := []block.Block{saidOrBlank("Place", site.Address), saidOrBlank("Emergency", emergency(w.plan.Spec, ""))}
	if w.lit {
		list = append(list, w.powerOff()...)
	}
	text := "inside at most:\n" + watcher + ".\nFire authority said ____: the smaller counts."
	if n := len(w.stand); n > 1 {
		text += fmt.Sprintf("\nIn at arch %d, out at arch %d.", w.stand[0].Number, w.stand[n-1].Number)
	}
	for _, way := range w.plan.Spec.SideWays() {
		text += fmt.Sprintf("\nOut: %s, after arch %d.", way.Wall, way.Bay)
	}
	number := paper.Large.Sized(36)
	return block.Block{Name: "whom to ring", Gap: 1, Facts: []block.Fact{{What: "People inside, at most", Value: fmt.Sprint(most)}}, Body: block.Framed{Blocks: []block.Block{{Body: block.Columns{Gap: 4, Cols: []block.Column{
		{Share: 1, Blocks: list},
		{Width: number.Width(fmt.Sprint(most)) + 1, Blocks: []block.Block{{Body: block.Words{Text: fmt.Sprint(most), Lettering: number}}}},
		{Width: 52, Blocks: []block.Block{{Body: block.Words{Text: text, Lettering: paper.Floor}}}},
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
func (w watch) powerOff() []block.Block {
	const few = 3
	at := ""
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
				breakers = append(breakers, fmt.Sprintf("%s (for %s)", cmp.Or(c.Spec.BreakerNo, "____"), strings.Join(c.Outlets, ", ")))
			}
		}
	}
	return []block.Block{saidOrBlank("Power off", say.Agree(len(breakers), "breaker ", "breakers ")+say.And(breakers)), saidOrBlank("At", at)}
}

// noonCall is who decides, and the answers side by side: each its word, when it is given, and what is sent where that is more than the word.
func (w watch) noonCall() []block.Block {
	columns := block.Columns{Gap: 5}
	answer := func(share float64, word string, when ...string) {
		blocks := []block.Block{{Body: block.Words{Text: word, Lettering: paper.Heading}}}
		for _, text := range when {
			blocks = append(blocks, block.Block{Body: block.Words{Text: text}})
		}
		columns.Cols = append(columns.Cols, block.Column{Share: share, Blocks: blocks})
	}
	shut := "Bar every way."
	if w.lit {
		shut = "Bar every way, timers at the outlets off."
	}
	gust, calm := w.closeAt()
	at := block.Figure(w.insideWords())
	facts := []block.Fact{{What: w.closedAs(), Value: w.insideWords()}}
	if calm {
		answer(1, "CLOSED", "In any wind: as planned it bears none to speak of. The board says what to mend first. "+shut)
	} else {
		answer(0.85, "OPEN", "Gusts below "+at+" till closing, no thunder, ice, snow.")
		answer(1.1, "CLOSED", fmt.Sprintf("Gusts %s or more, thunder, ice, snow, no call by dusk. %s", at, shut))
	}
	calls := block.Blanks{{Word: "Decides"}, {Word: "Phone", Share: 0.8}, {Word: "If away, phone"}, {Word: "Bars the ways", Share: 0.8}}
	source := "by forecaster ____________"
	if gust.Forecast == 0 && !calm {
		source = "by meter"
	}
	list := []block.Block{block.Heading("The noon call, daily while it stands: gusts " + source), {Name: "who calls", Body: calls}}
	if flat, ok := w.flatAt(); ok {
		flatly, raisers := w.plan.LaidFlat(), crew.Raisers(w.plan.Spec)
		crews := ""
		if flatly.Crews > 1 {
			crews = fmt.Sprintf("%d crews of %d, ", flatly.Crews, raisers)
		}
		ends, by, day := "before tomorrow ends", "sunset", "today"
		if flatly.Ahead {
			ends, by, day = "in the next 2 days", "tomorrow’s sunset", "____"
		}
		called := w.units.Speed(flat.Called())
		facts = append(facts, block.Fact{What: "laid flat at gusts of", Value: called})
		answer(1.5, "LAY FLAT", fmt.Sprintf("Gusts %s or more %s: CLOSED. Lay it flat before, at latest by %s (leaf\u00a0%d): %s%.0f minutes.", block.Figure(called), ends, by, leafNumber("takedown"), crews, flatly.Minutes),
			fmt.Sprintf("Send: “LAY FLAT %s at ____.”", day))
		ladders := ""
		if flatly.Crews > 1 && used(w.plan, crew.Stepladder) > 0 { // more than raised it, maybe
			ladders = fmt.Sprintf(", %d stepladders", flatly.Crews)
		}
		list = append(list, block.Block{Name: "who lays it flat", Body: block.Blanks{{Word: fmt.Sprintf("%d who lay it flat, %d or older%s, phones", flatly.Crews*raisers, practice.Least, ladders)}}}, block.Block{Name: "their phones", Body: block.Blanks{{}}})
	}
	return append(list, block.Block{Name: "open or not", Gap: 1, Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: columns}}}, Facts: facts})
}

// checks are the checks of an evening by number, as the log has them.
func (w watch) checks() block.Block {
	closed := crew.Cure{Do: crew.CloseTonight}
	t := block.Table{Table: place.Table{Columns: []place.Column{{Width: 7, Lettering: paper.CellSmall}, {Head: "Checks before opening", Width: 62, Lettering: paper.Strong.Sized(11)},
		{Head: "Want", Lettering: paper.Floor}, {Head: "If not, ring who decides: " + w.words.cure(closed), Width: 55, Lettering: paper.Floor}}}}
	for _, task := range w.checked() {
		task.IfOff = slices.DeleteFunc(slices.Clone(task.IfOff), func(c crew.Cure) bool { return c == closed }) // the head says so
		in := w.words.of(task)
		t.Rows = append(t.Rows, place.Row{Cells: []string{fmt.Sprint(len(t.Rows) + 1), in.Do, in.Want, in.IfOff}})
	}
	facts := []block.Fact{{What: "a stake moves by hand, less than", Value: w.units.Inches(practice.HandMoves(w.units))}}
	if fall := w.crownsFall(); fall > 0 {
		facts = append(facts, block.Fact{What: "crown under its mark, less than", Value: w.units.Inches(fall)})
	}
	return block.Block{Name: "checks", Gap: 3, Body: t, Facts: facts}
}

// crownsFall is how far under their marks crowns are still looked on as kept; 0 where no mark is made.
func (w watch) crownsFall() measure.Length {
	return figureOf(w.tasks[slices.IndexFunc(w.tasks, func(t crew.Task) bool { return t.Action == crew.NightPipe })], crew.CrownKept).Limit
}

// checkOf is the number of a check.
func (w watch) checkOf(action crew.Action) int {
	return slices.IndexFunc(w.checked(), func(t crew.Task) bool { return t.Action == action }) + 1
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

// evening is what is written down once for all nights, who watches, and the closing.
func (w watch) evening() []block.Block {
	bring := brought(w.plan, true, crew.Nights)
	var leaves []string
	hours := block.Blanks{{Word: "Watch here at"}, {Word: "Open from"}, {Word: "to"}}
	if w.lit {
		hours = append(hours, block.Blank{Word: "lit from"}, block.Blank{Word: fmt.Sprintf("to (closing + %d minutes)", practice.TimerAfter)})
		leaves = append(leaves, fmt.Sprint(leafNumber("power")))
	}
	leaves = append(leaves, fmt.Sprint(leafNumber("takedown")))
	closing := ""
	for _, t := range w.tasks {
		if t.Action == crew.NightClose {
			in := w.words.of(t)
			closing = in.Do + " " + in.Want
		}
	}
	walks := "walks"
	if w.plan.MostInside() == 1 { // a visitor alone
		walks = "walks outside"
	}
	text := fmt.Sprintf("%s one counts at each way, one %s. %s %s\n%s %s, %s %s.",
		block.Figure(fmt.Sprintf("Watch of %d or CLOSED:", practice.Watchers+len(w.plan.Spec.SideWays()))), walks, block.Figure("At closing:"), closing, block.Figure("Bring:"), strings.Join(bring, ", "), say.Agree(len(leaves), "leaf", "leaves"), say.And(leaves))
	if fall := w.crownsFall(); fall > 0 {
		text += fmt.Sprintf("\n%s on the stick mark, number the crowns of check %d, lower marks %s under.", block.Figure("First night:"), w.checkOf(crew.NightPipe), w.units.Inches(fall))
	}
	return []block.Block{{Name: "hours", Body: hours}, {Name: "the watch", Gap: 1, Body: block.Words{Text: text, Figures: paper.Strong}, Facts: bringFacts("nights", bring)}}
}
