package stock

import (
	"slices"

	"hoopwright/layout/lights"
	"hoopwright/layout/spec"
)

// Wrapped tells which legs the shed can hold with their strings on: those whose sticks, as long as they stand, and whose strings it holds. Which of them it lacks nobody says: the last.
type Wrapped struct {
	Legs                  map[lights.Part]bool
	Lack, Sticks, Strings int // wound legs that it cannot hold, and what it is short of for them
}

// woundLeg is what is put away in one piece: a leg with its strings, or both where the arch is bent from one stick.
type woundLeg struct {
	legs    []lights.Part
	pieces  []Piece
	strings []string
}

// woundLegs are the legs that strings are wound on.
func woundLegs(in Input, all []Piece) (list []woundLeg) {
	at := map[lights.Part]int{}
	for _, p := range all {
		part := p.ID.Part
		if p.ID.Steel || p.ID.Brace || part.Kind == lights.Ridge {
			continue
		}
		k, seen := at[part]
		if !seen {
			legs := legsOf(part)
			k, list = len(list), append(list, woundLeg{legs: legs})
			at[part] = k
			for _, leg := range legs {
				at[leg] = k
			}
		}
		list[k].pieces = append(list[k].pieces, p)
	}
	for _, s := range in.Strings {
		if k, ok := at[s.Run.Part]; ok && s.Run.Wound() && s.Run.IsLeg() {
			list[k].strings = append(list[k].strings, s.Kind)
		}
	}
	return slices.DeleteFunc(list, func(l woundLeg) bool { return len(l.strings) == 0 })
}

// shelf is what the shed holds yet.
type shelf struct {
	bench bench
	own   []spec.Owned
}

// take takes what a leg is made of, as far as it is there: its sticks as bars that no saw goes through, and how many sticks and strings are missing. A stick is as long as it stands: a longer
// one is of no leg that is put together.
func (s shelf) take(l woundLeg) (bars []Bar, sticks, strings int) {
	for _, p := range l.pieces {
		k := slices.IndexFunc(s.own, func(o spec.Owned) bool {
			return o.Good() > 0 && o.Length > 0 && sameItem(o.Item, p.Item) && s.bench.up(p.Length) == s.bench.down(o.Length)
		})
		if k < 0 {
			sticks++
			continue
		}
		s.own[k].Count--
		p.Mark = s.own[k].Length
		bars = append(bars, Bar{Item: p.Item, Stock: p.Mark, Owned: true, Wrapped: true, Pieces: []Piece{p}})
	}
	for _, kind := range l.strings {
		k := slices.IndexFunc(s.own, func(o spec.Owned) bool { return o.Good() > 0 && o.Length <= 0 && o.Item == kind })
		if k < 0 {
			strings++
			continue
		}
		s.own[k].Count--
	}
	return bars, sticks, strings
}

// wrapped looks which legs the shed can hold wrapped, and returns their sticks as bars, and what it holds besides.
func wrapped(in Input, all []Piece) (w Wrapped, bars []Bar, rest []spec.Owned) {
	w.Legs = map[lights.Part]bool{}
	s := shelf{bench{spec: in.Spec}, slices.Clone(in.Spec.Stock.Own)}
	var lacking []woundLeg
	for _, l := range woundLegs(in, all) {
		was := slices.Clone(s.own)
		of, sticks, strings := s.take(l)
		if sticks+strings > 0 {
			s.own, lacking = was, append(lacking, l)
			continue
		}
		bars = append(bars, of...)
		for _, leg := range l.legs {
			w.Legs[leg] = true
		}
	}
	rest = slices.Clone(s.own)
	for _, l := range lacking {
		_, sticks, strings := s.take(l)
		w.Lack, w.Sticks, w.Strings = w.Lack+len(l.legs), w.Sticks+sticks, w.Strings+strings
	}
	return w, bars, rest
}
