package block

import (
	"cmp"
	"slices"
	"strings"

	"hoopwright/draw/paper"
)

// A figure to act on stands out of a running text: it is set between these two control characters, shift out and shift in, which no face prints.
const (
	figureOn  = "\x0e"
	figureOff = "\x0f"
)

// Figure marks a figure to act on, which running text sets larger and bold. Empty stays empty.
func Figure(s string) string {
	if s == "" {
		return ""
	}
	return figureOn + s + figureOff
}

// Words is running text in one lettering, its marked figures in another. Newlines begin new lines.
type Words struct {
	Text      string
	Lettering paper.Lettering // zero: body text
	Figures   paper.Lettering // zero: figures on a clipboard, 2 pt larger than the text
}

// span is a word or several in one lettering.
type span struct {
	text   string
	figure bool
	glue   bool // no space before it
}

func (w Words) styled() Words {
	w.Lettering = cmp.Or(w.Lettering, paper.Body)
	w.Figures = cmp.Or(w.Figures, paper.Cell.Sized(w.Lettering.Size+2).In(w.Lettering.Colour))
	return w
}

// spans breaks one line of text into unbreakable pieces: words, numbers with their units. A piece that no space parts from the one before it, as the stop
// after a figure, is glued to it.
func spans(line string) []span {
	var list []span
	figure, close := false, false // close: the last piece ended without a space
	for _, part := range strings.FieldsFunc(markers.Replace(line), func(r rune) bool { return r == 0 }) {
		if part == figureOn || part == figureOff {
			figure = part == figureOn
			continue
		}
		glue := close && !strings.HasPrefix(part, " ")
		for i, word := range paper.Words(part) {
			list = append(list, span{word, figure, glue && i == 0})
		}
		close = !strings.HasSuffix(part, " ")
	}
	return list
}

// markers parts the marks of figures from what is about them.
var markers = strings.NewReplacer(figureOn, "\x00"+figureOn+"\x00", figureOff, "\x00"+figureOff+"\x00")

func (w Words) letteringOf(s span) paper.Lettering {
	if s.figure {
		return w.Figures
	}
	return w.Lettering
}

// lines wraps the text to a width.
func (w Words) lines(width paper.Length) [][]span {
	var lines [][]span
	for _, para := range strings.Split(w.Text, "\n") {
		list := spans(para)
		line, long := list[:0], paper.Length(0) // of the list itself, but for what is broken
		for i := 0; i < len(list); {
			// A group is what may not be parted: a piece with those glued to it.
			end := i + 1
			for end < len(list) && list[end].glue {
				end++
			}
			wide := w.width(list[i:end])
			space := w.space(line, list[i])
			if len(line) > 0 && long+space+wide > width+hair {
				lines = append(lines, line)
				line, long, space = list[i:i], 0, 0
			}
			long += space
			if len(line) == 0 && wide > width {
				lines = append(lines, w.broken(list[i:end], width)...)
				line, lines = lines[len(lines)-1], lines[:len(lines)-1]
				long = w.width(line)
				i = end
				continue
			}
			line = append(line, list[i:end]...)
			long += wide
			i = end
		}
		lines = append(lines, line)
	}
	return lines
}

// broken breaks a group wider than a line where the line is full.
func (w Words) broken(group []span, width paper.Length) [][]span {
	var lines [][]span
	for _, s := range group {
		for _, part := range w.letteringOf(s).Wrap(s.text, width) {
			lines = append(lines, []span{{part, s.figure, false}})
		}
	}
	return lines
}

func (w Words) width(line []span) paper.Length {
	wide := paper.Length(0)
	for i, s := range line {
		wide += w.space(line[:i], s) + w.letteringOf(s).Width(s.text)
	}
	return wide
}

// space is the room between a line and the piece after it: none at its beginning, and that of their own lettering between two figures.
func (w Words) space(line []span, next span) paper.Length {
	switch {
	case len(line) == 0 || next.glue:
		return 0
	case next.figure && line[len(line)-1].figure:
		return w.Figures.Width(" ")
	}
	return w.Lettering.Width(" ")
}

// leading is the distance of the line's baseline from the one before: a line with figures takes their leading, less a little.
func (w Words) leading(line []span) paper.Length {
	if slices.ContainsFunc(line, func(s span) bool { return s.figure }) {
		return max(w.Lettering.Leading(), 0.95*w.Figures.Leading())
	}
	return w.Lettering.Leading()
}

// Height implements Body.
func (w Words) Height(width paper.Length) paper.Length {
	w = w.styled()
	h := paper.Length(0)
	for _, line := range w.lines(width) {
		h += w.leading(line)
	}
	return h
}

// Draw implements Body.
func (w Words) Draw(page *paper.Page, box paper.Rect) []string {
	w = w.styled()
	y := box.Y
	for _, line := range w.lines(box.W) {
		w.set(page, paper.Point{X: box.X, Y: y + w.rise(line)}, line)
		y += w.leading(line)
	}
	return nil
}

// rise is how far below its top a line's lettering stands.
func (w Words) rise(line []span) paper.Length {
	return w.Lettering.Ascent() + w.leading(line) - w.Lettering.Leading()
}

// Rise is how far below the top of the words their first line stands.
func (w Words) Rise(width paper.Length) paper.Length {
	w = w.styled()
	return w.rise(w.lines(width)[0])
}

// set sets one line, what is in one lettering as one text.
func (w Words) set(page *paper.Page, at paper.Point, line []span) {
	for i := 0; i < len(line); {
		text := line[i].text
		end := i + 1
		for end < len(line) && line[end].figure == line[i].figure {
			if !line[end].glue {
				text += " "
			}
			text += line[end].text
			end++
		}
		l := w.letteringOf(line[i])
		page.Text(at, paper.AtLeft, text, l)
		at.X += l.Width(text)
		if end < len(line) {
			at.X += w.space(line[:end], line[end])
		}
		i = end
	}
}

// Split implements splitter: between lines, two at least on each side.
func (w Words) Split(width, height paper.Length) (first, rest Body, ok bool) {
	w = w.styled()
	lines := w.lines(width)
	n, h := 0, paper.Length(0)
	for n < len(lines) && h+w.leading(lines[n]) <= height+hair {
		h += w.leading(lines[n])
		n++
	}
	n = min(n, len(lines)-2)
	if n < 2 {
		return nil, nil, false
	}
	a, b := w, w
	a.Text, b.Text = w.joined(lines[:n]), w.joined(lines[n:])
	return a, b, true
}

// joined writes lines as marked text again.
func (w Words) joined(lines [][]span) string {
	var text strings.Builder
	for i, line := range lines {
		if i > 0 {
			text.WriteString("\n")
		}
		for k, s := range line {
			if k > 0 && !s.glue {
				text.WriteString(" ")
			}
			if s.figure {
				text.WriteString(Figure(s.text))
			} else {
				text.WriteString(s.text)
			}
		}
	}
	return text.String()
}

// Heading is a heading over what follows; it is kept with it.
func Heading(text string) Block {
	return Block{Name: text, Gap: 3, Keep: true, Body: Words{Text: text, Lettering: paper.Heading}}
}

// Paragraph is running text.
func Paragraph(text string) Block { return Block{Name: text, Gap: 1.5, Body: Words{Text: text}} }
