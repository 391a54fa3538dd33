package packet

import (
	"fmt"
	"strings"
)

// arches names arches by their numbers: "arch 3", "arches 1 and 4 to 6".
func arches(numbers []int) string {
	if len(numbers) == 1 {
		return fmt.Sprintf("arch %d", numbers[0])
	}
	return "arches " + runs(numbers)
}

// runs prints rising numbers with their runs: 1, 4 to 6 and 9.
func runs(numbers []int) string {
	var words []string
	for i := 0; i < len(numbers); {
		k := i
		for k+1 < len(numbers) && numbers[k+1] == numbers[k]+1 {
			k++
		}
		switch {
		case k == i:
			words = append(words, fmt.Sprint(numbers[i]))
		case k == i+1:
			words = append(words, fmt.Sprint(numbers[i]), fmt.Sprint(numbers[k]))
		default:
			words = append(words, fmt.Sprintf("%d to %d", numbers[i], numbers[k]))
		}
		i = k + 1
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
