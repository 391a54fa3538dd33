package spec

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"hoopwright/layout/measure"
)

// walk is a spec of nine arches with one more section.
func walk(section string) string {
	return "hoopwright: 1\ntitle: T\ntunnel: {arches: 9, spacing: 4 ft}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}\n" + section + "\n"
}

func TestSets(t *testing.T) {
	for _, c := range []struct{ set, want string }{
		{"[1, 4 to 6, last]", "[1 4 5 6 9]"},
		{"[1, 8]", "[1 8]"}, // two arches, not a range
		{"[6, 2 to 4, 3]", "[2 3 4 6]"},
		{"[8 to last]", "[8 9]"},
		{"[last]", "[9]"},
		{"odd", "[1 3 5 7 9]"},
		{"even", "[2 4 6 8]"},
		{"all", "[1 2 3 4 5 6 7 8 9]"},
		{"[all]", "[1 2 3 4 5 6 7 8 9]"},
		{"3", "[3]"},
		{"2 to 3", "[2 3]"},
		{"last", "[9]"},
		{"[9 to 9]", "[9]"},
		{"[10]", "`10` goes beyond arch 9, the last"},
		{"[1 to 12]", "`1 to 12` goes beyond arch 9"},
		{"[0]", "`0` is no arch number"},
		{"[-1]", "`-1` is no arch number"},
		{"[1.5]", "`1.5` is no arch number"},
		{"[007]", "`007` is no arch number"},
		{"[1-4]", "`1-4` is no arch number"},
		{"[last to 1]", "`last to 1` runs backwards"},
		{"[odd, 2]", "`odd` is no arch number"},
		{"[]", "names no arch"},
		{"[[1]]", "is a list; a plain value is wanted"},
		{"{1: 2}", "is keys with values; a list is wanted"},
		{"[1 4]", "`1 4` is no arch number"},
	} {
		s, err := Read("walk.yaml", []byte(walk("guys: {from: 6 ft, out: 5 ft, arches: "+c.set+"}")))
		got := fmt.Sprint(err)
		if err == nil {
			got = fmt.Sprint(s.Guys.Arches)
		}
		if err == nil && got != c.want || !strings.Contains(got, c.want) {
			t.Errorf("%s is %s, want %s", c.set, got, c.want)
		}
	}
}

// TestSetsOfAnUnreadTunnel has one error, not one for each number.
func TestSetsOfAnUnreadTunnel(t *testing.T) {
	source := strings.Replace(walk("guys: {from: 6 ft, out: 5 ft, arches: [1, 4 to 6, last]}\nsite: {levels: [{arch: last, left: 0 in, right: 0 in}]}"), "arches: 9", "arches: nine", 1)
	_, err := Read("walk.yaml", []byte(source))
	if list, ok := err.(Errors); !ok || len(list) != 1 || list[0].Key != "tunnel.arches" {
		t.Errorf("%v, want the one error of tunnel.arches", err)
	}
}

