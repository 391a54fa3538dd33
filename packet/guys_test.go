package packet

import (
	"math"
	"strings"
	"testing"

	"hoopwright/layout/stock"
)

// Guys are snug until both ends hold, and tight once all stands; nets hang at both ends; a stake that stands tall is tied at the ground; what goes less deep than the stake that is tried
// goes deeper with it.
func TestGuysOnPaper(t *testing.T) {
	const given = "stake: {bar: 3/8 in, length: 24 in, depth: 20 in}}"
	for name, c := range map[string]struct {
		swap             []string
		raise, stakes    []string
		neither, noStake string
	}{
		"as given": {nil, []string{"Guys to G1L, G1R, under the caps, snug, nets on.", "to G6L, G6R, nets on.", "Take guys up off pipe, wire: straight, no leg bows.", "stops, lunch: finish, tie head-high both ways to stakes, builder’s line.", "Leans: slacken there, take up opposite."},
			[]string{"all L, R too. Else ask.", "moves under 3/4 in at the ground past a lath"}, "at the ground", ", G"},
		"far end": {[]string{"guys: {arches: [1, last]", "guys: {arches: [last]"}, []string{"to stakes, builder’s line; arch 1 alone: take it off.", "Leans to its guys: slacken; away: take up."}, nil, "opposite", ", G"},
		"tall": {[]string{given, "stake: {bar: 3/8 in, length: 36 in, depth: 12 in}}"}, []string{"Guys to G1L, G1R, at the ground, snug, nets on."},
			[]string{"all L, R too, G till 4 in show. Else ask."}, "under the caps", "G: ask"},
		"short": {[]string{given, "stake: {bar: 3/8 in, length: 18 in, depth: 14 in}}"}, []string{"under the caps, snug"}, []string{"all L, R too, G: ask. Else ask."}, "at the ground", "till"},
		"open":  {[]string{", " + given, "}"}, []string{"under the caps, snug"}, []string{"all L, R too. Else ask.", "L and R 20 in (28 in), G 20 in (4 in)"}, "at the ground", ", G:"},
	} {
		plan := changedExample(t, "garden", c.swap...)
		for leaf, want := range map[string][]string{"raise": c.raise, "stakes": c.stakes} {
			text := strings.NewReplacer(" .", ".", " ,", ",").Replace(strings.Join(strings.Fields(strings.Join(textsOf(leafSides(t, plan, leaf)), " ")), " "))
			for _, words := range want {
				if !strings.Contains(text, words) {
					t.Errorf("%s, %s: no %q in %s", name, leaf, words, text)
				}
			}
			if not := map[string]string{"raise": c.neither, "stakes": "too" + c.noStake}[leaf]; strings.Contains(text, not) {
				t.Errorf("%s, %s: %q", name, leaf, not)
			}
		}
	}
}

// TestBraceLinesOnPaper: brace lines are bought and cut by the piece, tied over a clamp that is counted in again with them; where the tried stake holds only deeper it
// speaks for none that stand less deep, and theirs have no deeper to go.
func TestBraceLinesOnPaper(t *testing.T) {
	const guys = "guys: {arches: [1, last], from: 7 ft, out: 5 ft, stake: {bar: 3/8 in, length: 24 in, depth: 20 in}}"
	for deep, pull := range map[string]string{"20 in": "all L, R too. Else ask.", "24 in": "all L, R too, P: ask. Else ask."} {
		plan := changedExample(t, "garden", guys, "braces: {bays: [1, 3, last], from: 5 ft, kind: line}", "length: 48 in, depth: 20 in", "length: 48 in, depth: "+deep)
		piece := ""
		for _, i := range plan.Shopping {
			if i.Kind == stock.Webbing {
				piece = stock.Sold(i.Ropes[0].Length, plan.Spec.Units)
			}
		}
		for leaf, want := range map[string][]string{"raise": {" in up, clamp below the knot; buckle it to P1Lb and P1Rb"}, "stakes": {pull}, "takedown": {"brace line, buckle, clamp", "screwdriver"},
			"stock": {"for 12 brace lines of " + piece + ", a buckle each", "cut crown line, brace lines as overleaf; ribbon brace lines."}} {
			text := strings.NewReplacer(" .", ".", " ,", ",").Replace(strings.Join(strings.Fields(strings.Join(textsOf(leafSides(t, plan, leaf)), " ")), " "))
			for _, words := range want {
				if !strings.Contains(text, words) {
					t.Errorf("legs %s deep, %s: no %q in %s", deep, leaf, words, text)
				}
			}
		}
	}
}

// TestATautGuyBowsItsLeg is why guys are told straight, not by the give of a finger. Between the top of its stake and the ridge a leg is a beam held at one end and propped at the other; under a
// force P at a from the held end it bows by P·a³·b²·(3a+4b)/(12·L³·E·I) (beam tables, from memory). A guy that a push F moves by d at its middle pulls with F·l/(4d). In the garden a guy that 1 N
// moves an inch bows its leg by more than 2 in, and the bow is some 6 mm a newton.
func TestATautGuyBowsItsLeg(t *testing.T) {
	plan := example(t, "garden.yaml")
	s := plan.Spec
	pipe, held := s.Arch.Pipe, s.Arch.Stake.Showing().Metres()
	stiff := float64(pipe.Modulus) * math.Pi / 64 * (math.Pow(pipe.OD.Metres(), 4) - math.Pow(pipe.ID().Metres(), 4))
	whole := plan.Arches[0].CrownTape.Metres() - held
	a := s.Guys.From.Metres() - held
	b := whole - a
	each := a * a * a * b * b * (3*a + 4*b) / (12 * whole * whole * whole * stiff)
	out, long := s.Guys.Out.Metres(), math.Hypot(s.Guys.Out.Metres(), s.Guys.From.Metres())
	pull := 1 * long / (4 * 0.0254) * out / long
	if each < 0.004 || each > 0.008 || pull*each < 0.05 {
		t.Errorf("%.1f mm a newton, %.0f N, %.0f mm", each*1000, pull, pull*each*1000)
	}
	if text := plainText(t, plan, "raise") + plainText(t, plan, "nights"); strings.Contains(text, "finger") || strings.Count(text, "straight, no leg bows") != 1 || strings.Count(text, "guys straight") != 1 {
		t.Errorf("guys are not told so: %s", text)
	}
}
