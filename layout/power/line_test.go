package power

import (
	"math/rand/v2"
	"slices"
	"testing"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// free is a free socket of a brute-force network: at a call (−1 the outlet), in a three-way or not.
type free struct {
	call int
	tap  bool
}

// leastPieces finds the fewest cords and three-ways that serve all calls by trying every piece in every free socket, one piece more each time: plain cords to
// any call that they reach, cords with several sockets laid past calls in their order, three-ways where none sits. It shares nothing with the program under test
// but the lengths of cord that reach a way.
type leastPieces struct {
	calls []call
	tools tools
}

// at returns how far along the line a call is.
func (b leastPieces) at(call int) measure.Length {
	sum := measure.Length(0)
	for i := 0; i <= call; i++ {
		sum += b.calls[i].gap
	}
	return sum
}

// served reports whether free sockets at their calls are enough for all wants.
func (b leastPieces) served(sockets []free) bool {
	have := make([]int, len(b.calls))
	for _, s := range sockets {
		if s.call >= 0 {
			have[s.call]++
		} else if b.calls[0].gap <= practice.HandReach {
			have[0]++
		}
	}
	for i, c := range b.calls {
		if have[i] < c.wants {
			return false
		}
	}
	return true
}

// within reports whether so many pieces more are enough.
func (b leastPieces) within(sockets []free, more int) bool {
	if b.served(sockets) {
		return true
	}
	if more == 0 {
		return false
	}
	for i, s := range sockets {
		if i > 0 && s == sockets[i-1] {
			continue // the same as the one before
		}
		rest := append(append([]free{}, sockets[:i]...), sockets[i+1:]...)
		if !s.tap && b.tools.fans > 0 && (s.call >= 0 || b.calls[0].gap <= practice.HandReach) {
			here := max(s.call, 0)
			tapped := append([]free{}, rest...)
			for range b.tools.fans {
				tapped = append(tapped, free{here, true})
			}
			if b.within(tapped, more-1) {
				return true
			}
		}
		for to := max(s.call, 0); to < len(b.calls); to++ {
			n := len(lay(b.tools.cord, b.at(to)-b.at(s.call)))
			if n <= more && b.within(append(append([]free{}, rest...), free{to, false}), more-n) {
				return true
			}
		}
		for _, in := range b.tools.inline {
			if b.along(rest, in, s.call, in.Sockets, nil, more-1) {
				return true
			}
		}
	}
	return false
}

// along lays the sockets of a cord one after the other, each at any call from the last on that it reaches, or some skipped.
func (b leastPieces) along(rest []free, in catalog.Inline, from, left int, laid []free, more int) bool {
	if len(laid) > 0 && b.within(append(append([]free{}, rest...), laid...), more) {
		return true
	}
	for to := max(from, 0); to < len(b.calls) && left > 0; to++ {
		way := b.at(to) - b.at(from)
		used := 1
		switch {
		case len(laid) == 0:
			for used <= left && in.Lead()+measure.Length(used-1)*in.Apart < way+2*practice.EndSlack-dust {
				used++ // it lies free on the way
			}
		case way > 0:
			for measure.Length(used)*in.Apart < way+practice.SocketSlack-dust {
				used++
			}
		}
		if used <= left && b.along(rest, in, to, left-used, append(append([]free{}, laid...), free{to, false}), more) {
			return true
		}
	}
	return false
}

// A cord with several sockets, the first at 10 ft, leads from an outlet 9 ft 6 in off, where both ends take a foot, to its second: one piece, and a socket more to cover. Over a way none lies free, so a
// plain cord leads there.
func TestFirstSocketsLieFree(t *testing.T) {
	cord, _ := catalog.FindCord("16 AWG")
	in := catalog.Inline{Cord: cord, Length: 50 * measure.Foot, Sockets: 5, Apart: 10 * measure.Foot}
	tl := tools{cordKind: cordKind{cord, []catalog.Inline{in}, []int64{3000}}, price: func(measure.Length) int64 { return 1000 }}
	for over, want := range []mark{{0, 1, 6, 3000}, {1, 2, 7, 4000}} {
		tl.past = 1
		m, laid := newLiner(tl).lineUp([]call{{gap: 9.5 * measure.Foot, over: over, wants: 2}, {gap: 8 * measure.Foot, wants: 1}}, plainSocket)
		if deeds := laid.deeds(); m != want || deeds[0].skip != 1-over {
			t.Errorf("past %d ways: %+v, want %+v; deeds %+v", over, m, want, deeds)
		}
	}
}

// The catalog lists what cords are taken from in the order that is relied on: the thinnest first, and of each the shortest.
func TestCordsRise(t *testing.T) {
	for _, volts := range []measure.Voltage{12, 120, 230} {
		list := cordsFor(volts)
		for i, c := range list {
			if !slices.IsSorted(c.Lengths) || len(c.Lengths) == 0 || i > 0 && c.Area <= list[i-1].Area {
				t.Errorf("%v: %+v", volts, c)
			}
		}
		if len(list) == 0 {
			t.Errorf("%v: no cord", volts)
		}
	}
}

// Thrown calls, cords and three-ways: never fewer pieces than by trying everything, which would be a network that does not work, and hardly ever more: a line
// branches to the next call alone, where a free network may branch anyhow.
func TestLineAgainstBruteForce(t *testing.T) {
	cord, _ := catalog.FindCord("16 AWG")
	several, more := 0, 0
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 11))
		var calls []call
		for range 1 + r.IntN(4) {
			calls = append(calls, call{gap: measure.Length(500 + r.IntN(5000)), wants: 1 + r.IntN(2)})
		}
		if r.IntN(4) == 0 {
			calls[0].gap = measure.Length(r.IntN(300))
		}
		tl := tools{cordKind: cordKind{cord: cord}, fans: []int{0, 3, 3, 4}[r.IntN(4)], tap: 700, price: func(l measure.Length) int64 { return int64(l / 10) }}
		for range r.IntN(3) {
			k := 2 + r.IntN(3)
			apart := measure.Length(800 + r.IntN(2500))
			tl.inline = append(tl.inline, catalog.Inline{Cord: cord, Sockets: k, Apart: apart, Length: apart*measure.Length(k-1) + measure.Length(700+r.IntN(3000))})
			tl.prices = append(tl.prices, 2000)
		}
		m, laid := newLiner(tl).lineUp(calls, plainSocket)
		brute := leastPieces{calls, tl}
		n := 0
		for n <= 6 && !brute.within([]free{{-1, false}}, n) {
			n++
		}
		if n > 6 && m.pieces > 6 {
			continue
		}
		if int(m.pieces) > n {
			more++
		}
		if int(m.pieces) < n {
			t.Fatalf("seed %d: %d pieces, by trying everything %d: %+v, sockets %+v, deeds %+v", seed, m.pieces, n, calls, tl.inline, laid.deeds())
		}
		if n > 2 {
			several++
		}
	}
	if more > 6 {
		t.Errorf("%d of 200 cases take more pieces than must be", more)
	}
	if several < 75 {
		t.Errorf("only %d cases took more than two pieces", several)
	}
}
