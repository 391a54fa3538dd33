package packet

import (
	"regexp"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// The garden's shopping list. By hand: 14 sticks at 4.35, 8 strings at 9.80 (13 less 5 owned), 6 at 6.40: 60.90 + 78.40 + 38.40 = 177.70. At assumed prices, each told: cords 17.25, 23.25, 34.50 and
// 2 at 12.75, a three-way at 7, 23 plug covers at 3, 12 socket covers at 0.50, 2 timers at 20, 2 lanterns at 12: 246.50, 424.20 in all.
func TestShoppingListOfTheGarden(t *testing.T) {
	plan := example(t, "garden.yaml")
	doc := sheetOf(t, plan, "shopping")
	words := said(doc)
	for _, want := range []string{"60.90", "78.40", "38.40", "Total, USD", "424.20", "price assumed", "The prices of 9 lines are assumed", "Spares counted: 5 %", "12 to hang, 1 spare", "Pipe and fittings", "Sundries", "label:", "13 A or more", "Stop and ask when"} {
		if !strings.Contains(words, want) {
			t.Errorf("the list does not say %q", want)
		}
	}
	// Each item is on it, with a box to tick.
	for _, item := range plan.Shopping {
		if !strings.Contains(words, strings.Fields(item.Item)[0]) {
			t.Errorf("no %s", item.Item)
		}
	}
	if got := tickBoxes(doc); got != len(plan.Shopping)-1 || !strings.Contains(words, "From the shed, nothing to buy: 2 of pvc sch40 1/2 in, 56 in.") {
		t.Errorf("%d boxes for %d items, of which the shed's offcuts are not bought", got, len(plan.Shopping))
	}
}

// An invented tunnel's only cord of 15 ft is served by one of 25 ft from the shed: the buyer is told to take that one.
func TestListSaysWhatStandsIn(t *testing.T) {
	b := &binder{spec: &spec.Spec{}, plan: &layout.Plan{Shopping: []stock.Item{{Item: "16 AWG 15 ft", Need: 1, Own: 1, Unit: stock.Each, StandIns: []stock.StandIn{{Count: 1, Length: 25 * measure.Foot}}}}}}
	if got := b.inShed(); got != "From the shed, nothing to buy: 1 of 16 AWG 15 ft (take 1 of 25 ft)." {
		t.Error(got)
	}
}

// The label table takes what the spec says of the school's strings: 10 m less 500 mm of lead is lit.
func TestLabelsOfTheSchool(t *testing.T) {
	words := said(sheetOf(t, example(t, "schoolyard.yaml"), "shopping"))
	if !regexp.MustCompile(`yard set 10 m label: 9.500.mm 10.000.mm 100 230 V 6 W 10 `).MatchString(words) {
		t.Errorf("the school's string is not as its spec says: %s", words)
	}
}

// Prices that are not known stay blank: nothing is invented, nothing is zero.
func TestItemRows(t *testing.T) {
	if row := itemRow(stock.Item{Item: "tee", Need: 3, Buy: 3, Unit: stock.Each}); row.Cells[5] != "" || row.Cells[6] != "" {
		t.Errorf("an unpriced item: %q", row.Cells)
	}
	if row := itemRow(stock.Item{Item: "guy line", Need: 44, Own: 10, Buy: 34, Unit: stock.Feet, Priced: true, Price: 0.2, Why: "4 guys"}); row.Cells[6] != "6.80" || row.Cells[1] != "guy line, feet" || row.Cells[4] != "34" || row.Note != "4 guys" {
		t.Errorf("%q, %q", row.Cells, row.Note)
	}
}

// What the spec owns and prices by the names it reads is what the list takes off and adds up: an invented tunnel of four arches on two tees and two crosses.
func TestListKnowsTheSpecsNames(t *testing.T) {
	plan := solved(t, []byte(`hoopwright: 1
title: Own and priced
units: imperial
tunnel: {arches: 4, spacing: 4 ft, opening: {width: 4 ft, height: 6 ft 6 in}}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 3 in}
ridge: {pipe: pvc sch40 3/4 in}
guys: {arches: [1, last], from: 6 ft, out: 5 ft}
site: {cords: {crossing: cover}, outlets: [{name: wall, at: [0 ft, 0 ft], circuit: wall, sockets: 1}]}
power: {circuits: {wall: {volts: 120 V, breaker: 15 A, gfci: true}}}
lights: {wraps: [{where: legs, string: mini led 100 warm, plug: foot}]}
stock:
  sell: [{item: cross pvc sch40 1/2 in, price: 1.20}, {item: zip ties 100, price: 3}, {item: "16 AWG", length: 15 ft, price: 7}, {item: plug cover, price: 4}, {item: line tightener, price: 0.9}, {item: cord cover, price: 19},
    {item: bushing pvc sch40 1/2 in to pvc sch40 3/4 in, price: 0.8}, {item: pvc sch40 1/2 in, length: 10 ft}, {item: pvc sch40 3/4 in, length: 10 ft}]
  own: [{item: tee pvc sch40 1/2 in, count: 2}, {item: three-way tap, count: 1}, {item: marking paint, count: 1}, {item: stake cap, count: 3}]
`))
	listed := map[string]stock.Item{}
	for _, i := range plan.Shopping {
		listed[i.Item] = i
	}
	for name, own := range map[string]int{"tee pvc sch40 1/2 in": 2, "three-way tap": 1, "marking paint": 1, "stake cap": 3} {
		if i := listed[name]; i.Own != own || i.Buy != i.Need-own {
			t.Errorf("%s: %+v, want %d owned", name, i, own)
		}
	}
	for name, price := range map[string]float64{"cross pvc sch40 1/2 in": 1.20, "zip ties 100": 3, "16 AWG 15 ft": 7, "plug cover": 4, "line tightener": 0.9, "cord cover": 19,
		"bushing pvc sch40 1/2 in to pvc sch40 3/4 in": 0.8} {
		if i := listed[name]; !i.Priced || i.Price != price {
			t.Errorf("%s: %+v, want it at %v", name, i, price)
		}
	}
}
