package packet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/stock"
	"hoopwright/layout/weather"
)

// noRidge is an invented tunnel of arches that no ridge joins, each of one stick.
const noRidge = `hoopwright: 1
title: Row without a ridge
units: metric
tunnel: {arches: 5, spacing: 1.1 m, opening: {width: 1.1 m, height: 1.95 m}}
arch: {pipe: pvc-u pn16 25 mm, sticks: [6 m], span: 2.2 m}
ridge: false
guys: {arches: all, from: 1.8 m, out: 1.2 m}
site: {soil: soft, outlets: [{name: wall, at: [4 m, 0 m], circuit: wall}]}
lights: {wraps: [{where: arches, string: led 100 warm 230 V}]}
power: {circuits: {wall: {volts: 230 V, breaker: 16 A, gfci: true}}}
stock: {sell: [{item: pvc-u pn16 25 mm, length: 6 m, price: 8.9}]}
crew: {helpers: 5, start: 09:30}
`

func noRidgePlan(t *testing.T, swap ...string) *layout.Plan {
	t.Helper()
	return planOf(t, []byte(strings.NewReplacer(swap...).Replace(noRidge)))
}

// plainText is a leaf's words in one line.
func plainText(t *testing.T, plan *layout.Plan, leaf string) string {
	t.Helper()
	return strings.NewReplacer(" .", ".", " ,", ",").Replace(strings.Join(strings.Fields(strings.Join(textsOf(leafSides(t, plan, leaf)), " ")), " "))
}

// uprightRow is a row of arches from the first to the last that stands, and what holds them at a moment: toward the entrance, toward the exit.
type uprightRow struct {
	last, knotted int // crowns that are on the line
	guys          map[int][2]bool
	by            []int // arches that a person holds
}

// holds reports whether something keeps an arch from falling away from one end: a person, its own guys, or the line to a neighbour nearer that end that is held so. A line only pulls.
func (u uprightRow) holds(arch, way int) bool {
	if slices.Contains(u.by, arch) || u.guys[arch][way] {
		return true
	}
	next := arch + 2*way - 1
	return next >= 1 && next <= u.last && max(arch, next) <= u.knotted && u.holds(next, way)
}

func (u uprightRow) check(t *testing.T, moment string) {
	t.Helper()
	for arch := 1; arch <= u.last; arch++ {
		for way, end := range []string{"entrance", "exit"} {
			if !u.holds(arch, way) {
				t.Errorf("%s: nothing holds arch %d toward the %s", moment, arch, end)
			}
		}
	}
}

// tiedOnce lists the guys of a row, each with the arch that stands last of those it goes to or past: before that its stake is in nobody's reach or in the way.
func tiedOnce(plan *layout.Plan) (list []struct{ arch, way, from int }) {
	n := len(plan.Arches)
	for _, s := range plan.Stakes {
		if s.Kind() != ground.OfGuy {
			continue
		}
		g := struct{ arch, way, from int }{s.Arch, 0, s.Arch}
		if s.Way == ground.Away || s.Way == ground.OneWay && s.Arch == n {
			past := int(math.Floor(float64(plan.Spec.Guys.Out/plan.Spec.Tunnel.Spacing) + 1e-9))
			g.way, g.from = 1, min(n, s.Arch+past)
		}
		list = append(list, g)
	}
	return list
}

var guardWords = regexp.MustCompile(`Guard: holds the newest arch till the next is knotted(?:, (\d+) till tied to its stakes)?`)

// Without a ridge each arch is held toward both ends at every moment of the raising and of the taking down, done as the leaves say: by its guys as their stakes come free, by the line to
// one that is held, or by the guard. While the next is walked over nothing but the guard holds the row from falling back over the way in: its forward guys stand beyond.
func TestArchesWithoutARidgeAreHeld(t *testing.T) {
	for _, n := range []int{2, 3, 6} {
		for _, guys := range []string{"all", "[1, last]"} {
			for _, out := range []string{"0.8 m", "1.2 m", "2.4 m"} {
				plan := noRidgePlan(t, "arches: 5", fmt.Sprintf("arches: %d", n), "arches: all", "arches: "+guys, "out: 1.2 m", "out: "+out)
				name := fmt.Sprintf("%d arches, guys %s, %s out", n, guys, out)
				raised(t, name, plan)
				takenDown(t, name, plan)
			}
		}
	}
}

