package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// driving writes how the stakes go in.
func (w *stakeWords) driving() {
	w.heading("Then, on the build day: drive", 0)
	w.text("Bring: "+w.bars()+", a cap for each, hammer, level, ribbon, coloured tape, gloves, eye protection, the locating ticket.", paper.Body)
	w.gap(1)
	warn := "Gloves and eye protection on. Nobody holds a stake that is being hit. A bare stake is a spike: cap it at once."
	for _, l := range w.b.spec.Site.Overhead {
		warn += fmt.Sprintf(" %s overhead: keep bars and ladders %s away.", l.Name, w.units.Room(l.Keep))
	}
	w.warning(warn)
	w.step("Hold. The ticket is good today and no dot lies within " + w.keep() + " of a marked line.\nSigned ____________________ date ____________")
	w.step("Tape round every bar at its depth, measured from its point. Drive until the tape meets the ground. Then this much shows:")
	w.showing()
	w.step("Drive the L stakes, then the R stakes" + w.thenGuys() + ". " + w.upright() + " Tie one ribbon on every L stake, two on every R stake" + w.guyRibbons() + ".")
	w.moved()
	w.step("Measure every width again at the ground: " + w.widthWords())
	w.gap(1)
	w.warning(fmt.Sprintf("Stop and ask when a check stays more than %s off; a mark is gone or not as named; a dot lies in a hard place, a bed or near a painted or flagged line; a stake moves in the ground by hand; you find a pipe, a cable or a root you cannot miss.", w.limit()))
}

// keep is how far dots stay from located lines: the largest distance the spec gives, and 24 in (600 mm) at least; by state 18 to 24 in are law (US 811).
func (w *stakeWords) keep() string {
	keep := measure.By(w.units, 24*measure.Inch, 600)
	for _, l := range w.b.spec.Site.Buried {
		keep = max(keep, l.Keep)
	}
	return w.units.Inches(keep)
}

func (w *stakeWords) thenGuys() string {
	if len(w.ground.Stakes) > 2*len(w.ground.Stations) {
		return ", then the guy stakes (G)"
	}
	return ""
}

// bars counts the stakes to bring.
func (w *stakeWords) bars() string {
	legs := 2 * len(w.ground.Stations)
	if guys := len(w.ground.Stakes) - legs; guys > 0 {
		return fmt.Sprintf("%d leg stakes and %d guy stakes", legs, guys)
	}
	return fmt.Sprintf("%d stakes", legs)
}

// guyRibbons makes guy stakes, which people trip over, seen.
func (w *stakeWords) guyRibbons() string {
	if w.thenGuys() == "" {
		return ""
	}
	return ", three on every guy stake"
}

// upright says how the bars stand.
func (w *stakeWords) upright() string {
	words := "Upright, looked at from two sides."
	switch lean := w.b.spec.ArchOf(1).Stake.Lean; {
	case lean > 0:
		words = "Leaning " + measure.Degrees(lean) + " away from the walk."
	case lean < 0:
		words = "Leaning " + measure.Degrees(-lean) + " toward the walk."
	}
	if w.thenGuys() != "" {
		words += " Guy stakes lean well back from their arch, square to the guy."
	}
	return words
}

// shown is the stakes of one length and depth.
type shown struct {
	length, depth measure.Length
	names         []string
	guys, legs    int
}

// depths groups the stakes by their length and depth.
func (w *stakeWords) depths() []shown {
	var list []shown
	for _, s := range w.ground.Stakes {
		k := 0
		for k < len(list) && (list[k].length != s.Length || list[k].depth != s.Depth) {
			k++
		}
		if k == len(list) {
			list = append(list, shown{length: s.Length, depth: s.Depth})
		}
		list[k].names = append(list[k].names, s.String())
		if s.Guy {
			list[k].guys++
		} else {
			list[k].legs++
		}
	}
	return list
}

// showing prints how much of each bar shows, large.
func (w *stakeWords) showing() {
	list := w.depths()
	const high, gap, across = 24, 3, 2
	for i := 0; i < len(list); i += across {
		r := w.take(high + gap)
		wide := (r.W - gap) / across
		for k := i; k < min(i+across, len(list)); k++ {
			box := paper.Rect{X: r.X + paper.Length(k-i)*(wide+gap), Y: r.Y, W: wide, H: high}
			w.page.Stroke(paper.Box(box), paper.Thick)
			x := box.X + 3
			w.page.Text(paper.Point{X: x, Y: box.Y + 10}, paper.AtLeft, w.units.Inches(list[k].length-list[k].depth)+" shows", paper.Large)
			for n, line := range []string{clip(list[k].whose(len(list)), paper.Body, wide-6), fmt.Sprintf("bar %s, depth %s", w.units.Inches(list[k].length), w.units.Inches(list[k].depth))} {
				w.page.Text(paper.Point{X: x, Y: box.Y + 16 + paper.Length(n)*5.2}, paper.AtLeft, line, paper.Body)
			}
		}
	}
}

// whose names the stakes of one depth: by what they are where that tells them apart, else by name.
func (d shown) whose(groups int) string {
	switch {
	case groups == 1:
		return "every stake"
	case groups == 2 && d.guys == 0:
		return "every L and R stake"
	case groups == 2 && d.legs == 0:
		return "every guy stake (G)"
	}
	return strings.Join(d.names, ", ")
}
