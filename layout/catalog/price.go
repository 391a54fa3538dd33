package catalog

import (
	"slices"
	"strings"

	"hoopwright/layout/measure"
)

// Prices that are assumed where the spec has none, so that a total is a total: round figures of what such things cost in a shop, in dollars or
// euros alike, from memory. A spec's own price always wins.
const (
	PipeKilo      = 6.0  // of plastic pipe; a 10 ft stick of half-inch schedule 40 weighs 0.76 kg and costs 4 to 5
	SteelKilo     = 3.0  // of bar in stock lengths
	StakeKilo     = 5.0  // of bar cut to length
	LineFoot      = 0.15 // of guy line
	WebbingFoot   = 0.45
	TightenerEach = 1.0
	ClampEach     = 1.2 // of guys and braces

	cordFixed   = 6.0  // of any cord
	cordFoot    = 0.45 // of 16 AWG or 1.0 mm², each foot
	socketExtra = 1.5  // of each socket in line beyond the first
)

// AssumedKWh is what a kilowatt-hour is assumed to cost where the spec has no price.
const AssumedKWh = 0.20

// dearLike are the currencies in which the assumed prices hold, roughly; others have no assumed price.
var dearLike = []string{"", "USD", "EUR", "GBP", "CAD", "AUD", "NZD", "CHF", "$", "€", "£"}

// Assumes reports whether there are assumed prices in a currency.
func Assumes(currency string) bool { return slices.Contains(dearLike, strings.ToUpper(currency)) }

var assumedPrices = map[string]float64{
	"three-way tap": 7, "plug cover": 3, "socket cover": 0.5, "cord cover": 30, "timer for outdoors": 20, "portable GFCI": 35,
	"outdoor plug box": 25, "battery lantern": 12,
}

// AssumedPrice returns what a thing that power needs is assumed to cost, by its name in a spec's stock; not ok for other things.
func AssumedPrice(item string) (price float64, ok bool) {
	price, ok = assumedPrices[item]
	return price, ok
}

// AssumedPrice returns what a cord of a length is assumed to cost: thicker ones by their copper.
func (c Cord) AssumedPrice(length measure.Length) float64 {
	thin := measure.AWG(16)
	if c.Volts >= 200 {
		thin = 1
	}
	return cents(cordFixed + cordFoot*float64(length/measure.Foot)*(0.5+0.5*float64(c.Area/thin)))
}

// AssumedPrice returns what a cord with several sockets costs: its own price where it has one, else an assumed one.
func (c Inline) AssumedPrice() float64 {
	if c.Price != nil {
		return *c.Price
	}
	return c.Cord.AssumedPrice(c.Length) + socketExtra*float64(c.Sockets-1)
}

func cents(price float64) float64 { return float64(int64(price*100+0.5)) / 100 }
