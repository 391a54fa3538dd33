package weather

import (
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/bend"
	"hoopwright/layout/catalog"
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
	k.braced.free, k.braced.tied = k.built.leanings(fine, k.Sideways, nil), k.built.leanings(fine, k.Sideways, k.TiedAt(k.TieHeight()))
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

// TestIceOfFlatArch: an arch that leans over in its sag, and would hang again under much more, bears no more ice late than as raised, and less than the weight it bears beyond its own.
func TestIceOfFlatArch(t *testing.T) {
	in := hoop()
	in.Spec.Pipe, _ = catalog.FindPipe("pvc sch40 3/4 in")
	leg := []measure.Length{126 * measure.Inch, 18 * measure.Inch, 18 * measure.Inch}
	in.Spec.Left, in.Spec.Right, in.Spec.Span = leg, leg, 240*measure.Inch
	in.LeftGround, in.RightGround = -10*measure.Inch, 10*measure.Inch
	for _, weight := range []measure.Force{.5 * pound, 1.5 * pound, 2.5 * pound} {
		in.Loads = []arch.Load{{To: 324 * measure.Inch, Weight: weight}}
		k := tunnel(1, in, spec.Guys{}).Arches[0].Kind
		ice := k.built.iceOn(k.IceLate)
		if k.LoadFactor <= 1 || k.IceLate <= 0 || k.IceNew < k.IceLate || ice > 1.01*(k.LoadFactor-1)*float64(k.Weight) {
			t.Errorf("%.1f lb: %.2f times, %.2f in of ice late, %.2f as raised; it weighs %.1f N of %.1f", float64(weight/pound), k.LoadFactor, k.IceLate.Inches(), k.IceNew.Inches(), ice, float64(k.Weight))
		}
	}
}
