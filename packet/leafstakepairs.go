package packet

import (
	"fmt"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// pairRows are the stakes of a bend, or of one arch, in the order they are found: each by two tapes, with the third that checks them.
func (s *stakeLeaf) pairRows(part ground.TapeLength) (rows []tapeRow) {
	done := map[int]bool{}
	for _, d := range s.dots {
		stake := s.ground.Stakes[d.Spot.Index]
		if d.Spot.Kind > ground.AtFound || done[d.Spot.Index] || stake.Arch < part.First || stake.Arch > part.Last {
			continue
		}
		done[d.Spot.Index] = true
		for _, c := range s.ground.Chords {
			if c.Offsets[0].Stake == stake.StakeID {
				rows = append(rows, tapeRow{heading: chordWords(c)})
			}
		}
		rows = append(rows, tapeRow{stakes: []ground.Stake{stake}, cells: s.pairCells(d)})
	}
	return rows
}

// pairCells are how a dot is found: first, second and check tape.
func (s *stakeLeaf) pairCells(d ground.Dot) []string {
	from := func(x ground.Spot, l measure.Length) string { return s.spot(x) + "\u00a0 " + s.bare(l) }
	switch d.How {
	case ground.TwoTapes:
		check := ""
		for _, c := range s.checks {
			if c.Kind == ground.ThirdTape && c.To == d.Spot {
				check = from(c.From, c.Distance)
			}
		}
		return []string{from(d.From, d.A), from(d.To, d.B), check}
	case ground.OnString:
		switch off := s.units.Taped(d.B); {
		case off > 0:
			return []string{"along " + s.bare(d.A), s.bare(d.B) + " right", ""}
		case off < 0:
			return []string{"along " + s.bare(d.A), s.bare(-d.B) + " left", ""}
		}
		return []string{"along " + s.bare(d.A), "on the string", ""}
	case ground.ChosenAt:
		return []string{"stick from " + s.spot(d.From), "ask where", ""}
	}
	return []string{"ask where", "", ""}
}

// chordWords says where a string runs and where its tape begins.
func chordWords(c ground.Chord) string {
	if c.Zero == c.To {
		return fmt.Sprintf("String from %s through %s and on. Zero at %s, looking away from %s", c.From, c.To, c.Zero, c.From)
	}
	return fmt.Sprintf("String from %s to %s. Zero at %s, looking to %s", c.From, c.To, c.Zero, c.To)
}
