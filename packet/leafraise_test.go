package packet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/stock"
)

// changedExample is the plan of an example with parts of its text put in place of others; all invented.
func changedExample(t *testing.T, name string, swap ...string) *layout.Plan {
	t.Helper()
	source, err := examples.Files.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return planOf(t, []byte(strings.NewReplacer(swap...).Replace(string(source))))
}

// onBases puts the garden's arches on weighted bases.
var onBases = []string{"  stake: {bar: 3/8 in, length: 48 in, depth: 20 in}\n\nguys", "  foot: {weight: 120 lb, width: 24 in, on: concrete, bar: 3/8 in}\n\nguys",
	"out: 5 ft, stake: {bar: 3/8 in, length: 24 in, depth: 20 in}}", "out: 5 ft}"}

// Where arches stand on weighted bases nobody is sent to a stake: legs go over bars, guys to weights, the watch pushes bases. Where some do, both are named.
func TestWeightedBasesAreCalledSo(t *testing.T) {
	some := changedExample(t, "garden", "depth: 20 in}\n\nguys", "depth: 20 in}\n  except: [{arches: [3, 4], foot: {weight: 120 lb, width: 24 in, on: concrete, bar: 3/8 in}}]\n\nguys")
	for i, plan := range []*layout.Plan{examplePlan(t, "garden"), changedExample(t, "garden", onBases...), some} {
		var words []string
		for _, leaf := range []string{"raise", "nights"} {
			for _, s := range leafSides(t, plan, leaf) {
				words = append(words, wordsOf(s.page)...)
			}
		}
		all := strings.Join(words, " ")
		for _, said := range [][]string{{"over its stake", "over its bar", "over its stake"}, {"under the caps", "to weights G1L", "under the caps"}, {"push every stake", "push every base", "push every stake and base"}} {
			if !strings.Contains(all, said[i]) {
				t.Errorf("%d: nowhere %q", i, said[i])
			}
		}
		if i == 1 && strings.Contains(all, "its stake") {
			t.Error("a stake is said of an arch on bases")
		}
	}
}

// A brace of pipe on weighted feet is clamped to a bar in a socket, which is bought, capped and counted in again; one of line is tied to the bags alone.
func TestBracesOnWeightedFeetEndOnBars(t *testing.T) {
	for kind, want := range map[string]struct {
		sockets int
		says    []string
	}{"pipe": {16, []string{"clamp it to bars P1L", "Brace bars stay capped", "the brace bars", "16 bar sockets"}}, "line": {12, []string{"every bag’s handle at P1L", "the brace weights", "12 bar sockets"}}} {
		plan := changedExample(t, "garden", onBases[0], strings.Replace(onBases[1], "guys", "braces: {bays: [1, last], from: 5 ft, kind: "+kind+"}\nguys", 1), onBases[2], onBases[3])
		sockets, all := 0, ""
		for _, i := range plan.Shopping {
			if i.Kind == stock.BarSocket {
				sockets = i.Need
			}
		}
		for _, leaf := range []string{"raise", "stakes", "tags"} {
			all += " " + strings.Join(textsOf(leafSides(t, plan, leaf)), " ")
		}
		for _, said := range want.says {
			if !strings.Contains(all, said) {
				t.Errorf("%s: nowhere %q", kind, said)
			}
		}
		if sockets != want.sockets {
			t.Errorf("%s: %d bar sockets, want %d", kind, sockets, want.sockets)
		}
	}
}

// Each line overhead has a watcher who is none of the five: on the leaf, in every task of raising and lowering, and where it is laid flat.
func TestOverheadLineHasItsWatcher(t *testing.T) {
	plan := changedExample(t, "garden", "  soil: soft", "  soil: soft\n  overhead: [{name: service drop, line: [[0 ft, 30 ft], [40 ft, 30 ft]], height: 20 ft, keep: 10 ft}, {name: elm, line: [[0 ft, 9 ft], [0 ft, 30 ft]], height: 30 ft, keep: 10 ft}]")
	for leaf, said := range map[string][]string{"raise": {"7 people, 16 or older", "only watches the wire (service drop)", "only watches the wire (elm)"}, "takedown": {"7, 16 or older"}, "nights": {"7 who lay it flat"}, "day": {"find G"}} {
		words := ""
		for _, s := range leafSides(t, plan, leaf) {
			words += " " + strings.Join(wordsOf(s.page), " ")
		}
		for _, want := range said {
			if !strings.Contains(words, want) {
				t.Errorf("%s: nowhere %q", leaf, want)
			}
		}
	}
	for _, task := range plan.Crew.Tasks {
		if n := len(task.Who.Roles); n >= practice.Raisers && n != 7 {
			t.Errorf("action %d has %d people, want 7", task.Action, n)
		}
	}
}

