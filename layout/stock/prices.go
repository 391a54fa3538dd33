package stock

import (
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// Prices that are assumed where the spec has none, so that a total is a total: round figures of what such things cost in a shop, from memory, in any of the
// currencies in which they cost about the same figure.
const (
	priceBulb       = 0.10
	priceGlowBulb   = 0.06 // incandescent
	priceBoardFoot  = 4
	halfInch        = 0.84 * measure.Inch // outside diameter of the pipe that fittings are priced for
	fittingsByWidth = 1.5                 // power of the pipe's diameter that they go by
)

// assumedPrices of one, of things that go by their name alone; of fittings for half-inch pipe.
var assumedPrices = map[Kind]float64{
	Tee: 0.9, Cross: 2, Coupling: 0.6, Bushing: 0.8, Screw: 0.2, Cement: 15, StakeCap: 0.6, Supply: 15, Tightener: catalog.TightenerEach, GuyClamp: catalog.ClampEach, BraceClamp: catalog.ClampEach, PlateScrew: 0.05, BarSocket: 6, SandBag: 4, ZipTies: 6, MarkingPaint: 8,
	MarkingFlag: 0.15, Lath: 3, Ribbon: 4, WriteOnTags: 8,
}

// assume gives what has no price an assumed one. A line whose price nothing is known of stays without.
func assume(in Input, items []Item) {
	if !catalog.Assumes(in.Spec.Currency) {
		return
	}
	for k := range items {
		if i := &items[k]; !i.Priced {
			i.Price = math.Round(100*assumed(in, *i)) / 100
			i.Assumed = i.Price > 0
			i.Priced = i.Assumed
		}
	}
}

// assumed returns what one of the item is assumed to cost; 0 where nothing is known.
func assumed(in Input, i Item) float64 {
	pipe, _ := catalog.FindPipe(i.Of)
	bar := barOf(in, i.Of)
	kilos := func(m measure.LineMass) float64 { return float64(m) * i.Length.Metres() }
	switch i.Kind {
	case PipeStick:
		return catalog.PipeKilo * kilos(pipe.Mass)
	case SteelBar:
		return catalog.SteelKilo * kilos(bar.Mass)
	case ReadyStake:
		return catalog.StakeKilo * kilos(bar.Mass)
	case LightString:
		k := slices.IndexFunc(in.Strings, func(s lights.String) bool { return s.Kind == i.Item })
		if k < 0 {
			return 0
		}
		if l := in.Strings[k].Label; l.Lamp == catalog.Incandescent {
			return priceGlowBulb * float64(l.Bulbs)
		}
		return priceBulb * float64(in.Strings[k].Label.Bulbs)
	case ExtensionCord:
		k := slices.IndexFunc(in.Wiring.Cords, func(w Wire) bool { return w.item(in.Spec.Units).Item == i.Item })
		return in.Wiring.Cords[k].Assumed
	case SoleBoard: // of all lengths one price
		return priceBoardFoot * float64(i.Rows.long()/measure.Foot) / float64(i.Need)
	case JointPlate:
		return priceBoardFoot * float64(in.Spec.Base().Width/measure.Foot)
	case GuyLine, Webbing:
		price := map[Kind]float64{GuyLine: catalog.LineFoot, Webbing: catalog.WebbingFoot}[i.Kind]
		if i.Unit == Metres {
			price *= float64(measure.Metre / measure.Foot)
		}
		return price
	}
	price := assumedPrices[i.Kind]
	if wired, ok := catalog.AssumedPrice(i.Item); ok {
		price = wired
	}
	if i.Kind.Fitting() && pipe.OD > 0 {
		price *= math.Pow(float64(pipe.OD/halfInch), fittingsByWidth)
	}
	return price
}

// barOf is the bar that stakes called so are of.
func barOf(in Input, item string) catalog.Bar {
	for _, s := range in.Stakes {
		if bar := s.Bar(in.Spec); barItem(bar) == item {
			known, _ := catalog.FindBar(bar.Name)
			return known
		}
	}
	return catalog.Bar{}
}
