package lights

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Input is everything that the lights' places follow from.
type Input struct {
	Spec   *spec.Spec
	Arches []arch.Arch // 1 to n
	Ground ground.Layout
	Ridge  []measure.Length // cut length of each bay's ridge piece; empty without a ridge
	Turn   Turn             // what the spec leaves open
}

// layer lays string after string and keeps the account.
type layer struct {
	Input
	out  Layout
	says complaints
	full bool // no more strings are laid
}

// Lay gives every string its place. Strings are numbered in the order they hang: wraps arch by arch (left leg, right leg,
// ridge piece), then the rows along their paths, then the drops.
func Lay(in Input) Layout {
	l := layer{Input: in}
	if slices.ContainsFunc(in.Arches, func(a arch.Arch) bool { return len(a.Curve) == 0 }) {
		l.says.add(complaint{level: finding.LookAt, code: "lights-not-laid", key: "lights",
			text: "Lights were not laid, for an arch that they could hang on does not stand. Make every arch stand first."})
		return Layout{Findings: l.says.findings()}
	}
	l.wraps()
	l.rows()
	l.drops()
	if l.full {
		l.says.add(complaint{level: finding.LookAt, code: "too-many-strings", key: "lights", text: fmt.Sprintf(
			"These lights take more than %d strings, and laying stopped there; choose longer strings.", mostStrings)})
	}
	l.out.Findings = l.says.findings()
	return l.out
}

func (l *layer) arch(number int) arch.Arch { return l.Arches[number-1] }

// line is a path that strings lie along, end to end: how many, on what length, and where each distance along it is.
type line struct {
	label  catalog.String
	count  int
	length measure.Length
	lap    measure.Length    // by which each string overlaps the one before
	off    measure.Length    // of the first string's lead, kept off the line
	hang   [2]measure.Length // of the first string and the last, hanging free for the plugs
	open   bool              // as Line has it
	wrap   int
	path   int
	run    func(d measure.Length) Run
	at     func(d measure.Length) End
}

// lay lays the line's strings and returns their names, in order.
func (l *layer) lay(w line) []string {
	var names []string
	first := len(l.out.Strings)
	step := w.label.Length - w.lap
	for i := range w.count {
		if len(l.out.Strings) >= mostStrings {
			l.full = true
			break
		}
		from, off, hang := measure.Length(i)*step-w.off-w.hang[0], measure.Length(0), measure.Length(0)
		if i == 0 {
			from, off, hang = 0, w.off, w.hang[0]
		}
		used := min(w.label.Length-off-hang, w.length-from)
		if i == w.count-1 {
			hang += w.hang[1]
		}
		s := String{
			Name: fmt.Sprintf("S%d", len(l.out.Strings)+1), Number: len(l.out.Strings) + 1, Kind: w.label.Name, Run: w.run(from),
			From: w.at(from), To: w.at(from + used),
			Used: used, LeftOver: max(0, w.label.Length-used-off-hang), Off: off, Free: hang,
			Watts: w.label.Watts, Label: w.label,
		}
		l.out.Strings = append(l.out.Strings, s)
		names = append(names, s.Name)
		switch {
		case s.LeftOver <= practice.EndToEnd:
		case w.wrap < 0:
			l.out.HungTies += practice.BackTies
		default:
			l.tied(s.Run.Part, practice.BackTies)
		}
	}
	l.out.Lines = append(l.out.Lines, Line{First: first, Count: len(names), Open: w.open, Wrap: w.wrap, Path: w.path})
	return names
}

// tied counts zip ties of what is wound.
func (l *layer) tied(on Part, ties int) {
	l.out.Ties += ties
	if on.IsLeg() {
		if l.out.LegTies == nil {
			l.out.LegTies = map[Part]int{}
		}
		l.out.LegTies[on] += ties
	}
}

// hardlyUsedShare is the share of a string under which it is hardly worth hanging. Our own choice.
const hardlyUsedShare = 0.1

// hardlyUsed notes it where the string laid last covers next to nothing, with what would save it.
func (l *layer) hardlyUsed(key, saves string) {
	s := l.out.Strings[len(l.out.Strings)-1]
	if s.Used >= hardlyUsedShare*s.Label.Length {
		return
	}
	l.says.add(complaint{level: finding.Note, code: "string-hardly-used", key: key, worse: -float64(s.Used), text: fmt.Sprintf(
		"%s, %s of %s, has only %s to cover: %s.", s.Name, s.Kind, l.Spec.Units.Tape(s.Label.Length), l.Spec.Units.Inches(s.Used), saves)})
}

// end returns where a tape mark on a stretch's part is on the site.
func (l *layer) end(s stretch, tape measure.Length, place Place) End {
	if s.Kind == Ridge { // on the straight line between two crowns
		off := l.Spec.Ridge.Pipe.TakeOff
		return l.between(s.Number, (tape+off)/(l.Ridge[s.Number-1]+2*off), place)
	}
	k := l.arch(s.Number)
	along, side := tape, s.side()
	if s.Kind == LegRight {
		along = k.Length - tape
	}
	if s.Kind == Arch && tape > k.CrownTape {
		side = spec.Right
	}
	return l.on(s.Number, side, along, place)
}

// on returns the place on an arch at a tape from its left foot.
func (l *layer) on(number int, side spec.Side, along measure.Length, place Place) End {
	p := l.arch(number).PointAt(along)
	x, y, z := l.Ground.Site(number, p.X, p.Y)
	return End{At: place, X: x, Y: y, Z: z, Arch: number, Side: side}
}

// between returns the place on a bay's ridge at a share of the way from crown to crown.
func (l *layer) between(bay int, share measure.Length, place Place) End {
	a := l.on(bay, spec.Left, l.arch(bay).CrownTape, place)
	b := l.on(bay+1, spec.Left, l.arch(bay+1).CrownTape, place)
	out := a
	if share > 0.5 {
		out.Arch = bay + 1
	}
	out.X += (b.X - a.X) * share
	out.Y += (b.Y - a.Y) * share
	out.Z += (b.Z - a.Z) * share
	return out
}

// ties returns how many zip ties a stretch of pipe takes.
func ties(length measure.Length) int {
	return int(math.Ceil(float64(length/practice.TieStep)*(1-1e-9))) + 1
}
