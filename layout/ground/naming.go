package ground

import (
	"cmp"
	"fmt"
	"strings"

	"hoopwright/layout/measure"
)

// names lists stakes in a sentence: "L3", "L3 and R3", and no more than six of many.
func names(list []string) string {
	const most = 6
	n := len(list)
	switch {
	case n == 1:
		return list[0]
	case n > most+1:
		return fmt.Sprintf("%s and %d more", strings.Join(list[:most], ", "), n-most)
	}
	return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
}

// verb agrees with a list of stakes: one "stands", more "stand".
func verb(list []string, one, more string) string {
	if len(list) == 1 {
		return one
	}
	return more
}

func before(a, b measure.Length, i, j int) int { return cmp.Or(cmp.Compare(a, b), cmp.Compare(i, j)) }
