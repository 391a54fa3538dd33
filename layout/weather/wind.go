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
func (k *Kind) thick() measure.Length { return k.spec.Pipe.OD + k.In.Wrap }

// drag returns Cf of the walls, by how solid a bay of one wall is.
func (k *Kind) drag() float64 {
	if k.In.Spacing <= 0 {
		return dragOfFrame(0)
	}
	height := k.Crown.Metres()
	shown := k.thick().Metres() * height
	for _, l := range k.In.Loads {
		if !l.Hangs && l.From < k.CrownTape { // the left wall's
			shown += l.Run.Metres() * l.Thick.Metres()
		}
	}
	return dragOfFrame(shown / (k.In.Spacing.Metres() * height))
}

// windParts is the number of stretches that a leg's wind is laid on.
const windParts = 8

// sideWind returns the pushes of a side wind, blowing from left to right, for a pressure of 1 Pa: on the pipe by the height it shows, and on all
// that hangs on it.
func (k *Kind) sideWind() []bend.Load {
	cf := k.drag()
	var loads []bend.Load
	n := 2 * windParts
	for i := range n {
		from, to := k.Length*measure.Length(i)/measure.Length(n), k.Length*measure.Length(i+1)/measure.Length(n)
		rise := k.Shape.At(to.Metres()).Y - k.Shape.At(from.Metres()).Y
		loads = append(loads, bend.Load{From: from.Metres(), To: to.Metres(), Push: cf * k.thick().Metres() * math.Abs(rise)})
	}
	return append(loads, k.hung(cf, true)...)
}

// endWind returns the pushes of a wind along the tunnel for a pressure of 1 Pa: on the pipe by its whole length, and on what hangs down.
func (k *Kind) endWind() []bend.Load {
	cf := k.drag()
	whole := bend.Load{To: k.Rod.Length(), Push: cf * k.thick().Metres() * k.Length.Metres()}
	return append([]bend.Load{whole}, k.hung(cf, false)...)
}

// hung returns the pushes on what hangs on the arch.
func (k *Kind) hung(cf float64, side bool) (loads []bend.Load) {
	for _, l := range k.In.Loads {
		if area := l.Run.Metres() * l.Thick.Metres(); area > 0 && (side || l.Hangs) {
			loads = append(loads, bend.Load{From: k.Within(l.From), To: k.Within(l.To), Push: cf * area})
		}
	}
	return loads
}
