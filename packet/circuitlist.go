package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
)

// unfed is the sheet of a plan that nothing feeds: which figures are missing, and the chains as they would be.
func (b *binder) unfed() []leaf {
	if len(b.plan.Power.Chains) == 0 {
		return nil
	}
	f := b.newFlow("For the power crew: the strings plugged end to end. What feeds them is not known yet.", "")
	f.findings("circuit")
	f.heading("Still missing, before any cord can be chosen", 20)
	for _, line := range b.powerMissing() {
		f.text("·  "+line, paper.Body)
	}
	f.gap(2)
	f.text("Plug nothing in from this sheet. Fill in the spec and print it again.", paper.Strong)
	f.gap(2)
	f.facing()
	f.chainTable("The runs of strings", b.plan.Power.Chains)
	f.stopAndAsk()
	return f.leaves
}

// powerMissing says which figures the spec lacks.
func (b *binder) powerMissing() []string {
	var out []string
	if len(b.spec.Power.Circuits) == 0 {
		out = append(out, "power.circuits: for each circuit its volts, its breaker's amps, whether "+withArticle(device(b.volts()))+" protects it, what else hangs on it")
	}
	if len(b.spec.Site.Outlets) == 0 {
		out = append(out, "site.outlets: for each outdoor outlet its name, where it is, its circuit, where it is reset, what else it feeds")
	}
	if len(out) == 0 {
		out = append(out, "a circuit with an outlet that suits these strings: see the findings above")
	}
	return out
}

// leftDark lists the chains that nothing feeds though others are fed.
func (f *flow) leftDark() {
	var dark []power.Chain
	for _, c := range f.b.plan.Power.Chains {
		if c.Outlet == "" {
			dark = append(dark, c)
		}
	}
	if len(dark) > 0 {
		f.turn()
		f.chainTable("Runs that nothing feeds: leave them unplugged", dark)
	}
}

// chainTable lists chains with their strings.
func (f *flow) chainTable(heading string, chains []power.Chain) {
	at := map[string]string{}
	for _, s := range f.b.plan.Strings {
		at[s.Name] = s.From.At.String()
	}
	var rows []place.Row
	var watts measure.Power
	for _, c := range chains {
		watts += c.Watts
		rows = append(rows, place.Row{Cells: []string{"", c.Name, strings.Join(c.Strings, " → "), at[c.Strings[0]], measure.Watts(c.Watts), measure.Amps(c.Amps), measure.Volts(c.Volts)}})
	}
	rows = append(rows, place.Row{Total: true, Cells: []string{" ", "All", fmt.Sprintf("%d runs", len(chains)), "", measure.Watts(watts), "", ""}})
	f.heading(heading, 30)
	f.table(place.Table{Columns: []place.Column{
		{Head: "", Width: 9.5, Tick: true},
		{Head: "Chain", Lettering: paper.Cell, Width: 19},
		{Head: "Strings, first plug to last"},
		{Head: "First plug at", Width: 42},
		{Head: "Watts", Lettering: paper.CellSmall, Align: paper.AtRight, Width: 20},
		{Head: "Amps", Lettering: paper.CellSmall, Align: paper.AtRight, Width: 20},
		{Head: "Volts", Lettering: paper.CellSmall, Align: paper.AtRight, Width: 20},
	}}, rows)
}
