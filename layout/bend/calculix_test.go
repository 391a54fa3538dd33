package bend

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// CalculiX, a general finite element program (Debian's calculix-ccx), is handed the same rods as decks of its own and asked where they stand. Its B32R beams of PIPE section are solid
// elements inside. They are laid on a curve that fits the feet and nothing more; a heat gradient over the section makes their natural shape straight, or none is given and the curve is natural. What
// was learnt on the way: Poisson's ratio must be 0 where there is heat, for the sections at the nodes are held stiff against growing sideways, and the crown comes
// 3 mm low (less with more elements, 0.03 mm with 0); a node with a spring or an equation on it loses its heat; with Poisson's ratio 0 the torsional stiffness is the bending stiffness, which the
// rods here have too.

// deck writes one or two arches beside each other, crowns joined, to CalculiX.
type deck struct {
	bytes.Buffer
	s, x, y  []float64 // of the nodes of one arch
	stretch  []int     // of each element, which of the rod's
	trib     []float64 // m, of each node
	crown    int
	rod      Rod
	curve    func(s float64) float64 // curvature of the mesh, negative
	heat     bool
	scale    []float64 // how many arches each stands for
	elements int
}

const (
	deckOD, deckWall = .021336, .0027686
	deckStiff        = 300 // times the pipe's, of the rigid fitting
)

// bent finds a and b of the curvature −(a + b·cos 2πs/L) that fits plumb feet.
func bentMesh(length, dx float64) func(s float64) float64 {
	a := math.Pi / length
	reach := func(b float64) float64 {
		x, angle := 0.0, math.Pi/2
		const n = 4000
		for i := range n {
			h := length / n
			k := -(a + b*math.Cos(2*math.Pi*(float64(i)+.5)/n))
			x += h * math.Cos(angle+k*h/2)
			angle += k * h
		}
		return x - dx
	}
	low, high := -1.5, .5
	for range 60 {
		if mid := (low + high) / 2; (reach(low) < 0) == (reach(mid) < 0) {
			low = mid
		} else {
			high = mid
		}
	}
	return func(s float64) float64 { return -(a + low*math.Cos(2*math.Pi*s/length)) }
}

func newDeck(rod Rod, crown float64, heat bool, scale ...float64) *deck {
	d := &deck{rod: rod, heat: heat, scale: scale, curve: bentMesh(rod.Length(), rod.DX), s: []float64{0}}
	from := 0.0
	for i, st := range rod.Stretches {
		n := max(int(math.Round(st.Length/.11)), 1)
		if st.Rigid() {
			n = 2
		}
		for e := range n {
			at := from + st.Length*float64(e)/float64(n)
			d.s = append(d.s, at+st.Length/float64(2*n), at+st.Length/float64(n))
			d.stretch = append(d.stretch, i)
		}
		from += st.Length
	}
	d.elements = len(d.stretch)
	d.trib = make([]float64, len(d.s))
	for e := range d.elements {
		h := d.s[2*e+2] - d.s[2*e]
		d.trib[2*e] += h / 6
		d.trib[2*e+1] += h * 4 / 6
		d.trib[2*e+2] += h / 6
	}
	x, y, angle, at := 0.0, 0.0, math.Pi/2, 0.0
	for _, to := range d.s {
		for steps := 0; at < to && steps < 50; steps++ {
			h := (to - at) / float64(50-steps)
			k := d.curve(at + h/2)
			x += h * math.Cos(angle+k*h/2)
			y += h * math.Sin(angle+k*h/2)
			angle += k * h
			at += h
		}
		at = to
		d.x, d.y = append(d.x, x), append(d.y, y)
	}
	d.crown = d.node(crown)
	d.mesh()
	return d
}

// node is the nearest end of an element.
func (d *deck) node(at float64) int {
	best := 0
	for i := 0; i < len(d.s); i += 2 {
		if math.Abs(d.s[i]-at) < math.Abs(d.s[best]-at) {
			best = i
		}
	}
	return best
}

func (d *deck) line(format string, args ...any) { fmt.Fprintf(d, format+"\n", args...) }

