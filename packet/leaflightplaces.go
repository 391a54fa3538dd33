package packet

import (
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
)

// unfolded shows every string in its place, and says what is left over.
func (l lighting) unfolded() []block.Block {
	key := l.key()
	side := l.high - 3
	for _, k := range key {
		side -= k.Gap + k.Body.Height(l.wide-draw.EdgeStripWide)
	}
	blocks := append(slices.Concat(l.leftOver(), l.rowWords(), key), block.Block{Name: "strings", Gap: 3, Body: unfolded{draw.Unfold(l.plan), side}})
	return blocks
}

// unfolded is the tunnel laid open, which goes on side by side where it does not find room on one.
type unfolded struct {
	draw.Unfolded
	side paper.Length // what of a side's height it has at most
}

// Height implements block.Body.
func (u unfolded) Height(paper.Length) paper.Length { return u.Least() }

// Most is what it can use of room left over.
func (u unfolded) Most(paper.Length) paper.Length { return u.Best() }

// Split parts it between arches.
func (u unfolded) Split(_, height paper.Length) (first, rest block.Body, ok bool) {
	a, b, ok := u.Cut(height)
	return unfolded{a, u.side}, unfolded{b, u.side}, ok && u.Least() > u.side
}

// key says how the picture is read.
func (l lighting) key() []block.Block {
	text := "From above, legs laid flat, arch 1 at the bottom. Tick a string when tied."
	if slices.ContainsFunc(l.plan.Lights.Paths, func(p lights.Path) bool { return len(p.Rows) > 1 }) {
		text += " Rows turn up that leg."
	}
	return []block.Block{
		{Name: "how the picture is read", Gap: 3, Keep: true, Body: block.Words{Text: text}},
		{Name: "key of the picture", Gap: 1, Keep: true, Body: draw.StringKey(l.plan)},
	}
}

// leftOver says which strings are longer than their place, and by how much, those alike together.
func (l lighting) leftOver() []block.Block {
	var longs []string
	of := map[string][]numbered{}
	var facts []block.Fact
	for _, s := range l.plan.Strings {
		long := l.u.Room(s.LeftOver)
		if s.LeftOver < 2*l.u.Grid() || long == l.u.Room(0) {
			continue
		}
		if of[long] == nil {
			longs = append(longs, long)
		}
		of[long] = append(of[long], numbered{before: "S", number: s.Number})
		facts = append(facts, block.Fact{What: "left over of " + s.Name, Value: long})
	}
	if len(longs) == 0 {
		return nil
	}
	var named []string
	for _, long := range longs {
		named = append(named, inRanges(of[long])+" "+block.Figure(long))
	}
	text := "Left over: " + strings.Join(named, "; ") + ". Lay it to and fro on its own pipe or row, tied."
	return []block.Block{{Name: "what is left over", Gap: 2, Rank: block.Should, Body: block.Words{Text: text}, Facts: facts}}
}
