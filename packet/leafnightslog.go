package packet

import (
	"fmt"
	"strings"
	"time"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
)

// nightLog is the back: what is said aloud, a line a night, who watches when.
func (b *binder) nightLog() []block.Block {
	nights := b.nightNames()
	log := logBook{nights: nights, columns: 1}
	for _, t := range b.tasksOf(crew.Nights) {
		if t.Action != crew.NoonCall && t.Action != crew.NightClose {
			log.checks++
		}
	}
	list := append([]block.Block{b.nightAloud()}, casesBlocks("When it happens", b.otherCases())...)
	text := "Call: O, C or F for flat, and the gusts forecast. Tick the checks by number."
	if len(nights) > mostInOne {
		log.columns = 2
		list = append(list, block.Block{Name: "rota", Gap: 3, Body: rota{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"}})
	}
	return append(list, block.Block{Name: "how the log is kept", Gap: 3, Keep: true, Body: block.Words{Text: text, Lettering: paper.Floor}}, block.Block{Name: "log", Gap: 1, Body: log})
}

// nightAloud is said to the watch before it opens.
func (b *binder) nightAloud() block.Block {
	gust, calm := b.closeAt()
	at := "In any wind"
	if !calm {
		at = "Gusts of " + block.Figure(b.spec.Units.Speed(gust.Local)) + " by meter, or thunder"
	}
	var list []block.Block
	for _, line := range []string{
		at + ": everyone out, nobody argues.",
		fmt.Sprintf("Never more than %s inside, both ends open and lit. Nobody has certified this: close early.", block.Figure(fmt.Sprint(b.plan.MostInside()))),
		"Fire or shock: out, power off, ring. Anyone calls stop.",
	} {
		list = append(list, block.Block{Body: block.Words{Text: line}})
	}
	list = append(list, block.Block{Body: block.Blanks{{Word: "Said aloud by"}, {Word: "heard by", Share: 2}}})
	return block.Block{Name: "said aloud", Body: block.Framed{Blocks: list}, Facts: []block.Fact{{What: "closed at gusts of, by meter", Value: b.spec.Units.Speed(gust.Local)}}}
}

// mostInOne is how many nights stand in one column.
const mostInOne = 24

// blankNights is how many lines are printed where the spec gives no dates.
const blankNights = 24

// nightNames lists the nights it is open, by date where the spec gives them, else blank lines.
func (b *binder) nightNames() []string {
	d := b.spec.Dates
	if d.Open.IsZero() || d.Close.Before(d.Open) || d.Close.Sub(d.Open) > 400*24*time.Hour {
		return make([]string, blankNights)
	}
	var names []string
	for day := d.Open; !day.After(d.Close); day = day.AddDate(0, 0, 1) {
		names = append(names, strings.TrimSpace(day.Format("Mon 2 Jan")))
	}
	return names
}

// rota is a week of watches to fill in, where the log has no room for names.
type rota []string

const (
	rotaHead paper.Length = 5.6
	rotaHigh paper.Length = 11 // of a day's box
)

// Height implements block.Body.
func (rota) Height(paper.Length) paper.Length { return rotaHead + rotaHigh }

// Draw implements block.Body.
func (r rota) Draw(page *paper.Page, box paper.Rect) []string {
	page.Text(paper.Point{X: box.X, Y: box.Y + 4}, paper.AtLeft, "Who watches, week by week", paper.Strong)
	wide := box.W / paper.Length(len(r))
	for i, day := range r {
		cell := paper.Rect{X: box.X + wide*paper.Length(i), Y: box.Y + rotaHead, W: wide, H: rotaHigh}
		page.Stroke(paper.Box(cell), paper.Thin)
		page.Text(paper.Point{X: cell.X + 1, Y: cell.Y + 4.2}, paper.AtLeft, day, paper.Floor)
	}
	return nil
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
	logTick    paper.Length = 6.8 // of a check's cell: a gloved hand ticks it
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
		list = append(list, field{"Watch: in, out", 44})
	}
	list = append(list, field{"Call", 11})
	for n := range l.checks {
		list = append(list, field{fmt.Sprint(n + 1), logTick})
	}
	if l.columns == 1 {
		list = append(list, field{"Mended, seen", 40})
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

// Height implements block.Body.
func (l logBook) Height(paper.Length) paper.Length { return logHead + paper.Length(l.rows())*logRow }

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
