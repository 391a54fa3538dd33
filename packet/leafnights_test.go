package packet

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/weather"
)

// The leaf of the nights stands on any tunnel, on two sides up to 38 nights, and says what it is for.
func TestNightsLeaf(t *testing.T) {
	t.Parallel()
	for name, plan := range seasonPlans(t) {
		sides := leafSides(t, plan, "nights")
		stands(t, name, plan, sides, paper.Floor.Size)
		if len(sides) != 2 && len(finding.MustFixes(plan.Findings)) == 0 { // the band over a plan that must not be built takes room
			t.Errorf("%s: %d sides", name, len(sides))
		}
		b, _ := newBinder(plan, Options{Date: issued})
		all := strings.Join(textsOf(sides), " ")
		u, w := plan.Spec.Units, plan.Weather
		want := []string{"CLOSED", "Open when", "The noon call, daily while it stands", "Lost child", "Fire: everyone out", "30 quiet minutes", "Five minutes: ring " + emergency(plan.Spec, "the number in front")}
		if len(plan.Strings) > 0 { // check 4 darkens more than the run that is dark
			want = append(want, "A run dark: flashlights on, all out.")
		}
		if gust, calm := b.closeAt(); !calm {
			want = append(want, "OPEN", u.Speed(gust.Called()), u.Speed(gust.Local))
		}
		if flat, ok := b.flatAt(); ok {
			want = append(want, "LAY FLAT stopped, late, or up at dusk", "signed, after LAY FLAT signed again", u.Speed(flat.Called()))
			if flat != w.DownGust() {
				t.Errorf("%s: laid flat at %v, the plan says %v", name, flat, w.DownGust())
			}
		}
		for _, words := range want {
			if !strings.Contains(all, strings.ReplaceAll(words, "\u00a0", " ")) {
				t.Errorf("%s: the leaf lacks %q", name, words)
			}
		}
		if strings.Contains(all, "check 0") {
			t.Errorf("%s: sends to a check that is not on the front", name)
		}
		if lit := len(plan.Strings) > 0; strings.Contains(all, "the drill on leaf") != (lit && len(plan.Power.Feeders) > 0) {
			t.Errorf("%s: with %d strings a pointer to the trip drill: %v", name, len(plan.Strings), !lit)
		}
	}
}

// However low a crown may hang by the mark on the watch's stick, the opening stays clear of pipe, wraps and drops: from the curve and the drops as they hang. By hand the garden, 88.4 in clear over
// its 4 ft and passed up to 1 in lower, has 7 in to spare over 80 in and 3 1/4 over 84; over 87 in less is left than a cold night takes, and the opening itself is tried.
func TestMarksKeepTheOpening(t *testing.T) {
	mark := regexp.MustCompile(`lower marks (.+?) under`)
	read := func(name string, plan *layout.Plan) string {
		all := strings.Join(textsOf(leafSides(t, plan, "nights")), " ")
		said := mark.FindStringSubmatch(all)
		tried, brought := strings.Contains(all, "Opening sticks as a T"), strings.Contains(all, ", opening sticks,")
		if tried != brought || tried == (said != nil) || tried == strings.Contains(all, "rown stick") {
			t.Errorf("%s: mark %q, opening tried %v, brought %v: %s", name, said, tried, brought, all)
		}
		if said == nil {
			return ""
		}
		o, under := plan.Spec.Tunnel, measure.Length(printedLength(t, plan.Spec.Units, said[1]))
		for _, a := range plan.Arches {
			for _, q := range a.Curve {
				if low := q.Y - a.Spec.Pipe.OD/2 - lights.Standoff(plan.Spec, a.Number) - under; measure.Abs(q.X) < o.OpeningWidth/2 && low < o.OpeningHeight {
					t.Errorf("%s: arch %d %v lower hangs at %v over %v", name, a.Number, under, low, o.OpeningHeight)
				}
			}
		}
		for _, d := range plan.Lights.Drops {
			if d.On.Kind == lights.Ridge && d.Lowest-under < o.OpeningHeight {
				t.Errorf("%s: drop %s %v lower hangs at %v over %v", name, d.String, under, d.Lowest-under, o.OpeningHeight)
			}
		}
		return said[1]
	}
	for height, want := range map[string]string{"6 ft 8 in": "4 in", "7 ft": "3 1/4 in", "7 ft 3 in": ""} {
		if got := read(height, changedExample(t, "garden", "opening: {width: 4 ft, height: 6 ft 8 in}", "opening: {width: 4 ft, height: "+height+"}")); got != want {
			t.Errorf("opening %s high: marks %q under, want %q", height, got, want)
		}
	}
	read("millwalk", examplePlan(t, "millwalk"))
	for seed := range uint64(12) {
		if plan := planOf(t, []byte(thrown(seed))); len(plan.Kinds) > 0 {
			read(fmt.Sprint("thrown ", seed), plan)
		}
	}
}

