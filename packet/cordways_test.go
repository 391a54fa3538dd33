package packet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/block"
	"hoopwright/layout/lights"
)

// Every packet draws where each cord lies: its number stands on the map of leaf 1 or in the cords' plan, and the power crew is sent to the one that has it.
func TestEveryCordsWayIsDrawn(t *testing.T) {
	t.Parallel()
	seen := map[string]int{}
	for _, seed := range []uint64{0, 1, 2, 3, 5, 12, 35} {
		plan := planOf(t, []byte(thrown(seed)))
		if len(plan.Power.Cords) == 0 {
			continue
		}
		where := ""
		texts := map[string][]string{}
		for _, word := range []string{"day", "power"} {
			for _, s := range leafSides(t, plan, word) {
				named := func(name string) bool {
					return slices.ContainsFunc(s.blocks, func(b block.Block) bool { return b.Name == name })
				}
				switch {
				case named("plan of the cords"):
					where = word
				case word != "day" || !named("site map"):
					continue
				}
				texts[word] = append(texts[word], textsOf([]set{s})...)
			}
		}
		sent := "Ways: drawn last."
		if where != "power" {
			where, sent = "day", "Ways: leaf 1."
		}
		seen[where]++
		if !strings.Contains(powerText(t, plan), sent) {
			t.Errorf("thrown %d: the ways are on leaf %s, but no %q", seed, where, sent)
		}
		for i := range plan.Power.Cords {
			name := fmt.Sprintf("C%d", i+1)
			if !slices.ContainsFunc(texts[where], func(text string) bool { return slices.Contains(strings.Split(text, ", "), name) }) {
				t.Errorf("thrown %d: %s is not drawn on leaf %s", seed, name, where)
			}
		}
	}
	if seen["day"] == 0 || seen["power"] == 0 {
		t.Errorf("drawn on %v: both are wanted", seen)
	}
}

// A cord that goes up to a crown names the leg that it goes up, the last foot that it passes.
func TestCrownCordsNameTheirLeg(t *testing.T) {
	t.Parallel()
	n := 0
	for _, name := range []string{"garden.yaml", "schoolyard.yaml", "starter.yaml", "millwalk.yaml"} {
		plan := example(t, name)
		text := powerText(t, plan)
		for _, c := range plan.Power.Cords {
			if c.To.At.Spot != lights.AtCrown || c.Sockets > 1 {
				continue
			}
			n++
			foot := c.Path[len(c.Path)-2]
			for _, k := range plan.Stakes {
				if k.X != foot.X || k.Y != foot.Y {
					continue
				}
				if want := fmt.Sprintf("up %s to crown %d", k.StakeID, c.To.At.Arch); !strings.Contains(text, want) {
					t.Errorf("%s: %s is not said to go %s", name, c.Name, want)
				}
			}
		}
	}
	if n < 4 {
		t.Errorf("%d cords go up to a crown: too few to say anything", n)
	}
}
