package ground

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// mostMarks bounds the pairs that are tried for one stake: of more marks than this only the nearest count.
const mostMarks = 32

// sight is one mark as seen from a stake.
type sight struct {
	mark Mark
	nth  int
	tape measure.Length
	err  measure.Length // how far off at worst the tape's far end is in its own direction: the tape's error and the mark's
}

// view is all that a stake can be taped from.
type view struct {
	stake  Stake
	all    []sight
	usable []sight        // those within the reach that its best pair takes
	best   measure.Length // the error of that pair
	limit  measure.Length // the error that is good enough to leave the tapes on their marks
	pair   [2]sight       // the best two
}

// choosePairs returns the ties of the stakes, in their order, for two tapes that are carried along the walk.
//
// Best of a stake's marks are the two within a tape's reach that leave it least far off when the tapes are off: those that cross nearest to a right
// angle, unless the marks are taped themselves; the shorter tapes where two pairs are equal. Where those in reach leave it too far off,
// or fewer than two are, marks further away count too, no further than it takes. But every change of marks costs a walk and invites a mistake: two marks are kept
// as long as they are good enough, and where they are not, those of the good ones are taken that will be kept longest.
func choosePairs(walk []Stake, marks []Mark, lim practice.Ground) []Tie {
	var views []view
	for _, stake := range walk {
		if v, ok := look(stake, marks, lim); ok {
			views = append(views, v)
		}
	}
	var list []Tie
	var kept [2]sight
	third := -1
	for i, v := range views {
		a, b, ok := v.good(kept[0].nth, kept[1].nth)
		if i == 0 || !ok {
			a, b = lasting(views[i:])
			third = -1
		}
		kept = [2]sight{a, b}
		t := Tie{
			Stake: v.stake.StakeID, MarkA: a.mark.Name, A: a.tape, MarkB: b.mark.Name, B: b.tape,
			Crossing: crossingAt(v.stake.At(), a.mark.At, b.mark.At), Error: v.error(a, b),
		}
		if c, ok := v.check(a, b, third); ok {
			t.MarkC, t.C, third = c.mark.Name, c.tape, c.nth
		}
		list = append(list, t)
	}
	return list
}

// look returns what a stake can be taped from; false where that is fewer than two marks.
func look(stake Stake, marks []Mark, lim practice.Ground) (view, bool) {
	p := stake.At()
	v := view{stake: stake}
	for i, m := range marks {
		if d := Distance(p, m.At); d > measure.Inch { // from a mark on the spot no direction is to be had
			v.all = append(v.all, sight{m, i, d, lim.Tape + m.drift.along(unit(sub(m.At, p)))})
		}
	}
	if len(v.all) > mostMarks {
		slices.SortFunc(v.all, func(a, b sight) int { return cmp.Or(cmp.Compare(a.tape, b.tape), cmp.Compare(a.nth, b.nth)) })
		v.all = v.all[:mostMarks]
		slices.SortFunc(v.all, func(a, b sight) int { return a.nth - b.nth })
	}
	if len(v.all) < 2 {
		return v, false
	}
	reaches := []measure.Length{lim.Reach}
	for _, s := range v.all {
		if s.tape > lim.Reach {
			reaches = append(reaches, s.tape)
		}
	}
	slices.Sort(reaches)
	for _, reach := range reaches {
		v.usable = slices.DeleteFunc(slices.Clone(v.all), func(s sight) bool { return s.tape > reach })
		if len(v.usable) < 2 {
			continue
		}
		v.pair = v.bestPair()
		if v.best = v.error(v.pair[0], v.pair[1]); v.best <= lim.Weak {
			break
		}
	}
	v.limit = max(lim.Good, v.best*1.2)
	return v, true
}

// error returns how far off at worst the stake is, taped from two marks.
func (v view) error(a, b sight) measure.Length {
	return thrown(a.err, b.err, crossingAt(v.stake.At(), a.mark.At, b.mark.At), min(a.tape, b.tape))
}

// bestPair returns the two usable marks that leave the stake least far off.
func (v view) bestPair() [2]sight {
	var pairs [][2]sight
	for i := range v.usable {
		for j := i + 1; j < len(v.usable); j++ {
			pairs = append(pairs, [2]sight{v.usable[i], v.usable[j]})
		}
	}
	return best(pairs, func(s [2]sight) (float64, measure.Length) {
		return float64(measure.Inch / v.error(s[0], s[1])), s[0].tape + s[1].tape
	})
}

