package power

import (
	"fmt"
	"math"

	"hoopwright/layout/catalog"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The tunnels of these tests are invented: straight, along +y from the origin, arches 1.4 m apart, feet 1.1 m either side
// of the centreline, crowns 2.4 m up, level ground.
const (
	bay   = 1400 * measure.Millimetre
	half  = 1100 * measure.Millimetre
	crown = 2400 * measure.Millimetre
)

// label is a generic 120 V string, its figures invented.
func label(name string, watts measure.Power, lamp catalog.Lamp) catalog.String {
	return catalog.String{
		Name: name, Length: 7300, Watts: watts, Amps: measure.Current(float64(watts) / 120), Lamp: lamp, Volts: 120,
		Gauge: measure.AWG(22), MostChain: 25, MostWatts: 210, Fuse: 3,
	}
}

// tunnel is an input with nothing hung and no power.
func tunnel(arches int) Input {
	s := &spec.Spec{Units: measure.Metric}
	s.Tunnel = spec.Tunnel{Arches: arches, Spacing: bay, OpeningWidth: 1000, OpeningHeight: 2000}
	s.Power.Continuous, s.Power.Together = 0.8, 4
	s.Power.Taps = []spec.Tap{{Sockets: 3}}
	s.Power.Timer = spec.Timer{Amps: 15, Sockets: 2}
	s.Power.Inline = catalog.Inlines()
	in := Input{Spec: s}
	for i := range arches {
		y := measure.Length(i) * bay
		in.Ground.Stations = append(in.Ground.Stations, ground.Station{Along: y, At: spec.Point{Y: y}})
		in.Ground.Stakes = append(in.Ground.Stakes,
			ground.Stake{StakeID: ground.Leg(spec.Left, i+1), X: -half, Y: y},
			ground.Stake{StakeID: ground.Leg(spec.Right, i+1), X: half, Y: y})
		in.Crowns = append(in.Crowns, crown)
	}
	return in
}

// hang adds a string that may be turned.
func (in *Input) hang(p lights.Part, l catalog.String, from, to lights.End) {
	s := lights.String{Name: fmt.Sprintf("S%d", len(in.Strings)+1), Kind: l.Name, Run: lights.Run{Part: p}, From: from, To: to, Used: l.Length, Watts: l.Watts, Label: l}
	in.Lines = append(in.Lines, lights.Line{First: len(in.Strings), Count: 1, Open: true, Wrap: -1, Path: -1})
	in.Strings = append(in.Strings, s)
	s.From, s.To = to, from
	in.Turned = append(in.Turned, s)
}

// fix leaves nothing open: every string lies as it was hung.
func (in *Input) fix() {
	for i := range in.Lines {
		in.Lines[i].Open = false
	}
}

// foot and top are the ends of a leg's wrap.
func foot(side spec.Side, n int) lights.End {
	x := -half
	if side == spec.Right {
		x = half
	}
	return lights.End{At: lights.Place{Spot: lights.AtFoot, Part: lights.Leg(side, n)}, X: x, Y: measure.Length(n-1) * bay, Z: 150, Arch: n, Side: side}
}

func top(side spec.Side, n int) lights.End {
	x := -50 * measure.Millimetre
	if side == spec.Right {
		x = 50
	}
	return lights.End{At: lights.Place{Spot: lights.AtCrown, Arch: n}, X: x, Y: measure.Length(n-1) * bay, Z: crown, Arch: n, Side: side}
}

// legs hangs one string on every leg, foot to crown.
func (in *Input) legs(l catalog.String) {
	for n := 1; n <= in.Spec.Tunnel.Arches; n++ {
		for _, side := range sides {
			in.hang(lights.Leg(side, n), l, foot(side, n), top(side, n))
		}
	}
}

// ridge hangs one string on every ridge piece, prongs nearer arch 1.
func (in *Input) ridge(l catalog.String) {
	for n := 1; n < in.Spec.Tunnel.Arches; n++ {
		from, to := top(spec.Left, n), top(spec.Left, n+1)
		from.X, to.X = 0, 0
		from.Y += 60
		to.Y -= 60
		in.hang(lights.Part{Kind: lights.Ridge, Number: n}, l, from, to)
	}
}

// outlet adds a circuit with one outlet.
func (in *Input) outlet(name string, x, y measure.Length, volts measure.Voltage, breaker measure.Current) {
	in.Spec.Power.Circuits = append(in.Spec.Power.Circuits, spec.Circuit{Name: "circuit " + name, Volts: volts, Breaker: breaker, GFCI: true})
	in.Spec.Site.Outlets = append(in.Spec.Site.Outlets, spec.Outlet{
		Name: name, At: spec.Point{X: x, Y: y}, Circuit: "circuit " + name, Sockets: 2, ResetAt: name,
	})
}

// codes returns the codes of a plan's findings.
func codes(p Plan) []string {
	var out []string
	for _, f := range p.Findings {
		out = append(out, f.Code)
	}
	return out
}

// lying returns the strings as the plan turns them.
func lying(in Input, p Plan) map[string]lights.String {
	out := map[string]lights.String{}
	for n, l := range in.Lines {
		for i := range l.Count {
			s := in.Strings[l.First+i]
			if p.Turned[n] {
				s = in.Turned[l.First+i]
			}
			out[s.Name] = s
		}
	}
	return out
}

// near reports whether two figures are the same but for rounding.
func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
