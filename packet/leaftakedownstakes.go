package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// stakePair is the stakes of one name, left and right.
type stakePair struct {
	name  string
	sides []spec.Side
}

// boxesMost is how many stakes have a box each; of more, a stretch of so many names has a line to write on, so many in a row.
const (
	boxesMost = 60
	stretch   = 10
	inRow     = 4
)

// stakesOut counts the stakes out of the ground, by what arches stand on, those of legs before those of guys: none may stay in the grass.
func stakesOut(stakes []ground.Stake, stand []string) []block.Block {
	groups := make([][]stakePair, 2)
	for _, s := range stakes {
		g := &groups[0]
		if s.Guy {
			g = &groups[1]
		}
		k := slices.IndexFunc(*g, func(p stakePair) bool { return p.name == s.Pair() })
		if k < 0 {
			k, *g = len(*g), append(*g, stakePair{name: s.Pair()})
		}
		(*g)[k].sides = append((*g)[k].sides, s.Side)
	}
	head := say.Capital(strings.Join(stand, "s, ")) + fmt.Sprintf("s out, of %d: ", len(stakes))
	if len(stakes) <= boxesMost {
		head += "tick each"
		return []block.Block{{Name: head, Gap: 3, Body: block.Words{Text: head, Lettering: paper.Strong}}, {Name: "stakes out", Gap: 1, Body: stakeBoxes(groups)}}
	}
	head += "write how many"
	list := []block.Block{{Name: head, Gap: 3, Keep: true, Body: block.Words{Text: head, Lettering: paper.Strong}}}
	for _, g := range groups {
		var lines block.Blanks
		for part := range slices.Chunk(g, stretch) {
			count := 0
			for _, p := range part {
				count += len(p.sides)
			}
			lines = append(lines, block.Blank{Word: fmt.Sprintf("%s to %s, of %d", part[0].name, part[len(part)-1].name, count)})
		}
		for row := range slices.Chunk(lines, inRow) {
			list = append(list, block.Block{Name: "stakes out", Body: row})
		}
	}
	return list
}

// stakeBoxes is a box to tick for every stake, the two of a pair behind one name, group under group.
type stakeBoxes [][]stakePair

const (
	outRow paper.Length = 6.9
	outBox paper.Length = paper.TickBoxSide + 0.4
	outGap paper.Length = 2 // from a pair to the next
)

// cell is the width of a pair with the gap beyond it, and how many stand in a row.
func (s stakeBoxes) cell(width paper.Length) (wide paper.Length, across int) {
	for _, g := range s {
		for _, p := range g {
			wide = max(wide, paper.CellSmall.Width(p.name)+1.2+2*outBox+outGap)
		}
	}
	return wide, max(1, int((width+outGap)/max(1, wide)))
}

// Height implements block.Body.
func (s stakeBoxes) Height(width paper.Length) (high paper.Length) {
	_, n := s.cell(width)
	for _, g := range s {
		high += paper.Length((len(g)+n-1)/n) * outRow
	}
	return high
}

// Draw implements block.Body.
func (s stakeBoxes) Draw(page *paper.Page, box paper.Rect) []string {
	wide, n := s.cell(box.W)
	y := box.Y
	for _, g := range s {
		for i, p := range g {
			boxes := paper.Point{X: box.X + paper.Length(i%n+1)*wide - outGap - 2*outBox, Y: y + paper.Length(i/n)*outRow}
			base := boxes.Y + (paper.TickBoxSide+paper.CellSmall.Ascent())/2
			page.Text(paper.Point{X: boxes.X - 1.2, Y: base}, paper.AtRight, p.name, paper.CellSmall)
			for _, side := range p.sides {
				at := boxes.Add(paper.Point{X: paper.Length(side) * outBox})
				page.TickBox(at)
				page.Text(paper.Point{X: at.X + paper.TickBoxSide/2, Y: base}, paper.AtMiddle, side.Letter(), paper.Floor)
			}
		}
		y += paper.Length((len(g)+n-1)/n) * outRow
	}
	return nil
}
