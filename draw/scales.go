package draw

import (
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// Scales returns the standard scales of a system of units, largest first.
func Scales(units measure.System) []paper.Scale {
	return measure.By(units, paper.ImperialScales, paper.MetricScales)
}
