package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// fetchWords name what is brought: from home, and what the crews of the nights and of the taking down have from the box.
var fetchWords = map[crew.Thing]string{
	crew.LongTape: "long tape", crew.ShortTape: "short tape", crew.StringLine: "builder’s line", crew.Bricks: "brick", crew.PlumbBob: "plumb bob", crew.Pencil: "pencil", crew.Phone: "phone",
	crew.TicketPaper: "locating ticket", crew.Hammer: "sledge", crew.Level: "level", crew.Driver: "cordless driver, bit, pilot drill", crew.ColouredTape: "coloured tape", crew.LuggageScale: "luggage scale",
	crew.StakeGrip: "pipe wrench", crew.Saw: "fine saw", crew.Clamp: "clamp", crew.Scraper: "scraper", crew.Marker: "marker", crew.Tarp: "tarp", crew.Mallet: "mallet",
	crew.Trestles: "trestle", crew.Cutters: "cutters", crew.RejectBag: "reject bag", crew.Bucket: "bucket", crew.Gloves: "gloves", crew.EyeProtection: "eye protection",
	crew.Stepladder: "stepladder", crew.Screwdriver: "screwdriver", crew.File: "file", crew.OpeningSticks: "opening sticks", crew.Lamp: "test lamp", crew.Torch: "flashlight",
	crew.CrownStick: "crown stick", crew.Kettle: "kettle of warm water", crew.WindMeter: "wind meter", crew.Thermometer: "thermometer",
	crew.Mats: "mud mat", crew.Barriers: "barrier", crew.BarrierNet: "garden net", crew.FirstAid: "first-aid kit", crew.Boxes: "box", crew.Bags: "bag", crew.Caps: "cap", crew.SpareCap: "spare cap", crew.Lanterns: "battery lantern", crew.Ribbon: "ribbon", crew.RibbonPosts: "free-standing ribbon post",
}

// fetched says a thing with its count and its length.
func fetched(n crew.Need, u measure.System) string {
	words := fetchWords[n.Thing]
	switch n.Thing {
	case crew.EyeProtection: // and gloves, which come before it
		return fmt.Sprintf("%s for %d", words, n.Count)
	case crew.Cutters, crew.Gloves:
		return words
	}
	if n.Count > 1 {
		words = say.Count(n.Count, words)
	}
	switch {
	case n.Length <= 0:
	case n.Thing == crew.LongTape || n.Thing == crew.StringLine || n.Thing == crew.Mats || n.Thing == crew.Barriers || n.Thing == crew.BarrierNet:
		words += " of " + stock.Sold(n.Length, u)
	case n.Thing == crew.Stepladder:
		words += " of " + u.Room(practice.Stepladder(u, n.Length))
	case n.Thing == crew.CrownStick:
		words += " of laths, " + u.Room(n.Length)
	}
	return words
}

// brought lists what the crew of some phases brings: from home, or all of it where nobody brings what is bought any more.
func brought(p *layout.Plan, all bool, phases ...crew.Phase) (words []string) {
	list := p.Crew.Kit(phases...)
	for i, n := range list {
		switch {
		case !all && n.Thing.Source() != crew.Fetched:
		case n.Thing == crew.OpeningSticks && i > 0 && list[i-1].Thing == n.Thing: // one word for both
		default:
			words = append(words, fetched(n, p.Spec.Units))
		}
	}
	return words
}

// bringFacts are the figures of what a crew brings.
func bringFacts(crew string, things []string) (facts []block.Fact) {
	for i, thing := range things {
		facts = append(facts, block.Fact{What: fmt.Sprintf("to bring, %s, %d", crew, i+1), Value: thing})
	}
	return facts
}

// kit is what one crew brings.
type kit struct {
	crew   string
	phases []crew.Phase
	things []string
}

