package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/stock"
)

// Stick is a stock bar as it lies before the saw: a saw mark for each cut with its running measure from the left end above it, each piece's
// length within, what the pieces are below, and past the right end whether what is left over is kept. Lengths are true to scale, its height is not.
type Stick struct {
	Bar   stock.Bar
	Units measure.System
	Under []Span // what is written under the pieces, left to right
	Keep  bool   // the offcut is worth keeping: its length is told
	Fresh int    // so many pieces at the right are measured from the fresh end: no running measure stands over their marks
	Blank bool   // ridge pieces that wait for the first have a line to write their length on
}

// Span is what is written under some pieces in a row.
type Span struct {
	Pieces int
	Text   string
}

// Room about a stick, mm on paper.
const (
	stickHigh  paper.Length = 9
	stickLead  paper.Length = 4   // left of its end, for half of the zero
	offcutGap  paper.Length = 2.5 // from its end to those words
	stickPast  paper.Length = 32  // right of its end, for the offcut's words
	markUp     paper.Length = 2.5
	markGap    paper.Length = 1.2
	numberGap  paper.Length = 2.4 // between two running measures
	insideGap  paper.Length = 3   // between a piece's words and its length
	leadUp     paper.Length = 5   // of the lines to measures that are moved apart
	leadMost   paper.Length = 9   // that a measure is moved at most
	runningOff paper.Length = 4   // of the line of crowded measures
	runningMax paper.Length = 10  // from that line to its numbers at most
)

// StickScale returns the largest scale of the series at which the bars fit the width with the words past their ends.
func StickScale(series []paper.Scale, bars []stock.Bar, width paper.Length) paper.Scale {
	long := measure.Length(0)
	for _, b := range bars {
		long = max(long, b.Stock)
	}
	return paper.Fit(series, float64(long), 0, paper.Rect{W: width - stickLead - stickPast})
}

// sawMark is one place to mark on the bar.
type sawMark struct {
	x       paper.Length // from the left end
	text    string
	figures paper.Length // width of the text without its unit: what is centred on the mark
}

// marks returns the places that the tape tells, after the zero where the left end is not trimmed. The number of the last carries the unit.
func (s Stick) marks(scale paper.Scale) []sawMark {
	var list []sawMark
	told := s.sawn(len(s.Bar.Pieces) - s.Fresh)
	if len(told) == 0 || s.start(0) <= s.Units.Grid()/2 { // the left end is not trimmed
		told = append([]measure.Length{0}, told...)
	}
	for _, at := range told {
		text := s.Units.BareCut(at)
		list = append(list, sawMark{scale.Length(float64(at)), text, paper.Dimension.Width(text)})
	}
	if len(list) == 1 && s.Fresh > 0 && list[0].x == 0 {
		return nil // a zero alone tells nothing
	}
	list[len(list)-1].text += " " + s.Units.Unit()
	return list
}

// sawn lists where the saw goes through up to so many pieces, the trimmed left end first.
func (s Stick) sawn(pieces int) (list []measure.Length) {
	if start := s.start(0); start > s.Units.Grid()/2 {
		list = append(list, start)
	}
	for _, p := range s.Bar.Pieces[:pieces] {
		if p.Mark != s.Bar.Stock {
			list = append(list, p.Mark)
		}
	}
	return list
}

// inside returns what is written within a piece beside its length: the words of its span, where that is one piece with room for both; else nothing.
func (s Stick) inside(piece int, scale paper.Scale) string {
	first := 0
	for _, span := range s.Under {
		if first == piece && span.Pieces == 1 {
			room := scale.Length(float64(s.Bar.Pieces[piece].Mark-s.start(piece))) - 4
			if length := s.within(piece, scale); length != "" && paper.Body.Width(span.Text)+insideGap+s.lettering(piece).Width(length) <= room {
				return span.Text
			}
		}
		first += span.Pieces
	}
	return ""
}

// start returns where a piece begins on the bar.
func (s Stick) start(i int) measure.Length {
	p := s.Bar.Pieces[i]
	return max(0, p.Mark-p.Length)
}

// figureRoom returns how far each running measure must stand from the one before, and whether they are crowded: too close to be set level, each over its mark.
func figureRoom(marks []sawMark) (least []paper.Length, crowded bool) {
	least = make([]paper.Length, len(marks))
	for i := 1; i < len(marks); i++ {
		least[i] = (marks[i-1].figures+marks[i].figures)/2 + numberGap
		crowded = crowded || marks[i].x-marks[i-1].x < least[i]
	}
	return least, crowded
}

