package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// rows makes the pages of the rows: how to hang them, their marks, both walls as they are seen from inside, and where each string ends and the next begins.
func (f *flow) rows() {
	if len(f.b.plan.Lights.Rows) == 0 {
		return
	}
	f.turn()
	f.text("Rows along the walls", paper.Heading.Sized(18))
	f.text(f.b.leanWords(), paper.Body)
	f.rowSteps()
	f.rowMarks()
	var told *paper.Page // the last page that has the legend
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		told = f.wall(side, told)
		f.splices(side)
	}
}

// rowSteps is the work of hanging rows, in order.
func (f *flow) rowSteps() {
	u := f.b.spec.Units
	sag := u.Inches(f.b.spec.Lights.Rows.Sag)
	f.checks("After ridge and guys hold, one wall at a time, in this order", []check{
		{"Flag every leg at the marks below, by tape along the pipe from the ground.", "Every flag at its figure.", "Measure again from the ground."},
		{"Lay the strings along the wall, plug them together, light them.", "Every bulb lit; then unplugged.", "Reject bag; take a spare."},
		{"Tie each row at the middle arch, then outwards arch by arch, both ways.", fmt.Sprintf("A tie at each flag, %s of sag in each bay.", sag), "Never pull it tight: tight rows pull the end arches in."},
		{"At the end arch go up the pipe to the next row of the same letter, and back.", "As the arrows run; tied each 12 in of pipe.", "Wrong letter: take it back to the last splice."},
		{"Look where each splice came.", "As in the list, give or take " + f.b.handHigh() + " a bay.", "Nearer the start: too much sag. Farther: too little."},
		{"Tie each splice to its row, turned down.", "No plug in the way of people or near the ground.", "Take up slack until it hangs clear."},
		f.b.bowCheck(),
	})
}

// bowCheck is what to look for at the arch that the rows bow most.
func (b *binder) bowCheck() check {
	u := b.spec.Units
	c := check{"Look along the walk from the side at the arches where rows end.", "Their legs stand straight.", "Bowed in: let out sag in the bay next to it."}
	var worst lights.EndPull
	for _, e := range b.plan.Lights.Pulls {
		if e.Known && (worst.Arch == 0 || e.Bow > worst.Bow) {
			worst = e
		}
	}
	if worst.Arch == 0 {
		return c
	}
	c.want = fmt.Sprintf("Arch %d, pulled with %s by %d rows, bows in %s at most, %s up.", worst.Arch, u.Force(worst.Force), worst.Rows, u.Inches(worst.Bow), u.Inches(worst.BowHeight))
	return c
}

// leanWords says why rows come after ridge and guys: what they do to an arch that has neither.
func (b *binder) leanWords() string {
	u := b.spec.Units
	var worst lights.EndPull
	for _, e := range b.plan.Lights.Pulls {
		if e.Known && (worst.Arch == 0 || e.Lean > worst.Lean || !e.Free) {
			worst = e
		}
	}
	why := "Tight rows pull the arches where they end toward each other; ridge and guys hold them."
	switch {
	case worst.Arch == 0:
	case !worst.Free:
		why += fmt.Sprintf(" Without those, %d rows pull arch %d over.", worst.Rows, worst.Arch)
	default:
		why += fmt.Sprintf(" Without those, %d rows pull the crown of arch %d over by %s or so.", worst.Rows, worst.Arch, u.Inches(worst.Lean))
	}
	return why
}

// rowMarks lists the rows from the ground up: letter, mark on the pipe, the height that comes of it.
func (f *flow) rowMarks() {
	u := f.b.spec.Units
	kinds := draw.RowKinds(f.b.plan)
	f.heading("The marks, and what hangs there", 40)
	var lines []place.Row
	done := map[int]bool{}
	for _, r := range f.b.plan.Lights.Rows {
		if done[r.Number] {
			continue
		}
		done[r.Number] = true
		lines = append(lines, place.Row{Cells: []string{fmt.Sprint(r.Number), u.Inches(r.Tape), draw.KindLetter(kinds, r.Kind), f.b.colourOf(r.Kind), f.b.rowHeights(r.Number)}})
	}
	f.table(place.Table{Columns: []place.Column{
		{Head: "Row", Lettering: paper.Cell, Align: paper.AtRight, Width: 13},
		{Head: "Mark on the pipe", Lettering: paper.Cell, Align: paper.AtRight, Width: 34},
		{Head: "Letter", Lettering: paper.Cell, Align: paper.AtMiddle, Width: 16},
		{Head: "String", Width: 52},
		{Head: "Height above the ground line", Lettering: paper.Floor},
	}}, lines)
	f.gap(2)
}

// colourOf names a kind of string and, where its name does not tell, its colour.
func (b *binder) colourOf(kind string) string {
	for _, s := range b.plan.Strings {
		if s.Kind == kind {
			if c := s.Label.Colour; c != "" && !strings.Contains(kind, strings.Fields(c)[0]) {
				return kind + ", " + c
			}
			return kind
		}
	}
	return kind
}

