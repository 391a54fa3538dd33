package crew

import (
	"fmt"
	"hoopwright/layout/say"
)

// cutting prepares the legs, and one ridge piece only: the others wait until bay 1 has been tried.
func (b *builder) cutting() {
	bench := ""
	if b.Bars > 0 {
		bench = fmt.Sprintf("Lay the %s to be sawn at the bench. ", say.Count(b.Bars, "bar"))
	}
	warning := "Eye protection on. Clamp the pipe, keep hands a forearm from the blade, and cut over a sheet: the chips do not belong on the ground."
	rate := b.Spec.Crew.Rates.Cut
	if b.LegCuts > 0 {
		b.add(rate*float64(b.LegCuts), Step{Phase: Cutting, People: 2, Warning: warning,
			Do:   bench + fmt.Sprintf("Cut the %s from longer stock to their saw marks on the cut sheet. Cut no ridge piece yet.", say.Count(b.LegCuts, "leg piece")),
			Want: fmt.Sprintf("Each within %s of its length, square, burrs scraped off.", b.units.Cut(b.grid())),
			Off:  "Too long: trim it. Too short: put it by for a ridge piece and cut another."})
		warning, bench = "", ""
	}
	if len(b.Ridge) > 0 {
		b.add(rate, Step{Phase: Cutting, People: 1, Warning: warning,
			Do:   bench + fmt.Sprintf("Cut the ridge piece of bay %d, %s, and no other.", b.Ridge[0].Bay, b.units.Cut(b.Ridge[0].Cut)),
			Want: fmt.Sprintf("%s, within %s, square, burrs scraped off.", b.units.Cut(b.Ridge[0].Cut), b.units.Cut(b.grid())),
			Off:  "Cut another; keep the short one for a later bay."})
	}
	legs := 0
	for _, a := range b.Arches {
		if a.Kind != nil {
			legs += len(a.Left) + len(a.Right)
		}
	}
	if legs > 0 {
		b.add(minutesLabel*float64(legs), Step{Phase: Cutting, People: 2,
			Do:   "Write its name at the foot end of every leg stick and an arrow toward the crown. Pipe of an earlier year: its marked inside stays inside.",
			Want: fmt.Sprintf("%s named, both ends looked at for cracks.", say.Count(legs, "stick")),
			Off:  "A crack, however short: put the stick out of use."})
	}
	if couplings := b.couplings(); couplings > 0 {
		b.add(minutesLabel*float64(couplings), Step{Phase: Cutting, People: 2,
			Do:   fmt.Sprintf("Join the leg sticks with their %s, lower stick at the foot, and drive each home with a rubber mallet.", say.Count(couplings, "coupling")),
			Want: "No gap at any coupling's stop; sockets wiped dry and clean.",
			Off:  "Twist it apart, wipe both and drive it again."})
	}
}

// couplings counts the joints within legs.
func (b *builder) couplings() int {
	n := 0
	for _, a := range b.Arches {
		if a.Kind != nil {
			n += max(0, len(a.Left)-1) + max(0, len(a.Right)-1)
		}
	}
	return n
}
