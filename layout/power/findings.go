package power

import (
	"fmt"
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// plural counts things in words: 1 string, 3 strings.
func plural(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// say adds a finding on the circuit sheet.
func (f *feeding) say(level finding.Level, code, key, format string, args ...any) {
	f.plan.Findings = append(f.plan.Findings, finding.Finding{
		Level: level, Code: code, Text: fmt.Sprintf(format, args...), Sheet: "circuit", Key: key, Pos: f.in.Spec.Position(key),
	})
}

// findings says what the reader of the circuit sheet should know.
func (f *feeding) findings() {
	if len(f.chains) == 0 {
		return
	}
	f.chainSays()
	f.overloadSays()
	if len(f.sharer.sources) == 0 {
		f.say(finding.Note, "no-power-given", "power", "The spec names no circuit with an outlet, so the %s are formed but nothing feeds them: %s in all. Give power.circuits and site.outlets.",
			plural(len(f.chains), "chain"), measure.Watts(f.plan.Watts))
		return
	}
	f.unfedSays()
	f.splitSays()
	f.circuitSays()
	f.dropSays()
	f.cordSays()
}

// strings counts the strings of some units.
func (f *feeding) strings(list []int) int {
	n := 0
	for _, i := range list {
		for _, c := range f.units[i].chains {
			n += len(f.chains[c].Strings)
		}
	}
	return n
}

// chainNames lists the chains of some units, at most six by name.
func (f *feeding) chainNames(list []int) string {
	var names []string
	for _, i := range list {
		for _, c := range f.units[i].chains {
			names = append(names, f.chains[c].Name)
		}
	}
	if len(names) > 6 {
		return strings.Join(names[:6], ", ") + fmt.Sprintf(" and %d more", len(names)-6)
	}
	return strings.Join(names, ", ")
}

// unfedSays tells what nothing feeds, and why.
func (f *feeding) unfedSays() {
	for _, i := range f.unfed {
		f.plan.Missing += f.sharer.wanted(f.units[i])
	}
	if n := f.strings(f.unfed); n > 0 {
		f.say(finding.MustFix, "not-enough-amps", "power.circuits", "%s are missing: the circuits, with their timers and plugs, cannot carry %s (chains %s) within their allowances, other load counted. %sAdd a circuit, free one of other load, or leave those strings out%s.",
			measure.Amps(f.plan.Missing), plural(n, "string"), f.chainNames(f.unfed), f.tightTimer(), f.ledWould())
	}
	if n := f.strings(f.dry); n > 0 {
		level := finding.LookAt
		for i := range f.in.Spec.Site.Outlets {
			if f.in.Spec.Given(fmt.Sprintf("site.outlets[%d].sockets", i)) {
				level = finding.MustFix
			}
		}
		f.say(level, "not-enough-sockets", "site.outlets", "The outlets' sockets cannot feed %s (chains %s), three-way taps counted. Give an outlet more sockets, or another outlet.",
			plural(n, "string"), f.chainNames(f.dry))
	}
	if n := f.strings(f.strange); n > 0 {
		u := f.units[f.strange[0]]
		kind := f.chains[u.chains[0]].Kind
		level := finding.MustFix
		if !f.voltsGiven(kind) {
			level = finding.LookAt
		}
		f.say(level, "wrong-volts", "power.circuits", "%s (chains %s) cannot go on any circuit here: %s wants %s. Never plug one in; use strings for the circuit's volts, or a supply.",
			plural(n, "string"), f.chainNames(f.strange), kind, measure.Volts(u.volts))
	}
}

// voltsGiven reports whether a string's volts were given, or come with a catalog name that the spec's author chose.
func (f *feeding) voltsGiven(kind string) bool {
	for _, s := range f.in.Spec.Lights.Strings {
		if s.Name == kind {
			return f.in.Spec.Given("lights.strings." + kind + ".volts")
		}
	}
	return true
}

// splitSays tells where the walls could not be fed apart.
func (f *feeding) splitSays() {
	if !f.in.Spec.Power.Split || f.split && f.sharing.possible {
		return
	}
	why := "only one circuit or GFCI is at hand"
	if len(f.sharer.trips(true)) > 1 {
		why = "the circuits cannot carry each wall by itself"
	}
	f.say(finding.LookAt, "split-not-possible", "power.split", "Left and right walls are to be fed apart, but %s, so one trip can darken both walls. Give another circuit with an outlet, or take split out.", why)
}

// circuitSays tells what to watch on the circuits in use.
func (f *feeding) circuitSays() {
	for i, c := range f.plan.Circuits {
		s := f.in.Spec.Power.Circuits[i]
		key := "power.circuits." + c.Name
		switch {
		case s.OtherLoad > s.Breaker+hair:
			f.say(finding.LookAt, "other-load-too-high", key, "Circuit %s is said to carry %s already, more than its breaker of %s holds, so no lights go on it. Write what hangs on it at the same time as the lights, e.g. `other load: 2 A`.",
				c.Name, measure.Amps(s.OtherLoad), measure.Amps(s.Breaker))
		case s.OtherLoad > c.Allowed+hair:
			f.say(finding.LookAt, "other-load-too-high", key, "Circuit %s carries %s already, more than the %s it may for hours, so no lights go on it. Take load off it before opening night.",
				c.Name, measure.Amps(s.OtherLoad), measure.Amps(c.Allowed))
		}
		if c.Lights == 0 {
			continue
		}
		if !s.GFCI && s.Volts > lowVolts {
			word := "GFCI"
			if s.Volts >= 200 {
				word = "30 mA RCD (gfci in the spec)"
			}
			f.say(finding.LookAt, "no-gfci", key, "Circuit %s feeds lights outdoors, and the spec names no %s on it. Have a licensed electrician see to one before anything is plugged in, then write gfci: true.", c.Name, word)
		}
		for _, name := range c.Outlets {
			for k, o := range f.in.Spec.Site.Outlets {
				if also := sharesReset(f.in.Spec, o); o.Name == name && also != "" {
					f.say(finding.LookAt, "gfci-also-feeds", fmt.Sprintf("site.outlets[%d]", k), "Outlet %s shares its protection with %s: a trip on a wet night takes that with it, and a fault there darkens the lights. Use another outlet, or say on the door who resets it.", o.Name, also)
				}
			}
		}
	}
	f.leakSays()
	f.supplySays()
	n, volts := 0, measure.Voltage(0)
	for _, c := range f.chains {
		if c.Volts >= 200 {
			n += len(c.Strings)
			volts = c.Volts
		}
	}
	if n > 0 {
		f.say(finding.LookAt, "mains-within-reach", "lights", "%s on %s mains hang within reach of the people who walk through. Ask the local authority or a licensed electrician whether that is allowed here; strings behind a low-voltage supply are the usual answer.", plural(n, "string"), measure.Volts(volts))
	}
}

// mostInLine is how many cords may be plugged one into the other before another circuit is taken up and, where that does not help, something is
// said: each joint is a wet plug more, and a pulled one darkens all behind it. Our own choice.
const mostInLine = 5

// cordSays tells of cords that cross the opening, of many in line, and of taps in taps.
func (f *feeding) cordSays() {
	units := f.in.Spec.Units
	stacked, line := "", 0
	for _, d := range f.plan.Feeders {
		for _, j := range d.Joints {
			if j.Taps > 1 && stacked == "" {
				stacked = j.At
			}
		}
		if !d.Crosses {
			continue
		}
		if f.in.Spec.Site.Cords.Cover {
			f.say(finding.Note, "cord-crosses", "site.cords", "The cord of feeder %s from outlet %s passes the opening along the ground at arch 1: lay it under a cover made for it, from foot to foot.", d.Name, d.Outlet)
			continue
		}
		f.say(finding.Note, "cord-crosses", "site.cords", "The cord of feeder %s from outlet %s gets to the far wall overhead: up one leg of arch 1, along the crown at %s and down the other leg, never across the opening; %s of it are counted for that.",
			d.Name, d.Outlet, units.Room(f.in.Crowns[0]), units.Room(f.site.crossing()))
	}
	worst := ""
	for _, c := range f.chains {
		if len(c.Cords) > line {
			line, worst = len(c.Cords), c.Name
		}
	}
	if line > mostInLine {
		f.say(finding.Note, "cords-in-line", "site.outlets", "Chain %s hangs behind %d cords in line. Keep every plug and tap off the ground and dry, and mind that one pulled plug darkens all behind it; another outlet near it, or more sockets at its outlet, would shorten the line.", worst, line)
	}
	if stacked != "" {
		f.say(finding.LookAt, "tap-in-tap", "site.outlets", "More than three things plug in at %s, so a tap sits in a tap there. Tie the taps up so that no weight hangs on a plug, or use one outdoor box with more sockets.", stacked)
	}
}
