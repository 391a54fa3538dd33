// Package layout solves a spec into a plan: the only place where the parts meet. A plan is plain data; it knows nothing of paper.
package layout

import (
	"hoopwright/layout/arch"
	"hoopwright/layout/cost"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
	"hoopwright/layout/weather"
)

// RidgePiece is the pipe of one bay, crown to crown.
type RidgePiece struct {
	Bay     int            `json:"bay"`        // between arch Bay and Bay+1
	Centres measure.Length `json:"centres_mm"` // along the ridge between fitting centres
	Cut     measure.Length `json:"cut_mm"`     // Centres less both take-offs, on the cutting grid
}

// Plan is a solved tunnel. Its JSON names are part of the file format; lengths are millimetres.
type Plan struct {
	Arches    []arch.Arch       `json:"arches"`
	Stakes    []ground.Stake    `json:"stakes"`
	Ties      []ground.Tie      `json:"ties"`
	Ridge     []RidgePiece      `json:"ridge"`
	Diagonals []ground.Diagonal `json:"diagonals"`
	Cuts      stock.Cuts        `json:"cuts"`
	Strings   []lights.String   `json:"strings"`
	Wraps     []lights.Wrap     `json:"wraps"`
	Chains    []power.Chain     `json:"chains"`
	Cords     []power.Cord      `json:"cords"`
	Taps      []power.Tap       `json:"taps"`
	Circuits  []power.Circuit   `json:"circuits"`
	Shopping  []stock.Item      `json:"shopping"`
	Cost      cost.Cost         `json:"cost"`
	Findings  []finding.Finding `json:"findings"`
	Weather   *weather.Weather  `json:"weather"`
	Found     []arch.AsFound    `json:"found"` // what spec.Found tells; empty where it tells nothing

	Spec   *spec.Spec    `json:"-"`
	Kinds  []*arch.Kind  `json:"-"` // each different arch once, in the order of their lowest numbers
	Ground ground.Layout `json:"-"`
	Lights lights.Layout `json:"-"`
	Power  power.Plan    `json:"-"`
	Stock  stock.List    `json:"-"`
	Crew   crew.Plan     `json:"-"`
}
