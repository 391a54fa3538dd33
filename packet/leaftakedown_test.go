package packet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// The take-down leaf stands on any tunnel; on two sides where stakes are not counted by the hundred.
func TestTakedownLeaf(t *testing.T) {
	t.Parallel()
	for name, plan := range seasonPlans(t) {
		sides := leafSides(t, plan, "takedown")
		stands(t, name, plan, sides, paper.Floor.Size)
		if n := len(plan.Stakes); len(sides) > 2 && n <= 300 {
			t.Errorf("%s: %d sides for %d stakes", name, len(sides), n)
		}
		texts := textsOf(sides)
		all := strings.Join(texts, " ")
		stand := plan.Arches[:0:0]
		for _, a := range plan.Arches {
			if a.Kind != nil {
				stand = append(stand, a)
			}
		}
		if len(stand) == 0 {
			continue
		}
		first, last := stand[0], stand[len(stand)-1]
		for _, a := range []int{0, len(stand) - 1} {
			if want := fmt.Sprintf("Arch %d: %s", stand[a].Number, plan.Spec.Units.Inches(plan.Spec.Units.Taped(stand[a].SeasonCrown))); !slices.Contains(texts, strings.ReplaceAll(want, "\u00a0", " ")) {
				t.Errorf("%s: the leaf lacks %q", name, want)
			}
		}
		if last.Number > first.Number && !strings.Contains(all, fmt.Sprintf("first: arch %d", last.Number)) {
			t.Errorf("%s: it does not say which arch comes first", name)
		}
		for _, l := range plan.Spec.Site.Overhead {
			if !strings.Contains(all, "Overhead, "+l.Name) || !strings.Contains(all, fmt.Sprintf("People: %d,", practice.Raisers+len(plan.Spec.Site.Overhead))) {
				t.Errorf("%s: nothing of the %s, or nobody to watch it", name, l.Name)
			}
		}
		if lit := len(plan.Strings) > 0; lit != strings.Contains(all, "all unplugged") {
			t.Errorf("%s: %d strings, unplugged first: %v", name, len(plan.Strings), !lit)
		}
	}
}

// Every stake has a box to tick when it is pulled: counted by their letters in boxes, one L for each left stake, one R for each right one, a name for each pair. Where
// they are too many for that, the stretches they are written down by come to as many.
func TestEveryStakeIsCountedOut(t *testing.T) {
	for name, plan := range seasonPlans(t) {
		texts := textsOf(leafSides(t, plan, "takedown"))
		if len(plan.Stakes) > boxesMost {
			out := 0
			for _, of := range regexp.MustCompile(`, of (\d+)\n`).FindAllStringSubmatch(strings.Join(texts, "\n")+"\n", -1) {
				n, _ := strconv.Atoi(of[1])
				out += n
			}
			if out != len(plan.Stakes) {
				t.Errorf("%s: stretches of %d stakes, want %d", name, out, len(plan.Stakes))
			}
			continue
		}
		sides, pairs := map[string]int{}, map[string]bool{}
		for _, s := range plan.Stakes {
			sides[s.Side.Letter()]++
			pairs[s.Pair()] = true
		}
		for _, letter := range []string{spec.Left.Letter(), spec.Right.Letter()} {
			if got := countOf(texts, letter); got != sides[letter] {
				t.Errorf("%s: %d boxes %s for %d stakes", name, got, letter, sides[letter])
			}
		}
		for pair := range pairs {
			if !slices.Contains(texts, pair) {
				t.Errorf("%s: no box for %s", name, pair)
			}
		}
		if head := fmt.Sprintf("s out, of %d: tick each", len(plan.Stakes)); len(plan.Stakes) > 0 && !slices.ContainsFunc(texts, func(s string) bool { return strings.HasSuffix(s, head) }) {
			t.Errorf("%s: the take-down lacks %q", name, head)
		}
	}
}