// raisePlans are the examples and tunnels that stress the leaf.
func raisePlans(t *testing.T) map[string]*layout.Plan {
	t.Helper()
	plans := plansForSheets(t)
	plans["millwalk"] = examplePlan(t, "millwalk")
	const guys = "guys: {arches: [1, last]"
	plans["guys on every arch"] = changedExample(t, "garden", guys, "guys: {arches: [1, 2, 3, 4, 5, last]")
	plans["no lights"] = changedExample(t, "garden", "    - {where: legs, string: mini led 100 warm}\n", "    - {where: ridge, string: mini led 50 warm, count: 1}\n")
	plans["one stick"] = changedExample(t, "garden", "sticks: [10 ft, 10 ft]", "sticks: [20 ft]", "arch:\n", "ridge: false\n\narch:\n", "    - {where: ridge, string: mini led 50 warm, count: 1}\n", "")
	plans["pinned"] = changedExample(t, "garden", "span: 7 ft\n", "span: 7 ft\n  joints: pinned\n")
	plans["tall"] = changedExample(t, "garden", "span: 7 ft\n", "span: 4 ft\n", "width: 4 ft,", "width: 3 ft,")
	plans["low"] = changedExample(t, "garden", "span: 7 ft\n", "span: 10 ft\n")
	plans["overhead"] = changedExample(t, "garden", "  soil: soft", "  soil: soft\n  overhead: [{name: service drop, line: [[0 ft, 30 ft], [40 ft, 30 ft]], height: 20 ft, keep: 10 ft}]")
	plans["on bases"] = changedExample(t, "garden", onBases...)
	for seed := range uint64(30) {
		plans[fmt.Sprintf("thrown %d", seed)] = planOf(t, []byte(thrown(seed)))
	}
	for _, size := range []string{"legal", "tabloid", "a4", "a3"} {
		plans[size] = changedExample(t, "garden", "paper: letter", "paper: "+size)
	}
	return plans
}

// TestRaiseLeafStands: on any of them nothing is lost, nothing lies on text, no text is smaller than a clipboard allows, a figure is declared once on the
// leaf, and what is declared is printed.
func TestRaiseLeafStands(t *testing.T) {
	t.Parallel()
	for name, plan := range raisePlans(t) {
		t.Run(name, func(t *testing.T) {
			told, printed := map[string]string{}, ""
			for _, s := range leafSides(t, plan, "raise") {
				for _, fault := range lint(s.page) {
					t.Errorf("%s: %s", s.title, fault)
				}
				for _, op := range s.page.Ops {
					if x, ok := op.(paper.Text); ok && x.Lettering.Size < paper.Floor.Size {
						t.Errorf("%q is set in %v pt", x.String, x.Lettering.Size)
					}
				}
				printed += " " + strings.Join(wordsOf(s.page), " ")
				for _, b := range s.blocks {
					for _, f := range b.Facts {
						if _, ok := told[f.What]; ok {
							t.Errorf("%s is told twice", f.What)
						}
						told[f.What] = f.Value
					}
				}
			}
			if name == "on bases" { // what stands in a base is a bar
				printed = regexp.MustCompile(`\bbars?\b`).ReplaceAllString(printed, "")
			}
			if found := losers.FindString(printed); found != "" {
				t.Errorf("%q is said", found)
			}
			if len(told) < 4 && len(plan.Kinds) > 0 {
				t.Errorf("only %d facts are declared", len(told))
			}
			for what, value := range told {
				if !strings.Contains(printed, value) {
					t.Errorf("%s %s is nowhere", what, value)
				}
			}
		})
	}
}

