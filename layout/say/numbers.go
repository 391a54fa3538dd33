package say

import "fmt"

// Run is whole numbers in a row, both ends counted.
type Run struct{ First, Last int }

// Runs closes up numbers that rise, each once, to their runs: 1, 3, 4, 5 to {1 1} and {3 5}.
func Runs(numbers []int) []Run {
	var runs []Run
	for _, n := range numbers {
		if k := len(runs) - 1; k >= 0 && runs[k].Last+1 == n {
			runs[k].Last = n
			continue
		}
		runs = append(runs, Run{n, n})
	}
	return runs
}

// Range prints the numbers from first to last: "2", "2 to 6".
func Range(first, last int) string {
	if first == last {
		return fmt.Sprint(first)
	}
	return fmt.Sprintf("%d to %d", first, last)
}

// Numbers prints numbers that rise, three or more in a row as a range: "1, 3 to 5 and 8", "4 and 5".
func Numbers(numbers []int) string {
	return Ranges(numbers, func(n int) string { return fmt.Sprint(n) })
}

// Ranges prints what has names in the order of its numbers, which rise: "A, C to E and H".
func Ranges(numbers []int, name func(int) string) string {
	var words []string
	for _, r := range Runs(numbers) {
		switch first, last := name(r.First), name(r.Last); r.Last - r.First {
		case 0:
			words = append(words, first)
		case 1:
			words = append(words, first, last)
		default:
			words = append(words, first+" to "+last)
		}
	}
	return And(words)
}

// Numbered names things by their numbers, which rise: "arch 3", "arches 1 and 4 to 6".
func Numbered(noun string, numbers []int) string {
	return Agree(len(numbers), noun, plural(noun)) + " " + Numbers(numbers)
}

// From returns the numbers from first to last, none where last is the lesser.
func From(first, last int) []int {
	var numbers []int
	for n := first; n <= last; n++ {
		numbers = append(numbers, n)
	}
	return numbers
}
