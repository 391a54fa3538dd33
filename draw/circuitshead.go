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
	if r.kind == againRow || r.kind == onRow || r.kind == farRow {
		text := r.outlet.Name + " goes on: next side"
		switch r.kind {
		case againRow:
			text = r.outlet.Name + ", from the side before: lines down from " + strings.Join(r.above(), ", ")
		case farRow:
			text = r.outlet.Name + " goes on from " + r.path[0]
		}
		b.Page.Text(paper.Point{X: box.X, Y: box.Y + c.high/2 + 1.6}, paper.AtLeft, text, paper.Strong)
		if r.kind != onRow {
			trunks(b.Page, box, append(slices.Clone(r.pass), true), box.Bottom()-againLead) // those that pass it and its own
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
		outletSymbol(b, paper.Point{X: x, Y: box.Y + 3}, paper.Point{Y: 1})
		b.Page.Line(paper.Point{X: x, Y: box.Y + 8.7}, paper.Point{X: x, Y: box.Bottom()}, paper.Thick)
	}
}

// above names what the lines come down from, from left to right.
func (r plugRow) above() (names []string) {
	for level, thing := range r.path {
		if level == len(r.pass) || r.pass[level] {
			names = append(names, thing)
		}
	}
	return names
}

// trunks draws the lines that come down through a row's box, by level from the outlet.
func trunks(page *paper.Page, box paper.Rect, levels []bool, from paper.Length) {
	for level, on := range levels {
		if on {
			page.Line(paper.Point{X: box.X + trunk(level), Y: from}, paper.Point{X: box.X + trunk(level), Y: box.Bottom()}, paper.Thick)
		}
	}
}

// said is what is said of an outlet: its breaker, what is taken of its limits, where it is tested and reset, what else goes dark with it.
func (c Circuits) said(r plugRow) block.Words {
	words := block.Words{Lettering: paper.Floor, Figures: paper.CellSmall}
	switch r.kind {
	case darkRow:
		words.Text = "Leave these unplugged, and tell the organiser."
	case outletRow:
		const blank = "_________"
		circuit := c.plan.Power.Circuits[slices.IndexFunc(c.plan.Power.Circuits, func(k power.Circuit) bool { return k.Name == r.outlet.Circuit })]
		reset := "TEST, RESET are at: "
		if circuit.Spec.Volts >= 200 { // of an RCD in a board
			reset = "TEST, RESET (or lever up) are at: "
		}
		reset += cmp.Or(r.outlet.ResetAt, blank)
		if !circuit.Spec.GFCI {
			reset = "TEST, RESET: on a portable " + measure.By(c.plan.Spec.Units, "GFCI", "RCD") + ", first in the outlet"
		}
		breaker := block.Figure(circuit.Spec.BreakerNo)
		if circuit.Spec.BreakerNo == "" {
			breaker = blank + " (" + measure.Amps(circuit.Spec.Breaker) + ")"
		}
		if !slices.ContainsFunc(c.plan.Spec.Site.Places, func(p spec.SitePlace) bool { return p.For == spec.PowerOff }) {
			breaker += ", at " + blank
		}
		words.Text = fmt.Sprintf("Breaker %s. %s.\n%s.", breaker, MostTaken(c.plan.Power, r.outlet.Name), reset)
		if r.outlet.AlsoFeeds != "" {
			words.Text += " Also feeds: " + r.outlet.AlsoFeeds + "."
		}
	}
	return words
}

// MostTaken says what of an outlet comes nearest to what it may bear, how near, and what of that others take: of its breaker as it, for hours.
func MostTaken(plan power.Plan, outlet string) string {
	plug, circuit := power.Limit{}, ""
	for _, f := range plan.Feeders {
		if f.Outlet == outlet && f.Limit.Share() > plug.Share() {
			plug, circuit = f.Limit, f.Circuit
		}
	}
	switch plug.Kind {
	case power.NoLimit:
		return ""
	case power.TimerAmps:
		return "Timer carries " + LimitWords(plug)
	case power.CordAmps:
		return "Cord carries " + LimitWords(plug)
	}
	words := "It carries " + LimitWords(plug) + " for hours"
	k := slices.IndexFunc(plan.Circuits, func(c power.Circuit) bool { return c.Name == circuit })
	if other := plan.Circuits[k].Spec.OtherLoad; other > 0 {
		words += ", " + measure.Amps(other) + " not ours"
	}
	return words
}