// raised walks through the raising.
func raised(t *testing.T, name string, plan *layout.Plan) {
	t.Helper()
	text, n := plainText(t, plan, "raise"), len(plan.Arches)
	guard := guardWords.FindStringSubmatch(text)
	if guard == nil || guard[1] != fmt.Sprint(n) || !strings.Contains(text, "crown line knotted snug at both. Guard to arch 2.") {
		t.Fatalf("%s: no guard of the newest arch, no line: %s", name, text)
	}
	u, list := uprightRow{guys: map[int][2]bool{}}, tiedOnce(plan)
	later := slices.ContainsFunc(list, func(g struct{ arch, way, from int }) bool { return g.from > g.arch && g.arch > 1 })
	if later != strings.Contains(text, "Stakes past arches not up: tie as those join.") {
		t.Errorf("%s: stakes past arches that are not up, %v: %s", name, later, text)
	}
	for arch := 1; arch <= n; arch++ {
		u.by = []int{arch - 1}
		u.check(t, fmt.Sprintf("%s, arch %d walked over", name, arch))
		u.last, u.by = arch, []int{arch - 1, arch}
		u.check(t, fmt.Sprintf("%s, arch %d stands", name, arch))
		u.knotted, u.by = arch, []int{arch}
		u.check(t, fmt.Sprintf("%s, arch %d on the line", name, arch))
		for _, g := range list {
			if g.from == arch {
				held := u.guys[g.arch]
				held[g.way] = true
				u.guys[g.arch] = held
			}
		}
	}
	u.by = nil
	u.check(t, name+", all up")
}

// takenDown walks through the taking down.
func takenDown(t *testing.T, name string, plan *layout.Plan) {
	t.Helper()
	text, n := plainText(t, plan, "takedown"), len(plan.Arches)
	for _, words := range []string{"Guard: holds the next arch throughout.", fmt.Sprintf("Foot 1, 2 hold it, Guard arch %d.", n-1), fmt.Sprintf("Untie crown line at crown %d.", n)} {
		if !strings.Contains(text, words) {
			t.Fatalf("%s: no %q in %s", name, words, text)
		}
	}
	if before, after := strings.Index(text, "frees guys at"), strings.Index(text, "Untie crown line"); before > after {
		t.Errorf("%s: the line is untied before the guys are", name)
	}
	u := uprightRow{last: n, knotted: n, guys: map[int][2]bool{}}
	list := tiedOnce(plan)
	for _, g := range list {
		held := u.guys[g.arch]
		held[g.way] = true
		u.guys[g.arch] = held
	}
	freed := (&lowering{plan: plan}).freedBefore()
	for arch := n; arch >= 1; arch-- {
		u.by = []int{arch, arch - 1}
		for _, g := range list {
			names := freed[arch][0]
			pair := fmt.Sprintf("G%d", g.arch)
			if slices.Contains(plan.Spec.Guys.Arches, g.arch) && g.arch > 1 && g.arch < n {
				pair += [2]string{"a", "b"}[g.way]
			}
			if slices.Contains(names, pair) != (g.from == arch) {
				t.Errorf("%s: at arch %d %v come off; %s reaches arch %d", name, arch, names, pair, g.from)
			}
			if g.from == arch {
				held := u.guys[g.arch]
				held[g.way] = false
				u.guys[g.arch] = held
			}
		}
		u.check(t, fmt.Sprintf("%s, arch %d freed of guys", name, arch))
		u.knotted = arch - 1
		u.check(t, fmt.Sprintf("%s, arch %d off the line", name, arch))
		u.last, u.by = arch-1, []int{arch - 1}
		u.check(t, fmt.Sprintf("%s, arch %d off", name, arch))
	}
}

