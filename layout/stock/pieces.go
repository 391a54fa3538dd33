package stock

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// pieces names every length of pipe and bar after its place: legs arch by arch, the ridge, then the stakes.
func pieces(in Input) []Piece {
	grid := in.Spec.Units.Grid()
	var list []Piece
	add := func(item, name string, length measure.Length) {
		list = append(list, Piece{Name: name, Item: item, Length: measure.RoundUp(length, grid)})
	}
	for _, a := range in.Arches {
		if a.Kind == nil {
			continue
		}
		pipe := a.Kind.Spec.Pipe.Name
		legs := []struct {
			name   string
			sticks []measure.Length
		}{{fmt.Sprintf("leg L%d", a.Number), a.Left}, {fmt.Sprintf("leg R%d", a.Number), a.Right}}
		if a.Kind.Spec.OneStick {
			legs = legs[:1]
			legs[0].name = fmt.Sprintf("arch %d", a.Number)
		}
		for _, leg := range legs {
			for i, stick := range leg.sticks {
				add(pipe, leg.name+part(i, len(leg.sticks)), stick)
			}
		}
	}
	for _, r := range in.Ridge {
		add(in.Spec.Ridge.Pipe.Name, fmt.Sprintf("ridge %d", r.Bay), r.Length)
	}
	for _, s := range in.Stakes {
		name, bar := "stake "+s.Name, in.Spec.ArchOf(s.Arch).Stake.Bar
		if s.Guy {
			name, bar = "guy stake "+s.Name, in.Spec.Guys.Stake.Bar
		}
		if s.Brace {
			name, bar = "peg "+s.Name, in.Spec.Braces.Peg.Bar
			if !in.Spec.Braces.Line {
				add(in.Spec.ArchOf(s.Arch).Pipe.Name, "brace "+s.Name, measure.RoundUp(in.Spec.BraceLength()+braceLap, in.Spec.Units.Grid()))
			}
		}
		add(barItem(bar), name, s.Length)
	}
	return list
}

// braceLap is how much longer a brace is than the way from leg to peg: a hand beyond each clamp.
const braceLap = 6 * measure.Inch

// part tells the sticks of one leg apart, from the ground up.
func part(i, n int) string {
	switch {
	case n == 1:
		return ""
	case i == 0:
		return " lower"
	case i == n-1:
		return " upper"
	case n == 3:
		return " middle"
	}
	return fmt.Sprintf(" middle %d", i)
}

// barItem is what a bar is called on the list: its nominal size alone would not say what it is.
func barItem(b catalog.Bar) string {
	if strings.Contains(b.Name, "bar") {
		return b.Name
	}
	return "steel bar " + b.Name
}

// isBar reports whether the piece is a stake.
func (p Piece) isBar() bool {
	return strings.HasPrefix(p.Name, "stake ") || strings.HasPrefix(p.Name, "guy stake ") || strings.HasPrefix(p.Name, "peg ")
}

// names lists a few pieces by name and counts the rest.
func names(list []Piece) string {
	const most = 4
	var words []string
	for i, p := range list {
		if i == most && len(list) > most+1 {
			return fmt.Sprintf("%s and %d more", strings.Join(words, ", "), len(list)-most)
		}
		words = append(words, p.Name)
	}
	return strings.Join(words, ", ")
}

// Sold prints a length as a store says it, in whole feet or tenths of a metre: first in the system's own, then in the other's, as a cord
// of 25 ft in a metric packet; otherwise as a cut length.
func Sold(l measure.Length, units measure.System) string {
	said := map[measure.System]string{
		measure.Imperial: whole(l, measure.Foot, 5, 1, "ft"),
		measure.Metric:   whole(l, 100*measure.Millimetre, 1, 0.1, "m"),
	}
	return cmp.Or(said[units], said[1-units], units.Cut(l))
}

// whole prints a length that is a whole number of steps, and no fewer than least, in a unit of which a step is the share each; or nothing.
func whole(l, step measure.Length, least, each float64, unit string) string {
	n := math.Round(float64(l / step))
	if n < least || math.Abs(float64(l/step)-n) > 1e-6 {
		return ""
	}
	return fmt.Sprintf("%.6g %s", n*each, unit)
}
