package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/layout/crew"
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
	crew.SquareByTriangle: plainly("Square at L1, as drawn: a cross on the row, then one toward R1 where two tapes meet. Paint R1 on the line from L1 to that, at the gauge stick’s mark."),
	crew.PaintByGauge:     taskWords.paintByGauge,
	crew.SetWidths:        plainly("Lay the gauge stick from each L dot over its ×. Paint R at the stick’s mark."),
	crew.PaintByBays:      plainly("Go down the table, bay by bay. Paint each dot where its two tapes meet, ahead of the last pair."),
	crew.PaintChords:      plainly("Under the table’s headings: pull the line, lay a tape along it. Right or left is square off it. Paint each R where its two tapes meet."),
	crew.PaintGuys:        taskWords.paintGuys,
	crew.CheckDots:        plainly("Check in the table’s order, write the worst."),
	crew.ChooseMarks:      plainly("For next year write down the tapes from three things that stay: a wall’s corner, a lamp post."),
	crew.AskOwner:         plainly("Ask the owner what lies buried: sprinklers, gas to a grill, a cable to a shed. Mark it."),
	crew.MarkPrivate:      taskWords.markPrivate,
	crew.FlagDots:         taskWords.flagDots,
	crew.CallLocator:      taskWords.callLocator,
	crew.ReadTicket:       taskWords.readTicket,
	crew.LookUp:           taskWords.lookUp,
	crew.CheckAgain: func(w taskWords, _ crew.Task) string {
		if len(w.plan.Ground.TapeLengths(w.units)) > 1 {
			return "Widths, each plan’s long diagonals again. Find a lost dot as before."
		}
		return fmt.Sprintf("Widths, L1 to R%d, R1 to L%[1]d again. Find a lost dot as before.", len(w.plan.Ground.Stations))
	},
	crew.TapeDepths:    taskWords.tapeDepths,
	crew.PullTest:      taskWords.pullTest,
	crew.DriveStakes:   taskWords.driveStakes,
	crew.SetBases:      taskWords.setBases,
	crew.MeasureWidths: taskWords.measureWidths,
	crew.WeighDown:     taskWords.weighDown,
}

// stand is where one stands.
const stand = "Look in from the entrance: L is left."

func (w taskWords) tapeHeld() string {
	held := " Tapes level and tight."
	if w.plan.Ground.Slopes() { // with one plumb bob: one tape at a time
		held = " The ground slopes: tapes level (steep: short lengths), plumb bob hung from the end held up. Two tapes: scratch both arcs."
	}
	return held + " Read out, hear back, paint white, name it."
}

// byRow reports whether dots are found along two straight rows.
func (w taskWords) byRow() bool { return w.plan.Ground.Straight && len(w.plan.Ground.Stations) > 1 }

func (w taskWords) findMarks(crew.Task) string {
	var names []string
	dots, checks := w.plan.Ground.Marking(w.units), w.plan.Ground.Checks(w.units)
	for i, m := range w.plan.Ground.Marks {
		mark := ground.Spot{Kind: ground.AtMark, Index: i}
		if slices.ContainsFunc(dots, func(d ground.Dot) bool { return d.From == mark || d.How == ground.TwoTapes && d.To == mark }) || slices.ContainsFunc(checks, func(c ground.Check) bool { return c.From == mark }) {
			names = append(names, w.mark(m.Name))
		}
	}
	return stand + " " + say.Agree(len(names), "Mark ", "Marks ") + say.And(names) + ": the organiser shows the tapes’ zero on each; pencil it." + w.tapeHeld()
}

func (w taskWords) chooseFirst(t crew.Task) string {
	d := t.Of.Dots[0]
	if d.Spot.Kind == ground.AtFound {
		return fmt.Sprintf("Paint a cross (×) far ahead, where the organiser shows %s.", w.plan.Ground.Stakes[d.Spot.Index].String())
	}
	return stand + fmt.Sprintf(" Paint %s where the organiser shows.", w.spot(d.Spot)) + w.tapeHeld()
}

