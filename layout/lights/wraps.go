package lights

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// onto returns the job of a wrap on a stretch.
func onto(s *spec.Spec, w spec.Wrap, st stretch) job {
	pipe := s.Ridge.Pipe
	if st.Kind != Ridge {
		pipe = s.ArchOf(st.Number).Pipe
	}
	j := job{
		pipe: st.length(), core: pipe.OD + w.String.Wire, wire: w.String.Wire,
		string: w.String.Length, pitch: w.Pitch, count: w.Count,
	}
	for _, free := range hangs(s, st) {
		j.free += free
	}
	if st.Kind == Ridge && w.Pitch == 0 && w.Count == 0 {
		j.pitch = max(practice.RidgePitch(s.Units), j.wire)
	}
	return j
}

// hangs returns how much string hangs free at the lower and the upper tape of a stretch, for the plugs there.
func hangs(s *spec.Spec, st stretch) (free [2]measure.Length) {
	foot, joint := practice.PlugFree(s.Units), practice.JointFree(s.Units)
	free = [2]measure.Length{joint, joint}
	if st.Kind != Ridge && st.from <= practice.BareFoot(s.Units)+hair {
		free[0] = foot
	}
	if st.Kind == Arch {
		free[1] = foot
	}
	return free
}

// pieceEnd returns the length of a ridge piece left bare at each end for its socket.
func pieceEnd(s *spec.Spec) measure.Length { return max(bare, s.Ridge.Pipe.Socket) }

// wraps lays every wrap, arch by arch: left leg, right leg, the ridge piece beyond.
func (l *layer) wraps() {
	met := make([]bool, len(l.Spec.Lights.Wraps))
	one := func(i int, st stretch) {
		met[i] = true
		l.wrap(i, st)
	}
	for _, a := range l.Arches {
		for _, p := range []Kind{LegLeft, LegRight, Arch} {
			for i, w := range l.Spec.Lights.Wraps {
				for _, st := range onFrame(l.Spec, w.Where, a.Number, a.Kind, true) {
					if st.Kind == p {
						one(i, st)
					}
				}
			}
		}
		if a.Number > len(l.Ridge) {
			continue
		}
		for i, w := range l.Spec.Lights.Wraps {
			for _, st := range onRidge(l.Spec, w.Where, a.Number, l.Ridge[a.Number-1], pieceEnd(l.Spec), l.crowns(a.Number)) {
				one(i, st)
			}
		}
	}
	for i, w := range l.Spec.Lights.Wraps {
		l.missing(fmt.Sprintf("lights.wraps[%d]", i), w.Where, met[i])
	}
}

// crowns returns the heights of a bay's crowns.
func (l *layer) crowns(bay int) crowns {
	return crowns{CrownHeight(l.arch(bay).Kind), CrownHeight(l.arch(bay + 1).Kind)}
}

// missing says that lights are meant for parts that are not there.
func (l *layer) missing(key string, where []spec.Place, met bool) {
	ridge := slices.ContainsFunc(where, func(p spec.Place) bool { return p.Part == spec.RidgePieces })
	if ridge && len(l.Ridge) == 0 {
		l.says.add(complaint{level: finding.LookAt, code: "no-ridge-for-lights", key: key,
			text: "Lights are meant for the ridge, but this tunnel has no ridge pieces; give it a ridge, or take ridge out of where."})
		return
	}
	if !met {
		l.says.add(complaint{level: finding.LookAt, code: "lights-nowhere", key: key,
			text: "These lights find no place: no arch or bay that they name reaches so far. Lower the height or tape in where."})
	}
}