func (d *deck) mesh() {
	d.line("*NODE,NSET=NALL")
	for r := range d.scale {
		for i := range d.s {
			d.line("%d,%.12g,%.12g,%g", 1000*r+i+1, d.x[i], d.y[i], 1.4*float64(r))
		}
	}
	section := math.Pi / 64 * (math.Pow(deckOD, 4) - math.Pow(deckOD-2*deckWall, 4))
	for r, times := range d.scale {
		for i, st := range d.rod.Stretches {
			name := fmt.Sprintf("S%dR%d", i, r)
			d.line("*ELEMENT,TYPE=B32R,ELSET=%s", name)
			for e, of := range d.stretch {
				if of == i {
					d.line("%d,%d,%d,%d", 1000*r+e+1, 1000*r+2*e+1, 1000*r+2*e+2, 1000*r+2*e+3)
				}
			}
			stiff := st.Stiffness
			if st.Rigid() {
				stiff = deckStiff * d.rod.Stretches[i-1].Stiffness
			}
			if st.Torsion == st.Stiffness || st.Rigid() {
				d.line("*MATERIAL,NAME=M%s\n*ELASTIC\n%.8g,0,0\n*EXPANSION,ZERO=0\n1e-3", name, times*stiff/section)
				d.line("*BEAM SECTION,ELSET=%s,MATERIAL=M%s,SECTION=PIPE\n%.8g,%.8g\n0,0,1", name, name, deckOD/2, deckWall)
				continue
			}
			e, g := times*stiff/section, times*st.Torsion/(2*section)
			cos, sin := d.along(i)
			d.line("*ORIENTATION,NAME=O%s,SYSTEM=RECTANGULAR\n%.9g,%.9g,0,%.9g,%.9g,0", name, cos, sin, -sin, cos)
			d.line("*MATERIAL,NAME=M%s\n*ELASTIC,TYPE=ENGINEERING CONSTANTS\n%.8g,%.8g,%.8g,0,0,0,%.8g,%.8g\n%.8g", name, e, e, e, g, g, e/2)
			d.line("*EXPANSION,TYPE=ORTHO,ZERO=0\n1e-3,0,0\n*BEAM SECTION,ELSET=%s,MATERIAL=M%s,SECTION=PIPE,ORIENTATION=O%s\n%.8g,%.8g\n0,0,1", name, name, name, deckOD/2, deckWall)
		}
	}
	d.line("*INITIAL CONDITIONS,TYPE=TEMPERATURE\nNALL,0\n*BOUNDARY")
	for r := range d.scale {
		d.line("%d,1,6\n%d,1,6", 1000*r+1, 1000*r+len(d.s))
	}
	if len(d.scale) > 1 {
		d.line("*EQUATION\n2\n%d,3,1.,%d,3,-1.", 1000+d.crown+1, d.crown+1)
	}
}

// along is the direction of the mesh where one of the rod's stretches lies.
func (d *deck) along(stretch int) (cos, sin float64) {
	first, last := slices.Index(d.stretch, stretch), len(d.stretch)-1
	for d.stretch[last] != stretch {
		last--
	}
	x, y := d.x[2*last+2]-d.x[2*first], d.y[2*last+2]-d.y[2*first]
	return x / math.Hypot(x, y), y / math.Hypot(x, y)
}

// natural is the bend that the rod has at a place when nothing acts on it.
func (d *deck) natural(at float64) float64 {
	for _, st := range d.rod.Stretches {
		if at <= st.Length {
			return st.Turn / st.Length
		}
		at -= st.Length
	}
	return 0
}

// step adds a load step: the weight, and pushes for each metre across and along.
func (d *deck) step(across, along float64, more ...string) {
	d.line("*STEP,NLGEOM,INC=300\n*STATIC\n.1,1.,1e-6,.25\n*TEMPERATURE")
	for r := range d.scale {
		for i, s := range d.s {
			gradient := 0.0
			if d.heat {
				gradient = (d.natural(s) - d.curve(s)) / 1e-3
			}
			d.line("%d,0,%.10g,0", 1000*r+i+1, gradient)
		}
	}
	for _, m := range more {
		d.line("%s", m)
	}
	d.line("*CLOAD")
	for r, times := range d.scale {
		for i := 1; i < len(d.s)-1; i++ {
			weight := 0.0
			for _, st := range d.rod.Stretches {
				weight = max(weight, st.Weight/st.Length) // the same all along, save the fitting's
			}
			weight *= d.trib[i]
			for _, l := range d.rod.Loads {
				switch {
				case l.To > l.From:
					weight += l.Weight * d.trib[i] / (l.To - l.From)
				case d.node(l.From) == i:
					weight += l.Weight
				}
			}
			d.line("%d,2,%.8g", 1000*r+i+1, -times*weight)
			if across != 0 {
				d.line("%d,1,%.8g", 1000*r+i+1, times*across*d.trib[i])
			}
			if along != 0 {
				d.line("%d,3,%.8g", 1000*r+i+1, times*along*d.trib[i])
			}
		}
	}
	d.line("*NODE PRINT,NSET=NALL,FREQUENCY=1000\nU,RF\n*END STEP")
}

// solved is what one step came to: displacements and forces by node.
type solved struct{ u, force map[int]vec }