// heightAlike is how far the heights of one row may differ and still be printed as one figure.
const heightAlike = measure.Inch / 4

// rowHeights says how high a row's marks come: one figure where all are alike, else the least and the greatest with the arches that have them.
func (b *binder) rowHeights(number int) string {
	u := b.spec.Units
	type place struct {
		height measure.Length
		leg    string
	}
	var lo, hi place
	for _, r := range b.plan.Lights.Rows {
		if r.Number != number {
			continue
		}
		for n, h := range r.Heights {
			p := place{h, fmt.Sprintf("%s%d", r.Wall.Letter(), n+1)}
			if lo.leg == "" || h < lo.height {
				lo = p
			}
			if hi.leg == "" || h > hi.height {
				hi = p
			}
		}
	}
	if hi.height-lo.height <= heightAlike {
		return u.Inches((lo.height + hi.height) / 2)
	}
	return fmt.Sprintf("%s (%s) to %s (%s)", u.Inches(lo.height), lo.leg, u.Inches(hi.height), hi.leg)
}

// wall draws one wall in strips, as many on a page as go, with the legend once on each page. It is told the last page that has it and returns the same.
func (f *flow) wall(side spec.Side, told *paper.Page) *paper.Page {
	series := draw.Scales(f.b.spec.Units)
	_, page := f.b.newPage()
	legend, name := f.b.wallLegend(), side.String()
	head := paper.Heading.Leading() + paper.Length(len(paper.Body.Wrap(legend, f.room.W)))*paper.Body.Leading() + 3
	for i, s := range draw.WallStrips(f.b.plan, side, series, f.room.W, page.H/2-head) {
		if i > 0 {
			f.need(s.Height())
		} else {
			f.need(head + s.Height())
			if f.room.H < page.H {
				f.gap(3)
			}
		}
		if i == 0 || f.room.H == page.H {
			f.text(fmt.Sprintf("%s wall, %s", say.Capital(name), s.SeenFrom()), paper.Heading)
		}
		if told != f.page {
			f.text(legend, paper.Body)
			told = f.page
		}
		s.Draw(f.page, f.take(s.Height()))
		f.scale(s.Scale)
	}
	return told
}

// wallLegend says what the signs of the walls' pictures mean.
func (b *binder) wallLegend() string {
	kinds := draw.RowKinds(b.plan)
	var words []string
	for i, k := range kinds {
		words = append(words, fmt.Sprintf("%s %s: %s line", draw.KindLetter(kinds, k), b.colourOf(k), draw.KindPattern(i)))
	}
	return strings.Join(words, ". ") + ". Bar: prongs; cup: socket; S8–9: S9 plugged into S8. Dots: ties. Arrows run from prongs to socket."
}

// splices lists the strings of one wall's rows path by path: where their prongs and their socket come.
func (f *flow) splices(side spec.Side) {
	kinds := draw.RowKinds(f.b.plan)
	byName := map[string]lights.String{}
	for _, s := range f.b.plan.Strings {
		byName[s.Name] = s
	}
	var rows []place.Row
	for _, p := range f.b.plan.Lights.Paths {
		if p.Wall != side {
			continue
		}
		rows = append(rows, place.Row{Heading: fmt.Sprintf("%s %s: rows %s, arches %d to %d",
			draw.KindLetter(kinds, p.Kind), f.b.colourOf(p.Kind), say.Numbers(p.Rows), p.First, p.Last)})
		for _, n := range p.Strings {
			s := byName[n]
			from := shortRow(s.From.At)
			if other := f.b.socketFor(s); other != "" {
				from = "into " + other
			}
			rows = append(rows, place.Row{Cells: []string{"", "", s.Name, from, shortRow(s.To.At), f.b.leftWords(s), ""}})
		}
	}
	if len(rows) == 0 {
		return
	}
	f.heading(fmt.Sprintf("Strings of the %v wall, in the order they run", side), 40)
	f.text("Lit: it lit by itself. Up: it is tied. What is left over is laid back along its last row and tied.", paper.Body)
	f.gap(1)
	f.table(place.Table{Columns: []place.Column{
		{Head: "Lit", Width: 9.5, Tick: true, Align: paper.AtMiddle},
		{Head: "Up", Width: 9.5, Tick: true, Align: paper.AtMiddle},
		{Head: "String", Lettering: paper.Cell, Width: 19},
		{Head: "Prongs", Width: 32},
		{Head: "Socket at"},
		{Head: "Left over", Lettering: paper.CellSmall, Align: paper.AtRight, Width: 21},
		{Head: "It came at", Width: 26},
	}}, rows)
}

// shortRow takes the wall out of a place's words, which the heading over it says.
func shortRow(at lights.Place) string {
	return fmt.Sprintf("row %d, %s", at.Part.Number, at.Within())
}
