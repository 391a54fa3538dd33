package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// tag is the card of one arch, with the ridge piece beyond it.
func (b *binder) tag(a arch.Arch) draw.Tag {
	u := b.spec.Units
	t := draw.Tag{Name: fmt.Sprintf("ARCH %d", a.Number), Of: fmt.Sprintf("of %d", len(b.plan.Arches)), Head: b.spec.Title, Down: "FEET THIS END"}
	if b.spec.Season != "" {
		t.Head += ", " + b.spec.Season
	}
	pipe := func(name, sticks string, on lights.Part) {
		turns, strings := b.wound(on)
		if sticks != "" || turns != "" {
			t.Pipes = append(t.Pipes, draw.TagPipe{Name: name, Sticks: sticks, Turns: turns, Strings: strings})
		}
	}
	if a.Spec.OneStick {
		pipe("whole", lengths(a.Left, u), lights.Part{Kind: lights.Arch, Number: a.Number})
	} else {
		for side, sticks := range [][]measure.Length{a.Left, a.Right} {
			leg := lights.Leg(spec.Side(side), a.Number)
			pipe(fmt.Sprint(leg.Letter(), a.Number), lengths(sticks, u), leg)
		}
		pipe("both", "", lights.Part{Kind: lights.Arch, Number: a.Number})
	}
	if a.Number <= len(b.plan.Ridge) {
		pipe(fmt.Sprintf("ridge %d", a.Number), u.Cut(b.plan.Ridge[a.Number-1].Cut), lights.Part{Kind: lights.Ridge, Number: a.Number})
	}
	line := func(word, text string) {
		if text != "" {
			t.Lines = append(t.Lines, draw.TagLine{Word: word, Text: text})
		}
	}
	line("guys", b.tiedTo(a, false))
	line("braces", b.tiedTo(a, true))
	if left, right := b.rowMarksOf(spec.Left), b.rowMarksOf(spec.Right); left == right {
		line("rows", left)
	} else {
		line("rows L", left)
		line("rows R", right)
	}
	line("begin", b.stringsAt(a.Number))
	return t
}

// tagFacts are the figures of a card.
func tagFacts(t draw.Tag) (facts []block.Fact) {
	for _, p := range t.Pipes {
		facts = append(facts, block.Fact{What: "sticks of " + p.Name + ", " + t.Name, Value: p.Sticks})
	}
	for _, l := range t.Lines {
		facts = append(facts, block.Fact{What: l.Word + ", " + t.Name, Value: l.Text})
	}
	return facts
}

// lengths prints a leg's sticks from the foot up.
func lengths(sticks []measure.Length, u measure.System) string {
	var words []string
	for _, s := range sticks {
		words = append(words, u.Cut(s))
	}
	return strings.Join(words, " + ")
}

// wound says how a stretch is wound: the turns, and the strings with the end their prongs are at.
func (b *binder) wound(on lights.Part) (turns, with string) {
	var counts, words []string
	for _, w := range b.plan.Wraps {
		if w.On != on {
			continue
		}
		plug := map[bool]string{false: "foot", true: "crown"}[w.Crown]
		if on.Kind == lights.Ridge {
			plug = fmt.Sprintf("arch %d", map[bool]int{false: on.Number, true: on.Number + 1}[w.Crown])
		}
		n, _ := w.Counted(b.spec.Units)
		counts = append(counts, halves(n))
		words = append(words, fmt.Sprintf("%s %s", strings.Join(w.Strings, ", "), plug))
	}
	return strings.Join(counts, " + "), strings.Join(words, "; ")
}

// tiedTo says how many guys, or braces, hold each leg of an arch, and where by tape from the foot.
func (b *binder) tiedTo(a arch.Arch, braces bool) string {
	u := b.spec.Units
	var tied []ground.Stake // of the left leg; the right one has as many
	for _, s := range b.plan.Stakes {
		if s.Guy && s.Arch == a.Number && s.Side == spec.Left && s.Bay > 0 == braces {
			tied = append(tied, s)
		}
	}
	if len(tied) == 0 {
		return ""
	}
	left, right := lights.Knot(u, a.Kind, spec.Left, tied[0].Tied), lights.Knot(u, a.Kind, spec.Right, tied[0].Tied)
	if left == right {
		return fmt.Sprintf("%d a leg, %s up", len(tied), u.Inches(left))
	}
	return fmt.Sprintf("%d a leg, L %s up, R %s up", len(tied), u.Inches(left), u.Inches(right))
}

// rowMarksOf lists the row marks of a wall by tape from the foot, each with the dots of its kind of string.
func (b *binder) rowMarksOf(side spec.Side) string {
	var marks []string
	kinds := draw.StringKinds(b.plan)
	for _, r := range b.plan.Lights.Rows {
		if r.Wall == side {
			marks = append(marks, draw.KindDots(kinds, r.Kind)+"\u00a0"+b.spec.Units.Inches(r.Tape))
		}
	}
	return strings.Join(marks, ", ")
}

// stringsAt lists the strings of rows and drops that begin at an arch or in the bay beyond it, with what they go on.
func (b *binder) stringsAt(number int) string {
	var words []string
	for _, s := range b.plan.Strings {
		at := s.From.Arch
		if s.From.Row.Bay > 0 {
			at = s.From.Row.Bay
			if s.From.Row.Share > 1-1e-9 {
				at++
			}
		}
		if at == number && !s.Run.Wound() {
			word := fmt.Sprint(s.Name, " ", s.Run)
			if s.From.At.Spot == lights.InBay {
				word += fmt.Sprintf(", bay %d", s.From.Row.Bay)
			}
			words = append(words, word)
		}
	}
	return strings.Join(words, "; ")
}
