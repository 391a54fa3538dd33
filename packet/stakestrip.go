package packet

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/layout/spec"
)

// The pocket strip: panels side by side, cut out as one and folded between.
const (
	panelsAcross                 = 4
	panelRow        paper.Length = 6.8
	panelNote       paper.Length = 4.8 // more, where a stake stands off its row's string
	panelHead       paper.Length = 6.4
	panelPad        paper.Length = 2.5
	mostPanelHeight paper.Length = 190
)

// stripRow is a line of the pocket strip.
type stripRow struct{ stake, distance, note string }

func (r stripRow) height() paper.Length {
	if r.note != "" {
		return panelRow + panelNote
	}
	return panelRow
}

// stripRows are the running distances of a straight row in their order, for left and right alike, every stretch of the tape under its zero. There are none on a
// bend, where no tape lies along the row.
func (w *stakeWords) stripRows() (rows []stripRow) {
	if !w.ground.Straight || w.lone() {
		return nil
	}
	parts := w.lengths()
	zero := 0
	for _, s := range w.walk() {
		if s.heading != "" || s.Side == spec.Right {
			continue
		}
		if s.zero != zero && len(parts) > 1 {
			rows = append(rows, stripRow{stake: fmt.Sprintf("Zero at %d", s.zero)})
		}
		zero = s.zero
		rows = append(rows, stripRow{s.Pair(), w.running(s), w.beside(s.Stake)})
	}
	return rows
}

// strip sets the pocket strip in panels, on the rest of this page if that holds it. It reports whether it did; where must is set it turns to pages of its own.
func (w *stakeWords) strip(must bool) bool {
	rows := w.stripRows()
	if len(rows) == 0 {
		return true
	}
	for {
		most := min(mostPanelHeight, w.room.H-w.height(w.room.W, stripHead)-0.1)
		for across := 1; across <= panelsAcross; across++ {
			if panels, rest := panelled(rows, across, most); len(rest) == 0 {
				w.drawStrip(panels)
				return true
			}
		}
		if !must {
			return false
		}
		if most > mostPanelHeight/2 {
			var panels [][]stripRow
			panels, rows = panelled(rows, panelsAcross, most)
			w.drawStrip(panels)
		}
		w.turn()
	}
}

// stripHead says what the strip is and what to do with it.
func stripHead(f *flow) {
	f.gap(2)
	f.text("Pocket strip for the tape: cut out, fold along the dashes. L and R row alike.", paper.Strong)
	f.gap(1)
}

// panelled shares rows among panels no higher than most, as evenly as they go, and returns what is left over.
func panelled(rows []stripRow, across int, most paper.Length) (panels [][]stripRow, rest []stripRow) {
	total := panelHead
	for _, r := range rows {
		total += r.height()
	}
	for high := panelHead + (total-panelHead)/paper.Length(across); ; high += 1 {
		panels, rest = nil, rows
		for range across {
			h, n := panelHead, 0
			for n < len(rest) && h+rest[n].height() <= min(high, most)+0.01 {
				h += rest[n].height()
				n++
			}
			if n > 0 {
				panels = append(panels, rest[:n])
			}
			rest = rest[n:]
		}
		if len(rest) == 0 || high >= most {
			return panels, rest
		}
	}
}

// drawStrip draws the panels in one outline to cut along, with dashed lines to fold along.
func (w *stakeWords) drawStrip(panels [][]stripRow) {
	stripHead(w.flow)
	wide := w.room.W / panelsAcross
	high := paper.Length(0)
	for _, p := range panels {
		h := panelHead
		for _, r := range p {
			h += r.height()
		}
		high = max(high, h)
	}
	box := w.take(high)
	box.W = wide * paper.Length(len(panels))
	page := w.page
	for i, p := range panels {
		x, right := box.X+wide*paper.Length(i), box.X+wide*paper.Length(i+1)
		if i > 0 {
			page.Line(paper.Point{X: x, Y: box.Y}, paper.Point{X: x, Y: box.Bottom()}, paper.Hidden)
		}
		y := box.Y + panelHead
		page.Text(paper.Point{X: x + panelPad, Y: y - 2}, paper.AtLeft, "Stake", paper.Strong.Sized(11))
		page.Text(paper.Point{X: right - panelPad, Y: y - 2}, paper.AtRight, "From zero", paper.Strong.Sized(11))
		for _, r := range p {
			page.Line(paper.Point{X: x, Y: y}, paper.Point{X: right, Y: y}, paper.Thin)
			base := y + 5.2
			if r.distance == "" {
				page.Text(paper.Point{X: x + panelPad, Y: base}, paper.AtLeft, r.stake, paper.Strong)
			} else {
				page.Text(paper.Point{X: x + panelPad, Y: base}, paper.AtLeft, r.stake, paper.Cell)
				page.Text(paper.Point{X: right - panelPad, Y: base}, paper.AtRight, r.distance, paper.Cell)
			}
			if r.note != "" {
				page.Text(paper.Point{X: right - panelPad, Y: base + panelNote}, paper.AtRight, r.note, paper.Floor)
			}
			y += r.height()
		}
	}
	page.Stroke(paper.Box(box), paper.Thin)
}
