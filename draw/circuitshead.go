package draw

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
)

// head draws the row that stands over an outlet's rows, or over those that nothing feeds.
func (c Circuits) head(b *place.Board, box paper.Rect, r plugRow) {
	x := box.X + trunk(0)
	if r.kind == againRow || r.kind == onRow {
		b.Page.Text(paper.Point{X: box.X, Y: box.Y + plugHigh/2 + 1.6}, paper.AtLeft, strings.Join(append([]string{r.outlet.Name}, r.path...), ", ")+r.kind.goesOn(), paper.Strong)
		if r.kind == againRow {
			c.trunks(b.Page, box, r, box.Bottom()-againLead)
		}
		return
	}
	b.Page.Line(paper.Point{X: box.X, Y: box.Y + 1.6}, paper.Point{X: box.Right(), Y: box.Y + 1.6}, paper.Emphasis)
	y := box.Y + 4
	for _, line := range outletName.Wrap(headline(r), headName) {
		b.Page.Text(paper.Point{X: box.X, Y: y + outletName.Ascent()}, paper.AtLeft, line, outletName)
		y += outletName.Leading()
	}
	c.said(r).Draw(b.Page, paper.Rect{X: box.X + headWords, Y: box.Y + 3.6, W: box.W - headWords})
	if r.kind == outletRow {
		OutletSymbol(b, paper.Point{X: x, Y: box.Y + 3}, paper.Point{Y: 1})
		b.Page.Line(paper.Point{X: x, Y: box.Y + 8.7}, paper.Point{X: x, Y: box.Bottom()}, paper.Thick)
	}
}

// goesOn says that a row's outlet goes on on the next side, or does so from the one before.
func (k rowKind) goesOn() string {
	if k == onRow {
		return " goes on: next side"
	}
	return ", from the side before"
}

// trunks draws the lines that come down to what is plugged in at a row: those that pass it and its own.
func (c Circuits) trunks(page *paper.Page, box paper.Rect, r plugRow, from paper.Length) {
	for level, on := range append(slices.Clone(r.pass), true) {
		if on {
			page.Line(paper.Point{X: box.X + trunk(level), Y: from}, paper.Point{X: box.X + trunk(level), Y: box.Bottom()}, paper.Thick)
		}
	}
}

// said is what is said of an outlet: its breaker with what it carries of what it may for hours, its timer, where it is tested and reset.
func (c Circuits) said(r plugRow) block.Words {
	if r.kind == darkRow {
		return block.Words{Text: "Leave these unplugged, and tell the organiser.", Lettering: paper.Floor}
	}
	if r.kind != outletRow {
		return block.Words{Lettering: paper.Floor}
	}
	const blank = "_________"
	var circuit power.Circuit
	for _, k := range c.plan.Power.Circuits {
		if k.Name == r.outlet.Circuit {
			circuit = k
		}
	}
	text := fmt.Sprintf("Breaker %s (%s): %s.", block.Figure(cmp.Or(circuit.Spec.BreakerNo, blank)), measure.Amps(circuit.Spec.Breaker), c.load(r.outlet, circuit))
	for _, l := range c.plan.Power.Limits(r.outlet) {
		if l.Kind == power.TimerAmps {
			text += " Timer: " + LimitWords(l) + "."
		}
	}
	text += "\nTEST, RESET: "
	switch {
	case !circuit.Spec.GFCI:
		text += "on a portable " + measure.By(c.plan.Spec.Units, "GFCI", "RCD") + ", first in the outlet."
	case r.outlet.ResetAt != "":
		text += r.outlet.ResetAt + "."
	default:
		text += "at outlet or breaker? " + blank + "."
	}
	text += fmt.Sprintf(" Also feeds: %s.", cmp.Or(r.outlet.AlsoFeeds, blank))
	return block.Words{Text: text, Lettering: paper.Floor, Figures: paper.CellSmall}
}

// load says what an outlet's lights take of what its breaker carries for hours, with whatever else is on that breaker.
func (c Circuits) load(o spec.Outlet, circuit power.Circuit) string {
	var lights measure.Current
	for _, d := range c.plan.Power.Feeders {
		if d.Outlet == o.Name {
			lights += d.Amps
		}
	}
	words := measure.Amps(lights) + " lights"
	if other := circuit.Amps - lights; other > 0.005 {
		words += " + " + measure.Amps(other) + " other"
	}
	return words + ", of " + measure.Amps(circuit.Allowed)
}
