package packet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

func solved(t *testing.T, source []byte) *layout.Plan {
	t.Helper()
	s, err := spec.Read("spec.yaml", source)
	if err != nil {
		t.Fatal(err)
	}
	return layout.Solve(s)
}

func example(t *testing.T, name string) *layout.Plan {
	t.Helper()
	source, err := examples.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return solved(t, source)
}

func sheetOf(t *testing.T, plan *layout.Plan, word string) pdf.Document {
	t.Helper()
	doc, err := Bind(plan, Options{Sheets: []string{word}, Date: issued})
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

// The garden's cut sheet: its proof, its hold with the figures of the plan, each running mark, and a box for each stick that is cut, each line of lots, whole sticks and
// like pieces, and each caution.
func TestCutSheetOfTheGarden(t *testing.T) {
	plan := example(t, "garden.yaml")
	doc := sheetOf(t, plan, "cut")
	words := said(doc)
	units := plan.Spec.Units
	want := []string{"14 sticks to buy; no plan can use fewer.", "HOLD", units.Cut(plan.Ridge[0].Centres), units.Cut(plan.Ridge[0].Cut), "No one under 16", "Eye protection", "PVC dust", "Stop and ask when", "from the shed",
		"1/16 in a bay adds up to 5/16 in over 5 bays"}
	want = append(want, "the shed then holds 1 of 66 7/8 in") // 120 − 53 − 1/8, from the stick of the odd ridge piece
	sawn := 0
	for _, b := range plan.Cuts.Bars {
		if b.Whole() {
			continue
		}
		sawn++
		for _, p := range b.Pieces {
			want = append(want, strings.TrimSuffix(units.Cut(p.Mark), " in"))
		}
	}
	for _, w := range want {
		if !strings.Contains(words, w) {
			t.Errorf("the cut sheet does not say %q", w)
		}
	}
	const cautions, lots, wholes = 3, 1, 1 // by the spec: one pipe, one length of it used whole
	if got, want := tickBoxes(doc), sawn+cautions+lots+wholes+len(alike(plan.Stock.Pieces)); got != want {
		t.Errorf("%d boxes to tick, want %d", got, want)
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
				t.Errorf("%s holds a bar of another cut", p.letter)
			}
		}
		if key := patternKey(p.bars[0]); seen[key] {
			t.Errorf("%s is drawn twice", p.letter)
		} else {
			seen[key] = true
		}
	}
	if sawn, _ := plan.Cuts.Sawn(); bars != sawn {
		t.Errorf("%d bars in the patterns, %d are cut", bars, sawn)
	}
	if pages := len(sheetOf(t, plan, "cut").Pages); pages > 6 {
		t.Errorf("sixty arches take %d pages", pages)
	}
}

func TestLetters(t *testing.T) {
	var got []string
	for _, k := range []int{0, 25, 26, 51, 52, 701, 702} {
		got = append(got, letter(k))
	}
	if want := []string{"A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
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
		sheet := &cutting{flow: &flow{b: b}, cuts: c.cuts, units: measure.Imperial}
		if got := sheet.proof(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
