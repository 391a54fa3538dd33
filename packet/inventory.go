package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/measure"
	"hoopwright/layout/stock"
)

// stored is a line of what comes down and is kept: what it is, how many there are.
type stored struct {
	item  string
	count int
	keep  keeping
	named bool   // each has a name: stakes
	noun  string // it is counted by on its label
}

// keeping is a way of bundling and storing.
type keeping int

// The ways, in the order they are told.
const (
	keptLegs keeping = iota
	keptRidge
	keptBox
	keptStakes
	keptLights
	keptCords
)

// inventory lists what the tunnel is made of as it stands: legs and ridge pieces, fittings, stakes, strings as they hang, cords. What is used up is left out.
func (b *binder) inventory() []stored {
	var list []stored
	add := func(item string, count int, keep keeping, noun string) {
		if count > 0 {
			list = append(list, stored{item: item, count: count, keep: keep, noun: noun})
		}
	}
	for _, k := range b.pipeKinds() {
		add(k.item, k.count, k.keep, k.noun)
	}
	for _, it := range b.plan.Shopping {
		if it.Kind.Fitting() {
			add(it.Item, it.Need-it.Spare, keptBox, "fitting")
		}
	}
	caps := 0
	for _, d := range b.stakeKinds() {
		caps += d.count
		list = append(list, stored{item: d.what, count: d.count, keep: keptStakes, named: true, noun: "stake"})
	}
	add("stake cap", caps, keptStakes, "cap")
	_, guys, _ := stakeCounts(b.plan)
	add("guy with its tightener", guys, keptBox, "guy")
	for _, kind := range b.stringKinds() {
		add(kind.item, kind.count, keptLights, "string")
	}
	for _, c := range b.plan.Power.Lots {
		name := fmt.Sprintf("cord %s, %s", strings.ReplaceAll(c.Name, "mm2", "mm²"), b.spec.Units.Room(c.Length))
		if c.Sockets > 1 {
			name += fmt.Sprintf(", %d sockets", c.Sockets)
		}
		add(name, c.Count, keptCords, "cord")
	}
	add("three-way", len(b.plan.Power.Taps), keptCords, "three-way")
	add("low-voltage supply", b.plan.Power.Supplies, keptCords, "supply")
	for _, it := range b.plan.Shopping {
		if noun, ok := besideCords[it.Kind]; ok {
			add(it.Item, it.Need-it.Spare, keptCords, noun)
		}
	}
	return list
}

// besideCords is what is bought and kept with the cords, by the noun it is counted by.
var besideCords = map[stock.Kind]string{stock.CordCover: "cord cover", stock.PlugCover: "cover", stock.SocketCover: "cover", stock.Timer: "timer",
	stock.PortableGFCI: "portable GFCI", stock.PlugBox: "plug box", stock.Lantern: "lantern"}

// pipeKinds counts the sticks of pipe as cut, by material, legs apart from ridge pieces; their lengths are on their tags.
func (b *binder) pipeKinds() []stored {
	var list []stored
	for _, p := range b.plan.Stock.Pieces {
		if p.ID.Steel {
			continue
		}
		like := stored{item: "leg stick", keep: keptLegs, noun: "stick"}
		switch {
		case p.ID.Sort().Ridge():
			like = stored{item: "ridge piece", keep: keptRidge, noun: "piece"}
		case p.ID.Brace:
			like = stored{item: "brace", keep: keptRidge, noun: "brace"}
		}
		if p.Item != b.spec.Arch.Pipe.Name { // the usual pipe needs no name
			like.item += ", " + p.Item
		}
		k := slices.IndexFunc(list, func(s stored) bool { return s.item == like.item })
		if k < 0 {
			k = len(list)
			list = append(list, like)
		}
		list[k].count++
	}
	return list
}

// stakeKind is the stakes of one use and length.
type stakeKind struct {
	what   string
	length measure.Length
	count  int
}

func (b *binder) stakeKinds() []stakeKind {
	var list []stakeKind
	for _, s := range b.plan.Stakes {
		what := "leg stake"
		switch {
		case s.Base && s.Guy:
			continue // it ends on a weight
		case s.Base:
			what = "bar of a foot"
		case s.Bay > 0:
			what = "peg"
		case s.Guy:
			what = "guy stake"
		}
		k := 0
		for k < len(list) && (list[k].what != what || list[k].length != s.Length) {
			k++
		}
		if k == len(list) {
			list = append(list, stakeKind{what: what, length: s.Length})
		}
		list[k].count++
	}
	return list
}

// stringKinds counts the strings that hang, by kind, in the order they hang.
func (b *binder) stringKinds() []stored {
	var list []stored
	for _, s := range b.plan.Strings {
		k := 0
		for k < len(list) && list[k].item != s.Kind {
			k++
		}
		if k == len(list) {
			list = append(list, stored{item: s.Kind})
		}
		list[k].count++
	}
	return list
}

// kept is a kind of thing with how it is bundled, labelled and stored.
type kept struct {
	keep      keeping
	what, how string
}

// keeping says how each kind of thing that there is is kept.
func (b *binder) keeping() []kept {
	there := map[keeping]bool{}
	for _, it := range b.inventory() {
		there[it.keep] = true
	}
	braces := ""
	if h := heldBy(b.plan); h.braces && !b.spec.Braces.Line {
		braces = ", braces too"
	}
	box, how := "Fittings", "wiped. One box, these leaves on top."
	if heldBy(b.plan).guys {
		box, how = "Fittings, guys", "wiped, guys coiled. One box, these leaves on top."
	}
	return slices.DeleteFunc([]kept{
		{keptLegs, "Legs", "an arch to a bundle, tied at ends and middle, tagged. Flat on three supports, under cover, nothing on top."},
		{keptRidge, "Ridge pieces", "one bundle, in their order" + braces + ", with the legs."},
		{keptBox, box, how},
		{keptStakes, "Stakes, caps", "scraped, caps on, lying down, points to the wall."},
		{keptLights, "Strings", "dried a day indoors, one to a bag with its S-number. Dark or damaged: in a bag apart, counted. No frost."},
		{keptCords, "Cords", "hung up; covers and timers in a box."},
	}, func(k kept) bool { return !there[k.keep] })
}
