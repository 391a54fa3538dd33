package crew

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

func (b *builder) grid() measure.Length { return b.units.Grid() }

// wrapping tests every string, flags the rows and winds the legs while they lie on the ground; ridge pieces are wound when they have
// been cut.
func (b *builder) wrapping() {
	if n := len(b.Lights.Strings); n > 0 {
		b.add(minutesTest*float64(n), Step{Phase: Wrapping, People: 2, Hold: true,
			Warning: "Only outlets with ground-fault protection. Unplug a string before a lamp is changed.",
			Do:      fmt.Sprintf("Plug in each of the %s by itself and look along it, before any is wound or hung.", say.Count(n, "string")),
			Want:    "Every bulb lit, no bare wire, no cracked socket; the label's length and watts as on the shopping list.",
			Off:     "A dead or damaged string goes in the reject bag; take a spare. A label that differs: tell the organiser before winding."})
	}
	b.rowMarks()
	for _, k := range b.windings(false) {
		b.wind(k)
	}
}

// rowMarks flags the heights of the rows on the legs while they lie straight.
func (b *builder) rowMarks() {
	if len(b.Lights.Rows) == 0 {
		return
	}
	var words []string
	walls := map[spec.Side]bool{}
	for _, r := range b.Lights.Rows {
		walls[r.Wall] = true
		if word := b.units.Inches(r.Tape); !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	legs := len(b.Arches) * len(walls)
	b.add(minutesLabel*float64(legs), Step{Phase: Wrapping, People: 2,
		Do:   fmt.Sprintf("Flag the row heights on %s with tape, measured along the pipe from the foot end, all from one zero: %s.", say.Count(legs, "leg"), strings.Join(words, ", ")),
		Want: fmt.Sprintf("%s on each leg, each within %s.", say.Count(len(words), "flag"), b.units.Inches(b.limit/2)),
		Off:  "Measure again from the foot end, never from flag to flag."})
}

// winding is stretches wound alike: same string, pitch, ends and flags.
type winding struct {
	kind                 string
	pitch, ends, flags   string
	turns                float64
	strings              int // on one stretch
	on                   []lights.Part
	mirror, plain, short bool
	crown                bool // plug at the crown
}

// windings gathers the wraps that are wound alike, of ridge pieces or of all else.
func (b *builder) windings(ridge bool) []winding {
	var list []winding
	for _, w := range b.Lights.Wraps {
		if (w.On.Kind == lights.Ridge) != ridge {
			continue
		}
		k := winding{kind: w.Label.Name, pitch: b.units.Inches(w.Pitch), ends: fmt.Sprintf("from %s to %s along the pipe", b.units.Inches(w.From), b.units.Inches(w.To)),
			flags: b.flagWords(w), turns: w.Turns, strings: len(w.Strings), crown: b.plugAtCrown(w)}
		at := 0
		for at < len(list) && !(list[at].kind == k.kind && list[at].pitch == k.pitch && list[at].ends == k.ends && list[at].flags == k.flags && list[at].strings == k.strings && list[at].crown == k.crown) {
			at++
		}
		if at == len(list) {
			list = append(list, k)
		}
		list[at].on = append(list[at].on, w.On)
		list[at].mirror = list[at].mirror || w.Mirror
		list[at].plain = list[at].plain || !w.Mirror
		list[at].short = list[at].short || w.Covers < 1-1e-6
	}
	return list
}

func (b *builder) flagWords(w lights.Wrap) string {
	var words []string
	for _, f := range w.Flags {
		of := ""
		if k := slices.Index(w.Strings, f.String); len(w.Strings) > 1 && k >= 0 {
			of = fmt.Sprintf(" of string %d", k+1)
		}
		words = append(words, fmt.Sprintf("bulb %d%s at %s", f.Bulb, of, b.units.Inches(f.Tape)))
	}
	return strings.Join(words, ", ")
}

// plugAtCrown looks up in the spec where a wrap's prongs are.
func (b *builder) plugAtCrown(w lights.Wrap) bool {
	ridge := w.On.Kind == lights.Ridge
	for _, s := range b.Spec.Lights.Wraps {
		for _, place := range s.Where {
			if s.String.Name == w.Label.Name && (place.Part == spec.RidgePieces) == ridge {
				return s.Plug == spec.PlugCrown
			}
		}
	}
	return false
}

func (b *builder) wind(k winding) {
	ridge := k.on[0].Kind == lights.Ridge
	zero := "the foot end"
	if ridge {
		zero = "the end nearer arch 1"
	}
	plug := "the prongs at the foot"
	switch {
	case ridge && k.crown:
		plug = "the prongs at the end away from arch 1"
	case ridge:
		plug = "the prongs at the end nearer arch 1"
	case k.crown:
		plug = "the prongs at the crown"
	}
	do, on, work := "", places(k.on), b.Spec.Crew.Rates.Wrap*float64(len(k.on)*max(1, k.strings))
	if k.flags != "" {
		do = fmt.Sprintf("Flag %s with tape where these bulbs must come, measured from %s: %s. ", on, zero, k.flags)
		on = "it"
		if len(k.on) > 1 {
			on = "each"
		}
		work += minutesLabel * float64(len(k.on))
	}
	do += fmt.Sprintf("Wind %s %s on %s, the pipe on two trestles, %s: one turn every %s, %.0f turns.", strung(k), k.kind, on, plug, k.pitch, k.turns)
	if k.mirror && k.plain {
		do += " Wind right legs the other way round from left legs."
	}
	do += " Tie it down at both ends and every third of the way."
	want := fmt.Sprintf("Covered %s", k.ends)
	if k.flags != "" {
		want += "; each named bulb, counted from the plug, at its flag, give or take a hand"
	}
	if ridge {
		want += "; both ends of the pipe bare for the sockets."
	} else {
		want += "; the last inch (25 mm) at the crown bare for the socket."
	}
	off := "Bulbs past the flag: the turns are too close, unwind to the flag before and open them. Short of it: close them."
	if k.short {
		off += " The string does not reach all the way, as planned."
	}
	people := b.hands // in pairs; while stakes are driven the drivers are away
	if !ridge && b.hands >= twoCrews {
		people -= b.drivers()
	}
	b.add(work, Step{Phase: Wrapping, People: max(2, people/2*2), Do: do, Want: want, Off: off})
}

func strung(k winding) string {
	if k.strings > 1 {
		return fmt.Sprintf("%d strings end to end of", k.strings)
	}
	return "one string of"
}

// places shortens a list of stretches: "leg L1, leg R1 …" becomes a count with its ends.
func places(on []lights.Part) string {
	if len(on) <= 4 {
		var words []string
		for _, p := range on {
			words = append(words, p.String())
		}
		return say.And(words)
	}
	return fmt.Sprintf("each of %d stretches (%s to %s)", len(on), on[0], on[len(on)-1])
}
