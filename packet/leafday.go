package packet

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// dayLeaf is the organiser's: the work along the clock with everyone's name, every hold to tick, the figures to stop at; on its back the map of the site.
func (b *binder) dayLeaf() []folio {
	s := b.plan.Crew.Schedule
	var front []block.Block
	if len(s.Days) == 0 {
		front = append(front, block.Paragraph("There is nothing to build yet."))
	} else {
		front = append(front, b.dayPeople(s))
		if text, box := b.tooLong(s); box {
			front = append(front, block.Box("too long for a day", text))
		} else if text != "" {
			front = append(front, block.Block{Name: "how long", Gap: 1.5, Body: block.Words{Text: text}})
		}
		for i := range s.Days {
			if i < s.Marked {
				front = append(front, b.markingDay(s, i))
				continue
			}
			front = append(append(front, b.dayHead(s, i)), b.dayChart(s, i)...)
		}
		front = append(front, b.dayHolds(s)...)
	}
	front = append(front, b.dayStops())
	title := "Site map"
	if _, body := b.newSide(false); block.Height(front, body.W) > body.H {
		title = "Run sheet, site map"
	}
	return []folio{{front: side{title: "Run sheet", blocks: front}, back: side{title: title, toScale: true, blocks: b.siteMaps()}}}
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

// dayPeople has a name written down for each letter.
func (b *binder) dayPeople(s crew.Schedule) block.Block {
	const row = 6
	text := fmt.Sprintf("%d people, a name for each letter; A organises.", s.Hands)
	if short := practice.Raisers - s.Hands; short > 0 && len(b.plan.Kinds) > 0 {
		text = fmt.Sprintf("%s. Raising takes %d: find %d more before the day. A is the organiser.", say.Capital(people(s.Hands)), practice.Raisers, short)
	}
	lines := []block.Block{{Body: block.Words{Lettering: paper.Strong, Text: text}}}
	for first := 0; first < s.Hands; first += row {
		var blanks block.Blanks
		for p := first; p < first+row; p++ {
			if p < s.Hands {
				blanks = append(blanks, block.Blank{Word: letter(p)})
			}
		}
		lines = append(lines, block.Block{Body: blanks})
	}
	return block.Block{Name: "names", Body: block.Columns{Cols: []block.Column{{Share: 1, Blocks: lines}}}}
}

// tooLong says that the work goes on for more than a day, or after lunch, and what a leader can do about it.
func (b *binder) tooLong(s crew.Schedule) (text string, box bool) {
	built := s.Built()
	_, end := lastWork(s)
	switch {
	case len(built) == 0:
		return "", false
	case len(s.Left) > 0:
		text, box = "Too little time: these days leave work undone.", true
	case len(built) > 1 && s.Fit.Cures == nil:
		return fmt.Sprintf("%s of building, done at %s. Before each dusk tie the newest arch both ways.", say.Capital(say.Count(len(built), "day")), end), false
	case len(built) > 1:
		text, box = fmt.Sprintf("Too long for one day of light: %s of building, done at %s on day %d.", say.Count(len(built), "day"), end, len(built)), true
	case end > practice.Lunch+60 && built[0].Begin < practice.Lunch:
		return fmt.Sprintf("Done %s: %s till %s.", end, whyLong(s), s.Earliest()), false
	default:
		return "", false
	}
	var ways []string
	if n := s.Fit.Helpers + 1 - s.Hands; s.Fit.Helpers > 0 {
		ways = append(ways, "ask "+say.Count(n, "more helper"))
	}
	if n := s.Fit.Evenings; n > 0 {
		ways = append(ways, "cut, try and wrap on "+say.Count(n, "evening")+" before")
	}
	if len(ways) > 0 {
		text += " To save a day: " + say.Or(ways) + "."
	}
	return text + " Before each dusk tie the newest arch both ways: none stands overnight untied.", box
}

// whyLong says what a day's length comes from.
func whyLong(s crew.Schedule) string {
	switch s.Why {
	case crew.ByHands:
		return fmt.Sprintf("work for all %d", s.Hands)
	case crew.ByTools:
		return "tasks share tools"
	}
	return "tasks in line"
}

// lastWork returns when the last work by daylight ends.
func lastWork(s crew.Schedule) (day int, at crew.Clock) {
	for _, j := range s.Jobs {
		if d, end, ok := j.End(); ok && j.Work != crew.LightUp && (d > day || d == day && end > at) {
			day, at = d, end
		}
	}
	return day, at
}

// dayWords prints a day, or a blank for one.
func dayWords(t time.Time) string {
	if t.IsZero() {
		return "Day ____________"
	}
	return t.Format("Monday 2 January")
}

// markingDay says in a line when and by whom the ground is marked.
func (b *binder) markingDay(s crew.Schedule, day int) block.Block {
	text := dayWords(s.Days[day].Date) + ": mark the ground, call the locator"
	for _, j := range s.Jobs {
		for k, st := range j.Stints {
			if st.Day != day {
				continue
			}
			text += fmt.Sprintf(", %s to %s", st.Begin, st.End)
			if k == 0 || s.Hands > len(st.Hands) {
				text += " by " + whoWords(st.Hands, s.Hands)
			}
		}
	}
	return block.Block{Name: "marking day", Gap: 2.5, Body: block.Words{Text: text + "."}}
}

// firstOut is the first day of building.
func firstOut(s crew.Schedule) int {
	return s.Marked + slices.IndexFunc(s.Days[s.Marked:], func(d crew.Workday) bool { return !d.Bench() })
}

// dayHead is a day of building with its light. What the plan does not know is left blank.
func (b *binder) dayHead(s crew.Schedule, day int) block.Block {
	d, first := s.Days[day], day == firstOut(s)
	text := block.Figure(dayWords(d.Date)) + fmt.Sprintf(", from %s", d.Begin)
	if trial, ok := b.trialOn(s, day); ok {
		return block.Block{Name: "day", Gap: 3, Keep: true, Body: block.Words{Text: text + ": " + trial, Figures: paper.Strong.Sized(13)}}
	}
	if d.Bench() {
		return block.Block{Name: "day", Gap: 3, Keep: true, Body: block.Words{Text: text + ", at the bench.", Figures: paper.Strong.Sized(13)}}
	}
	if d.Lunch > 0 {
		text += fmt.Sprintf(", lunch %s", d.Lunch)
	}
	text += "."
	switch {
	case d.Light != nil:
		text += fmt.Sprintf(" Light until %s, dark from %s.", block.Figure(d.Light.Set.String()), d.Light.Dusk)
		if first {
			text += fmt.Sprintf(" (%s)", d.Light.Zone)
		}
	default:
		text += " Sunset ________: then only the dark walk."
	}
	return block.Block{Name: "day", Gap: 3, Keep: true, Body: block.Words{Text: text, Figures: paper.Strong.Sized(13)}}
}

// trialOn says the trial of one arch, on its day.
func (b *binder) trialOn(s crew.Schedule, day int) (string, bool) {
	for _, j := range s.Jobs {
		if j.Work == crew.TryArch && len(j.Stints) > 0 && j.Stints[0].Day == day {
			in := newTaskWords(b.plan).of(b.plan.Crew.Tasks[j.Tasks[0]])
			return in.Do + " " + in.Want, true
		}
	}
	return "", false
}

// dayChart is one day of building as bars, and under it whoever found no room in it.
func (b *binder) dayChart(s crew.Schedule, day int) []block.Block {
	chart, names := b.chartOf(s, day), b.chartNames(s)
	list := []block.Block{{Name: "day chart", Gap: 1, Body: block.Picture{Least: chart.Least(), Best: chart.Most(), Paint: func(page *paper.Page, box paper.Rect) []string {
		chart.Draw(page, box, names)
		return nil
	}}}}
	var words []string
	for _, m := range chart.Draw(&paper.Page{}, paper.Rect{W: b.bodyWidth(), H: chart.Least()}, names) {
		words = append(words, fmt.Sprintf("%s, %s: %s", m.Row, m.Bar.Begin, m.Bar.Who))
	}
	if len(words) > 0 {
		list = append(list, block.Block{Name: "who else", Gap: 1, Body: block.Words{Lettering: paper.Floor, Text: strings.Join(words, ". ") + "."}})
	}
	return list
}

// chartNames is the room for the names of works, alike on every day.
func (b *binder) chartNames(s crew.Schedule) (wide paper.Length) {
	for day := s.Marked; day < len(s.Days); day++ {
		wide = max(wide, b.chartOf(s, day).Names())
	}
	return wide
}

// chartOf gathers a day's bars: a row a work, or a row each of several crews that raise side by side.
func (b *binder) chartOf(s crew.Schedule, day int) draw.DayChart {
	d := s.Days[day]
	c := draw.DayChart{From: d.Begin / 60 * 60, To: d.End, Lunch: d.Lunch, Rest: practice.MinutesLunch, Light: d.Light}
	if d.Light != nil && !d.Bench() {
		c.To = max(c.To, d.Light.Dusk)
	}
	for _, work := range crew.Works() {
		if work == crew.MarkGround {
			continue
		}
		for _, row := range b.chartRows(s, day, work) {
			for _, bar := range row.Bars {
				c.To = max(c.To, bar.End)
			}
			c.Rows = append(c.Rows, row)
		}
	}
	c.To = (c.To + 59) / 60 * 60
	return c
}

// chartRows are a work's rows on a day. Stretches that follow each other without a break and by the same people are one bar; those that go on side by side get a row each
// and their arches in its name.
func (b *binder) chartRows(s crew.Schedule, day int, work crew.Work) (rows []draw.ChartRow) {
	var arches [][]string
	for _, j := range s.Jobs {
		if j.Work != work {
			continue
		}
		for k, st := range j.Stints {
			if st.Day != day {
				continue
			}
			bar := draw.ChartBar{Begin: st.Begin, End: st.End, Who: whoWords(st.Hands, s.Hands), Count: fmt.Sprint(len(st.Hands)), Hold: k == len(j.Stints)-1 && b.holds(j)}
			if work == crew.ClearUp {
				bar.Who = "who is free"
			}
			r := slices.IndexFunc(rows, func(r draw.ChartRow) bool {
				return !slices.ContainsFunc(r.Bars, func(o draw.ChartBar) bool { return o.Begin < bar.End && bar.Begin < o.End })
			})
			if r < 0 {
				r = len(rows)
				rows, arches = append(rows, draw.ChartRow{}), append(arches, nil)
			}
			if name := fmt.Sprintf("%d–%d", max(3, j.First), j.Last); !slices.Contains(arches[r], name) {
				arches[r] = append(arches[r], name)
			}
			rows[r].Add(bar)
		}
		if work == crew.LightUp && len(j.Stints) == 0 && day == len(s.Days)-1 {
			rows, arches = append(rows, draw.ChartRow{Note: "when it is dark, at ______"}), append(arches, nil)
		}
	}
	if tie := s.Days[day].TieOff; work == crew.ClearUp && tie > 0 {
		if len(rows) == 0 {
			rows = append(rows, draw.ChartRow{})
		}
		rows[0].Bars = append(rows[0].Bars, draw.ChartBar{Begin: tie, End: tie + practice.MinutesTieOff, Who: "all: tie both ways", Count: "all"})
	}
	for r := range rows {
		if rows[r].Name = b.workWords(work); len(rows) > 1 && work == crew.RaiseOthers {
			rows[r].Name = "Raise " + strings.Join(arches[r], ", ")
		}
	}
	return rows
}

// holds reports whether a job has a hold in it.
func (b *binder) holds(j crew.Job) bool {
	for _, i := range j.Tasks {
		if b.plan.Crew.Tasks[i].Hold {
			return true
		}
	}
	return false
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
		switch {
		case r.Last-r.First > 1:
			words = append(words, letter(r.First)+"–"+letter(r.Last))
		default:
			for p := r.First; p <= r.Last; p++ {
				words = append(words, letter(p))
			}
		}
	}
	return strings.Join(words, " ")
}
