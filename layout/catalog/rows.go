package catalog

import (
	"fmt"
	"strings"

	"hoopwright/layout/measure"
)

// Row is one row of the catalog in words.
type Row struct {
	Kind        string // pipe, bar, cord or string
	Name        string // as the spec writes it
	Description string
	Source      string
}

// Rows returns the whole catalog in words, with its figures in the system's units.
func Rows(s measure.System) []Row {
	var rows []Row
	for _, p := range Pipes() {
		rows = append(rows, Row{"pipe", p.Name, p.describe(s), p.Source})
	}
	for _, b := range Bars() {
		rows = append(rows, Row{"bar", b.Name, b.describe(s), b.Source})
	}
	for _, c := range Cords() {
		rows = append(rows, Row{"cord", c.Name, c.describe(), c.Source})
	}
	for _, t := range Strings() {
		rows = append(rows, Row{"string", t.Name, t.describe(s), t.Source})
	}
	return rows
}

func (p Pipe) describe(s measure.System) string {
	return fmt.Sprintf("%s across, least wall %s, %s, modulus %s; tee take-off %s, socket %s deep",
		s.Size(p.OD), s.Size(p.Wall), s.LineMass(p.Mass), s.Pressure(p.Modulus), s.Size(p.TakeOff), s.Size(p.Socket))
}

func (b Bar) describe(s measure.System) string {
	text := fmt.Sprintf("%s across, %s over the ribs, %s, yield %s", s.Size(b.Diameter), s.Size(b.OverRibs), s.LineMass(b.Mass), s.Pressure(b.Yield))
	if b.Number > 0 {
		text += fmt.Sprintf("; also no. %d", b.Number)
	}
	return text
}

// describe keeps each cord's lengths in the units it is sold by.
func (c Cord) describe() string {
	unit, name := measure.Foot, "ft"
	if c.Volts > 200 {
		unit, name = measure.Metre, "m"
	}
	list := make([]string, len(c.Lengths))
	for i, l := range c.Lengths {
		list[i] = fmt.Sprintf("%.0f", float64(l/unit))
	}
	text := fmt.Sprintf("%s, %s at most", measure.Volts(c.Volts), measure.Amps(c.Amps))
	if c.Long > 0 {
		text += fmt.Sprintf(" (%s over %.0f %s)", measure.Amps(c.LongAmps), float64(c.Long/unit), name)
	}
	return fmt.Sprintf("%s, %.4g ohm/km; %s %s", text, c.Ohms, strings.Join(list, ", "), name)
}

func (t String) describe(s measure.System) string {
	text := fmt.Sprintf("%s, %d lamps, %s plug to socket, %s at %s", t.Colour, t.Bulbs, s.Tape(t.Length), measure.Watts(t.Watts), measure.Volts(t.Volts))
	if t.Drop > 0 {
		text += ", hangs " + s.Inches(t.Drop)
	}
	if t.MostChain > 0 {
		text += fmt.Sprintf(", at most %d end to end", t.MostChain)
	}
	if t.Supply != nil {
		text += fmt.Sprintf(", supply %s", measure.Watts(t.Supply.Watts))
	}
	return text
}
