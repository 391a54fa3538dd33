package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// plainly is an action's words where no figure is in them.
func plainly(s string) func(taskWords, crew.Task) string {
	return func(taskWords, crew.Task) string { return s }
}

// ofArches is an action's words with the arches it concerns in place of the verb %s.
func ofArches(format string) func(taskWords, crew.Task) string {
	return func(_ taskWords, t crew.Task) string { return fmt.Sprintf(format, say.Numbered("arch", t.Of.Arches)) }
}

// doing finds how an action is said; nil where nobody has words for it.
func doing(a crew.Action) func(taskWords, crew.Task) string {
	for _, table := range []map[crew.Action]func(taskWords, crew.Task) string{doingGround, doingArches, doingLights} {
		if words := table[a]; words != nil {
			return words
		}
	}
	return nil
}

// doingGround says what is done while marking and driving.
var doingGround = map[crew.Action]func(taskWords, crew.Task) string{
	crew.FindMarks:        taskWords.findMarks,
	crew.ChooseFirst:      plainly("Stand at the entrance and look in: L is left. Paint L1 where the organiser wants it."),
	crew.ChooseEnd:        taskWords.chooseEnd,
	crew.FindByTapes:      taskWords.findByTapes,
	crew.SetEnd:           taskWords.setEnd,
	crew.PaintRow:         taskWords.paintRow,
	crew.MakeGauge:        taskWords.makeGauge,
	crew.SquareFirst:      taskWords.squareFirst,
	crew.SquareByTriangle: taskWords.triangle,
	crew.PaintByGauge:     taskWords.paintByGauge,
	crew.SetWidths:        taskWords.setWidths,
	crew.PaintByBays:      plainly("Go on bay by bay. Paint the next L where tapes from the last L and R meet. Paint its R with the gauge stick and the tape from the last R."),
	crew.PaintChords:      plainly("Pull the line on through the last two L dots. Paint the next L off it, then its R with the gauge stick and a tape from the L before."),
	crew.PaintGuys:        taskWords.paintGuys,
	crew.CheckDots:        plainly("Measure every check while the dots are paint. Write the worst."),
	crew.ChooseMarks:      plainly("Choose two marks, better three, that stand next year: a wall's corner, a lamp post. Write each with its tapes to the four corner dots."),
	crew.MarkPrivate:      taskWords.markPrivate,
	crew.FlagDots:         plainly("Set a small wire flag a hand's width beside each dot, toward the walk. Write its name on it."),
	crew.CallLocator:      taskWords.callLocator,
	crew.ReadTicket:       plainly("Walk round with the ticket. Look at every painted or flagged buried line."),
	crew.LookUp:           taskWords.lookUp,
	crew.CheckAgain:       plainly("Measure widths and long diagonals again. Lost dots are found by their tapes."),
	crew.TapeDepths:       plainly("Wrap tape round every stake at its depth, measured from its point."),
	crew.PullTest:         taskWords.pullTest,
	crew.DriveStakes:      taskWords.drive,
	crew.MeasureWidths:    plainly("Lay the gauge stick across each arch at the ground, stake middle to stake middle. Write the worst."),
}

func (w taskWords) findMarks(crew.Task) string {
	var names []string
	for _, m := range w.plan.Ground.Marks {
		names = append(names, w.mark(m.Name))
	}
	return "Stand at the entrance and look in: L is left, R is right. Find the marks: " + say.And(names) + ". Hold tapes level and tight, from the middle of the mark. Read out, hear it back, paint, write the name."
}

func (w taskWords) chooseEnd(t crew.Task) string {
	d := t.Of.Dots[0]
	return fmt.Sprintf("Paint %s %s from %s, where the organiser wants it.", w.spot(d.Spot), w.tape(d.A), w.spot(d.From))
}

// findByTapes gives the tapes where they are few; else they stand in the table.
func (w taskWords) findByTapes(t crew.Task) string {
	const most = 2
	if len(t.Of.Dots) > most {
		s := "Go down the table, pair by pair. Paint each L where its two tapes meet, and a cross for each R."
		if len(t.Want) > 0 {
			return s
		}
		return s + w.sides(t.Of.Dots)
	}
	var parts []string
	for _, d := range t.Of.Dots {
		what := "Paint " + w.spot(d.Spot)
		if d.Spot.Kind == ground.AtFound {
			what = "Paint a cross for " + w.plan.Ground.Stakes[d.Spot.Index].String()
		}
		parts = append(parts, fmt.Sprintf("%s where %s from %s meets %s from %s.", what, w.tape(d.A), w.spot(d.From), w.tape(d.B), w.spot(d.To)))
	}
	if len(t.Want) > 0 { // the third tape tells
		return strings.Join(parts, " ")
	}
	return strings.Join(parts, " ") + w.sides(t.Of.Dots)
}

// sides says which crossing is meant, where all dots lie on one side of the line between their marks.
func (w taskWords) sides(dots []ground.Dot) string {
	for _, d := range dots {
		if d.Side != dots[0].Side || d.From != dots[0].From || d.To != dots[0].To {
			return " Two tapes meet twice: take the crossing that the picture shows."
		}
	}
	return fmt.Sprintf(" They meet twice: take the crossing on your %s as you look from %s to %s.", dots[0].Side, w.spot(dots[0].From), w.spot(dots[0].To))
}

func (w taskWords) setEnd(t crew.Task) string {
	var parts []string
	for _, d := range t.Of.Dots {
		parts = append(parts, fmt.Sprintf("Paint %s under it, %s from %s.", w.spot(d.Spot), w.tape(measure.Length(max(d.A, -d.A))), w.spot(d.Zero)))
	}
	d := t.Of.Dots[0]
	return fmt.Sprintf("Pull a line from %s to %s, a brick on each end. ", w.spot(d.From), w.spot(d.To)) + strings.Join(parts, " ")
}