// good returns the stake's sights of two marks, and whether they are good enough for it.
func (v view) good(nthA, nthB int) (a, b sight, ok bool) {
	i := slices.IndexFunc(v.usable, func(s sight) bool { return s.nth == nthA })
	k := slices.IndexFunc(v.usable, func(s sight) bool { return s.nth == nthB })
	if i < 0 || k < 0 || i == k {
		return a, b, false
	}
	a, b = v.usable[i], v.usable[k]
	return a, b, v.error(a, b) <= v.limit
}

// lasting returns the two marks that are good enough for the first of the stakes and for the most after it; of those that last equally long the best for
// the first.
func lasting(views []view) (a, b sight) {
	first := views[0]
	a, b = first.pair[0], first.pair[1]
	run := func(nthA, nthB int) int {
		n := 1
		for n < len(views) {
			if _, _, ok := views[n].good(nthA, nthB); !ok {
				break
			}
			n++
		}
		return n
	}
	longest, least := run(a.nth, b.nth), first.best
	for i, s := range first.usable {
		for _, t := range first.usable[i+1:] {
			err := first.error(s, t)
			if err > first.limit {
				continue
			}
			if n := run(s.nth, t.nth); n > longest || n == longest && err < least-1e-6 {
				a, b, longest, least = s, t, n, err
			}
		}
	}
	return a, b
}

// check returns the mark that the third tape starts from, to check the two: the one before while it crosses both at 30° or more, else the one that crosses
// them best. There is none where no third mark is within the reach of the two.
func (v view) check(a, b sight, before int) (sight, bool) {
	p := v.stake.At()
	thirds := slices.DeleteFunc(slices.Clone(v.usable), func(s sight) bool { return s.nth == a.nth || s.nth == b.nth })
	if len(thirds) == 0 {
		return sight{}, false
	}
	merit := func(s sight) float64 { return min(square(p, s, a), square(p, s, b)) }
	for _, s := range thirds {
		if s.nth == before && merit(s) >= 0.5 {
			return s, true
		}
	}
	return best(thirds, func(s sight) (float64, measure.Length) { return merit(s), s.tape }), true
}

// best returns the item of the highest merit; of those equal to within rounding the one of least length; of those again the
// first. So a site that is moved or turned keeps its marks.
func best[T any](items []T, of func(T) (merit float64, length measure.Length)) T {
	top := math.Inf(-1)
	for _, item := range items {
		merit, _ := of(item)
		top = max(top, merit)
	}
	var chosen T
	least := measure.Length(math.Inf(1))
	for _, item := range items {
		if merit, length := of(item); merit > top-1e-9 && length < least-1e-6 {
			chosen, least = item, length
		}
	}
	return chosen
}

// square returns how nearly two tapes cross at a right angle: the sine of the angle between them.
func square(p spec.Point, a, b sight) float64 {
	return math.Abs(float64(cross(sub(a.mark.At, p), sub(b.mark.At, p)) / a.tape / b.tape))
}

// crossingAt returns the angle at which the lines from p to a and b cross, 0 to π/2.
func crossingAt(p, a, b spec.Point) measure.Angle {
	toA, toB := sub(a, p), sub(b, p)
	return measure.Angle(math.Atan2(math.Abs(float64(cross(toA, toB))), math.Abs(float64(dot(toA, toB)))))
}

// thrown returns how far at worst a point is thrown off when two tapes that cross at the angle may be off by ea and eb: half the long diagonal of the little
// parallelogram that the four shifted arcs enclose, √(ea² + eb² + 2·ea·eb·cos)/sin, which is e/sin(angle/2) for equal ones. The straight-sided figure
// says nothing where the tapes run in one line; the shorter tape bounds it there.
func thrown(ea, eb measure.Length, crossing measure.Angle, shorter measure.Length) measure.Length {
	sin, cos := math.Sincos(float64(crossing))
	bound := max(shorter, ea+eb)
	long := measure.Length(math.Sqrt(float64(ea*ea+eb*eb) + float64(2*ea*eb)*cos))
	if long >= bound*measure.Length(sin) {
		return bound
	}
	return long / measure.Length(sin)
}
