package stock

import (
	"slices"

	"hoopwright/layout/measure"
)

// turn is when a piece is cut: what stands on the ground at once, then the trial piece, then the rest of the ridge.
func (p Piece) turn() int {
	switch {
	case !p.ID.Ridge():
		return 0
	case p.ID.Trial():
		return 1
	}
	return 2
}

// Turn is when the first of a bar's pieces is cut; steel, which waits for nothing, after all pipe.
func (b Bar) Turn() int {
	if b.Steel() {
		return 3
	}
	return b.Pieces[0].turn()
}

// Loose returns the bars of what is put together on the day: all but those of legs that come wrapped.
func (c Cuts) Loose() []Bar {
	return slices.DeleteFunc(slices.Clone(c.Bars), func(b Bar) bool { return b.Wrapped })
}

// Whole reports whether the bar is used as it is sold, without a cut.
func (b Bar) Whole() bool { return len(b.Pieces) == 1 && b.Pieces[0].Mark == b.Stock }

// Full reports whether a bar sold gives its last piece only where it is as long as it is sold for: one that is as short as is accepted would leave it short.
func (b Bar) Full(u measure.System) bool {
	return !b.Owned && !b.Whole() && b.Stock-b.Pieces[len(b.Pieces)-1].Mark < spare(u)-u.Grid()/2
}

// Cuts counts the cuts through the bar: one a piece, none behind a last piece that the bar gives whole.
func (b Bar) Cuts(u measure.System) int {
	n := len(b.Pieces)
	if b.Full(u) || b.Stock-b.Pieces[n-1].Mark < u.Grid()/2 {
		n--
	}
	return n
}

// Steel reports whether the bar makes stakes; the others are pipe.
func (b Bar) Steel() bool { return b.Pieces[0].ID.Steel }

// Size prints the stock length as a store says it: 10 ft, 3.2 m.
func (b Bar) Size(units measure.System) string { return Sold(b.Stock, units) }

// Given are the pieces that the bars give.
func (c Cuts) Given() map[PieceID]bool {
	given := map[PieceID]bool{}
	for _, b := range c.Bars {
		for _, p := range b.Pieces {
			given[p.ID] = true
		}
	}
	return given
}

// Sawn counts the bars that a saw goes through, and the leg pieces among what is cut from them; whole sticks are not counted.
func (c Cuts) Sawn() (bars, legs int) {
	for _, b := range c.Bars {
		if b.Whole() {
			continue
		}
		bars++
		for _, p := range b.Pieces {
			if !p.ID.Steel && !p.ID.Ridge() {
				legs++
			}
		}
	}
	return bars, legs
}

// Handled returns the longest bar that is measured or sawn, and whether some are used whole and some steel is sawn: those of legs that come wrapped are not touched.
func (c Cuts) Handled() (longest measure.Length, whole, steel bool) {
	for _, b := range c.Loose() {
		longest, whole, steel = max(longest, b.Stock), whole || b.Whole(), steel || b.Steel() && !b.Whole()
	}
	return longest, whole, steel
}

// Useful returns the length from which on an offcut of the item is worth keeping: it gives the shortest piece of it that the tunnel has.
func (c Cuts) Useful(item string) measure.Length {
	least := measure.Length(0)
	for _, b := range c.Bars {
		for _, p := range b.Pieces {
			if b.Item == item && (least == 0 || p.Length < least) {
				least = p.Length
			}
		}
	}
	return least
}

// RidgeRoom returns by how much every ridge piece may be cut longer than planned before a bar no longer gives all its pieces: the least
// share of an offcut that its ridge pieces have. The trial piece is as long as it is.
func (c Cuts) RidgeRoom() measure.Length {
	room := measure.Length(-1)
	for _, b := range c.Bars {
		n := measure.Length(0)
		for _, p := range b.Pieces {
			if p.turn() == 2 {
				n++
			}
		}
		if n > 0 && (room < 0 || b.Offcut/n < room) {
			room = b.Offcut / n
		}
	}
	return max(0, room)
}

// FewerAtMost returns how many bars fewer a better plan could buy at most: none where the plan is proven.
func (c Cuts) FewerAtMost() int {
	if c.Proven || c.Least <= 0 {
		return 0
	}
	return int((c.Cost-c.Bound)/c.Least + 1e-6)
}
