package power

import (
	"math"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// prices is what cords and three-ways cost, in hundredths of the currency: as the spec's stock has it, else as its own cord or three-way does,
// else assumed.
type prices struct {
	tap   int64
	items map[string]int64
	cords map[string]map[measure.Length]int64
}

// pricesOf reads the spec's prices.
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
