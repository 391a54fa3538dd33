package draw

import (
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// unfoldedPage draws a plan's strings in one picture.
func unfoldedPage(t *testing.T, plan *layout.Plan) *paper.Page {
	t.Helper()
	page := &paper.Page{}
	u := Unfold(plan)
	high := paper.Rect{X: 20, Y: 40, W: 188, H: u.Best()}
	if missing := u.Draw(page, high); len(missing) > 0 {
		t.Errorf("found no place: %v", missing)
	}
	return page
}

// bars returns where prongs are drawn: the middles of black quadrilaterals as long as a bar.
func bars(page *paper.Page) (list []paper.Point) {
	for _, op := range page.Ops {
		f, ok := op.(paper.Fill)
		if !ok || f.Colour != paper.Black || len(f.Path) != 5 {
			continue
		}
		a, c := f.Path[0].To, f.Path[2].To
		if d := float64(c.Sub(a).Long()); math.Abs(d-math.Hypot(float64(barLong), float64(barWide))) < 0.01 {
			list = append(list, a.Add(c).Times(0.5))
		}
	}
	return list
}

// cups counts sockets: half circles.
func cups(page *paper.Page) (n int) {
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && s.Pen.Width == paper.Thick.Width && len(s.Path) > 1 && s.Path[1].Verb == paper.Cubic && s.Path[len(s.Path)-1].Verb == paper.Cubic {
			n++
		}
	}
	return n
}

// at returns where a text stands.
func at(t *testing.T, page *paper.Page, words string) paper.Text {
	t.Helper()
	for _, op := range page.Ops {
		if x, ok := op.(paper.Text); ok && x.String == words {
			return x
		}
	}
	t.Fatalf("no %q", words)
	return paper.Text{}
}

// feet returns where the feet come: a little beside their names.
func feet(t *testing.T, page *paper.Page) (left, right paper.Length) {
	t.Helper()
	l, r := at(t, page, "L1"), at(t, page, "R1")
	return l.At.X + l.Lettering.Width("L1") + 2.5, r.At.X - 2.5
}

// Every string has one bar and one cup, on its own or in another's, and every cord that feeds one a cup about its prongs; a spec that says crown has its legs' prongs at the crowns, one that says foot at the feet.
func TestUnfoldedEnds(t *testing.T) {
	for _, name := range []string{"garden", "schoolyard", "millwalk", "parkwalk"} {
		plan := example(t, name)
		page := unfoldedPage(t, plan)
		fed := len(plan.Chains)
		if b, c := len(bars(page)), cups(page); b != len(plan.Strings) || c != len(plan.Strings)+fed {
			t.Errorf("%s: %d bars and %d cups for %d strings, %d of them fed", name, b, c, len(plan.Strings), fed)
		}
		feeds := map[string]int{} // by the last thing before a run's prongs: a cord, or the three-way at its end
		for _, ch := range plan.Chains {
			into := ch.Cords[len(ch.Cords)-1]
			for _, f := range plan.Power.Feeders {
				if f.Name == ch.Feeder && f.Joints[ch.Joint].Tap > 0 {
					into = plan.Power.Taps[f.Joints[ch.Joint].Tap-1].Name
				}
			}
			feeds[into]++
		}
		names := []string{}
		for _, c := range plan.Cords {
			names = append(names, c.Name)
		}
		for _, tap := range plan.Power.Taps {
			names = append(names, tap.Name)
		}
		for _, into := range names {
			drawn := 0
			for _, op := range page.Ops {
				if x, ok := op.(paper.Text); ok && x.String == into {
					drawn++
				}
			}
			if drawn != feeds[into] {
				t.Errorf("%s: %s feeds %d runs and is drawn at %d", name, into, feeds[into], drawn)
			}
		}
	}
	const source = `hoopwright: 1
title: Four
units: imperial
tunnel: {arches: 4, spacing: 4 ft, opening: {width: 4 ft, height: 6 ft}}
arch: {pipe: pvc sch40 3/4 in, sticks: [10 ft, 10 ft], span: 7 ft 4 in}
lights: {wraps: [{where: legs, string: mini led 100 blue, plug: PLUG}]}
`
	for plug, share := range map[string]float64{"foot": 1, "crown": 0} {
		page := unfoldedPage(t, solved(t, []byte(strings.ReplaceAll(source, "PLUG", plug))))
		left, right := feet(t, page)
		middle, half := (left+right)/2, (right-left)/2
		list := bars(page)
		if len(list) != 8 {
			t.Errorf("%s: %d bars", plug, len(list))
		}
		for _, b := range list {
			if got := math.Abs(float64((b.X - middle) / half)); math.Abs(got-share) > 0.12 {
				t.Errorf("prongs at the %s are drawn at %.2f of the way from crown to foot", plug, got)
			}
		}
	}
}

