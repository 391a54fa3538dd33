package lights

import (
	"cmp"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Band is a part of a wrapped pipe that stays bare: the wire runs straight along it, for a guy's line or a brace's clamp on a wire would cut it.
type Band struct{ From, To measure.Length } // tapes, as the wrap's

// Knot returns the tape up a leg from its foot at which a guy or a brace is tied so high above the ground line, as it is marked: at the crown where the leg is nowhere so
// high.
func Knot(u measure.System, k *arch.Kind, side spec.Side, height measure.Length) measure.Length {
	tape, reached := k.KnotAt(u, side, height)
	if !reached {
		tape = crownTape(k, side)
	}
	return u.Taped(tape)
}

// bands returns the bands of guys and braces on a stretch, in rising order, as far as they lie on it.
func (l *layer) bands(st stretch) (list []Band) {
	if st.Kind == Ridge {
		return nil
	}
	for _, height := range l.Spec.TiedAt(st.Number) {
		list = append(list, l.bandsAt(st, height)...)
	}
	slices.SortFunc(list, func(a, b Band) int { return cmp.Compare(a.From, b.From) })
	for i := len(list) - 1; i > 0; i-- { // what runs into the next is one with it
		if list[i-1].To >= list[i].From {
			list[i-1].To = list[i].To
			list = slices.Delete(list, i, i+1)
		}
	}
	if bare := practice.BareBand(l.Spec.Units); st.length() < 2*bare*measure.Length(len(list)) {
		return nil // hardly a wrap: it is wound as it is, and the guy tied beside it
	}
	return list
}

// bandsAt returns those about a height.
func (l *layer) bandsAt(st stretch, height measure.Length) (list []Band) {
	k, half := l.arch(st.Number).Kind, practice.BareBand(l.Spec.Units)/2
	for _, side := range []spec.Side{spec.Left, spec.Right} {
		if wall, one := st.Wall(); one && wall != side {
			continue
		}
		knot := Knot(l.Spec.Units, k, side, height)
		if st.Kind == Arch && side == spec.Right {
			knot = k.Length - knot
		}
		if b := (Band{max(st.from, knot-half), min(st.to, knot+half)}); b.From < b.To {
			list = append(list, b)
		}
	}
	return list
}

// course is the way that strings take on a stretch, from their first prongs: round it, and straight along its bands.
type course struct {
	stretch
	bands []Band         // in rising order, apart from each other
	ratio measure.Length // of string to pipe where it goes round
	off   measure.Length // of the first string, kept off the pipe
	crown bool           // it begins at the stretch's end
}

// from0 returns how far along the pipe a tape is from where the course begins.
func (c course) from0(tape measure.Length) measure.Length {
	if c.crown {
		return c.to - tape
	}
	return tape - c.from
}

// bareTo returns how much of the pipe between the course's beginning and a tape is bare.
func (c course) bareTo(tape measure.Length) (sum measure.Length) {
	for _, b := range c.bands {
		lo, hi := b.From, min(b.To, tape)
		if c.crown {
			lo, hi = max(b.From, tape), b.To
		}
		sum += max(0, hi-lo)
	}
	return sum
}

// isBare reports whether a tape lies on a band.
func (c course) isBare(tape measure.Length) bool {
	return slices.ContainsFunc(c.bands, func(b Band) bool { return b.From <= tape && tape <= b.To })
}

// along returns the length of string on the pipe from the first prongs to a tape.
func (c course) along(tape measure.Length) measure.Length {
	bare := c.bareTo(tape)
	return bare + (c.from0(tape)-bare)*c.ratio
}

// tape is the inverse of along.
func (c course) tape(along measure.Length) measure.Length {
	pipe, bare := along/c.ratio, measure.Length(0) // how far along the pipe without the bands met so far, and those
	bands := slices.Clone(c.bands)
	if c.crown {
		slices.Reverse(bands)
	}
	for _, b := range bands {
		near, long := c.from0(b.From), b.To-b.From
		if c.crown {
			near = c.from0(b.To)
		}
		before := near - bare // of pipe gone round
		if pipe <= before {
			break
		}
		on := (pipe - before) * c.ratio // string on the band, were it all there
		if on <= long {
			pipe, bare = before, bare+on
			break
		}
		bare += long
		pipe -= long / c.ratio
	}
	at := pipe + bare
	if c.crown {
		return c.to - at
	}
	return c.from + at
}
