package packet

import (
	"slices"
	"sync"
	"testing"

	"hoopwright/draw/block"
	"hoopwright/draw/pdf"
	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// shared holds what tests have made of a key, made once however many tests ask for it. Who gets it only reads it.
type shared[K comparable, V any] struct{ made sync.Map }

func (s *shared[K, V]) of(key K, make func() V) V {
	once, _ := s.made.LoadOrStore(key, sync.OnceValue(make))
	return once.(func() V)()
}

// packed are sides and what found no room on them.
type packed struct {
	sides []set
	notes []block.Note
}

// Solving a spec is most of what these tests do, packing most of the rest.
var (
	plans   shared[string, *layout.Plan]       // by the spec's text; nil where it cannot be read
	wholes  shared[*layout.Plan, packed]       // all leaves of a plan
	packets shared[*layout.Plan, pdf.Document] // the packet of a plan
	singles shared[leafOfPlan, packed]         // one leaf, packed alone
)

type leafOfPlan struct {
	plan *layout.Plan
	word string
}

// planOf solves a spec. The plan is shared with other tests: change a copy.
func planOf(t testing.TB, source []byte) *layout.Plan {
	t.Helper()
	plan := plans.of(string(source), func() *layout.Plan {
		s, err := spec.Read("spec.yaml", source)
		if err != nil {
			t.Errorf("%v\n%s", err, source)
			return nil
		}
		return layout.Solve(s)
	})
	if plan == nil {
		t.Fatal("no plan")
	}
	return plan
}

// sidesOf packs all leaves of a plan.
func sidesOf(t *testing.T, plan *layout.Plan) ([]set, []block.Note) {
	t.Helper()
	p := wholes.of(plan, func() packed {
		sides, notes := binderOf(t, plan).sides(leaves())
		return packed{sides, notes}
	})
	return p.sides, p.notes
}

// leavesOf packs the leaves of a spec and returns their sides and what found no room.
func leavesOf(t *testing.T, source string) ([]set, []block.Note) {
	t.Helper()
	return sidesOf(t, planOf(t, []byte(source)))
}

// leafAlone packs one leaf of a plan, as the first of a packet, and returns its sides and what found no room.
func leafAlone(t *testing.T, plan *layout.Plan, word string) ([]set, []block.Note) {
	t.Helper()
	p := singles.of(leafOfPlan{plan, word}, func() packed {
		chosen, err := choose([]string{word}, false)
		if err != nil {
			t.Fatal(err)
		}
		sides, notes := binderOf(t, plan).sides(chosen)
		return packed{sides, notes}
	})
	return p.sides, p.notes
}

// leafSides are the sides of one leaf; what found no room fails the test.
func leafSides(t *testing.T, plan *layout.Plan, word string) []set {
	t.Helper()
	sides, notes := leafAlone(t, plan, word)
	for _, n := range notes {
		t.Errorf("%s: no room for %q", n.Block, n.What)
	}
	return sides
}

// bound is the packet of a spec.
func bound(t *testing.T, source []byte) pdf.Document {
	t.Helper()
	plan := planOf(t, source)
	return packets.of(plan, func() pdf.Document { return boundAnew(t, plan) })
}

func boundAnew(t *testing.T, plan *layout.Plan) pdf.Document {
	t.Helper()
	doc, _, err := Bind(plan, Options{Date: issued})
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// binderOf readies the packet of a plan.
func binderOf(t *testing.T, plan *layout.Plan) *binder {
	t.Helper()
	b, err := newBinder(plan, Options{Date: issued})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// leaves are the sheets that are made as leaves.
func leaves() []sheet {
	return slices.DeleteFunc(sheets(), func(s sheet) bool { return s.annex })
}
