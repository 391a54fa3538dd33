package power

import (
	"cmp"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// shed is what cords cost, and those that the organiser owns. A longer cord may stand in for a shorter one of its kind.
type shed struct {
	owned  map[string][]measure.Length // by cord name, each cord once
	prices map[string]map[measure.Length]float64
}

// shedOf reads the spec's stock; nil where it says nothing of cords.
func shedOf(s spec.Stock) *shed {
	h := &shed{owned: map[string][]measure.Length{}, prices: map[string]map[measure.Length]float64{}}
	for _, o := range s.Own {
		if c, ok := catalog.FindCord(o.Item); ok && o.Length > 0 {
			for range o.Good() {
				h.owned[c.Name] = append(h.owned[c.Name], o.Length)
			}
		}
	}
	for _, o := range s.Sell {
		if c, ok := catalog.FindCord(o.Item); ok && o.Length > 0 && o.Price != nil {
			if h.prices[c.Name] == nil {
				h.prices[c.Name] = map[measure.Length]float64{}
			}
			h.prices[c.Name][o.Length] = *o.Price
		}
	}
	if len(h.owned) == 0 && len(h.prices) == 0 {
		return nil
	}
	return h
}

// need is a cord to lay.
type need struct {
	feeder, joint, cord int
	name                string
	length              measure.Length
	amps                measure.Current
}

// needs lists the cords of feeders.
func needs(feeders []Feeder) []need {
	var out []need
	for d, one := range feeders {
		for i, j := range one.Joints {
			for k, l := range j.Cords {
				if j.Socket > 0 && k == len(j.Cords)-1 {
					continue // a cord with several sockets has no stand-in
				}
				out = append(out, need{d, i, k, one.Cord, l, j.Amps})
			}
		}
	}
	return out
}

// priced reports whether the price of every cord to lay is known.
func (h *shed) priced(list []need) bool {
	return !slices.ContainsFunc(list, func(n need) bool {
		_, ok := h.prices[n.name][n.length]
		return !ok
	})
}

// worth is what one cord costs, or its length where prices are not compared.
func (h *shed) worth(n need, money bool) float64 {
	if money {
		return h.prices[n.name][n.length]
	}
	return float64(n.length)
}

// match gives owned cords of one kind to needs so that what is left to buy is worth least, and returns the length of each need's owned
// cord, zero for none. The needs that a shed can serve together are the independent sets of a matroid, so the dearest first is
// exact (Edmonds 1971); a set can be served if for each length no more of it are longer than owned cords are. Of owned
// cords that do, the shortest goes to the longest need.
func (h *shed) match(list []need, owned []measure.Length, money bool) []measure.Length {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(h.worth(list[b], money), h.worth(list[a], money)) })
	var served []int
	for _, i := range order {
		if try := append(slices.Clone(served), i); len(try) <= len(owned) && give(list, try, owned) != nil {
			served = try
		}
	}
	out := make([]measure.Length, len(list))
	for n, l := range give(list, served, owned) {
		out[served[n]] = l
	}
	return out
}

// give returns an owned cord for each of the served needs, the shortest that does, longest need first; nil where there are too few.
func give(list []need, served []int, owned []measure.Length) []measure.Length {
	free := slices.Sorted(slices.Values(owned))
	order := make([]int, len(served))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(list[served[b]].length, list[served[a]].length) })
	out := make([]measure.Length, len(served))
	for _, i := range order {
		k := slices.IndexFunc(free, func(l measure.Length) bool { return l >= list[served[i]].length-dust })
		if k < 0 {
			return nil
		}
		out[i] = free[k]
		free = slices.Delete(free, k, k+1)
	}
	return out
}

// bill is what cords cost in all, or their length, when the shed has given what it has. It says which owned cord goes where.
func (h *shed) bill(list []need, money bool) (sum float64, lengths []measure.Length) {
	lengths = make([]measure.Length, len(list))
	for _, c := range catalog.Cords() {
		var kind []need
		var at []int
		for i, n := range list {
			if n.name == c.Name {
				kind, at = append(kind, n), append(at, i)
			}
		}
		for i, l := range h.match(kind, h.owned[c.Name], money) {
			if lengths[at[i]] = l; l == 0 {
				sum += h.worth(kind[i], money)
			}
		}
	}
	return sum, lengths
}

// stock takes owned cords for those to lay, and for each feeder the kind of cord for which least is to be bought; it leaves
// what would carry too little or lose more than the thinnest kind that does.
func (f *feeding) stock(feeders []Feeder) {
	h := shedOf(f.in.Spec.Stock)
	if h == nil {
		return
	}
	for d := range feeders {
		f.kind(h, feeders, d)
	}
	list := needs(feeders)
	_, lengths := h.bill(list, h.priced(list))
	for i, l := range lengths {
		if l == 0 {
			continue
		}
		n, one := list[i], &feeders[list[i].feeder]
		c, _ := catalog.FindCord(n.name)
		before := f.worst(one.Joints, one.Volts)
		j := &one.Joints[n.joint]
		j.Cords[n.cord], j.Copper = l, j.Copper+l-n.length
		volts(one.Joints, one.Volts, c)
		if after := f.worst(one.Joints, one.Volts); n.amps > c.AmpsAt(l)+hair || rank(after) > rank(before) {
			j.Cords[n.cord], j.Copper = n.length, j.Copper+n.length-l
			volts(one.Joints, one.Volts, c)
		}
	}
}

// kind changes a feeder's kind of cord to a thicker one where then less is to be bought for all feeders.
func (f *feeding) kind(h *shed, feeders []Feeder, d int) {
	one := &feeders[d]
	if one.Cord == "" || slices.ContainsFunc(one.Joints, func(j Joint) bool { return j.Socket > 0 }) {
		return
	}
	now, _ := catalog.FindCord(one.Cord)
	best := now
	was := f.worst(one.Joints, one.Volts)
	for _, c := range cordsFor(one.Volts) {
		if c.Area <= now.Area || !slices.Equal(c.Lengths, now.Lengths) || !carries(c, one.Joints) {
			continue
		}
		one.Cord = best.Name
		have := needs(feeders)
		one.Cord = c.Name
		want := needs(feeders)
		money := h.priced(have) && h.priced(want)
		before, _ := h.bill(have, money)
		if after, _ := h.bill(want, money); after < before-hair {
			volts(one.Joints, one.Volts, c)
			if drop := f.worst(one.Joints, one.Volts); rank(drop) <= rank(was) {
				best = c
			}
		}
	}
	one.Cord, one.Gauge = best.Name, f.in.Spec.Units.Gauge(best.Area)
	volts(one.Joints, one.Volts, best)
}
