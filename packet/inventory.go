package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
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
	named bool   // each has a name, and a box to tick on the leaf: stakes
	noun  string // it is counted by on a label
	use   string // tells it there from others of its noun: of one that is missing another of its kind is bought
}

// keeping is a way of bundling and storing.
type keeping int

// The ways, in the order they are told.
const (
	keptLegs keeping = iota
	keptRidge
	keptBox
	keptStakes
	keptBags
	keptLights
	keptCords // and what goes with them
)

// keptOf is how things of the buying list are kept, and the noun they are counted by on a label; what is not here is used up, or counted as it stands.
var keptOf = map[stock.Kind]stored{
	stock.Tee: {keep: keptBox, noun: "fitting"}, stock.Cross: {keep: keptBox, noun: "fitting"}, stock.Coupling: {keep: keptBox, noun: "fitting"}, stock.Bushing: {keep: keptBox, noun: "fitting"},
	stock.BraceClamp: {keep: keptBox, noun: "clamp"}, stock.BarSocket: {keep: keptBox, noun: "bar socket"}, stock.SandBag: {keep: keptBags, noun: "sandbag"}, stock.SoleBoard: {keep: keptBags, noun: "sole board"}, stock.JointPlate: {keep: keptBags, noun: "joint plate"},
	stock.CordCover: {keep: keptCords, noun: "cord cover"}, stock.PlugCover: {keep: keptCords, noun: "cover"}, stock.SocketCover: {keep: keptCords, noun: "cover"},
	stock.Timer: {keep: keptCords, noun: "timer"}, stock.PortableGFCI: {keep: keptCords, noun: "portable GFCI"}, stock.PlugBox: {keep: keptCords, noun: "plug box"},
	stock.Lantern: {keep: keptCords, noun: "lantern"}, stock.Supply: {keep: keptCords, noun: "supply"},
}

// guyParts are what a guy is made of: they stay together.
const guyParts = "line, tightener, clamp"

// inventory lists what the tunnel is made of as it stands: legs and ridge pieces, fittings, stakes, strings as they hang, cords. What is used up is left out.
func inventory(p *layout.Plan) []stored {
	list := pipeKinds(p)
	add := func(item string, count int, keep keeping, noun string) {
		if count > 0 {
			list = append(list, stored{item: item, count: count, keep: keep, noun: noun})
		}
	}
	shopped := func(cords bool) {
		for _, it := range p.Shopping {
			if as, ok := keptOf[it.Kind]; ok && (as.keep == keptCords) == cords {
				name := it.Item
				if it.Unit == stock.Feet || it.Unit == stock.Metres {
					name = itemName(it, p.Spec, "")
				}
				add(name, comesOff(p, it), as.keep, as.noun)
			}
		}
	}
	shopped(false)
	guys, pegs := stakeCounts(p)
	caps := 0
	for _, d := range stakeKinds(p) {
		caps += d.count
		list = append(list, stored{item: d.what, count: d.count, keep: keptStakes, named: d.noun == "stake", noun: d.noun, use: d.use})
	}
	add("stake cap", caps, keptStakes, "cap")
	add("guy: "+guyParts, guys, keptBox, "guy")
	if p.Spec.Braces.Line {
		add("brace line, buckle, clamp", pegs, keptBox, "brace line")
	}
	add(crownLine, crownLines(p), keptBox, crownLine)
	add("net", used(p, crew.BarrierNet), keptBox, "net")
	on, off := stringsKept(p)
	for _, kind := range on {
		add(kind.item+", on its leg", kind.count, keptLegs, "string")
	}
	for _, kind := range off {
		use := "" // of more than two kinds the label has no room
		if len(off) <= 2 {
			use = "“" + kind.item + "”"
		}
		list = append(list, stored{item: "string " + kind.item, count: kind.count, keep: keptLights, noun: "string", use: use})
	}
	for _, c := range p.Power.Lots {
		name := fmt.Sprintf("cord %s %s", strings.ReplaceAll(c.Name, "mm2", "mm²"), stock.Sold(c.Length, p.Spec.Units))
		if c.Sockets > 1 {
			name += fmt.Sprintf(", %d sockets", c.Sockets)
		}
		add(name, c.Count, keptCords, "cord")
	}
	add("three-way", len(p.Power.Taps), keptCords, "three-way")
	shopped(true)
	return list
}

