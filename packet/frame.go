package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// What is kept clear: the clip at the top, the punched edge at the left, what a printer cannot reach elsewhere.
const (
	clipZone    paper.Length = 22
	punchMargin paper.Length = 20
	edgeMargin  paper.Length = 8
	blockHeight paper.Length = 35
	blockGap    paper.Length = 3
)

// newPage starts a page and returns it with its live area: what the frame leaves for the sheet. On a plan that must not be built, a black
// band takes the top of it.
func (b *binder) newPage() (*paper.Page, paper.Rect) {
	page := &paper.Page{Size: b.size}
	live := paper.Rect{X: punchMargin, Y: clipZone, W: b.size.W - punchMargin - edgeMargin}
	live.H = b.size.H - clipZone - edgeMargin - blockHeight - blockGap
	return page, b.band(page, live)
}

// bandRise is how far the DO NOT BUILD band reaches above the live area, up to the leaf's name: a plan that must be mended and printed again
// should fall into the same sides as the mended one.
const bandRise paper.Length = 2.5

// band prints DO NOT BUILD with what must be fixed across the top of the live area and returns what is left of it.
func (b *binder) band(page *paper.Page, live paper.Rect) paper.Rect {
	var titles []string
	for _, code := range finding.MustFixes(b.plan.Findings) {
		titles = append(titles, titleOf(code))
	}
	if len(titles) == 0 {
		return live
	}
	l := paper.Strong.In(paper.White)
	lines := l.Wrap("DO NOT BUILD. Must fix first: "+strings.Join(titles, "; "), live.W-6)
	live.Y, live.H = live.Y-bandRise, live.H+bandRise
	box, rest := live.SplitTop(paper.Length(len(lines))*l.Leading() + 1)
	page.Fill(paper.Box(box), paper.Black)
	page.Paragraph(paper.Rect{X: box.X + 3, Y: box.Y + 0.5, W: box.W - 6, H: box.H}, strings.Join(lines, "\n"), l)
	_, rest = rest.SplitTop(1)
	return rest
}

// frame sets what stands on every page: the sheet's name and number in the clip zone, and the title block at the foot.
func (b *binder) frame(l leaf, number, of int) {
	f := &paper.Page{Size: b.size}
	right := b.size.W - edgeMargin
	f.Text(paper.Point{X: punchMargin, Y: 16.5}, paper.AtLeft, l.page.Title, paper.SheetName)
	f.Text(paper.Point{X: right, Y: 16.5}, paper.AtRight, fmt.Sprintf("page %d of %d", number, of), paper.Heading)
	b.titleBlock(f, paper.Rect{X: punchMargin, Y: b.size.H - edgeMargin - blockHeight, W: right - punchMargin, H: blockHeight}, l, number, of)
	l.page.Ops = append(f.Ops, l.page.Ops...)
}

