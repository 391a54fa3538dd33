package stock

import (
	"fmt"
	"math"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// offer is one material's lengths: what is sold, and what the shed holds.
type offer struct {
	item    string
	sells   []stick
	owns    []stick
	longest measure.Length // of the pieces
	assumed bool           // the spec names no length sold; common ones are taken
	bar     bool           // stakes
	ready   bool           // stakes bought ready-cut: no length of bar stock is named
}

// stick is one stock length. Most is zero for no limit.
type stick struct {
	length measure.Length
	price  float64
	priced bool
	most   int
	owned  bool
}

// Common stick lengths, for specs that name none; common practice, no source. The longer one is counted on only for pieces that
// the shorter cannot give: it is not sold everywhere and rides on few cars.
var commonSticks = map[measure.System][2]measure.Length{
	measure.Imperial: {10 * measure.Foot, 20 * measure.Foot},
	measure.Metric:   {3 * measure.Metre, 6 * measure.Metre},
}

// offersOf gathers the offers for every material of the pieces, in the order in which the pieces first name them.
func offersOf(in Input) []offer {
	var offers []offer
	for _, p := range pieces(in) {
		o := entry(&offers, offer{item: p.Item, bar: p.ID.Steel}, func(o offer) bool { return o.item == p.Item })
		o.longest = max(o.longest, p.Length)
	}
	common := commonSticks[in.Spec.Units]
	for i := range offers {
		o := &offers[i]
		o.owns = ownsOf(o.item, in.Spec.Stock.Own)
		for _, s := range in.Spec.Stock.Sell {
			if !sameItem(s.Item, o.item) || s.Length <= 0 {
				continue
			}
			l := stick{length: o.asOwned(s.Length), most: s.Limit}
			if s.Price != nil {
				l.price, l.priced = *s.Price, true
			}
			o.sells = append(o.sells, l)
		}
		none := len(o.sells) == 0
		if o.ready, o.assumed = none && o.bar, none && !o.bar; !o.assumed {
			continue
		}
		o.sells = []stick{{length: o.asOwned(common[0])}}
		if o.longest > common[0]+in.Spec.Units.Grid()/2 { // a piece is rounded up to the grid, by a hair at times
			o.sells = append(o.sells, stick{length: o.asOwned(common[1])})
		}
	}
	return offers
}

// ownsOf are the lengths of a material among what is owned.
func ownsOf(item string, list []spec.Owned) (owns []stick) {
	for _, own := range list {
		if sameItem(own.Item, item) && own.Length > 0 && own.Good() > 0 {
			owns = append(owns, stick{length: own.Length, most: own.Good(), owned: true})
		}
	}
	return owns
}

// asOwned returns the owned length that is this one but for rounding, so that what is sold and what is owned make one line and one kind of stick.
func (o offer) asOwned(length measure.Length) measure.Length {
	for _, own := range o.owns {
		if sameLength(own.length, length) {
			return own.length
		}
	}
	return length
}

// sameItem compares a spec's item with ours; a bar may be called by its size alone.
func sameItem(given, ours string) bool {
	return given == ours || "steel bar "+given == ours || "bar "+given == ours
}

// cents turns a price into whole hundredths of the currency.
func cents(price float64) int64 { return int64(math.Round(price * 100)) }

// assumedNote says which lengths were taken for want of any in the spec.
func (o offer) assumedNote(s *spec.Spec) finding.Finding {
	var lengths []string
	for _, l := range o.sells {
		lengths = append(lengths, Sold(l.length, s.Units))
	}
	return finding.Finding{
		Level: finding.Note, Code: "stock-lengths-assumed", Key: "stock.sell",
		Text: fmt.Sprintf("The spec names no length in which %s is sold, so sticks of %s are taken and cost is counted as length; list what your store has.", o.item, say.And(lengths)),
	}
}