// TestRaiseLeafBudget holds the leaf to two sides (and about the 340 words that a packet has a side on average), two more for a bend or a slope with rows, and for forty arches and more.
func TestRaiseLeafBudget(t *testing.T) {
	for name, most := range map[string]int{"garden": 2, "starter": 2, "schoolyard": 2, "millwalk": 4, "parkwalk": 4} {
		sides := leafSides(t, examplePlan(t, name), "raise")
		words := 0
		for _, s := range sides {
			words += len(strings.Fields(strings.Join(wordsOf(s.page), " ")))
		}
		if len(sides) > most || words > 340*len(sides) {
			t.Errorf("%s: %d sides with %d words, want %d with 340 a side", name, len(sides), words, most)
		}
	}
}

// TestRaiseOrderOnOneBack: a walk without rows and with arches of one kind has its whole order on one back, its cures with it, whatever holds it and however it bends.
func TestRaiseOrderOnOneBack(t *testing.T) {
	const guys, stake = "guys: {arches: [1, last], ", "stake: {bar: 3/8 in, length: 24 in, depth: 20 in}}\n"
	bend := []string{"site:\n", "site:\n  route: [{straight: 8 ft}, {left: 30 deg, radius: 24 ft}, {straight: rest}]\n"}
	for name, swap := range map[string][]string{
		"bend":             bend,
		"braces":           append([]string{stake, stake + "braces: {bays: [1, last], from: 5 ft}\n"}, bend...),
		"guys and braces":  append([]string{guys, "guys: {arches: [1, 2, 3, 4, 5, last], ", stake, stake + "braces: {bays: [1, 2, 3, 4, last], from: 5 ft}\n"}, bend...),
		"braces of line":   append([]string{stake, stake + "braces: {bays: [1, 2, 3, 4, last], from: 5 ft, kind: line}\n"}, bend...),
		"pinned, overhead": append([]string{"span: 7 ft\n", "span: 7 ft\n  joints: pinned\n", "  soil: soft", "  soil: soft\n  overhead: [{name: service drop, line: [[0 ft, 60 ft], [40 ft, 60 ft]], height: 20 ft, keep: 10 ft}]"}, bend...),
	} {
		sides := leafSides(t, changedExample(t, "garden", swap...), "raise")
		var words []string
		for _, s := range sides {
			words = append(words, wordsOf(s.page)...)
		}
		if all := strings.Join(words, " "); len(sides) != 2 || !strings.Contains(all, "Cap missing") || !strings.Contains(all, "Pipe touches") {
			t.Errorf("%s: %d sides: %s", name, len(sides), all)
		}
	}
}

// TestRaiseLeafOfThrownSpecs holds the leaf to two sides on specs nobody drew, two more for each other shape of arch, for a bend or a slope, for rows or drops and for more than
// forty arches.
func TestRaiseLeafOfThrownSpecs(t *testing.T) {
	t.Parallel()
	for seed := range uint64(30) {
		plan := planOf(t, []byte(thrown(seed)))
		if len(plan.Kinds) == 0 {
			continue
		}
		sloped := slices.ContainsFunc(plan.Crew.Tasks, func(k crew.Task) bool {
			return slices.ContainsFunc(k.Want, func(f crew.Figure) bool { return f.What == crew.BayClimb })
		})
		most := 2 * len(crew.Shapes(plan.Arches, plan.Spec.Units))
		for _, more := range []bool{sloped || !plan.Ground.Straight, len(plan.Lights.Rows)+len(plan.Lights.Drops) > 0, len(plan.Arches) > 40} {
			if more {
				most += 2
			}
		}
		feetGoAsTheGroundAllows(t, fmt.Sprint("thrown ", seed), plan)
		sides, words := leafSides(t, plan, "raise"), 0
		for _, s := range sides {
			words += strings.Count(strings.Join(wordsOf(s.page), " "), " ") // a figure with its thousands and its unit is one
		}
		t.Logf("thrown %d: %d arches, %d of %d sides, %d words", seed, len(plan.Arches), len(sides), most, words)
		if len(sides) > most || words > 340*most {
			t.Errorf("thrown %d: %d sides with %d words, want %d with 340 a side", seed, len(sides), words, most)
		}
	}
}

