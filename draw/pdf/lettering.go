package pdf

import (
	"fmt"
	"math"
	"unicode/utf8"

	"hoopwright/draw/paper"
	"hoopwright/fonts"
)

// barWidth is a fraction bar's pen: a line under 0.35 mm does not survive a photocopy.
const barWidth = 0.35

// text sets a line of lettering. Built fractions are marked with the text they stand for, so that copying and searching find 7/8, not 78.
func (c *canvas) text(t paper.Text) {
	if err := settable(t.String); err != nil {
		c.err = err
		return
	}
	if t.String == "" {
		return
	}
	dir := paper.Polar(1, t.Angle)
	place := func(o paper.Point) paper.Point {
		return t.At.Add(dir.Times(float64(o.X))).Sub(dir.Left().Times(float64(o.Y)))
	}
	set := t.Lettering.Set(t.String)
	if len(set.Bars) > 0 {
		c.buf = append(c.buf, "/Span <</ActualText "...)
		c.buf = append(c.buf, textString(t.String)...)
		c.op(">> BDC")
	}
	for _, run := range set.Runs {
		c.run(run, place(run.Offset), t.Angle, t.Lettering.Colour)
	}
	for _, bar := range set.Bars {
		c.stroke(paper.Stroke{Path: paper.Polyline(place(bar[0]), place(bar[1])), Pen: paper.Pen{Width: barWidth, Colour: t.Lettering.Colour}})
	}
	if len(set.Bars) > 0 {
		c.op("EMC")
	}
}

func (c *canvas) run(r paper.Run, at paper.Point, angle float64, colour paper.Colour) {
	x, y := points(at.X), points(at.Y)
	if all := x + y + angle + float64(r.Size); math.IsNaN(all) || math.IsInf(all, 0) {
		c.err = errNotFinite
		return
	}
	c.flush()
	c.font(r.Face, r.Size)
	for _, k := range r.String {
		c.used[r.Face][k] = true
	}
	if c.colour != colour {
		c.lib.SetTextColor(int(colour.R), int(colour.G), int(colour.B))
		c.colour = colour
	}
	if angle == 0 {
		c.lib.Text(hundredth(x), hundredth(y), r.String)
		return
	}
	sin, cos := math.Sincos(angle)
	c.op("q")
	for _, v := range [4]float64{cos, sin, -sin, cos} {
		c.num(v, 6)
	}
	c.at(at)
	c.op("cm")
	c.flush()
	_, top := c.lib.GetPageSize()
	c.lib.Text(0, top, r.String)
	c.op("Q")
}

// hundredth rounds to what the library prints of a text's place, and leaves no minus before zero.
func hundredth(v float64) float64 { return math.Round(v*100)/100 + 0 }

// font selects a face on the page, embedding it on first use.
func (c *canvas) font(f fonts.Face, size paper.PointSize) {
	if c.size == size && c.face == f {
		return
	}
	if c.used[f] == nil {
		c.lib.AddUTF8FontFromBytes(family(f), "", f.Bytes())
		c.used[f] = runes{}
	}
	c.lib.SetFont(family(f), "", float64(size))
	c.face, c.size = f, size
}

// family is the name the library knows a face by: plain letters, since it escapes nothing but spaces.
func family(f fonts.Face) string { return "face" + string(rune('a'+f)) }

// settable reports what the library would panic on: broken UTF-8 and runes past the basic plane.
func settable(s string) error {
	if !utf8.ValidString(s) {
		return fmt.Errorf("the text %q is not valid UTF-8", s)
	}
	for _, r := range s {
		if r > 0xFFFF {
			return fmt.Errorf("the text %q holds %c (%U), which the faces cannot set", s, r, r)
		}
	}
	return nil
}
