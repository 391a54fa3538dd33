// What is said of circuits, outlets and cords.

package power

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// say adds a finding on the circuit sheet.
func (f *feeding) say(level finding.Level, code, key, format string, args ...any) {
	f.plan.Findings = append(f.plan.Findings, finding.Finding{
		Level: level, Code: code, Text: fmt.Sprintf(format, args...), Key: key,
	})
}

// findings says what the reader of the circuit sheet should know.
func (f *feeding) findings() {
	if len(f.chains) == 0 {
		return
	}
	f.chainSays()
	f.overloadSays()
	if len(f.sources) == 0 {
		f.say(finding.Note, "no-power-given", "power", "The spec names no circuit with an outlet, so the %s are formed but nothing feeds them: %s in all. Give circuits and outlets.",
			say.Count(len(f.chains), "run"), measure.Watts(f.plan.Watts))
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
		for _, c := range f.units[i].runs {
			n += len(f.chains[c].Strings)
		}
	}
	return n
}

// chainNames lists the chains of some units, at most six by name.
func (f *feeding) chainNames(list []int) string {
	var names []string
	for _, i := range list {
		for _, c := range f.units[i].runs {
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
	if n := f.strings(f.unfed); n > 0 {
		f.say(finding.MustFix, "not-enough-amps", "power.circuits", "%s are missing: the circuits, with their timers and plugs, cannot carry %s (runs %s) within their allowances, other load counted. %sAdd a circuit, free one of other load, or leave those strings out%s.",
			measure.Amps(f.plan.Missing), say.Count(n, "string"), f.chainNames(f.unfed), f.tightTimer(), f.ledWould())
	}
	if n := f.strings(f.dry); n > 0 {
		level := finding.LookAt
		for i := range f.in.Spec.Site.Outlets {
			if f.in.Spec.Given(fmt.Sprintf("site.outlets[%d].sockets", i)) {
				level = finding.MustFix
			}
		}
		f.say(level, "not-enough-sockets", "site.outlets", "The outlets' sockets cannot feed %s (runs %s), three-ways counted. Give an outlet more sockets, or another outlet.",
			say.Count(n, "string"), f.chainNames(f.dry))
	}
	if n := f.strings(f.strange); n > 0 {
		u := f.units[f.strange[0]]
		kind, wants := f.chains[u.runs[0]].Kind, measure.Volts(u.volts)
		if u.supply {
			wants = "mains, for its supply"
		}
		level := finding.MustFix
		if !f.voltsGiven(kind) {
			level = finding.LookAt
		}
		f.say(level, "wrong-volts", "power.circuits", "%s (runs %s) cannot go on any circuit here: %s wants %s. Never plug one in; use strings for the circuit's volts, or a supply.",
			say.Count(n, "string"), f.chainNames(f.strange), kind, wants)
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

// splitSays tells where the split that is asked for could not be kept.
func (f *feeding) splitSays() {
	want := f.in.Spec.Power.Split
	if f.plan.kept {
		return
	}
	why := "only one circuit or GFCI is at hand"
	if len(f.trips(want)) > 1 {
		why = "the circuits cannot carry each part by itself"
	}
	what, dark := "Left and right walls are", "both walls"
	if want == spec.SplitArches {
		what, dark = "Every other arch is", "whole bays"
	}
	f.say(finding.LookAt, "split-not-possible", "power.split", "%s to be fed apart, but %s, so one trip can darken %s. Give another circuit with an outlet, or take split out.", what, why, dark)
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
			f.bareSays(c.Name, s.Volts)
		}
		for _, name := range c.Outlets {
			for k, o := range f.in.Spec.Site.Outlets {
				if also := sharesReset(f.in.Spec, o); o.Name == name && also != "" {
					f.say(finding.LookAt, "gfci-also-feeds", fmt.Sprintf("site.outlets[%d]", k), "Outlet %s shares its protection with %s: a trip on a wet night takes that with it, and a fault there darkens the lights. Use another outlet, or say on the door who resets it.", o.Name, also)
				}
			}
		}
	}
	f.socketSays()
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
		f.say(finding.LookAt, "mains-within-reach", "lights", "%s on %s mains hang within reach of the people who walk through. Ask the local authority or a licensed electrician whether that is allowed here; low-voltage strings are the usual answer within reach, their supply indoors or in a dry box.", say.Count(n, "string"), measure.Volts(volts))
	}
}

// socketSays tells of outlets into which several plugs go, timers or cords: something else may be in one of their sockets.
func (f *feeding) socketSays() {
	for i, o := range f.in.Spec.Site.Outlets {
		plugs, timers := 0, 0
		for _, d := range f.plan.Feeders {
			plugs += b2i(d.Outlet == o.Name)
		}
		for _, t := range f.plan.Timers {
			timers += b2i(t.Outlet == o.Name)
		}
		if timers > 0 {
			plugs = timers
		}
		if plugs > 1 {
			f.say(finding.Note, "sockets-wanted", fmt.Sprintf("site.outlets[%d].sockets", i), "Outlet %s needs %d free sockets: look before anything is bought.", o.Name, plugs)
		}
	}
}

// bareSays tells of a circuit that has no GFCI or RCD; where nobody has said so, it asks.
func (f *feeding) bareSays(circuit string, volts measure.Voltage) {
	key, word := "power.circuits."+circuit, "GFCI"
	if volts >= 200 {
		word = "30 mA RCD"
	}
	if f.in.Spec.Given(key + ".gfci") {
		f.say(finding.MustFix, "no-gfci", key+".gfci", "Circuit %s feeds lights outdoors and has no %s. Put a portable one in the outlet before anything is plugged in (it is on the buying list), or have a licensed electrician fit one, then write gfci: true.", circuit, word)
		return
	}
	f.say(finding.LookAt, "no-gfci", key+".gfci", "Is there a %s on circuit %s, which feeds lights outdoors? Press TEST: a protected outlet goes dead. Then write gfci: true; else put a portable one in the outlet before anything is plugged in (it is on the buying list).", word, circuit)
}

// mostInLine is how many cords may be plugged one into the other before something is said: each joint is a wet plug more, and a pulled one darkens all
// behind it. Our own choice.
const mostInLine = 5

// cordSays tells of cords that cross the opening or a side way, and of many in line.
func (f *feeding) cordSays() {
	how := "overhead: up one leg, along the pipe at the crown and down the next leg, tied all the way, never across the way on the ground"
	if f.in.Spec.Site.Cords.Cover() {
		how = "along the ground: lay it there under a cover made for it, from foot to foot"
	}
	for _, c := range f.plan.Cords {
		if c.Over {
			f.say(finding.Note, "cord-crosses", "site.cords", "Cord %s from the %s outlet passes a way %s.", c.Name, c.Outlet, how)
		}
	}
	worst, line := "", 0
	for _, c := range f.chains {
		if len(c.Cords) > line {
			line, worst = len(c.Cords), c.Name
		}
	}
	if line > mostInLine {
		f.say(finding.Note, "cords-in-line", "site.outlets", "Run %s hangs behind %d cords in line. Keep every plug and three-way off the ground and dry, and mind that one pulled plug darkens all behind it; another outlet near it, or more sockets at its outlet, would shorten the line.", worst, line)
	}
	f.laneSays()
	f.mixedSays()
	f.backSays()
	f.crossingSays()
}

// laneSays tells of outlets in use that stand where people walk in or out.
func (f *feeding) laneSays() {
	for i, o := range f.in.Spec.Site.Outlets {
		used := slices.ContainsFunc(f.plan.Feeders, func(d Feeder) bool { return d.Outlet == o.Name })
		ahead, exit := f.site.standsInLane(o.At)
		where := "before the entrance"
		if exit {
			where = "beyond the exit"
		}
		if used && ahead > 0 {
			f.say(finding.LookAt, "outlet-in-lane", fmt.Sprintf("site.outlets[%d]", i), "Outlet %s stands %s %s, where people walk: they step over its cords, or the ribbon along them leads people round. Better use another outlet.", o.Name, f.in.Spec.Units.Room(ahead), where)
		}
	}
}

// mixedSays tells of runs that join unlike strings.
func (f *feeding) mixedSays() {
	var mixed []int
	var kinds []string
	for i, c := range f.chains {
		unlike := func(t seat) bool { return f.site.at(t).Kind != c.Kind }
		if !slices.ContainsFunc(f.runs[i].seats, unlike) {
			continue
		}
		mixed = append(mixed, i)
		for _, t := range f.runs[i].seats {
			if kind := f.site.at(t).Kind; !slices.Contains(kinds, kind) {
				kinds = append(kinds, kind)
			}
		}
	}
	if mixed == nil {
		return
	}
	names := say.Ranges(mixed, func(i int) string { return f.chains[i].Name })
	all := say.Agree(len(kinds)-1, "both", "all")
	f.say(finding.Note, "mixed-run", "lights.strings", "%s %s %s %s end to end, within the lowest limits of %s labels. Read %s: if one allows its own kind only, feed them apart.",
		say.Agree(len(mixed), "Run", "Runs"), names, say.Agree(len(mixed), "joins", "join"), say.And(kinds), all, all)
}

// crossingSays tells what a cord over the way would save.
func (f *feeding) crossingSays() {
	if n := f.crossing(); n > 0 {
		f.say(finding.LookAt, "crossing-would-save", "site.cords.crossing", "No cord passes a way, so cords climb leg after leg. One that passes it, tied along an arch, would save %d cords and three-ways.", n)
		f.plan.Findings[len(f.plan.Findings)-1].Cure = []finding.Change{{Key: "site.cords.crossing", Value: spec.CrossOverhead.String()}}
	}
}

// backSays tells what a socket in the back of the plugs would save.
func (f *feeding) backSays() {
	if g := f.plan.Gain; g != nil {
		f.say(finding.Note, "back-socket-would-save", "lights.strings", "If the plugs of %s have a socket in their backs and the label allows it, %s fewer would do. Read the label, then write back socket: true.", strings.Join(g.Strings, " and "), say.Count(g.Pieces, "cord or three-way"))
	}
}
