package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// held is one figure of an arch that is measured, with how far it may be off.
type held struct {
	name, how  string
	want, give measure.Length
}

// held lists what is measured on an arch. The crown's limits are the plan's give or take; the width's come from the same causes.
func (r raising) held(k *arch.Kind) []held {
	n := k.Numbers[0]
	list := []held{
		{draw.FeetWord, fmt.Sprintf("L%d to R%d, mid pipe", n, n), r.u.Taped(k.Span), practice.FootGive(r.u)},
		{draw.HeightWord, crownFrom(k) + " to mid crown", r.u.Taped(k.Crown), k.GiveOrTake(r.u)},
	}
	if m, ok := k.Moves(); ok && k.ShoulderWidth > 0 {
		list = append(list, held{draw.WidthWord, fmt.Sprintf("inside, %s up", r.u.Inches(k.ShoulderHeight)), r.u.Taped(k.ShoulderWidth), arch.Printed(m.Give.Shoulder, r.u)})
	}
	return list
}

// crownFrom is what heights are measured from: the ground at stakes; on bases the pipe's ends, which stand on sockets.
func crownFrom(k *arch.Kind) string {
	if k.Spec.Foot != nil {
		return "line between pipe ends"
	}
	return "line between feet"
}

// holding gathers the rows of a table of holds with the facts that they tell.
type holding struct {
	u     measure.System
	rows  []place.Row
	facts []block.Fact
}

// add adds a row: what is measured, what is wanted within how much, and how the fact is called.
func (h *holding) add(what, fact, want, within string) {
	h.rows = append(h.rows, place.Row{Cells: []string{what, want, within}})
	if fact != "" {
		h.facts = append(h.facts, block.Fact{What: fact, Value: want}, block.Fact{What: fact + ", within", Value: within})
	}
}

// shape adds what is measured on the first arch of a shape: the others come out the same within what is held, save feet that are named. how says how it is measured.
func (h *holding) shape(r raising, s crew.Shape, how bool) {
	for _, f := range r.held(s[0].Kind) {
		name := f.name
		if how || f.name == draw.WidthWord && s[0].Kind.ShoulderHeight != r.stand[0].Kind.ShoulderHeight {
			name += ": " + f.how
		}
		h.add(name, f.name+", "+say.Numbered("arch", s[0].Numbers), h.u.Inches(f.want), h.u.Inches(f.give))
		if f.name != draw.FeetWord {
			continue
		}
		for _, other := range feetApart(s, h.u) {
			who := say.Numbered("arch", other.Numbers())
			h.add("Feet of "+who, "Feet, "+who, h.u.Inches(h.u.Taped(other[0].Span)), h.u.Inches(f.give))
		}
	}
}

// feetApart gathers the arches of a shape whose feet are farther apart or nearer than those of its first by more than half of what is held: else feet that stand as
// driven might be taken for wrong.
func feetApart(s crew.Shape, u measure.System) (list []crew.Shape) {
	near := func(a, b arch.Arch) bool {
		return math.Abs(float64(u.Taped(a.Span)-u.Taped(b.Span))) <= float64(practice.FootGive(u))/2
	}
	for _, a := range s {
		i := slices.IndexFunc(list, func(o crew.Shape) bool { return near(a, o[0]) })
		switch {
		case near(a, s[0]):
		case i < 0:
			list = append(list, crew.Shape{a})
		default:
			list[i] = append(list[i], a)
		}
	}
	return list
}

