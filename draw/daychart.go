package draw

import (
	"fmt"

	"hoopwright/draw/paper"
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

// ChartRow is a work: its name, its bars, and what is said at the row's end where it has none.
type ChartRow struct {
	Name string
	Bars []ChartBar
	Note string
}

// Add adds a bar: to the one before where that ends as it begins, without a hold, with the same people.
func (r *ChartRow) Add(bar ChartBar) {
	if n := len(r.Bars) - 1; n >= 0 && r.Bars[n].End == bar.Begin && r.Bars[n].Who == bar.Who && !r.Bars[n].Hold {
		r.Bars[n].End, r.Bars[n].Hold = bar.End, bar.Hold
		return
	}
	r.Bars = append(r.Bars, bar)
}

// ChartBar is a time that some people are at it.
type ChartBar struct {
	Begin, End crew.Clock
	Who        string // set in the bar, or beside it; empty where the bar before says it
	Count      string // set where that finds no room
	Hold       bool   // something is signed at its end
}

// Room in a chart.
const (
	chartHours paper.Length = 5.4 // the hours' line
	chartStrip paper.Length = 3.2 // the day's light
	chartGap   paper.Length = 1.2
	chartRow   paper.Length = 5.7 // least height of a row
	chartTall  paper.Length = 8
	barInset   paper.Length = 0.7
	holdWide   paper.Length = 1.6 // of the black end of a bar
)

// Least and Most are the heights that the chart needs and can use.
func (c DayChart) Least() paper.Length { return c.high(chartRow) }

// Most is the height that the chart can use.
func (c DayChart) Most() paper.Length { return c.high(chartTall) }

func (c DayChart) high(row paper.Length) paper.Length {
	return chartHours + chartStrip + chartGap + row*paper.Length(len(c.Rows))
}

// Names is the width that the longest of the rows' names takes, with room after it.
func (c DayChart) Names() paper.Length {
	wide := paper.Length(0)
	for _, r := range c.Rows {
		wide = max(wide, paper.Floor.Width(r.Name))
	}
	return wide + 3
}

// chartSheet is a chart being drawn.
type chartSheet struct {
	DayChart
	page *paper.Page
	rows paper.Rect // of the bars
	row  paper.Length
}

// ChartMiss is a bar whose people found no room.
type ChartMiss struct {
	Row string
	Bar ChartBar
}

// Draw draws the chart in the box, the rows' names in so much of its width, and returns the bars that stand without their people.
func (c DayChart) Draw(page *paper.Page, box paper.Rect, names paper.Length) (missing []ChartMiss) {
	s := &chartSheet{DayChart: c, page: page}
	s.rows = paper.Rect{X: box.X + names, Y: box.Y + chartHours + chartStrip + chartGap, W: box.W - names - 3}
	s.row = min(chartTall, (box.H-(s.rows.Y-box.Y))/paper.Length(max(1, len(c.Rows))))
	s.rows.H = s.row * paper.Length(len(c.Rows))
	s.clock(box.Y)
	s.light(box.Y + chartHours)
	for i, r := range c.Rows {
		for _, b := range s.bars(i, r, box.X) {
			missing = append(missing, ChartMiss{r.Name, b})
		}
	}
	return missing
}

// x is where a time lies.
func (s *chartSheet) x(c crew.Clock) paper.Length {
	return s.rows.X + s.rows.W*paper.Length(c-s.From)/paper.Length(s.To-s.From)
}

// clock draws the hours with their lines down through the rows, thin lines for rows to follow, and lunch hatched.
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
	}
	for i := range len(s.Rows) + 1 {
		y := s.rows.Y + s.row*paper.Length(i)
		s.page.Line(paper.Point{X: s.rows.X, Y: y}, paper.Point{X: s.rows.Right(), Y: y}, paper.Hatching)
	}
	if s.Lunch > 0 {
		s.hatch(paper.Rect{X: s.x(s.Lunch), Y: s.rows.Y, W: s.x(s.Lunch+s.Rest) - s.x(s.Lunch), H: s.rows.H}, 2.2)
	}
}

