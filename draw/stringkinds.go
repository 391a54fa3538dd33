package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout"
)

// stringKinds returns the kinds of string of a plan, those in rows first and in their order. They are told apart by how their bulbs stand together on paper, which a
// grey copy keeps: the first singly, the next in twos, and so on; their colours are a second code.
func stringKinds(plan *layout.Plan) []string {
	var kinds []string
	add := func(kind string) {
		if !slices.Contains(kinds, kind) {
			kinds = append(kinds, kind)
		}
	}
	for _, r := range plan.Lights.Rows {
		add(r.Kind)
	}
	for _, s := range plan.Strings {
		add(s.Kind)
	}
	return kinds
}

// inGroup is how many bulbs of the k-th kind stand together.
func inGroup(k int) int { return 1 + k%5 }

// Bulbs on a string's line.
const (
	beadRadius paper.Length = 0.75
	beadStep   paper.Length = 4.4 // from a group to the next, less what a group of more than one takes
	beadNext   paper.Length = 1.7 // within a group
)

// beads draws the k-th kind's bulbs along a line in their inks, and returns how many there have been on the string.
func beads(page *paper.Page, a, b paper.Point, inks []paper.Colour, k, before int) int {
	way, group := b.Sub(a), inGroup(k)
	wide := paper.Length(group-1) * beadNext
	groups := int((way.Long() + beadStep/2) / (beadStep + wide))
	for g := range groups {
		middle := way.Long() * (paper.Length(g) + 0.5) / paper.Length(groups)
		for i := range group {
			disc := paper.Bead(a.Add(way.Unit().Times(float64(middle-wide/2+paper.Length(i)*beadNext))), beadRadius)
			page.Fill(disc, inks[(before+g*group+i)%len(inks)])
			page.Stroke(disc, ring)
		}
	}
	return before + groups*group
}
