package packet

import (
	"fmt"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"
)

// sidesAllowed is how many sides a packet may have by what its tunnel asks for: LEAVES, "Budgets", read in favour of few. A leaf of a tunnel that has no
// work for it is not counted off.
func sidesAllowed(t *testing.T, plan *layout.Plan) int {
	t.Helper()
	b := binderOf(t, plan)
	_, body := b.newSide(false)
	stretches := len(newStakeLeaf(plan, body).parts)
	arches := len(plan.Arches)
	even := func(n int) int { return n + n%2 }
	n := 18 + even((arches+7)/8+1) + 2*(stretches-1)
	also := func(sides int, where bool) {
		if where {
			n += sides
		}
	}
	bent, sloping := !plan.Ground.Straight, len(plan.Spec.Site.Levels) > 0
	also(2, bent && len(plan.Ground.Marks) > 0)
	also(2, bent || sloping || len(crew.Shapes(standingOf(plan), plan.Spec.Units)) > 1)
	rows := len(buying{plan, plan.Spec}.rows())
	also(2, rows > 24 || len(patterns(plan.Cuts.Bars)) > 4)
	also(2*((len(plan.Spec.Site.Outlets)+1)/2-1), len(plan.Spec.Site.Outlets) > 2)
	also(2, plan.Spec.Lights.Rows != nil)
	also(even(stretches), len(plan.Strings) > 45)
	also(4, arches > 40)
	also(2, len(plan.Crew.Schedule.Built()) > 2) // a chart of bars a day: the budget of LEAVES knows of no third
	return n
}

// owed are thrown packets that miss their budget still: seed by what. The list may only shrink.
var owed = map[uint64]string{4: "words"}

// Thrown packets keep to the sides that their tunnels ask for, to 340 words a side, and find room for everything.
func TestThrownPacketsKeepToTheirBudgets(t *testing.T) {
	t.Parallel()
	for seed := range uint64(30) {
		source := thrown(seed)
		plan := planOf(t, []byte(source))
		sides, notes := leavesOf(t, source)
		words := 0
		for _, s := range sides {
			words += wordsOn(s.page)
		}
		most := sidesAllowed(t, plan)
		missed := map[string]string{}
		if len(sides) > most {
			missed["sides"] = fmt.Sprintf("%d sides, over its %d:%s", len(sides), most, listed2(sides))
		}
		if words > 340*len(sides) {
			missed["words"] = fmt.Sprintf("%d words on %d sides", words, len(sides))
		}
		if len(notes) > 0 {
			missed["room"] = fmt.Sprintf("no room for %v", notes)
		}
		if what, ok := owed[seed]; ok && missed[what] == "" {
			t.Errorf("thrown %d is owed no longer", seed)
		}
		for what, how := range missed {
			if owed[seed] != what {
				t.Errorf("thrown %d has %s", seed, how)
			}
		}
	}
}
