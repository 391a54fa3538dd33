package packet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/weather"
)

// strength writes what the organiser chooses by: what wind and ice the arches bear, how deep the stakes go, what would bring more, other spans.
type strength struct {
	plan *layout.Plan
	u    measure.System
}

// strengthAnnex is what the arches bear, and why.
func (b *binder) strengthAnnex() []folio {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	s := strength{b.plan, b.spec.Units}
	blocks := []block.Block{block.Paragraph("For the organiser. Estimates, to close early by; no judgement that anything will hold.")}
	if len(b.plan.Weather.Bears) > 0 {
		blocks = append(blocks, block.Heading("What it bears"), s.bears())
		if t := b.spec.Tunnel; t.Arches == 1 || !b.spec.Ridge.Present {
			blocks = append(blocks, block.Paragraph("Along counts on the pipe not turning about its stakes, which only friction prevents, and no ridge piece helps here: guy it both ways."))
		}
		if !b.plan.Weather.Calm() {
			blocks = append(blocks, block.Heading("How deep the stakes go"), s.depths(), block.Paragraph(fmt.Sprintf("These go %s deep. Half as much again of load is reckoned with; where it is blank the arches fall first. "+
				"The pull test tells more than these do.", s.u.Inches(b.plan.Kinds[0].Spec.Stake.Depth))))
		}
	}
	if lines := CureLines(b.plan); len(lines) > 0 {
		blocks = append(blocks, block.Heading("To come nearer to the gusts of weather.stand and weather.inside, each line on top of those before"))
		for _, l := range lines {
			blocks = append(blocks, block.Paragraph(l))
		}
	}
	blocks = append(blocks, s.spans()...)
	for _, text := range []string{s.bend(), s.late(b.plan.Kinds[0]), s.cold()} {
		if text != "" {
			blocks = append(blocks, block.Paragraph(text))
		}
	}
	return []folio{{front: side{title: "Strength", blocks: blocks}}}
}

func (s strength) table(name string, rows []place.Row, columns ...place.Column) block.Block {
	return block.Block{Name: name, Gap: 1, Body: block.Table{Table: place.Table{Columns: columns}, Rows: rows}}
}

// bears is the table of what the arches bear: themselves, wind and ice.
func (s strength) bears() block.Block {
	w, u, kinds := s.plan.Weather, s.u, s.plan.Kinds
	var rows []place.Row
	row := func(what, figure, words string) {
		rows = append(rows, place.Row{Cells: []string{what, figure, words}})
	}
	least := slices.MinFunc(kinds, func(a, b *arch.Kind) int { return cmp.Compare(a.LoadFactor, b.LoadFactor) })
	tight := slices.MaxFunc(kinds, func(a, b *arch.Kind) int { return cmp.Compare(a.Strength, b.Strength) })
	row("Own weight and lights", factor(least.LoadFactor), fmt.Sprintf("times that, late in the season: %s sideways, %s along", factor(least.Sideways), factor(least.Along)))
	if k, t := kinds[0], s.plan.Spec.Tunnel; k.BoxHeight > 0 && k.BoxWidth > 0 {
		row("Room for people", u.Inches(s.whole(k.BoxWidth, math.Floor)), fmt.Sprintf("wide, %s high; %s wide it is %s high", u.Inches(t.OpeningHeight), u.Inches(t.OpeningWidth), u.Inches(s.whole(k.BoxHeight, math.Floor))))
	}
	row("Bend of the pipe", measure.Percent(measure.Share(math.Round(100*tight.Strength)/100)), fmt.Sprintf("of its strength, where the radius is %s: %s", u.Inches(tight.BendRadius), tight.Bend()))
	row("Spring in a bent arch", measure.By(u, fmt.Sprintf("%.0f ft·lb", tight.Energy/(float64(measure.PoundForce)*measure.Foot.Metres())), fmt.Sprintf("%.0f J", tight.Energy)), "when let go: three people, eye protection")
	for _, soil := range w.Bears {
		gives := "nothing gives way by then"
		if c := soil.Damage.Cause; c != weather.CauseNone {
			gives = fmt.Sprintf("%s, %s; it falls at %s", c, wayWords[soil.Damage.Way], u.Speed(soil.Collapse.Gust))
		}
		row("Gusts it bears, "+soil.Soil.Name+" soil", u.Speed(soil.Damage.Gust), gives)
	}
	sway := practice.SwayGusts()
	moves := func(i int) string {
		if most := kinds[0].Crown / 4; w.Sway[i] > most { // what leans so far is on its way down, and its figure is no figure
			return "over " + u.Inches(s.whole(most, math.Round))
		}
		return u.Inches(s.whole(w.Sway[i], math.Round))
	}
	row("Crown moves", moves(0), fmt.Sprintf("in gusts of %s; %s at %s", u.Speed(sway[0]), moves(1), u.Speed(sway[1])))
	if w.Held {
		words := "in gusts of " + u.Speed(w.Inside)
		if w.RidgeEnd > 0 {
			along := map[bool]string{true: "ridge", false: "crown line"}[s.plan.Spec.Ridge.Present]
			words += "; the " + along + " is pulled with " + u.Force(w.RidgeEnd)
		}
		row("Each guy or brace pulls", u.Force(w.GuyPull), words)
	}
	row("Ice all round", s.ice(w.Ice[1]), fmt.Sprintf("fells an arch late in the season; %s as raised", s.ice(w.Ice[0])))
	return s.table("what it bears", rows, place.Column{Head: "How it stands", Width: 50}, place.Column{Head: "Figure", Width: 28, Lettering: paper.Cell, Align: paper.AtRight}, place.Column{Head: "What it means", Lettering: paper.Body})
}

