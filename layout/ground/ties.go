package ground

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// ties returns two tapes for every stake, three where there are three marks, and what is worth saying about them. The stakes are gone through in the
// order of the walk, and two tapes stay hooked to their marks as long as they serve: see choosePairs.
func ties(s *spec.Spec, walk, stakes []Stake, marks []Mark) []Tie {
	found := map[StakeID]Tie{}
	for _, t := range choosePairs(walk, marks, practice.OnGround(s.Units)) {
		found[t.Stake] = t
	}
	var list []Tie
	for _, stake := range stakes {
		if t, ok := found[stake.StakeID]; ok {
			list = append(list, t)
		}
	}
	return list
}

// beyondReach says how the stakes are set that no two marks reach, and what that does to them.
func (l Layout) beyondReach(u measure.System) string {
	lim := practice.OnGround(u)
	if len(l.Chords) > 0 {
		return fmt.Sprintf(" Until then they are set by chord and offset over %d strings carried on from stake to stake, and the errors of all of them add up.", len(l.Chords))
	}
	first, last, ok := l.Anchors(u)
	if !ok {
		return ""
	}
	worst := measure.Length(0)
	for _, t := range l.Ties {
		if s, _ := l.Stake(t.Stake); !s.Guy && (s.Arch == first || s.Arch == last) {
			worst = max(worst, t.Error)
		}
	}
	base := l.Stations[last-1].Along - l.Stations[first-1].Along
	past := max(l.Stations[first-1].Along, l.Stations[len(l.Stations)-1].Along-l.Stations[last-1].Along)
	return fmt.Sprintf(" Until then the rows are carried on straight from arches %d and %d, which leaves the far end up to %s off to a side when each tape is %s off.",
		first, last, u.Tape(worst*(1+2*past/base)), u.Tape(lim.Tape))
}

// tieFindings says which stakes their tapes do not fix well, and where another mark would help.
func tieFindings(s *spec.Spec, l Layout) []finding.Finding {
	stakes, list, marks := l.Stakes, l.Ties, l.Marks
	u, lim := s.Units, practice.OnGround(s.Units)
	var findings []finding.Finding
	report := func(level finding.Level, code, text string) {
		findings = append(findings, finding.Finding{Level: level, Code: code, Text: text, Key: "site.marks"})
	}
	if len(list) == 0 {
		report(finding.Note, "ties-missing",
			"No stake can be tied to fixed marks: measure two, better three, into the spec, and the tunnel can be put back on the same spot next year.")
		return findings
	}
	var far, weak []string
	var longest measure.Length
	var worst Tie
	flattest := measure.Angle(math.Pi / 2)
	m := newMarker(l, u)
	for _, t := range list {
		if !m.fromMarks(t.Stake) {
			continue
		}
		if reach := max(t.A, t.B); reach > lim.Reach {
			far, longest = append(far, t.Stake.String()), max(longest, reach)
			if _, used := m.tie(t.Stake); !used {
				continue
			}
		}
		if t.Error > lim.Weak {
			weak, flattest = append(weak, t.Stake.String()), min(flattest, t.Crossing)
			if t.Error > worst.Error {
				worst = t
			}
		}
	}
	if on := onMarks(stakes, marks); len(on) > 0 {
		report(finding.LookAt, "stake-on-mark", fmt.Sprintf(
			"By the spec's figures these stakes stand on marks: %s. Where the mark is a post or a corner none can be driven; look at the figures, or move the start.", say.Some(on, mostNames)))
	}
	if len(far) > 0 {
		report(finding.LookAt, "tie-out-of-reach", fmt.Sprintf(
			"The tapes to %s run up to %s, further than the %s a tape reaches: add a mark nearer to them.", say.Some(far, mostNames), u.Tape(longest), u.Tape(lim.Reach))+l.beyondReach(u))
	}
	switch {
	case len(weak) == 0:
	case thrown(lim.Tape, lim.Tape, worst.Crossing, min(worst.A, worst.B)) > lim.Weak:
		report(finding.LookAt, "tie-weak", fmt.Sprintf(
			"The two tapes to %s %s: %s on each tape moves %s by %s. Another mark would help most %s.",
			say.Some(weak, mostNames), crossing(flattest), u.Tape(lim.Tape), worst.Stake, u.Tape(worst.Error), l.helpful(worst, u)))
	default:
		report(finding.LookAt, "tie-weak", fmt.Sprintf(
			"The marks that %s %s tied to are themselves taped: %s on every tape, theirs too, moves %s by %s. Tape those marks from one more mark, or give them coordinates.",
			say.Some(weak, mostNames), say.Agree(len(weak), "is", "are"), u.Tape(lim.Tape), worst.Stake, u.Tape(worst.Error)))
	}
	return findings
}

// crossing says how two tapes cross at worst.
func crossing(flattest measure.Angle) string {
	if flattest < 5*measure.Degree {
		return "run almost in one line where a stake and its two marks lie on one"
	}
	return fmt.Sprintf("cross at %.0f° at worst", float64(flattest)*180/math.Pi)
}

// helpful says on which side of a weakly tied stake another mark would do most: square to the way that its two tapes run, which is the way that they hold it.
func (l Layout) helpful(t Tie, u measure.System) string {
	stake, _ := l.Stake(t.Stake)
	toward := func(mark string) spec.Point { return unit(sub(l.Marks[l.mark(mark).Index].At, stake.At())) }
	a, b := toward(t.MarkA), toward(t.MarkB)
	if dot(a, b) < 0 {
		b = spec.Point{X: -b.X, Y: -b.Y}
	}
	held := add(a, b)
	out := unit(spec.Point{X: -held.Y, Y: held.X})
	where := fmt.Sprintf("along the walk, before or beyond arch %d", stake.Arch)
	if measure.Abs(dot(held, ahead(stake.heading))) >= measure.Abs(dot(held, rightOf(stake.heading))) {
		where = fmt.Sprintf("off to the left or the right of arch %d", stake.Arch)
	}
	off := practice.OnGround(u).Reach / 4
	one, other := along(stake.At(), out, off), along(stake.At(), out, -off)
	return fmt.Sprintf("%s: something fixed about [%s, %s] or [%s, %s]", where, legible(one.X, u), legible(one.Y, u), legible(other.X, u), legible(other.Y, u))
}

// onMarks returns the stakes that are to stand on a mark: "L1 on gate post".
func onMarks(stakes []Stake, marks []Mark) (list []string) {
	for _, s := range stakes {
		for _, m := range marks {
			if Distance(s.At(), m.At) <= measure.Inch {
				list = append(list, s.String()+" on "+m.Name)
			}
		}
	}
	return list
}

// walk returns the stakes in the order a crew sets them out: the left row of a straight tunnel from end to end, then the right one, each with its guy
// stakes; round a bend, where both rows are found together, pair by pair.
func (l Layout) walk() []Stake {
	stakes := slices.Clone(l.Stakes)
	slices.SortStableFunc(stakes, func(a, b Stake) int {
		if l.Straight {
			return cmp.Or(cmp.Compare(a.Side, b.Side), cmp.Compare(paced(a), paced(b)))
		}
		return cmp.Or(cmp.Compare(paced(a), paced(b)), cmp.Compare(a.Side, b.Side))
	})
	return stakes
}

// paced is how far along the walk a stake stands, in eighths of a millimetre: the last digit of a sum parts no stakes that stand side by side.
func paced(s Stake) int64 { return int64(s.Along*8 + 0.5) }
