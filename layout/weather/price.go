package weather

import (
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"math"
)

// priceOf returns what a length of an item costs by the spec's own prices, the cheapest for each metre, and false where it names none.
func priceOf(s *spec.Spec, item string, length measure.Length) (price float64, ok bool) {
	for _, sale := range s.Stock.Sell {
		if sale.Item != item || sale.Price == nil || sale.Length <= 0 {
			continue
		}
		if each := *sale.Price * float64(length/sale.Length); !ok || each < price {
			price, ok = each, true
		}
	}
	return price, ok
}

// priceOfBars returns what so many stakes cost.
func priceOfBars(s *spec.Spec, stake spec.Stake, n int) float64 {
	one, ok := priceOf(s, "steel bar "+stake.Bar.Name, stake.Length)
	if !ok {
		one = catalog.StakeKilo * float64(stake.Bar.Mass) * stake.Length.Metres()
	}
	return one * float64(n)
}

// Price returns what a tunnel's stakes, guys and braces cost, in the spec's currency by its prices or else by our own of dollars.
func Price(s *spec.Spec) float64 {
	sum := 0.0
	for number := 1; number <= s.Tunnel.Arches; number++ {
		if a := s.ArchOf(number); a.Foot == nil {
			sum += priceOfBars(s, a.Stake, 2)
		}
	}
	return sum + PriceOfBracing(s)
}

// PriceOfBracing is the part of it that holds the tunnel lengthwise.
func PriceOfBracing(s *spec.Spec) float64 {
	guys := 0
	for _, number := range s.Guys.Arches {
		guys += 2
		if n := s.Tunnel.Arches; n == 1 || number > 1 && number < n {
			guys += 2
		}
	}
	sum := 0.0
	line := math.Hypot(float64(s.Guys.From), float64(s.Guys.Out)) / float64(measure.Foot)
	sum += float64(guys) * (catalog.LineFoot*line + catalog.TightenerEach)
	if s.Arch.Foot == nil { // else they end on weights
		sum += priceOfBars(s, s.Guys.Stake, guys)
	}
	braces := float64(2 * len(s.Pairs()))
	sum += priceOfBars(s, s.Braces.Peg, int(braces))
	length := s.BraceLength()
	if s.Braces.Line {
		return sum + braces*(catalog.WebbingFoot*float64(length/measure.Foot)+catalog.ClampEach)
	}
	pipe, ok := priceOf(s, s.Arch.Pipe.Name, length)
	if !ok {
		pipe = catalog.PipeKilo * float64(s.Arch.Pipe.Mass) * length.Metres()
	}
	return sum + braces*(pipe+2*catalog.ClampEach)
}
