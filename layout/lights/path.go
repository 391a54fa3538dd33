package lights

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// span is a piece of a path: across one bay in a row, or up one leg from row to row.
type span struct {
	row      int // index of the row, of the upper one where it climbs
	from, to End // arch and place at both ends
	start    measure.Length
	length   measure.Length
	climb    bool
	foot     measure.Length // tape at which a climb starts
}

// path lays one kind along the rows that it hangs in, over one block of bays.
func (l *layer) path(b block, label catalog.String, hung []Row) {
	var spans []span
	var at measure.Length
	add := func(s span) {
		s.start = at
		at += s.length
		spans = append(spans, s)
	}
	out := Path{Wall: hung[0].Wall, Kind: label.Name, First: b.first, Last: b.last}
	rows := l.Spec.Lights.Rows
	out.Back = rows.FromBack != (rows.Open && l.Turn.path(len(l.out.Paths)))
	for i := range hung {
		r := &hung[i]
		if r.Kind != label.Name {
			continue
		}
		arches := []int{}
		for n := b.first; n <= b.last; n++ {
			arches = append(arches, n)
		}
		if from, _ := out.Ends(len(out.Rows)); from == b.last {
			slices.Reverse(arches)
		}
		if n := len(out.Rows); n > 0 {
			below := hung[out.Rows[n-1]-1]
			up := l.climb(below, *r, i, arches[0])
			l.out.HungTies += ties(up.length) - 2 // its ends are tied as marks of the rows
			add(up)
		}
		for j := 1; j < len(arches); j++ {
			add(l.across(*r, i, arches[j-1], arches[j]))
		}
		l.out.HungTies += len(arches)
		out.Rows = append(out.Rows, r.Number)
	}
	count := atLeast(at, label.Length)
	whole := measure.Length(count-1) * label.Length
	if at-whole <= practice.RowGive(l.Spec.Units) {
		count, at = count-1, whole // the last socket hangs a hand before its leg, tied to it; farther off it would hang in the bay
	}
	out.Length = at
	out.Strings = l.lay(line{
		label: label, count: count, length: at, open: rows.Open, wrap: -1, path: len(l.out.Paths),
		run: func(d measure.Length) Run { return Run{Part: hung[spanAt(spans, d).row].part()} },
		at:  func(d measure.Length) End { return l.onPath(spans, hung, d) },
	})
	if len(out.Strings) > 0 {
		out.LeftOver = l.out.Strings[len(l.out.Strings)-1].LeftOver
		l.hardlyUsed("lights.rows", l.savesLast(out, spans, whole))
	}
	l.out.Paths = append(l.out.Paths, out)
	fileRows(spans, hung, out.Strings, label.Length)
}

// savesLast says what would save a path its last string: rows that hang straighter, where they reach so; else a last row that ends at the last leg it reaches without.
func (l *layer) savesLast(p Path, spans []span, whole measure.Length) string {
	units, rows := l.Spec.Units, *l.Spec.Lights.Rows
	for sag := rows.Sag - markStep(units); sag >= practice.LeastSag; sag -= markStep(units) {
		long := measure.Length(0)
		for _, s := range spans {
			if !s.climb {
				s.length = wire(s, sag).length()
			}
			long += s.length
		}
		if long-whole <= practice.RowGive(units) {
			return fmt.Sprintf("a sag of %s would save it", units.Inches(sag))
		}
	}
	last := spanAt(spans, whole)
	k := slices.Index(p.Rows, last.row+1)
	if last.climb {
		k--
	}
	return fmt.Sprintf("row %d tied back at arch %d would save it", p.Rows[k], last.from.Arch)
}

// fileRows notes in each row the strings that lie in it.
func fileRows(spans []span, hung []Row, strings []string, length measure.Length) {
	for _, s := range spans {
		r := &hung[s.row]
		for i := int(s.start / length); i < len(strings) && measure.Length(i)*length < s.start+s.length; i++ {
			if n := len(r.Strings); n == 0 || r.Strings[n-1] != strings[i] {
				r.Strings = append(r.Strings, strings[i])
			}
		}
	}
}

