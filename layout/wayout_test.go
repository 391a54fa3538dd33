package layout_test

import (
	"slices"
	"strings"
	"testing"
)

// An arch that lies flat reaches its length less its span, 13 ft, beyond the far stake at 3 ft 7 in; who holds its end stands 2 ft beyond. A post that an outlet or a mark stands for, 4 ft beside a foot, is in its way there: on the right it is
// raised from the left instead, on both sides nobody can say how, and it is told before stakes are driven.
func TestRoomToRaise(t *testing.T) {
	const rest = "circuit: porch}], marks: [{name: post, at: [30 ft, 40 ft]}, {name: tree, at: "
	for name, c := range map[string]struct {
		outlet, tree string
		left, ask    []int
	}{
		"free":          {"[8 ft, -8 ft]", "[-30 ft, 40 ft]}]", nil, nil},
		"on the right":  {"[7 ft 6 in, 4 ft 6 in]", "[-30 ft, 40 ft]}]", []int{2}, nil},
		"on both sides": {"[7 ft 6 in, 4 ft 6 in]", "[-7 ft 6 in, 4 ft 6 in]}]", nil, []int{2}},
		"a step beyond": {"[17 ft, 4 ft 6 in]", "[-30 ft, 40 ft]}]", []int{2}, nil},
		"beyond that":   {"[19 ft, 4 ft 6 in]", "[-30 ft, 40 ft]}]", nil, nil},
		"on the left":   {"[8 ft, -8 ft]", "[-7 ft 6 in, 4 ft 6 in]}]", nil, nil},
	} {
		p := solved(t, base.with("site", "{soil: soft, outlets: [{name: porch, at: "+c.outlet+", "+rest+c.tree+"}", "power", "{circuits: {porch: {volts: 120 V, breaker: 15 A, gfci: true}}}").text())
		w := p.WaysOut()
		if !slices.Equal(w.Left, c.left) || !slices.Equal(w.Ask, c.ask) {
			t.Errorf("%s: left at %v, ask at %v", name, w.Left, w.Ask)
		}
		if told := strings.Contains(strings.Join(codesOf(p.Findings), " "), "no-room-to-raise"); told != (c.ask != nil) {
			t.Errorf("%s: told %v", name, told)
		}
	}
}
