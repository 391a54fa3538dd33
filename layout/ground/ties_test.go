package ground

import (
	"math"
	"math/rand/v2"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Two hooks on a wall 20 ft apart; a stake 6 ft along the wall and 15 ft out. By Pythagoras 16′-1 7/8″ and 20′-6 1/4″ to
// the nearest eighth (computed; the lay-out is our own).
func TestTiesFromTwoHooksOnAWall(t *testing.T) {
	s := row(1)
	s.Guys.Arches = nil
	s.Site.Start = spec.Point{X: 6*ft + 45*in, Y: 15 * ft}
	s.Site.Marks = []spec.Mark{mark("hook 1", 0, 0), mark("hook 2", 20*ft, 0)}
	tie := lay(s).Ties[0]
	if tie.Stake.String() != "L1" || tie.MarkA != "hook 1" || tie.MarkB != "hook 2" || tie.MarkC != "" {
		t.Fatalf("tie is %+v", tie)
	}
	eighth := func(l measure.Length) float64 { return math.Round(l.Inches()*8) / 8 }
	if a, b := eighth(tie.A), eighth(tie.B); a != 16*12+1.875 || b != 20*12+6.25 {
		t.Errorf("ties %v and %v in, want 193 7/8 and 246 1/4", a, b)
	}
}

// shaken returns how far at worst a stake goes astray when it is put where two tapes from its marks meet, each tape half an inch off one way or the other: those
// to the stake, and those that a taped mark was found by. Found by crossing circles anew, not by the formula.
func shaken(marks []spec.Mark, place map[string]spec.Point, stake spec.Point, from [2]string) measure.Length {
	nearest := func(a, b circle, to spec.Point) spec.Point {
		p, _ := intersect(a, b, spec.Left)
		if q, _ := intersect(a, b, spec.Right); Distance(q, to) < Distance(p, to) {
			return q
		}
		return p
	}
	taped := map[string][]spec.Tape{}
	for _, m := range marks {
		taped[m.Name] = m.From
	}
	worst := measure.Length(0)
	for signs := range 64 { // two tapes to the stake, two to each mark
		sign := func(bit int) measure.Length { return measure.Length(signs>>bit&1*2-1) * in / 2 }
		var circles [2]circle
		for i, name := range from {
			at := place[name]
			if t := taped[name]; t != nil {
				at = nearest(circle{centre: place[t[0].Mark], radius: t[0].Distance + sign(2+2*i)}, circle{centre: place[t[1].Mark], radius: t[1].Distance + sign(3+2*i)}, at)
			}
			circles[i] = circle{centre: at, radius: Distance(place[name], stake) + sign(i)}
		}
		worst = max(worst, Distance(nearest(circles[0], circles[1], stake), stake))
	}
	return worst
}

// Walking the two tapes back from their marks finds the stake again to 1e-9 m; its error is what shaking the tapes comes to; and no other pair in reach leaves
// it much less far off: a fifth, or so little that the pair serves anyway.
func TestTiesFindTheStakeAndAreGoodEnough(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	for range 20 {
		s := bent(random)
		l := lay(s)
		place := map[string]spec.Point{}
		for _, m := range l.Marks {
			place[m.Name] = m.At
		}
		for _, tie := range l.Ties {
			stake := stakeOf(t, l, tie.Stake.String()).At()
			best := math.Inf(1)
			for _, side := range []spec.Side{spec.Left, spec.Right} {
				p, gap := intersect(circle{centre: place[tie.MarkA], radius: tie.A}, circle{centre: place[tie.MarkB], radius: tie.B}, side)
				near(t, "gap", gap, 0, 1e-6)
				best = min(best, float64(Distance(p, stake)))
			}
			if best > 1e-6 {
				t.Errorf("%s: the tapes cross %v mm away", tie.Stake, best)
			}
			if tie.MarkC != "" {
				near(t, "tape C", tie.C, Distance(stake, place[tie.MarkC]), 1e-6)
			}
			if tie.Error < 6*in { // farther astray it is not a matter of first order
				near(t, tie.Stake.String()+" astray", tie.Error, shaken(s.Site.Marks, place, stake, [2]string{tie.MarkA, tie.MarkB}), tie.Error*.08)
			}
			for i, a := range l.Marks {
				for _, b := range l.Marks[:i] {
					if max(Distance(stake, a.At), Distance(stake, b.At), tie.A, tie.B) > 100*ft {
						continue
					}
					if e := shaken(s.Site.Marks, place, stake, [2]string{a.Name, b.Name}); tie.Error > max(1.3*e, in*1.05) {
						t.Errorf("%s is thrown off %v by %s and %s, from %s and %s it were %v", tie.Stake, tie.Error, tie.MarkA, tie.MarkB, a.Name, b.Name, e)
					}
				}
			}
		}
	}
}

// A long row along a line of lamp posts on either side: two tapes are carried from post to post as seldom as can be. By hand: posts 40 ft apart stay good for about
// their own distance, and 24 bays of 5 ft 3 in are 126 ft.
func TestTapesStayOnTheirMarks(t *testing.T) {
	s := row(25)
	for i := range 5 {
		s.Site.Marks = append(s.Site.Marks, mark(string(rune('a'+i)), 0, measure.Length(i)*40*ft), mark(string(rune('p'+i)), 40*ft, measure.Length(i)*40*ft+20*ft))
	}
	l := lay(s)
	tied := map[StakeID]Tie{}
	for _, tie := range l.Ties {
		tied[tie.Stake] = tie
	}
	changes, before := 0, ""
	for _, stake := range l.walk() {
		tie := tied[stake.StakeID]
		if tie.Error > in+1e-9 {
			t.Errorf("%s is thrown off %v", stake.String(), tie.Error)
		}
		if pair := tie.MarkA + tie.MarkB; pair != before {
			changes, before = changes+1, pair
		}
	}
	if changes > 8 {
		t.Errorf("the tapes change marks %d times", changes)
	}
	t.Log(changes, "changes")
}

// A stake tied to marks that were taped themselves is off by those tapes too: bigger than the crossing alone says, and the finding says why.
func TestTapedMarksAreNotExact(t *testing.T) {
	s := row(3)
	s.Site.Marks = []spec.Mark{mark("shed", 0, 0), mark("post", 2*ft, 0),
		tapes("ash", spec.Left, spec.Tape{Mark: "shed", Distance: 30 * ft}, spec.Tape{Mark: "post", Distance: 29*ft + 10*in}),
		tapes("oak", spec.Right, spec.Tape{Mark: "shed", Distance: 31 * ft}, spec.Tape{Mark: "post", Distance: 30*ft + 5*in})}
	l := lay(s)
	if m := l.Marks[2]; m.Error < 10*in {
		t.Errorf("ash is sure to %v, though the marks it is taped from stand but 2 ft apart", m.Error)
	}
	if m := l.Marks[0]; m.Error != 0 {
		t.Errorf("shed has coordinates, and is yet off by %v", m.Error)
	}
	want(t, l, "mark-weak", finding.LookAt)
}

// The error of a tie is found again by brute force: shift both circles by the tape's error either way and see how far the
// crossing goes. The formula is the first-order one, so it is held to 5 %.
func TestErrorOfATie(t *testing.T) {
	for _, degrees := range []float64{20, 35, 60, 90, 120, 150} {
		angle := degrees * math.Pi / 180
		a := spec.Point{X: 40 * ft}
		b := spec.Point{X: measure.Length(math.Cos(angle)) * 30 * ft, Y: measure.Length(math.Sin(angle)) * 30 * ft}
		crossing := crossingAt(spec.Point{}, a, b)
		near(t, "crossing", float64(crossing), min(angle, math.Pi-angle), 1e-12)
		worst := measure.Length(0)
		for _, da := range []measure.Length{-1, 1} {
			for _, db := range []measure.Length{-1, 1} {
				least := measure.Length(math.Inf(1))
				for _, side := range []spec.Side{spec.Left, spec.Right} {
					p, _ := intersect(circle{centre: a, radius: 40*ft + da*in/2}, circle{centre: b, radius: 30*ft + db*in/2}, side)
					least = min(least, Distance(p, spec.Point{}))
				}
				worst = max(worst, least)
			}
		}
		near(t, "error", thrown(in/2, in/2, crossing, 30*ft), worst, worst*.05)
	}
	if e := thrown(in/2, in/2, 0, 10*ft); e != 10*ft {
		t.Errorf("tapes in one line: error %v, want the tape's length", e)
	}
}

func TestWeakAndFarTiesAreSaid(t *testing.T) {
	s := row(3)
	s.Site.Marks = []spec.Mark{mark("gate", 20*ft, -60*ft), mark("post", 20*ft, -80*ft)}
	found := codes(lay(s).Findings)
	if f, ok := found["tie-weak"]; !ok || f.Level != finding.LookAt {
		t.Errorf("marks in line with the tunnel: %v", found)
	}
	s.Site.Marks = []spec.Mark{mark("gate", -120*ft, 0), mark("post", 20*ft, 140*ft)}
	found = codes(lay(s).Findings)
	if f, ok := found["tie-out-of-reach"]; !ok || f.Level != finding.LookAt {
		t.Errorf("marks 140 ft away: %v", found)
	}
	if _, ok := found["tie-weak"]; ok {
		t.Errorf("they cross well: %v", found)
	}
	s.Site.Marks = []spec.Mark{mark("gate", 20*ft, -60*ft), mark("post", 20*ft, -80*ft), mark("tower", 140*ft, 6*ft)}
	l := lay(s)
	if tie := l.Ties[0]; tie.MarkB != "tower" {
		t.Errorf("rather two marks in line than one far off: %+v", tie)
	}
	s.Site.Marks = s.Site.Marks[:1]
	l = lay(s)
	if _, ok := codes(l.Findings)["ties-missing"]; !ok || len(l.Ties) != 0 {
		t.Errorf("one mark: %v", l.Findings)
	}
}
