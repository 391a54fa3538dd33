package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
)

// circuitDiagram makes the sheets of the power crew: what to bring and how to read it, the plan of the cords, a diagram for each outlet and wall, the test before dark,
// and what to do when it trips.
func (b *binder) circuitDiagram() []leaf {
	p := b.plan.Power
	if len(p.Feeders) == 0 {
		return b.unfed()
	}
	f := b.newFlow("For the power crew: where each cord lies, what plugs into it, and the test before dark.", b.powerKit())
	f.powerWarning()
	f.circuits()
	f.order()
	f.findings("circuit")
	early := f.room.H >= legendHeight // a short tunnel's signs go on the first page, a long one's before the first diagram
	if early {
		f.legend()
	}
	figured := !early && f.room.H >= figuredHeight
	if figured {
		f.figured()
	}
	f.cordPlan()
	f.turn()
	if !early {
		f.legend()
	}
	for i, d := range p.Feeders {
		f.feeder(d, i == 0 || p.Feeders[i-1].Outlet != d.Outlet)
	}
	f.leftDark()
	f.gap(5)
	f.beforeDark()
	f.whenItTrips()
	f.stopAndAsk()
	if !figured {
		f.figured()
	}
	return f.leaves
}

// powerKit lists what the power crew carries.
func (b *binder) powerKit() string {
	p := b.plan.Power
	var kit []string
	for _, c := range p.Lots {
		kit = append(kit, fmt.Sprintf("%d × %s", c.Count, b.cordName(c)))
	}
	if n := len(p.Taps); n > 0 {
		kit = append(kit, fmt.Sprintf("%d outdoor three-ways", n))
	}
	if p.Supplies > 0 {
		kit = append(kit, fmt.Sprintf("%d supplies", p.Supplies))
	}
	return strings.Join(kit, ", ") + ", all marked for outdoor use; a weather cover for each joint, ties, tape and a marker to number both ends of every cord, a plug-in lamp, a dim white torch."
}

// cordName says what cords of a lot are: 25 ft 16 AWG cords, 50 ft 16 AWG cords with 9 sockets.
func (b *binder) cordName(l power.Lot) string {
	name := fmt.Sprintf("%s %s cords", draw.StockWords([]measure.Length{l.Length}, b.spec.Units), l.Name)
	if l.Sockets > 1 {
		name += fmt.Sprintf(" with %d sockets", l.Sockets)
	}
	return name
}

// device is what protects people at an outlet, by the name of its world.
func device(v measure.Voltage) string {
	if v >= 200 {
		return "RCD"
	}
	return "GFCI"
}

// withArticle says a GFCI, an RCD.
func withArticle(device string) string {
	if device == "RCD" {
		return "an " + device
	}
	return "a " + device
}

// powerWarning is what must be known before a plug is touched.
func (f *flow) powerWarning() {
	f.text("Nothing goes into an outlet until step 2 of the test at the end of this sheet. Dry hands, dry plugs. Outlets, wiring and breakers are work for a licensed electrician. Local code decides where it asks for more.", paper.Strong)
	f.gap(2)
}

// order is what the power crew does, in order.
func (f *flow) order() {
	f.heading("Order of work", 24)
	f.numberedSteps([]string{
		"Tape its number on both ends of every cord.",
		"Lay the cords in the order of their numbers, prongs toward the outlet. Spare length goes out and back along the wall, never coiled. To a crown a cord goes up the leg, tied on.",
		"Tie each three-way and socket to its leg, mouth down, off the ground. Plug in as the outlet's page draws it. Cover each run's last socket and every spare one. Tick the place.",
		"Put the timer in the outlet before the cord. Set it: off 30 minutes after closing. A dead string waits for daylight: no ladder after dark, nor with people inside.",
		"Test with the last pages of this sheet before an outlet is switched on for good.",
	})
}

// circuitOf returns a circuit of the plan by its name.
func (b *binder) circuitOf(name string) power.Circuit {
	for _, c := range b.plan.Power.Circuits {
		if c.Name == name {
			return c
		}
	}
	return power.Circuit{}
}

// circuits draws for each circuit in use what it carries of what it may.
func (f *flow) circuits() {
	share := measure.Percent(f.b.spec.Power.Continuous)
	f.heading("What each circuit carries", 16)
	f.text(fmt.Sprintf("Whole bar: %s of the breaker, the most for hours. Black: lights. Hatched: other load.", share), paper.Body)
	f.gap(1)
	var idle []string
	for _, c := range f.b.plan.Power.Circuits {
		if c.Lights == 0 {
			idle = append(idle, c.Name)
			continue
		}
		f.loadBar(c)
	}
	if len(idle) > 0 {
		f.text("Not used: "+strings.Join(idle, ", ")+".", paper.Body)
	}
	f.gap(1)
}

// loadBar draws one circuit's bar with its numbers.
func (f *flow) loadBar(c power.Circuit) {
	box := f.take(13)
	name := c.Name
	if c.Spec.BreakerNo != "" {
		name += ", breaker " + c.Spec.BreakerNo
	}
	name += ":"
	top := paper.Point{X: box.X, Y: box.Y + 4.6}
	numbers := fmt.Sprintf("%s of %s = %s", measure.Amps(c.Amps), measure.Amps(c.Allowed), measure.Percent(measure.Share(c.Amps/c.Allowed)))
	f.page.Text(paper.Point{X: box.Right(), Y: top.Y}, paper.AtRight, numbers, paper.Cell)
	what := fmt.Sprintf(" %s at %s, lights %s", measure.Amps(c.Spec.Breaker), measure.Volts(c.Spec.Volts), measure.Amps(c.Lights))
	if c.Spec.OtherLoad > 0 {
		what += ", other load " + measure.Amps(c.Spec.OtherLoad)
	}
	room := box.W - paper.Cell.Width(numbers) - 4
	name = clip(name, paper.Strong, room-paper.Body.Width(what))
	f.page.Text(top, paper.AtLeft, name, paper.Strong)
	f.page.Text(paper.Point{X: top.X + paper.Strong.Width(name), Y: top.Y}, paper.AtLeft, what, paper.Body)
	bar := paper.Rect{X: box.X, Y: box.Y + 6.4, W: box.W * 2 / 3, H: 4}
	draw.LoadBar(place.NewBoard(f.page, box), bar, float64(c.Spec.OtherLoad/c.Allowed), float64(c.Lights/c.Allowed))
}

