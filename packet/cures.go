package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"hoopwright/draw/block"
	"hoopwright/layout/finding"
	"hoopwright/layout/say"
)

// cureSays says a change of the spec to somebody who builds, by its key without the numbers of lists. What is not here has its cure in the finding's own words.
var cureSays = map[string]string{
	"dates.close": "have the last evening on %s", "dates.down": "take down by %s", "crew.helpers": "plan for %s helpers in all", "crew.start": "begin at %s",
	"season": "name the season %s", "braces.bays": "brace bays %s alone", "guys.arches": "guy arches %s alone", "guys.out": "stand guy stakes %s out", "guys.from": "tie guys %s up", "tunnel.ways[].bay": "open bay %s instead",
	"braces.from": "tie braces %s up", "arch.span": "set the feet %s apart", "arch.height": "bend to a height of %s", "lights.wraps[].count": "wind %s strings on each", "lights.wraps[].pitch": "wind a turn every %s",
	"lights.wraps[].string": "use %s there", "lights.rows.up to": "hang rows up to %s", "lights.rows.first": "hang the first row at %s",
	"site.cords.crossing": "let a cord pass the way %s", "lights.drops[].hang": "hang drops %s", "lights.drops[].lap": "lap drops %s",
}

// cureWords says in words what would cure a finding, for the leaves show the tunnel as it is: "A new print could stand guy stakes 7 ft 6 in out." It is empty where the finding says so itself, or nothing is known to cure it.
func cureWords(cure []finding.Change) string {
	var words []string
	for _, c := range cure {
		say, ok := cureSays[c.Path()]
		if !ok || c.Value == "" {
			continue
		}
		value := strings.Trim(c.Value, "[]")
		if day, err := time.Parse(time.DateOnly, value); err == nil {
			value = day.Format("2 Jan 2006")
		}
		words = append(words, fmt.Sprintf(say, value))
	}
	if len(words) == 0 {
		return ""
	}
	return "A new print could " + say.And(words) + "."
}

// cureLines are the cures of findings as they are pasted into the spec, each once: the key's path, its value, and the title of what it cures.
func cureLines(list []finding.Finding) (lines []string) {
	for _, f := range list {
		for _, c := range f.Cure {
			line := c.Key + ": " + c.Value
			if c.Value == "" {
				line = c.Key + " taken out"
			}
			if line += " (" + titleOf(f.Code) + ")"; !slices.Contains(lines, line) {
				lines = append(lines, line)
			}
		}
	}
	return lines
}

// titleOf is what paper calls a finding.
func titleOf(code string) string {
	row, ok := finding.Of(code)
	if !ok {
		return code
	}
	return row.Title
}

// remark is the findings of one code: its title, what they say, what cures them, each once.
type remark struct {
	code        string
	level       finding.Level
	head, title string
	step        int // of its leaf, where it is acted on; 0 for none said
	texts, does []string
}

// remarksOf gathers findings by code, the worst first; one that somebody took on stands with their name.
func remarksOf(findings []finding.Finding) (list []remark) {
	for _, f := range findings {
		t := remark{code: f.Code, level: f.Level, title: titleOf(f.Code)}
		leaf := ""
		if row, _ := finding.Of(f.Code); row.Leaf != "board" {
			leaf = fmt.Sprintf(", leaf %d", leafNumber(row.Leaf))
		}
		switch t.head = say.Capital(f.Level.String()) + ": " + t.title + leaf; {
		case f.AcceptedBy != "":
			t.head = fmt.Sprintf("Taken on by %s: %s", f.AcceptedBy, t.title)
		case t.place() == datesFirst:
			t.head = t.title
		}
		k := slices.IndexFunc(list, func(o remark) bool { return o.head == t.head })
		if k < 0 {
			k = len(list)
			list = append(list, t)
		}
		if list[k].texts = append(list[k].texts, f.Text); f.AcceptedAs != "" {
			list[k].texts = append(list[k].texts, f.AcceptedAs+". Signed ____________")
		}
		if cure := cureWords(f.Cure); cure != "" && !slices.Contains(list[k].does, cure) {
			list[k].does = append(list[k].does, cure)
		}
	}
	slices.SortStableFunc(list, func(a, b remark) int { return cmp.Compare(a.level, b.level) })
	return list
}

// block sets them: in full, or the title with what to do.
func (t remark) block(full bool) block.Block {
	head := t.head
	if t.step > 0 {
		head += fmt.Sprintf(", step %d", t.step)
	}
	words := []string{block.Figure(head + ".")}
	if full {
		words = append(words, t.texts...)
	}
	words = append(words, t.does...)
	if t.level == finding.LookAt {
		settles := "Organiser settles"
		switch t.code {
		case "closes-early":
			settles = "Organiser accepts"
		case "lies-flat-early":
			settles += " who watches and lays flat"
		}
		words = append(words, settles+":\u00a0________")
	}
	return block.Block{Name: head, Gap: 1.2, Body: remarkWords(strings.Join(words, " "))}
}