// comesOff counts what comes off of a line of the list: of couplings those at crowns, where cement holds the others.
func comesOff(p *layout.Plan, it stock.Item) (n int) {
	if it.Kind != stock.Coupling || p.Spec.Arch.Joints != spec.Glued {
		return it.Need - it.Spare
	}
	for _, a := range standingOf(p) {
		if p.Spec.CrownFitting(a.Number) == spec.Coupling && a.Spec.Pipe.Name == it.Of {
			n++
		}
	}
	return n
}

const crownLine = "crown line"

// crownLines is how many lines tie the crowns.
func crownLines(p *layout.Plan) (n int) {
	for _, i := range p.Shopping {
		for _, r := range i.Ropes {
			if r.Kind == stock.CrownRope {
				n += r.Count
			}
		}
	}
	return n
}

// used is how many of a thing raising takes.
func used(p *layout.Plan, thing crew.Thing) (n int) {
	for _, need := range p.Crew.Kit(crew.Raising) {
		if need.Thing == thing {
			n += need.Count
		}
	}
	return n
}

// countedWith adds a thing to those alike in a list, in the order they come.
func countedWith(list []stored, like stored) []stored {
	k := slices.IndexFunc(list, func(s stored) bool { return s.item == like.item })
	if k < 0 {
		k, list = len(list), append(list, like)
	}
	list[k].count++
	return list
}

// mostLengths is how many lengths of leg sticks are counted apart; of more they are on their tags alone.
const mostLengths = 3

// pipeKinds counts the sticks of pipe as they are kept, by material, legs apart from ridge pieces and by their lengths.
func pipeKinds(p *layout.Plan) (list []stored) {
	lengths := map[string]bool{}
	for _, piece := range p.Stock.Kept {
		if id := piece.ID; !id.Steel && !id.Brace && !id.Ridge() {
			lengths[p.Spec.Units.Cut(piece.Length)] = true
		}
	}
	for _, piece := range p.Stock.Kept {
		if piece.ID.Steel {
			continue
		}
		like := stored{item: "leg stick", keep: keptLegs, noun: "stick"}
		if piece.Joined {
			like = stored{item: "cemented " + piece.ID.Noun(), keep: keptLegs, noun: piece.ID.Noun()}
		}
		switch {
		case piece.ID.Sort().Ridge():
			like = stored{item: "ridge piece", keep: keptRidge, noun: "piece"}
		case piece.ID.Brace:
			like = stored{item: "brace", keep: keptRidge, noun: "brace"}
		case len(lengths) > 1 && len(lengths) <= mostLengths:
			like.item += " " + p.Spec.Units.Cut(piece.Length)
		}
		if piece.Item != p.Spec.Arch.Pipe.Name { // the usual pipe needs no name
			like.item += ", " + piece.Item
		}
		list = countedWith(list, like)
	}
	return list
}

// stringsKept counts the strings that stay on their legs, and those that come off, by kind.
func stringsKept(p *layout.Plan) (on, off []stored) {
	keeps := crew.KeepsOn(p.Spec)
	stays := func(s lights.String) bool { return keeps && s.Run.Wound() && s.Run.IsLeg() }
	return stringKinds(p, stays), stringKinds(p, func(s lights.String) bool { return !stays(s) })
}

// stringKinds counts strings that hang, by kind, in the order they hang.
func stringKinds(p *layout.Plan, of func(lights.String) bool) (list []stored) {
	for _, s := range p.Strings {
		if of(s) {
			list = countedWith(list, stored{item: s.Kind, keep: keptLights})
		}
	}
	return list
}

// drives reports whether any stake is driven: bars in weighted feet are not.
func drives(p *layout.Plan) bool {
	return slices.ContainsFunc(p.Ground.Stakes, func(s ground.Stake) bool { return !s.Base })
}

