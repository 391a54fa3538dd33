package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
)

// carried is what one crew brings besides what is bought.
type carried struct {
	crew   string
	things []string
}

// fetching is what has to be brought, by the crew that carries it, in two columns.
func (b *binder) fetching() []block.Block {
	if len(b.plan.Stakes) == 0 {
		return nil
	}
	var list []block.Block
	for _, c := range b.kits() {
		list = append(list, block.Block{Name: "to fetch", Gap: 0.8,
			Body: block.Words{Text: fmt.Sprintf("%s: %s", block.Figure(c.crew), strings.Join(c.things, ", ")), Lettering: paper.Floor, Figures: paper.Strong.Sized(11)}})
	}
	return titled("Fetch: strike out what is loaded", block.Block{Name: "to fetch", Gap: 0.5, Body: inColumns(list, b.bodyWidth(), 4)})
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

// kits lists what each crew brings.
func (b *binder) kits() []carried {
	var list []carried
	_, guys := b.stakeCounts()
	ladder, lit := b.ladder(), len(b.plan.Strings) > 0
	take := func(crew string, things ...string) { list = append(list, carried{crew, things}) }
	when := func(is bool, things ...string) []string {
		if is {
			return things
		}
		return nil
	}
	all := func(parts ...[]string) (things []string) {
		for _, p := range parts {
			things = append(things, p...)
		}
		return things
	}
	tapes := "two long tapes"
	if len(b.plan.Ground.Marks) > 2 {
		tapes = "three long tapes"
	}
	_ = crew.Marking
	take("Marking", tapes, "line with two spikes", "flags", "phone", "pencil")
	take("Driving", "locating ticket", "sledge with driving cap", "level", "short tape", "luggage scale", "gloves", "eye protection")
	take("Cutting", all([]string{"fine saw", "two clamps", "square", "steel tape longer than a stick", "knife or scraper", "round file", "marker", "tarp", "eye and ear protection", "dust masks"},
		when(b.cutsSteel(), "hacksaw", "cutting oil", "flat file", "leather gloves"))...)
	if lit {
		take("Wrapping", "two trestles", "short tape", "cutters", "outlet with ground-fault protection", "marker", "reject bag")
	}
	take("Raising", all([]string{"rubber mallet", "long tape", "line", "level", "bucket for caps", "gloves", "eye protection"}, when(guys > 0, "screwdriver"), when(ladder, "stepladder"))...)
	if lit {
		take("Hanging", all([]string{"two gauge sticks", "cutters"}, when(ladder, "stepladder"))...)
		take("Power", all([]string{"lamp to test with", "torch", "cutters"}, when(ladder, "stepladder"))...)
	}
	take("Nights", "phone", "torch", "barrier for each end", "first-aid kit")
	return list
}

// cutsSteel reports whether steel is cut.
func (b *binder) cutsSteel() bool {
	for _, p := range patterns(b.plan.Cuts.Bars) {
		if p.bars[0].Steel() {
			return true
		}
	}
	return false
}
