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
	"hoopwright/layout/spec"
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
	head := clip(b.spec.Title, paper.Small, 40)
	if b.spec.Season != "" {
		head = clip(head+", "+b.spec.Season, paper.Small, 50)
	}
	blocks := []block.Block{{Name: "what is done with tags", Body: block.Words{Lettering: paper.Floor,
		Text: fmt.Sprintf("At take-down (leaf %d): fill in, bag, punch both at the ring, tie on.", leafNumber("takedown"))}}}
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
		if a.Spec.Joints == spec.Glued && len(sticks) > 1 {
			return u.Cut(measure.RoundUp(a.Spec.Pipe.Joined(sticks), u.Grid())) + ", cemented"
		}
		var words []string
		for _, l := range sticks {
			words = append(words, u.Cut(l))
		}
		if len(words) > 1 {
			words[0] += " at the foot"
		}
		return strings.Join(words, " + ")
	}
	legs := fmt.Sprintf("L%d, R%d each: %s", a.Number, a.Number, long(a.Left))
	switch {
	case a.Spec.OneStick:
		legs = "One stick, foot to foot " + long(a.Left)
	case !slices.Equal(a.Left, a.Right):
		legs = fmt.Sprintf("L%d: %s. R%d: %s", a.Number, long(a.Left), a.Number, long(a.Right))
	}
	return draw.Tag{Name: fmt.Sprintf("ARCH %d", a.Number), Of: fmt.Sprintf("of %d", of), What: legs}
}

// sortTags are the cards of what is kept together beside the legs, with how many there are of each sort, and spare; what is spare of the legs goes with the first.
func sortTags(p *layout.Plan) (list []draw.Tag) {
	spare, loose := map[string]int{}, []string{}
	for _, s := range sparesOf(p) {
		spare[s.noun] = s.count
		if !slices.ContainsFunc(inventory(p), func(it stored) bool { return it.noun == s.noun && it.keep != keptLegs }) {
			loose = append(loose, say.Count(s.count, "spare "+s.noun))
		}
	}
	for _, sort := range keptSo(p) {
		if sort.keep == keptLegs {
			continue
		}
		var nouns, counted []string
		count, use, lead, more := map[string]int{}, map[string]string{}, map[string]string{}, map[string]string{"guy": " (" + guyParts + ")", "piece": ridgeCut(p)}
		for _, it := range inventory(p) {
			if it.keep != sort.keep || it.noun == "" { // boards have no number
				continue
			}
			switch {
			case count[it.noun] == 0:
				nouns = append(nouns, it.noun)
			case it.use != "":
				lead[it.noun] += fmt.Sprintf("%d %s + ", count[it.noun], use[it.noun])
				count[it.noun] = 0
			}
			count[it.noun] += it.count
			use[it.noun] = it.use
		}
		for _, noun := range nouns {
			words := lead[noun] + say.Count(count[noun], strings.TrimSpace(use[noun]+" "+noun))
			if n := spare[noun]; n > 0 {
				words += fmt.Sprintf(" + %d spare", n)
			}
			counted = append(counted, words+more[noun])
		}
		counted, loose = append(counted, loose...), nil
		list = append(list, draw.Tag{Name: strings.ToUpper(sort.what), What: strings.Join(counted, ", ")})
	}
	return list
}

// ridgeCut is room for how long ridge pieces alike were cut, the first apart, for the others were cut to what it found.
func ridgeCut(p *layout.Plan) string {
	switch {
	case !ridgeAlike(p.Cuts.Bars, p.Spec.Units):
		return ""
	case len(p.Ridge) > 1:
		return ": ridge 1 ______, others ______ " + p.Spec.Units.Unit()
	}
	return " of ______ " + p.Spec.Units.Unit()
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
