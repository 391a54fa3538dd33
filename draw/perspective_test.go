package draw

import (
	"fmt"
	"math"
	"sync"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/spec"
)

var pictureRoom = paper.Rect{X: 20, Y: 40, W: 107, H: 88}

// plans are specs that tests have solved, by their text.
var plans sync.Map

// solved returns the plan of a spec, solved once for all tests: they only read it.
func solved(t *testing.T, source []byte) *layout.Plan {
	t.Helper()
	once, _ := plans.LoadOrStore(string(source), sync.OnceValues(func() (*layout.Plan, error) {
		s, err := spec.Read("test.yaml", source)
		if err != nil {
			return nil, err
		}
		return layout.Solve(s), nil
	}))
	plan, err := once.(func() (*layout.Plan, error))()
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

func example(t *testing.T, name string) *layout.Plan {
	t.Helper()
	source, err := examples.Files.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return solved(t, source)
}

// tunnel is a plain straight tunnel of so many arches, invented.
func tunnel(t *testing.T, arches int, more string) *layout.Plan {
	t.Helper()
	spacing := "\n  spacing: 1.3 m"
	if arches == 1 {
		spacing = ""
	}
	return solved(t, fmt.Appendf(nil, "hoopwright: 1\ntitle: Test\nunits: metric\ntunnel:\n  arches: %d%s\narch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m}\n%s", arches, spacing, more))
}

// outlines returns the lines of pipe from foot to foot: the strokes of many points, far to near.
func outlines(page *paper.Page) [][]paper.Point {
	var list [][]paper.Point
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && len(s.Path) > 100 {
			list = append(list, s.Path.Flatten(1)[0])
		}
	}
	return list
}

// In one-point perspective a plane square to the line of sight keeps its shape: every arch of a straight, level tunnel is the first one
// shrunk about the vanishing point by d/(d + s), the rule of similar triangles (any textbook of perspective).
func TestArchesShrinkAboutTheVanishingPoint(t *testing.T) {
	plan := tunnel(t, 6, "")
	page := &paper.Page{}
	if !Perspective(page, pictureRoom, plan, true) {
		t.Fatal("nothing drawn")
	}
	lines := outlines(page)
	if len(lines) != 6 {
		t.Fatalf("%d arches drawn, want 6", len(lines))
	}
	near := lines[5]
	width := func(l []paper.Point) paper.Length { return l[len(l)-1].X - l[0].X }
	d := standOff * float64(plan.Arches[0].Span)
	// The vanishing point: at the first arch's middle, at eye height.
	scale := float64(width(near)) / float64(plan.Arches[0].Span)
	vanish := paper.Point{X: (near[0].X + near[len(near)-1].X) / 2, Y: near[0].Y - paper.Length(float64(eyeHeight)*scale)}
	for k := range 6 {
		far := lines[5-k]
		share := d / (d + float64(k)*float64(plan.Spec.Tunnel.Spacing))
		if got := float64(width(far) / width(near)); math.Abs(got-share) > 0.01 {
			t.Errorf("arch %d is %.3f as wide as the first, want %.3f", k+1, got, share)
		}
		for _, i := range []int{0, len(far) / 4, len(far) / 2} {
			want := vanish.Add(near[i].Sub(vanish).Times(share))
			if off := far[i].Sub(want).Long(); off > 0.7 { // end arches carry half a ridge piece and stand some millimetres higher
				t.Errorf("arch %d, point %d: %v, want %v", k+1, i, far[i], want)
			}
		}
	}
	// The first arch is the solved curve at one scale, to 0.1 mm.
	for i, p := range plan.Arches[0].Curve {
		want := paper.Point{X: vanish.X + paper.Length(float64(p.X)*scale), Y: near[0].Y - paper.Length(float64(p.Y)*scale)}
		if near[i].Sub(want).Long() > 0.1 {
			t.Fatalf("point %d of the first arch: %v, want %v", i, near[i], want)
		}
	}
}

