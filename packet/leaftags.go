package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// tagsLeaf is a card an arch and one for each other sort of thing that is kept together. Nothing is printed behind a card: it is cut out. Under the last of them
// stands the spec, in front and behind, where there is room for all of it.
func (b *binder) tagsLeaf() []folio {
	if len(standingOf(b.plan)) == 0 {
		return nil
	}
	blocks := b.tagBlocks()
	const title = "Tags: cut out, tie on"
	if front, back, ok := b.specBeneath(blocks); ok {
		return []folio{{front: side{title: title, blocks: front}, back: side{title: "Spec", blocks: back}}}
	}
	_, room := b.newSide(false)
	var list []folio
	for len(blocks) > 0 {
		n := 1
		for n < len(blocks) && block.Height(blocks[:n+1], room.W) <= room.H {
			n++
		}
		list = append(list, folio{front: side{title: title, blocks: blocks[:n]}})
		blocks = blocks[n:]
	}
	return list
}

// tagBlocks are the cards, two in a row, and what is done with them.
func (b *binder) tagBlocks() []block.Block {
	var cards []draw.Tag
	for _, a := range b.plan.Arches {
		cards = append(cards, archTag(a, len(b.plan.Arches), b.spec.Units))
	}
	if on, _ := stringsKept(b.plan); len(on) > 0 {
		cards = append(cards, draw.Tag{Name: "WRAPPED LEGS", What: "One layer, plugs bagged."})
	}
	cards = append(cards, sortTags(b.plan)...)
	if len(cards)%tagsAcross > 0 {
		cards = append(cards, draw.Tag{Name: "SPARES", What: sparesSaid(b.plan)})
	}
	head := clip(b.spec.Title, paper.Small, 40)
	if b.spec.Season != "" {
		head = clip(head+", "+b.spec.Season, paper.Small, 50)
	}
	blocks := []block.Block{{Name: "what is done with tags", Body: block.Words{Lettering: paper.Floor,
		Text: fmt.Sprintf("At take-down (leaf %d): bag each tag, punch both at the ring, tie on at FOOT, where arrows start.", leafNumber("takedown"))}}}
	gap := paper.Length(2)
	for row := range slices.Chunk(cards, tagsAcross) {
		var facts []block.Fact
		for i := range row {
			row[i].Head = head
			facts = append(facts, block.Fact{What: "tag " + row[i].Name, Value: row[i].What})
		}
		blocks = append(blocks, block.Block{Name: "tags from " + row[0].Name, Gap: gap, Body: tagRow(row), Facts: facts})
		gap = 0
	}
	return blocks
}

// archTag is the card of an arch: its legs are one bundle.
func archTag(a arch.Arch, of int, u measure.System) draw.Tag {
	long := func(sticks []measure.Length) string {
		var words []string
		for _, l := range sticks {
			words = append(words, u.Cut(l))
		}
		return strings.Join(words, " + ")
	}
	legs := fmt.Sprintf("L%d, R%d: FOOT %s each", a.Number, a.Number, long(a.Left))
	switch {
	case a.Spec.OneStick:
		legs = "One stick, FOOT to FOOT " + long(a.Left)
	case !slices.Equal(a.Left, a.Right):
		legs = fmt.Sprintf("FOOT L%d: %s. FOOT R%d: %s", a.Number, long(a.Left), a.Number, long(a.Right))
	}
	return draw.Tag{Name: fmt.Sprintf("ARCH %d", a.Number), Of: fmt.Sprintf("of %d", of), What: legs}
}

// sortTags are the cards of what is kept together beside the legs, with how many there are of each sort.
func sortTags(p *layout.Plan) (list []draw.Tag) {
	for _, sort := range keptSo(p) {
		if sort.keep == keptLegs {
			continue
		}
		var nouns, counted []string
		count, more := map[string]int{}, map[string]string{"guy": " (" + guyParts + ")"}
		if sort.keep == keptRidge && ridgeAlike(p.Cuts.Bars, p.Spec.Units) { // they were cut to what the first of them found
			more["piece"] = " of ______ " + p.Spec.Units.Unit()
		}
		for _, it := range inventory(p) {
			if it.keep != sort.keep || it.noun == "" { // boards have no number
				continue
			}
			if count[it.noun] == 0 {
				nouns = append(nouns, it.noun)
			}
			count[it.noun] += it.count
		}
		for _, noun := range nouns {
			counted = append(counted, say.Count(count[noun], noun)+more[noun])
		}
		list = append(list, draw.Tag{Name: strings.ToUpper(sort.what), What: strings.Join(counted, ", ")})
	}
	return list
}

const tagsAcross = 2

// tagRow is cards side by side.
type tagRow []draw.Tag

// Height implements block.Body.
func (tagRow) Height(paper.Length) paper.Length { return draw.TagHeight }

// Draw implements block.Body.
func (r tagRow) Draw(page *paper.Page, box paper.Rect) []string {
	for i, t := range r {
		wide := box.W / tagsAcross
		t.Draw(page, paper.Rect{X: box.X + paper.Length(i)*wide, Y: box.Y, W: wide, H: box.H})
	}
	return nil
}
