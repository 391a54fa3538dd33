package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// dayLeaf is the organiser's: the work along the clock with everyone's name, every hold to tick, the figures to stop at; on its back the map of the site.
func (b *binder) dayLeaf() []folio {
	f, _, _ := b.day()
	return []folio{f}
}

// day is the organiser's folio. Where the map has no room for cords, their plan follows it if the tunnel is long or a back is free; else it is left to the power crew's leaf.
func (b *binder) day() (f folio, maps siteMaps, left bool) {
	front, maps := b.dayFront()
	title := "Site map"
	if maps.over {
		title = "Run sheet, site map"
	}
	year := ""
	if days := b.plan.Crew.Schedule.Built(); len(days) > 0 && !days[0].Date.IsZero() {
		year = days[0].Date.Format(", 2006")
	}
	plan, list := maps.under("")
	f = folio{front: side{title: "Run sheet" + year, blocks: front}, back: side{title: title, toScale: true, blocks: list}}
	switch {
	case plan.Cords:
	case len(maps.plan.Ground.Stations) > mapLong || len(setting{binder: b}.folio(f).sides)%2 == 1:
		_, room := b.newSide(true)
		f.back.blocks = append(list, maps.cords(room)...)
	default:
		_, f.back.blocks = maps.under(fmt.Sprintf("\nWhere cords lie: drawn on leaf %d.", leafNumber("power")))
		left = true
	}
	return f, maps, left
}

// dayFront is the run sheet, set more closely where that keeps it to one side, with the maps that what it leaves of the back has room for.
func (b *binder) dayFront() (front []block.Block, maps siteMaps) {
	_, body := b.newSide(false)
	front = append(runSheet{b.plan.Crew.Schedule, b.plan, body.W}.blocks(), b.dayStops())
	for tight := block.Loose; tight <= block.Tightest; tight++ {
		closer := block.Tight(front, tight)
		_, rest, _ := block.Fill(&paper.Page{}, body, closer)
		maps = siteMaps{plan: b.plan, room: body, over: len(rest) > 0}
		if !maps.over {
			return closer, maps
		}
		small := maps
		if small.room.H -= block.Height(rest, body.W) + mapGap; tight < block.Tightest || small.room.H < mapLeast {
			continue
		}
		if plan, _ := small.under(""); len(plan.Sections) == 1 { // the run sheet goes on over the map
			return closer, small
		}
	}
	return front, maps
}

// runSheet is the work along the clock.
type runSheet struct {
	crew.Schedule
	plan  *layout.Plan
	width paper.Length // of a side's body
}

// blocks are the names, each day's bars, the holds.
func (r runSheet) blocks() []block.Block {
	if len(r.Days) == 0 {
		return []block.Block{block.Paragraph("There is nothing to build yet.")}
	}
	var list []block.Block
	if past := "days-past"; finding.Has(r.plan.Findings, past) {
		list = append(list, block.Block{Name: past, Body: block.Words{Lettering: paper.Strong, Text: titleOf(past) + ": build by no day of this print."}})
	}
	list = append(list, r.names())
	if text := r.tooLong(); text != "" {
		list = append(list, block.Box("too long for a day", text))
	}
	names := r.nameRoom()
	for day := range r.Days {
		if day < r.Marked {
			list = append(list, r.marking(day))
		} else {
			list = append(list, r.head(day), r.chart(day, names))
		}
	}
	return append(list, r.toSign()...)
}

// letter names a person on the run sheet, counted from 0: A to Z, then AA.
func letter(person int) string {
	if person < 26 {
		return string(rune('A' + person))
	}
	return letter(person/26-1) + letter(person%26)
}

// people prints how many do it.
func people(n int) string {
	if n == 1 {
		return "1 person"
	}
	return fmt.Sprintf("%d people", n)
}

