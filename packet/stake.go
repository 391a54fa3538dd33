package packet

import (
	"fmt"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// stakePlan makes the plan that puts every stake on its spot: the picture, to scale, over as many pages as it needs; how to mark, check and
// drive; the table of tapes with a row a stake.
func (b *binder) stakePlan() []leaf {
	w := b.newStakeWords()
	w.picture()
	w.marking()
	w.tapes()
	w.checks()
	w.whole(w.call)
	set := w.strip(false)
	w.whole(w.driving)
	if !set {
		w.strip(true)
	}
	return w.leaves
}

// newStakeWords begins the sheet.
func (b *binder) newStakeWords() *stakeWords {
	w := &stakeWords{b: b, ground: b.plan.Ground, units: b.spec.Units}
	w.flow = b.newFlow("Puts every stake on its spot. Two people with two tapes; a third reads out and writes.", "")
	return w
}

// stakeWords writes the stake plan's words.
type stakeWords struct {
	*flow
	b      *binder
	ground ground.Layout
	units  measure.System
	letter func(mark string) string
	number int // of the last step
}

// picture sets the plan over its pages.
func (w *stakeWords) picture() {
	plans := w.plans()
	w.letter = plans[0].Letter
	w.text(fmt.Sprintf("Begin with step 1 on stake plan %d.", len(plans)+1), paper.Body)
	for i, p := range plans {
		if i > 0 {
			w.turn()
		}
		w.scale(p.Scale)
		p.Draw(w.page, w.room)
		w.room.H = 0
	}
	w.turn()
}

// plans lays the picture out over its pages, a line of words over the first.
func (w *stakeWords) plans() []draw.StakePlan {
	room := w.room
	room.H -= paper.Body.Leading()
	return draw.StakePlans(w.ground, w.b.spec, room)
}

// tape prints a length as it is read off a tape.
func (w *stakeWords) tape(l measure.Length) string { return w.units.Tape(l) }

// limit prints how far a taped check may be off.
func (w *stakeWords) limit() string { return w.units.Inches(ground.CheckLimit(w.units)) }

// ends returns the four corner stakes: L1, R1 and the last L and R.
func (w *stakeWords) ends() (l1, r1, ln, rn ground.Stake) {
	n := len(w.ground.Stations)
	s := w.ground.Stakes
	return s[0], s[1], s[2*n-2], s[2*n-1]
}

// lone reports whether there is but one arch.
func (w *stakeWords) lone() bool { return len(w.ground.Stations) == 1 }

// tie returns the tapes that fix a stake.
func (w *stakeWords) tie(stake ground.StakeID) (ground.Tie, bool) {
	return w.ground.TieOf(stake, w.units)
}

// found says where the two tapes meet that a stake is found with, and which third tape checks it; nothing where no marks fix it.
func (w *stakeWords) found(stake ground.StakeID) string {
	t, ok := w.tie(stake)
	if !ok {
		return ""
	}
	how := fmt.Sprintf("%s from %s meets %s from %s", w.tape(t.A), w.mark(t.MarkA), w.tape(t.B), w.mark(t.MarkB))
	if t.MarkC != "" {
		return how + fmt.Sprintf(". Check: %s from %s, within %s.", w.tape(t.C), w.mark(t.MarkC), w.limit())
	}
	if side, ok := w.ground.SideOf(t); ok {
		how += fmt.Sprintf(", on your %s as you look from %s to %s", side, w.letter(t.MarkA), w.letter(t.MarkB))
	}
	return how + "."
}

// mark names a mark with its letter, which is not left alone at the end of a line.
func (w *stakeWords) mark(name string) string { return w.letter(name) + "\u00a0" + name }

// step sets the next numbered step.
func (w *stakeWords) step(text string) {
	w.number++
	w.tickStep(w.number, text)
}

// whole sets what fill sets on one page: this one if there is room for all of it, else a new one.
func (w *stakeWords) whole(fill func()) {
	f, number := w.flow, w.number
	h := f.height(f.room.W, func(trial *flow) {
		w.flow = trial
		fill()
	})
	w.flow, w.number = f, number
	w.need(h)
	fill()
}

// warning sets a warning in a thick frame; it comes before the step it is for.
func (w *stakeWords) warning(text string) {
	const pad, below = 2, 3
	lines := paper.Strong.Wrap(text, w.room.W-2*pad)
	r := w.take(paper.Length(len(lines))*paper.Strong.Leading() + 2*pad - 0.8 + below) // the last line's leading is room enough under it
	r.H -= below
	w.page.Stroke(paper.Box(r), paper.Thick)
	w.page.Paragraph(paper.Rect{X: r.X + pad, Y: r.Y + pad, W: r.W - 2*pad, H: r.H}, text, paper.Strong)
}
