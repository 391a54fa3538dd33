package packet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Yards that ask the stake plan's words something else than the examples do. Invented.
var stakeYards = map[string]string{
	"bend without marks": `hoopwright: 1
title: Bend
units: imperial
tunnel: {arches: 9, spacing: 4 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: [1, last], from: 6 ft, out: 5 ft}
site: {route: [{straight: 8 ft}, {right: 90 deg, radius: 15 ft}, {straight: rest}]}
`,
	"two marks": `hoopwright: 1
title: Two marks
units: metric
tunnel: {arches: 6, spacing: 1.3 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m, except: [{arches: [1], span: 2.6 m}]}
guys: {arches: [1, 3, last], from: 1.9 m, out: 1.6 m}
site: {start: {at: [5 m, 4 m]}, marks: [{name: gate, at: [0 m, 0 m]}, {name: barn, at: [12 m, 1 m]}]}
`,
	"one mark": `hoopwright: 1
title: One mark
units: metric
tunnel: {arches: 3, spacing: 1.3 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m}
site: {start: {at: [5 m, 4 m]}, marks: [{name: gate, at: [0 m, 0 m]}]}
`,
	"lone and guyed": `hoopwright: 1
title: Lone
units: imperial
tunnel: {arches: 1}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: [1], from: 6 ft, out: 5 ft}
`,
	"longer than a tape": `hoopwright: 1
title: Long
units: imperial
tunnel: {arches: 40, spacing: 5 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
site: {start: {at: [20 ft, 4 ft]}, marks: [{name: gate, at: [0 ft, 0 ft]}, {name: barn, at: [60 ft, 90 ft]}, {name: well, at: [0 ft, 200 ft]}, {name: shed, at: [-20 ft, 100 ft]}, {name: elm, at: [60 ft, 190 ft]}]}
`,
	"row beyond its marks": `hoopwright: 1
title: Carried on
units: imperial
tunnel: {arches: 40, spacing: 4 ft 9 in}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: [1, last], from: 6 ft, out: 5 ft}
site: {start: {at: [20 ft, 4 ft]}, marks: [{name: gate, at: [0 ft, 0 ft]}, {name: barn, at: [60 ft, 40 ft]}]}
`,
	"row before its marks": `hoopwright: 1
title: Carried back
units: metric
tunnel: {arches: 40, spacing: 1.4 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m, except: [{arches: [1], span: 2.6 m}]}
site: {marks: [{name: gate, at: [-8 m, 51 m]}, {name: barn, at: [9 m, 45 m]}]}
`,
	"bend beyond its marks": `hoopwright: 1
title: Chords
units: imperial
tunnel: {arches: 44, spacing: 5 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: [1, 30, last], from: 6 ft, out: 5 ft}
site: {start: {at: [20 ft, 4 ft]}, route: [{straight: 60 ft}, {right: 70 deg, radius: 40 ft}, {straight: rest}], marks: [{name: gate, at: [0 ft, 0 ft]}, {name: barn, at: [60 ft, 10 ft]}]}
`,
}

// stakeTexts returns the plan and all that its stake plan prints, a page a string, texts parted by newlines; lines broken within a cell or paragraph are
// joined by the reader's eye, so what is looked for must fit on a line.
func stakeTexts(t *testing.T, name string, source []byte) (*layout.Plan, []string) {
	t.Helper()
	s, err := spec.Read(name, source)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	plan := layout.Solve(s)
	doc, err := Bind(plan, Options{Sheets: []string{"stake"}, Date: issued})
	if err != nil {
		t.Fatal(err)
	}
	var pages []string
	for i, page := range doc.Pages {
		var words []string
		for _, op := range page.Ops {
			if x, ok := op.(paper.Text); ok {
				words = append(words, x.String)
				checkText(t, i+1, page, x)
			}
		}
		pages = append(pages, strings.Join(words, "\n"))
	}
	return plan, pages
}

