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
	"hoopwright/layout/practice"
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
	where, bare, facts := "Flat", "", []block.Fact(nil)
	if r.Wrapped {
		where, bare = "Flat, on bare pipe", u.Inches(practice.BareBand(u))
		facts = []block.Fact{{What: "bare band at a guy", Value: bare}}
	}
	do := where + ": " + r.guysALeg() + ". Tightener each, clamp under each knot."
	for _, m := range marks {
		facts = append(facts, block.Fact{What: "guy mark, " + say.Numbered("arch", m.arches) + m.leg, Value: u.Inches(u.Taped(m.tape))})
	}
	for _, m := range marks[1:] {
		do += fmt.Sprintf(" %s%s: %s.", say.Capital(say.Numbered("arch", m.arches)), m.leg, block.Figure(u.Inches(u.Taped(m.tape))))
	}
	return panel{action: crew.TieGuysFlat, do: do, facts: facts,
		paint: func(page *paper.Page, room paper.Rect) []string {
			return r.TiedFlat(page, room, u.Inches(u.Taped(marks[0].tape)), bare)
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
			words = append(words, fmt.Sprintf("%d a leg on %s", k+1, say.Numbers(list)))
		default:
			words = append(words, fmt.Sprintf("%s a leg on %s", say.Count(k+1, "guy"), say.Numbered("arch", list)))
		}
	}
	return strings.Join(words, ", ")
}

// guysTo says to which stakes the guys of arches go: those of the first of arches alike by name.
func guysTo(stakes []ground.Stake) string {
	type alike struct {
		before string
		off    int // of the stakes' number from their arch's
		both   bool
	}
	var order []alike
	arches, names := map[alike][]int{}, map[alike][2][]string{} // names by whether they are ahead
	for _, s := range stakes {
		if !s.Guy {
			continue
		}
		k := alike{s.Before(), s.Number() - s.Arch, s.Way != ground.OneWay}
		if n := arches[k]; len(n) == 0 || n[len(n)-1] != s.Arch {
			if len(n) == 0 {
				order = append(order, k)
			}
			arches[k] = append(n, s.Arch)
		}
		if s.Arch == arches[k][0] {
			list, ahead := names[k], 0
			if s.Way == ground.Away {
				ahead = 1
			}
			list[ahead] = append(list[ahead], s.String())
			names[k] = list
		}
	}
	var words []string
	for _, k := range order {
		n, to := arches[k], names[k]
		text := fmt.Sprintf("arch %d: %s", n[0], strings.Join(to[0], ", "))
		if k.both {
			text += " behind, " + strings.Join(to[1], ", ") + " ahead"
		}
		switch {
		case len(n) > mostNamed:
			text += fmt.Sprintf(" (%d more alike)", len(n)-1)
		case len(n) > 1:
			text += fmt.Sprintf(" (%s alike)", say.Numbers(n[1:]))
		}
		words = append(words, text)
	}
	return strings.Join(words, "; ")
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