// stakeKind is the stakes of one use and length.
type stakeKind struct {
	what, use, noun string
	length          measure.Length
	count           int
}

func stakeKinds(p *layout.Plan) (list []stakeKind) {
	for _, s := range p.Stakes {
		what, use, noun := "leg stake", "leg", "stake"
		switch {
		case !s.Steel():
			continue
		case s.Base:
			what, use, noun = "base bar", "", "bar"
		case s.Bay > 0:
			what, use = "brace stake", "brace"
		case s.Guy:
			what, use = "guy stake", "guy"
		}
		k := slices.IndexFunc(list, func(d stakeKind) bool { return d.what == what && d.length == s.Length })
		if k < 0 {
			k, list = len(list), append(list, stakeKind{what: what, use: use, noun: noun, length: s.Length})
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

// keptSo says how each kind of thing that there is is kept.
func keptSo(p *layout.Plan) []kept {
	there := map[keeping]bool{}
	for _, it := range inventory(p) {
		there[it.keep] = true
	}
	held := heldBy(p)
	braces, box, coiled, stakes, points, supplies := "", "Fittings", "", "Stakes, caps", ", points to the wall", ""
	if !drives(p) {
		stakes, points = "Bars, caps", ""
	}
	if held.braces && !p.Spec.Braces.Line {
		braces = ", braces too"
	}
	if held.guys {
		box, coiled = "Fittings, guys", ", lines coiled"
	}
	if p.Power.Supplies > 0 {
		supplies = "supplies too, "
	}
	return slices.DeleteFunc([]kept{
		legsKept(p),
		{keptRidge, "Ridge pieces", "one bundle, in their order" + braces + ", with the legs."},
		{keptBox, box, "wiped" + coiled + ". One box, all leaves on top."},
		{keptStakes, stakes, "scraped, caps on, lying down" + points + "."},
		{keptBags, "Sandbags, boards", "off the ground."},
		{keptLights, "Strings", "today spread indoors, tomorrow one to a bag; in boxes, tag on. Dark or damaged: one bag, counted. Above freezing."},
		{keptCords, "Cords, covers", supplies + "coiled; the rest with them, batteries out. One box."},
	}, func(k kept) bool { return !there[k.keep] })
}

// legsKept says how legs are kept, with their strings on or without, and what they ride home on.
func legsKept(p *layout.Plan) kept {
	const lie = "Flat on three supports, covered, nothing on top."
	legs := kept{keptLegs, "Legs", fmt.Sprintf("an arch a bundle, tied thrice, tagged (leaf %d). %s", leafNumber("tags"), lie)}
	if on, _ := stringsKept(p); len(on) > 0 {
		legs = kept{keptLegs, "Half arches, wrapped", fmt.Sprintf("one layer, plugs bagged, tagged. %s Next year: flex, look over, light %d minutes before raising. Strip them then.", lie, practice.MinutesBurn)}
		if saved := p.Cost.Hours.Kept; saved >= 1 {
			legs.how += fmt.Sprintf(" Saves %.0f hours.", saved)
		}
	}
	if long := longestKept(p); long > 0 {
		legs.how += " Loaded last: " + rides[practice.Rides(p.Spec.Units, long, pipeLoad(p))] + "."
	}
	return legs
}

// rides name what pipe rides on.
var rides = map[practice.Ride]string{practice.InCar: "car", practice.InVan: "van", practice.OnRoof: "roof rack", practice.OnTrailer: "long trailer"}

// longestKept is the longest pipe that goes to the shed: sticks, legs of several that were cemented, half arches where their strings stay on.
func longestKept(p *layout.Plan) (long measure.Length) {
	on, _ := stringsKept(p)
	for _, piece := range p.Stock.Kept {
		if !piece.ID.Steel {
			long = max(long, piece.Length)
		}
	}
	for _, a := range standingOf(p) {
		if len(on) > 0 && !a.Spec.OneStick {
			long = max(long, a.CrownTape, a.Length-a.CrownTape)
		}
	}
	return long
}
