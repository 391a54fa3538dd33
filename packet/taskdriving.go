package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

func (w taskWords) readTicket(t crew.Task) string {
	return fmt.Sprintf("Ticket good, every dot %s clear of marked lines.", block.Figure(w.units.Inches(clearOf(t))))
}

// clearOf is the most that dots keep from any marked line.
func clearOf(t crew.Task) (widest measure.Length) {
	for _, f := range t.Want {
		if f.What == crew.ClearOfLine {
			widest = max(widest, f.Limit)
		}
	}
	return widest
}

func (w taskWords) lookUp(t crew.Task) string {
	var words []string
	for _, f := range t.Want {
		who := "from any wire"
		if f.Line >= 0 {
			who = "from the " + w.plan.Spec.Site.Overhead[f.Line].Name + " overhead"
		}
		words = append(words, block.Figure(w.units.Room(f.Length))+" "+who)
	}
	return "Look up: people, " + map[bool]string{true: "stakes", false: "bars"}[drives(w.plan)] + ", ladders " + say.And(words) + "."
}

func (w taskWords) tapeDepths(t crew.Task) string {
	var words []string
	for pair := range slices.Chunk(t.Want, 2) { // the depth, and what shows above it
		words = append(words, fmt.Sprintf("%s\u00a0%s (%s)", w.whose(pair[0].Stakes), block.Figure(w.units.Inches(pair[0].Length)), w.units.Inches(pair[1].Length)))
	}
	return "Coloured tape from the tip (shows): " + strings.Join(words, ", ") + "."
}

func (w taskWords) pullTest(t crew.Task) string {
	up, force, moves := w.pull(t)
	text := fmt.Sprintf("Drive %s: a luggage scale %s up, outward to %s, moves under %s at the ground past a lath, springs back.", t.Of.Stakes[0].String(), up, force, moves)
	for _, c := range t.IfOff {
		switch c.Do {
		case crew.DriveDeeper:
			text += fmt.Sprintf(" Else %s deeper: if that holds, all L, R too%s.", block.Figure(w.units.Inches(c.By)), w.deeperToo(t.Of.Stakes[0]))
		case crew.LongerStakes:
			text += " Else ask."
		}
	}
	return text
}

// deeperToo says what ground that gives under a stake asks of the stakes of guys and braces that go less deep: as much deeper as leaves room for the knot and the cap;
// nothing of others.
func (w taskWords) deeperToo(tried ground.Stake) string {
	words, told := "", ground.OfLeg
	for _, s := range w.plan.Stakes { // guys before braces
		if s.Kind() == told || !s.Guy || s.Base || s.Depth >= tried.Depth {
			continue
		}
		told = s.Kind()
		length, depth := practice.Peg(w.units)
		if shows := length - depth; s.Length-s.Depth > shows+practice.Reading(w.units) {
			words += fmt.Sprintf(", %s till %s show", s.Before(), block.Figure(w.units.Inches(shows)))
		} else {
			words += fmt.Sprintf(", %s: ask", s.Before())
		}
	}
	return words
}

// pullAgain says the pull test of a further plan in short: the steps that drive, and among them the test, stand behind the first.
func (w taskWords) pullAgain(t crew.Task, first, test, last int) string {
	up, force, moves := w.pull(t)
	return fmt.Sprintf("Paint, check with plan 1, before its call. Its ticket signed, steps %s, %s first: %s at %s up moves it under %s: sign, go on. Else as step %d.",
		say.Range(first, last), t.Of.Stakes[0].String(), force, up, moves, test)
}

// pull are the figures of a pull test.
func (w taskWords) pull(t crew.Task) (up, force, moves string) {
	inches := func(what crew.Wanted) string { return block.Figure(w.units.Inches(figureOf(t, what).Length)) }
	return inches(crew.PullUp), block.Figure(w.units.Scale(figureOf(t, crew.PullForce).Force)), inches(crew.PullMoves)
}

// lettersOf are the letters of stakes by what they hold, in the order they are driven.
func lettersOf(stakes []ground.Stake, but ground.Kind) (list []string) {
	for _, letter := range []string{"L", "R", "G", "P"} {
		if slices.ContainsFunc(stakes, func(x ground.Stake) bool { return x.Before() == letter && x.Kind() != but }) {
			list = append(list, letter)
		}
	}
	return list
}