// feederLeast is the least of a diagram that begins on a page's rest: its columns' heads and four rows.
const feederLeast paper.Length = 66

// feeder draws what one socket of an outlet feeds, wall by wall, on what is left of the page where a good part of it has room there.
func (f *flow) feeder(d power.Feeder, first bool) {
	for _, wall := range []spec.Side{spec.Left, spec.Right} {
		o := draw.NewOneLine(f.b.plan, d, wall, f.room.W)
		for from := 0; from < len(o.Rows); {
			head := func(f *flow) { f.feederHead(d, wall, first, from > 0) }
			f.need(f.height(f.room.W, head) + min(feederLeast, o.Height(from, len(o.Rows))))
			head(f)
			to := o.Fit(from, f.room.H)
			h := o.Height(from, to)
			o.Draw(place.NewBoard(f.page, f.room), f.room, from, to)
			f.gap(h)
			if from = to; from < len(o.Rows) {
				f.turn()
			}
			first = false
		}
		if len(o.Rows) > 0 {
			f.gap(5)
		}
	}
}

// crosses reports whether a cord of the feeder gets to the wall past the opening.
func crosses(d power.Feeder, wall spec.Side) bool {
	return slices.ContainsFunc(d.Joints, func(j power.Joint) bool { return j.Over && j.Wall == wall })
}

// feedersAt counts what is plugged into an outlet.
func (b *binder) feedersAt(outlet string) int {
	n := 0
	for _, d := range b.plan.Power.Feeders {
		if d.Outlet == outlet {
			n++
		}
	}
	return n
}

// feederHead names the outlet and the wall, and says where an outlet is drawn first how it is switched, reset and shared.
func (f *flow) feederHead(d power.Feeder, wall spec.Side, first, more bool) {
	title := fmt.Sprintf("Outlet %s → %v wall", d.Outlet, wall)
	if f.b.feedersAt(d.Outlet) > 1 {
		title = fmt.Sprintf("Outlet %s, %s → %v wall", d.Outlet, d.Name, wall)
	}
	if more {
		title += ", continued"
	}
	f.text(title, paper.Heading.Sized(18))
	if more {
		return
	}
	if first {
		f.outlet(d)
	}
	words := "Arch 1 is at the top."
	if d.Cord != "" {
		words = fmt.Sprintf("Every cord here is %s. The number on a line is the cord's. ", d.Cord) + words
	}
	f.text(words, paper.Body)
	if crosses(d, wall) {
		over := "“Over arch 1”: up one leg of arch 1, along the crown and down the other leg, tied all the way; never across the opening."
		if f.b.spec.Site.Cords.Cover {
			over = "“Over arch 1”: across the way at arch 1 from foot to foot, under a cover made for it."
		}
		f.text(over, paper.Strong)
	}
	f.gap(2)
}

// outlet says where an outlet is reset, what else it feeds and what its circuit carries.
func (f *flow) outlet(d power.Feeder) {
	c := f.b.circuitOf(d.Circuit)
	for _, o := range f.b.spec.Site.Outlets {
		if o.Name != d.Outlet {
			continue
		}
		reset := o.ResetAt
		if reset == "" {
			reset = "__________________ (fill in)"
		}
		also := o.AlsoFeeds
		if also == "" {
			also = "__________________ (ask; fill in)"
		}
		kind := device(d.Volts)
		if !c.Spec.GFCI {
			kind = "No " + kind + " named in the spec: do not plug in until there is one. " + kind
		}
		f.text(fmt.Sprintf("%s reset at: %s. It also feeds: %s.", kind, reset, also), paper.Body)
		if words := linkWords(f.b.plan.Power.Limits(o)); words != "" {
			f.text("At most: "+words+".", paper.Body)
		}
	}
	f.loadBar(c)
}

// cordPlan draws the plan of the cords, on the rest of the page where all of it has room there, else section by section, as many side by side as a page holds.
func (f *flow) cordPlan() {
	const least, head, foot = 130, 21, 4
	series := paper.ImperialScales
	if f.b.spec.Units == measure.Metric {
		series = paper.MetricScales
	}
	fit := func() (*draw.CordPlan, paper.Rect) {
		room := f.room
		room.Y += head
		room.H -= head + foot
		return draw.NewCordPlan(f.b.plan, series, room), room
	}
	c, room := fit()
	if f.room.H < least || len(c.Sections) > 1 {
		f.turn()
		c, room = fit()
	}
	for i, row := range c.Rows(room) {
		if i > 0 {
			f.turn()
		}
		title := "Where the cords lie"
		if len(c.Sections) > 1 {
			title += fmt.Sprintf(": arches %d to %d", row[0].First, row[len(row)-1].Last)
		}
		f.text(title, paper.Heading.Sized(18))
		f.text("Every cord lies on the ground against the outside of the feet; they are drawn apart to tell them apart. Lay them in the order of their numbers.", paper.Body)
		f.scale(c.Scale)
		for k, column := range c.Columns(room, row) {
			c.Draw(place.NewBoard(f.page, column), column, row[k])
		}
		f.gap(f.room.H)
	}
}
