package bend

import (
	"math"
	"slices"
)

// piece is one part of the mesh: it bends between nodes node and node+1, or is rigid and turns with node.
type piece struct {
	s, length float64
	stiff     float64 // 0 for rigid
	torsion   float64
	weight    float64 // spread evenly
	beyond    float64 // weight beyond its left end, its own counted
	push      float64 // spread evenly
	after     float64 // push beyond its left end, its own counted
	turn      float64 // of a bending piece
	node      int
	offset    float64 // angle of the piece's left end above the node's
}

// closest is the least distance, as a share of the length, between two cuts of the mesh; nearer ones are one.
const closest = 1e-6

// mesh cuts the rod at its stretches and loads, and the stretches into parts of at most length/parts. It fills
// s.pieces, s.nodes and s.turns.
func (s *Solver) mesh(rod Rod) {
	length := rod.Length()
	step := length / float64(s.parts)
	s.cuts = s.cuts[:0]
	for _, l := range rod.Loads {
		s.cuts = append(s.cuts, l.From, l.To)
	}
	slices.Sort(s.cuts)

	s.pieces = s.pieces[:0]
	s.turns = append(s.turns[:0], 0)
	from := 0.0
	for _, st := range rod.Stretches {
		to := from + st.Length
		if st.Rigid() && st.Turn != 0 {
			s.cut(st, from, (from+to)/2, step)
			s.turns[len(s.turns)-1] += st.Turn
			s.cut(st, (from+to)/2, to, step)
		} else {
			s.cut(st, from, to, step)
		}
		from = to
	}
	s.nodes, s.length = len(s.turns), length
	s.weigh(rod)
	s.mirrored = s.even(rod)
}

// cut appends the pieces of one stretch between from and to.
func (s *Solver) cut(st Stretch, from, to, step float64) {
	whole := st.Length
	near := closest * step * float64(s.parts)
	i, _ := slices.BinarySearch(s.cuts, from)
	for a := from; a < to; {
		b := to
		for ; i < len(s.cuts); i++ {
			if c := s.cuts[i]; c > a+near {
				if c < to-near {
					b = c
				}
				break
			}
		}
		n := 1
		if !st.Rigid() {
			n = int(math.Ceil((b-a)/step - 1e-9))
		}
		n = max(n, 1)
		h := (b - a) / float64(n)
		for j := range n {
			p := piece{s: a + h*float64(j), length: h, weight: st.Weight * h / whole, node: len(s.turns) - 1, offset: s.turns[len(s.turns)-1]}
			if !st.Rigid() {
				p.stiff, p.torsion, p.turn = st.Stiffness, st.Torsion, st.Turn*h/whole
				s.turns = append(s.turns, 0)
			}
			s.pieces = append(s.pieces, p)
		}
		a = b
	}
}

// weigh hangs the loads on the pieces and sums the weight and the push beyond each of them.
func (s *Solver) weigh(rod Rod) {
	near := closest * s.length
	s.pushed = false
	for i := range s.pieces {
		p := &s.pieces[i]
		for _, l := range rod.Loads {
			if width := l.To - l.From; width > near {
				if over := min(l.To, p.s+p.length) - max(l.From, p.s); over > 0 {
					p.weight += l.Weight * over / width
					p.push += l.Push * over / width
				}
			}
		}
	}
	weight, push := 0.0, 0.0
	for i := len(s.pieces) - 1; i >= 0; i-- {
		p := &s.pieces[i]
		for _, l := range rod.Loads {
			if l.To-l.From <= near && s.holds(i, l.From) {
				weight += l.Weight
				push += l.Push
			}
		}
		weight += p.weight
		push += p.push
		p.beyond, p.after = weight, push
		s.pushed = s.pushed || push != 0
	}
	s.weight = weight
	for _, l := range rod.Loads { // what rests on the first foot itself
		if l.To-l.From <= near && l.From <= near {
			s.weight += l.Weight
		}
	}
}

// holds reports whether a point load at place hangs at the right end of piece i.
func (s *Solver) holds(i int, place float64) bool {
	p, near := s.pieces[i], closest*s.length
	return place > p.s+near && place <= p.s+p.length+near
}

// even reports whether the rod, its feet and its loads mirror about its middle.
func (s *Solver) even(rod Rod) bool {
	const alike = 1e-9
	same := func(a, b, scale float64) bool { return math.Abs(a-b) <= alike*scale }
	if s.pushed || rod.DY != 0 || rod.Start.Hinged != rod.Finish.Hinged || !same(rod.Start.Angle, -rod.Finish.Angle, 1) {
		return false
	}
	heavy := 0.0
	for _, p := range s.pieces {
		heavy = max(heavy, math.Abs(p.beyond))
	}
	for i, j := 0, len(s.pieces)-1; i <= j; i, j = i+1, j-1 {
		p, q := &s.pieces[i], &s.pieces[j]
		if !same(p.length, q.length, s.length) || !same(p.stiff, q.stiff, p.stiff) || !same(p.turn, q.turn, 1) ||
			!same(p.weight, q.weight, heavy) || !same(s.weight-p.beyond, q.beyond-q.weight, heavy) {
			return false
		}
	}
	return true
}
