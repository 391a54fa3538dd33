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

// facts are the figures on a plan.
func (s *stakeLeaf) facts(plan draw.StakePlan) (list []block.Fact) {
	for _, x := range plan.Spans {
		if x.Text != "" {
			list = append(list, block.Fact{What: s.spot(x.From) + " to " + s.spot(x.To), Value: x.Text})
		}
	}
	return list
}

// plan is a part's picture, not yet at a scale.
func (p stakePart) plan() draw.StakePlan {
	plan := draw.NewStakePlan(p.ground, p.spec, p.First, p.Last)
	plan.Zero, plan.Finest, plan.Before, plan.After = p.tape.First, p.finest, p.number-1, p.number+1
	for _, d := range p.dots {
		if d.How == ground.TwoTapes && d.From.Kind == ground.AtMark && p.on(d.Spot) && (p.byRow() || d.Spot.Index == 0 || d.Spot.Index == 2*len(p.ground.Stations)-2) {
			plan.Tied = append(plan.Tied, d)
		}
	}
	for _, c := range p.markTapes() {
		if !slices.Contains(plan.Marks, c.mark.Index) {
			plan.Marks = append(plan.Marks, c.mark.Index)
		}
	}
	plan.Spans = append(p.triangle(), p.spans()...)
	return plan
}

// onPlan are the checks whose distance is written on the line it measures: one that all of a kind share, else a reader could not tell which has which.
func (p stakePart) onPlan(k ground.CheckKind) bool {
	switch {
	case slices.Contains(p.tabled, k):
	case k == ground.Width, k == ground.WholeDiagonal:
		return len(ground.Similar(p.drawn(k), p.units)) < 2
	case k == ground.BayDiagonal, k == ground.GuyToLeg:
		return p.ground.Straight && len(ground.Similar(p.drawn(k), p.units)) < 2
	}
	return false
}

// drawn are the checks of a kind with both ends on the part, save those of guy stakes that the table tells once for all, and of braces' pegs.
func (p stakePart) drawn(k ground.CheckKind) (list []ground.Check) {
	for _, c := range p.checks {
		to := p.ground.Stakes[c.To.Index]
		told := k == ground.GuyToLeg && (p.inner(to) && p.innerTold() || to.Kind() == ground.OfBrace)
		if c.Kind == k && p.on(c.From) && p.on(c.To) && !told {
			list = append(list, c)
		}
	}
	return list
}

// spans are the distances on the plan: of those alike the first, with its number, and the diagonal that crosses it.
func (p stakePart) spans() (list []draw.StakeSpan) {
	var here []ground.Check
	for k := ground.ThirdTape; k <= ground.GuyToLeg; k++ {
		if p.onPlan(k) {
			here = append(here, p.drawn(k)...)
		}
	}
	for _, group := range ground.Similar(here, p.units) {
		var like []draw.StakeSpan
		if group[0].Kind == ground.Width { // of those alike the last that lies level and has room: other lines meet at the first
			slices.SortFunc(group, func(a, b ground.Check) int { return cmp.Or(cmp.Compare(p.level(b), p.level(a)), b.To.Index-a.To.Index) })
			for _, c := range group[1:] {
				like = append(like, draw.StakeSpan{From: c.From, To: c.To})
			}
		}
		c := group[0]
		list = append(list, draw.StakeSpan{From: c.From, To: c.To, Text: p.bare(c.Distance), Across: c.Kind == ground.Width, Drawn: c.Kind == ground.GuyToLeg, Like: like})
		if len(group) > 1 && (c.Kind == ground.BayDiagonal || c.Kind == ground.WholeDiagonal) {
			list = append(list, draw.StakeSpan{From: group[1].From, To: group[1].To})
		}
	}
	return list
}

// level is how near the width of an arch lies to level on the plan, 1 at most.
func (s *stakeLeaf) level(c ground.Check) float64 {
	at := s.ground.Stations
	return math.Round(100 * math.Cos(float64(at[s.ground.Stakes[c.To.Index].Arch-1].Heading-at[0].Heading)))
}

// How far from their row the legs of the square are drawn, on the side away from the walk: else they read as a bay's length and as the width.
const (
	aheadApart paper.Length = 16
	asideApart paper.Length = -8
)

// triangle are the three sides of a square that is set out with tapes at L1.
func (p stakePart) triangle() (list []draw.StakeSpan) {
	for _, d := range p.dots {
		switch {
		case p.First > 1:
		case d.Spot.Kind == ground.AtAhead:
			list = append(list, draw.StakeSpan{From: d.From, To: d.Spot, Text: p.bare(d.A), Apart: aheadApart})
		case d.Spot.Kind == ground.AtAside:
			list = append(list, draw.StakeSpan{From: d.From, To: d.Spot, Text: p.bare(d.A), Apart: asideApart}, draw.StakeSpan{From: d.To, To: d.Spot, Text: p.bare(d.B)})
		}
	}
	return list
}
