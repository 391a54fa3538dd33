package lights

import (
	"fmt"
	"math"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// sagSamples is into how many parts a bay is cut to look for where its row comes nearest to people. Its height is a parabola and, on a bend,
// so nearly is its distance from the middle; both are extreme at an arch or near mid bay.
const sagSamples = 8

// rowsInOpening says which rows of a wall hang in the space that people walk through, at an arch or where they sag or cut across a bend between two.
func (l *layer) rowsInOpening(hung []Row) {
	t, units := l.Spec.Tunnel, l.Spec.Units
	lowest, worst := -1, inOpening{}
	for i, r := range hung {
		at, ok := l.inOpening(r)
		if !ok {
			continue
		}
		if lowest < 0 {
			lowest, worst = i, at
		} else if at.across < worst.across {
			worst = at
		}
	}
	if lowest < 0 {
		return
	}
	level := finding.LookAt
	if l.Spec.Given("tunnel.opening.height") && l.Spec.Given("tunnel.opening.width") {
		level = finding.MustFix
	}
	end := "no row of this wall clears it; leave the wall out, or make the opening narrower"
	var cure []finding.Change
	last := measure.Length(0)
	if lowest > 0 {
		last = hung[lowest-1].Tape
		end = fmt.Sprintf("end the rows at %s", units.Tape(last))
		cure = []finding.Change{{Key: "lights.rows.up to", Value: units.Written(last)}}
	}
	l.says.add(complaint{level: level, code: "row-in-opening", key: "lights.rows.up to", cure: cure, worse: -float64(last), text: fmt.Sprintf(
		"Row %d of the %v wall hangs in the opening in bay %d, %s above the ground and %s from the middle, where %s is to stay clear: %s.",
		worst.row, hung[0].Wall, worst.bay, units.Room(worst.height), units.Inches(worst.across), units.Inches(t.OpeningWidth/2), end)})
}

// inOpening is where a row hangs farthest into the opening.
type inOpening struct {
	row, bay       int
	height, across measure.Length
}

// inOpening returns where a row hangs nearest to the middle within the opening, and whether it hangs in it at all.
func (l *layer) inOpening(r Row) (worst inOpening, ok bool) {
	t := l.Spec.Tunnel
	for bay := 1; bay < len(l.Arches); bay++ {
		if l.Spec.IsWay(r.Wall, bay) {
			continue
		}
		for k := range sagSamples + 1 {
			height, across := l.rowAt(r, bay, float64(k)/sagSamples)
			if across >= t.OpeningWidth/2-hair || height >= t.OpeningHeight-hair {
				continue
			}
			if !ok || across < worst.across {
				worst, ok = inOpening{r.Number, bay, height, across}, true
			}
		}
	}
	return worst, ok
}

// rowAt returns where a row is at a share of the way along a bay: its height above the ground line, its sag counted, and its distance from the
// middle of the walk. On a bend the middle runs along an arc and the row straight.
func (l *layer) rowAt(r Row, bay int, share float64) (height, across measure.Length) {
	a, b := l.Ground.Stations[bay-1], l.Ground.Stations[bay]
	turn := float64(b.Heading - a.Heading)
	t := measure.Length(share)
	dx, dy := b.At.X-a.At.X, b.At.Y-a.At.Y
	// An arc over a chord c rises (c/2)·tan(turn/4) over its middle, on the chord's left for a turn to the right.
	bulge := 2 * t * (1 - t) * measure.Length(math.Tan(turn/4))
	x, y := a.At.X+dx*t-dy*bulge, a.At.Y+dy*t+dx*bulge
	from, to := r.Marks[bay-1], r.Marks[bay]
	sin, cos := math.Sincos(float64(a.Heading) + turn*share)
	across = (from.X+(to.X-from.X)*t-x)*measure.Length(cos) - (from.Y+(to.Y-from.Y)*t-y)*measure.Length(sin)
	if r.Wall == spec.Left {
		across = -across
	}
	h := r.Heights
	return h[bay-1] + (h[bay]-h[bay-1])*t - dip(l.Spec.Lights.Rows.Sag, share), across
}