// wrap lays one wrap on one stretch.
func (l *layer) wrap(i int, st stretch) {
	spc := l.Spec.Lights.Wraps[i]
	way := course{stretch: st, bands: l.bands(st)}
	j := onto(l.Spec, spc, st)
	for _, b := range way.bands {
		j.bare += b.To - b.From
	}
	j.pipe -= j.bare
	c := j.wind()
	if off := leadOff(l.Spec, spc); l.Turn.Leads && st.Kind != Ridge && off > 0 {
		with := j
		with.off, with.free = off, 0 // the lead is what hangs
		if less := with.wind(); less.fault == c.fault && less.count == c.count {
			j, c = with, less
		}
	}
	open := spc.Plug == spec.PlugOpen && c.covers == 1
	way.crown = spc.Plug == spec.PlugCrown || open && l.Turn.wrap(len(l.out.Wraps))
	hang := hangs(l.Spec, st)
	if way.crown {
		hang[0], hang[1] = hang[1], hang[0]
	}
	if j.off > 0 {
		hang[0] = 0
	}
	hang[0] = max(0, min(hang[0], c.leftOver))
	hang[1] = max(0, min(hang[1], c.leftOver-hang[0]))
	way.ratio, way.off = measure.Length(stretchRatio(j.core, c.pitch)), j.off+hang[0]
	if c.covers < 1 { // the bands lie where they lie, reached or not
		end := way.tape(c.wound)
		reach := way.from0(end)
		c.covers = float64(reach / st.length())
		c.turns = float64((reach - way.bareTo(end)) / c.pitch)
	}
	strings := l.lay(line{
		label: spc.String, count: c.count, length: c.wound, off: j.off, hang: hang, open: open, wrap: len(l.out.Wraps), path: -1,
		run: func(measure.Length) Run { return Run{Part: st.Part} },
		at: func(d measure.Length) End {
			t := way.tape(d)
			return l.end(st, t, l.place(st, t))
		},
	})
	flags := l.flags(way, spc.String, strings, c.wound)
	if way.crown {
		slices.Reverse(strings)
	}
	l.out.Wraps = append(l.out.Wraps, Wrap{
		On: st.Part, Pitch: c.pitch, Turns: c.turns, Strings: strings, Label: spc.String, Bare: way.bands,
		From: st.from, To: st.to, PipeEnd: l.pipeEnd(st), Flags: flags, Mirror: st.Kind == LegRight, Crown: way.crown, Open: open, Covers: c.covers,
	})
	l.tied(st.Part, practice.WrapTies)
	l.wrapSays(i, st, j, c)
}

// hair is what rounding may move a tape mark by.
const hair measure.Length = 1e-6

// place says where on a stretch's part a tape mark is.
func (l *layer) place(st stretch, tape measure.Length) Place {
	p := Place{Spot: Along, Part: st.Part, Tape: tape, Words: l.Spec.Units}
	crown := func(arch int) Place { return Place{Spot: AtCrown, Arch: arch} }
	foot := func(side spec.Side) Place { return Place{Spot: AtFoot, Part: Leg(side, st.Number)} }
	if st.Kind == Ridge {
		end := pieceEnd(l.Spec)
		switch piece := l.Ridge[st.Number-1]; {
		case tape <= end+hair:
			return crown(st.Number)
		case tape >= piece-end-hair:
			return crown(st.Number + 1)
		}
		return p
	}
	k, low := l.arch(st.Number), practice.BareFoot(l.Spec.Units)+hair
	switch {
	case st.Kind == Arch && tape >= k.Length-low:
		return foot(spec.Right)
	case tape <= low:
		return foot(st.side())
	case st.Kind != Arch && tape >= wrapEnd(l.Spec, st.Number, k.Kind, st.side())-hair:
		return crown(st.Number)
	}
	return p
}

// flags returns the marks at which a wrapper checks the pitch: every 30 in (750 mm) along the pipe, where the stretch passes them and has more than a
// hand's breadth to go, and turns go round it.
func (l *layer) flags(way course, s catalog.String, strings []string, wound measure.Length) []Flag {
	step := practice.FlagEvery(l.Spec.Units)
	gap := (s.Length - s.Lead - s.Tail) / measure.Length(s.Bulbs-1)
	if s.Bulbs < 2 || gap <= 0 {
		return nil
	}
	var out []Flag
	for mark := step; mark < way.to-practice.FlagOff; mark += step {
		along := way.along(mark)
		if mark <= way.from || along >= wound || way.isBare(mark) {
			continue
		}
		along += way.off
		which := int(along / s.Length)
		if which >= len(strings) {
			continue
		}
		along -= measure.Length(which) * s.Length
		bulb := 1 + int(math.Round(float64((along-s.Lead)/gap)))
		out = append(out, Flag{Tape: mark, Bulb: max(1, min(s.Bulbs, bulb)), String: strings[which]})
	}
	return out
}

// pipeEnd returns the tape of the end of the pipe that a stretch is on.
func (l *layer) pipeEnd(st stretch) measure.Length {
	if st.Kind == Ridge {
		return l.Ridge[st.Number-1]
	}
	k := l.arch(st.Number)
	if st.Kind == Arch {
		return k.Length
	}
	return pipeEnd(l.Spec, st.Number, k.Kind, st.side())
}
