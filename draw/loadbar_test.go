package draw

import (
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// The bar's black part is the lights' share of it, beside the other load's.
func TestLoadBar(t *testing.T) {
	page := &paper.Page{}
	LoadBar(place.NewBoard(page, room), paper.Rect{X: 30, Y: 50, W: 100, H: 4}, 0.25, 0.5)
	for _, op := range page.Ops {
		if f, ok := op.(paper.Fill); ok {
			if from, to := f.Path[0].To.X, f.Path[1].To.X; from != 55 || to != 105 {
				t.Errorf("lights from %v to %v, want 55 to 105", from, to)
			}
			return
		}
	}
	t.Error("no black part")
}
