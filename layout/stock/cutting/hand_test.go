package cutting

import "testing"

// A problem is as large as is allowed or is refused, whatever its pieces are parted into.
func TestMostPieces(t *testing.T) {
	for _, c := range []struct {
		counts []int
		fits   bool
	}{{[]int{mostCount}, true}, {[]int{mostCount + 1}, false}, {[]int{mostCount - 1, 1}, true}, {[]int{mostCount, 1}, false}, {[]int{mostCount / 2, mostCount / 2, 1}, false}} {
		p := Problem{Stocks: []Stock{{Length: 10, Price: 1, Most: Unlimited}}}
		for i, n := range c.counts {
			p.Pieces = append(p.Pieces, Piece{Length: int64(i + 1), Count: n})
		}
		if err := p.check(); (err == nil) != c.fits {
			t.Errorf("%v pieces: %v", c.counts, err)
		}
	}
}
