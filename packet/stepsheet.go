package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
)

// Columns of a step, from the left of the live area: its number, its tick box, its words, who and how long.
const (
	stepInset   paper.Length = 3 // of all steps, so that those in a hold's box stand in line with the others
	numberWidth paper.Length = 11
	tickWidth   paper.Length = 9
	whoWidth    paper.Length = 24
	labelWidth  paper.Length = 17 // "Want", "If not"
	holdPad     paper.Length = 2
	blockHead   paper.Length = 9.5
	headStrips               = 5   // of a long step, that are kept together
	longStep                 = 0.4 // of a page: a step that is no longer is not broken
)

// strip is a part of a step that is not broken between pages.
type strip struct {
	height paper.Length
	draw   func(page *paper.Page, box paper.Rect)
}

func heightOf(strips []strip) paper.Length {
	h := paper.Length(0)
	for _, s := range strips {
		h += s.height
	}
	return h
}

// stepSheet sets steps into a flow.
type stepSheet struct {
	*flow
	title string // of the block, repeated where it goes on overleaf
}

// freshHeight is the height of a page's whole live area.
func (f *flow) freshHeight() paper.Length {
	_, live := f.b.newPage()
	return live.H
}

// blockHead sets the head of a block: its name on the left, people and time on the right, over a thick rule.
func (s stepSheet) blockHead(title, right string) {
	box := s.take(blockHead)
	base := box.Bottom() - 2.6
	s.page.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, title, paper.Heading.Sized(16))
	s.page.Text(paper.Point{X: box.Right(), Y: base}, paper.AtRight, right, paper.Strong)
	s.page.Line(paper.Point{X: box.X, Y: box.Bottom()}, paper.Point{X: box.Right(), Y: box.Bottom()}, paper.Emphasis)
}

// overleaf turns the page and says what goes on there.
func (s stepSheet) overleaf() {
	s.turn()
	s.blockHead(s.title+", going on", "")
	s.gap(stepGap)
}

// set draws a step, on the next page where it does not fit on this. Only a long one is broken, between its readings.
func (s stepSheet) set(step crew.Step) {
	strips := s.strips(step)
	pad := paper.Length(0)
	if step.Hold {
		pad = holdPad
	}
	if whole := heightOf(strips) + 2*pad; whole > s.room.H {
		fresh := s.freshHeight() - blockHead - stepGap
		head := heightOf(strips[:min(headStrips, len(strips))]) + 2*pad
		if s.room.H < fresh && (whole < longStep*fresh || s.room.H < head || len(step.Readings) == 0) {
			s.overleaf()
		}
	}
	for len(strips) > 0 {
		n, h := 0, 2*pad
		for n < len(strips) && h+strips[n].height <= s.room.H {
			h += strips[n].height
			n++
		}
		if n == 0 { // a strip taller than the page cannot be: words are short; draw it all the same
			n, h = 1, h+strips[0].height
		}
		s.draw(step, strips[:n], pad, h)
		if strips = strips[n:]; len(strips) > 0 {
			s.overleaf()
		}
	}
	s.gap(stepGap)
}

// draw sets strips one under the other, in a thick box for a hold point.
func (s stepSheet) draw(step crew.Step, strips []strip, pad, height paper.Length) {
	box := s.take(height)
	if step.Hold {
		s.page.Stroke(paper.Box(box), paper.Emphasis)
	}
	in := paper.Rect{X: box.X + stepInset, Y: box.Y + pad, W: box.W - 2*stepInset}
	for _, st := range strips {
		in.H = st.height
		st.draw(s.page, in)
		in.Y += st.height
	}
}

// strips makes a step's parts: warning, what to do, what is wanted, readings, what if not, where to sign.
func (s stepSheet) strips(step crew.Step) []strip {
	width := s.room.W - 2*stepInset
	var list []strip
	if step.Warning != "" {
		list = append(list, warningStrip(step.Warning, width))
	}
	list = append(list, doStrip(step, width))
	list = append(list, labelled("Want", sentence(step.Want), paper.Strong, width))
	list = append(list, readingStrips(step, width)...)
	if step.Off != "" {
		list = append(list, labelled("If not", sentence(step.Off), paper.Floor, width))
	}
	if step.Hold {
		list = append(list, signStrip(step))
	}
	return list
}