// Everything a crew reads off the plan is on it: each stake's row, its tapes as the ground says, worked out here by Pythagoras; each width and what shows.
func TestStakePlanSaysEveryTape(t *testing.T) {
	all := specs(t)
	for name, text := range stakeYards {
		all[name] = []byte(text)
	}
	for name, source := range all {
		plan, pages := stakeTexts(t, name, source)
		whole := "\n" + strings.Join(pages, "\n") + "\n"
		u := plan.Spec.Units
		says := func(what, text string) {
			if !strings.Contains(whole, strings.TrimSuffix(text, " mm")) { // the table names the unit once
				t.Errorf("%s: %s, %q, is nowhere on the stake plan", name, what, text)
			}
		}
		marks := map[string]spec.Point{}
		for _, m := range plan.Ground.Marks {
			marks[m.Name] = m.At
		}
		for _, s := range plan.Stakes {
			if strings.Count(whole, "\n"+s.String()+"\n") < 2 {
				t.Errorf("%s: %s is not both on the picture and in a row", name, s.StakeID)
			}
			says("what shows of "+s.String(), u.Inches(s.Length-s.Depth)+" shows")
		}
		for _, c := range plan.Ground.Chords {
			for _, o := range c.Offsets {
				says(o.Stake.String()+" along", u.Tape(o.Along))
				says(o.Stake.String()+" off", u.Tape(max(o.Off, -o.Off)))
			}
		}
		for _, tie := range plan.Ties {
			s, _ := plan.Ground.Stake(tie.Stake)
			if _, used := plan.Ground.TieOf(tie.Stake, u); !used {
				continue
			}
			for _, mark := range []string{tie.MarkA, tie.MarkB, tie.MarkC} {
				if at, ok := marks[mark]; ok {
					d := math.Sqrt(math.Pow(float64(at.X-s.X), 2) + math.Pow(float64(at.Y-s.Y), 2))
					says(tie.Stake.String()+" from "+mark, u.Tape(measure.Length(d)))
				}
			}
		}
		for _, a := range plan.Arches {
			if a.Kind != nil && a.Span > 0 {
				says(fmt.Sprintf("the width of arch %d", a.Number), u.Tape(a.Span))
			}
		}
		if n := len(plan.Diagonals); n > 0 {
			says("the diagonal of the first bay", u.Tape(plan.Diagonals[0].Distance))
		}
		if plan.Ground.Straight && len(plan.Arches) > 1 && len(plan.Ground.TapeLengths(u)) == 1 {
			says("the whole diagonal", u.Tape(plan.Diagonals[len(plan.Diagonals)-1].Distance))
		}
	}
}

// What a yard has or lacks changes what the crew is told to do.
func TestStakePlanFitsTheYard(t *testing.T) {
	for name, want := range map[string][]string{
		"bend without marks":    {"Bay by bay", "Guy stake", "Choose two marks", "to next R"},
		"two marks":             {"on your", "First tape"},
		"one mark":              {"Choose two marks", "Square at L1"},
		"lone and guyed":        {"Guy stake", "Choose two marks"},
		"longer than a tape":    {"tape 2 of 2: zero at L20", "Next zero: paint R20"},
		"row beyond its marks":  {"two tapes of 100 ft", "sight along the string", "Next zero: paint L20", "G1L to L1"},
		"row before its marks":  {"two tapes of 30 m", "back from", "where L1 and L40 will be"},
		"bend beyond its marks": {"two tapes of 100 ft", "Square off", "set peg", "and on; zero at", "G44R"},
	} {
		_, pages := stakeTexts(t, name, []byte(stakeYards[name]))
		whole := strings.Join(pages, "\n")
		for _, w := range want {
			if w == "First tape" { // two marks have a column each
				if strings.Contains(whole, w) || !strings.Contains(whole, "From A") {
					t.Errorf("%s: no column a mark", name)
				}
				continue
			}
			if !strings.Contains(whole, w) {
				t.Errorf("%s: nothing says %q", name, w)
			}
		}
	}
	_, pages := stakeTexts(t, "garden.yaml", specs(t)["garden.yaml"])
	for _, w := range []string{"Choose two marks", "Bay by bay", "Next zero"} {
		if strings.Contains(strings.Join(pages, "\n"), w) {
			t.Errorf("a straight garden with three marks is told %q", w)
		}
	}
}

// The tapes to bring reach every figure of the table of tapes: garden 42′-9″ at most, schoolyard 18 724 mm, the park 100′-0″. Usual tape sizes are common practice,
// no source.
func TestTapesToBring(t *testing.T) {
	for name, want := range map[string]string{"garden.yaml": "two tapes of 50 ft", "schoolyard.yaml": "two tapes of 20 m", "parkwalk.yaml": "two tapes of 100 ft"} {
		_, pages := stakeTexts(t, name, specs(t)[name])
		if !strings.Contains(strings.Join(pages, "\n"), want) {
			t.Errorf("%s: nothing says %q", name, want)
		}
	}
}
