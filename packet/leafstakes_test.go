package packet

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// newStakeLeafFor solves a spec and begins its leaf.
func newStakeLeafFor(t *testing.T, source []byte) *stakeLeaf {
	t.Helper()
	plan := planOf(t, source)
	_, body := binderOf(t, plan).newSide(false)
	return newStakeLeaf(plan, body)
}

// One crew, one sheet of paper: two sides where the walk is straight and one plan holds it, two more for each further plan, and for a bend.
func TestStakesKeepToTheirSides(t *testing.T) {
	want := map[string]int{"garden.yaml": 2, "starter.yaml": 2, "schoolyard.yaml": 2, "millwalk.yaml": 4, "parkwalk.yaml": 8, "one arch": 4, "two arches, no lights": 2, "one stick, no ridge": 2}
	for name, most := range want {
		plan := planOf(t, specs(t)[name])
		doc, notes, err := Bind(plan, Options{Sheets: []string{"stakes"}, Date: issued})
		if err != nil {
			t.Fatal(err)
		}
		if len(doc.Pages) > most {
			t.Errorf("%s: %d sides, want %d", name, len(doc.Pages), most)
		}
		for _, n := range notes {
			t.Errorf("%s: %s, %s found no room", name, n.Block, n.What)
		}
	}
}

// What is thrown keeps to them too: one leaf where the walk is straight and one plan holds it; each further plan takes two sides at most, one more where guys stand far aside.
func TestThrownStakesKeepToTheirSides(t *testing.T) {
	for seed := range uint64(30) {
		s := newStakeLeafFor(t, []byte(thrown(seed)))
		if !s.ground.Straight {
			continue
		}
		doc, _, err := Bind(s.words.plan, Options{Sheets: []string{"stakes"}, Date: issued})
		if err != nil {
			t.Fatal(err)
		}
		most := 2 * len(s.parts)
		if plan := s.words.plan; arch.Aside(plan.Spec, plan.Arches) > practice.OnGround(plan.Spec.Units).StepOut { // a wider picture
			most++
		}
		if len(doc.Pages) > most {
			t.Errorf("seed %d: %d sides, want %d", seed, len(doc.Pages), most)
		}
	}
}

// pageWords returns all that the stakes leaf prints, a text a line.
func pageWords(t *testing.T, s *stakeLeaf) string {
	t.Helper()
	doc, _, err := Bind(s.words.plan, Options{Sheets: []string{"stakes"}, Date: issued})
	if err != nil {
		t.Fatal(err)
	}
	var words []string
	for _, page := range doc.Pages {
		for _, op := range page.Ops {
			if x, ok := op.(paper.Text); ok {
				words = append(words, x.String)
				checkText(t.Errorf, page, x)
			}
		}
	}
	return "\n" + strings.Join(words, "\n") + "\n"
}

