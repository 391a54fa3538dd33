package packet

import (
	"fmt"
	"time"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
)

// log is the back: what is done when it happens, the worst of it to be read aloud; who watches when, a line a night.
func (w watch) log() []block.Block {
	log := logBook{nights: w.nights(), columns: 1, checks: len(w.checked())}
	list := w.happens()
	if w.twoColumns() {
		log.columns = 2
		list = append(list, block.Block{Name: "rota", Body: block.Blanks{{Word: "Leads: Mon"}, {Word: "Tue"}, {Word: "Wed"}, {Word: "Thu"}, {Word: "Fri"}, {Word: "Sat"}, {Word: "Sun"}}},
			block.Block{Name: "trips", Gap: 1.5, Body: writing{"Trips: night, outlet, run, mended by", 1}})
	}
	return append(list, howLogged(), block.Block{Name: "log", Gap: 1, Body: log})
}

// howLogged says what is written in a night's line.
func howLogged() block.Block {
	return block.Block{Name: "how the log is kept", Gap: 1.5, Keep: true, Body: block.Words{Text: "Call: O, C or F for flat, gusts. Shut: when. Sign: box read, as many out as in.", Lettering: paper.Floor}}
}

// happens is what is done when it happens, the worst of it in a box.
func (w watch) happens() []block.Block {
	gust, _ := w.closeAt()
	facts := []block.Fact{{What: "closed at gusts of, by meter", Value: w.units.Speed(gust.Local)}}
	if _, ok := w.flatAt(); ok {
		facts = append(facts, block.Fact{What: "too late to lay flat, kept away", Value: w.units.Room(w.apart())})
	}
	list := []block.Block{block.Heading("Every night, before opening: read aloud"),
		{Name: "said aloud", Body: block.Framed{Blocks: casesBlocks(w.worstCases())}, Facts: facts}}
	others := casesBlocks(w.otherCases())
	others[0].Gap = 2
	return append(list, others...)
}

// twoColumns reports that one column of the side has no room for all nights.
func (w watch) twoColumns() bool {
	log := logBook{nights: w.nights(), columns: 1}
	return block.Height(append(w.happens(), howLogged(), block.Block{Gap: 1, Body: log}), w.room.W) > w.room.H
}

// blankNights is how many lines are printed at most where the spec gives no dates, and how many at least: as many as the side has room for.
const (
	blankNights = 24
	blankLeast  = 12
)

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

// logBook is a line a night, in one column or two that are read one after the other.
type logBook struct {
	nights  []string
	checks  int
	columns int
}

// logRow is the height of a night; with room over it is higher.
const (
	logRow     paper.Length = 6.2
	logRowMost paper.Length = 8.4
	logHead    paper.Length = 6.4
	logTick    paper.Length = 6.4 // of a check's cell: a gloved hand ticks it
	logGap     paper.Length = 5   // between two columns
)

// field is a column of the log.
type field struct {
	head  string
	width paper.Length
}

// fields are the columns within a width, the last taking what is left.
func (l logBook) fields(width paper.Length) []field {
	list := []field{{"Night", 23}}
	if l.columns == 1 {
		list = append(list, field{"Watch: names", 40})
	}
	list = append(list, field{"Call", 13})
	for n := range l.checks {
		list = append(list, field{fmt.Sprint(n + 1), logTick})
	}
	if l.columns == 1 {
		list = append(list, field{"Trips, mended", 42})
	}
	list = append(list, field{"Shut", 11}, field{"Sign", 0})
	left := width
	for _, f := range list {
		left -= f.width
	}
	list[len(list)-1].width = left
	return list
}

func (l logBook) rows() int { return (len(l.nights) + l.columns - 1) / l.columns }

// blank reports that nights are written in as they come: then lines are as many as there is room for.
func (l logBook) blank() bool { return l.nights[0] == "" }

// Height implements block.Body.
func (l logBook) Height(paper.Length) paper.Length {
	rows := l.rows()
	if l.blank() {
		rows = min(rows, blankLeast)
	}
	return logHead + paper.Length(rows)*logRow
}

// Most lets lines be higher.
func (l logBook) Most(paper.Length) paper.Length { return logHead + paper.Length(l.rows())*logRowMost }

// Split goes on on the next side.
func (l logBook) Split(_, height paper.Length) (first, rest block.Body, ok bool) {
	n := int((height-logHead)/logRow) * l.columns
	if n < 2*l.columns || n >= len(l.nights) {
		return nil, nil, false
	}
	a, b := l, l
	a.nights, b.nights = l.nights[:n], l.nights[n:]
	return a, b, true
}

// Draw implements block.Body.
func (l logBook) Draw(page *paper.Page, box paper.Rect) []string {
	if l.blank() {
		l.nights = l.nights[:min(len(l.nights), int((box.H-logHead)/logRow))]
	}
	row := min(logRowMost, (box.H-logHead)/paper.Length(l.rows()))
	wide := (box.W - logGap*paper.Length(l.columns-1)) / paper.Length(l.columns)
	for c := range l.columns {
		from := c * l.rows()
		part := l.nights[min(from, len(l.nights)):min(from+l.rows(), len(l.nights))]
		l.column(page, paper.Rect{X: box.X + paper.Length(c)*(wide+logGap), Y: box.Y, W: wide}, row, part)
	}
	return nil
}

// column draws some nights one under the other.
func (l logBook) column(page *paper.Page, box paper.Rect, row paper.Length, nights []string) {
	head := paper.Strong.Sized(11)
	fields := l.fields(box.W)
	foot := box.Y + logHead + row*paper.Length(len(nights))
	x := box.X
	for i, f := range fields {
		page.Text(paper.Point{X: x + 0.9, Y: box.Y + logHead - 1.8}, paper.AtLeft, f.head, head)
		if i > 0 {
			page.Line(paper.Point{X: x, Y: box.Y + 1}, paper.Point{X: x, Y: foot}, paper.Thin)
		}
		x += f.width
	}
	page.Line(paper.Point{X: box.X, Y: box.Y + logHead}, paper.Point{X: box.Right(), Y: box.Y + logHead}, paper.Thick)
	for i, night := range nights {
		top := box.Y + logHead + row*paper.Length(i)
		page.Text(paper.Point{X: box.X, Y: top + (row+head.Ascent())/2 - 0.4}, paper.AtLeft, night, head)
		page.Line(paper.Point{X: box.X, Y: top + row}, paper.Point{X: box.Right(), Y: top + row}, paper.Thin)
	}
}
