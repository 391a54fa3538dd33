package weather

import (
	"math"

	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
)

// Wind presses on a body with q·Cf times the area it shows, q = ½·ρ·V² and ρ = 1.226 kg/m³ (ASCE 7: 0.00256·V² psf in mph, 0.613·V² Pa in m/s).
// Cf is that of open frames of round members by the share of a wall's face that is solid (ASCE 7-16 table 29.4-2, D·√q ≤ 2.5).
// Every pipe and string counts in full, for on so open a frame none shelters another.
const airPressure = 0.613 // Pa·s²/m²

// pressure returns q in Pa.
func pressure(v measure.Speed) float64 { return airPressure * float64(v) * float64(v) }

// speedAt returns the wind speed of a pressure in Pa.
func speedAt(q float64) measure.Speed { return measure.Speed(math.Sqrt(q / airPressure)) }

// dragOfFrame returns Cf for a face of which the share solidity is solid. Beyond the table's .7 it is a wall.
func dragOfFrame(solidity float64) float64 {
	switch {
	case solidity < 0.1:
		return 1.2
	case solidity < 0.3:
		return 1.3
	case solidity < 0.7:
		return 1.5
	}
	return dragOfWall
}

// dragOfWall is Cf of a closed sheet: about that of a free-standing wall, from memory.
const dragOfWall = 1.4

// thick returns the diameter of pipe and wrap as wind and ice meet it: to the middle of the wire wound on it, which covers only part of
// the pipe; our assumption.
func (m *model) thick() measure.Length { return m.spec.Pipe.OD + m.in.Wrap }

// drag returns Cf of the walls, by how solid a bay of one wall is; without the loose things when stripped.
func (m *model) drag(stripped bool) float64 {
	if m.in.Spacing <= 0 {
		return dragOfFrame(0)
	}
	height := m.CrownHeight()
	shown := m.thick().Metres() * height
	for _, l := range m.in.Loads {
		if !l.Hangs && l.From < m.crown && !(stripped && l.Loose) { // the left wall's
			shown += l.Run.Metres() * l.Thick.Metres()
		}
	}
	return dragOfFrame(shown / (m.in.Spacing.Metres() * height))
}

// windParts is the number of stretches that a leg's wind is laid on.
const windParts = 8

// sideWind returns the pushes of a side wind, blowing from left to right, for a pressure of 1 Pa: on the pipe by the height it shows, and on all
// that hangs on it.
func (m *model) sideWind(stripped bool) []bend.Load {
	cf := m.drag(stripped)
	var loads []bend.Load
	n := 2 * windParts
	for i := range n {
		from, to := m.length*measure.Length(i)/measure.Length(n), m.length*measure.Length(i+1)/measure.Length(n)
		rise := m.shape.At(to.Metres()).Y - m.shape.At(from.Metres()).Y
		loads = append(loads, bend.Load{From: from.Metres(), To: to.Metres(), Push: cf * m.thick().Metres() * math.Abs(rise)})
	}
	return append(loads, m.hung(stripped, cf, true)...)
}

// endWind returns the pushes of a wind along the tunnel for a pressure of 1 Pa: on the pipe by its whole length, and on what hangs down.
func (m *model) endWind(stripped bool) []bend.Load {
	cf := m.drag(stripped)
	whole := bend.Load{To: m.length.Metres(), Push: cf * m.thick().Metres() * m.length.Metres()}
	return append([]bend.Load{whole}, m.hung(stripped, cf, false)...)
}

// hung returns the pushes on what hangs on the arch.
func (m *model) hung(stripped bool, cf float64, side bool) (loads []bend.Load) {
	for _, l := range m.in.Loads {
		if area := l.Run.Metres() * l.Thick.Metres(); area > 0 && (side || l.Hangs) && !(stripped && l.Loose) {
			loads = append(loads, bend.Load{From: m.Within(l.From), To: m.Within(l.To), Push: cf * area})
		}
	}
	return loads
}

// gust is what one wind asks of an arch.
type gust struct {
	q        float64    // Pa
	push     [2]float64 // N, at each foot, level
	moment   [2]float64 // N·m, at each foot
	strength float64    // share of the pipe's strength, by its short-term modulus
	sway     float64    // m, of the crown
}

// side is a row of side winds, rising, up to the one at which the arch folds.
type side struct {
	gusts []gust
	folds measure.Speed // 0 where it does not within the row
}

// gustStep and mostGust are the row of winds tried.
const (
	gustStep = 10 * measure.MPH
	mostGust = 60 * measure.MPH
)

// sideGusts solves the arch, with the share late of its pipe's modulus, in side winds from none up to one that is enough: where it folds, or where
// the caller has seen enough. sign is 1 for wind from the left, −1 from the right.
func (m *model) sideGusts(solver *bend.Solver, late float64, stripped bool, sign float64, enough func(gust) bool) side {
	f := m.Body
	if stripped {
		f = f.Stripped()
	}
	wind := m.sideWind(stripped)
	lie := m.Lie()
	at := func(v measure.Speed) (gust, bool) {
		q := pressure(v)
		solve := solver.Next
		if v == 0 {
			solve = solver.Solve
		}
		was := lie
		n, err := f.Rest(solve, late, &lie, func() (loads []bend.Load) {
			for _, l := range wind {
				l.Push *= q * sign
				loads = append(loads, l)
			}
			return loads
		})
		if err != nil || !n.Shape.Stable {
			lie = was
			return gust{}, false
		}
		sh := n.Shape
		crown := sh.At(m.crown.Metres())
		return gust{q: q, strength: n.Strength(), sway: crown.X,
			push:   [2]float64{math.Abs(sh.StartThrust), math.Abs(sh.Thrust)},
			moment: [2]float64{math.Abs(sh.Start.Moment), math.Abs(sh.Finish.Moment)}}, true
	}
	var row side
	var still float64
	for v := measure.Speed(0); v <= mostGust+gustStep/2; v += gustStep {
		g, stands := at(v)
		if !stands {
			low, high := max(v-gustStep, 0), v
			for high-low > measure.MPH {
				if _, stands := at((low + high) / 2); stands {
					low = (low + high) / 2
				} else {
					high = (low + high) / 2
				}
			}
			row.folds = max(low, 0.01)
			break
		}
		if v == 0 {
			still = g.sway
		}
		g.sway = math.Abs(g.sway - still)
		row.gusts = append(row.gusts, g)
		if enough(g) {
			break
		}
	}
	return row
}

// at returns what a wind of pressure q asks, by the winds about it; beyond the last, in proportion to q.
func (s side) at(q float64) gust {
	n := len(s.gusts)
	switch {
	case n == 0:
		return gust{q: q}
	case n == 1:
		return s.gusts[0]
	}
	i := 1
	for i < n-1 && s.gusts[i].q < q {
		i++
	}
	a, b := s.gusts[i-1], s.gusts[i]
	t := (q - a.q) / (b.q - a.q)
	mix := func(x, y float64) float64 { return x + (y-x)*t }
	return gust{q: q, strength: mix(a.strength, b.strength), sway: mix(a.sway, b.sway),
		push:   [2]float64{mix(a.push[0], b.push[0]), mix(a.push[1], b.push[1])},
		moment: [2]float64{mix(a.moment[0], b.moment[0]), mix(a.moment[1], b.moment[1])}}
}