// holdTable is what is measured, with room for what is found: the first arch, the first bay, and when all arches stand the caps and the way through.
func (r raising) holdTable() block.Block {
	first := r.shapes[0]
	h := holding{u: r.u, rows: []place.Row{{Heading: fmt.Sprintf("%d: ", r.step[crew.MeasureArch]) + measuredFor(first)}}}
	h.shape(r, first, true)
	own := len(h.rows)
	list := r.readings()
	for _, f := range list[:readingsHeld(list)] {
		what := fmt.Sprintf("%d: crown %d to %d", r.step[crew.RaiseRest], f.from, f.to) + r.along()
		if f.bay {
			what = fmt.Sprintf("%d: crown 1 to 2, same pipe side", r.step[crew.MeasureBay])
		}
		h.add(what, fmt.Sprintf("along the crowns, %d to %d", f.from, f.to), r.u.Ground(f.length), r.u.Inches(f.limit))
	}
	if t, ok := r.tasks.first(crew.SightAlong, 0); ok {
		h.add(fmt.Sprintf("%d: caps in bucket", r.step[crew.SightAlong]), "", fmt.Sprint(figureOf(t, crew.CapsBack).Count), "")
	}
	if t, ok := r.tasks.first(crew.TryOpening, 0); ok {
		h.add(fmt.Sprintf("%d: opening sticks pass", r.step[crew.TryOpening]), "", "both", "")
		h.facts = append(h.facts, block.Fact{What: "opening, height", Value: r.u.Ground(figureOf(t, crew.OpeningHigh).Length)}, block.Fact{What: "opening, width", Value: r.u.Ground(figureOf(t, crew.OpeningWide).Length)})
	}
	if len(h.rows) > own {
		h.rows[own].Total = true // a rule: they are of no one arch
	}
	return h.table([]place.Column{{Head: "Step: measure"}, {Head: "Wanted", Lettering: paper.Cell, Align: paper.AtRight, Width: 40}, {Head: "Within", Lettering: paper.CellSmall, Width: 24}, {Head: "Found", Width: 34}})
}

// holdTableOf is what is measured on the first arch of another shape, beside its profile, and how wide that is: the first table says how.
func (r raising) holdTableOf(s crew.Shape) (table block.Block, wide paper.Length) {
	h := holding{u: r.u, rows: []place.Row{{Heading: measuredFor(s)}}}
	h.shape(r, s, false)
	columns := []place.Column{{Width: 19}, {Head: "Wanted", Lettering: paper.CellSmall.Sized(13), Align: paper.AtRight, Width: 28}, {Head: "Within", Lettering: paper.CellSmall, Width: measure.By[paper.Length](r.u, 24, 20)}, {Head: "Found", Width: 18}}
	for _, c := range columns {
		wide += c.Width
	}
	return h.table(columns), wide
}

func (h *holding) table(columns []place.Column) block.Block {
	return block.Block{Name: "hold table", Gap: 2, Body: block.Table{Table: place.Table{RowMin: 8.2, Columns: columns}, Rows: h.rows}, Facts: h.facts}
}

// measuredFor says which arch is measured, and for which others it stands.
func measuredFor(s crew.Shape) string {
	n := s.Numbers()
	text := fmt.Sprintf("arch %d", n[0])
	if len(n) > 1 {
		text += "; others by eye"
	}
	return text
}

// signatures are the blanks under the table, one for each time that nobody goes on before it is signed.
func (r raising) signatures() block.Block {
	var blanks block.Blanks
	for _, a := range []crew.Action{crew.MeasureArch, crew.MeasureBay, crew.SightAlong, crew.TryOpening} {
		if n := r.step[a]; n > 0 {
			blanks = append(blanks, block.Blank{Word: fmt.Sprint(n)})
		}
	}
	blanks[0].Word = "Signed: step " + blanks[0].Word
	return block.Block{Name: "signed", Gap: 1, Body: blanks}
}

// reading is a distance along the ridge from one crown to another that is taken while the row grows.
type reading struct {
	from, to      int
	length, limit measure.Length
	bay           bool // it is one bay's, which others are cut by
}

// readings are bay 1, then every third bay and the last, from crown 1; what the tape does not reach from there is read from the last crown that it reached, and arches that a further crew begins
// at stand by their own stakes: from there it is read anew.
func (r raising) readings() (list []reading) {
	tape, fresh := r.tape(), r.Plan.Crew.Schedule.BegunApart()
	zero, last := r.stand[0].Number, r.stand[0].Number
	for _, f := range append(r.tasks.wanted(crew.BayLength), r.tasks.wanted(crew.RunLength)...) {
		to := slices.Concat(f.Arches, f.Bays)[0]
		if f.What == crew.BayLength {
			to++
		}
		for _, n := range fresh {
			if n > zero && n <= to {
				zero, last = n, n
			}
		}
		if zero == to {
			continue
		}
		if r.Plan.Crew.Crowns.Apart(zero, to) > tape {
			zero = last
		}
		list, last = append(list, reading{zero, to, r.Plan.Crew.Crowns.Apart(zero, to), f.Limit, f.What == crew.BayLength}), to
	}
	return list
}