// TestTrialIsOnStakesOfItsOwn: an arch that is tried before needs stakes before any is driven; its line on the run sheet says so.
func TestTrialIsOnStakesOfItsOwn(t *testing.T) {
	plan := changedExample(t, "garden", "start: 09:00", "start: 09:00, days: [{date: 2027-11-13, from: 14:00, work: [trial]}, {date: 2027-11-20}]")
	var printed []string
	for _, s := range leafSides(t, plan, "day") {
		printed = append(printed, wordsOf(s.page)...)
	}
	if all := strings.Join(printed, " "); !strings.Contains(all, "Drive 4 stakes of the tunnel’s") {
		t.Errorf("no stakes of the trial in %q", all)
	}
}

// TestGuysAreFixedAsTheirArchStands: where the first guys are those of arch 2, or of an arch after it, the leaf says to which stakes they go, snug, and once how taut in the end.
func TestGuysAreFixedAsTheirArchStands(t *testing.T) {
	for _, first := range []int{2, 4} {
		plan := changedExample(t, "garden", "guys: {arches: [1, last]", fmt.Sprintf("guys: {arches: [%d, last]", first))
		var words []string
		for _, s := range leafSides(t, plan, "raise") {
			words = append(words, wordsOf(s.page)...)
		}
		all, stakes := strings.Join(words, " "), 0
		for _, s := range plan.Stakes {
			if s.Guy && s.Arch == first {
				stakes++
				if !strings.Contains(all, s.String()) {
					t.Errorf("guys from arch %d on: nothing goes to %v", first, s)
				}
			}
		}
		if taut := strings.Count(all, "Take guys up"); stakes == 0 || taut != 1 || strings.Count(all, ", snug") != 1 {
			t.Errorf("guys from arch %d on: %d stakes, told %d times how taut", first, stakes, taut)
		}
	}
}

// TestEveryWayHasItsStakes: where an arch is held one way of two, or there is no other arch to hold it toward, each way that is named has its stakes and a name of its own.
func TestEveryWayHasItsStakes(t *testing.T) {
	const guys = "guys: {arches: [1, last], from: 7 ft, out: 5 ft, stake: {bar: 3/8 in, length: 24 in, depth: 20 in}}"
	lines := changedExample(t, "garden", guys, "braces: {bays: [1, 3, last], from: 5 ft, kind: line}")
	alone := changedExample(t, "garden", "arches: 6", "arches: 1", "    - {where: ridge, string: mini led 50 warm, count: 1}\n", "", "arches: [1, last]", "arches: [1]")
	for plan, want := range map[*layout.Plan]string{lines: "Braces to P2La, P2Ra toward arch 1.", alone: "G1La, G1Ra toward the entrance, G1Lb, G1Rb toward the exit"} {
		if all := strings.Join(wordsOf(leafSides(t, plan, "raise")[1].page), " "); !strings.Contains(all, want) {
			t.Errorf("nowhere %q in %s", want, all)
		}
	}
}

