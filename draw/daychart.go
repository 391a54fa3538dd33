package draw

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
)

// DayChart is one day as bars against the clock, a line a work, with the day's light over it.
type DayChart struct {
	Rows     []ChartRow
	From, To crew.Clock  // of the clock's line: whole hours
	Lunch    crew.Clock  // when it begins; 0 for none
	Rest     crew.Clock  // how long it lasts
	Light    *crew.Light // nil where it is not known
}

// ChartRow is a work: its name, the leaves that it is done by, its bars, and what is said at the row's end where it has none.
type ChartRow struct {
	Name    string
	Leaves  []int
	Bars    []ChartBar
	Note    string
	further bool // of the work in the row before
}

// Add adds a bar: to the one before where that ends as it begins, without a hold, with the same people.
func (r *ChartRow) Add(bar ChartBar) {
	if n := len(r.Bars) - 1; n >= 0 && r.Bars[n].End == bar.Begin && r.Bars[n].Who == bar.Who && !slices.Contains(r.Bars[n].Holds, bar.Begin) {
		bar.Begin, bar.Holds = r.Bars[n].Begin, slices.Concat(r.Bars[n].Holds, bar.Holds)
		r.Bars = r.Bars[:n]
	}
	r.Bars = append(r.Bars, bar)
}

// Begin is when its first bar begins; of a row without bars, after all others.
func (r ChartRow) Begin() crew.Clock {
	first := crew.Clock(math.MaxInt)
	for _, b := range r.Bars {
		first = min(first, b.Begin)
	}
	return first
}

// ChartBar is a time that some people are at it.
type ChartBar struct {
	Begin, End crew.Clock
	Who        string       // set in the bar, or beside it
	Holds      []crew.Clock // when something is signed, within the bar
}

// Room in a chart.
const (
	chartHours paper.Length = 5.4 // the hours' line
	chartStrip paper.Length = 3.2 // the day's light
	chartGap   paper.Length = 1.2
	chartRow   paper.Length = 5.0 // least height of a row
	chartTall  paper.Length = 8
	chartRight paper.Length = 3 // past the bars
	barInset   paper.Length = 0.4
	holdWide   paper.Length = 1.8 // of a hold, black on its bar
	leafWide   paper.Length = 4.4 // of a leaf's number, white on black
	leafApart  paper.Length = 0.6
)

// barPen outlines a bar: heavier than the clock's lines, far from a hold's black.
var barPen = paper.Pen{Width: 0.50}

// Least and Most are the heights that the chart needs and can use.
func (c DayChart) Least() paper.Length { return c.high(chartRow) }

// Most is the height that the chart can use.
func (c DayChart) Most() paper.Length { return c.high(chartTall) }

func (c DayChart) high(row paper.Length) paper.Length {
	return c.head() + row*paper.Length(len(c.Rows))
}

// head is the height over the rows.
func (c DayChart) head() paper.Length {
	if c.Light == nil {
		return chartHours + chartGap
	}
	return chartHours + chartStrip + chartGap
}

// Names is the width that the longest of the rows' names takes, with room after it.
func (c DayChart) Names() paper.Length {
	wide := paper.Length(0)
	for _, r := range c.Rows {
		wide = max(wide, paper.Floor.Width(r.Name+":")+(leafWide+leafApart)*paper.Length(len(r.Leaves)))
	}
	return wide + 3
}

// Parted is the chart with further rows, of the work before, for bars at the same time as others and for those whose people would stand neither in their bar nor after it.
func (c DayChart) Parted(chart, names paper.Length) DayChart {
	s := &chartSheet{DayChart: c, rows: paper.Rect{W: chart - names - chartRight}}
	c.Rows = nil
	for _, r := range s.Rows {
		first := len(c.Rows)
		c.Rows = append(c.Rows, ChartRow{Name: r.Name, Leaves: r.Leaves, Note: r.Note})
		for _, b := range r.Bars {
			k := slices.IndexFunc(c.Rows[first:], func(r ChartRow) bool {
				free := !slices.ContainsFunc(r.Bars, func(o ChartBar) bool { return b.Begin < o.End })
				_, ok := s.seats(ChartRow{Bars: append(slices.Clip(r.Bars), b), further: r.further})
				return free && ok
			})
			if k < 0 {
				k = len(c.Rows) - first
				c.Rows = append(c.Rows, ChartRow{Name: "same", further: true})
			}
			c.Rows[first+k].Bars = append(c.Rows[first+k].Bars, b)
		}
	}
	return c
}

