package packet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/place"
)

// A table's part that goes on overleaf has its head again there.
func TestHeadsAreRepeatedOverleaf(t *testing.T) {
	plan := examplePlan(t, "garden")
	f := (&binder{skies: skies{plan}, spec: plan.Spec, size: mustSheet(t, "letter")}).newFlow("", "")
	var rows []place.Row
	for i := range 150 { // three pages and more
		switch i {
		case 10:
			rows = append(rows, place.Row{Heading: "Part"})
		case 140:
			rows = append(rows, place.Row{Heading: "Next"})
		}
		rows = append(rows, place.Row{Cells: []string{fmt.Sprint("row ", i)}})
	}
	f.table(place.Table{Columns: []place.Column{{Head: "Head"}}}, rows)
	for i, l := range f.leaves {
		again, want := slices.DeleteFunc(wordsOf(l.page), func(s string) bool { return !strings.HasSuffix(s, ", going on") }), []string{"Part, going on"}
		switch i {
		case 0:
			want = nil
		case len(f.leaves) - 1:
			want = []string{"Next, going on"} // it begins on the page before
		}
		if !slices.Equal(again, want) || len(f.leaves) < 3 {
			t.Errorf("page %d of %d goes on with %q, want %q", i+1, len(f.leaves), again, want)
		}
	}
}
