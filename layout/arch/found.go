package arch

import (
	"slices"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// AsFound is what an arch's crown, measured as it stood, tells of its pipe.
type AsFound struct {
	Arch    int            `json:"arch"`
	Crown   measure.Length `json:"crown_mm"`   // as measured
	Planned measure.Length `json:"planned_mm"` // what it was to be by then, over the span that was measured
	Off     bool           `json:"off"`        // by more than the give or take of the plan
	Left    measure.Share  `json:"left"`       // of the pipe's modulus, which gives that crown; 0 where none does
	Spread  measure.Length `json:"spread_mm"`  // feet so much farther apart give it with the planned modulus; 0 where they do not
}

// leastLeft is the least share of the modulus that is looked for.
const leastLeft = 0.05

// Found tells what a measured crown means: the pipe is softer than planned, or its feet stand farther apart. Of an arch that was tried by itself the ridge is not counted, and its
// pipe is new. The kind has stood; it is not told of one that is only drawn.
func (k *Kind) Found(m spec.Measured, trial bool) (AsFound, bool) {
	if k.built == nil {
		return AsFound{}, false
	}
	f, left := k.built.frame, float64(k.Spec.LateModulus)
	if trial {
		in := *f.in
		in.Loads = slices.DeleteFunc(slices.Clone(in.Loads), func(l Load) bool { return l.Run > 0 && l.From == k.CrownTape && l.To == k.CrownTape })
		f.in, left = &in, 1
	}
	if m.Span > 0 {
		f.spec.Span = m.Span
	}
	solver := bend.NewSolver(0)
	crown := func(left float64, wider measure.Length) measure.Length {
		g := f
		g.spec.Span += wider
		rod := g.rod(left, k.built.feet)
		shape, err := solver.Solve(rod)
		if err != nil || !shape.Stable {
			return 0 // it does not stand so
		}
		return measure.Length(shape.At(g.crown.Metres()).Y-rod.DY/2) * measure.Metre
	}
	a := AsFound{Arch: m.Arch, Crown: m.Crown, Planned: crown(left, 0)}
	if a.Planned <= 0 {
		return a, false
	}
	give := k.GiveOrTake(f.in.Units)
	if m.Span > 0 { // most of what the plan gives or takes is where the feet stand
		give = Printed(0, f.in.Units)
	}
	a.Off = m.Crown < a.Planned-give || m.Crown > max(a.Planned, crown(1, 0))+give
	if m.Crown >= a.Planned {
		a.Left = measure.Share(left)
		return a, true
	}
	if crown(leastLeft, 0) < m.Crown {
		a.Left = measure.Share(halve(leastLeft, left, func(x float64) bool { return crown(x, 0) < m.Crown }))
	}
	if most := practice.FeetSlip(f.in.Units); m.Span == 0 && crown(left, most) < m.Crown {
		a.Spread = measure.Length(halve(0, float64(most), func(x float64) bool { return crown(left, measure.Length(x)) > m.Crown }))
	}
	return a, true
}

// halve finds where below stops to hold between low, where it does, and high, where it does not.
func halve(low, high float64, below func(float64) bool) float64 {
	for range 40 {
		if mid := (low + high) / 2; below(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
