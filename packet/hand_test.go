package packet

import (
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// A strip for the pitch of a wrap tells every line of the charts that it serves, by that line's ten turns; each line has one, and that of most pipes comes first.
func TestPitchStripsServeEveryLine(t *testing.T) {
	for name, source := range specs(t) {
		l := binderOf(t, planOf(t, source)).lighting()
		strips, pipes := l.pitchStrips(), 0
		for i, s := range strips {
			if pipes += s.on; i > 0 && s.on > strips[i-1].on {
				t.Errorf("%s: %d pipes come after %d", name, s.on, strips[i-1].on)
			}
		}
		for _, c := range l.wrapCharts() {
			for _, line := range c.lines {
				pipes -= len(line.on)
				what, ten := l.tenTurns(line.wrap)
				if !slices.ContainsFunc(strips, func(s pitchStrip) bool { return slices.Contains(s.told, what+ten) && strings.Contains(s.words(), ten) }) {
					t.Errorf("%s: no strip tells %s%s", name, what, ten)
				}
			}
		}
		if pipes != 0 {
			t.Errorf("%s: strips serve %d pipes more than there are", name, pipes)
		}
	}
}

// A column holds the longest line of its cells and each word of its head, with white beside them; one that is ticked keeps the width that it was given.
func TestColumnsHoldWhatIsInThem(t *testing.T) {
	head, cells := paper.Strong.Sized(11), paper.Cell
	for _, c := range []struct {
		head, cell string
		want       paper.Length
	}{
		{"Measured along", "9", head.Width("Measured")}, {"From", "left row, 12 ft", cells.Width("left row, 12 ft")}, {"From", "left row\n12 ft", max(cells.Width("left row"), head.Width("From"))},
	} {
		got := sized([]place.Column{{Head: "tick", Tick: true, Width: 7}, {Head: c.head, Lettering: cells}}, []place.Row{{Cells: []string{"", c.cell}}, {Cells: []string{"", "1"}}, {}})
		if white := got[1].Width - c.want; got[0].Width != 7 || white < 3 || white > 5 {
			t.Errorf("%q over %q: %v wide, ticks %v; want a little over %v", c.head, c.cell, got[1].Width, got[0].Width, c.want)
		}
	}
}

// Sentences follow each other, each once, nothing between them where there is none.
func TestEachOnce(t *testing.T) {
	if got := eachOnce([]string{"", "Call.", "Wait.", "", "Call.", "Drive."}); got != "Call. Wait. Drive." {
		t.Errorf("%q", got)
	}
}

// A figure of several kinds of arch is the least of them, and more where another has an inch more.
func TestLeastOfAllKinds(t *testing.T) {
	b := binderOf(t, planOf(t, specs(t)["garden.yaml"]))
	plan := *b.plan
	b.plan, plan.Kinds = &plan, []*arch.Kind{{Span: 60 * measure.Inch}, {Span: 48 * measure.Inch}, {Span: 55 * measure.Inch}}
	for _, c := range []struct {
		kinds int
		want  string
	}{{3, measure.Imperial.Tape(48*measure.Inch) + " or more"}, {2, measure.Imperial.Tape(48*measure.Inch) + " or more"}, {1, measure.Imperial.Tape(60 * measure.Inch)}} {
		all := b.plan.Kinds
		b.plan.Kinds = all[:c.kinds]
		if got := b.across(func(k *arch.Kind) measure.Length { return k.Span }); got != c.want {
			t.Errorf("%d kinds: %s, want %s", c.kinds, got, c.want)
		}
		b.plan.Kinds = all
	}
	b.plan.Kinds = []*arch.Kind{{Span: 48 * measure.Inch}, {Span: 48.9 * measure.Inch}}
	if got := b.across(func(k *arch.Kind) measure.Length { return k.Span }); got != measure.Imperial.Tape(48*measure.Inch) {
		t.Errorf("less than an inch apart: %s", got)
	}
}
