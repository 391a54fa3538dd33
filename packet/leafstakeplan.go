package packet

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
)

// picture is the plan as a block.
func (s *stakeLeaf) picture(plan draw.StakePlan, high paper.Length) block.Block {
	return block.Block{Name: "plan of the stakes", Body: block.Picture{Least: high, Paint: plan.Draw}, Facts: s.facts(plan)}
}

// facts are the figures on the plan.
func (s *stakeLeaf) facts(plan draw.StakePlan) (list []block.Fact) {
	for _, x := range plan.Spans {
		if x.Text != "" {
			list = append(list, block.Fact{What: s.spot(x.From) + " to " + s.spot(x.To), Value: x.Text})
		}
	}
	return list
}

// plan is a part's picture, not yet at a scale.
func (s *stakeLeaf) plan(part ground.TapeLength) draw.StakePlan {
	p := draw.NewStakePlan(s.ground, s.b.spec, part.First, part.Last)
	p.Zero, p.Finest = s.tapeOf(part).First, s.finest
	for i, other := range s.parts {
		if other == part {
			p.Before, p.After = i, i+2
		}
	}
	on := func(x ground.Spot) bool {
		if x.Kind == ground.AtMark {
			return false
		}
		arch := s.ground.Stakes[x.Index].Arch
		return arch >= part.First && arch <= part.Last
	}
	for _, d := range s.dots {
		if d.How == ground.TwoTapes && d.From.Kind == ground.AtMark && on(d.Spot) && (s.byRow() || s.end(d.Spot)) {
			p.Tied = append(p.Tied, d)
		}
	}
	for _, c := range s.markTapes(part) {
		if !slices.Contains(p.Marks, c.mark.Index) {
			p.Marks = append(p.Marks, c.mark.Index)
		}
	}
	p.Spans = append(s.triangle(part), s.spans(func(c ground.Check) bool { return on(c.From) && on(c.To) })...)
	return p
}

// end reports whether a spot is the first or the last left stake's.
func (s *stakeLeaf) end(x ground.Spot) bool {
	return x.Index == 0 || x.Index == 2*len(s.ground.Stations)-2
}

// onPlan are the checks whose distance is written on the line it measures.
func (s *stakeLeaf) onPlan(k ground.CheckKind) bool {
	switch k {
	case ground.Width, ground.WholeDiagonal:
		return true
	case ground.BayDiagonal, ground.GuyToLeg:
		return s.ground.Straight
	}
	return false
}

// spans are the distances on the plan: of those alike the first, with its number, and the diagonal that crosses it.
func (s *stakeLeaf) spans(on func(ground.Check) bool) (list []draw.StakeSpan) {
	var here []ground.Check
	for _, c := range s.checks {
		told := c.Kind == ground.GuyToLeg && s.inner(s.ground.Stakes[c.To.Index]) && s.guysOut() != 0 && s.innerLeg() != "" // in the table
		if s.onPlan(c.Kind) && on(c) && !told && s.ground.Stakes[c.To.Index].Kind() != ground.OfBrace {
			here = append(here, c)
		}
	}
	for _, group := range ground.Similar(here, s.units) {
		c := group[0]
		if c.Kind == ground.Width { // of those alike the last that lies level: other lines meet at the first
			c = slices.MaxFunc(group, func(a, b ground.Check) int { return cmp.Or(cmp.Compare(s.level(a), s.level(b)), a.To.Index-b.To.Index) })
		}
		list = append(list, draw.StakeSpan{From: c.From, To: c.To, Text: s.bare(c.Distance), Across: c.Kind == ground.Width, Drawn: c.Kind == ground.GuyToLeg})
		if len(group) > 1 && (c.Kind == ground.BayDiagonal || c.Kind == ground.WholeDiagonal) {
			list = append(list, draw.StakeSpan{From: group[1].From, To: group[1].To})
		}
	}
	return list
}

// level is how near a distance lies to level on the plan, 1 at most.
func (s *stakeLeaf) level(c ground.Check) float64 {
	heading := func(arch int) float64 {
		return float64(s.ground.Stations[arch-1].Heading - s.ground.Stations[0].Heading)
	}
	return math.Round(100 * math.Cos(heading(s.ground.Stakes[c.To.Index].Arch)))
}

// How far from their row the legs of the square are drawn, on the side away from the walk: else they read as a bay's length and as the width.
const (
	aheadApart paper.Length = 16
	asideApart paper.Length = -6
)

// triangle are the three sides of a square that is set out with tapes at L1.
func (s *stakeLeaf) triangle(part ground.TapeLength) (list []draw.StakeSpan) {
	for _, d := range s.dots {
		switch {
		case part.First > 1:
		case d.Spot.Kind == ground.AtAhead:
			list = append(list, draw.StakeSpan{From: d.From, To: d.Spot, Text: s.bare(d.A), Apart: aheadApart})
		case d.Spot.Kind == ground.AtAside:
			list = append(list, draw.StakeSpan{From: d.From, To: d.Spot, Text: s.bare(d.A), Apart: asideApart}, draw.StakeSpan{From: d.To, To: d.Spot, Text: s.bare(d.B)})
		}
	}
	return list
}
