package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// pattern is bars that are cut alike: same stock, same kinds and lengths in the same places. Their pieces differ by name alone; the piece that others wait for
// is of a kind of its own.
type pattern struct {
	number int // from 1
	bars   []stock.Bar
}

// patterns gathers the bars that the saw goes through, numbered in the order of the work: legs, the ridge piece that is tried first, the ridge pieces that wait for
// it, the steel.
func patterns(bars []stock.Bar) []pattern {
	var list []pattern
	index := map[string]int{}
	for _, b := range bars {
		if b.Whole() {
			continue
		}
		key := patternKey(b)
		k, seen := index[key]
		if !seen {
			k = len(list)
			index[key] = k
			list = append(list, pattern{})
		}
		list[k].bars = append(list[k].bars, b)
	}
	slices.SortStableFunc(list, func(p, q pattern) int { return cmp.Compare(p.turn(), q.turn()) })
	for i := range list {
		list[i].number = i + 1
	}
	return list
}

// turn is when the first of the pattern's bars is cut.
func (p pattern) turn() int {
	turn := p.bars[0].Turn()
	for _, b := range p.bars {
		turn = min(turn, b.Turn())
	}
	return turn
}

func patternKey(b stock.Bar) string {
	var key strings.Builder
	fmt.Fprintf(&key, "%s %.3f %v", b.Item, b.Stock, b.Owned)
	for _, p := range b.Pieces {
		fmt.Fprintf(&key, "\n%s %v %.3f", p.ID.Noun(), p.ID.Trial(), p.Length)
	}
	return key.String()
}

// spans returns what is written at the pattern's pieces, neighbours of one kind and length together: the names on all its bars where named is set, else the
// kind with its count. Ridge pieces say so where they wait until the first has been tried; stakes of a length are alike and go without names.
func (p pattern) spans(named, trial bool) []draw.Span {
	var list []draw.Span
	pieces := p.bars[0].Pieces
	for i := 0; i < len(pieces); {
		n := 1
		for i+n < len(pieces) && p.alikeAt(i, i+n) {
			n++
		}
		text := pieces[i].ID.Noun()
		var all []stock.Piece
		for _, bar := range p.bars {
			all = append(all, bar.Pieces[i:i+n]...)
		}
		switch {
		case named && !pieces[i].ID.Steel:
			text += " " + places(all)
		case n > 1:
			text = fmt.Sprintf("%d × %s", n, text)
		}
		switch {
		case trial && pieces[i].ID.Trial():
			text += ": first"
		case trial && pieces[i].ID.Ridge():
			text += ": wait"
		}
		list = append(list, draw.Span{Pieces: n, Text: text})
		i += n
	}
	return list
}

// alikeAt reports whether two pieces next to each other are of one kind and length. The piece tried first stands by itself.
func (p pattern) alikeAt(i, k int) bool {
	a, b := p.bars[0].Pieces[i], p.bars[0].Pieces[k]
	return a.ID.Sort() == b.ID.Sort() && a.Length == b.Length && a.ID.Trial() == b.ID.Trial()
}

// names lists the names to write on the pieces of all the pattern's bars, kind by kind; empty where they are stakes.
func (p pattern) names() string {
	var all []stock.Piece
	for _, b := range p.bars {
		for _, piece := range b.Pieces {
			if !piece.ID.Steel {
				all = append(all, piece)
			}
		}
	}
	return kindsOf(all)
}

// title says how many bars of what are cut so.
func (p pattern) title(units measure.System) string {
	b := p.bars[0]
	words := fmt.Sprintf("Cut %d: %s of %s", p.number, say.Count(len(p.bars), barNoun(b)), b.Size(units))
	if b.Full(units) {
		words += ", not under " + units.Cut(b.Stock)
	}
	if b.Owned {
		words += " from the shed"
	}
	return words
}

// barNoun is what a bar is called: steel comes in bars, pipe in sticks.
func barNoun(b stock.Bar) string {
	if b.Steel() {
		return "bar"
	}
	return "stick"
}
