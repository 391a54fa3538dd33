package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// stakesOut is a box to tick for every stake, the two of a pair behind one name: none may stay in the grass. Many are counted by the stretch.
type stakesOut struct {
	groups [][]stakePair // leg stakes, then those of guys
	count  int
}

// stakePair is the stakes of one name, left and right, or of a stretch of names.
type stakePair struct {
	name  string
	sides []spec.Side
	count int // of a stretch: how many are out is written in
}

// boxesMost is how many stakes have a box each; of more, a stretch of so many names has a line to write on.
const (
	boxesMost = 60
	stretch   = 10
)

func newStakesOut(stakes []ground.Stake) stakesOut {
	s := stakesOut{groups: make([][]stakePair, 2), count: len(stakes)}
	for _, stake := range stakes {
		g := &s.groups[0]
		if stake.Guy {
			g = &s.groups[1]
		}
		name, k := stake.Pair(), 0
		for k < len(*g) && (*g)[k].name != name {
			k++
		}
		if k == len(*g) {
			*g = append(*g, stakePair{name: name})
		}
		(*g)[k].sides = append((*g)[k].sides, stake.Side)
	}
	if s.count > boxesMost {
		for i, g := range s.groups {
			s.groups[i] = byStretch(g)
		}
	}
	return s
}

// byStretch puts so many names after each other into one.
func byStretch(group []stakePair) (list []stakePair) {
	for part := range slices.Chunk(group, stretch) {
		one := stakePair{name: part[0].name}
		if len(part) > 1 {
			one.name += " to " + part[len(part)-1].name
		}
		for _, p := range part {
			one.count += len(p.sides)
		}
		list = append(list, one)
	}
	return list
}

const (
	outHead paper.Length = 6.4
	outRow  paper.Length = 6.9
	outBox  paper.Length = paper.TickBoxSide + 0.4
	outGap  paper.Length = 2  // from a pair to the next
	outLine paper.Length = 10 // to write on
)

// cell is the width of a pair of a group.
func (stakesOut) cell(group []stakePair) paper.Length {
	name := paper.Length(0)
	room := 2 * outBox
	for _, p := range group {
		name = max(name, paper.CellSmall.Width(p.name))
		if p.count > 0 {
			room = max(room, outLine+paper.CellSmall.Width(p.of()))
		}
	}
	return name + 1.2 + room + outGap
}

// of says how many a stretch has.
func (p stakePair) of() string { return fmt.Sprintf(" of %d", p.count) }

func (s stakesOut) across(group []stakePair, width paper.Length) int {
	return max(1, int((width+outGap)/s.cell(group)))
}

// Height implements block.Body.
func (s stakesOut) Height(width paper.Length) paper.Length {
	rows := 0
	for _, g := range s.groups {
		n := s.across(g, width)
		rows += (len(g) + n - 1) / n
	}
	return outHead + paper.Length(rows)*outRow
}

// Draw implements block.Body.
func (s stakesOut) Draw(page *paper.Page, box paper.Rect) []string {
	how := "tick each"
	if s.count > boxesMost {
		how = "write how many"
	}
	page.Text(paper.Point{X: box.X, Y: box.Y + paper.Strong.Ascent()}, paper.AtLeft, fmt.Sprintf("Stakes out, of %d: %s", s.count, how), paper.Strong)
	y := box.Y + outHead
	for _, g := range s.groups {
		n := s.across(g, box.W)
		for i, p := range g {
			at := paper.Point{X: box.X + paper.Length(i%n)*s.cell(g), Y: y + paper.Length(i/n)*outRow}
			s.pair(page, at, s.cell(g)-outGap, p)
		}
		y += paper.Length((len(g)+n-1)/n) * outRow
	}
	return nil
}

// pair draws a name and a box for each side of it, its letter within.
func (stakesOut) pair(page *paper.Page, at paper.Point, wide paper.Length, p stakePair) {
	base := at.Y + (paper.TickBoxSide+paper.CellSmall.Ascent())/2
	if p.count > 0 {
		line := at.X + wide - paper.CellSmall.Width(p.of())
		page.Text(paper.Point{X: line - outLine - 1.2, Y: base}, paper.AtRight, p.name, paper.CellSmall)
		page.Line(paper.Point{X: line - outLine, Y: base + 0.5}, paper.Point{X: line, Y: base + 0.5}, paper.Thin)
		page.Text(paper.Point{X: at.X + wide, Y: base}, paper.AtRight, p.of(), paper.CellSmall)
		return
	}
	page.Text(paper.Point{X: at.X + wide - 2*outBox - 1.2, Y: base}, paper.AtRight, p.name, paper.CellSmall)
	for _, side := range p.sides {
		x := at.X + wide - 2*outBox + paper.Length(side)*outBox
		page.TickBox(paper.Point{X: x, Y: at.Y})
		page.Text(paper.Point{X: x + paper.TickBoxSide/2, Y: base}, paper.AtMiddle, side.Letter(), paper.Floor)
	}
}

// Split goes on on the next side, between rows.
func (s stakesOut) Split(width, height paper.Length) (first, rest block.Body, ok bool) {
	rows := int((height - outHead) / outRow)
	a, b := s, s
	a.groups, b.groups = nil, nil
	more := false
	for _, g := range s.groups {
		n := s.across(g, width)
		fit := min(len(g), rows*n)
		rows -= (fit + n - 1) / n
		a.groups, b.groups = append(a.groups, g[:fit]), append(b.groups, g[fit:])
		more = more || fit < len(g)
	}
	return a, b, more && len(a.groups[0]) > 0
}