// tape is how long the tape is that the raising crew brings.
func (r raising) tape() (long measure.Length) {
	for _, n := range r.Plan.Crew.Kit(crew.Raising) {
		if n.Thing == crew.LongTape {
			long = n.Length
		}
	}
	return long
}

// zeros says from which crown it is read how far. What a crown was off that is read on from is counted in, as one long tape would: the limit is of two readings and a joint, and readings err either way.
func zeros(list []reading) string {
	var from, carried []string
	for i, f := range list {
		if i > 0 && list[i-1].from != f.from && list[i-1].to == f.from {
			carried = append(carried, fmt.Sprint(f.from))
		}
		if i == len(list)-1 || list[i+1].from != f.from {
			from = append(from, fmt.Sprintf("%d–%d", f.from, f.to))
		}
	}
	if len(from) == 1 {
		return fmt.Sprintf("from crown %d", list[0].from)
	}
	words := "crowns " + strings.Join(from, ", ")
	if carried != nil {
		words += fmt.Sprintf(" (%s’s error added)", say.And(carried))
	}
	return words
}

// along says how a tape lies from crown to crown, where a straight one reads less.
func (r raising) along() string {
	if r.Plan.Ground.Straight {
		return ""
	}
	return ", along the ridge"
}

// readingsHeld is how many of the running distances stand in the table of holds: all of a few, else the first bay alone.
func readingsHeld(list []reading) int {
	const few = 4
	if len(list) <= few {
		return len(list)
	}
	return 1
}

// crowns is the table of the running distances that are not in the table of holds, with room for what is found.
func (r raising) crowns() []block.Block {
	list := r.readings()
	if list = list[readingsHeld(list):]; len(list) == 0 {
		return nil
	}
	var cells [][]string
	var facts []block.Fact
	for _, f := range list {
		cells = append(cells, []string{fmt.Sprint(f.to), r.u.Ground(f.length), ""})
		facts = append(facts, block.Fact{What: fmt.Sprintf("along the crowns, %d to %d", f.from, f.to), Value: r.u.Ground(f.length)})
	}
	tape := place.Column{Head: "Tape", Lettering: paper.CellSmall, Align: paper.AtRight, Width: measure.By[paper.Length](r.u, 18, 24)}
	to, found := place.Column{Head: "To", Lettering: paper.Strong, Width: 9 - cellMargins}, paper.Length(16) // at least, to write in
	for _, c := range cells {
		to.Width, tape.Width = max(to.Width, to.Lettering.Width(c[0])), max(tape.Width, tape.Lettering.Width(c[1]))
	}
	to.Width, tape.Width = to.Width+cellMargins, tape.Width+cellMargins
	body := abreast(r.room.W, []place.Column{to, tape, {Head: "Found"}}, cells, int(r.room.W/(to.Width+tape.Width+found)))
	return []block.Block{
		{Name: "along the crowns", Gap: 2, Keep: true, Body: block.Words{Lettering: paper.Strong, Text: fmt.Sprintf("%d: %s%s, within %s", r.step[crew.RaiseRest], zeros(list), r.along(), r.u.Inches(list[0].limit))}},
		{Name: "along the crowns", Gap: 0.6, Body: body, Facts: facts},
	}
}

// abreast sets a long table of few columns as several beside each other, each read to its foot.
// The last column takes what the others leave of its share of the width.
func abreast(width paper.Length, columns []place.Column, cells [][]string, most int) block.Table {
	across := min(most, len(cells))
	high := (len(cells) + across - 1) / across
	across = (len(cells) + high - 1) / high // none stays empty
	last := &columns[len(columns)-1]
	last.Width = width / paper.Length(across)
	for _, c := range columns[:len(columns)-1] {
		last.Width -= c.Width
	}
	t := block.Table{Rows: make([]place.Row, high)}
	for range across {
		t.Columns = append(t.Columns, columns...)
	}
	for i, c := range cells {
		row := &t.Rows[i%len(t.Rows)]
		row.Cells = append(row.Cells, c...)
	}
	for i := range t.Rows { // nothing to write there
		for len(t.Rows[i].Cells) < len(t.Columns) {
			t.Rows[i].Cells = append(t.Rows[i].Cells, " ")
		}
	}
	return t
}