// A side way has its own watcher with a flashlight, and a barrier; of the five the garden holds one is the watcher who walks.
func TestSideWaysAreWatched(t *testing.T) {
	for ways, want := range map[string][]string{
		"spacing: 4 ft 6 in": {"Watch of 3 or CLOSED: one counts at each way", "3 flashlights", "2 barriers", "4 visitors, 1 watcher"},
		"spacing: 4 ft 6 in\n  ways: [{bay: 2, wall: left}, {bay: 4, wall: right}]": {"Watch of 5 or CLOSED: one counts at each way", "5 flashlights", "4 barriers", "Out: left, after arch 2.", "Out: right, after arch 4."},
	} {
		text := strings.Join(textsOf(leafSides(t, changedExample(t, "garden", "spacing: 4 ft 6 in", ways), "nights")), " ")
		for _, words := range want {
			if !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), words) {
				t.Errorf("%q is not on the leaf of %q", words, ways)
			}
		}
	}
}

// A line a night: the built-in example is open from 28 November to 2 January, 36 nights by the calendar. More nights than two sides hold go on overleaf, each
// once, in their order.
func TestALineANight(t *testing.T) {
	nights := func(sides []set) (days []time.Time) {
		for _, side := range sides {
			var names []paper.Text
			for _, op := range side.page.Ops {
				if x, ok := op.(paper.Text); ok {
					names = append(names, x)
				}
			}
			slices.SortStableFunc(names, func(a, b paper.Text) int { return cmp.Or(cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y)) })
			for _, w := range names {
				w.String = strings.TrimSuffix(w.String, ", on") // the calls go on after the last
				if day, err := time.Parse("Mon 2 Jan", w.String); err == nil {
					days = append(days, day)
				} else if day, err = time.Parse("2 Jan", w.String); err == nil {
					days = append(days, day)
				} else if day, err = time.Parse("Mon 2", w.String); err == nil && len(days) > 0 { // the month is told where it begins
					days = append(days, time.Date(0, days[len(days)-1].Month(), day.Day(), 0, 0, 0, 0, time.UTC))
				}
			}
		}
		return days
	}
	sides := leafSides(t, examplePlan(t, "garden"), "nights")
	texts := textsOf(sides)
	if n := len(nights(sides)); n != 36 || !slices.Contains(texts, "from 20 Nov") || !slices.Contains(texts, "Sat 27 Nov") || !slices.Contains(texts, "Fri 31") || !slices.Contains(texts, "Sat 1 Jan") || !slices.Contains(texts, "off till down") {
		t.Errorf("%d nights, want 36 from Sat 27 Nov to Sat 1 Jan, and calls on, off, till down", n)
	}
	if all := strings.Join(texts, " "); !strings.Contains(all, "14 Quince Lane") || !strings.Contains(all, "mph or more, thunder") {
		t.Error("the address or the closing figure is missing")
	}
	long := changedExample(t, "garden", "open: 2027-11-27, close: 2028-01-01, down: 2028-01-08", "open: 2027-11-27, close: 2028-03-05, down: 2028-03-07")
	days := nights(leafSides(t, long, "nights"))
	if len(days) != 100 { // 4 in November, 31, 31, 29, 5 in March
		t.Errorf("%d nights, want 100", len(days))
	}
	day := time.Date(2027, 11, 27, 0, 0, 0, 0, time.UTC)
	for _, d := range days {
		if d.Format("2 Jan") != day.Format("2 Jan") {
			t.Fatalf("%s stands where %s should", d.Format("2 Jan"), day.Format("2 Jan"))
		}
		day = day.AddDate(0, 0, 1)
	}
}

