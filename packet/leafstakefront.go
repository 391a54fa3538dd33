package packet

import (
	"iter"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
)

// front is a way to arrange a plan with its tables, and what goes behind: tables before the order of work, asides after it.
type front struct {
	plan           draw.StakePlan
	blocks         []block.Block
	tables, asides []block.Block
}

// arranged lays a part's front out: beside straight rows their tables, round a bend what finds room under the plan. What is read when something is off stands in
// front where there is no room behind. It reports whether the bays are as long on paper as they must be.
func (s *stakeLeaf) arranged(part ground.TapeLength) (front, bool) {
	tables, asides, body := s.tables(part), s.asides(), s.body()
	if !s.byRow() {
		return s.under(part, tables, asides, body)
	}
	var best front
	found := false
	for most := range len(asides) + 1 {
		f, ok := s.beside(part, tables, asides[:most], body)
		if !ok {
			continue
		}
		f.asides = append(f.asides, asides[most:]...)
		if !found {
			best, found = f, true
		}
		if block.Height(s.back(part, f), body.W) <= body.H {
			return f, true
		}
	}
	if !found {
		return s.under(part, nil, nil, body)
	}
	return best, true
}

// beside sets tables and asides in two columns, the picture on top of the left one. A table goes under the picture only where that stays as large; what finds no room
// goes behind. It is false where even the picture does not fit.
func (s *stakeLeaf) beside(part ground.TapeLength, tables, asides []block.Block, body paper.Rect) (f front, ok bool) {
	room := paper.Rect{W: body.W - stakeAside - stakeGap, H: body.H}
	alone, ok := s.plan(part).Fit(room)
	if !ok {
		return f, false
	}
	c := columns{body: body, left: room.W, fits: func(high paper.Length, same bool) bool {
		plan, ok := s.plan(part).Fit(paper.Rect{W: room.W, H: high})
		return ok && (!same || plan.Scale == alone.Scale)
	}}
	for _, t := range tables {
		if !c.set(t, true) {
			f.tables = append(f.tables, t)
		}
	}
	if len(c.right) == 0 {
		return f, false
	}
	c, f.asides = c.with(asides)
	if len(c.under) > 0 {
		room.H -= block.Height(c.under, room.W) + stakeGap
	}
	f.plan, _ = s.plan(part).Fit(room)
	cols := block.Columns{Gap: stakeGap, Cols: []block.Column{{Share: 1, Blocks: append([]block.Block{s.picture(f.plan, room.H)}, c.under...)}, {Width: stakeAside, Blocks: c.right}}}
	f.blocks = []block.Block{sideBySide("plan and tapes", cols, append(c.right, c.under...), s.facts(f.plan))}
	return f, true
}

// columns is a front being filled: what stands in the right column, and under the picture in the left one.
type columns struct {
	body         paper.Rect
	left         paper.Length // the left column's width
	right, under []block.Block
	fits         func(high paper.Length, same bool) bool // whether the picture fits a height, at the same scale as alone if asked
}

// set sets a block in the right column, else under the picture, and reports whether it found room.
func (c *columns) set(b block.Block, same bool) bool {
	b.Gap = stakeGap
	if try := append(c.right[:len(c.right):len(c.right)], b); block.Height(try, stakeAside) <= c.body.H {
		c.right = try
		return true
	}
	try := append(c.under[:len(c.under):len(c.under)], b)
	if !c.fits(c.body.H-block.Height(try, c.left)-stakeGap, same) {
		return false
	}
	c.under = try
	return true
}

// with sets asides too, from the first or from the last, whichever leaves fewer over, and returns those.
func (c columns) with(asides []block.Block) (full columns, over []block.Block) {
	for _, order := range []func([]block.Block) iter.Seq2[int, block.Block]{slices.All[[]block.Block], slices.Backward[[]block.Block]} {
		try, left := c, asides[:0:0]
		for _, a := range order(asides) {
			if !try.set(a, false) {
				left = append(left, a)
			}
		}
		if full.fits == nil || len(left) < len(over) {
			full, over = try, left
		}
	}
	return full, over
}

// under sets the picture across the side, and under it what fits while the picture stays as large: tables, then asides.
func (s *stakeLeaf) under(part ground.TapeLength, tables, asides []block.Block, body paper.Rect) (f front, ok bool) {
	f.plan, ok = s.plan(part).Fit(body)
	room := body
	set := func(items []block.Block) bool {
		less := room
		less.H -= block.Height(append([]block.Block{{Body: block.Blanks{}}}, items...), body.W) - block.Blanks{}.Height(body.W)
		plan, fits := s.plan(part).Fit(less)
		if fits = fits && plan.Scale == f.plan.Scale; fits {
			room, f.blocks = less, append(f.blocks, items...)
		}
		return fits
	}
	for i := range tables {
		if !set(tables[i : i+1]) {
			f.tables = append(f.tables, tables[i])
		}
	}
	for i := range asides {
		if !set(asides[i : i+1]) {
			f.asides = append(f.asides, asides[i])
		}
	}
	f.blocks = append([]block.Block{s.picture(f.plan, room.H)}, f.blocks...)
	return f, ok
}

// sideBySide makes one block of several in columns.
func sideBySide(name string, body block.Body, blocks []block.Block, facts []block.Fact) block.Block {
	for _, b := range blocks {
		facts = append(facts, b.Facts...)
	}
	return block.Block{Name: name, Gap: stakeGap, Body: body, Facts: facts}
}