// TestBracesAlikeGoTheSameWay: each arch of braces of line is told with the way, or both, that its pegs lie from its feet.
func TestBracesAlikeGoTheSameWay(t *testing.T) {
	const guys = "guys: {arches: [1, last], from: 7 ft, out: 5 ft, stake: {bar: 3/8 in, length: 24 in, depth: 20 in}}"
	told := regexp.MustCompile(`[Aa]rch (\d+): (?:braces )?to ([^;(.]*)(?:\(([^)]*) alike\))?`)
	for _, bays := range []string{"[1, 3, last]", "[2, 3, 5]", "[4, 5]"} {
		plan := changedExample(t, "garden", guys, "braces: {bays: "+bays+", from: 5 ft, kind: line}")
		ways := map[int]map[string]bool{} // as told, of each arch
		front := strings.Join(wordsOf(leafSides(t, plan, "raise")[0].page), " ")
		for _, found := range told.FindAllStringSubmatch(front, -1) {
			for _, number := range regexp.MustCompile(`\d+`).FindAllString(found[1]+" "+found[3], -1) {
				n, _ := strconv.Atoi(number)
				ways[n] = map[string]bool{"a": strings.Contains(found[2], "toward arch 1"), "b": strings.Contains(found[2], "toward arch 6")}
			}
		}
		pegs := 0
		for _, s := range plan.Stakes {
			if s.Bay == 0 || s.Arch < 3 {
				continue
			}
			leg := plan.Stakes[slices.IndexFunc(plan.Stakes, func(o ground.Stake) bool { return o.StakeID == ground.Leg(s.Side, s.Arch) })]
			way := map[bool]string{true: "b", false: "a"}[s.Along > leg.Along]
			if pegs++; !ways[s.Arch][way] || !strings.HasSuffix(s.String(), way) {
				t.Errorf("bays %s: %v is told %v in %s", bays, s, ways[s.Arch], front[strings.Index(front, "Step 7"):])
			}
		}
		if pegs == 0 {
			t.Errorf("bays %s: no pegs", bays)
		}
	}
}

// TestRaiseLeafPrintsThePlan: the figures that a crew acts on, as the plan and practice have them.
func TestRaiseLeafPrintsThePlan(t *testing.T) {
	for _, name := range []string{"garden", "starter", "schoolyard", "millwalk", "parkwalk"} {
		plan := examplePlan(t, name)
		var printed string
		for _, s := range leafSides(t, plan, "raise") {
			printed += " " + strings.Join(wordsOf(s.page), " ")
		}
		u, first := plan.Spec.Units, plan.Arches[0]
		last, sum := raisingOf(plan).readings(), measure.Length(0) // the last reading, from where its tape begins
		for _, r := range plan.Ridge[last[len(last)-1].from-1:] {
			sum += r.Centres
		}
		legs := 0
		for _, s := range plan.Stakes {
			if !s.Guy {
				legs++
			}
		}
		want := []string{u.Inches(u.Taped(first.Crown)), u.Inches(u.Taped(first.Span)), u.Inches(first.GiveOrTake(u)), u.Ground(plan.Ridge[0].Centres),
			u.Ground(sum), fmt.Sprint(legs), "Foot 1", "Foot 2", "Crown", "Ladder", "Guard", "G1L", "R1"}
		for _, task := range plan.Crew.Tasks {
			for _, f := range task.Want {
				switch f.What {
				case crew.GustBelow:
					if task.Phase == crew.Raising {
						want = append(want, u.Speed(f.Gust))
					}
				case crew.GuyMark:
					want = append(want, u.Inches(u.Taped(f.Length)))
				}
			}
		}
		for _, w := range want {
			if !strings.Contains(printed, w) {
				t.Errorf("%s: nowhere %q", name, w)
			}
		}
	}
}

// TestCrownsReadAsATautTape: between end arches that are taller than the rest the tape from the first crown to the last hangs clear of those between, and reads the bays alone; to a crown between it
// comes down from the first, by Pythagoras.
func TestCrownsReadAsATautTape(t *testing.T) {
	stake := "  stake: {bar: 3/8 in, length: 48 in, depth: 20 in}\n"
	plan := changedExample(t, "garden", "arches: 6", "arches: 8", stake, stake+"  except: [{arches: [1, last], sticks: [[10 ft, 18 in], [10 ft, 18 in]]}]\n")
	u, bay := plan.Spec.Units, plan.Spec.Tunnel.Spacing
	front := strings.Join(wordsOf(leafSides(t, plan, "raise")[0].page), " ")
	drop := float64(plan.Arches[0].Crown - plan.Arches[3].Crown)
	slopes := 5*bay + 2*measure.Length(math.Hypot(float64(bay), drop)) // laid on every ridge piece
	if u.Ground(slopes) == u.Ground(7*bay) {
		t.Fatal("the end arches are hardly taller")
	}
	for to, want := range map[int]measure.Length{4: measure.Length(math.Hypot(3*float64(bay), drop)), 8: 7 * bay} {
		if line := fmt.Sprintf("crown 1 to %d %s", to, u.Ground(want)); !strings.Contains(front, line) {
			t.Errorf("nowhere %q: %s", line, front)
		}
	}
}

