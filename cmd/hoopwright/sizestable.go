package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// table prints the sizes for reading, then what the words in it mean and what they come to.
func (c choice) table(w io.Writer) error {
	u := c.spec.Units
	if c.made != nil {
		fmt.Fprintf(w, "%s\n\n", haveWords(c.have, c.made))
	}
	fmt.Fprintf(w, "%s\n\n", c.about())
	unit, force := u.Unit(), u.ForceUnit()
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	line := func(cells ...string) { fmt.Fprintln(t, strings.Join(cells, "\t")) }
	heads := []string{"span", "crown", "clear", "width at", "opening", "least", "strain", "bend", "thrust", "bears", "stands"}
	units := []string{"", unit, unit, u.BareInches(c.kind.HeadHeight) + " " + unit, "clears", "radius " + unit, "%", "", force, "times", ""}
	for _, f := range c.kind.Footings {
		heads, units = append(heads, "stake in"), append(units, f.Soil.Name+" "+unit)
	}
	line(heads...)
	line(units...)
	for _, s := range c.sizes {
		span := u.Tape(s.Span)
		if c.own && same(s.Span, c.kind.Span) {
			span += " *"
		}
		if s.Standing == arch.NoArch {
			line(span, "–", "–", "–", "–", "–", "–", "–", "–", "–", s.Standing.String())
			continue
		}
		factor, way := s.LoadFactor()
		cells := []string{span, u.BareInches(s.Crown), u.BareInches(s.Clear), u.BareInches(s.HeadWidth), yes(s.Opens), u.BareInches(s.BendRadius),
			decimals(s.Strain*100, 1), s.Bend.String(), u.BareForce(s.Thrust), bears(factor, way), s.Standing.String()}
		for _, f := range s.Footings {
			depth := u.BareInches(measure.RoundUp(f.Depth, depthStep(u)))
			if s.StakeBends {
				depth += ", bar bends"
			}
			cells = append(cells, depth)
		}
		line(cells...)
	}
	if err := t.Flush(); err != nil {
		return err
	}
	_, err := fmt.Fprintf(w, "\n%s\n", strings.Join(c.notes(), "\n"))
	return err
}

// depthStep is what a stake's depth is rounded up to.
func depthStep(u measure.System) measure.Length {
	return measure.By(u, measure.Inch, 10*measure.Millimetre)
}

func yes(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

// bears says a load factor and its way.
func bears(factor float64, way string) string {
	if factor >= 20 {
		return "20 or more"
	}
	return fmt.Sprintf("%.1f %s", factor, way)
}

// about says what the sizes are of.
func (c choice) about() string {
	u, a, t := c.spec.Units, c.kind.Spec, c.spec.Tunnel
	legs := "One stick of " + leg(u, a.Left) + " bent over"
	if !a.OneStick {
		legs = "Legs of " + leg(u, a.Left) + " and " + leg(u, a.Right)
	}
	text := fmt.Sprintf("%s, %s. Stakes %s, %s showing, %s in the ground.", legs, a.Pipe.Name, a.Stake.Bar.Name, u.Inches(a.Stake.Showing()), u.Inches(a.Stake.Depth))
	switch {
	case t.Arches == 1:
		text += "\nOne arch"
	case c.spec.Ridge.Present:
		text += fmt.Sprintf("\n%d arches %s apart with a ridge", t.Arches, u.Tape(t.Spacing))
	default:
		text += fmt.Sprintf("\n%d arches %s apart without a ridge", t.Arches, u.Tape(t.Spacing))
	}
	if len(c.spec.Guys.Arches) == 0 {
		text += ", no guys"
	} else {
		text += ", guyed"
	}
	var lights []string
	for _, w := range c.spec.Lights.Wraps {
		lights = append(lights, w.String.Name)
	}
	if len(lights) > 0 {
		text += "; wrapped with " + strings.Join(lights, ", ")
	}
	return text + fmt.Sprintf(". Opening %s by %s.", u.Inches(t.OpeningWidth), u.Inches(t.OpeningHeight))
}

// leg names the sticks of a leg.
func leg(u measure.System, sticks []measure.Length) string {
	var parts []string
	for _, s := range sticks {
		parts = append(parts, u.Tape(s))
	}
	return strings.Join(parts, " + ")
}

// notes explains the words that stand in the table and says what to choose from.
func (c choice) notes() []string {
	var bends [arch.TooTight + 1]bool
	var stands [arch.NoArch + 1]bool
	pulls, barBends := false, false
	for _, s := range c.sizes {
		stands[s.Standing] = true
		if s.Standing != arch.NoArch {
			bends[s.Bend] = true
			pulls = pulls || s.Pulls
			barBends = barBends || s.StakeBends
		}
	}
	list := []string{c.verdict()}
	add := func(is bool, text string) {
		if is {
			list = append(list, text)
		}
	}
	add(c.own, "*: the span of the spec.")
	add(true, "bears: how many times its own weight and lights it bears at season's end before it falls, and which way. Still air; wind and ice come on top.")
	add(bends[arch.TooTight], "too tight: the bend asks more than the pipe's strength, by its short-term stiffness. Wider span, longer sticks or thinner pipe.")
	add(bends[arch.Tight], "tight: 80 % or more of the pipe's strength. Warm the pipe, never bend it in frost.")
	add(stands[arch.NeedsGuys], "needs guys: less than twofold along the tunnel; ridge pieces do not help, guys at the end arches do.")
	add(stands[arch.Sways], "sways: less than twofold sideways, which guys do not mend. Thicker pipe, shorter sticks or lighter lights.")
	add(stands[arch.Falls], "falls: it does not bear its own weight and lights at season's end, guyed or not. Thicker pipe or shorter sticks.")
	add(stands[arch.NoArch], "no arch: these sticks make none over that span.")
	add(pulls, "thrust below 0: the feet pull toward each other, and a dry crown joint is pulled apart; pin or glue it.")
	add(barBends, "bar bends: the foot bends the stake for good in still air. Thicker bar, or a span where the legs stand plumb.")
	add(true, "stake: least depth that holds still air, by an estimate; pull on one before trusting any.")
	if len(c.goods) > 0 {
		list = append(list, "")
		for _, g := range c.goods {
			list = append(list, g.words(c.spec.Currency))
		}
		if _, _, money, priced := sums(c.goods); money > 0 {
			text := fmt.Sprintf("in all %.2f %s", money, c.spec.Currency)
			if !priced {
				text += ", what has no price not counted"
			}
			list = append(list, text)
		}
	}
	return list
}

// verdict says which of the spans can be built, and which of them leave the opening clear.
func (c choice) verdict() string {
	built := c.runs(arch.Size.Buildable)
	clear := c.runs(func(s arch.Size) bool { return s.Buildable() && s.Opens })
	switch {
	case built == "":
		return "None of these spans can be built."
	case clear == "":
		return "Can be built: " + built + ". None of them leaves the opening clear."
	}
	return "Can be built: " + built + ". With the opening clear: " + clear + "."
}

// runs names the spans that are so, neighbours as ranges.
func (c choice) runs(is func(arch.Size) bool) string {
	var parts []string
	for i := 0; i < len(c.sizes); i++ {
		from := i
		for i < len(c.sizes) && is(c.sizes[i]) {
			i++
		}
		if from == i {
			continue
		}
		text := c.spec.Units.Tape(c.sizes[from].Span)
		if i-from > 1 {
			text += " to " + c.spec.Units.Tape(c.sizes[i-1].Span)
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}
