package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// tags makes the cards, one an arch with the ridge piece beyond it, and the strips that show the pitch of the wraps at full size.
func (b *binder) tags() []leaf {
	f := b.newFlow("Cut on the dashed lines, punch the hole, tie each to its arch's bundle, feet at the arrow.", "")
	var cards []draw.Tag
	width := (f.room.W - tagGap) / 2
	high := paper.Length(0)
	for _, a := range b.plan.Arches {
		t := b.tag(a)
		if head := draw.TagText().Wrap(t.Head[0], t.HeadRoom(width)); len(head) > 2 {
			t.Head = []string{head[0], clip(head[1]+" "+head[2], draw.TagText(), t.HeadRoom(width))}
		} else {
			t.Head = head
		}
		cards = append(cards, t)
		high = max(high, t.Height(width))
	}
	for pair := range slices.Chunk(cards, 2) {
		row := f.take(high + tagGap)
		for i, t := range pair {
			t.Draw(f.page, paper.Rect{X: row.X + paper.Length(i)*(width+tagGap), Y: row.Y, W: width, H: high})
		}
	}
	f.pitchStrips()
	return f.leaves
}

// tagGap is what lies between two cards: the scissors' way.
const tagGap paper.Length = 3.5

// tag is the card of one arch.
func (b *binder) tag(a arch.Arch) draw.Tag {
	n, u := len(b.plan.Arches), b.spec.Units
	t := draw.Tag{Name: fmt.Sprintf("ARCH %d", a.Number), Of: fmt.Sprintf("of %d", n), Head: []string{b.spec.Title},
		Down: "FEET THIS END DOWN"}
	if b.spec.Season != "" {
		t.Head[0] += ", " + b.spec.Season
	}
	line := func(word, text string) {
		if text != "" {
			t.Lines = append(t.Lines, draw.TagLine{Word: word, Text: text})
		}
	}
	along := b.plan.Ground.Stations[a.Number-1].Along
	where := u.Tape(along) + " along the walk from arch 1"
	if a.Number == 1 {
		where = "the entrance"
	} else if a.Number == n {
		where += ", the exit"
	}
	line("Place", where)
	whole := b.wound(lights.Part{Kind: lights.Arch, Number: a.Number})
	if a.Spec.OneStick {
		line("Pipe", lengths(a.Left, u))
		line("Wrap", whole)
	}
	for side, sticks := range [][]measure.Length{a.Left, a.Right} {
		leg := lights.Leg(spec.Side(side), a.Number)
		name, wound := fmt.Sprint(leg.Letter(), a.Number), b.wound(leg)
		if a.Spec.OneStick {
			line(name, wound)
			continue
		}
		line(name, joined(lengths(sticks, u), wound))
	}
	if !a.Spec.OneStick {
		line("Over all", whole)
	}
	if a.Number <= len(b.plan.Ridge) {
		piece := fmt.Sprintf("%s to arch %d", u.Cut(b.plan.Ridge[a.Number-1].Cut), a.Number+1)
		line("Ridge", joined(piece, b.wound(lights.Part{Kind: lights.Ridge, Number: a.Number})))
	}
	left, right := b.rowMarksOf(spec.Left), b.rowMarksOf(spec.Right)
	if left == right {
		line("Rows", left)
	} else {
		line("Rows L", left)
		line("Rows R", right)
	}
	line("Begin here", b.stringsAt(a.Number))
	line("Inside", "pipe names face in; next year too")
	return t
}

// lengths prints a leg's sticks from the foot up.
func lengths(sticks []measure.Length, u measure.System) string {
	var words []string
	for _, s := range sticks {
		words = append(words, u.Cut(s))
	}
	if len(words) > 1 {
		words[0] = "from the foot " + words[0]
	}
	return strings.Join(words, " + ")
}

// joined sets a second fact after a first where there is one.
func joined(first, second string) string {
	if second == "" {
		return first
	}
	return first + "; " + second
}

// wound says how a stretch is wound: with what, turns, pitch and where the prongs are.
func (b *binder) wound(on lights.Part) string {
	var words []string
	for _, w := range b.plan.Wraps {
		if w.On != on {
			continue
		}
		plug := map[bool]string{false: "at foot", true: "at crown"}[w.Crown]
		if on.Kind == lights.Ridge {
			plug = map[bool]string{false: "here", true: "at far end"}[w.Crown]
		}
		words = append(words, fmt.Sprintf("%s prongs %s, %.0f turns of %s", strings.Join(w.Strings, " and "), plug, w.Turns, b.spec.Units.Inches(w.Pitch)))
	}
	return strings.Join(words, "; ")
}

// rowMarksOf lists the row marks of a wall by tape from the foot, each with the letter of its string.
func (b *binder) rowMarksOf(side spec.Side) string {
	var marks []string
	kinds := draw.RowKinds(b.plan)
	for _, r := range b.plan.Lights.Rows {
		if r.Wall == side {
			marks = append(marks, draw.KindLetter(kinds, r.Kind)+" "+b.spec.Units.Inches(r.Tape))
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
			words = append(words, fmt.Sprint(s.Name, " ", s.Run))
		}
	}
	return strings.Join(words, ", ")
}

// pitchStrips draws a strip for each pitch that wraps are wound at.
func (f *flow) pitchStrips() {
	u := f.b.spec.Units
	check := measure.By(u, 4*measure.Inch, 100*measure.Millimetre)
	var done []string
	for _, g := range f.b.wrapGroups() {
		w := g.wrap
		p := draw.PitchStrip{Pitch: w.Pitch, Check: check, Units: u}
		key := fmt.Sprintf("%s, %s: one turn every %s", w.On.Kind.Noun(), w.Label.Name, u.Inches(w.Pitch))
		if slices.Contains(done, key) || p.Turns(f.room.W) < 1 {
			continue
		}
		if len(done) == 0 {
			f.heading("Pitch strips, full size: lay the lower edge along the pipe, each turn on a stroke", draw.PitchStripHeight+2)
		}
		done = append(done, key)
		p.Words = say.Capital(key)
		p.Draw(f.page, f.take(draw.PitchStripHeight+2.5))
		f.leaves[len(f.leaves)-1].scale = "Strips: full size"
	}
}