// figures are the running measures as they stand over the bar.
type figures struct {
	marks []sawMark
	at    []paper.Length // their middles, from the bar's left end; none where they are turned
	high  paper.Length   // from the bar to the top of them
	led   bool           // they are moved apart and led to
}

// figures sets the running measures level, each over its mark; where that crowds them apart, with lines to their marks; where these were to go far, turned.
func (s Stick) figures(scale paper.Scale) figures {
	f := figures{marks: s.marks(scale), high: markUp}
	if len(f.marks) == 0 {
		return f
	}
	for _, m := range f.marks {
		f.at = append(f.at, m.x)
	}
	least, crowded := figureRoom(f.marks)
	f.high += markGap + paper.Dimension.Ascent() + paper.Dimension.Descent()
	if !crowded {
		return f
	}
	f.led, f.high = true, f.high+leadUp
	f.at = place.Spread(f.at, least)
	far, widest, edge := paper.Length(0), paper.Length(0), -stickLead+f.marks[0].figures/2
	for i, m := range f.marks {
		edge = max(f.at[i], edge+least[i])
		f.at[i] = edge
		far, widest = max(far, edge-m.x, m.x-edge), max(widest, paper.Dimension.Width(m.text))
	}
	if far > leadMost {
		f.at, f.led, f.high = nil, false, runningOff+runningMax+widest
	}
	return f
}

// Height returns the height that the drawing takes at the scale in a room of the width.
func (s Stick) Height(scale paper.Scale, width paper.Length) paper.Length {
	return s.figures(scale).high + stickHigh + s.under(scale, width).height
}

// Draw draws the stick from the top of the room, and returns what is left of the room.
func (s Stick) Draw(page *paper.Page, room paper.Rect, scale paper.Scale) paper.Rect {
	height := s.Height(scale, room.W)
	box, rest := room.SplitTop(height)
	bar := paper.Rect{X: box.X + stickLead, Y: box.Y + s.figures(scale).high, W: scale.Length(float64(s.Bar.Stock)), H: stickHigh}
	board := place.NewBoard(page, box)
	s.pieces(board, bar, scale)
	s.offcut(board, bar, scale)
	s.running(board, bar, scale)
	s.under(scale, room.W).draw(board, bar)
	return rest
}

// pieces draws the bar's outline, its saw marks, and each piece's length where it fits.
func (s Stick) pieces(board *place.Board, bar paper.Rect, scale paper.Scale) {
	board.Stroke(paper.Box(bar), paper.Thick)
	for _, at := range s.sawn(len(s.Bar.Pieces)) {
		x := bar.X + scale.Length(float64(at))
		board.Line(paper.Point{X: x, Y: bar.Y - markUp}, paper.Point{X: x, Y: bar.Bottom()}, paper.Emphasis)
	}
	up, down := paper.Dimension.Ascent(), paper.Dimension.Descent()
	for i, p := range s.Bar.Pieces {
		l := s.lettering(i)
		text := s.within(i, scale)
		x := bar.X + scale.Length(float64(s.start(i)+p.Mark))/2
		base := bar.Y + (bar.H+up-down)/2
		words := s.inside(i, scale)
		if words == "" {
			board.Text(paper.Point{X: x, Y: base}, paper.AtMiddle, text, l)
			continue
		}
		x -= (paper.Body.Width(words) + insideGap + l.Width(text)) / 2
		board.Text(paper.Point{X: x, Y: base}, paper.AtLeft, words, paper.Body)
		board.Text(paper.Point{X: x + paper.Body.Width(words) + insideGap, Y: base}, paper.AtLeft, text, l)
	}
}

// within returns a piece's length as it is written inside it: with its unit, without, or not at all, as there is room.
func (s Stick) within(i int, scale paper.Scale) string {
	p := s.Bar.Pieces[i]
	room := scale.Length(float64(p.Mark-s.start(i))) - 2.4
	text := s.Units.BareCut(p.Length)
	list := []string{text + " " + s.Units.Unit(), text}
	if s.Blank && s.waits(i) {
		list = []string{toWrite}
	}
	for _, t := range list {
		if s.lettering(i).Width(t) <= room {
			return t
		}
	}
	return ""
}

// toWrite is a line to write a length on.
const toWrite = "________"