// Everything a crew reads off the leaf is on it: each stake's name on the plan, each corner's tapes, each width, worked out here by Pythagoras from where the stakes and marks are.
func TestStakesSayEveryTape(t *testing.T) {
	t.Parallel()
	all := specs(t)
	for name, text := range stakeYards {
		all[name] = []byte(text)
	}
	for name, source := range all {
		s := newStakeLeafFor(t, source)
		plan, u := s.words.plan, s.units
		whole := pageWords(t, s)
		says := func(what string, d measure.Length) {
			if text := s.bare(d); !strings.Contains(whole, text) {
				t.Errorf("%s: %s, %q, is nowhere on the leaf", name, what, text)
			}
		}
		marks := map[string]spec.Point{}
		for _, m := range plan.Ground.Marks {
			marks[m.Name] = m.At
		}
		for _, x := range plan.Stakes {
			if !strings.Contains(whole, "\n"+x.String()+"\n") {
				t.Errorf("%s: %s is not on the plan", name, x)
			}
		}
		for _, part := range s.parts {
			for _, row := range part.rows() {
				for _, line := range strings.Split(strings.Join(row.cells, "\n"), "\n") {
					if !strings.Contains(whole, line) {
						t.Errorf("%s: %q of %s is nowhere on the leaf", name, line, row.name())
					}
				}
			}
		}
		n := len(plan.Ground.Stations)
		_, _, anchored := plan.Ground.Anchors(u)
		for _, tie := range plan.Ties {
			x, _ := plan.Ground.Stake(tie.Stake)
			corner := !x.Guy && (x.Arch == 1 || x.Arch == n)
			if _, used := plan.Ground.TieOf(tie.Stake, practice.OnGround(u).Reach, anchored); !used || s.byRow() && !corner || plan.Ground.ByChord(x.Arch) {
				continue
			}
			for _, mark := range []string{tie.MarkA, tie.MarkB} {
				at := marks[mark]
				says(fmt.Sprintf("%s from %s", tie.Stake, mark), measure.Length(math.Sqrt(math.Pow(float64(at.X-x.X), 2)+math.Pow(float64(at.Y-x.Y), 2))))
			}
		}
		for _, a := range plan.Arches {
			if a.Kind != nil && a.Span > 0 {
				says(fmt.Sprintf("the width of arch %d", a.Number), a.Span)
			}
		}
		for _, c := range plan.Ground.Chords {
			for _, o := range c.Offsets {
				says(o.Stake.String()+" along", o.Along)
			}
		}
	}
}

// What a yard has or lacks changes what the crew is told to do.
func TestStakesFitTheYard(t *testing.T) {
	for name, want := range map[string][]string{
		"bend without marks":    {"bay by bay", "For next year", "R to next L"},
		"two marks":             {"on your", "Tapes", "L to R, arch 1", "L to R, arches 2 to 6", "2 laths", "each width with its arches"},
		"one mark":              {"For next year", "Square at L1"},
		"lone and guyed":        {"For next year"},
		"longer than a tape":    {"Stakes 2 of", "Zero at L1 and L20", "same dots on plan 1"},
		"row before its marks":  {"dead straight"},
		"bend beyond its marks": {"square off", "and on. Zero at"},
	} {
		whole := strings.ReplaceAll(pageWords(t, newStakeLeafFor(t, []byte(stakeYards[name]))), "\n", " ") // a step may go on in its next line
		for _, w := range want {
			if !strings.Contains(whole, w) {
				t.Errorf("%s: nothing says %q", name, w)
			}
		}
	}
	whole := pageWords(t, newStakeLeafFor(t, specs(t)["garden.yaml"]))
	for _, w := range []string{"For next year", "bay by bay", "Square at L1"} {
		if strings.Contains(whole, w) {
			t.Errorf("a straight garden with three marks is told %q", w)
		}
	}
}

// Every stake is ticked on one plan, though an arch stands on two; what a further plan drives first is one of its own.
func TestStakesAreTickedOnce(t *testing.T) {
	first := regexp.MustCompile(`(L\d+) first`)
	for name, source := range map[string]string{"parkwalk": string(specs(t)["parkwalk.yaml"]), "bend": stakeYards["bend beyond its marks"]} {
		s := newStakeLeafFor(t, []byte(source))
		ticked := map[string]int{} // stakes to the plan that they are ticked on
		for _, part := range s.parts {
			table := part.tapeTable().Body.(block.Table)
			for _, row := range table.Rows {
				if row.Heading != "" || strings.HasPrefix(row.Cells[len(row.Cells)-1], "plan") {
					continue
				}
				for _, stake := range strings.Fields(row.Cells[0]) {
					if on := ticked[stake]; on != 0 && len(stake) > 2 { // a guy's right one is named by its side alone
						t.Errorf("%s: %s is ticked on plans %d and %d", name, stake, on, part.number)
					}
					ticked[stake] = part.number
				}
			}
			for _, b := range part.asides() {
				if step, ok := b.Body.(block.Step); ok && ticked[first.FindStringSubmatch(step.Text)[1]] != part.number {
					t.Errorf("%s, plan %d: %s", name, part.number, step.Text)
				}
			}
		}
		for _, x := range s.ground.Stakes {
			if ticked[x.String()] == 0 && (!x.Guy || x.Side == spec.Left) { // of a guy's right one the table of straight rows names the side alone
				t.Errorf("%s: %s is ticked nowhere", name, x)
			}
		}
	}
}

