package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/layout/measure"
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
		fmt.Fprintf(&key, "\n%s %v %.3f", p.ID.Noun(), p.ID.Trial(), p.Length)
	}
	return key.String()
}

// spans returns what is written at the pattern's pieces, neighbours of one kind and length together: the names on all its bars where named is set, else the
// kind with its count. Where a ridge piece is tried first, it and those that wait for it say so.
func (p pattern) spans(named, trial bool) []draw.Span {
	var list []draw.Span
	pieces := p.bars[0].Pieces
	for i := 0; i < len(pieces); {
		n := 1
		for i+n < len(pieces) && alikeOnBar(pieces[i], pieces[i+n]) {
			n++
		}
		text := pieces[i].ID.Noun()
		if named {
			var all []stock.Piece
			for _, bar := range p.bars {
				all = append(all, bar.Pieces[i:i+n]...)
			}
			text += " " + places(all)
		} else if n > 1 {
			text = fmt.Sprintf("%d × %s", n, text)
		}
		switch {
		case !trial:
		case pieces[i].ID.Trial():
			text += ": first"
		case pieces[i].ID.Ridge():
			text += ": wait"
		}
		list = append(list, draw.Span{Pieces: n, Text: text})
		i += n
	}
	return list
}

func alikeOnBar(a, b stock.Piece) bool {
	return a.ID.Sort() == b.ID.Sort() && a.Length == b.Length && a.ID.Trial() == b.ID.Trial()
}

// names lists the names to write on the pieces of all the pattern's bars, kind by kind.
func (p pattern) names() string {
	var all []stock.Piece
	for _, b := range p.bars {
		all = append(all, b.Pieces...)
	}
	var words []string
	for _, g := range alike(all) {
		words = append(words, fmt.Sprintf("%d × %s %s", len(g.pieces), g.sort.Noun(), places(g.pieces)))
	}
	return strings.Join(words, "; ") + "."
}

// title says how many bars of what are cut so.
func (p pattern) title(units measure.System) string {
	b := p.bars[0]
	words := fmt.Sprintf("Cut %d: %s of %s", p.number, counted(len(p.bars), barNoun(b)), b.Size(units))
	if full := units.Cut(b.Stock); full != b.Size(units) {
		words += " (" + full + ")"
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
