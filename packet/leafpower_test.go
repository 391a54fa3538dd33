package packet

import (
	"fmt"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/stock"
)

// edited solves an example with some of its text replaced.
func edited(t *testing.T, name string, replace ...string) *layout.Plan {
	t.Helper()
	plan := example(t, name)
	source := strings.NewReplacer(replace...).Replace(string(plan.Spec.Source))
	if source == string(plan.Spec.Source) {
		t.Fatalf("nothing to replace in %s", name)
	}
	return planOf(t, []byte(source))
}

// powerText is all that a plan's power leaf says.
func powerText(t *testing.T, plan *layout.Plan) string {
	t.Helper()
	return strings.ReplaceAll(strings.Join(textsOf(leafSides(t, plan, "power")), " "), "\u00a0", " ")
}

// The leaf stands on any tunnel: within two sides up to 10 arches and two outlets, six for sixty arches.
func TestPowerLeafKeepsToItsSides(t *testing.T) {
	t.Parallel()
	for name, plan := range seasonPlans(t) {
		sides := leafSides(t, plan, "power")
		stands(t, name, plan, sides, paper.Floor.Size)
		most := 2
		if len(plan.Arches) > 10 {
			most = 6
		}
		if len(sides) > most {
			t.Errorf("%s: %d sides, want %d at most", name, len(sides), most)
		}
		if (len(sides) > 0) != (len(plan.Strings) > 0) {
			t.Errorf("%s: %d sides for %d strings", name, len(sides), len(plan.Strings))
		}
	}
}

// A box to tick for each plug: of cords, three-ways and runs; one for each of the ten checks, and for each other step of the crew's tasks, all outlets' plugging being one.
func TestEveryPlugIsTicked(t *testing.T) {
	for _, name := range []string{"garden.yaml", "schoolyard.yaml", "parkwalk.yaml"} {
		plan := example(t, name)
		want := len(plan.Power.Cords) + len(plan.Power.Taps) + len(plan.Power.Chains) + 10
		plugging := 0
		for _, task := range plan.Crew.Tasks {
			switch {
			case task.Phase != crew.Powering || task.Action == crew.CheckCords:
			case task.Action == crew.PlugRuns:
				plugging = 1
			default:
				want++
			}
		}
		got := 0
		for _, s := range leafSides(t, plan, "power") {
			got += tickBoxes(pdf.Document{Pages: []*paper.Page{s.page}})
		}
		if got != want+plugging {
			t.Errorf("%s: %d boxes to tick, want %d", name, got, want+plugging)
		}
	}
}

// The garden's leaf says what its spec says of the outlets, and the load by hand: on the porch three runs of two legs of 4.8 W each and five ridge strings of 3.5 W, 46.3 W or 0.386 A of the 8 A
// of its timer; in the garage three runs of two legs, 28.8 W or 0.24 A, with the other load of 2 A of 80 % of 20 A.
func TestPowerLeafOfTheGarden(t *testing.T) {
	text := powerText(t, example(t, "garden.yaml"))
	for _, want := range []string{"the outlet itself", "inside the side door", "Breaker 7 . Timer carries 0.39 A of 8 A", "It carries 2.2 A of 16 A for hours, 2 A not ours", "a high one by its cord: C2 at L1 (B)", "5 sockets: open, L1, L1, L3, L5", "Ways: leaf 1", "every socket", "step 7", "5 sockets: open, open, R2, R4, R6", "GFCI",
		"Start joining when", "Ten checks", "call the wrapping crew", "licensed electrician", "Hours: leaf 8", "By daylight, outlet’s cord out", "Pull its runs", "a breaker tripped: CLOSED, electrician", "back to b", "One plug pulled at most", "Ask, phone", "RESET", "3 cords",
		"crown 1"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the leaf", want)
		}
	}
	for _, not := range []string{"RCD", "chain", " tap "} {
		if strings.Contains(text, not) {
			t.Errorf("%q is on the leaf", not)
		}
	}
	if other := strings.Join(textsOf(leafSides(t, example(t, "garden.yaml"), "nights")), " "); strings.Contains(other, "Unplug every run") {
		t.Error("the trip drill is told twice")
	}
}

