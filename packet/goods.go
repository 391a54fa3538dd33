package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// stores are the headings of the places where things are bought.
var stores = map[string]string{
	"pipe": "Pipe and fittings", "steel": "Steel", "lights": "Light strings", "electrical": "Electrical, outdoors", "sundries": "Sundries",
}

// goods are what the buying list calls things that go by no name of the catalog.
var goods = map[stock.Kind]string{
	stock.ZipTies: fmt.Sprintf("zip ties, pack of %d", stock.InBag), stock.WriteOnTags: fmt.Sprintf("write-on tags, pack of %d", stock.InBag), stock.ThreeWay: "three-way tap", stock.Timer: "timer", stock.Ribbon: "ribbon (flagging)", stock.Tee: "tee", stock.Cross: "cross", stock.Coupling: "coupling",
}

// wanted is what tells the right thing in the shop from the wrong one.
var wanted = map[stock.Kind]string{
	stock.Tee: "plain sockets", stock.Cross: "plain sockets", stock.Supply: "of the strings' make", stock.PlugBox: "lockable",
	stock.MarkingPaint: "white", stock.ThreeWay: "three wires", stock.PipeStick: "plain ends", stock.PlugCover: "round a joint",
}

// rightOne is what tells the right thing in the shop from the wrong one; empty where the name says it all.
func rightOne(i stock.Item, s *spec.Spec) string {
	u := s.Units
	switch i.Kind {
	case stock.GuyLine:
		return measure.By(u, "1/8 in", "3 mm") + ", bright; for " + ropes(i.Ropes, u)
	case stock.ExtensionCord:
		for _, c := range s.Power.Inline {
			if c.Name() == i.Item {
				return stock.Sold(c.Apart, u) + " apart"
			}
		}
	case stock.CordCover:
		return "to be walked over: " + coverLengths(i.Lengths, u)
	case stock.GuyClamp:
		return "pipe of " + u.Size(s.Arch.Pipe.OD)
	case stock.BraceClamp:
		from, to := stock.BandRound(s.Arch.Pipe.OD, s.Braces.Peg.Bar.Diameter), stock.BandRound(s.Arch.Pipe.OD, s.Arch.Pipe.OD)
		return "each closes to " + u.Cut(measure.RoundUp(from, u.Grid())-u.Grid()) + " and opens past " + u.Cut(measure.RoundUp(to, u.Grid())) + ", else half small, half large"
	case stock.Webbing:
		return measure.By(u, "1 in", "25 mm") + "; for " + ropes(i.Ropes, u) + ", a buckle each"
	case stock.SoleBoard:
		return fmt.Sprintf("%s wide, plywood %s thick; %s", u.Inches(s.Base().Width), u.Inches(practice.BoardThick(u)), boardsSaid(i.Rows, u))
	case stock.JointPlate:
		return fmt.Sprintf("of sole board, %s square, over each joint: %d screws", u.Inches(s.Base().Width), practice.PlateScrews)
	case stock.BarSocket:
		return "a flange that the bar of " + s.Arch.Stake.Bar.Name + fmt.Sprintf(" enters, ribs too, with %d screws", practice.SocketScrews)
	case stock.SandBag:
		return u.Mass(practice.Bag(u).Mass()) + " filled, with handles"
	case stock.ZipTies:
		return measure.By(u, "8 in", "200 mm")
	case stock.PipeStick:
		return wanted[i.Kind] + ownPipe(i.Of, s)
	case stock.ReadyStake:
		if drivesSome(s) {
			return "pointed"
		}
	case stock.Timer:
		words := measure.Amps(i.Amps) + " or more"
		if i.Plugs > 1 {
			words = say.Count(i.Plugs, "socket") + ", " + words
		}
		return words
	case stock.Lath:
		return "straight, " + stock.Sold(practice.Lath(u), u)
	}
	return wanted[i.Kind]
}

// ownPipe tells a pipe of the spec's own by its sizes, and by what its stiffness was taken for; nothing of one that the catalog has.
func ownPipe(item string, s *spec.Spec) string {
	if _, known := catalog.FindPipe(item); known {
		return ""
	}
	pipe, key := s.Arch.Pipe, "arch.pipe"
	for i, e := range s.Except {
		if e.Arch.Pipe.Name == item {
			pipe, key = e.Arch.Pipe, fmt.Sprintf("arch.except[%d].pipe", i)
		}
	}
	if s.Ridge.Pipe.Name == item && pipe.Name != item {
		pipe, key = s.Ridge.Pipe, "ridge.pipe"
	}
	of := "rigid PVC"
	if s.Given(key + ".modulus") {
		of = "material as organiser says"
	}
	return fmt.Sprintf(", %s outside, %s wall, %s", s.Units.Size(pipe.OD), s.Units.Size(pipe.Wall), of)
}

