package bend

import "math"

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