// waits reports whether a piece is cut only when the first of the ridge has been tried.
func (s Stick) waits(i int) bool {
	id := s.Bar.Pieces[i].ID
	return s.Fresh > 0 && id.Ridge() && !id.Trial()
}

// lettering is that of a piece's length: heavy only where it is cut as it stands.
func (s Stick) lettering(i int) paper.Lettering {
	if s.waits(i) {
		return paper.Body
	}
	return paper.Dimension
}

// offcut hatches what is left over; the length of what is kept stands past the bar's end.
func (s Stick) offcut(board *place.Board, bar paper.Rect, scale paper.Scale) {
	hatch := func(from, to paper.Length) {
		board.Hatch(paper.Box(paper.Rect{X: bar.X + from, Y: bar.Y, W: to - from, H: bar.H}), math.Pi/4, 2.2)
	}
	hatch(0, scale.Length(float64(s.start(0))))
	hatch(bar.W-scale.Length(float64(s.Bar.Offcut)), bar.W)
	at := paper.Point{X: bar.Right() + offcutGap, Y: bar.Y + paper.Strong.Ascent() + 0.2}
	for _, w := range s.leftOver() {
		board.Text(at, paper.AtLeft, w.String, w.Lettering)
		at.Y = bar.Bottom() - 0.8
	}
}

// leftOver is what stands past the bar's end, a line each.
func (s Stick) leftOver() []paper.Text {
	switch {
	case s.Bar.Offcut <= 0:
		return nil
	case !s.Keep:
		return []paper.Text{{String: "waste", Lettering: paper.Body}}
	case s.Fresh > 0: // what waits decides how much is left
		return []paper.Text{{String: "keep", Lettering: paper.Strong}}
	}
	return []paper.Text{{String: "keep", Lettering: paper.Strong}, {String: s.Units.Cut(s.Bar.Offcut), Lettering: paper.CellSmall}}
}

// running sets the measures from the left end over their marks.
func (s Stick) running(board *place.Board, bar paper.Rect, scale paper.Scale) {
	f := s.figures(scale)
	if len(f.marks) == 0 {
		return
	}
	board.Stroke(paper.Circle(paper.Point{X: bar.X, Y: bar.Y}, 1), paper.Thin)
	base := bar.Y - markUp - markGap - paper.Dimension.Descent()
	if f.led {
		base -= leadUp
	}
	for i, at := range f.at {
		m := f.marks[i]
		board.Text(paper.Point{X: bar.X + at - m.figures/2, Y: base}, paper.AtLeft, m.text, paper.Dimension)
		if f.led {
			board.Line(paper.Point{X: bar.X + m.x, Y: bar.Y - markUp}, paper.Point{X: bar.X + at, Y: bar.Y - markUp - leadUp}, paper.Thin)
		}
	}
	if len(f.at) > 0 {
		return
	}
	r := place.Running{Origin: paper.Point{X: bar.X, Y: bar.Y}, Offset: runningOff, Lettering: paper.Dimension}
	for _, m := range f.marks {
		if m.x != 0 { // that is drawn as the zero
			r.Stops = append(r.Stops, place.Stop{Along: m.x, Text: m.text})
		}
	}
	board.Running(r)
}

// Free returns the rooms that the drawing leaves at its right, relative to its top left corner: beside the running measures, beside the bar and the words past its end, and beside the words below.
func (s Stick) Free(scale paper.Scale, width paper.Length) (above, beside, below paper.Rect) {
	f, under := s.figures(scale), s.under(scale, width)
	end := scale.Length(float64(s.Bar.Stock))
	figures, past, words := end, end+offcutGap, paper.Length(0) // how far they reach
	if n := len(f.marks); n > 0 {
		last := f.marks[n-1]
		figures = max(end, last.x+runningMax+leadMost)
		if len(f.at) > 0 {
			figures = f.at[n-1] - last.figures/2 + paper.Dimension.Width(last.text)
		}
	}
	for _, w := range s.leftOver() {
		past = max(past, end+offcutGap+w.Lettering.Width(w.String))
	}
	for _, c := range under.list {
		words = max(words, c.centre+c.width()/2)
	}
	room := func(x, y, high paper.Length) paper.Rect {
		return paper.Rect{X: x + stickLead, Y: y, W: width - x - stickLead, H: high}
	}
	return room(figures, 0, f.high), room(past, f.high, stickHigh), room(words, f.high+stickHigh, under.height)
}
