package packet

import (
	"fmt"
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// moved sets what follows when a stake will not go down where it should: how far it may stand from its dot each way, and what that changes. The distances are
// our own choice; what a wider foot does to the crown is solved.
func (w *stakeWords) moved() {
	along, guy := measure.By(w.units, 3*measure.Inch, 75), measure.By(w.units, measure.Foot, 300)
	var rows []place.Row
	row := func(way string, upTo, then string) { rows = append(rows, place.Row{Cells: []string{way, upTo, then}}) }
	if upTo, then, ok := w.movedAcross(); ok {
		row("Across the walk", w.units.Inches(upTo), then)
	}
	if len(w.b.plan.Ridge) > 0 {
		row("Along the row", w.units.Inches(along), "Move its pair too. Cut the ridge pieces beside it only when the crowns stand: one longer by as much, one shorter.")
	} else if !w.lone() {
		row("Along the row", w.units.Inches(along), "Move its pair too. Nothing is cut.")
	}
	if w.thenGuys() != "" {
		row("A guy stake", w.units.Inches(guy), "Never into the walk. Tie the guy to suit.")
	}
	t := place.Table{Columns: []place.Column{{Head: "From its dot", Width: 36}, {Head: "Up to", Lettering: paper.CellSmall, Width: 24}, {Head: "What then (write it under “As built”)"}}}
	w.step("A stake will not go down: drive it beside the hole. Up to " + w.limit() + " off its dot changes nothing. Never cut it, bend it or leave it short. Farther than this: stop and ask.")
	w.table(t, rows)
	w.gap(2.5)
}

// movedAcross says how far a leg's stake may stand across the walk from its dot, and what the crown does then: no farther than the headroom has to spare.
func (w *stakeWords) movedAcross() (upTo measure.Length, then string, ok bool) {
	var most *arch.Kind // of the commonest kind
	for _, k := range w.b.plan.Kinds {
		if most == nil || len(k.Numbers) > len(most.Numbers) {
			most = k
		}
	}
	if most == nil {
		return 0, "", false
	}
	m, ok := most.Moves()
	if !ok || m.By <= 0 || m.Wider.Crown >= 0 {
		return 0, "", false
	}
	step := measure.By(w.units, measure.Inch/4, 5)
	drop := -float64(m.Wider.Crown / m.By)
	spare := most.Clear - w.b.spec.Tunnel.OpeningHeight
	upTo = min(m.By, step*measure.Length(math.Floor(float64(spare/step)/drop)))
	if upTo <= ground.CheckLimit(w.units) {
		return 0, "", false
	}
	return upTo, fmt.Sprintf("Outward lowers the crown %s, inward lifts it.", w.units.Inches(upTo*measure.Length(drop))), true
}
