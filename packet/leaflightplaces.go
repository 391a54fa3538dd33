package packet

import (
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// unfolded shows every string in its place.
func (l lighting) unfolded() []block.Block {
	key := l.key()
	side := l.high - 3
	for _, k := range key {
		side -= k.Gap + k.Body.Height(l.wide-draw.EdgeStripWide)
	}
	strings := block.Block{Name: "strings", Gap: 3, Body: unfolded{draw.Unfold(l.plan), side}}
	_, edge := l.onEdges()
	for _, s := range edge {
		strings.Facts = append(strings.Facts, block.Fact{What: "strip of " + s.words(), Value: s.words()})
	}
	return append(key, strings)
}

// unfolded is the tunnel laid open, which goes on side by side where it does not find room on one.
type unfolded struct {
	draw.Unfolded
	side paper.Length // what of a side's height it has at most
}

// Height implements block.Body. Arches too few to be parted stand nearer together than is good where one side would not hold them.
func (u unfolded) Height(paper.Length) paper.Length {
	if _, _, ok := u.Cut(u.side); !ok {
		return min(u.Least(), u.side)
	}
	return u.Least()
}

// Most is what it can use of room left over.
func (u unfolded) Most(paper.Length) paper.Length { return u.Best() }

// Split parts it between arches.
func (u unfolded) Split(_, height paper.Length) (first, rest block.Body, ok bool) {
	a, b, ok := u.Cut(height)
	return unfolded{a, u.side}, unfolded{b, u.side}, ok && u.Least() > u.side
}

// key says how the picture is read, and which strings the raising crew ticks.
func (l lighting) key() []block.Block {
	var others []numbered
	for _, s := range l.plan.Strings {
		if !s.Run.Wound() {
			others = append(others, numbered{"S", s.Number, ""})
		}
	}
	text := "From above, legs flat. Tick when tied."
	if len(others) > 0 {
		text += " Then raising crew gets " + inRanges(others)
		if len(l.plan.Lights.Rows) > 0 {
			text += ", leaf"
		}
		text += "."
	}
	return []block.Block{
		{Name: "how the picture is read", Gap: 3, Keep: true, Body: block.Words{Text: text}},
		{Name: "key of the picture", Gap: 1, Keep: true, Body: draw.StringKey(l.plan)},
	}
}

// leftOver says which of a crew's strings are longer than their place, and by how much, those alike together; empty where none is.
func leftOver(plan *layout.Plan, crews func(lights.String) bool) (words string, facts []block.Fact) {
	u := plan.Spec.Units
	var longs []string
	of := map[string][]numbered{}
	taken := takenOn(plan)
	for _, s := range plan.Strings {
		left := s.LeftOver - taken[s.Name]
		long := u.Room(left)
		if !crews(s) || left < 2*u.Grid() || long == u.Room(0) {
			continue
		}
		if of[long] == nil {
			longs = append(longs, long)
		}
		of[long] = append(of[long], numbered{"S", s.Number, ""})
		facts = append(facts, block.Fact{What: "left over of " + s.Name, Value: long})
	}
	for i, long := range longs {
		longs[i] = inRanges(of[long]) + " " + block.Figure(long)
		if len(of[long]) > 1 {
			longs[i] += " each"
		}
	}
	if len(longs) == 0 {
		return "", nil
	}
	return "Left over, joined: " + strings.Join(longs, "; ") + ": to and fro, tied.", facts
}

// takenOn returns how much of what is left over of a string reaches on to the prongs of the next in its run, where those are elsewhere.
func takenOn(plan *layout.Plan) map[string]measure.Length {
	of, taken := map[string]lights.String{}, map[string]measure.Length{}
	for _, s := range plan.Strings {
		of[s.Name] = s
	}
	for _, c := range plan.Chains {
		for i := 1; i < len(c.Strings); i++ {
			taken[c.Strings[i-1]] = lights.Between(of[c.Strings[i-1]].To, of[c.Strings[i]].From)
		}
	}
	return taken
}