// No allowance reaches into the distance that is kept from a buried line: where the farthest that the ladder lets a stake be moved would bring it there, its row
// says so. The distance to the line is worked out here by trying its points.
func TestNoStakeMayBeMovedIntoAKeepBand(t *testing.T) {
	stuck, free := 0, 0
	for seed := range uint64(30) {
		source := []byte(thrown(seed))
		if sp, err := spec.Read("thrown", source); err != nil || len(sp.Site.Buried) == 0 {
			continue
		}
		s := newStakeLeafFor(t, source)
		given := map[bool]measure.Length{}
		for _, task := range s.tasks {
			for _, c := range task.IfOff {
				switch c.Do {
				case crew.BesideHole:
					given[false], given[true] = max(given[false], c.By), max(given[true], c.By)
				case crew.MoveAcross, crew.MoveAlong:
					given[false] = max(given[false], c.By)
				case crew.MoveGuy:
					given[true] = max(given[true], c.By)
				}
			}
		}
		for _, part := range s.parts {
			for _, row := range part.rows() {
				note, _ := s.nearLines(row.stakes)
				near := false
				for _, x := range row.stakes {
					for _, l := range s.spec.Site.Buried {
						near = near || nearest(x.At(), l.Line)-float64(given[x.Guy]) < float64(l.Keep)-1
					}
				}
				if says := strings.Contains(note, "Do not move: ask."); near && !says {
					t.Errorf("seed %d: %s may be moved into a keep band", seed, row.name())
				} else if says {
					stuck++
				} else {
					free++
				}
			}
		}
	}
	if stuck == 0 || free == 0 {
		t.Errorf("%d rows may not be moved, %d may: both kinds are to be looked at", stuck, free)
	}
}

// The locating service marks no line of the owner's: whoever calls it asks the owner, once, whatever is known of what lies buried.
func TestTheOwnerIsAskedOnce(t *testing.T) {
	garden := string(specs(t)["garden.yaml"])
	hose := garden[strings.Index(garden, "  buried:"):strings.Index(garden, "  outlets:")]
	for buried, asked := range map[string]string{
		hose:                          "call the owner of the drip hose to mark it, outlets’ cables too",
		"":                            "ask the owner to mark lines not on the ticket",
		"  unknown: [buried lines]\n": "Ask the owner what lies buried",
		strings.Replace(hose, "owner", "town", 1): "ask the owner to mark lines not on the ticket",
	} {
		text := strings.ReplaceAll(pageWords(t, newStakeLeafFor(t, []byte(strings.Replace(garden, hose, buried, 1)))), "\n", " ")
		if !strings.Contains(text, asked) || strings.Count(text, "owner") != 1 {
			t.Errorf("%q: %q stands %d times; the owner %d times", buried, asked, strings.Count(text, asked), strings.Count(text, "owner"))
		}
	}
}

// nearest is the least distance of a place from points along a line, 4000 to a stretch.
func nearest(p spec.Point, line []spec.Point) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		for k := range 4001 {
			f := float64(k) / 4000
			x := float64(line[i-1].X) + f*float64(line[i].X-line[i-1].X) - float64(p.X)
			y := float64(line[i-1].Y) + f*float64(line[i].Y-line[i-1].Y) - float64(p.Y)
			least = min(least, math.Sqrt(x*x+y*y))
		}
	}
	return least
}

