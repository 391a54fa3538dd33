package spec

import (
	"math"
	"strconv"
	"strings"

	"hoopwright/layout/measure"
)

// bounds are the least and the most that the reader takes of one quantity.
type bounds[T ~float64] struct {
	kind      kind[T]
	low, high T
}

// kind is a sort of quantity: how it is read, and how a limit of it is printed.
type kind[T ~float64] struct {
	parse func(string) (T, error)
	print func(T, measure.System) string
}

// quantity reads a key's quantity within its bounds.
func quantity[T ~float64](m mapping, key string, into *T, b bounds[T]) bool {
	f, ok := m.value(key)
	if !ok {
		return false
	}
	v, ok := b.of(f)
	if ok {
		*into = v
	}
	return ok
}

// of reads a value as a quantity within the bounds.
func (b bounds[T]) of(f field) (T, bool) {
	s, ok := f.scalar()
	if !ok {
		return 0, false
	}
	f.takes("%s, %s", measure.Name(b.low), b.in(f.spec.Units))
	if len(s) > longestText {
		f.fail("is longer than %d characters", longestText)
		return 0, false
	}
	v, err := b.kind.parse(s)
	if err != nil {
		text, _, _ := strings.Cut(err.Error(), ", as in ") // the example of the key itself serves better
		f.failWith(f.other(b.meant(s)), "%s", text)
		return 0, false
	}
	if !b.hold(v) {
		f.fail("is %s; %s is wanted", quote(s), b.in(f.spec.Units))
		return 0, false
	}
	return v, true
}

// slack is how far beyond a limit a quantity may lie, as a share of it: 12 × 25.4 is not 304.8 in binary.
const slack = 1e-9

func (b bounds[T]) hold(v T) bool {
	return v >= b.low-T(slack*math.Abs(float64(b.low))) && v <= b.high+T(slack*math.Abs(float64(b.high)))
}

// in prints the bounds.
func (b bounds[T]) in(s measure.System) string {
	return b.kind.print(b.low, s) + " to " + b.kind.print(b.high, s)
}

// round prints a number of the spec's own units with no more digits than it has.
func round(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) }

// in prints a quantity that has one unit in both systems.
func in[T ~float64](unit string, size T) func(T, measure.System) string {
	return func(v T, _ measure.System) string { return round(float64(v/size)) + " " + unit }
}
