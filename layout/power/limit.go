package power

import (
	"math"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// Most watts through a string's first plug where its label names none: one maker's sheets say 210 to 220 W for a 3 A plug
// fuse; at 230 V common practice, no source.
const (
	plugWatts    = measure.Power(210)
	plugWatts230 = measure.Power(400)
)

// lowVolts is where mains begins for our purpose: above it a string plugs into an outlet's socket without a supply.
const lowVolts = measure.Voltage(50)

// limit is what a label allows behind one plug, zero where no limit is known.
type limit struct {
	count int
	watts measure.Power
}

// limitOf returns a string's limit. A supply's watts bound what is behind any of its sockets.
func limitOf(l catalog.String) limit {
	out := limit{count: l.MostChain, watts: l.MostWatts}
	if out.watts == 0 && l.Supply == nil {
		switch {
		case l.Volts >= 200:
			out.watts = plugWatts230
		case l.Volts > lowVolts:
			out.watts = plugWatts
		}
	}
	if s := l.Supply; s != nil && s.Watts > 0 && (out.watts == 0 || s.Watts < out.watts) {
		out.watts = s.Watts
	}
	return out
}

// stops says in words which limit a chain would pass, empty for none.
func (l limit) stops(count int, watts measure.Power) string {
	switch {
	case l.count > 0 && count > l.count:
		return "the label allows " + plural(l.count, "string") + " end to end"
	case l.watts > 0 && watts > l.watts+hair:
		return "the first plug carries " + measure.Watts(l.watts)
	}
	return ""
}

// ownShares are the shares of the volts that a chain by itself may lose: all of the usual 5 %, and less and less of it where its cords then
// take the rest over. Shorter chains want more cords, so the first share that serves is taken.
var ownShares = [...]float64{dropFar, 0.04, 0.03, ownMost}

// mostBright returns how many equal strings may hang end to end before they alone lose more than a share of the volts: the greatest N
// with R′·s·I·N·(N+1) within it, see dropAlong. One string always may.
func mostBright(l catalog.String, share float64) int {
	each := ohms(wireOhms(l), l.Length) * float64(ampsOf(l))
	if each <= 0 || l.Volts <= 0 {
		return math.MaxInt
	}
	n := (math.Sqrt(1+4*share*float64(l.Volts)/each) - 1) / 2
	return max(1, int(min(n+hair, 1e6)))
}
