package packet

import (
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// pitchStrip is a strip to wind by, for the wraps of one line of a chart and others of its pitch.
type pitchStrip struct {
	pitch measure.Length
	names [][2]string // the noun and the pipes
	on    int         // pipes
}

// pitchStrips are the plan's strips, that of most pipes first.
func (b *binder) pitchStrips() []pitchStrip {
	var list []pitchStrip
	for _, c := range b.wrapCharts() {
		for k, line := range c.lines {
			i := slices.IndexFunc(list, func(s pitchStrip) bool {
				return alikeTo(tenSteps, b.spec.Units, lights.CountTurns*s.pitch, lights.CountTurns*line.wrap.Pitch)
			})
			if i < 0 {
				i = len(list)
				list = append(list, pitchStrip{pitch: line.wrap.Pitch})
			}
			list[i].names = append(list[i].names, [2]string{c.noun(), c.named(k)})
			list[i].on += len(line.on)
		}
	}
	slices.SortStableFunc(list, func(p, q pitchStrip) int { return q.on - p.on })
	return list
}

// words say what a strip is for.
func (s pitchStrip) words() string {
	var words strings.Builder
	noun := ""
	for _, n := range s.names {
		switch {
		case n[0] == noun:
			words.WriteString(", " + n[1])
			continue
		case noun != "":
			words.WriteString("; ")
		}
		noun = n[0]
		words.WriteString(noun + ": " + n[1])
	}
	return words.String()
}

// fewTurns is the least that a strip is worth printing for.
const fewTurns = 2

// onEdges parts the strips: those along the outer edge of the lights' front and back, half an edge each where there are more than two, and those that found no room there.
func (b *binder) onEdges() (front, back, left []pitchStrip) {
	list := b.pitchStrips()
	high := b.size.H - clipZone - edgeMargin - footHigh
	if len(list) > 2 {
		high /= 2
	}
	for _, s := range list {
		switch e := (draw.EdgeStrip{Pitch: s.pitch}); {
		case e.Turns(high) < fewTurns || len(front)+len(back) == 4:
			left = append(left, s)
		case len(front) == 0 || len(back) > 0 && len(front) < 2:
			front = append(front, s)
		default:
			back = append(back, s)
		}
	}
	return front, back, left
}

// strips are the edges of the leaf's front and back; nil where it has no strip.
func (l lighting) strips() [2]*edge {
	front, back, _ := l.onEdges()
	return [2]*edge{l.edgeOf(front), l.edgeOf(back)}
}

func (l lighting) edgeOf(strips []pitchStrip) *edge {
	if len(strips) == 0 {
		return nil
	}
	return &edge{name: "pitch strip", wide: draw.EdgeStripWide, paint: func(page *paper.Page, box paper.Rect, left bool) {
		box.H /= paper.Length(len(strips))
		for i := range strips {
			s := strips[len(strips)-1-i]
			draw.EdgeStrip{Pitch: s.pitch, Words: clip(s.words(), paper.Floor, box.H-4), Left: left}.Draw(page, box)
			box.Y += box.H
		}
	}}
}
