package arch

import (
	"testing"

	"hoopwright/layout/bend"
)

// TestAlongParts: four times as many parts change little of what a row bears along the tunnel.
func TestAlongParts(t *testing.T) {
	tun := tunnel(6, hoop(), guyed(7*foot, 1, 6))
	k := tun.Arches[0].Kind
	r := tun.rows([]int{1, 6})[0]
	figures := func() (float64, float64, float64) {
		lean, _, ok := r.lean(false)
		list, _, _ := r.pulls(false)
		if !ok {
			t.Fatal("it does not stand")
		}
		return lean, list[0].moment[0], r.factor()
	}
	lean, moment, factor := figures()
	fine := bend.NewSolver(4 * alongParts)
	k.braced.free, k.braced.tied = k.built.leanings(fine, k.Sideways, nil), k.built.leanings(fine, k.Sideways, k.built.ties(k))
	l, m, f := figures()
	close2(t, "lean", lean, l, .02)
	close2(t, "moment at the foot of a guyed arch", moment, m, .02)
	close2(t, "factor", factor, f, .015)
}
