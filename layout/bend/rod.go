package bend

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Stretch is a part of the rod's length that is the same throughout.
type Stretch struct {
	Length    float64 // m, positive
	Stiffness float64 // E·I, N·m², positive; +Inf for a rigid stretch
	Torsion   float64 // G·J, N·m²; only stability out of the plane asks for it
	Weight    float64 // N, of the whole stretch, spread evenly
	Turn      float64 // rad, the angle it turns by when no moment acts; a rigid stretch turns at its middle
}

// Rigid reports whether the stretch cannot bend.
func (s Stretch) Rigid() bool { return math.IsInf(s.Stiffness, 1) }

// Load is a weight beside the stretches' own, or a push, or both.
type Load struct {
	From, To float64 // m along the rod; equal for a point load
	Weight   float64 // N, whole; negative lifts
	Push     float64 // N, whole, level and in the plane: along +x, or square to it
}

// End is how the rod is held at one of its feet.
type End struct {
	Angle  float64 // rad, of the tangent in the direction of rising s: 0 along +x, π/2 up
	Hinged bool    // free to turn; Angle is then only where the search begins
}

// Rod is a rod between two feet. It starts at the origin and ends at (DX, DY).
type Rod struct {
	Stretches     []Stretch
	Loads         []Load
	Start, Finish End
	DX, DY        float64
}

// Length returns the whole length in metres.
func (r Rod) Length() float64 {
	sum := 0.0
	for _, s := range r.Stretches {
		sum += s.Length
	}
	return sum
}

// Heavier returns the rod with all its weights so many times; the stretches and loads are its own.
func (r Rod) Heavier(times float64) Rod {
	r.Stretches, r.Loads = slices.Clone(r.Stretches), slices.Clone(r.Loads)
	for i := range r.Stretches {
		r.Stretches[i].Weight *= times
	}
	for i := range r.Loads {
		r.Loads[i].Weight *= times
	}
	return r
}

// Unsolved says why there is no shape, and what was tried.
type Unsolved struct {
	Reason string
	Tried  []string
}

// Error returns the reason and what was tried.
func (u *Unsolved) Error() string {
	text := "bend: " + u.Reason
	if len(u.Tried) > 0 {
		text += "; tried " + strings.Join(u.Tried, ", ")
	}
	return text
}

// check returns an *Unsolved for a rod that is no rod, or one that cannot reach from foot to foot.
func (r Rod) check() error {
	bends := false
	for i, s := range r.Stretches {
		switch {
		case !(s.Length > 0) || math.IsInf(s.Length, 0):
			return &Unsolved{Reason: fmt.Sprintf("stretch %d has length %g", i, s.Length)}
		case !(s.Stiffness > 0):
			return &Unsolved{Reason: fmt.Sprintf("stretch %d has stiffness %g", i, s.Stiffness)}
		case !finite(s.Weight) || !finite(s.Turn):
			return &Unsolved{Reason: fmt.Sprintf("stretch %d has weight %g and turn %g", i, s.Weight, s.Turn)}
		}
		bends = bends || !s.Rigid()
	}
	if !bends {
		return &Unsolved{Reason: "no stretch of the rod can bend"}
	}
	length := r.Length()
	for i, l := range r.Loads {
		if !finite(l.Weight) || !finite(l.Push) || !(l.From >= 0) || !(l.To >= l.From) || !(l.To <= length*(1+1e-9)) {
			return &Unsolved{Reason: fmt.Sprintf("load %d of %g and %g N lies from %g to %g m on a rod of %g m", i, l.Weight, l.Push, l.From, l.To, length)}
		}
	}
	if !finite(r.Start.Angle) || !finite(r.Finish.Angle) || !finite(r.DX) || !finite(r.DY) {
		return &Unsolved{Reason: "a foot's place or angle is not a number"}
	}
	if chord := math.Sqrt(r.DX*r.DX + r.DY*r.DY); chord >= length {
		return &Unsolved{Reason: fmt.Sprintf("a rod of %g m cannot reach over %g m", length, chord)}
	}
	return nil
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// SetTo returns the rod as one that has crept to a shape and rests there with that shape's moments: a sudden load then meets the rod's own stiffness about it
// (the moments of strain kept and of strain added are summed, after Boltzmann: σ = E_long·ε₀ + E_short·Δε). rest is of a rod cut alike into stretches; parts is about
// how many pieces of its own bend each it is cut into.
func (r Rod) SetTo(rest *Shape, parts int) Rod {
	step := r.Length() / float64(parts)
	var set []Stretch
	at := 0.0
	for _, st := range r.Stretches {
		if st.Rigid() {
			set = append(set, st)
			at += st.Length
			continue
		}
		n := max(int(math.Ceil(st.Length/step-1e-9)), 1)
		h := st.Length / float64(n)
		for range n {
			a, m, b := rest.At(at), rest.At(at+h/2), rest.At(at+h)
			moment := (a.Moment + 4*m.Moment + b.Moment) / 6
			set = append(set, Stretch{h, st.Stiffness, st.Torsion, st.Weight / float64(n), b.Angle - a.Angle - moment*h/st.Stiffness})
			at += h
		}
	}
	r.Stretches = set
	return r
}
