package block

import (
	"slices"

	"hoopwright/draw/paper"
)

// hair is what sums of heights may be off by.
const hair paper.Length = 1e-6

// Fill sets blocks from the top of the box and returns those that it set, those that go on on the next side, and what found no place for good.
//
// Where all of them fit, they stand in full. Where they do not, the lesser ranks take their shorter forms, then blocks that May stand
// go to the next side. Where that is not enough either, another side is needed anyway: blocks stand in full as far as they fit, and the first that
// does not is split. A block too high for a whole side is noted and left out.
func Fill(page *paper.Page, box paper.Rect, blocks []Block) (set, rest []Block, notes []Note) {
	blocks, notes = withoutTooHigh(blocks, box)
	if set, rest = shortened(blocks, box); set == nil {
		set, rest = cut(blocks, box)
	}
	return set, rest, append(notes, draw(page, box, set)...)
}

// withoutTooHigh leaves out what no side can hold: neither whole, nor short, nor split.
func withoutTooHigh(blocks []Block, box paper.Rect) (kept []Block, notes []Note) {
	for _, b := range blocks {
		_, splits := b.Body.(splitter)
		if !splits && b.height(box.W) > box.H+hair {
			if b.Short == nil || b.Short.Height(box.W) > box.H+hair {
				notes = append(notes, Note{Block: b.Name})
				continue
			}
			b.take(b.Short)
			b.Short = nil
		}
		kept = append(kept, b)
	}
	return kept, notes
}

// shortened returns the blocks in the fullest forms in which all but some that May stand fit the box; nil where they do not.
func shortened(blocks []Block, box paper.Rect) (set, later []Block) {
	set = slices.Clone(blocks)
	if Height(set, box.W) <= box.H+hair {
		return set, nil
	}
	for rank := May; rank >= Must; rank-- {
		for i := len(set) - 1; i >= 0; i-- {
			if set[i].Rank == rank && set[i].Short != nil {
				set[i].take(set[i].Short)
				if Height(set, box.W) <= box.H+hair {
					return set, nil
				}
			}
		}
	}
	for i := len(set) - 1; i >= 0; i-- {
		if set[i].Rank == May {
			later = slices.Insert(later, 0, blocks[i])
			set = slices.Delete(set, i, i+1)
			if Height(set, box.W) <= box.H+hair {
				return set, later
			}
		}
	}
	return nil, nil
}

// cut returns the blocks in full as far as they fit, the first that does not split where it can be, and the rest.
func cut(blocks []Block, box paper.Rect) (set, rest []Block) {
	room := box.H
	for i, b := range blocks {
		gap := b.Gap
		if i == 0 {
			gap = 0
		}
		h := b.height(box.W)
		if h+gap <= room+hair {
			room -= h + gap
			continue
		}
		set, rest = slices.Clone(blocks[:i]), slices.Clone(blocks[i:])
		if s, ok := b.Body.(splitter); ok {
			if first, more, ok := s.Split(box.W, room-gap); ok {
				b.take(first)
				b.Keep = false
				set = append(set, b)
				rest[0].take(more)
				rest[0].Short, rest[0].Facts = nil, nil // its figures are told once, with its first part
				return set, rest
			}
		}
		for k := len(set); k > 0 && set[k-1].Keep && k > 1; k-- {
			rest = slices.Insert(rest, 0, set[k-1])
			set = set[:k-1]
		}
		return set, rest
	}
	return slices.Clone(blocks), nil
}

// draw draws the blocks, those that grow taking equal parts of what is left over as far as they can use it.
func draw(page *paper.Page, box paper.Rect, set []Block) (notes []Note) {
	heights := grown(set, box)
	y := box.Y
	for i, b := range set {
		if i > 0 {
			y += b.Gap
		}
		for _, what := range b.Body.Draw(page, paper.Rect{X: box.X, Y: y, W: box.W, H: heights[i]}) {
			notes = append(notes, Note{b.Name, what})
		}
		y += heights[i]
	}
	return notes
}

// grown returns the blocks' heights with what is left over shared out.
func grown(set []Block, box paper.Rect) []paper.Length {
	heights := make([]paper.Length, len(set))
	var open []int
	for i, b := range set {
		heights[i] = b.height(box.W)
		if g, ok := b.Body.(grower); ok && g.Most(box.W) > heights[i] {
			open = append(open, i)
		}
	}
	left := box.H - Height(set, box.W)
	for len(open) > 0 && left > hair {
		share := left / paper.Length(len(open))
		still := open[:0:0]
		for _, i := range open {
			add := min(share, set[i].Body.(grower).Most(box.W)-heights[i])
			heights[i] += add
			left -= add
			if add == share {
				still = append(still, i)
			}
		}
		if len(still) == len(open) {
			break
		}
		open = still
	}
	return heights
}
