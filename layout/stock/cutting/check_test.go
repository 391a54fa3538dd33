package cutting

import "testing"

// Check must catch each way in which a plan can be wrong.
func TestCheckCatches(t *testing.T) {
	p := Problem{Kerf: 2, Stocks: []Stock{{100, 7, Unlimited}, {50, 0, 1}}, Pieces: []Piece{{48, 3}, {20, 2}}}
	fresh := func() Solution {
		s, err := Solve(p, Effort)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	if err := Check(p, fresh()); err != nil {
		t.Fatalf("a good plan: %v", err)
	}
	for name, spoil := range map[string]func(*Solution){
		"a bar gone":       func(s *Solution) { s.Bars = s.Bars[1:] },
		"a piece gone":     func(s *Solution) { s.Bars[0].Pieces = s.Bars[0].Pieces[1:] },
		"a piece too many": func(s *Solution) { s.Bars[0].Pieces = append(s.Bars[0].Pieces, 1) },
		"overlong":         func(s *Solution) { s.Bars = []Bar{{0, []int{0, 0, 0, 1, 1}}} },
		"overdrawn":        func(s *Solution) { s.Bars = []Bar{{1, []int{0}}, {1, []int{0}}, {1, []int{0}}, {1, []int{1, 1}}} },
		"no such stock":    func(s *Solution) { s.Bars[0].Stock = 9 },
		"cost too low":     func(s *Solution) { s.Cost-- },
		"bound too high":   func(s *Solution) { s.Bound++ },
		"worth too high":   func(s *Solution) { s.Proof.Worth[0] *= 2; s.Proof.Worth[1] *= 2 },
		"worth missing":    func(s *Solution) { s.Proof.Worth = nil },
		"worth below zero": func(s *Solution) { s.Proof.Worth[0] = -1 },
		"proven denied":    func(s *Solution) { s.Proven = !s.Proven },
		"no proof":         func(s *Solution) { s.Proof = Proof{1, Part{Worth: []int64{0, 0}}} },
	} {
		s := fresh()
		spoil(&s)
		if Check(p, s) == nil {
			t.Errorf("%s: not caught in %+v", name, s)
		}
	}
}

// A kerf lies between pieces only: 49 + 2 + 49 = 100.
func TestCheckCountsKerfBetweenPieces(t *testing.T) {
	p := Problem{Kerf: 2, Stocks: []Stock{{100, 7, Unlimited}}, Pieces: []Piece{{49, 2}}}
	s := Solution{Bars: []Bar{{0, []int{0, 0}}}, Cost: 7, Bound: 0, Proof: Proof{1, Part{Worth: []int64{0}}}}
	if err := Check(p, s); err != nil {
		t.Error(err)
	}
	p.Kerf = 3
	if Check(p, s) == nil {
		t.Error("49 + 3 + 49 passed as 100")
	}
}

// A proof that parts the plans by stock counts must be caught where a part claims too much or leaves plans out.
func TestCheckCatchesPartedProofs(t *testing.T) {
	var p Problem
	for _, k := range readKnown(t) {
		if k.Name == "timbers_kerf" {
			p = k.problem()
		}
	}
	s, err := Solve(p, Effort)
	if err != nil || Check(p, s) != nil || !s.Proven {
		t.Fatalf("%+v, %v, %v", s, err, Check(p, s))
	}
	if s.Proof.Worth != nil {
		t.Fatal("this case needs no parting: choose another")
	}
	leaf := &s.Proof.Part
	for leaf.Worth == nil {
		leaf = leaf.Fewer
	}
	good := leaf.Worth
	leaf.Worth = make([]int64, len(good))
	if Check(p, s) == nil {
		t.Error("a part with worthless pieces passed")
	}
	leaf.Worth = good
	at := s.Proof.AtMost
	s.Proof.AtMost = 5 // the part of more than five now bounds nothing that matters, and the other has to bound plans it does not fit
	if Check(p, s) == nil {
		t.Error("a part moved off its plans passed")
	}
	s.Proof.AtMost = at
	s.Proof.More = nil
	if Check(p, s) == nil {
		t.Error("a missing part passed")
	}
}
