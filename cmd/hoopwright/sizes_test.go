package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// spreadsheet is what a spreadsheet makes of the CSV: rows by the names in its head.
func spreadsheet(t *testing.T, text string) []map[string]string {
	t.Helper()
	if strings.Count(text, "\n") != strings.Count(text, "\r\n") || !strings.HasSuffix(text, "\r\n") {
		t.Error("lines do not end in CRLF") // RFC 4180, 2.1
	}
	records, err := csv.NewReader(strings.NewReader(text)).ReadAll() // refuses rows of unequal length
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for i, name := range records[0] {
			row[name] = r[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func figure(t *testing.T, row map[string]string, name string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(row[name], 64)
	if err != nil {
		t.Errorf("%s is %q: %v", name, row[name], err)
	}
	return v
}

func within(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s is %g, want %g", what, got, want)
	}
}

// The CSV of a spec parses back into the figures that the plan has of the spec's own arch.
func TestSizesCSVParsesBack(t *testing.T) {
	for _, c := range []struct {
		file, length, force string
		unit, pound         float64
	}{{"garden.yaml", "_in", "_lbf", 25.4, 4.4482216152605}, {"schoolyard.yaml", "_mm", "_n", 1, 1}, {"parkwalk.yaml", "_in", "_lbf", 25.4, 4.4482216152605}} {
		t.Run(c.file, func(t *testing.T) {
			code, out, errs := call(t, example(t, c.file), "sizes", "-", "--csv")
			if code != 0 || errs != "" {
				t.Fatalf("exit %d, %q", code, errs)
			}
			sp, err := spec.Read(c.file, []byte(example(t, c.file)))
			if err != nil {
				t.Fatal(err)
			}
			plan := layout.Solve(sp)
			kind := slices.MaxFunc(plan.Kinds, func(a, b *arch.Kind) int { return len(a.Numbers) - len(b.Numbers) })
			rows := spreadsheet(t, out)
			own, last := false, 0.0
			for _, row := range rows {
				span := figure(t, row, "span"+c.length)
				if span <= last {
					t.Errorf("span %v after %v", span, last)
				}
				last = span
				if math.Abs(span*c.unit-float64(kind.Span)) > 0.1 {
					continue
				}
				own = true
				within(t, "crown", figure(t, row, "crown"+c.length)*c.unit, float64(kind.Crown), .06)
				within(t, "clear", figure(t, row, "clear"+c.length)*c.unit, float64(kind.Clear), .06)
				within(t, "head width", figure(t, row, "head_width"+c.length)*c.unit, float64(kind.HeadWidth), .06)
				within(t, "radius", figure(t, row, "bend_radius"+c.length)*c.unit, float64(kind.BendRadius), .06)
				within(t, "strain", figure(t, row, "strain_percent")/100, kind.Strain, 1e-5)
				within(t, "thrust", figure(t, row, "thrust"+c.force)*c.pound, float64(kind.Thrust), .03)
				for _, f := range kind.Footings {
					within(t, "depth", figure(t, row, "stake_depth_"+f.Soil.Name+c.length)*c.unit, float64(f.Depth), .06)
				}
				if row["opening_clears"] != "true" || row["buildable"] != "true" {
					t.Errorf("opening %s, buildable %s", row["opening_clears"], row["buildable"])
				}
			}
			if !own {
				t.Errorf("the spec's span of %v mm is not among %d rows", float64(kind.Span), len(rows))
			}
		})
	}
}

// What to buy is what the shopping list of the same spec has of sticks and of the legs' strings, and its money the same lines added up.
func TestSizesBuyFromTheShoppingList(t *testing.T) {
	sp, err := spec.Read("garden.yaml", []byte(example(t, "garden.yaml")))
	if err != nil {
		t.Fatal(err)
	}
	var sticks, strung int
	var money float64
	for _, item := range layout.Solve(sp).Shopping {
		switch {
		case strings.HasPrefix(item.Item, "pvc sch40 1/2 in, "):
			sticks += item.Buy
		case item.Item == "mini led 100 warm":
			strung += item.Buy
		default:
			continue
		}
		money += float64(item.Buy) * item.Price
	}
	_, out, _ := call(t, example(t, "garden.yaml"), "sizes", "-", "--csv")
	row := spreadsheet(t, out)[0]
	if row["sticks_to_buy"] != fmt.Sprint(sticks) || row["strings_to_buy"] != fmt.Sprint(strung) || row["money_USD"] != fmt.Sprintf("%.2f", money) {
		t.Errorf("%s sticks, %s strings, %s; the shopping list has %d, %d, %.2f", row["sticks_to_buy"], row["strings_to_buy"], row["money_USD"], sticks, strung, money)
	}
	_, out, _ = call(t, example(t, "garden.yaml"), "sizes", "-")
	for _, want := range []string{"buy 15 pvc sch40 1/2 in, 10 ft; 4.35 USD each", "use 2 pvc sch40 1/2 in, 56 in of your own",
		"buy 8 mini led 100 warm and use 5 of your own; 12 hang on legs", fmt.Sprintf("in all %.2f USD", money), "7′-0″ *"} {
		if !strings.Contains(out, want) {
			t.Errorf("nowhere %q in\n%s", want, out)
		}
	}
	// Twice the legs take twice the sticks, two a leg pair, and more for the ridge.
	_, out, _ = call(t, "", "sizes", "--arches", "12", "--csv")
	row = spreadsheet(t, out)[0]
	if n := figure(t, row, "sticks_to_buy"); n < 24+11*4.5/10 || n > 24+11 || figure(t, row, "strings_to_buy") < 24 || row["money"] != "" {
		t.Errorf("12 arches 4 ft 6 in apart take %v sticks and %s strings for %q", n, row["strings_to_buy"], row["money"])
	}
}

// Ranges as people write them, and what is wrong with those that are none.
func TestRangesOfSizes(t *testing.T) {
	for _, c := range []struct {
		text     string
		units    measure.System
		from, to measure.Length // inches
	}{
		{"7-9", measure.Imperial, 84, 108}, {"7 to 9 ft", measure.Imperial, 84, 108}, {"7 ft to 9 ft", measure.Imperial, 84, 108}, {"7–9 ft", measure.Imperial, 84, 108},
		{"7'-6\" - 9'-6\"", measure.Imperial, 90, 114}, {"7'-6\"", measure.Imperial, 90, 90}, {"6-1/2 ft", measure.Imperial, 78, 78}, {"84-108 in", measure.Imperial, 84, 108},
		{"7 to 9 ft 6 in", measure.Imperial, 84, 114}, {"7 ft 6 in to 9", measure.Imperial, 90, 108}, {" 2.54 – 5.08 m ", measure.Imperial, 100, 200}, {"2.54..5.08", measure.Metric, 100, 200},
	} {
		from, to, err := rangeOf("arch.span", c.text, mostSpan, c.units)
		if err != nil || !same(from, c.from*measure.Inch) || !same(to, c.to*measure.Inch) {
			t.Errorf("%q is %v to %v in, %v", c.text, from.Inches(), to.Inches(), err)
		}
	}
	for text, want := range map[string]string{"9-7": "runs backwards", "7 to": "", "tall": "does not begin with a number", "7 to 9 stone": "unknown unit", "50 ft": "not between 12 in and 40 ft", "7": "needs a unit", "-": ""} {
		if _, _, err := rangeOf("arch.span", text, mostSpan, measure.Imperial); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), `write e.g. --span "5 to 10 ft"`) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// A height's row is what a packet of that height has: its span and gusts, with stakes and guys chosen.
func TestSizesByHeight(t *testing.T) {
	code, out, errs := call(t, "", "sizes", "--height", "90-93 in", "--csv")
	if code != 0 || errs != "" {
		t.Fatalf("exit %d, %q", code, errs)
	}
	tall := strings.Replace(plainSpec[measure.Imperial], "span: 7 ft 6 in", "height: 7 ft 8 in", 1)
	sp, err := spec.Read("tall.yaml", []byte(tall))
	if err != nil {
		t.Fatal(err)
	}
	plan := layout.Solve(sp)
	kind := usualKind(plan)
	met := false
	for _, row := range spreadsheet(t, out) {
		if met = row["crown_in"] == "92.000"; met {
			within(t, "span", figure(t, row, "span_in"), kind.Span.Inches(), .001)
			within(t, "strain", figure(t, row, "strain_percent"), kind.Strain*100, .001)
			within(t, "load factor", figure(t, row, "load_factor"), kind.LoadFactor, .01)
			within(t, "inside", figure(t, row, "inside_m_s"), float64(plan.Weather.InsideGust().Called()), .01)
			within(t, "flat", figure(t, row, "flat_m_s"), float64(plan.Weather.DownGust().Called()), .01)
			break
		}
	}
	if !met {
		t.Errorf("nowhere 92 in: %s", out)
	}
	if sp, err = spec.Read("wide.yaml", []byte(strings.Replace(tall, "sticks: [10 ft, 10 ft]", "span: 7 ft", 1))); err != nil {
		t.Fatal(err)
	}
	kind = usualKind(layout.Solve(sp))
	_, out, _ = call(t, "", "sizes", "--height", "7 ft 8 in", "--span", "7 ft")
	if !strings.Contains(out, "Arches 7′-0″ wide, their legs solved") || !strings.Contains(out, leg(measure.Imperial, kind.Left)+", ") {
		t.Error(out)
	}
	code, out, errs = call(t, "", "sizes", "--height", "14-15 ft", "--arches", "2")
	if code != exitMustFix || !strings.Contains(errs, "none of these heights can be built; try others with --height") || !strings.Contains(out, "no arch: none has that height.") {
		t.Errorf("exit %d, %q, %s", code, errs, out)
	}
	for _, bad := range [][]string{{"--height", "7-8", "--span", "6-7"}, {"--height", "7-8", "--span", "6 ft", "--sticks", "10 ft, 10 ft"}, {"--height", "7-8", "--have", "9 x 10 ft"}, {"--height", "2 in"}} {
		if code, _, errs := call(t, "", append([]string{"sizes"}, bad...)...); code != exitBadCall || !strings.Contains(errs, "--height") {
			t.Errorf("%q: exit %d, %q", bad, code, errs)
		}
	}
}

// Where nothing can be built it is said in every row, in the words under the table, and by the exit code.
func TestSizesSayWhereNothingStands(t *testing.T) {
	code, out, errs := call(t, "", "sizes", "--span", "19 ft to 26 ft")
	if code != exitMustFix || !strings.Contains(errs, "none of these spans can be built") || !strings.Contains(out, "None of these spans can be built.") {
		t.Errorf("exit %d, %q, %q", code, errs, out)
	}
	if strings.Count(out, "no arch\n") < 4 || !strings.Contains(out, "too tight") {
		t.Error(out)
	}
	code, out, _ = call(t, "", "sizes", "--span", "22 ft", "--csv")
	row := spreadsheet(t, out)[0]
	if code != exitMustFix || row["stands"] != "no arch" || row["buildable"] != "false" || row["crown_in"] != "" {
		t.Errorf("exit %d, %v", code, row)
	}
}

// Options stand over the spec, and defaults follow them: units, the stake that fits the pipe, no ridge over a single stick.
func TestSizesOptions(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"--sticks", "3.2 m, 3.2 m"}, "pvc-u pn16 25 mm. Stakes 10 mm, 450 mm showing"},
		{[]string{"--pipe", "pvc-u pn16 32 mm"}, "Legs of 3 200 mm and 3 200 mm, pvc-u pn16 32 mm. Stakes 12 mm"},
		{[]string{"--sticks", "20 ft"}, "One stick of 20′-0″ bent over"},
		{[]string{"--sticks", "20 ft"}, "without a ridge"},
		{[]string{"--sticks", "10 ft + 18 in, 10 ft"}, "Legs of 10′-0″ + 1′-6″ and 10′-0″"},
		{[]string{"--pipe", "pvc sch40 1 in", "--stake", "5/8 in, 4 ft, 20 in"}, "Stakes 5/8 in, 28 in showing, 20 in in the ground"},
		{[]string{"--arches", "1"}, "One arch"},
		{[]string{"--arches", "9", "--spacing", "5 ft 3 in"}, "9 arches 5′-3″ apart with a ridge"},
		{[]string{"--units", "metric", "--span", "2 m to 3 m"}, "2 100 mm"},
	} {
		code, out, errs := call(t, "", append([]string{"sizes"}, c.args...)...)
		if out = strings.ReplaceAll(out, "\u00a0", " "); code != 0 || !strings.Contains(out, c.want) {
			t.Errorf("%q: exit %d, %s, nowhere %q in\n%s", c.args, code, errs, c.want, out)
		}
	}
	// A spec of three other figures, and options that would make them four.
	tall := strings.Replace(example(t, examples.BuiltIn), "span: 7 ft\n", "height: 8 ft\n", 1)
	code, out, errs := call(t, tall, "sizes", "-", "--sticks", "9 ft, 9 ft", "--arches", "4")
	if code != 0 || !strings.Contains(out, "Legs of 9′-0″ and 9′-0″") || !strings.Contains(out, "4 arches 4′-6″ apart") {
		t.Errorf("exit %d, %s\n%s", code, errs, out)
	}
	// What is wrong with the spec itself is told by its place.
	code, _, errs = call(t, example(t, "parkwalk.yaml"), "sizes", "-", "--arches", "20")
	if code != exitBadCall || !strings.Contains(errs, "<standard input>:") || !strings.Contains(errs, "guys.arches") {
		t.Errorf("exit %d, %s", code, errs)
	}
}

