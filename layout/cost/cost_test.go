package cost_test

import (
	"math"
	"testing"
	"time"

	"hoopwright/layout/catalog"
	"hoopwright/layout/cost"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// read is a spec of four arches with a section more.
func read(t *testing.T, more string) *spec.Spec {
	t.Helper()
	s, err := spec.Read("walk.yaml", []byte("hoopwright: 1\ntitle: T\ncurrency: USD\ntunnel: {arches: 4, spacing: 4 ft}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}\n"+more))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// bill is a shopping list that is added up by hand below.
var bill = stock.List{Total: 8*4 + 3*9 + 2*6, Assumed: 2 * 6, Shopping: []stock.Item{
	{Item: "pipe", Kind: stock.PipeStick, Need: 9, Spare: 1, Buy: 8, Price: 4, Priced: true},    // 10 % of 8 at 4: 3.20
	{Item: "set", Kind: stock.LightString, Need: 21, Spare: 1, Buy: 3, Price: 9, Priced: true},  // of 20 at 9
	{Item: "ties", Kind: stock.ZipTies, Need: 2, Buy: 2, Price: 6, Priced: true, Assumed: true}, // both: 12
	{Item: "paint", Kind: stock.MarkingPaint, Need: 1, Buy: 1},
	{Item: "box", Kind: stock.PlugBox, Need: 1, Buy: 0, Price: 25, Priced: true}, // lasts
}}

func money(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// TestMoney adds up by hand. The power is as published for household lights: 500 W, 12 h, 40 days at 0.10: 24; 35 W, 5 h, 30 days at 0.11: 0.58.
func TestMoney(t *testing.T) {
	glow := []lights.String{{Kind: "set", Label: catalog.String{Lamp: catalog.Incandescent}}}
	for _, c := range []struct {
		name, more       string
		kWh              float64
		strings          []lights.String
		power, wears     float64
		assumed          float64 // of next year's
		share            float64 // of strings
		measured, nobody bool
	}{
		{"priced", "power: {evenings: {price: 0.10}}", 240, nil, 24, 3.20 + 18 + 12, 12, .10, false, false},
		{"little", "power: {evenings: {price: 0.11}}", 5.25, glow, .58, 3.20 + 45 + 12, 12, .25, false, false},
		{"free", "power: {evenings: {price: 0}}", 240, nil, 0, 3.20 + 18 + 12, 12, .10, false, false},
		{"assumed", "", 240, nil, 48, 3.20 + 18 + 12, 12 + 48, .10, false, false},
		{"died", "power: {evenings: {price: 0}}\nlights: {strings: {set: {length: 20 ft, bulbs: 50, watts: 4 W}}}\nstock: {own: [{item: set, count: 16, dead: 4}, {item: set, count: 4}]}", 240, nil, 0, 3.20 + 36 + 12, 12, .20, true, false},
	} {
		got := cost.Of(cost.Input{Spec: read(t, c.more), Stock: bill, Strings: c.strings, KWh: c.kWh})
		money(t, c.name+", to buy", got.Bought.Money, 71)
		money(t, c.name+", of it assumed", got.Bought.Assumed, 12)
		money(t, c.name+", an arch", got.PerArch, 17.75)
		money(t, c.name+", power", got.Power.Money, c.power)
		money(t, c.name+", next year", got.NextYear.Money, c.power+c.wears)
		money(t, c.name+", of that assumed", got.NextYear.Assumed, c.assumed)
		if got.Bought.Unpriced != 1 || got.NextYear.Unpriced != 1 || len(got.Wears) != 3 {
			t.Errorf("%s: without price %d, %d; %d wear out", c.name, got.Bought.Unpriced, got.NextYear.Unpriced, len(got.Wears))
		}
		for _, w := range got.Wears {
			if w.Item == "set" && (math.Abs(float64(w.Share)-c.share) > 1e-9 || w.Measured != c.measured) {
				t.Errorf("%s: strings wear out by %v, measured %v", c.name, w.Share, w.Measured)
			}
		}
	}
	yen := read(t, "")
	yen.Currency = "JPY"
	if got := cost.Of(cost.Input{Spec: yen, KWh: 240}); got.Power.Money != 0 || got.Power.Unpriced != 1 {
		t.Errorf("power in yen: %+v", got.Power)
	}
}

// TestHours adds up by hand: four people for six hours on the day, an evening of three for two hours before, the light-up of two for half an hour; one night's checks of one
// person for 40 minutes, 30 nights; two people for three hours take it down.
func TestHours(t *testing.T) {
	plan := crew.Plan{Kept: 90, Tasks: []crew.Task{
		{Phase: crew.Nights, Minutes: 40, Who: crew.Who{People: 1}}, {Phase: crew.TakeDown, Minutes: 180, Who: crew.Who{People: 2}}, {Phase: crew.Raising, Minutes: 999}},
		Schedule: crew.Schedule{Hands: 4, Takes: 6 * 60, Marked: 1, Days: []crew.Workday{{Date: time.Time{}}, {}}, Jobs: []crew.Job{
			{Work: crew.MarkGround, Stints: []crew.Stint{{Day: 0, Begin: 18 * 60, End: 20 * 60, Hands: []int{0, 1, 2}}}},
			{Work: crew.LightUp, Stints: []crew.Stint{{Day: 1, Begin: 17 * 60, End: 17*60 + 30, Hands: []int{0, 1}}}}}}}
	got := cost.Of(cost.Input{Spec: read(t, "power: {evenings: {nights: 30, price: 0}}"), Crew: plan}).Hours
	money(t, "building", got.Building, 4*6+3*2+2*.5)
	money(t, "nights", got.Nights, 20)
	money(t, "taking down", got.TakeDown, 6)
	money(t, "kept", got.Kept, 1.5)
	money(t, "all", got.All(), 31+20+6)
}
