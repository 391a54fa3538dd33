package packet

import (
	"fmt"
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
