package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// pattern is bars that are cut alike: same stock, same kinds and lengths in the same places. Their pieces differ by name alone.
type pattern struct {
	number int // from 1
	bars   []stock.Bar
}

// patterns gathers the bars that the saw goes through, in the plan's order, the steel after the pipe.
func patterns(bars []stock.Bar) []pattern {
	var list []pattern
	for _, steel := range []bool{false, true} {
		index := map[string]int{}
		for _, b := range bars {
			if b.Whole() || b.Steel() != steel {
				continue
			}
			key := patternKey(b)
			k, seen := index[key]
			if !seen {
				k = len(list)
				index[key] = k
				list = append(list, pattern{number: k + 1})
			}
			list[k].bars = append(list[k].bars, b)
		}
	}
	return list
}

func patternKey(b stock.Bar) string {
	var key strings.Builder
	fmt.Fprintf(&key, "%s %.3f %v", b.Item, b.Stock, b.Owned)
	for _, p := range b.Pieces {
		fmt.Fprintf(&key, "\n%s %.3f", p.ID.Noun(), p.Length)
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
		text, first := pieces[i].ID.Noun(), false
		var all []stock.Piece
		for _, bar := range p.bars {
			all = append(all, bar.Pieces[i:i+n]...)
		}
		for _, piece := range all {
			first = first || piece.ID.Trial()
		}
		switch {
		case named && !pieces[i].ID.Steel:
			text += " " + places(all)
		case n > 1:
			text = fmt.Sprintf("%d × %s", n, text)
		}
		switch {
		case !trial || !pieces[i].ID.Ridge():
		case len(all) == 1 && first:
			text += ": first"
		case first:
			text += ": 1 first"
		default:
			text += ": wait"
		}
		list = append(list, draw.Span{Pieces: n, Text: text})
		i += n
	}
	return list
}

// alikeAt reports whether two pieces next to each other are of one kind and length. On a single bar the piece tried first stands by itself.
func (p pattern) alikeAt(i, k int) bool {
	a, b := p.bars[0].Pieces[i], p.bars[0].Pieces[k]
	return a.ID.Sort() == b.ID.Sort() && a.Length == b.Length && (len(p.bars) > 1 || a.ID.Trial() == b.ID.Trial())
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
