package draw

import (
	"math"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// changed returns the plan of an example, with parts of its text put in place of others. Examples and changes are invented.
func changed(t *testing.T, name string, swap ...string) *layout.Plan {
	t.Helper()
	source, err := examples.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return solved(t, []byte(strings.NewReplacer(swap...).Replace(string(source))))
}

// Arches that stress the picture.
var profiles = []struct {
	name, example string
	swap          []string
}{
	{"garden", "garden.yaml", nil},
	{"metric", "schoolyard.yaml", nil},
	{"three quarter inch, couplings", "parkwalk.yaml", nil},
	{"uneven sticks and feet", "garden.yaml", []string{"sticks: [10 ft, 10 ft]", "sticks: [[10 ft, 14 in], 10 ft]", "  soil: soft", "  soil: soft\n  levels: [{arch: 1, left: 0 in, right: 9 in}, {arch: last, left: 0 in, right: 9 in}]"}},
	{"one stick, no ridge", "garden.yaml", []string{"sticks: [10 ft, 10 ft]", "sticks: [20 ft]", "arch:\n", "ridge: false\n\narch:\n", "    - {where: ridge, string: mini led 50 warm, count: 1}\n", ""}},
	{"wide pipe on paper", "garden.yaml", []string{"pvc sch40 1/2 in", "pvc sch40 1 1/4 in", "sticks: [10 ft, 10 ft]", "sticks: [4 ft, 4 ft]", "span: 7 ft", "span: 4 ft", "from: 6 ft", "from: 3 ft"}},
	{"rows", "garden.yaml", []string{"lights:\n", "lights:\n  rows: {first: 12 in, step: 12 in, up to: 6 ft, strings: [mini led 100 warm, mini led 100 red]}\n"}},
	{"leaning stakes", "garden.yaml", []string{"depth: 20 in}\n\nguys", "depth: 20 in, lean: 10 deg}\n\nguys"}},
	{"low, and none like it stands", "garden.yaml", []string{"span: 7 ft\n", "span: 19 ft\n"}},
	{"tall", "garden.yaml", []string{"span: 7 ft\n", "span: 4 ft\n", "width: 4 ft,", "width: 3 ft,"}},
}

// profileRoom is what Letter leaves a sheet under its first lines.
var profileRoom = paper.Rect{X: 20, Y: 43, W: 187.9, H: 190}

func drawnProfile(t *testing.T, p *layout.Plan, k *arch.Kind) (*paper.Page, Profile, paper.Scale, paper.Rect) {
	f := Profile{Kind: k, Units: p.Spec.Units, OpeningWidth: p.Spec.Tunnel.OpeningWidth, OpeningHeight: p.Spec.Tunnel.OpeningHeight}
	s := f.Scale(ProfileScales(p.Spec.Units), profileRoom)
	page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
	within := profileRoom
	within.H = f.Height(s)
	if lost := f.Draw(page, within, s); len(lost) > 0 {
		t.Errorf("arches %v: no place for %q", k.Numbers, lost)
	}
	return page, f, s, within
}

// pipes returns the flattened lines of the arch: curves that begin and end at the feet.
func pipes(page *paper.Page, k *arch.Kind) [][]paper.Point {
	var list [][]paper.Point
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && len(s.Path) == len(k.Curve) && s.Path[1].Verb == paper.Cubic {
			list = append(list, s.Path.Flatten(0.01)[0])
		}
	}
	return list
}

// off returns how far a point lies from a polyline.
func off(p paper.Point, line []paper.Point) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		a, run := line[i-1], line[i].Sub(line[i-1])
		t := float64((p.X-a.X)*run.X+(p.Y-a.Y)*run.Y) / max(float64(run.X*run.X+run.Y*run.Y), 1e-12)
		least = min(least, float64(p.Sub(a.Add(run.Times(min(max(t, 0), 1)))).Long()))
	}
	return least
}

