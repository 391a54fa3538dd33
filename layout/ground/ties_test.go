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
	if tie.Stake != "L1" || tie.MarkA != "hook 1" || tie.MarkB != "hook 2" || tie.MarkC != "" {
		t.Fatalf("tie is %+v", tie)
	}
	eighth := func(l measure.Length) float64 { return math.Round(l.Inches()*8) / 8 }
	if a, b := eighth(tie.A), eighth(tie.B); a != 16*12+1.875 || b != 20*12+6.25 {
		t.Errorf("ties %v and %v in, want 193 7/8 and 246 1/4", a, b)
	}
}

// Walking the two tapes back from their marks finds the stake again, and no other pair in reach crosses nearer to square.
func TestTiesFindTheStakeAndAreTheBest(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	for range 20 {
		l := lay(bent(random))
		place := map[string]spec.Point{}
		for _, m := range l.Marks {
			place[m.Name] = m.At
		}
		for _, tie := range l.Ties {
			stake := stakeOf(t, l, tie.Stake).At()
			best := math.Inf(1)
			for _, side := range []spec.Side{spec.Left, spec.Right} {
				p, gap := intersect(circle{place[tie.MarkA], tie.A, ""}, circle{place[tie.MarkB], tie.B, ""}, side)
				near(t, "gap", gap, 0, 1e-6)
				best = min(best, float64(distance(p, stake)))
			}
			if best > 1e-4/math.Sin(float64(tie.Crossing)) {
				t.Errorf("%s: the tapes cross %v mm away", tie.Stake, best)
			}
			for _, a := range l.Marks {
				for _, b := range l.Marks {
					if max(distance(stake, a.At), distance(stake, b.At)) <= 100*ft {
						if angle := crossingAt(stake, a.At, b.At); angle > tie.Crossing+1e-6 && max(tie.A, tie.B) <= 100*ft {
							t.Errorf("%s is tied at %v, %s and %s cross at %v", tie.Stake, tie.Crossing, a.Name, b.Name, angle)
						}
					}
				}
			}
			near(t, "tape C", tie.C, distance(stake, place[tie.MarkC]), 1e-6)
		}
	}
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
					p, _ := intersect(circle{a, 40*ft + da*in/2, ""}, circle{b, 30*ft + db*in/2, ""}, side)
					least = min(least, distance(p, spec.Point{}))
				}
				worst = max(worst, least)
			}
		}
		near(t, "error", thrown(in/2, crossing, 30*ft), worst, worst*.05)
	}
	if e := thrown(in/2, 0, 10*ft); e != 10*ft {
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
