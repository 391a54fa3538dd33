package packet

import (
	"fmt"
	"strings"
	"time"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// visitFoot is the height of the box at the foot of the form, for who measured what and when.
const visitFoot paper.Length = 18

// SiteVisit makes the blank form that a yard is measured on before any spec exists: two pages that ask for what a spec says of a site, in the order
// of one walk round it. Nothing of it is computed.
func SiteVisit(units measure.System, date time.Time) pdf.Document {
	size, _ := paper.Sheet(measure.By(units, "letter", "a4"))
	b := &binder{plan: &layout.Plan{}, spec: &spec.Spec{Units: units}, size: size, date: date}
	v := visit{b: b, units: units}
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
	b     *binder
	units measure.System
}

// say picks the wording of the units.
func (v visit) say(imperial, metric string) string {
	return measure.By(v.units, imperial, metric)
}

// page begins a page of the form: the live area over its foot.
func (v visit) page() *flow {
	page := &paper.Page{Size: v.b.size}
	room := paper.Rect{X: punchMargin, Y: clipZone, W: v.b.size.W - punchMargin - edgeMargin}
	room.H = v.b.size.H - clipZone - edgeMargin - visitFoot - blockGap
	return &flow{b: v.b, page: page, room: room, leaves: []leaf{{page, notToScale}}}
}

// frame sets the page's name and the foot: which yard, who, when.
func (v visit) frame(page *paper.Page, number, of int) {
	right := v.b.size.W - edgeMargin
	page.Text(paper.Point{X: punchMargin, Y: 16.5}, paper.AtLeft, page.Title, paper.SheetName)
	page.Text(paper.Point{X: right, Y: 16.5}, paper.AtRight, fmt.Sprintf("page %d of %d", number, of), paper.Heading)
	box := paper.Rect{X: punchMargin, Y: v.b.size.H - edgeMargin - visitFoot, W: right - punchMargin, H: visitFoot}
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
	f.text("Bring: two tapes of "+v.say("100 ft", "30 m")+", string, a line level, four pegs, "+v.say("a 3/8 in", "a 10 mm")+" steel bar, this form, pencil, phone camera.", paper.Body)
	f.gap(1.5)
	v.part(f, "1. Sketch.", "Stand where people will walk in and look where they will walk: that is straight ahead, up the page. Draw the walk as a line, then buildings, fences, trees, beds, paving, drains, "+
		"outlets (E), taps (W), wires overhead (dashes), and every fixed mark with its letter. One square is "+v.say("_______ ft.", "_______ m."))
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
	v.part(f, "2. Fixed marks.", "Choose three to five things that will be there next year: a house corner, a post, a hydrant. Spread them round the walk, none farther than "+v.say("100 ft", "30 m")+
		" from it. Tape every pair you can, level and tight, at the ground. Two tapes fix a mark, a third checks it.")
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

// part sets a part of the form: its number and name in bold, and what to do behind them.
func (v visit) part(f *flow, name, text string) {
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
		f.table(place.Table{RowMin: 7.4, Columns: columns}, list)
		f.gap(1.5)
	}

	v.part(f, "3. The walk.", "Put pegs at both sides of the entrance and of the exit. Tape each from the marks.")
	table(0, []string{"Entrance, left", "Entrance, right", "Exit, left", "Exit, right"}, blank("Peg", 36), even("from A", 4), even("from B", 4), even("from C", 4), even("to the peg across", 4))
	f.text("Length of the walk ____________ narrowest clear width ____________ bends left / right / not", paper.Body)
	f.gap(2)

	const picture = 74
	levels := func(f *flow) {
		v.part(f, "4. Levels.", "String over the pegs of a side, tight, until the line level’s bubble is in the middle. Tape down to the ground. "+
			"For the other side first level a string across, so that both start at one height.")
	}
	top := f.take(max(20, f.height(whole-picture-4, levels)) + 1)
	words, shown := top.SplitLeft(top.W - picture - 4)
	levels(&flow{b: v.b, page: f.page, room: words})
	draw.StringLevel(f.page, paper.Rect{X: shown.X + 4, Y: shown.Y, W: picture, H: 20}, "level string", "tape down")
	table(0, []string{"Left side", "Right side"}, blank("String to ground", 36), even("at entrance", 5), even("quarter way", 5), even("half way", 5), even("3 quarters", 5), even("at exit", 5))

	v.part(f, "5. Outlets.", "Open no cover. Press TEST: a protected (GFCI) outlet goes dead; press RESET.")
	table(3, nil, blank("Outlet, where", 48), blank("from A", 24), blank("from B", 24), blank("Breaker, amps", 21), blank("Sockets", 19), blank("Reset at", 21), rest("Also feeds"))

	v.part(f, "6. Overhead.", "Stay "+v.say("10 ft", "3 m")+" away with all you hold; no tape, pole or ladder near a wire. A helper stands below it, hands down; from far off, count how many helpers high it is.")
	table(2, nil, blank("Wire or branch, whose", 60), blank("Height", 30), rest("Crosses or passes the walk where"))

	v.part(f, "7. Buried.", "Ask the owner. Drive nothing until the locating service has been.")
	table(2, nil, blank("Water, drain, gas, power …", 60), rest("Runs from, to"), blank("Who marks it", 40))

	v.part(f, "8. Soil.", "Clear of anything buried, push the bar down by hand at three places: "+v.say("____ in, ____ in, ____ in.", "_____ mm, _____ mm, _____ mm.")+
		" Thumb goes in easily (soft) / with force (firm). A squeezed handful falls apart (sandy) / holds.")
	f.gap(1)
	v.part(f, "9. Photos:", "from the entrance, from the exit, of each mark, each outlet, whatever is overhead.")
	return f.page
}
