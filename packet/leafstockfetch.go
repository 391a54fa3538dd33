package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// fetchWords name what is brought from home: one, so many; a noun with %s has its length there.
var fetchWords = map[crew.Thing]string{
	crew.LongTape: "tape of %s", crew.ShortTape: "short tape", crew.StringLine: "ground line", crew.Bricks: "brick", crew.Pencil: "pencil", crew.Phone: "phone",
	crew.TicketPaper: "locating ticket", crew.Hammer: "sledge", crew.Level: "level", crew.ColouredTape: "coloured tape", crew.LuggageScale: "luggage scale",
	crew.StakeGrip: "stake grip", crew.Saw: "fine saw", crew.Clamp: "clamp", crew.Scraper: "scraper", crew.Marker: "marker", crew.Tarp: "tarp", crew.Mallet: "rubber mallet",
	crew.Trestles: "trestle", crew.Cutters: "cutter", crew.TestOutlet: "outlet with ground-fault protection", crew.RejectBag: "reject bag", crew.Bucket: "bucket",
	crew.Stepladder: "stepladder", crew.Screwdriver: "screwdriver", crew.File: "file", crew.OpeningSticks: "opening stick", crew.Lamp: "test lamp", crew.Torch: "torch",
	crew.Lanterns: "lantern", crew.Barriers: "barrier of %s", crew.FirstAid: "first-aid kit", crew.Bags: "bag", crew.Tags: "tag",
}

// fetched says a thing with its count.
func fetched(n crew.Need, u measure.System) string {
	switch n.Thing {
	case crew.Gloves:
		return fmt.Sprintf("gloves for %d", n.Count)
	case crew.EyeProtection:
		return fmt.Sprintf("eye protection for %d", n.Count)
	case crew.Cutters:
		return "cutters"
	}
	noun := fetchWords[n.Thing]
	if strings.Contains(noun, "%s") {
		noun = fmt.Sprintf(noun, u.Room(n.Length))
	}
	if n.Count == 1 {
		return noun
	}
	return say.Count(n.Count, noun)
}

// crewNames call the crews on paper.
var crewNames = map[crew.Phase]string{
	crew.Marking: "Marking", crew.Driving: "Driving", crew.Cutting: "Cutting", crew.Wrapping: "Wrapping", crew.Raising: "Raising", crew.Hanging: "Hanging",
	crew.Powering: "Power", crew.Nights: "Nights", crew.TakeDown: "Take-down",
}

// fetching is what has to be brought besides what is bought, by the crew that carries it, in two columns: all that its tasks use.
func (b *binder) fetching() []block.Block {
	var list []block.Block
	for _, phase := range crew.Phases() {
		var things []string
		var facts []block.Fact
		for _, n := range b.plan.Crew.Kit(phase) {
			if n.Thing.Source() == crew.Fetched {
				things = append(things, fetched(n, b.spec.Units))
				facts = append(facts, block.Fact{What: "to fetch, " + crewNames[phase] + ", " + fetchWords[n.Thing], Value: fetched(n, b.spec.Units)})
			}
		}
		if phase == crew.Cutting && len(things) > 0 {
			things = append(things, "dust masks", "ear protection")
			if b.cutsSteel() {
				things = append(things, "hacksaw", "flat file", "leather gloves")
			}
		}
		if len(things) > 0 {
			text := fmt.Sprintf("%s: %s", block.Figure(crewNames[phase]), strings.Join(things, ", "))
			list = append(list, block.Block{Name: "to fetch", Gap: 0.8, Body: block.Words{Text: text, Lettering: paper.Floor, Figures: paper.Strong.Sized(11)}, Facts: facts})
		}
	}
	if len(list) == 0 {
		return nil
	}
	fetch := block.Block{Name: "to fetch", Gap: 0.5, Body: inColumns(list, b.bodyWidth(), 4)}
	for _, each := range list {
		fetch.Facts = append(fetch.Facts, each.Facts...)
	}
	return titled("Fetch: strike out what is loaded", fetch)
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
