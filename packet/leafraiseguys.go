package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
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
	do := "Flat, on bare pipe: " + r.guysALeg() + ". Tightener on each, clamp under the knot."
	facts := []block.Fact{{What: "bare band at a guy", Value: u.Inches(band.Length)}}
	for _, m := range marks {
		facts = append(facts, block.Fact{What: "guy mark, " + say.Numbered("arch", m.arches) + m.leg, Value: u.Inches(u.Taped(m.tape))})
	}
	for _, m := range marks[1:] {
		do += fmt.Sprintf(" %s%s: %s.", say.Capital(say.Numbered("arch", m.arches)), m.leg, block.Figure(u.Inches(u.Taped(m.tape))))
	}
	return panel{do: do, facts: facts,
		paint: func(page *paper.Page, room paper.Rect) []string {
			return r.TiedFlat(page, room, u.Inches(u.Taped(marks[0].tape)), u.Inches(band.Length))
		}}, true
}

// guysALeg says how many guys go on a leg of which arches: one where an arch is held one way, two where it is held back and forward.
func (r raising) guysALeg() string {
	var arches [2][]int // held one way, both ways
	for _, s := range r.plan.Stakes {
		if !s.Guy || s.Bay > 0 {
			continue
		}
		k := 0
		if s.Way != ground.OneWay {
			k = 1
		}
		if n := len(arches[k]); n == 0 || arches[k][n-1] != s.Arch {
			arches[k] = append(arches[k], s.Arch)
		}
	}
	var words []string
	for k, list := range arches {
		switch {
		case len(list) == 0:
		case len(list) > mostNamed:
			words = append(words, fmt.Sprintf("%s a leg on %s between", say.Count(k+1, "guy"), say.Count(len(list), "arch")))
		case len(words) > 0:
			words = append(words, fmt.Sprintf("%d on %s", k+1, say.Numbers(list)))
		default:
			words = append(words, fmt.Sprintf("%s a leg on %s", say.Count(k+1, "guy"), say.Numbered("arch", list)))
		}
	}
	return strings.Join(words, ", ")
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
