package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
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
		{Head: "Do", Width: 58},
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
		{"Read the print on every cord and three-way.", "The outdoor mark; no cut, no tape, all pins.", "Take it out of use, fetch another."},
		{"Count cords and three-ways against the diagram.", fmt.Sprintf("%s, %s, none more.", say.Count(len(p.Cords), "cord"), say.Count(len(p.Taps), "three-way")), "Lay it as drawn; add none."},
		{"Look along the way people walk.", "No cord crosses it; none lies inside the feet.", "Move it outside, or over arch 1 as drawn."},
		{"Look at every joint.", fmt.Sprintf("%s or more off the ground, covered, cord hanging below its plug.", f.b.handHigh()), "Tie it to the leg. No weight on a plug."},
		{"Look at every outlet.", "Its cover closes over the plug in it.", "Not open: ask for an in-use cover."},
		{"Look for coils and pinches.", "None under a foot, stake, door.", "Lay it out long, away from it."},
	})
	f.checks("2 At each outlet, with a lamp in it", []check{
		{"Press TEST.", "The lamp goes out at once.", "Do not use this outlet. Electrician."},
		{"Press RESET.", "The lamp lights again.", "Do not use this outlet. Electrician."},
		{"Lamp out, cord in. One run at a time, from the outlet outward.", "Every bulb lit before the next goes in.", fmt.Sprintf("Trips: see below. Dark from one string on: its plug or fuse. All dark: three-way, cord, %s.", kind)},
		{"After 15 minutes with all of it lit: feel every plug and three-way.", "None warm.", "Pull it, dry hands; swap it, test again."},
		{"Press TEST again with everything lit.", "All its lights go out. RESET: all back.", "Switch off. Electrician."},
	})
	f.text(f.law(), paper.Body)
	f.gap(2)
	f.text("Tested by ______________________   date and time ______________________", paper.Body)
}

// law says what the codes ask of lights like these, and that local code decides.
func (f *flow) law() string {
	if f.b.volts() >= 200 {
		return "Outdoors an RCD of 30 mA or less (IEC 60364-4-41 411.3.3) and parts made for outdoors. How long lights may hang, and mains within the public's reach, is for the local authority to say; local code decides."
	}
	days := "Where the NEC is law: a GFCI outdoors (210.8), covers that close in use (406.9(B)), listed lights (410.160), 90 days at most (590.3(B))"
	if d := f.b.spec.Dates.Build; !d.IsZero() {
		days += ": built " + d.Format("2006-01-02") + ", down by " + d.AddDate(0, 0, 90).Format("2006-01-02")
	}
	return days + ". Local code may ask for more, and decides."
}

// handHigh is how far off the ground a joint is kept, as printed.
func (b *binder) handHigh() string { return b.spec.Units.Inches(practice.JointHigh(b.spec.Units)) }

// whenItTrips is what to do on the night.
func (f *flow) whenItTrips() {
	kind := device(f.b.volts())
	f.checks(fmt.Sprintf("When %s or a breaker trips", withArticle(kind)), []check{
		{"Leave it off. Torches; stop people at the way in.", "Nobody inside in the dark.", "Close for the night."},
		{"Dry hands: pull the cord at the outlet. Press RESET.", "It stays in.", "Trips with nothing in it: leave it. Electrician."},
		{"Unplug every run. Cord in, then one run at a time, outward.", "It stays in until one thing trips it.", "That one is wet or hurt: out, tag it, go on without it."},
		{"Look at that plug and the next.", "Dry, off the ground, loop below it.", "Dry it, tie it higher, cover it, try once more."},
		{"Write down night, outlet, run, what it was.", "Once.", "Twice: leave it off, ask the organiser."},
	})
	f.powerNotes()
	if low, words := f.lowLoad(); low {
		f.text("The lights are far below the breakers ("+words+"), so a breaker that trips carries something else as well, or there is a fault: ask what else is on.", paper.Body)
	} else {
		f.text("A breaker that trips carries too much or has a fault ("+words+"): ask what else is on, and plug in fewer runs.", paper.Body)
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
