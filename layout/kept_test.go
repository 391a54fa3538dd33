package layout_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
)

// counted counts the wraps and strings of the tasks of an action.
func counted(p *layout.Plan, action crew.Action) (wraps, strings int) {
	for _, t := range p.Crew.Tasks {
		if t.Action == action {
			wraps, strings = wraps+len(t.Of.Wraps), strings+len(t.Of.Strings)
		}
	}
	return wraps, strings
}

// TestKeptWrapped follows the legs of a tunnel of four arches, eight strings on legs and three on the ridge, through two seasons: wrapped and kept, then tried and not wound, and stripped. What
// is saved is added up by hand: of eight strings 15 minutes' winding, one to try, one to tag, five to unwind, of eight legs a minute to name and one to mark; less 3 minutes to flex each leg and a quarter
// of an hour's burning.
func TestKeptWrapped(t *testing.T) {
	for _, c := range []struct {
		name                        string
		s                           sections
		wound, tried, again, undone int
	}{
		{"stripped", base, 11, 11, 0, 11},
		{"kept", base.with("store", "wrapped"), 11, 11, 0, 3},
		{"came", base.with("store", "wrapped", "found", "{wrapped: true}", "stock", shedOf(8, 8)), 3, 3, 8, 11},
		{"half of them", base.with("found", "{wrapped: true}", "stock", shedOf(4, 8)), 7, 7, 4, 11},
		{"not owned", base.with("store", "wrapped", "found", "{wrapped: true}"), 11, 11, 0, 11},
	} {
		p := solved(t, c.s.text())
		pipes, _ := counted(p, crew.WindPipe)
		_, tried := counted(p, crew.TestStrings)
		_, again := counted(p, crew.TryWrapped)
		undone, _ := counted(p, crew.Unwind)
		if pipes != c.wound || tried != c.tried || again != c.again || undone != c.undone {
			t.Errorf("%s: wound %d, tried %d, tried on their legs %d, unwound %d; want %d, %d, %d, %d", c.name, pipes, tried, again, undone, c.wound, c.tried, c.again, c.undone)
		}
		if want := 8*(15+1+1+5+1+1) - 8*3 - 15.0; math.Abs(p.Crew.Kept-want) > 1e-6 {
			t.Errorf("%s: %v minutes saved, want %v", c.name, p.Crew.Kept, want)
		}
	}
	if came := base.with("found", "{wrapped: true}"); !has(solved(t, came.text()), "wrapped-not-owned") {
		t.Error("legs that nobody owns come out of the shed")
	}
	if has(solved(t, base.with("found", "{wrapped: true}", "stock", shedOf(8, 9)).text()), "wrapped-not-owned") {
		t.Error("legs that are owned are missed")
	}
	for store, want := range map[string]bool{"wrapped": true, "stripped": false} {
		if p := solved(t, base.with("store", store, "found", "{wrapped: true}", "stock", shedOf(8, 9)).text()); has(p, "nothing-kept-wrapped") != want {
			t.Errorf("store: %s, legs that came wrapped: told that they are stripped %v, want %v", store, !want, want)
		}
	}
}

// shedOf is a shed of so many leg sticks and strings.
func shedOf(sticks, strings int) string {
	return fmt.Sprintf("{sell: [{item: pvc sch40 1/2 in, length: 10 ft, price: 4.35}, {item: mini led 100 warm, price: 9.80}], own: [{item: mini led 100 warm, count: %d}, {item: pvc sch40 1/2 in, length: 10 ft, count: %d}]}", strings, sticks)
}

// TestWrappedLegsAreNotMade: legs that came wrapped are neither named nor joined nor cut; those that the shed lacks are, and they alone. By hand for six sticks and eight strings of eight legs:
// two legs of 10 ft to make, the last ones; six are whole.
func TestWrappedLegsAreNotMade(t *testing.T) {
	for _, c := range []struct {
		shed       string
		made, came int
		arches     []int
	}{{shedOf(8, 8), 0, 8, nil}, {shedOf(6, 8), 2, 6, []int{4}}, {shedOf(8, 5), 3, 5, []int{3, 4}}, {shedOf(0, 8), 8, 0, []int{1, 2, 3, 4}}} {
		p := solved(t, base.with("found", "{wrapped: true}", "stock", c.shed).text())
		named, came := 0, 0
		var arches []int
		for _, task := range p.Crew.Tasks {
			if task.Action == crew.NameSticks {
				named, arches = task.Want[0].Count, task.Of.Arches
			}
		}
		for _, bar := range p.Cuts.Bars {
			if bar.Wrapped {
				came++
				if !bar.Whole() || !bar.Owned {
					t.Errorf("%s: %+v is not whole", c.shed, bar)
				}
			}
		}
		if named != c.made || came != c.came || !slices.Equal(arches, c.arches) || has(p, "wrapped-not-owned") != (c.made > 0) {
			t.Errorf("%s: %d sticks named at arches %v, %d came; want %d at %v, %d", c.shed, named, arches, came, c.made, c.arches, c.came)
		}
	}
}

// TestWrappedLegsSaveADay: a day too short for the wrapping is long enough where the legs are wrapped already, and the plan says so. The cure is tried.
func TestWrappedLegsSaveADay(t *testing.T) {
	for _, until := range []string{"15:00", "14:45", "14:30", "14:15", "14:00", "13:45", "13:30"} {
		s := base.with("tunnel", "{arches: 6, spacing: 4 ft 6 in}", "stock", shedOf(12, 12), "crew", "{helpers: 5, days: [{date: 2026-11-21, from: 9:00, until: "+until+"}]}")
		p := solved(t, s.text())
		for _, f := range p.Findings {
			if f.Code == "days-too-short" && strings.Contains(f.Text, "legs kept wrapped since last year") {
				curesHold(t, s.text(), p)
				return
			}
		}
	}
	t.Error("on no day would wrapped legs do")
}

// TestWayInDiffers solves both tunnels apart: the figures that are told are those of the two plans.
func TestWayInDiffers(t *testing.T) {
	const arches = "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in, stake: {bar: 3/8 in, length: 48 in, depth: 20 in}"
	for _, other := range []string{"sticks: [9 ft, 9 ft]", "span: 8 ft", "stake: {depth: 24 in}"} {
		p, plain := solved(t, base.with("arch", arches+", except: [{arches: [1], "+other+"}]}").text()), solved(t, base.with("arch", arches+"}").text())
		text := ""
		for _, f := range p.Findings {
			if f.Code == "way-in-differs" {
				text = f.Text
			}
		}
		if strings.HasPrefix(other, "stake") {
			if text != "" {
				t.Errorf("deeper stakes: %s", text)
			}
			continue
		}
		u := measure.Imperial
		climbs := func(p *layout.Plan) string {
			return u.Inches(measure.Length(math.Abs(float64(p.Arches[0].Crown - p.Arches[1].Crown))))
		}
		for _, want := range []string{
			"the ridge piece of bay 1 is " + u.Cut(p.Ridge[0].Cut) + ", not " + u.Cut(plain.Ridge[0].Cut), "it climbs " + climbs(p) + ", not " + climbs(plain),
			"it lies flat before " + u.Speed(p.Weather.DownGust().Called()) + ", not " + u.Speed(plain.Weather.DownGust().Called())} {
			if !strings.Contains(text, want) && !(strings.Contains(want, "flat") && p.Weather.DownGust().Called() == plain.Weather.DownGust().Called()) {
				t.Errorf("%s: %q is not told: %s", other, want, text)
			}
		}
	}
}
