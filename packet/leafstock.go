package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
)

// stockLeaf is what is bought and what is brought, and on its back how the sticks are cut.
func (b *binder) stockLeaf() []folio {
	lists := "overleaf"
	list := b.stockSet(lists)
	for range 2 { // other words may set it otherwise
		is := b.listsFrom(list)
		if is == "" || is == lists {
			break
		}
		lists, list = is, b.stockSet(is)
	}
	return list
}

// listsFrom says where the buying list ends, seen from where lines are cut, with the leaf set as it will be; empty where none are.
func (b *binder) listsFrom(list []folio) string {
	const nowhere = -1
	sides, _ := b.pack(leafKind{make: func(*binder) []folio { return list }}, leafNumber("stock"))
	bought, cut := nowhere, nowhere
	for i, s := range sides {
		for _, set := range s.blocks {
			if set.Name == buyingList {
				bought = i
			} else if slices.Contains(cutsLines, set.Name) {
				cut = i
			}
		}
	}
	switch {
	case bought == nowhere || cut == nowhere:
		return ""
	case bought == cut:
		return "above"
	case bought == cut-1 && sides[cut].back:
		return "overleaf"
	}
	sheetsCounted(sides)
	return "on sheet " + fmt.Sprint(sides[bought].sheet) + map[bool]string{true: ", back", false: ", front"}[sides[bought].back]
}

// stockSet is the leaf with words for where the buying list is from where lines are cut.
func (b *binder) stockSet(lists string) []folio {
	s := sawing{plan: b.plan, units: b.spec.Units, width: b.bodyWidth(), list: patterns(b.plan.Cuts.Bars), lists: lists}
	list, fetch := slices.Concat(readLabels(b.plan), buying{b.plan, b.spec}.blocks(b.bodyWidth())), fetching(b.plan)
	front, back, fits := b.onTwoSides(slices.Concat(list, fetch), s.blocks())
	titles := [2]string{"Buy and fetch", "Cut"}
	if !fits {
		front, back = list, append(fetch, s.blocks()...)
		titles = [2]string{"Buy", "Fetch, then cut"}
	}
	if len(s.list) == 0 { // nothing is cut: no side for it
		front, back, titles = append(front, back...), nil, [2]string{"Buy and fetch", "Fetch"}
	}
	if len(front)+len(back) == 0 {
		return nil
	}
	return []folio{{front: side{title: titles[0], blocks: front}, back: side{title: titles[1], more: "Cut", toScale: true, blocks: back}}}
}

// onTwoSides sets the blocks no more tightly than they must be to stand on front and back: what the back has no room for before its hold goes to the front. Where two sides do not hold
// them, what goes on does so from the back, unless the front does not hold its own: false.
func (b *binder) onTwoSides(front, back []block.Block) (first, second []block.Block, fits bool) {
	_, room := b.newSide(false)
	holds := func(blocks ...block.Block) bool {
		_, rest, _ := block.Fill(&paper.Page{}, room, blocks)
		return len(rest) == 0
	}
	for behind := block.Loose; behind <= block.Tightest; behind++ {
		for before := block.Loose; before <= max(behind, block.Close); before++ {
			f, k := block.Tight(front, before), block.Tight(back, behind)
			if !holds(f...) {
				continue
			}
			for len(k) > 0 && k[0].Name != holdName && !holds(k...) && holds(append(slices.Clone(f), k[0])...) {
				f, k = append(slices.Clone(f), k[0]), k[1:] // many cuts after a short list
			}
			if holds(k...) {
				return f, k, true
			}
			if !fits && before <= block.Close {
				first, second, fits = f, k, true
			}
		}
	}
	return first, second, fits
}

// holdName names the block of the hold: what stands before it may stand on the front.
const holdName = "hold of the first ridge piece"

// titled returns a heading with the blocks that it stands over, nothing where there are none.
func titled(heading string, blocks ...block.Block) []block.Block {
	if len(blocks) == 0 {
		return nil
	}
	return append([]block.Block{block.Heading(heading)}, blocks...)
}
