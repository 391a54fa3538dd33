package weather

import (
	"math"
	"slices"
	"sync/atomic"

	"hoopwright/layout/anchor"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// watch sees the gusts of all ways as they are asked, side by side, and says which need not be. What it leaves out of a tunnel that is looked at roughly lies beyond the gust that
// something falls in: it moves neither of its two limits, whatever the order.
type watch struct {
	w     *Weather
	least atomic.Uint64 // bits of the least pressure, Pa, known to fell something
	over  atomic.Bool   // the tunnel is hopeless
}

func (w *Weather) watch() *watch {
	s := &watch{w: w}
	s.least.Store(math.Float64bits(math.Inf(1)))
	if a := w.of.After; a != nil && a.Collapse < mostGust {
		s.fell(w.of.pressure(a.Collapse))
	}
	return s
}

// hopeless reports whether the tunnel is so with first damage at a gust and nothing worse.
func (t *Tunnel) hopeless(w *Weather, damage measure.Speed) bool {
	if t.Hopeless == nil {
		return false
	}
	at := &Weather{of: t, Factor: w.Factor, Bears: make([]Bears, 1), Damage: damage, Collapse: mostGust}
	at.shares()
	return t.Hopeless(at)
}

// damaged notes that something gives way by a gust, and reports whether the tunnel is hopeless for it.
func (s *watch) damaged(q float64) bool {
	t := s.w.of
	if s.over.Load() || t.hopeless(s.w, t.speedAt(q)) {
		s.over.Store(true)
	}
	return s.over.Load()
}

// fell notes that something falls by a gust. Weights left open are worked out from gusts beyond.
func (s *watch) fell(q float64) {
	if t := s.w.of; !t.Rough || t.Spec.Arch.Foot != nil {
		return
	}
	for old := s.least.Load(); q < math.Float64frombits(old) && !s.least.CompareAndSwap(old, math.Float64bits(q)); {
		old = s.least.Load()
	}
}

// past reports a gust that something else has fallen in.
func (s *watch) past(q float64) bool { return q >= math.Float64frombits(s.least.Load()) }

// enough reports a gust beyond which no more need be known: something falls in every soil, and the gusts that sway is told of are behind. Roughly, the weakest soil will do.
func (s *watch) enough(q float64, k *Kind, d *demand) bool {
	t := s.w.of
	switch v := t.speedAt(q); {
	case t.Rough && v > t.needs():
		return true
	case !t.Rough && v < practice.SwayGusts()[1]:
		return false
	}
	gives := func(soil anchor.Soil, collapse bool) bool {
		return slices.ContainsFunc(t.checks(soil, heavy), func(c check) bool { return (c.collapse || !collapse) && c.of(k, d) >= 1 })
	}
	falls := func(soil anchor.Soil) bool { return gives(soil, true) }
	if !t.Rough {
		return !slices.ContainsFunc(t.soils(), func(soil anchor.Soil) bool { return !falls(soil) })
	}
	if slices.ContainsFunc(t.soils(), falls) {
		s.fell(q)
		s.damaged(q)
		return true
	}
	return s.past(q) || t.Hopeless != nil && slices.ContainsFunc(t.soils(), func(soil anchor.Soil) bool { return gives(soil, false) }) && s.damaged(q) || s.over.Load()
}
