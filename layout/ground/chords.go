package ground

import (
	"cmp"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Chord is a string through two left stakes that are known, off which the left stakes are set that no two marks reach: so far along it, so far square to
// it. Of those the last is a set peg: the next chord runs through it.
type Chord struct {
	From, To StakeID // the string runs through From and To, and on
	Zero     StakeID // the stake at which the tape's zero lies: To where the string is carried on beyond it, From where To is the far end
	Arches   []int   // the arches that are set off it, in their order
	Offsets  []Offset
}

// Offset is a stake set off a chord.
type Offset struct {
	Stake StakeID
	Along measure.Length // from the chord's zero
	Off   measure.Length // square to the chord, to the right of someone who looks from From to To; left negative
}

// chords returns the chords for the arches of a bend that marks do not reach, where they reach two arches or more beside them: from there the strings
// are carried on. A string is carried on no more than twice its length, for its errors grow as it does, and left only where offsets are small.
func (l Layout) chords(lim practice.Ground) []Chord {
	n := len(l.Stations)
	if l.Straight || n < 3 || len(l.Ties) == 0 {
		return nil
	}
	known := l.reached(lim)
	var list []Chord
	for first := 1; first <= n; first++ {
		if known[first] {
			continue
		}
		last := first
		for last < n && !known[last+1] {
			last++
		}
		switch {
		case first > 2 && known[first-2]:
			list = append(list, l.carry(lim, known, first-1, last, 1)...)
		case last < n-1 && known[last+2]:
			list = append(list, l.carry(lim, known, last+1, first, -1)...)
		}
		first = last
	}
	return list
}

// reached tells of each arch, by number, whether two tapes of the usual reach find both its stakes.
func (l Layout) reached(lim practice.Ground) []bool {
	reached := make([]bool, len(l.Stations)+1)
	tied := map[StakeID]bool{}
	for _, t := range l.Ties {
		tied[t.Stake] = max(t.A, t.B) <= lim.Reach
	}
	for i := range l.Stations {
		reached[i+1] = tied[l.Stakes[2*i].StakeID] && tied[l.Stakes[2*i+1].StakeID]
	}
	return reached
}

// carry sets the arches from beyond a known one to the last of them, going up or down the numbers by step.
func (l Layout) carry(lim practice.Ground, known []bool, at, last, step int) (list []Chord) {
	inside := func(arch int) bool { return arch >= 1 && arch <= len(l.Stations) }
	from := at
	for inside(from-step) && known[from-step] && Between(l.left(from-step), l.left(at)) <= lim.Reach {
		from -= step
	}
	beyond := last + step // known again, if there is one
	for at != last {
		if inside(beyond) && Between(l.left(at), l.left(beyond)) <= lim.Reach && l.near(lim, at, beyond, at, beyond-step, lim.Reach) {
			return append(list, l.chord(at, beyond, at, last, step))
		}
		reach := min(lim.Reach, 2*Between(l.left(from), l.left(at)))
		end := at + step
		for end != last && l.near(lim, from, at, at, end+step, reach) {
			end += step
		}
		list = append(list, l.chord(from, at, at, end, step))
		from, at = at, end
	}
	return list
}

// left is an arch's left stake.
func (l Layout) left(arch int) Stake { return l.Stakes[2*arch-2] }

// near reports whether the left stakes of the arches beyond one, up to another, lie near the chord from–to and no farther along it than the reach.
func (l Layout) near(lim practice.Ground, from, to, zero, end int, reach measure.Length) bool {
	step := cmp.Compare(end, zero)
	for arch := zero; arch != end; {
		arch += step
		o := l.offset(from, to, zero, arch)
		if o.Along > reach || o.Along <= 0 || measure.Abs(o.Off) > lim.Offset {
			return false
		}
	}
	return true
}

// offset measures an arch's left stake off the chord through those of two arches, with the zero at a third one's.
func (l Layout) offset(from, to, zero, arch int) Offset {
	ahead := unit(sub(l.left(to).At(), l.left(from).At()))
	way := sub(l.left(arch).At(), l.left(zero).At())
	return Offset{l.left(arch).StakeID, dot(ahead, way), -cross(ahead, way)}
}

// chord gathers what is set off one chord: the left stakes of the arches beyond the zero's, up to the last.
func (l Layout) chord(from, to, zero, last, step int) Chord {
	c := Chord{From: l.left(from).StakeID, To: l.left(to).StakeID, Zero: l.left(zero).StakeID}
	for arch := zero; arch != last; {
		arch += step
		c.Arches = append(c.Arches, arch)
		c.Offsets = append(c.Offsets, l.offset(from, to, zero, arch))
	}
	return c
}

// ByChord reports whether an arch is set off a chord, for no two marks reach it.
func (l Layout) ByChord(arch int) bool {
	return slices.ContainsFunc(l.Chords, func(c Chord) bool { return slices.Contains(c.Arches, arch) })
}

// TieOf returns the tapes that a stake is found by. It is false where there are none, and where they are longer than a tape and the stake is set another way: off a
// chord, off a row that is carried on, or from its arch. anchored is whether there are Anchors.
func (l Layout) TieOf(stake StakeID, reach measure.Length, anchored bool) (Tie, bool) {
	i := slices.IndexFunc(l.Ties, func(t Tie) bool { return t.Stake == stake })
	if i < 0 {
		return Tie{}, false
	}
	t := l.Ties[i]
	if max(t.A, t.B) <= reach {
		return t, true
	}
	if s, _ := l.Stake(stake); anchored || len(l.Chords) > 0 && (s.Guy || l.ByChord(s.Arch)) {
		return Tie{}, false
	}
	return t, true
}

// Anchors returns the first and the last arch of a straight tunnel that marks reach, both stakes of each: the rows' strings run through those and are carried
// on. It is false where marks reach fewer than two arches.
func (l Layout) Anchors(units measure.System) (first, last int, ok bool) {
	for arch, yes := range l.reached(practice.OnGround(units)) {
		if yes {
			first, last = cmp.Or(first, arch), arch
		}
	}
	return first, last, l.Straight && first > 0 && last > first
}

// checkStretches parts a bend into stretches, each of which one tape reaches across: see longest.
func (l Layout) checkStretches(units measure.System) []TapeLength {
	n := len(l.Stations)
	reach := practice.OnGround(units).Reach
	fits := func(first, last int) bool { return l.longest(TapeLength{first, last}) <= reach }
	if n > 1 && fits(1, n) {
		return []TapeLength{{1, n}}
	}
	var list []TapeLength
	for first := 1; first < n; {
		last := first + 1
		for last < n && fits(first, last+1) {
			last++
		}
		list = append(list, TapeLength{first, last})
		first = last
	}
	return list
}