// A stake without its twin has one box.
func TestAStakeAlone(t *testing.T) {
	page := &paper.Page{}
	for _, b := range stakesOut([]ground.Stake{{StakeID: ground.Leg(spec.Left, 1)}, {StakeID: ground.Leg(spec.Right, 2)}}, []string{"stake"}) {
		b.Body.Draw(page, paper.Rect{W: 180, H: 100})
	}
	if texts := wordsOf(page); countOf(texts, "L") != 1 || countOf(texts, "R") != 1 {
		t.Errorf("the boxes are %v", texts)
	}
}

// What is counted in is what was built of, by hand for the built-in example: twelve legs of one stick, five ridge pieces, four crosses and two tees, the line along the crowns, the nets on the two guys at either end, a cap on
// each of sixteen stakes, twelve strings on legs and five on the ridge.
func TestCountedIn(t *testing.T) {
	want := map[string]int{"leg stick": 12, "ridge piece": 5, "cross pvc sch40 1/2 in": 4, "tee pvc sch40 1/2 in": 2, "stake cap": 16, "string mini led 100 warm": 12, "string mini led 50 warm": 5, "guy: line, tightener, clamp": 4, "crown line": 1, "net": 4}
	for _, it := range inventory(examplePlan(t, "garden")) {
		if n, ok := want[it.item]; ok {
			if n != it.count {
				t.Errorf("%d of %s, want %d", it.count, it.item, n)
			}
			delete(want, it.item)
		}
	}
	if len(want) > 0 {
		t.Errorf("not counted: %v", want)
	}
}

// Legs that keep their strings: counted with them, stored in one layer, a label on the tags, only the ridge unwound; the year after they are tried before they go up, and stripped.
func TestWrappedLegsOnPaper(t *testing.T) {
	t.Parallel()
	kept := changedExample(t, "garden", "\ncrew:", "\nstore: wrapped\ncrew:")
	const shed = "    - {item: mini led 100 warm, count: 5}\n"
	owning := func(sticks string, swap ...string) *layout.Plan {
		return changedExample(t, "garden", append(swap, "\ncrew:", "\nstore: wrapped\nfound: {wrapped: true}\ncrew:", shed, "    - {item: mini led 100 warm, count: 12}\n"+sticks)...)
	}
	came := owning("    - {item: pvc sch40 1/2 in, length: 10 ft, count: 12}\n")
	some := owning("    - {item: pvc sch40 1/2 in, length: 10 ft, count: 10}\n")
	coupled := owning("    - {item: pvc sch40 1/2 in, length: 5 ft, count: 24}\n", "sticks: [10 ft, 10 ft]", "sticks: [[5 ft, 5 ft], [5 ft, 5 ft]]")
	text := func(plan *layout.Plan, leaf string) string {
		sides := leafSides(t, plan, leaf)
		if leaf != "lights" { // its strips run off the edge
			stands(t, leaf, plan, sides, 9)
		}
		return strings.Join(textsOf(sides), " ")
	}
	for _, c := range []struct {
		plan *layout.Plan
		leaf string
		has  []string
		not  []string
	}{
		{kept, "takedown", []string{"Half arches, wrapped:", "light 15 minutes before raising", "Saves 4 hours", "mini led 100 warm, on its leg", "Ridge strings: unwind", "Loaded last: roof rack"}, []string{"Leg and ridge strings"}},
		{kept, "tags", []string{"WRAPPED LEGS", "5 “mini led 50 warm” strings"}, nil},
		{kept, "lights", nil, []string{"Flex each wrapped leg"}},
		{came, "takedown", []string{"Legs: an arch a bundle", "Leg and ridge strings: unwind"}, []string{"Half arches"}},
		{came, "tags", []string{"12 “mini led 100 warm” + 5 “mini led 50 warm” strings"}, []string{"WRAPPED LEGS"}},
		{came, "lights", []string{"Flex each wrapped leg", "plug in each of the 5 strings"}, nil},
		{came, "day", []string{"Flex, light wrapped legs", "Wrapped legs lit", "Cut guys, crown line"}, []string{"Wrap 12 legs", "Make"}},
		{came, "stock", []string{"12 wrapped legs, 2 pvc"}, []string{"12 mini led", "leg L", "arrow to the crown", "12 pvc", "couplings on"}},
		{some, "day", []string{"Make 2 legs", "Flex, light 10, wrap 2 legs"}, nil},
		{some, "stock", []string{"10 wrapped legs", "2 mini led 100 warm", "Whole: 2 sticks", "leg L6, R6", "arrow to the crown"}, []string{"10 pvc"}},
		{some, "lights", []string{"plug in each of the 7 strings"}, nil},
		{coupled, "day", nil, []string{"Make"}},
		{coupled, "stock", []string{"12 wrapped legs, couplings on"}, []string{"Mallet each leg", "24 pvc"}},
		{coupled, "takedown", []string{"couplings apart"}, []string{"Half arches"}},
	} {
		all := text(c.plan, c.leaf)
		for _, want := range c.has {
			if !strings.Contains(all, want) {
				t.Errorf("%s: %q is not there: %s", c.leaf, want, all)
			}
		}
		for _, no := range c.not {
			if strings.Contains(all, no) {
				t.Errorf("%s: %q is there", c.leaf, no)
			}
		}
	}
}

