// Package cost adds up what a tunnel costs: money at the spec's prices or else at assumed ones, and hours of people by the schedule. Of does it;
// money is in the spec's currency.
package cost

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// Cost is what a tunnel costs. Money is in the spec's currency.
type Cost struct {
	Bought   Sum     `json:"bought"`    // this year, what the shed lacks
	PerArch  float64 `json:"per_arch"`  // of it
	Power    Sum     `json:"power"`     // of the season
	NextYear Sum     `json:"next_year"` // what wears out in a year, and the power again
	Wears    []Wear  `json:"wears"`     // what NextYear's goods are
	Hours    Hours   `json:"hours"`
}

// Sum is money, and what of it is at assumed prices.
type Sum struct {
	Money    float64 `json:"money"`
	Assumed  float64 `json:"assumed"`
	Unpriced int     `json:"unpriced"` // lines of which nobody knows a price, not counted in
}

// Wear is what goes of an item in a year.
type Wear struct {
	Item     string        `json:"item"`
	Used     int           `json:"used"` // as it stands, spares left out
	Share    measure.Share `json:"share"`
	Measured bool          `json:"measured"` // by what died in the shed; else assumed
	Money    float64       `json:"money"`
}

// Hours are of all people together.
type Hours struct {
	Building float64 `json:"building"` // marking, trial and building, their waiting too
	Nights   float64 `json:"nights"`   // the checks of all nights
	TakeDown float64 `json:"takedown"`
	Kept     float64 `json:"kept"` // that legs kept wrapped save of this taking down and the next building
}

// All is all of them but what may be saved.
func (h Hours) All() float64 { return h.Building + h.Nights + h.TakeDown }

// Shares of things that wear out or are used up in a year, where the shed does not tell. Assumed, no source: strings and ties go first, steel hardly ever.
const glowShare = 0.25 // of incandescent strings

var shares = map[stock.Kind]measure.Share{
	stock.ZipTies: 1, stock.MarkingPaint: 1, stock.Ribbon: 1, stock.Lath: 1, stock.MarkingFlag: 0.5, stock.WriteOnTags: 0.5, stock.SandBag: 0.25, stock.GuyLine: 0.2,
	stock.PipeStick: 0.1, stock.LightString: 0.1, stock.Webbing: 0.1, stock.ThreeWay: 0.1, stock.PlugCover: 0.1, stock.SocketCover: 0.1, stock.Timer: 0.1, stock.Lantern: 0.1,
	stock.Tee: 0.05, stock.Cross: 0.05, stock.Coupling: 0.05, stock.Bushing: 0.05, stock.ExtensionCord: 0.05, stock.Tightener: 0.05, stock.StakeCap: 0.05, stock.Supply: 0.05, stock.PortableGFCI: 0.05,
	stock.SteelBar: 0.02, stock.ReadyStake: 0.02,
}

// Input is a solved tunnel as far as it costs anything.
type Input struct {
	Spec    *spec.Spec
	Stock   stock.List
	Strings []lights.String
	KWh     float64
	Crew    crew.Plan
}

// Of adds it up.
func Of(in Input) Cost {
	c := Cost{Bought: Sum{Money: in.Stock.Total, Assumed: in.Stock.Assumed}, Power: in.power(), Wears: []Wear{}}
	for _, i := range in.Stock.Shopping {
		if i.Buy > 0 && !i.Priced {
			c.Bought.Unpriced++
		}
		w := Wear{Item: i.Item, Used: i.Need - i.Spare}
		if w.Share, w.Measured = in.share(i); w.Share <= 0 || w.Used <= 0 {
			continue
		}
		if !i.Priced {
			c.NextYear.Unpriced++
			continue
		}
		w.Money = cents(float64(w.Share) * float64(w.Used) * i.Price)
		c.Wears = append(c.Wears, w)
		c.NextYear.Money += w.Money
		if i.Assumed {
			c.NextYear.Assumed += w.Money
		}
	}
	slices.SortStableFunc(c.Wears, func(a, b Wear) int { return cmp.Compare(b.Money, a.Money) })
	c.PerArch = cents(c.Bought.Money / float64(in.Spec.Tunnel.Arches))
	c.NextYear = Sum{cents(c.NextYear.Money + c.Power.Money), cents(c.NextYear.Assumed + c.Power.Assumed), c.NextYear.Unpriced + c.Power.Unpriced}
	building, night, down := in.Crew.Hours()
	c.Hours = Hours{Building: building, TakeDown: down, Kept: in.Crew.Kept / 60}
	if e := in.Spec.Power.Evenings; e != nil {
		c.Hours.Nights = night * float64(e.Nights)
	}
	return c
}

// power is what the season's current costs.
func (in Input) power() Sum {
	e := in.Spec.Power.Evenings
	switch {
	case in.KWh <= 0 || e == nil:
		return Sum{}
	case in.Spec.Given("power.evenings.price"):
		return Sum{Money: cents(in.KWh * e.Price)}
	case !catalog.Assumes(in.Spec.Currency):
		return Sum{Unpriced: 1}
	}
	money := cents(in.KWh * catalog.AssumedKWh)
	return Sum{Money: money, Assumed: money}
}

// share is what of an item goes in a year: of strings what died of those in the shed, where some did.
func (in Input) share(i stock.Item) (share measure.Share, measured bool) {
	if i.Kind != stock.LightString {
		return shares[i.Kind], false
	}
	count, dead := 0, 0
	for _, o := range in.Spec.Stock.Own {
		if o.Item == i.Item {
			count, dead = count+o.Count, dead+o.Dead
		}
	}
	if dead > 0 {
		return measure.Share(float64(dead) / float64(count)), true
	}
	if slices.ContainsFunc(in.Strings, func(s lights.String) bool { return s.Kind == i.Item && s.Label.Lamp == catalog.Incandescent }) {
		return glowShare, false
	}
	return shares[i.Kind], false
}

// cents rounds money to whole hundredths.
func cents(money float64) float64 { return math.Round(money*100) / 100 }
