package ground

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// What a finding offers for a bend that is too tight is laid out in turn: it is free of that finding.
func TestOfferedRadiusDoes(t *testing.T) {
	s := row(8)
	s.Guys.Arches = nil
	s.Site.Route = []spec.Leg{{Straight: 10 * ft}, {Turn: -math.Pi, Radius: 3 * ft}, {Rest: true}}
	if text := want(t, lay(s), "arches-overlap", finding.MustFix); !strings.Contains(text, "{left: 180 deg, radius: 7 ft}") {
		t.Error(text)
	}
	s.Site.Route[1].Radius = 7 * ft
	l := lay(s)
	wantNone(t, l, "arches-overlap")
	wantNone(t, l, "bay-too-narrow-inside")
}

// A loop that turns by 300° meets its own beginning. The turn that is offered does not, and 15° more would.
func TestOfferedTurnDoes(t *testing.T) {
	s := row(40)
	s.Guys.Arches = nil
	turned := func(degrees int) Layout {
		s.Site.Route = []spec.Leg{{Straight: 60 * ft}, {Turn: measure.Angle(degrees) * measure.Degree, Radius: 16 * ft}, {Rest: true}}
		return lay(s)
	}
	text := want(t, turned(300), "route-crosses-itself", finding.MustFix)
	bothFree := func(degrees int) bool {
		found := codes(turned(degrees).Findings)
		_, crosses := found["route-crosses-itself"]
		_, overlap := found["arches-overlap"]
		return !crosses && !overlap
	}
	offered := 285
	for offered > 0 && !bothFree(offered) {
		offered -= 15
	}
	if offered < 90 || !strings.Contains(text, fmt.Sprintf("{right: %d deg, radius: 16 ft}", offered)) {
		t.Errorf("%d° would do: %s", offered, text)
	}
}

func TestMarksThatCoincide(t *testing.T) {
	s := row(3)
	s.Site.Marks = []spec.Mark{mark("gate", 10*ft, 0), mark("post", 10*ft+in/2, 0), mark("oak", 60*ft, 40*ft)}
	if text := want(t, lay(s), "marks-coincide", finding.LookAt); !strings.HasPrefix(text, "Marks gate and post") || !strings.Contains(text, "at: [20 ft, 0 ft]") {
		t.Error(text)
	}
	s.Site.Marks[1] = mark("post", 10*ft+2*in, 0)
	wantNone(t, lay(s), "marks-coincide")
}

// L1 of the row stands at (195, 72) in. Two marks on the line of the left stakes find none of them; a mark where the finding would have one does.
func TestMarksInLineWithStakes(t *testing.T) {
	s := row(3)
	s.Guys.Arches = nil
	s.Site.Marks = []spec.Mark{mark("gate", 195*in, 0), mark("post", 195*in, -20*ft)}
	text := want(t, lay(s), "tie-weak", finding.LookAt)
	if !strings.Contains(text, "almost in one line where") || !strings.Contains(text, "off to the left or the right of arch 3") {
		t.Error(text)
	}
	// 25 ft square to the row from L3, which stands at (16 1/4, 16 1/2) ft
	if !strings.Contains(text, "[-9 ft, ") || !strings.Contains(text, "[41 ft, ") {
		t.Error(text)
	}
	s.Site.Marks = append(s.Site.Marks, mark("stump", -9*ft, 17*ft))
	for _, tie := range lay(s).Ties {
		if stake := stakeOf(t, lay(s), tie.Stake.String()); stake.Side == spec.Left && tie.Error > 2*in {
			t.Errorf("%s is still off %v", tie.Stake, tie.Error)
		}
	}
}

func TestStakeOnMark(t *testing.T) {
	s := row(3)
	s.Site.Marks = []spec.Mark{mark("gate", 195*in, 72*in), mark("post", 0, 0)}
	if text := want(t, lay(s), "stake-on-mark", finding.LookAt); !strings.Contains(text, "L1 on gate") {
		t.Error(text)
	}
}
