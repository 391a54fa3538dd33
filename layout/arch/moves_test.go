package arch_test

import (
	"math"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// TestMoves: crown per degree of outward lean −0.47 in, per ±1° rock ±0.3 in, per inch of span −0.28 in, by another solver. Lean is by 1 in
// over the 28 in that show.
func TestMoves(t *testing.T) {
	k, _ := arch.Solve(snug())
	m, ok := k.Moves()
	if !ok || m.By != in {
		t.Fatalf("moves %+v, %v", m, ok)
	}
	degrees := math.Atan(1.0/28) * 180 / math.Pi
	near(t, "lean", m.Lean.Crown.Inches(), -.47*degrees, .12*degrees)
	near(t, "span", m.Wider.Crown.Inches(), -.28, .05)
	near(t, "rock", m.Rock.Crown.Inches(), .3, .15)
	// Lengths alone scale: a weightless arch twice as wide, of pipe twice as long, is twice as high (Euler on homogeneous functions). Sleeves, joints and
	// weight stay as they are, hence the room.
	near(t, "crown from its moves", 90*m.Wider.Crown.Inches()+241*m.Long.Crown.Inches(), k.Crown.Inches(), 6)

	near(t, "give at the crown", m.Give.Crown.Inches(), k.Band.Inches(), .03)

	// Each is what an arch of those figures differs by.
	wide := snug()
	wide.Spec.Span += in
	w, _ := arch.Solve(wide)
	near(t, "shoulder, wider", m.Wider.Shoulder.Inches(), (w.ShoulderWidth - k.ShoulderWidth).Inches(), 1e-6)
	long := snug()
	long.Spec.Left, long.Spec.Right = []measure.Length{120.5 * in}, []measure.Length{120.5 * in}
	l, _ := arch.Solve(long)
	near(t, "crown, longer", m.Long.Crown.Inches(), (l.Crown - k.Crown).Inches(), 1e-6)
}

// TestMovesOfWhatDoesNotStand: an arch that is only drawn has none, and a single stick has no joint to rock.
func TestMovesOfWhatDoesNotStand(t *testing.T) {
	heavy := snug()
	heavy.Loads = []arch.Load{{From: 0, To: 241 * in, Weight: 40000 * pound}}
	if k, _ := arch.Solve(heavy); k.LoadFactor != 0 {
		t.Fatal("it stands after all")
	} else if _, ok := k.Moves(); ok {
		t.Error("a sketch has moves")
	}
	one := snug()
	one.Spec.OneStick, one.Spec.Left, one.Spec.Right = true, []measure.Length{241 * in}, nil
	k, _ := arch.Solve(one)
	m, ok := k.Moves()
	if !ok || m.Rock != (arch.Move{}) || m.Long.Crown <= 0 {
		t.Errorf("one stick: %+v, %v", m, ok)
	}
}

// TestJoints: laid by hand from the catalog's socket of 0.688 in, take-off of 0.5 in and coupling stop of 3/32 in.
func TestJoints(t *testing.T) {
	i := snug()
	i.Spec.Left, i.Spec.Right = []measure.Length{100 * in, 20 * in}, []measure.Length{120 * in}
	k, _ := arch.Solve(i)
	j := k.Joints()
	if len(j) != 2 || j[0].Crown || !j[1].Crown {
		t.Fatalf("joints %v", j)
	}
	near(t, "coupling from", j[0].From.Inches(), 100-.688, 1e-9)
	near(t, "coupling to", j[0].To.Inches(), 100+3.0/32+.688, 1e-9)
	near(t, "crown from", j[1].From.Inches(), 120+3.0/32-.688, 1e-9)
	near(t, "crown middle", j[1].Middle().Inches(), k.CrownTape.Inches(), 1e-9)

	i.Spec.Left, i.Spec.Right = i.Spec.Right, i.Spec.Left
	mirrored, _ := arch.Solve(i)
	m := mirrored.Joints()
	if len(m) != 2 || !m[0].Crown {
		t.Fatalf("mirrored joints %v", m)
	}
	near(t, "mirrored coupling", (k.Length - m[1].Middle()).Inches(), j[0].Middle().Inches(), 1e-9)
	i.Spec.OneStick, i.Spec.Left, i.Spec.Right = true, []measure.Length{240 * in}, nil
	if k, _ := arch.Solve(i); len(k.Joints()) != 0 {
		t.Errorf("one stick has joints %v", k.Joints())
	}
}

// TestWidthsAcross: the legs' places at a height are as far apart as the widths say, and at that height on sloping ground too.
func TestWidthsAcross(t *testing.T) {
	i := snug()
	i.LeftGround, i.RightGround = -4*in, 4*in
	k, _ := arch.Solve(i)
	a, b, ok := k.Across(k.WidestAt)
	if !ok {
		t.Fatal("nothing where it is widest")
	}
	near(t, "widest", float64(b.X-a.X), float64(k.Widest), 1e-6)
	for _, p := range []arch.Point{a, b} {
		near(t, "height there", float64(p.Y-8*in*p.X/k.Span), float64(k.WidestAt), 1e-3)
	}
	for _, h := range []measure.Length{k.WidestAt - in, k.WidestAt + in} {
		if a, b, _ := k.Across(h); b.X-a.X > k.Widest {
			t.Errorf("wider at %v", h)
		}
	}
	l, r, ok := k.Inside(k.ShoulderHeight)
	near(t, "shoulder", float64(r.X-l.X), float64(k.ShoulderWidth), 1e-6)
	if _, _, above := k.Inside(k.Crown + in); !ok || above {
		t.Error("inside above the crown")
	}
	if _, ok := k.TapeAt(spec.Left, k.Crown+in); ok {
		t.Error("tape above the crown")
	}
}