func (w taskWords) chooseEnd(t crew.Task) string {
	d := t.Of.Dots[0]
	if w.plan.Ground.Stakes[d.Spot.Index].Side == spec.Right {
		return fmt.Sprintf("Paint %s the width from %s, square to the way in.", w.spot(d.Spot), w.spot(d.From))
	}
	return fmt.Sprintf("Paint %s at its distance from %s, the way the organiser shows.", w.spot(d.Spot), w.spot(d.From))
}

func (w taskWords) findByTapes(t crew.Task) string {
	agree := w.sides(t.Of.Dots)
	if len(t.Want) > 0 {
		agree = " Check: the tape in [\u00a0]."
	}
	if !w.byRow() {
		if len(t.Want) > 0 {
			agree = " Try the check tape."
		}
		return "Go down the table. Paint each L where first and second tape meet; for each R a cross (×), no tick yet." + agree
	}
	var words []string
	for _, d := range t.Of.Dots {
		word := w.spot(d.Spot)
		if d.Spot.Kind == ground.AtFound {
			word = "a cross (×) for " + w.plan.Ground.Stakes[d.Spot.Index].String()
		}
		words = append(words, word)
	}
	return "Paint " + say.And(words) + " where two tapes meet, as drawn." + agree
}

// sides says which of two crossings is meant, where no third tape tells.
func (w taskWords) sides(dots []ground.Dot) string {
	for _, d := range dots {
		if d.Side != dots[0].Side || d.From != dots[0].From || d.To != dots[0].To {
			return ""
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
	tape := "a tape"
	if w.plan.Ground.Slopes() {
		tape = "a level tape"
	}
	return fmt.Sprintf("Pull a line from %s to ×%s, bricks on the ends, %s along. Zero at %s: check ×, paint %s.", w.spot(d.From), on, tape, w.zeros(), w.names(t.Of.Dots))
}

// zeros are the dots that the tapes along the left row start from.
func (w taskWords) zeros() string {
	var zeros []string
	for _, d := range w.plan.Ground.Marking(w.units) {
		leg := d.Spot.Kind == ground.AtStake && w.plan.Ground.Stakes[d.Spot.Index].StakeID == ground.Leg(spec.Left, w.plan.Ground.Stakes[d.Spot.Index].Arch)
		if leg && d.How == ground.OnString && !slices.Contains(zeros, w.spot(d.Zero)) {
			zeros = append(zeros, w.spot(d.Zero))
		}
	}
	return say.And(zeros)
}

func (w taskWords) paintRow(t crew.Task) string {
	laid := "Leave line and tape. "
	end := slices.IndexFunc(w.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.SetEnd })
	switch {
	case end < 0:
		laid = fmt.Sprintf("Line and tape from %s to %s, zero at %s. ", w.spot(t.Of.Dots[0].From), w.spot(t.Of.Dots[len(t.Of.Dots)-1].To), w.zeros())
	case slices.ContainsFunc(w.plan.Crew.Tasks[end].Of.Dots, func(d ground.Dot) bool { return w.units.Taped(d.B) != 0 }):
		laid = "Line and tape now from row end to row end. "
	}
	how := ", never from dot to dot"
	if w.plan.Ground.Slopes() { // where it is steep a level tape goes on from where its bob points
		how = ""
	}
	return laid + fmt.Sprintf("Paint %s by the table%s.", w.names(t.Of.Dots), how)
}

func (w taskWords) makeGauge(t crew.Task) string {
	lath, width := "a lath", "the width L to R"
	if n := t.Uses[0].Count; n > 1 {
		lath = fmt.Sprintf("%d laths lapped a forearm, zip-tied", n)
	}
	if len(t.Want) > 1 {
		width = "each width with its arches"
	}
	return fmt.Sprintf("Gauge stick: %s, marked at %s.", lath, width)
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
	return fmt.Sprintf("Zero on %s. Paint %s where the table’s figure meets the stick from L.", say.And(hooks), w.names(t.Of.Dots))
}

func (w taskWords) paintGuys(t crew.Task) string {
	guys, pegs, back, past, off, where := false, false, "", "", "", "in the rows"
	end := w.plan.Ground.Stakes[2*len(w.plan.Ground.Stations)-2].Along
	for _, d := range t.Of.Dots {
		stake := w.plan.Ground.Stakes[d.Spot.Index]
		guys, pegs = guys || stake.Kind() == ground.OfGuy, pegs || stake.Kind() == ground.OfBrace
		if stake.Along < 0 || stake.Along > end {
			past = "Line and tape on past the ends: "
		}
		if stake.Along < 0 {
			back = ", back outside the entrance"
		}
		switch {
		case d.How != ground.OnString && stake.Kind() == ground.OfBrace:
			if where = "where their two tapes meet"; guys {
				where = "so too"
			}
		case d.How != ground.OnString || w.units.Taped(d.B) == 0:
		case stake.Kind() == ground.OfBrace:
			where = "by the table"
		default:
			off = " Outside the row: square out from the tape."
		}
	}
	var words []string
	switch {
	case guys && t.Of.Dots[0].How == ground.OnString:
		words = append(words, say.Capital(past+"paint the G dots by the table"+back+".")+off)
	case guys:
		words = append(words, "Paint the G dots where their two tapes meet.")
	}
	if pegs {
		words = append(words, "Paint P, the "+braceEnds(w.plan)+", "+where+".")
	}
	return strings.Join(words, " ")
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
	text := "A check is off? Read it again."
	for _, c := range t.IfOff {
		if c.Do == crew.MoveDotAcross {
			text += " Width: move R."
		}
		if c.Do == crew.SlideTheRow {
			text += fmt.Sprintf(" Long diagonals: slide the R row %s per %s they differ, to the exit if R1–L%d is longer, else back.",
				w.units.Inches(w.units.Taped(c.Then)), measure.By(w.units, "inch", "10 mm"), len(w.plan.Ground.Stations))
		}
	}
	return text + " Else find its dots again, first the one off in two checks."
}

func (w taskWords) callLocator(t crew.Task) string {
	who := "the locating service"
	if crew.LikelyNEC(w.plan.Spec) {
		who = "811"
	}
	by := fmt.Sprintf(", %d working days before you drive", t.Want[0].Count)
	if s := w.plan.Spec; !s.Dates.Build.IsZero() {
		by = " by " + block.Figure(crew.CallBy(s).Format("Mon\u00a02\u00a0Jan"))
	}
	text, site := fmt.Sprintf("Call %s%s: tell of all white dots.", who, by), w.plan.Spec.Site
	byOwner := func(l spec.Buried) bool { return l.MarkedBy == "" || l.MarkedBy == "owner" }
	if !site.NotKnown(spec.BuriedLines) && !slices.ContainsFunc(site.Buried, byOwner) { // else the owner is asked anyway
		text += " By then ask the owner to mark lines not on the ticket, outlets’ cables too."
	}
	return text
}

func (w taskWords) markPrivate(t crew.Task) string {
	l := w.plan.Spec.Site.Buried[t.Of.Buried[0]]
	if l.MarkedBy == "" || l.MarkedBy == "owner" {
		return fmt.Sprintf("By then call the owner of the %s to mark it, outlets’ cables too: ________________.", l.Name)
	}
	return fmt.Sprintf("By then call %s to mark the %s: ________________.", l.MarkedBy, l.Name)
}

// flagDots flags the dots before rain takes the paint: no wire goes where no stake may, before anyone has looked for that.
func (w taskWords) flagDots(crew.Task) string {
	at := "Lines marked: by each dot"
	for _, t := range w.plan.Crew.Tasks {
		if t.Action == crew.ReadTicket {
			at = "By each dot " + w.units.Inches(clearOf(t)) + " clear of marked lines"
		}
	}
	return at + " a named flag, a hand outside."
}
