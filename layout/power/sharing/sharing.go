// Package sharing gives plugs to outlets so that no breaker, timer or outlet is asked for more than it has: as many amps fed as can be, on
// as few groups of outlets as do it, then by the shorter way. It knows amps and lengths of way, and nothing of tunnels.
//
// Groups are taken up step by step first (steps.go); then a search tries every choice of groups, fewest first, and every way to put like plugs on
// them, and so proves the number of groups, or says that it ran out of steps (search.go).
package sharing

import (
	"cmp"
	"slices"
)

// hair is what sums may be off by rounding.
const hair = 1e-9

// Any is the part of a plug that any group may feed.
const Any = -1

// Cannot is what a plug draws from a source that cannot feed it.
const Cannot = -1.0

// Plug is one plug to be fed.
type Plug struct {
	Part  int       // of Problem.Parts, or Any
	Draws []float64 // A, by source; Cannot where it must not be plugged in there
	Ways  []float64 // by source: how long the cord lies, in any one unit
	Wants float64   // A, that count as missing where nothing feeds it
}

// Source is an outlet.
type Source struct {
	Circuit int
	Limit   float64 // A, through all its sockets and its timer
	Socket  float64 // A, through one of its sockets
}

// Problem is plugs, sources and what each circuit has left. Groups are sources that go dark together; a group feeds one part alone.
type Problem struct {
	Plugs   []Plug
	Sources []Source
	Allowed []float64 // A, by circuit
	Groups  [][]int   // of sources
	Parts   int       // 1, or 2 where the plugs of two parts must not go dark together

	near [][]int // by plug: the sources, nearest first; made when first needed
}

// ready sorts the sources for each plug.
func (p *Problem) ready() {
	if p.near != nil {
		return
	}
	p.near = make([][]int, len(p.Plugs))
	for i, u := range p.Plugs {
		list := make([]int, len(p.Sources))
		for k := range list {
			list[k] = k
		}
		slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(u.Ways[a], u.Ways[b]) })
		p.near[i] = list
	}
}

// Plan says which source feeds each plug.
type Plan struct {
	Of      []int // source of each plug, −1 for none
	Missing float64
	Used    int     // groups
	Length  float64 // of all ways
	Chosen  [][]int // groups of each part
	Proven  bool    // no plan leaves fewer amps unfed, or as few on fewer groups
}

// Units returns the plugs that a source feeds.
func (a Plan) Units(source int) []int {
	var out []int
	for i, k := range a.Of {
		if k == source {
			out = append(out, i)
		}
	}
	return out
}

// compare orders plans by the aims: all fed, fewest groups, then length of way for the cords' sake.
func (a Plan) compare(b Plan) int {
	if d := a.Missing - b.Missing; d > hair || d < -hair {
		return cmp.Compare(d, 0)
	}
	return cmp.Or(cmp.Compare(a.Used, b.Used), cmp.Compare(a.Length, b.Length))
}

// Holds reports whether every circuit, source and socket carries what a choice of sources asks of it, and no group feeds two parts.
func (p *Problem) Holds(of []int) bool {
	left, room := make([]float64, len(p.Allowed)), make([]float64, len(p.Sources))
	for i, k := range of {
		if k < 0 {
			continue
		}
		d := p.Plugs[i].Draws[k]
		if d < 0 || d > p.Sources[k].Socket+hair {
			return false
		}
		left[p.Sources[k].Circuit] += d
		room[k] += d
	}
	for c, sum := range left {
		if sum > p.Allowed[c]+hair {
			return false
		}
	}
	for k, sum := range room {
		if sum > p.Sources[k].Limit+hair {
			return false
		}
	}
	for _, g := range p.Groups {
		part := Any
		for i, k := range of {
			if own := p.Plugs[i].Part; k >= 0 && own != Any && slices.Contains(g, k) {
				if part != Any && part != own {
					return false
				}
				part = own
			}
		}
	}
	return true
}
