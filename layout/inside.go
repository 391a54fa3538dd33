package layout

import "hoopwright/layout/measure"

// roomInside is the ground one walker takes, in square metres: people pass each other and turn freely from about 1.4 to 2.3 m² each (Fruin,
// Pedestrian Planning and Design, 1971, level of service C; from memory).
const roomInside = 2.0

// MostInside is how many people are let into the tunnel at once, one at the least: so many as walk freely in its clear inside width from the first arch
// to the last. A fire authority's figure, where there is one, wins.
func (p *Plan) MostInside() int {
	if len(p.Kinds) == 0 {
		return 1
	}
	width := p.Kinds[0].HeadWidth
	for _, k := range p.Kinds {
		width = min(width, k.HeadWidth)
	}
	area := max(0, width).Metres() * max(measure.Length(0), p.Spec.Tunnel.Length).Metres()
	return max(1, int(area/roomInside))
}
