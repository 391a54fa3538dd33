package packet

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// legFirst is the leg that may go over its stake first, as the ground beside each arch has it: the left one while the right one's way is free, where nothing is free nobody's.
func legFirst(plan *layout.Plan) map[int]string {
	first := map[int]string{}
	for _, a := range plan.Arches {
		if a.Kind == nil {
			continue
		}
		blocked := func(side spec.Side) bool {
			return len(plan.Ground.OnWayOut(plan.Spec, ground.Leg(side, a.Number), a.Length-a.Span+practice.OnGround(plan.Spec.Units).Aside)) > 0
		}
		switch {
		case !blocked(spec.Right):
			first[a.Number] = "L"
		case !blocked(spec.Left):
			first[a.Number] = "R"
		default:
			first[a.Number] = "ask"
		}
	}
	return first
}

var (
	firstFoot   = regexp.MustCompile(`Leg ([LR])(\d+) over its`)
	lastFoot    = regexp.MustCompile(`Crown uncaps ([LR])(\d+) from`)
	secondFirst = regexp.MustCompile(`Arch 2: steps 1 to \d+, ([LR])2 first`)
	otherFeet   = regexp.MustCompile(`Arch(?:es)? ([\d, toand]+): ([LR]) first, [LR] last`)
	askedFeet   = regexp.MustCompile(`Arch(?:es)? ([\d, toand]+): ask \(`)
	liftedOff   = regexp.MustCompile(`Crown lift ([LR])(\d+) .*Walk till ([LR])(\d+) is slack`)
	otherLifted = regexp.MustCompile(`, ([LR]) for ([LR]) at ([\d, toand]+?)(?:, ask at|\.)`)
	asked       = regexp.MustCompile(`; at arch(?:es)? ([\d, toand]+) ask\.`)
)

// feetGoAsTheGroundAllows reads from the words of raising and of taking down which leg of each arch goes on first and comes off last, and returns that of the first and that of the last arch.
func feetGoAsTheGroundAllows(t *testing.T, name string, plan *layout.Plan) (raised, lowered string) {
	t.Helper()
	want := legFirst(plan)
	other := map[string]string{"L": "R", "R": "L"}
	check := func(doing string, read map[int]string) {
		for n, leg := range want {
			if read[n] != leg {
				t.Errorf("%s: %s arch %d %q first, the ground beside it wants %q", name, doing, n, read[n], leg)
			}
		}
	}
	all := func(leaf string) string {
		return strings.Join(strings.Fields(strings.Join(textsOf(leafSides(t, plan, leaf)), " ")), " ")
	}
	set := func(to map[int]string, numbers, leg string) {
		for _, n := range numbersOf(t, numbers) {
			to[n] = leg
		}
	}

	up, read := all("raise"), map[int]string{}
	one, last := firstFoot.FindStringSubmatch(up), lastFoot.FindStringSubmatch(up)
	if one == nil || last == nil || one[2] != last[2] || other[one[1]] != last[1] {
		t.Fatalf("%s: legs %v, then %v", name, one, last)
	}
	for n := range want {
		read[n] = one[1]
	}
	for _, m := range otherFeet.FindAllStringSubmatch(up, -1) {
		set(read, m[1], m[2])
	}
	for _, m := range askedFeet.FindAllStringSubmatch(up, -1) {
		set(read, m[1], "ask")
	}
	check("raising", read)
	if m := secondFirst.FindStringSubmatch(up); (m != nil) != (read[2] == other[one[1]]) || m != nil && m[1] != read[2] {
		t.Errorf("%s: step of arch 2 says %v", name, m)
	}

	down, end := all("takedown"), len(plan.Arches)
	m := liftedOff.FindStringSubmatch(down)
	if m == nil || m[2] != fmt.Sprint(end) || m[4] != m[2] || other[m[1]] != m[3] {
		t.Fatalf("%s: taken down %v of %d", name, m, end)
	}
	for n := range want {
		read[n] = m[3]
	}
	for _, o := range otherLifted.FindAllStringSubmatch(down, -1) {
		if set(read, o[3], o[2]); o[2] != m[1] {
			t.Errorf("%s: %q where %s is lifted", name, o[0], m[1])
		}
	}
	for _, o := range asked.FindAllStringSubmatch(down, -1) {
		set(read, o[1], "ask")
	}
	check("lowering", read)
	return one[1], m[3]
}

// By hand: an arch of the garden lies some 13 ft beyond its far stake, so a post 17 ft right of the walk stands in its right leg's way, see TestWayOutIsClear for its places. The steps show
// the first arch on the way up, the last one on the way down, each with the leg first that its own ground wants.
func TestFeetGoAsTheGroundAllows(t *testing.T) {
	const bed = "{name: flower bed, at: [25 ft, 24 ft], radius: 4 ft}"
	for at, want := range map[string][2]string{"[25 ft, 24 ft], radius: 4 ft": {"L", "L"}, "[24 ft, 11 ft 6 in], radius: 1 ft": {"R", "L"}, "[24 ft, 35 ft], radius: 2 ft": {"L", "R"}, "[24 ft, 24 ft], radius: 12 ft 6 in": {"R", "R"}} {
		raised, lowered := feetGoAsTheGroundAllows(t, at, changedExample(t, "garden", bed, "{name: flower bed, at: "+at+"}"))
		if got := [2]string{raised, lowered}; got != want {
			t.Errorf("bed at %s: %v, want %v", at, got, want)
		}
	}
}
