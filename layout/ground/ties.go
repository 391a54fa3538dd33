package ground

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// mostMarks bounds the pairs that are tried for one stake: of more marks than this only the nearest count.
const mostMarks = 32

// ties returns two tapes for every stake, three where there are three marks, and what is worth saying about them. The two
// are the marks within a tape's reach whose tapes cross nearest to a right angle, the shorter tapes where two pairs are
// equal. The third is the one that crosses both of them best. Where those in reach leave the stake too far off, or fewer than two
// are, marks further away count too, no further than it takes.
func ties(s *spec.Spec, stakes []Stake, marks []Mark) ([]Tie, []finding.Finding) {
	lim := limitsIn(s.Units)
	var list []Tie
	var far, weak []string
	var longest, worst measure.Length
	flattest := measure.Angle(math.Pi / 2)
	for _, stake := range stakes {
		t, ok := tie(stake, marks, lim)
		if !ok {
			continue
		}
		list = append(list, t)
		if reach := max(t.A, t.B); reach > lim.reach {
			far, longest = append(far, t.Stake), max(longest, reach)
		}
		if t.Error > lim.weak {
			weak, worst, flattest = append(weak, t.Stake), max(worst, t.Error), min(flattest, t.Crossing)
		}
	}
	u := s.Units
	var findings []finding.Finding
	report := func(level finding.Level, code, text string) {
		findings = append(findings, finding.Finding{Level: level, Code: code, Text: text, Sheet: "stake", Key: "site.marks", Pos: s.Position("site.marks")})
	}
	if len(list) == 0 {
		report(finding.Note, "ties-missing",
			"No stake can be tied to fixed marks: give two under site.marks, better three, and the tunnel can be put back on the same spot next year.")
	}
	if len(far) > 0 {
		report(finding.LookAt, "tie-out-of-reach", fmt.Sprintf(
			"The tapes to %s run up to %s, further than the %s a tape reaches: add a mark nearer to them.", names(far), u.Tape(longest), u.Tape(lim.reach)))
	}
	if len(weak) > 0 {
		report(finding.LookAt, "tie-weak", fmt.Sprintf(
			"The two tapes to %s cross at %.0f° at worst: %s on each tape moves the stake %s. Add a mark off to one side, so that they cross nearer to a right angle.",
			names(weak), float64(flattest)*180/math.Pi, u.Tape(lim.tape), u.Tape(worst)))
	}
	return list, findings
}

// sight is one mark as seen from a stake.
type sight struct {
	mark Mark
	tape measure.Length
	nth  int
}

func tie(stake Stake, marks []Mark, lim limits) (Tie, bool) {
	p := stake.At()
	var all []sight
	for i, m := range marks {
		if d := distance(p, m.At); d > measure.Inch { // from a mark on the spot no direction is to be had
			all = append(all, sight{m, d, i})
		}
	}
	if len(all) > mostMarks {
		slices.SortFunc(all, func(a, b sight) int { return before(a.tape, b.tape, a.nth, b.nth) })
		all = all[:mostMarks]
		slices.SortFunc(all, func(a, b sight) int { return a.nth - b.nth })
	}
	if len(all) < 2 {
		return Tie{}, false
	}
	a, b, usable := choose(p, all, lim)
	t := Tie{
		Stake: stake.Name, MarkA: a.mark.Name, A: a.tape, MarkB: b.mark.Name, B: b.tape,
		Crossing: crossingAt(p, a.mark.At, b.mark.At),
	}
	t.Error = thrown(lim.tape, t.Crossing, min(a.tape, b.tape))
	others := func(from []sight) []sight {
		return slices.DeleteFunc(slices.Clone(from), func(s sight) bool { return s.nth == a.nth || s.nth == b.nth })
	}
	thirds := others(usable)
	if len(thirds) == 0 {
		thirds = others(all)
	}
	if len(thirds) > 0 {
		c := best(thirds, func(s sight) (float64, measure.Length) {
			return min(square(p, s, a), square(p, s, b)), s.tape
		})
		t.MarkC, t.C = c.mark.Name, c.tape
	}
	return t, true
}

// choose returns the two marks to tape from, and those within the reach that it took.
func choose(p spec.Point, all []sight, lim limits) (a, b sight, usable []sight) {
	reaches := []measure.Length{lim.reach}
	for _, s := range all {
		if s.tape > lim.reach {
			reaches = append(reaches, s.tape)
		}
	}
	slices.Sort(reaches)
	for _, reach := range reaches {
		usable = slices.DeleteFunc(slices.Clone(all), func(s sight) bool { return s.tape > reach })
		if len(usable) < 2 {
			continue
		}
		a, b = bestPair(p, usable)
		if thrown(lim.tape, crossingAt(p, a.mark.At, b.mark.At), min(a.tape, b.tape)) <= lim.weak {
			break
		}
	}
	return a, b, usable
}

func bestPair(p spec.Point, from []sight) (a, b sight) {
	var pairs [][2]sight
	for i := range from {
		for j := i + 1; j < len(from); j++ {
			pairs = append(pairs, [2]sight{from[i], from[j]})
		}
	}
	pair := best(pairs, func(s [2]sight) (float64, measure.Length) {
		return square(p, s[0], s[1]), s[0].tape + s[1].tape
	})
	return pair[0], pair[1]
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

// thrown returns how far at worst a point is thrown off when each of two tapes that cross at the angle may be off by e:
// e/sin(angle/2), half the long diagonal of the little rhomb that the four shifted arcs enclose. The straight-sided rhomb says
// nothing where the tapes run in one line; the shorter tape bounds it there.
func thrown(e measure.Length, crossing measure.Angle, shorter measure.Length) measure.Length {
	half := measure.Length(math.Sin(float64(crossing) / 2))
	if e >= half*max(shorter, 2*e) {
		return max(shorter, 2*e)
	}
	return e / half
}