// mark returns the place of a row at an arch.
func (l *layer) mark(r Row, tape measure.Length, arch int) End {
	return l.end(stretch{Part: Leg(r.Wall, arch)}, tape, Place{})
}

// across is a row's span over a bay.
func (l *layer) across(r Row, index, from, to int) span {
	s := span{row: index, from: l.mark(r, r.Tape, from), to: l.mark(r, r.Tape, to)}
	s.length = wire(s, l.Spec.Lights.Rows.Sag).length()
	return s
}

// wire is how a span over a bay hangs that sags so far.
func wire(s span, sag measure.Length) hung {
	dx, dy := float64(s.to.X-s.from.X), float64(s.to.Y-s.from.Y)
	return hung{level: measure.Length(math.Hypot(dx, dy)), rise: s.to.Z - s.from.Z, sag: sag}
}

// climb is the span up a leg from one row to the next of its kind.
func (l *layer) climb(below, above Row, index, arch int) span {
	return span{
		row: index, climb: true, foot: below.Tape, length: above.Tape - below.Tape,
		from: l.mark(below, below.Tape, arch), to: l.mark(above, above.Tape, arch),
	}
}

// Apart returns the straight distance between two places.
func Apart(a, b End) measure.Length {
	dx, dy, dz := float64(b.X-a.X), float64(b.Y-a.Y), float64(b.Z-a.Z)
	return measure.Length(math.Sqrt(dx*dx + dy*dy + dz*dz))
}

// Between returns how much string leads from one place to another: along the leg where rows pass both on one, else straight.
func Between(a, b End) measure.Length {
	apart := Apart(a, b)
	if a.Row.Tape > 0 && b.Row.Tape > 0 && a.Arch == b.Arch && a.Side == b.Side {
		return max(apart, measure.Abs(a.Row.Tape-b.Row.Tape))
	}
	return apart
}

// spanAt returns the span that a distance along the path lies in; at a joint, the one that follows.
func spanAt(spans []span, d measure.Length) span {
	i := sort.Search(len(spans), func(i int) bool { return spans[i].start+spans[i].length > d+1e-6 })
	return spans[min(i, len(spans)-1)]
}

// onPath returns the place at a distance along the path.
func (l *layer) onPath(spans []span, hung []Row, d measure.Length) End {
	s := spanAt(spans, d)
	r := hung[s.row]
	in := max(0, min(d-s.start, s.length))
	if s.climb {
		st := stretch{Part: Leg(r.Wall, s.from.Arch)}
		tape := s.foot + in
		out := l.end(st, tape, Place{Spot: Climbing, Part: r.part(), Arch: s.from.Arch, Tape: tape, Words: l.Spec.Units})
		out.Row = RowSpot{Row: r.Number, Tape: tape}
		return out
	}
	share := measure.Length(0)
	switch {
	case in >= s.length:
		share = 1
	case in > 0:
		share = measure.Length(wire(s, l.Spec.Lights.Rows.Sag).share(in))
	}
	out := s.from
	rest := in
	if share > 0.5 {
		out.Arch, rest = s.to.Arch, s.length-in
	}
	out.X += (s.to.X - s.from.X) * share
	out.Y += (s.to.Y - s.from.Y) * share
	out.Z += (s.to.Z-s.from.Z)*share - dip(l.Spec.Lights.Rows.Sag, float64(share))
	out.Row = RowSpot{Row: r.Number, Bay: min(s.from.Arch, s.to.Arch), Share: float64(share)}
	if s.to.Arch < s.from.Arch {
		out.Row.Share = 1 - out.Row.Share
	}
	out.At, out.Row.Tape = Place{Spot: AtArch, Part: r.part(), Arch: out.Arch, Words: l.Spec.Units}, r.Tape
	if rest > l.Spec.Units.Grid() {
		out.At.Spot, out.At.Bay, out.At.Tape, out.Row.Tape = InBay, out.Row.Bay, rest, 0
	}
	return out
}
