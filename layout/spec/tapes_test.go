package spec

import "testing"

// tapedSite is a site without coordinates but those of two marks. Place and figures are invented.
const tapedSite = `hoopwright: 1
title: Taped Yard
tunnel: {arches: 4, spacing: 4 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
site:
  start: {from: {shed: 20 ft, post: 25 ft}, side: left, toward: {from: {shed: 40 ft, post: 45 ft 6 in}, side: left}}
  marks:
    - {name: shed, at: [0 ft, 0 ft]}
    - {name: post, at: [20 ft, 0 ft]}
    - {name: tree, from: {L1: 9 ft, R1: 12 ft, shed: 30 ft}, side: left}
  outlets:
    - {name: porch, from: {shed: 12 ft, tree: 15 ft}, side: right, circuit: house}
    - {name: wall, from start: {left: 12 ft, behind: 6 ft}, circuit: house}
    - {name: garage, from start: {right: 3 ft, ahead: 30 ft}, circuit: house}
  unknown: [overhead lines, gfci]
  places: [{name: bench, from: {shed: 9 ft, post: 18 ft}, side: left, for: first aid}]
power: {circuits: {house: {volts: 120 V, breaker: 15 A}}}
`

func TestTapedSite(t *testing.T) {
	s := mustRead(t, tapedSite)
	equal(t, "start's second mark", s.Site.StartFix.From[1].Mark, "post")
	near(t, "start's second tape", s.Site.StartFix.From[1].Distance, 25*foot)
	equal(t, "start's side", s.Site.StartFix.Side, Left)
	near(t, "aim's second tape", s.Site.Toward.Fix.From[1].Distance, 45*foot+6*inch)
	equal(t, "a mark from a stake", s.Site.Marks[2].From[0].Mark, StakeL1)
	equal(t, "outlet's side", s.Site.Outlets[0].Fix.Side, Right)
	near(t, "left", s.Site.Outlets[1].Fix.Start.Right, -12*foot)
	near(t, "behind", s.Site.Outlets[1].Fix.Start.Ahead, -6*foot)
	near(t, "right", s.Site.Outlets[2].Fix.Start.Right, 3*foot)
	near(t, "ahead", s.Site.Outlets[2].Fix.Start.Ahead, 30*foot)
	near(t, "place's tape", s.Site.Places[0].Fix.From[0].Distance, 9*foot)
	if len(s.Site.Unknown) != 2 || s.Site.Unknown[0] != OverheadLines || s.Site.Unknown[1] != OutletsGFCI {
		t.Errorf("not known: %v", s.Site.Unknown)
	}
	for _, d := range s.Defaults {
		if d.Key == "site.start.at" || d.Key == "site.start.heading" {
			t.Errorf("%s is said to be a default", d.Key)
		}
	}
}
