package packet

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// stakesLeaf puts every stake on its spot: in front the plan to scale with the tapes, behind what to do. A long tunnel goes on in further plans.
func stakesLeaf(b *binder) []folio {
	_, body := b.newSide(false)
	return newStakeLeaf(b.plan, body).folios()
}

// stakeLeaf makes the leaf of the marking and driving crew.
type stakeLeaf struct {
	ground ground.Layout
	spec   *spec.Spec
	units  measure.System
	words  taskWords
	tasks  []crew.Task // of marking and driving
	dots   []ground.Dot
	dotOf  map[ground.StakeID]ground.Dot // of each stake its own
	checks []ground.Check
	body   paper.Rect // the room of a side
	parts  []stakePart
	finest float64 // the scale that all plans share is no finer

	driving []block.Block // the work from the stop box on, once a further plan has asked for it

	guysOut, guysLeg measure.Length // how far guy stakes of inner arches stand from the line and from their legs, where all are alike; else 0
}

// stakePart is what one plan shows: some of the arches.
type stakePart struct {
	*stakeLeaf
	ground.TapeLength
	tape   ground.TapeLength  // the arches that its tape reaches, from the tape's zero on
	number int                // of the plan, from 1
	stakes []ground.Stake     // those on its picture
	tabled []ground.CheckKind // those whose figures found no place on the plan
}

// newStakeLeaf readies the leaf of a plan for sides with such room.
func newStakeLeaf(plan *layout.Plan, body paper.Rect) *stakeLeaf {
	u := plan.Spec.Units
	s := &stakeLeaf{ground: plan.Ground, spec: plan.Spec, units: u, dots: plan.Ground.Marking(u), checks: plan.Ground.Checks(u), body: body}
	s.words = taskWords{plan, u, func(mark string) string {
		return draw.MarkLetter(slices.IndexFunc(s.ground.Marks, func(m ground.Mark) bool { return m.Name == mark }))
	}}
	for _, t := range plan.Crew.Tasks {
		if t.Phase == crew.Marking || t.Phase == crew.Driving {
			s.tasks = append(s.tasks, t)
		}
	}
	s.dotOf = map[ground.StakeID]ground.Dot{}
	for _, d := range s.dots {
		if d.Spot.Kind == ground.AtStake {
			s.dotOf[s.ground.Stakes[d.Spot.Index].StakeID] = d
		}
	}
	s.guysOut, s.guysLeg = s.innerGuys()
	s.parts = s.stretches()
	s.share(s.parts)
	return s
}

// folios are the sheets of paper. Behind the first plan stands the order of work; a plan that holds all that is worked from there takes the back of one before that does so too.
func (s *stakeLeaf) folios() (list []folio) {
	free := false // the last back
	for _, p := range s.parts {
		f := p.best()
		plan := side{title: p.title(f.plan.Scale), toScale: true, blocks: f.front}
		switch alone := len(f.back) == 0; {
		case alone && free:
			list[len(list)-1].back, free = plan, false
		default:
			list = append(list, folio{front: plan, back: side{title: p.title(paper.Scale{}), blocks: f.back}})
			free = alone
		}
	}
	return list
}

// title is a plan's title with its scale.
func (p stakePart) title(scale paper.Scale) string {
	title := groundOf(p.words.plan).leaf
	if len(p.parts) > 1 {
		title += fmt.Sprintf(" %d of %d", p.number, len(p.parts))
	}
	if scale.Ratio > 0 {
		title += fmt.Sprintf(" (1:%v)", scale.Ratio)
	}
	return title
}

// byRow reports whether dots are found along two straight rows.
func (s *stakeLeaf) byRow() bool { return s.words.byRow() }

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

// on reports whether a spot is at a stake on the part's picture; no mark is.
func (p stakePart) on(x ground.Spot) bool {
	return x.Kind != ground.AtMark && slices.ContainsFunc(p.stakes, func(s ground.Stake) bool { return s.StakeID == p.ground.Stakes[x.Index].StakeID })
}

// mostRows is how many rows a table of tapes has at most.
const mostRows = 25

// stretches parts the tunnel into plans: every tape's length, the whole of a bend, into the fewest that fit a side each with a name at every stake, or nearly all do, as even as whole bays
// allow, cut at arches whose bays hold no other arch's guy stakes.
func (s *stakeLeaf) stretches() (list []stakePart) {
	tapes := s.ground.TapeLengths(s.units)
	if n := len(s.ground.Stations); len(tapes) == 0 && n > 0 {
		tapes = []ground.TapeLength{{First: 1, Last: n}}
	}
	for _, tape := range tapes {
		var best []stakePart
		most := math.MaxInt
		for count := 1; count == 1 || count <= tape.Last-tape.First && count*partWeight < most; count++ {
			parts := s.cut(tape, count, len(list))
			if w := s.weight(parts); w < most {
				best, most = parts, w
			}
		}
		list = append(list, best...)
	}
	return list
}

// partWeight is what a further plan weighs, in bays on a plan that does not fit.
const partWeight = 2

// weight is how many plans there are and how much stands on those that do not fit: some never do, however short, and the others are not parted for their sake. A stake
// without a name weighs more than a plan: one more is worth it where that gives it room.
func (s *stakeLeaf) weight(parts []stakePart) (w int) {
	var fit []stakePart
	for _, p := range parts {
		w += partWeight
		if p.byRow() && len(p.rows()) > mostRows || !p.arranged().fits {
			w += 1 + p.Last - p.First
		} else if p.guyedWithin() {
			fit = append(fit, p)
		}
	}
	s.share(fit)
	for _, p := range fit {
		if n := p.nameless(); n > 0 {
			w += 1 + min(partWeight*n, p.Last-p.First)
		}
	}
	s.finest = 0
	return w
}

// share lets no plan be finer than the coarsest of them: they are laid together.
func (s *stakeLeaf) share(parts []stakePart) {
	s.finest = 0
	coarsest := 0.0
	for _, p := range parts {
		coarsest = max(coarsest, p.arranged().plan.Scale.Ratio)
	}
	s.finest = coarsest
}

// guyedWithin reports whether an arch on the part that is at no end of the tunnel has guys: elsewhere every stake has room for its name.
func (p stakePart) guyedWithin() bool {
	return slices.ContainsFunc(p.stakes, func(x ground.Stake) bool { return x.Guy && p.inner(x) })
}

// nameless is how many stakes have no room for their names.
func (p stakePart) nameless() int {
	_, lacks := p.tried(func(s stakeSheet) []string { return s.plan.Nameless(s.picture) })
	return len(lacks)
}

// cut parts a tape's length into so many plans, numbered on from those before.
func (s *stakeLeaf) cut(tape ground.TapeLength, count, before int) (parts []stakePart) {
	bays, first := tape.Last-tape.First, tape.First
	for i := 1; i <= count; i++ {
		last := tape.First + bays*i/count
		if i < count {
			last = min(s.ground.CutAt(last, first+1, tape.Last-1), tape.Last)
		}
		if last > first || bays == 0 {
			stakes := draw.NewStakePlan(s.ground, s.spec, first, last).Stakes()
			parts = append(parts, stakePart{s, ground.TapeLength{First: first, Last: last}, tape, before + len(parts) + 1, stakes, nil})
			first = last
		}
	}
	return parts
}
