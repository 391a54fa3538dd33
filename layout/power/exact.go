package power

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// searchSteps bounds the search for fewer circuits. The sizes that occur take some hundred steps; where it runs out nothing is claimed.
const searchSteps = 40000

// search looks for a sharing that leaves fewer amps unfed, or as few on fewer groups, than one found step by step: it tries every choice of
// groups, counted by their kinds, fewest first, and for each every way to put the kinds of units on their sources. Branches whose
// sources together have too few amps left are cut off.
type search struct {
	*sharer
	split bool
	kinds []unitKind
	like  [][]int // groups that are alike, nearest to the units first
	owner []int   // part that each source feeds, −1 for none
	room  []measure.Current
	left  []measure.Current // of each circuit
	put   [][]int           // by kind and source: how many
	spare measure.Current   // that may still stay unfed
	steps int
}

// unitKind is units that are alike to every source.
type unitKind struct {
	units []int
	part  int // −1 where any part may feed them
	wants measure.Current
	draws []measure.Current // by source; −1 where it cannot feed one
}

// fewest returns the sharing improved to the least amps unfed and the fewest groups, and whether that is proven.
func (h *sharer) fewest(now sharing, split bool) (sharing, bool) {
	s := search{sharer: h, split: split, owner: make([]int, len(h.sources)), steps: searchSteps}
	s.gather()
	s.alike()
	for now.missing > hair { // less and less unfed, on all groups
		better, ok := s.some(now.missing-10*hair, -1)
		if !ok {
			break
		}
		now = better
	}
	for n := range now.used {
		if better, ok := s.some(now.missing+hair, n); ok {
			now = better
			break
		}
	}
	return now, s.steps > 0
}

// gather sorts the units into kinds, those that draw most first.
func (s *search) gather() {
	at := map[string]int{}
	for i, u := range s.units {
		k := unitKind{part: 0, wants: s.wanted(u)}
		if s.split {
			k.part = int(s.walls[i])
			if u.wall == either {
				k.part = -1
			}
		}
		fits := false
		for _, src := range s.sources {
			d := u.draws(src.volts)
			if !u.takes(src.volts) || d > src.most+hair {
				d = -1
			}
			fits = fits || d >= 0
			k.draws = append(k.draws, d)
		}
		if k.wants == 0 && !fits {
			continue // belongs on no circuit here
		}
		key := fmt.Sprint(k.part, k.draws, k.wants)
		n, ok := at[key]
		if !ok {
			n = len(s.kinds)
			at[key] = n
			s.kinds = append(s.kinds, k)
		}
		s.kinds[n].units = append(s.kinds[n].units, i)
	}
	slices.SortStableFunc(s.kinds, func(a, b unitKind) int { return cmp.Compare(b.wants, a.wants) })
	for range s.kinds {
		s.put = append(s.put, make([]int, len(s.sources)))
	}
}

// limit returns what an outlet may pass on: through all its sockets, and through its timer.
func (k source) limit() measure.Current {
	out := k.most * measure.Current(k.outlet.Sockets)
	if t := k.outlet.Timer; t > 0 {
		out = min(out, t)
	}
	return out
}

// alike sorts the groups into those that carry the same. Groups that share a circuit are like no other.
func (s *search) alike() {
	at := map[string]int{}
	for g, set := range s.sets {
		var words []string
		shared := false
		for _, k := range set {
			src := s.sources[k]
			words = append(words, fmt.Sprint(src.volts, src.most, src.limit(), s.allowed[src.circuit]))
			for other, o := range s.sources {
				shared = shared || o.circuit == src.circuit && !slices.Contains(set, other)
			}
		}
		slices.Sort(words)
		key := fmt.Sprint(words)
		if shared {
			key = fmt.Sprint(key, g)
		}
		n, ok := at[key]
		if !ok {
			n = len(s.like)
			at[key] = n
			s.like = append(s.like, nil)
		}
		s.like[n] = append(s.like[n], g)
	}
	far := make([]measure.Length, len(s.sets))
	for g, set := range s.sets {
		for i := range s.units {
			far[g] += s.far[s.nearestOf(i, set)][i]
		}
	}
	for _, list := range s.like {
		slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(far[a], far[b]) })
	}
}

// nearestOf returns the source of a set by the shortest way to a unit.
func (h *sharer) nearestOf(unit int, set []int) int {
	return slices.MinFunc(set, func(a, b int) int { return cmp.Compare(h.far[a][unit], h.far[b][unit]) })
}

// some looks for a sharing on n groups, on all for n below zero, that leaves no more than so much unfed.
func (s *search) some(missing measure.Current, n int) (sharing, bool) {
	for k := range s.owner {
		s.owner[k] = -1
	}
	return s.choose(0, 0, n, missing)
}