// drivesSome reports whether any arch stands on driven stakes: bars of weighted feet need no point.
func drivesSome(s *spec.Spec) bool {
	for n := range s.Tunnel.Arches {
		if s.ArchOf(n+1).Foot == nil {
			return true
		}
	}
	return false
}

// rebar is what stores call a bar.
func rebar(item string) string {
	bar, ok := catalog.FindBar(item)
	switch {
	case !ok:
		return item
	case bar.Number > 0:
		return fmt.Sprintf("rebar #%d (%s)", bar.Number, bar.Name)
	}
	return "rebar " + bar.Name
}

// ropes says what a coil of line is for.
func ropes(list []stock.Rope, u measure.System) string {
	var words []string
	for _, r := range list {
		name := crownLine
		if r.Kind != stock.CrownRope || r.Count > 1 {
			name = say.Count(r.Count, map[stock.RopeKind]string{stock.GuyRope: "guy", stock.CrownRope: crownLine, stock.DownRope: "tie-down", stock.BraceRope: "brace line"}[r.Kind])
		}
		words = append(words, name+" of "+stock.Sold(r.Length, u))
	}
	return strings.Join(words, ", ")
}

// coverLengths counts covers by their lengths.
func coverLengths(list []measure.Length, u measure.System) string {
	var words []string
	for len(list) > 0 {
		n := 1
		for n < len(list) && list[n] == list[0] {
			n++
		}
		words, list = append(words, fmt.Sprintf("%d of %s", n, stock.Sold(list[0], u))), list[n:]
	}
	return strings.Join(words, ", ")
}

// ForWhat says what tells the right thing in the shop from the wrong one, and which longer things of the shed stand in for it; empty where the name says it all.
func ForWhat(i stock.Item, s *spec.Spec) string {
	var words []string
	if w := rightOne(i, s); w != "" {
		words = append(words, w)
	}
	if longer := i.StandInWords(s.Units); longer != "" {
		words = append(words, "from the shed "+longer)
	}
	return strings.Join(words, "; ")
}

// itemName is what the list calls an item. One that goes by its material is called by its length alone under a heading that names it.
func itemName(i stock.Item, s *spec.Spec, material string) string {
	u, bar := s.Units, i.Kind == stock.SteelBar || i.Kind == stock.ReadyStake
	name := strings.ReplaceAll(i.Item, "mm2", "mm²")
	switch {
	case i.Sockets > 0:
		name = fmt.Sprintf("cord %s %s, %d sockets", strings.ReplaceAll(i.Of, "mm2", "mm²"), stock.Sold(i.Length, u), i.Sockets)
	case i.Kind == stock.ExtensionCord:
		name = "cord " + name
	case i.Of == material && i.Of != "" && i.Kind.Fitting():
		name = goods[i.Kind]
	case bar && i.Of != material:
		name = rebar(i.Of) + ", " + stock.Sold(i.Length, u)
	case i.Kind == stock.SteelBar || i.Kind == stock.ReadyStake && !drivesSome(s):
		name = "bar, " + stock.Sold(i.Length, u)
	case i.Of == material && i.Of != "":
		name = map[stock.Kind]string{stock.PipeStick: "stick, ", stock.ReadyStake: "stake, "}[i.Kind] + stock.Sold(i.Length, u)
	case !i.Kind.Fitting() && goods[i.Kind] != "":
		name = goods[i.Kind]
	}
	switch i.Unit {
	case stock.Feet:
		name = "ft of " + name
	case stock.Metres:
		name = "m of " + name
	}
	return name
}

// materialOf is the one material that all of a store's things go by, or empty.
func materialOf(list []stock.Item, where string) string {
	material := ""
	for _, i := range list {
		switch {
		case i.Where != where || i.Of == "" || i.Kind == stock.ExtensionCord:
		case material == "":
			material = i.Of
		case i.Of != material:
			return ""
		}
	}
	return material
}

// boardsSaid says what each row of sole boards is made of, from arch 1 on: "950 mm, 4 of 1.5 m, 950 mm".
func boardsSaid(rows stock.BoardRows, u measure.System) string {
	row := func(boards []measure.Length) string {
		var words []string
		for i := 0; i < len(boards); {
			n, word := i, stock.Sold(boards[i], u)
			for n < len(boards) && stock.Sold(boards[n], u) == word {
				n++
			}
			if n > i+1 {
				word = fmt.Sprintf("%d of %s", n-i, word)
			}
			words, i = append(words, word), n
		}
		return strings.Join(words, ", ")
	}
	left, right := row(rows[spec.Left]), row(rows[spec.Right])
	if left == right {
		return "a row from arch 1 on: " + left
	}
	return "from arch 1 on left: " + left + "; right: " + right
}