// What a shed makes, against counting by hand: a leg is a whole stick and two ridge pieces of 53 in come out of one (106 and two cuts, of 120 in), so n arches take 2n sticks and half of n − 1
// more, rounded up.
func TestSizesFromAShed(t *testing.T) {
	for have := 3; have < 34; have += 3 {
		want := 0
		for n := 2; 2*n+n/2 <= have; n++ { // (n − 1)/2 rounded up is n/2 rounded down
			want = n
		}
		code, out, errs := call(t, "", "sizes", "--have", fmt.Sprintf("%d x 10 ft", have), "--span", "7 ft", "--sticks", "10 ft, 10 ft")
		if want == 0 {
			if code != exitBadCall || !strings.Contains(errs, "do not make two arches") {
				t.Errorf("%d sticks: exit %d, %q", have, code, errs)
			}
			continue
		}
		if head, _, _ := strings.Cut(out, "\n"); code != 0 || !strings.Contains(head, fmt.Sprintf("at most %d arches ", want)) {
			t.Errorf("%d sticks, want %d arches: exit %d, %q", have, want, code, head)
		}
	}
	if _, out, _ := call(t, "", "sizes", "--have", "40 x 10 ft, 20 x mini led 100 warm", "--span", "7 ft"); !strings.Contains(out, "at most 10 arches ") || !strings.Contains(out, "Left: 15 of 10′-0″") {
		t.Errorf("twenty strings light ten arches, which take 25 sticks: %q", out)
	}
	own := strings.Replace(plainSpec[measure.Imperial], "}}", "}, stock: {own: [{item: pvc sch40 1/2 in, length: 10 ft, count: 12, dead: 2}, {item: mini led 100 warm, count: 9}]}}", 1)
	if code, out, errs := call(t, own, "sizes", "-", "--have", "stock.own"); code != 0 || !strings.HasPrefix(out, "10 x 10 ft, 9 x mini led 100 warm make at most 4 arches") || !strings.Contains(out, " tallest ") {
		t.Errorf("the spec's own shed: exit %d, %s%.400s", code, errs, out)
	}
	for _, bad := range []string{"40 10 ft", "x 10 ft", "0 x 10 ft", "4 x 10 fot"} {
		if code, _, errs := call(t, "", "sizes", "--have", bad); code != exitBadCall || !strings.Contains(errs, "40 x 10 ft") {
			t.Errorf("%q: exit %d, %q", bad, code, errs)
		}
	}
}

