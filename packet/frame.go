package packet

import (
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/finding"
)

// What is kept clear: the clip at the top, the punched edge at the left, what a printer cannot reach elsewhere.
const (
	clipZone    paper.Length = 22
	punchMargin paper.Length = 20
	edgeMargin  paper.Length = 8
)

// bandRise is how far the DO NOT BUILD band reaches above the live area, up to the leaf's name: a plan that must be mended and printed again
// should fall into the same sides as the mended one.
const bandRise paper.Length = 2.5

// band prints DO NOT BUILD with what must be fixed across the top of the live area and returns what is left of it.
func (b *binder) band(page *paper.Page, live paper.Rect) paper.Rect {
	var titles []string
	for _, code := range finding.MustFixes(b.plan.Findings) {
		titles = append(titles, titleOf(code))
	}
	if len(titles) == 0 {
		return live
	}
	l := paper.Strong.In(paper.White)
	lines := l.Wrap("DO NOT BUILD. Must fix first: "+strings.Join(titles, "; "), live.W-6)
	live.Y, live.H = live.Y-bandRise, live.H+bandRise
	box, rest := live.SplitTop(paper.Length(len(lines))*l.Leading() + 1)
	page.Fill(paper.Box(box), paper.Black)
	page.Paragraph(paper.Rect{X: box.X + 3, Y: box.Y + 0.5, W: box.W - 6, H: box.H}, strings.Join(lines, "\n"), l)
	_, rest = rest.SplitTop(1)
	return rest
}

// clip shortens a text to the width, ending in "…".
func clip(s string, l paper.Lettering, width paper.Length) string {
	if l.Width(s) <= width {
		return s
	}
	runes := []rune(s)
	for len(runes) > 0 && l.Width(string(runes)+"…") > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}
