package paper

import (
	"math"
	"testing"
)

// A curve through points of a circle with its tangents is the circle; through points of a line the line.
func TestSmoothKeepsToACircle(t *testing.T) {
	for _, turn := range []float64{.05, -.05, .3, -.8} {
		const r = 100
		var points []Point
		var headings []float64
		for i := range 6 {
			a := .7 + turn*float64(i)
			points, headings = append(points, Polar(r, a)), append(headings, a+math.Copysign(math.Pi/2, turn))
		}
		for _, pts := range Smooth(points, headings).Flatten(0.01) {
			for _, p := range pts {
				if off := math.Abs(float64(p.Long()) - r); off > .01 {
					t.Errorf("turns of %v: %v mm off the circle", turn, off)
				}
			}
		}
	}
	line := []Point{{0, 0}, {30, 40}, {60, 80}}
	h := math.Atan2(-40, 30) // counter-clockwise, y downward
	for _, pts := range Smooth(line, []float64{h, h, h}).Flatten(0.01) {
		for _, p := range pts {
			if off := math.Abs(float64(.8*p.X - .6*p.Y)); off > 1e-9 {
				t.Errorf("%v lies %v off the line", p, off)
			}
		}
	}
}

// The middle of a turned text's baseline is where it is put, whichever way it is turned.
func TestTurnedTextIsCentred(t *testing.T) {
	for _, angle := range []float64{0, .5, math.Pi / 2, -2} {
		page := &Page{}
		page.TurnedText(Point{50, 60}, angle, "Gate hinge", Body)
		text := page.Ops[0].(Text)
		if middle := text.At.Add(Polar(Body.Width(text.String)/2, angle)); middle.Sub(Point{50, 60}).Long() > 1e-9 {
			t.Errorf("turned by %v its middle is at %v", angle, middle)
		}
	}
}
