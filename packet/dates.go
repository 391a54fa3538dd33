package packet

import (
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
)

const (
	datesTick  paper.Length = 3.4 // a day's dot, above its date
	datesGap   paper.Length = 2   // between two days' words
	datesLines              = 2   // a day's name takes no more
)

// datesHeight is the height of the strip of dates with its notes.
func (b *binder) datesHeight(width paper.Length) paper.Length {
	h := datesTick + paper.Strong.Leading() + datesLines*paper.Floor.Leading()
	if notes := b.dateNotes(); notes != "" {
		h += 1 + paper.Length(len(paper.Floor.Wrap(notes, width)))*paper.Floor.Leading()
	}
	return h
}

// dateNotes joins what else there is to know of the days.
func (b *binder) dateNotes() string {
	var notes []string
	for _, d := range crew.Calendar(b.spec) {
		if d.Note != "" {
			notes = append(notes, d.Note)
		}
	}
	return strings.Join(notes, " ")
}

// drawDates draws the season as a strip of days from left to right, a blank for each that the spec leaves open.
func (b *binder) drawDates(page *paper.Page, box paper.Rect) {
	days := crew.Calendar(b.spec)
	step := box.W / paper.Length(len(days))
	line := box.Y + datesTick/2
	page.Line(paper.Point{X: box.X, Y: line}, paper.Point{X: box.Right(), Y: line}, paper.Thick)
	for i, d := range days {
		cell := paper.Rect{X: box.X + paper.Length(i)*step, Y: box.Y + datesTick, W: step - datesGap}
		page.Fill(paper.Circle(paper.Point{X: cell.X + 1.5, Y: line}, 1.5), paper.Black)
		base := cell.Y + 1 + paper.Strong.Ascent()
		if d.On.IsZero() {
			page.Line(paper.Point{X: cell.X, Y: base + 0.6}, paper.Point{X: cell.Right(), Y: base + 0.6}, paper.Thin)
		} else {
			page.Text(paper.Point{X: cell.X, Y: base}, paper.AtLeft, d.On.Format("Mon 2 Jan"), paper.Strong)
		}
		cell.Y += paper.Strong.Leading()
		name := paper.Floor.Wrap(d.Name, cell.W)
		page.Paragraph(cell, strings.Join(name[:min(len(name), datesLines)], "\n"), paper.Floor)
	}
	if notes := b.dateNotes(); notes != "" {
		box.Y += datesTick + paper.Strong.Leading() + datesLines*paper.Floor.Leading() + 1
		page.Paragraph(box, notes, paper.Floor)
	}
}
