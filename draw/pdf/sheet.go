package pdf

import (
	"bytes"
	"fmt"
	"math"

	"github.com/go-pdf/fpdf"

	"hoopwright/draw/paper"
	"hoopwright/fonts"
)

// replay draws every page through the library and returns its file, and the runes set in each face.
func replay(doc Document) ([]byte, map[fonts.Face]runes, error) {
	lib := newLibrary(doc)
	lib.SetCompression(false) // of pages: finish packs them
	c := canvas{lib: lib, used: map[fonts.Face]runes{}}
	for i, page := range doc.Pages {
		if err := c.page(page); err != nil {
			return nil, nil, fmt.Errorf("sheet %d (%s): %w", i+1, page.Name, err)
		}
	}
	var out bytes.Buffer
	if err := lib.Output(&out); err != nil {
		return nil, nil, err
	}
	return out.Bytes(), c.used, nil
}

// newLibrary returns the library set up so that nothing depends on the clock, the map order or its own page layout.
func newLibrary(doc Document) *fpdf.Fpdf {
	first := doc.Pages[0].Size
	lib := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "pt", Size: fpdf.SizeType{Wd: points(first.W), Ht: points(first.H)}})
	lib.SetCatalogSort(true)
	lib.SetCreationDate(doc.Date)
	lib.SetModificationDate(doc.Date)
	lib.SetMargins(0, 0, 0)
	lib.SetCellMargin(0)
	lib.SetAutoPageBreak(false, 0)
	return lib
}

// canvas replays operations on the library's open page. It owns the page's state and sends the whole pen where it is another.
type canvas struct {
	lib    *fpdf.Fpdf
	used   map[fonts.Face]runes // the faces embedded so far, with what is set in each
	face   fonts.Face           // set on this page at size; size 0 before any
	size   paper.PointSize
	colour paper.Colour // of text
	width  paper.Length // of the solid line set on this page in an ink; 0 before any
	ink    paper.Colour
	height paper.Length
	buf    []byte // operators that the library has not been given yet
	err    error
}

func (c *canvas) page(p *paper.Page) error {
	if !(p.Size.W > 0 && p.Size.H > 0) || math.IsInf(float64(p.Size.W+p.Size.H), 0) {
		return fmt.Errorf("the page measures %v by %v mm", p.Size.W, p.Size.H)
	}
	c.lib.AddPageFormat("P", fpdf.SizeType{Wd: points(p.Size.W), Ht: points(p.Size.H)})
	c.height, c.size, c.width = p.Size.H, 0, 0
	for i, op := range p.Ops {
		switch op := op.(type) {
		case paper.Stroke:
			c.stroke(op)
		case paper.Fill:
			c.fill(op)
		case paper.Text:
			c.text(op)
		}
		if c.err == nil {
			c.err = c.lib.Error()
		}
		if c.err != nil {
			return fmt.Errorf("operation %d: %w", i+1, c.err)
		}
	}
	c.flush()
	return nil
}

// The small writers below append to buf and keep the first error; flush sends buf to the page, before the library writes there itself.

// at writes a point: PDF's origin is the bottom left corner and y runs up.
func (c *canvas) at(p paper.Point) {
	c.num(points(p.X), 3)
	c.num(points(c.height-p.Y), 3)
}

func (c *canvas) op(s string) { c.buf = append(append(c.buf, s...), '\n') }

func (c *canvas) rgb(k paper.Colour, operator string) {
	for _, v := range [3]uint8{k.R, k.G, k.B} {
		c.num(float64(v)/255, 4)
	}
	c.op(operator)
}

func (c *canvas) flush() {
	if c.err == nil && len(c.buf) > 0 {
		c.lib.RawWriteStr(string(bytes.TrimSuffix(c.buf, []byte{'\n'})))
	}
	c.buf = c.buf[:0]
}

func (c *canvas) steps(path paper.Path) {
	for _, s := range path {
		switch s.Verb {
		case paper.Move:
			c.at(s.To)
			c.op("m")
		case paper.Line:
			c.at(s.To)
			c.op("l")
		case paper.Cubic:
			c.at(s.A)
			c.at(s.B)
			c.at(s.To)
			c.op("c")
		case paper.Close:
			c.op("h")
		}
	}
}

func (c *canvas) fill(f paper.Fill) {
	if len(f.Path) == 0 {
		return
	}
	c.op("q")
	c.rgb(f.Colour, "rg")
	c.steps(f.Path)
	c.op("f")
	c.op("Q")
}

func (c *canvas) stroke(s paper.Stroke) {
	if len(s.Path) == 0 || s.Pen.Width <= 0 {
		return
	}
	if len(s.Pen.Dash) == 0 {
		if c.width != s.Pen.Width || c.ink != s.Pen.Colour {
			c.pen(s.Pen, 1, nil, 0)
			c.width, c.ink = s.Pen.Width, s.Pen.Colour
		}
		c.steps(s.Path)
		c.op("S")
		return
	}
	for _, piece := range dashPieces(s.Path, s.Pen) {
		c.pen(s.Pen, 0, piece.dash, piece.phase)
		c.steps(piece.path)
		c.op("S")
	}
	c.width = 0
}

// pen writes the whole pen: width, cap (0 square to the end, 1 round), round joins, dash and colour.
func (c *canvas) pen(p paper.Pen, cap float64, dash []paper.Length, phase paper.Length) {
	c.num(points(p.Width), 3)
	c.op("w")
	c.num(cap, 0)
	c.op("J 1 j")
	c.buf = append(c.buf, '[')
	for _, d := range dash {
		c.num(points(d), 3)
	}
	c.buf = append(c.buf, ']', ' ')
	c.num(points(phase), 3)
	c.op("d")
	c.rgb(p.Colour, "RG")
}
