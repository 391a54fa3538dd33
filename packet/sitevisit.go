package packet

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

// visitBox is the height of the box at the foot of the form, for who measured what and when.
const visitBox paper.Length = 18

// SiteVisit makes the blank form that a yard is measured on before any spec exists: two pages that ask for what a spec says of a site, in the order
// of one walk round it. Nothing of it is computed.
func SiteVisit(units measure.System, date time.Time) pdf.Document {
	size, _ := paper.Sheet(measure.By(units, "letter", "a4"))
	v := visit{size, units}
	pages := []*paper.Page{v.sketch(), v.tables()}
	for i, page := range pages {
		page.Name, page.Title = "site", fmt.Sprintf("Site visit %d of %d", i+1, len(pages))
		v.frame(page, i+1, len(pages))
	}
	return pdf.Document{
		Title: "Site visit: a yard measured for a light tunnel", Subject: "Blank form to measure a yard", Lang: "en", Date: date, Pages: pages,
	}
}

// visit sets the pages of the form.
type visit struct {
	size  paper.Rect
	units measure.System
}

// visitPart is a part of the form, in the order of the walk round a yard: buried lines before any peg is driven.
type visitPart struct {
	Name string
	Keys []string // of the spec, that what is filled in is typed into
}

// The parts of the form.
var (
	visitBuried   = visitPart{"Buried", []string{"site.buried"}}
	visitSketch   = visitPart{"Sketch", []string{"site.features", "site.north"}}
	visitMarks    = visitPart{"Fixed marks", []string{"site.marks[].from", "site.marks[].side"}}
	visitWalk     = visitPart{"The walk", []string{"site.start.from", "site.start.toward", "tunnel.length", "site.route"}}
	visitLevels   = visitPart{"Levels", []string{"site.levels"}}
	visitOutlets  = visitPart{"Outlets", []string{"site.outlets[].from", "power.circuits"}}
	visitOverhead = visitPart{"Overhead", []string{"site.overhead"}}
	visitSoil     = visitPart{"Soil", []string{"site.soil"}}
	visitAround   = visitPart{"Around", []string{"site.exposure"}}
	visitFoot     = visitPart{"Foot", []string{"title", "site.address", "crew.ask.phone"}}
)

// visitParts returns the parts of the form in their order.
func visitParts() []visitPart {
	return []visitPart{visitBuried, visitSketch, visitMarks, visitWalk, visitLevels, visitOutlets, visitOverhead, visitSoil, visitAround, visitFoot}
}

// heading is a part's number and name.
func (p visitPart) heading() string {
	return fmt.Sprintf("%d. %s.", slices.IndexFunc(visitParts(), func(o visitPart) bool { return o.Name == p.Name })+1, p.Name)
}

// say picks the wording of the units.
func (v visit) say(imperial, metric string) string {
	return measure.By(v.units, imperial, metric)
}

// page begins a page of the form: the live area over its foot.
func (v visit) page() *flow {
	page := &paper.Page{Size: v.size}
	room := paper.Rect{X: punchMargin, Y: clipZone, W: v.size.W - punchMargin - edgeMargin}
	room.H = v.size.H - clipZone - edgeMargin - visitBox - 3
	return &flow{page, room}
}

// frame sets the page's name and the foot: which yard, who, when.
func (v visit) frame(page *paper.Page, number, of int) {
	right := v.size.W - edgeMargin
	page.Text(paper.Point{X: punchMargin, Y: 16.5}, paper.AtLeft, page.Title, paper.SheetName)
	page.Text(paper.Point{X: right, Y: 16.5}, paper.AtRight, fmt.Sprintf("page %d of %d", number, of), paper.Heading)
	box := paper.Rect{X: punchMargin, Y: v.size.H - edgeMargin - visitBox, W: right - punchMargin, H: visitBox}
	page.Stroke(paper.Box(box), paper.Thick)
	blank := func(x, y, width paper.Length, word string) {
		start := x + paper.Floor.Width(word) + 2
		page.Text(paper.Point{X: x, Y: y}, paper.AtLeft, word, paper.Floor)
		page.Line(paper.Point{X: start, Y: y + 0.6}, paper.Point{X: x + width, Y: y + 0.6}, paper.Thin)
	}
	left, half := box.X+2.5, box.W/2
	blank(left, box.Y+7, half-6, "Yard, address")
	blank(left, box.Y+15, half-6, "Measured by")
	blank(left+half, box.Y+7, half-6, "Owner, phone")
	blank(left+half, box.Y+15, half/2-6, "Day")
	blank(left+half*1.5-3, box.Y+15, half/2-3, "Tape")
}