// chartSheet is a chart being drawn.
type chartSheet struct {
	DayChart
	page *paper.Page
	rows paper.Rect // of the bars
	row  paper.Length
}

// Draw draws the chart in the box, the rows' names in so much of its width. It is one that was parted for that width.
func (c DayChart) Draw(page *paper.Page, box paper.Rect, names paper.Length) {
	s := &chartSheet{DayChart: c, page: page}
	s.rows = paper.Rect{X: box.X + names, Y: box.Y + c.head(), W: box.W - names - chartRight}
	s.row = min(chartTall, (box.H-(s.rows.Y-box.Y))/paper.Length(max(1, len(c.Rows))))
	s.rows.H = s.row * paper.Length(len(c.Rows))
	s.clock(box.Y)
	s.light(box.Y + chartHours)
	for i, r := range c.Rows {
		s.bars(i, r, box.X)
	}
}

// x is where a time lies.
func (s *chartSheet) x(c crew.Clock) paper.Length {
	return s.rows.X + s.rows.W*paper.Length(c-s.From)/paper.Length(s.To-s.From)
}

// clock draws the hours with their lines down through the rows, thin lines for half hours and for rows to follow, and lunch as a white column.
func (s *chartSheet) clock(top paper.Length) {
	step := crew.Clock(60)
	if s.x(s.From+60)-s.rows.X < paper.Floor.Width("00")+1 {
		step = 120
	}
	for c := s.From; c <= s.To; c += 60 {
		x := s.x(c)
		if (c-s.From)%step == 0 {
			s.page.Text(paper.Point{X: x, Y: top + paper.Floor.Ascent()}, paper.AtMiddle, fmt.Sprint(int(c/60)), paper.Floor)
		}
		s.page.Line(paper.Point{X: x, Y: s.rows.Y}, paper.Point{X: x, Y: s.rows.Bottom()}, paper.Thin)
		if half := s.x(c + 30); c < s.To {
			s.page.Line(paper.Point{X: half, Y: s.rows.Y}, paper.Point{X: half, Y: s.rows.Bottom()}, paper.Hatching)
		}
	}
	for i := range len(s.Rows) + 1 {
		y := s.rows.Y + s.row*paper.Length(i)
		s.page.Line(paper.Point{X: s.rows.X, Y: y}, paper.Point{X: s.rows.Right(), Y: y}, paper.Hatching)
	}
	if s.Lunch > 0 {
		rest := paper.Rect{X: s.x(s.Lunch), Y: s.rows.Y, W: s.x(s.Lunch+s.Rest) - s.x(s.Lunch), H: s.rows.H}
		s.clear(rest)
		s.page.Stroke(paper.Box(rest), paper.Thin)
	}
}

// light draws the strip of the day's light: white by day, hatched at dusk and dawn, black by night, and a heavy line down through the rows at sunset.
func (s *chartSheet) light(top paper.Length) {
	if s.Light == nil {
		return
	}
	strip := paper.Rect{X: s.rows.X, Y: top, W: s.rows.W, H: chartStrip}
	between := func(from, to crew.Clock) (paper.Rect, bool) {
		from, to = max(from, s.From), min(to, s.To)
		return paper.Rect{X: s.x(from), Y: top, W: s.x(to) - s.x(from), H: chartStrip}, to > from
	}
	dawn := s.Light.Rise - (s.Light.Dusk - s.Light.Set)
	for _, night := range [2][2]crew.Clock{{0, dawn}, {s.Light.Dusk, s.To}} {
		if r, ok := between(night[0], night[1]); ok {
			s.page.Fill(paper.Box(r), paper.Black)
		}
	}
	for _, twilight := range [2][2]crew.Clock{{dawn, s.Light.Rise}, {s.Light.Set, s.Light.Dusk}} {
		if r, ok := between(twilight[0], twilight[1]); ok {
			place.NewBoard(s.page, r).Hatch(paper.Box(r), math.Pi/4, 1.2)
		}
	}
	s.page.Stroke(paper.Box(strip), paper.Thick)
	if x := s.x(s.Light.Set); x > strip.X && x < strip.Right() {
		s.page.Line(paper.Point{X: x, Y: top}, paper.Point{X: x, Y: s.rows.Bottom()}, paper.Emphasis)
	}
}