// run has CalculiX solve the deck.
func (d *deck) run(t *testing.T) (steps []solved) {
	t.Helper()
	ccx, err := exec.LookPath("ccx")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("CalculiX is not installed: apt-get install calculix-ccx")
		}
		t.Skip("CalculiX is not installed")
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "arch.inp"), d.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(ccx, "-i", "arch")
	cmd.Dir = dir
	if out, err := cmd.CombinedOutput(); err != nil || bytes.Contains(out, []byte("*ERROR")) {
		t.Fatalf("%v: %s", err, out[max(0, len(out)-600):])
	}
	read, err := os.ReadFile(filepath.Join(dir, "arch.dat"))
	if err != nil {
		t.Fatal(err)
	}
	var into map[int]vec
	for line := range strings.Lines(string(read)) {
		f := strings.Fields(line)
		switch {
		case strings.Contains(line, "displacements"):
			steps = append(steps, solved{map[int]vec{}, map[int]vec{}})
			into = steps[len(steps)-1].u
		case strings.Contains(line, "forces"):
			into = steps[len(steps)-1].force
		case len(f) == 4:
			node, err := strconv.Atoi(f[0])
			if err != nil {
				t.Fatal(err)
			}
			var v vec
			for i := range v {
				v[i], _ = strconv.ParseFloat(f[1+i], 64)
			}
			into[node] = v
		}
	}
	return steps
}

// plumb is the garden's rod with plumb feet, alike all along but for its sleeves, its torsional stiffness that of bending.
func plumbRod() (Rod, float64) {
	rod, crown := gardenRod()
	rod.Start.Angle, rod.Finish.Angle = math.Pi/2, -math.Pi/2
	for i := range rod.Stretches {
		st := &rod.Stretches[i]
		st.Torsion = st.Stiffness
		st.Weight = 2.35 * st.Length
	}
	return rod, crown
}

// TestCalculiXRaised: the crown and the thrust of an arch bent from straight pipe, in still air and in a side gust.
func TestCalculiXRaised(t *testing.T) {
	rod, crown := plumbRod()
	d := newDeck(rod, crown, true, 1)
	d.step(0, 0)
	d.step(4, 0)
	steps := d.run(t)
	still, err := Solve(rod)
	if err != nil {
		t.Fatal(err)
	}
	gust := rod
	gust.Loads = append(append([]Load(nil), rod.Loads...), Load{To: rod.Length(), Push: 4 * rod.Length()})
	blown, err := Solve(gust)
	if err != nil {
		t.Fatal(err)
	}
	last := len(d.s)
	for i, sh := range []*Shape{still, blown} {
		at, force := steps[i].u[d.crown+1], steps[i].force
		within(t, "crown's height, m", sh.At(crown).Y, d.y[d.crown]+at[1], 2e-4)
		within(t, "thrust, N", sh.Thrust, -force[last][0], .005)
		within(t, "lift of the far foot, N", sh.FinishLift, force[last][1], .01) // what lies on the clamped node itself is left out there
		t.Logf("crown %.5f m, CalculiX %.5f; thrust %.3f N, %.3f", sh.At(crown).Y, d.y[d.crown]+at[1], sh.Thrust, -force[last][0])
	}
	sway := blown.At(crown).X - still.At(crown).X
	within(t, "sway, m", sway, steps[1].u[d.crown+1][0]-steps[0].u[d.crown+1][0], .005)
}

// TestCalculiXCrept: an arch crept to its shape at season's end, twisting as pipe does, its crown held aside in a wind along: what holds it there, and how low it is. The pipe, bars, span, weights and wind
// are about the starter's, whose arches lean by a quarter of their height in gusts of 42 mph.
func TestCalculiXCrept(t *testing.T) {
	if testing.Short() {
		t.Skip("a quarter of a minute")
	}
	rod, crown := plumbRod()
	soft := rod
	soft.Stretches = slices.Clone(rod.Stretches)
	for i := range rod.Stretches {
		rod.Stretches[i].Torsion = rod.Stretches[1].Stiffness / 1.4
		soft.Stretches[i].Stiffness *= .6
	}
	late, err := Solve(soft)
	if err != nil {
		t.Fatal(err)
	}
	set := rod.SetTo(late, 48)
	d := newDeck(set, crown, true, 1)
	d.step(0, 0)
	held := [][2]float64{{2, .2}, {4.5, .4}, {6.5, .6}} // N/m of wind, m aside
	for _, h := range held {
		d.step(0, h[0], fmt.Sprintf("*BOUNDARY\n%d,3,3,%g", d.crown+1, h[1]))
	}
	steps := d.run(t)
	ours := followed(t, set, 80, []Load{{To: rod.Length(), Push: rod.Length()}}, crown, nil)
	for i, h := range held {
		for range 40 {
			step := ours.Step(h[0], h[1])
			if ours.Move(step, 0) < 1e-9 {
				break
			}
		}
		a, theirs := ours.Read(h[0]), steps[i+1]
		ridge := theirs.force[d.crown+1][2] - h[0]*d.trib[d.crown]
		within(t, "what holds the crown, N", a.Ridge, ridge, .015)
		within(t, "crown's height, m", a.Crown[1], d.y[d.crown]+theirs.u[d.crown+1][1], .004)
		t.Logf("%g m aside: held with %.3f N, CalculiX %.3f; crown %.4f m, %.4f", h[1], a.Ridge, ridge, a.Crown[1], d.y[d.crown]+theirs.u[d.crown+1][1])
	}
}