// kits are what the crews bring up to the lights: first what the shed gives. Who raises hangs as well. What others bring stands on their own sides.
func kits(p *layout.Plan) []kit {
	driving := "Driving"
	if !drives(p) {
		driving = "Feet"
	}
	list := []kit{{"Marking", []crew.Phase{crew.Marking}, nil}, {driving, []crew.Phase{crew.Driving}, nil}, {"Cutting", []crew.Phase{crew.Cutting}, nil}, {"Wrapping", []crew.Phase{crew.Wrapping}, nil}, {"Raising", []crew.Phase{crew.Raising, crew.Hanging}, nil}, {"Power", []crew.Phase{crew.Powering}, nil}}
	for i := range list {
		list[i].things = brought(p, false, list[i].phases...)
		if list[i].crew == "Cutting" {
			list[i].things = append(list[i].things, forTheSaw(p)...)
		}
		if p.Crew.AfterSunset(list[i].phases...) {
			list[i].things = append(list[i].things, "work light")
		}
	}
	list = append([]kit{{"From the shed", nil, fromShed(p)}}, list...)
	return slices.DeleteFunc(list, func(k kit) bool { return len(k.things) == 0 })
}

// forTheSaw is what bars take besides what tasks name, and the laths that are cut for who tries the way.
func forTheSaw(p *layout.Plan) (things []string) {
	if slices.ContainsFunc(p.Cuts.Bars, func(b stock.Bar) bool { return !b.Whole() }) {
		things = append(things, "dust masks", "ear protection")
	}
	if slices.ContainsFunc(p.Cuts.Bars, func(b stock.Bar) bool { return b.Steel() && !b.Whole() }) {
		things = append(things, "hacksaw", "flat file", "leather gloves")
	}
	var sticks []string
	for _, n := range p.Crew.Kit(crew.Hanging) {
		if n.Thing == crew.OpeningSticks {
			sticks = append(sticks, p.Spec.Units.Room(n.Length))
		}
	}
	for _, n := range p.Crew.Kit(crew.Cutting) {
		if n.Thing == crew.Lath {
			things = append(things, fmt.Sprintf("%s for opening sticks, %s", say.Count(n.Count, "lath"), strings.Join(sticks, ", ")))
		}
	}
	return things
}

// fromShed lists what is owned of what is needed: what belongs to wrapped legs comes with them.
func fromShed(p *layout.Plan) (words []string) {
	if n := legsCame(p); n > 0 {
		joined := ""
		if slices.ContainsFunc(p.Cuts.Bars, func(b stock.Bar) bool { return b.Wrapped && b.Pieces[0].ID.Of > 1 }) {
			joined = ", couplings on"
		}
		words = append(words, say.Count(n, "wrapped leg")+joined)
	}
	for _, i := range p.Shopping {
		if n := min(i.Need, i.Own) - i.Wrapped; n > 0 {
			name := itemName(i, p.Spec, "")
			if slices.ContainsFunc(p.Cuts.Bars, func(b stock.Bar) bool { return b.Pieces[0].Joined && b.Item == i.Of && b.Stock == i.Length }) {
				name = "cemented legs, " + stock.Sold(i.Length, p.Spec.Units)
			}
			text := fmt.Sprintf("%d %s", n, strings.Replace(name, ", ", " of ", 1))
			if longer := i.StandInWords(p.Spec.Units); longer != "" {
				text += " (take " + longer + ")"
			}
			words = append(words, text)
		}
	}
	return words
}

// fetching is what has to be brought, by the crew that carries it.
func fetching(p *layout.Plan) []block.Block {
	var list []block.Block
	var facts []block.Fact
	var all []string
	for _, k := range kits(p) {
		text := fmt.Sprintf("%s: %s.", block.Figure(k.crew), strings.Join(k.things, ", "))
		list, all = append(list, block.Block{Gap: 0.8, Body: setSmall(text)}), append(all, text)
		facts = append(facts, bringFacts(k.crew, k.things)...)
	}
	if len(list) == 0 {
		return nil
	}
	list = append(list, block.Block{Gap: 0.8, Body: setSmall(fmt.Sprintf("%s: leaf %d’s list, cost extra.", block.Figure("Nights"), leafNumber("nights")))})
	return titled("Fetch by crew: strike once loaded", block.Block{Name: "to fetch", Gap: 0.5, Body: block.Columns{Cols: []block.Column{{Share: 1, Blocks: list}}}, Short: setSmall(strings.Join(all, " ")), Facts: facts})
}

func setSmall(text string) block.Words {
	return block.Words{Text: text, Lettering: paper.Floor, Figures: paper.Strong.Sized(11)}
}
