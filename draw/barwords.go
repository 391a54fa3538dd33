package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// Room under a bar, mm on paper.
const (
	spanDrop paper.Length = 2.2 // from the bar to the line that a span is written under
	spanTick paper.Length = 1.1 // half of that line's end strokes
	spanGap  paper.Length = 1.4 // from the line to the words
	wordGap  paper.Length = 3   // between two words under each other's pieces
	wordOver paper.Length = 8   // of words under the piece of others
	leadFar  paper.Length = 6   // that words may begin aside of their own piece, where lower words are to be had
	leadDown paper.Length = 5   // from the words under their own piece to the row that leaders lead to
)

// caption is what is written under one span of pieces.
type caption struct {
	from, to paper.Length // the span, from the bar's left end
	text     string
	lines    []string
	led      bool         // too wide for its span: set in the lower row, led to
	centre   paper.Length // of the words
}

// width returns the width of the caption's widest line.
func (c caption) width() paper.Length { return paper.Body.Widest(c.lines) }

// captions are all that is written under a bar.
type captions struct {
	list        []caption
	rows        paper.Length // height of the words under their own pieces
	height      paper.Length
	left, right paper.Length // limits of the words, from the bar's left end
}

// under lays out what is written under the bar as low as it goes: in one line where that holds it, else each span's words under its pieces, in lines, or led to from
// a row of their own below.
func (s Stick) under(scale paper.Scale, width paper.Length) captions {
	all := captions{left: -stickLead, right: width - stickLead, list: s.captions(scale)}
	if len(all.list) == 0 {
		return all
	}
	best, ok := all.level()
	for most := captionLines; !ok && most >= 0; most-- {
		if set, fits := all.wrapped(most); most == captionLines || fits && set.height < best.height {
			best = set
		}
	}
	return best
}

// captionLines is how many lines stand under a span at most.
const captionLines = 3

// captions lists what is not written within the pieces.
func (s Stick) captions(scale paper.Scale) (list []caption) {
	first := 0
	for _, span := range s.Under {
		last := first + span.Pieces - 1
		if span.Pieces > 1 || s.inside(first, scale) == "" {
			c := caption{from: scale.Length(float64(s.start(first))), to: scale.Length(float64(s.Bar.Pieces[last].Mark)), text: span.Text}
			if s.within(first, scale) == "" {
				c.text += s.lengthWords(first, span.Pieces)
			}
			c.centre = (c.from + c.to) / 2
			list = append(list, c)
		}
		first = last + 1
	}
	return list
}

// level sets each caption in one line, all in one row, and reports whether each stands under its span, hardly under another's.
func (all captions) level() (captions, bool) {
	all.list = slices.Clone(all.list)
	var row []*caption
	for i := range all.list {
		all.list[i].lines = []string{all.list[i].text}
		row = append(row, &all.list[i])
	}
	all.measure()
	ok := all.inRow(row, 0)
	for i, c := range row[1:] {
		ok = ok && c.centre-c.width()/2 > row[i].to-wordOver && row[i].centre+row[i].width()/2 < c.from+wordOver
	}
	return all, ok
}

// wrapped sets the captions in so many lines at most under their spans, those that they do not hold in the row below, and reports whether that holds them near their spans.
func (all captions) wrapped(most int) (captions, bool) {
	all.list = slices.Clone(all.list)
	var row []*caption
	for i := range all.list {
		c := &all.list[i]
		c.lines = paper.Body.Wrap(c.text, c.to-c.from-0.6)
		if c.width() > c.to-c.from || len(c.lines) > most || broken(c.text, c.lines) {
			c.lines, c.led = []string{c.text}, true
			row = append(row, c)
		}
	}
	all.measure()
	return all, all.inRow(row, leadFar)
}

// measure sums the heights of the rows.
func (all *captions) measure() {
	wide, led := 0, 0
	for _, c := range all.list {
		if c.led {
			led = 1
		} else {
			wide = max(wide, len(c.lines))
		}
	}
	all.rows = spanDrop + spanGap + paper.Length(wide)*paper.Body.Leading()
	all.height = all.rows + paper.Length(led)*(leadDown+paper.Body.Leading())
}

// inRow moves captions of one row apart within the limits, and reports whether they fit there and end no farther than so much aside of the middle of their spans.
func (all captions) inRow(row []*caption, far paper.Length) bool {
	var middles, least []paper.Length
	for i, c := range row {
		middles, least = append(middles, c.centre), append(least, c.width()/2)
		if i > 0 {
			least[i] += row[i-1].width()/2 + wordGap
		}
	}
	edge := all.left
	for i, at := range place.Spread(middles, least) {
		row[i].centre = max(at, edge+least[i])
		edge = row[i].centre
	}
	edge = all.right
	ok := true
	for i := len(row) - 1; i >= 0; i-- {
		c, half := row[i], row[i].width()/2
		c.centre = min(c.centre, edge-half)
		edge = c.centre - half - wordGap
		ok = ok && max(c.centre-middles[i], middles[i]-c.centre) <= half+far
	}
	return ok && edge >= all.left-wordGap-0.01
}

// lengthWords states the length of pieces that are drawn too short to have it within.
func (s Stick) lengthWords(piece, count int) string {
	long := s.Units.Cut(s.Bar.Pieces[piece].Length)
	if s.Blank && s.waits(piece) {
		long = toWrite
	}
	if count > 1 {
		long += " each"
	}
	return ", " + long
}

// broken reports whether wrapping cut a word in two.
func broken(text string, lines []string) bool {
	joined := 0
	for _, s := range lines {
		joined += len(paper.Words(s))
	}
	return joined != len(paper.Words(text))
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
		if c.led {
			foot, knee := bar.Bottom()+all.rows+leadDown, paper.Point{X: bar.X + (c.from+c.to)/2, Y: bar.Bottom() + all.rows}
			board.Line(paper.Point{X: knee.X, Y: y}, knee, paper.Thin)
			board.Line(knee, paper.Point{X: bar.X + c.centre, Y: foot - 1.2}, paper.Thin)
			baseline = foot + paper.Body.Ascent()
		}
		for _, s := range c.lines {
			board.Text(paper.Point{X: bar.X + c.centre, Y: baseline}, paper.AtMiddle, s, paper.Body)
			baseline += paper.Body.Leading()
		}
	}
}
