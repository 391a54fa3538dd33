package packet

import (
	"slices"

	"hoopwright/draw/block"
)

// stockLeaf is what is bought and what is brought, and on its back how the sticks are cut.
func (b *binder) stockLeaf() []folio {
	front := slices.Concat(b.buying(), b.readLabels(), b.fetching())
	back := b.sawing()
	if len(patterns(b.plan.Cuts.Bars)) == 0 { // nothing is cut: no side for it
		front, back = append(front, back...), nil
	}
	if len(front)+len(back) == 0 {
		return nil
	}
	return []folio{{front: side{title: "Buy and fetch", blocks: front}, back: side{title: "Cut", toScale: true, blocks: back}}}
}

// titled returns a heading with the blocks that it stands over, nothing where there are none.
func titled(heading string, blocks ...block.Block) []block.Block {
	if len(blocks) == 0 {
		return nil
	}
	return append([]block.Block{block.Heading(heading)}, blocks...)
}
