package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
	"hoopwright/layout/stock"
)

// sticks draws every pattern of cuts, material by material.
func (c *cutting) sticks() {
	if len(c.patterns) == 0 {
		return
	}
	var cut []stock.Bar
	for _, p := range c.patterns {
		cut = append(cut, p.bars[0])
	}
	_, others, _ := c.ridge()
	for _, item := range items(cut) {
		var bars []stock.Bar
		for _, b := range cut {
			if b.Item == item {
				bars = append(bars, b)
			}
		}
		scale := draw.StickScale(c.series(), bars, c.room.W)
		useful := c.cuts.Useful(item)
		about := fmt.Sprintf("Lengths %s. Above: tape from the left end. Keep offcuts of %s or more%s.", scale.Words, c.units.Cut(useful), c.kept(item))
		var blocks []cutBlock
		for _, p := range c.patterns {
			if p.bars[0].Item == item {
				blocks = append(blocks, c.block(p, scale, useful, others > 0))
			}
		}
		c.heading("Cut "+item, paper.Body.Leading()+2+blocks[0].height)
		c.text(about, paper.Body)
		c.gap(2)
		for _, b := range blocks {
			c.set(b)
		}
	}
}

// kept says which lengths of a material the shed holds once all is cut.
func (c *cutting) kept(item string) string {
	var words []string
	for _, l := range c.b.plan.Stock.Keep {
		if l.Item == item {
			words = append(words, fmt.Sprintf("%d of %s", l.Count, c.units.Cut(l.Length)))
		}
	}
	if len(words) == 0 {
		return ""
	}
	return "; the shed then holds " + strings.Join(words, ", ")
}

// Room about one pattern.
const (
	titleHigh  paper.Length = 8.5
	boxPitch                = paper.TickBoxSide + 1.6
	boxFives   paper.Length = 2.4 // more between fives
	boxesInRow              = 20
)

// cutBlock is one pattern ready to be set.
type cutBlock struct {
	pattern
	stick  draw.Stick
	scale  paper.Scale
	names  []string
	rows   int // of tick boxes under the names; none where they fit behind the title
	height paper.Length
}

// block readies a pattern.
func (c *cutting) block(p pattern, scale paper.Scale, useful measure.Length, trial bool) cutBlock {
	b := cutBlock{pattern: p, scale: scale, stick: draw.Stick{Bar: p.bars[0], Units: c.units, Under: p.spans(trial), Left: "waste"}}
	if p.bars[0].Offcut >= useful {
		b.stick.Left = "keep"
	}
	if len(p.bars) > 1 {
		b.names = paper.Body.Wrap("Names: "+p.names(), c.room.W)
	}
	if b.titleWidth(c.units)+boxesWidth(len(p.bars))+4 > c.room.W {
		b.rows = (len(p.bars) + boxesInRow - 1) / boxesInRow
	}
	b.height = titleHigh + b.stick.Height(scale, c.room.W) + paper.Length(len(b.names))*paper.Body.Leading() + paper.Length(b.rows)*boxPitch + 2
	return b
}

// titleWidth returns the width of a block's title.
func (b cutBlock) titleWidth(units measure.System) paper.Length {
	return paper.StakeName.Width(b.letter) + 3 + paper.Strong.Width(b.title(units))
}

// set sets a block: its letter and title, its tick boxes, the stick, and the names.
func (c *cutting) set(b cutBlock) {
	page := c.page
	c.need(b.height)
	if c.page != page {
		c.text(fmt.Sprintf("Cut %s, continued: lengths %s", b.stick.Bar.Item, b.scale.Words), paper.Strong)
		c.gap(2)
	}
	c.state(b.scale)
	title := c.take(titleHigh)
	base := title.Y + 6.2
	c.page.Text(paper.Point{X: title.X, Y: base}, paper.AtLeft, b.letter, paper.StakeName)
	c.page.Text(paper.Point{X: title.X + 3 + paper.StakeName.Width(b.letter), Y: base}, paper.AtLeft, b.title(c.units), paper.Strong)
	if b.rows == 0 {
		c.boxes(paper.Point{X: title.Right() - boxesWidth(len(b.bars)), Y: title.Y + 0.6}, len(b.bars))
	}
	c.room = b.stick.Draw(c.page, c.room, b.scale)
	if len(b.names) > 0 {
		c.gap(1)
		c.text(strings.Join(b.names, "\n"), paper.Body)
	}
	c.gap(1)
	for left := len(b.bars); left > 0 && b.rows > 0; left -= boxesInRow {
		row := c.take(boxPitch)
		c.boxes(paper.Point{X: row.X + 0.35, Y: row.Y + 0.6}, min(left, boxesInRow))
	}
	c.gap(4)
}

// boxesWidth returns the width of a row of tick boxes.
func boxesWidth(n int) paper.Length {
	return paper.Length(n)*boxPitch + paper.Length((n-1)/5)*boxFives - (boxPitch - paper.TickBoxSide) + 0.7
}

// boxes draws tick boxes in fives.
func (c *cutting) boxes(at paper.Point, n int) {
	for i := range n {
		c.page.TickBox(at)
		at.X += boxPitch
		if i%5 == 4 {
			at.X += boxFives
		}
	}
}
