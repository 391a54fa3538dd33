package stock

import (
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
	Ridge    []RidgeCut
	Stakes   []ground.Stake
	Strings  []lights.String
	Ties     int // zip ties that stay till the end of the season
	HungTies int // of what hangs
	Wiring   Wiring

	FootWeight, TieWeight measure.Force // on each weighted foot, and at each end of guys and braces there
}

// RidgeCut is the ridge piece of one bay.
type RidgeCut struct {
	Bay    int
	Length measure.Length
}

// Make lists the pieces, plans their cuts and writes the shopping list.
func Make(in Input) List {
	var list List
	offers := offersOf(in)
	list.Pieces = pieces(in)
	list.Cuts, list.Findings = cutAll(in.Spec, offers, list.Pieces)
	list.Findings = append(bushingNote(in), list.Findings...)
	list.Keep = keep(in, list.Cuts)
	list.Shopping = shopping(in, list.Cuts, offers)
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
