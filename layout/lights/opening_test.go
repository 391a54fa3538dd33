package lights

import (
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// oneRow is a single row on both walls.
func oneRow(tape, sag float64) *spec.Rows {
	return &spec.Rows{First: inch * measure.Length(tape), UpTo: inch * measure.Length(tape), Sag: inch * measure.Length(sag), Strings: []catalog.String{mini("warm", 24*foot)},
		Walls: []spec.Side{spec.Left, spec.Right}}
}

// A row's mark clears the opening but its sag does not: 9 in of sag bring a row at 60 in or so into an opening 56 in high.
func TestSagCountsInTheOpening(t *testing.T) {
	for _, c := range []struct {
		sag  float64
		want bool
	}{{1, false}, {9, true}} {
		in := plain(4, spec.Lights{Rows: oneRow(72, c.sag)})
		k := in.Arches[0]
		height := k.HeightAt(spec.Left, 72*inch)
		in.Spec.Tunnel.OpeningHeight = height - 4*inch
		in.Spec.Tunnel.OpeningWidth = 2 * measure.Abs(k.PointAt(72*inch).X) * 1.02
		if got := slices.Contains(codes(Lay(in)), "row-in-opening"); got != c.want {
			t.Errorf("sag %v in: in the opening %v, want %v", c.sag, got, c.want)
		}
	}
}

// On a bend the row of the outer wall runs straight from arch to arch while the walk bends: at mid bay it is nearer to the middle by its own sagitta
// and the walk's arc is past its chord; the inner wall's is farther off. Worked from the circle: the middle of a chord of a circle of radius r is at r·cos(φ/2).
func TestRowsCutAcrossABend(t *testing.T) {
	const radius = 20 * foot
	in := bent(plain(5, spec.Lights{Rows: oneRow(12, 0)}), radius, 0)
	l := layer{Input: in}
	l.rows()
	half := math.Cos(54. / 240 / 2)
	offset := measure.Abs(in.Arches[0].PointAt(12 * inch).X)
	for _, r := range l.out.Rows {
		for _, share := range []float64{0, .5, 1} {
			r0 := float64(radius + offset) // a bend to the right: the left wall is the outer
			sign := 1.0
			if r.Wall == spec.Right {
				r0, sign = float64(radius-offset), -1
			}
			want := offset
			if share == .5 {
				want = measure.Length(sign * (r0*half - float64(radius)))
			}
			_, across := l.rowAt(r, 2, share)
			near(t, r.Wall.String(), float64(across), float64(want), .3)
		}
	}
}

// Rows in an opening that the spec gives must be mended; where the height is a default they are looked at.
func TestLevelOfRowsInTheOpening(t *testing.T) {
	in := plain(4, spec.Lights{Rows: sixRows()})
	in.Spec.Tunnel.OpeningWidth, in.Spec.Tunnel.OpeningHeight = 2*in.Arches[0].PointAt(48*inch).X*-1+1, 70*inch
	found := Lay(in).Findings
	if len(found) == 0 || found[0].Code != "row-in-opening" || found[0].Level != finding.LookAt {
		t.Fatalf("%+v", found)
	}
	if !strings.Contains(found[0].Text, "end the rows at 3′-0″") {
		t.Errorf("it does not say where to end: %s", found[0].Text)
	}
}
