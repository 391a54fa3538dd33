package lights

import (
	"fmt"
	"math"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// strand is a line of pipe that drops hang from: one stretch, or ridge pieces one after the other across their crowns.
type strand []stretch

func (s strand) length() measure.Length {
	var sum measure.Length
	for _, st := range s {
		sum += st.length()
	}
	return sum
}

// at returns the stretch and the tape on it that a distance along the strand comes to.
func (s strand) at(d measure.Length) (stretch, measure.Length) {
	for _, st := range s[:len(s)-1] {
		if d < st.length() {
			return st, st.from + d
		}
		d -= st.length()
	}
	last := s[len(s)-1]
	return last, min(last.from+d, last.to)
}

// hangOf returns how far a drop hangs below the pipe.
func hangOf(d spec.Drop) measure.Length {
	if d.Hang > 0 {
		return d.Hang
	}
	return d.String.Drop
}

// lapOf returns by how much strings lap, none where that would not leave half of each.
func lapOf(d spec.Drop) measure.Length {
	if d.Lap > d.String.Length/2+hair {
		return 0
	}
	return d.Lap
}

// dropCount returns how many strings reach along a length, laps counted.
func dropCount(d spec.Drop, length measure.Length) int {
	lap := lapOf(d)
	return atLeast(max(0, length-lap), d.String.Length-lap)
}

// drops lays every drop: along the arches first, then along the ridge.
func (l *layer) drops() {
	for i, d := range l.Spec.Lights.Drops {
		var strands []strand
		for _, a := range l.Arches {
			for _, st := range onFrame(l.Spec, d.Where, a.Number, a.Kind, false) {
				strands = append(strands, strand{st})
			}
		}
		strands = append(strands, l.ridgeStrands(d)...)
		key := fmt.Sprintf("lights.drops[%d]", i)
		l.missing(key, d.Where, len(strands) > 0)
		l.dropSays(key, d)
		for _, s := range strands {
			l.dropInOpening(key, d, s, l.drop(key, d, s))
		}
	}
}

// ridgeStrands joins the bays of the ridge that a drop runs through without a break.
func (l *layer) ridgeStrands(d spec.Drop) []strand {
	var out []strand
	off := l.Spec.Ridge.Pipe.TakeOff
	for i, piece := range l.Ridge {
		for _, st := range onRidge(l.Spec, d.Where, i+1, piece, -off, l.crowns(i+1)) {
			if n := len(out); n > 0 && st.from == -off {
				last := out[n-1][len(out[n-1])-1]
				if last.Number == i && last.to == l.Ridge[i-1]+off {
					out[n-1] = append(out[n-1], st)
					continue
				}
			}
			out = append(out, strand{st})
		}
	}
	return out
}

// drop lays one strand's strings and returns how low they hang over the opening.
func (l *layer) drop(key string, d spec.Drop, s strand) measure.Length {
	total := s.length()
	over := measure.Length(math.Inf(1))
	first := len(l.out.Strings)
	names := l.lay(line{
		label: d.String, count: dropCount(d, total), length: total, lap: lapOf(d), wrap: -1, path: -1,
		run: func(along measure.Length) Run {
			st, _ := s.at(along)
			return Run{st.Part, true}
		},
		at: func(along measure.Length) End {
			st, tape := s.at(along)
			return l.end(st, tape, l.place(st, tape))
		},
	})
	l.out.HungTies += ties(total)
	if len(names) > 0 {
		l.hardlyUsed(key, "a stretch that ends so much sooner would save the string")
	}
	for i, name := range names {
		from := measure.Length(i) * (d.String.Length - lapOf(d))
		st, _ := s.at(from)
		out := Drop{On: st.Part, String: name, Hang: hangOf(d), Lowest: measure.Length(math.Inf(1))}
		for _, p := range l.profile(s, from, from+l.out.Strings[first+i].Used) {
			low := p.height - out.Hang
			out.Lowest = min(out.Lowest, low)
			if p.across < l.Spec.Tunnel.OpeningWidth/2 {
				over = min(over, low)
			}
		}
		l.out.Drops = append(l.out.Drops, out)
	}
	return over
}

// sight is where a point of the pipe's underside is: above the ground line, and from the middle.
type sight struct{ height, across measure.Length }

// profile samples the underside of the pipe along a part of a strand, ends included. A few dozen samples follow the curve of
// an arch to a millimetre or two.
func (l *layer) profile(s strand, from, to measure.Length) []sight {
	const samples = 48
	var out []sight
	for i := range samples + 1 {
		st, tape := s.at(from + (to-from)*measure.Length(i)/samples)
		if st.Kind == Ridge {
			radius := l.Spec.Ridge.Pipe.OD / 2
			for _, n := range []int{st.Number, st.Number + 1} {
				k := l.arch(n)
				out = append(out, sight{k.HeightAt(spec.Left, k.CrownTape) - radius, measure.Abs(k.PointAt(k.CrownTape).X)})
			}
			continue
		}
		k := l.arch(st.Number)
		along := tape
		if st.Kind == LegRight {
			along = k.Length - tape
		}
		out = append(out, sight{k.HeightAt(spec.Left, along) - l.Spec.ArchOf(st.Number).Pipe.OD/2, measure.Abs(k.PointAt(along).X)})
	}
	return out
}

// dropInOpening reports a drop that hangs where people walk.
func (l *layer) dropInOpening(key string, d spec.Drop, s strand, over measure.Length) {
	t, units := l.Spec.Tunnel, l.Spec.Units
	if over >= t.OpeningHeight {
		return
	}
	level := finding.LookAt
	if l.Spec.Given("tunnel.opening.height") {
		level = finding.MustFix
	}
	var cure []finding.Change
	if hang := -measure.RoundUp(t.OpeningHeight-over-hangOf(d), markStep(units)); hang > 0 {
		cure = []finding.Change{{Key: key + ".hang", Value: units.Written(hang)}}
	}
	l.says.add(complaint{level: level, code: "drop-in-opening", key: key, cure: cure, on: s, worse: -float64(over), text: fmt.Sprintf(
		"%s hangs down to %s, into the opening of %s; hang it %s higher or farther from the middle.",
		d.String.Name, units.Room(over), units.Room(t.OpeningHeight), units.Inches(t.OpeningHeight-over))})
}

// dropSays reports what the drop's own figures lack.
func (l *layer) dropSays(key string, d spec.Drop) {
	if hangOf(d) == 0 {
		l.says.add(complaint{level: finding.LookAt, code: "drop-without-hang", key: key, text: fmt.Sprintf(
			"How far %s hangs is not known, so it was drawn flat on the pipe; give hang.", d.String.Name)})
	}
	if lapOf(d) < d.Lap {
		u := l.Spec.Units
		cure := []finding.Change{{Key: key + ".lap", Value: u.Written(-measure.RoundUp(-d.String.Length/2, markStep(u)))}}
		l.says.add(complaint{level: finding.LookAt, code: "drop-lap-too-long", key: key, cure: cure, text: fmt.Sprintf(
			"A lap of %s is more than half of %s, so none was taken; give a shorter lap.",
			l.Spec.Units.Inches(d.Lap), d.String.Name)})
	}
}