// Whatever the tunnel, the picture stays in its room, no line is too thin for a copy, and a long tunnel makes no endless picture.
func TestPictureKeepsToItsRoom(t *testing.T) {
	guys := "guys: {arches: [1, last], from: 1.8 m, out: 1.5 m}\n"
	for name, plan := range map[string]*layout.Plan{
		"garden": example(t, "garden"), "parkwalk": example(t, "parkwalk"), "schoolyard": example(t, "schoolyard"),
		"one": tunnel(t, 1, ""), "two": tunnel(t, 2, guys), "many": tunnel(t, 240, guys),
		"bent":    tunnel(t, 12, guys+"site: {route: [{straight: 2 m}, {left: 160 deg, radius: 4 m}, {straight: rest}]}\n"),
		"sloping": tunnel(t, 5, "site: {levels: [{arch: 1, left: 0 mm, right: 200 mm}, {arch: last, left: 900 mm, right: 900 mm}]}\n"),
		"rows":    tunnel(t, 6, "lights: {rows: {first: 300 mm, step: 300 mm, up to: 1.8 m, strings: [mini led 100 warm]}, drops: [{where: ridge, string: drop led 100 warm, hang: 250 mm}]}\n"),
		"bare":    tunnel(t, 4, "ridge: false\n"),
	} {
		page := &paper.Page{}
		if !Perspective(page, pictureRoom, plan, true) {
			t.Errorf("%s: nothing drawn", name)
		}
		if n := len(page.Ops); n > 2500 {
			t.Errorf("%s: %d operations", name, n)
		}
		room := pictureRoom.Inset(-paper.Emphasis.Width)
		for _, op := range page.Ops {
			var path paper.Path
			switch op := op.(type) {
			case paper.Stroke:
				path = op.Path
				if op.Pen.Width < paper.Thin.Width {
					t.Errorf("%s: a line of %v mm", name, op.Pen.Width)
				}
			case paper.Fill:
				path = op.Path
			}
			for _, piece := range path.Flatten(0.05) {
				for _, p := range piece {
					if !room.Contains(p) {
						t.Fatalf("%s: %v lies outside the room", name, p)
					}
				}
			}
		}
	}
}

// Arches nearer on paper than a copy keeps apart are left out, the last one never.
func TestFarArchesAreThinnedOut(t *testing.T) {
	page := &paper.Page{}
	plan := tunnel(t, 120, "")
	Perspective(page, pictureRoom, plan, true)
	lines := outlines(page)
	if len(lines) < 8 || len(lines) > 40 {
		t.Fatalf("%d arches drawn of 120", len(lines))
	}
	for i := 1; i+1 < len(lines); i++ { // the last one may stand nearer
		gap := lines[i][0].Sub(lines[i+1][0]).Long()
		if gap < leastStep-0.01 {
			t.Errorf("two feet %v mm apart", gap)
		}
	}
}

func TestCropKeepsWhatIsInside(t *testing.T) {
	room := paper.Rect{X: 0, Y: 0, W: 10, H: 10}
	at := func(x, y paper.Length) paper.Point { return paper.Point{X: x, Y: y} }
	for _, c := range []struct{ line, want []paper.Point }{
		{[]paper.Point{at(-5, 5), at(15, 5)}, []paper.Point{at(0, 5), at(10, 5)}},
		{[]paper.Point{at(2, 2), at(4, 4), at(8, 2)}, []paper.Point{at(2, 2), at(4, 4), at(8, 2)}},
		{[]paper.Point{at(5, -5), at(5, 5)}, []paper.Point{at(5, 0), at(5, 5)}},
		{[]paper.Point{at(-3, 11), at(20, 11)}, nil},
	} {
		pieces := crop(c.line, room)
		if len(c.want) == 0 {
			if len(pieces) > 0 {
				t.Errorf("%v leaves %v", c.line, pieces)
			}
			continue
		}
		if len(pieces) != 1 || fmt.Sprint(pieces[0]) != fmt.Sprint(c.want) {
			t.Errorf("%v is cropped to %v, want %v", c.line, pieces, c.want)
		}
	}
	if two := crop([]paper.Point{at(1, 1), at(1, -4), at(9, -4), at(9, 1)}, room); len(two) != 2 {
		t.Errorf("a line that leaves and comes back makes %d pieces", len(two))
	}
}
