package packet

import (
	"fmt"

	"hoopwright/draw/block"
	"hoopwright/layout/crew"
)

// after is what comes when all arches stand: measuring arches of another shape, sockets or a line along the crowns, caps, rows, drops, the way through.
func (r raising) after(number int) []block.Block {
	var list []block.Block
	for _, t := range r.tasks() {
		step, ok := r.step(t)
		if !ok {
			continue
		}
		step.Number, step.Hold = number, t.Hold
		number++
		list = append(list, block.Block{Name: fmt.Sprintf("step %d", step.Number), Gap: 1.2, Body: step})
	}
	return list
}

// step writes a task that has no picture; false for those that have one.
func (r raising) step(t crew.Task) (block.Step, bool) {
	climbs := "Ladder up, Crown at its foot"
	if !r.ladder() {
		climbs = "Ladder, from the ground"
	}
	switch t.Action {
	case crew.MeasureArch:
		if n := t.Of.Arches[0]; n != r.stand[0].Number {
			return block.Step{Text: fmt.Sprintf("Hold arch %s when it stands, measure it: its profile and table stand on the next sheet. Sign there.", block.Figure(fmt.Sprint(n)))}, true
		}
	case crew.WindInPlace:
		return block.Step{Text: fmt.Sprintf("Ridge piece %s gets its lights in place, %s (leaf %d). The others go up with theirs on.", block.Figure("1"), climbs, leafNumber("lights"))}, true
	case crew.RunCrownLine:
		return block.Step{Text: fmt.Sprintf("Dry ridge sockets: a line along the crowns, %s to %s, knotted round each fitting, hand tight, %s. Or one screw in each socket.",
			block.Figure("1"), block.Figure(fmt.Sprint(r.stand[len(r.stand)-1].Number)), climbs)}, true
	case crew.ScrewSockets:
		return block.Step{Text: "One screw through every socket, from the outside, " + climbs + ". No point stands out inside: file it flush."}, true
	case crew.GlueSockets:
		return block.Step{Text: "Prime and cement the sockets one by one, " + climbs + ". Open air, no flame, gloves on."}, true
	case crew.SightAlong:
		return block.Step{Text: r.sight(t)}, true
	case crew.HangRows:
		sag, _ := wanted(t, crew.Sag)
		who := "Foot 1 and Foot 2"
		if usesThing(t, crew.Stepladder) {
			who += ", Ladder for the high ones"
		}
		return block.Step{Text: fmt.Sprintf("Rows of the %s wall, unplugged: %s, from the middle arch outwards. A tie at every flag, %s of sag a bay. Strings: leaf %d.",
			t.Of.Walls[0], who, block.Figure(r.spec.Units.Inches(sag.Length)), leafNumber("lights")), Then: "Tight rows pull arches together: let out slack, never stretch a string."}, true
	case crew.HangDrops:
		low, _ := wanted(t, crew.LowestDrop)
		return block.Step{Text: fmt.Sprintf("Drops, unplugged, %s. No end lower than %s. Strings: leaf %d.", climbs, block.Figure(r.spec.Units.Inches(low.Length)), leafNumber("lights"))}, true
	case crew.TryOpening:
		return block.Step{Text: "Walk two sticks through, upright and across. Nothing touches. " + block.Figure("Sign") + " the front."}, true
	}
	return block.Step{}, false
}

// sight has the whole looked along and the caps counted.
func (r raising) sight(t crew.Task) string {
	text := "Sight along ridge and feet from each end."
	if len(t.Of.Stakes) > 0 {
		text = "Sight along ridge and feet from each end, draw guys even."
	}
	return text + " Count caps, " + block.Figure("sign") + " the front."
}

func usesThing(t crew.Task, thing crew.Thing) bool {
	for _, n := range t.Uses {
		if n.Thing == thing {
			return true
		}
	}
	return false
}
