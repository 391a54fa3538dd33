package ground

import (
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// At returns where a spot is planned to be. The crosses of a square are those that Marking paints in these units.
func (l Layout) At(s Spot, units measure.System) spec.Point {
	return (&marker{Layout: l, units: units}).at(s)
}
