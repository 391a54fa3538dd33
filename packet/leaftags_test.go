package packet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/say"
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

// Each arch has one card, and each other sort of thing that is kept; no more sides than eight cards a side take, the blank backs counted. Cards are read in the hand: 9 pt is enough.
func TestTags(t *testing.T) {
	t.Parallel()
	for name, plan := range seasonPlans(t) {
		sides := leafSides(t, plan, "tags")
		stands(t, name, plan, sides, 9)
		all := textsOf(sides)
		for n := range plan.Arches {
			if got := countOf(all, fmt.Sprintf("ARCH %d", n+1)); got != 1 {
				t.Errorf("%s: %d cards of arch %d", name, got, n+1)
			}
		}
		feet := 0
		for _, line := range all {
			if strings.Contains(line, " in + ") || strings.Contains(line, " mm + ") {
				t.Errorf("%s: which stick stands at the foot: %q", name, line)
			}
			if regexp.MustCompile(`^(L\d+, R\d+ each: |One stick, foot to foot |L\d+: )`).MatchString(line) {
				feet++
			}
		}
		if feet != len(plan.Arches) {
			t.Errorf("%s: %d cards tell the legs", name, feet)
		}
		if n := len(plan.Power.Cords); n > 0 && !slices.ContainsFunc(all, func(line string) bool { return strings.HasPrefix(line, say.Count(n, "cord")) }) {
			t.Errorf("%s: no card says %d cords", name, n)
		}
		most := (len(plan.Arches) + 7) / 8
		if most += most % 2; len(sides) > most {
			t.Errorf("%s: %d sides of tags for %d arches, want %d", name, len(sides), len(plan.Arches), most)
		}
	}
}

// What is cut out has nothing behind it: under the cards of a packet, as high as they reach, the back of their sheet is bare but for a word that says so, and the spec
// that is filed is whole on the half that is left, or on a sheet of its own.
func TestNothingIsPrintedBehindACard(t *testing.T) {
	for name, source := range specs(t) {
		sides, _ := leavesOf(t, string(source))
		var printed strings.Builder
		for i, s := range sides {
			if s.kind.word != "tags" && s.kind.word != "spec" {
				continue
			}
			for _, text := range wordsOf(s.page) {
				printed.WriteString(text)
			}
			if s.kind.word != "tags" || s.back {
				continue
			}
			low := paper.Length(0) // the lowest cut
			for _, op := range s.page.Ops {
				if cut, ok := op.(paper.Stroke); ok && len(cut.Pen.Dash) > 0 {
					for _, step := range cut.Path {
						low = max(low, step.To.Y)
					}
				}
			}
			if low == 0 {
				t.Fatalf("%s: no cards", name)
			}
			if i+1 == len(sides) {
				continue // no back at all
			}
			for _, op := range sides[i+1].page.Ops { // lines to write on may be there
				if text, ok := op.(paper.Text); ok && text.String != "" && text.At.Y > clipZone && text.At.Y < low && !strings.Contains(text.String, "Cut from the front") && !strings.HasPrefix(text.String, "DO NOT BUILD") {
					t.Errorf("%s: %q is printed behind cards", name, text.String)
				}
			}
		}
		got := regexp.MustCompile(`[\s↪=]`).ReplaceAllString(printed.String(), "")
		for _, line := range strings.Fields(string(source)) {
			ascii := !strings.ContainsFunc(line, func(r rune) bool { return r > 126 }) // what a printer's face may lack
			if ascii && !strings.Contains(got, strings.ReplaceAll(line, "=", "")) {
				t.Errorf("%s: %q of the spec is not printed", name, line)
			}
		}
	}
}
