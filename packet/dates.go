package packet

import (
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
)

// calendar is the season as a strip of days from left to right, a blank for each that the spec leaves open, with what else there is to know under it.
type calendar []crew.Date

const (
	datesTick  paper.Length = 3.4 // a day's dot, above its date
	datesGap   paper.Length = 2   // between two days' words
	datesLines              = 2   // a day's name takes no more
)

// strip is the height of the days alone.
func (calendar) strip() paper.Length {
	return datesTick + paper.Strong.Leading() + datesLines*paper.Floor.Leading()
}

// notes joins what else there is to know of the days.
func (c calendar) notes() string {
	var notes []string
	for _, d := range c {
		if d.Note != "" {
			notes = append(notes, d.Note)
		}
	}
	return strings.Join(notes, " ")
}

// Height implements block.Body.
func (c calendar) Height(width paper.Length) paper.Length {
	if notes := c.notes(); notes != "" {
		return c.strip() + 1 + paper.Length(len(paper.Floor.Wrap(notes, width)))*paper.Floor.Leading()
	}
	return c.strip()
}

// Draw implements block.Body.
func (c calendar) Draw(page *paper.Page, box paper.Rect) []string {
	step, line := box.W/paper.Length(len(c)), box.Y+datesTick/2
	page.Line(paper.Point{X: box.X, Y: line}, paper.Point{X: box.Right(), Y: line}, paper.Thick)
	for i, d := range c {
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
	box.Y += c.strip() + 1
	page.Paragraph(box, c.notes(), paper.Floor)
	return nil
}
