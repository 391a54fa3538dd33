package packet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/klippa-app/go-pdfium"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/dice"
	"hoopwright/layout/ground"
)

// dayOf packs the organiser's leaf of a plan.
func dayOf(t *testing.T, plan *layout.Plan) ([]set, []block.Note) {
	t.Helper()
	return leafAlone(t, plan, "day")
}

// One sheet of paper, front and back; a tunnel of sixty arches takes two: its days; its map and its cords.
func TestDayLeafKeepsToItsSides(t *testing.T) {
	most := map[string]int{"parkwalk.yaml": 4}
	for name, source := range specs(t) {
		sides, notes := dayOf(t, planOf(t, source))
		limit := 2
		if n, ok := most[name]; ok {
			limit = n
		}
		words := 0
		for _, s := range sides {
			words += wordsOn(s.page)
		}
		t.Logf("%s: %d sides, %d words", name, len(sides), words)
		if len(sides) > limit || words > 340*len(sides) {
			t.Errorf("%s: %d sides, %d words", name, len(sides), words)
		}
		for _, n := range notes {
			t.Errorf("%s: %s %s found no room", name, n.Block, n.What)
		}
	}
}

// The run sheet with its map, and the board, are one sheet of paper each up to forty arches and two days, whatever the spec: what finds no room in full is shortened or stands in the annex.
func TestDayAndBoardAreALeafEach(t *testing.T) {
	t.Parallel()
	for seed := range uint64(20) {
		plan := planOf(t, []byte(thrown(seed)))
		if plan.Spec.Tunnel.Arches > 40 || len(plan.Crew.Schedule.Built()) > 2 {
			continue
		}
		for _, word := range []string{"day", "board"} {
			if sides, notes := leafAlone(t, plan, word); len(sides) > 2 || len(notes) > 0 {
				t.Errorf("thrown %d, %d arches: %s has %d sides, no room for %v", seed, plan.Spec.Tunnel.Arches, word, len(sides), notes)
			}
		}
	}
}

// A finding is on the board in full, or by its title with its words in the annex.
func TestNoFindingIsDropped(t *testing.T) {
	for seed := range uint64(20) {
		plan := planOf(t, []byte(thrown(seed)))
		sides, _ := leafAlone(t, plan, "board")
		annex, _ := leafAlone(t, plan, "reckoning")
		front := strings.Join(wordsOf(sides[0].page), " ")
		for _, s := range annex {
			for _, text := range wordsOf(s.page) {
				if !strings.HasPrefix(text, "DO NOT BUILD") { // the band of a side on which a finding goes on
					front += " " + text
				}
			}
		}
		told := strings.Join(strings.Fields(front), " ")
		for _, f := range plan.Findings {
			if !strings.Contains(told, strings.Join(strings.Fields(f.Text), " ")) {
				t.Errorf("thrown %d: neither board nor annex says %q", seed, f.Text)
			}
		}
	}
}

// Thrown specs of every kind, and odd ones of ours: nothing lies on text, on no side.
func TestDayLeafIsClean(t *testing.T) {
	t.Parallel()
	check := func(name, source string) {
		sides, notes := dayOf(t, planOf(t, []byte(source)))
		for _, s := range sides {
			for _, f := range lint(s.page) {
				t.Errorf("%s, %s: %s", name, s.title, f)
			}
		}
		for _, n := range notes {
			t.Logf("%s: %s %s found no room", name, n.Block, n.What)
		}
	}
	for name, source := range specs(t) {
		check(name, string(source))
	}
	for seed := range uint64(30) {
		check(fmt.Sprintf("thrown %d", seed), thrown(seed))
	}
	for _, seed := range []uint64{67, 129, 254} { // a cord's number by the way in, a mark on an arch, an outlet on one
		check(fmt.Sprintf("thrown whole %d", seed), dice.Whole(seed, 240))
	}
}

