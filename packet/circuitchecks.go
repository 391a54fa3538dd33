package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

// check is a line of a check list: what to do, the answer wanted, what to do when it is another.
type check struct{ do, want, off string }

// checks sets a check list with a tick box a line, under a heading that stays with its first lines.
func (f *flow) checks(heading string, list []check) {
	rows := make([]place.Row, 0, len(list))
	for i, c := range list {
		rows = append(rows, place.Row{Cells: []string{"", fmt.Sprintf("%d", i+1), c.do, c.want, c.off}})
	}
	f.heading(heading, 30)
	f.table(place.Table{Columns: []place.Column{
		{Head: "", Width: 9.5, Tick: true, Align: paper.AtMiddle},
		{Head: "", Width: 8, Lettering: paper.CellSmall},
		{Head: "Do", Width: 60},
		{Head: "Want", Width: 54},
		{Head: "If not"},
	}}, rows)
	f.gap(2)
}

// beforeDark is the test, with everything laid and nothing plugged into an outlet.
func (f *flow) beforeDark() {
	p := f.b.plan.Power
	kind := device(f.b.volts())
	f.need(100)
	f.text("Before dark: test in this order", paper.Heading.Sized(18))
	f.text("One reads, one does, both look. Touch each thing you answer for.", paper.Body)
	f.checks("1 Nothing plugged in yet: walk every cord from its outlet to its end", []check{
		{"Read the print on every cord and tap.", "“Outdoor” or the outdoor mark on each; no cut, no tape, all pins there.", "Take it out of use, fetch another."},
		{"Count cords and taps against the diagram.", fmt.Sprintf("%d cords, %d taps, none more. No cord into a cord beyond those drawn.", f.b.cordCount(), p.Taps), "Lay it as drawn. Too short: ask, do not add one."},
		{"Look along the way people walk.", "No cord crosses it; none lies inside the feet.", "Move it outside, or up and over arch 1 where that is drawn."},
		{"Look at every joint.", fmt.Sprintf("%s or more off the ground, in its cover, each cord hanging lower than its plug (a drip loop).", f.b.handHigh()), "Tie it up to the leg. No weight on a plug."},
		{"Look at every outlet.", "Its cover closes over the plug with the cord in it.", "Do not use it open. Ask for an in-use cover."},
		{"Look for coils and pinches.", "No coil; no cord under a foot, stake or door.", "Lay it out long, away from what pinches it."},
	})
	f.checks("2 At each outlet, with a lamp in it", []check{
		{"Press TEST.", "The lamp goes out at once.", "Do not use this outlet. Electrician."},
		{"Press RESET.", "The lamp lights again.", "Do not use this outlet. Electrician."},
		{"Lamp out, cord in. Then one chain at a time, walking outward from the outlet.", "Every bulb of that chain lit before the next goes in.", fmt.Sprintf("Trips: see below. Dark from one string on: that string's plug or its fuse. All dark: the tap, the cord, the %s.", kind)},
		{"After 15 minutes with all of it lit: feel every plug and tap.", "None warm.", "Pull it with dry hands, swap the warm part, test again."},
		{"Press TEST again with everything lit.", "All of that outlet's lights go out. RESET brings them back.", "Switch off. Electrician."},
	})
	days := "Lights strung for a season come down: local rules may say after how many days."
	if f.b.volts() < 200 {
		days = "Lights strung for a season stay up 90 days at most (NEC 590.3(B)); local code may say less."
		if d := f.b.spec.Dates.Build; !d.IsZero() {
			days += " Built " + d.Format("2006-01-02") + ": down by " + d.AddDate(0, 0, 90).Format("2006-01-02") + "."
		}
	}
	f.text(days, paper.Body)
	f.gap(2)
	f.text("Tested by ______________________   date and time ______________________", paper.Body)
}

// handHigh is how far off the ground a joint is kept, as printed. Common practice, no source.
func (b *binder) handHigh() string {
	if b.spec.Units == measure.Metric {
		return b.spec.Units.Inches(100)
	}
	return b.spec.Units.Inches(4 * measure.Inch)
}

// whenItTrips is what to do on the night.
func (f *flow) whenItTrips() {
	kind := device(f.b.volts())
	f.checks(fmt.Sprintf("When %s or a breaker trips", withArticle(kind)), []check{
		{"Leave it off. Light the way with torches and stop people at the way in.", "Nobody inside in the dark.", "Close for the night."},
		{"Dry hands: pull the cord at the outlet. Press RESET.", "It stays in.", "Trips with nothing in it: leave it. Electrician."},
		{"Unplug every chain at its tap. Cord in. Then one tap, one chain at a time from the outlet outward.", "It stays in until one thing trips it.", "That one is wet or damaged: out, tag it, dry it indoors. Go on without it."},
		{"Look at that plug and the next.", "Dry, off the ground, loop below it.", "Dry it, tie it higher, cover it, try once more."},
		{"Write down night, outlet, chain, what it was.", "Once.", "Twice on one outlet: leave it off, ask the organiser."},
	})
	if low, words := f.lowLoad(); low {
		f.text("The lights are far below the breakers ("+words+"), so a breaker that trips carries something else as well, or there is a fault: ask what else is on.", paper.Body)
	} else {
		f.text("A breaker that trips carries too much or has a fault ("+words+"): ask what else is on, and plug in fewer chains.", paper.Body)
	}
	f.gap(1)
}

// lowLoad says in words what the circuits in use carry, and reports whether none carries half its allowance.
func (f *flow) lowLoad() (low bool, words string) {
	low = true
	var tells []string
	for _, c := range f.b.plan.Power.Circuits {
		if c.Lights > 0 {
			tells = append(tells, fmt.Sprintf("%s %s of %s", c.Name, measure.Amps(c.Amps), measure.Amps(c.Allowed)))
			low = low && c.Amps < c.Allowed/2
		}
	}
	return low, strings.Join(tells, ", ")
}

// stopAndAsk ends the sheet.
func (f *flow) stopAndAsk() {
	f.heading("Stop and ask when", 20)
	f.text("prongs face prongs, or a plug does not fit · anything smells, hums, sparks or is warm · a plug has stood in water · a cord is too short · an outlet has no "+device(f.b.volts())+" · anyone wants to open a box, lift a pin, or use an indoor cord.", paper.Body)
}

// volts is the volts of the first circuit in use: the world whose words the sheet uses.
func (b *binder) volts() measure.Voltage {
	for _, d := range b.plan.Power.Feeders {
		return d.Volts
	}
	if b.spec.Units == measure.Metric {
		return 230
	}
	return 120
}

// cordCount returns how many cords are laid.
func (b *binder) cordCount() int {
	n := 0
	for _, c := range b.plan.Power.Cords {
		n += c.Count
	}
	return n
}
