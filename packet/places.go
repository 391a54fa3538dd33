package packet

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"hoopwright/layout/stock"
)

// numbered is a place with letters about a number: L3, R12, 4, G15La.
var numbered = regexp.MustCompile(`^([A-Z]*)([0-9]{1,6})([A-Za-z]*)$`)

// places lists where pieces go, numbers that follow each other as a range: "L1 to L6, R1 to R5", "2 to 57". Left comes before right, numbers in
// the pieces' own order.
func places(pieces []stock.Piece) string {
	type row struct{ before, after string }
	var rows []row
	numbers := map[row][]int{}
	var others []string
	for _, p := range pieces {
		_, place := p.Parts()
		m := numbered.FindStringSubmatch(place)
		if m == nil {
			others = append(others, place)
			continue
		}
		n, _ := strconv.Atoi(m[2]) // six figures at most
		r := row{m[1], m[3]}
		if _, seen := numbers[r]; !seen {
			rows = append(rows, r)
		}
		numbers[r] = append(numbers[r], n)
	}
	slices.SortFunc(rows, func(a, b row) int { return cmp.Or(cmp.Compare(a.before, b.before), cmp.Compare(a.after, b.after)) })
	var words []string
	for _, r := range rows {
		words = append(words, ranges(r.before, numbers[r], r.after)...)
	}
	return strings.Join(append(words, others...), ", ")
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
	item, kind string
	pieces     []stock.Piece
}

// alike gathers pieces of one material, kind and length, in the order of the first of each.
func alike(pieces []stock.Piece) []likePieces {
	var list []likePieces
	index := map[string]int{}
	for _, p := range pieces {
		kind, _ := p.Parts()
		key := fmt.Sprintf("%s\n%s\n%.3f", p.Item, kind, p.Length)
		k, seen := index[key]
		if !seen {
			k = len(list)
			index[key] = k
			list = append(list, likePieces{item: p.Item, kind: kind})
		}
		list[k].pieces = append(list[k].pieces, p)
	}
	return list
}
