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

// tagsLeaf is a card an arch and one for each other sort of thing that is kept together, then the pitch strips that found no room at the lights. Nothing is printed
// behind a card: it is cut out. Under the last of them stands the spec, in front and behind, where there is room for all of it.
func (b *binder) tagsLeaf() []folio {
	if len(standingOf(b.plan)) == 0 {
		return nil
	}
	blocks, strips := b.tagBlocks()
	const title = "Tags: cut out, tie on"
	if front, back, ok := b.specBeneath(blocks); ok {
		behind := side{title: "Spec", blocks: back}
		if len(back) == 1 {
			behind.title = backsTitle
		}
		return []folio{{front: side{title: title, toScale: strips, blocks: front}, back: behind}}
	}
	_, room := b.newSide(false)
	var list []folio
	for len(blocks) > 0 {
		n := 1
		for n < len(blocks) && block.Height(blocks[:n+1], room.W) <= room.H {
			n++
		}
		list = append(list, folio{front: side{title: title, toScale: strips, blocks: blocks[:n]}, back: side{title: backsTitle, blocks: behindTags(blocks[:n], room.W)}})
		blocks = blocks[n:]
	}
	return list
}

// backsTitle stands over a side with nothing but lines to write on, behind cards.
const backsTitle = "Tags: the backs"

// tagBlocks are the cards, two in a row, what is done with them and the strips; strips are drawn to scale.
func (b *binder) tagBlocks() (blocks []block.Block, toScale bool) {
	var cards []draw.Tag
	for _, a := range b.plan.Arches {
		cards = append(cards, archTag(a, len(b.plan.Arches), b.spec.Units))
	}
	if on, _ := stringsKept(b.plan); len(on) > 0 {
		cards = append(cards, draw.Tag{Name: "WRAPPED LEGS", What: "One layer, plugs bagged."})
	}
	cards = append(cards, sortTags(b.plan)...)
	if len(cards)%tagsAcross > 0 {
		cards = append(cards, draw.Tag{}) // to write on
	}
	head := clip(b.spec.Title, paper.Small, 40)
	if b.spec.Season != "" {
		head = clip(head+", "+b.spec.Season, paper.Small, 50)
	}
	blocks = []block.Block{{Name: "what is done with tags", Body: block.Words{Lettering: paper.Floor,
		Text: fmt.Sprintf("At take-down (leaf %d): bag each tag, punch both at the ring, tie on. FOOT: where arrows start.", leafNumber("takedown"))}}}
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
	for _, p := range b.lighting().stripsForTags() {
		if !toScale {
			blocks = append(blocks, block.Heading("For wrapping: cut out before the build"))
		}
		blocks = append(blocks, block.Block{Name: "pitch strip", Gap: 2, Body: block.Picture{Least: draw.PitchStripHeight, Paint: func(page *paper.Page, box paper.Rect) []string {
			p.Draw(page, box)
			return nil
		}}, Facts: []block.Fact{{What: "pitch, " + p.Words, Value: p.Words}, {What: "a strip's check", Value: b.spec.Units.Inches(p.Check)}}})
		toScale = true
	}
	return blocks, toScale
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
	legs := fmt.Sprintf("L%d, R%d: %s each", a.Number, a.Number, long(a.Left))
	switch {
	case a.Spec.OneStick:
		legs = "One stick, " + long(a.Left)
	case !slices.Equal(a.Left, a.Right):
		legs = fmt.Sprintf("L%d: %s. R%d: %s", a.Number, long(a.Left), a.Number, long(a.Right))
	}
	return draw.Tag{Name: fmt.Sprintf("ARCH %d", a.Number), Of: fmt.Sprintf("of %d", of), What: legs + ". Tag: FOOT end."}
}

// sortTags are the cards of what is kept together beside the legs, with how many there are of each sort.
func sortTags(p *layout.Plan) (list []draw.Tag) {
	for _, sort := range keptSo(p) {
		if sort.keep == keptLegs {
			continue
		}
		var nouns, counted []string
		count := map[string]int{}
		for _, it := range inventory(p) {
			if it.keep != sort.keep {
				continue
			}
			if count[it.noun] == 0 {
				nouns = append(nouns, it.noun)
			}
			count[it.noun] += it.count
		}
		for _, noun := range nouns {
			counted = append(counted, say.Count(count[noun], noun))
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

// behindTags are lines to write on behind each row of tags.
func behindTags(front []block.Block, width paper.Length) []block.Block {
	list := slices.Clone(front)
	for i, b := range front {
		_, tags := b.Body.(tagRow)
		list[i] = block.Block{Name: "behind " + b.Name, Gap: b.Gap, Body: block.Picture{Least: b.Body.Height(width), Paint: func(page *paper.Page, box paper.Rect) []string {
			for y := box.Y + box.H/2; tags && y <= box.Bottom(); y += box.H / 2 {
				for x := box.X; x < box.Right(); x += box.W / tagsAcross {
					page.Line(paper.Point{X: x + draw.TagMargin, Y: y - 2}, paper.Point{X: x + box.W/tagsAcross - draw.TagMargin, Y: y - 2}, paper.Thin)
				}
			}
			return nil
		}}}
	}
	return list
}

// Draw implements block.Body.
func (r tagRow) Draw(page *paper.Page, box paper.Rect) []string {
	for i, t := range r {
		wide := box.W / tagsAcross
		t.Draw(page, paper.Rect{X: box.X + paper.Length(i)*wide, Y: box.Y, W: wide, H: box.H})
	}
	return nil
}
