package power

import (
	"hoopwright/layout/lights"
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
func wallOf(run lights.Run) wall {
	if side, ok := run.Wall(); ok {
		return wall(side)
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