// TestEveryArchHasItsProfile: arches that differ by more than what is held have a profile and a table of their own, and every arch is named by one title.
func TestEveryArchHasItsProfile(t *testing.T) {
	var except strings.Builder
	for i := 1; i <= 9; i++ {
		fmt.Fprintf(&except, "    - {arches: [%d], span: %d in}\n", i, 78+2*i)
	}
	stake := "  stake: {bar: 3/8 in, length: 48 in, depth: 20 in}\n"
	plan := changedExample(t, "garden", "arches: 6", "arches: 12", stake, stake+"  except:\n"+except.String())
	groups := crew.Shapes(plan.Arches, plan.Spec.Units)
	var numbers []int
	titles := 0
	for _, g := range groups {
		numbers = append(numbers, g.Numbers()...)
	}
	slices.Sort(numbers)
	for i, n := range numbers {
		if n != i+1 {
			t.Fatalf("groups name arches %v", numbers)
		}
	}
	sides := leafSides(t, plan, "raise")
	for _, s := range sides {
		titles += strings.Count(strings.Join(wordsOf(s.page), " "), "from the entrance")
	}
	if back := strings.Join(wordsOf(sides[1].page), " "); !strings.Contains(back, "Arch 2: steps 1 to 4, measure by the next sheet. Ridge 1") {
		t.Errorf("arch 2 is not measured before its ridge: %s", back)
	}
	if len(groups) < 9 || titles != len(groups) {
		t.Errorf("%d groups, %d titles", len(groups), titles)
	}
	if len(sides) > 2+2*(len(groups)-1) {
		t.Errorf("%d sides for %d shapes", len(sides), len(groups))
	}
}

// TestDropsAreToldToWhoHangsThem: drops without rows take no sheet of their own; their table tells the ends of a string that runs under two ridge pieces, prongs first, and
// the wrapping crew is told neither. Strings of low voltage are tried on their supply.
func TestDropsAreToldToWhoHangsThem(t *testing.T) {
	plan := changedExample(t, "garden", "    - {where: ridge, string: mini led 50 warm, count: 1}\n", "  drops: [{where: 'ridge of [1, 2]', string: low, hang: 4 in}]\n  strings: {low: {length: 10 ft, bulbs: 60, watts: 3 W, volts: 24 V, supply: {watts: 36 W, sockets: 2}, drop: 12 in}}\n")
	said := map[string]string{}
	for _, leaf := range []string{"raise", "lights"} {
		for _, s := range leafSides(t, plan, leaf) {
			said[leaf] += strings.Join(wordsOf(s.page), " ") + " "
		}
	}
	if n := len(leafSides(t, plan, "raise")); n != 2 {
		t.Errorf("raise has %d sides", n)
	}
	for _, want := range []string{"crown 1 to ", "4 in", "No end lower than"} {
		if !strings.Contains(said["raise"], want) {
			t.Errorf("nowhere %q in %s", want, said["raise"])
		}
	}
	if lights := said["lights"]; strings.Contains(lights, "Prongs to socket") || !strings.Contains(lights, "24 V strings on their own supply") {
		t.Errorf("the wrapping crew is told %s", lights)
	}
}

// TestFirstRidgePieceComesWound: what is measured in place is wound before with the legs, nothing from a ladder; its prongs are told where it goes in.
func TestFirstRidgePieceComesWound(t *testing.T) {
	for _, arches := range []string{"6", "2"} {
		plan := changedExample(t, "garden", "arches: 6", "arches: "+arches)
		wound := slices.IndexFunc(plan.Crew.Tasks, func(k crew.Task) bool {
			return k.Action == crew.WindPipe && slices.ContainsFunc(k.Of.Wraps, func(i int) bool { return firstRidge(plan, plan.Lights.Wraps[i].On) })
		})
		in := slices.IndexFunc(plan.Crew.Tasks, func(k crew.Task) bool { return k.Action == crew.SpringRidge })
		if wound < 0 || wound > in {
			t.Errorf("%s arches: wound by task %d, put in by %d", arches, wound, in)
		}
		sides := leafSides(t, plan, "raise")
		front, back := strings.Join(wordsOf(sides[0].page), " "), strings.Join(wordsOf(sides[1].page), " ")
		if !strings.Contains(front, "Step 7. Ridge prongs: ") || !strings.Contains(back, "Ridge 1 (prongs: overleaf) into crown 2") {
			t.Errorf("%s arches: %s %s", arches, front, back)
		}
	}
}