// titleBlock draws the block at the foot: what this is, its scale, units, date and spec, the measure-me bars, and whom to ask.
func (b *binder) titleBlock(f *paper.Page, box paper.Rect, l leaf, number, of int) {
	const row paper.Length = 8
	pad := func(r paper.Rect) paper.Point { return paper.Point{X: r.X + 2, Y: r.Y + 5.6} }
	f.Stroke(paper.Box(box), paper.Thick)
	name, rest := box.SplitTop(row)
	facts, foot := rest.SplitTop(row)
	for _, r := range []paper.Rect{facts, foot} {
		f.Line(paper.Point{X: r.X, Y: r.Y}, paper.Point{X: r.Right(), Y: r.Y}, paper.Thin)
	}
	sheetWords := fmt.Sprintf("%s, page %d of %d", l.page.Title, number, of)
	title := b.spec.Title
	if b.spec.Season != "" {
		title += ", " + b.spec.Season
	}
	f.Text(pad(name), paper.AtLeft, clip(title, paper.Strong, name.W-8-paper.Floor.Width(sheetWords)), paper.Strong)
	f.Text(paper.Point{X: name.Right() - 2, Y: name.Y + 5.6}, paper.AtRight, sheetWords, paper.Floor)

	units := measure.By(b.spec.Units, "Feet and inches", "Millimetres, metres")
	spread(f, facts, []string{l.scale, units, "Issued " + b.date.Format("2006-01-02"), "Spec " + b.checksum})

	bars, ask := foot.SplitLeft(place.MeasureBarsWidth + 4)
	place.MeasureBars(f, paper.Point{X: bars.X + 1, Y: bars.Y + (foot.H-place.MeasureBarsHeight)/2})
	f.Line(paper.Point{X: ask.X, Y: ask.Y}, paper.Point{X: ask.X, Y: ask.Bottom()}, paper.Thin)
	for i, line := range []string{"Ask", "Phone"} {
		y := ask.Y + 5.4 + paper.Length(i)*5.8
		f.Text(paper.Point{X: ask.X + 2, Y: y}, paper.AtLeft, line, paper.Floor)
		f.Line(paper.Point{X: ask.X + 16, Y: y + 0.6}, paper.Point{X: ask.Right() - 3, Y: y + 0.6}, paper.Thin)
	}
	f.Text(paper.Point{X: ask.X + 2, Y: ask.Bottom() - 2}, paper.AtLeft, "Use the written numbers.", paper.Floor)
}

// spread sets the texts across the box, the first at the left edge, the last at the right, the gaps equal.
func spread(f *paper.Page, box paper.Rect, texts []string) {
	free := box.W - 4
	for _, t := range texts {
		free -= paper.Floor.Width(t)
	}
	x := box.X + 2
	for _, t := range texts {
		f.Text(paper.Point{X: x, Y: box.Y + 5.6}, paper.AtLeft, t, paper.Floor)
		x += paper.Floor.Width(t) + free/paper.Length(len(texts)-1)
	}
}

// clip shortens a text to the width, ending in "…".
func clip(s string, l paper.Lettering, width paper.Length) string {
	if l.Width(s) <= width {
		return s
	}
	runes := []rune(s)
	for len(runes) > 0 && l.Width(string(runes)+"…") > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// notToScale is what the title block says of a sheet without a drawing to scale.
const notToScale = "Not to scale"

// flow sets a sheet's words from top to bottom of its live area and begins a new page where they do not fit.
type flow struct {
	b      *binder
	leaves []leaf
	page   *paper.Page
	room   paper.Rect // what is left of the live area
}

// newFlow starts a sheet with one line on what it is for and one on what to bring; either may be empty.
func (b *binder) newFlow(purpose, bring string) *flow {
	f := &flow{b: b}
	f.turn()
	if purpose != "" {
		f.text(purpose, paper.Strong)
	}
	if bring != "" {
		f.text("Bring: "+bring, paper.Body)
	}
	f.gap(2)
	return f
}

// turn begins a new page.
func (f *flow) turn() {
	f.page, f.room = f.b.newPage()
	f.leaves = append(f.leaves, leaf{f.page, notToScale})
}

// need turns the page unless h is left on it.
func (f *flow) need(h paper.Length) {
	if f.room.H < h {
		f.turn()
	}
}

// take cuts h off the top of the room, on a new page where it does not fit.
func (f *flow) take(h paper.Length) paper.Rect {
	f.need(h)
	var top paper.Rect
	top, f.room = f.room.SplitTop(h)
	return top
}

// gap leaves h free.
func (f *flow) gap(h paper.Length) { _, f.room = f.room.SplitTop(min(h, f.room.H)) }

// text sets a paragraph.
func (f *flow) text(s string, l paper.Lettering) {
	lines := l.Wrap(s, f.room.W)
	box := f.take(paper.Length(len(lines)) * l.Leading())
	f.page.Paragraph(box, strings.Join(lines, "\n"), l)
}

// heading sets a heading, and keeps it with at least h of what follows.
func (f *flow) heading(s string, h paper.Length) {
	f.need(paper.Heading.Leading() + 2.5 + h)
	f.gap(2)
	f.text(s, paper.Heading)
	f.gap(0.5)
}
