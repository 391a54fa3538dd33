package crew

import (
	"fmt"

	"hoopwright/layout/lights"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// hanging puts up rows and drops after ridge and guys hold, and has the way through measured.
func (b *builder) hanging() {
	warning := "Nothing is plugged in while it is hung. Stepladder on firm ground, one person at its foot."
	for _, wall := range []spec.Side{spec.Left, spec.Right} {
		var rows []lights.Row
		for _, r := range b.Lights.Rows {
			if r.Wall == wall {
				rows = append(rows, r)
			}
		}
		if len(rows) > 0 {
			var readings []Reading
			strung := 0
			for _, r := range rows {
				way := "prongs toward arch 1"
				if r.Back {
					way = fmt.Sprintf("prongs toward arch %d", b.Spec.Tunnel.Arches)
				}
				readings = append(readings, Reading{fmt.Sprintf("row %d", r.Number), fmt.Sprintf("flag %s, %s, %s", b.units.Inches(r.Tape), r.Kind, way)})
				strung += max(1, len(r.Strings))
			}
			sag := b.limit
			if b.Spec.Lights.Rows != nil {
				sag = b.Spec.Lights.Rows.Sag
			}
			b.add(b.Spec.Crew.Rates.Row*float64(strung), Step{Phase: Hanging, People: 3, Warning: warning,
				Do:       fmt.Sprintf("Hang the rows of the %s wall from the middle arch outwards, a tie at every arch.", wall),
				Readings: readings,
				Want:     fmt.Sprintf("Every row at its flags, %s of sag in each bay.", b.units.Inches(sag)),
				Off:      "Too tight pulls the arches together: let out some slack, never stretch a string. Too slack: take it up at the last arch."})
			warning = ""
		}
	}
	if n := len(b.Lights.Drops); n > 0 {
		lowest := b.Lights.Drops[0].Lowest
		for _, d := range b.Lights.Drops {
			lowest = min(lowest, d.Lowest)
		}
		b.add(b.Spec.Crew.Rates.Drop*float64(n), Step{Phase: Hanging, People: 2, Warning: warning,
			Do:   fmt.Sprintf("Hang the %s on legs and ridge as the light plan names them.", say.Count(n, "drop string")),
			Want: fmt.Sprintf("No end lower than %s above the ground line.", b.units.Inches(lowest)),
			Off:  "Take up the slack with a tie at the pipe."})
	}
	t := b.Spec.Tunnel
	if len(b.Arches) > 0 && t.OpeningWidth > 0 && t.OpeningHeight > 0 {
		b.add(minutesMeasure*float64(len(b.Arches)), Step{Phase: Hanging, People: 2, Hold: true,
			Do:   fmt.Sprintf("Walk through with a stick %s long held upright and one %s long held across.", b.units.Room(t.OpeningHeight), b.units.Room(t.OpeningWidth)),
			Want: "Neither touches pipe, string, tie or drop anywhere; no cord or line lies across the way.",
			Off:  "Tie up what hangs in. Pipe itself in the way: the organiser decides before anyone walks through."})
	}
}
