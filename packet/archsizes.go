package packet

import (
	"slices"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// archSizes draws what the sticks make over other spans, at the foot of the last of the sheet's pages that has room for it. It asks for no page
// of its own: the crew at the arch does not need it, the organiser does before buying.
func (b *binder) archSizes(f *flow) {
	const above, below, words = 4, 1, 2 // words: so many lines
	least := above + paper.Heading.Leading() + words*paper.Body.Leading() + below + draw.SizeChartLeast
	for _, l := range slices.Backward(f.leaves) {
		room := b.foot(l.page)
		if room.H < least {
			continue
		}
		chart, text, ok := b.sizeChart()
		if !ok {
			return
		}
		bottom := room.Bottom()
		room.Y = l.page.Paragraph(paper.Rect{X: room.X, Y: room.Y + above, W: room.W}, "Before buying: the same sticks over other spans", paper.Heading)
		room.Y = l.page.Paragraph(room, text, paper.Body) + below
		room.H = min(draw.SizeChartHeight, bottom-room.Y)
		chart.Draw(l.page, room)
		return
	}
}

// sizeChart makes the chart of the first arch and the words over it; not ok where there is nothing to choose from.
func (b *binder) sizeChart() (chart draw.SizeChart, text string, ok bool) {
	k := b.plan.Kinds[0]
	if _, _, solved := k.Inside(k.Crown / 2); !solved { // only drawn
		return chart, "", false
	}
	spans := arch.SpansAbout(k.Span, b.spec.Units)
	spans = slices.DeleteFunc(spans, func(s measure.Length) bool { return s > k.Length })
	chart = draw.SizeChart{Sizes: b.plan.Sizes(k, spans), Chosen: k, Units: b.spec.Units}
	crowns, widths := chart.Shows()
	text = "Solid line H: crown height. "
	if widths {
		text += "Broken line W: clear width at head height. "
	}
	text += "The dots are this arch. Hatched spans cannot be built: the pipe would bend too tight, or no arch stands."
	return chart, text, crowns
}

// foot returns what is free at the foot of a page, over the whole width of its live area.
func (b *binder) foot(page *paper.Page) paper.Rect {
	_, live := b.newPage()
	board := place.NewBoard(page, live)
	const step = 1
	free := paper.Rect{X: live.X, Y: live.Bottom(), W: live.W}
	for free.H+step <= live.H {
		next := paper.Rect{X: live.X, Y: free.Y - step, W: live.W, H: free.H + step}
		if !board.Free(next) {
			break
		}
		free = next
	}
	return free
}