// hatch fills a box with slanting lines.
func (s *chartSheet) hatch(box paper.Rect, apart paper.Length) {
	for d := -box.H; d < box.W; d += apart {
		p, q, ok := cropSegment(paper.Point{X: box.X + d, Y: box.Bottom()}, paper.Point{X: box.X + d + box.H, Y: box.Y}, box)
		if ok {
			s.page.Line(p, q, paper.Hatching)
		}
	}
}

// light draws the strip of the day's light: white by day, hatched at dusk and dawn, black by night, and a heavy line down through the rows at sunset.
func (s *chartSheet) light(top paper.Length) {
	strip := paper.Rect{X: s.rows.X, Y: top, W: s.rows.W, H: chartStrip}
	if s.Light == nil {
		s.page.Stroke(paper.Box(strip), paper.Hidden)
		return
	}
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
			s.hatch(r, 1.2)
		}
	}
	s.page.Stroke(paper.Box(strip), paper.Thick)
	if x := s.x(s.Light.Set); x > strip.X && x < strip.Right() {
		s.page.Line(paper.Point{X: x, Y: top}, paper.Point{X: x, Y: s.rows.Bottom()}, paper.Emphasis)
	}
}

// bars draws a row, and returns the bars whose people found no room.
func (s *chartSheet) bars(i int, r ChartRow, left paper.Length) (missing []ChartBar) {
	y := s.rows.Y + s.row*paper.Length(i)
	base := y + s.row/2 + paper.Floor.Ascent()*0.45
	s.page.Text(paper.Point{X: left, Y: base}, paper.AtLeft, r.Name, paper.Floor)
	if r.Note != "" {
		w := paper.Floor.Width(r.Note)
		s.clear(paper.Rect{X: s.rows.Right() - w - 2, Y: y + 0.4, W: w + 1.5, H: s.row - 0.8})
		s.page.Text(paper.Point{X: s.rows.Right() - 1, Y: base}, paper.AtRight, r.Note, paper.Floor)
	}
	taken := make([]paper.Rect, len(r.Bars)) // by the bars and what is written beside them
	for k, b := range r.Bars {
		box := paper.Rect{X: s.x(b.Begin), Y: y + barInset, W: s.x(b.End) - s.x(b.Begin), H: s.row - 2*barInset}
		taken[k] = box
		s.clear(box)
		s.page.Stroke(paper.Box(box), paper.Thick)
		if b.Hold {
			s.page.Fill(paper.Box(paper.Rect{X: box.Right() - holdWide, Y: box.Y, W: holdWide, H: box.H}), paper.Black)
		}
	}
	for k, b := range r.Bars {
		if b.Who == "" {
			continue
		}
		who := b.Who
		at, ok := s.beside(taken, k, b, who)
		if !ok {
			who = b.Count
			at, ok = s.beside(taken, k, b, who)
		}
		if !ok {
			missing = append(missing, b)
			continue
		}
		s.page.Text(paper.Point{X: at.X, Y: y + s.row/2 + paper.CellSmall.Ascent()*0.45}, paper.AtLeft, who, paper.CellSmall)
	}
	return missing
}

// beside finds room for a bar's people: in it, after it, before it. What it takes outside the bar is cleared.
func (s *chartSheet) beside(taken []paper.Rect, k int, b ChartBar, who string) (at paper.Rect, ok bool) {
	const pad paper.Length = 1
	box, w := taken[k], paper.CellSmall.Width(who)
	inner := box.W
	if b.Hold {
		inner -= holdWide
	}
	if w+2*pad <= inner {
		return paper.Rect{X: box.X + (inner-w)/2}, true
	}
	for _, x := range []paper.Length{box.Right() + pad, box.X - pad - w} {
		spot := paper.Rect{X: x, Y: box.Y, W: w, H: box.H}
		free := x >= s.rows.X && x+w <= s.rows.Right()+1
		for _, t := range taken {
			free = free && (t.Right() <= spot.X || t.X >= spot.Right())
		}
		if free {
			s.clear(paper.Rect{X: x - 0.4, Y: box.Y, W: w + 0.8, H: box.H})
			taken[k] = paper.Rect{X: min(x, box.X), Y: box.Y, W: max(spot.Right(), box.Right()) - min(x, box.X), H: box.H}
			return spot, true
		}
	}
	return paper.Rect{}, false
}

// clear whitens a box.
func (s *chartSheet) clear(box paper.Rect) { s.page.Fill(paper.Box(box), paper.White) }
