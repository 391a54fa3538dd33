package lights

import (
	"math"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// halfInch is schedule 40 half-inch pipe as far as lights care: outside diameter by ASTM D1785, socket by ASTM D2466,
// take-off of a moulded cross (from memory).
func halfInch() catalog.Pipe {
	return catalog.Pipe{Name: "pvc sch40 1/2 in", OD: .840 * inch, TakeOff: inch / 2, Socket: .688 * inch, CouplingStop: 3 * inch / 32}
}

// mini is an invented string.
func mini(name string, length measure.Length) catalog.String {
	return catalog.String{Name: name, Length: length, Bulbs: 100, Watts: 5, Mass: 0.0223, Wire: .15 * inch}
}

// plain returns a straight, level tunnel of half-round arches (a closed form is all these tests ask of a shape), its sticks
// 10 ft and its bays 54 in.
func plain(arches int, lights spec.Lights) Input {
	s := &spec.Spec{File: "test.yaml", Lights: lights}
	s.Tunnel = spec.Tunnel{Arches: arches, Spacing: 54 * inch, OpeningWidth: 36 * inch, OpeningHeight: 60 * inch}
	s.Arch = spec.Arch{Pipe: halfInch(), Left: []measure.Length{10 * foot}, Right: []measure.Length{10 * foot}}
	s.Ridge = spec.Ridge{Present: true, Pipe: halfInch()}
	k := halfRound(241 * inch)
	in := Input{Spec: s}
	for n := 1; n <= arches; n++ {
		y := measure.Length(n-1) * 54 * inch
		in.Arches = append(in.Arches, arch.Arch{Number: n, Kind: k})
		in.Ground.Stations = append(in.Ground.Stations, ground.Station{Along: y, At: spec.Point{Y: y}})
		for _, side := range []spec.Side{spec.Left, spec.Right} {
			x := k.Span / 2 * measure.Length(2*int(side)-1)
			in.Ground.Stakes = append(in.Ground.Stakes, ground.Stake{StakeID: ground.Leg(side, n), X: x, Y: y})
		}
		if n < arches {
			in.Ridge = append(in.Ridge, 53*inch)
		}
	}
	return in
}

// halfRound returns a semicircle of pipe.
func halfRound(length measure.Length) *arch.Kind {
	r := length / math.Pi
	k := &arch.Kind{Span: 2 * r, Length: length, Crown: r, CrownTape: length / 2}
	const n = 720
	for i := range n + 1 {
		turned := math.Pi * float64(i) / n
		sin, cos := math.Sincos(turned)
		k.Curve = append(k.Curve, arch.Point{
			Tape: length * measure.Length(i) / n, X: -r * measure.Length(cos), Y: r * measure.Length(sin),
			Heading: measure.Angle(math.Pi/2 - turned), Radius: r,
		})
	}
	return k
}

// wrapAll wraps a kind of string on parts.
func wrapAll(s catalog.String, parts ...spec.Part) spec.Wrap {
	w := spec.Wrap{String: s}
	for _, p := range parts {
		w.Where = append(w.Where, spec.Place{Part: p})
	}
	return w
}

// codes returns the findings' codes, in order.
func codes(l Layout) []string {
	var out []string
	for _, f := range l.Findings {
		out = append(out, f.Code)
	}
	return out
}

// bent moves a tunnel onto a bend to the right that rises by the same step at each arch.
func bent(in Input, radius, rise measure.Length) Input {
	for i := range in.Ground.Stations {
		along := measure.Length(i) * in.Spec.Tunnel.Spacing
		turned := float64(along / radius)
		sin, cos := math.Sincos(turned)
		in.Ground.Stations[i] = ground.Station{
			Along: along, Heading: measure.Angle(turned),
			At: spec.Point{X: radius * measure.Length(1-cos), Y: radius * measure.Length(sin)},
		}
		for _, side := range []int{0, 1} {
			in.Ground.Stakes[2*i+side].Ground = measure.Length(i) * rise
		}
	}
	return in
}
