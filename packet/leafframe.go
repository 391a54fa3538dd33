package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/fonts"
)

// The frame of a side. The top strip alone stands in the clip's zone.
const (
	stripTop  paper.Length = 8
	stripHigh paper.Length = 11
	footHigh  paper.Length = 14
)

// newSide starts a side and returns it with its body: what the frame leaves. A back is punched on the right. On a plan that must not be built a
// black band takes the top of the body.
func (b *binder) newSide(back bool) (*paper.Page, paper.Rect) {
	page := &paper.Page{Size: b.size}
	body := paper.Rect{X: punchMargin, Y: clipZone, W: b.size.W - punchMargin - edgeMargin, H: b.size.H - clipZone - edgeMargin - footHigh}
	if back {
		body.X = edgeMargin
	}
	return page, b.band(page, body)
}

// frameSide sets what stands on every side: the strip at the top, the strip at the foot.
func (b *binder) frameSide(s set, number, of int) {
	f := &paper.Page{Size: b.size}
	left := punchMargin
	if s.back {
		left = edgeMargin
	}
	width := b.size.W - punchMargin - edgeMargin
	b.topStrip(f, paper.Rect{X: left, Y: stripTop, W: width, H: stripHigh}, s)
	b.footStrip(f, paper.Rect{X: left, Y: b.size.H - edgeMargin - footHigh, W: width, H: footHigh}, s, number, of)
	s.page.Ops = append(f.Ops, s.page.Ops...)
	s.page.Name, s.page.Title = s.kind.word, s.title
}

// topStrip sets the leaf's number white on black at the outer edge, its name, whose it is, and on a side drawn to scale the bar to check the printer by.
func (b *binder) topStrip(f *paper.Page, box paper.Rect, s set) {
	tab := paper.Rect{X: box.Right() - stripHigh, Y: box.Y, W: stripHigh, H: stripHigh}
	if s.back {
		tab.X = box.X
		_, box = box.SplitLeft(stripHigh + 4)
	} else {
		box.W -= stripHigh + 4
	}
	f.Fill(paper.Box(tab), paper.Black)
	figure := paper.Lettering{Face: fonts.FigureBold, Size: 20, Colour: paper.White}
	f.Text(paper.Point{X: tab.X + tab.W/2, Y: tab.Y + 8}, paper.AtMiddle, fmt.Sprint(s.number), figure)
	base := box.Y + 8
	if s.toScale {
		checkBar(f, paper.Point{X: box.Right() - checkBarWidth, Y: box.Y})
		box.W -= checkBarWidth + 6
	}
	title, holder := paper.SheetName, paper.Body
	wide := func() bool { return title.Width(s.title)+4+holder.Width(s.kind.holder) > box.W }
	for title.Size > paper.Strong.Size && wide() { // whose it is stays
		title.Size--
	}
	for holder.Size > paper.Floor.Size && wide() {
		title.Size, holder.Size = min(title.Size, holder.Size-1), holder.Size-1
	}
	f.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, s.title, title)
	f.Text(paper.Point{X: box.Right(), Y: base}, paper.AtRight, s.kind.holder, holder)
}

// checkBarWidth is the bar's room with its words.
const checkBarWidth paper.Length = 50.8 + 16

// checkBar draws 2 in over 50 mm: whoever prints lays a rule on it.
func checkBar(f *paper.Page, at paper.Point) {
	for i, bar := range []struct {
		long  paper.Length
		words string
	}{{50.8, "2 in"}, {50, "50 mm"}} {
		y := at.Y + 3.6 + paper.Length(i)*5.4
		f.Line(paper.Point{X: at.X, Y: y}, paper.Point{X: at.X + bar.long, Y: y}, paper.Thin)
		for _, x := range []paper.Length{0, bar.long / 2, bar.long} {
			f.Line(paper.Point{X: at.X + x, Y: y - 1.4}, paper.Point{X: at.X + x, Y: y + 1.4}, paper.Thin)
		}
		f.Text(paper.Point{X: at.X + bar.long + 1.8, Y: y + 1.4}, paper.AtLeft, bar.words, paper.Floor)
	}
}

// footStrip sets two lines: which print of which plan this is, the title giving way first; then whom to turn to.
func (b *binder) footStrip(f *paper.Page, box paper.Rect, s set, number, of int) {
	f.Line(paper.Point{X: box.X, Y: box.Y + 1.2}, paper.Point{X: box.Right(), Y: box.Y + 1.2}, paper.Thick)
	const first, second = 6.6, 12
	bold := paper.Strong.Sized(11)
	plan := fmt.Sprintf(" · plan %s of %s · %s · page %d of %d", b.plate, b.date.Format("2 Jan 2006"), s.place(), number, of)
	title := clip(b.spec.Title, bold, box.W-paper.Floor.Width(plan))
	f.Text(paper.Point{X: box.X, Y: box.Y + first}, paper.AtLeft, title, bold)
	f.Text(paper.Point{X: box.X + bold.Width(title), Y: box.Y + first}, paper.AtLeft, plan, paper.Floor)
	f.Text(paper.Point{X: box.X, Y: box.Y + second}, paper.AtLeft, clip(strings.Join(b.turnTo(), " · "), paper.Floor, box.W), paper.Floor)
}

// turnTo lists where this is and whom to turn to, as far as the spec says.
func (b *binder) turnTo() []string {
	var list []string
	site := b.spec.Site
	add := func(lead, value string) {
		if value != "" {
			list = append(list, lead+value)
		}
	}
	add("", site.Address)
	add("emergency ", site.Emergency)
	for _, p := range site.Places {
		if p.For == "power off" {
			add("power off at ", p.Name)
		}
	}
	add("ask ", strings.TrimSpace(b.spec.Crew.Ask.Name+" "+b.spec.Crew.Ask.Phone))
	return list
}
