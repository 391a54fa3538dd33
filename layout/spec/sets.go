package spec

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// numbered is what a set picks from: the arches or the bays, 1 to most. Most is zero where the tunnel itself could not be read.
type numbered struct {
	one, many string
	most      int
	unknown   bool
}

func archNumbers(s *Spec) numbered {
	return numbered{"arch", "arches", s.Tunnel.Arches, s.Tunnel.Arches == 0}
}

func bayNumbers(s *Spec) numbered {
	return numbered{"bay", "bays", s.Tunnel.Arches - 1, s.Tunnel.Arches == 0}
}

// setOf is the rule of a set of arches or bays: a list of numbers and ranges, or odd, even or all. The numbers come in order, each once. It is wrong, without a further error, where the tunnel could not
// be read.
func setOf(numbers func(*Spec) numbered) rule {
	many := numbers(&Spec{}).many
	return ruled(says(many+": a list of numbers, ranges such as 4 to 6, and last; or odd, even, all"), func(f field) ([]int, bool) {
		var words []string
		items := []field{f}
		if f.node.Kind != yaml.ScalarNode {
			var ok bool
			if items, ok = f.list(); !ok {
				return nil, false
			}
		}
		for _, item := range items {
			s, ok := item.scalar()
			if !ok {
				return nil, false
			}
			words = append(words, s)
		}
		return f.pick(words, numbers(f.spec))
	})
}

// pick picks the numbers and fails where the words make no set.
func (f field) pick(words []string, of numbered) ([]int, bool) {
	set, err := of.pick(words)
	if err != "" {
		example := exampleOf(f.table, f.spec.Units)
		for _, w := range words {
			if ends := dashRange.FindStringSubmatch(w); ends != nil {
				example = f.keyed("[" + ends[1] + " to " + ends[2] + "]")
			}
		}
		f.failWith(example, "%s", err)
		return nil, false
	}
	return set, !of.unknown
}

var (
	setNumber = regexp.MustCompile(`^([1-9][0-9]{0,5}|last)$`)
	setRange  = regexp.MustCompile(`^(\S+)\s+to\s+(\S+)$`)
)

// pick returns the numbers that the words name, or what is wrong with them.
func (of numbered) pick(words []string) (set []int, err string) {
	switch {
	case of.most < 1 && !of.unknown:
		return nil, fmt.Sprintf("there are no %s to pick from", of.many)
	case len(words) == 0:
		return nil, fmt.Sprintf("names no %s", of.one)
	case len(words) == 1 && slices.Contains([]string{"all", "odd", "even"}, words[0]):
		return of.every(words[0])
	}
	for _, w := range words {
		from, to := w, w
		if parts := setRange.FindStringSubmatch(w); parts != nil {
			from, to = parts[1], parts[2]
		}
		low, wrongLow := of.number(w, from)
		high, wrongHigh := of.number(w, to)
		switch wrong := cmp.Or(wrongLow, wrongHigh); {
		case wrong != "":
			return nil, wrong + "; a set lists numbers, ranges such as 4 to 6, and last, or is one of odd, even, all"
		case low > high:
			return nil, fmt.Sprintf("%s runs backwards; the lower number comes first", quote(w))
		}
		for n := low; n <= high && !of.unknown; n++ {
			set = append(set, n)
		}
	}
	slices.Sort(set)
	return slices.Compact(set), ""
}

// every returns all numbers, or the odd or the even.
func (of numbered) every(word string) (set []int, err string) {
	for n := 1; n <= of.most; n++ {
		if word == "all" || (word == "odd") == (n%2 == 1) {
			set = append(set, n)
		}
	}
	if len(set) == 0 && !of.unknown {
		return nil, fmt.Sprintf("%s names no %s of %d", quote(word), of.one, of.most)
	}
	return set, ""
}

func (of numbered) number(whole, word string) (int, string) {
	if !setNumber.MatchString(word) {
		return 0, fmt.Sprintf("%s is no %s number", quote(whole), of.one)
	}
	if word == "last" {
		if of.unknown {
			return mostSet, ""
		}
		return of.most, ""
	}
	n, _ := strconv.Atoi(strings.TrimSpace(word))
	if n > of.most && !of.unknown {
		return 0, fmt.Sprintf("%s goes beyond %s %d, the last", quote(whole), of.one, of.most)
	}
	return n, ""
}

// mostSet stands for the last number of a tunnel that could not be read.
const mostSet = 1_000_000
