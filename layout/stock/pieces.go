package stock

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// pieces names every length of pipe and bar after its place: legs arch by arch, the ridge, then the stakes.
func pieces(in Input) []Piece {
	grid := in.Spec.Units.Grid()
	var list []Piece
	add := func(item string, id PieceID, length measure.Length) {
		list = append(list, Piece{ID: id, Item: item, Length: measure.RoundUp(length, grid)})
	}
	for _, a := range in.Arches {
		if a.Kind == nil {
			continue
		}
		sticks := func(part lights.Part, lengths []measure.Length) {
			for i, stick := range lengths {
				add(a.Kind.Spec.Pipe.Name, PieceID{Part: part, Stick: i + 1, Of: len(lengths)}, stick)
			}
		}
		if a.Kind.Spec.OneStick {
			sticks(lights.Part{Kind: lights.Arch, Number: a.Number}, a.Left)
			continue
		}
		sticks(lights.Leg(spec.Left, a.Number), a.Left)
		sticks(lights.Leg(spec.Right, a.Number), a.Right)
	}
	for i, length := range in.Ridge {
		add(in.Spec.Ridge.Pipe.Name, PieceID{Part: lights.Part{Kind: lights.Ridge, Number: i + 1}}, length)
	}
	brace := braceOf(in)
	for _, s := range in.Stakes {
		if s.Bay > 0 && !in.Spec.Braces.Line {
			add(in.Spec.ArchOf(s.Arch).Pipe.Name, PieceID{Brace: true, Stake: s.StakeID}, brace)
		}
		if s.Steel() {
			add(barItem(s.Bar(in.Spec)), PieceID{Steel: true, Stake: s.StakeID}, s.Length)
		}
	}
	return list
}

// barItem is what a bar is called on the list: its nominal size alone would not say what it is.
func barItem(b catalog.Bar) string {
	if strings.Contains(b.Name, "bar") {
		return b.Name
	}
	return "steel bar " + b.Name
}

// names lists a few pieces by name and counts the rest.
func names(list []Piece) string {
	var words []string
	for _, p := range list {
		words = append(words, p.ID.String())
	}
	return say.Some(words, 4)
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
