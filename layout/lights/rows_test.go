package lights

import (
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// sixRows are rows every foot up to 6 ft on both walls, two kinds in turn: common practice, no source.
func sixRows() *spec.Rows {
	return &spec.Rows{
		First: 12 * inch, Step: 12 * inch, UpTo: 72 * inch, Sag: inch,
		Strings: []catalog.String{mini("warm", 24*foot), mini("red", 20*foot)},
		Walls:   []spec.Side{spec.Left, spec.Right},
	}
}

// everything hangs lights of each sort.
func everything(arches int) Input {
	return plain(arches, spec.Lights{
		Wraps: []spec.Wrap{wrapAll(mini("warm", 24*foot), spec.Legs, spec.RidgePieces)},
		Rows:  sixRows(),
		Drops: []spec.Drop{{Where: []spec.Place{{Part: spec.RidgePieces}}, String: mini("drop", 9*foot), Hang: 6 * inch, Lap: 3 * inch}},
	})
}

// In a straight level tunnel a kind with three rows goes along three times four bays and up twice two feet.
func TestPathsOfAStraightTunnel(t *testing.T) {
	l := Lay(plain(5, spec.Lights{Rows: sixRows()}))
	if len(l.Rows) != 12 || len(l.Paths) != 4 {
		t.Fatalf("%d rows, %d paths", len(l.Rows), len(l.Paths))
	}
	bay := 54 * (1 + 8./3/(54*54) - 32./5/(54*54*54*54))
	for _, p := range l.Paths {
		near(t, p.Kind+" path, in", p.Length.Inches(), 3*4*bay+2*24, 1e-6)
		want := []int{1, 3, 5}
		if p.Kind == "red" {
			want = []int{2, 4, 6}
		}
		if !slices.Equal(p.Rows, want) || p.First != 1 || p.Last != 5 {
			t.Errorf("%+v", p)
		}
		for i, from := range []int{1, 5, 1} { // and where the next row begins, this one ended
			if a, b := p.Ends(i); a != from || b != 6-from {
				t.Errorf("%v row %d: from arch %d to %d", p.Wall, p.Rows[i], a, b)
			}
		}
		var sum, used measure.Length
		for _, s := range l.Strings {
			if slices.Contains(p.Strings, s.Name) {
				sum += s.Label.Length
				used += s.Used
			}
		}
		near(t, "used", float64(used), float64(p.Length), 1e-6)
		near(t, "account", float64(sum), float64(p.Length+p.LeftOver), 1e-6)
	}
	for _, r := range l.Rows {
		if len(r.Heights) != 5 || len(r.Strings) == 0 {
			t.Errorf("%+v", r)
		}
	}
}

// The path is walked millimetre by millimetre: what the ends' places add up to must be what the path says it is, a hair less for the
// corners cut.
func TestPathByWalkingIt(t *testing.T) {
	rows := sixRows()
	rows.Sag = 5 * inch
	rows.Strings = []catalog.String{mini("crumbs", 1)}
	rows.Step, rows.Walls = 24*inch, []spec.Side{spec.Right}
	l := Lay(plain(4, spec.Lights{Rows: rows}))
	var walked float64
	for i, s := range l.Strings {
		walked += float64(Apart(s.From, s.To))
		if i > 0 {
			near(t, "from the end of the one before", float64(Apart(l.Strings[i-1].To, s.From)), 0, 1e-6)
		}
	}
	total := float64(l.Paths[0].Length)
	near(t, "walked, mm", walked, total, total*2e-4)
}

// On a bend of 25 ft that rises 3 in a bay, marks of a row stand on a circle of their own: chord 2·r·sin(φ/2), and the rise.
func TestPathsOnARisingBend(t *testing.T) {
	rows := sixRows()
	rows.UpTo, rows.Sag = rows.First, 0
	l := Lay(bent(plain(9, spec.Lights{Rows: rows}), 25*foot, 3*inch))
	half := 241 / math.Pi
	inset := half * (1 - math.Cos(12/half)) // of a half-round arch's mark 12 in up, from its stake
	for i, radius := range []float64{300 + half - inset, 300 - half + inset} {
		chord := 2 * radius * math.Sin(54./300/2)
		near(t, "path, in", l.Paths[i].Length.Inches(), 8*math.Hypot(chord, 3), .01)
	}
}

// The same on a bend that rises, both walls, by numerical integration along the sagging line itself: Simpson's rule on the speed of the place at a share of each bay, taken by
// differences of the places that the plan gives, against the closed form that lays the path.
func TestPathsOnABendByIntegration(t *testing.T) {
	const radius, rise, sag = 22 * foot, 2 * inch, 3 * inch
	rows := sixRows()
	rows.Sag = sag
	l := Lay(bent(plain(6, spec.Lights{Rows: rows}), radius, rise))
	for _, p := range l.Paths {
		var want float64
		for i, number := range p.Rows {
			k := slices.IndexFunc(l.Rows, func(r Row) bool { return r.Wall == p.Wall && r.Number == number })
			r := l.Rows[k]
			for bay := 1; bay < 6; bay++ {
				a, b := r.Marks[bay-1], r.Marks[bay]
				at := func(u float64) (x, y, z float64) {
					return float64(a.X) + u*float64(b.X-a.X), float64(a.Y) + u*float64(b.Y-a.Y), float64(a.Z) + u*float64(b.Z-a.Z) - 4*sag.Inches()*25.4*u*(1-u)
				}
				speed := func(u float64) float64 {
					const h = 1e-5
					x0, y0, z0 := at(u - h)
					x1, y1, z1 := at(u + h)
					return math.Sqrt((x1-x0)*(x1-x0)+(y1-y0)*(y1-y0)+(z1-z0)*(z1-z0)) / (2 * h)
				}
				const n = 200
				for j := range n {
					u := float64(j) / n
					want += (speed(u) + 4*speed(u+.5/n) + speed(u+1./n)) / (6 * n)
				}
			}
			if i > 0 {
				want += 2 * float64(rows.Step) // up the leg to the next row of its kind
			}
		}
		near(t, p.Wall.String()+" "+p.Kind, float64(p.Length), want, 1e-6)
	}
}

// The largest spec there is with twenty rows on both walls is laid within a second: 0.05 s was measured on two cores.
func TestTwentyRowsOnTheLongestTunnel(t *testing.T) {
	in := everything(spec.MostArches)
	in.Spec.Lights.Rows.Step, in.Spec.Lights.Rows.UpTo = 3*inch, 69*inch
	start := time.Now()
	if l := Lay(in); len(l.Rows) != 40 {
		t.Fatal(len(l.Rows))
	}
	if took := time.Since(start); took > time.Second {
		t.Errorf("it took %v", took)
	}
}

func TestWallsAreMirrored(t *testing.T) {
	l := Lay(plain(7, spec.Lights{Rows: sixRows()}))
	half := len(l.Strings) / 2
	for i := range half {
		a, b := l.Strings[i], l.Strings[half+i]
		near(t, "x", float64(a.To.X), -float64(b.To.X), 1e-6)
		near(t, "y", float64(a.To.Y), float64(b.To.Y), 1e-6)
		near(t, "z", float64(a.To.Z), float64(b.To.Z), 1e-6)
		if a.Kind != b.Kind || a.Used != b.Used || a.To.Side == b.To.Side {
			t.Errorf("%+v against %+v", a, b)
		}
	}
}

func TestEndsOfStringsInRows(t *testing.T) {
	rows := sixRows()
	rows.Strings = []catalog.String{mini("warm", 3*54*inch)}
	rows.Sag, rows.Walls = 0, []spec.Side{spec.Left}
	l := Lay(plain(5, spec.Lights{Rows: rows}))
	// 216 in of row 1, 12 in up, back along row 2: three bays a string, so that the second begins at arch 4, climbs at arch 5
	// and ends 96 in into row 2, 42 in past arch 4.
	if got := l.Strings[0].To.At.String(); got != "row left 1, arch 4" {
		t.Errorf("first string ends at %q", got)
	}
	if got := l.Strings[1].To.At.String(); got != "row left 2, bay 3, "+measure.Imperial.Tape(12*inch)+" from arch 3" {
		t.Errorf("second string ends at %q", got)
	}
	if got := []Run{l.Strings[1].Run, l.Strings[2].Run}; !slices.Equal(got, []Run{{Part: RowOf(spec.Left, 1)}, {Part: RowOf(spec.Left, 2)}}) {
		t.Errorf("runs %v", got)
	}
	if !slices.Equal(l.Rows[0].Strings, []string{"S1", "S2"}) || l.Rows[1].Strings[0] != "S2" {
		t.Errorf("rows' strings %v, %v", l.Rows[0].Strings, l.Rows[1].Strings)
	}
	near(t, "y, in", l.Strings[1].To.Y.Inches(), 4*54-96, 1e-6)
}

func TestWayOutBreaksTheWall(t *testing.T) {
	rows := sixRows()
	rows.Gaps = []spec.Gap{{Wall: spec.Left, Bays: []int{2}}}
	l := Lay(plain(6, spec.Lights{Rows: rows}))
	var left []block
	for _, p := range l.Paths {
		if p.Wall == spec.Left && p.Kind == "warm" {
			left = append(left, block{p.First, p.Last})
		}
	}
	if !slices.Equal(left, []block{{1, 2}, {3, 6}}) {
		t.Errorf("blocks %v", left)
	}
	for _, s := range l.Strings {
		if s.From.Side == spec.Left && s.From.Y > 54*inch+1e-6 && s.From.Y < 108*inch-1e-6 {
			t.Errorf("%s begins in the way out: %+v", s.Name, s.From)
		}
	}
	rows.FromBack = true
	l = Lay(plain(6, spec.Lights{Rows: rows}))
	if p := l.Paths[0]; p.First != 3 || !p.Back || l.Strings[0].From.Arch != 6 {
		t.Errorf("from the back: %+v, %+v", p, l.Strings[0].From)
	}
}

func TestFindingsOfRows(t *testing.T) {
	change := func(f func(r *spec.Rows)) *spec.Rows {
		r := sixRows()
		f(r)
		return r
	}
	for _, c := range []struct {
		rows   *spec.Rows
		arches int
		want   string
	}{
		{change(func(r *spec.Rows) { r.UpTo = 14 * foot }), 3, "row-above-crown"},
		{change(func(r *spec.Rows) { r.First = 2 * inch }), 3, "row-on-ground"},
		{change(func(r *spec.Rows) { r.Sag, r.UpTo, r.First = 40*inch, 9*foot, 4*foot }), 3, "row-in-opening"},
		{sixRows(), 1, "rows-need-two-arches"},
	} {
		in := plain(c.arches, spec.Lights{Rows: c.rows})
		if got := codes(Lay(in)); !slices.Contains(got, c.want) {
			t.Errorf("got %v, want %s", got, c.want)
		}
	}
	if got := codes(Lay(plain(5, spec.Lights{Rows: sixRows()}))); len(got) > 0 && !slices.Equal(got, []string{"rows-left-over"}) {
		t.Errorf("good rows: %v", got)
	}
}

// What rows leave over is told with a step or height that leaves less: rows hung so do, and what they leave is what was said.
func TestRowsLeftOver(t *testing.T) {
	said := regexp.MustCompile(`Of .* is left over; (?:a step of (\d+) in|rows up to (.*)) leaves (.*)\.$`)
	told := 0
	for arches := 3; arches < 12; arches++ {
		l := Lay(plain(arches, spec.Lights{Rows: sixRows()}))
		for _, f := range l.Findings {
			m := said.FindStringSubmatch(f.Text)
			if f.Code != "rows-left-over" || m == nil {
				continue
			}
			told++
			rows := sixRows()
			if m[1] != "" {
				n, _ := strconv.Atoi(m[1])
				rows.Step = measure.Length(n) * inch
			} else {
				rows.UpTo, _ = measure.ParseLength(m[2])
			}
			left := measure.Length(0)
			for _, p := range Lay(plain(arches, spec.Lights{Rows: rows})).Paths {
				left += p.LeftOver
			}
			if got := measure.Imperial.Room(left); got != m[3] {
				t.Errorf("%d arches: %q, but so hung %s is left over", arches, f.Text, got)
			}
		}
	}
	if told < 3 {
		t.Errorf("told %d times of nine walks", told)
	}
}

// Rows of any string end at a leg: the last socket is at the mark of the top row at the arch that its path says, or a hand before it, and then no string is spared that would hang
// farther. Lengths are thrown, and the ways out.
func TestRowsEndAtALeg(t *testing.T) {
	throw := rand.New(rand.NewPCG(5, 19))
	short := 0
	for range 400 {
		rows := sixRows()
		rows.Sag = measure.Length(throw.IntN(12)) * inch / 2
		rows.Strings = []catalog.String{mini("warm", measure.Length(60+300*throw.Float64())*inch)}
		arches := 3 + throw.IntN(10)
		rows.Gaps = []spec.Gap{{Wall: spec.Right, Bays: []int{1 + throw.IntN(arches-1)}}}
		l := Lay(plain(arches, spec.Lights{Rows: rows}))
		for _, p := range l.Paths {
			_, arch := p.Ends(len(p.Rows) - 1)
			k := slices.IndexFunc(l.Rows, func(r Row) bool { return r.Wall == p.Wall && r.Number == p.Rows[len(p.Rows)-1] })
			n := slices.IndexFunc(l.Strings, func(s String) bool { return s.Name == p.Strings[len(p.Strings)-1] })
			off := Apart(l.Strings[n].To, l.Rows[k].Marks[arch-1])
			if off > 4*inch+1e-6 {
				t.Fatalf("strings of %v: row %d ends %.1f in before arch %d", rows.Strings[0].Length, p.Rows[len(p.Rows)-1], off.Inches(), arch)
			}
			if off > 1e-3 {
				short++
			}
		}
	}
	if short == 0 {
		t.Error("no row was thrown that ends a hand before its leg")
	}
}

// What would save a string hardly used. By the handbooks' series, 54 in of bay with a sag of 5 1/2 in take 55.46 in of string and with 5 3/4 in 55.59 in: strings of 51 1/2 in reach to a
// hand with the one. Rows hung so take one less on each wall. Of 49 1/2 in no sag makes them reach.
func TestWhatSavesAString(t *testing.T) {
	for _, c := range []struct {
		sag, long float64
		want      string
	}{{6, 51.5, "a sag of 5 1/2 in would save it"}, {1, 49.5, "row 1 tied back at arch 1 would save it"}} {
		rows := oneRow(40, 0)
		rows.Sag = measure.Length(c.sag) * inch
		rows.Strings = []catalog.String{mini("warm", measure.Length(c.long)*inch)}
		found := Lay(plain(2, spec.Lights{Rows: rows})).Findings
		k := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Code == "string-hardly-used" })
		if k < 0 || !strings.Contains(strings.ReplaceAll(found[k].Text, "\u00a0", " "), c.want) {
			t.Errorf("sag %v: %+v does not say %q", c.sag, found, c.want)
		}
		rows.Sag = 5.5 * inch
		if got := len(Lay(plain(2, spec.Lights{Rows: rows})).Strings); (got == 2) != (c.sag == 6) {
			t.Errorf("strings of %v in, sag 5 1/2 in: %d hang", c.long, got)
		}
	}
}

