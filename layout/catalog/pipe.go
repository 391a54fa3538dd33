package catalog

import (
	"math"

	"hoopwright/layout/measure"
)

const (
	inch = measure.Inch
	mm   = measure.Millimetre
)

const (
	sch40Source = "size, least wall and weight ASTM D1785; sockets ASTM D2466, take-off and coupling stop for it from memory; " +
		"modulus 400 000 psi, the design value at 73 °F; strength 7000 psi, the least of its class"
	pn16Source = "EN ISO 1452-2 from memory, fittings too; weight from density 1.40 at least wall; modulus 3000 MPa and strength 45 MPa typical, from memory"
)

// Pipes returns the pipes, smallest first within their kind. Take-offs and sockets are the least the standards allow: moulded
// parts may be 1/32 to 1/16 in longer.
func Pipes() []Pipe {
	return []Pipe{
		sch40("1/2 in", 0.840, 0.109, 0.161, 1.0/2, 0.688),
		sch40("3/4 in", 1.050, 0.113, 0.214, 9.0/16, 0.719),
		sch40("1 in", 1.315, 0.133, 0.315, 11.0/16, 0.875),
		sch40("1 1/4 in", 1.660, 0.140, 0.426, 7.0/8, 0.938),
		pn16("20 mm", 20, 1.5, 11),
		pn16("25 mm", 25, 1.9, 13.5),
		pn16("32 mm", 32, 2.4, 17),
	}
}

// sch40 takes inches and pounds a foot.
func sch40(size string, od, wall, weight, takeOff, socket float64) Pipe {
	return Pipe{
		Name: "pvc sch40 " + size,
		OD:   measure.Length(od) * inch, Wall: measure.Length(wall) * inch,
		Modulus: 400000 * measure.PSI, Strength: 7000 * measure.PSI,
		Mass:    measure.LineMass(weight) * measure.PoundPerFoot,
		TakeOff: measure.Length(takeOff) * inch, Socket: measure.Length(socket) * inch, CouplingStop: inch * 3 / 32,
		Source: sch40Source,
	}
}

// pn16 takes millimetres; the socket of a cemented fitting is half the diameter and 6 mm deep.
func pn16(size string, od, wall, takeOff measure.Length) Pipe {
	p := Pipe{
		Name: "pvc-u pn16 " + size,
		OD:   od, Wall: wall,
		Modulus: 3000 * measure.MPa, Strength: 45 * measure.MPa,
		TakeOff: takeOff, Socket: od/2 + 6*mm, CouplingStop: 3 * mm,
		Source: pn16Source,
	}
	p.Mass = p.PVCMass()
	return p
}

// Section returns the area of the pipe's wall, m².
func (p Pipe) Section() float64 { return math.Pi * (p.OD - p.Wall).Metres() * p.Wall.Metres() }

// PVCMass returns the pipe's mass by length where none is given: of rigid PVC at 1400 kg/m³ (ASTM D1784 compounds run from 1380 to 1430; from memory).
func (p Pipe) PVCMass() measure.LineMass { return measure.LineMass(1400 * p.Section()) }

// Joined returns how long sticks are that couplings make one.
func (p Pipe) Joined(sticks []measure.Length) (length measure.Length) {
	for _, s := range sticks {
		length += s + p.CouplingStop
	}
	return length - p.CouplingStop*measure.Length(min(1, len(sticks)))
}

// FindPipe returns the pipe of that name, however it is spelt.
func FindPipe(name string) (Pipe, bool) {
	return find(Pipes(), name, func(p Pipe) string { return p.Name })
}