// The line along the crowns is bought and cut as long as it goes: by hand, from crown to crown 1.1 m, a foot for each knot, up to whole half metres. Nothing to hold, or one arch, none.
func TestLineWithoutARidge(t *testing.T) {
	for name, c := range map[string]struct {
		swap []string
		want int // half metres; 0 for none
	}{
		"5":        {nil, 12}, // 4·1.1 + 5·.305 = 5.92 m
		"3":        {[]string{"arches: 5", "arches: 3"}, 7},
		"ends":     {[]string{"arches: all", "arches: [1, last]"}, 12},
		"legs":     {[]string{"[6 m]", "[3 m, 3 m]"}, 12},
		"pinned":   {[]string{"[6 m]", "[3 m, 3 m], joints: pinned"}, 12},
		"lone":     {[]string{"arches: 5", "arches: 1"}, 0},
		"unguyed":  {[]string{"guys: {arches: all, from: 1.8 m, out: 1.2 m}", "guys: none"}, 0},
		"a ridge":  {[]string{"[6 m]", "[3 m, 3 m]", "ridge: false\n", ""}, 12},
		"pinned r": {[]string{"[6 m]", "[3 m, 3 m], joints: pinned", "ridge: false\n", ""}, 0},
	} {
		plan := noRidgePlan(t, c.swap...)
		got := 0
		for _, i := range plan.Shopping {
			for _, r := range i.Ropes {
				if r.Kind == stock.CrownRope {
					got += int(math.Round(float64(r.Length / 500)))
				}
			}
		}
		cut := strings.Contains(plainText(t, plan, "stock"), "crown line as ")
		back := slices.ContainsFunc(inventory(plan), func(s stored) bool { return s.item == "crown line" })
		off := slices.ContainsFunc(plan.Crew.Tasks, func(t crew.Task) bool {
			return t.Phase == crew.Raising && slices.ContainsFunc(t.Uses, func(n crew.Need) bool { return n.Thing == crew.CrownLine })
		})
		if there := c.want > 0; got != c.want || cut != there || back != there || off != there {
			t.Errorf("%s: %d half metres, want %d; cut %v, counted in %v, used %v", name, got, c.want, cut, back, off)
		}
	}
}

// An arch of one stick is made ready, not made of legs; nothing is driven to a pen line or twisted apart that nothing joins; its couplings are.
func TestArchesOfOneStick(t *testing.T) {
	const pen, apart = "Pen line ", "apart."
	for name, c := range map[string]struct {
		swap     []string
		leaf     string
		has, not []string
	}{
		"day":            {nil, "day", []string{"Ready 5 arches:"}, []string{"leg:", "legs:"}},
		"day, legs":      {[]string{"[6 m]", "[3 m, 3 m]"}, "day", []string{"Make 10 legs:"}, []string{"Ready"}},
		"day, both":      {[]string{"span: 2.2 m}", "span: 2.2 m, except: [{arches: [2], sticks: [3 m, 3 m]}]}"}, "day", []string{"Make 2 legs, 4 arches:"}, nil},
		"cut":            {nil, "stock", []string{"name at both ends, L or R at an arch’s feet."}, []string{pen, "arrow"}},
		"cut, joined":    {[]string{"[6 m]", "[[3 m, 3 m]]"}, "stock", []string{"from each end but feet. Mallet each arch’s sticks"}, []string{"a leg’s foot", "arrow"}},
		"cut, legs":      {[]string{"[6 m]", "[3 m, 3 m]"}, "stock", []string{"from each end but a leg’s foot."}, []string{"arch’s"}},
		"down":           {nil, "takedown", []string{"Guys off.", "each stick’s walk side a line."}, []string{apart, "arrow"}},
		"down, dark":     {[]string{"lights: {wraps: [{where: arches, string: led 100 warm 230 V}]}\n", ""}, "takedown", []string{" Guys off. "}, []string{apart, "Strings"}},
		"down, joined":   {[]string{"[6 m]", "[[3 m, 3 m]]"}, "takedown", []string{"Twist the couplings apart."}, []string{"crowns apart"}},
		"down, legs":     {[]string{"[6 m]", "[3 m, 3 m]"}, "takedown", []string{"Twist the crowns apart.", "arrow to crown"}, nil},
		"raise":          {nil, "raise", []string{"Leans: slacken there, take up opposite, guy or crown line."}, []string{"till arch 2 joins"}},
		"raise, lone":    {[]string{"arches: 5", "arches: 1"}, "raise", []string{"Guard: holds arch 1, does nothing else", "Leans: slacken there, take up opposite. "}, []string{"crown line"}},
		"raise, a pair":  {[]string{"arches: 5", "arches: 2"}, "raise", []string{"Guard to arch 2. Guys to G2L, G2R, nets on."}, nil},
		"raise, far end": {[]string{"arches: all", "arches: [last]"}, "raise", []string{"Guard keeps both hands on arch 1 until arch 2 is knotted."}, []string{"while it is measured"}},
		"nights":         {nil, "nights", []string{"guys straight, crown line tied."}, nil},
	} {
		text := plainText(t, noRidgePlan(t, c.swap...), c.leaf)
		for _, words := range c.has {
			if !strings.Contains(text, words) {
				t.Errorf("%s: no %q in %s", name, words, text)
			}
		}
		for _, words := range c.not {
			if strings.Contains(text, words) {
				t.Errorf("%s: %q in %s", name, words, text)
			}
		}
	}
}

