package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
)

// lightPlan makes the sheets of the wrapping crew: how to wind, a page for each different wrap, rows and drops in tables, and every string with its two ends.
func (b *binder) lightPlan() []leaf {
	if len(b.plan.Strings) == 0 {
		return nil
	}
	f := b.newFlow("For the wrapping crew: each string in its place, prongs and socket the right way.", b.lightKit())
	f.text("Test only on an outlet with "+withArticle(device(b.volts()))+"; wind with nothing plugged in. Cracked socket, bare wire, broken lamp: reject bag, no tape.", paper.Strong)
	f.gap(1)
	groups := b.wrapGroups()
	if len(groups) > 0 {
		f.windingSteps()
		f.fitAtTheEnd()
		f.findings("light")
		for _, g := range groups {
			f.wrapPage(g)
		}
	} else {
		f.findings("light")
	}
	f.rows()
	f.dropTable()
	f.strings()
	return f.leaves
}

// lightKit lists what the wrapping crew carries.
func (b *binder) lightKit() string {
	var names []string
	count := map[string]int{}
	for _, s := range b.plan.Strings {
		if count[s.Kind]++; count[s.Kind] == 1 {
			names = append(names, s.Kind)
		}
	}
	var kit []string
	for _, n := range names {
		kit = append(kit, fmt.Sprintf("%d × %s", count[n], n))
	}
	return strings.Join(kit, ", ") + fmt.Sprintf("; tags numbered S1 to S%d, two for each; %d zip ties; tape measure, flag tape, marker, two trestles, a lit outlet to test on.", len(b.plan.Strings), b.plan.Lights.Ties)
}

// windingSteps is the work on one length of pipe, in order.
func (f *flow) windingSteps() {
	f.checks("One length of pipe on two trestles, in this order", []check{
		{"Plug the string in by itself, look along it, unplug.", "Every bulb lit.", "Reject bag; take a spare."},
		{"Tag both ends with its number, name the pipe.", "As in the list on the last pages.", "Ask before winding."},
		{"Flag the pipe as drawn, all from its zero.", "Every flag at its figure.", "Measure again from the zero."},
		{"Tie the prongs where drawn. Wind the way of its side.", "Prongs at that end, turns as far apart as drawn.", "Wrong end: take it off, turn it round."},
		{"At each flag look which bulb you have.", "The bulb written there, give or take 2.", "Higher: turns too close, open them back to the last flag. Lower: close them."},
		{"Tie both ends and every third of the way.", "Bare beyond the stop that is drawn.", "Slide the last turns back."},
		{"Hold the first against its page, before the rest.", "It ends where drawn.", "See below."},
	})
}

// fitAtTheEnd says what to do with a string that does not end where it should.
func (f *flow) fitAtTheEnd() {
	hand := f.b.handHigh()
	f.heading("When the string does not end where drawn", 46)
	f.table(place.Table{Columns: []place.Column{{Head: "It ends", Width: 47}, {Head: "Do"}}}, []place.Row{
		{Cells: []string{"up to " + hand + " short", "Slide the last third of the turns wider until it ends where drawn. Never stretch it."}},
		{Cells: []string{"more than " + hand + " short", "Unwind to the last flag that was right, wind on wider. No flag right: measure the string, ask."}},
		{Cells: []string{"up to " + hand + " long", "Close the last turns, or lay the end back along the pipe and tie it."}},
		{Cells: []string{"more than " + hand + " long", "Unwind to the last flag that was right, wind on closer. Never cut a string."}},
	})
	f.gap(2)
}

// dropTable lists the drops, those alike and next to each other in one line.
func (f *flow) dropTable() {
	drops := f.b.plan.Lights.Drops
	if len(drops) == 0 {
		return
	}
	u := f.b.spec.Units
	numbers := map[string]int{}
	for _, s := range f.b.plan.Strings {
		numbers[s.Name] = s.Number
	}
	var lines []place.Row
	for i := 0; i < len(drops); {
		d := drops[i]
		last := i
		for last+1 < len(drops) && drops[last+1].Hang == d.Hang && u.Room(drops[last+1].Lowest) == u.Room(d.Lowest) {
			last++
		}
		var on []lights.Part
		var hung []numbered
		for _, one := range drops[i : last+1] {
			if !slices.Contains(on, one.On) {
				on = append(on, one.On)
			}
			hung = append(hung, numbered{"S", numbers[one.String], ""})
		}
		lines = append(lines, place.Row{Cells: []string{"", onParts(on), inRanges(hung), u.Inches(d.Hang), u.Room(d.Lowest), ""}})
		i = last + 1
	}
	f.heading("Drops", 40)
	f.text(fmt.Sprintf("Tie the string along the underside of the pipe. What is longer than its stretch is folded back along the pipe and tied. Nothing hangs lower than written, and nothing below %s over the way people walk; measure the lowest.", u.Room(f.b.spec.Tunnel.OpeningHeight)), paper.Body)
	f.gap(1)
	f.table(place.Table{Columns: []place.Column{
		{Head: "", Width: 9.5, Tick: true},
		{Head: "On"},
		{Head: "Strings"},
		{Head: "Hangs below the pipe", Lettering: paper.Cell, Align: paper.AtRight, Width: 30},
		{Head: "Lowest end above ground", Lettering: paper.Cell, Align: paper.AtRight, Width: 34},
		{Head: "As measured", Width: 28},
	}}, lines)
}

// onParts lists parts of one or more nouns by their numbers: arch 1, 8; ridge 1 to 7.
func onParts(parts []lights.Part) string {
	var nouns []string
	called := map[string][]lights.Part{}
	for _, p := range parts {
		noun := p.Kind.Noun()
		if called[noun] == nil {
			nouns = append(nouns, noun)
		}
		called[noun] = append(called[noun], p)
	}
	var words []string
	for _, n := range nouns {
		words = append(words, n+" "+partsInRanges(called[n]))
	}
	return strings.Join(words, "; ")
}