// What is seen on land against the Beaufort scale as the National Weather Service publishes it: force 3, mean winds of 8 to 12 mph, extends a light flag; force 4, 13 to 18 mph, moves small branches;
// force 6, 25 to 31 mph, large ones. With gusts at 1.66 times the mean (Harper et al., WMO 2010, inland) a gust of 24 mph is force 4, of 44 mph force 6.
func TestSignsOfGusts(t *testing.T) {
	for mph, want := range map[float64]string{20: "ribbons stand straight out", 24: "small branches keep moving", 44: "large branches move", 60: "whole trees move"} {
		if got := signOf(weather.Gust{Forecast: measure.Speed(mph) * measure.MPH}); got != want {
			t.Errorf("at %v mph %q, want %q", mph, got, want)
		}
	}
}

// What is pulled where one run stays dark is reached from the ground: a run that the check names comes out at the outlet by a cord that leads from there right up; every other has a plug of its own, or
// of a cord that feeds it, at a foot, below where a hand at hip height ends. Of the examples and of specs thrown.
func TestDarkRunIsPulledFromTheGround(t *testing.T) {
	plans := map[string]*layout.Plan{"schoolyard": changedExample(t, "schoolyard", "spacing: 1.4 m", "spacing: 1.2 m"), "millwalk": examplePlan(t, "millwalk")}
	for seed := range uint64(12) {
		plans[fmt.Sprint("thrown ", seed)] = planOf(t, []byte(thrown(seed)))
	}
	named, fed := regexp.MustCompile(`([A-Z, ]+): (C\d+)`), 0
	for name, p := range plans {
		text := newTaskWords(p).cure(crew.Cure{Do: crew.DeadWaits})
		outletOf := map[string]string{}
		if _, there, ok := strings.Cut(text, "foot ("); ok {
			for _, m := range named.FindAllStringSubmatch(there, -1) {
				for _, run := range strings.Split(strings.TrimPrefix(m[1], ", "), ", ") {
					outletOf[run] = m[2]
				}
			}
		}
		inReach := func(e lights.End) bool {
			for _, s := range p.Stakes {
				if !s.Guy && s.Arch == e.Arch && s.Side == e.Side && e.Z-s.Ground <= 42*measure.Inch && e.At.Spot != lights.AtCrown {
					return true
				}
			}
			return false
		}
		for _, run := range p.Power.Chains {
			if run.Outlet == "" {
				continue
			}
			fed++
			atFoot, atOutlet := inReach(run.From), strings.HasPrefix(run.FedBy, "outlet")
			for _, c := range p.Power.Cords {
				if !slices.Contains(run.Cords, c.Name) {
					continue
				}
				atFoot = atFoot || c.From.At.Spot != lights.AtOutlet && inReach(c.From)
				if outletOf[run.Name] == c.Name {
					atOutlet = c.From.At.Spot == lights.AtOutlet
				}
			}
			switch cord, says := outletOf[run.Name]; {
			case says && (atFoot || !atOutlet):
				t.Errorf("%s: run %s is said to be pulled by %s at its outlet; at a foot %v, at an outlet %v: %s", name, run.Name, cord, atFoot, atOutlet, text)
			case !says && !atFoot:
				t.Errorf("%s: run %s is said to be pulled at a foot and hangs out of reach from the outlet on: %s", name, run.Name, text)
			}
		}
		if name == "schoolyard" && len(outletOf) == 0 {
			t.Errorf("no run is pulled at its outlet: %s", text)
		}
	}
	if fed < 20 {
		t.Errorf("only %d runs", fed)
	}
}

// The line of the last night is no higher than any other, whatever its date, or a side overflows by it.
func TestLastNightIsOneLine(t *testing.T) {
	high := func(night string) paper.Length {
		return logTable([]string{night}, 2, 6, 182).Height(182)
	}
	for day := range 366 {
		at := time.Date(2028, 1, 1+day, 0, 0, 0, 0, time.UTC)
		if night := goesOn(at); high(night) > high("Tue 2") {
			t.Errorf("%q is %.1f high, other nights %.1f", night, high(night), high("Tue 2"))
		}
	}
}
