package ground

import (
	"cmp"
	"slices"
)

// walk returns the stakes in the order a crew sets them out: the left row of a straight tunnel from end to end, then the right one, each with its guy
// stakes; round a bend, where both rows are found together, pair by pair.
func (l Layout) walk() []Stake {
	stakes := slices.Clone(l.Stakes)
	slices.SortStableFunc(stakes, func(a, b Stake) int {
		if l.Straight {
			return cmp.Or(cmp.Compare(a.Side, b.Side), cmp.Compare(paced(a), paced(b)))
		}
		return cmp.Or(cmp.Compare(paced(a), paced(b)), cmp.Compare(a.Side, b.Side))
	})
	return stakes
}

// paced is how far along the walk a stake stands, in eighths of a millimetre: the last digit of a sum parts no stakes that stand side by side.
func paced(s Stake) int64 { return int64(s.Along*8 + 0.5) }
