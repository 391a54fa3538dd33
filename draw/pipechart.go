package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// PipeChart is a pipe laid along a ruler, its zero at the left: the ruler with the marks to flag, no length of the pipe, which is what the saw made it, and under it a line for each way that such a pipe is wound, with
// what must come to each mark. It is in proportion, to no stated scale.
type PipeChart struct {
	Long       measure.Length // of the pipe
	Start, End string         // what is at its zero and at its other end
	Marks      []measure.Length
	Units      measure.System
}

// PipeLine is one pipe of a chart.
type PipeLine struct {
	From, To measure.Length // where lights are on it; none where To is 0
	Bare     []lights.Band  // of that, left bare
	Joints   []measure.Length
	At       []PipeMark
	Crown    bool // the prongs are at its far end
	Inks     []paper.Colour
	Lean     int // which way its turns lean in front as they go up on paper: 1 to the right, -1 to the left, 0 where the line stands for both
}

// PipeMark is what comes to a tape.
type PipeMark struct {
	Tape measure.Length
	Text string
}

// Room in a chart.
const (
	chartSide  paper.Length = 6   // left and right of the pipe: prongs or a socket
	chartLine  paper.Length = 5.6 // of lettering
	chartPipe  paper.Length = 3.4 // how thick a pipe is drawn
	chartTick  paper.Length = 2.4
	chartApart paper.Length = 1.6 // between figures
)

var (
	chartFigure = paper.Cell      // at the marks
	chartRuler  = paper.CellSmall // on the ruler
	chartBand   = paper.Floor     // of bands
)

// at is where a tape comes.
func (c PipeChart) at(room paper.Rect, tape measure.Length) paper.Length {
	return room.X + chartSide + (room.W-2*chartSide)*paper.Length(tape/c.Long)
}

// over is where the middle of a mark's figure stands: over or under the mark, within the room.
func (c PipeChart) over(room paper.Rect, m PipeMark, l paper.Lettering) paper.Length {
	half := l.Width(m.Text) / 2
	return max(room.X+half, min(c.at(room, m.Tape), room.Right()-half))
}

// levels sets figures on as few lines as keep them apart, the nearest first, and returns each one's line, none (-1) where a third would be needed.
func (c PipeChart) levels(room paper.Rect, marks []PipeMark, l paper.Lettering) []int {
	ends := [2]paper.Length{-1e9, -1e9}
	levels := make([]int, len(marks))
	for i, m := range marks {
		levels[i] = -1
		x, half := c.over(room, m, l), l.Width(m.Text)/2
		for k := range ends {
			if x-half >= ends[k]+chartApart {
				levels[i], ends[k] = k, x+half
				break
			}
		}
	}
	return levels
}

// deepest returns how many lines levels take.
func deepest(levels []int) int {
	return 1 + slices.Max(append([]int{0}, levels...))
}

func (c PipeChart) rulerMarks() []PipeMark {
	list := []PipeMark{{0, "0"}}
	for i, m := range c.Marks {
		text := c.Units.BareInches(m)
		if i == 0 {
			text = c.Units.Inches(m)
		}
		list = append(list, PipeMark{m, text})
	}
	return list
}

// RulerHeight is the height of the ruler at a width.
func (c PipeChart) RulerHeight(width paper.Length) paper.Length {
	return chartLine*paper.Length(1+deepest(c.levels(paper.Rect{W: width}, c.rulerMarks(), chartRuler))) + chartTick + 0.6
}

// Ruler draws the ruler.
func (c PipeChart) Ruler(page *paper.Page, room paper.Rect) (missing []string) {
	left, right := c.at(room, 0), c.at(room, c.Long)
	base := room.Y + c.RulerHeight(room.W) - 0.6
	page.Text(paper.Point{X: room.X, Y: room.Y + paper.Floor.Ascent()}, paper.AtLeft, c.Start, paper.Floor)
	page.Text(paper.Point{X: room.Right(), Y: room.Y + paper.Floor.Ascent()}, paper.AtRight, c.End, paper.Floor)
	page.Line(paper.Point{X: left, Y: base}, paper.Point{X: right, Y: base}, paper.Thin)
	marks := c.rulerMarks()
	levels := c.levels(room, marks, chartRuler)
	for i, m := range marks {
		x := c.at(room, m.Tape)
		page.Line(paper.Point{X: x, Y: base}, paper.Point{X: x, Y: base - chartTick}, paper.Thick)
		if levels[i] < 0 {
			missing = append(missing, m.Text)
			continue
		}
		page.Text(paper.Point{X: c.over(room, m, chartRuler), Y: base - chartTick - 1 - chartLine*paper.Length(levels[i])}, paper.AtMiddle, m.Text, chartRuler)
	}
	return missing
}

