package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// The words of marking and driving. Figures that stand in front, on the plan and in its tables, are pointed to, never said again.

// doing says a task; empty for one that is told with another.
func (s *stakeLeaf) doing(t crew.Task) string {
	say := map[crew.Action]func(crew.Task) string{
		crew.FindMarks: s.findMarks, crew.ChooseFirst: s.chooseFirst, crew.ChooseEnd: s.chooseEnd, crew.FindByTapes: s.findByTapes, crew.SetEnd: s.setEnd,
		crew.PaintRow: s.paintRow, crew.MakeGauge: s.makeGauge, crew.SquareFirst: s.squareFirst, crew.PaintByGauge: s.paintByGauge, crew.PaintGuys: s.paintGuys,
		crew.CallLocator: s.callLocator, crew.ReadTicket: s.readTicket, crew.LookUp: s.lookUp,
		crew.TapeDepths: s.tapeDepths, crew.PullTest: s.pullTest, crew.DriveStakes: s.driveStakes, crew.MeasureWidths: s.measureWidths,
	}[t.Action]
	if say != nil {
		return say(t)
	}
	return map[crew.Action]string{
		crew.SquareByTriangle: "Square at L1, as drawn: a cross on the row, then one where two tapes meet. R1 lies on the line from L1 to that, at the gauge stick’s end.",
		crew.SetWidths:        "Lay the gauge stick from each L dot over its ×. Paint R at the stick’s end.",
		crew.PaintByBays:      "Go down the table, bay by bay. Paint each dot where its two tapes meet, ahead of the last pair.",
		crew.PaintChords:      "Under the table’s headings: pull the line, lay a tape along it. Right or left is square off it. Paint each R where its two tapes meet.",
		crew.ChooseMarks:      "For next year choose two marks, better three, that stay: a wall’s corner, a lamp post. Write their tapes down.",
		crew.FlagDots:         "Set a flag a hand off each dot, toward the walk, its name on it.",
		crew.CheckDots:        "Do the checks in their order and write the worst.",
		crew.CheckAgain:       "Measure widths and long diagonals again. A lost dot: find it by its tapes.",
	}[t.Action]
}

// stand is where one stands.
const stand = "Stand at the entrance and look in: L is left."

// tapeHeld says how a tape is held.
func (s *stakeLeaf) tapeHeld() string {
	held := " Hold tapes level and tight."
	if slices.ContainsFunc(s.ground.Findings, func(f finding.Finding) bool { return f.Code == "hold-tape-level" }) {
		held = " The ground slopes: hold tapes level all the same, and drop a weight on a string from the high end."
	}
	return held + " Read out, hear it back, paint, write the name."
}

func (s *stakeLeaf) findMarks(crew.Task) string {
	var letters []string
	for i := range s.ground.Marks {
		if slices.ContainsFunc(s.parts, func(p ground.TapeLength) bool {
			return slices.ContainsFunc(s.markTapes(p), func(t markTape) bool { return t.mark.Index == i })
		}) {
			letters = append(letters, draw.MarkLetter(i))
		}
	}
	return stand + " Find " + say.Agree(len(letters), "mark ", "marks ") + say.And(letters) + ": tapes start at the middle." + s.tapeHeld()
}

func (s *stakeLeaf) chooseFirst(t crew.Task) string {
	d := t.Of.Dots[0]
	if d.Spot.Kind == ground.AtFound {
		return fmt.Sprintf("Paint a cross (×) far ahead, where the organiser wants %s.", s.ground.Stakes[d.Spot.Index].Name)
	}
	return stand + fmt.Sprintf(" Paint %s where the organiser wants it.", s.spot(d.Spot)) + s.tapeHeld()
}

func (s *stakeLeaf) chooseEnd(t crew.Task) string {
	d := t.Of.Dots[0]
	if s.ground.Stakes[d.Spot.Index].Side == spec.Right {
		return fmt.Sprintf("Paint %s the width from %s, square to the way in.", s.spot(d.Spot), s.spot(d.From))
	}
	return fmt.Sprintf("Paint %s at its distance from %s, where the organiser wants the row to end.", s.spot(d.Spot), s.spot(d.From))
}

func (s *stakeLeaf) findByTapes(t crew.Task) string {
	agree := s.sides(t.Of.Dots)
	if len(t.Want) > 0 {
		agree = " The tape in [ ] must agree."
	}
	if !s.byRow() {
		if len(t.Want) > 0 {
			agree = " The check tape must agree."
		}
		return "Go down the table. Paint each L where first and second tape meet; for each R a cross (×)." + agree
	}
	var words []string
	for _, d := range t.Of.Dots {
		word := s.spot(d.Spot)
		if d.Spot.Kind == ground.AtFound {
			word = "a cross (×) for " + s.ground.Stakes[d.Spot.Index].Name
		}
		words = append(words, word)
	}
	return "Paint " + say.And(words) + " where their two tapes meet." + agree
}

