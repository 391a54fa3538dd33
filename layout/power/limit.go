// What binds at a plug: label, fuse, cord, timer, breaker, volts.

package power

import (
	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// lowVolts is where mains begins for our purpose: above it a string plugs into an outlet's socket without a supply.
const lowVolts = measure.Voltage(50)

// LimitKind is what may bind at a plug.
type LimitKind int

// The limits.
const (
	NoLimit     LimitKind = iota
	LabelCount            // strings that the label allows behind a plug
	LabelWatts            // watts through a string's plug, by its label
	FuseAmps              // amps through the fuse in a string's plug
	Together              // strings that may go dark with one plug
	CordAmps              // amps through a cord, by gauge and length
	BreakerAmps           // amps for hours, the continuous share of the breaker
	TimerAmps             // amps through a timer
	VoltsLost             // share of the supply's volts lost at the last bulb
	SupplyWatts           // watts that a low-voltage supply gives
)

// Limit is a limit with what there is and what may be: strings, W, A or a share, as its kind counts.
type Limit struct {
	Kind LimitKind
	Have float64
	Of   float64
}

// Share is how much of a limit is taken up, 0 where there is none.
func (l Limit) Share() float64 {
	if l.Of <= 0 {
		return 0
	}
	return l.Have / l.Of
}

// nearest returns the limit of which most is taken up, the first of equal ones.
func nearest(list ...Limit) Limit {
	var out Limit
	for _, l := range list {
		if l.Of > 0 && (out.Kind == NoLimit || l.Share() > out.Share()+hair) {
			out = l
		}
	}
	return out
}

// mostWatts returns what a string's label allows behind its plug, zero where that is not known. A supply's watts bound what is behind any of its sockets.
func mostWatts(l catalog.String) measure.Power {
	if s := l.Supply; s != nil && s.Watts > 0 && (l.MostWatts == 0 || s.Watts < l.MostWatts) {
		return s.Watts
	}
	return l.MostWatts
}

// ownMost is the most of its volts that a run of several strings may lose by itself: the rest of the usual 3 % is left to its cords, of which there are none behind a
// supply. Our own choice. Where the label of a string behind a supply says how many go end to end, it wins, for its maker knows the wire: 0, and what is lost is said.
func ownMost(l catalog.String) float64 {
	switch {
	case l.Supply != nil && l.MostChain > 0:
		return 0
	case l.Supply != nil:
		return usualDrop(l)
	}
	return 0.02
}

// usualDrop is the share of its volts that a run may lose before something is said: behind a supply the 5 % of all, for the way there is the strings' own, as their maker
// has them plugged together.
func usualDrop(l catalog.String) float64 {
	if l.Supply != nil {
		return dropFar
	}
	return dropSeen
}

// behind returns what binds at the plugs of strings, prongs first: how many go dark together, the least count on any label, and the watts and the amps
// through each plug, by its label and its fuse, with all that hangs from it.
func behind(run []lights.String, together int) []Limit {
	n := len(run)
	out := []Limit{{Together, float64(n), float64(together)}}
	watts, amps := measure.Power(0), measure.Current(0)
	for i := n - 1; i >= 0; i-- {
		label := run[i].Label
		watts += run[i].Watts
		amps += label.Amps
		kind := LabelWatts
		if label.Supply != nil {
			kind = SupplyWatts
		}
		out = append(out, Limit{LabelCount, float64(n), float64(label.MostChain)}, Limit{kind, float64(watts), float64(mostWatts(label))},
			Limit{FuseAmps, float64(amps), float64(label.Fuse)})
	}
	return out
}

// mostTogether is how many strings may go dark with one plug of a run; 0 for the ridge, which is one run as long as its labels and volts allow.
func (s *site) mostTogether(run []lights.String) int {
	if ridgeRun(run[0]) {
		return 0
	}
	return s.Spec.Power.Together
}

// limits returns what binds a run of strings: at its plugs, and the volts that it loses by itself.
func limits(run []lights.String, together int) []Limit {
	out := behind(run, together)
	if len(run) > 1 {
		_, lost := along(run)
		out = append(out, Limit{VoltsLost, float64(lost / run[0].Label.Volts), ownMost(run[0].Label)})
	}
	return out
}

// breaks returns the first limit that is passed, or none. One string alone breaks none: there is nothing less to plug in.
func breaks(list []Limit) Limit {
	for _, l := range list {
		if l.Of > 0 && l.Have > l.Of+hair {
			return l
		}
	}
	return Limit{}
}