var wayWords = map[weather.Way]string{weather.Sideways: "side wind", weather.Along: "wind along"}

// factor prints a load factor.
func factor(f float64) string {
	if f >= arch.Most {
		return fmt.Sprintf("%.0f or more", f)
	}
	return fmt.Sprintf("%.1f", f)
}

// whole rounds a length that nobody measures to the inch or centimetre; a room for people down.
func (s strength) whole(l measure.Length, round func(float64) float64) measure.Length {
	step := measure.By(s.u, measure.Inch, 10*measure.Millimetre)
	return measure.Length(round(float64(l/step)+1e-6)) * step
}

// ice prints a thickness of ice, which is never known closely.
func (s strength) ice(l measure.Length) string {
	step := measure.By(s.u, measure.Inch/20, measure.Millimetre)
	return s.u.Size(measure.Length(math.Round(float64(l/step))) * step)
}

// depths is the table of the least depth at which the stakes hold, in still air and at the gusts that are acted on.
func (s strength) depths() block.Block {
	w := s.plan.Weather
	columns := []place.Column{{Head: "Least depth of stakes"}}
	for _, soil := range w.Bears {
		columns = append(columns, place.Column{Head: fmt.Sprintf("%s soil (%s)", soil.Soil.Name, soil.Soil.Assumed), Lettering: paper.Cell, Align: paper.AtRight, Width: 84 / paper.Length(len(w.Bears))})
	}
	type actedOn struct {
		gust measure.Speed
		acts string
	}
	gusts := []actedOn{{0, ""}, {w.Inside, ": nobody inside"}, {w.Down, ": the tunnel is down before"},
		{w.OpensTo(), ": then it may stay open up to forecast gusts of " + s.u.Speed(practice.InsideMost)}}
	slices.SortStableFunc(gusts, func(a, b actedOn) int { return cmp.Compare(a.gust, b.gust) })
	var rows []place.Row
	for _, g := range gusts {
		cells := []string{"gusts of " + s.u.Speed(g.gust) + g.acts}
		if g.gust == 0 {
			cells[0] = "in still air"
		}
		for _, soil := range w.Bears {
			cell := ""
			if deep, ok := w.Depth(soil.Soil, g.gust); ok {
				cell = s.u.Inches(measure.RoundUp(deep, measure.By(s.u, measure.Inch, 10*measure.Millimetre)))
			}
			cells = append(cells, cell)
		}
		rows = append(rows, place.Row{Cells: cells})
	}
	return s.table("depths", rows, columns...)
}

