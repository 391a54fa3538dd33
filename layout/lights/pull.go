package lights

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

const (
	roundSags = measure.Inch / 2       // to which a better sag is rounded
	wantedBow = practice.MostBow * 0.9 // since a row that sags more is a little longer and heavier
	mostSag   = 24 * measure.Inch      // that a spec may give
)

// endPull is what the rows do to an arch on one side of which they end: the first, the last, those beside a way out. Arches between are pulled both ways alike.
type endPull struct {
	Arch  int
	Rows  int // that end here, of both walls
	Force measure.Force
	arch.Pulled
	Known bool // the arch stands, so that what it does is known
}

// pullOf returns how hard a row pulls level along its bay: a parabola of w a length over L that dips by d carries H = w·L²/8d at
// each end (statics of cables).
func pullOf(s catalog.String, bay, sag measure.Length) measure.Force {
	l, d := bay.Metres(), max(sag, practice.LeastSag).Metres()
	return measure.Mass(float64(s.Mass)).Weight() * measure.Force(l*l/(8*d))
}

// pulls works out what the rows do to every arch that they end at.
func (l *layer) pulls() {
	rows := l.Spec.Lights.Rows
	at := map[int][]arch.Pull{}
	for _, p := range l.out.Paths {
		for _, end := range [2][2]int{{p.First, p.First + 1}, {p.Last, p.Last - 1}} {
			for _, r := range l.out.Rows {
				if r.Wall == p.Wall && slices.Contains(p.Rows, r.Number) {
					bay := Apart(r.Marks[end[0]-1], r.Marks[end[1]-1])
					label := rows.Strings[(r.Number-1)%len(rows.Strings)]
					at[end[0]] = append(at[end[0]], arch.Pull{Side: r.Wall, Tape: r.Tape, Force: pullOf(label, bay, rows.Sag)})
				}
			}
		}
	}
	for n := 1; n <= len(l.Arches); n++ {
		if len(at[n]) == 0 {
			continue
		}
		e := endPull{Arch: n, Rows: len(at[n])}
		for _, p := range at[n] {
			e.Force += p.Force
		}
		e.Pulled, e.Known = l.arch(n).PulledAlong(at[n])
		l.out.Pulls = append(l.out.Pulls, e)
	}
	l.pullSays(at)
}

// pullSays reports the arches that rows bow far, the worst first. At are the pulls of each arch.
func (l *layer) pullSays(at map[int][]arch.Pull) {
	units, rows := l.Spec.Units, l.Spec.Lights.Rows
	bowed := slices.DeleteFunc(slices.Clone(l.out.Pulls), func(e endPull) bool { return !e.Known || e.Bow <= practice.MostBow })
	if len(bowed) == 0 {
		return
	}
	slices.SortStableFunc(bowed, func(a, b endPull) int { return cmp.Compare(b.Bow, a.Bow) })
	worst := bowed[0]
	is := max(rows.Sag, practice.LeastSag)
	sag := measure.RoundUp(is*worst.Bow/practice.MostBow, roundSags)
	for ; sag <= mostSag; sag += roundSags { // an arch that is bowed far does not bow in proportion
		pulls := slices.Clone(at[worst.Arch])
		for i := range pulls {
			pulls[i].Force *= measure.Force(is / sag)
		}
		if p, ok := l.arch(worst.Arch).PulledAlong(pulls); ok && p.Bow <= wantedBow {
			break
		}
	}
	var cure []finding.Change
	if sag <= mostSag {
		cure = []finding.Change{{Key: "lights.rows.sag", Value: units.Written(sag)}}
	}
	l.says.add(complaint{level: finding.LookAt, code: "rows-bow-arch", key: "lights.rows.sag", cure: cure, text: fmt.Sprintf(
		"%s; let rows sag %s instead of %s, or hang fewer.", l.bowedWords(bowed), units.Inches(sag), units.Inches(rows.Sag))})
}

// bowedWords tells what rows do to arches, those alike together.
func (l *layer) bowedWords(bowed []endPull) string {
	type figures struct { // as they are told
		rows       int
		force, bow string
	}
	var order []figures
	arches := map[figures][]int{}
	for _, e := range bowed {
		f := figures{e.Rows, l.Spec.Units.Force(e.Force), l.Spec.Units.Inches(e.Bow)}
		if len(arches[f]) == 0 {
			order = append(order, f)
		}
		arches[f] = append(arches[f], e.Arch)
	}
	told := make([]string, len(order))
	for i, f := range order {
		slices.Sort(arches[f])
		ends := say.Numbered("arch", arches[f])
		if len(arches[f]) > 1 {
			ends = "each of " + ends
		}
		told[i] = fmt.Sprintf("%d rows end at %s, pull it with %s and bow it by %s", f.rows, ends, f.force, f.bow)
	}
	return strings.Join(told, "; ")
}
