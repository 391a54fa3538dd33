package packet

import (
	"fmt"
	"slices"
	"time"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// log is the back: what is done when it happens, the worst of it to be read aloud; who watches when, a line a night, in one column or two as the side has room.
func (w watch) log() []block.Block {
	list, nights, columns := w.happens(), w.nights(), 1
	free := func() paper.Length {
		return w.room.H - block.Height(append(slices.Clone(list), w.howLogged()), w.room.W) - 1
	}
	fit := func(free paper.Length) int { return int((free - logHead) / logRow) }
	switch one := fit(free()); {
	case nights[0] == "": // written in as they come: as many lines as there is room for
		nights = nights[:min(len(nights), one)]
	case len(nights) > one:
		columns = 2
		list = append(list, block.Block{Name: "rota", Body: block.Blanks{{Word: "Leader, keys, power: Mon"}, {Word: "Tue"}, {Word: "Wed"}, {Word: "Thu"}, {Word: "Fri"}, {Word: "Sat"}, {Word: "Sun"}}})
		dead := writing{"Went dead: night, outlet or run, mended by", 3}
		for dead.least > 1 && columns*fit(free()-1.5-dead.Height(w.room.W)) <= len(nights) {
			dead.least--
		}
		list = append(list, block.Block{Name: "went dead", Gap: 1.5, Body: dead})
	}
	room := free()
	list = append(list, w.howLogged())
	if d := w.plan.Spec.Dates; nights[0] != "" && !d.Build.IsZero() && d.Build.Before(d.Open) && len(nights) < columns*fit(room) { // it stands, and is called for, before it opens
		nights = append([]string{d.Build.Format("from 2 Jan")}, nights...)
	}
	switch { // the noon call goes on
	case nights[0] == "":
	case len(nights) < columns*fit(room):
		till := "till down"
		if w.lit { // nobody watches over lights
			till = "off " + till
		}
		nights = append(nights, till)
	default:
		nights[len(nights)-1] = goesOn(w.plan.Spec.Dates.Close)
	}
	for len(nights) > 0 {
		n := min(len(nights), columns*fit(room))
		table := logTable(nights[:n], columns, len(w.checked()), w.room.W)
		table.RowMin = min(logRowMost, (room-logHead)/paper.Length(len(table.Rows)))
		list = append(list, block.Block{Name: "log", Gap: 1, Body: table})
		nights, room = nights[n:], w.room.H
	}
	return list
}

// goesOn is the last night where the calls after it have no line of their own: in one line, or its row is too high for the side.
func goesOn(night time.Time) string { return night.Format("2 Jan") + ", on" }

// Room of the log.
const (
	logHead    paper.Length = 6.4
	logRow     paper.Length = 6.3 // of a night
	logRowMost paper.Length = 8.4
	logTick    paper.Length = 6 // of a check's cell: a gloved hand ticks it
)

// logTable is a line a night with a cell for each check; two columns of nights stand beside each other.
func logTable(nights []string, columns, checks int, width paper.Length) block.Table {
	half := []place.Column{{Head: "Night", Width: 26.4, Lettering: paper.Strong.Sized(11)}}
	add := func(head string, width paper.Length) { half = append(half, place.Column{Head: head, Width: width}) }
	if columns == 1 {
		add("Watch, keys first", 40)
	}
	add("Call", 11.8)
	for n := range checks {
		add(fmt.Sprint(n+1), logTick)
	}
	if columns == 1 {
		add("Went dead, mended", 42)
	}
	add("Shut", 13)
	if add("By", 0); columns > 1 { // both halves alike
		left := width / 2
		for _, c := range half {
			left -= c.Width
		}
		half[len(half)-1].Width = left
	}
	cells := func(night string) []string { return append([]string{night}, make([]string, len(half)-1)...) }
	t := block.Table{Table: place.Table{Columns: half}}
	if columns == 1 {
		for _, n := range nights {
			t.Rows = append(t.Rows, place.Row{Cells: cells(n)})
		}
		return t
	}
	t.Columns, t.Rows = beside(half...), inTwo(nights, cells)
	return t
}

// howLogged says what is written in a night's line.
func (w watch) howLogged() block.Block {
	return block.Block{Name: "how the log is kept", Gap: 1.5, Keep: true, Body: block.Words{Text: fmt.Sprintf("Call: O, C or F for flat, gusts. 1–%d: checks. Shut: when. By, at shut: box read, all out.", len(w.checked())), Lettering: paper.Floor}}
}

// happens is what is done when it happens, the worst of it in a box.
func (w watch) happens() []block.Block {
	gust, _ := w.closeAt()
	facts := []block.Fact{{What: "closed at gusts of, by meter", Value: w.units.Speed(gust.Local)}}
	if _, ok := w.flatAt(); ok {
		facts = append(facts, block.Fact{What: "too late to lay flat, kept away", Value: w.units.Room(w.apart())})
	}
	list := []block.Block{block.Heading("Before opening, read aloud. In doubt: close. Anyone calls stop."),
		{Name: "said aloud", Body: block.Framed{Blocks: casesBlocks(w.worstCases())}, Facts: facts}}
	others := casesBlocks(w.otherCases())
	others[0].Gap = 2
	return append(list, others...)
}

// blankNights is how many lines are printed at most where the spec gives no dates.
const blankNights = 24

// nights lists the nights it is open, by date where the spec gives them, the month where one begins, else blank lines.
func (w watch) nights() []string {
	d := w.plan.Spec.Dates
	if d.Open.IsZero() || d.Close.Before(d.Open) || d.Close.Sub(d.Open) > 400*24*time.Hour {
		return make([]string, blankNights)
	}
	var names []string
	for day := d.Open; !day.After(d.Close); day = day.AddDate(0, 0, 1) {
		format := "Mon 2"
		if len(names) == 0 || day.Day() == 1 {
			format = "Mon 2 Jan"
		}
		names = append(names, day.Format(format))
	}
	return names
}
