package lights

import (
	"fmt"

	"hoopwright/layout/spec"
)

// Kind is a sort of part that strings are on.
type Kind int

// The kinds.
const (
	LegLeft Kind = iota
	LegRight
	Arch // from the left foot over the crown to the right foot
	Ridge
	RowLeft
	RowRight
)

// names are what each kind of part is called, what stands before one number, and before both of a range.
var names = [...]struct{ noun, one, from, to string }{
	{"leg", "leg L", "legs L", "L"}, {"leg", "leg R", "legs R", "R"}, {"arch", "arch ", "arches ", ""}, {"ridge", "ridge ", "ridge ", ""},
	{"row", "row left ", "rows left ", ""}, {"row", "row right ", "rows right ", ""},
}

// Noun returns what a part of the kind is called, on either side: leg, arch, ridge, row.
func (k Kind) Noun() string { return names[k].noun }

// Part is a piece of the frame, or a row along a wall.
type Part struct {
	Kind   Kind
	Number int // of the arch, of the bay for a ridge piece, from the ground up for a row
}

// Leg returns a leg of an arch.
func Leg(side spec.Side, arch int) Part { return Part{LegLeft + Kind(side), arch} }

// RowOf returns a row of a wall.
func RowOf(wall spec.Side, number int) Part { return Part{RowLeft + Kind(wall), number} }

// String returns the part's name: leg L3, arch 3, ridge 4, row left 2.
func (p Part) String() string { return fmt.Sprint(names[p.Kind].one, p.Number) }

// MarshalText writes the name.
func (p Part) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// IsLeg reports whether the part is one leg of an arch.
func (p Part) IsLeg() bool { return p.Kind == LegLeft || p.Kind == LegRight }

// IsRow reports whether the part is a row, which hangs between arches; all others are pipe.
func (p Part) IsRow() bool { return p.Kind == RowLeft || p.Kind == RowRight }

// Wall returns the wall that the part is on. It is false for a whole arch and the ridge, which belong to both.
func (p Part) Wall() (spec.Side, bool) {
	switch p.Kind {
	case LegLeft, RowLeft:
		return spec.Left, true
	case LegRight, RowRight:
		return spec.Right, true
	}
	return spec.Left, false
}

// OnArch returns the number of the arch that the part is of; not ok for rows and the ridge, which lie between arches.
func (p Part) OnArch() (number int, ok bool) {
	return p.Number, p.IsLeg() || p.Kind == Arch
}

// Letter returns the letter of a leg's side, as its stake has it; empty for a part that is no leg.
func (p Part) Letter() string {
	if side, _ := p.Wall(); p.IsLeg() {
		return side.Letter()
	}
	return ""
}

// Run is what a string lies along: it is wound on the part or hung in the row, or it hangs below the part as a drop.
type Run struct {
	Part
	Drop bool
}

// String returns the run's name: as the part's, or drop L3, drop ridge 4.
func (r Run) String() string {
	switch {
	case r.Drop && r.IsLeg():
		return fmt.Sprintf("drop %s%d", r.Letter(), r.Number)
	case r.Drop:
		return "drop " + r.Part.String()
	}
	return r.Part.String()
}

// MarshalText writes the name.
func (r Run) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// Wound reports whether the string is wound on pipe.
func (r Run) Wound() bool { return !r.Drop && !r.IsRow() }
