package packet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// Every step is printed once and in order, with each of its readings and, for a hold point, a place to sign.
func TestEveryStepIsPrinted(t *testing.T) {
	for name, plan := range plansForSheets(t) {
		pages, live := framedSheet(t, plan, "steps")
		keepsTo(t, name, pages, live)
		var numbers []string
		for _, page := range pages {
			for _, op := range page.Ops {
				if text, ok := op.(paper.Text); ok && text.At.X == live.X+stepInset && text.Lettering == paper.Cell {
					numbers = append(numbers, text.String)
				}
			}
		}
		var want []string
		words := wordsOf(pages...)
		all := strings.Join(words, " ")
		holds, readings := 0, map[string]int{}
		for _, s := range plan.Crew.Steps {
			want = append(want, fmt.Sprint(s.Number))
			if s.Hold {
				holds++
			}
			for _, r := range s.Readings {
				readings[r.What]++
			}
			for _, tape := range s.Tapes {
				readings[tape.Stake.String()]++
				if !strings.Contains(all, plan.Spec.Units.Tape(tape.A)) || !strings.Contains(all, plan.Spec.Units.Tape(tape.B)) {
					t.Errorf("%s: tapes of %s are not printed", name, tape.Stake)
				}
			}
		}
		if !slices.Equal(numbers, want) {
			t.Errorf("%s: steps %v, want %v", name, numbers, want)
		}
		if n := countOf(words, "HOLD"); n != holds {
			t.Errorf("%s: %d places to sign for %d hold points", name, n, holds)
		}
		for what, n := range readings {
			if got := countOf(words, what); got < n {
				t.Errorf("%s: reading %s printed %d times, want %d", name, what, got, n)
			}
		}
		for _, bad := range []string{"safe", "rated", "compliant"} {
			if strings.Contains(strings.ToLower(all), bad) {
				t.Errorf("%s: the steps claim %q", name, bad)
			}
		}
	}
}

func countOf(words []string, word string) int {
	n := 0
	for _, w := range words {
		if w == word {
			n++
		}
	}
	return n
}

// A figure to be measured has a line beside it to write on, long enough for a pencil in a glove.
func TestRecordedReadingsHaveRoom(t *testing.T) {
	plan := examplePlan(t, "garden")
	for _, s := range plan.Crew.Steps {
		if !s.Record {
			continue
		}
		page := &paper.Page{}
		for _, st := range readingStrips(s, 180) {
			st.draw(page, paper.Rect{X: 20, Y: 50, W: 180, H: st.height})
		}
		lines := 0
		for _, op := range page.Ops {
			if stroke, ok := op.(paper.Stroke); ok && len(stroke.Path) == 2 {
				lines++
				if long := stroke.Path[1].To.X - stroke.Path[0].To.X; long < foundLeast-readingGap {
					t.Errorf("step %d: %v mm to write on", s.Number, long)
				}
			}
		}
		if lines != len(s.Readings) {
			t.Errorf("step %d: %d lines for %d figures", s.Number, lines, len(s.Readings))
		}
	}
}

// What begins on one page and goes on over the next has its head again there: a step's tapes, and a table's part.
func TestHeadsAreRepeatedOverleaf(t *testing.T) {
	plan := examplePlan(t, "parkwalk")
	pages, _ := framedSheet(t, plan, "steps")
	for i, page := range pages {
		words := wordsOf(page)
		tapes := false
		for _, tape := range plan.Crew.Steps[0].Tapes {
			tapes = tapes || tape.Stake.Guy && slices.Contains(words, tape.Stake.String()) // guy stakes are named nowhere else alone
		}
		if tapes && !slices.Contains(words, "1st tape") {
			t.Errorf("page %d has tapes without a head", i+1)
		}
	}
	f := (&binder{plan: plan, spec: plan.Spec, size: mustSheet(t, "letter")}).newFlow("", "")
	var rows []place.Row
	for i := range 150 { // three pages and more
		switch i {
		case 10:
			rows = append(rows, place.Row{Heading: "Part"})
		case 140:
			rows = append(rows, place.Row{Heading: "Next"})
		}
		rows = append(rows, place.Row{Cells: []string{fmt.Sprint("row ", i)}})
	}
	f.table(place.Table{Columns: []place.Column{{Head: "Head"}}}, rows)
	for i, l := range f.leaves {
		again, want := slices.DeleteFunc(wordsOf(l.page), func(s string) bool { return !strings.HasSuffix(s, ", going on") }), []string{"Part, going on"}
		switch i {
		case 0:
			want = nil
		case len(f.leaves) - 1:
			want = []string{"Next, going on"} // it begins on the page before
		}
		if !slices.Equal(again, want) || len(f.leaves) < 3 {
			t.Errorf("page %d of %d goes on with %q, want %q", i+1, len(f.leaves), again, want)
		}
	}
}
