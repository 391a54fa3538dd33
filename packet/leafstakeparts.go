package packet

import "hoopwright/layout/ground"

// mostRows is how many rows a table of tapes has at most.
const mostRows = 25

// tapes are the stretches that one tape reaches; the whole of a bend.
func (s *stakeLeaf) tapes() []ground.TapeLength {
	if list := s.ground.TapeLengths(s.units); len(list) > 0 {
		return list
	}
	return []ground.TapeLength{{First: 1, Last: len(s.ground.Stations)}}
}

// tapeOf returns the stretch of the tape that a part lies on.
func (s *stakeLeaf) tapeOf(part ground.TapeLength) ground.TapeLength {
	for _, t := range s.tapes() {
		if part.First >= t.First && part.Last <= t.Last {
			return t
		}
	}
	return part
}

// stretches parts the tunnel into plans: every tape's length into the fewest that fit a side each, as even as whole bays allow, cut at arches whose bays hold no other
// arch's guy stakes.
func (s *stakeLeaf) stretches() (list []ground.TapeLength) {
	if len(s.ground.Stations) == 0 {
		return nil
	}
	for _, tape := range s.tapes() {
		bays := tape.Last - tape.First
		for count := 1; ; count++ {
			if parts := s.cut(tape, count); count >= bays || s.fit(parts) {
				list = append(list, parts...)
				break
			}
		}
	}
	return list
}

// cut parts a tape's length into so many plans.
func (s *stakeLeaf) cut(tape ground.TapeLength, count int) (parts []ground.TapeLength) {
	bays := tape.Last - tape.First
	first := tape.First
	for i := 1; i <= count; i++ {
		last := tape.First + bays*i/count
		if i < count {
			last = s.ground.CutAt(last, first+1, tape.Last-1)
		}
		if last > first || bays == 0 {
			parts = append(parts, ground.TapeLength{First: first, Last: last})
			first = last
		}
	}
	return parts
}

// fit reports whether every part's plan and table fit.
func (s *stakeLeaf) fit(parts []ground.TapeLength) bool {
	for _, p := range parts {
		if len(s.rowsOf(p)) > mostRows && s.byRow() {
			return false
		}
		if _, ok := s.arranged(p); !ok {
			return false
		}
	}
	return true
}
