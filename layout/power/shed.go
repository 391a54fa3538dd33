// Cords that the organiser owns, and prices.

package power

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// shed is the cords that the organiser owns, and what others cost. A longer cord may stand in for a shorter one of its kind.
type shed struct {
	owned  map[string][]measure.Length         // by cord name, each cord once
	prices map[string]map[measure.Length]int64 // that the spec gives
}

// shed reads the spec's stock; nil where it says nothing of cords.
func (f *feeding) shed() *shed {
	h := &shed{owned: map[string][]measure.Length{}, prices: f.prices.cords}
	for _, o := range f.in.Spec.Stock.Own {
		if c, ok := catalog.FindCord(o.Item); ok && o.Length > 0 {
			for range o.Good() {
				h.owned[c.Name] = append(h.owned[c.Name], o.Length)
			}
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
			if j.Socket > 0 { // a cord with several sockets has no stand-in
				continue
			}
			for k, l := range j.Cords {
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
		return float64(h.prices[n.name][n.length])
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
	h := f.shed()
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
		before := f.worst(*one)
		j := &one.Joints[n.joint]
		j.Cords[n.cord], j.Copper = l, j.Copper+l-n.length
		volts(one.Joints, one.Volts, one.cord)
		if after := f.worst(*one); n.amps > one.cord.AmpsAt(l)+hair || rank(after) > rank(before) {
			j.Cords[n.cord], j.Copper = n.length, j.Copper+n.length-l
			volts(one.Joints, one.Volts, one.cord)
		}
	}
}

// kind changes a feeder's kind of cord to a thicker one where then less is to be bought for all feeders.
func (f *feeding) kind(h *shed, feeders []Feeder, d int) {
	one := &feeders[d]
	if one.Cord == "" || slices.ContainsFunc(one.Joints, func(j Joint) bool { return j.Socket > 0 }) {
		return
	}
	now, was := one.cord, f.worst(*one)
	best := now
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
			if rank(f.worst(*one)) <= rank(was) {
				best = c
			}
		}
	}
	f.wire(one, best)
	volts(one.Joints, one.Volts, best)
}

// prices is what cords and three-ways cost, in hundredths of the currency: as the spec's stock has it, else as its own cord or three-way does,
// else assumed.
type prices struct {
	tap   int64
	items map[string]int64
	cords map[string]map[measure.Length]int64
}

func pricesOf(s *spec.Spec) prices {
	price, _ := catalog.AssumedPrice("three-way tap")
	p := prices{tap: hundredths(price), items: map[string]int64{}, cords: map[string]map[measure.Length]int64{}}
	if t := s.Power.Taps; len(t) > 0 && t[0].Price != nil {
		p.tap = hundredths(*t[0].Price)
	}
	for _, sale := range s.Stock.Sell {
		switch c, ok := catalog.FindCord(sale.Item); {
		case sale.Price == nil:
		case sale.Item == "three-way tap":
			p.tap = hundredths(*sale.Price)
		case ok && sale.Length > 0:
			if p.cords[c.Name] == nil {
				p.cords[c.Name] = map[measure.Length]int64{}
			}
			p.cords[c.Name][sale.Length] = hundredths(*sale.Price)
		case sale.Length == 0:
			p.items[sale.Item] = hundredths(*sale.Price)
		}
	}
	return p
}

func hundredths(price float64) int64 { return int64(math.Round(100 * price)) }

// inline returns what a cord with several sockets costs.
func (p prices) inline(c catalog.Inline) int64 {
	if v, ok := p.items[c.Name()]; ok {
		return v
	}
	return hundredths(c.AssumedPrice())
}

// cord returns what lengths of a kind of cord cost.
func (p prices) cord(c catalog.Cord) func(measure.Length) int64 {
	known := p.cords[c.Name]
	return func(l measure.Length) int64 {
		if v, ok := known[l]; ok {
			return v
		}
		return hundredths(c.AssumedPrice(l))
	}
}
