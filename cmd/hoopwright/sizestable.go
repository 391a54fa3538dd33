package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// column is one figure of the sizes: its head over two lines, its name in CSV, and how it stands under each; it is not in the one whose head is empty. Of an arch that is none only what is always known stands.
type column struct {
	head, unit, field string
	text, raw         func(r row) string
	always            bool
}

// word is a column of words, the same in both forms.
func word(head, unit, field string, of func(row) string) column {
	return column{head, unit, field, of, of, false}
}

// columns are the figures of a size, in their order.
func (c choice) columns() []column {
	u := c.spec.Units
	length := func(head, unit, field string, of func(row) measure.Length) column {
		return column{head, unit, field + measure.By(u, "_in", "_mm"), func(r row) string { return u.BareInches(of(r)) }, func(r row) string { return lengthCell(of(r), u) }, false}
	}
	is := func(head, unit, field string, of func(row) bool) column {
		return column{head, unit, field, func(r row) string { return map[bool]string{true: "yes", false: "no"}[of(r)] }, func(r row) string { return strconv.FormatBool(of(r)) }, false}
	}
	unit, force := u.Unit(), measure.By(u, measure.PoundForce, 1)
	span := length("span", "", "span", func(r row) measure.Length { return r.Span })
	span.always, span.text = len(c.heights) == 0, c.spanWords
	stands := word("stands", "", "stands", func(r row) string { return r.Standing.String() })
	stands.always = true
	buildable := is("", "", "buildable", row.Buildable)
	buildable.always = true
	list := []column{
		span,
		length("crown", unit, "crown", func(r row) measure.Length { return r.Crown }),
		length("clear", unit, "clear", func(r row) measure.Length { return r.Clear }),
		length("width at", u.BareInches(c.kind.HeadHeight)+" "+unit, "head_width", func(r row) measure.Length { return r.HeadWidth }),
		is("opening", "clears", "opening_clears", func(r row) bool { return r.Opens }),
		length("least", "radius "+unit, "bend_radius", func(r row) measure.Length { return r.BendRadius }),
		{"strain", "%", "strain_percent", func(r row) string { return decimals(r.Strain*100, 1) }, func(r row) string { return decimals(r.Strain*100, 3) }, false},
		word("bend", "", "bend", func(r row) string { return r.Bend.String() }),
		{"thrust", u.ForceUnit(), "thrust" + measure.By(u, "_lbf", "_n"), func(r row) string { return u.BareForce(r.Thrust) }, func(r row) string { return decimals(float64(r.Thrust/force), 2) }, false},
		{"bears", "times", "load_factor", func(r row) string { return bears(r.factor, r.way) }, func(r row) string { return decimals(r.factor, 2) }, false},
		word("", "", "load_factor_way", func(r row) string { return r.way }),
		stands,
		buildable,
		is("", "", "stake_bar_bends", func(r row) bool { return r.StakeBends }),
	}
	if len(c.heights) > 0 {
		return c.heightColumns(list)
	}
	for i, f := range c.kind.Footings {
		depth := length("stake in", f.Soil.Name+" "+unit, "stake_depth_"+f.Soil.Name, func(r row) measure.Length { return r.Footings[i].Depth })
		depth.text = func(r row) string {
			text := u.BareInches(measure.RoundUp(r.Footings[i].Depth, measure.By(u, measure.Inch, 10*measure.Millimetre)))
			if r.StakeBends {
				text += ", bar bends"
			}
			return text
		}
		list = append(list, depth)
	}
	return list
}

// heightColumns puts the height that is tried in front, and what was chosen for it behind.
func (c choice) heightColumns(list []column) []column {
	u := c.spec.Units
	list[1] = column{"crown", "", "crown" + measure.By(u, "_in", "_mm"), func(r row) string { return u.Tape(r.height) }, func(r row) string { return lengthCell(r.height, u) }, true}
	list[0], list[1] = list[1], list[0]
	gust := func(head, unit, field string, of func(row) measure.Speed) column {
		return column{head, unit, field + "_m_s", func(r row) string { return u.Speed(of(r)) }, func(r row) string { return decimals(float64(of(r)), 2) }, false}
	}
	if c.fixedSpan {
		list = append(list, word("legs", "", "legs", func(r row) string { return leg(u, r.kind.Left) + ", " + leg(u, r.kind.Right) }))
	}
	return append(list,
		word("stakes", "long, deep", "stakes", func(r row) string {
			s := r.plan.Spec.Arch.Stake
			return fmt.Sprintf("%s, %s, %s", s.Bar.Name, u.Inches(s.Length), u.Inches(s.Depth))
		}),
		word("held by", "", "held_by", heldBy),
		gust("nobody", "inside from", "inside", func(r row) measure.Speed { return r.plan.Weather.InsideGust().Called() }),
		gust("laid flat", "before", "flat", func(r row) measure.Speed { return r.plan.Weather.DownGust().Called() }))
}

