package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// pattern is bars that are cut alike: same stock, same kinds and lengths in the same places. Their pieces differ by name alone.
type pattern struct {
	letter string
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
				list = append(list, pattern{letter: letter(k)})
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

// letter names the k-th pattern: A to Z, then AA, AB and on.
func letter(k int) string {
	if k < 26 {
		return string(rune('A' + k))
	}
	return letter(k/26-1) + string(rune('A'+k%26))
}

// spans returns what is written under the pattern's pieces: neighbours of one kind and length together, by name where the pattern is one
// bar, by count where it is many.
func (p pattern) spans(trial bool) []draw.Span {
	var list []draw.Span
	pieces := p.bars[0].Pieces
	for i := 0; i < len(pieces); {
		n := 1
		for i+n < len(pieces) && alikeOnBar(pieces[i], pieces[i+n]) {
			n++
		}
		kind := pieces[i].ID.Noun()
		text := kind + " " + places(pieces[i:i+n])
		if len(p.bars) > 1 {
			text = fmt.Sprintf("%d × %s", n, kind)
			if n == 1 {
				text = kind
			}
		}
		switch {
		case !trial:
		case pieces[i].ID.Trial():
			text += ": cut, then HOLD"
		case pieces[i].ID.Ridge():
			text += ", after HOLD"
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
	words := say.Count(len(p.bars), barNoun(b)) + " of " + b.Size(units)
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

// items lists the materials of bars in their order.
func items(bars []stock.Bar) []string {
	var list []string
	for _, b := range bars {
		if !slices.Contains(list, b.Item) {
			list = append(list, b.Item)
		}
	}
	return list
}