// crewOf marks a straight walk by what its leaf prints and nothing else: the rows of its tables and the numbers on its plan.
type crewOf struct {
	t       *testing.T
	metric  bool
	marks   map[string]complex128 // by letter
	along   map[string]float64    // of both rows, by the leg's number
	tapes   map[string][]markTold // by spot
	limits  map[string]float64    // by what is checked
	width   float64
	long    float64 // the long diagonal
	bay     float64 // the diagonal of a bay
	last    int
	dice    *rand.Rand // nil where every tape is read as it is printed
	hint    complex128 // which crossing of two tapes is meant: the picture shows it
	hintEnd complex128
}

type markTold struct {
	mark  string
	long  float64
	check bool
}

var (
	rowName  = regexp.MustCompile(`^L(\d+) R(\d+)$`)
	lettered = regexp.MustCompile(`^([A-Z]) `)
)

// reads reads a printed length in millimetres.
func (c *crewOf) reads(text string) float64 {
	text = strings.NewReplacer("[", "", "]", "").Replace(text)
	if c.metric && !strings.HasSuffix(text, "mm") {
		text += " mm"
	}
	v, err := measure.ParseLength(text)
	if err != nil {
		c.t.Fatal(err)
	}
	return float64(v)
}

// readLeaf reads the front of a leaf with three marks.
func readLeaf(t *testing.T, s *stakeLeaf) *crewOf {
	c := &crewOf{t: t, metric: s.units == measure.Metric, marks: map[string]complex128{}, along: map[string]float64{}, tapes: map[string][]markTold{}, limits: map[string]float64{}, dice: rand.New(rand.NewPCG(7, 12))}
	tables := s.parts[0].tables()
	for i, m := range s.ground.Marks {
		c.marks[string("ABC"[i])] = complex(float64(m.At.X), float64(m.At.Y))
	}
	for _, r := range tables[0].Body.(block.Table).Rows {
		if m := rowName.FindStringSubmatch(append(r.Cells, "")[0]); m != nil {
			c.along[m[1]] = 0
			if r.Cells[1] != "0" {
				c.along[m[1]] = c.reads(r.Cells[1])
			}
			c.last = max(c.last, len(c.along))
		}
	}
	marks := tables[1].Body.(fittedTable)
	for _, r := range marks.Rows {
		for i, cell := range r.Cells {
			if i > 0 && cell != "" {
				letter := lettered.FindStringSubmatch(marks.Columns[i].Head)[1]
				c.tapes[r.Cells[0]] = append(c.tapes[r.Cells[0]], markTold{letter, c.reads(cell), strings.HasPrefix(cell, "[")})
			}
		}
	}
	for _, r := range tables[2].Body.(fittedTable).Rows {
		c.limits[r.Cells[0]] = c.reads(r.Cells[2])
	}
	for _, x := range s.parts[0].plan().Spans {
		switch from, to := s.ground.Stakes[x.From.Index], s.ground.Stakes[x.To.Index]; {
		case x.Text == "" || to.Guy:
		case x.Across:
			c.width = c.reads(x.Text)
		case to.Arch-from.Arch == 1 || from.Arch-to.Arch == 1:
			c.bay = c.reads(x.Text)
		default:
			c.long = c.reads(x.Text)
		}
	}
	c.hint, c.hintEnd = seen(s.ground.Stakes[0]), seen(s.ground.Stakes[2*c.last-2])
	return c
}

// seen is where the picture shows a stake.
func seen(s ground.Stake) complex128 { return complex(float64(s.X), float64(s.Y)) }

func (c *crewOf) off() float64 {
	if c.dice == nil {
		return 0
	}
	e := 25.4 / 4
	if c.metric {
		e = 5
	}
	return e * (2*c.dice.Float64() - 1)
}

