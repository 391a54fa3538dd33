package packet

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/weather"
)

// stakeDepths is the table of the least depth at which the stakes hold, in still air and at the gusts that are acted on, for the organiser to choose a depth by.
func stakeDepths(plan *layout.Plan, f *flow) {
	w, u := plan.Weather, plan.Spec.Units
	if len(w.Bears) == 0 || w.Calm() {
		return
	}
	step := measure.By(u, measure.Inch, 10*measure.Millimetre)
	t := place.Table{Columns: []place.Column{{Head: "Least depth of stakes"}}}
	for _, s := range w.Bears {
		t.Columns = append(t.Columns, place.Column{Head: fmt.Sprintf("%s soil (%s)", s.Soil.Name, s.Soil.Assumed), Lettering: paper.Cell, Align: paper.AtRight, Width: 84 / paper.Length(len(w.Bears))})
	}
	var rows []place.Row
	row := func(name string, v measure.Speed) {
		cells := []string{name}
		for _, s := range w.Bears {
			cell := ""
			if deep, ok := w.Depth(s.Soil, v); ok {
				cell = u.Inches(measure.RoundUp(deep, step))
			}
			cells = append(cells, cell)
		}
		rows = append(rows, place.Row{Cells: cells})
	}
	row("in still air", 0)
	type actedOn struct {
		gust measure.Speed
		acts string
	}
	gusts := []actedOn{{w.Inside, ": nobody inside"}, {w.Down, ": the tunnel is down before"},
		{w.OpensTo(), ": then it may stay open up to forecast gusts of " + u.Speed(weather.InsideMost)}}
	slices.SortStableFunc(gusts, func(a, b actedOn) int { return cmp.Compare(a.gust, b.gust) })
	for _, g := range gusts {
		row("gusts of "+u.Speed(g.gust)+g.acts, g.gust)
	}
	f.heading("For the organiser: how deep the stakes go", t.Height(f.room.W, rows)+2*paper.Body.Leading())
	f.table(t, rows)
	f.gap(1)
	k := plan.Kinds[0]
	f.text(fmt.Sprintf("These go %s deep. Half as much again of load is reckoned with; where it is blank the arches fall first. Estimates: the pull test of the build steps tells more than they do.", u.Inches(k.Spec.Stake.Depth)), paper.Body)
	f.gap(1)
}
