// Package catalog knows what a store sells for a light tunnel: pipe with its moulded fittings, steel bar for
// stakes, cords, and generic light strings. Every row says where its figures come from: a published standard,
// "from memory", or "typical, check the label". FindPipe, FindBar, FindCord and FindString look up a name, Nearest and Alike guess what was
// meant by one that is not known, AssumedPrice tells a price where the spec has none.
package catalog

import "hoopwright/layout/measure"

// Pipe is a plastic pressure pipe with the figures of its moulded fittings.
type Pipe struct {
	Name         string
	OD, Wall     measure.Length   // outside diameter; least wall
	Modulus      measure.Pressure // short-term, at 73 °F (23 °C)
	Strength     measure.Pressure // tensile strength of the material class
	Mass         measure.LineMass `key:"weight"`
	TakeOff      measure.Length   // centre of a tee or cross to the socket stop, along one axis
	Socket       measure.Length   // depth of a fitting's socket
	CouplingStop measure.Length   // what a coupling adds between two pipe ends
	Source       string
}

// ID returns the inside diameter at least wall.
func (p Pipe) ID() measure.Length { return p.OD - 2*p.Wall }

// Bar is a steel bar driven as a stake.
type Bar struct {
	Name     string         // nominal size, as the store says it
	Diameter measure.Length // nominal
	OverRibs measure.Length // greatest diameter over the ribs: what must enter the pipe
	Mass     measure.LineMass
	Modulus  measure.Pressure // of steel
	Yield    measure.Pressure // least yield strength of the grade commonly sold
	Number   int              // the bar's number, as in "no. 4"; zero where it has none
	Source   string
}

// Cord is a flexible outdoor extension cord.
type Cord struct {
	Name     string
	Area     measure.Area    // of each conductor
	Ohms     float64         // per kilometre of one conductor, at the temperature the source states
	Amps     measure.Current // least of cord table and plug, see Source
	Long     measure.Length  // a set longer than this carries only LongAmps; zero: one limit for all lengths
	LongAmps measure.Current
	Lengths  []measure.Length // as commonly sold
	Volts    measure.Voltage  // the world it belongs to: 120 or 230
	Source   string
}

// AmpsAt returns what a set of the length may carry.
func (c Cord) AmpsAt(length measure.Length) measure.Current {
	if c.Long > 0 && length > c.Long+measure.Millimetre { // 50 ft as read and 50 ft as multiplied differ in the last bit
		return c.LongAmps
	}
	return c.Amps
}

// Lamp tells the two sorts of string apart.
type Lamp int

const (
	LED Lamp = iota
	Incandescent
)

// String returns "led" or "incandescent", the words of the spec.
func (l Lamp) String() string { return [...]string{"led", "incandescent"}[l] }

// String is a light string as its label describes it.
type String struct {
	Name       string
	Length     measure.Length // plug to socket
	Lead, Tail measure.Length // unlit ends within Length
	Bulbs      int
	Watts      measure.Power
	Amps       measure.Current // from watts and volts where the label does not say
	Lamp       Lamp            `key:"kind"`
	Volts      measure.Voltage
	Supply     *Supply // a low-voltage string's supply; nil for mains
	Mass       measure.LineMass
	Wire       measure.Length // diameter of the bundle
	Gauge      measure.Area   // of each conductor
	Colour     string
	Drop       measure.Length  // how far a drop hangs; zero where it is not a drop string
	BackSocket bool            // its plug has a socket in its back, as its label says
	MostChain  int             `key:"most in a chain"` // most strings end to end; zero: as the label says, none known
	MostWatts  measure.Power   // most watts through the first plug
	Fuse       measure.Current // in its plug, for all that hangs from it; zero where there is none or none is known
	Source     string
}

// Supply feeds low-voltage strings.
type Supply struct {
	Watts   measure.Power
	Sockets int
}
