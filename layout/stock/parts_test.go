package stock

import (
	"math"
	"testing"

	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The words of a piece are those that crews write on it; two pieces are of one sort where only arch and side differ.
func TestPieceWords(t *testing.T) {
	leg := func(side spec.Side, arch, stick, of int) PieceID {
		return PieceID{Part: lights.Leg(side, arch), Stick: stick, Of: of}
	}
	part := func(kind lights.Kind, number, stick, of int) PieceID {
		return PieceID{Part: lights.Part{Kind: kind, Number: number}, Stick: stick, Of: of}
	}
	stake := func(id ground.StakeID) PieceID { return PieceID{Steel: true, Stake: id} }
	for id, want := range map[PieceID][2]string{
		leg(spec.Left, 3, 2, 2):                                        {"leg L3 upper", "leg upper"},
		leg(spec.Right, 12, 1, 1):                                      {"leg R12", "leg"},
		leg(spec.Left, 3, 2, 4):                                        {"leg L3 middle 1", "leg middle 1"},
		part(lights.Ridge, 4, 0, 0):                                    {"ridge 4", "ridge"},
		part(lights.Arch, 3, 1, 2):                                     {"arch 3 lower", "arch lower"},
		stake(ground.Leg(spec.Right, 2)):                               {"stake R2", "stake"},
		stake(ground.StakeID{Arch: 15, Guy: true, Way: ground.Toward}): {"guy stake G15La", "guy stake"},
		stake(ground.StakeID{Arch: 1, Guy: true}):                      {"guy stake G1L", "guy stake"},
	} {
		if got := [2]string{id.String(), id.Noun()}; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if leg(spec.Left, 3, 2, 2).Sort() != leg(spec.Right, 7, 2, 2).Sort() || leg(spec.Left, 3, 1, 2).Sort() == leg(spec.Left, 3, 2, 2).Sort() {
		t.Error("upper sticks are of one sort, lower ones of another")
	}
}

// A leg piece and the ridge share bars in an invented tunnel of three arches, whose legs are 10 ft and 20 in. Whatever the cut plan, the ridge comes after the legs on
// every bar and the trial piece before the other; the marks are the sums of what lies left of them, a kerf between each two.
func TestRidgeIsCutLast(t *testing.T) {
	in := garden(3)
	in.Spec.Stock.Own = nil
	for i := range in.Arches {
		k := *in.Arches[i].Kind
		k.Left, k.Right = []measure.Length{10 * foot, 20 * inch}, []measure.Length{10 * foot, 20 * inch}
		in.Arches[i].Kind = &k
	}
	cuts := Make(in).Cuts
	mixed := false
	for _, b := range cuts.Bars {
		if b.Whole() {
			continue
		}
		at := -in.Spec.Stock.Kerf
		for i, p := range b.Pieces {
			at += in.Spec.Stock.Kerf + p.Length
			if math.Abs(float64(p.Mark-at)) > 1e-6 {
				t.Errorf("%s: mark %v, want %v", p.ID, p.Mark, at)
			}
			if i > 0 && p.turn() < b.Pieces[i-1].turn() {
				t.Errorf("%s comes after %s", p.ID, b.Pieces[i-1].ID)
			}
			mixed = mixed || i > 0 && p.turn() > b.Pieces[i-1].turn()
		}
	}
	if !mixed {
		t.Error("no bar holds both: the case tests nothing")
	}
}

// By hand: two 53 in pieces from 120 in leave 120 − 2·(53 + 1/8) = 13 3/4 in; a stick of one leaves 66 7/8 in. So each piece of the first may grow by 6 7/8 in. The
// trial piece has no share in what its stick leaves.
func TestRidgeRoomAndUseful(t *testing.T) {
	piece := func(bay int) Piece {
		return Piece{ID: PieceID{Part: lights.Part{Kind: lights.Ridge, Number: bay}}, Length: 53 * inch}
	}
	two := Bar{Stock: 120 * inch, Item: "p", Pieces: []Piece{piece(2), piece(3)}, Offcut: 13.75 * inch}
	one := Bar{Stock: 120 * inch, Item: "p", Pieces: []Piece{piece(4)}, Offcut: 66.875 * inch}
	trial := Bar{Stock: 56 * inch, Item: "p", Pieces: []Piece{piece(1)}, Offcut: 2.875 * inch}
	if got := (Cuts{Bars: []Bar{one, two, trial}}).RidgeRoom(); got != 6.875*inch {
		t.Errorf("room %v in, want 6 7/8", got/inch)
	}
	if got := (Cuts{}).RidgeRoom(); got != 0 {
		t.Errorf("no ridge leaves room %v", got)
	}
	if got := (Cuts{Bars: []Bar{one, {Item: "q", Pieces: []Piece{{Length: inch}}}}}).Useful("p"); got != 53*inch {
		t.Errorf("useful %v in, want 53", got/inch)
	}
}

// A plan for 43.50 against a bound of 34.80 at 4.35 a stick may be two sticks too dear.
func TestFewerAtMost(t *testing.T) {
	c := Cuts{Cost: 43.50, Bound: 34.80, Least: 4.35}
	if got := c.FewerAtMost(); got != 2 {
		t.Errorf("%d, want 2", got)
	}
	c.Proven = true
	if got := c.FewerAtMost(); got != 0 {
		t.Errorf("%d of a proven plan", got)
	}
	if l := Make(garden(6)); l.Cuts.Least != 4.35 || !l.Cuts.OneLength {
		t.Errorf("least %v, one length %v", l.Cuts.Least, l.Cuts.OneLength)
	}
}
