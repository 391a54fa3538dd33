package packet

import (
	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// legendHeight is what the legend takes on a page, its heading with it.
const legendHeight paper.Length = 74

// legend explains the diagram's symbols, and shows the one mistake that must never be mended with a lead.
func (f *flow) legend() {
	f.heading("How to read the diagrams", 64.2)
	room := f.room
	used := draw.LineLegend(place.NewBoard(f.page, room), room)
	f.gap(used + 3)
}

// facing shows the two ends that must never meet.
func (f *flow) facing() {
	box := f.take(24)
	draw.Facing(place.NewBoard(f.page, box), box)
}
