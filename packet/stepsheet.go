package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/say"
)

// Columns of a step, from the left of the live area: its number, its tick box, its words.
const (
	stepInset   paper.Length = 2 // of all steps, so that those in a hold's box stand in line with the others
	numberWidth paper.Length = 9
	tickWidth   paper.Length = 8.6
	labelWidth  paper.Length = 12.5 // "Want", "If not"
	holdPad     paper.Length = 1.4
	blockHead   paper.Length = 8.2
	headStrips               = 5   // of a long step, that are kept together
	longStep                 = 0.2 // of a page: a step that is no longer is not broken
)

// strip is a part of a step that is not broken between pages.
type strip struct {
	height paper.Length
	draw   func(page *paper.Page, box paper.Rect)
	head   *strip // that stands over it where it begins a page; nil for none
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
	s.text(s.title+", going on", paper.Strong)
	s.gap(stepGap)
}

// least is the height that a step must find on a page to begin there: all of it, or of a long one that can be broken between its readings the head.
func (s stepSheet) least(step crew.Step, strips []strip) paper.Length {
	whole := heightOf(strips) + 2*padOf(step)
	if len(step.Readings)+len(step.Tapes) > 0 && whole >= longStep*s.freshHeight() {
		return heightOf(strips[:min(headStrips, len(strips))]) + 2*padOf(step)
	}
	return whole
}

// padOf is the room above and below a step in its box.
func padOf(step crew.Step) paper.Length {
	if step.Hold {
		return holdPad
	}
	return 0
}

// set draws a step, on the next page where it does not fit on this. Only a long one is broken, between its readings.
func (s stepSheet) set(step crew.Step) {
	strips, pad := s.strips(step), padOf(step)
	if fresh := s.freshHeight() - paper.Strong.Leading() - stepGap; s.room.H < min(fresh, s.least(step, strips)) {
		s.overleaf()
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
			if head := strips[0].head; head != nil {
				strips = append([]strip{*head}, strips...)
			}
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
	do := len(list)
	list = append(list, doStrip(step, width))
	want, off := labelled("Want", say.Capital(step.Want), paper.Strong.Sized(11)), labelled("If not", say.Capital(step.Off), paper.Floor)
	switch room := width - wordsLeft; {
	case step.Off == "":
		list = append(list, want.strip(room))
	default:
		list = append(list, besideOrUnder(want, off, room)...)
	}
	list = append(list, s.tapeStrips(step, width)...)
	list = append(list, readingStrips(step, width)...)
	if short := asideHigh - heightOf(list[do:]); short > 0 { // the words must not end before what stands left of them
		list[len(list)-1].height += short
	}
	if step.Hold {
		list = append(list, signStrip(step))
	}
	return list
}

const wordsLeft = numberWidth + tickWidth

// doStrip is what to do. The step's number, its tick box, who and how long stand left of its words, see aside.
func doStrip(step crew.Step, width paper.Length) strip {
	text := width - wordsLeft
	lines := paper.Floor.Wrap(step.Do, text)
	return strip{height: paper.Length(len(lines))*paper.Floor.Leading() + 0.4, draw: func(page *paper.Page, box paper.Rect) {
		aside(page, box, step)
		page.Paragraph(paper.Rect{X: box.X + wordsLeft, Y: box.Y, W: text}, strings.Join(lines, "\n"), paper.Floor)
	}}
}

// asideHigh is what a step's number and tick box, and under them how many do it and how long it takes, need beside its words.
const asideHigh paper.Length = 17.4

// aside sets them.
func aside(page *paper.Page, box paper.Rect, step crew.Step) {
	page.Text(paper.Point{X: box.X, Y: box.Y + paper.Body.Ascent() + 1.2}, paper.AtLeft, fmt.Sprint(step.Number), paper.Cell)
	page.TickBox(paper.Point{X: box.X + numberWidth, Y: box.Y + 0.4})
	base := box.Y + paper.TickBoxSide + 1.7 + paper.Floor.Ascent()
	page.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, people(step.People), paper.Floor)
	if step.Minutes > 0 {
		page.Text(paper.Point{X: box.X, Y: base + 4.7}, paper.AtLeft, minutes(step.Minutes), paper.Floor)
	}
}

// label is a text behind its label.
type label struct {
	name, text string
	lettering  paper.Lettering
}

func labelled(name, text string, l paper.Lettering) label { return label{name, text, l} }

// height is the text's height in a room that the label takes its part of.
func (l label) height(room paper.Length) paper.Length {
	return paper.Length(len(l.lettering.Wrap(l.text, room-labelWidth)))*l.lettering.Leading() + 0.6
}

// draw sets the label and its text.
func (l label) draw(page *paper.Page, box paper.Rect) {
	page.Text(paper.Point{X: box.X, Y: box.Y + l.lettering.Ascent()}, paper.AtLeft, l.name, paper.Floor)
	page.Paragraph(paper.Rect{X: box.X + labelWidth, Y: box.Y, W: box.W - labelWidth}, l.text, l.lettering)
}

// strip is the labelled text across the room.
func (l label) strip(room paper.Length) strip {
	return strip{height: l.height(room), draw: func(page *paper.Page, box paper.Rect) {
		l.draw(page, paper.Rect{X: box.X + wordsLeft, Y: box.Y, W: room})
	}}
}

// besideOrUnder sets two labelled texts beside each other where that is lower than one under the other, sharing the room by what is lowest.
func besideOrUnder(a, b label, room paper.Length) []strip {
	const gap paper.Length = 4
	under := a.height(room) + b.height(room)
	best, left := under, paper.Length(0)
	for share := paper.Length(0.3); share < 0.71; share += 0.05 {
		if h := max(a.height(room*share-gap/2), b.height(room-room*share-gap/2)); h < best-0.1 {
			best, left = h, room*share-gap/2
		}
	}
	if left == 0 {
		return []strip{a.strip(room), b.strip(room)}
	}
	return []strip{{height: best, draw: func(page *paper.Page, box paper.Rect) {
		a.draw(page, paper.Rect{X: box.X + wordsLeft, Y: box.Y, W: left})
		b.draw(page, paper.Rect{X: box.X + wordsLeft + left + gap, Y: box.Y, W: room - left - gap})
	}}}
}

// warningStrip is a warning in a thin box with the triangle that asks for attention.
func warningStrip(text string, width paper.Length) strip {
	const pad, sign paper.Length = 1.1, 9
	room := width - sign - 2*pad
	words := paper.Strong.Sized(11)
	lines := words.Wrap(text, room)
	h := max(paper.Length(len(lines))*words.Leading(), 6.6) + 2*pad
	return strip{height: h + 1.2, draw: func(page *paper.Page, box paper.Rect) {
		box.H = h
		page.Stroke(paper.Box(box), paper.Thick)
		attention(page, paper.Point{X: box.X + pad + 3.2, Y: box.Y + pad + 2.9})
		page.Paragraph(paper.Rect{X: box.X + pad + sign, Y: box.Y + pad, W: room}, strings.Join(lines, "\n"), words)
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
	return strip{height: 7.4, draw: func(page *paper.Page, box paper.Rect) {
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
		default:
			blank("Found", x+third*1.3)
		}
		blank("Signed", box.Right())
	}}
}
