package stock

import (
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Input is the solved tunnel as far as it decides what to buy.
type Input struct {
	Spec     *spec.Spec
	Arches   []arch.Arch
	Ridge    []measure.Length // cut length of each bay's ridge piece; empty without a ridge
	Line     []measure.Length // from crown to crown, of the line along them; none where there is none
	Stakes   []ground.Stake
	Strings  []lights.String
	Ties     int                 // zip ties that stay till the end of the season
	LegTies  map[lights.Part]int // of them, on each leg
	HungTies int                 // of what hangs
	Wiring   Wiring

	CrownStick measure.Length // that crowns are marked on; 0 where none is made

	LineByBay bool // the line along the crowns is cut a piece a bay

	FootWeight, TieWeight measure.Force // on each weighted foot, and at each end of guys and braces there
}

// Make lists the pieces, plans their cuts and writes the shopping list.
func Make(in Input) List {
	var list List
	offers := offersOf(in)
	list.Pieces, list.Cemented = fromLastYear(in, pieces(in))
	list.Kept = asKept(in, list.Pieces)
	var legs []Bar
	s := shelf{bench{spec: in.Spec}, nil}
	if list.Wrapped, legs, s.own = wrapped(in, list.Pieces); !in.Spec.Found.Wrapped {
		legs, s.own = nil, slices.Clone(in.Spec.Stock.Own)
	}
	var loose []Piece
	for _, p := range list.Pieces {
		if slices.ContainsFunc(legs, func(b Bar) bool { return b.Pieces[0].ID == p.ID }) {
			continue
		}
		if p.Joined {
			if bars, _, _ := s.take(woundLeg{pieces: []Piece{p}}); bars != nil {
				bars[0].Wrapped = false
				legs = append(legs, bars...)
				continue
			}
		}
		loose = append(loose, p)
	}
	s.own = uncemented(in, s.own, list.Kept)
	for i := range offers {
		offers[i].owns = ownsOf(offers[i].item, s.own)
	}
	list.Cuts, list.Findings = cutAll(in.Spec, offers, loose)
	list.Cuts.Bars = append(legs, list.Cuts.Bars...)
	list.Findings = slices.Concat(bushingNote(in), cementNote(in, list.Kept), list.Findings)
	list.Keep = keep(in, list.Cuts)
	list.Shopping = shopping(in, list, offers)
	for _, item := range list.Shopping {
		cost := float64(item.Buy) * item.Price
		list.Total += cost
		if item.Assumed {
			list.Assumed += cost
		}
	}
	finding.Sort(list.Findings)
	return list
}
