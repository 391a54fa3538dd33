package stock

import (
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Wiring is what the power plan needs.
type Wiring struct {
	Cords      []Wire           // one entry for each cord to lay
	Taps       int              // three-ways
	Joints     int              // plugs put together out of doors
	Open       int              // sockets that nothing is plugged into
	Ties       int              // zip ties of sockets, and of cords that hang
	Covers     []measure.Length // of cord covers over ways on the ground
	Timers     int
	TimerAmps  measure.Current // of the largest of them
	TimerPlugs int             // that go into one of them at most
	Bare       int             // outlets without a GFCI or RCD
	Boxes      int             // about several plugs that meet low down, and about supplies
	Supplies   int             // low-voltage supplies

	TapPrice, TimerPrice *float64 // nil where the spec gives none
}

// Wire is one cord as sold.
type Wire struct {
	Of      string // name of a catalog cord
	Length  measure.Length
	Sockets int      // 0, or so many in line
	Inline  string   // what it is called where it has several sockets, else empty
	Price   *float64 // of its own in the spec, nil for none
	Assumed float64  // for want of one
}

// item is the line of the list that the cord is on, none needed yet.
func (w Wire) item(u measure.System) Item {
	i := Item{Item: w.Inline, Kind: ExtensionCord, Of: w.Of, Length: w.Length, Sockets: w.Sockets, Unit: Each, Where: whereElectrical}
	if w.Sockets == 0 {
		i.Item = w.Of + " " + Sold(w.Length, u)
	}
	return i.at(w.Price)
}

// at puts a price of the spec on a line, if there is one.
func (i Item) at(price *float64) Item {
	if price != nil {
		i.Price, i.Priced = *price, true
	}
	return i
}

// wiring lists cords and all that goes with them: a plug cover for each joint, a socket cover for each open socket, a box where three or more plugs meet and about a supply.
func (b *basket) wiring(in Input) {
	w := in.Wiring
	b.cords(w.Cords)
	add := func(kind Kind, item string, n int, price *float64) {
		b.add(Item{Item: item, Kind: kind, Need: n, Unit: Each, Where: whereElectrical}.at(price))
	}
	add(ThreeWay, "three-way tap", w.Taps, w.TapPrice)
	b.add(Item{Item: "cord cover", Kind: CordCover, Need: len(w.Covers), Lengths: w.Covers, Unit: Each, Where: whereElectrical})
	add(PlugCover, "plug cover", w.Joints, nil)
	add(SocketCover, "socket cover", w.Open, nil)
	b.add(Item{Item: "timer for outdoors", Kind: Timer, Need: w.Timers, Amps: w.TimerAmps, Plugs: w.TimerPlugs, Unit: Each, Where: whereElectrical}.at(w.TimerPrice))
	add(PortableGFCI, "portable GFCI", w.Bare, nil)
	add(PlugBox, "outdoor plug box", w.Boxes, nil)
	add(Lantern, "battery lantern", practice.Lanterns(in.Spec.Tunnel.Length), nil)
}

// cords lists cords by name in the order they are laid.
func (b *basket) cords(wires []Wire) {
	var list []Item
	for _, w := range wires {
		named(&list, w.item(b.spec.Units)).Need++
	}
	b.standIns(list)
	for _, i := range list {
		b.add(i)
	}
}
