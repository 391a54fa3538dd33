package packet

import (
	"fmt"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
	"hoopwright/layout/spec"
)

// Every string that hangs in rows is listed once under its wall, its prongs in the socket of the one before where the power plan has them in one chain, else at its
// place; marks, letters and kinds stand there.
func TestLightPlanOfRows(t *testing.T) {
	plan := examplePlan(t, "millwalk")
	pages, live := framedSheet(t, plan, "light")
	keepsTo(t, "millwalk", pages, live)
	listed := map[string]int{}
	for _, page := range pages {
		for _, op := range page.Ops {
			if x, ok := op.(paper.Text); ok && x.Lettering == paper.Cell {
				listed[x.String]++
			}
		}
	}
	for _, s := range plan.Strings {
		if n := listed[s.Name]; n != 1 {
			t.Errorf("%s is listed %d times", s.Name, n)
		}
	}
	text := strings.Join(strings.Fields(strings.Join(wordsOf(pages...), " ")), " ")
	for _, want := range []string{"Left wall, seen from inside", "Right wall, seen from inside", "14 in", "70 in", "way out", "mini led 100 blue", "21′-", "1, 8"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	for _, c := range plan.Chains {
		for k := 1; k < len(c.Strings); k++ {
			if !strings.Contains(text, "into "+c.Strings[k-1]) {
				t.Errorf("nothing goes into %s", c.Strings[k-1])
			}
		}
	}
	// Each wall's strings stand after its own picture and before the other's.
	right := strings.Index(text, "Right wall, seen from inside")
	for _, s := range plan.Strings {
		if at := strings.Index(text, " "+s.Name+" row "); s.From.Row.Row > 0 && at >= 0 && (at > right) != (s.From.Side == spec.Right) {
			t.Errorf("%s of the %v wall is listed with the other", s.Name, s.From.Side)
		}
	}
	// What the rows do to an arch is said with its figures.
	worst := plan.Lights.Pulls[0]
	for _, e := range plan.Lights.Pulls {
		if e.Bow > worst.Bow {
			worst = e
		}
	}
	if !strings.Contains(text, fmt.Sprintf("Arch %d, pulled with", worst.Arch)) || !strings.Contains(text, "pull the crown of arch") {
		t.Error("it does not say what rows do to the arches they end at")
	}
}

// Each arch has one card, whatever the tunnel; between them the cards name every string, once.
func TestTags(t *testing.T) {
	plans := plansForSheets(t)
	plans["millwalk"] = examplePlan(t, "millwalk")
	for name, plan := range plans {
		pages, live := framedSheet(t, plan, "tags")
		for _, page := range pages {
			for _, op := range page.Ops {
				if x, ok := op.(paper.Text); ok && x.At.Y > clipZone && (x.At.X < live.X || x.At.X+x.Lettering.Width(x.String) > live.Right()+0.01) {
					t.Errorf("%s: %q leaves the page", name, x.String)
				}
			}
		}
		all := wordsOf(pages...)
		named := map[string]int{}
		for _, line := range all {
			for _, w := range strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(" ,;", r) || r == '\u00a0' }) {
				named[w]++
			}
		}
		for n := range plan.Arches {
			if got := countOf(all, fmt.Sprintf("ARCH %d", n+1)); got != 1 {
				t.Errorf("%s: %d cards of arch %d", name, got, n+1)
			}
		}
		if got := countOf(all, "FEET THIS END DOWN"); got != len(plan.Arches) {
			t.Errorf("%s: %d arrows down", name, got)
		}
		for _, s := range plan.Strings {
			if named[s.Name] != 1 {
				t.Errorf("%s: the cards name %s %d times", name, s.Name, named[s.Name])
			}
		}
	}
}

func TestOnParts(t *testing.T) {
	arch := func(n int) lights.Part { return lights.Part{Kind: lights.Arch, Number: n} }
	ridge := func(n int) lights.Part { return lights.Part{Kind: lights.Ridge, Number: n} }
	left, right := func(n int) lights.Part { return lights.Leg(spec.Left, n) }, func(n int) lights.Part { return lights.Leg(spec.Right, n) }
	for want, parts := range map[string][]lights.Part{
		"arch 1, 8":              {arch(1), arch(8)},
		"leg L3; ridge 1 to 4":   {left(3), ridge(1), ridge(2), ridge(3), ridge(4)},
		"leg L1 to L3, R1 to R3": {left(1), right(1), left(2), right(2), left(3), right(3)},
		"leg L1, R1":             {left(1), right(1)},
	} {
		if got := onParts(parts); got != want {
			t.Errorf("%v: %q, want %q", parts, got, want)
		}
	}
}
