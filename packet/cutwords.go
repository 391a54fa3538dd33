package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// before sets what comes before the saw starts.
func (c *cutting) before() {
	c.framed("Before the saw starts", func(f *flow) {
		lines := []string{
			"Eye protection on everyone within reach of chips. No one under 16 at the saw.",
			"Stick clamped; hands a forearm from the blade. Power saw: guard on, ears covered.",
			"PVC dust: outdoors over the tarp, dust mask on; sweep up and bin, never burn.",
		}
		if c.steel() {
			lines = append(lines, "Steel: gloves on, sparks away from pipe and people. The cut end is hot and sharp.")
		}
		f.ticks(lines)
	})
	c.gap(3)
}

// eachStick sets how one stick is cut, with a picture of the mark and the blade.
func (c *cutting) eachStick() {
	c.heading("Each stick", 30)
	kerf := c.b.spec.Stock.Kerf
	allowed := "; the blade's " + c.units.Cut(kerf) + " is in them"
	if kerf <= 0 {
		allowed = "; they allow nothing for the blade"
	}
	end := "The better end is the left end; not square: trim it, and measure from the new end."
	if trim := c.b.spec.Stock.Trim; trim > 0 {
		end = "The first mark, at " + c.units.Cut(trim) + ", trims the left end: there, and only there, cut to the left of the mark. No piece takes the last " + c.units.Cut(trim) + " of the right end."
	}
	steps := []string{
		"Cracked, kinked or crushed: put it aside. " + end,
		"Hook the tape on the left end, once. Mark every number printed above the stick" + allowed + ". A wrong mark: strike it through, mark anew.",
		"Draw the mark all round. Cut to the right of it: the mark stays on the piece.",
		fmt.Sprintf("Measure the first piece: its length is printed inside or under it, limit %s. Off: your blade does not take %s; from here mark one piece at a time, measured from the fresh end.", c.limit(), c.units.Cut(kerf)),
		"Scrape off every burr, inside and outside: it stops a socket short and cuts wire.",
		c.naming(),
		"All named: tick the stick's box. Keep: write its length on the offcut, to the shed. Waste: bin.",
	}
	c.numberedSteps(steps)
	c.gap(2)
	od := c.b.spec.Arch.Pipe.OD
	if c.patterns[0].bars[0].Item == c.b.spec.Ridge.Pipe.Name && c.b.spec.Ridge.Present {
		od = c.b.spec.Ridge.Pipe.OD
	}
	cut := draw.SawCut{OD: od, Kerf: kerf, Units: c.units, Scale: draw.SawCutScale(c.series(), od)}
	room := c.take(cut.Height())
	cut.Draw(c.page, room)
	c.state(cut.Scale)
	c.gap(1)
}

// naming says where names are written.
func (c *cutting) naming() string {
	words := "Write its name big, near one end."
	for _, g := range alike(c.b.plan.Stock.Pieces) {
		if g.sort.Part.IsLeg() && !g.sort.Steel {
			words += " Leg: near its foot end, an arrow toward the crown."
			break
		}
	}
	if c.steel() {
		words += " Stake: painted, near its top."
	}
	if len(c.b.plan.Ridge) > 0 {
		words += " Ridge: near its end toward arch 1."
	}
	return words
}