// sentence begins a text with a capital, unless it begins with a name.
func sentence(s string) string {
	first, _, _ := strings.Cut(s, " ")
	if strings.ContainsAny(first, "0123456789") {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

const wordsLeft = numberWidth + tickWidth

// doStrip is the step's number, its tick box, what to do, and at the right how many do it and how long it takes.
func doStrip(step crew.Step, width paper.Length) strip {
	text := width - wordsLeft - whoWidth
	lines := paper.Body.Wrap(step.Do, text)
	h := max(paper.TickBoxSide+1, paper.Length(max(2, len(lines)))*paper.Body.Leading())
	return strip{h + 0.8, func(page *paper.Page, box paper.Rect) {
		base := box.Y + paper.Body.Ascent()
		page.Text(paper.Point{X: box.X, Y: base + 1.2}, paper.AtLeft, fmt.Sprint(step.Number), paper.Cell)
		page.TickBox(paper.Point{X: box.X + numberWidth, Y: box.Y + 0.4})
		page.Paragraph(paper.Rect{X: box.X + wordsLeft, Y: box.Y, W: text}, strings.Join(lines, "\n"), paper.Body)
		page.Text(paper.Point{X: box.Right(), Y: base}, paper.AtRight, people(step.People), paper.Floor)
		if step.Minutes > 0 {
			page.Text(paper.Point{X: box.Right(), Y: base + paper.Body.Leading()}, paper.AtRight, minutes(step.Minutes), paper.Floor)
		}
	}}
}

// labelled is a text behind its label.
func labelled(label, text string, l paper.Lettering, width paper.Length) strip {
	room := width - wordsLeft - labelWidth
	lines := l.Wrap(text, room)
	return strip{paper.Length(len(lines))*l.Leading() + 0.6, func(page *paper.Page, box paper.Rect) {
		page.Text(paper.Point{X: box.X + wordsLeft, Y: box.Y + l.Ascent()}, paper.AtLeft, label, paper.Floor)
		page.Paragraph(paper.Rect{X: box.X + wordsLeft + labelWidth, Y: box.Y, W: room}, strings.Join(lines, "\n"), l)
	}}
}

// warningStrip is a warning in a thin box with the triangle that asks for attention.
func warningStrip(text string, width paper.Length) strip {
	const pad, sign paper.Length = 1.6, 9
	room := width - sign - 2*pad
	lines := paper.Strong.Wrap(text, room)
	h := max(paper.Length(len(lines))*paper.Strong.Leading(), 6) + 2*pad
	return strip{h + 2, func(page *paper.Page, box paper.Rect) {
		box.H = h
		page.Stroke(paper.Box(box), paper.Thick)
		attention(page, paper.Point{X: box.X + pad + 3.2, Y: box.Y + pad + 2.9})
		page.Paragraph(paper.Rect{X: box.X + pad + sign, Y: box.Y + pad, W: room}, strings.Join(lines, "\n"), paper.Strong)
	}}
}

// attention draws a triangle with an exclamation mark about the point.
func attention(page *paper.Page, at paper.Point) {
	page.Stroke(paper.Polygon(at.Add(paper.Point{Y: -3}), at.Add(paper.Point{X: 3.4, Y: 2.9}), at.Add(paper.Point{X: -3.4, Y: 2.9})), paper.Thick)
	page.Line(at.Add(paper.Point{Y: -0.9}), at.Add(paper.Point{Y: 1.1}), paper.Thick)
	page.Fill(paper.Circle(at.Add(paper.Point{Y: 2}), 0.42), paper.Black)
}

// signStrip is the foot of a hold point: what was found, and by whom.
func signStrip(step crew.Step) strip {
	return strip{9, func(page *paper.Page, box paper.Rect) {
		base := box.Bottom() - 1.8
		x := box.X + wordsLeft
		blank := func(label string, until paper.Length) {
			page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, label, paper.Strong)
			x += paper.Strong.Width(label) + 2
			page.Line(paper.Point{X: x, Y: base + 0.8}, paper.Point{X: until, Y: base + 0.8}, paper.Thin)
			x = until + 4
		}
		page.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, "HOLD", paper.Strong)
		third := (box.Right() - x) / 3
		switch {
		case step.Record: // the figures stand beside what was wanted
			blank("Time", x+third)
		case strings.ContainsAny(step.Want, "0123456789"):
			blank("Measured", x+third*1.3)
		default:
			blank("Found", x+third*1.3)
		}
		blank("Signed", box.Right())
	}}
}