// The largest spec there is, with twenty rows on both walls: to be laid well within a second.
func BenchmarkLay(b *testing.B) {
	in := everything(spec.MostArches)
	in.Spec.Lights.Rows.Step, in.Spec.Lights.Rows.UpTo = 3*inch, 69*inch
	for b.Loop() {
		if l := Lay(in); len(l.Rows) != 40 {
			b.Fatal(len(l.Rows))
		}
	}
}

// Every string of a path begins where the path does or where the one before it ended; the first one at the arch that the path says, whatever way the wall's other paths run.
func TestPathSaysWhereItBegins(t *testing.T) {
	rows := sixRows()
	rows.Open, rows.Gaps = true, []spec.Gap{{Wall: spec.Left, Bays: []int{2}}}
	for turns := range 8 { // each way of three paths
		s := plain(6, spec.Lights{Rows: rows})
		s.Turn.Paths = []bool{turns&1 > 0, turns&2 > 0, turns&4 > 0}
		l := Lay(s)
		for _, p := range l.Paths {
			first := l.Strings[slices.IndexFunc(l.Strings, func(s String) bool { return s.Name == p.Strings[0] })]
			if from, _ := p.Ends(0); first.From.Arch != from {
				t.Errorf("turns %b: %v path of arches %d to %d begins at arch %d, its first string at %d", turns, p.Wall, p.First, p.Last, from, first.From.Arch)
			}
		}
	}
}
