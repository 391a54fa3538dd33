package packet

import (
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// mostProfiles is how many different arches get a picture; what others differ by is in the table of figures.
const mostProfiles = 6

func (b *binder) archProfiles() []leaf {
	f := b.newFlow("Arch 1 as it must stand, and what to move if it does not. The others go by it.",
		"two tapes, string, marker, mallet, stepladder; three people, gloves, eye protection.")
	drawn := archGroups(b.plan.Kinds)
	drawn = drawn[:min(len(drawn), mostProfiles)]
	first := b.plan.Kinds[0]
	words := []string{b.legend(first), b.bendWords()} // under the first picture, or where next there is room
	if s := b.seasonWords(first); s != "" {
		words = append(words, s)
	}
	for i, g := range drawn {
		if i > 0 {
			f.turn()
		}
		b.profile(f, g)
		words = f.fill(words)
	}
	f.turn()
	b.archFindings(f)
	b.raisingWords(f, first)
	words = f.fill(words)
	f.turn() // what is measured, and what to do when it is off, stand on one page
	b.holdPoint(f, drawn)
	b.differences(f, first)
	b.archFigures(f)
	f.turn() // what the organiser chooses by
	b.howItStands(f)
	b.stakeDepths(f)
	for _, s := range words {
		f.gap(1.5)
		f.text(s, paper.Body)
	}
	b.archSizes(f)
	return f.leaves
}

// fill sets as many of the paragraphs, in order, as the page has room for, and returns the others.
func (f *flow) fill(paragraphs []string) []string {
	const above = 1.5
	l := paper.Body
	for i, s := range paragraphs {
		if h := paper.Length(len(l.Wrap(s, f.room.W))) * l.Leading(); h+above > f.room.H {
			return paragraphs[i:]
		}
		f.gap(above)
		f.text(s, l)
	}
	return nil
}

// profile draws one picture under its heading.
func (b *binder) profile(f *flow, g archGroup) {
	title := say.Capital(say.Numbered("arch", g.numbers())) + ", seen from the entrance"
	if len(g) > 1 {
		title += "; figures of " + say.Numbered("arch", g[0].Numbers)
	}
	f.text(clip(title, paper.Heading, f.room.W), paper.Heading)
	p := draw.Profile{Kind: g[0], Units: b.spec.Units, OpeningWidth: b.spec.Tunnel.OpeningWidth, OpeningHeight: b.spec.Tunnel.OpeningHeight}
	p.Rows, p.RowsWord = b.rowMarks()
	series := draw.Scales(b.spec.Units)
	s := p.Scale(series, f.room)
	f.scale(s)
	p.Draw(f.page, f.take(p.Height(s)), s)
}

// rowMarks returns the tape marks of the rows of lights and the legs that have them.
func (b *binder) rowMarks() (marks []measure.Length, word string) {
	var walls []string
	for _, r := range b.plan.Lights.Rows {
		if name := r.Wall.String(); len(walls) == 0 || walls[len(walls)-1] != name {
			walls, marks = append(walls, name), nil
		}
		marks = append(marks, r.Tape)
	}
	if len(walls) > 1 {
		return marks, "rows, both legs"
	}
	return marks, "rows, " + strings.Join(walls, "") + " leg"
}
