package packet

import (
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
)

// stakeSheet is a plan with its tables and what else its crew reads, arranged on the front and the back of a sheet of paper.
type stakeSheet struct {
	plan        draw.StakePlan
	front, back []block.Block
	picture     paper.Rect // the plan's room
	fits        bool       // there is a scale at which its bays are as long as they must be
}

// seat is where on a sheet a block stands: in a column beside the picture, under that, behind.
type seat int

const (
	besidePlan seat = iota
	underPlan
	behindPlan
)

// stakeItem is a block that may stand in more than one place, and what room it takes in each.
type stakeItem struct {
	block.Block
	aside bool // it belongs behind where there is room
	takes [3]paper.Length
}

const stakeGap paper.Length = 2.4 // between the parts of a side

// arranged is the first arrangement that is tried.
func (p stakePart) arranged() (first stakeSheet) {
	p.arrangements(func(s stakeSheet) bool { first = s; return false })
	return first
}

// best is the arrangement in whose picture most has its place. Figures that find none there stand in the table of checks.
func (p stakePart) best() stakeSheet {
	drawn := func(s stakeSheet) []string { return s.plan.Draw(&paper.Page{Size: p.body}, s.picture) }
	best, lacks := p.tried(drawn)
	for k := ground.ThirdTape; k <= ground.GuyToLeg; k++ {
		if p.onPlan(k) && slices.ContainsFunc(p.drawn(k), func(c ground.Check) bool { return slices.Contains(lacks, p.bare(c.Distance)) }) {
			p.tabled = append(p.tabled, k)
		}
	}
	if len(p.tabled) > 0 {
		if again, still := p.tried(drawn); len(still) < len(lacks) {
			return again
		}
	}
	return best
}

// tried is the first arrangement in whose picture everything has its place, among as many as are worth a trial; else the one that lacks least, with what that lacks.
func (p stakePart) tried(lacking func(stakeSheet) []string) (best stakeSheet, least []string) {
	trials := 8
	p.arrangements(func(s stakeSheet) bool {
		if lacks := lacking(s); best.front == nil || len(lacks) < len(least) {
			best, least = s, lacks
		}
		trials--
		return len(least) > 0 && trials > 0
	})
	return best, least
}

// arrangements yields the sheets on which everything has room, the largest picture first: tables in front, what is read when something is off behind; those set tightly where there are no
// others. Where there are none it yields one, the largest picture with what fits beside or under it; its back goes on on further sides.
func (p stakePart) arrangements(yield func(stakeSheet) bool) {
	plan := p.plan()
	for _, t := range []block.Tightness{block.Loose, block.Tightest} {
		if p.roomy(plan, p.items(t), p.behind(t), false, yield) {
			return
		}
	}
	items := p.items(block.Loose)
	if !p.roomy(plan, items, endless, true, yield) {
		first := p.set(plan.Squeezed(p.body), 0, items, seated(items, [3]paper.Length{-1, -1, endless}, true))
		first.fits = false
		yield(first)
	}
}

// roomy yields the sheets on which everything has room where the back has so much, and reports whether there are any.
func (p stakePart) roomy(plan draw.StakePlan, items []stakeItem, behind paper.Length, inFront bool, yield func(stakeSheet) bool) (found bool) {
	for _, least := range p.columns() {
		left := p.body
		if least > 0 {
			left.W -= least + stakeGap
		}
		for _, fit := range plan.Fits(left) {
			free := [3]paper.Length{besidePlan: p.body.H + items[0].Gap, underPlan: p.body.H - fit.Need.H, behindPlan: behind}
			widest := least + max(0, left.W-fit.Need.W-planSpare)
			if least == 0 {
				widest, free[besidePlan] = 0, -1
			}
			for aside := widest; aside >= least; aside -= 4 {
				measured(items, [3]paper.Length{besidePlan: aside, underPlan: p.body.W - aside - min(aside, stakeGap), behindPlan: p.body.W})
				if places := seated(items, free, inFront); places != nil {
					found = true
					if !yield(p.set(fit, aside, items, places)) {
						return found
					}
				}
			}
		}
	}
	return found
}