// meet is where two circles cross, the crossing nearer to the hint: by Heron's formula for the height of the triangle.
func meet(p complex128, a float64, q complex128, b float64, hint complex128) complex128 {
	d := cmplx.Abs(q - p)
	sum := (a + b + d) / 2
	high := 2 * math.Sqrt(max(0, sum*(sum-a)*(sum-b)*(sum-d))) / d
	base := math.Sqrt(max(0, a*a-high*high))
	if b*b > a*a+d*d {
		base = -base
	}
	u := (q - p) / complex(d, 0)
	one, two := p+u*complex(base, high), p+u*complex(base, -high)
	if cmplx.Abs(one-hint) < cmplx.Abs(two-hint) {
		return one
	}
	return two
}

// mark paints all legs' dots; the bad one is moved by the vector.
func (c *crewOf) mark(bad string, by complex128) map[string]complex128 {
	at := map[string]complex128{}
	for m, p := range c.marks {
		at[m] = p + complex(c.off(), c.off())
	}
	put := func(name string, p complex128) {
		if name == bad {
			p += by
		}
		at[name] = p
	}
	byTapes := func(spot string, hint complex128) complex128 {
		var found []markTold
		for _, m := range c.tapes[spot] {
			if !m.check {
				found = append(found, m)
			}
		}
		return meet(at[found[0].mark], found[0].long+c.off(), at[found[1].mark], found[1].long+c.off(), hint)
	}
	end := fmt.Sprint(c.last)
	put("L1", byTapes("L1", c.hint))
	at["×"] = byTapes("L"+end+" ×", c.hintEnd)
	ahead := (at["×"] - at["L1"]) / complex(cmplx.Abs(at["×"]-at["L1"]), 0)
	right := ahead * complex(0, -1)
	put("L"+end, at["L1"]+ahead*complex(c.along[end]+c.off(), c.off()/2))
	row := (at["L"+end] - at["L1"]) / complex(cmplx.Abs(at["L"+end]-at["L1"]), 0)
	for i := 2; i < c.last; i++ {
		put(fmt.Sprint("L", i), at["L1"]+row*complex(c.along[fmt.Sprint(i)]+c.off(), c.off()/2))
	}
	put("R1", meet(at["L1"], c.width+c.off(), at["L"+end], c.long+c.off(), at["L1"]+right*complex(c.width, 0)))
	for i := 2; i <= c.last; i++ {
		l := at[fmt.Sprint("L", i)]
		put(fmt.Sprint("R", i), meet(l, c.width+c.off(), at["R1"], c.along[fmt.Sprint(i)]+c.off(), l+right*complex(c.width, 0)))
	}
	return at
}

// fails counts the printed checks that are off by more than their limit.
func (c *crewOf) fails(at map[string]complex128) (n int) {
	end := fmt.Sprint(c.last)
	check := func(kind, of, from, to string, want float64) {
		limit := 0.0
		for words, l := range c.limits { // "rows to L6, R6"
			if rest, ok := strings.CutPrefix(words, kind); ok && (of == "" || slices.Contains(strings.Split(rest, ", "), of)) {
				limit = l
			}
		}
		if limit == 0 {
			c.t.Fatalf("no check %q of %q among %v", kind, of, c.limits)
		}
		if math.Abs(cmplx.Abs(at[to]-at[from])+c.off()-want) > limit {
			n++
		}
	}
	for spot, tapes := range c.tapes {
		for _, m := range tapes {
			to := spot
			if strings.HasSuffix(spot, "×") {
				to = "×"
			}
			if m.check {
				check("[tapes] to ", spot, m.mark, to, m.long)
			}
		}
	}
	check("row L1 to ", "L"+end+" ×", "L1", "×", c.along[end])
	for _, side := range []string{"L", "R"} {
		check("rows to ", side+end, side+"1", side+end, c.along[end])
	}
	for i := 1; i <= c.last; i++ {
		l, r := fmt.Sprint("L", i), fmt.Sprint("R", i)
		check("each width L to R", "", l, r, c.width)
		if i < c.last {
			check("bay diagonals", "", l, fmt.Sprint("R", i+1), c.bay)
			check("bay diagonals", "", r, fmt.Sprint("L", i+1), c.bay)
		}
	}
	check("long diagonals", "", "L1", "R"+end, c.long)
	check("long diagonals", "", "R1", "L"+end, c.long)
	return n
}

