package stock

import (
	"fmt"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// fittings lists what joins the pipe: at each crown a tee where the ridge ends, a cross where it goes on, a coupling where there is
// no ridge; couplings within legs; bushings where the ridge is of another size. They go by the names that the spec's stock has for them.
func (b *basket) fittings(in Input) {
	var order []string
	tees, crosses, couplings, came := map[string]int{}, map[string]int{}, map[string]int{}, map[string]int{}
	for _, a := range in.Arches {
		if a.Kind == nil {
			continue
		}
		pipe := a.Kind.Spec.Pipe.Name
		if tees[pipe]+crosses[pipe]+couplings[pipe] == 0 {
			order = append(order, pipe)
		}
		for side, sticks := range [][]measure.Length{a.Left, a.Right} {
			n := max(0, len(sticks)-1)
			couplings[pipe] += n
			if b.came[lights.Leg(spec.Side(side), a.Number)] {
				came[pipe] += n
			}
		}
		switch in.Spec.CrownFitting(a.Number) {
		case spec.Tee:
			tees[pipe]++
		case spec.Cross:
			crosses[pipe]++
		case spec.Coupling:
			couplings[pipe]++
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
	for _, pipe := range order {
		fitting(Tee, "tee "+pipe, pipe, tees[pipe], 0)
		fitting(Cross, "cross "+pipe, pipe, crosses[pipe], 0)
		fitting(Coupling, "coupling "+pipe, pipe, couplings[pipe], came[pipe])
		sockets += 3*tees[pipe] + 4*crosses[pipe] + 2*couplings[pipe]
		held += 2 * came[pipe]
	}
	for _, j := range bushings(in) {
		fitting(Bushing, fmt.Sprintf("bushing %s to %s", j.pipe, in.Spec.Ridge.Pipe.Name), j.pipe, j.count, 0)
	}
	switch in.Spec.Arch.Joints {
	case spec.Pinned:
		b.add(Item{Item: "stainless screw 1/2 in", Kind: Screw, Need: sockets, Wrapped: held, Unit: Each, Where: wherePipe})
	case spec.Glued:
		b.add(Item{Item: "solvent cement and primer", Kind: Cement, Need: 1, Unit: Set, Where: wherePipe})
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
	pipeOf := func(number int) (catalog.Pipe, bool) {
		for _, a := range in.Arches {
			if a.Number == number && a.Kind != nil {
				return a.Kind.Spec.Pipe, true
			}
		}
		return catalog.Pipe{}, false
	}
	for _, r := range in.Ridge {
		for _, number := range []int{r.Bay, r.Bay + 1} {
			pipe, ok := pipeOf(number)
			if !ok || pipe.OD == in.Spec.Ridge.Pipe.OD {
				continue
			}
			k := slices.IndexFunc(list, func(j joint) bool { return j.pipe == pipe.Name })
			if k < 0 {
				k = len(list)
				list = append(list, joint{pipe: pipe.Name})
			}
			list[k].count++
		}
	}
	return list
}
