package packet

import (
	"fmt"
	"slices"

	"hoopwright/layout/crew"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// doingArches says what is done at the bench, at the raising and at the taking down.
var doingArches = map[crew.Action]func(taskWords, crew.Task) string{
	crew.CutLegs: plainly("Cut the leg pieces to their saw marks. Cut no ridge piece yet."),
	crew.CutTrial: func(_ taskWords, t crew.Task) string {
		return "Cut the ridge piece of " + say.Numbered("bay", t.Of.Bays) + ", and no other."
	},
	crew.NameSticks: plainly("Write its name at the foot end of every leg stick, and an arrow to the crown. Look at both ends."),
	crew.JoinSticks: plainly("Join the sticks of each leg with its couplings, lower stick at the foot. Drive each home with the mallet."),
	crew.MarkLegs:   taskWords.markLegs,
	crew.CutRidge: func(_ taskWords, t crew.Task) string {
		return "Cut the ridge pieces of " + say.Numbered("bay", t.Of.Bays) + ", each changed by what bay 1 has taught. Name both ends."
	},
	crew.JoinForWrap: ofArches("Lay %s flat. Drive both legs into the crown before the pipe is wound."),

	crew.TrialArch: ofArches("Stand %s on ground that you know, wrapped and guyed. Measure it. Type them under found, after: trial, before the rest is cut."),

	crew.CheckDay: plainly("Name five people: Foot 1, Foot 2, Crown, Ladder, Guard. Read the forecast. Feel the pipe."),
	crew.WatchLine: func(w taskWords, t crew.Task) string {
		return fmt.Sprintf("Name one person who does nothing but watch the %s.", w.plan.Spec.Site.Overhead[t.Of.Overhead[0]].Name)
	},
	crew.JoinCrown:   taskWords.joinCrown,
	crew.TieGuysFlat: ofArches("Tie the guys of %s at their marks now, on bare pipe: up there nobody reaches. Put a clamp below each knot. Pull nothing tight on a wire."),
	crew.SetLeft: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Crown carries the crown. Foot 1 slips the left leg over L%d, down to the ground. Its cap comes off only now, into the bucket.", t.Of.Arches[0])
	},
	crew.WalkRight: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Foot 1 holds the left foot down. Foot 2 walks the right leg slowly to R%d and slips it down. Let go when both feet are down.", t.Of.Arches[0])
	},
	crew.HoldArch:    ofArches("Guard holds %s upright and does nothing else until the last arch is joined."),
	crew.StretchGuys: ofArches("Guard holds %s plumb. Foot 1 and Foot 2 pull its guys to their stakes, both sides alike. Tie a ribbon on each at eye height."),
	crew.FixBraces:   taskWords.fixBraces,
	crew.MeasureArch: ofArches("Measure %s: from a line between its feet up to the middle of the crown fitting. Touch no other arch before."),
	crew.RaiseSame:   ofArches("Raise %s the same way: crown together, left foot, right foot, a cap off only as the pipe comes. Guard holds arch 1; Foot 1 and Foot 2 hold the new one."),
	crew.SpringRidge: func(_ taskWords, t crew.Task) string {
		return fmt.Sprintf("Ladder puts the piece of %s into crown %d, then springs it into crown %d. Drive both ends home.", say.Numbered("bay", t.Of.Bays), t.Of.Bays[0]+1, t.Of.Bays[0])
	},
	crew.MeasureBay: func(_ taskWords, t crew.Task) string {
		return "Measure " + say.Numbered("bay", t.Of.Bays) + " at the crowns, middle of fitting to middle of fitting."
	},
	crew.RaiseRest:    taskWords.raiseRest,
	crew.RunCrownLine: ofArches("Run a line along the crowns of %s, one turn and a knot at each crown: it keeps dry sockets from working out."),
	crew.ScrewSockets: plainly("Drive one screw through every socket, from outside, clear of where people walk."),
	crew.GlueSockets:  plainly("Prime and cement the sockets one at a time, as the label says."),
	crew.SightAlong:   plainly("Look along crowns and feet from each end. Draw what is slack in, both sides alike. Count the caps."),

	crew.MeasureSag:  plainly("Before loosening: tape crowns up from a line between the feet, and that line."),
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

func (w taskWords) markLegs(t crew.Task) string {
	each := w.by("every foot", "every 500 mm")
	s := "Mark every leg " + each + " from the foot end, while it lies straight."
	if h := heldBy(w.plan); h.guys || h.braces {
		s += " Where a " + say.Or(h.pick("guy", "brace")) + " goes, tape round."
	}
	return s
}

func (w taskWords) fixBraces(t crew.Task) string {
	how := "clamp a brace from the mark on each leg to its peg, outside the pipe"
	if w.plan.Spec.Braces.Line {
		how = "buckle a line from the mark on each leg to its peg, in the wall"
	}
	return fmt.Sprintf("Guard holds %s plumb. Foot 1 and Foot 2 %s. Tie a ribbon on each at eye height.", say.Numbered("arch", t.Of.Arches), how)
}

func (w taskWords) joinCrown(t crew.Task) string {
	lights := ""
	if len(w.plan.Lights.Wraps) > 0 {
		lights = ", lights on it"
	}
	return fmt.Sprintf("Lay %s flat beside its stakes%s. Mark the socket's depth on each end. Drive both legs into the crown with the mallet.", say.Numbered("arch", t.Of.Arches), lights)
}

func (w taskWords) raiseRest(t crew.Task) string {
	s := fmt.Sprintf("Raise %s the same way, one at a time.", say.Numbered("arch", t.Of.Arches))
	if len(w.plan.Ridge) > 0 {
		s += " Its ridge piece goes into the new crown first. Hold the newest arch until it is in."
	}
	if len(t.Of.Stakes) > 0 {
		h := heldBy(w.plan)
		if h.guys {
			s += " Tie guys while their arch lies flat; pull them tight once it stands."
		}
		if h.braces {
			s += " Fix its braces once it stands."
		}
	}
	for _, f := range t.Want {
		if f.What == crew.RunLength {
			return s + " Stop at each crown named here: tape along the ridge from the middle of crown 1."
		}
	}
	return s
}

// jointed names what the sticks of an arch are joined by.
func (w taskWords) jointed() string {
	if !crew.KeepsOn(w.plan.Spec) && slices.ContainsFunc(w.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.JoinSticks }) {
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
