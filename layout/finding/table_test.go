package finding

import (
	"slices"
	"strings"
	"testing"
)

// leaves are where what an old sheet said stands now, by the list of leaves.
var leaves = []string{"day", "board", "stakes", "stock", "raise", "lights", "power", "nights", "takedown", "tags", "spec"}

func TestTable(t *testing.T) {
	seen := map[string]bool{}
	titles := map[string]string{}
	for _, r := range Rows() {
		if seen[r.Code] || !strings.Contains(r.Code, "-") || r.Code != strings.ToLower(r.Code) || strings.ContainsAny(r.Code, " _.") {
			t.Errorf("code %q", r.Code)
		}
		seen[r.Code] = true
		if len(r.Levels) == 0 || !slices.IsSorted(r.Levels) || r.Levels[0] < MustFix {
			t.Errorf("%s: levels %v", r.Code, r.Levels)
		}
		if !slices.Contains(leaves, r.Leaf) {
			t.Errorf("%s: leaf %q", r.Code, r.Leaf)
		}
		// Plain words for paper: five or so, a capital first, no code and no stop at the end. The losers are those of the list of words.
		if words := strings.Fields(r.Title); len(words) < 2 || len(words) > 7 || strings.Contains(r.Title, ".") || r.Title == r.Code || r.Title[:1] != strings.ToUpper(r.Title[:1]) {
			t.Errorf("%s: title %q", r.Code, r.Title)
		}
		for _, loser := range []string{"bar", "pin", "rod", "tap ", "chain"} {
			if slices.Contains(strings.Fields(strings.ToLower(r.Title)), strings.TrimSpace(loser)) {
				t.Errorf("%s: title %q says %s", r.Code, r.Title, loser)
			}
		}
		if other, ok := titles[r.Title]; ok {
			t.Errorf("%s and %s have one title", other, r.Code)
		}
		titles[r.Title] = r.Code
		if found, ok := Of(r.Code); !ok || found.Title != r.Title {
			t.Errorf("%s is not found by its code", r.Code)
		}
	}
	if _, ok := Of("guys-missing"); ok {
		t.Error("a code without a row was found")
	}
}

// Sort gives a finding the leaf whose crew acts on it, whatever it says itself.
func TestSortFillsSheets(t *testing.T) {
	list := []Finding{{Level: Note, Code: "leans-along", Sheet: "arch"}, {Level: MustFix, Code: "no-arch"}}
	if Sort(list); list[0].Sheet != "raise" || list[0].Code != "no-arch" || list[1].Sheet != "raise" {
		t.Errorf("%+v", list)
	}
	list = []Finding{{Level: Note, Code: "hold-tape-level"}}
	if Sort(list); list[0].Sheet != "stakes" {
		t.Errorf("%+v", list)
	}
}
