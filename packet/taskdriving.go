package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

func (w taskWords) readTicket(t crew.Task) string {
	text := "The ticket is good today."
	var widest measure.Length
	for _, f := range t.Want {
		if f.What == crew.ClearOfLine {
			widest = max(widest, f.Limit)
		}
	}
	return text + fmt.Sprintf(" No dot within %s of a marked line: else drive nothing there, ask.", block.Figure(w.units.Inches(widest)))
}

func (w taskWords) lookUp(t crew.Task) string {
	var words []string
	for _, f := range t.Want {
		who := "any wire"
		if f.Line >= 0 {
			who = "the " + w.plan.Spec.Site.Overhead[f.Line].Name
		}
		words = append(words, fmt.Sprintf("%s from %s", block.Figure(w.units.Room(f.Length)), who))
	}
	return "Look up. Keep people, stakes and ladders " + say.And(words) + "."
}

func (w taskWords) tapeDepths(t crew.Task) string {
	same := true
	for i := 2; i+1 < len(t.Want); i += 2 {
		same = same && t.Want[i].Length == t.Want[0].Length
	}
	text := "Wrap tape, from the point:"
	if same {
		text = "Wrap tape " + block.Figure(w.units.Inches(t.Want[0].Length)) + " from each stake’s point. It shows:"
	}
	var words []string
	for i := 0; i+1 < len(t.Want); i += 2 {
		shows, depth := block.Figure(w.units.Inches(t.Want[i+1].Length)), block.Figure(w.units.Inches(t.Want[i].Length))
		word := w.whose(t.Want[i].Stakes) + "\u00a0"
		if same {
			words = append(words, word+shows)
		} else {
			words = append(words, fmt.Sprintf("%s%s, %s shows", word, depth, shows))
		}
	}
	return text + " " + strings.Join(words, "; ") + "."
}

func (w taskWords) pullTest(t crew.Task) string {
	var up, force, moves string
	for _, f := range t.Want {
		switch f.What {
		case crew.PullUp:
			up = w.units.Inches(f.Length)
		case crew.PullForce:
			force = w.units.Scale(f.Force)
		case crew.PullMoves:
			moves = w.units.Inches(f.Length)
		}
	}
	text := fmt.Sprintf("Drive %s. Hook the luggage scale %s up, pull away from the walk to %s: it moves under %s, springs back.",
		t.Of.Stakes[0].String(), block.Figure(up), block.Figure(force), block.Figure(moves))
	for _, c := range t.IfOff {
		switch c.Do {
		case crew.DriveDeeper:
			text += fmt.Sprintf(" Else L, R %s deeper, hook the top.", block.Figure(w.units.Inches(c.By)))
		case crew.LongerStakes:
			text += " Then longer ones."
		}
	}
	return text
}

// lettersOf are the letters of stakes by what they hold, in the order they are driven; a brace's are called pegs, for the letter of their names is a mark's as well.
func lettersOf(stakes []ground.Stake, but ground.Kind) (list []string) {
	for _, words := range [][2]string{{"L", "L"}, {"R", "R"}, {"G", "G"}, {"B", "pegs"}} {
		if slices.ContainsFunc(stakes, func(x ground.Stake) bool { return x.Before() == words[0] && x.Kind() != but }) {
			list = append(list, words[1])
		}
	}
	return list
}

func (w taskWords) driveStakes(t crew.Task) string {
	text := "Drive all " + strings.Join(lettersOf(t.Of.Stakes, -1), ", then ") + ", until the tape meets the ground."
	others := lettersOf(t.Of.Stakes, ground.OfLeg)
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
			letters := lettersOf(f.Stakes, -1)
			text += " " + say.And(letters) + ": leaning, head a hand farther from its leg."
		}
	}
	text += " Ribbons: L one, R two"
	if len(others) > 0 {
		text += ", " + say.And(others) + " three"
	}
	return text + "."
}

// setBases says how feet are stood where nothing is driven.
func (w taskWords) setBases(t crew.Task) string {
	text := "Lay the board along each row, its middle on the dots. A socket screwed on at each dot, a bar upright in it, a cap on. Bags of " + w.units.Mass(practice.Bag(w.units).Mass()) + ", outside the walk:"
	var words []string
	for _, f := range t.Want {
		if f.What == crew.Weighs {
			words = append(words, fmt.Sprintf("%s on each of %s", block.Figure(fmt.Sprint(f.Count)), w.whose(f.Stakes)))
		}
	}
	return text + " " + say.And(words) + "."
}

// wontGo is the one ladder for a stake that will not go where it should.
func (w taskWords) wontGo(t crew.Task) string {
	text := "A stake will not go?"
	for _, c := range t.IfOff {
		by := block.Figure(w.units.Inches(c.By))
		switch c.Do {
		case crew.BesideHole:
			text += fmt.Sprintf(" Try within %s of its dot.", by)
		case crew.MoveAcross:
			text += fmt.Sprintf(" L, R: in or out, up to %s.", by)
		case crew.MoveAlong:
			text += fmt.Sprintf(" Else along, its pair too, up to %s", by)
			if len(w.plan.Ridge) > 0 {
				text += "; tell the cutting crew"
			}
			text += "."
		case crew.MoveGuy:
			text += fmt.Sprintf(" G: up to %s, never into the walk.", by)
		case crew.DoNotMove:
			text += " Do not move it."
		}
	}
	return text + " Farther, or nearer a marked line: ask. Write it under Moved. Never cut or bend one."
}

func (w taskWords) measureWidths(t crew.Task) string {
	limit := ""
	if len(t.Want) > 0 {
		limit = " within " + block.Figure(w.units.Inches(t.Want[0].Limit)) + ", or as Moved says"
	}
	again := "pull the worse one, drive it again."
	if w.plan.Spec.Arch.Foot != nil {
		again = "move the worse one."
	}
	return "Gauge stick at the ground, every pair:" + limit + ". Off: " + again
}