// The bars stand where their times are: read back from the page by the places of the hours' figures alone, their ends are the stints of the plan.
func TestBarsStandAtTheirTimes(t *testing.T) {
	plan := examplePlan(t, "garden")
	sides, _ := dayOf(t, plan)
	hour := map[int]paper.Length{}
	for _, op := range sides[0].page.Ops {
		if text, ok := op.(paper.Text); ok && text.Lettering == paper.Floor && text.At.Y > 40 && text.At.Y < 90 {
			if n, err := strconv.Atoi(text.String); err == nil {
				hour[n] = text.At.X + text.Lettering.Width(text.String)/2
			}
		}
	}
	if len(hour) < 8 {
		t.Fatalf("hours %v", hour)
	}
	perHour := hour[11] - hour[10]
	got := map[[2]int]bool{}
	for _, op := range sides[0].page.Ops {
		stroke, ok := op.(paper.Stroke)
		if !ok || stroke.Pen.Width != 0.50 || len(stroke.Path) != 5 {
			continue
		}
		from, to := stroke.Path[0].To.X, stroke.Path[1].To.X
		minutes := func(x paper.Length) int { return int(math.Round(float64((x-hour[10])/perHour*60))) + 600 }
		got[[2]int{minutes(from), minutes(to)}] = true
	}
	for _, j := range plan.Crew.Schedule.Jobs {
		for _, st := range j.Stints {
			if st.Day == 1 && j.Work != crew.ClearUp && !got[[2]int{int(st.Begin), int(st.End)}] {
				t.Errorf("work %d from %s to %s is no bar among %v", j.Work, st.Begin, st.End, got)
			}
		}
	}
}

// itsArches is what stands after the name of a hold that is met stretch by stretch.
var itsArches = regexp.MustCompile(` \d+ to \d+$`)

// Every hold of marking and building is on the run sheet, once or stretch by stretch and in the order of its time, with the leaf that has its figure; those of the nights and of the taking
// down are not.
func TestHoldsAreOnTheRunSheet(t *testing.T) {
	for name, source := range specs(t) {
		plan := planOf(t, source)
		r := runSheet{Schedule: plan.Crew.Schedule, plan: plan}
		want := 0
		for _, task := range plan.Crew.Tasks {
			if task.Hold && task.Phase != crew.Nights && task.Phase != crew.TakeDown {
				want++
			}
		}
		list, names := r.allHolds(), map[string]bool{}
		list = slices.DeleteFunc(list, func(h dayHold) bool { return h.what == nightTied }) // of no task
		for _, h := range list {
			if names[h.what] {
				t.Errorf("%s: %s is twice on the run sheet", name, h.what)
			}
			names[h.what] = true
		}
		for what := range names {
			if part := itsArches.FindString(what); part != "" {
				delete(names, what)
				names[strings.TrimSuffix(what, part)] = true
			}
		}
		if len(names) != want {
			t.Errorf("%s: %d holds on the run sheet, %d in the tasks", name, len(names), want)
		}
		for _, h := range list {
			if h.what == "" || h.leaf < 2 || strings.ContainsAny(h.what, "%") {
				t.Errorf("%s: hold %+v", name, h)
			}
		}
		if len(plan.Crew.Schedule.Built()) == 1 {
			times := slices.DeleteFunc(slices.Clone(list), func(h dayHold) bool { return !clockTime.MatchString(h.when) })
			if !slices.IsSortedFunc(times, func(a, b dayHold) int { return strings.Compare(a.when, b.when) }) {
				t.Errorf("%s: holds out of order: %v", name, times)
			}
		}
	}
}

// A hold is due where its black mark stands on the bar: what opens a work before its bar begins, what is met piece by piece when all of it is done; arch 1 between.
func TestHoldsAreDueInTime(t *testing.T) {
	for name, source := range specs(t) {
		plan := planOf(t, source)
		r := runSheet{Schedule: plan.Crew.Schedule, plan: plan}
		for _, j := range r.Jobs {
			if len(j.Stints) == 0 {
				continue
			}
			begin, last := j.Stints[0], j.Stints[len(j.Stints)-1]
			for _, h := range r.holds(j) {
				low, high := begin.Begin, last.End
				switch h.what {
				case holdWords[crew.CheckDay], holdWords[crew.WatchLine], holdWords[crew.ReadTicket]:
					high = low
				case holdWords[crew.TestStrings], holdWords[crew.MeasureBay], holdWords[crew.MeasureWidths], holdWords[crew.SightAlong]:
					low = high
				}
				if h.day < begin.Day || h.day > last.Day || begin.Day == last.Day && (h.at < low || h.at > high) {
					t.Errorf("%s: %s is due on day %d at %s; the work goes from day %d, %s to day %d, %s", name, h.what, h.day, h.at, begin.Day, begin.Begin, last.Day, last.End)
				}
			}
		}
		marks := map[[2]int]bool{}
		for day := r.Marked; day < len(r.Days); day++ {
			for _, row := range r.bars(day).Rows {
				for _, bar := range row.Bars {
					for _, at := range bar.Holds {
						marks[[2]int{day, int(at)}] = true
					}
				}
			}
		}
		for _, h := range r.allHolds() {
			if h.timed && h.day >= r.Marked && !marks[[2]int{h.day, int(h.at)}] {
				t.Errorf("%s: %s at %s has no mark on a bar", name, h.what, h.at)
			}
		}
	}
}

