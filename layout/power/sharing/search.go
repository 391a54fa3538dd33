// The search that proves how few groups do.

package sharing

import (
	"cmp"
	"fmt"
	"slices"
)

// searchSteps bounds the search for fewer groups. The sizes that occur take some hundred steps; where it runs out nothing is claimed.
const searchSteps = 40000

// search looks for a plan that leaves fewer amps unfed, or as few on fewer groups, than one found step by step: it tries every choice of
// groups, counted by their kinds, fewest first, and for each every way to put the kinds of plugs on their sources. Branches whose
// sources together have too few amps left are cut off.
type search struct {
	*Problem
	kinds []kind
	like  [][]int // groups that are alike, nearest to the plugs first
	owner []int   // part that each source feeds, −1 for none
	room  []float64
	left  []float64 // of each circuit
	put   [][]int   // by kind and source: how many
	spare float64   // that may still stay unfed
	steps int
}

// kind is plugs that are alike to every source.
type kind struct {
	plugs []int
	part  int
	wants float64
	draws []float64
}

// fewest returns the plan improved to the least amps unfed and the fewest groups, and whether that is proven.
func (p *Problem) fewest(now Plan) Plan {
	s := search{Problem: p, owner: make([]int, len(p.Sources)), steps: searchSteps}
	s.gather()
	s.alike()
	for now.Missing > hair { // less and less unfed, on all groups
		better, ok := s.some(now.Missing-10*hair, -1)
		if !ok {
			break
		}
		now = better
	}
	for n := range now.Used {
		if better, ok := s.some(now.Missing+hair, n); ok {
			now = better
			break
		}
	}
	now.Proven = s.steps > 0
	return now
}