// What is counted out goes by what the arches stand on, and no wrench is brought where nothing is driven. By hand for the garden: 48 in less 20 in deep stand out of
// the ground; two sticks of 120 in and what the crown adds, less 7 ft between the feet, is a little over 13 ft to walk out.
func TestTakenDownFromWhatItStandsOn(t *testing.T) {
	some := changedExample(t, "garden", "depth: 20 in}\n\nguys", "depth: 20 in}\n  except: [{arches: [3, 4], foot: {weight: 120 lb, width: 24 in, on: concrete, bar: 3/8 in}}]\n\nguys")
	for i, plan := range []*layout.Plan{examplePlan(t, "garden"), changedExample(t, "garden", onBases...), some} {
		all := strings.Join(append(textsOf(leafSides(t, plan, "takedown")), textsOf(leafSides(t, plan, "tags"))...), " ")
		for _, said := range [][]string{{"Stakes out, of 16", "Bases out, of 16", "Stakes, bases out, of 16"}, {"Tie whole arches, ridge pieces flat along the L stakes, builder’s line", "Tie whole arches, ridge pieces flat along the L bases, builder’s line", "Tie whole arches, ridge pieces flat along the L stakes or bases, builder’s line"}, {"Walk till L6 is slack", "Walk till L6 is slack", "Walk till L6 is slack"},
			{"Each stake, cap on: ten turns", "Bars out of their sockets, caps on", "Bars out of their sockets, caps on"}, {"STAKES, CAPS", "BARS, CAPS", "STAKES, CAPS"}, {"pipe wrench", "", "pipe wrench"}} {
			if !strings.Contains(all, said[i]) {
				t.Errorf("%d: nowhere %q", i, said[i])
			}
		}
		if i == 1 && (strings.Contains(all, "Each stake") || strings.Contains(all, "wrench")) {
			t.Error("a stake is pulled where none is driven")
		}
		if guys, ridge := strings.Index(all, "Crown frees guys at G6"), strings.Index(all, "bow ridge out of crown 5"); guys < 0 || ridge < guys {
			t.Errorf("%d: guys still pull when the ridge comes out", i)
		}
		if i == 0 && !(strings.Contains(all, "All beside: Foot 2, Crown lift R6 28 in, step out; Ladder, beside, caps") && strings.Contains(all, "Way out: 15′-1″ clear right of R") && strings.Contains(all, "L1, R1 each: 120 in")) {
			t.Errorf("how high, how far out, or how long is not said: %s", all)
		}
	}
}