// sketch is the first page: the yard drawn on a grid, and its fixed marks.
func (v visit) sketch() *paper.Page {
	f := v.page()
	f.text("Measures a yard before anything is planned. Two people. Fill what you can; a blank is better than a guess.", paper.Strong)
	f.text("Bring: two tapes of "+v.say("100 ft", "30 m")+", string, a line level, two pegs, "+v.say("a 3/8 in", "a 10 mm")+" steel bar, this form, pencil, phone camera.", paper.Body)
	f.gap(1.5)
	v.part(f, visitBuried, "Ask the owner about private lines, and have the public ones located before a peg or a stake is driven.")
	f.table(place.Table{RowMin: 7, Columns: []place.Column{{Head: "Water, drain, gas, power …", Width: 60}, {Head: "Runs from, to (squares of the sketch)"}, {Head: "Marked by", Width: 40}}}, make([]place.Row, 2))
	f.gap(1.5)
	v.part(f, visitSketch, "Stand where people will walk in and look where they will walk: that is straight ahead, up the page. Draw the walk as a line, then buildings, fences, trees, beds, paving, drains, "+
		"outlets (E), taps (W), wires overhead (dashes), and every fixed mark with its letter. One square is "+v.say("_______ ft.", "_______ m.")+" North is at ______ degrees from straight ahead.")
	f.gap(1)

	marks := func(f *flow) { v.marks(f) }
	grid := f.take(f.room.H - f.height(f.room.W, marks) - 3)
	draw.SketchGrid(f.page, grid)
	f.gap(2)
	marks(f)
	return f.page
}

// marks asks for fixed marks and the tapes between them, which is all that is needed to plot them.
func (v visit) marks(f *flow) {
	v.part(f, visitMarks, "Choose three to five things that will be there next year: a house corner, a post, a hydrant. Spread them round the walk, none farther than "+v.say("100 ft", "30 m")+
		" from it. Tape every pair you can, level and tight, at the ground. Two tapes fix a mark, a third checks it. Type A at [0, 0], B at [its tape from A, 0].")
	f.gap(1)
	t := place.Table{RowMin: 8.4, Columns: []place.Column{{Head: "", Width: 8, Lettering: paper.Cell}, {Head: "What it is, exactly where"}}}
	for _, from := range []string{"A", "B", "C", "D"} {
		t.Columns = append(t.Columns, place.Column{Head: "from " + from, Width: 25})
	}
	var rows []place.Row
	for i, name := range []string{"A", "B", "C", "D", "E"} {
		cells := []string{name, "", "", "", "", ""}
		for k := i; k < 4; k++ {
			cells[2+k] = "–"
		}
		rows = append(rows, place.Row{Cells: cells})
	}
	f.table(t, rows)
	f.gap(1)
	f.text("Seen from A toward B, on which side lie C ______ D ______ E ______ (left or right)?", paper.Body)
}

// part sets a part of the form: its number and name in bold, what to do behind them, and at the end the keys that it is typed into.
func (v visit) part(f *flow, p visitPart, text string) {
	name := p.heading()
	text += " In the spec: " + strings.Join(p.Keys, ", ") + "."
	indent := paper.Strong.Width(name) + 2
	lines := paper.Body.Wrap(text, f.room.W-indent)
	line := f.take(paper.Body.Leading())
	base := paper.Point{X: line.X, Y: line.Y + paper.Body.Ascent()}
	f.page.Text(base, paper.AtLeft, name, paper.Strong)
	f.page.Text(base.Add(paper.Point{X: indent}), paper.AtLeft, lines[0], paper.Body)
	if len(lines) > 1 {
		f.text(strings.Join(lines[1:], " "), paper.Body)
	}
}

