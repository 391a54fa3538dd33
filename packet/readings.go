package packet

import (
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
)

const (
	readingPad   paper.Length = 1.5
	foundWidth   paper.Length = 22 // room to write a figure
	foundLeast   paper.Length = 14
	readingRow   paper.Length = paper.TickBoxSide + 2
	readingTicks paper.Length = paper.TickBoxSide + 2
	readingGap   paper.Length = 3
	mostColumns               = 4
	fewReadings               = 4 // that may take a row each and be large
)

// readingGrid is how a step's short readings are set: their figures' lettering, and how wide names and figures are.
type readingGrid struct {
	figures    paper.Lettering
	columns    int
	cell       paper.Length
	name, want paper.Length
	record     bool
}

// gridOf fits readings into columns, with smaller figures where those make more columns of many readings. Columns are none where the words are too long.
func gridOf(step crew.Step, room paper.Length) readingGrid {
	fit := func(figures paper.Lettering, found paper.Length) readingGrid {
		g := readingGrid{figures: figures, record: step.Record}
		for _, r := range step.Readings {
			g.name, g.want = max(g.name, paper.Strong.Width(r.What)), max(g.want, figures.Width(r.Want))
		}
		cell := readingTicks + g.name + 2*readingGap + g.want
		if g.record {
			cell += found
		}
		g.columns = min(mostColumns, int(room/cell), len(step.Readings))
		g.cell = room / paper.Length(max(1, g.columns))
		return g
	}
	best := fit(paper.Cell, foundWidth)
	for _, smaller := range []paper.Lettering{paper.CellSmall, paper.Strong} {
		if g := fit(smaller, foundLeast); g.columns > best.columns && (len(step.Readings) > fewReadings || best.columns == 0) {
			best = g
		}
	}
	return best
}

// readingStrips sets a step's readings in as many columns as their words leave room for: a tick box, the name, the figure wanted, and where
// the figure is measured a line to write it on. Readings whose words are long take a row each.
func readingStrips(step crew.Step, width paper.Length) []strip {
	if len(step.Readings) == 0 {
		return nil
	}
	grid := gridOf(step, width-wordsLeft)
	if grid.columns == 0 {
		return longReadings(step, width-wordsLeft, grid.name)
	}
	var list []strip
	for row := range slices.Chunk(step.Readings, grid.columns) {
		list = append(list, strip{height: readingRow, draw: func(page *paper.Page, box paper.Rect) {
			for i, r := range row {
				grid.draw(page, paper.Rect{X: box.X + wordsLeft + paper.Length(i)*grid.cell, Y: box.Y, W: grid.cell, H: box.H}, r)
			}
		}})
	}
	list[len(list)-1].height += readingPad
	return list
}

// draw sets one reading in its cell.
func (g readingGrid) draw(page *paper.Page, cell paper.Rect, r crew.Reading) {
	page.TickBox(paper.Point{X: cell.X, Y: cell.Y + 0.6})
	base := cell.Y + 0.6 + (paper.TickBoxSide+g.figures.Ascent())/2
	x := cell.X + readingTicks
	page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, r.What, paper.Strong)
	x += g.name + readingGap
	page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, r.Want, g.figures)
	if x += g.want + readingGap/2; g.record {
		page.Line(paper.Point{X: x, Y: base + 0.8}, paper.Point{X: min(cell.Right()-readingGap/2, x+foundWidth), Y: base + 0.8}, paper.Thin)
	}
}

// longReadings sets readings one a row, their words wrapped beside their names.
func longReadings(step crew.Step, room, name paper.Length) []strip {
	name = min(name, room/3)
	text := room - readingTicks - name - 3
	var list []strip
	for _, r := range step.Readings {
		lines := paper.CellSmall.Wrap(r.Want, text)
		h := max(readingRow, paper.Length(len(lines))*paper.CellSmall.Leading()+1.6)
		list = append(list, strip{height: h, draw: func(page *paper.Page, box paper.Rect) {
			x := box.X + wordsLeft
			page.TickBox(paper.Point{X: x, Y: box.Y + 0.4})
			at := paper.Rect{X: x + readingTicks, Y: box.Y + 0.9, W: name}
			page.Paragraph(at, clip(r.What, paper.Strong, name), paper.Strong)
			page.Paragraph(paper.Rect{X: at.X + name + 3, Y: at.Y, W: text}, strings.Join(lines, "\n"), paper.CellSmall)
		}})
	}
	list[len(list)-1].height += readingPad
	return list
}
