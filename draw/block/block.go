// Package block arranges what a leaf of the packet holds on its sides.
//
// A block is a part of a side: a paragraph, a table, a step, a picture. Its body knows its height at a width and draws itself in a box. A
// body may also be split between sides, grow into room that is left over, or have a shorter form. Fill sets blocks one under the other
// on a side and returns what found no room there; nothing is dropped in silence.
package block

import "hoopwright/draw/paper"

// Rank says how much a block matters where room is short. The zero Rank is Must.
type Rank int

// The ranks.
const (
	Must   Rank = iota // the leaf is no use without it
	Should             // shortened before a Must is
	May                // goes to the next side, and then to a paper note, before anything is split
)

// Fact is one figure that a block tells: what it measures, and the figure as printed. Facts are how a packet is held to tell each once.
type Fact struct {
	What  string // what it is a figure of, worded alike wherever it is told: "crown height, arch 1"
	Value string
}

// Body is what a block shows.
type Body interface {
	// Height is what the body needs at a width, in millimetres on paper.
	Height(width paper.Length) paper.Length
	// Draw draws the body from the top of the box, which is as high as Height says or higher, and returns by name what found no place in it.
	Draw(page *paper.Page, box paper.Rect) (missing []string)
}

// splitter is a body that can go on on the next side. Split returns what fits the height and the rest; false where nothing that can stand
// alone fits.
type splitter interface {
	Split(width, height paper.Length) (first, rest Body, ok bool)
}

// grower is a body that takes room left over, up to a height.
type grower interface {
	Most(width paper.Length) paper.Length
}

// Block is a part of a side.
type Block struct {
	Name  string // as a paper note calls it
	Rank  Rank
	Gap   paper.Length // free room above it; none at the top of a side
	Keep  bool         // stays on one side with the block after it
	Body  Body
	Short Body // a lower form for where room is short; nil for none
	Facts []Fact

	close      bool         // it is set tightly
	wide, high paper.Length // the body's height at a width, kept from when it was last asked for; 0 wide before
}

func (b *Block) height(width paper.Length) paper.Length {
	if b.wide != width {
		b.wide, b.high = width, b.Body.Height(width)
	}
	return b.high
}

// take puts another body in the place of the block's own.
func (b *Block) take(body Body) { b.Body, b.wide = body, 0 }

// Note is a block, or a part of one, that found no room on paper.
type Note struct {
	Block string // its name
	What  string // the part; empty for the whole
}

// Height is the height of blocks one under the other, in their full form.
func Height(blocks []Block, width paper.Length) paper.Length {
	return stack(blocks, func(b *Block) paper.Length { return b.height(width) })
}

// stack sums heights of blocks one under the other with the gaps between them.
func stack(blocks []Block, height func(*Block) paper.Length) paper.Length {
	h := paper.Length(0)
	for i := range blocks {
		if i > 0 {
			h += blocks[i].Gap
		}
		h += height(&blocks[i])
	}
	return h
}
