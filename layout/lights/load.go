package lights

import (
	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Loads returns what hangs on an arch beside its pipe, from the left foot: wraps and drops spread over their stretch, rows
// as points at their marks on both legs, each half of what hangs in the bays next to it. Whole strings count, for what is
// left over is bundled and hangs there too. A row's bay is taken as long as the route's spacing, sag counted.
func Loads(s *spec.Spec, number int, k *arch.Kind) []arch.Load {
	var out []arch.Load
	for _, w := range s.Lights.Wraps {
		for _, st := range onFrame(s, w.Where, number, k, true) {
			c := onto(s, w, st).wind()
			reach := st.length() * measure.Length(c.covers)
			if w.Plug == spec.PlugCrown {
				st.from = st.to - reach
			} else {
				st.to = st.from + reach
			}
			out = append(out, load(k, st, weigh(w.String, c.wound+c.leftOver)))
		}
	}
	for _, d := range s.Lights.Drops {
		for _, st := range onFrame(s, d.Where, number, k, false) {
			whole := measure.Length(dropCount(d, st.length())) * d.String.Length
			l := load(k, st, weigh(d.String, whole))
			l.Run, l.Thick, l.Hangs = whole, breadth(d.String), true
			out = append(out, l)
		}
	}
	return append(out, rowLoads(s, number, k)...)
}

// breadth is how thick a string is to wind and ice: twice its wire, for its bulbs and their leads; our assumption.
func breadth(s catalog.String) measure.Length { return 2 * s.Wire }

// CrownHeight returns the height of an arch's crown above its ground line.
func CrownHeight(k *arch.Kind) measure.Length { return k.HeightAt(spec.Left, k.CrownTape) }

// RidgeLoad returns the lights on a bay's ridge piece, at no place yet: whole wraps by their weight, and the drops under its length. from and to are the
// heights of its crowns, which decide where "above 8 ft" begins on it.
func RidgeLoad(s *spec.Spec, bay int, piece, from, to measure.Length) (wraps, drops arch.Load) {
	drops.Hangs = true
	for _, w := range s.Lights.Wraps {
		for _, st := range onRidge(s, w.Where, bay, piece, pieceEnd(s), crowns{from, to}) {
			c := onto(s, w, st).wind()
			wraps.Weight += weigh(w.String, c.wound+c.leftOver)
		}
	}
	for _, d := range s.Lights.Drops {
		lapped := d.String.Length / (d.String.Length - lapOf(d))
		for _, st := range onRidge(s, d.Where, bay, piece, -s.Ridge.Pipe.TakeOff, crowns{from, to}) {
			drops.Weight += weigh(d.String, st.length()*lapped)
			drops.Run += st.length() * lapped
			drops.Thick = max(drops.Thick, breadth(d.String))
		}
	}
	return wraps, drops
}

func weigh(s catalog.String, length measure.Length) measure.Force {
	return measure.Mass(float64(s.Mass) * length.Metres()).Weight()
}

// load puts a weight on a stretch of leg, counted from the left foot.
func load(k *arch.Kind, st stretch, weight measure.Force) arch.Load {
	if st.Kind == LegRight {
		st.from, st.to = k.Length-st.to, k.Length-st.from
	}
	return arch.Load{From: st.from, To: st.to, Weight: weight}
}

// rowLoads returns the points at which rows hang on an arch.
func rowLoads(s *spec.Spec, number int, k *arch.Kind) []arch.Load {
	rows := s.Lights.Rows
	if rows == nil {
		return nil
	}
	half := sagged(s.Tunnel.Spacing, rows.Sag) / 2
	var out []arch.Load
	for _, wall := range rows.Walls {
		var halves measure.Length
		for _, bay := range []int{number - 1, number} {
			if bay >= 1 && bay < s.Tunnel.Arches && !s.IsWay(wall, bay) {
				halves += half
			}
		}
		if halves == 0 {
			continue
		}
		for i, mark := range rows.Marks() {
			if mark > crownTape(k, wall) {
				break
			}
			st := stretch{Part: Leg(wall, number), from: mark, to: mark}
			kind := rows.Strings[i%len(rows.Strings)]
			l := load(k, st, weigh(kind, halves))
			l.Run, l.Thick = halves, breadth(kind)
			out = append(out, l)
		}
	}
	return out
}
