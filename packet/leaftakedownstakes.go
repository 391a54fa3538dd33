package packet

import (
	"fmt"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// stakesOut is a box to tick for every stake, the two of a pair behind one name: none may stay in the grass.
type stakesOut struct {
	groups [][]stakePair // leg stakes, then those of guys
	count  int
}

// stakePair is the stakes of one name, left and right.
type stakePair struct {
	name  string
	sides []spec.Side
}

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
	return s
}

const (
	outHead paper.Length = 6.4
	outRow  paper.Length = 6.9
	outBox  paper.Length = paper.TickBoxSide + 0.4
	outGap  paper.Length = 2 // from a pair to the next
)

// cell is the width of a pair of a group.
func (stakesOut) cell(group []stakePair) paper.Length {
	name := paper.Length(0)
	for _, p := range group {
		name = max(name, paper.CellSmall.Width(p.name))
	}
	return name + 1.2 + 2*outBox + outGap
}

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
	page.Text(paper.Point{X: box.X, Y: box.Y + paper.Strong.Ascent()}, paper.AtLeft, fmt.Sprintf("Stakes out, of %d: tick each", s.count), paper.Strong)
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
