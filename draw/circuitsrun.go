package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/power"
)

// stringSpot is a string's box on a row: from the row's left and below its middle.
type stringSpot struct {
	x, dy, wide paper.Length
	name, on    string
}

// turnHigh is from a line of a run's strings to the next one, with room for the wire between them.
const turnHigh = plugHigh + 0.5

// strings sets the boxes of a run's strings from left to right and, where they do not all fit with the place where the run ends, below. below is what the row needs
// more than its least height.
func (c Circuits) strings(r plugRow, width paper.Length) (list []stringSpot, below paper.Length) {
	if list, below = c.set(r, partsOf(r.run, false), width); below > 0 {
		return c.set(r, partsOf(r.run, true), width)
	}
	return list, below
}

// set sets the boxes of a run's strings, each with the part that it is on.
func (c Circuits) set(r plugRow, parts []string, width paper.Length) (list []stringSpot, below paper.Length) {
	left := r.node() + c.runName
	x := left
	for i, name := range r.run.Strings {
		on := parts[i]
		w := paper.CellSmall.Width(name) + paper.Floor.Width(on) + 2.8
		end := matedLong
		if i == len(r.run.Strings)-1 {
			end = cupRadius + paper.Floor.Width(endWords(r.run)) + 1.5
		}
		if x+w+end > width && x > left {
			x = left
			below += turnHigh
		}
		list = append(list, stringSpot{x, below, w, name, on})
		x += w + matedLong + 2*stringGap
	}
	return list, below
}

// partsOf names what each of a run's strings is on: a leg by its letter and number; in short, a ridge piece after another by its number alone.
func partsOf(run power.Chain, short bool) (list []string) {
	for i, on := range run.On {
		words := runWords(on)
		if short && i > 0 && onRidge(on) && onRidge(run.On[i-1]) {
			words = fmt.Sprint(on.Number)
		}
		list = append(list, words)
	}
	return list
}

// endWords says where a run's open end is; the row that it is on stands in the box of its string.
func endWords(run power.Chain) string {
	at, last := run.To.At, run.On[len(run.On)-1]
	name, row, detail := placeParts(at)
	if last.IsRow() && !last.Drop && at.Part == last.Part {
		row = ""
	}
	return listed(listed(name, row), detail)
}

func onRidge(r lights.Run) bool { return r.Kind == lights.Ridge && !r.Drop }

func runWords(r lights.Run) string {
	switch wall, _ := r.Wall(); {
	case r.IsLeg() && !r.Drop:
		return fmt.Sprint(r.Letter(), r.Number)
	case r.IsRow() && !r.Drop:
		return fmt.Sprintf("%s row %d", wall.Letter(), r.Number)
	}
	return r.String()
}

// drawStrings draws a run: its letter, its strings from plug to socket, its open end with the place where that is.
func (c Circuits) drawStrings(b *place.Board, box paper.Rect, r plugRow) {
	list, _ := c.strings(r, box.W)
	mid := paper.Point{X: box.X, Y: box.Y + c.high/2}
	at := func(x, dy paper.Length) paper.Point { return mid.Add(paper.Point{X: x, Y: dy}) }
	right := paper.Point{X: 1}
	b.Text(at(r.node(), 1.6), paper.AtLeft, r.run.Name, paper.CellSmall)
	for i, s := range list {
		outlinedBox(b, paper.Rect{X: box.X + s.x, Y: mid.Y + s.dy - nodeHigh/2, W: s.wide, H: nodeHigh}, paper.Thick)
		b.Text(at(s.x+0.9, s.dy+1.6), paper.AtLeft, s.name, paper.CellSmall)
		b.Text(at(s.x+s.wide-0.9, s.dy+1.6), paper.AtRight, s.on, paper.Floor)
		end := s.x + s.wide
		if i == len(list)-1 {
			Socket(b, at(end, s.dy), right)
			b.Text(at(end+cupRadius+1.5, s.dy+1.5), paper.AtLeft, endWords(r.run), paper.Floor)
		} else {
			b.Page.Line(at(end, s.dy), at(end+stringGap, s.dy), paper.Thick)
			mated(b, at(end+stringGap, s.dy), right)
			lead(b.Page, at(end+stringGap+matedLong-0.2, s.dy), at(list[i+1].x, list[i+1].dy))
		}
	}
}

// lead draws the wire from a plug to its string's box: straight, or round to the row below.
func lead(page *paper.Page, from, to paper.Point) {
	if to.Y <= from.Y {
		page.Line(from, to, paper.Thick)
		return
	}
	const out = 1.4 // past the plug, and before the box
	between := (from.Y + to.Y) / 2
	path := []paper.Point{from, {X: from.X + out, Y: from.Y}, {X: from.X + out, Y: between}, {X: to.X - out, Y: between}, {X: to.X - out, Y: to.Y}, to}
	for i := range path[1:] {
		page.Line(path[i], path[i+1], paper.Thick)
	}
}
