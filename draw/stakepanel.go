package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

// scaleBar keeps a free area by the edges of the picture for the bar of the scale with its words, the nearest to the top at the right first, so that no label goes there. Where
// there is none the scale itself stands over the sheet.
func (d *stakeSheet) scaleBar() {
	const high, step, apart = 14, 4, 1.5
	for _, wide := range []paper.Length{66, 50} {
		for in := paper.Length(0); in+wide <= d.room.W; in += step {
			for _, x := range []paper.Length{d.room.Right() - wide - in, d.room.X + in} {
				for y := d.room.Y; y+high <= d.room.Bottom(); y += step {
					if r := (paper.Rect{X: x, Y: y, W: wide, H: high}); d.b.Free(r.Inset(-apart)) {
						d.b.Keep(r.Inset(-apart))
						d.bar = r
						return
					}
				}
			}
		}
	}
}

// drawScaleBar draws the bar on white where it found room: last, so that no line shows through.
func (d *stakeSheet) drawScaleBar() {
	if d.bar == (paper.Rect{}) {
		return
	}
	unit, word, figures := float64(measure.Foot), "ft", ""
	if d.units() == measure.Metric {
		unit, word, figures = float64(measure.Metre), "m", ". Figures in mm"
	}
	d.b.Fill(paper.Box(d.bar), paper.White)
	place.GroundBar(d.b.Page, paper.Point{X: d.bar.X, Y: d.bar.Y}, d.bar.W-3, d.Scale, unit, word)
	d.b.Page.Text(paper.Point{X: d.bar.X + 3, Y: d.bar.Bottom() - 1.2}, paper.AtLeft, d.Scale.Words+figures, paper.Floor)
}