// names has a name written down for each letter, in rows about equally long.
func (r runSheet) names() block.Block {
	const most = 6
	of := "all"
	if r.Young > 0 { // theirs are the last letters
		of = "A to " + letter(r.Hands-r.Young-1)
	}
	text := fmt.Sprintf("%s, a name for each letter, %s %d or older; A organises.", say.Capital(people(r.Hands)), of, practice.Least)
	var blanks block.Blanks
	for p := range r.Hands {
		blanks = append(blanks, block.Blank{Word: letter(p)})
	}
	missing := r.missing()
	for _, p := range missing {
		blanks = append(blanks, block.Blank{Word: fmt.Sprintf("find %s, %d+", letter(p), practice.Least)})
	}
	if len(missing) > 0 {
		text += fmt.Sprintf(" Raising takes %d: find %s.", crew.Raisers(r.plan.Spec), whoWords(missing, 0))
	}
	rows := (len(blanks) + most - 1) / most
	lines := []block.Block{{Body: block.Words{Lettering: paper.Strong, Text: text}}}
	for row := range slices.Chunk(blanks, (len(blanks)+rows-1)/rows) {
		lines = append(lines, block.Block{Body: row})
	}
	return block.Block{Name: "names", Body: block.Columns{Cols: []block.Column{{Share: 1, Blocks: lines}}}}
}

// missing are the people of age whom raising takes and the spec does not have: their letters come after all others.
func (r runSheet) missing() (list []int) {
	for p := r.Hands; len(r.plan.Kinds) > 0 && p < crew.Raisers(r.plan.Spec)+r.Young; p++ {
		list = append(list, p)
	}
	return list
}

// tooLong says that the work goes on for more than a day. What would save a day stands on the board.
func (r runSheet) tooLong() string {
	text := ""
	switch built := len(r.Built()); {
	case built == 0 || built == 1 && len(r.Left) == 0:
		return ""
	case len(r.Left) > 0:
		text = "Too little time: these days leave work undone."
	case r.Fit.Cures != nil:
		text = fmt.Sprintf("Too long for one day of light: %s of building.", say.Count(built, "day"))
	}
	if r.Overnight() {
		newest := "the newest arch"
		if r.BegunApart() != nil {
			newest = "each stretch’s newest arch"
		}
		text = strings.TrimSpace(text + " Before each dusk tie " + newest + " both ways: none stands overnight untied.")
	}
	return text
}

// done is when the last work by daylight ends on a day.
func (r runSheet) done(day int) (at crew.Clock) {
	if tie := r.Days[day].TieOff; tie > 0 {
		return tie + practice.MinutesTieOff
	}
	for _, j := range r.Jobs {
		for _, st := range j.Stints {
			if st.Day == day && j.Work != crew.LightUp {
				at = max(at, st.End)
			}
		}
	}
	return at
}

// dayWords prints a day, or a blank for one.
func dayWords(t time.Time) string {
	if t.IsZero() {
		return "Day ____________"
	}
	return t.Format("Mon 2 Jan")
}

// marking says in a line when and by whom the ground is marked.
func (r runSheet) marking(day int) block.Block {
	text := dayWords(r.Days[day].Date) + ": "
	if r.Days[day].Date.IsZero() {
		text = "Earlier d" + text[1:]
	}
	if day == 0 {
		text += fmt.Sprintf("read leaf %d aloud, ", leafNumber("board"))
	}
	text += "paint the dots"
	if day == r.Marked-1 && drives(r.plan) {
		text += ", name who calls the locator"
		if slices.ContainsFunc(r.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.FlagDots }) {
			text += ", who flags"
		}
	}
	for _, j := range r.Jobs {
		for k, st := range j.Stints {
			if st.Day != day {
				continue
			}
			text += fmt.Sprintf(", %s to %s", st.Begin, st.End)
			if k == 0 || r.Hands > len(st.Hands) {
				text += " by " + whoWords(st.Hands, r.Hands)
			}
		}
	}
	return block.Block{Name: "marking day", Gap: 2.5, Body: block.Words{Text: text + "."}}
}