var listsFrom = regexp.MustCompile(`Legs done: cut [^.;]* as (overleaf|above|on sheet (\d+), (front|back))[;.]`)

// Where lines are cut it says where their lengths are: on the same side, on its other side, or by sheet and side.
func TestLinesSayWhereTheyAreListed(t *testing.T) {
	plans := map[string]*layout.Plan{"no ridge": noRidgePlan(t), "legs": noRidgePlan(t, "[6 m]", "[3 m, 3 m]"), "many": noRidgePlan(t, "arches: 5", "arches: 30", "[6 m]", "[2.9 m, 3.1 m]")}
	for _, name := range []string{"garden", "starter", "schoolyard", "millwalk", "parkwalk"} {
		plans[name] = examplePlan(t, name)
	}
	seen := map[string]bool{}
	for name, plan := range plans {
		var sides []string
		for _, s := range leafSides(t, plan, "stock") {
			sides = append(sides, strings.Join(strings.Fields(strings.ReplaceAll(strings.Join(wordsOf(s.page), " "), "\u00a0", " ")), " "))
		}
		listed := slices.IndexFunc(sides, func(s string) bool { return strings.Contains(s, "of guy line,") })
		said := 0
		for i, s := range sides {
			m := listsFrom.FindStringSubmatch(strings.ReplaceAll(s, " ;", ";"))
			if m == nil {
				continue
			}
			said++
			is := map[string]bool{"above": listed == i, "overleaf": listed == i-1 && i%2 == 1}[m[1]]
			if m[2] != "" {
				is = fmt.Sprint(listed/2+1) == m[2] && (listed%2 == 1) == (m[3] == "back")
			}
			if seen[m[1]] = true; !is {
				t.Errorf("%s: side %d says as %s, listed on side %d", name, i, m[1], listed)
			}
		}
		if said != 1 {
			t.Errorf("%s: said %d times", name, said)
		}
	}
	if !seen["above"] || !seen["overleaf"] {
		t.Errorf("seen %v", seen)
	}
	if text := plainText(t, noRidgePlan(t, "stock: {", "stock: {own: [{item: guy line, count: 80}], "), "stock"); !strings.Contains(text, "Legs done: cut 16 guys of 3.5 m, crown line of 6 m; ribbon guys.") {
		t.Errorf("line of the shed is on no list: %s", text)
	}
}

// TestFlatWithoutARidge: a long row is laid flat by two crews. The second’s neighbours leave it, so its lowest bay is tied crosswise first and the line between them comes off; untying the line takes
// its time in the drill as a ridge's does.
func TestFlatWithoutARidge(t *testing.T) {
	plan := noRidgePlan(t, "arches: 5", "arches: 24", "helpers: 5", "helpers: 16")
	if flat := plan.LaidFlat(); flat.Crews != 2 || !slices.ContainsFunc(flat.Drill.Steps, func(s weather.Step) bool { return s.Act == weather.UntieLine }) {
		t.Fatalf("%+v", flat)
	}
	const want = "2 crews: arches 24 to 13 and 12 to 1. First tie bay 13: builder’s line, each arch head-high to the other’s feet. Then, as step 5, crown line off between 12 and the next."
	if text := plainText(t, plan, "takedown"); !strings.Contains(text, want) {
		t.Errorf("not %q in %s", want, text)
	}
}
