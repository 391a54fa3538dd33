package packet

import (
	"fmt"
	"iter"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// stakesLeaf puts every stake on its spot: in front the plan to scale with the tapes, behind what to do. A long tunnel has a sheet of paper for each stretch.
func (b *binder) stakesLeaf() []folio {
	s := newStakeLeaf(b)
	var list []folio
	for i := range s.parts {
		list = append(list, s.sheets(i)...)
	}
	return list
}

// stakeLeaf makes the leaf of the marking and driving crew.
type stakeLeaf struct {
	b      *binder
	ground ground.Layout
	units  measure.System
	dots   []ground.Dot
	checks []ground.Check
	tasks  []crew.Task // of marking and driving
	words  taskWords
	parts  []ground.TapeLength // the arches of each plan
	finest float64             // the scale that all plans share is no finer
}

func newStakeLeaf(b *binder) *stakeLeaf {
	u := b.spec.Units
	s := &stakeLeaf{b: b, ground: b.plan.Ground, units: u, dots: b.plan.Ground.Marking(u), checks: b.plan.Ground.Checks(u)}
	for _, t := range b.plan.Crew.Tasks {
		if t.Phase == crew.Marking || t.Phase == crew.Driving {
			s.tasks = append(s.tasks, t)
		}
	}
	s.words = taskWords{b.plan, u, s.letter}
	s.parts = s.stretches()
	for _, p := range s.parts {
		f, _ := s.arranged(p)
		s.finest = max(s.finest, f.plan.Scale.Ratio)
	}
	return s
}

// letter is the letter that a mark is called by.
func (s *stakeLeaf) letter(mark string) string {
	return draw.MarkLetter(slices.IndexFunc(s.ground.Marks, func(m ground.Mark) bool { return m.Name == mark }))
}

// lone reports whether there is but one arch.
func (s *stakeLeaf) lone() bool { return len(s.ground.Stations) == 1 }

// byRow reports whether dots are found along two straight rows.
func (s *stakeLeaf) byRow() bool { return s.ground.Straight && !s.lone() }

// body is the room of a side.
func (s *stakeLeaf) body() paper.Rect {
	_, box := s.b.newSide(false)
	return box
}

// Room between the parts of a front.
const (
	stakeGap   paper.Length = 2.4
	stakeAside paper.Length = 104 // the tables beside a picture
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

// under sets the picture across the side, and under it what fits while the picture stays as large: all tables or none, then asides.
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
	if !set(tables) {
		f.tables = tables
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
		if s.onPlan(c.Kind) && on(c) && !told {
			here = append(here, c)
		}
	}
	for _, group := range ground.Similar(here, s.units) {
		c := group[0]
		if c.Kind == ground.Width { // of those alike the last: other lines meet at the first
			c = group[len(group)-1]
		}
		list = append(list, draw.StakeSpan{From: c.From, To: c.To, Text: s.bare(c.Distance), Across: c.Kind == ground.Width, Drawn: c.Kind == ground.GuyToLeg})
		if len(group) > 1 && (c.Kind == ground.BayDiagonal || c.Kind == ground.WholeDiagonal) {
			list = append(list, draw.StakeSpan{From: group[1].From, To: group[1].To})
		}
	}
	return list
}

// triangle are the three sides of a square that is set out with tapes at L1.
func (s *stakeLeaf) triangle(part ground.TapeLength) (list []draw.StakeSpan) {
	for _, d := range s.dots {
		switch {
		case part.First > 1:
		case d.Spot.Kind == ground.AtAhead:
			list = append(list, draw.StakeSpan{From: d.From, To: d.Spot, Text: s.bare(d.A), Drawn: true})
		case d.Spot.Kind == ground.AtAside:
			list = append(list, draw.StakeSpan{From: d.From, To: d.Spot, Text: s.bare(d.A)}, draw.StakeSpan{From: d.To, To: d.Spot, Text: s.bare(d.B)})
		}
	}
	return list
}

// spot names what a tape runs from or to.
func (s *stakeLeaf) spot(x ground.Spot) string {
	switch x.Kind {
	case ground.AtMark:
		return draw.MarkLetter(x.Index)
	case ground.AtFound:
		return s.ground.Stakes[x.Index].String() + " ×"
	case ground.AtAhead:
		return "cross ahead"
	case ground.AtAside:
		return "cross aside"
	}
	return s.ground.Stakes[x.Index].String()
}

// title is a plan's title with its scale.
func (s *stakeLeaf) title(i int, scale paper.Scale) string {
	title := "Stakes"
	if len(s.parts) > 1 {
		title += fmt.Sprintf(", plan %d of %d", i+1, len(s.parts))
	}
	if scale.Ratio > 0 {
		title += fmt.Sprintf(" (1:%v)", scale.Ratio)
	}
	return title
}

// sheets are the sheets of paper of one part. The order of work stands behind the first one; what ends the work, and what is said aloud, behind all.
func (s *stakeLeaf) sheets(i int) []folio {
	f, _ := s.arranged(s.parts[i])
	title := s.title(i, paper.Scale{})
	first := folio{front: side{title: s.title(i, f.plan.Scale), toScale: true, blocks: f.blocks}, back: side{title: title}}
	first.back.blocks = s.back(s.parts[i], f)
	return []folio{first}
}

// back is what stands behind a part: what is said aloud, the tables that found no room in front, the order of work, what is read when something is off.
func (s *stakeLeaf) back(part ground.TapeLength, f front) []block.Block {
	list := append([]block.Block{s.aloud()}, f.tables...)
	if part.First == 1 {
		list = append(list, s.work()...)
	} else {
		list = append(list, s.again(part))
	}
	return append(list, f.asides...)
}

// again sends the crew of a further plan to the order of work.
func (s *stakeLeaf) again(part ground.TapeLength) block.Block {
	text := "The order of work stands behind plan 1, with the ticket: nothing is driven here before it is signed there. Its zero and its lines run on into this plan."
	for _, t := range s.tasks {
		if t.Action == crew.PullTest {
			t.Of.Stakes = []ground.Stake{s.ground.Stakes[2*part.First-2]}
			return block.Block{Name: "work", Gap: stakeGap, Facts: s.figuresTold(t), Body: block.Framed{Pen: paper.Thin, Blocks: []block.Block{block.Paragraph(text), {Gap: 2, Body: s.step(t, 0, doing(t.Action)(s.words, t))}}}}
		}
	}
	return block.Paragraph(text)
}
