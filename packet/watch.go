package packet

import (
	"fmt"
	"strings"
	"time"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// blankNights is how many lines are printed where the spec gives no dates.
const blankNights = 24

// openingNights prints what the evening's watcher holds: whom to call, how many may be inside, when to close, what to do when something fails, and a line a
// night to sign.
func (b *binder) openingNights() []leaf {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	f := b.newFlow("Before it opens: do the checks, sign the night's line. No line, nobody inside.", "a charged phone, a torch, a lamp to test with, spare caps, the reject bag.")
	b.callBox(f)
	f.gap(3)
	f.table(place.Table{Columns: []place.Column{{Tick: true, Width: 9.8}, {Head: "Check, every night", Width: 44, Lettering: paper.Strong}, {Head: "Want"}, {Head: "If not", Width: 58, Lettering: paper.Floor}}}, b.nightChecks())
	f.gap(3)
	f.table(place.Table{Columns: []place.Column{{Head: "Close it at", Width: 44, Lettering: paper.Strong}, {Head: "Do"}}}, closingRows(b.closingFigures()))
	f.gap(3)
	f.repairs()
	f.nights()
	return f.leaves
}

// callBox is what is wanted first when something has happened: where this is, whom to ring, how many may be inside.
func (b *binder) callBox(f *flow) {
	const pad, row paper.Length = 2.5, 8
	box := f.take(2*pad + 3*row)
	f.page.Stroke(paper.Box(box), paper.Emphasis)
	in := box.Inset(pad)
	number := "Emergency phone"
	fields := [][2]string{{"This place is", b.spec.Site.Address}, {number, ""}, {"Switches the power off", ""}}
	words := b.switchOff()
	side := in
	side.W = in.W * 0.62
	for i, field := range fields {
		base := in.Y + paper.Length(i)*row + 5.6
		f.page.Text(paper.Point{X: side.X, Y: base}, paper.AtLeft, field[0], paper.Floor)
		x := side.X + paper.Floor.Width(field[0]) + 2
		if field[1] != "" {
			f.page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, clip(field[1], paper.Heading, side.Right()-x-2), paper.Heading)
			continue
		}
		f.page.Line(paper.Point{X: x, Y: base + 0.8}, paper.Point{X: side.Right() - 3, Y: base + 0.8}, paper.Thin)
	}
	most := fmt.Sprint(b.plan.MostInside())
	right := paper.Rect{X: side.Right(), Y: in.Y, W: in.Right() - side.Right(), H: in.H}
	f.page.Line(paper.Point{X: right.X, Y: box.Y}, paper.Point{X: right.X, Y: box.Bottom()}, paper.Thick)
	f.page.Text(paper.Point{X: right.X + 4, Y: right.Y + 13}, paper.AtLeft, most, paper.Large.Sized(36))
	f.page.Paragraph(paper.Rect{X: right.X + 8 + paper.Large.Sized(36).Width(most), Y: right.Y + 1, W: right.W - 8 - paper.Large.Sized(36).Width(most)}, "people inside at most; the fire authority's figure wins", paper.Floor)
	if words != "" {
		f.gap(2)
		f.text("Power off: "+words, paper.Strong)
	}
}

// nightChecks are the checks of an evening.
func (b *binder) nightChecks() []place.Row {
	kind, test := device(b.volts()), "TEST puts the lamp out, RESET lights it."
	var rows []place.Row
	add := func(what, want, off string) { rows = append(rows, place.Row{Cells: []string{"", what, want, off}}) }
	n := 0
	numbered := func(s string) string { n++; return fmt.Sprintf("%d  %s", n, s) }
	if len(b.plan.Strings) > 0 {
		add(numbered(say.Capital(kind)+" test"), test, "Use no outlet that fails. That side stays dark.")
	}
	stakes := "None moves by hand, every one covered or capped."
	if _, guys := b.stakeCounts(); guys > 0 {
		stakes = "None moves by hand, guys just tight and flagged, guy stakes capped."
	}
	add(numbered("Stakes, guys"), stakes, "Drive it in deeper, see “Loose stake”. Two loose: closed.")
	add(numbered("Pipe, sockets"), "No crack, no white line, every socket home, crowns as high as the night before.", "Crack: see “Cracked leg”. A crown lower by a hand: closed.")
	if len(b.plan.Strings) > 0 {
		add(numbered("Lights, cords"), "All lit, plugs dry and off the ground, nothing warm, nothing hangs into the way.", "Unplug, dry, hang up; see “Dead string”.")
	}
	add(numbered("Way, lanterns"), "Even, no mud, no cord or guy across; a torch or lantern at each end, both ends open.", "Mat, mark, move; else closed.")
	add(numbered("Forecast"), "Nothing of the table below until closing time.", "Do what stands beside the figure.")
	return rows
}

