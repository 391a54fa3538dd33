package stock

import (
	"fmt"

	"hoopwright/layout/catalog"
	"hoopwright/layout/spec"
)

// fittings lists what joins the pipe: at each crown a tee where the ridge ends, a cross where it goes on, a coupling where there is
// no ridge; couplings within legs; bushings where the ridge is of another size. They go by the names that the spec's stock has for them.
func (b *basket) fittings(in Input) {
	var order []string
	tees, crosses, couplings := map[string]int{}, map[string]int{}, map[string]int{}
	for _, a := range in.Arches {
		if a.Kind == nil {
			continue
		}
		pipe := a.Kind.Spec.Pipe.Name
		if tees[pipe]+crosses[pipe]+couplings[pipe] == 0 {
			order = append(order, pipe)
		}
		couplings[pipe] += max(0, len(a.Left)-1) + max(0, len(a.Right)-1)
		switch in.Spec.CrownFitting(a.Number) {
		case spec.Tee:
			tees[pipe]++
		case spec.Cross:
			crosses[pipe]++
		case spec.Coupling:
			couplings[pipe]++
		}
	}
	sockets := 0
	for _, pipe := range order {
		b.add(Item{Item: "tee " + pipe, Need: tees[pipe], Unit: Each, Fitting: true, Where: wherePipe, Why: "crown of each end arch, three plain sockets"})
		b.add(Item{Item: "cross " + pipe, Need: crosses[pipe], Unit: Each, Fitting: true, Where: wherePipe, Why: "crown of each arch between, four plain sockets"})
		b.add(Item{Item: "coupling " + pipe, Need: couplings[pipe], Unit: Each, Fitting: true, Where: wherePipe, Why: "joins two sticks end to end"})
		sockets += 3*tees[pipe] + 4*crosses[pipe] + 2*couplings[pipe]
	}
	for _, j := range bushings(in) {
		b.add(Item{Item: fmt.Sprintf("bushing %s to %s", j.pipe, in.Spec.Ridge.Pipe.Name), Need: j.count, Unit: Each, Fitting: true, Where: wherePipe,
			Why: "both ends of each ridge piece, since the ridge is of another size than the crowns"})
	}
	switch in.Spec.Arch.Joints {
	case spec.Pinned:
		b.add(Item{Item: "stainless screw 1/2 in", Need: sockets, Unit: Each, Where: wherePipe, Why: "one through each socket"})
	case spec.Glued:
		b.add(Item{Item: "solvent cement and primer", Need: 1, Unit: Set, Where: wherePipe, Why: "for this pipe; use in open air, no flame near; glued joints do not come apart for storing"})
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
			k := len(list)
			for i, j := range list {
				if j.pipe == pipe.Name {
					k = i
				}
			}
			if k == len(list) {
				list = append(list, joint{pipe: pipe.Name})
			}
			list[k].count++
		}
	}
	return list
}