// gather sorts the plugs into kinds, those that draw most first.
func (s *search) gather() {
	at := map[string]int{}
	for i, u := range s.Plugs {
		k := kind{part: u.Part, wants: u.Wants, draws: slices.Clone(u.Draws)}
		fits := false
		for src, d := range k.draws {
			if d > s.Sources[src].Socket+hair {
				k.draws[src] = Cannot
			}
			fits = fits || k.draws[src] >= 0
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
		s.kinds[n].plugs = append(s.kinds[n].plugs, i)
	}
	slices.SortStableFunc(s.kinds, func(a, b kind) int { return cmp.Compare(b.wants, a.wants) })
	for range s.kinds {
		s.put = append(s.put, make([]int, len(s.Sources)))
	}
}

// alike sorts the groups into those that carry the same. Groups that share a circuit are like no other, nor are those that some plug must not
// go on.
func (s *search) alike() {
	at := map[string]int{}
	for g, set := range s.Groups {
		var words []string
		shared := false
		for _, k := range set {
			src := s.Sources[k]
			var draws []float64
			for _, kind := range s.kinds {
				draws = append(draws, kind.draws[k])
			}
			words = append(words, fmt.Sprint(src.Socket, src.Limit, s.Allowed[src.Circuit], draws))
			for other, o := range s.Sources {
				shared = shared || o.Circuit == src.Circuit && !slices.Contains(set, other)
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
	far := make([]float64, len(s.Groups))
	for g, set := range s.Groups {
		for _, u := range s.Plugs {
			least := u.Ways[set[0]]
			for _, k := range set {
				least = min(least, u.Ways[k])
			}
			far[g] += least
		}
	}
	for _, list := range s.like {
		slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(far[a], far[b]) })
	}
}

// some looks for a plan on n groups, on all for n below zero, that leaves no more than so much unfed.
func (s *search) some(missing float64, n int) (Plan, bool) {
	for k := range s.owner {
		s.owner[k] = -1
	}
	return s.choose(0, 0, n, missing)
}

// choose gives groups of the kinds from the kth on to the parts, of the kth from its ith on, n in all or all of them.
func (s *search) choose(k, i, n int, missing float64) (Plan, bool) {
	if s.steps--; s.steps <= 0 {
		return Plan{}, false
	}
	if k == len(s.like) || n == 0 {
		if n > 0 {
			return Plan{}, false
		}
		return s.pack(missing)
	}
	if i == len(s.like[k]) {
		return s.choose(k+1, 0, n, missing)
	}
	lowest := 0 // alike groups in order of their parts: no choice twice
	if i > 0 {
		lowest = s.owner[s.Groups[s.like[k][i-1]][0]]
	}
	for part := lowest; part < s.Parts; part++ {
		s.own(s.like[k][i], part)
		if out, ok := s.choose(k, i+1, n-1, missing); ok {
			return out, true
		}
		s.own(s.like[k][i], -1)
	}
	if n < 0 {
		return Plan{}, false
	}
	return s.choose(k+1, 0, n, missing)
}

// own gives a group's sources to a part.
func (s *search) own(group, part int) {
	for _, k := range s.Groups[group] {
		s.owner[k] = part
	}
}

// pack puts the plugs on the owned sources.
func (s *search) pack(missing float64) (Plan, bool) {
	s.left = slices.Clone(s.Allowed)
	s.room = s.room[:0]
	for _, src := range s.Sources {
		s.room = append(s.room, src.Limit)
	}
	s.spare = missing
	if !s.place(0) {
		return Plan{}, false
	}
	return s.made(), true
}

// place puts the plugs of a kind and of all after it; false where more stays unfed than may.
func (s *search) place(kind int) bool {
	if kind == len(s.kinds) {
		return true
	}
	if s.short(kind) > s.spare+hair {
		return false
	}
	return s.on(kind, 0, len(s.kinds[kind].plugs))
}

// short returns at least how many amps of the kinds from one on cannot be fed, by what is left in all.
func (s *search) short(from int) float64 {
	var want, have float64
	for _, k := range s.kinds[from:] {
		least := k.wants
		for _, d := range k.draws {
			if d >= 0 {
				least = min(least, d)
			}
		}
		want += least * float64(len(k.plugs))
	}
	through := make([]float64, len(s.left))
	for k, src := range s.Sources {
		if s.owner[k] >= 0 {
			through[src.Circuit] += s.room[k]
		}
	}
	for c, t := range through {
		have += min(t, s.left[c])
	}
	return want - have
}

// on puts n plugs of a kind on the sources from one on, as many as it takes first.
func (s *search) on(kind, from, n int) bool {
	if s.steps--; s.steps <= 0 {
		return false
	}
	k := s.kinds[kind]
	if from == len(s.Sources) || n == 0 {
		rest := k.wants * float64(n)
		if rest > s.spare+hair {
			return false
		}
		s.spare -= rest
		for src := from; src < len(s.Sources); src++ {
			s.put[kind][src] = 0
		}
		if s.place(kind + 1) {
			return true
		}
		s.spare += rest
		return false
	}
	c, most := s.Sources[from].Circuit, 0
	d := k.draws[from]
	if s.owner[from] >= 0 && d >= 0 && (k.part == Any || k.part == s.owner[from]) {
		most = n
		if d > 0 {
			most = min(n, int((min(s.room[from], s.left[c])+hair)/d))
		}
	}
	for x := max(most, 0); x >= 0; x-- {
		take := max(d, 0) * float64(x)
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

// made turns the counts into a plan.
func (s *search) made() Plan {
	out := Plan{Of: make([]int, len(s.Plugs)), Chosen: make([][]int, s.Parts)}
	for i := range out.Of {
		out.Of[i] = -1
	}
	for n := range s.kinds {
		s.spread(&out, n)
	}
	for g, set := range s.Groups {
		if part := s.owner[set[0]]; slices.ContainsFunc(out.Of, func(k int) bool { return k >= 0 && slices.Contains(set, k) }) {
			out.Used++
			out.Chosen[part] = append(out.Chosen[part], g)
		}
	}
	return out
}

// spread puts the plugs of a kind on its sources: the plug and source with the shortest way first.
func (s *search) spread(out *Plan, n int) {
	type pair struct{ plug, source int }
	var pairs []pair
	kind, free := s.kinds[n], slices.Clone(s.put[n])
	for src, count := range free {
		for _, i := range kind.plugs {
			if count > 0 {
				pairs = append(pairs, pair{i, src})
			}
		}
	}
	way := func(p pair) float64 { return s.Plugs[p.plug].Ways[p.source] }
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(way(a), way(b)) })
	for _, p := range pairs {
		if out.Of[p.plug] < 0 && free[p.source] > 0 {
			free[p.source]--
			out.Of[p.plug] = p.source
			out.Length += way(p)
		}
	}
	for _, i := range kind.plugs {
		if out.Of[i] < 0 {
			out.Missing += kind.wants
		}
	}
}