// The drill is said of as many cords and timers as an outlet has, by hand: the mill door's one timer has sockets for its two cords; and every step of it that plugs in begins or goes on with the outlet's cords, but for one that leads from there right up to what hangs high and is pulled with the runs.
func TestTripDrillSpeaksOfAllCords(t *testing.T) {
	for name, want := range map[string][]string{
		"garden.yaml":   {"Pull timer and cord at the dead outlet", "people out", "Timer in, ON, cord in, RESET", "Cord out, put one back, cord in, RESET. Trips: cord out"},
		"millwalk.yaml": {"Pull timer and cords at the dead outlet", "C3 at outlet (H) and C5 at R1 (A). Cover sockets (joints’ covers). Timer in, ON, other cords in, RESET", "Cords out, put one back, cords in, RESET. Trips: cords out", "outdoor timers of 2 sockets"},
	} {
		text := powerText(t, example(t, name))
		for _, words := range want {
			if !strings.Contains(text, words) {
				t.Errorf("%s: %q is not on the leaf", name, words)
			}
		}
	}
}

// Covers are counted: a plug cover for each plug put together outside the outlets, which have covers of their own, and alike on the list of what to buy; by hand of the garden: a plug each of
// 3 cords, of which 2 are in outlets, and 7 runs, and of 17 strings in 7 runs 10 in another's end.
func TestCoversAreCounted(t *testing.T) {
	plan := example(t, "garden.yaml")
	const joints = 3 - 2 + 7 + (17 - 7)
	for _, item := range plan.Shopping {
		if item.Kind == stock.PlugCover && item.Need != joints {
			t.Errorf("%d plug covers to buy, want %d", item.Need, joints)
		}
	}
	if got := powerText(t, plan); !strings.Contains(got, fmt.Sprintf("%d joints covered", joints)) {
		t.Errorf("not %d covers on %s", joints, got)
	}
}

// unpowered is an invented tunnel of three arches with lights and no power.
const unpowered = `hoopwright: 1
title: Not wired yet
units: imperial
tunnel: {arches: 3, spacing: 4 ft, opening: {width: 4 ft, height: 6 ft 6 in}}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 3 in}
lights: {wraps: [{where: legs, string: mini led 100 warm}, {where: ridge, string: mini led 50 warm, count: 1}]}
`

// Where nothing feeds the lights the leaf says what the spec lacks and draws the runs; where there are no lights there is none.
func TestNothingFeedsTheLights(t *testing.T) {
	text := powerText(t, planOf(t, []byte(unpowered)))
	for _, want := range []string{"power.circuits", "Plug nothing in from this leaf", "site.outlets", "Fed by nothing", "S3"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the leaf of a tunnel without power", want)
		}
	}
	dark := planOf(t, []byte(unpowered[:strings.Index(unpowered, "lights:")]))
	if sides := leafSides(t, dark, "power"); len(sides) > 0 {
		t.Errorf("a tunnel without lights has %d sides about them", len(sides))
	}
}

// Names however long stay within the side.
func TestLongNamesOfOutlets(t *testing.T) {
	long := strings.Repeat("greenhouse ", 4) + "wall"
	plan := edited(t, "garden.yaml", "garage wall", long, "inside the side door", long)
	stands(t, "long names", plan, leafSides(t, plan, "power"), paper.Floor.Size)
}

// The annex says what is proven, what the season burns, by hand 75.1 W for 5 h on 36 nights, 13.5 kWh at 0.16 a kWh, and how the cuts come out.
func TestReckoning(t *testing.T) {
	text := strings.ReplaceAll(said(sheetOf(t, example(t, "garden.yaml"), "reckoning")), "\u00a0", " ")
	for _, want := range []string{"Fewest circuits for the amps: 2, proven", "Cords and three-ways: 3, and no fewer do from these outlets, proven", "75 W for 5 h on 36 nights: 14 kWh", "Money for power: 2.16 USD", "zip ties 100 2 100 % 12.00", "0.39 A of 12 A", "to buy"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in the annex: %s", want, text)
		}
	}
}