func closingRows(list []closing) []place.Row {
	var rows []place.Row
	for _, c := range list {
		rows = append(rows, place.Row{Cells: []string{c.at, c.do}})
	}
	return rows
}

// repairs sets the boxes of what to do when something fails, two beside each other.
func (f *flow) repairs() {
	boxes := f.b.repairBoxes()
	const gap paper.Length = 3
	for i := 0; i < len(boxes); i += 2 {
		wide := (f.room.W - gap) / 2
		high := paper.Length(0)
		for _, box := range boxes[i:min(i+2, len(boxes))] {
			high = max(high, box.height(wide))
		}
		r := f.take(high + gap)
		for k, box := range boxes[i:min(i+2, len(boxes))] {
			box.draw(f.page, paper.Rect{X: r.X + paper.Length(k)*(wide+gap), Y: r.Y, W: wide, H: high})
		}
	}
}

// repairBoxes are what can fail on a night. Whoever repairs pockets the plug, so that nobody puts it back in.
func (b *binder) repairBoxes() []framed {
	var list []framed
	if len(b.plan.Strings) > 0 {
		list = append(list, framed{"Dead string", "Unplug its chain; the plug goes into your pocket. Look at its plug and fuse, then the string before it. Dead still: swap it by day; the chain goes without it, or stays dark. Never cut, tape or twist a wire."})
		list = append(list, framed{"It trips", "Nobody inside in the dark: torches, way in shut. Pull every plug at that outlet. Dry hands, look for water, dry it. RESET. One chain at a time; write down which one trips it: it stays out. Trips with nothing in: leave it, electrician."})
	}
	list = append(list, framed{"Cracked leg, or a white line", "Everyone out. Power off at that arch. Do not hold a bent pipe that is breaking. Two people walk it off its stakes by day, cap both, put in the spare. Closed until arch and ridge are whole again."})
	lean := measure.By(b.spec.Units, b.spec.Units.Inches(measure.Inch), b.spec.Units.Inches(20))
	list = append(list, framed{"Loose stake or guy", fmt.Sprintf("Moves more than %s at the top: nobody under that arch. Drive it deeper, or beside the hole in firm ground; a guy: tighten, both sides alike. Loose again the next night: closed, ask for longer stakes.", lean)})
	return list
}

// nights sets the lines to sign.
func (f *flow) nights() {
	checks := len(f.b.nightChecks())
	columns := []place.Column{{Head: "Night", Width: 29, Lettering: paper.Strong}}
	for i := range checks {
		columns = append(columns, place.Column{Head: fmt.Sprint(i + 1), Width: 9.6, Tick: true, Align: paper.AtMiddle})
	}
	columns = append(columns, place.Column{Head: "Gusts", Width: 17}, place.Column{Head: "Mended", Width: 0}, place.Column{Head: "Shut at", Width: 17}, place.Column{Head: "Signed", Width: 25})
	var rows []place.Row
	for _, night := range f.b.nightNames() {
		rows = append(rows, place.Row{Cells: []string{night}})
	}
	f.heading("A line a night: tick the checks by their numbers", 40)
	t := place.Table{Columns: columns, RowMin: 8.4}
	for least := paper.Length(7); t.RowMin > least && t.Height(f.room.W, rows) > f.room.H; {
		t.RowMin -= 0.2 // a line closer, where that keeps the last nights off another page
	}
	if t.Height(f.room.W, rows) > f.room.H {
		t.RowMin = 8.4
	}
	f.table(t, rows)
}

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
