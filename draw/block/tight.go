package block

import (
	"slices"

	"hoopwright/draw/paper"
)

// Tightness says how closely blocks are set, the loosest first.
type Tightness int

// The ways to set blocks.
const (
	Loose    Tightness = iota // as the leaf's maker wishes
	Close                     // half the free room between them
	Tightest                  // running text at the least size too
)

// leastGap is the free room that blocks keep between them however closely they are set, where they had any.
const leastGap paper.Length = 1.2

// tighter is a body that can be set more closely.
type tighter interface {
	Tight(t Tightness) Body
}

// Tight returns the blocks set more closely. What has been set so already stays as it is.
func Tight(blocks []Block, t Tightness) []Block {
	if t == Loose {
		return blocks
	}
	list := slices.Clone(blocks)
	for i := range list {
		if b := &list[i]; !b.close {
			b.Gap, b.close = max(b.Gap/2, min(b.Gap, leastGap)), true
			b.take(tight(b.Body, t))
			b.Short = tight(b.Short, t)
		}
	}
	return list
}

func tight(body Body, t Tightness) Body {
	if b, ok := body.(tighter); ok {
		return b.Tight(t)
	}
	return body
}

// Tight implements tighter: body text goes down to the floor.
func (w Words) Tight(t Tightness) Body {
	if t == Tightest && (w.Lettering == paper.Lettering{} || w.Lettering == paper.Body) {
		w.Lettering = paper.Floor
	}
	return w
}

// Tight implements tighter.
func (s Step) Tight(t Tightness) Body {
	s.Small = t == Tightest
	return s
}

// Tight implements tighter.
func (f Framed) Tight(t Tightness) Body {
	f.Blocks = Tight(f.Blocks, t)
	return f
}

// Tight implements tighter.
func (c Columns) Tight(t Tightness) Body {
	c.Cols = slices.Clone(c.Cols)
	for i := range c.Cols {
		c.Cols[i].Blocks = Tight(c.Cols[i].Blocks, t)
	}
	return c
}
