package say

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// Plurals by the rules of English spelling: -es after s, x, z, ch and sh, -ies for -y after a consonant, else -s.
func TestCount(t *testing.T) {
	for want, got := range map[string]string{
		"1 string":         Count(1, "string"),
		"12 strings":       Count(12, "string"),
		"0 caps":           Count(0, "cap"),
		"2 inches of pipe": Count(2, "inch of pipe"),
		"3 arches":         Count(3, "arch"),
		"2 batteries":      Count(2, "battery"),
		"2 trays":          Count(2, "tray"),
		"2 boxes":          Count(2, "box"),
		"4 bays left":      Count(4, "bay") + " left",
		"5 guy stakes":     Count(5, "guy stake"),
		"1 battery":        Count(1, "battery"),
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestLists(t *testing.T) {
	words := []string{"a", "b", "c", "d", "e"}
	for _, c := range []struct {
		n             int
		and, or, some string
	}{{0, "", "", ""}, {1, "a", "a", "a"}, {2, "a and b", "a or b", "a and b"}, {3, "a, b and c", "a, b or c", "a, b and c"},
		{5, "a, b, c, d and e", "a, b, c, d or e", "a, b and 3 more"}} {
		list := words[:c.n]
		if And(list) != c.and || Or(list) != c.or || Some(list, 2) != c.some {
			t.Errorf("%d words: %q, %q, %q", c.n, And(list), Or(list), Some(list, 2))
		}
	}
}

func TestCapital(t *testing.T) {
	for in, want := range map[string]string{"": "", "must fix": "Must fix", "érable": "Érable", "12 arches": "12 arches", "L1": "L1"} {
		if got := Capital(in); got != want {
			t.Errorf("%q became %q, want %q", in, got, want)
		}
	}
}

func TestNumbered(t *testing.T) {
	for want, got := range map[string]string{
		"arch 3":                          Numbered("arch", []int{3}),
		"bays 2 and 3":                    Numbered("bay", []int{2, 3}),
		"arches 1, 3 to 5 and 8":          Numbered("arch", []int{1, 3, 4, 5, 8}),
		"arches 1, 2, 4, 5 and 9 to 2000": Numbered("arch", append([]int{1, 2, 4, 5}, From(9, 2000)...)),
		"2 to 6":                          Range(2, 6),
		"2":                               Range(2, 2),
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	if From(3, 2) != nil {
		t.Errorf("from 3 to 2 there are %v", From(3, 2))
	}
}

// What is printed, read back as a person reads it, is the numbers that went in.
func TestNumbersReadBack(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 12))
	for range 500 {
		var numbers []int
		for n := 1; n < 30; n++ {
			if random.IntN(3) > 0 {
				numbers = append(numbers, n)
			}
		}
		text := Numbers(numbers)
		var read []int
		for _, word := range strings.FieldsFunc(strings.ReplaceAll(text, " and ", ","), func(r rune) bool { return r == ',' }) {
			first, last, ranged := strings.Cut(strings.TrimSpace(word), " to ")
			from, err := strconv.Atoi(first)
			to := from
			if ranged && err == nil {
				to, err = strconv.Atoi(last)
			}
			if err != nil {
				t.Fatal(err)
			}
			read = append(read, From(from, to)...)
		}
		if !slices.Equal(read, numbers) {
			t.Fatalf("%v was printed as %q, which reads %v", numbers, text, fmt.Sprint(read))
		}
	}
}
