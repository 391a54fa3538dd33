package packet

import (
	"fmt"
	"slices"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// tiedFlat ties the guys of every guyed arch while it lies.
func (r raising) tiedFlat() (panel, bool) {
	u := r.spec.Units
	var marks []guyMark
	for _, t := range r.tasks() {
		for _, f := range t.Want {
			if f.What != crew.GuyMark || t.Action != crew.TieGuysFlat && t.Action != crew.RaiseRest {
				continue
			}
			marks = addMark(marks, f)
		}
	}
	if len(marks) == 0 {
		return panel{}, false
	}
	t, _ := r.task(crew.TieGuysFlat, 0)
	band, _ := wantedOf(t, crew.KnotClamped)
	do := fmt.Sprintf("Flat: a guy to each leg of %s, on bare pipe. Clamp under the knot.", say.Numbered("arch", marks[0].arches))
	if len(marks[0].arches) > mostNamed {
		do = "Flat: a guy to each leg of guyed arches, on bare pipe. Clamp under the knot."
	}
	facts := []block.Fact{{What: "bare band at a guy", Value: u.Inches(band.Length)}}
	for _, m := range marks {
		facts = append(facts, block.Fact{What: "guy mark, " + say.Numbered("arch", m.arches) + m.leg, Value: u.Inches(u.Taped(m.tape))})
	}
	for _, m := range marks[1:] {
		do += fmt.Sprintf(" %s%s: %s.", say.Capital(say.Numbered("arch", m.arches)), m.leg, block.Figure(u.Inches(u.Taped(m.tape))))
	}
	return panel{do: do, off: "Lights there: open their turns. No line on wire.", facts: facts,
		paint: func(page *paper.Page, room paper.Rect) []string {
			return r.TiedFlat(page, room, u.Inches(u.Taped(marks[0].tape)), u.Inches(band.Length))
		}}, true
}

// guyMark is where guys are tied on some arches: the tape from the foot end.
type guyMark struct {
	tape   measure.Length
	leg    string // ", left leg" where the other has its own
	arches []int
}

// addMark adds an arch's mark to one that is no farther off than marks may be.
func addMark(marks []guyMark, f crew.Figure) []guyMark {
	leg := ""
	if len(f.Walls) == 1 {
		leg = fmt.Sprintf(", %s leg", f.Walls[0])
	}
	for i, m := range marks {
		if d := m.tape - f.Length; d <= f.Limit && d >= -f.Limit {
			if !slices.Contains(m.arches, f.Arches[0]) {
				marks[i].arches = append(marks[i].arches, f.Arches[0])
			}
			return marks
		}
	}
	return append(marks, guyMark{f.Length, leg, f.Arches[:1]})
}

// mostNamed is how many arches are named in a picture's words.
const mostNamed = 4
