package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/say"
)

// Room on a side of tags: two cards across, four down.
const (
	cardsAcross              = 2
	cardsDown                = 4
	cardHigh    paper.Length = 53
	cardGap     paper.Length = 3.5 // the scissors' way
)

// tagsLeaf is a card an arch, eight a side; then the pitch strips that found no room at the lights, and labels for what is bundled, as far as the last side
// of cards has room.
func (b *binder) tagsLeaf() []folio {
	if len(standingOf(b.plan)) == 0 {
		return nil
	}
	cards := b.cardRows()
	full := len(cards) % cardsDown
	free := paper.Length(0)
	if full > 0 {
		free = paper.Length(cardsDown-full) * (cardHigh + cardGap)
	}
	strips := b.stripBlocks()
	for _, s := range strips {
		free -= s.Gap + s.Body.Height(b.bodyWidth())
	}
	labels := b.shelfLabels()
	if n := len(b.plan.Arches); n%cardsAcross == 1 { // beside the last card
		fit := min(len(labels), int((cardHigh+shelfGap)/(draw.ShelfLabelHeight+shelfGap)))
		cards[len(cards)-1].Body = cardRow{b.tag(b.plan.Arches[n-1])}.with(labels[:fit])
		labels = labels[fit:]
	}
	blocks := append(cards, strips...)
	for pair := range slices.Chunk(labels, cardsAcross) {
		if free -= shelfGap + draw.ShelfLabelHeight; free < 0 {
			break
		}
		blocks = append(blocks, block.Block{Name: "labels", Gap: shelfGap, Rank: block.May, Body: shelfRow(pair)})
	}
	const title = "Tags: cut out, tie on"
	var list []folio
	for part := range slices.Chunk(blocks, cardRows) {
		list = append(list, folio{front: side{title: title, blocks: part}, back: side{title: title}})
	}
	last := &list[len(list)-1]
	last.front.toScale, last.back.toScale = len(strips) > 0 && len(cards) < cardsDown, len(strips) > 0
	return list
}

// cardRows is how many rows are packed in one go: those of twenty sides.
const cardRows = 20 * cardsDown

// cardRows are the cards, two in a row.
func (b *binder) cardRows() []block.Block {
	var rows []block.Block
	var tags cardRow
	var facts []block.Fact
	for i, a := range b.plan.Arches {
		t := b.tag(a)
		tags, facts = append(tags, t), append(facts, tagFacts(t)...)
		if len(tags) == cardsAcross || i == len(b.plan.Arches)-1 {
			rows = append(rows, block.Block{Name: fmt.Sprintf("tags up to arch %d", a.Number), Gap: cardGap, Body: rowOfCards{cards: tags}, Facts: facts})
			tags, facts = nil, nil
		}
	}
	return rows
}

// cardRow is the cards of a row.
type cardRow []draw.Tag

// with sets labels beside a lone card.
func (r cardRow) with(labels []draw.ShelfLabel) rowOfCards { return rowOfCards{r, labels} }

// rowOfCards is cards side by side, labels beside a lone one.
type rowOfCards struct {
	cards  cardRow
	labels []draw.ShelfLabel
}

const shelfGap paper.Length = 1 // between labels: one cut

func cardWidth(width paper.Length) paper.Length { return (width - cardGap) / cardsAcross }

// Height implements block.Body.
func (r rowOfCards) Height(width paper.Length) paper.Length {
	high := cardHigh
	for _, t := range r.cards {
		high = max(high, t.Height(cardWidth(width), cardHigh))
	}
	return high
}

// Draw implements block.Body.
func (r rowOfCards) Draw(page *paper.Page, box paper.Rect) []string {
	wide, high := cardWidth(box.W), r.Height(box.W)
	for i, t := range r.cards {
		t.Draw(page, paper.Rect{X: box.X + paper.Length(i)*(wide+cardGap), Y: box.Y, W: wide, H: high})
	}
	for i, l := range r.labels {
		l.Draw(page, paper.Rect{X: box.X + wide + cardGap, Y: box.Y + paper.Length(i)*(draw.ShelfLabelHeight+shelfGap), W: wide, H: draw.ShelfLabelHeight})
	}
	return nil
}

// shelfRow is labels side by side.
type shelfRow []draw.ShelfLabel

// Height implements block.Body.
func (shelfRow) Height(paper.Length) paper.Length { return draw.ShelfLabelHeight }

// Draw implements block.Body.
func (r shelfRow) Draw(page *paper.Page, box paper.Rect) []string {
	for i, l := range r {
		wide := cardWidth(box.W)
		l.Draw(page, paper.Rect{X: box.X + paper.Length(i)*(wide+cardGap), Y: box.Y, W: wide, H: draw.ShelfLabelHeight})
	}
	return nil
}

// shelfLabels are the labels of what is kept together, each sort counted by itself, legs apart: those have their cards.
func (b *binder) shelfLabels() []draw.ShelfLabel {
	type sort struct{ name, piece string }
	sorts := map[keeping]sort{keptRidge: {"RIDGE", "piece"}, keptBox: {"FITTINGS, GUYS", "fitting"}, keptStakes: {"STAKES, CAPS", "stake"}, keptLights: {"STRINGS", "string"}, keptCords: {"CORDS", "cord"}}
	apart := map[string]string{itemCap: "cap", itemGuy: "guy", itemThreeWay: "three-way"}
	var list []draw.ShelfLabel
	if on, _ := stringsKept(b.plan); len(on) > 0 {
		list = append(list, draw.ShelfLabel{Name: "WRAPPED LEGS", What: "One layer, plugs bagged: ____ of ____", Head: b.spec.Title})
	}
	for _, keep := range []keeping{keptRidge, keptBox, keptStakes, keptLights, keptCords} {
		var pieces []string
		count := map[string]int{}
		for _, it := range inventory(b.plan) {
			piece := cmp.Or(apart[it.item], sorts[keep].piece)
			if it.keep != keep {
				continue
			}
			if count[piece] == 0 {
				pieces = append(pieces, piece)
			}
			count[piece] += it.count
		}
		if len(pieces) == 0 {
			continue
		}
		for i, piece := range pieces {
			pieces[i] = say.Count(count[piece], piece)
		}
		list = append(list, draw.ShelfLabel{Name: sorts[keep].name, What: strings.Join(pieces, ", ") + ", bundle ____ of ____", Head: b.spec.Title})
	}
	return list
}