// A crew that has nothing but the leaf, and reads every tape a quarter inch (5 mm) off at most, passes every printed check in 95 of 100 runs; a dot
// that is 3 in off fails one, painted so or kicked so. What is printed is read back from the tables and the plan.
func TestMarkingByTheLeafAlone(t *testing.T) {
	const runs, wrong = 400, 3 * 25.4
	for _, name := range []string{"garden.yaml", "starter.yaml", "schoolyard.yaml"} {
		c := readLeaf(t, newStakeLeafFor(t, specs(t)[name]))
		if c.width == 0 || c.long == 0 || c.bay == 0 || len(c.tapes) != 4 {
			t.Fatalf("%s: the leaf lacks a figure: %+v", name, c)
		}
		passed := 0
		for range runs {
			if c.fails(c.mark("", 0)) == 0 {
				passed++
			}
		}
		if passed*100 < 95*runs {
			t.Errorf("%s: %d of %d honest markings pass", name, passed, runs)
		}
		tries, kicked, painted := 0, 0, 0
		for i := range 2 * c.last {
			dot := fmt.Sprint([]string{"L", "R"}[i%2], i/2+1)
			for k := range 8 {
				by := cmplx.Rect(wrong, float64(k)*math.Pi/4)
				tries++
				at := c.mark("", 0)
				if at[dot] += by; c.fails(at) == 0 {
					kicked++
				}
				if c.fails(c.mark(dot, by)) == 0 {
					painted++
				}
			}
		}
		t.Logf("%s: %.1f %% of honest markings pass; of %d dots 3 in off %d kicked and %d painted so are missed", name, 100*float64(passed)/runs, tries, kicked, painted)
		if missed := max(kicked, painted); missed*100 > 5*tries {
			t.Errorf("%s: %d of %d dots 3 in off pass every check", name, missed, tries)
		}
	}
}

// However many plans a tape's length is cut into, they join on to each other from its first arch to its last.
func TestPlansJoinOn(t *testing.T) {
	for name, source := range specs(t) {
		s := newStakeLeafFor(t, source)
		n := len(s.ground.Stations)
		if n == 0 {
			continue
		}
		for count := 1; count <= n; count++ {
			at := 1
			for _, p := range s.cut(ground.TapeLength{First: 1, Last: n}, count, 0) {
				if p.First != at || p.Last > n {
					t.Errorf("%s in %d: a plan of arches %d to %d after arch %d of %d", name, count, p.First, p.Last, at, n)
				}
				at = p.Last
			}
			if at != n {
				t.Errorf("%s in %d ends at arch %d of %d", name, count, at, n)
			}
		}
	}
}

// Where the given day of marking is too late for the call, dots are painted on the call's day: all crews read the same, by hand the Tuesday with three full working days before a Saturday.
func TestDotsAreThereForTheCall(t *testing.T) {
	plan := planOf(t, []byte(arbour))
	for word, want := range map[string]string{"stakes": "Mark and call, Tuesday 16 November 2027", "day": "Tue 16 Nov: read", "board": "16 Nov"} {
		text := strings.ReplaceAll(strings.Join(textsOf(leafSides(t, plan, word)), " "), "\u00a0", " ")
		if !strings.Contains(text, want) {
			t.Errorf("%s: %q is not on the leaf", word, want)
		}
	}
}