// Blue bulbs hang in the rows of blue strings and warm ones in theirs: each row's line lies where its tape, as a share of the leg, says.
func TestUnfoldedColoursKeepTheirRows(t *testing.T) {
	plan := example(t, "millwalk")
	page := unfoldedPage(t, plan)
	x0, x1 := feet(t, page)
	half := (x1 - x0) / 2
	rows := map[string][]paper.Length{}
	for _, r := range plan.Lights.Rows {
		k := plan.Arches[0]
		if x := paper.Length(r.Tape/k.CrownTape) * half; r.Wall == spec.Left {
			rows[r.Kind] = append(rows[r.Kind], x0+x)
		} else {
			rows[r.Kind] = append(rows[r.Kind], x1-x)
		}
	}
	top, bottom := at(t, page, "L8").At.Y, at(t, page, "L1").At.Y
	found := map[string]int{}
	for _, kind := range []string{"mini led 100 blue", "mini led 100 warm"} {
		ink := glow(kind)[0]
		for _, op := range page.Ops {
			f, ok := op.(paper.Fill)
			if !ok || f.Colour != ink || f.Path[0].To.Y < top || f.Path[0].To.Y > bottom-3 {
				continue
			}
			x := f.Path[0].To.X - beadRadius
			if math.Abs(float64(x-(x0+half))) < 1 { // the ridge's
				continue
			}
			if !slices.ContainsFunc(rows[kind], func(r paper.Length) bool { return math.Abs(float64(r-x)) < 0.5 }) && !nearWayOut(plan, f.Path[0].To.Y, top, bottom) {
				t.Errorf("a bulb of %s at %.1f, its rows are at %.1f", kind, x, rows[kind])
			}
			found[kind]++
		}
		if found[kind] < 40 {
			t.Errorf("%d bulbs of %s", found[kind], kind)
		}
	}
}

// nearWayOut reports whether a height on paper is in the bay that the rows leave open, where strings climb.
func nearWayOut(plan *layout.Plan, y, top, bottom paper.Length) bool {
	pitch := (bottom - top) / paper.Length(len(plan.Arches)-1)
	pos := 1 + float64((bottom-y)/pitch)
	for _, g := range plan.Spec.Lights.Rows.Gaps {
		for _, bay := range g.Bays {
			if pos > float64(bay)-0.3 && pos < float64(bay)+1.3 {
				return true
			}
		}
	}
	return false
}

// Parts of a long tunnel have every arch's strings once, in order, whatever height they are cut for.
func TestUnfoldedParts(t *testing.T) {
	plan := example(t, "parkwalk")
	for high := paper.Length(80); high < 400; high += 17 {
		next, rest := 1, Unfold(plan)
		for {
			first, more, ok := rest.Cut(high)
			if !ok || rest.Least() <= high {
				break
			}
			if first.First != next || first.Least() > high+0.01 || more.First != first.Last+1 {
				t.Fatalf("height %v: arches %d to %d, %v high, then from %d", high, first.First, first.Last, first.Least(), more.First)
			}
			next, rest = more.First, more
		}
		if rest.Last != 60 {
			t.Errorf("height %v: ends with arch %d", high, rest.Last)
		}
	}
}
