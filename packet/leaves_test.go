package packet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
)

// wordsOn counts what a reader has to read on a page: groups of characters between spaces.
func wordsOn(page *paper.Page) (n int) {
	for _, op := range page.Ops {
		if text, ok := op.(paper.Text); ok {
			n += len(strings.Fields(text.String))
		}
	}
	return n
}

// A packet keeps to its sides and words: what has no budget grows. The examples' sides are settled figures; words are 340 a side on average, those of
// the garden walk 6,500 in all.
func TestPacketsKeepToTheirBudgets(t *testing.T) {
	most := map[string]int{"garden.yaml": 20, "starter.yaml": 20, "schoolyard.yaml": 22, "millwalk.yaml": 28, "parkwalk.yaml": 52}
	for name, source := range specs(t) {
		sides, notes := leavesOf(t, string(source))
		words := 0
		for _, s := range sides {
			words += wordsOn(s.page)
		}
		t.Logf("%s: %d sides, %d words", name, len(sides), words)
		limit, ok := most[name]
		if !ok {
			limit = 20
		}
		if len(sides) > limit {
			t.Errorf("%s has %d sides, over its %d:%s", name, len(sides), limit, listed2(sides))
		}
		if words > 340*len(sides) {
			t.Errorf("%s has %d words on %d sides, over 340 a side", name, words, len(sides))
		}
		if name == "garden.yaml" && words > 6500 {
			t.Errorf("%s has %d words, over its 6,500", name, words)
		}
		for _, n := range notes {
			t.Errorf("%s: %s %s found no room", name, n.Block, n.What)
		}
	}
}

// listed2 names the sides of a packet.
func listed2(sides []set) string {
	var b strings.Builder
	for _, s := range sides {
		fmt.Fprintf(&b, " %s/%s", s.kind.word, s.title)
	}
	return b.String()
}

// Nothing lies on anything, on no side of any example and of thrown specs of every kind: no text on text, no line through text.
func TestNothingLiesOnText(t *testing.T) {
	t.Parallel()
	check := func(name, source string) {
		sides, _ := leavesOf(t, source)
		for _, s := range sides {
			for _, f := range lint(s.page) {
				t.Errorf("%s, %s %s: %s", name, s.kind.word, s.title, f)
			}
		}
	}
	for name, source := range specs(t) {
		check(name, string(source))
	}
	for seed := range uint64(30) {
		check(fmt.Sprintf("thrown %d", seed), thrown(seed))
	}
}

// toldTwice are the leaves on which a fact may stand though another leaf tells it too: the board's key figures, holds that the run sheet has ticked,
// tags, the printed spec.
var toldTwice = []string{"board", "day", "tags", "spec"}

// A fact stands on one leaf: of all figures with what they measure, none is told by two crews' leaves, nor told differently anywhere.
func TestAFactIsToldOnce(t *testing.T) {
	for name, source := range specs(t) {
		sides, _ := leavesOf(t, string(source))
		if told := toldOnce(t, name, sides); told < 20 {
			t.Errorf("%s: only %d facts are declared", name, told)
		}
	}
}

// toldOnce holds sides to it and returns how many facts they tell.
func toldOnce(t *testing.T, name string, sides []set) int {
	on, value := map[string][]string{}, map[string]string{}
	for _, s := range sides {
		for _, b := range s.blocks {
			for _, f := range b.Facts {
				if was, ok := value[f.What]; ok && was != f.Value {
					t.Errorf("%s: %s is %s on one side and %s on %s", name, f.What, was, f.Value, s.kind.word)
				}
				value[f.What] = f.Value
				if !slices.Contains(on[f.What], s.kind.word) && !slices.Contains(toldTwice, s.kind.word) {
					on[f.What] = append(on[f.What], s.kind.word)
				}
			}
		}
	}
	for what, words := range on {
		if len(words) > 1 {
			t.Errorf("%s: %s is told on %s", name, what, strings.Join(words, " and "))
		}
	}
	return len(value)
}

// figureWithUnit is a dimensioned figure in running text or on a drawing.
var figureWithUnit = regexp.MustCompile(`\d+(?:['′]-\d+(?: \d+/\d+)?["″]|(?: \d+/\d+)? ?(?:in|ft|lb|mph|mm|m|km/h|°F|°C|kg|N|W|A|V)\b)`)

// Figures that stand on a leaf are declared as facts, so that TestAFactIsToldOnce sees them: every figure with a unit on a side is the value, or a part
// of the value, of a fact of that side.
func TestFiguresAreDeclared(t *testing.T) {
	sides, _ := leavesOf(t, string(specs(t)["garden.yaml"]))
	for _, s := range sides {
		if s.kind.word == "spec" || s.kind.word == "board" { // the spec's own figures; findings, which tell what is wrong with figures
			continue
		}
		var values []string
		for _, b := range s.blocks {
			for _, f := range b.Facts {
				values = append(values, f.Value)
			}
		}
		all := strings.Join(values, "\n")
		for _, op := range s.page.Ops {
			text, ok := op.(paper.Text)
			if !ok {
				continue
			}
			for _, figure := range figureWithUnit.FindAllString(text.String, -1) {
				if !strings.Contains(all, figure) {
					t.Errorf("%s, %s: %q in %q is no declared fact", s.kind.word, s.title, figure, text.String)
				}
			}
		}
	}
}
