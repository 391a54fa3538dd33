package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// labels sets what the plan took each label to say, with blanks for what it does say.
func (f *flow) labels() {
	lights, cords := f.b.stringLabels(), f.b.cordLabels()
	if len(lights)+len(cords) == 0 {
		return
	}
	f.heading("Read the labels: the label wins", 45)
	f.text("Under each figure that the plan took write what the label says. Every string, supply and cord must be marked for outdoor use and carry a testing mark.", paper.Body)
	f.gap(1)
	number := func(head string, width paper.Length) place.Column {
		return place.Column{Head: head, Lettering: paper.CellSmall, Width: width}
	}
	f.table(place.Table{RowMin: labelRow, Columns: []place.Column{{Head: "Light string"}, number("Lit length", 29), number("Plug to socket", 29), number("Bulbs", 16),
		number("Volts", 19), number("Watts", 19), number("Most end to end", 24)}}, lights)
	f.gap(3)
	f.table(place.Table{RowMin: labelRow, Columns: []place.Column{{Head: "Cord"}, number("Carries", 54), number("Wires", 54)}}, cords)
}

// labelRow is the height of a row with room to write under its figures.
const labelRow paper.Length = 13.5

// stringLabels lists each kind of light string that hangs.
func (b *binder) stringLabels() []place.Row {
	var rows []place.Row
	var done []string
	for _, s := range b.plan.Strings {
		if slices.Contains(done, s.Kind) {
			continue
		}
		done = append(done, s.Kind)
		l := s.Label
		most := "as labelled"
		if l.MostChain > 0 {
			most = fmt.Sprint(l.MostChain)
		}
		row := place.Row{Cells: []string{s.Kind + "\nlabel:", b.spec.Units.Tape(l.Length - l.Lead - l.Tail), b.spec.Units.Tape(l.Length), fmt.Sprint(l.Bulbs),
			measure.Volts(l.Volts), measure.Watts(l.Watts), most}}
		if l.Supply != nil {
			row.Note = fmt.Sprintf("supply: %s, %s", measure.Watts(l.Supply.Watts), say.Count(l.Supply.Sockets, "socket"))
		}
		rows = append(rows, row)
	}
	return rows
}

// cordLabels lists each kind of cord with the amps that its lengths may carry.
func (b *binder) cordLabels() []place.Row {
	var rows []place.Row
	var done []string
	for _, c := range b.plan.Power.Lots {
		known, ok := catalog.FindCord(c.Name)
		if !ok || slices.Contains(done, c.Name) {
			continue
		}
		done = append(done, c.Name)
		rows = append(rows, place.Row{Cells: []string{strings.ReplaceAll(c.Name, "mm2", "mm²") + "\nlabel:", measure.Amps(known.AmpsAt(c.Length)) + " or more", "3, one of them earth"}})
	}
	return rows
}
