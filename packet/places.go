package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/lights"
	"hoopwright/layout/stock"
)

// numbered is a name of a number with letters about it: L3, R12, 4, G15La.
type numbered struct {
	before string
	number int
	after  string
}

// places lists where pieces go, numbers that follow each other as a range: "L1 to L6, R1 to R5", "2 to 57". Left comes before right, numbers in
// the pieces' own order.
func places(pieces []stock.Piece) string {
	var list []numbered
	for _, p := range pieces {
		list = append(list, numberOf(p))
	}
	slices.SortStableFunc(list, func(a, b numbered) int { return cmp.Or(cmp.Compare(a.before, b.before), cmp.Compare(a.after, b.after)) })
	return inRanges(list)
}

// numberOf names the place of a piece.
func numberOf(p stock.Piece) numbered {
	if id := p.ID.Stake; p.ID.Steel || p.ID.Brace {
		return numbered{id.Before(), id.Arch, id.After()}
	}
	return numbered{p.ID.Part.Letter(), p.ID.Part.Number, ""}
}

// partsInRanges lists parts of one noun: L1 to L6, R1 to R6.
func partsInRanges(parts []lights.Part) string {
	var list []numbered
	for _, p := range parts {
		list = append(list, numbered{p.Letter(), p.Number, ""})
	}
	return inRanges(list)
}

// inRanges lists names, numbers that follow each other between the same letters as a range, letters in their first order.
func inRanges(list []numbered) string {
	var words []string
	done := map[[2]string]bool{}
	for _, l := range list {
		letters := [2]string{l.before, l.after}
		if done[letters] {
			continue
		}
		done[letters] = true
		var numbers []int
		for _, other := range list {
			if other.before == l.before && other.after == l.after {
				numbers = append(numbers, other.number)
			}
		}
		words = append(words, ranges(l.before, numbers, l.after)...)
	}
	return strings.Join(words, ", ")
}

// ranges lists numbers between letters: three or more in a row as a range, four or more odd or even ones in a row likewise.
func ranges(before string, numbers []int, after string) []string {
	run := func(first, step int) (last int) {
		for last = first; last+1 < len(numbers) && numbers[last+1] == numbers[last]+step; last++ {
		}
		return last
	}
	name := func(i int) string { return fmt.Sprintf("%s%d%s", before, numbers[i], after) }
	var words []string
	for i := 0; i < len(numbers); i++ {
		if last := run(i, 1); last-i >= 2 {
			words = append(words, name(i)+" to "+name(last))
			i = last
		} else if last := run(i, 2); last-i >= 3 {
			which := "even"
			if numbers[i]%2 != 0 {
				which = "odd"
			}
			words = append(words, name(i)+" to "+name(last)+" "+which+" only")
			i = last
		} else {
			words = append(words, name(i))
		}
	}
	return words
}

// likePieces are those of one kind and length, which are alike but for their names.
type likePieces struct {
	sort   stock.PieceID
	pieces []stock.Piece
}

// alike gathers pieces of one material, kind and length, in the order of the first of each.
func alike(pieces []stock.Piece) []likePieces {
	var list []likePieces
	type key struct {
		item   string
		sort   stock.PieceID
		length string
	}
	index := map[key]int{}
	for _, p := range pieces {
		key := key{p.Item, p.ID.Sort(), fmt.Sprintf("%.3f", p.Length)}
		k, seen := index[key]
		if !seen {
			k = len(list)
			index[key] = k
			list = append(list, likePieces{sort: p.ID.Sort()})
		}
		list[k].pieces = append(list[k].pieces, p)
	}
	return list
}

// onParts lists parts of one or more nouns by their numbers: arch 1, 8; ridge 1 to 7.
func onParts(parts []lights.Part) string {
	var nouns, named []string
	called := map[string][]lights.Part{}
	for _, p := range parts {
		noun := p.Kind.Noun()
		if called[noun] == nil {
			nouns = append(nouns, noun)
		}
		called[noun] = append(called[noun], p)
	}
	for _, n := range nouns {
		named = append(named, n+" "+partsInRanges(called[n]))
	}
	return strings.Join(named, "; ")
}