// No hold is due before the work that it signs is done, counted quarter by quarter on the bars; and lights burn for a quarter of an hour between the looking at cords, which all who join have
// ended, and the hold after it. Examples, and thrown specs of every kind.
func TestHoldsFollowTheirWork(t *testing.T) {
	t.Parallel()
	plans, lit := map[string]*layout.Plan{}, 0
	for name, source := range specs(t) {
		plans[name] = planOf(t, source)
	}
	for seed := range uint64(30) {
		plans[fmt.Sprintf("thrown %d", seed)] = planOf(t, []byte(thrown(seed)))
	}
	plans["legs that came wrapped"] = changedExample(t, "garden", "\ncrew:", "\nstore: wrapped\nfound: {wrapped: true}\ncrew:", "    - {item: mini led 100 warm, count: 5}\n",
		"    - {item: mini led 100 warm, count: 12}\n    - {item: pvc sch40 1/2 in, length: 10 ft, count: 12}\n")
	for name, plan := range plans {
		r := runSheet{Schedule: plan.Crew.Schedule, plan: plan}
		due := map[string]int{}
		for _, j := range r.Jobs {
			work, holds := 0.0, 0
			list := r.holds(j)
			for _, i := range j.Tasks {
				task := plan.Crew.Tasks[i]
				if work += task.Minutes; !task.Hold {
					continue
				}
				h := list[holds]
				holds++
				given, all := 0.0, 0.0
				for _, st := range j.Stints {
					for at := st.Begin; at < st.End; at += 15 {
						all += 15 * float64(len(st.Hands))
						if st.Day < h.day || st.Day == h.day && at < h.at {
							given += 15 * float64(len(st.Hands))
						}
					}
				}
				sum := 0.0
				for _, k := range j.Tasks {
					sum += plan.Crew.Tasks[k].Minutes
				}
				opens := slices.Contains([]crew.Action{crew.ReadTicket, crew.LookUp, crew.CheckDay, crew.WatchLine, crew.AskOwner, crew.CallLocator}, task.Action)
				if need := j.Minutes * float64(j.Most) * work / sum; h.timed && !opens && all >= need && given < need-1e-6 {
					t.Errorf("%s: %s is due on day %d at %s, after %.0f minutes of hands, and its work takes %.0f", name, h.what, h.day, h.at, given, need)
				}
				if day, end, ok := j.End(); ok && slices.Contains([]crew.Action{crew.CheckCords, crew.TestLoaded, crew.WeighDown, crew.SightAlong}, task.Action) && (day != h.day || end != h.at) {
					t.Errorf("%s: %s is due on day %d at %s, its work ends on day %d at %s", name, h.what, h.day, h.at, day, end)
				}
				if h.timed {
					due[h.what] = h.day*24*60 + int(h.at)
				}
			}
		}
		cords, looked := due[holdWords[crew.CheckCords]]
		burnt, ok := due[holdWords[crew.TestLoaded]]
		if looked && ok {
			if lit++; burnt < cords+15 {
				t.Errorf("%s: cords are looked at at minute %d, all lit and tested at %d", name, cords, burnt)
			}
		}
	}
	if lit < 20 {
		t.Errorf("only %d plans were lit", lit)
	}
}

