package packet

import (
	"slices"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The strip has every stake of the left row once with its distance from the zero of its tape, worked out here from the ground; and the right row's distances are the same, else
// it could not serve both.
func TestStripServesBothRows(t *testing.T) {
	all := specs(t)
	for name, text := range stakeYards {
		all[name] = []byte(text)
	}
	seen := 0
	for name, source := range all {
		sp, err := spec.Read(name, source)
		if err != nil {
			t.Fatal(err)
		}
		plan := layout.Solve(sp)
		w := &stakeWords{b: &binder{plan: plan, spec: sp}, ground: plan.Ground, units: sp.Units}
		rows := w.stripRows()
		if !plan.Ground.Straight || len(plan.Arches) == 1 {
			if len(rows) > 0 {
				t.Errorf("%s: a strip where no tape lies along the row", name)
			}
			continue
		}
		seen++
		on := map[string]int{}
		for _, r := range rows {
			on[r.stake]++
		}
		for _, s := range plan.Stakes {
			other := s.StakeID
			other.Side = 1 - other.Side
			pair, ok := plan.Ground.Stake(other)
			if !ok || sp.Units.Tape(pair.Running) != sp.Units.Tape(s.Running) || sp.Units.Tape(plan.Ground.OffLine(pair)) != sp.Units.Tape(plan.Ground.OffLine(s)) {
				t.Errorf("%s: %s and its pair stand differently along their rows", name, s.StakeID)
			}
			times := 1
			for _, part := range plan.Ground.TapeLengths(sp.Units)[1:] {
				if part.First == s.Arch && !s.Guy {
					times = 2 // the end of one tape and the zero of the next
				}
			}
			if n := on[s.Pair()]; n != times {
				t.Errorf("%s: %s is %d times on the strip, want %d", name, s.StakeID, n, times)
			}
		}
	}
	if seen < 5 {
		t.Errorf("%d straight rows were looked at", seen)
	}
}

// However high the panels may be, no row is lost or doubled, and none is higher than allowed.
func TestPanels(t *testing.T) {
	var rows []stripRow
	for i := range 75 {
		r := stripRow{stake: string(rune('0' + i)), distance: "1"}
		if i%9 == 0 {
			r.note = "out"
		}
		rows = append(rows, r)
	}
	for most := paper.Length(30); most < 220; most += 13 {
		for across := 1; across <= panelsAcross; across++ {
			panels, rest := panelled(rows, across, most)
			for _, p := range panels {
				h := panelHead
				for _, r := range p {
					h += r.height()
				}
				if h > most+0.02 {
					t.Errorf("a panel of %.1f mm where %.1f are allowed", h, most)
				}
			}
			if back := slices.Concat(slices.Concat(panels...), rest); !slices.Equal(back, rows) || len(panels) > across {
				t.Errorf("%d panels of %v mm lose rows", across, most)
			}
		}
	}
}

// Left and right of a string by the sign of the offset, and none for what prints as nothing.
func TestSquareOffAString(t *testing.T) {
	w := &stakeWords{units: measure.Imperial}
	for off, want := range map[measure.Length]string{30 * measure.Inch: "2′-6″ right", -30 * measure.Inch: "2′-6″ left", -0.5: "on it", 1e-9: "on it"} {
		if got := w.squareOffString(ground.Offset{Off: off}); got != want {
			t.Errorf("%v off is written %q, want %q", off, got, want)
		}
	}
}
