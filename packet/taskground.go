package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// The words of marking and driving. Figures that stand on the plan and in its tables are pointed to, never said again.

// doingGround says what is done while marking and driving.
var doingGround = map[crew.Action]func(taskWords, crew.Task) string{
	crew.FindMarks:        taskWords.findMarks,
	crew.ChooseFirst:      taskWords.chooseFirst,
	crew.ChooseEnd:        taskWords.chooseEnd,
	crew.FindByTapes:      taskWords.findByTapes,
	crew.SetEnd:           taskWords.setEnd,
	crew.PaintRow:         taskWords.paintRow,
	crew.MakeGauge:        taskWords.makeGauge,
	crew.SquareFirst:      taskWords.squareFirst,
	crew.SquareByTriangle: plainly("Square at L1, as drawn: a cross on the row, then one where two tapes meet. R1 lies on the line from L1 to that, at the gauge stick’s end."),
	crew.PaintByGauge:     taskWords.paintByGauge,
	crew.SetWidths:        plainly("Lay the gauge stick from each L dot over its ×. Paint R at the stick’s end."),
	crew.PaintByBays:      plainly("Go down the table, bay by bay. Paint each dot where its two tapes meet, ahead of the last pair."),
	crew.PaintChords:      plainly("Under the table’s headings: pull the line, lay a tape along it. Right or left is square off it. Paint each R where its two tapes meet."),
	crew.PaintGuys:        taskWords.paintGuys,
	crew.CheckDots:        plainly("Do the checks in their order and write the worst."),
	crew.ChooseMarks:      plainly("For next year choose two marks, better three, that stay: a wall’s corner, a lamp post. Write their tapes down."),
	crew.MarkPrivate:      taskWords.markPrivate,
	crew.FlagDots:         plainly("Set a flag a hand off each dot, toward the walk, its name on it."),
	crew.CallLocator:      taskWords.callLocator,
	crew.ReadTicket:       taskWords.readTicket,
	crew.LookUp:           taskWords.lookUp,
	crew.CheckAgain:       plainly("Measure widths and long diagonals again. A lost dot: find it by its tapes."),
	crew.TapeDepths:       taskWords.tapeDepths,
	crew.PullTest:         taskWords.pullTest,
	crew.DriveStakes:      taskWords.driveStakes,
	crew.SetBases:         taskWords.setBases,
	crew.MeasureWidths:    taskWords.measureWidths,
}

// stand is where one stands.
const stand = "Stand at the entrance and look in: L is left."

// tapeHeld says how a tape is held.
func (w taskWords) tapeHeld() string {
	held := " Hold tapes level and tight."
	if slices.ContainsFunc(w.plan.Ground.Findings, func(f finding.Finding) bool { return f.Code == "hold-tape-level" }) {
		held = " The ground slopes: hold tapes level all the same, and drop a weight on a string from the high end."
	}
	return held + " Read out, hear it back, paint, write the name."
}

// byRow reports whether dots are found along two straight rows.
func (w taskWords) byRow() bool { return w.plan.Ground.Straight && len(w.plan.Ground.Stations) > 1 }

func (w taskWords) findMarks(crew.Task) string {
	var names []string
	for i, m := range w.plan.Ground.Marks {
		if w.tapedFrom(ground.Spot{Kind: ground.AtMark, Index: i}) {
			names = append(names, w.mark(m.Name))
		}
	}
	return stand + " Find " + say.Agree(len(names), "mark ", "marks ") + say.And(names) + ": tapes start at the middle." + w.tapeHeld()
}

// tapedFrom reports whether any tape starts from a mark.
func (w taskWords) tapedFrom(mark ground.Spot) bool {
	return slices.ContainsFunc(w.plan.Ground.Marking(w.units), func(d ground.Dot) bool { return d.From == mark || d.How == ground.TwoTapes && d.To == mark }) ||
		slices.ContainsFunc(w.plan.Ground.Checks(w.units), func(c ground.Check) bool { return c.From == mark })
}

func (w taskWords) chooseFirst(t crew.Task) string {
	d := t.Of.Dots[0]
	if d.Spot.Kind == ground.AtFound {
		return fmt.Sprintf("Paint a cross (×) far ahead, where the organiser wants %s.", w.plan.Ground.Stakes[d.Spot.Index].String())
	}
	return stand + fmt.Sprintf(" Paint %s where the organiser wants it.", w.spot(d.Spot)) + w.tapeHeld()
}

func (w taskWords) chooseEnd(t crew.Task) string {
	d := t.Of.Dots[0]
	if w.plan.Ground.Stakes[d.Spot.Index].Side == spec.Right {
		return fmt.Sprintf("Paint %s the width from %s, square to the way in.", w.spot(d.Spot), w.spot(d.From))
	}
	return fmt.Sprintf("Paint %s at its distance from %s, where the organiser wants the row to end.", w.spot(d.Spot), w.spot(d.From))
}

func (w taskWords) findByTapes(t crew.Task) string {
	agree := w.sides(t.Of.Dots)
	if len(t.Want) > 0 {
		agree = " The tape in [ ] must agree."
	}
	if !w.byRow() {
		if len(t.Want) > 0 {
			agree = " The check tape must agree."
		}
		return "Go down the table. Paint each L where first and second tape meet; for each R a cross (×)." + agree
	}
	var words []string
	for _, d := range t.Of.Dots {
		word := w.spot(d.Spot)
		if d.Spot.Kind == ground.AtFound {
			word = "a cross (×) for " + w.plan.Ground.Stakes[d.Spot.Index].String()
		}
		words = append(words, word)
	}
	return "Paint " + say.And(words) + " where their two tapes meet." + agree
}

