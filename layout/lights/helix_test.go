package lights

import (
	"math"
	"testing"

	"hoopwright/layout/measure"
)

// A 24 ft string just covers a 10 ft leg of half-inch pipe: common practice, no source. The figures follow from it by
// L² = h² + (n·π·D)², worked by hand: L/h = 2.4 is an angle of acos(1/2.4) = 65.38° from the pipe's axis.
func TestStringThatJustCoversALeg(t *testing.T) {
	c := job{pipe: 120 * inch, core: .99 * inch, wire: .15 * inch, string: 24 * foot}.wind()
	if c.count != 1 || c.fault != sound || c.covers != 1 {
		t.Fatalf("got %+v", c)
	}
	near(t, "turns", c.turns, 84.18, .005)
	near(t, "pitch, in", c.pitch.Inches(), 1.426, .0005)
	near(t, "left over", float64(c.leftOver), 0, 1e-9)
	angle := math.Atan(math.Pi * .99 / c.pitch.Inches())
	near(t, "angle from the axis, degrees", angle*180/math.Pi, 65.38, .005)
}

// The inverse, for a 120 in leg and D .99 in, worked by hand from the same triangle.
func TestStringThatAPitchNeeds(t *testing.T) {
	for _, row := range []struct{ pitch, feet float64 }{{1, 32.67}, {2, 18.49}, {4, 12.67}} {
		c := job{pipe: 120 * inch, core: .99 * inch, wire: .15 * inch, string: 50 * foot, pitch: measure.Length(row.pitch) * inch}.wind()
		near(t, "string, ft", float64(c.wound/foot), row.feet, .005)
		near(t, "all of it", float64(c.wound+c.leftOver), float64(50*foot), 1e-9)
	}
}

// The helix measured instead of unrolled: the wire's middle followed in 200 000 straight steps round the pipe.
func TestHelixByMeasuringIt(t *testing.T) {
	for _, j := range []job{
		{pipe: 119 * inch, core: .99 * inch, wire: .15 * inch, string: 24 * foot},
		{pipe: 3175, core: 29, wire: 4, string: 10000},
		{pipe: 52 * inch, core: 1.2 * inch, wire: .15 * inch, string: 8 * foot},
		{pipe: 119 * inch, core: .99 * inch, wire: .15 * inch, string: 11 * foot, pitch: 2 * inch},
	} {
		c := j.wind()
		const steps = 200000
		at := func(i int) (x, y, z float64) {
			share := float64(i) / steps
			sin, cos := math.Sincos(2 * math.Pi * c.turns * share)
			return float64(j.core) / 2 * cos, float64(j.core) / 2 * sin, float64(c.pitch) * c.turns * share
		}
		var sum float64
		for i := 1; i <= steps; i++ {
			x0, y0, z0 := at(i - 1)
			x1, y1, z1 := at(i)
			sum += math.Sqrt((x1-x0)*(x1-x0) + (y1-y0)*(y1-y0) + (z1-z0)*(z1-z0))
		}
		near(t, "wound, mm", float64(c.wound), sum, 0.02)
		near(t, "along the pipe, mm", float64(c.pitch)*c.turns, float64(j.pipe)*c.covers, 1e-6)
		near(t, "strings' account, mm", float64(c.wound+c.leftOver), float64(c.count)*float64(j.string), 1e-6)
	}
}

func TestFewestStringsThatReach(t *testing.T) {
	leg := job{pipe: 119 * inch, core: .99 * inch, wire: .15 * inch}
	for _, row := range []struct {
		string measure.Length
		count  int
	}{{24 * foot, 1}, {119 * inch, 2}, {118 * inch, 2}, {60 * inch, 2}, {59 * inch, 3}} {
		j := leg
		j.string = row.string
		c := j.wind()
		if c.count != row.count || c.fault != sound {
			t.Errorf("%v in strings: got %d (fault %v), want %d", row.string.Inches(), c.count, c.fault, row.count)
		}
	}
}

func TestStringsThatCannotBeWound(t *testing.T) {
	leg := job{pipe: 119 * inch, core: .99 * inch, wire: .15 * inch}

	short := leg
	short.string, short.count = 100*inch, 1
	c := short.wind()
	if c.fault != tooShort || c.count != 1 || c.covers >= 1 || c.leftOver != 0 {
		t.Errorf("short: got %+v", c)
	}

	long := leg
	long.string, long.count = 300*foot, 1
	c = long.wind()
	// Side by side a turn takes .15 in of pipe and, nearly, a girth of string: 119/.15 turns of π·.99 in.
	if c.fault != touching || c.pitch != long.wire {
		t.Errorf("long: got %+v", c)
	}
	near(t, "wound, in", c.wound.Inches(), 119/.15*math.Hypot(math.Pi*.99, .15), 1e-6)
	near(t, "account", float64(c.wound+c.leftOver), float64(300*foot), 1e-6)

	tight := leg
	tight.string, tight.pitch = 24*foot, .1*inch
	if c = tight.wind(); c.fault != touching || c.pitch != tight.wire || c.covers != 1 {
		t.Errorf("tight: got %+v", c)
	}
}
