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

	LineByBay bool // the line along the crowns is cut a piece a bay

	FootWeight, TieWeight measure.Force // on each weighted foot, and at each end of guys and braces there
}

// Make lists the pieces, plans their cuts and writes the shopping list.
func Make(in Input) List {
	var list List
	offers := offersOf(in)
	list.Pieces = pieces(in)
	var legs []Bar
	var rest []spec.Owned
	list.Wrapped, legs, rest = wrapped(in, list.Pieces)
	loose := list.Pieces
	if in.Spec.Found.Wrapped {
		loose = slices.DeleteFunc(slices.Clone(loose), func(p Piece) bool {
			return slices.ContainsFunc(legs, func(b Bar) bool { return b.Pieces[0].ID == p.ID })
		})
		for i := range offers {
			offers[i].owns = ownsOf(offers[i].item, rest)
		}
	} else {
		legs = nil
	}
	list.Cuts, list.Findings = cutAll(in.Spec, offers, loose)
	list.Cuts.Bars = append(legs, list.Cuts.Bars...)
	list.Findings = append(bushingNote(in), list.Findings...)
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
