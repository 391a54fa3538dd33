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

const (
	mostNamed  = 4 // arches named in a picture's words
	mostStakes = 2 // stakes of guys and braces named in a picture's words
)

// tiedFlat ties the guys of every guyed arch while it lies; nothing where none has any.
func (r raising) tiedFlat() panel {
	var marks []guyMark
	for _, f := range r.tasks.wanted(crew.GuyMark) {
		marks = addMark(marks, f)
	}
	if len(marks) == 0 {
		return panel{}
	}
	where, bare, facts := "Flat", "", []block.Fact(nil)
	if r.Wrapped {
		where, bare = "Flat, on bare pipe", r.u.Inches(practice.BareBand(r.u))
		facts = []block.Fact{{What: "bare band at a guy", Value: bare}}
	}
	do := where + ": " + r.guysALeg() + ". Clamp below each knot, tightener at the far end."
	tape := func(m guyMark) string { return r.u.Inches(r.u.Taped(m.tape)) }
	for i, m := range marks {
		who := say.Numbered("arch", m.arches) + m.leg
		facts = append(facts, block.Fact{What: "guy mark, " + who, Value: tape(m)})
		if i > 0 {
			do += fmt.Sprintf(" %s: %s.", say.Capital(who), block.Figure(tape(m)))
		}
	}
	return panel{action: crew.TieGuysFlat, do: do, facts: facts, paint: func(page *paper.Page, room paper.Rect) { r.TiedFlat(page, room, tape(marks[0]), bare) }}
}

// guyMark is where guys are tied on some arches: the tape from the foot end.
type guyMark struct {
	tape   measure.Length
	leg    string // ", left leg" where the other has its own
	arches []int
}

// addMark adds an arch's mark to one that is no farther off than marks may be.
func addMark(marks []guyMark, f crew.Figure) []guyMark {
	for i, m := range marks {
		if d := m.tape - f.Length; d <= f.Limit && d >= -f.Limit {
			if !slices.Contains(m.arches, f.Arches[0]) {
				marks[i].arches = append(marks[i].arches, f.Arches[0])
			}
			return marks
		}
	}
	leg := ""
	if len(f.Walls) == 1 {
		leg = fmt.Sprintf(", %s leg", f.Walls[0])
	}
	return append(marks, guyMark{f.Length, leg, f.Arches[:1]})
}

// guysALeg says how many guys go on a leg of which arches: one where an arch is held one way, two where it is held back and forward.
func (r raising) guysALeg() string {
	var arches [2][]int // held one way, both ways
	for _, s := range r.Plan.Stakes {
		if !s.Guy || s.Bay > 0 {
			continue
		}
		k := 0
		if s.Way != ground.OneWay {
			k = 1
		}
		if !slices.Contains(arches[k], s.Arch) {
			arches[k] = append(arches[k], s.Arch)
		}
	}
	var words []string
	for k, list := range arches {
		switch guys := say.Count(k+1, "guy"); {
		case len(list) == 0:
		case len(list) > mostNamed:
			words = append(words, fmt.Sprintf("%s a leg on %s between", guys, say.Count(len(list), "arch")))
		case len(words) > 0:
			words = append(words, fmt.Sprintf("%d a leg on %s", k+1, say.Numbers(list)))
		default:
			words = append(words, guys+" a leg on "+say.Numbered("arch", list))
		}
	}
	return strings.Join(words, ", ")
}

// heldAtOnce says to which stakes the guys and the braces of a task's arches go.
func heldAtOnce(t crew.Task) (words []string) {
	guys, pegs := fixed(t)
	if len(guys) > 0 {
		words = append(words, "Guys of "+guysTo(guys)+".")
	}
	if len(pegs) > 0 {
		words = append(words, "Braces of "+guysTo(pegs)+".")
	}
	return words
}

// fixed parts a task's stakes into those of guys and the pegs of braces.
func fixed(t crew.Task) (guys, pegs []ground.Stake) {
	for _, s := range t.Of.Stakes {
		switch {
		case s.Bay > 0:
			pegs = append(pegs, s)
		case s.Guy:
			guys = append(guys, s)
		}
	}
	return guys, pegs
}

// guysTo says to which stakes the guys of arches go: those of the first of arches alike by name.
func guysTo(stakes []ground.Stake) string {
	type alike struct {
		before string
		off    int // of the stakes' number from their arch's
		both   bool
	}
	var order []alike
	arches, names := map[alike][]int{}, map[alike]map[bool][]string{} // names by whether they are ahead
	for _, s := range stakes {
		k := alike{s.Before(), s.Number() - s.Arch, s.Way != ground.OneWay}
		if names[k] == nil {
			order = append(order, k)
			names[k] = map[bool][]string{}
		}
		if !slices.Contains(arches[k], s.Arch) {
			arches[k] = append(arches[k], s.Arch)
		}
		if ahead := s.Way == ground.Away; s.Arch == arches[k][0] {
			names[k][ahead] = append(names[k][ahead], s.String())
		}
	}
	var words []string
	for _, k := range order {
		n, to := arches[k], names[k]
		text := fmt.Sprintf("arch %d: %s", n[0], strings.Join(to[false], ", "))
		if k.both {
			text += " behind, " + strings.Join(to[true], ", ") + " ahead"
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
