package packet

import (
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// pitchStrip is a strip to wind by, for all wraps of a pitch as printed.
type pitchStrip struct {
	ten   string
	pitch measure.Length
	on    []lights.Part
}

// pitchStrips are the plan's strips, that of most pipes first.
func (b *binder) pitchStrips() []pitchStrip {
	var list []pitchStrip
	for _, w := range b.plan.Wraps {
		ten := b.spec.Units.Inches(tenTurns * w.Pitch)
		i := slices.IndexFunc(list, func(s pitchStrip) bool { return s.ten == ten })
		if i < 0 {
			i = len(list)
			list = append(list, pitchStrip{ten: ten, pitch: w.Pitch})
		}
		list[i].on = append(list[i].on, w.On)
	}
	slices.SortStableFunc(list, func(p, q pitchStrip) int { return len(q.on) - len(p.on) })
	return list
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
			draw.EdgeStrip{Pitch: s.pitch, Words: clip(onParts(s.on), paper.Floor, box.H-4), Left: left}.Draw(page, box)
			box.Y += box.H
		}
	}}
}
