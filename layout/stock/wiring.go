package stock

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// Wiring is what the power plan needs.
type Wiring struct {
	Cords    []Wire // one entry for each cord to lay
	Taps     int    // three-ways
	Joints   int    // plugs put together out of doors
	Open     int    // sockets that nothing is plugged into
	Covers   int    // cord covers over ways on the ground
	Timers   int
	Bare     int // outlets without a GFCI or RCD
	Boxes    int // places where several plugs meet low down
	Supplies int // low-voltage supplies

	TapPrice, TimerPrice *float64 // nil where the spec gives none
}

// Wire is one cord as sold.
type Wire struct {
	Of      string // name of a catalog cord
	Length  measure.Length
	Inline  string   // what it is called where it has several sockets, else empty
	Price   *float64 // of its own in the spec, nil for none
	Assumed float64  // for want of one
}

// lanternStep is how far apart battery lanterns stand, so that people find the way out when all lights trip. Common practice, no source.
const lanternStep = 30 * measure.Foot

// wiring lists cords by name in the order they are laid, and all that goes with them.
func (b *basket) wiring(in Input) {
	w := in.Wiring
	b.cords(w.Cords)
	add := func(item string, n int, price *float64, why string) {
		i := Item{Item: item, Need: n, Unit: Each, Where: whereElectrical, Why: why}
		if i.Price, i.Assumed = catalog.AssumedPrice(item); price != nil {
			i.Price, i.Assumed = *price, false
		}
		i.Priced = i.Assumed || price != nil
		b.add(i)
	}
	add("three-way tap", w.Taps, w.TapPrice, "for outdoors")
	add("cord cover", w.Covers, nil, "made to be walked over; one for each cord along the ground over a way")
	add("plug cover", w.Joints, nil, "weather box, one a joint")
	add("socket cover", w.Open, nil, "one an open socket: string ends and spare ones; mouths down")
	add("timer for outdoors", w.Timers, w.TimerPrice, "off at closing and 30 minutes")
	device := "portable GFCI"
	add(device, w.Bare, nil, "one for each outlet without a GFCI or RCD; in the outlet, before everything else")
	add("outdoor plug box", w.Boxes, nil, "lockable, off the ground at knee height, where three or more plugs meet")
	if len(w.Cords) > 0 {
		n := 1 + int(math.Ceil(max(1, float64(in.Spec.Tunnel.Length/lanternStep))*(1-1e-9)))
		add("battery lantern", n, nil, fmt.Sprintf("both ends, and every %s between", in.Spec.Units.Room(lanternStep)))
	}
}

// cords lists cords by name in the order they are laid.
func (b *basket) cords(wires []Wire) {
	var list []Item
	for _, w := range wires {
		name := w.Inline
		if name == "" {
			name = w.Of + " " + Sold(w.Length, b.spec.Units)
		}
		k := slices.IndexFunc(list, func(i Item) bool { return i.Item == name })
		if k < 0 {
			k = len(list)
			i := Item{Item: name, Unit: Each, Where: whereElectrical, Price: w.Assumed, Assumed: w.Assumed > 0}
			if w.Inline == "" {
				i.Of, i.Length = w.Of, w.Length
			}
			if w.Price != nil {
				i.Price, i.Assumed = *w.Price, false
			}
			i.Priced = i.Assumed || w.Price != nil
			list = append(list, i)
		}
		list[k].Need++
	}
	b.standIns(list)
	for _, i := range list {
		b.add(i)
	}
}
