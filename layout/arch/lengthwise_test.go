package arch

import (
	"testing"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
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

// TestHeldOneWay: guys of one end alone hold nothing against leaning toward them: load factor and ice are about those of the row without guys. Guys tied low bear no
// more ice than the row bears weight for, and better guys never less.
func TestHeldOneWay(t *testing.T) {
	in := hoop()
	solved := func(guys spec.Guys) *Kind {
		tun := tunnel(6, in, guys)
		tun.Weather()
		return tun.Arches[0].Kind
	}
	free := solved(spec.Guys{})
	for _, end := range []int{1, 6} {
		k := solved(guyed(7*foot, end))
		close2(t, "factor, one end guyed", k.LoadFactor, free.LoadFactor, .03)
		close2(t, "ice late, one end guyed", k.IceLate.Inches(), free.IceLate.Inches(), .15)
		close2(t, "ice as new, one end guyed", k.IceNew.Inches(), free.IceNew.Inches(), .15)
	}
	before := free
	for _, from := range []measure.Length{3 * foot, 5 * foot, 7 * foot} {
		k := solved(guyed(from, 1, 6))
		if k.LoadFactor <= before.LoadFactor || k.IceLate <= before.IceLate || k.IceNew <= before.IceNew {
			t.Errorf("tied %g ft up: %g times, ice %g and %g in; before %g, %g and %g", float64(from/foot), k.LoadFactor, k.IceLate.Inches(), k.IceNew.Inches(),
				before.LoadFactor, before.IceLate.Inches(), before.IceNew.Inches())
		}
		before = k
	}
	if k := solved(guyed(3*foot, 1, 6)); k.IceLate > 2*free.IceLate {
		t.Errorf("tied 3 ft up it bears %g in of ice, without guys %g", k.IceLate.Inches(), free.IceLate.Inches())
	}
}