// hold sets the trial of the first ridge piece, which the others wait for.
func (c *cutting) hold() {
	trial, others, ok := c.ridge()
	if !ok {
		return
	}
	c.gap(3)
	title := "HOLD: of the ridge cut ridge 1 only, until it has been tried in bay 1"
	if others == 0 {
		title = "Try ridge 1 before it is called done"
	}
	c.framed(title, func(f *flow) {
		home := "Arches 1 and 2 stand plumb. Drive ridge 1 home with the mallet, onto the stop of both crown sockets."
		if short := c.b.spec.Ridge.Pipe.Socket * practice.SocketShort; short > 0 { // how far a taper of the standard lets a dry pipe in: two thirds
			home += fmt.Sprintf(" A bay whose two dry joints are not driven home is up to %s too long.", c.units.Cut(2*short))
		}
		f.text(home, paper.Body)
		f.gap(1)
		off := "too far apart: every other ridge piece shorter by as much; too near: longer"
		if others == 0 {
			off = "too far apart: trim ridge 1 by as much; too near: cut a longer one"
		}
		f.table(place.Table{RowMin: 9, Columns: []place.Column{
			{Head: "Check", Width: 42}, {Head: "Wanted", Lettering: paper.Cell, Width: 37}, {Head: "Limit", Lettering: paper.CellSmall, Width: 24},
			{Head: "Measured", Width: 24}, {Head: "If it is off"}}},
			[]place.Row{
				{Cells: []string{"Ridge 1 as cut", c.units.Cut(trial.Length), c.limit(), "", "cut another"}},
				{Cells: []string{"Arch 1 to arch 2 at the crown, same edge of both", c.units.Cut(c.b.plan.Ridge[0].Centres), c.limit(), "", off}},
			})
		if others == 0 {
			return
		}
		f.gap(1)
		f.signLine("Every other ridge piece (longer +, shorter −)", "Signed")
		f.text(c.change(others+1), paper.Body)
		if c.mixed() {
			f.text("Sticks with other pieces beside the ridge: cut those now, and write the stick's letter on the rest.", paper.Body)
		}
	})
	c.gap(3)
}

// mixed reports whether other pieces share a stick with ridge pieces that wait.
func (c *cutting) mixed() bool {
	return slices.ContainsFunc(c.patterns, func(p pattern) bool {
		pieces := p.bars[0].Pieces
		last := pieces[len(pieces)-1]
		return !pieces[0].ID.Ridge() && last.ID.Ridge() && !last.ID.Trial()
	})
}

// change says why a small error counts, and what change of the ridge the sticks allow.
func (c *cutting) change(bays int) string {
	grid := c.units.Grid()
	words := fmt.Sprintf("%s a bay adds up to %s over %d bays. ", c.units.Cut(grid), c.units.Cut(grid*measure.Length(bays)), bays)
	room := measure.Length(int(c.cuts.RidgeRoom()/grid)) * grid
	if room <= 0 {
		return words + "The sticks below give no longer pieces: must they be longer, stop and ask."
	}
	return words + fmt.Sprintf("Up to %s longer fits the sticks below; more: stop and ask. After a change strike out the ridge marks and measure each ridge piece from the fresh end.", c.units.Cut(room))
}

// signLine sets two texts with a line to write on behind each.
func (f *flow) signLine(first, second string) {
	box := f.take(9)
	y := box.Y + 6.4
	x := box.X
	f.page.Text(paper.Point{X: x, Y: y}, paper.AtLeft, first, paper.Strong)
	x += paper.Strong.Width(first) + 2
	mid := x + (box.Right()-x)*0.42
	f.page.Line(paper.Point{X: x, Y: y + 0.8}, paper.Point{X: mid, Y: y + 0.8}, paper.Thin)
	f.page.Text(paper.Point{X: mid + 3, Y: y}, paper.AtLeft, second, paper.Strong)
	x = mid + 5 + paper.Strong.Width(second)
	f.page.Line(paper.Point{X: x, Y: y + 0.8}, paper.Point{X: box.Right(), Y: y + 0.8}, paper.Thin)
}

// stopAndAsk ends the sheet.
func (c *cutting) stopAndAsk() {
	c.gap(3)
	c.framed("Stop and ask when", func(f *flow) {
		f.text("A stick is short, belled at an end or of another size. A piece does not match its printed length. A name is missing, or stands on two pieces. A piece cut short: put it aside, its length on it; take a new stick if there is one. Never heat, stretch or splice pipe to make up a length.", paper.Body)
	})
}
