package packet

import (
	"fmt"

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
	u, n := r.spec.Units, k.Numbers[0]
	list := []held{
		{draw.FeetWord, fmt.Sprintf("L%d to R%d, mid pipe", n, n), u.Taped(k.Span), practice.FootGive(u)},
		{draw.HeightWord, "line between feet to mid pipe", u.Taped(k.Crown), k.GiveOrTake(u)},
	}
	if m, ok := k.Moves(); ok && k.ShoulderWidth > 0 {
		list = append(list, held{draw.WidthWord, fmt.Sprintf("inside, %s above ground", u.Inches(k.ShoulderHeight)), u.Taped(k.ShoulderWidth), arch.Printed(m.Give.Shoulder, u)})
	}
	return list
}

// holds are the rows of what is measured on the first arch of a group: the others come out the same within what is held.
func (r raising) holds(g archGroup) ([]place.Row, []block.Fact) {
	u := r.spec.Units
	rows := []place.Row{{Heading: r.heldOn(g.numbers())}}
	var facts []block.Fact
	for _, h := range r.held(g[0]) {
		value := u.Inches(h.want)
		rows = append(rows, place.Row{Cells: []string{h.name + ": " + h.how, value, u.Inches(h.give)}})
		who := h.name + ", " + say.Numbered("arch", g[0].Numbers)
		facts = append(facts, block.Fact{What: who, Value: value}, block.Fact{What: who + ", within", Value: u.Inches(h.give)})
	}
	return rows, facts
}

// holdTable is what is measured, with room for what is found: across a side, or beside a picture.
func holdTable(rows []place.Row, facts []block.Fact, beside bool) block.Block {
	columns := []place.Column{{Head: "Step: measure"}, {Head: "Wanted", Lettering: paper.Cell, Align: paper.AtRight, Width: 40}, {Head: "Within", Lettering: paper.CellSmall, Width: 24},
		{Head: "Found", Width: 34}}
	if beside {
		columns = []place.Column{{Head: "Measure"}, {Head: "Wanted", Lettering: paper.CellSmall.Sized(13), Align: paper.AtRight, Width: 29}, {Head: "Within", Lettering: paper.CellSmall, Width: 22}, {Head: "Found", Width: 17}}
	}
	return block.Block{Name: "hold table", Gap: 2, Body: block.Table{Table: place.Table{RowMin: 8.2, Columns: columns}, Rows: rows}, Facts: facts}
}

// held on the whole are the first bay, and when all arches stand the caps and the way through.
func (r raising) heldOnAll() (rows []place.Row, facts []block.Fact) {
	u := r.spec.Units
	list, step := r.readings(), r.stepNumbers()
	for i, g := range list[:r.readingsHeld()] {
		what, give, want := fmt.Sprintf("%d: crown 1 to %d", step[crew.RaiseRest], g.arch), practice.RunGive(u), u.Ground(g.want)
		if i == 0 {
			what, give = fmt.Sprintf("%d: crown 1 to 2, same pipe side", step[crew.MeasureBay]), practice.BayGive(u)
		}
		rows = append(rows, place.Row{Cells: []string{what, want, u.Inches(give)}})
		facts = append(facts, block.Fact{What: fmt.Sprintf("along the crowns, 1 to %d", g.arch), Value: want}, block.Fact{What: fmt.Sprintf("along the crowns, 1 to %d, within", g.arch), Value: u.Inches(give)})
	}
	if t, ok := r.task(crew.SightAlong, 0); ok {
		caps, _ := wantedOf(t, crew.CapsBack)
		rows = append(rows, place.Row{Cells: []string{fmt.Sprintf("%d: caps in bucket", step[crew.SightAlong]), fmt.Sprint(caps.Count), "all"}})
	}
	if t, ok := r.task(crew.TryOpening, 0); ok {
		high, _ := wantedOf(t, crew.OpeningHigh)
		wide, _ := wantedOf(t, crew.OpeningWide)
		facts = append(facts, block.Fact{What: "opening, height", Value: u.Ground(high.Length)}, block.Fact{What: "opening, width", Value: u.Ground(wide.Length)})
		rows = append(rows, place.Row{Cells: []string{fmt.Sprintf("%d: opening sticks pass", step[crew.TryOpening]), "both"}})
	}
	if len(rows) > 0 {
		rows[0].Total = true // a rule: they are of no one arch
	}
	return rows, facts
}

// heldOn says which arch is measured, and for which others it stands.
func (r raising) heldOn(numbers []int) string {
	text := fmt.Sprintf("Arch %d, held", numbers[0])
	if numbers[0] == r.stand[0].Number {
		text = fmt.Sprintf("%d: arch %d", r.stepNumbers()[crew.MeasureArch], numbers[0])
	}
	if others := numbers[1:]; len(others) > 0 {
		text += fmt.Sprintf("; %s if one differs", say.Numbers(others))
	}
	return text
}

// signatures are the blanks under the table, one for each time that nobody goes on before it is signed.
func (r raising) signatures() block.Block {
	var blanks block.Blanks
	step := r.stepNumbers()
	for _, a := range []crew.Action{crew.MeasureArch, crew.MeasureBay, crew.SightAlong, crew.TryOpening} {
		if n := step[a]; n > 0 {
			blanks = append(blanks, block.Blank{Word: fmt.Sprint(n)})
		}
	}
	blanks[0].Word = "Signed: step " + blanks[0].Word
	return block.Block{Name: "signed", Gap: 1, Body: blanks}
}

// reading is a running distance along the crowns.
type reading struct {
	arch int
	want measure.Length
}

// readings are the distances along the ridge from crown 1 that are taken while the row grows: bay 1, then every third bay and the last.
func (r raising) readings() []reading {
	var list []reading
	sum := measure.Length(0)
	for i, piece := range r.plan.Ridge {
		if piece.Bay != i+1 {
			break
		}
		sum += piece.Centres
		if n := piece.Bay + 1; i == 0 || (n-1)%practice.CheckEvery == 0 || i == len(r.plan.Ridge)-1 {
			list = append(list, reading{n, sum})
		}
	}
	return list
}

// readingsHeld is how many of the running distances stand in the table of holds: all of a few, else the first bay alone.
func (r raising) readingsHeld() int {
	const few = 4
	if n := len(r.readings()); n <= few {
		return n
	}
	return 1
}
