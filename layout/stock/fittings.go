package stock

import (
	"fmt"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// fittings lists what joins the pipe: at each crown a tee where the ridge ends, a cross where it goes on, a coupling where there is
// no ridge; couplings within legs; bushings where the ridge is of another size. They go by the names that the spec's stock has for them.
func (b *basket) fittings(in Input) {
	type fitted struct {
		pipe                           string
		tees, crosses, couplings, came int
	}
	var list []fitted
	cemented := 0
	for _, a := range in.Arches {
		if a.Kind == nil {
			continue
		}
		pipe := a.Kind.Spec.Pipe.Name
		of := entry(&list, fitted{pipe: pipe}, func(f fitted) bool { return f.pipe == pipe })
		for side, sticks := range [][]measure.Length{a.Left, a.Right} {
			n, leg := max(0, len(sticks)-1), lights.Leg(spec.Side(side), a.Number)
			if b.glued[leg] {
				continue // none is loose
			}
			of.couplings += n
			if b.came[leg] {
				of.came += n
			}
			cemented += n
		}
		switch in.Spec.CrownFitting(a.Number) {
		case spec.Tee:
			of.tees++
		case spec.Cross:
			of.crosses++
		case spec.Coupling:
			of.couplings++
		}
	}
	spare := 0 // one of each kind
	if in.Spec.Stock.Spares > 0 {
		spare = 1
	}
	fitting := func(kind Kind, name, of string, need, came int) {
		if need > 0 {
			b.add(Item{Item: name, Kind: kind, Of: of, Need: need + spare, Spare: spare, Wrapped: came, Unit: Each, Where: wherePipe})
		}
	}
	sockets, held := 0, 0
	for _, f := range list {
		fitting(Tee, "tee "+f.pipe, f.pipe, f.tees, 0)
		fitting(Cross, "cross "+f.pipe, f.pipe, f.crosses, 0)
		fitting(Coupling, "coupling "+f.pipe, f.pipe, f.couplings, f.came)
		sockets += 3*f.tees + 4*f.crosses + 2*f.couplings
		held += 2 * f.came
	}
	for _, j := range bushings(in) {
		fitting(Bushing, fmt.Sprintf("bushing %s to %s", j.pipe, in.Spec.Ridge.Pipe.Name), j.pipe, j.count, 0)
	}
	switch in.Spec.Arch.Joints {
	case spec.Pinned:
		b.add(Item{Item: "stainless screw 1/2 in", Kind: Screw, Need: sockets, Wrapped: held, Unit: Each, Where: wherePipe})
	case spec.Glued:
		b.add(Item{Item: "solvent cement and primer", Kind: Cement, Need: min(1, cemented), Unit: Set, Where: wherePipe})
	}
}

// joint counts the bushings that go into crown fittings of one pipe.
type joint struct {
	pipe  string
	count int
}

// bushings counts the ridge piece ends that meet a crown fitting of another size.
func bushings(in Input) []joint {
	var list []joint
	for i := range in.Ridge {
		for _, a := range in.Arches[i : i+2] {
			if a.Kind == nil || a.Kind.Spec.Pipe.OD == in.Spec.Ridge.Pipe.OD {
				continue
			}
			pipe := a.Kind.Spec.Pipe.Name
			entry(&list, joint{pipe: pipe}, func(j joint) bool { return j.pipe == pipe }).count++
		}
	}
	return list
}
