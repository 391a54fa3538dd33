package packet

import (
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// pitchStrip is a strip to wind by, for all lines of charts of its pitch.
type pitchStrip struct {
	pitch measure.Length
	told  []string // how those lines tell it
	on    int      // pipes
}

// pitchStrips are the plan's strips, that of most pipes first.
func (l lighting) pitchStrips() []pitchStrip {
	var list []pitchStrip
	for _, c := range l.wrapCharts() {
		for _, line := range c.lines {
			i := slices.IndexFunc(list, func(s pitchStrip) bool {
				return l.near(tenSteps, lights.CountTurns*s.pitch, lights.CountTurns*line.wrap.Pitch)
			})
			if i < 0 {
				i = len(list)
				list = append(list, pitchStrip{pitch: line.wrap.Pitch})
			}
			if what, ten := l.tenTurns(line.wrap); !slices.Contains(list[i].told, what+ten) {
				list[i].told = append(list[i].told, what+ten)
			}
			list[i].on += len(line.on)
		}
	}
	slices.SortStableFunc(list, func(p, q pitchStrip) int { return q.on - p.on })
	return list
}

// words say what a strip is for, as the charts do.
func (s pitchStrip) words() string { return "1 turn a mark: " + say.Or(s.told) }

// fewTurns is the least that a strip is worth printing for.
const fewTurns = 2

// onEdges parts the strips along the outer edges of the lights' front and back, half an edge each where there are more than two. One that finds no room there is
// wound by tape.
func (l lighting) onEdges() (front, back []pitchStrip) {
	list := l.pitchStrips()
	high := l.high
	if len(list) > 2 {
		high /= 2
	}
	for _, s := range list {
		switch e := (draw.EdgeStrip{Pitch: s.pitch}); {
		case e.Turns(high) < fewTurns || len(front)+len(back) == 4:
			continue
		case len(front) == 0 || len(back) > 0 && len(front) < 2:
			front = append(front, s)
		default:
			back = append(back, s)
		}
	}
	return front, back
}

// strips are the edges of the leaf's front and back; nil where it has no strip.
func (l lighting) strips() [2]*edge {
	front, back := l.onEdges()
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
			draw.EdgeStrip{Pitch: s.pitch, Words: s.words(), Left: left}.Draw(page, box)
			box.Y += box.H
		}
	}}
}