// longFigures is a bend of long figures, three tapes to a dot.
const longFigures = "hoopwright: 1\ntitle: Long\nunits: imperial\ntunnel: {arches: 12, spacing: 182 in}\n" +
	"arch: {pipe: pvc sch40 1 in, sticks: [16 ft, 16 ft], span: 16 ft, stake: {bar: 1/2 in, length: 48 in, depth: 20 in}}\nguys: {arches: all, from: 80 in, out: 66 in}\n" +
	"site: {route: [{straight: 182 in}, {left: 14 deg, radius: 247 in}, {straight: rest}], start: {at: [295.28 in, 176.50 in], heading: 0 deg}, marks: [{name: post, at: [0 in, 0 in]}, {name: gate, at: [400 in, 0 in]}, {name: lamp, at: [425 in, 289 in]}]}\n"

// However long the figures are, every column of the table of tapes has room for its head, the one that is written in too.
func TestHeadsOfTapesAreWhole(t *testing.T) {
	for _, p := range newStakeLeafFor(t, []byte(longFigures)).parts {
		body := p.tapeTable().Body.(block.Table)
		for _, c := range body.Table.Fitted(p.body.W, body.Rows).Columns {
			for _, word := range paper.Words(c.Head) {
				if wide := paper.Strong.Sized(11).Width(word); wide > c.Width-cellMargins+0.3 {
					t.Errorf("plan %d: %q is %.1f mm wide in a column of %.1f", p.number, word, wide, c.Width)
				}
			}
		}
	}
}

// A stretch that guys reach across cannot be parted, so that the others are not parted to single bays for its sake. The spec is invented.
func TestUnpartedStretchLeavesOthersWhole(t *testing.T) {
	leaf := newStakeLeafFor(t, []byte(`hoopwright: 1
title: Two Rows of Guys
units: metric
paper: a4
tunnel: {arches: 20, spacing: 1.2 m, opening: {width: 1.3 m, height: 2.05 m}}
arch: {pipe: pvc-u pn16 25 mm, sticks: [[3 m, 500 mm], [3 m, 500 mm]], span: 2.6 m, stake: {bar: 12 mm, length: 1.2 m, depth: 500 mm}}
guys: {arches: [3, 6, 14, 17, last], from: 2.5 m, out: 3.2 m, stake: {bar: 12 mm, length: 600 mm, depth: 500 mm}}
site:
  route: [{straight: 9 m}, {right: 25 deg, radius: 15 m}, {straight: rest}]
  marks: [{name: well, at: [-8 m, -4 m]}, {name: post, at: [6 m, -3 m]}, {name: lime, at: [-5 m, 14 m]}, {name: shed, at: [10 m, 20 m]}]
`))
	if n := len(leaf.parts); n > 6 {
		t.Errorf("%d plans of 20 arches", n)
	}
}

// Guys on every arch of a bend crowd the names: the tunnel is parted until each stake has its own on the plan that shows it. The spec is invented.
func TestEveryStakeOfAGuyedBendIsNamed(t *testing.T) {
	for _, arches := range []int{16, 24} {
		leaf := newStakeLeafFor(t, fmt.Appendf(nil, `hoopwright: 1
title: Guyed Bend
units: metric
paper: a4
tunnel: {arches: %d, spacing: 1250 mm, opening: {width: 1.1 m, height: 2 m}}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.1 m, 3.1 m], span: 2250 mm}
guys: {arches: all, from: 1.9 m, out: 1.5 m}
site: {route: [{straight: 3 m}, {right: 45 deg, radius: 10 m}, {straight: rest}], marks: [{name: gate, at: [-4 m, -3 m]}, {name: shed, at: [5 m, -2 m]}, {name: lime, at: [-3 m, 12 m]}]}
`, arches))
		for _, p := range leaf.parts {
			best := p.best()
			page := &paper.Page{Size: p.body}
			best.plan.Draw(page, best.picture)
			drawn := wordsOf(page)
			for _, s := range p.stakes {
				if !slices.Contains(drawn, s.String()) {
					t.Errorf("%d arches: %s has no name on plan %d of %d (1:%v)", arches, s, p.number, len(leaf.parts), best.plan.Scale.Ratio)
				}
			}
		}
	}
}