// spans is what the same sticks make over other spans; none where the first arch is only drawn.
func (s strength) spans() []block.Block {
	k := s.plan.Kinds[0]
	if _, _, solved := k.Inside(k.Crown / 2); !solved {
		return nil
	}
	list := append(arch.SpansAbout(k.Span, s.u), k.Span)
	slices.Sort(list)
	list = slices.CompactFunc(list, func(a, b measure.Length) bool { return s.u.Inches(a) == s.u.Inches(b) })
	list = slices.DeleteFunc(list, func(l measure.Length) bool { return l > k.Length })
	figure := func(l measure.Length) string {
		if l <= 0 {
			return "–"
		}
		return s.u.Inches(l)
	}
	var rows []place.Row
	for _, z := range s.plan.Sizes(k, list) {
		note := ""
		switch {
		case z.Crown <= 0, z.Standing >= arch.Falls:
			note = "no arch stands"
		case z.Bend == arch.TooTight:
			note = "bends too tightly"
		case z.Opens:
			note = "the opening stands clear"
		}
		if s.u.Inches(z.Span) == s.u.Inches(k.Span) {
			note = "as planned"
			if k.Refused() {
				note = "the nearest there is"
			}
		}
		rows = append(rows, place.Row{Cells: []string{s.u.Inches(z.Span), figure(z.Crown), figure(z.HeadWidth), note}})
	}
	number := func(head string) place.Column {
		return place.Column{Head: head, Lettering: paper.CellSmall, Align: paper.AtRight, Width: 40}
	}
	return []block.Block{block.Heading("Before buying: the same sticks over other spans"),
		s.table("other spans", rows, number("Feet"), number("Crown"), number("Width "+s.u.Inches(k.HeadHeight)+" up"), place.Column{})}
}

// bend says how hard the pipe is bent where it is bent hardest. The limits for buried pressure pipe are its makers' usual figures, from memory.
func (s strength) bend() string {
	k := slices.MaxFunc(s.plan.Kinds, func(p, q *arch.Kind) int { return cmp.Compare(p.Strain, q.Strain) })
	if k.BendRadius <= 0 {
		return ""
	}
	pipe := k.Spec.Pipe
	return fmt.Sprintf("The tightest bend, %s: radius %s at %s of tape from the left foot, %.0f times the pipe's diameter of %s, %.1f %% strain. "+
		"Limits published for buried pressure pipe, about 250 to 300 diameters, are for decades and do not apply to a garden arch: it works for a season and takes a set. "+
		"Mark each pipe's inside face and bend it the same way next year.",
		say.Numbered("arch", k.Numbers), s.u.Inches(k.BendRadius), s.u.Inches(k.BendAt), float64(k.BendRadius/pipe.OD), s.u.Size(pipe.OD), k.Strain*100)
}

// late says what creep does to the arch by the end of the season.
func (s strength) late(k *arch.Kind) string {
	fell := k.Crown - k.SeasonCrown
	if fell <= 0 || s.u.Inches(fell) == s.u.Inches(0) {
		return ""
	}
	return fmt.Sprintf("Late in the season, with %s of the pipe's stiffness left (our assumption, or as found), the crown is about %s lower and each foot pushes %s instead of %s.", measure.Percent(k.Spec.LateModulus), s.u.Inches(fell), s.u.Force(k.SeasonThrust), s.u.Force(k.Thrust))
}

// cold says what cold does to it.
func (s strength) cold() string {
	crown, ridge, ok := s.plan.Cold()
	none := s.u.Inches(0)
	if !ok || s.u.Inches(crown) == none && s.u.Inches(ridge) == none {
		return ""
	}
	shrunk := "crown " + s.u.Inches(crown) + " lower"
	if s.u.Inches(ridge) != none {
		shrunk += ", the ridge " + s.u.Inches(ridge) + " shorter in all"
	}
	warm := s.u.Temperature(arch.WarmPipe)
	return fmt.Sprintf("At %s the pipe has shrunk from %s: %s. Below %s pipe is stiffer and more brittle, and no figure for it is published.", s.u.Temperature(s.plan.Spec.Weather.Cold), warm, shrunk, warm)
}