// sides says which of two crossings is meant, where no third tape tells.
func (s *stakeLeaf) sides(dots []ground.Dot) string {
	for _, d := range dots {
		if d.Side != dots[0].Side || d.From != dots[0].From || d.To != dots[0].To {
			return " Tapes meet twice: take the crossing of the plan."
		}
	}
	return fmt.Sprintf(" They meet twice: take the crossing on your %s, looking from %s to %s.", dots[0].Side, s.spot(dots[0].From), s.spot(dots[0].To))
}

func (s *stakeLeaf) setEnd(t crew.Task) string {
	d := t.Of.Dots[0]
	far, on := s.ground.Stakes[d.To.Index], ""
	for _, o := range t.Of.Dots {
		if stake := s.ground.Stakes[o.Spot.Index]; stake.Along > far.Along || stake.Along < s.ground.Stakes[d.From.Index].Along {
			on = " and on, dead straight"
		}
	}
	return fmt.Sprintf("Pull a line from %s to the ×%s, a brick on each end. Paint %s under it.", s.spot(d.From), on, s.names(t.Of.Dots))
}

func (s *stakeLeaf) paintRow(t crew.Task) string {
	var zeros []string
	for _, d := range t.Of.Dots {
		if z := s.spot(d.Zero); !slices.Contains(zeros, z) {
			zeros = append(zeros, z)
		}
	}
	return fmt.Sprintf("Lay a tape along it, zero at %s. Leave it. Paint %s, never from dot to dot.", say.And(zeros), s.names(t.Of.Dots))
}

func (s *stakeLeaf) makeGauge(t crew.Task) string {
	if len(t.Want) > 1 {
		return "Mark a lath at each width across, L to R: the gauge sticks. Write their arches on them."
	}
	return "Mark a lath at the width across, L to R: the gauge stick."
}

func (s *stakeLeaf) squareFirst(t crew.Task) string {
	d := t.Of.Dots[0]
	return fmt.Sprintf("Paint %s where the gauge stick from %s meets the tape from %s, the long diagonal.", s.spot(d.Spot), s.spot(d.From), s.spot(d.To))
}

func (s *stakeLeaf) paintByGauge(t crew.Task) string {
	var hooks []string
	for _, d := range t.Of.Dots {
		if h := s.spot(d.To); !slices.Contains(hooks, h) {
			hooks = append(hooks, h)
		}
	}
	return fmt.Sprintf("Hook the tape on %s. Paint %s where it meets the stick from each L.", say.And(hooks), s.names(t.Of.Dots))
}

func (s *stakeLeaf) paintGuys(t crew.Task) string {
	text := "Paint the G dots where their two tapes meet."
	if t.Of.Dots[0].How != ground.OnString {
		return text
	}
	text = "Carry both lines on for the G dots."
	if slices.ContainsFunc(t.Of.Dots, func(d ground.Dot) bool { return s.units.Taped(d.B) != 0 }) {
		text += " Out: square to the line, away from the walk."
	}
	return text
}