// sides says which of two crossings is meant, where no third tape tells.
func (w taskWords) sides(dots []ground.Dot) string {
	for _, d := range dots {
		if d.Side != dots[0].Side || d.From != dots[0].From || d.To != dots[0].To {
			return " Tapes meet twice: take the crossing of the plan."
		}
	}
	return fmt.Sprintf(" They meet twice: take the crossing on your %s, looking from %s to %s.", dots[0].Side, w.spot(dots[0].From), w.spot(dots[0].To))
}

func (w taskWords) setEnd(t crew.Task) string {
	d := t.Of.Dots[0]
	far, on := w.plan.Ground.Stakes[d.To.Index], ""
	for _, o := range t.Of.Dots {
		if stake := w.plan.Ground.Stakes[o.Spot.Index]; stake.Along > far.Along || stake.Along < w.plan.Ground.Stakes[d.From.Index].Along {
			on = " and on, dead straight"
		}
	}
	return fmt.Sprintf("Pull a line from %s to the ×%s, a brick on each end. Paint %s under it, by the table.", w.spot(d.From), on, w.names(t.Of.Dots))
}

func (w taskWords) paintRow(t crew.Task) string {
	var zeros []string
	for _, d := range t.Of.Dots {
		if z := w.spot(d.Zero); !slices.Contains(zeros, z) {
			zeros = append(zeros, z)
		}
	}
	return fmt.Sprintf("Lay a tape along it, zero at %s. Leave it. Paint %s, never from dot to dot.", say.And(zeros), w.names(t.Of.Dots))
}

func (w taskWords) makeGauge(t crew.Task) string {
	if len(t.Want) > 1 {
		return "Mark a lath at each width across, L to R: the gauge sticks. Write their arches on them."
	}
	return "Mark a lath at the width across, L to R: the gauge stick."
}

func (w taskWords) squareFirst(t crew.Task) string {
	d := t.Of.Dots[0]
	return fmt.Sprintf("Paint %s where the gauge stick from %s meets the tape from %s, the long diagonal.", w.spot(d.Spot), w.spot(d.From), w.spot(d.To))
}

func (w taskWords) paintByGauge(t crew.Task) string {
	var hooks []string
	for _, d := range t.Of.Dots {
		if h := w.spot(d.To); !slices.Contains(hooks, h) {
			hooks = append(hooks, h)
		}
	}
	return fmt.Sprintf("Hook the tape on %s. Paint %s where it meets the stick from each L.", say.And(hooks), w.names(t.Of.Dots))
}

func (w taskWords) paintGuys(t crew.Task) string {
	letters := say.And(heldBy(w.plan).pick("G", "peg"))
	text := "Paint the " + letters + " dots where their two tapes meet."
	if t.Of.Dots[0].How != ground.OnString {
		return text
	}
	text = "Carry both lines on for the " + letters + " dots."
	if slices.ContainsFunc(t.Of.Dots, func(d ground.Dot) bool { return w.units.Taped(d.B) != 0 }) {
		text += " Out: square to the line, away from the walk."
	}
	return text
}

// names lists dots by row: "L2 to L5", "R2 to R6".
func (w taskWords) names(dots []ground.Dot) string {
	var rows []string
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		var numbers []int
		for _, d := range dots {
			if stake := w.plan.Ground.Stakes[d.Spot.Index]; stake.Side == side && !stake.Guy && !slices.Contains(numbers, stake.Arch) {
				numbers = append(numbers, stake.Arch)
			}
		}
		slices.Sort(numbers)
		first := 0
		for i, n := range numbers {
			if i+1 < len(numbers) && numbers[i+1]-n < 3 { // what was painted before stands between
				continue
			}
			name := fmt.Sprint(side.Letter(), numbers[first])
			if i > first {
				name += fmt.Sprint(" to ", side.Letter(), n)
			}
			rows = append(rows, name)
			first = i + 1
		}
	}
	return say.And(rows)
}

// checksOff says what is done when a check of the dots is off.
func (w taskWords) checksOff(t crew.Task) string {
	text := "A check is off? Read both tapes again."
	for _, c := range t.IfOff {
		switch c.Do {
		case crew.MoveDotAcross:
			text += " Width: move the R dot across."
		case crew.SlideTheRow:
			text += fmt.Sprintf(" Long diagonals: slide the R row to the exit if R1–L%d is longer, else back, %s for each %s.", len(w.plan.Ground.Stations),
				w.units.Inches(w.units.Taped(c.Then)), measure.By(w.units, "inch", "10 mm"))
		}
	}
	return text + " Else find the dot again that both bad figures share."
}

func (w taskWords) callLocator(crew.Task) string {
	who := "the locating service"
	if crew.LikelyNEC(w.plan.Spec) {
		who = "811"
	}
	by := ""
	if d := w.plan.Spec.Dates.Build; !d.IsZero() {
		by = " by " + block.Figure(crew.CallBy(d).Format("Mon 2 Jan"))
	}
	return fmt.Sprintf("All right? Call %s%s: tell them of the white dots.", who, by) + " Wait until all have marked or answered."
}

func (w taskWords) markPrivate(t crew.Task) string {
	l := w.plan.Spec.Site.Buried[t.Of.Buried[0]]
	who := "its owner"
	if l.MarkedBy != "" {
		who = l.MarkedBy
	}
	return fmt.Sprintf("Have the %s marked by %s: the locating service does not.", l.Name, who)
}
