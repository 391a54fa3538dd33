package arch

import (
	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
)

// Rigid PVC shrinks by 2.8e-5 of its length for each degree Fahrenheit that it cools (handbook value). WarmPipe, 73 °F, is where its figures
// are published: it is taken to be cut there, and nobody publishes its stiffness below.
const (
	shrinks  = 2.8e-5 * 1.8 // per °C
	WarmPipe = measure.Temperature((73.0 - 32) / 1.8)
)

// Shrinks returns the share of its length that pipe loses between WarmPipe and a temperature, 0 where that is warmer.
func Shrinks(to measure.Temperature) float64 { return max(shrinks*float64(WarmPipe-to), 0) }

// ColdCrown returns the crown's height as raised with the pipe shrunk at a temperature. It reports false where the arch is only drawn.
func (k *Kind) ColdCrown(to measure.Temperature) (measure.Length, bool) {
	if k.built == nil {
		return 0, false
	}
	n := *k.built
	rod := n.rod
	rod.Stretches = append([]bend.Stretch(nil), rod.Stretches...)
	rod.Loads = append([]bend.Load(nil), rod.Loads...)
	left := 1 - Shrinks(to)
	for i := range rod.Stretches {
		rod.Stretches[i].Length *= left
	}
	for i := range rod.Loads {
		rod.Loads[i].From *= left
		rod.Loads[i].To *= left
	}
	shape, err := bend.Solve(rod)
	if err != nil {
		return 0, false
	}
	return measure.Length(shape.At(n.frame.crown.Metres()*left).Y-rod.DY/2) * measure.Metre, true
}
