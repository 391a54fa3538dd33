package stock

import (
	"fmt"

	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
)

// PieceID names a piece by where it goes: a stick of a leg or of an arch bent from one stick, a ridge piece, or a stake.
type PieceID struct {
	Part  lights.Part    // of pipe
	Stick int            // of the leg or arch, from the foot up, from 1
	Of    int            // sticks in that leg or arch
	Steel bool           // it is a stake
	Brace bool           // of pipe: it is the brace to that stake, which is its peg
	Stake ground.StakeID // of steel
}

// Ridge reports whether the piece runs from crown to crown.
func (id PieceID) Ridge() bool { return !id.Steel && !id.Brace && id.Part.Kind == lights.Ridge }

// Trial reports whether it is the ridge piece that is tried in its bay before the others are cut.
func (id PieceID) Trial() bool { return id.Ridge() && id.Part.Number == 1 }

// Sort returns what the piece has in common with those that go to other arches or the other side.
func (id PieceID) Sort() PieceID {
	id.Part.Number, id.Stake = 0, ground.StakeID{Guy: id.Stake.Guy, Bay: min(id.Stake.Bay, 1)}
	if id.Part.IsLeg() {
		id.Part.Kind = lights.LegLeft
	}
	return id
}

// Noun says what the piece is, without its place: "leg upper", "ridge", "guy stake".
func (id PieceID) Noun() string {
	switch {
	case id.Brace:
		return "brace"
	case id.Steel && id.Stake.Bay > 0:
		return "peg"
	case id.Steel && id.Stake.Guy:
		return "guy stake"
	case id.Steel:
		return "stake"
	}
	return id.Part.Kind.Noun() + id.stick()
}

// String returns the piece's name: "leg L3 upper", "ridge 4", "guy stake G1L".
func (id PieceID) String() string {
	if id.Steel || id.Brace {
		return id.Noun() + " " + id.Stake.String()
	}
	return id.Part.String() + id.stick()
}

// MarshalText writes the name.
func (id PieceID) MarshalText() ([]byte, error) { return []byte(id.String()), nil }

// stick tells the sticks of one leg apart.
func (id PieceID) stick() string {
	switch {
	case id.Of <= 1:
		return ""
	case id.Stick == 1:
		return " lower"
	case id.Stick == id.Of:
		return " upper"
	case id.Of == 3:
		return " middle"
	}
	return fmt.Sprintf(" middle %d", id.Stick-1)
}