// LineHeight is the height of one of its pipes.
func (c PipeChart) LineHeight(width paper.Length, l PipeLine) paper.Length {
	h := chartLine*paper.Length(deepest(c.levels(paper.Rect{W: width}, l.At, chartFigure))) + chartPipe + 1.6
	if len(l.Bare) > 0 {
		h += chartLine * paper.Length(deepest(c.levels(paper.Rect{W: width}, c.bandMarks(l.Bare), chartBand)))
	}
	return h
}

// Line draws one of its pipes: what is wound hatched, what is bare white, the figures over their marks, the ends of bands under them.
func (c PipeChart) Line(page *paper.Page, room paper.Rect, l PipeLine) (missing []string) {
	b := place.NewBoard(page, room)
	levels := c.levels(room, l.At, chartFigure)
	top := room.Y + chartLine*paper.Length(deepest(levels)) + 0.6
	axis := top + chartPipe/2
	for _, part := range l.wound() {
		c.turns(page, paper.Rect{X: c.at(room, part.From), Y: top, W: c.at(room, part.To) - c.at(room, part.From), H: chartPipe}, l)
	}
	page.Stroke(paper.Box(paper.Rect{X: c.at(room, 0), Y: top, W: c.at(room, c.Long) - c.at(room, 0), H: chartPipe}), paper.Thin)
	for _, j := range l.Joints {
		x := c.at(room, j)
		page.Fill(paper.Box(paper.Rect{X: x - 2.6, Y: top - 0.4, W: 5.2, H: chartPipe + 0.8}), paper.White)
		mated(b, paper.Point{X: x - matedLong/2, Y: axis}, paper.Point{X: 1})
	}
	ends := [2]paper.Point{{X: c.at(room, 0) - 0.5, Y: axis}, {X: c.at(room, c.Long) + 0.5, Y: axis}}
	out := [2]paper.Point{{X: -1}, {X: 1}}
	prongs, socket := 0, 1
	if l.Crown {
		prongs, socket = 1, 0
	}
	Prongs(b, ends[prongs], out[prongs])
	Socket(b, ends[socket], out[socket])
	for i, m := range l.At {
		x := c.at(room, m.Tape)
		page.Line(paper.Point{X: x, Y: top - 0.2}, paper.Point{X: x, Y: top + chartPipe + 0.8}, paper.Emphasis)
		if levels[i] < 0 {
			missing = append(missing, m.Text)
			continue
		}
		page.Text(paper.Point{X: x, Y: top - 1.2 - chartLine*paper.Length(levels[i])}, paper.AtMiddle, m.Text, chartFigure)
	}
	return append(missing, c.bands(page, room, top+chartPipe, l.Bare)...)
}

func (l PipeLine) wound() (parts []lights.Band) {
	from := l.From
	for _, b := range l.Bare {
		if b.From > from && b.From < l.To {
			parts = append(parts, lights.Band{From: from, To: b.From})
		}
		from = max(from, b.To)
	}
	if from < l.To {
		parts = append(parts, lights.Band{From: from, To: l.To})
	}
	return parts
}

// turns fills a wound part with the wire's turns and, in its colours, its bulbs between them.
func (c PipeChart) turns(page *paper.Page, r paper.Rect, l PipeLine) {
	if inks := l.Inks; len(inks) > 0 {
		step := max(2.4, r.W/paper.Length(max(1, int(r.W/24)*len(inks))))
		k := 0
		for x := r.X; x < r.Right()-1e-6; x += step {
			page.Fill(paper.Box(paper.Rect{X: x, Y: r.Y, W: min(step, r.Right()-x), H: r.H}), inks[k%len(inks)])
			k++
		}
	}
	const apart, slant = 1.9, 1.2
	lean := slant * paper.Length(l.Lean) / 2
	for x := r.X + slant; x+slant/2 <= r.Right(); x += apart {
		page.Line(paper.Point{X: x - lean, Y: r.Bottom()}, paper.Point{X: x + lean, Y: r.Y}, paper.Thin)
	}
}

// bandMarks are the words of bare bands, each at the band's middle.
func (c PipeChart) bandMarks(bands []lights.Band) (list []PipeMark) {
	for _, b := range bands {
		list = append(list, PipeMark{(b.From + b.To) / 2, BandWords(b, c.Units)})
	}
	return list
}

// bands writes under each bare band where it begins and ends.
func (c PipeChart) bands(page *paper.Page, room paper.Rect, under paper.Length, bands []lights.Band) (missing []string) {
	marks := c.bandMarks(bands)
	for i, level := range c.levels(room, marks, chartBand) {
		if level < 0 {
			missing = append(missing, marks[i].Text)
			continue
		}
		page.Text(paper.Point{X: c.over(room, marks[i], chartBand), Y: under + 5 + chartLine*paper.Length(level)}, paper.AtMiddle, marks[i].Text, chartBand)
	}
	return missing
}

// BandWords says between which tapes a band is, in the ruler's unit, as coarse as ribbons are tied.
func BandWords(b lights.Band, u measure.System) string {
	return u.BareInches(u.Taped(b.From)) + " to " + u.BareInches(u.Taped(b.To))
}
