package cutting

import "testing"

// FuzzSolve: whatever is asked for, within the limits or not, is answered without a panic; what is said to be solved passes the checker, which trusts nothing of it, and where
// few pieces can be tried one by one costs no less than the cheapest plan, and no more where it is said to be proven.
func FuzzSolve(f *testing.F) {
	f.Add(int64(3), []byte{100, 20, 255, 60, 0, 1}, []byte{30, 2, 45, 1})
	f.Add(int64(0), []byte{10, 0, 0}, []byte{10, 1})
	f.Add(int64(-1), []byte{0, 1, 2}, []byte{})
	f.Add(int64(1), []byte{120, 43, 255, 240, 80, 255, 56, 0, 2}, []byte{61, 12, 53, 12, 7, 40})
	f.Fuzz(func(t *testing.T, kerf int64, stocks, pieces []byte) {
		p := Problem{Kerf: kerf}
		for ; len(stocks) >= 3 && len(p.Stocks) < 6; stocks = stocks[3:] {
			p.Stocks = append(p.Stocks, Stock{int64(stocks[0]), int64(stocks[1]), int(int8(stocks[2]))})
		}
		count := 0
		for ; len(pieces) >= 2 && len(p.Pieces) < 12; pieces = pieces[2:] {
			p.Pieces = append(p.Pieces, Piece{int64(pieces[0]), int(int8(pieces[1]))})
			count += int(pieces[1])
		}
		s, err := Solve(p, 2_000_000)
		if err != nil {
			return
		}
		if err := Check(p, s); err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if s.Bound > s.Cost || s.Proven != (s.Bound == s.Cost) {
			t.Fatalf("%+v: cost %d, bound %d, proven %v", p, s.Cost, s.Bound, s.Proven)
		}
		if count > 6 {
			return
		}
		if least := exhaustive(p); s.Cost < least || s.Proven && s.Cost != least {
			t.Fatalf("%+v: cost %d, proven %v; by trying everything %d", p, s.Cost, s.Proven, least)
		}
	})
}