// No figure along the crowns is broken, nor within its fraction.
func TestCrownFiguresAreWhole(t *testing.T) {
	plan := planOf(t, []byte(strings.Replace(longFigures, "182 in}\narch", "182 1/4 in}\narch", 1)))
	var all []string
	for _, s := range leafSides(t, plan, "raise") {
		all = append(all, wordsOf(s.page)...)
	}
	for _, f := range raisingOf(plan).readings() {
		if figure := plan.Spec.Units.Ground(f.length); !slices.Contains(all, figure) {
			t.Errorf("%s is not whole", figure)
		}
	}
}

// No distance along the crowns is longer than the tape that is brought. By hand for 60 arches 4 ft 3 in apart, a tape of 100 ft, and stretches that are begun at 13, 31, 43 and 49 before the one before stands: crown 10 is 9
// bays or 38 ft 3 in from 1, 28 is 15 bays or 63 ft 9 in from 13, 60 is 11 bays or 46 ft 9 in from 49. Where they are begun nothing is read. With one crew all of it goes from tape to tape: 22 is 89 ft 3 in from 1, 25 would be 102 ft.
func TestCrownsAreReadWithinTheTape(t *testing.T) {
	plan := examplePlan(t, "parkwalk")
	r := raisingOf(plan)
	const foot = 12 * measure.Inch
	at := map[int]reading{}
	for _, f := range r.readings() {
		at[f.to] = f
		if f.length > r.tape() || r.tape() != 100*foot {
			t.Errorf("%+v by a tape of %v", f, r.tape())
		}
	}
	for to, want := range map[int]reading{10: {from: 1, length: 38.25 * foot}, 28: {from: 13, length: 63.75 * foot}, 40: {from: 31, length: 38.25 * foot}, 60: {from: 49, length: 46.75 * foot}} {
		if f := at[to]; f.from != want.from || math.Abs(float64(f.length-want.length)) > 1 {
			t.Errorf("crown %d: %+v, want %+v", to, f, want)
		}
	}
	for _, n := range []int{13, 31, 43, 49} {
		if at[n].to != 0 {
			t.Errorf("read to %d, where a stretch is begun", n)
		}
	}
	if got := zeros(r.readings()); got != "crowns 1–10, 13–28, 31–40, 43–46, 49–60" {
		t.Error(got)
	}
	alone := *plan
	alone.Crew.Schedule.Jobs = nil
	if got := zeros(raisingOf(&alone).readings()); got != "crowns 1–22, 22–43, 43–60 (22 and 43’s error added)" {
		t.Error(got)
	}
}

// Rows that bow an arch: the board points to the step that hangs them, and there stands a blank for the sag that is settled; rows that bow none have neither.
func TestSettledSagComesToTheRows(t *testing.T) {
	for sag, bows := range map[string]bool{"0 in": true, "12 in": false} {
		plan := changedExample(t, "millwalk", "up to: 6 ft,", "up to: 6 ft, sag: "+sag+",")
		r, ok := binderOf(t, plan).raising()
		k := slices.IndexFunc(r.hung, func(p panel) bool { return p.action == crew.HangRows })
		if !ok || k < 0 {
			t.Fatal("no rows are hung")
		}
		if got := strings.Contains(r.hung[k].do, "leaf 2 settles: ___"); got != bows {
			t.Errorf("sag %s: %s", sag, r.hung[k].do)
		}
		var board string
		for _, s := range leafSides(t, plan, "board") {
			for _, b := range s.blocks {
				board += b.Name + "\n"
			}
		}
		if got := strings.Contains(board, fmt.Sprintf("Rows bow an arch, leaf 5, step %d\n", r.hung[k].number)); got != bows {
			t.Errorf("sag %s: the board has %s", sag, board)
		}
	}
}
