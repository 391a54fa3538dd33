package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// Words of tasks. One word for one thing: stake (never bar, pin, rod), stick of pipe, mark for the fixed points that tapes start from, dot for
// paint, line for string on the ground, string for lights, cap on stakes, cover on plugs and sockets, ribbon, three-way, run of strings. A test looks
// for the other words in what every example's tasks say.

// instruction is a task in words: what to do, what is wanted, what to do if it is off, what to sign or write.
type instruction struct {
	Do, Want, IfOff, Sign string
}

// taskWords says tasks in the words of one plan.
type taskWords struct {
	plan  *layout.Plan
	units measure.System
	mark  func(name string) string // how a fixed mark is called: by its letter, its name or both
}

// newTaskWords calls marks by their names.
func newTaskWords(plan *layout.Plan) taskWords {
	return taskWords{plan, plan.Spec.Units, func(name string) string { return name }}
}

// of says a task.
func (w taskWords) of(t crew.Task) instruction {
	var wants, offs []string
	for _, f := range merged(t.Want) {
		wants = append(wants, w.want(f))
	}
	if first := t.Want; len(first) > 3 && first[0].What == crew.DotCheck && !t.Hold { // they stand in the table
		wants = []string{w.inTable(first[0])}
	}
	for _, c := range t.IfOff {
		offs = append(offs, w.cure(c))
	}
	in := instruction{Want: eachOnce(wants), IfOff: eachOnce(offs), Sign: w.sign(t)}
	if words := doing(t.Action); words != nil {
		in.Do = words(w, t)
	}
	return in
}

// inTable says the limit of checks that are tried on the way, one beside each row of the table.
func (w taskWords) inTable(f crew.Figure) string {
	if f.Checks[0].Kind == ground.FoundWidth {
		return fmt.Sprintf("Each cross within %s of the stick’s mark.", w.limit(f.Limit))
	}
	return fmt.Sprintf("The third tape within %s of the table.", w.limit(f.Limit))
}

// eachOnce sets sentences after each other, each once.
func eachOnce(list []string) string {
	var out []string
	seen := map[string]bool{}
	for _, s := range list {
		if s != "" && !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return strings.Join(out, " ")
}

// merged puts figures that are wanted alike into one, with all their arches, bays and stakes.
func merged(list []crew.Figure) (out []crew.Figure) {
	for _, f := range list {
		k := len(out) - 1
		if k >= 0 && out[k].What == f.What && f.What != crew.DotCheck && out[k].Length == f.Length && out[k].Angle == f.Angle && len(f.Walls) == len(out[k].Walls) && out[k].Line == f.Line {
			out[k].Arches = append(out[k].Arches[:len(out[k].Arches):len(out[k].Arches)], f.Arches...)
			out[k].Bays = append(out[k].Bays[:len(out[k].Bays):len(out[k].Bays)], f.Bays...)
			continue
		}
		out = append(out, f)
	}
	return out
}

// tape prints a length taped over the ground.
func (w taskWords) tape(l measure.Length) string { return w.units.Ground(l) }

// limit prints a limit or a small distance.
func (w taskWords) limit(l measure.Length) string { return w.units.Inches(w.units.Taped(l)) }

// spot names what a tape starts from or ends at.
func (w taskWords) spot(s ground.Spot) string {
	switch s.Kind {
	case ground.AtMark:
		return w.mark(w.plan.Ground.Marks[s.Index].Name)
	case ground.AtFound:
		return "the cross for " + w.plan.Ground.Stakes[s.Index].String()
	case ground.AtAhead:
		return "the cross ahead"
	case ground.AtAside:
		return "the cross beside"
	}
	return w.plan.Ground.Stakes[s.Index].String()
}

// stakeNames lists stakes: a few by name, many by their ends.
func stakeNames(list []ground.Stake) string {
	var names []string
	for _, s := range list {
		names = append(names, s.String())
	}
	return few(names)
}

// few lists a few names, or the ends of many.
func few(names []string) string {
	if len(names) > 4 {
		return names[0] + " to " + names[len(names)-1]
	}
	return say.And(names)
}
