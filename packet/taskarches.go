package packet

import (
	"fmt"
	"slices"

	"hoopwright/layout/crew"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// doingArches says what is done with arches at the taking down and before the raising; stock and raise show the cutting and the raising in pictures and words of their own.
var doingArches = map[crew.Action]func(taskWords, crew.Task) string{
	crew.JoinForWrap: ofArches("Lay %s flat. Drive both legs into the crown before the pipe is wound."),
	crew.TrialArch:   taskWords.tryArch,
	crew.MeasureSag:  plainly("Before loosening, for next year: tape crowns up from a line between the feet."),
	crew.NameLegs:    plainly("Mark every stick on its walk side: name, arrow up. Ridge pieces: arrow toward arch 1."),
	crew.LowerArches: taskWords.lower,
	crew.OpenJoints: func(w taskWords, _ crew.Task) string {
		if w.plan.Spec.Arch.Joints == spec.Pinned {
			return "Take the screws out, counted into a bag. Twist " + w.jointed() + " apart."
		}
		return "Twist " + w.jointed() + " apart and pull."
	},
	crew.PullStakes: func(w taskWords, _ crew.Task) string {
		if w.plan.Spec.Arch.Foot != nil {
			return "Bars out of their sockets, capped till the last. Bags off, boards up. Tick each."
		}
		return "Stake by stake: cap off, twist with the grip, pull straight, tick overleaf, fill the hole."
	},
	crew.LookOver: plainly("Look along all of it."),
	crew.Store:    plainly("Bundle legs arch by arch, straight and flat, tagged at the foot. Bag each string with its leg or row. Fittings in one box with these sheets."),
	crew.NextYear: plainly("Write what was changed, and what to do better."),
}

// tryArch has one arch stood on stakes of the tunnel's own, which come out again.
func (w taskWords) tryArch(t crew.Task) string {
	feet := ""
	if w.plan.Spec.Arch.Foot == nil {
		feet = fmt.Sprintf("Drive %s of the tunnel’s where you know that no line lies, capped; out again after. ", say.Count(2+len(t.Of.Stakes), "stake"))
	}
	return feet + fmt.Sprintf("Stand %s wrapped and guyed, measure it. Type the figures under found before the rest is cut.", say.Numbered("arch", t.Of.Arches))
}

// jointed names what the sticks of an arch are joined by.
func (w taskWords) jointed() string {
	if slices.ContainsFunc(w.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.JoinSticks }) {
		return "crowns and couplings"
	}
	return "the crowns"
}

func (w taskWords) lower(t crew.Task) string {
	n := t.Of.Arches
	s := "Take the arches down, the last first."
	if len(n) == 1 {
		s = fmt.Sprintf("Take arch %d down.", n[0])
	}
	if len(t.Of.Bays) > 0 {
		s += " Ridge piece out of the older crown, then out of this one."
	}
	if len(t.Of.Stakes) > 0 {
		s += fmt.Sprintf(" Take an arch's %s off only when it is next; those of arch %d last of all.", heldBy(w.plan).all(), n[0])
	}
	return s + " Right foot off, cap on at once; walk it out slowly until the pipe lies straight. Left foot off, cap on."
}
