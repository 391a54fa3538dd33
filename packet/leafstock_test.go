package packet

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/catalog"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

func example(t *testing.T, name string) *layout.Plan {
	t.Helper()
	source, err := examples.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return planOf(t, source)
}

func sheetOf(t *testing.T, plan *layout.Plan, word string) pdf.Document {
	t.Helper()
	doc, _, err := Bind(plan, Options{Sheets: []string{word}, Date: issued})
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// said is all that a document's pages say, in order, a space between two texts.
func said(doc pdf.Document) string {
	var words []string
	for _, page := range doc.Pages {
		for _, op := range page.Ops {
			if x, ok := op.(paper.Text); ok {
				words = append(words, x.String)
			}
		}
	}
	return strings.Join(words, " ")
}

// tickBoxes counts the boxes to tick.
func tickBoxes(doc pdf.Document) int {
	n := 0
	for _, page := range doc.Pages {
		for _, op := range page.Ops {
			s, ok := op.(paper.Stroke)
			if !ok || len(s.Path) != 5 {
				continue
			}
			if size := s.Path[2].To.Sub(s.Path[0].To); size.Sub(paper.Point{X: paper.TickBoxSide, Y: paper.TickBoxSide}).Long() < 1e-6 {
				n++
			}
		}
	}
	return n
}

// Every piece of the long walk is named in the list of pieces, read back from its ranges: the counts in the list are the counts of the names, and all names are there.
func TestPlacesNameEveryPiece(t *testing.T) {
	plan := example(t, "parkwalk.yaml")
	named := map[string]int{}
	for _, g := range alike(plan.Stock.Pieces) {
		for _, word := range expand(t, places(g.pieces)) {
			named[g.sort.Noun()+" "+word]++
		}
	}
	if len(named) != len(plan.Stock.Pieces) {
		t.Errorf("%d names for %d pieces", len(named), len(plan.Stock.Pieces))
	}
	for _, p := range plan.Stock.Pieces {
		n := numberOf(p)
		name := fmt.Sprintf("%s %s%d%s", p.ID.Noun(), n.before, n.number, n.after)
		if named[name] != 1 {
			t.Errorf("%v is named %d times", p.ID, named[name])
		}
	}
}

var ranged = regexp.MustCompile(`^([A-Z]*)(\d+)([A-Za-z]*) to [A-Z]*(\d+)[A-Za-z]*( odd only| even only)?$`)

// expand reads places back, one by one.
func expand(t *testing.T, s string) []string {
	t.Helper()
	var list []string
	for _, word := range strings.Split(s, ", ") {
		m := ranged.FindStringSubmatch(word)
		if m == nil {
			list = append(list, word)
			continue
		}
		from, _ := strconv.Atoi(m[2])
		to, _ := strconv.Atoi(m[4])
		step := 1
		if m[5] != "" {
			step = 2
		}
		for n := from; n <= to; n += step {
			list = append(list, fmt.Sprintf("%s%d%s", m[1], n, m[3]))
		}
	}
	return list
}

func TestPlaces(t *testing.T) {
	left := func(arch int) stock.PieceID { return stock.PieceID{Part: lights.Leg(spec.Left, arch)} }
	right := func(arch int) stock.PieceID { return stock.PieceID{Part: lights.Leg(spec.Right, arch)} }
	ridge := func(bay int) stock.PieceID {
		return stock.PieceID{Part: lights.Part{Kind: lights.Ridge, Number: bay}}
	}
	guy := func(arch int, way ground.Way) stock.PieceID {
		return stock.PieceID{Steel: true, Stake: ground.StakeID{Arch: arch, Guy: true, Way: way}}
	}
	for want, ids := range map[string][]stock.PieceID{
		"L1 to L3, R1 to R3":        {left(1), right(1), left(2), right(2), left(3), right(3)},
		"L44, R43, R44":             {right(43), left(44), right(44)},
		"2, 3, 5":                   {ridge(2), ridge(3), ridge(5)},
		"G1L to G7L odd only, G9La": {guy(1, 0), guy(3, 0), guy(5, 0), guy(7, 0), guy(9, ground.Toward)},
	} {
		var pieces []stock.Piece
		for _, id := range ids {
			pieces = append(pieces, stock.Piece{ID: id})
		}
		if got := places(pieces); got != want {
			t.Errorf("%v: %q, want %q", ids, got, want)
		}
	}
}

// Sticks cut alike are drawn once: no two patterns have the same lengths, and together they hold every bar that is cut.
func TestPatternsHoldEveryBar(t *testing.T) {
	plan := example(t, "parkwalk.yaml")
	seen := map[string]bool{}
	bars := 0
	for _, p := range patterns(plan.Cuts.Bars) {
		bars += len(p.bars)
		for _, b := range p.bars {
			if key := patternKey(b); key != patternKey(p.bars[0]) || b.Whole() {
				t.Errorf("cut %d holds a bar of another cut", p.number)
			}
		}
		if key := patternKey(p.bars[0]); seen[key] {
			t.Errorf("cut %d is drawn twice", p.number)
		} else {
			seen[key] = true
		}
	}
	if sawn, _ := plan.Cuts.Sawn(); bars != sawn {
		t.Errorf("%d bars in the patterns, %d are cut", bars, sawn)
	}
}

// stockSides are the sides of the leaf that a plan gives.
func stockSides(t *testing.T, plan *layout.Plan) []set {
	t.Helper()
	sides, notes := sidesOf(t, plan)
	for _, n := range notes {
		if n.Block == "buying list" || n.Block == "to fetch" {
			t.Errorf("%s %s found no room", n.Block, n.What)
		}
	}
	return slices.DeleteFunc(slices.Clone(sides), func(s set) bool { return s.kind.word != "stock" })
}

// One sheet of paper; a second where there are over 24 lines to buy or over 4 patterns of cuts, a third where there are very many.
func TestStockLeafKeepsToItsSides(t *testing.T) {
	check := func(name string, plan *layout.Plan) {
		most, lines := 2, 0
		for _, i := range plan.Shopping {
			if i.Buy > 0 {
				lines++
			}
		}
		cuts := len(patterns(plan.Cuts.Bars))
		if lines > 24 || cuts > 4 {
			most = 4
		}
		if got := len(stockSides(t, plan)); got > most+2*max(0, (cuts-9)/6) {
			t.Errorf("%s: %d sides for %d lines and %d patterns", name, got, lines, cuts)
		}
	}
	for name, source := range specs(t) {
		check(name, planOf(t, source))
	}
	for seed := range uint64(30) {
		check(fmt.Sprint("thrown ", seed), planOf(t, []byte(thrown(seed))))
	}
}

// Walks with four patterns of cuts and a long list to buy. All invented.
var fourPatterns = map[string]string{
	"a bend and short pieces": `hoopwright: 1
title: Quarry Lane Walk
units: imperial
dates: {mark: 2027-11-13, build: 2027-11-20, open: 2027-12-03, close: 2028-01-02, down: 2028-01-09}
tunnel: {arches: 11, spacing: 5 ft, opening: {width: 4 ft, height: 6 ft 8 in}, ways: [{bay: 5, wall: right}]}
arch: {pipe: pvc sch40 3/4 in, sticks: [[10 ft, 1 ft], [10 ft, 1 ft]], span: 8 ft}
site:
  route: [{straight: 20 ft}, {right: 30 deg, radius: 26 ft}, {straight: rest}]
  start: {at: [18 ft, 5 ft], heading: 0 deg}
  soil: firm
  marks: [{name: gate, at: [0 ft, 0 ft]}, {name: shed, at: [40 ft, 2 ft]}]
  outlets: [{name: shed, at: [36 ft, 4 ft], circuit: shed}, {name: gate, at: [3 ft, 5 ft], circuit: gate}]
lights: {wraps: [{where: legs, string: mini led 100 warm}, {where: ridge, string: mini led 50 warm, count: 1}]}
power: {circuits: {shed: {volts: 120 V, breaker: 15 A, gfci: true}, gate: {volts: 120 V, breaker: 20 A, gfci: true}}}
crew: {helpers: 6}
`,
	"sand and long pieces": `hoopwright: 1
title: Hop Yard Rows
units: imperial
dates: {mark: 2027-11-13, build: 2027-11-20, open: 2027-12-03, close: 2028-01-02, down: 2028-01-09}
tunnel: {arches: 7, spacing: 5 ft, opening: {width: 5 ft, height: 6 ft 8 in}}
arch: {pipe: pvc sch40 1 in, sticks: [[10 ft, 18 in], [10 ft, 18 in]], span: 9 ft, stake: {bar: 5/8 in}}
site:
  start: {at: [14 ft, 8 ft], heading: 0 deg}
  soil: sandy
  marks: [{name: kiln, at: [0 ft, 0 ft]}, {name: gable, at: [30 ft, 0 ft]}]
  outlets: [{name: kiln, at: [4 ft, 4 ft], circuit: kiln}]
lights: {wraps: [{where: arches, string: mini led 100 warm}]}
power: {circuits: {kiln: {volts: 120 V, breaker: 15 A, gfci: true}}}
stock: {own: [{item: mini led 100 warm, count: 2}]}
crew: {helpers: 5}
`,
}

// Two sides hold four patterns of cuts, and nothing on them lies on anything else.
func TestFourPatternsOnTwoSides(t *testing.T) {
	list := maps.Clone(fourPatterns)
	list["many sticks alike"] = strings.Replace(thrown(65), "out: 66 in}", "out: 66 in, stake: {length: 36 in, depth: 12 in}}", 1) // one kind of stake to buy, as its lines fill the front
	for _, name := range []string{"garden.yaml", "starter.yaml", "schoolyard.yaml"} {
		source, err := examples.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		list[name] = string(source)
	}
	for name, source := range list {
		plan := planOf(t, []byte(source))
		sides, _ := leafAlone(t, plan, "stock")
		if n := len(patterns(plan.Cuts.Bars)); len(sides) != 2 || fourPatterns[name] != "" && n != 4 {
			t.Errorf("%s: %d sides for %d patterns", name, len(sides), n)
		}
		for _, s := range sides {
			for _, found := range lint(s.page) {
				t.Errorf("%s, %s: %s", name, s.title, found)
			}
		}
	}
}

// Set close, title and boxes of a pattern stand at its right, clear of what the stick has there, or above it as before.
func TestCloseCutPicture(t *testing.T) {
	bar := stock.Bar{Stock: 3048, Offcut: 200, Pieces: []stock.Piece{{Length: 2848, Mark: 2848}}}
	for count, right := range map[int]bool{1: true, 4: true, 20: false} {
		c := cutPicture{title: "Cut 1: 20 sticks of 10 ft", count: count, stick: draw.Stick{Bar: bar, Units: measure.Imperial}, scale: paper.Scale{Ratio: 24}}
		loose, closer := c.Height(187), c.Tight(block.Close).Height(187)
		if saves := closer < loose; saves != right {
			t.Errorf("%d sticks take %v, set close %v", count, loose, closer)
		}
		page := &paper.Page{Size: paper.Rect{W: 216, H: 279}}
		c.Tight(block.Close).Draw(page, paper.Rect{X: 14, Y: 30, W: 187, H: closer})
		for _, found := range lint(page) {
			t.Errorf("%d sticks: %s", count, found)
		}
	}
}

// The garden's front. By hand: 15 sticks at 4.35 (14 and a spare), 8 strings at 9.80 (13 less 5 owned), 6 at 6.40: 65.25 + 78.40 + 38.40 = 182.05 at the spec's
// prices; the rest is assumed, and the total says so. Spares by hand: one stick for six arches; a tee and a cross; a tenth of 12 and of 4 stakes is two, of 16 caps
// two, of 12 and of 5 strings two.
func TestBuyingListOfTheGarden(t *testing.T) {
	plan := example(t, "garden.yaml")
	if got := plan.Stock.Total - plan.Stock.Assumed; math.Abs(got-182.05) > 1e-9 {
		t.Errorf("%v at the spec's prices, want 182.05", got)
	}
	front := stockSides(t, plan)[0].page
	words := said(pdf.Document{Pages: []*paper.Page{front}})
	for _, want := range []string{"pvc sch40 1/2 in", "tee, plain sockets", "Sundries", "13 A or more", fmt.Sprintf("%.2f USD", plan.Stock.Total), "≈ assumed", "A tenth over: ask",
		"Spares in all: 1 stick, 2 fittings, 2 stakes, 2 caps, 2 strings", "2 pvc sch40 1/2 in of 56 in, 5 mini led 100 warm"} {
		if !strings.Contains(words, want) {
			t.Errorf("the front does not say %q", want)
		}
	}
	bought := 0
	for _, i := range plan.Shopping {
		if i.Buy > 0 {
			bought++
		}
	}
	if got := tickBoxes(pdf.Document{Pages: []*paper.Page{front}}); got != bought {
		t.Errorf("%d boxes to tick for %d lines", got, bought)
	}
}

// The drops of the mill walk hang last in runs of other kinds: their label too is asked to allow all of such a run.
func TestLabelsAllowTheirRuns(t *testing.T) {
	plan, facts := examplePlan(t, "millwalk"), map[string]string{}
	for _, s := range leafSides(t, plan, "stock") {
		for _, b := range s.blocks {
			for _, f := range b.Facts {
				facts[f.What] = f.Value
			}
		}
	}
	labelsAllowTheirRuns(t, seenFromOutside(t, plan), plan, facts)
}

// The garden's back: the length of each ridge piece, and no running measure over those that wait for the first, since that changes them, nor what is left over of their sticks; the hold with
// the plan's figures, a box for each stick that is cut and one for what of it is cut later, each line of whole sticks and the two lines of the hold.
func TestCutsOfTheGarden(t *testing.T) {
	plan := example(t, "garden.yaml")
	back := stockSides(t, plan)[1]
	words := said(pdf.Document{Pages: []*paper.Page{back.page}})
	units := plan.Spec.Units
	want := []string{"HOLD", units.Cut(plan.Ridge[0].Cut), "Nobody under 16", "Eye protection", "Aloud to", "Never heat", "from the shed", "keep", "ridge 3, 4: wait", "________", "cut all others to", "ridge 1: first", "Over 1 in longer or 1 in shorter: ask"}
	sawn := 0
	for _, b := range plan.Cuts.Bars {
		if b.Whole() {
			continue
		}
		sawn++
		if b.Offcut >= plan.Cuts.Useful(b.Item) && strings.Contains(words, units.Cut(b.Offcut)) {
			t.Errorf("the back tells %s kept as if nothing were to change", units.Cut(b.Offcut))
		}
		for _, p := range b.Pieces {
			want = append(want, units.Cut(p.Length))
			if mark := units.BareCut(p.Mark); p.Mark != p.Length && strings.Contains(words, mark) {
				t.Errorf("the back tells %s as if nothing were to change", mark)
			}
		}
	}
	for _, w := range want {
		if !strings.Contains(words, w) {
			t.Errorf("the back does not say %q", w)
		}
	}
	const wholes, hold, later = 1, 2, 1 // ridge 2 is cut later than ridge 1 of its stick
	if got := tickBoxes(pdf.Document{Pages: []*paper.Page{back.page}}); got != sawn+wholes+hold+later {
		t.Errorf("%d boxes to tick, want %d", got, sawn+wholes+hold+later)
	}
	if !back.toScale || strings.Contains(words, "proven") {
		t.Error("the back is not said to be to scale, or tells proofs")
	}
}

// Whatever a task uses and is not bought is on its crew's list, as many of it as the task takes, and by a name; for the nights and the taking down what is bought is, too.
func TestWhatTasksUseIsFetched(t *testing.T) {
	check := func(name string, plan *layout.Plan) {
		listed := func(phase crew.Phase) (things []string) {
			for _, k := range kits(plan) {
				if slices.Contains(k.phases, phase) {
					things = append(things, k.things...)
				}
			}
			switch phase {
			case crew.Nights, crew.TakeDown:
				return brought(plan, true, phase)
			}
			return things
		}
		for _, task := range plan.Crew.Tasks {
			for _, n := range task.Uses {
				own := task.Phase == crew.Nights || task.Phase == crew.TakeDown // whose leaves list what is bought as well
				if n.Thing.Source() != crew.Fetched && !own {
					continue
				}
				if fetchWords[n.Thing] == "" {
					t.Errorf("%s: thing %d has no name", name, n.Thing)
				}
				kit := plan.Crew.Kit(task.Phase)
				k := slices.IndexFunc(kit, func(o crew.Need) bool { return o.Thing == n.Thing && (o.Count >= n.Count || !own) }) // how many the schedule has in use at once
				if k < 0 || !slices.Contains(listed(task.Phase), fetched(kit[k], plan.Spec.Units)) {
					t.Errorf("%s: %s do not bring thing %d", name, task.Phase, n.Thing)
				}
			}
		}
	}
	for name, source := range specs(t) {
		check(name, planOf(t, source))
	}
	for seed := range uint64(30) {
		check(fmt.Sprint("thrown ", seed), planOf(t, []byte(thrown(seed))))
	}
}

// A court on weighted feet of a pipe that no catalog has: what is bought says its sizes and what it was figured as, bars have no point, the bags are hauled; legs of two
// sticks are joined by whoever the mallet comes for. The board calls nobody and speaks of no stake.
func TestWeightedFeetOfOwnPipe(t *testing.T) {
	text := "hoopwright: 1\ntitle: Court\nunits: metric\ndates: {mark: 2027-11-18, build: 2027-11-19}\ntunnel: {arches: 5, spacing: 1.35 m, opening: {width: 1.2 m, height: 2.0 m}}\n" +
		"arch: {pipe: {od: 25 mm, wall: 2.8 mm, take off: 22 mm, socket: 30 mm}, sticks: [[2 m, 1.2 m], [2 m, 1.2 m]], span: 2.6 m, foot: {weight: 60 kg, width: 400 mm, on: concrete, bar: 12 mm}}\n"
	plan := planOf(t, []byte(text))
	words := said(sheetOf(t, plan, "stock"))
	bags := 0
	for _, i := range plan.Shopping {
		if i.Kind == stock.SandBag {
			bags = i.Buy
		}
	}
	for _, want := range []string{"25 mm outside", "2.8 mm", "rigid PVC", "bar, 0.6 m", "rebar 12 mm", fmt.Sprintf("bags %d kg", 10*bags), "mallet", "into their couplings", "a row from arch 1 on: 2 225 mm, 1 350 mm, 2 225 mm"} {
		if !strings.Contains(strings.Join(strings.Fields(words), " "), want) {
			t.Errorf("the buyer's leaf does not say %q", want)
		}
	}
	if strings.Contains(words, "pointed") {
		t.Error("bars that stand in sockets are pointed")
	}
	for _, f := range plan.Findings {
		if f.Code == "mark-too-late" {
			t.Errorf("nobody is called: %s", f.Text)
		}
	}
	board := said(sheetOf(t, plan, "board"))
	if found := regexp.MustCompile(`(?i)\bstakes?\b|locat|ticket|hammer|buried`).FindString(board); found != "" || !strings.Contains(board, "Weights.") {
		t.Errorf("the board of weighted feet says %q", found)
	}
	plan = planOf(t, []byte(strings.Replace(text, "socket: 30 mm", "socket: 30 mm, modulus: 3000 MPa", 1)))
	if words := said(sheetOf(t, plan, "stock")); strings.Contains(words, "rigid PVC") {
		t.Error("a stiffness of the spec's own is told as PVC")
	}
}

// The saw's leaf has a mallet exactly where it has sticks to join.
func TestSticksAreJoined(t *testing.T) {
	for name, source := range specs(t) {
		plan := planOf(t, source)
		joins, brings := strings.Contains(said(sheetOf(t, plan, "stock")), "Mallet each"), false
		for _, k := range kits(plan) {
			brings = brings || k.crew == "Cutting" && slices.ContainsFunc(k.things, func(s string) bool { return strings.Contains(s, "mallet") })
		}
		if joins != brings {
			t.Errorf("%s: sticks are joined %v, a mallet comes %v", name, joins, brings)
		}
	}
}

// A box for each stick, in a row at most; where that does not hold them, one for two, five and on: never so many that they lie on the title, never too few for the sticks.
func TestBoxesForSticks(t *testing.T) {
	for _, n := range []int{1, 2, 15, 16, 40, 99, 400, 1000} {
		c := cutPicture{title: "Cut 7: 1000 sticks of 10 ft (120 in)", count: n}
		title, boxes := c.boxes(187)
		high := c.head(187).high
		wide, behind := paper.Length(boxes)*boxPitch-boxGap, c.head(187).boxes.X > 1
		if behind {
			wide += paper.Strong.Width(title) + boxGap
		}
		if wide > 187 || boxes < 1 || boxes > n || !behind && high < titleHigh+boxPitch {
			t.Errorf("%d sticks: %d boxes, %v high, with %q", n, boxes, high, title)
		}
		if each := (n + boxes - 1) / boxes; each > 100 || n <= 20 && each > 1 {
			t.Errorf("%d sticks: a box for %d", n, each)
		}
	}
}

// A name stands once on all that is drawn for the 60-arch walk: each leg and ridge piece that is cut is written at a piece or under the stick.
func TestNamesOnTheDrawings(t *testing.T) {
	plan := example(t, "parkwalk.yaml")
	named := map[string]int{}
	want := 0
	for _, p := range patterns(plan.Cuts.Bars) {
		for _, bar := range p.bars {
			for _, piece := range bar.Pieces {
				if !piece.ID.Steel {
					want++
				}
			}
		}
		for _, span := range p.spans(true, false) {
			noun := p.bars[0].Pieces[0].ID.Noun()
			for _, bar := range p.bars {
				for _, piece := range bar.Pieces {
					if strings.HasPrefix(span.Text, piece.ID.Noun()+" ") {
						noun = piece.ID.Noun()
					}
				}
			}
			if rest, found := strings.CutPrefix(span.Text, noun+" "); found && !p.bars[0].Steel() {
				for _, word := range expand(t, rest) {
					named[noun+" "+word]++
				}
			}
		}
	}
	if len(named) != want {
		t.Errorf("%d names at the pieces, %d pieces are cut", len(named), want)
	}
	for name, n := range named {
		if n != 1 {
			t.Errorf("%s stands %d times", name, n)
		}
	}
}

// What the proof line says of plans proven or not, by count, money and length.
func TestProofWords(t *testing.T) {
	b := &binder{spec: &spec.Spec{Currency: "USD", Units: measure.Imperial}}
	stick := stock.Bar{Item: "p", Stock: 3048, Pieces: []stock.Piece{{ID: stock.PieceID{Part: lights.Leg(spec.Left, 1)}, Length: 1000, Mark: 1000}}}
	for _, c := range []struct {
		cuts stock.Cuts
		want string
	}{
		{stock.Cuts{OneLength: true, Proven: true}, "2 sticks to buy; no plan can use fewer."},
		{stock.Cuts{OneLength: true, Cost: 9, Bound: 4.5, Least: 4.5}, "2 sticks to buy; a plan could be at most 1 stick better: not proven."},
		{stock.Cuts{Proven: true, Cost: 9}, "2 sticks to buy, 9.00 USD in all; no plan from the lengths sold can do with less."},
		{stock.Cuts{Cost: 9, Bound: 8.5}, "2 sticks to buy, 9.00 USD in all; a plan could be at most 0.50 USD better: not proven."},
		{stock.Cuts{ByLength: true, Proven: true, Cost: 6096}, "2 sticks to buy, 20′-0″ in all; no plan from the lengths sold can do with less."},
	} {
		c.cuts.Bars = []stock.Bar{stick, stick}
		b.plan = &layout.Plan{Cuts: c.cuts}
		if got := b.proof(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Boards of one length that follow each other are counted together; where both rows are alike one is told. By hand.
func TestBoardsSaid(t *testing.T) {
	left, right := []measure.Length{950, 1500, 1500, 950}, []measure.Length{950, 950}
	for want, rows := range map[string]stock.BoardRows{"a row from arch 1 on: 950 mm, 2 of 1.5 m, 950 mm": {left, left}, "from arch 1 on left: 950 mm, 2 of 1.5 m, 950 mm; right: 2 of 950 mm": {left, right}} {
		if got := boardsSaid(rows, measure.Metric); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The steel that is hauled is all that is bought and fetched, spares too: of the garden, whose stakes are bought cut, each line's number by its length.
func TestSpareStakesAreHauled(t *testing.T) {
	plan := examplePlan(t, "garden")
	steel := 0.0
	for _, i := range plan.Shopping {
		if i.Kind == stock.ReadyStake {
			bar, ok := catalog.FindBar(i.Of)
			if !ok || i.Spare == 0 {
				t.Fatalf("%s has %d spares", i.Item, i.Spare)
			}
			steel += float64(bar.Mass) * i.Length.Metres() * float64(i.Need)
		}
	}
	if want := "steel " + plan.Spec.Units.Mass(measure.Mass(steel)); steel == 0 || !strings.Contains(haul(plan), want) {
		t.Errorf("%q is not in %q", want, haul(plan))
	}
}

// A string whose lead is as far off as its label may be, but else as planned and rightly wound, shows at every ribbon a bulb that the winding's own step lets pass; of one whose lead is not
// asked for nobody would know. Fine strings are held closer than a hand. By hand: bulbs an inch apart, two of them either way.
func TestLeadsKeepTheCount(t *testing.T) {
	const fine = "\n  strings: {fine led: {length: 25 ft, lead: 12 in, tail: 1 in, bulbs: 288, watts: 5 W, volts: 120 V, weight: 0.4 lb}}\n\npower:"
	for name, plan := range map[string]*layout.Plan{"garden": examplePlan(t, "garden"), "schoolyard": examplePlan(t, "schoolyard"),
		"fine": changedExample(t, "garden", "where: legs, string: mini led 100 warm", "where: legs, string: fine led", "\n\npower:", fine)} {
		facts := map[string]string{}
		for _, s := range leafSides(t, plan, "stock") {
			for _, b := range s.blocks {
				for _, f := range b.Facts {
					facts[f.What] = f.Value
				}
			}
		}
		off := printedLength(t, plan.Spec.Units, facts["how far a string's length may be off"])
		give, flags := float64(lighting{plan: plan, u: plan.Spec.Units}.bulbGive()), 0
		for _, w := range plan.Wraps {
			l := w.Label
			if lead := printedLength(t, plan.Spec.Units, facts["lead, "+l.Name]); math.Abs(lead-float64(l.Lead)) > float64(plan.Spec.Units.Grid()) {
				t.Errorf("%s: a lead of %v, the plan has %v", name, lead, l.Lead)
			}
			flags += len(w.Flags)
			if apart := float64(l.Length-l.Lead-l.Tail) / float64(l.Bulbs-1); len(w.Flags) > 0 && off/apart > give+1e-9 {
				t.Errorf("%s: a lead %v off shifts the count of %s by %.1f bulbs of %v", name, off, l.Name, off/apart, give)
			}
		}
		if flags == 0 || (name == "fine") != (off < 60) {
			t.Errorf("%s: %d flags, labels may be %v mm off", name, flags, off)
		}
	}
}

// TestWorkLight: who works at the bench after sunset brings a light. Parkwalk cuts and wraps on November evenings, the garden by daylight; with the place unknown nobody can say.
func TestWorkLight(t *testing.T) {
	for name, want := range map[string]int{"parkwalk": 2, "garden": 0, "starter": 0} {
		lit := 0
		for _, k := range kits(example(t, name+".yaml")) {
			if slices.Contains(k.things, "work light") {
				lit++
			}
		}
		if lit != want {
			t.Errorf("%s: %d crews bring a work light, want %d", name, lit, want)
		}
	}
}
