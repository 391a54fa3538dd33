package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/measure"
)

// stored is a line of what comes down and is kept: what it is, how many there are.
type stored struct {
	item  string
	count int
	keep  string // how it is bundled and stored, as the take-down names it
	named bool   // each has a name: stakes
}

// inventory lists what the tunnel is made of as it stands: pieces as cut, fittings, stakes, strings as they hang, cords. What is used up is left out.
func (b *binder) inventory() []stored {
	u := b.spec.Units
	var list []stored
	add := func(item string, count int, keep string) {
		if count > 0 {
			list = append(list, stored{item: item, count: count, keep: keep})
		}
	}
	for _, like := range alike(b.plan.Stock.Pieces) {
		if like.sort.Steel {
			continue // counted below, from the ground
		}
		keep := "pair"
		if like.sort.Ridge() {
			keep = "ridge"
		}
		add(fmt.Sprintf("%s, %s %s", like.sort.Noun(), like.item, u.Cut(like.pieces[0].Length)), len(like.pieces), keep)
	}
	for _, it := range b.plan.Shopping {
		if it.Fitting {
			add(it.Item, it.Need, "box")
		}
	}
	for _, d := range b.stakeKinds() {
		list = append(list, stored{fmt.Sprintf("%s %s", d.what, u.Inches(d.length)), d.count, "stakes", true})
	}
	add("stake cap", len(b.plan.Stakes), "stakes")
	_, guys := b.stakeCounts()
	add("guy with its tightener", guys, "box")
	for _, kind := range b.stringKinds() {
		add("string "+kind.item, kind.count, "lights")
	}
	for _, c := range b.plan.Power.Lots {
		name := fmt.Sprintf("cord %s, %s", strings.ReplaceAll(c.Name, "mm2", "mm²"), u.Room(c.Length))
		if c.Sockets > 1 {
			name = fmt.Sprintf("%s, %s, %d sockets", strings.ReplaceAll(c.Name, "mm2", "mm²"), u.Room(c.Length), c.Sockets)
		}
		add(name, c.Count, "cords")
	}
	add("three-way", len(b.plan.Power.Taps), "cords")
	add("low-voltage supply", b.plan.Power.Supplies, "cords")
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
		if s.Guy {
			what = "guy stake"
		}
		if s.Bay > 0 {
			what = "peg"
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

// keeping says how each kind of thing is bundled, labelled and stored.
func (b *binder) keeping() []danger {
	kept := map[string]bool{}
	for _, it := range b.inventory() {
		kept[it.keep] = true
	}
	all := []struct {
		keep string
		d    danger
	}{
		{"pair", danger{"Legs", "arch by arch, tied at both ends and the middle, tag with its number at the foot.", "Lay them straight and flat on three supports, under cover, out of the sun, nothing on top."}},
		{"ridge", danger{"Ridge pieces", "one bundle in the order of the bays.", "Store with the legs."}},
		{"box", danger{"Fittings, guys", "wiped, looked at for cracks; each guy coiled with its tightener.", "In one box with this packet."}},
		{"stakes", danger{"Stakes, caps", "scraped, dried, oiled, caps on, bundled by length.", "Lying down, points to the wall."}},
		{"lights", danger{"Light strings", "a day indoors to dry, coiled loosely, ends together, one to a bag with its leg or row; dead ones apart.", "No frost, nothing heavy on them."}},
		{"cords", danger{"Cords, taps", "dried, coiled loosely, never round the elbow; label at the plug: length, where it lay.", "Hung up. A damaged one is cut through and thrown away."}},
	}
	var list []danger
	for _, k := range all {
		if kept[k.keep] {
			list = append(list, k.d)
		}
	}
	return list
}
