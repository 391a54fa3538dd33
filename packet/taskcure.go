package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
)

// mending says what is done when a task is off, where no figure is in it.
var mending = map[crew.Remedy]string{
	crew.Ask:           "Stop and ask.",
	crew.FindDotAgain:  "Find it again by its tapes.",
	crew.MoveDotAcross: "Move the R dot along the line across.",
	crew.ReadTapeAgain: "Read the row’s tape there again.",
	crew.WaitOrCall:    "Wait, or call again. No ticket, no stake.",
	crew.LeaveBare:     "Drive nothing at that dot.",
	crew.LongerStakes:  "Still moves: stop, get longer stakes for the whole tunnel.",
	crew.DoNotMove:     "Do not move any stake: ask.",
	crew.DriveAgain:    "Pull the stake that is off its dot and drive it again. Bend none straight.",
	crew.CutAnother:    "Cut another; keep the short one for a shorter place.",
	crew.PutOut:        "A crack, however short: put it out of use, take the spare.",
	crew.DriveHome:     "Twist, wipe, drive it home again.",
	crew.OtherDay:      "Another day.",
	crew.NotEnough:     "Fewer people: raise nothing.",
	crew.LayAgain:      "Lay it again as drawn.",
	crew.DryAndTry:     "Trips: unplug the last run, look for water, dry it, try it by itself.",
	crew.SwapIt:        "Warm: TEST; once dark unplug that joint, cover, RESET. Run out till replaced.",
	crew.Electrician:   "Fails: breaker off, electrician.",
	crew.Mend:          "Else cords out, mend by daylight.",
	crew.WarmWater:     "Stuck: warm water, wipe dry, no hammer.",
	crew.FindStake:     "Stuck: ask. One missing: nobody leaves.",
	crew.CutThrough:    "Cracked, worn: X on it, not good.",
}

// cure says a remedy.
func (w taskWords) cure(c crew.Cure) string {
	u := w.units
	switch c.Do {
	case crew.SlideTheRow:
		return fmt.Sprintf("Diagonals differ: slide the R row to the exit if R1 to L%d is longer, else back: %s for each %s.", len(w.plan.Ground.Stations), u.Inches(c.Then), measure.By(w.units, "inch", "10 mm"))
	case crew.MoveOnString:
		return fmt.Sprintf("Off by up to %s: the length on the line is right.", w.limit(c.By))
	case crew.DeadWaits:
		return "One run dark: timers off, pull plug or cord at " + footOrOutlet(w.plan.Power) + ", bag the ends, AUTO, OPEN."
	case crew.CloseTonight:
		return "CLOSED till mended."
	case crew.DriveDeeper:
		if c.By == 0 {
			return "Drive it deeper."
		}
		return fmt.Sprintf("Drive it %s deeper, try again.", u.Inches(c.By))
	case crew.BesideHole:
		return fmt.Sprintf("Will not go: beside the hole, up to %s off its dot.", u.Inches(c.By))
	case crew.MoveAcross:
		return fmt.Sprintf("Else across the walk, up to %s: outward lowers the crown %s.", u.Inches(c.By), u.Inches(c.Then))
	case crew.MoveAlong:
		s := fmt.Sprintf("Else along the row, up to %s, its pair too", u.Inches(c.By))
		if len(w.plan.Ridge) > 0 {
			return s + "; cut the ridge pieces beside it to suit."
		}
		return s + "."
	case crew.MoveGuy:
		return fmt.Sprintf("A guy or brace stake: up to %s, never into the walk.", u.Inches(c.By))
	}
	return mending[c.Do]
}

// warned is what is said aloud before tasks, save of wires, which are told where one looks up.
var warned = map[crew.Warning]string{
	crew.PaintOnly:   "Say aloud: paint only. Nothing into the ground before every line is marked.",
	crew.BuriedKills: "Driving: a buried line hit can kill. Paint shows its middle.",
	crew.NoHolding:   "Gloves, eye protection. Nobody holds a stake that is hit. Cap each at once.",
}

// recorded names what is written down.
var recorded = map[crew.Record]string{
	crew.Found: "Found", crew.Worst: "Worst", crew.Ticket: "Ticket", crew.FirstDay: "Good from", crew.LastDay: "to", crew.MarkTapes: "Marks and tapes", crew.Named: "Name",
	crew.Moved: "Moved", crew.TimeDone: "Time",
}

// sign says what is written, and that a hold is signed: names of blanks with a bar between.
func (w taskWords) sign(t crew.Task) string {
	var blanks []string
	for _, r := range t.Record {
		blanks = append(blanks, recorded[r])
	}
	if t.Hold {
		blanks = append(blanks, "Signed")
	}
	return strings.Join(blanks, " | ")
}