// fits reports whether pieces come out of sticks, by trying every stick for every piece, the first piece first.
func fits(pieces []measure.Length, room []measure.Length, kerf measure.Length) bool {
	if len(pieces) == 0 {
		return true
	}
	tried := map[measure.Length]bool{}
	for i, left := range room {
		if pieces[0] > left+measure.Millimetre/100 || tried[left] {
			continue
		}
		tried[left] = true
		room[i] = left - pieces[0] - kerf
		if fits(pieces[1:], room, kerf) {
			room[i] = left
			return true
		}
		room[i] = left
	}
	return false
}

// What the shed makes of every kind of leg, against trying everything: each piece out of each stick, for more and more arches. No leg that is left out makes two arches that can be built and walked through.
func TestShedByTryingEverything(t *testing.T) {
	base, err := spec.Read("sizes", []byte(plainSpec[measure.Imperial]))
	if err != nil {
		t.Fatal(err)
	}
	for _, have := range []string{"6 x 10 ft", "4 x 10 ft, 5 x 6 ft", "3 x 12 ft, 2 x 5 ft, 2 x 10 ft"} {
		const span = 7 * measure.Foot
		w := sizeWish{have: have, span: "7 ft", base: base, from: span, to: span}
		a, err := w.fromShed(streams{out: io.Discard, err: io.Discard})
		if err != nil {
			t.Fatalf("%s: %v", have, err)
		}
		list, _ := shedfuls(have)
		var room []measure.Length
		for _, h := range list {
			room = append(room, slices.Repeat([]measure.Length{h.length}, h.count)...)
		}
		w.own = owned(list, base.Arch.Pipe.Name)
		for _, legs := range legsOf(list, measure.Imperial) {
			most, walked := 0, false
			for n := 2; n < 12; n++ {
				w.sticks, w.arches = legs, fmt.Sprint(n)
				one, err := w.wanted()
				if err != nil {
					break
				}
				one.spec.Settle()
				plan := layout.Solve(one.spec)
				var pieces []measure.Length
				for _, p := range plan.Stock.Pieces {
					if p.Item == base.Arch.Pipe.Name {
						pieces = append(pieces, p.Length)
					}
				}
				slices.SortFunc(pieces, func(a, b measure.Length) int { return int(math.Copysign(1, float64(b-a))) })
				if !fits(pieces, room, one.spec.Stock.Kerf) {
					break
				}
				size := plan.Sizes(usualKind(plan), []measure.Length{span})[0]
				most, walked = n, size.Buildable() && size.Opens
			}
			got := 0
			for _, m := range a.shed.made {
				if m.legs == legs {
					got = m.arches
				}
			}
			if want := map[bool]int{true: most}[walked]; got != want {
				t.Errorf("%s, legs of %s: %d arches, %d by trying everything", have, legs, got, want)
			}
		}
		if len(a.shed.made) < 2 || !slices.IsSortedFunc(a.shed.made, func(a, b tunnel) int { return b.arches - a.arches }) {
			t.Errorf("%s makes %v", have, a.shed.made)
		}
	}
}
