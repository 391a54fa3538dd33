package power

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// atOutlet is what is plugged into one source.
type atOutlet struct {
	laid []laid
	dry  []int // units for which it has no socket
}

// outlet lays everything that is plugged into one source. From sharing to sharing most sources feed the same, so what was laid is kept.
func (f *feeding) outlet(s sharing, k int, run measure.Length) atOutlet {
	var lists [2][]int
	for i, of := range s.of {
		if of == k {
			lists[s.walls[i]] = append(lists[s.walls[i]], i)
		}
	}
	key := fmt.Sprint(k, run, lists)
	if o, ok := f.outlets[key]; ok {
		return o
	}
	src := f.sharer.sources[k]
	var all []branch
	for side, list := range lists {
		side := spec.Side(side)
		all = append(all, branches(side, f.nodes(k, side, list), src.most)...)
	}
	var o atOutlet
	sockets, rest := pack(f.spread(src, all, run), src.outlet.Sockets, src.most)
	for _, list := range sockets {
		o.laid = append(o.laid, f.choose(src, list))
	}
	for _, r := range rest {
		for _, n := range r.nodes {
			o.dry = append(o.dry, n.units...)
		}
	}
	f.outlets[key] = o
	return o
}

// pack puts branches into an outlet's sockets: one in each while there are enough, then up to three behind a tap in the outlet, as
// far as its plug carries. What finds no place is returned as rest.
func pack(all []branch, sockets int, most measure.Current) (in [][]branch, rest []branch) {
	if len(all) <= sockets {
		for _, b := range all {
			in = append(in, []branch{b})
		}
		return in, nil
	}
	order := slices.Clone(all)
	slices.SortStableFunc(order, func(a, b branch) int { return cmp.Compare(b.amps, a.amps) })
	sums := make([]measure.Current, sockets)
	in = make([][]branch, sockets)
	for _, b := range order {
		best := -1
		for s := range in {
			if len(in[s]) < 3 && sums[s]+b.amps <= most+hair && (best < 0 || len(in[s]) < len(in[best])) {
				best = s
			}
		}
		if best < 0 {
			rest = append(rest, b)
			continue
		}
		in[best] = append(in[best], b)
		sums[best] += b.amps
	}
	return slices.DeleteFunc(in, func(list []branch) bool { return len(list) == 0 }), rest
}
