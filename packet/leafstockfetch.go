package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// fetchWords name what is brought from home.
var fetchWords = map[crew.Thing]string{
	crew.LongTape: "tape", crew.ShortTape: "short tape", crew.StringLine: "line", crew.Bricks: "brick", crew.PlumbBob: "plumb bob", crew.Pencil: "pencil", crew.Phone: "phone",
	crew.TicketPaper: "locating ticket", crew.Hammer: "sledge", crew.Level: "level", crew.ColouredTape: "coloured tape", crew.LuggageScale: "luggage scale",
	crew.StakeGrip: "stake grip", crew.Saw: "fine-tooth saw", crew.Clamp: "clamp", crew.Scraper: "scraper", crew.Marker: "marker", crew.Tarp: "tarp", crew.Mallet: "rubber mallet",
	crew.Trestles: "trestle", crew.Cutters: "cutter", crew.RejectBag: "reject bag", crew.Bucket: "bucket",
	crew.Stepladder: "stepladder", crew.Screwdriver: "screwdriver", crew.File: "file", crew.OpeningSticks: "pipe opening stick", crew.Lamp: "test lamp", crew.Torch: "torch",
	crew.CrownStick: "crown stick", crew.Kettle: "kettle of warm water",
	crew.Barriers: "barrier", crew.BarrierNet: "net", crew.FirstAid: "first-aid kit", crew.Bags: "bag", crew.Tags: "tag",
}

// fetchedAs names a thing without its count.
func fetchedAs(t crew.Thing) string {
	switch t {
	case crew.Gloves:
		return "gloves"
	case crew.EyeProtection:
		return "eye protection"
	case crew.TestOutlet:
		return "outlet that trips"
	}
	return fetchWords[t]
}

// fetched says a thing with its count and its length.
func fetched(n crew.Need, u measure.System) string {
	switch n.Thing {
	case crew.Gloves:
		return fmt.Sprintf("gloves for %d", n.Count)
	case crew.EyeProtection:
		return fmt.Sprintf("eye protection for %d", n.Count)
	case crew.TestOutlet:
		return measure.By(u, "GFCI outlet", "RCD outlet")
	case crew.Cutters:
		return "cutters"
	}
	words := fetchWords[n.Thing]
	if n.Count > 1 {
		words = say.Count(n.Count, words)
	}
	switch {
	case n.Length <= 0:
	case n.Thing == crew.LongTape || n.Thing == crew.Barriers || n.Thing == crew.BarrierNet:
		words += " of " + stock.Sold(n.Length, u)
	case n.Thing == crew.Stepladder:
		words += " of " + u.Room(practice.Stepladder(u, n.Length))
	case n.Thing == crew.Saw:
		words += ", blade " + u.Cut(n.Length)
	case n.Thing == crew.OpeningSticks || n.Thing == crew.CrownStick:
		words = u.Room(n.Length) + " " + words
	}
	return words
}

// crewNames call the crews on paper.
var crewNames = map[crew.Phase]string{
	crew.Marking: "Marking", crew.Driving: "Driving", crew.Cutting: "Cutting", crew.Wrapping: "Wrapping", crew.Raising: "Raising", crew.Hanging: "Hanging",
	crew.Powering: "Power", crew.Nights: "Nights", crew.TakeDown: "Take-down",
}

// toAll is by how many crews a thing is used to be told once, for every crew.
const toAll = 4

// carried is what one crew brings; the phase is empty for what every crew does.
type carried struct {
	phase crew.Phase
	needs []crew.Need
	more  []string // things that no task names
}

// kitOf lists the phases that one crew brings its things for: who raises hangs as well.
func kitOf(phase crew.Phase) []crew.Phase {
	if phase == crew.Raising {
		return []crew.Phase{crew.Raising, crew.Hanging}
	}
	return []crew.Phase{phase}
}