func (w taskWords) paintRow(t crew.Task) string {
	d := t.Of.Dots[0]
	s := ""
	if len(w.plan.Ground.Ties) == 0 { // else it lies there since the row's end was set
		s = fmt.Sprintf("Pull a line from %s to %s, a brick on each end. ", w.spot(d.From), w.spot(d.To))
	}
	s += fmt.Sprintf("Lay a tape along the line, its zero at %s, and do not move it. Paint %s off it; never measure from dot to dot.", w.spot(d.Zero), w.dotNames(t.Of.Dots))
	for _, d := range t.Of.Dots {
		if w.units.Taped(d.B) != 0 {
			return s + " “Out” is away from the walk, “in” toward it, square to the line."
		}
	}
	return s
}

func (w taskWords) makeGauge(t crew.Task) string {
	if len(t.Want) > 1 {
		return fmt.Sprintf("Mark a lath at each of the %d widths: they are the gauge sticks. Write their arches on them.", len(t.Want))
	}
	return "Mark a lath at the width of the arches: it is the gauge stick."
}

func (w taskWords) squareFirst(t crew.Task) string {
	d := t.Of.Dots[0]
	return fmt.Sprintf("Paint %s where the gauge stick from %s meets the tape from %s at %s.", w.spot(d.Spot), w.spot(d.From), w.spot(d.To), w.tape(d.B))
}

func (w taskWords) triangle(t crew.Task) string {
	ahead, aside, r1 := t.Of.Dots[0], t.Of.Dots[1], t.Of.Dots[2]
	return fmt.Sprintf("Square at %s: paint a cross under the line %s ahead. Paint a cross where %s from %s meets %s from the first cross. %s lies on the line to it, a gauge stick from %s.",
		w.spot(ahead.From), w.tape(ahead.A), w.tape(aside.A), w.spot(aside.From), w.tape(aside.B), w.spot(r1.Spot), w.spot(r1.From))
}

func (w taskWords) paintByGauge(t crew.Task) string {
	return fmt.Sprintf("Hook the tape on %s. Paint %s where the tape meets the gauge stick, laid from the L dot of its arch.", w.spot(t.Of.Dots[0].To), w.dotNames(t.Of.Dots))
}

func (w taskWords) setWidths(t crew.Task) string {
	return fmt.Sprintf("Lay the gauge stick from each L dot over the cross of its R. Paint %s at the stick's end.", w.dotNames(t.Of.Dots))
}

func (w taskWords) paintGuys(t crew.Task) string {
	names := w.dotNames(t.Of.Dots)
	switch d := t.Of.Dots[0]; {
	case d.How == ground.OnString:
		return fmt.Sprintf("Paint %s on the rows' lines. “Back” is measured from the zero the other way.", names)
	case d.From.Kind == ground.AtMark:
		return fmt.Sprintf("Paint %s where the two tapes of the table meet.", names)
	}
	return fmt.Sprintf("Paint %s where two tapes meet, from the L and the R stake of its arch.", names)
}

func (w taskWords) markPrivate(t crew.Task) string {
	l := w.plan.Spec.Site.Buried[t.Of.Buried[0]]
	who := "its owner"
	if l.MarkedBy != "" {
		who = l.MarkedBy
	}
	return fmt.Sprintf("Have the %s marked on the ground: %s. A locating service does not mark private lines.", l.Name, who)
}

func (w taskWords) callLocator(crew.Task) string {
	if crew.LikelyNEC(w.plan.Spec) {
		return "Call 811. Tell them of the white dots. Ask for the ground inside them."
	}
	return "Call the locating service. Tell them of the white dots. Ask for the ground inside them."
}

func (w taskWords) lookUp(t crew.Task) string {
	if len(t.Of.Overhead) == 0 {
		return "Look up along the whole walk before a stake or pipe is lifted."
	}
	var names []string
	for _, i := range t.Of.Overhead {
		names = append(names, w.plan.Spec.Site.Overhead[i].Name)
	}
	return "Look up, and point out to everyone: " + say.And(names) + "."
}

func (w taskWords) pullTest(t crew.Task) string {
	way := "away from the walk"
	var up measure.Length
	var force measure.Force
	for _, f := range t.Want {
		up, force = max(up, pick(f, crew.PullUp).Length), max(force, pick(f, crew.PullForce).Force)
	}
	return fmt.Sprintf("Drive %s alone. Hook the luggage scale %s up. Pull sideways, %s, to %s.", stakeNames(t.Of.Stakes), w.units.Inches(up), way, w.units.Force(force))
}

// pick returns the figure if it is of that kind, else none.
func pick(f crew.Figure, what crew.Wanted) crew.Figure {
	if f.What == what {
		return f
	}
	return crew.Figure{}
}

func (w taskWords) drive(t crew.Task) string {
	var rows [3][]ground.Stake
	for _, s := range t.Of.Stakes {
		k := int(s.Side)
		if s.Guy {
			k = 2
		}
		rows[k] = append(rows[k], s)
	}
	s := fmt.Sprintf("Drive %s, then %s", stakeNames(rows[spec.Left]), stakeNames(rows[spec.Right]))
	if len(rows[2]) > 0 {
		s += ", then " + stakeNames(rows[2])
	}
	return s + ", until the tape meets the ground. Cap each at once. Tie ribbons: one on L, two on R" + w.guyRibbons(len(rows[2])) + "."
}

func (w taskWords) guyRibbons(guys int) string {
	if guys == 0 {
		return ""
	}
	return ", three on G"
}

// grown says the least age.
func grown() string { return fmt.Sprintf("All %d or older.", practice.Least) }
