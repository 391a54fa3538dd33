package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// names says on the picture what the crews call its parts, each once, on the first bay.
func (p *perspective) names() {
	b := place.NewBoard(p.page, p.room)
	name := func(at spot, text string, toward paper.Point) {
		if q, ok := p.at(at); ok {
			b.Label(place.Label{At: q, Text: text, Lettering: paper.Floor, Leader: place.Arrow, Pointed: true, Toward: toward})
		}
	}
	name(p.crown(1), "crown", paper.Point{X: -1, Y: 1})
	name(p.onPipe(1, p.kind(1).CrownTape/3), "leg", paper.Point{X: 1})
	stands := "stake"
	if p.plan.Spec.ArchOf(1).Foot != nil {
		stands = "foot"
	}
	name(p.foot(1, spec.Left), stands, paper.Point{X: 1, Y: -1})
	if p.guyed != nil {
		holds := "guy"
		if p.holds == ground.OfBrace {
			holds = "brace"
		}
		for _, share := range []float64{0.7, 0.3} { // low, where few lines run; else over the leg that it passes
			at := p.guyed[0].towards(p.guyed[1], share)
			if q, ok := p.at(at); ok && p.room.Inset(1).Contains(q) {
				name(at, holds, paper.Point{X: -1})
				break
			}
		}
	}
	if len(p.shown) > 1 {
		next := p.shown[1]
		name(p.foot(1, spec.Right).towards(p.foot(next, spec.Right), 0.7), "bay 1", paper.Point{X: -1})
		if len(p.plan.Ridge) > 0 {
			name(p.crown(1).towards(p.crown(next), 0.4), "ridge 1", paper.Point{X: 1, Y: 1})
		}
	}
}