// arbour is an invented tunnel of three arches whose strings hang behind low-voltage supplies, marked a day before it is built.
const arbour = `hoopwright: 1
title: Arbour
units: metric
paper: a4
dates: {mark: 2027-11-19, build: 2027-11-20}
tunnel: {arches: 3, spacing: 1.4 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [[3 m], [3 m]], span: 2.5 m}
site:
  soil: soft
  outlets: [{name: porch, from start: {left: 4 m, behind: 2 m}, circuit: house}]
lights:
  wraps: [{where: legs, string: garland}]
  drops: [{where: ridge, string: icicle, hang: 100 mm}]
  strings:
    garland: {length: 8 m, bulbs: 80, watts: 4 W, volts: 24 V, supply: {watts: 36 W, sockets: 2}, colour: amber, lead: 200 mm}
    icicle: {length: 3 m, bulbs: 60, watts: 3 W, volts: 24 V, supply: {watts: 36 W, sockets: 2}, colour: cool white, drop: 300 mm}
power: {circuits: {house: {volts: 230 V, breaker: 16 A, gfci: true}}}
`

// Cords under covers lie across the way by design: the watch looks that they are whole, and the list says how long they are. By hand: a span of 2.4 m and a hand past either foot are 2.6 m, in
// half metres 3. Elsewhere nothing may lie there.
func TestCoversLieAcrossTheWay(t *testing.T) {
	covered := planOf(t, []byte(strings.Replace(strings.Replace(arbour, "site:\n", "site:\n  cords: {crossing: cover}\n", 1), "{where: legs,", "{where: right legs,", 1)))
	for plan, want := range map[*layout.Plan]string{
		covered: "Cord covers flat, whole, in place; no other cord across the way.", example(t, "garden.yaml"): "No cord lies across the way.",
	} {
		words := newTaskWords(plan)
		if got := words.want(crew.Figure{What: crew.NoneAcross}); got != want {
			t.Errorf("%s: %q, want %q", plan.Spec.Title, got, want)
		}
	}
	for _, item := range covered.Shopping {
		if item.Kind == stock.CordCover && (item.Need != 1 || ForWhat(item, covered.Spec) != "to be walked over: 1 of 3 m") {
			t.Errorf("%d covers: %q", item.Need, ForWhat(item, covered.Spec))
		}
	}
}

// No outlet sees what is wrong behind a low-voltage supply: where it trips, supplies are pulled. By hand, of 2 cords, 4 supplies and 4 runs of 7 strings: a cord in the other, 4 supplies in cords,
// 4 runs in supplies and 3 strings in strings are 12 joints; each supply has a box, with its own plug and its run's: 4 are left to cover. Each supply has one of its two sockets open.
func TestSuppliesArePulledAndBoxed(t *testing.T) {
	plan := planOf(t, []byte(arbour))
	text := powerText(t, plan)
	for _, want := range []string{"Pull its supplies’ mains plugs, a high one by its cord: C2", "try another supply", "4 joints covered, 8 boxed with 4 supplies", "low-voltage supply, 1 open", "At each supply instead: it, its joints in a plug box"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the leaf", want)
		}
	}
	for _, not := range []string{"Pull its runs", "fuse"} {
		if strings.Contains(text, not) {
			t.Errorf("%q is on the leaf", not)
		}
	}
	need := map[stock.Kind]int{}
	for _, item := range plan.Shopping {
		need[item.Kind] += item.Need
	}
	if need[stock.PlugCover] != 4 || need[stock.PlugBox] != 4 {
		t.Errorf("%d plug covers and %d plug boxes to buy, want 4 and 4", need[stock.PlugCover], need[stock.PlugBox])
	}
}
