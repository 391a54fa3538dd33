package draw

import (
	"fmt"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// Room under a bar, mm on paper.
const (
	spanDrop paper.Length = 2.2 // from the bar to the line that a span is written under
	spanTick paper.Length = 1.1 // half of that line's end strokes
	spanGap  paper.Length = 1.4 // from the line to the words
	wordGap  paper.Length = 3   // between two words under each other's pieces
	leadDown paper.Length = 5   // from the words under their own piece to the row that leaders lead to
)

// caption is what is written under one span of pieces.
type caption struct {
	from, to paper.Length // the span, from the bar's left end
	lines    []string
	narrow   bool         // too wide for its span: set in the lower row, led to
	centre   paper.Length // of the words
}

// width returns the width of the caption's widest line.
func (c caption) width() paper.Length {
	w := paper.Length(0)
	for _, s := range c.lines {
		w = max(w, paper.Body.Width(s))
	}
	return w
}

// captions are all that is written under a bar.
type captions struct {
	list        []caption
	rows        paper.Length // height of the words under their own pieces
	height      paper.Length
	left, right paper.Length // limits of the words, from the bar's left end
}

// under lays out what is written under the bar: each span's words under its pieces; those wider than their pieces in a row of their own below.
func (s Stick) under(scale paper.Scale, width paper.Length) captions {
	all := captions{left: -stickLead, right: width - stickLead}
	if len(s.Under) == 0 {
		return all
	}
	wide, narrow := 0, 0
	first := 0
	for _, span := range s.Under {
		last := first + span.Pieces - 1
		if span.Pieces == 1 && s.inside(first, scale) != "" {
			first++
			continue
		}
		c := caption{from: scale.Length(float64(s.start(first))), to: scale.Length(float64(s.Bar.Pieces[last].Mark))}
		text := span.Text
		if s.within(first, scale) == "" {
			text += s.lengthWords(first, span.Pieces)
		}
		c.lines = paper.Body.Wrap(text, c.to-c.from-0.6)
		c.centre = (c.from + c.to) / 2
		if c.width() > c.to-c.from || len(c.lines) > 3 || broken(text, c.lines) {
			c.lines, c.narrow = []string{text}, true
			narrow = 1
		} else {
			wide = max(wide, len(c.lines))
		}
		all.list = append(all.list, c)
		first = last + 1
	}
	if len(all.list) == 0 {
		return all
	}
	all.spreadNarrow()
	all.rows = spanDrop + spanGap + paper.Length(wide)*paper.Body.Leading()
	all.height = all.rows + paper.Length(narrow)*(leadDown+paper.Body.Leading())
	return all
}

// lengthWords states the length of pieces that are drawn too short to have it within.
func (s Stick) lengthWords(piece, count int) string {
	each := ""
	if count > 1 {
		each = " each"
	}
	long := s.Units.Cut(s.Bar.Pieces[piece].Length)
	if s.Blank && s.waits(piece) {
		long = toWrite
	}
	return fmt.Sprintf(", %s%s", long, each)
}

// broken reports whether wrapping cut a word in two.
func broken(text string, lines []string) bool {
	joined := 0
	for _, s := range lines {
		joined += len(paper.Words(s))
	}
	return joined != len(paper.Words(text))
}

// spreadNarrow moves the captions of the lower row apart, left to right, and back from the right limit.
func (all captions) spreadNarrow() {
	left := all.left
	for i := range all.list {
		if c := &all.list[i]; c.narrow {
			c.centre = max(c.centre, left+c.width()/2)
			left = c.centre + c.width()/2 + wordGap
		}
	}
	right := all.right
	for i := len(all.list) - 1; i >= 0; i-- {
		if c := &all.list[i]; c.narrow {
			c.centre = min(c.centre, right-c.width()/2)
			right = c.centre - c.width()/2 - wordGap
		}
	}
}

// draw draws the spans' lines with their words under the bar.
func (all captions) draw(board *place.Board, bar paper.Rect) {
	y := bar.Bottom() + spanDrop
	for _, c := range all.list {
		from, to := paper.Point{X: bar.X + c.from + 0.8, Y: y}, paper.Point{X: bar.X + c.to - 0.8, Y: y}
		board.Line(from, to, paper.Thin)
		for _, end := range []paper.Point{from, to} {
			board.Line(paper.Point{X: end.X, Y: end.Y - spanTick}, paper.Point{X: end.X, Y: end.Y}, paper.Thin)
		}
		baseline := y + spanGap + paper.Body.Ascent()
		if c.narrow {
			foot := bar.Bottom() + all.rows + leadDown
			board.Line(paper.Point{X: bar.X + (c.from+c.to)/2, Y: y}, paper.Point{X: bar.X + (c.from+c.to)/2, Y: bar.Bottom() + all.rows}, paper.Thin)
			board.Line(paper.Point{X: bar.X + (c.from+c.to)/2, Y: bar.Bottom() + all.rows}, paper.Point{X: bar.X + c.centre, Y: foot - 1.2}, paper.Thin)
			baseline = foot + paper.Body.Ascent()
		}
		for _, s := range c.lines {
			board.Text(paper.Point{X: bar.X + c.centre, Y: baseline}, paper.AtMiddle, s, paper.Body)
			baseline += paper.Body.Leading()
		}
	}
}