const (
	endless    paper.Length = 1e6
	planSpare  paper.Length = 5  // beside what a plan needs: for arrows to marks
	movedLeast paper.Length = 17 // the table's column to write in how far a stake was moved
)

// columns are how wide a column beside the picture is at least, 0 for none: what the tables of straight rows need.
func (p stakePart) columns() []paper.Length {
	if p.byRow() {
		return []paper.Length{widthOf(p.tapeTable().Body.(block.Table).Columns) + movedLeast, 0}
	}
	return []paper.Length{0}
}

// items are what is to be arranged with the picture, so tightly set.
func (p stakePart) items(t block.Tightness) (items []stakeItem) {
	tables := p.tables()
	for i, b := range append(tables, p.asides()...) {
		b.Gap = stakeGap
		items = append(items, stakeItem{Block: block.Tight([]block.Block{b}, t)[0], aside: i >= len(tables)})
	}
	return items
}

// behind is what room the back has beside the order of work, so tightly set: none behind a further plan, which is to stand on one side.
func (p stakePart) behind(t block.Tightness) paper.Length {
	if p.First > 1 {
		return 0
	}
	return p.body.H - block.Height(block.Tight(p.back(nil, nil), t), p.body.W)
}

// measured writes what room each item takes in places of such widths.
func measured(items []stakeItem, widths [3]paper.Length) {
	for i := range items {
		for at, w := range widths {
			if w > 0 {
				items[i].takes[at] = items[i].Body.Height(w) + items[i].Gap
				if items[i].Name == marksChosen && w < leastChosen {
					items[i].takes[at] = endless
				}
			}
		}
	}
}

// seated finds each item a place that has room for it, the first ones the best they may have, in front if asked; nil where there is no room for all.
func seated(items []stakeItem, room [3]paper.Length, inFront bool) []seat {
	if len(items) == 0 {
		return []seat{}
	}
	seats := []seat{besidePlan, underPlan, behindPlan}
	if items[0].aside && !inFront {
		seats = []seat{behindPlan, besidePlan, underPlan}
	}
	for _, at := range seats {
		left := room
		if left[at] -= items[0].takes[at]; left[at] < 0 {
			continue
		}
		if rest := seated(items[1:], left, inFront); rest != nil {
			return append([]seat{at}, rest...)
		}
	}
	return nil
}

// set makes the sides of a sheet whose items have their places.
func (p stakePart) set(plan draw.StakePlan, aside paper.Length, items []stakeItem, places []seat) stakeSheet {
	var at [3][]block.Block
	var asides []block.Block
	high := p.body.H
	for i, item := range items {
		switch {
		case places[i] == behindPlan && item.aside && !(item.Name == checkCures && len(at[behindPlan]) > 0):
			asides = append(asides, item.Block)
			continue
		case places[i] == underPlan:
			high -= item.takes[underPlan]
		}
		at[places[i]] = append(at[places[i]], item.Block)
	}
	picture := block.Block{Name: "plan of the stakes", Body: block.Picture{Least: high, Paint: plan.Draw}, Facts: p.facts(plan)}
	s := stakeSheet{plan: plan, fits: true, picture: paper.Rect{W: p.body.W - aside - min(aside, stakeGap), H: high}, front: append([]block.Block{picture}, at[underPlan]...), back: p.back(at[behindPlan], asides)}
	if aside > 0 {
		whole := block.Block{Name: "plan and tapes", Gap: stakeGap, Body: block.Columns{Gap: stakeGap, Cols: []block.Column{{Share: 1, Blocks: s.front}, {Width: aside, Blocks: at[besidePlan]}}}}
		for _, b := range append(s.front, at[besidePlan]...) {
			whole.Facts = append(whole.Facts, b.Facts...)
		}
		s.front = []block.Block{whole}
	}
	return s
}
