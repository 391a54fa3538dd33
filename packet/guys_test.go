package packet

import (
	"strings"
	"testing"
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
