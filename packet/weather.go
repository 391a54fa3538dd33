package packet

import (
	"fmt"

	"hoopwright/layout/measure"
)

// What has a walk-through of lights emptied or taken down, whatever is computed for it. 30 mph gusts: advice for tents, emptied at 30 to
// 38 mph, taken at its lower end; half an hour after the last thunder: the usual lightning advice.
const (
	closingGust    = 30 * measure.MPH
	thunderMinutes = 30
	brittleBelow   = measure.Temperature(10) // °C; below it PVC is treated as brittle
)

// Shares of a limit at which people act before it is reached: be ready, let nobody in.
const (
	readyShare  = 0.6
	closedShare = 0.8
)

// closing is a figure of the weather with what is done at it.
type closing struct{ at, do string }

// closingFigures lists the figures that the tunnel is closed by, mildest first.
func (b *binder) closingFigures() []closing {
	u := b.spec.Units
	return []closing{
		{"Gusts " + u.Speed(closingGust*readyShare), "Be ready: look at stakes, guys, sockets; ask the forecast again."},
		{"Gusts " + u.Speed(closingGust*closedShare), "Let nobody more in."},
		{"Gusts " + u.Speed(closingGust), "Everyone out, lights off, stay from under it. Look at every stake, guy and socket before it opens again."},
		{"Thunder", fmt.Sprintf("Everyone out and indoors until %d minutes after the last.", thunderMinutes)},
		{"Ice or snow on it", "Closed. Lights off, nobody under it, do not beat it off. It sags: take it down when it thaws."},
	}
}
