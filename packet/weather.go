package packet

import "hoopwright/layout/measure"

// What has a walk-through of lights emptied or taken down, whatever is computed for it. 30 mph gusts: advice for tents, emptied at 30 to
// 38 mph, taken at its lower end; half an hour after the last thunder: the usual lightning advice.
const (
	closingGust    = 30 * measure.MPH
	thunderMinutes = 30
	brittleBelow   = measure.Temperature(10) // °C; below it PVC is treated as brittle
)
