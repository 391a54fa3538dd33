package packet

import (
	"encoding/json"
	"fmt"
	"math"
	"math/cmplx"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// outside is a plan as `check --json` tells it: nothing here is counted by the code that made it.
type outside struct {
	Arches []struct {
		Number int
		Span   float64 `json:"span_mm"`
		Length float64 `json:"length_mm"`
		Crown  float64 `json:"crown_mm"`
	}
	Ridge []struct {
		Bay int
		Cut float64 `json:"cut_mm"`
	}
	Strings []struct {
		Name     string
		Watts    float64
		From, To struct{ At string }
	}
	Chains []struct {
		Name, Outlet string
		Strings      []string
		Watts, Amps  float64
		FedBy        string `json:"fed_by"`
	}
	Cords []struct {
		Name, Gauge, Outlet string
		FedBy               string `json:"fed_by"`
		Sockets, Open       int
		Amps                float64
		Length              float64 `json:"length_mm"`
	}
	Taps []struct {
		Name          string
		FedBy         string `json:"fed_by"`
		Sockets, Open int
	}
	Circuits []struct {
		Name    string
		Amps    float64
		Allowed float64 `json:"allowed_amps"`
	}
}

func seenFromOutside(t *testing.T, plan *layout.Plan) (o outside) {
	t.Helper()
	text, err := json.Marshal(plan)
	if err == nil {
		err = json.Unmarshal(text, &o)
	}
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// noted reports whether a plan has a finding of one of the codes.
func noted(plan *layout.Plan, codes ...string) bool {
	return slices.ContainsFunc(plan.Findings, func(f finding.Finding) bool { return slices.Contains(codes, f.Code) })
}

// ampacity is what cords of a gauge carry at most: UL's ratings of outdoor cords to 50 ft and more, EN 50525 and BS 7671 of those in mm² (memory).
var ampacity = map[string]float64{"18 AWG": 10, "16 AWG": 13, "14 AWG": 15, "12 AWG": 20, "10 AWG": 30, "1.0 mm²": 10, "1.5 mm²": 16, "2.5 mm²": 25}

// fedOnce recounts what each cord, three-way and circuit carries, from the strings' labels up.
func (o outside) fedOnce(t *testing.T, plan *layout.Plan) {
	watts, runs := map[string]float64{}, map[string]int{}
	for _, s := range o.Strings {
		watts[s.Name] = s.Watts
	}
	plugs, spared, supplied := map[string]int{}, map[string]int{}, map[string]bool{} // by what they are in; of these behind a supply; strings that have one
	for _, s := range plan.Strings {
		supplied[s.Name] = s.Label.Supply != nil
	}
	for _, c := range o.Chains {
		sum := 0.0
		for _, name := range c.Strings {
			runs[name]++
			sum += watts[name]
		}
		if math.Abs(sum-c.Watts) > 1e-6 {
			t.Errorf("run %s: %v W, its strings %v W", c.Name, c.Watts, sum)
		}
		if c.Outlet == "" && !noted(plan, "no-power-given", "not-enough-amps", "not-enough-sockets", "wrong-volts") {
			t.Errorf("nothing feeds run %s, and nobody says so", c.Name)
		}
		plugs[c.FedBy]++
		if supplied[c.Strings[0]] { // where one supply feeds several runs, its own plug is one
			spared[c.FedBy]++
		}
	}
	for name := range watts {
		if runs[name] != 1 {
			t.Errorf("string %s is in %d runs", name, runs[name])
		}
	}
	for _, c := range o.Cords {
		plugs[c.FedBy]++
		most, known := ampacity[c.Gauge]
		if c.Amps > most+1e-9 {
			t.Errorf("cord %s of %s (known: %v) carries %v A", c.Name, c.Gauge, known, c.Amps)
		}
	}
	for _, x := range o.Taps {
		plugs[x.FedBy]++
	}
	for _, c := range o.Cords {
		if n := c.Sockets - c.Open; n > plugs[c.Name] || n < plugs[c.Name]-max(0, spared[c.Name]-1) {
			t.Errorf("cord %s: %d plugs and %d open in %d sockets", c.Name, plugs[c.Name], c.Open, c.Sockets)
		}
	}
	for _, x := range o.Taps {
		if n := x.Sockets - x.Open; n > plugs[x.Name] || n < plugs[x.Name]-max(0, spared[x.Name]-1) {
			t.Errorf("three-way %s: %d plugs and %d open in %d sockets", x.Name, plugs[x.Name], x.Open, x.Sockets)
		}
	}
	for _, c := range o.Circuits {
		given := 0.0
		for _, k := range plan.Spec.Power.Circuits {
			if k.Name == c.Name {
				given = float64(k.OtherLoad)
			}
		}
		if c.Amps > max(c.Allowed, given)+1e-9 {
			t.Errorf("circuit %s carries %v A of %v", c.Name, c.Amps, c.Allowed)
		}
	}
}

// blanks are taken out where texts are compared that may go on in a next line.
var blanks = regexp.MustCompile(`[\s\x{a0}]+`)

// toldOnBoard: what found no room stands on the board; every stake, and every string, stands on its leaf or is said to have found no room.
func toldOnBoard(t *testing.T, plan *layout.Plan, sides []set, notes []block.Note) {
	words := map[string][]string{}
	for _, s := range sides {
		words[s.kind.word] = append(words[s.kind.word], wordsOf(s.page)...)
	}
	board := blanks.ReplaceAllString(strings.Join(words["board"], ""), "")
	missing := ""
	for _, n := range notes {
		missing += " " + n.Block + " " + n.What
		if told := strings.Fields(n.Block + " " + n.What); !strings.Contains(board, blanks.ReplaceAllString(told[len(told)-1],
			"")) { // the list may go on on a next side
			t.Errorf("%v found no room, and the board does not say so", n)
		}
	}
	if missing != "" {
		t.Logf("no room:%s", missing)
	}
	for _, s := range plan.Stakes {
		if !slices.Contains(words["stakes"], s.String()) && !strings.Contains(missing, "plan") {
			t.Errorf("%s is not on the stakes' plan", s)
		}
	}
	for _, s := range plan.Strings {
		if !slices.Contains(words["lights"], s.Name) && !strings.Contains(missing+" ", " strings "+s.Name+" ") && !strings.Contains(missing+" ",
			" strings  ") {
			t.Errorf("%s is on no picture of the lights", s.Name)
		}
	}
}

var (
	heldOf = regexp.MustCompile(`^(Feet|Height), arch(?:es)? (.+)$`)
	cutOf  = regexp.MustCompile(`^ridge piece, bay (\d+)$`)
	ofCord = regexp.MustCompile(`^length of cord (C\d+)$`)
)

// numbersOf reads "1, 3 to 5 and 8".
func numbersOf(t *testing.T, text string) (list []int) {
	for _, word := range expand(t, strings.NewReplacer(" and ", ", ").Replace(text)) {
		n, err := strconv.Atoi(word)
		if err != nil {
			t.Errorf("%q in %q", word, text)
		}
		list = append(list, n)
	}
	return list
}

// printedLength reads a printed length in millimetres.
func printedLength(t *testing.T, u measure.System, text string) float64 {
	t.Helper()
	text = strings.NewReplacer("[", "", "]", "", "±\u00a0", "", " or more", "").Replace(text)
	if u == measure.Metric && strings.ContainsAny(text[max(0, len(text)-1):], "0123456789") {
		text += " mm"
	}
	v, err := measure.ParseLength(text)
	if err != nil {
		t.Error(err)
	}
	return float64(v)
}

// labelsAllowTheirRuns: a kind's label is asked for as many in a row as the longest run has that one of it is in.
func labelsAllowTheirRuns(t *testing.T, o outside, plan *layout.Plan, facts map[string]string) {
	longest, kind := map[string]int{}, map[string]string{} // runs that a kind is in
	for _, s := range plan.Strings {
		kind[s.Name] = s.Kind
	}
	for _, c := range o.Chains {
		for _, name := range c.Strings {
			longest[kind[name]] = max(longest[kind[name]], len(c.Strings))
		}
	}
	for k, n := range longest {
		if said := facts["joined at least, "+k]; said != fmt.Sprintf("%d+", n) {
			t.Errorf("labels of %s are to allow %s in a row, and %d are in a run with one", k, said, n)
		}
	}
}

// figuresAreThePlans: figures that are held on site, that are cut and that are bought are those of the plan.
func figuresAreThePlans(t *testing.T, o outside, plan *layout.Plan, sides []set) {
	facts := map[string]string{}
	for _, s := range sides {
		for _, b := range s.blocks {
			for _, f := range b.Facts {
				facts[f.What] = f.Value
			}
		}
	}
	read := func(what string) float64 { return printedLength(t, plan.Spec.Units, facts[what]) }
	near := func(what string, want, within float64) {
		if math.Abs(read(what)-want) > within {
			t.Errorf("%s is printed %s, the plan has %.1f mm", what, facts[what], want)
		}
	}
	if n := facts["Arches"]; n != fmt.Sprint(len(o.Arches)) {
		t.Errorf("%s arches are printed, the plan has %d", n, len(o.Arches))
	}
	labelsAllowTheirRuns(t, o, plan, facts)
	tape := float64(plan.Spec.Units.Grid())
	for what := range facts {
		if m := heldOf.FindStringSubmatch(what); m != nil && !strings.HasSuffix(what, "within") {
			named := numbersOf(t, m[2])
			for i, n := range named {
				want, within := o.Arches[n-1].Crown, read(what+", within")
				if m[1] == "Feet" {
					want = o.Arches[n-1].Span
				}
				if facts["Feet, arch "+fmt.Sprint(n)] != "" && len(named) > 1 || i > 0 && m[1] == "Feet" {
					continue // told apart
				}
				near(what, want, within+4*tape)
			}
		}
		if m := cutOf.FindStringSubmatch(what); m != nil {
			n, _ := strconv.Atoi(m[1])
			near(what, o.Ridge[n-1].Cut, tape)
		}
		if m := ofCord.FindStringSubmatch(what); m != nil {
			for _, c := range o.Cords {
				if c.Name == m[1] {
					near(what, c.Length, 1)
				}
			}
		}
	}
}

var (
	wholeLine = regexp.MustCompile(`^Whole: \d+ (?:stick|bar)s? of .+? \((.+)\), each (.+?), ±`)
	pieceName = regexp.MustCompile(`^((?:leg|arch|ridge|brace)(?: lower| upper| middle(?: \d+)?)?) (.+)$`)
	notPrint  = regexp.MustCompile(`[\x00-\x1f]`) // what marks a figure in a text
)

// cutSheet is what the cut sheet says: how long every piece of pipe is that it names.
type cutSheet struct {
	t   *testing.T
	cut map[string]float64
}

// tell takes "leg L1 to L4, R2" as so many pieces of a length; stakes have no names.
func (c cutSheet) tell(kind string, length float64) {
	kind = strings.NewReplacer(": first", "", ": wait", "").Replace(strings.ReplaceAll(kind, "\u00a0", " "))
	m := pieceName.FindStringSubmatch(kind)
	if m == nil {
		return
	}
	for _, place := range expand(c.t, m[2]) {
		if name := m[1] + " " + place; c.cut[name] != 0 {
			c.t.Errorf("%s is cut twice", name)
		} else {
			c.cut[name] = length
		}
	}
}

// picture takes one pattern of cuts: the lengths of its pieces stand in it, the names under them or, in the order of their lengths, below.
func (c cutSheet) picture(p cutPicture, lengths []float64) {
	below := strings.Split(strings.TrimSuffix(strings.TrimPrefix(p.names, "Names: "), "."), "; ")
	seen, first := map[string]bool{}, 0
	for _, span := range p.stick.Under {
		length := lengths[first]
		first += span.Pieces
		if p.names == "" {
			c.tell(span.Text, length)
			continue
		}
		noun := regexp.MustCompile(`^\d+ × |: wait$|: first$`).ReplaceAllString(span.Text, "")
		if key := fmt.Sprint(noun, length); !seen[key] && pieceName.MatchString(noun+" 1") {
			seen[key] = true
			i := slices.IndexFunc(below, func(kind string) bool { m := pieceName.FindStringSubmatch(kind); return m != nil && m[1] == noun })
			if i < 0 {
				c.t.Errorf("%s has no name in %q", noun, p.names)
				continue
			}
			c.tell(below[i], length)
			below = slices.Delete(below, i, i+1)
		}
	}
}

// readCuts reads the cut sheet.
func readCuts(t *testing.T, u measure.System, sides []set) cutSheet {
	c := cutSheet{t, map[string]float64{}}
	for _, s := range sides {
		for _, b := range s.blocks {
			switch body := b.Body.(type) {
			case block.Step:
				if m := wholeLine.FindStringSubmatch(notPrint.ReplaceAllString(body.Text, "")); m != nil {
					for _, kind := range strings.Split(m[1], "; ") {
						c.tell(kind, printedLength(t, u, m[2]))
					}
				}
			case cutPicture:
				var lengths []float64
				for _, f := range b.Facts {
					if strings.Contains(f.What, ", piece ") {
						lengths = append(lengths, printedLength(t, u, f.Value))
					}
				}
				c.picture(body, lengths)
			}
		}
	}
	return c
}

var (
	rowEnds = regexp.MustCompile(`(\d+) to arch (\d+)$`)
	onRow   = regexp.MustCompile(`^row (?:left|right) (\d+), (?:bay \d+, (.+) from )?arch (\d+)$`)
)

// hungAsTold: each way of the rows that is printed begins where its first string's prongs are and ends where its last string's socket is, to a hand; of two ends that are not
// joined in a bay it is said that they are tied.
func (o outside) hungAsTold(t *testing.T, u measure.System, sides []set) {
	hand := float64(measure.By(u, 4*measure.Inch, 100*measure.Millimetre))
	at := map[string][2][]string{}
	for _, s := range o.Strings {
		at[s.Name] = [2][]string{onRow.FindStringSubmatch(s.From.At), onRow.FindStringSubmatch(s.To.At)}
	}
	off := func(spot []string) bool { return spot[2] != "" && printedLength(t, u, spot[2]) > hand+1 }
	told, ways := "", 0
	for _, s := range sides {
		for _, b := range s.blocks {
			told += fmt.Sprint(b.Body)
			table, ok := b.Body.(block.Table)
			if b.Name != "ways of the rows" || !ok {
				continue
			}
			for _, r := range table.Rows {
				ways++
				names := strings.FieldsFunc(r.Cells[3], func(c rune) bool { return c == ' ' || c == ',' })
				first, last, ends := at[names[0]][0], at[names[len(names)-1]][1], rowEnds.FindStringSubmatch(r.Cells[2])
				switch {
				case first == nil || last == nil || ends == nil:
					t.Errorf("rows %q: %v to %v", r.Cells, first, last)
				case first[3] != r.Cells[1] || off(first) || last[1] != ends[1] || last[3] != ends[2] || off(last):
					t.Errorf("rows %q: their strings go from %q to %q", r.Cells, first[0], last[0])
				}
			}
		}
	}
	for _, c := range o.Chains {
		if end := at[c.Strings[len(c.Strings)-1]][1]; end != nil && off(end) && ways > 0 && !strings.Contains(told, "tied to each other") {
			t.Errorf("%s ends %q, and nobody is told to tie it", c.Name, end[0])
		}
	}
}

// assembled puts the printed pieces together, arch by arch and bay by bay.
func assembled(t *testing.T, o outside, plan *layout.Plan, sides []set) {
	c := readCuts(t, plan.Spec.Units, sides)
	grid := float64(plan.Spec.Units.Grid())
	partly := noted(plan, "piece-too-long", "no-cut-plan")
	for _, a := range o.Arches {
		if a.Length == 0 {
			continue
		}
		s := plan.Spec.ArchOf(a.Number)
		sum, sticks := 0.0, 0
		for name, length := range c.cut {
			if m := pieceName.FindStringSubmatch(name); m[1] != "ridge" && m[1] != "brace" && strings.TrimLeft(m[2], "LR") == fmt.Sprint(a.Number) {
				sum, sticks = sum+length, sticks+1
			}
		}
		joint := float64(s.Pipe.CouplingStop) // each adds a coupling's stop, that of the crown under a ridge twice the take-off
		sum += float64(max(0, sticks-1)) * joint
		if len(o.Ridge) > 0 && !s.OneStick {
			sum += 2*float64(s.Pipe.TakeOff) - joint
		}
		if !partly && (sticks == 0 || sum < a.Length-grid*float64(sticks) || sum > a.Length+grid*float64(sticks)+float64(plan.Spec.Stock.Trim)) {
			t.Errorf("arch %d: %d printed sticks make %.1f mm of %.1f", a.Number, sticks, sum, a.Length)
		}
	}
	for _, r := range o.Ridge {
		if got := c.cut[fmt.Sprint("ridge ", r.Bay)]; !partly && math.Abs(got-r.Cut) > grid {
			t.Errorf("ridge %d is printed %.1f mm long, the plan has %.1f", r.Bay, got, r.Cut)
		}
	}
}

var (
	fromSpot = regexp.MustCompile(`^(.+?)\x{a0} (.+)$`)
	onChord  = regexp.MustCompile(`^String from (\w+) (?:to|through) (\w+)(?: and on)?\. Zero at (\w+),`)
)

// backOnTheirSpots finds the stakes by the printed tapes alone, every tape read as it is printed.
func backOnTheirSpots(t *testing.T, s *stakeLeaf) {
	if s.byRow() {
		rowsBack(t, s)
		return
	}
	at := map[string]complex128{}
	for i, m := range s.ground.Marks {
		at[draw.MarkLetter(i)] = complex(float64(m.At.X), float64(m.At.Y))
	}
	for _, x := range s.ground.Stakes {
		at[x.String()] = seen(x)
	}
	e := float64(measure.By(s.units, 0.25*measure.Inch, 5)) / 2 // as the tapes are rounded
	for _, part := range s.parts {
		var from, to, zero complex128
		for _, r := range part.rows() {
			if m := onChord.FindStringSubmatch(r.heading); m != nil {
				from, to, zero = at[m[1]], at[m[2]], at[m[3]]
			}
			if len(r.stakes) == 0 || strings.Contains(strings.Join(r.cells, ""), "ask where") {
				continue
			}
			want, within := seen(r.stakes[0]), 2*e
			var got complex128
			first, second := fromSpot.FindStringSubmatch(r.cells[0]), fromSpot.FindStringSubmatch(r.cells[1])
			switch long, along := strings.CutPrefix(r.cells[0], "along "); {
			case along:
				u := (to - from) / complex(cmplx.Abs(to-from), 0)
				side := 0.0
				if off, where, found := cutLast(r.cells[1]); found && where != "string" {
					side = printedLength(t, s.units, off)
					if where == "left" {
						side = -side
					}
				}
				zero = from + u*complex(real((zero-from)/u), 0)
				got = zero + u*complex(printedLength(t, s.units, long), -side)
			case first == nil || second == nil:
				t.Errorf("%s: %q cannot be read", r.name(), r.cells)
				continue
			default:
				p, q := at[first[1]], at[second[1]]
				got = meet(p, printedLength(t, s.units, first[2]), q, printedLength(t, s.units, second[2]), want)
				within = 0 // where two tapes cross flat, what rounding does to the crossing is no longer in proportion
				for _, d := range [4][2]float64{{e, e}, {e, -e}, {-e, e}, {-e, -e}} {
					within = max(within, cmplx.Abs(meet(p, cmplx.Abs(p-want)+d[0], q, cmplx.Abs(q-want)+d[1], want)-want))
				}
			}
			if off := cmplx.Abs(got - want); !(off <= within+1) {
				t.Errorf("%s: %q come out %.1f mm off, %.1f by the tapes' rounding", r.name(), r.cells, off, within)
			}
			if r.cells[1] != "" && len(r.cells) > 2 && r.cells[2] != "" {
				m := fromSpot.FindStringSubmatch(r.cells[2])
				if off := math.Abs(cmplx.Abs(at[m[1]]-want) - printedLength(t, s.units, m[2])); off > e+1e-6 {
					t.Errorf("%s: the check tape %q is %.1f mm off", r.name(), r.cells[2], off)
				}
			}
		}
	}
}

// cutLast parts a text at its last space.
func cutLast(text string) (before, after string, found bool) {
	i := strings.LastIndexByte(text, ' ')
	if i < 0 {
		return "", "", false
	}
	return text[:i], text[i+1:], true
}

// rowsBack finds the stakes along two straight rows: every one by its row's tape and what stands beside it; the corners by the tapes from marks.
func rowsBack(t *testing.T, s *stakeLeaf) {
	e := float64(measure.By(s.units, 0.25*measure.Inch, 5)) / 2
	legs, alike := s.ground.Stakes, true
	for _, part := range s.parts {
		for _, r := range part.rows() {
			for i, x := range r.stakes {
				zero, end := seen(legs[2*part.tape.First-2+i]), seen(legs[2*part.tape.Last-2+i])
				u := (end - zero) / complex(cmplx.Abs(end-zero), 0)
				cell := sideOf(r.cells[0], i)
				alike = alike && cell == r.cells[0]
				along, back := strings.CutSuffix(cell, " back")
				want := (seen(x) - zero) / u // along, and to the left
				if across := float64(s.off(x) - s.off(legs[2*part.tape.First-2+i])); across != 0 && x.Arch == part.tape.Last && !x.Guy {
					// The tape lies along the line, and the end stands as far off it as is printed.
					want = complex(math.Sqrt(max(0, real(want)*real(want)-across*across)), imag(want))
				}
				got := printedLength(t, s.units, along)
				if back {
					got = -got
				}
				if x.Guy || x.Side == spec.Left { // right ones stand a gauge stick from the left ones
					if math.Abs(got-real(want)) > e+1 {
						t.Errorf("%s: %q along its row, it stands at %.1f mm", x, cell, real(want))
					}
				}
			}
		}
	}
	if n := len(s.ground.Marks); len(s.parts) == 1 && alike && n >= 2 && n <= 3 && len(s.ground.Ties) > 0 && len(legs) >= 4 {
		if c := readLeaf(t, s); c.width > 0 && c.long > 0 && c.bay > 0 && len(c.tapes["L1"]) > 1 && len(c.tapes[fmt.Sprintf("L%d ×", c.last)]) > 1 {
			c.dice = nil
			for name, at := range c.mark("", 0) {
				i := slices.IndexFunc(legs, func(x ground.Stake) bool { return x.String() == name })
				if i >= 0 && cmplx.Abs(at-seen(legs[i])) > 4*8*e {
					t.Errorf("%s comes out %.0f mm off", name, cmplx.Abs(at-seen(legs[i])))
				}
			}
		}
	}
}

// sideOf is what a cell says of the left or the right stake.
func sideOf(cell string, side int) string {
	for _, line := range strings.Split(cell, "\n") {
		if rest, ok := strings.CutPrefix(line, "LR"[side:side+1]+" "); ok {
			return rest
		}
	}
	return cell
}