// The newest arch is tied for the night on days that end with arches which crown line, guys and caps are not looked after, and on no other: a walk whose last arch stands, held, on
// the first of two days has no tie.
func TestTiedOnlyWhereArchesAreLoose(t *testing.T) {
	tied, held := 0, 0
	plans := []*layout.Plan{examplePlan(t, "parkwalk")}
	for helpers := range 6 {
		plans = append(plans, planOf(t, []byte(strings.Replace(string(specs(t)["schoolyard.yaml"]), "helpers: 8", fmt.Sprintf("helpers: %d", helpers+4), 1))))
	}
	for _, plan := range plans {
		r := runSheet{Schedule: plan.Crew.Schedule, plan: plan}
		for day := r.Marked; day < len(r.Days)-1; day++ {
			stands, done := false, false
			for _, j := range r.Jobs {
				for _, st := range j.Stints {
					stands = stands || j.Work == crew.RaiseFirst && st.Day <= day
					if j.Work == crew.HoldRidge {
						done = st.Day <= day // its last stint
					}
				}
			}
			said := false
			for _, row := range r.bars(day).Rows {
				said = said || row.Name == "By sunset tie newest arch"
			}
			hold := slices.ContainsFunc(r.allHolds(), func(h dayHold) bool { return h.what == nightTied && h.day == day })
			if loose := stands && !done; said != loose || hold != loose {
				t.Errorf("%d people, day %d: tied %v, its hold %v, arches loose %v", r.Hands, day, said, hold, loose)
			}
			tied, held = tied+b2i(said), held+b2i(stands && done)
		}
	}
	if tied == 0 || held == 0 {
		t.Errorf("%d nights with a tie, %d with all held", tied, held)
	}
}

func b2i(v bool) int {
	if v {
		return 1
	}
	return 0
}

var clockTime = regexp.MustCompile(`^\d\d:\d\d$`)

// What the site has is named on its map: outlets with their breakers, places, lines in and over the ground, marks, every cord's number.
func TestSiteMapNamesEverything(t *testing.T) {
	for _, name := range []string{"garden", "starter", "schoolyard", "millwalk", "parkwalk"} {
		plan := examplePlan(t, name)
		sides, _ := dayOf(t, plan)
		var pages []*paper.Page
		for _, s := range sides {
			pages = append(pages, s.page)
		}
		all := strings.Join(wordsOf(pages...), " ")
		site := plan.Spec.Site
		var want []string
		for _, o := range site.Outlets {
			want = append(want, o.Name+" outlet:")
		}
		for _, c := range plan.Spec.Power.Circuits {
			if c.BreakerNo != "" {
				want = append(want, "breaker "+c.BreakerNo+",")
			}
		}
		for _, p := range site.Places {
			want = append(want, p.For+": ")
		}
		for _, l := range site.Buried {
			want = append(want, l.Name, plan.Spec.Units.Inches(l.Keep))
		}
		for _, m := range site.Marks {
			want = append(want, m.Name)
		}
		for _, f := range site.Features {
			want = append(want, f.Name)
		}
		want = append(want, "way in", "way out")
		for _, w := range want {
			if !strings.Contains(all, w) {
				t.Errorf("%s: the map does not say %q", name, w)
			}
		}
		numbers := map[string]bool{}
		for _, p := range pages {
			for _, op := range p.Ops {
				if text, ok := op.(paper.Text); ok && text.Lettering == paper.CellSmall {
					numbers[text.String] = true
				}
			}
		}
		for _, f := range plan.Power.Feeders {
			for _, j := range f.Joints {
				climbs := j.From >= 0 && f.Joints[j.From].Arch == j.Arch // at one arch, which the power leaf shows
				if j.Cord > 0 && !climbs && !numbers[fmt.Sprintf("C%d", j.Cord)] {
					t.Errorf("%s: cord %d has no number on the map", name, j.Cord)
				}
			}
		}
	}
}

// A wire is named with its height. One that an arch's joined pipe could reach forbids ladder and pipe without its owner's yes, one above that only beside the tunnel.
func TestWireOnTheMap(t *testing.T) {
	garden := string(specs(t)["garden.yaml"])
	for high, forbids := range map[string]string{"18 ft": "without its owner’s written yes", "40 ft": "outside the tunnel"} {
		plan := planOf(t, []byte(strings.Replace(garden, "  outlets:", "  overhead: [{name: drop, line: [[-30 ft, 42 ft], [60 ft, 42 ft]], height: "+high+"}]\n  outlets:", 1)))
		sides, _ := dayOf(t, plan)
		words := strings.ReplaceAll(strings.Join(wordsOf(sides[1].page), " "), "\n", " ")
		if named := "drop, " + plan.Spec.Units.Room(plan.Spec.Site.Overhead[0].Height) + " up"; !strings.Contains(words, named) || !strings.Contains(words, forbids) {
			t.Errorf("%s up: %q or %q is missing in %s", high, named, forbids, words)
		}
	}
}