// kits are what each crew brings besides what is bought, all that its tasks use; first what many do, so that it is told once.
func (b *binder) kits() []carried {
	var list []carried
	users := map[crew.Thing]int{}
	most := map[crew.Thing]crew.Need{}
	for _, phase := range crew.Phases() {
		if phase == crew.Hanging {
			continue // the raising crew hangs
		}
		c := carried{phase: phase}
		for _, n := range b.plan.Crew.Kit(kitOf(phase)...) {
			if n.Thing.Source() != crew.Fetched {
				continue
			}
			c.needs = append(c.needs, n)
			users[n.Thing]++
			if n.Count > most[n.Thing].Count {
				most[n.Thing] = n
			}
		}
		if len(c.needs) == 0 {
			continue
		}
		if slices.ContainsFunc(c.needs, func(n crew.Need) bool { return n.Thing == crew.Saw }) {
			c.more = []string{"dust masks", "ear protection"}
			if b.cutsSteel() {
				c.more = append(c.more, "hacksaw", "flat file", "leather gloves")
			}
		}
		list = append(list, c)
	}
	shared := func(n crew.Need) bool { return users[n.Thing] >= toAll && n.Length == 0 } // of tapes each crew has its own
	var every carried
	for _, thing := range crew.Things() {
		if n, ok := most[thing]; ok && shared(n) {
			every.needs = append(every.needs, most[thing])
		}
	}
	for i := range list {
		list[i].needs = slices.DeleteFunc(list[i].needs, shared)
	}
	if len(every.needs) > 0 {
		list = slices.Insert(list, 0, every)
	}
	return slices.DeleteFunc(list, func(c carried) bool { return len(c.needs)+len(c.more) == 0 })
}

// fetching is what has to be brought, by the crew that carries it, in two columns.
func (b *binder) fetching() []block.Block {
	var list []block.Block
	var facts []block.Fact
	var all []string
	var loaded []crew.Need
	for _, c := range b.kits() {
		name := crewNames[c.phase]
		if c.phase == "" {
			name = "Every crew"
		}
		var things []string
		for _, n := range c.needs {
			if later := c.phase == crew.Powering || c.phase == crew.Nights || c.phase == crew.TakeDown; later && slices.ContainsFunc(loaded, func(o crew.Need) bool { return o.Thing == n.Thing && o.Count >= n.Count && o.Length >= n.Length }) {
				continue // there since the build
			}
			loaded = append(loaded, n)
			things = append(things, fetched(n, b.spec.Units))
			facts = append(facts, block.Fact{What: fmt.Sprintf("to fetch, %s, %s %d", name, fetchedAs(n.Thing), len(things)), Value: fetched(n, b.spec.Units)})
		}
		if things = append(things, c.more...); len(things) == 0 {
			continue
		}
		text := fmt.Sprintf("%s: %s", block.Figure(name), strings.Join(things, ", "))
		list = append(list, block.Block{Name: "to fetch", Gap: 0.8, Body: setSmall(text)})
		all = append(all, text)
	}
	if len(list) == 0 {
		return nil
	}
	return titled("Fetch: strike out", block.Block{Name: "to fetch", Gap: 0.5, Body: inColumns(list, b.bodyWidth(), 4), Short: setSmall(strings.Join(all, ". ")), Facts: facts})
}

func setSmall(text string) block.Words {
	return block.Words{Text: text, Lettering: paper.Floor, Figures: paper.Strong.Sized(11)}
}

// inColumns sets blocks in two columns of about the same height.
func inColumns(list []block.Block, width, gap paper.Length) block.Columns {
	half := (width - gap) / 2
	most := func(i int) paper.Length { return max(block.Height(list[:i], half), block.Height(list[i:], half)) }
	best := 0
	for i := range list {
		if most(i) < most(best) {
			best = i
		}
	}
	return block.Columns{Gap: gap, Cols: []block.Column{{Share: 1, Blocks: list[:best]}, {Share: 1, Blocks: list[best:]}}}
}

// cutsSteel reports whether steel is cut.
func (b *binder) cutsSteel() bool {
	return slices.ContainsFunc(b.plan.Cuts.Bars, func(bar stock.Bar) bool { return bar.Steel() && !bar.Whole() })
}
