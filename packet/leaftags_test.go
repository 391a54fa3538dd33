package packet

import (
	"fmt"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
)

// seasonPlans are small, odd, long and thrown tunnels, with guys on every arch, without lights, on every paper.
func seasonPlans(t *testing.T) map[string]*layout.Plan {
	t.Helper()
	plans := plansForSheets(t)
	plans["millwalk"] = examplePlan(t, "millwalk")
	plans["guys on every arch"] = changedExample(t, "parkwalk", "guys: {arches: [1, 7, 13, 19, 25, 31, 37, 43, 49, 55, last]", "guys: {arches: all")
	plans["240 arches"] = planOf(t, []byte("hoopwright: 1\ntitle: To the sea and back\ntunnel: {arches: 240, spacing: 4 ft}\narch: {pipe: pvc sch40 3/4 in, sticks: [10 ft, 10 ft], span: 7 ft}\n"))
	for seed := range uint64(20) {
		plans[fmt.Sprintf("thrown %d", seed)] = planOf(t, []byte(thrown(seed)))
	}
	for _, size := range []string{"legal", "tabloid", "a4", "a3"} {
		plans[size] = changedExample(t, "garden", "paper: letter", "paper: "+size)
	}
	return plans
}

// textsOf are the texts of sides, hard spaces as plain ones.
func textsOf(sides []set) (list []string) {
	for _, s := range sides {
		for _, text := range wordsOf(s.page) {
			list = append(list, strings.ReplaceAll(text, "\u00a0", " "))
		}
	}
	return list
}

// stands holds a leaf's sides to what all leaves are held to: nothing on text, nothing out of the body, no lettering under a floor, what is declared printed.
func stands(t *testing.T, name string, plan *layout.Plan, sides []set, floor paper.PointSize) {
	t.Helper()
	size, _ := paper.Sheet(plan.Spec.Paper)
	for _, s := range sides {
		for _, fault := range lint(s.page) {
			t.Errorf("%s, %s: %s", name, s.title, fault)
		}
		left := punchMargin
		if s.back {
			left = edgeMargin
		}
		right := left + size.W - punchMargin - edgeMargin
		for _, op := range s.page.Ops {
			if x, ok := op.(paper.Text); ok && (x.At.X < left-0.01 || x.At.X+x.Lettering.Width(x.String) > size.W || x.At.Y > size.H-edgeMargin || x.Lettering.Size < floor) {
				t.Errorf("%s, %s: %q at %.1f to %.1f of %.1f, %v pt", name, s.title, x.String, x.At.X, x.At.X+x.Lettering.Width(x.String), right, x.Lettering.Size)
			}
		}
	}
}

// Each arch has one card, eight cards a side, whatever the tunnel; between them the cards name every string, once. Cards are read in the hand: 9 pt is enough.
func TestTags(t *testing.T) {
	t.Parallel()
	for name, plan := range seasonPlans(t) {
		sides := leafSides(t, plan, "tags")
		stands(t, name, plan, sides, 9)
		all := textsOf(sides)
		named := map[string]int{}
		for _, line := range all {
			for _, w := range strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(" ,;", r) }) {
				named[w]++
			}
		}
		for n := range plan.Arches {
			if got := countOf(all, fmt.Sprintf("ARCH %d", n+1)); got != 1 {
				t.Errorf("%s: %d cards of arch %d", name, got, n+1)
			}
		}
		if got := countOf(all, "FEET THIS END"); got != len(plan.Arches) {
			t.Errorf("%s: %d arrows down", name, got)
		}
		for _, s := range plan.Strings {
			if named[s.Name] != 1 {
				t.Errorf("%s: the cards name %s %d times", name, s.Name, named[s.Name])
			}
		}
		b, _ := newBinder(plan, Options{Date: issued})
		if most := (len(plan.Arches)+7)/8 + (len(b.stripsForTags())+6)/7; len(sides) > most {
			t.Errorf("%s: %d sides of tags for %d arches, want %d", name, len(sides), len(plan.Arches), most)
		}
	}
}