// head is a day of building with its light. What the plan does not know is left blank: then no hour is promised that dusk may come before.
func (r runSheet) head(day int) block.Block {
	d := r.Days[day]
	text := block.Figure(dayWords(d.Date)) + fmt.Sprintf(", %s to %s", d.Begin, r.done(day))
	for _, j := range r.Jobs {
		if k := len(j.Stints) - 1; j.Work == crew.LightUp && k >= 0 && j.Stints[k].Day == day {
			text += fmt.Sprintf(", %s at %s", whoWords(j.Stints[k].Hands, r.Hands), j.Stints[k].Begin)
		}
	}
	if d.Lunch > 0 {
		text += fmt.Sprintf(", lunch %s to %s", d.Lunch, d.Lunch+practice.MinutesLunch)
	}
	trial := r.trial(day)
	switch {
	case trial != "":
		text += ": " + trial
	case d.Bench():
		text += ", at the bench."
	case d.Light == nil:
		text += ". Stop at sunset, ____"
	default:
		text += fmt.Sprintf(". Light to %s, dark %s", block.Figure(d.Light.Set.String()), d.Light.Dusk)
		if s := r.plan.Spec; !s.Given("site.clock") {
			text += " if clocks show " + s.Site.Clock.String()
		}
		text += "."
	}
	return block.Block{Name: "day", Gap: 3, Keep: true, Body: block.Words{Text: text, Figures: paper.Strong.Sized(13)}}
}

// trial says the trial of one arch on its day; empty on others.
func (r runSheet) trial(day int) string {
	for _, j := range r.Jobs {
		if j.Work == crew.TryArch && len(j.Stints) > 0 && j.Stints[0].Day == day {
			in := newTaskWords(r.plan).of(r.plan.Crew.Tasks[j.Tasks[0]])
			return in.Do + " " + in.Want
		}
	}
	return ""
}

// chart is one day of building as bars.
func (r runSheet) chart(day int, names paper.Length) block.Block {
	chart := r.bars(day).Parted(r.width, names)
	return block.Block{Name: "day chart", Gap: 1, Body: block.Picture{Least: chart.Least(), Best: chart.Most(), Paint: func(page *paper.Page, box paper.Rect) []string {
		chart.Draw(page, box, names)
		return nil
	}}}
}

// nameRoom is the width of the works' names, alike on every day.
func (r runSheet) nameRoom() (wide paper.Length) {
	for d := r.Marked; d < len(r.Days); d++ {
		wide = max(wide, r.bars(d).Names())
	}
	return wide
}

// bars gathers a day's bars, a row a work.
func (r runSheet) bars(day int) draw.DayChart {
	d := r.Days[day]
	c := draw.DayChart{From: d.Begin / 60 * 60, To: d.End, Lunch: d.Lunch, Rest: practice.MinutesLunch, Light: d.Light}
	if d.Light == nil { // nothing to show after the work
		c.To = r.done(day) + 60
	} else if !d.Bench() {
		c.To = max(c.To, d.Light.Dusk)
	}
	for work := range crew.Works {
		row := draw.ChartRow{Name: r.workWords(work, day), Leaves: r.leavesOf(work)}
		if work == crew.ClearUp && r.Ties(day) {
			row.Name, row.Leaves = "By sunset tie newest arch", []int{leafNumber("raise")}
		}
		for _, bar := range r.shifts(day, work) {
			row.Add(bar)
			c.To = max(c.To, bar.End)
		}
		byDark := func(j crew.Job) bool { return j.Work == work && work == crew.LightUp && len(j.Stints) == 0 }
		if day == len(r.Days)-1 && slices.ContainsFunc(r.Jobs, byDark) {
			row.Note = "when dark, at ______ by ______"
		}
		if len(row.Bars) > 0 || row.Note != "" {
			c.Rows = append(c.Rows, row)
		}
	}
	slices.SortStableFunc(c.Rows, func(a, b draw.ChartRow) int { return cmp.Compare(a.Begin(), b.Begin()) })
	c.To = (c.To + 59) / 60 * 60
	return c
}