func TestPlaces(t *testing.T) {
	const ft = measure.Foot
	beyond := measure.Length(math.Inf(1))
	for _, c := range []struct {
		where string
		want  Place
		wrong string
	}{
		{"legs", Place{}, ""},
		{"left legs", Place{Part: LeftLegs}, ""},
		{"right legs", Place{Part: RightLegs}, ""},
		{"arches", Place{Part: WholeArches}, ""},
		{"ridge", Place{Part: RidgePieces}, ""},
		{"legs above 3 ft", Place{Bound: ByHeight, From: 3 * ft, To: beyond}, ""},
		{"legs above 0 ft", Place{Bound: ByHeight, To: beyond}, ""},
		{"left legs below 3' 6\"", Place{Part: LeftLegs, Bound: ByHeight, To: 3.5 * ft}, ""},
		{"arches from 2 ft to 6 ft", Place{Part: WholeArches, Bound: ByHeight, From: 2 * ft, To: 6 * ft}, ""},
		{"legs tape 12 in to 4 ft", Place{Bound: ByTape, From: ft, To: 4 * ft}, ""},
		{"legs   above  3 ft of  [1 to 4]", Place{Bound: ByHeight, From: 3 * ft, To: beyond, Of: []int{1, 2, 3, 4}}, ""},
		{"legs of odd", Place{Of: []int{1, 3, 5, 7, 9}}, ""},
		{"legs of all", Place{}, ""},
		{"legs of [1 to last]", Place{}, ""},
		{"legs of last", Place{Of: []int{9}}, ""},
		{"legs of 2 to 3, 7", Place{Of: []int{2, 3, 7}}, ""},
		{"ridge of [1, last]", Place{Part: RidgePieces, Of: []int{1, 8}}, ""}, // bays
		{"ridge of [9]", Place{}, "`9` goes beyond bay 8, the last"},
		{"legs of [10]", Place{}, "`10` goes beyond arch 9, the last"},
		{"legs of", Place{}, "is no arch number"},
		{"Legs", Place{}, "the nearest is `legs`"},
		{"left leg", Place{}, "the nearest is `left legs`"},
		{"leggs above 3 ft", Place{}, "the nearest is `legs`"},
		{"legsabove 3 ft", Place{}, "is no place for lights"},
		{"legs above", Place{}, "cannot be read from `above` on"},
		{"legs above 3 ft to 4 ft", Place{}, "cannot be read from"},
		{"legs from 3 ft", Place{}, "cannot be read from"},
		{"legs below 0 ft", Place{}, "holds nothing"},
		{"legs tape 4 ft to 12 in", Place{}, "holds nothing"},
		{"legs above 3 kg", Place{}, "3 kg is a mass; a length is wanted"},
		{"legs above 61 ft", Place{}, "is `61 ft`; 0 in to 60 ft is wanted"},
		{"legs upwards", Place{}, "cannot be read from `upwards` on"},
	} {
		s, err := Read("walk.yaml", []byte(walk("lights: {wraps: [{string: mini led 100 warm, where: '"+strings.ReplaceAll(c.where, "'", "''")+"'}]}")))
		switch {
		case c.wrong != "":
			if err == nil || !strings.Contains(err.Error(), c.wrong) {
				t.Errorf("%s: %v, want %s", c.where, err, c.wrong)
			}
		case err != nil:
			t.Errorf("%s: %v", c.where, err)
		default:
			got := s.Lights.Wraps[0].Where[0]
			if c.want.Bound == Whole || got.To < beyond {
				near(t, c.where+": to", got.To, c.want.To)
				got.To, c.want.To = 0, 0
			}
			near(t, c.where+": from", got.From, c.want.From)
			got.From, c.want.From = 0, 0
			equal(t, c.where, got, c.want)
		}
	}
}

func TestExceptionsMerge(t *testing.T) {
	s := mustRead(t, walk("")[:len(walk(""))-3]+`, stake: {length: 44 in}, except: [
  {arches: [1], span: 8 ft},
  {arches: [2], sticks: [[9 ft, 2 ft], 10 ft]},
  {arches: [3], span: 7 ft, height: 8 ft},
  {arches: [4], sticks: [10 ft, 10 ft], height: 7 ft},
  {arches: [5], pipe: pvc sch40 1 in}]}
`)
	near(t, "span of 1", s.ArchOf(1).Span, 8*measure.Foot)
	near(t, "upper left piece of 2", s.ArchOf(2).Left[1], 2*measure.Foot)
	equal(t, "third of 1 to 4", []Third{s.ArchOf(1).Missing, s.ArchOf(2).Missing, s.ArchOf(3).Missing, s.ArchOf(4).Missing}, []Third{Height, Height, Sticks, Span})
	near(t, "span of 4, solved", s.ArchOf(4).Span, 0)
	equal(t, "bar of 5, for its own pipe", s.ArchOf(5).Stake.Bar.Name, "1/2 in")
	near(t, "bar's length of 5, kept", s.ArchOf(5).Stake.Length, 44*measure.Inch)
	equal(t, "bar of 6", s.ArchOf(6).Stake.Bar.Name, "3/8 in")
}

func TestOneStickWithoutRidge(t *testing.T) {
	s := mustRead(t, "hoopwright: 1\ntitle: T\ntunnel: {arches: 1}\narch: {pipe: {od: 20 mm, wall: 2 mm}, sticks: [6 m], height: 2 m}\nridge: false\n")
	equal(t, "one stick", []any{s.Arch.OneStick, len(s.Arch.Left), s.Arch.Right == nil, s.Ridge.Present}, []any{true, 1, true, false})
	// π/4·(20² − 16²) mm² at 1.40 g/cm³, by hand: 113.10 mm² · 1.40 = 158.3 g/m.
	if m := float64(s.Arch.Pipe.Mass); math.Abs(m-0.1583) > 0.0001 {
		t.Errorf("mass %v kg/m, want 0.1583", m)
	}
}