// TestCalculiXGuyedRow: an arch with two guys and three without, joined at their crowns, in winds along: lean, and what the guys pull. The mesh's curve is the natural shape here.
func TestCalculiXGuyedRow(t *testing.T) {
	if testing.Short() {
		t.Skip("a quarter of a minute")
	}
	const spring, others = 2000.0, 3.0
	rod, crown := plumbRod()
	still := newDeck(rod, crown, false, 1)
	still.step(0, 0)
	rest := still.run(t)[0].u

	d := newDeck(rod, crown, false, 1, others)
	ties := []Tie{{At: 2.3, X: 0, Z: -1.5, Stiffness: spring}, {At: rod.Length() - 2.3, X: rod.DX, Z: -1.5, Stiffness: spring}}
	d.line("*NODE,NSET=NANCHOR")
	fixed, springs := "*BOUNDARY", ""
	for i := range ties {
		n := d.node(ties[i].At)
		ties[i].At = d.s[n]
		u := rest[n+1] // the anchor moves with the leg until it rests, so that the spring bears nothing then
		d.line("%d,%.12g,%.12g,%.12g", 5001+i, ties[i].X-u[0], ties[i].Y-u[1], ties[i].Z-u[2])
		springs += fmt.Sprintf("%d,%d,%d\n", 9001+i, n+1, 5001+i)
		for axis := range 3 {
			fixed += fmt.Sprintf("\n%d,%d,%d,%.10g", 5001+i, axis+1, axis+1, u[axis])
		}
	}
	d.line("*ELEMENT,TYPE=SPRINGA,ELSET=GUYS\n%s*SPRING,ELSET=GUYS,NONLINEAR\n0.,-1.\n0.,0.\n%g,1.\n*BOUNDARY\n5001,1,3\n5002,1,3", springs, spring)
	d.step(0, 0, fixed)
	winds := []float64{2}
	for _, w := range winds {
		d.step(0, w, fixed)
	}
	steps := d.run(t)

	// The same in our rod: natural bends of the mesh's curve.
	curved := rod
	curved.Stretches = nil
	at := 0.0
	for i, st := range rod.Stretches {
		n := max(int(math.Ceil(st.Length/.05)), 1)
		for range n {
			p := st
			p.Length, p.Weight = st.Length/float64(n), st.Weight/float64(n)
			if st.Rigid() {
				p.Stiffness = deckStiff * rod.Stretches[i-1].Stiffness
			}
			p.Torsion, p.Turn = p.Stiffness, d.curve(at+p.Length/2)*p.Length
			curved.Stretches = append(curved.Stretches, p)
			at += p.Length
		}
	}
	push := []Load{{To: rod.Length(), Push: rod.Length()}}
	guyed, free := followed(t, curved, 80, push, crown, ties), followed(t, curved, 80, push, crown, nil)
	aside := 0.0
	for i, w := range winds {
		for range 40 {
			a, b := guyed.Step(w, aside), free.Step(w, aside)
			more := -(a.Ridge + others*b.Ridge) / (a.Slope + others*b.Slope)
			aside += more
			if max(guyed.Move(a, more), free.Move(b, more)) < 1e-9 {
				break
			}
		}
		a, theirs := guyed.Read(w), steps[i+1].u
		n := d.node(ties[0].At)
		end := vec{ties[0].X, ties[0].Y, ties[0].Z}
		place := func(u vec) float64 {
			return end.plus(-1, vec{d.x[n], d.y[n], 0}).plus(-1, u).length()
		}
		pull := spring * (place(theirs[n+1]) - place(rest[n+1]))
		within(t, "lean, m", a.Crown[2], theirs[d.crown+1][2], .01)
		within(t, "pull of a guy, N", a.Pulls[0], pull, .01)
		within(t, "crown's height, m", a.Crown[1], d.y[d.crown]+theirs[d.crown+1][1], 5e-4)
		t.Logf("%g N/m: lean %.4f m, CalculiX %.4f; pull %.2f N, %.2f", w, a.Crown[2], theirs[d.crown+1][2], a.Pulls[0], pull)
	}
}
