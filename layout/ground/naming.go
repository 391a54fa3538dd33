package ground

import (
	"cmp"

	"hoopwright/layout/measure"
)

// mostNames is how many stakes, arches or bays a finding names; of more it counts the rest.
const mostNames = 6

func before(a, b measure.Length, i, j int) int { return cmp.Or(cmp.Compare(a, b), cmp.Compare(i, j)) }