// Strings are unplugged between legs only where one goes on from the other: in the garden from L1 to R1 at the crown; with an outlet on either side every leg's string ends there.
func TestLegsUnpluggedWhereTheyAreJoined(t *testing.T) {
	for split, joined := range map[string]bool{"every other": true, "left and right": false} {
		plan := changedExample(t, "garden", "split: every other", "split: "+split)
		if all := strings.Join(textsOf(leafSides(t, plan, "takedown")), " "); strings.Contains(all, "unplug leg strings") != joined {
			t.Errorf("%s: leg strings unplugged: %v", split, !joined)
		}
	}
}

// Laid flat, legs are not carried over cords: they are coiled first. The crown line comes off each crown as its arch is next, never all of it at once, and nets before any arch.
func TestLaidFlatInOrder(t *testing.T) {
	for name, want := range map[string]string{"garden": "unplug all, steps 4 to 6, covers back on open plugs, bags over other ends.", "millwalk": "unplug all, steps 4 to 7, covers back on open plugs, bags over other ends."} {
		plan := examplePlan(t, name)
		all := strings.Join(textsOf(leafSides(t, plan, "takedown")), " ")
		untied := fmt.Sprintf("Untie crown line at crown %d, bow ridge out of crown %d", len(plan.Arches), len(plan.Arches)-1)
		at := 0
		for _, words := range []string{want, "Cords, their covers, timers, lanterns, nets off", untied, "lift R"} {
			k := strings.Index(all[at:], words)
			if k < 0 {
				t.Fatalf("%s: %q is not there, or too late: %s", name, words, all)
			}
			at += k
		}
		if strings.Contains(all, "every crown") {
			t.Errorf("%s: the crown line is untied at every crown at once", name)
		}
	}
}

// By how many it is laid flat, by hand for 60 arches at a place where the shortest afternoon of the season leaves 278 minutes: one crew of five takes over 700, three 20 arches each, in under 278 but not in the hour less
// that is left once all are there, so the call is made a day earlier; with 20 people a fourth crew is in time. All three are at crowns at once: a ladder, a screwdriver, a line each, eye protection for 15. The planned taking down brings the same. With nine people there is one crew: the call is made a day earlier.
func TestLaidFlatByCrews(t *testing.T) {
	plan := examplePlan(t, "parkwalk")
	if flat := plan.LaidFlat(); flat.Crews != 3 || !flat.Ahead || flat.Minutes > 278 || flat.Minutes < 218 || flat.Drill.By(2) <= 278 {
		t.Errorf("%+v", flat)
	}
	for leaf, want := range map[string]string{"nights": "15 who lay it flat, 16 or older, 3 stepladders, phones|by tomorrow’s sunset (leaf 9): 3 crews of 5,",
		"takedown": "3 builder’s lines|eye protection for 15|3 stepladders of 6′-0″|3 screwdrivers|3 crews: arches 60 to 41, 40 to 21 and 20 to 1. First tie bays 41 and 21: builder’s line, each arch head-high to the other’s feet. Then, as step 5, ridge 40 and 20 out.|At each, off first: ties, its guys, any past it."} {
		all := strings.ReplaceAll(strings.Join(textsOf(leafSides(t, plan, leaf)), " "), "\u00a0", " ")
		for _, words := range strings.Split(want, "|") {
			if !strings.Contains(all, words) {
				t.Errorf("%s: not %q in %s", leaf, words, all)
			}
		}
	}
	few := *plan
	spec := *plan.Spec
	few.Spec, spec.Crew.Helpers = &spec, 19
	if flat := few.LaidFlat(); flat.Crews != 4 || flat.Ahead || flat.Minutes > 218 {
		t.Errorf("twenty people: %+v", flat)
	}
	spec.Crew.Helpers = 8
	if flat := few.LaidFlat(); flat.Crews != 1 || !flat.Ahead {
		t.Errorf("nine people: %+v", flat)
	}
	if all := strings.Join(textsOf(leafSides(t, &few, "nights")), " "); !strings.Contains(all, "in the next 2 days") || !strings.Contains(all, "by tomorrow’s sunset") {
		t.Errorf("nine people: %s", all)
	}
}

