package spec

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"hoopwright/layout/measure"
)

// amended is a spec to amend. Place and figures are invented.
const amended = `hoopwright: 1
title: Weir Path
tunnel: {arches: 4, spacing: 4 ft 3 in}
arch:
  pipe: pvc sch40 1/2 in
  sticks: [10 ft, 10 ft]
  span: 7 ft 3 in
  stake: {bar: no. 3, length: 42 in, depth: 18 in, lean: 1 deg}
  except:
    - {arches: [1, last], stake: {depth: 22 in}}
guys: {from: 6 ft, out: 5 ft}
`

// An amended spec is the spec as it would be with the value written into the file: every default follows, and what Read refuses is refused.
func TestAmendedIsAsWritten(t *testing.T) {
	for _, c := range []struct {
		name   string
		amend  []Amendment
		edited []string // old, new
	}{
		{"nothing", nil, nil},
		{"a value", []Amendment{{"arch.pipe", "pvc sch40 3/4 in"}}, []string{"  pipe: pvc sch40 1/2 in\n", "  pipe: pvc sch40 3/4 in\n"}},
		{"a list in a list", []Amendment{{"arch.sticks", []any{"9 ft", []any{"8 ft", "1 ft"}}}}, []string{"sticks: [10 ft, 10 ft]", "sticks: [9 ft, [8 ft, 1 ft]]"}},
		{"a key out", []Amendment{{"arch.except", nil}}, []string{"  except:\n    - {arches: [1, last], stake: {depth: 22 in}}\n", ""}},
		{"a third for another", []Amendment{{"arch.span", nil}, {"arch.height", "8 ft"}}, []string{"  span: 7 ft 3 in\n", "  height: 8 ft\n"}},
		{"inside a section", []Amendment{{"arch.stake.depth", "19 in"}}, []string{"depth: 18 in, lean", "depth: 19 in, lean"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := ReadAmended("x", []byte(amended), c.amend...)
			if err != nil {
				t.Fatal(err)
			}
			source := amended
			if c.edited != nil {
				source = strings.Replace(amended, c.edited[0], c.edited[1], 1)
				if source == amended {
					t.Fatalf("%q is not in the spec", c.edited[0])
				}
			}
			want, err := Read("x", []byte(source))
			if err != nil {
				t.Fatal(err)
			}
			got.positions, want.positions, got.Source, want.Source, got.amended, want.amended = nil, nil, nil, nil, nil, nil
			if !reflect.DeepEqual(got, want) {
				t.Errorf("amended: %+v\nwritten: %+v", got.Arch, want.Arch)
			}
		})
	}
}

// A section that is missing is made; one that an alias stands for changes in its own place only.
func TestAmendSections(t *testing.T) {
	const bare = "hoopwright: 1\ntitle: x\ntunnel: {arches: 3, spacing: 4 ft}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft, stake: &s {depth: 14 in}}\nguys: {from: 6 ft, out: 5 ft, stake: *s}\n"
	s, err := ReadAmended("x", []byte(bare), Amendment{"stock.kerf", "1/4 in"}, Amendment{"guys.stake.depth", "20 in"}, Amendment{"site.cords.crossing", nil})
	if err != nil {
		t.Fatal(err)
	}
	off := func(l, inches measure.Length) bool { return math.Abs(float64(l/inch-inches)) > 1e-9 }
	if off(s.Stock.Kerf, 0.25) || off(s.Guys.Stake.Depth, 20) || off(s.Arch.Stake.Depth, 14) {
		t.Errorf("kerf %v, depths %v and %v", s.Stock.Kerf, s.Guys.Stake.Depth, s.Arch.Stake.Depth)
	}
}

// What is wrong with an amended value is told by its key at line 0, and a spec that is none by its own place.
func TestAmendedWrongly(t *testing.T) {
	_, err := ReadAmended("x", []byte(amended), Amendment{"arch.pipe", "lead"}, Amendment{"tunnel.arches", 900})
	var list Errors
	if !errors.As(err, &list) || len(list) != 2 || list[0].Pos.Line != 0 || list[0].Key != "arch.pipe" || list[1].Key != "tunnel.arches" {
		t.Errorf("%v", err)
	}
	for _, source := range []string{"- a list", "text", "hoopwright: 1\narch: 3\n", ""} {
		if _, err := ReadAmended("x", []byte(source), Amendment{"arch.pipe", "pvc sch40 1/2 in"}, Amendment{"arch.stake.bar", "3/8 in"}); err == nil {
			t.Errorf("%q is taken for a spec", source)
		}
	}
}
