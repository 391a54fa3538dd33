package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// stored is a line of what comes down and is kept: what it is, how many there are.
type stored struct {
	item  string
	count int
	keep  keeping
	named bool // each has a name: stakes
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

// Items that are counted apart from what they are kept with.
const (
	itemCap      = "stake cap"
	itemGuy      = "guy with its tightener"
	itemThreeWay = "three-way"
)

// inventory lists what the tunnel is made of as it stands: legs and ridge pieces, fittings, stakes, strings as they hang, cords. What is used up is left out.
func (b *binder) inventory() []stored {
	var list []stored
	add := func(item string, count int, keep keeping) {
		if count > 0 {
			list = append(list, stored{item: item, count: count, keep: keep})
		}
	}
	for _, k := range b.pipeKinds() {
		add(k.item, k.count, k.keep)
	}
	for _, it := range b.plan.Shopping {
		if it.Kind.Fitting() {
			add(it.Item, it.Need-it.Spare, keptBox)
		}
	}
	caps := 0
	for _, d := range b.stakeKinds() {
		caps += d.count
		list = append(list, stored{item: d.what, count: d.count, keep: keptStakes, named: true})
	}
	add(itemCap, caps, keptStakes)
	_, guys, _ := stakeCounts(b.plan)
	add(itemGuy, guys, keptBox)
	on, off := b.stringsKept()
	for _, kind := range on {
		add(kind.item+", on its leg", kind.count, keptLegs)
	}
	for _, kind := range off {
		add(kind.item, kind.count, keptLights)
	}
	for _, c := range b.plan.Power.Lots {
		name := fmt.Sprintf("cord %s, %s", strings.ReplaceAll(c.Name, "mm2", "mm²"), b.spec.Units.Room(c.Length))
		if c.Sockets > 1 {
			name += fmt.Sprintf(", %d sockets", c.Sockets)
		}
		add(name, c.Count, keptCords)
	}
	add(itemThreeWay, len(b.plan.Power.Taps), keptCords)
	add("low-voltage supply", b.plan.Power.Supplies, keptCords)
	for _, it := range b.plan.Shopping {
		switch it.Kind {
		case stock.CordCover, stock.PlugCover, stock.SocketCover, stock.Timer, stock.PortableGFCI, stock.PlugBox, stock.Lantern:
			add(it.Item, it.Need-it.Spare, keptCords)
		}
	}
	return list
}

// pipeKinds counts the sticks of pipe as cut, by material, legs apart from ridge pieces; their lengths are on their tags.
func (b *binder) pipeKinds() []stored {
	var list []stored
	for _, p := range b.plan.Stock.Pieces {
		if p.ID.Steel {
			continue
		}
		like := stored{item: "leg stick", keep: keptLegs}
		switch {
		case p.ID.Sort().Ridge():
			like = stored{item: "ridge piece", keep: keptRidge}
		case p.ID.Brace:
			like = stored{item: "brace", keep: keptRidge}
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

// stringsKept counts the strings that stay on their legs, and those that come off, by kind.
func (b *binder) stringsKept() (on, off []stored) {
	keeps := crew.KeepsOn(b.spec)
	stays := func(s lights.String) bool { return keeps && s.Run.Wound() && s.Run.IsLeg() }
	return b.stringKinds(stays), b.stringKinds(func(s lights.String) bool { return !stays(s) })
}

// stringKinds counts strings that hang, by kind, in the order they hang.
func (b *binder) stringKinds(of func(lights.String) bool) []stored {
	var list []stored
	for _, s := range b.plan.Strings {
		if !of(s) {
			continue
		}
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
	legs := kept{keptLegs, "Legs", "an arch to a bundle, tied at ends and middle, tagged. Flat on three supports, under cover, nothing on top."}
	if on, _ := b.stringsKept(); len(on) > 0 {
		legs = kept{keptLegs, "Half arches, wrapped", fmt.Sprintf("one layer, plugs bagged, tagged. Flat on three supports, under cover, nothing on top. Next year: flex, look over, light %d minutes before raising. Strip them then.", practice.MinutesBurn)}
		if saved := b.plan.Cost.Hours.Kept; saved >= 1 {
			legs.how += fmt.Sprintf(" Saves %.0f hours.", saved)
		}
	}
	if long := b.longestKept(); long > 0 {
		legs.how += " Loaded last: " + rides[practice.Rides(b.spec.Units, long)] + "."
	}
	return slices.DeleteFunc([]kept{
		legs,
		{keptRidge, "Ridge pieces", "one bundle, in their order" + braces + ", with the legs."},
		{keptBox, box, how},
		{keptStakes, "Stakes, caps", "scraped, caps on, lying down, points to the wall."},
		{keptLights, "Strings", "dried a day indoors, one to a bag with its S-number. Dark or damaged: apart, counted. No frost."},
		{keptCords, "Cords", "hung up; covers and timers in a box."},
	}, func(k kept) bool { return !there[k.keep] })
}

// rides name what pipe rides on.
var rides = map[practice.Ride]string{practice.InCar: "car", practice.InVan: "van", practice.OnRoof: "roof rack", practice.OnTrailer: "long trailer"}

// longestKept is the longest pipe that goes to the shed: sticks, half arches where their strings stay on, whole arches where joints are glued.
func (b *binder) longestKept() (long measure.Length) {
	on, _ := b.stringsKept()
	for _, p := range b.plan.Stock.Pieces {
		if !p.ID.Steel {
			long = max(long, p.Length)
		}
	}
	for _, a := range b.standing() {
		switch half := max(a.CrownTape, a.Length-a.CrownTape); {
		case b.spec.Arch.Joints == spec.Glued:
			long = max(long, a.Length)
		case len(on) > 0 && !a.Spec.OneStick:
			long = max(long, half)
		}
	}
	return long
}
