package power

import (
	"strings"

	"hoopwright/layout/spec"
)

// wall is a side of the tunnel, or no side: the ridge belongs to both.
type wall int

const (
	either wall = iota - 1
	left        // as spec.Left
	right       // as spec.Right
)

// wallOf returns the wall that a run is on. A wrap over a whole arch and the ridge are on either.
func wallOf(run string) wall {
	for _, p := range []string{"leg ", "row ", "drop "} {
		if rest, ok := strings.CutPrefix(run, p); ok {
			switch {
			case strings.HasPrefix(rest, "L"), strings.HasPrefix(rest, "left"):
				return left
			case strings.HasPrefix(rest, "R"), strings.HasPrefix(rest, "right"):
				return right
			}
		}
	}
	return either
}

// side returns the wall as the spec names it; either counts as the left one.
func (w wall) side() spec.Side {
	if w == right {
		return spec.Right
	}
	return spec.Left
}
