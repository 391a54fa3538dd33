package pdf

import (
	"bytes"
	"math"
	"testing"
	"time"

	"hoopwright/draw/paper"
)

// demo is three invented pages with everything a page can hold: pens, dashes, arcs, fills, turned text, built fractions, a face change within a word.
func demo() Document {
	letter := paper.Rect{W: 215.9, H: 279.4}
	page := func(name, title string) *paper.Page { return &paper.Page{Name: name, Title: title, Size: letter} }

	one := page("overview", "Overview")
	one.Text(paper.Point{X: 20, Y: 30}, paper.AtLeft, "Millrace Lantern Walk", paper.SheetName)
	one.Text(paper.Point{X: 20, Y: 45}, paper.AtLeft, "12′-7 7/8″ and 151 7/8 in", paper.Dimension)
	one.Text(paper.Point{X: 20, Y: 55}, paper.AtLeft, "Łódź × − ° ± – — · → ≤ ≥ Ω", paper.Cell)
	one.TurnedText(paper.Point{X: 60, Y: 100}, math.Pi/2, "3′-4 1/2″", paper.Dimension)
	one.TurnedText(paper.Point{X: 120, Y: 100}, math.Pi/6, "turned thirty degrees", paper.Body)
	one.Text(paper.Point{X: 20, Y: 150}, paper.AtLeft, "(a) back\\slash (b", paper.Body.In(paper.Colour{R: 213, G: 94}))
	one.Paragraph(paper.Rect{X: 20, Y: 160, W: 80}, "Press each stake with the foot before driving it, and stop at the first clink.", paper.Body)

	two := page("stakes", "Stake plan")
	pens := []paper.Pen{paper.Thin, paper.Thick, paper.Emphasis, paper.Hidden, paper.HiddenBar, paper.Centre, paper.Other, paper.Tied}
	for i, pen := range pens {
		y := paper.Length(40 + 10*i)
		two.Line(paper.Point{X: 30, Y: y}, paper.Point{X: 130, Y: y}, pen)
	}
	two.Stroke(paper.Circle(paper.Point{X: 80, Y: 180}, 40), paper.Thick)
	two.Stroke(paper.Circle(paper.Point{X: 80, Y: 180}, 30), paper.Centre)
	two.Stroke(paper.Box(paper.Rect{X: 140, Y: 150, W: 50, H: 60}), paper.Hidden)
	two.Fill(paper.Polygon(paper.Point{X: 150, Y: 230}, paper.Point{X: 180, Y: 230}, paper.Point{X: 165, Y: 250}), paper.Colour{G: 114, B: 178})
	two.TickBox(paper.Point{X: 30, Y: 240})

	three := page("arch", "Arch profile")
	three.Stroke(paper.Arc(paper.Point{X: 100, Y: 150}, 70, 0, math.Pi), paper.Emphasis)
	three.Text(paper.Point{X: 100, Y: 100}, paper.AtMiddle, "same face again", paper.Body)
	return Document{Title: "Millrace Lantern Walk: build packet", Subject: "Build packet: Ωß",
		Lang: "en-US", Date: time.Date(2031, 11, 7, 0, 0, 0, 0, time.FixedZone("east", 5*3600)), Pages: []*paper.Page{one, two, three},
		Attachments: []Attachment{
			{Name: "tunnel.yaml", MIME: "application/yaml", Relationship: "Source", Description: "the spec", Data: []byte("hoopwright: 1\ntitle: Millrace Lantern Walk\n")},
			{Name: "stäkes (all).csv", MIME: "text/csv", Relationship: "Data", Data: bytes.Repeat([]byte("L1,0,0\r\n"), 500)}}}
}

func render(t testing.TB, doc Document) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, doc); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestSameBytesTwice(t *testing.T) {
	first := render(t, demo())
	for range 3 {
		if !bytes.Equal(render(t, demo()), first) {
			t.Fatal("the same document gave other bytes")
		}
	}
}
