package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
)

// panel is a small box within the picture: its room is kept early, so that no label goes there, and it is drawn last on white, so that no
// line shows through.
type panel struct {
	room  paper.Rect
	frame bool
	draw  func(room paper.Rect)
}

// corners finds room for the bar of the scale.
func (d *stakeSheet) corners() {
	if !d.scaleBar(66) {
		d.scaleBar(50) // the scale itself stands over the sheet
	}
}

// scaleBar finds room for the bar of the scale, with its words.
func (d *stakeSheet) scaleBar(wide paper.Length) bool {
	unit, word, figures := float64(measure.Foot), "ft", ""
	if d.units() == measure.Metric {
		unit, word, figures = float64(measure.Metre), "m", ". Figures in mm"
	}
	return d.panel(wide, 14, false, func(r paper.Rect) {
		place.GroundBar(d.b.Page, paper.Point{X: r.X, Y: r.Y}, wide-3, d.Scale, unit, word)
		d.b.Page.Text(paper.Point{X: r.X + 3, Y: r.Bottom() - 1.2}, paper.AtLeft, d.Scale.Words+figures, paper.Floor)
	})
}

// panel keeps a free area by the edges of the picture, the nearest to the top at the right first, and reports whether there is one.
func (d *stakeSheet) panel(w, h paper.Length, frame bool, draw func(r paper.Rect)) bool {
	const step, apart = 4, 1.5
	for in := paper.Length(0); in+w <= d.room.W; in += step {
		for _, x := range []paper.Length{d.room.Right() - w - in, d.room.X + in} {
			for y := d.room.Y; y+h <= d.room.Bottom(); y += step {
				if r := (paper.Rect{X: x, Y: y, W: w, H: h}); d.b.Free(r.Inset(-apart)) {
					d.b.Keep(r.Inset(-apart))
					d.later = append(d.later, panel{r, frame, draw})
					return true
				}
			}
		}
	}
	return false
}

func (d *stakeSheet) drawPanels() {
	for _, p := range d.later {
		d.b.Fill(paper.Box(p.room), paper.White)
		if p.frame {
			d.b.Stroke(paper.Box(p.room), paper.Thin)
		}
		p.draw(p.room)
	}
}
