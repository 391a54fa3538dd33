package lights

import (
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// A worked example printed in textbooks of engineering mechanics: 0.5 kg/m over 30 m that sags 0.5 m pulls level with 1103.625 N, taken with
// 9.81 m/s².
func TestPullOfTheTextbookCable(t *testing.T) {
	got := pullOf(catalog.String{Mass: .5}, 30*measure.Metre, 500)
	near(t, "pull, N", float64(got)*9.81/9.80665, 1103.625, 1e-9)
}

// Rows pull at both ends of a wall and at both sides of a way out, by w·L²/8d each, and nowhere else.
func TestPullsAtTheEndsOfRows(t *testing.T) {
	rows := sixRows()
	rows.Gaps = []spec.Gap{{Wall: spec.Left, Bays: []int{3}}}
	l := Lay(plain(7, spec.Lights{Rows: rows}))
	one := 0.0223 * 9.80665 * 1.3716 * 1.3716 / (8 * .0254)
	want := map[int]int{1: 12, 3: 6, 4: 6, 7: 12}
	if len(l.Pulls) != len(want) {
		t.Fatalf("%+v", l.Pulls)
	}
	for _, e := range l.Pulls {
		if e.Rows != want[e.Arch] {
			t.Errorf("%d rows end at arch %d, want %d", e.Rows, e.Arch, want[e.Arch])
		}
		near(t, "pull, N", float64(e.Force), one*float64(e.Rows), 1e-9)
	}
	// A row without sag is taken to sag by what no hand can hold closer: a number, and not a small one.
	rows.Sag = 0
	l = Lay(plain(7, spec.Lights{Rows: rows}))
	near(t, "pull of taut rows, N", float64(l.Pulls[0].Force), one*12*4, 1e-9)
}
