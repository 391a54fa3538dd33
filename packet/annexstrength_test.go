package packet

import (
	"strings"
	"testing"

	"hoopwright/layout/arch"
)

// strengthText is the words of the annex on strength.
func strengthText(t *testing.T, b *binder) string {
	t.Helper()
	chosen, err := choose([]string{"strength"}, false)
	if err != nil {
		t.Fatal(err)
	}
	var words []string
	sides, notes := b.sides(chosen)
	for _, s := range sides {
		words = append(words, wordsOf(s.page)...)
		for _, fault := range lint(s.page) {
			t.Error(fault)
		}
	}
	for _, n := range notes {
		t.Errorf("%s %s found no room", n.Block, n.What)
	}
	return strings.Join(words, "\n")
}

// The annex has every figure that the organiser chooses by: the load factor, the gusts, each other span with its crown as the plan solves it.
func TestStrengthAnnexPrintsThePlan(t *testing.T) {
	for _, name := range []string{"garden", "schoolyard", "millwalk"} {
		plan := examplePlan(t, name)
		text, u, k := strengthText(t, binderOf(t, plan)), plan.Spec.Units, plan.Kinds[0]
		want := []string{u.Speed(plan.Weather.Bears[0].Damage.Gust), u.Inches(k.Spec.Stake.Depth), u.Inches(k.BendRadius), "as planned"}
		for _, z := range plan.Sizes(k, arch.SpansAbout(k.Span, u)) {
			if z.Span < k.Length && z.Crown > 0 {
				want = append(want, u.Inches(z.Span), u.Inches(z.Crown))
			}
		}
		if len(want) < 14 {
			t.Errorf("%s: only %d figures to look for", name, len(want))
		}
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s: nowhere %q", name, w)
			}
		}
	}
}

// Where no arch has the figures asked for, the other spans tell which have one.
func TestStrengthAnnexOfNoArch(t *testing.T) {
	plan := changedExample(t, "garden", "span: 7 ft\n", "span: 30 ft\n")
	text := strengthText(t, binderOf(t, plan))
	for _, want := range []string{"the nearest there is", "no arch stands", "the opening stands clear"} {
		if !strings.Contains(text, want) {
			t.Errorf("nowhere %q in %s", want, text)
		}
	}
}
