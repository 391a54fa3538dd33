package sharing

import (
	"slices"
	"testing"
)

// A part's plugs go to the nearest source of its own groups with room, those with the shortest way first; nobody goes to a source of the other
// part's, or of none. By hand: the first plug would be nearer to source 1, which is the other part's; of part 1 the second comes before the third
// and leaves it half of source 1, so that the third goes on to source 2; the fourth wants more than any has, and source 3 is nobody's.
func TestFillByHand(t *testing.T) {
	same := func(amps float64) []float64 { return []float64{amps, amps, amps, amps} }
	p := &Problem{Parts: 2, Allowed: []float64{2, 2, 2, 9}, Groups: [][]int{{0}, {1}, {2}, {3}}, Sources: []Source{{0, 20, 15}, {1, 20, 15}, {2, 20, 15}, {3, 20, 15}}, Plugs: []Plug{
		{Part: 0, Wants: 1, Draws: same(1), Ways: []float64{50, 10, 90, 5}},
		{Part: 1, Wants: 1, Draws: same(1), Ways: []float64{10, 50, 90, 5}},
		{Part: 1, Wants: 2, Draws: same(2), Ways: []float64{10, 60, 95, 5}},
		{Part: 1, Wants: 3, Draws: same(3), Ways: []float64{10, 60, 95, 5}},
	}}
	got := p.fill([][]int{{0}, {1, 2}})
	if want := []int{0, 1, 2, -1}; !slices.Equal(got.Of, want) || got.Length != 50+50+95 || got.Missing != 3 || got.Used != 3 {
		t.Errorf("%+v, want %v over a length of 195, 3 A missing, 3 groups", got, want)
	}
}
