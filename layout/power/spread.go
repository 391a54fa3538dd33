package power

import (
	"math"
	"slices"

	"hoopwright/layout/measure"
)

// How far the first cord of a further branch may go before its first plug place. While circuits are chosen it is short, for an outlet near a
// place is better than a long cord past other places; with the circuits chosen, a long one is better than many in line. Our own choice.
const (
	nearRun = 12 * measure.Metre
	farRun  = measure.Length(math.MaxFloat64)
)

// spread takes up the outlet's free sockets where that leaves fewer cords in line, or no tap in a tap: the hardest branch is cut in two
// while that helps.
func (f *feeding) spread(src source, all []branch, run measure.Length) []branch {
	all = slices.Clone(all)
	for len(all) < src.outlet.Sockets {
		at, most := -1, 0
		for i, b := range all {
			if h := f.hardness(src, b); h > most {
				at, most = i, h
			}
		}
		if at < 0 {
			break
		}
		var best []branch
		for _, two := range f.cuts(all[at]) {
			if two[1].nodes[0].way > run {
				continue
			}
			if h := max(f.hardness(src, two[0]), f.hardness(src, two[1])); h < most {
				best, most = two, h
			}
		}
		if best == nil {
			break
		}
		all = slices.Replace(all, at, at+1, best...)
	}
	return all
}

// hardness counts what a branch by itself has too much of: cords in line beyond mostInLine, and taps in taps.
func (f *feeding) hardness(src source, b branch) int {
	if len(b.nodes) == 1 {
		return 0 // nothing to cut
	}
	l := f.choose(src, []branch{b})
	return max(0, l.line-mostInLine) + l.stacked
}

// cuts returns the ways to cut a branch in two, the shortest further cord first: its two directions apart, its far half apart.
func (f *feeding) cuts(b branch) [][]branch {
	var out [][]branch
	cut := func(a, c []node) {
		if len(a) > 0 && len(c) > 0 {
			out = append(out, []branch{b.of(a), b.of(c)})
		}
	}
	cut(f.site.bothWays(b.nodes))
	half := len(b.nodes) / 2
	cut(b.nodes[:half], b.nodes[half:])
	return out
}

// of returns a branch of some of its nodes.
func (b branch) of(nodes []node) branch {
	out := branch{wall: b.wall, nodes: nodes}
	for _, n := range nodes {
		out.amps += n.amps
	}
	return out
}
