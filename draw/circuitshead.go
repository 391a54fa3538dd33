package draw

import (
	"fmt"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
)

// head draws the row that stands over an outlet's rows, or over those that nothing feeds.
func (c Circuits) head(b *place.Board, box paper.Rect, r plugRow) {
	x := box.X + trunk(0)
	if r.kind == againRow {
		base := box.Y + plugHigh/2 + 1.6
		b.Page.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, r.outlet.Name+" goes on: "+strings.Join(append([]string{"outlet"}, r.path...), ", "), paper.Strong)
		return
	}
	b.Page.Line(paper.Point{X: box.X, Y: box.Y + 1.6}, paper.Point{X: box.Right(), Y: box.Y + 1.6}, paper.Emphasis)
	y := box.Y + 4
	for _, line := range outletName.Wrap(headline(r), headName) {
		b.Page.Text(paper.Point{X: box.X, Y: y + outletName.Ascent()}, paper.AtLeft, line, outletName)
		y += outletName.Leading()
	}
	c.said(r).Draw(b.Page, paper.Rect{X: box.X + headWords, Y: box.Y + 3.6, W: c.headRoom(r, box.W)})
	for i, l := range c.headLimits(r) {
		b.Page.Text(paper.Point{X: box.Right(), Y: box.Y + 3.6 + paper.Floor.Ascent() + paper.Floor.Leading()*paper.Length(i)}, paper.AtRight, l, paper.Floor)
	}
	if r.kind == outletRow {
		OutletSymbol(b, paper.Point{X: x, Y: box.Y + 3}, paper.Point{Y: 1})
		b.Page.Line(paper.Point{X: x, Y: box.Y + 8.7}, paper.Point{X: x, Y: box.Bottom()}, paper.Thick)
	}
}

// headLimits are what the circuit of an outlet carries of what it may for hours, and its timer.
func (c Circuits) headLimits(r plugRow) (list []string) {
	if r.kind != outletRow {
		return nil
	}
	for _, l := range c.plan.Power.Limits(r.outlet) {
		switch l.Kind {
		case power.BreakerAmps:
			list = append(list, LimitWords(l))
		case power.TimerAmps:
			list = append(list, "timer "+LimitWords(l))
		}
	}
	return list
}

// headRoom is how wide the words on an outlet may be.
func (c Circuits) headRoom(r plugRow, width paper.Length) paper.Length {
	limits := paper.Length(0)
	for _, l := range c.headLimits(r) {
		limits = max(limits, paper.Floor.Width(l)+limitGap)
	}
	return width - headWords - limits
}

// said is what is said of an outlet: its breaker, where it is reset, what else it feeds.
func (c Circuits) said(r plugRow) block.Words {
	if r.kind == darkRow {
		return block.Words{Text: "Leave these unplugged, and tell the organiser.", Lettering: paper.Floor}
	}
	if r.kind != outletRow {
		return block.Words{Lettering: paper.Floor}
	}
	blank := func(s string) string {
		if s == "" {
			return "_________"
		}
		return s
	}
	var circuit power.Circuit
	for _, k := range c.plan.Power.Circuits {
		if k.Name == r.outlet.Circuit {
			circuit = k
		}
	}
	breaker := blank(circuit.Spec.BreakerNo)
	text := fmt.Sprintf("Breaker %s, %s. %s reset: %s. Also feeds: %s.", block.Figure(breaker), measure.Amps(circuit.Spec.Breaker),
		c.device(circuit), blank(r.outlet.ResetAt), blank(r.outlet.AlsoFeeds))
	return block.Words{Text: text, Lettering: paper.Floor, Figures: paper.CellSmall}
}

// device is what protects people at an outlet, by the name of its world.
func (c Circuits) device(k power.Circuit) string {
	device := measure.By(c.plan.Spec.Units, "GFCI", "RCD")
	if !k.Spec.GFCI {
		return "Portable " + device + " first in the outlet,"
	}
	return device
}
