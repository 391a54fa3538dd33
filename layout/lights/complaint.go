package lights

import (
	"fmt"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/say"
)

// complaint is a finding before it is known on how many parts it holds.
type complaint struct {
	level finding.Level
	code  string
	key   string
	text  string // without a part, the whole sentence; with parts, what follows their names
	cure  []finding.Change
	on    []stretch // the parts, in the order they were met
	worse float64   // of like complaints, the greatest speaks for all
	mixed bool      // they differ in their figures
}

// complaints gathers them, so that sixty legs with one trouble make one finding.
type complaints []complaint

// add takes a complaint up, joining its parts to one of the same code and key on the same sort of part.
func (list *complaints) add(c complaint) {
	for i, old := range *list {
		if old.code != c.code || old.key != c.key || onRidgePieces(old) != onRidgePieces(c) {
			continue
		}
		both := append(old.on, c.on...)
		mixed := old.mixed || old.text != c.text
		if c.worse > old.worse {
			old = c
		}
		old.on, old.mixed = both, mixed
		(*list)[i] = old
		return
	}
	*list = append(*list, c)
}

// onRidgePieces reports whether a complaint is about the ridge.
func onRidgePieces(c complaint) bool { return len(c.on) > 0 && c.on[0].Kind == Ridge }

// findings writes them out.
func (list complaints) findings() []finding.Finding {
	var out []finding.Finding
	for _, c := range list {
		text := c.text
		if len(c.on) > 0 {
			text = "On " + listed(c.on) + ": " + text
		}
		if c.mixed {
			text += " Of several, these are the worst figures."
		}
		out = append(out, finding.Finding{Level: c.level, Code: c.code, Text: text, Key: c.key, Cure: c.cure})
	}
	return out
}

// listed names parts: "legs L1 to L6, R1 to R6 and ridge 2".
func listed(on []stretch) string {
	var phrases []string
	for p := LegLeft; p <= Ridge; p++ {
		var numbers []int
		for _, s := range on {
			if s.Kind == p {
				numbers = append(numbers, s.Number)
			}
		}
		slices.Sort(numbers)
		for _, r := range say.Runs(slices.Compact(numbers)) {
			phrase := fmt.Sprint(names[p].one, r.First)
			if r.Last > r.First {
				phrase = fmt.Sprintf("%s%d to %s%d", names[p].from, r.First, names[p].to, r.Last)
			}
			phrases = append(phrases, phrase)
		}
	}
	return say.And(phrases)
}