// TestProfileIsTrueToScale measures the drawn pipe on the page: span, crown and every point between against the plan, to 0.1 mm.
func TestProfileIsTrueToScale(t *testing.T) {
	const fine = 0.1
	for _, c := range profiles {
		t.Run(c.name, func(t *testing.T) {
			p := changed(t, c.example, c.swap...)
			for _, k := range p.Kinds {
				page, _, s, _ := drawnProfile(t, p, k)
				lines := pipes(page, k)
				if len(lines) != 1 {
					t.Fatalf("%d lines of pipe", len(lines))
				}
				line := lines[0]
				left, right := line[0], line[len(line)-1]
				if span := float64(right.X - left.X); math.Abs(span-float64(k.Span)/s.Ratio) > fine {
					t.Errorf("span measures %v mm, want %v", span, float64(k.Span)/s.Ratio)
				}
				if rise := float64(left.Y - right.Y); math.Abs(rise-float64(k.RightGround-k.LeftGround)/s.Ratio) > fine {
					t.Errorf("the right foot is %v mm higher", rise)
				}
				// The crown is a point of the curve: its height is from the middle of the two feet.
				ground := (left.Y + right.Y) / 2
				crown := k.PointAt(k.CrownTape)
				at := paper.Point{X: (left.X+right.X)/2 + s.Length(float64(crown.X)), Y: ground - s.Length(float64(k.Crown))}
				if d := off(at, line); d > fine {
					t.Errorf("the crown is %v mm off the line", d)
				}
				for tape := measure.Length(0); tape <= k.Length; tape += k.Length / 97 {
					q := k.PointAt(tape)
					at := paper.Point{X: (left.X+right.X)/2 + s.Length(float64(q.X)), Y: ground - s.Length(float64(q.Y))}
					if d := off(at, line); d > 0.02 {
						t.Errorf("at %v of tape the line is %v mm off", tape, d)
					}
				}
			}
		})
	}
}

// TestProfileSaysItsNumbers finds the figures that the arch is checked by, as the plan has them.
func TestProfileSaysItsNumbers(t *testing.T) {
	for _, c := range profiles {
		t.Run(c.name, func(t *testing.T) {
			p := changed(t, c.example, c.swap...)
			u := p.Spec.Units
			for _, k := range p.Kinds {
				page, _, _, _ := drawnProfile(t, p, k)
				var texts []string
				for _, op := range page.Ops {
					if s, ok := op.(paper.Text); ok {
						texts = append(texts, s.String)
						if s.Lettering.Size < 11 {
							t.Errorf("%q is set in %v pt", s.String, s.Lettering.Size)
						}
					}
				}
				all := strings.Join(texts, "\n") + "\n"
				for _, want := range []string{"Height " + u.Inches(u.Taped(k.Crown)), "Feet " + u.Inches(u.Taped(k.Span)), "L\n", "R\n", u.Inches(u.Taped(k.BendRadius))} {
					if !strings.Contains(all, want) {
						t.Errorf("nowhere %q in %q", want, all)
					}
				}
				if k.BoxWidth > 0 && !strings.Contains(all, u.Inches(u.Taped(k.ShoulderWidth))) {
					t.Errorf("no shoulder width %s", u.Inches(k.ShoulderWidth))
				}
			}
		})
	}
}

// TestProfileStaysInItsRoom: no line and no letter outside what the caller gave.
func TestProfileStaysInItsRoom(t *testing.T) {
	for _, c := range profiles {
		t.Run(c.name, func(t *testing.T) {
			p := changed(t, c.example, c.swap...)
			for _, k := range p.Kinds {
				page, f, s, within := drawnProfile(t, p, k)
				if f.Height(s) > profileRoom.H || f.Width(s) > profileRoom.W {
					t.Errorf("takes %v by %v", f.Width(s), f.Height(s))
				}
				slack := within.Inset(-0.5)
				for _, op := range page.Ops {
					var points []paper.Point
					switch op := op.(type) {
					case paper.Stroke:
						for _, piece := range op.Path.Flatten(0.05) {
							points = append(points, piece...)
						}
					case paper.Text:
						run := paper.Polar(op.Lettering.Width(op.String), op.Angle)
						points = []paper.Point{op.At, op.At.Add(run)}
					}
					for _, q := range points {
						if !slack.Contains(q) {
							t.Fatalf("%v reaches %v, outside %v", op, q, within)
						}
					}
				}
			}
		})
	}
}

// TestSmallestScale: what no scale of the series fits is drawn at the smallest, not left out.
func TestSmallestScale(t *testing.T) {
	p := changed(t, "garden.yaml")
	f := Profile{Kind: p.Kinds[0], Units: p.Spec.Units}
	if s := f.Scale(paper.MetricScales, paper.Rect{W: 1, H: 1}); s != paper.MetricScales[len(paper.MetricScales)-1] {
		t.Errorf("scale %v", s)
	}
	if s := f.Scale(paper.ImperialScales, profileRoom); s.Ratio != 16 {
		t.Errorf("the garden arch is drawn at %s, want 3/4 in = 1 ft: it is to fill its page", s.Words)
	}
}
