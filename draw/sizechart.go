package draw

import (
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// SizeChart is the picture of what the same sticks make over other spans: crown height and clear width at head height over the span, the
// spans that cannot be built hatched, and the span that was chosen.
type SizeChart struct {
	Sizes  []arch.Size // rising spans, two at the least that make an arch
	Chosen *arch.Kind
	Units  measure.System
}

// The room about the plot, and the heights between which a chart reads well.
const (
	chartLeft, chartRight paper.Length = 17, 37
	chartAbove            paper.Length = 3
	chartBelow            paper.Length = 8

	SizeChartLeast, SizeChartHeight paper.Length = 46, 70
)

// plot is a chart on its board: where the axes lie and what they run over.
type plot struct {
	SizeChart
	*place.Board
	box    paper.Rect
	x0, x1 measure.Length // spans
	y0, y1 measure.Length // heights and widths
	step   measure.Length // between ticks of the upright axis
}

// Shows returns whether there are curves to draw: of crowns, and of widths at head height.
func (c SizeChart) Shows() (crowns, widths bool) {
	return len(c.lines(crown)) > 0, len(c.lines(headWidth)) > 0
}

func crown(s arch.Size) measure.Length     { return s.Crown }
func headWidth(s arch.Size) measure.Length { return s.HeadWidth }

// Draw draws the chart in the room: lines first, then words, and the hatching round both.
func (c SizeChart) Draw(page *paper.Page, room paper.Rect) {
	p := &plot{SizeChart: c, Board: place.NewBoard(page, room)}
	p.box = paper.Rect{X: room.X + chartLeft, Y: room.Y + chartAbove, W: room.W - chartLeft - chartRight, H: room.H - chartAbove - chartBelow}
	p.scale()
	p.axes()
	crowns := p.curve(crown, paper.Thick)
	widths := p.curve(headWidth, paper.HiddenBar)
	p.chosen()
	p.name(crowns, "H: crown height")
	p.name(widths, "W: clear width\n"+p.Units.Inches(c.Sizes[0].HeadHeight)+" up")
	p.barred()
}

// scale settles what the axes run over: the spans from the first to the last, and round figures about all that is drawn.
func (p *plot) scale() {
	p.x0, p.x1 = min(p.Sizes[0].Span, p.Chosen.Span), max(p.Sizes[len(p.Sizes)-1].Span, p.Chosen.Span)
	low, high := p.Chosen.Crown, p.Chosen.Crown
	for _, s := range p.Sizes {
		for _, l := range []measure.Length{s.Crown, s.HeadWidth} {
			if l > 0 {
				low, high = min(low, l), max(high, l)
			}
		}
	}
	steps := measure.By(p.Units, []measure.Length{6 * measure.Inch, 12 * measure.Inch, 24 * measure.Inch, 48 * measure.Inch, 96 * measure.Inch}, []measure.Length{100, 200, 500, 1000, 2000})
	most := measure.Length(min(6, int(p.box.H/5.5))) // numbers keep off each other
	for _, p.step = range steps {
		p.y0 = measure.Length(math.Floor(float64(low/p.step)+1e-9)) * p.step
		p.y1 = measure.Length(math.Ceil(float64(high/p.step)-1e-9)) * p.step
		if p.y1-p.y0 <= most*p.step {
			break
		}
	}
}

// at returns the place on paper of a height or width over a span.
func (p *plot) at(span, value measure.Length) paper.Point {
	return paper.Point{
		X: p.box.X + p.box.W*paper.Length((span-p.x0)/(p.x1-p.x0)),
		Y: p.box.Bottom() - p.box.H*paper.Length((value-p.y0)/(p.y1-p.y0)),
	}
}

// axes draws the frame with ticks inside it and numbers beside them.
func (p *plot) axes() {
	const tick paper.Length = 2
	l := paper.Floor
	p.Stroke(paper.Box(p.box), paper.Thin)
	for y := p.y0; y <= p.y1+p.step/2; y += p.step {
		q := p.at(p.x0, y)
		if y > p.y0 && y < p.y1-p.step/2 {
			p.Line(q, paper.Point{X: q.X + tick, Y: q.Y}, paper.Thin)
		}
		p.Text(paper.Point{X: q.X - 1.6, Y: q.Y + l.Ascent()*0.45}, paper.AtRight, p.bare(y), l)
	}
	p.TurnedText(paper.Point{X: p.box.X - chartLeft + l.Ascent(), Y: p.box.Y + p.box.H/2}, math.Pi/2, "height, width,"+unit(p.Units), l)

	every := 1
	for paper.Length(every)*p.box.W/paper.Length(len(p.Sizes)) < l.Width(p.bare(p.x1))+4 {
		every++
	}
	own := p.at(p.Chosen.Span, p.y0).X
	half := paper.DimSmall.Width(p.Units.Inches(p.Chosen.Span))/2 + l.Width(p.bare(p.x1))/2 + 1.5
	for i, s := range p.Sizes {
		q := p.at(s.Span, p.y0)
		p.Line(q, paper.Point{X: q.X, Y: q.Y - tick}, paper.Thin)
		if i%every == 0 && math.Abs(float64(q.X-own)) > float64(half) {
			p.Text(paper.Point{X: q.X, Y: q.Y + 1.6 + l.Ascent()}, paper.AtMiddle, p.bare(s.Span), l)
		}
	}
	p.Text(paper.Point{X: p.box.Right() + l.Width(p.bare(p.x1))/2 + 3, Y: p.box.Bottom() + 1.6 + l.Ascent()}, paper.AtLeft, "span,"+unit(p.Units), l)
}

// bare prints a length without its unit.
func (p *plot) bare(l measure.Length) string {
	return p.Units.BareInches(l)
}

// lines returns the sizes of which a figure is known, in runs of two or more neighbours.
func (c SizeChart) lines(of func(arch.Size) measure.Length) [][]arch.Size {
	var runs [][]arch.Size
	for i := 0; i < len(c.Sizes); i++ {
		from := i
		for i < len(c.Sizes) && of(c.Sizes[i]) > 0 {
			i++
		}
		if i-from > 1 {
			runs = append(runs, c.Sizes[from:i])
		}
	}
	return runs
}

// curve draws a figure over the spans and returns where it ends.
func (p *plot) curve(of func(arch.Size) measure.Length, pen paper.Pen) (end paper.Point) {
	for _, run := range p.lines(of) {
		points := make([]paper.Point, len(run))
		for i, s := range run {
			points[i] = p.at(s.Span, of(s))
		}
		p.Stroke(paper.Smooth(points, headings(points)), pen)
		end = points[len(points)-1]
	}
	return end
}

// headings returns the direction of a curve at each of its points: that of the parabola through it and its two neighbours.
func headings(points []paper.Point) []float64 {
	n := len(points)
	slope := func(i int) float64 { return float64((points[i].Y - points[i+1].Y) / (points[i+1].X - points[i].X)) } // rising is up
	list := make([]float64, n)
	for i := range list {
		switch {
		case n == 2:
			list[i] = slope(0)
		case i == 0:
			list[i] = slope(0) + (slope(0)-slope(1))/2
		case i == n-1:
			list[i] = slope(n-2) + (slope(n-2)-slope(n-3))/2
		default:
			before, after := float64(points[i].X-points[i-1].X), float64(points[i+1].X-points[i].X)
			list[i] = (slope(i-1)*after + slope(i)*before) / (before + after)
		}
		list[i] = math.Atan(list[i])
	}
	return list
}

// chosen marks the span that was chosen, with its figures.
func (p *plot) chosen() {
	const dot paper.Length = 1.5
	k := p.Chosen
	foot := p.at(k.Span, p.y0)
	values := []measure.Length{k.Crown}
	if k.HeadWidth > 0 {
		values = append(values, k.HeadWidth)
	}
	p.Line(foot, p.at(k.Span, slices.Max(values)), paper.Thin)
	l := paper.DimSmall
	up, _ := l.Extent(p.Units.Inches(k.Span))
	p.Text(paper.Point{X: foot.X, Y: foot.Y + 1.6 + up}, paper.AtMiddle, p.Units.Inches(k.Span), l)
	for i, v := range values {
		q := p.at(k.Span, v)
		p.Fill(paper.Circle(q, dot), paper.Black)
		toward := paper.Point{X: 1, Y: -1}
		if i > 0 {
			toward.Y = 1
		}
		p.Label(place.Label{At: q, Text: p.Units.Inches(v), Lettering: l, Toward: toward, Clear: dot, Leader: place.Bare})
	}
}

// barred hatches the spans that cannot be built and says why in them.
func (p *plot) barred() {
	for _, b := range arch.Barred(p.Sizes) {
		left, right := p.at(b.From, p.y0).X, p.at(b.To, p.y0).X
		area := paper.Rect{X: left, Y: p.box.Y, W: right - left, H: p.box.H}
		l := paper.Floor
		// The word stands where the curves are not: the hatch keeps clear of it.
		said := false
		if w := l.Width(b.Why); w+3 < area.W {
			said = p.word(area, b.Why, l, 0, w)
		} else if area.W > l.Ascent()+2.5 {
			said = p.word(area, b.Why, l, math.Pi/2, w)
		}
		if !said {
			p.Label(place.Label{At: area.Centre(), Text: b.Why, Lettering: l, Clear: area.W / 2, Leader: place.Arrow, Pointed: true, Within: p.box.Inset(1)})
		}
		if area.W > 0.5 {
			p.Hatch(paper.Box(area), math.Pi/4, 2.5)
			p.LineRound(paper.Point{X: left, Y: area.Y}, paper.Point{X: left, Y: area.Bottom()}, paper.Thin)
			p.LineRound(paper.Point{X: right, Y: area.Y}, paper.Point{X: right, Y: area.Bottom()}, paper.Thin)
		}
	}
}

// word sets a word in the middle of an area, or as little up or down from there as is free, and reports whether it found a place.
func (p *plot) word(area paper.Rect, s string, l paper.Lettering, angle float64, width paper.Length) bool {
	high := l.Ascent()
	if angle != 0 {
		high = width
	}
	c := area.Centre()
	if angle == 0 {
		c.Y += l.Ascent() / 2
	} else {
		c.X += l.Ascent() * 0.4
	}
	for off := paper.Length(0); off < (area.H-high)/2-1; off += 2 {
		for _, d := range [2]paper.Length{off, -off} {
			if at := (paper.Point{X: c.X, Y: c.Y + d}); p.FreeText(at, angle, s, l) {
				p.TurnedText(at, angle, s, l)
				return true
			}
		}
	}
	return false
}

// name puts a curve's name beside its end: in the margin where it runs to the edge of the plot.
func (p *plot) name(end paper.Point, s string) {
	if end == (paper.Point{}) {
		return
	}
	l := place.Label{At: end, Text: s, Lettering: paper.Floor, Toward: paper.Point{X: 1}, Clear: 1, Leader: place.Bare, Reach: p.box.W}
	if end.X > p.box.Right()-1 {
		l.Within = paper.Rect{X: p.box.Right() + 1, Y: p.Area.Y, W: p.Area.Right() - p.box.Right() - 1, H: p.box.Bottom() - p.Area.Y}
	}
	p.Label(l)
}
