package lights

import (
	"fmt"

	"hoopwright/layout/spec"
)

// PartKind is a kind of thing that strings hang on.
type PartKind int

// The kinds. A drop is named by what it hangs from.
const (
	LegLeft PartKind = iota
	LegRight
	Arch // foot to foot
	Ridge
	RowLeft
	RowRight
	DropLeft  // from a left leg
	DropRight // from a right leg
	DropArch
	DropRidge
)

// Part is one of the things that strings hang on: a leg, an arch, a ridge piece, a row of a wall, what a drop hangs from.
type Part struct {
	Kind   PartKind
	Number int // of the arch, the bay or the row
}

// String returns the part's name as runs have it: leg L3, row left 2, ridge 4, drop R5, drop arch 3.
func (p Part) String() string {
	return fmt.Sprint([...]string{"leg L", "leg R", "arch ", "ridge ", "row left ", "row right ", "drop L", "drop R", "drop arch ", "drop ridge "}[p.Kind], p.Number)
}

// Spot is where on its part a string's end is.
type Spot int

// The spots: at the foot of a leg, at a crown, or anywhere else.
const (
	Along Spot = iota
	AtFoot
	AtCrown
)

// Wall returns the wall that a part is on; not ok for what belongs to both: a whole arch and the ridge.
func (p Part) Wall() (side spec.Side, ok bool) {
	switch p.Kind {
	case LegLeft, RowLeft, DropLeft:
		return spec.Left, true
	case LegRight, RowRight, DropRight:
		return spec.Right, true
	}
	return spec.Left, false
}

// Arch returns the number of the arch that a part is on; not ok for rows and the ridge, which lie between arches.
func (p Part) Arch() (number int, ok bool) {
	switch p.Kind {
	case LegLeft, LegRight, Arch, DropLeft, DropRight, DropArch:
		return p.Number, true
	}
	return 0, false
}

// piece returns what a stretch of the frame is to those who hang strings on it.
func (s stretch) piece() Part {
	return Part{[...]PartKind{LegLeft, LegRight, Arch, Ridge}[s.part], s.number}
}

// dropPiece returns what a drop from a stretch is.
func (s stretch) dropPiece() Part {
	return Part{[...]PartKind{DropLeft, DropRight, DropArch, DropRidge}[s.part], s.number}
}

// piece returns the row as a part.
func (r Row) piece() Part {
	if r.Wall == spec.Right {
		return Part{RowRight, r.Number}
	}
	return Part{RowLeft, r.Number}
}