func (w taskWords) driveStakes(t crew.Task) string {
	bare := lettersOf(t.Of.Stakes, ground.OfLeg) // no pipe stands on these
	text := "Push in, drive to the coloured tape, arch by arch: " + strings.Join(append([]string{"L", "R"}, bare...), ", ") + "."
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
			letters, arch := lettersOf(f.Stakes, -1), "its arch"
			if slices.ContainsFunc(f.Stakes, func(s ground.Stake) bool { return s.Kind() == ground.OfBrace }) { // it stands beside another's foot
				arch = "the arch in its name"
			}
			text += " " + say.And(letters) + ": tip on the dot, head a hand farther from " + arch + ", drive along the lean."
		}
	}
	if len(bare) > 0 {
		text += " A ribbon on each " + say.And(bare) + "."
	}
	return text
}

// setBases says how feet are stood where nothing is driven. The board hides their dots: each is carried out to both sides first.
func (w taskWords) setBases(t crew.Task) string {
	bars := "L, R"
	if slices.ContainsFunc(t.Of.Stakes, func(s ground.Stake) bool { return s.Guy && s.Steel() }) {
		bars += ", P"
	}
	boards := "butted"
	if i := slices.IndexFunc(w.plan.Shopping, func(i stock.Item) bool { return i.Kind == stock.SoleBoard }); i >= 0 {
		boards += ", " + boardsSaid(w.plan.Shopping[i].Rows, w.units) + ","
	}
	return fmt.Sprintf("Gauge stick over each pair of %s: on its line a tick %s to both sides of each dot. Boards along the rows on the dots, %s from %s before each first dot, joint plates screwed on. Midway from tick to tick a socket, a bar upright in it, a cap on.",
		bars, block.Figure(w.units.Inches(w.plan.Spec.Base().Width)), boards, w.units.Inches(w.plan.Spec.Base().Width/2))
}

// weighDown says how many bags hold bases and guys down, once the feet are as wide apart as they are to be.
func (w taskWords) weighDown(t crew.Task) string {
	var words []string
	for _, f := range t.Want {
		words = append(words, fmt.Sprintf("%s at every %s", block.Figure(fmt.Sprint(f.Count)), w.whose(f.Stakes)))
	}
	lie, free := "They lie", lettersOf(slices.DeleteFunc(slices.Clone(t.Of.Stakes), ground.Stake.Steel), ground.OfLeg)
	if len(free) > 0 {
		lie = say.And(free) + " on their dots, the others"
	}
	return "Bags of " + w.units.Mass(practice.Bag(w.units).Mass()) + ": " + strings.Join(words, "; ") + ". " + lie + " on the boards, outside the walk."
}

// wontGo is the one ladder for a stake that will not go where it should.
func (w taskWords) wontGo(t crew.Task) string {
	text, ask := "A stake hits stone or root (pull it, look)?", ". Farther, nearer a marked line"
	for _, c := range t.IfOff {
		by := block.Figure(w.units.Inches(c.By))
		switch c.Do {
		case crew.BesideHole:
			text += fmt.Sprintf(" Up to %s beside its dot", by)
			if slices.ContainsFunc(t.Of.Stakes, func(s ground.Stake) bool { return s.Kind() == ground.OfBrace }) {
				text += ", P no farther"
			}
		case crew.MoveAcross:
			text += fmt.Sprintf("; L, R in or out to %s", by)
		case crew.MoveAlong:
			text += fmt.Sprintf("; else both of the arch alike along the row to %s (pull one that stands", by)
			if len(w.plan.Ridge) > 0 {
				text += ", tell the cutting crew"
			}
			text += ")"
		case crew.MoveGuy:
			where := ", never into the walk"
			if len(arch.Passes(w.plan.Spec, w.plan.Arches)) > 0 { // else its guy would rub what it passes
				where = " outward"
			}
			text += "; G to " + by + where
		case crew.DoNotMove:
			text += " Do not move it"
		}
	}
	if slices.ContainsFunc(t.Of.Stakes, w.stays) {
		ask += ", where the table forbids"
	}
	return text + ask + ": ask. Write it in Moved. Cut, bend none."
}

// stays reports whether the ladder may not move a stake: a buried line would come too near.
func (w taskWords) stays(stake ground.Stake) bool {
	var by measure.Length
	for _, t := range w.plan.Crew.Tasks {
		for _, c := range t.IfOff {
			if t.Action == crew.DriveStakes && c.Do.Moves(stake.Kind()) {
				by = max(by, c.By)
			}
		}
	}
	return !crew.MayMove(w.plan.Spec, stake, by)
}

func (w taskWords) measureWidths(t crew.Task) string {
	limit := ""
	if len(t.Want) > 0 {
		limit = " within " + block.Figure(w.units.Inches(t.Want[0].Limit))
	}
	again := "drive anew the one off its dot."
	if w.plan.Spec.Arch.Foot != nil {
		again = "move the worse one."
	}
	if limit != "" && drives(w.plan) {
		limit += ", or as Moved says"
	}
	return "Gauge stick at the ground, middle to middle, every pair:" + limit + ". Off: " + again
}