// choose gives groups of the kinds from the kth on to the parts, of the kth from its ith on, n in all or all of them.
func (s *search) choose(k, i, n int, missing measure.Current) (sharing, bool) {
	if s.steps--; s.steps <= 0 {
		return sharing{}, false
	}
	if k == len(s.like) {
		if n > 0 {
			return sharing{}, false
		}
		return s.pack(missing)
	}
	if n == 0 || i == len(s.like[k]) {
		if n == 0 {
			return s.pack(missing)
		}
		return s.choose(k+1, 0, n, missing)
	}
	g := s.like[k][i]
	lowest := 0 // alike groups in order of their parts: no choice twice
	if i > 0 {
		before := s.owner[s.sets[s.like[k][i-1]][0]]
		for s.partOf(lowest) != before {
			lowest++
		}
	}
	for p := lowest; p < len(s.parts); p++ {
		s.own(g, s.partOf(p))
		if out, ok := s.choose(k, i+1, n-1, missing); ok {
			return out, true
		}
		s.own(g, -1)
	}
	if n < 0 {
		return sharing{}, false
	}
	return s.choose(k+1, 0, n, missing)
}

// partOf returns the wall that a part stands for, as units' kinds name it: 0 without split.
func (s *search) partOf(p int) int {
	if !s.split {
		return 0
	}
	return int(s.walls[s.parts[p][0]])
}

// own gives a group's sources to a part.
func (s *search) own(group, part int) {
	for _, k := range s.sets[group] {
		s.owner[k] = part
	}
}

// pack puts the units on the owned sources.
func (s *search) pack(missing measure.Current) (sharing, bool) {
	s.left = slices.Clone(s.allowed)
	s.room = s.room[:0]
	for _, src := range s.sources {
		s.room = append(s.room, src.limit())
	}
	s.spare = missing
	if !s.place(0) {
		return sharing{}, false
	}
	return s.made(), true
}

// place puts the kinds from one on.
func (s *search) place(kind int) bool {
	if kind == len(s.kinds) {
		return true
	}
	if s.short(kind) > s.spare+hair {
		return false
	}
	return s.on(kind, 0, len(s.kinds[kind].units))
}

// short returns at least how many amps of the kinds from one on cannot be fed, by what is left in all.
func (s *search) short(from int) measure.Current {
	var want, have measure.Current
	for _, k := range s.kinds[from:] {
		least := k.wants
		for _, d := range k.draws {
			if d >= 0 {
				least = min(least, d)
			}
		}
		want += least * measure.Current(len(k.units))
	}
	through := make([]measure.Current, len(s.left))
	for k, src := range s.sources {
		if s.owner[k] >= 0 {
			through[src.circuit] += s.room[k]
		}
	}
	for c, t := range through {
		have += min(t, s.left[c])
	}
	return want - have
}

// on puts n units of a kind on the sources from one on, as many as it takes first.
func (s *search) on(kind, from, n int) bool {
	if s.steps--; s.steps <= 0 {
		return false
	}
	k := s.kinds[kind]
	if from == len(s.sources) || n == 0 {
		rest := k.wants * measure.Current(n)
		if rest > s.spare+hair {
			return false
		}
		s.spare -= rest
		for src := from; src < len(s.sources); src++ {
			s.put[kind][src] = 0
		}
		if s.place(kind + 1) {
			return true
		}
		s.spare += rest
		return false
	}
	c, most := s.sources[from].circuit, 0
	d := k.draws[from]
	if s.owner[from] >= 0 && d >= 0 && (k.part < 0 || k.part == s.owner[from]) {
		most = n
		if d > 0 {
			most = min(n, int((min(s.room[from], s.left[c])+hair)/d))
		}
	}
	for x := max(most, 0); x >= 0; x-- {
		take := max(d, 0) * measure.Current(x)
		s.put[kind][from] = x
		s.room[from] -= take
		s.left[c] -= take
		if s.on(kind, from+1, n-x) {
			return true
		}
		s.room[from] += take
		s.left[c] += take
	}
	return false
}

// made turns the counts into a sharing: of each kind, the unit and source with the shortest way first.
func (s *search) made() sharing {
	out := sharing{of: make([]int, len(s.units)), walls: slices.Clone(s.walls), chosen: make([][]int, len(s.parts))}
	for i := range out.of {
		out.of[i] = -1
	}
	for n, kind := range s.kinds {
		type pair struct{ unit, source int }
		var pairs []pair
		wall := func(unit, source int) spec.Side {
			if kind.part < 0 {
				return spec.Side(s.owner[source])
			}
			return s.walls[unit]
		}
		way := func(p pair) measure.Length { return s.way(p.source, s.units[p.unit], wall(p.unit, p.source)) }
		var far []measure.Length
		for src, count := range s.put[n] {
			for _, i := range kind.units {
				if count > 0 {
					pairs = append(pairs, pair{i, src})
					far = append(far, way(pair{i, src}))
				}
			}
		}
		order := make([]int, len(pairs))
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(far[a], far[b]) })
		free := slices.Clone(s.put[n])
		for _, o := range order {
			p := pairs[o]
			if out.of[p.unit] < 0 && free[p.source] > 0 {
				free[p.source]--
				out.of[p.unit], out.walls[p.unit] = p.source, wall(p.unit, p.source)
				out.length += far[o]
			}
		}
		for _, i := range kind.units {
			if out.of[i] < 0 {
				out.missing += kind.wants
			}
		}
	}
	for g, set := range s.sets {
		if !slices.ContainsFunc(out.of, func(k int) bool { return k >= 0 && slices.Contains(set, k) }) {
			continue
		}
		out.used++
		for p := range s.parts {
			if s.owner[set[0]] == s.partOf(p) {
				out.chosen[p] = append(out.chosen[p], g)
			}
		}
	}
	return out
}