// names lists dots by row: "L2 to L5", "R2 to R6".
func (s *stakeLeaf) names(dots []ground.Dot) string {
	var rows []string
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		var numbers []int
		for _, d := range dots {
			if stake := s.ground.Stakes[d.Spot.Index]; stake.Side == side && !stake.Guy && !slices.Contains(numbers, stake.Arch) {
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
func (s *stakeLeaf) checksOff(t crew.Task) string {
	text := "A check is off? Read both tapes again."
	for _, c := range t.IfOff {
		switch c.Do {
		case crew.MoveDotAcross:
			text += " Width: move the R dot across."
		case crew.SlideTheRow:
			text += fmt.Sprintf(" Long diagonals: slide the R row to the exit if R1–L%d is longer, else back, %s for each %s.", len(s.ground.Stations),
				s.units.Inches(s.units.Taped(c.Then)), measure.By(s.units, "inch", "10 mm"))
		}
	}
	return text + " Else find the dot again that both bad figures share."
}

func (s *stakeLeaf) callLocator(crew.Task) string {
	who := "the locating service"
	if crew.LikelyNEC(s.b.spec) {
		who = "811"
	}
	by := ""
	if d := s.b.callBy(); !d.IsZero() {
		by = " by " + block.Figure(d.Format("Mon 2 Jan"))
	}
	text := fmt.Sprintf("All right? Call %s%s: tell them of the white dots.", who, by)
	for _, l := range s.b.spec.Site.Buried {
		marker := "its owner"
		if l.MarkedBy != "" {
			marker = l.MarkedBy
		}
		text += fmt.Sprintf(" They do not mark the %s: have %s do it.", l.Name, marker)
	}
	return text + " Wait until all have marked or answered."
}

func (s *stakeLeaf) readTicket(t crew.Task) string {
	text := "The ticket is good today."
	var widest measure.Length
	for _, f := range t.Want {
		if f.What == crew.ClearOfLine {
			widest = max(widest, f.Limit)
		}
	}
	return text + fmt.Sprintf(" No dot within %s of a marked line: else drive nothing there, ask.", block.Figure(s.units.Inches(widest)))
}

func (s *stakeLeaf) lookUp(t crew.Task) string {
	var words []string
	for _, f := range t.Want {
		who := "any wire"
		if f.Line >= 0 {
			who = "the " + s.b.spec.Site.Overhead[f.Line].Name
		}
		words = append(words, fmt.Sprintf("%s from %s", block.Figure(s.units.Room(f.Length)), who))
	}
	return "Look up. Keep people, stakes and ladders " + say.And(words) + "."
}

func (s *stakeLeaf) tapeDepths(t crew.Task) string {
	same := true
	for i := 2; i+1 < len(t.Want); i += 2 {
		same = same && t.Want[i].Length == t.Want[0].Length
	}
	text := "Tape each stake from its point:"
	if same {
		text = "Tape each stake " + block.Figure(s.units.Inches(t.Want[0].Length)) + " from its point. It shows:"
	}
	var words []string
	for i := 0; i+1 < len(t.Want); i += 2 {
		shows, depth := block.Figure(s.units.Inches(t.Want[i+1].Length)), block.Figure(s.units.Inches(t.Want[i].Length))
		if same {
			words = append(words, strings.ReplaceAll(s.whose(t.Want[i].Stakes), " and ", ", ")+" "+shows)
		} else {
			words = append(words, fmt.Sprintf("%s %s, %s shows", s.whose(t.Want[i].Stakes), depth, shows))
		}
	}
	return text + " " + strings.Join(words, "; ") + "."
}

// whose says which stakes: all guy stakes, all others, or by name.
func (s *stakeLeaf) whose(list []ground.Stake) string {
	guys, names := 0, []string{}
	for _, x := range list {
		names = append(names, x.Name)
		if x.Guy {
			guys++
		}
	}
	legs := 2 * len(s.ground.Stations)
	switch {
	case len(list) == len(s.ground.Stakes):
		return "every stake"
	case guys == 0 && len(list) == legs:
		return "L and R"
	case guys == len(list) && guys == len(s.ground.Stakes)-legs:
		return "G"
	}
	return say.Some(names, 8)
}

func (s *stakeLeaf) pullTest(t crew.Task) string {
	var up, force, moves string
	for _, f := range t.Want {
		switch f.What {
		case crew.PullUp:
			up = s.units.Inches(f.Length)
		case crew.PullForce:
			force = s.units.Force(f.Force)
		case crew.PullMoves:
			moves = s.units.Inches(f.Length)
		}
	}
	text := fmt.Sprintf("Drive %s. Hook the scale %s up, pull away from the walk to %s: it moves under %s, springs back.",
		t.Of.Stakes[0].Name, block.Figure(up), block.Figure(force), block.Figure(moves))
	for _, c := range t.IfOff {
		switch c.Do {
		case crew.DriveDeeper:
			text += fmt.Sprintf(" Else %s deeper.", block.Figure(s.units.Inches(c.By)))
		case crew.LongerStakes:
			text += " Then longer stakes for all."
		}
	}
	return text
}

func (s *stakeLeaf) driveStakes(t crew.Task) string {
	guys := slices.ContainsFunc(t.Of.Stakes, func(x ground.Stake) bool { return x.Guy })
	text := "Drive all L, then R"
	if guys {
		text += ", then G"
	}
	text += ", until the tape meets the ground."
	for _, f := range t.Want {
		switch f.What {
		case crew.Plumb:
			text += " Upright, seen from two sides."
		case crew.Leaning:
			way := "away from the walk"
			if f.Angle < 0 {
				way, f.Angle = "toward the walk", -f.Angle
			}
			text += " Leaning " + block.Figure(measure.Degrees(f.Angle)) + " " + way + "."
		case crew.GuyLean:
			text += " G leans well back from its arch."
		}
	}
	text += " Ribbons: one on L, two on R"
	if guys {
		text += ", three on G"
	}
	return text + "."
}

// wontGo is the one ladder for a stake that will not go where it should.
func (s *stakeLeaf) wontGo(t crew.Task) string {
	text := "A stake will not go?"
	for _, c := range t.IfOff {
		by := block.Figure(s.units.Inches(c.By))
		switch c.Do {
		case crew.BesideHole:
			text += fmt.Sprintf(" Beside the hole, up to %s.", by)
		case crew.MoveAcross:
			text += fmt.Sprintf(" Else across the walk, up to %s: out lowers the crown %s.", by, s.units.Inches(c.Then))
		case crew.MoveAlong:
			text += fmt.Sprintf(" Else along, with its pair, up to %s", by)
			if len(s.b.plan.Ridge) > 0 {
				text += "; tell the saw"
			}
			text += "."
		case crew.MoveGuy:
			text += fmt.Sprintf(" G: up to %s, never into the walk.", by)
		case crew.DoNotMove:
			text += " Do not move it."
		}
	}
	return text + " Farther: ask. Write it under Moved. Never cut or bend one."
}

func (s *stakeLeaf) measureWidths(t crew.Task) string {
	limit := ""
	if len(t.Want) > 0 {
		limit = ": within " + block.Figure(s.units.Inches(t.Want[0].Limit))
	}
	return "Gauge stick across every pair at the ground" + limit + ". Off: drive the worse one again."
}