// measureSite reads the finished site map with PDFium and lays a ruler on it: every two stakes of legs are as far apart as on the ground.
func measureSite(t *testing.T, reader pdfium.Pdfium, example string) {
	p, plan := printed(t, reader, example, "day")
	const back = 1
	scale := p.scale(back)
	if scale == 0 {
		t.Fatal("the map states no scale")
	}
	var legs []ground.Stake
	for _, s := range plan.Stakes {
		if !s.Guy {
			legs = append(legs, s)
		}
	}
	var dots []spot
	for _, path := range p.drawing(back) {
		low, high := pathBounds(path)
		if len(path) > 30 && math.Abs(high.x-low.x-1.8) < 0.02 && math.Abs(high.y-low.y-1.8) < 0.02 {
			dots = append(dots, spot{(low.x + high.x) / 2, (low.y + high.y) / 2})
		}
	}
	if len(dots) != len(legs)+1 { // one more explains the sign
		t.Fatalf("%d dots for %d stakes", len(dots), len(legs))
	}
	worst := 0.0
	for i := range legs {
		for k := range i {
			worst = max(worst, math.Abs(dots[i].to(dots[k])-float64(ground.Between(legs[i], legs[k]))/scale))
		}
	}
	if worst > 0.1 {
		t.Errorf("at 1:%v two stakes are %.3f mm off on paper", scale, worst)
	}
}

// People are named so that a leader can read who is where.
func TestWhoWords(t *testing.T) {
	for _, c := range []struct {
		list  []int
		hands int
		want  string
	}{
		{[]int{0, 1}, 6, "A B"}, {[]int{0, 1, 2, 5}, 6, "A–C F"}, {[]int{0, 1, 2, 3, 4, 5}, 6, "all"}, {[]int{0, 1, 3, 4, 5}, 6, "all but C"}, {[]int{0, 1}, 2, "A B"}, {[]int{25, 26}, 40, "Z AA"},
	} {
		if got := whoWords(c.list, c.hands); got != c.want {
			t.Errorf("%v of %d: %q, want %q", c.list, c.hands, got, c.want)
		}
	}
}

// Who is still to be found for the raising has a letter after all others, a line for the name and a seat on the bars; nobody under age has one.
func TestWhoIsToBeFound(t *testing.T) {
	for people, want := range map[string][2]string{"helpers: 5": {"all but A", ""}, "helpers: 5, young: 2": {"A–D G", "find G, 16+"}, "helpers: 2": {"all", "find E, 16+"}, "helpers: 3, young: 3": {"A E–H", "find H, 16+"}} {
		plan := planOf(t, []byte(strings.Replace(string(specs(t)["garden.yaml"]), "helpers: 5", people, 1)))
		r := runSheet{Schedule: plan.Crew.Schedule, plan: plan}
		for day := r.Marked; day < len(r.Days); day++ {
			for _, bar := range append(r.shifts(day, crew.RaiseFirst), r.shifts(day, crew.RaiseOthers)...) {
				if bar.Who != want[0] {
					t.Errorf("%s: %q raise, want %q", people, bar.Who, want[0])
				}
			}
		}
		sides, _ := dayOf(t, plan)
		if all := wordsOf(sides[0].page); want[1] != "" && !slices.Contains(all, want[1]) {
			t.Errorf("%s: no line for %q among %q", people, want[1], all)
		}
	}
}

// Where two crews raise side by side, each bar says which arches; where one raises all, the work's name does.
func TestCrewsSideBySideHaveTheirArches(t *testing.T) {
	arches := regexp.MustCompile(`^\d+–\d+: [A-Z]`)
	for name, want := range map[string]bool{"garden": false, "parkwalk": true} {
		plan := examplePlan(t, name)
		r := runSheet{Schedule: plan.Crew.Schedule, plan: plan}
		for day := r.Marked; day < len(r.Days); day++ {
			for _, bar := range r.shifts(day, crew.RaiseOthers) {
				if arches.MatchString(bar.Who) != want {
					t.Errorf("%s: a crew of the raising is %q", name, bar.Who)
				}
			}
		}
	}
}