// What holds an arch comes off when that arch is next, never all at once: said at its number, of many at each. Guys of an inner arch, 5 ft out where arches are 4 ft 6 in apart,
// reach past the next on the way from arch 1: those alone come off before that one, those toward arch 1 stay till their own. With 4 ft out they reach past none.
func TestGuysComeOffAtTheirArch(t *testing.T) {
	for arches, want := range map[string]string{"[1, last], from: 7 ft, out: 5 ft": "Off first, at arch 2: bay 1’s ties; 1: G1.", "[1, 3, last], from: 7 ft, out: 5 ft": "Off first, at arch 4: G3b; 3: G3a; 2: bay 1’s ties; 1: G1.",
		"[1, 3, last], from: 7 ft, out: 4 ft": "Off first, at arch 3: G3a, G3b; 2: bay 1’s ties; 1: G1.", "[1, 2, 3, 4, last], from: 7 ft, out: 5 ft": "At each, off first: ties, its guys, any past it."} {
		plan := changedExample(t, "garden", "guys: {arches: [1, last], from: 7 ft, out: 5 ft", "guys: {arches: "+arches)
		if all := strings.Join(textsOf(leafSides(t, plan, "takedown")), " "); !strings.Contains(all, want) {
			t.Errorf("%s: not %q in %s", arches, want, all)
		}
	}
}

// Where something lies in the way of a leg that is walked out the other one is, at those arches and no more: by hand for the garden, whose bed of 4 ft about 25 ft, 24 ft lies within 13 ft of the R stakes, at
// 17 ft 6 in, of the arches at 20 ft 6 in, 25 ft and 29 ft 6 in along, with 2 ft for people beside. With another bed on the left nobody is sent there; paving is walked on.
// The step that is done again says so too, at its arches; where the last arch is one of them, its own step and picture have the legs the other way round.
func TestWayOutIsClear(t *testing.T) {
	const bed = "{name: flower bed, at: [25 ft, 24 ft], radius: 4 ft}"
	for features, want := range map[string]string{
		bed: "right of R, at arches 3 to 5 left of L.|lift R6 28 in|arch 5 to 1, L for R at 3 to 5. Off",
		bed + ", {name: pond, at: [4 ft, 25 ft], radius: 2 ft}":       "right of R, at arches 3 and 5 left of L; at arch 4 ask.|arch 5 to 1, L for R at 3 and 5, ask at 4. Off",
		"{name: patio, at: [25 ft, 24 ft], radius: 4 ft, hard: true}": "right of R. |arch 5 to 1. Off",
		"{name: flower bed, at: [24 ft, 35 ft], radius: 2 ft}":        "right of R, at arch 6 left of L.|lift L6 28 in|Walk till R6 is slack|arch 5 to 1, R for L at 1 to 5. Off",
	} {
		plan := changedExample(t, "garden", bed, features)
		all := strings.Join(textsOf(leafSides(t, plan, "takedown")), " ")
		for _, words := range strings.Split(want, "|") {
			if !strings.Contains(all, words) || strings.Contains(all, "patio") {
				t.Errorf("%s: not %q in %s", features, words, all)
			}
		}
	}
}

// In thunder nobody finishes an arch, whichever way it goes: both leaves say so, and what of other stops.
func TestThunderMeansIn(t *testing.T) {
	for leaf, want := range map[string]string{"raise": "Thunder: unbend, go in; other stops, lunch: finish, tie head-high both ways to stakes, builder’s line.",
		"takedown": "thunder: unbend what is bent, go in; else finish the arch, tie the next head-high both ways to stakes, builder’s line; ask."} {
		if all := strings.Join(textsOf(leafSides(t, examplePlan(t, "garden"), leaf)), " "); !strings.Contains(all, want) {
			t.Errorf("%s: not %q in %s", leaf, want, all)
		}
	}
}
