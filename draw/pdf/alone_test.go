package pdf

import (
	"bytes"
	"fmt"
	"math"

	"github.com/go-pdf/fpdf"

	"hoopwright/draw/paper"
	"hoopwright/fonts"
)

// Alone readies a document to be written by the library alone, with its own calls for the same lines, fills and texts in the same order, and returns what does
// it. Fractions are taken apart and dashes fitted beforehand.
func Alone(doc Document) func() error {
	var calls []func(*fpdf.Fpdf)
	for _, page := range doc.Pages {
		w, h := points(page.Size.W), points(page.Size.H)
		calls = append(calls, func(f *fpdf.Fpdf) { f.AddPageFormat("P", fpdf.SizeType{Wd: w, Ht: h}) })
		for _, op := range page.Ops {
			switch op := op.(type) {
			case paper.Fill:
				calls = append(calls, aloneFill(op))
			case paper.Stroke:
				calls = append(calls, aloneStroke(op))
			case paper.Text:
				calls = append(calls, aloneText(op)...)
			}
		}
	}
	return func() error {
		lib := newLibrary(doc)
		for _, face := range fonts.Faces() {
			lib.AddUTF8FontFromBytes(family(face), "", face.Bytes())
		}
		for _, call := range calls {
			call(lib)
		}
		return lib.Output(&bytes.Buffer{})
	}
}

func alonePath(f *fpdf.Fpdf, path paper.Path, style string) {
	for _, s := range path {
		switch s.Verb {
		case paper.Move:
			f.MoveTo(points(s.To.X), points(s.To.Y))
		case paper.Line:
			f.LineTo(points(s.To.X), points(s.To.Y))
		case paper.Cubic:
			f.CurveBezierCubicTo(points(s.A.X), points(s.A.Y), points(s.B.X), points(s.B.Y), points(s.To.X), points(s.To.Y))
		case paper.Close:
			f.ClosePath()
		}
	}
	f.DrawPath(style)
}

func aloneFill(op paper.Fill) func(*fpdf.Fpdf) {
	return func(f *fpdf.Fpdf) {
		f.SetFillColor(int(op.Colour.R), int(op.Colour.G), int(op.Colour.B))
		alonePath(f, op.Path, "F")
	}
}

func aloneStroke(op paper.Stroke) func(*fpdf.Fpdf) {
	pieces := []dashPiece{{path: op.Path}}
	if len(op.Pen.Dash) > 0 && len(op.Path) > 0 {
		pieces = dashPieces(op.Path, op.Pen)
	}
	return func(f *fpdf.Fpdf) {
		for _, piece := range pieces {
			var dash []float64
			for _, d := range piece.dash {
				dash = append(dash, points(d))
			}
			f.SetLineWidth(points(op.Pen.Width))
			f.SetDashPattern(dash, points(piece.phase))
			f.SetDrawColor(int(op.Pen.Colour.R), int(op.Pen.Colour.G), int(op.Pen.Colour.B))
			alonePath(f, piece.path, "D")
		}
	}
}

func aloneText(op paper.Text) (calls []func(*fpdf.Fpdf)) {
	x, y := points(op.At.X), points(op.At.Y)
	set := op.Lettering.Set(op.String)
	calls = append(calls, func(f *fpdf.Fpdf) {
		f.SetTextColor(int(op.Lettering.Colour.R), int(op.Lettering.Colour.G), int(op.Lettering.Colour.B))
		if len(set.Bars) > 0 {
			f.RawWriteStr(fmt.Sprintf("/Span <</ActualText %s>> BDC", textString(op.String)))
		}
		if op.Angle != 0 {
			f.TransformBegin()
			f.TransformRotate(op.Angle*180/math.Pi, x, y)
		}
		for _, run := range set.Runs {
			f.SetFont(family(run.Face), "", float64(run.Size))
			f.Text(x+points(run.Offset.X), y+points(run.Offset.Y), run.String)
		}
		for _, bar := range set.Bars {
			f.SetLineWidth(points(barWidth))
			f.Line(x+points(bar[0].X), y+points(bar[0].Y), x+points(bar[1].X), y+points(bar[1].Y))
		}
		if op.Angle != 0 {
			f.TransformEnd()
		}
		if len(set.Bars) > 0 {
			f.RawWriteStr("EMC")
		}
	})
	return calls
}
