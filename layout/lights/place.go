package lights

import (
	"fmt"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Spot is a sort of place on a part.
type Spot int

// The spots.
const (
	Nowhere  Spot = iota
	AtFoot        // of a leg
	AtCrown       // of an arch
	Along         // at a tape along the part
	AtArch        // where a row passes an arch
	InBay         // of a row, between two arches
	Climbing      // on a leg, from one row up to the next of its kind
	AtOutlet      // where a cord is plugged in
)

// Place is where an end of a string is.
type Place struct {
	Spot  Spot
	Part  Part           // the leg of a foot, the pipe, the row
	Arch  int            // of a crown, where a row passes, from which Tape counts in a bay; the leg's where the string climbs
	Bay   int            // of a row
	Tape  measure.Length // along the pipe as the part counts it, up the leg, or along the row from Arch
	Words measure.System // units that its words are in

	Outlet string // its name
}

// MidBay reports whether it is on a row so far from both legs that no hand ties it to one.
func (p Place) MidBay() bool { return p.Spot == InBay && p.Tape > practice.RowGive(p.Words) }

// String says the place in words: "foot of leg L3", "crown 3", "row left 2, arch 4", "leg L3, 4′-2″ up the pipe"; empty for nowhere.
func (p Place) String() string {
	switch p.Spot {
	case AtFoot:
		return fmt.Sprintf("foot of %v", p.Part)
	case Nowhere, AtCrown, AtOutlet:
		return p.Within()
	}
	return fmt.Sprintf("%v, %s", p.Part, p.Within())
}

// Within says the place without naming the part it is on: "foot", "arch 4", "4′-2″ up the pipe".
func (p Place) Within() string {
	tape := p.Words.Tape(p.Tape)
	switch p.Spot {
	case AtFoot:
		return "foot"
	case AtOutlet:
		return "outlet " + p.Outlet
	case AtCrown:
		return fmt.Sprintf("crown %d", p.Arch)
	case Along:
		return tape + p.along()
	case AtArch:
		return fmt.Sprintf("arch %d", p.Arch)
	case InBay:
		return fmt.Sprintf("bay %d, %s from arch %d", p.Bay, tape, p.Arch)
	case Climbing:
		side, _ := p.Part.Wall()
		return fmt.Sprintf("%v at %s up the pipe", Leg(side, p.Arch), tape)
	}
	return ""
}

// along says which way a tape along the place's pipe runs.
func (p Place) along() string {
	switch p.Part.Kind {
	case Ridge:
		return " along the piece"
	case Arch:
		return " along the pipe from its left foot"
	}
	return " up the pipe"
}

// MarshalText writes the words.
func (p Place) MarshalText() ([]byte, error) { return []byte(p.String()), nil }