// bars draws a row.
func (s *chartSheet) bars(i int, r ChartRow, left paper.Length) {
	y := s.rows.Y + s.row*paper.Length(i)
	base := y + s.row/2 + paper.Floor.Ascent()*0.45
	seated, _ := s.seats(r)
	if len(seated) == 0 || seated[0].x >= s.rows.X {
		s.page.Text(paper.Point{X: left, Y: base}, paper.AtLeft, r.Name+":", paper.Floor)
		for k, n := range r.Leaves {
			tab := paper.Rect{X: s.rows.X - (leafWide+leafApart)*paper.Length(len(r.Leaves)-k) - leafApart, Y: y + barInset, W: leafWide, H: s.row - 2*barInset}
			s.page.Fill(paper.Box(tab), paper.Black)
			s.page.Text(paper.Point{X: tab.X + tab.W/2, Y: base}, paper.AtMiddle, fmt.Sprint(n), paper.CellSmall.Sized(11).In(paper.White))
		}
	}
	for _, p := range seated {
		s.clear(paper.Rect{X: p.x - 0.4, Y: y + 0.3, W: paper.CellSmall.Width(p.who) + 0.8, H: s.row - 0.6})
	}
	if r.Note != "" {
		w := paper.Floor.Width(r.Note)
		s.clear(paper.Rect{X: s.rows.Right() - w - 2, Y: y + 0.4, W: w + 1.5, H: s.row - 0.8})
		s.page.Text(paper.Point{X: s.rows.Right() - 1, Y: base}, paper.AtRight, r.Note, paper.Floor)
	}
	upright := func(from, to paper.Length) paper.Rect {
		return paper.Rect{X: from, Y: y + barInset, W: to - from, H: s.row - 2*barInset}
	}
	for _, b := range r.Bars {
		box := upright(s.x(b.Begin), s.x(b.End))
		s.clear(box)
		s.page.Stroke(paper.Box(box), barPen)
		for _, x := range s.holds(b) {
			s.page.Fill(paper.Box(upright(x, x+holdWide)), paper.Black)
		}
	}
	for _, p := range seated {
		s.page.Text(paper.Point{X: p.x, Y: y + s.row/2 + paper.CellSmall.Ascent()*0.45}, paper.AtLeft, p.who, paper.CellSmall)
	}
}

// holds are where a bar is black.
func (s *chartSheet) holds(b ChartBar) (list []paper.Length) {
	for _, at := range b.Holds {
		list = append(list, min(max(s.x(at)-holdWide/2, s.x(b.Begin)), s.x(b.End)-holdWide))
	}
	return list
}

// widest is the widest part of a bar between its holds.
func (s *chartSheet) widest(b ChartBar) (from, to paper.Length) {
	left := s.x(b.Begin)
	for _, x := range append(s.holds(b), s.x(b.End)) {
		if x-left > to-from {
			from, to = left, x
		}
		left = x + holdWide
	}
	return from, to
}

// seat is where some bar's people are set.
type seat struct {
	who string
	x   paper.Length
}

// seats are where the people of a row's bars are set, once where all are the same; not ok where some find no room. Those of a lone bar do in a further row: in place of its name.
func (s *chartSheet) seats(r ChartRow) (list []seat, ok bool) {
	alone := !slices.ContainsFunc(r.Bars, func(b ChartBar) bool { return b.Who != r.Bars[0].Who })
	for k, b := range r.Bars {
		x, ok := s.seat(r.Bars, k, alone)
		if !ok && len(r.Bars) == 1 && r.further {
			x, ok = s.rows.X-seatPad-paper.CellSmall.Width(b.Who), true
		}
		if ok {
			list = append(list, seat{b.Who, x})
		}
		if ok == alone {
			return list, ok
		}
	}
	return list, !alone || len(r.Bars) == 0
}

// Room beside people.
const (
	seatPad   paper.Length = 1 // to their bar
	seatApart paper.Length = 2 // to the next
)

// seat finds where a bar's people are set: in the widest part that the holds leave of it, else after it, before it too where alone in their row. None stands at
// another bar.
func (s *chartSheet) seat(bars []ChartBar, k int, alone bool) (at paper.Length, ok bool) {
	b, w, low, high := bars[k], paper.CellSmall.Width(bars[k].Who), s.rows.X, s.rows.Right()+1
	if k > 0 {
		low = s.x(bars[k-1].End)
	}
	if k+1 < len(bars) {
		high = s.x(bars[k+1].Begin) - seatApart
	}
	from, to := s.widest(b)
	switch after, before := s.x(b.End)+seatPad, s.x(b.Begin)-seatPad-w; {
	case w+2*seatPad <= to-from:
		return (from + to - w) / 2, true
	case after+w <= high:
		return after, true
	default:
		return before, alone && before >= low
	}
}

// clear whitens a box.
func (s *chartSheet) clear(box paper.Rect) { s.page.Fill(paper.Box(box), paper.White) }
