package anchor

import (
	"math"

	"hoopwright/layout/measure"
)

// Soil is what holds a stake: clay by its cohesion, sand by its weight and friction.
type Soil struct {
	Name       string
	Cohesion   measure.Pressure // undrained shear strength of a clay; zero for sand
	UnitWeight float64          // N/m³, of sand
	Friction   measure.Angle    // of sand
	Assumed    string           // what the figures stand for, in words for the packet
}

// clay reports whether the soil holds by cohesion.
func (s Soil) clay() bool { return s.Cohesion > 0 }

// passive returns Rankine's coefficient of passive pressure, (1 + sin φ)/(1 − sin φ).
func (s Soil) passive() float64 {
	sin := math.Sin(float64(s.Friction))
	return (1 + sin) / (1 - sin)
}

// The soils of the spec. Strengths are our assumptions for the top foot of a garden, at the weak end of the classes of common
// soil descriptions (soft clay, moulded by light finger pressure; firm clay, by strong pressure): common practice, no source.
const (
	softCohesion   = 15e3 // Pa; a wet lawn
	thawedCohesion = 10e3 // Pa
	firmCohesion   = 40e3 // Pa
	sandWeight     = 18e3 // N/m³
)

// Soft is wet lawn or garden soil.
func Soft() Soil {
	return Soil{Name: "soft", Cohesion: softCohesion, Assumed: "clay of 15 kPa, a wet lawn"}
}

// Firm is undisturbed dry clay or loam.
func Firm() Soil {
	return Soil{Name: "firm", Cohesion: firmCohesion, Assumed: "clay of 40 kPa"}
}

// Sandy is loose sand.
func Sandy() Soil {
	return Soil{Name: "sandy", UnitWeight: sandWeight, Friction: math.Pi / 6, Assumed: "loose sand of 18 kN/m³ and 30° friction"}
}

// thawing is ground that was frozen, wet above what still is.
func thawing() Soil {
	return Soil{Name: "thawing", Cohesion: thawedCohesion, Assumed: "clay of 10 kPa, mud over frost"}
}

// Named returns the soils that a word of the spec stands for. Frozen ground counts as thawing, as it does within the
// season; any other word is unknown ground, soft and sandy both.
func Named(word string) []Soil {
	switch word {
	case "firm":
		return []Soil{Firm()}
	case "soft":
		return []Soil{Soft()}
	case "frozen":
		return []Soil{thawing()}
	case "sandy":
		return []Soil{Sandy()}
	}
	return []Soil{Soft(), Sandy()}
}