// tables is the second page: the walk and its levels, what feeds it, what is over and under it, the soil.
func (v visit) tables() *paper.Page {
	f := v.page()
	blank := func(head string, width paper.Length) place.Column { return place.Column{Head: head, Width: width} }
	whole := f.room.W
	even := func(head string, of paper.Length) place.Column { return blank(head, (whole-36)/of) }
	rest := func(head string) place.Column { return place.Column{Head: head} }
	table := func(rows int, first []string, columns ...place.Column) {
		var list []place.Row
		for i := range max(rows, len(first)) {
			var r place.Row
			if i < len(first) {
				r.Cells = []string{first[i]}
			}
			list = append(list, r)
		}
		f.table(place.Table{RowMin: measure.By[paper.Length](v.units, 7, 8), Columns: columns}, list) // A4 is longer
		f.gap(1.5)
	}

	v.part(f, visitWalk, "Put a peg in the middle of the entrance, where the first arch will stand, and one in the middle of the exit. Tape each from the marks. "+
		"Seen from A toward B the entrance lies left / right, the exit left / right.")
	table(0, []string{"Entrance, middle", "Exit, middle"}, blank("Peg", 36), even("from A", 4), even("from B", 4), even("from C", 4), even("width there", 4))
	f.text("Length of the walk ____________ narrowest clear width ____________ bends ______ degrees left / right of radius ______ after ______", paper.Body)
	f.gap(2)

	const picture = 74
	levels := func(f *flow) {
		v.part(f, visitLevels, "String along each side, tight, until the line level’s bubble is in the middle. Tape down to the ground. "+
			"For the other side first level a string across, so that both start at one height. Type drops with a minus.")
	}
	top := f.take(max(20, f.height(whole-picture-4, levels)) + 1)
	words, shown := top.SplitLeft(top.W - picture - 4)
	levels(&flow{f.page, words})
	draw.StringLevel(f.page, paper.Rect{X: shown.X + 4, Y: shown.Y, W: picture, H: 20})
	table(0, []string{"Left side", "Right side"}, blank("String to ground", 36), even("at entrance", 5), even("quarter way", 5), even("half way", 5), even("3 quarters", 5), even("at exit", 5))

	v.part(f, visitOutlets, "Open no cover. Press TEST: a protected (GFCI) outlet goes dead; press RESET.")
	table(3, nil, blank("Outlet, where", 40), blank("from A", 19), blank("from B", 19), blank("Side of A to B", 19), blank("Breaker", 19), blank("GFCI", 14), blank("Sockets", 20), blank("Reset at", 17), rest("Also feeds"))

	v.part(f, visitOverhead, "Stay "+v.say("10 ft", "3 m")+" away with all you hold; no tape, pole or ladder near a wire. A helper stands below it, hands down; from far off, count how many helpers high it is.")
	table(2, nil, blank("Wire or branch, whose", 60), blank("Height", 30), rest("Crosses or passes the walk where"))

	v.part(f, visitSoil, "Clear of anything buried, push the bar down by hand at three places: "+v.say("____ in, ____ in, ____ in.", "_____ mm, _____ mm, _____ mm.")+
		" Thumb goes in easily (soft) / with force (firm). A squeezed handful falls apart (sandy) / holds.")
	f.gap(1)
	v.part(f, visitAround, "What stands within "+v.say("100 yards", "100 m")+", all round? _______________________________")
	f.gap(1)
	f.text("Photos: from the entrance, from the exit, of each mark, each outlet, whatever is overhead.", paper.Body)
	return f.page
}

// flow sets words and tables from the top of a page down; the form's are made to fit their page.
type flow struct {
	page *paper.Page
	room paper.Rect // what is left of it
}

// take cuts h off the top of the room.
func (f *flow) take(h paper.Length) (top paper.Rect) {
	top, f.room = f.room.SplitTop(h)
	return top
}

// gap leaves h free.
func (f *flow) gap(h paper.Length) { f.take(min(h, f.room.H)) }

// text sets a paragraph.
func (f *flow) text(s string, l paper.Lettering) {
	lines := l.Wrap(s, f.room.W)
	f.page.Paragraph(f.take(paper.Length(len(lines))*l.Leading()), strings.Join(lines, "\n"), l)
}

func (f *flow) table(t place.Table, rows []place.Row) {
	used, _ := t.Fitted(f.room.W, rows).Draw(f.page, f.room, rows)
	f.take(used)
}

// height returns the height of what fill sets at a width.
func (f *flow) height(width paper.Length, fill func(*flow)) paper.Length {
	const endless = 1e5
	trial := &flow{&paper.Page{}, paper.Rect{W: width, H: endless}}
	fill(trial)
	return endless - trial.room.H
}