// leavesOf are the leaves that a work is done by.
func (r runSheet) leavesOf(w crew.Work) (list []int) {
	if w == crew.Unload {
		return []int{leafNumber("board")} // read aloud
	}
	for _, j := range r.Jobs {
		if j.Work != w {
			continue
		}
		for _, i := range j.Tasks {
			list = append(list, leafNumber(holdLeaves[r.plan.Crew.Tasks[i].Phase]))
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// shifts are the bars of a work on a day.
func (r runSheet) shifts(day int, work crew.Work) (list []draw.ChartBar) {
	gangs := work == crew.RaiseOthers && len(raising{Raising: draw.Raising{Plan: r.plan}}.sideBySide()) > 0
	for _, j := range r.Jobs {
		if j.Work != work {
			continue
		}
		which := ""
		if first := max(j.First, 3); gangs { // arches 1 and 2 have a row of their own
			which = fmt.Sprintf("%d–%d: ", first, max(first, j.Last))
		}
		holds := r.holds(j)
		for _, st := range j.Stints {
			if st.Day != day {
				continue
			}
			bar := draw.ChartBar{Begin: st.Begin, End: st.End, Who: which + r.whoAt(work, st.Hands)}
			for _, h := range holds {
				if h.timed && h.day == day && st.Begin <= h.at && h.at <= st.End {
					bar.Holds = append(bar.Holds, h.at)
				}
			}
			list = append(list, bar)
		}
	}
	if tie := r.Days[day].TieOff; work == crew.ClearUp && tie > 0 {
		bar := draw.ChartBar{Begin: tie, End: tie + practice.MinutesTieOff, Who: "all"}
		if r.Ties(day) {
			bar.Who, bar.Holds = "all, then clear up", []crew.Clock{bar.End}
		}
		list = append(list, bar)
	}
	if d := r.Days[day]; work == crew.Unload && d.Read > 0 {
		list = append(list, draw.ChartBar{Begin: d.Begin, End: d.Begin + d.Read, Who: "all"})
	}
	slices.SortFunc(list, func(a, b draw.ChartBar) int { return cmp.Compare(a.Begin, b.Begin) })
	return list
}

// whoAt names who is at a work. To those who raise come the people who are still to be found; the last of them, and of those who secure crowns, do nothing but watch a wire.
func (r runSheet) whoAt(work crew.Work, hands []int) string {
	wires, missing := len(r.plan.Spec.Site.Overhead), r.missing()
	switch {
	case work == crew.ClearUp:
		return "who is free"
	case work == crew.HoldRidge && len(hands) >= 2+wires: // crowns are secured by the ladder
		missing = nil
	case !work.Raises():
		return whoWords(hands, r.Hands)
	}
	hands, all := slices.Concat(hands, missing), r.Hands+len(missing)
	who := whoWords(hands, all)
	if wires > 0 {
		who += ": " + whoWords(hands[max(0, len(hands)-wires):], all) + " watches"
	}
	return who
}

// whoWords names people by letters: three or more in a row by the first and the last of them.
func whoWords(list []int, hands int) string {
	switch {
	case len(list) == hands && hands > 2:
		return "all"
	case hands-len(list) == 1 && hands > 4:
		for p := range hands {
			if p >= len(list) || list[p] != p {
				return "all but " + letter(p)
			}
		}
	}
	var words []string
	for _, r := range say.Runs(list) {
		if r.Last-r.First > 1 {
			words = append(words, letter(r.First)+"–"+letter(r.Last))
			continue
		}
		for p := r.First; p <= r.Last; p++ {
			words = append(words, letter(p))
		}
	}
	return strings.Join(words, " ")
}