func heldBy(r row) string {
	h := r.plan.Weather.Bracing
	var what []string
	if arches := h.Guys.Arches; len(arches) > 0 {
		what = append(what, say.Numbered("guyed arch", arches))
	}
	if bays := h.Braces.Bays; len(bays) > 0 {
		what = append(what, say.Numbered("braced bay", bays))
	}
	if len(what) == 0 {
		return "nothing"
	}
	return strings.Join(what, "; ")
}

// cells are what stands in a line of either form.
func (c choice) cells(r row, asCSV bool) (list []string) {
	for _, col := range c.columns() {
		text, empty := col.text, none
		if asCSV {
			text, empty = col.raw, ""
		}
		switch {
		case col.head == "" && !asCSV:
		case r.Standing == arch.NoArch && !col.always:
			list = append(list, empty)
		default:
			list = append(list, text(r))
		}
	}
	return list
}

// none stands in a table for what an arch that is none does not have.
const none = "–"

// table prints the sizes for reading, then what the words in it mean and what they come to.
func (c choice) table(w io.Writer) error {
	if c.shed != nil {
		if err := c.shed.table(w, c.spec.Units); err != nil {
			return err
		}
	}
	fmt.Fprintf(w, "%s\n\n", c.about())
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	line := func(cells []string) { fmt.Fprintln(t, strings.Join(cells, "\t")) }
	var heads, units []string
	for _, col := range c.columns() {
		if col.head != "" {
			heads, units = append(heads, col.head), append(units, col.unit)
		}
	}
	line(heads)
	line(units)
	for _, r := range c.rows {
		cells := c.cells(r, false)
		for cells[len(cells)-1] == none {
			cells = cells[:len(cells)-1]
		}
		line(cells)
	}
	if err := t.Flush(); err != nil {
		return err
	}
	_, err := fmt.Fprintf(w, "\n%s\n", strings.Join(c.notes(), "\n"))
	return err
}

// csv prints the sizes as RFC 4180 has it, with CRLF and a head of names that say their units. What an arch that is none does not have is empty.
func (c choice) csv(w io.Writer) error {
	var head, bought []string
	for _, col := range c.columns() {
		head = append(head, col.field)
	}
	if len(c.goods) > 0 {
		sticks, strings, money, priced := sums(c.goods)
		currency := c.spec.Currency
		if currency != "" {
			currency = "_" + currency
		}
		head = append(head, "sticks_to_buy", "strings_to_buy", "money"+currency)
		bought = []string{strconv.Itoa(sticks), strconv.Itoa(strings), ""}
		if priced {
			bought[2] = decimals(money, 2)
		}
	}
	t := csv.NewWriter(w)
	t.UseCRLF = true
	t.Write(head) // what goes wrong is told by Error
	for _, r := range c.rows {
		t.Write(append(c.cells(r, true), bought...))
	}
	t.Flush()
	return t.Error()
}

// lengthCell is a length in inches or millimetres as a plain number.
func lengthCell(l measure.Length, u measure.System) string {
	return measure.By(u, decimals(l.Inches(), 3), decimals(float64(l), 1))
}

func decimals(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }

// spanWords is a span, marked where it is the spec's own.
func (c choice) spanWords(r row) string {
	text := c.spec.Units.Tape(r.Span)
	if c.own && len(c.heights) == 0 && same(r.Span, c.kind.Span) {
		text += " *"
	}
	return text
}

func bears(factor float64, way string) string {
	if factor >= 20 {
		return "20 or more"
	}
	return fmt.Sprintf("%.1f %s", factor, way)
}

func (c choice) about() string {
	u, a, t := c.spec.Units, c.kind.Spec, c.spec.Tunnel
	legs := "One stick of " + leg(u, a.Left) + " bent over"
	switch {
	case c.fixedSpan:
		legs = "Arches " + u.Tape(c.spec.Arch.Span) + " wide, their legs solved"
	case !a.OneStick:
		legs = "Legs of " + leg(u, a.Left) + " and " + leg(u, a.Right)
	}
	text := legs + ", " + a.Pipe.Name + "."
	if len(c.heights) == 0 {
		text += fmt.Sprintf(" Stakes %s, %s showing, %s in the ground.", a.Stake.Bar.Name, u.Inches(a.Stake.Showing()), u.Inches(a.Stake.Depth))
	}
	arches := "One arch"
	if t.Arches > 1 {
		ridge := map[bool]string{true: "with a ridge", false: "without a ridge"}[c.spec.Ridge.Present]
		arches = fmt.Sprintf("%d arches %s apart %s", t.Arches, u.Tape(t.Spacing), ridge)
	}
	text += "\n" + arches
	switch {
	case len(c.heights) > 0 && c.spec.Chooses():
	case len(c.spec.Guys.Arches) == 0:
		text += ", no guys"
	default:
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

func leg(u measure.System, sticks []measure.Length) string {
	var parts []string
	for _, s := range sticks {
		parts = append(parts, u.Tape(s))
	}
	return strings.Join(parts, " + ")
}
