package stock

import (
	"fmt"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// Unit is what one of an item is.
type Unit int

// The units.
const (
	Each    Unit = iota + 1
	StickOf      // of pipe, of the item's length
	BarOf        // of steel, of the item's length
	Feet
	Metres
	Bag
	Can
	Roll
	Set
)

// String returns the unit's word: "each", "stick", "ft", "bag".
func (u Unit) String() string {
	return [...]string{"", "each", "stick", "bar", "ft", "m", "bag", "can", "roll", "set"}[u]
}

// UnitWords says what one of the item is: "10 ft stick", "each", "bag".
func (i Item) UnitWords(units measure.System) string {
	if i.Unit == StickOf || i.Unit == BarOf {
		return Sold(i.Length, units) + " " + i.Unit.String()
	}
	return i.Unit.String()
}

// Rope is lines of one length, cut from one coil.
type Rope struct {
	Kind   RopeKind
	Count  int
	Length measure.Length
}

// RopeKind is what a line is for.
type RopeKind int

// The lines.
const (
	GuyRope RopeKind = iota
	CrownRope
	DownRope  // from the foot of an arch on weighted bases that is laid flat round the board
	BraceRope // of webbing
)

// StandIn is longer things of the shed that serve for an item.
type StandIn struct {
	Count  int
	Length measure.Length
}

// StandInWords says which longer things of the shed serve for the item; empty where none do.
func (i Item) StandInWords(units measure.System) string {
	var words []string
	for _, s := range i.StandIns {
		words = append(words, fmt.Sprintf("%d of %s", s.Count, Sold(s.Length, units)))
	}
	return strings.Join(words, ", ")
}

// is reports whether an item of the spec's stock is the line: the same words, or the same material and length.
func (i Item) is(item string, length measure.Length) bool {
	if length <= 0 {
		return item == i.Item
	}
	return i.Sockets == 0 && i.of(item) && sameLength(length, i.Length)
}

// of reports whether the spec's words name the line's material.
func (i Item) of(item string) bool {
	if cord, ok := catalog.FindCord(item); ok && cord.Name == i.Of {
		return true
	}
	return sameItem(item, i.Of)
}

// sameLength reports whether two lengths are the same but for rounding.
func sameLength(a, b measure.Length) bool { return measure.Abs(a-b) < 1e-3 }
