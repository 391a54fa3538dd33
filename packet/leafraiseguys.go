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
	bare, facts := "", []block.Fact(nil)
	if r.Wrapped {
		bare = r.u.Inches(practice.BareBand(r.u))
		facts = []block.Fact{{What: "bare band at a guy", Value: bare}}
	}
	do := "Flat" + r.underWire() + ": " + r.guysALeg() + ". Clamp below each knot, tightener at far end."
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
		guys := say.Count(k+1, "ribboned guy")
		if len(words) > 0 {
			guys = fmt.Sprint(k + 1)
		}
		switch {
		case len(list) == 0:
		case len(list) > mostNamed:
			words = append(words, fmt.Sprintf("%s a leg on %s between", guys, say.Count(len(list), "arch")))
		case len(words) > 0:
			words = append(words, guys+" a leg on "+say.Numbers(list))
		default:
			words = append(words, guys+" a leg on "+say.Numbered("arch", list))
		}
	}
	return strings.Join(words, ", ")
}

// heldTo are the stakes of an arch's guys and the pegs of its braces, where they are fixed as soon as it stands.
func (r raising) heldTo(number int) (stakes []ground.Stake) {
	for _, action := range []crew.Action{crew.StretchGuys, crew.FixBraces} {
		if t, ok := r.tasks.first(action, number); ok {
			stakes = append(stakes, t.Of.Stakes...)
		}
	}
	return stakes
}

// fixing says to which stakes guys and braces go.
func (r raising) fixing(stakes []ground.Stake) string {
	var words []string
	guys, pegs := fixed(stakes)
	if len(guys) > 0 {
		words = append(words, r.fixedTo("guys", guys)+".")
	}
	if len(pegs) > 0 {
		words = append(words, r.fixedTo("braces", pegs)+".")
	}
	return strings.Join(words, " ")
}

// guyed is what more is told of guys: of the first of all where on their stakes, and that they are no more than snug, for taut ones would pull over an arch that nothing holds from the
// other side yet; of those beside a way in or out the nets.
func (r raising) guyed(h heldAlike) (words string) {
	stake := r.Plan.Stakes[slices.IndexFunc(r.Plan.Stakes, func(s ground.Stake) bool { return s.Kind() == ground.OfGuy })]
	if slices.Contains(slices.Concat(h.names[0], h.names[1]), stake.String()) {
		words = ", " + knotAt(r.u, stake) + ", snug"
	}
	if r.Plan.Spec.Netted(h.arches[0]) {
		words += ", nets on"
	}
	return words
}

// knotAt says where on its stake a guy is tied.
func knotAt(u measure.System, s ground.Stake) string {
	switch {
	case s.Base: // on bags with handles
		return "through every handle"
	case practice.TiedLow(s.Length-s.Depth, u):
		return "at the ground"
	}
	return "under the caps"
}

// fixed parts stakes into those of guys and the pegs of braces.
func fixed(stakes []ground.Stake) (guys, pegs []ground.Stake) {
	for _, s := range stakes {
		switch s.Kind() {
		case ground.OfBrace:
			pegs = append(pegs, s)
		case ground.OfGuy:
			guys = append(guys, s)
		}
	}
	return guys, pegs
}

// endOn says before the names of ends on weights what is there: bags, or a bar in a socket.
func endOn(s ground.Stake) string {
	if s.Steel() {
		return "bars "
	}
	return "weights "
}

// heldAlike are arches held by guys, or by braces, the same way or ways, and the stakes of the first: one way or toward arch 1, and on.
type heldAlike struct {
	before string
	arches []int
	names  [2][]string
	named  bool // their stakes are told by their ways
}

// alikeOf gathers arches by how stakes hold them.
func alikeOf(stakes []ground.Stake) (list []heldAlike) {
	var each []heldAlike // of one arch
	for _, s := range stakes {
		i := slices.IndexFunc(each, func(h heldAlike) bool { return h.before == s.Before() && h.arches[0] == s.Arch })
		if i < 0 {
			i = len(each)
			each = append(each, heldAlike{before: s.Before(), arches: []int{s.Arch}, named: s.Way != ground.OneWay})
		}
		way := 0
		if s.Way == ground.Away {
			way = 1
		}
		each[i].names[way] = append(each[i].names[way], s.String())
	}
	for _, h := range each {
		i := slices.IndexFunc(list, func(o heldAlike) bool {
			return o.before == h.before && o.named == h.named && len(o.names[0]) == len(h.names[0]) && len(o.names[1]) == len(h.names[1])
		})
		if i < 0 {
			list = append(list, h)
			continue
		}
		list[i].arches = append(list[i].arches, h.arches...)
	}
	return list
}

// fixedTo says to which stakes what holds arches goes: those of the first of arches alike by name. The first two arches have steps of their own.
func (r raising) fixedTo(what string, stakes []ground.Stake) string {
	var words []string
	for i, h := range alikeOf(stakes) {
		text := "to "
		if stakes[0].Base {
			text += endOn(stakes[0])
		}
		if i == 0 {
			text = what + " " + text
		}
		if h.arches[0] > r.stand[min(1, len(r.stand)-1)].Number {
			text = fmt.Sprintf("arch %d: ", h.arches[0]) + text
		}
		var ways []string
		for way, toward := range r.toward() {
			if names := h.names[way]; names != nil {
				if !h.named {
					toward = ""
				}
				ways = append(ways, strings.Join(names, ", ")+toward)
			}
		}
		text += strings.Join(ways, ", ")
		switch n := len(h.arches) - 1; {
		case n >= mostNamed:
			text += fmt.Sprintf(" (%d more alike)", n)
		case n > 0:
			text += fmt.Sprintf(" (%s alike)", say.Numbers(h.arches[1:]))
		}
		if stakes[0].Kind() == ground.OfGuy {
			text += r.guyed(h)
		}
		words = append(words, text)
	}
	return say.Capital(strings.Join(words, "; "))
}

// toward names both ways along the walk, by the arches that stand at its ends.
func (r raising) toward() [2]string {
	if len(r.stand) == 1 {
		return [2]string{" toward the entrance", " toward the exit"}
	}
	return [2]string{fmt.Sprintf(" toward arch %d", r.stand[0].Number), fmt.Sprintf(" toward arch %d", r.stand[len(r.stand)-1].Number)}
}
