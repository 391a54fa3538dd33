package layout_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// Six arches every 5 ft from y = 9 ft, the middle at x = 12 ft, right stakes at 15 ft 7 in: the way at bay 3 right opens onto y 19 to 24 ft, x to 21 ft 7 in; the entrance, 4 ft wide and half a
// person on either side, onto x 9 to 15 ft, y 3 to 9 ft. Arches are raised to the right with 2 ft on either side of their lines.
func TestWaysBlocked(t *testing.T) {
	at := func(x0, x1, y0, y1, more string) string {
		return fmt.Sprintf("{name: bench, outline: [[%[1]s ft, %[3]s ft], [%[2]s ft, %[3]s ft], [%[2]s ft, %[4]s ft], [%[1]s ft, %[4]s ft]]%[5]s}", x0, x1, y0, y1, more)
	}
	const high, hard = ", height: 30 in", ", hard: true"
	for name, c := range map[string]struct {
		feature, cure, note string
		blocked             bool
		left                []int
	}{
		"bench before the way":   {feature: at("19", "21", "20", "23", high), cure: "4", blocked: true, left: []int{3, 4}},
		"its edge within":        {feature: at("21.5", "23", "20", "23", high), cure: "4", blocked: true, left: []int{3, 4}},
		"its edge beyond":        {feature: at("21.7", "23", "20", "23", high), left: []int{3, 4}},
		"before the next too":    {feature: at("19", "21", "20", "28", high), cure: "2", blocked: true, left: []int{3, 4, 5}},
		"before all":             {feature: at("19", "21", "10", "33", high), blocked: true, left: []int{1, 2, 3, 4, 5, 6}},
		"hard, no height":        {feature: at("19", "21", "20", "23", hard), note: "before the way at bay 3 right and where arches 3 and 4 are raised"},
		"hard, beyond the way":   {feature: at("22", "24", "21.5", "21.9", hard)},
		"hard, where one rises":  {feature: at("22", "24", "20.5", "21.5", hard), note: "lies where arch 3 is raised"},
		"paving":                 {feature: at("19", "21", "20", "23", hard+", height: 0 in")},
		"before the entrance":    {feature: at("14.9", "15.2", "4", "5", high), blocked: true},
		"beside the entrance":    {feature: at("15.1", "15.2", "4", "5", high)},
		"before that":            {feature: at("11", "13", "1", "2.9", high)},
		"beyond the exit":        {feature: at("11", "13", "39", "41", high), blocked: true},
		"paving at the entrance": {feature: at("11", "13", "4", "5", hard), note: "lies before the entrance:"},
	} {
		p := solved(t, base.with("tunnel", "{arches: 6, spacing: 5 ft, opening: {width: 4 ft, height: 6 ft 8 in}, ways: [{bay: 3, wall: right}]}", "site", "{features: ["+c.feature+"], "+siteOf+"}", "lights", "{}").text())
		if left := p.WaysOut().Left; !slices.Equal(left, c.left) {
			t.Errorf("%s: left legs walked out at %v, want %v", name, left, c.left)
		}
		var blocked, noted finding.Finding
		for _, f := range p.Findings {
			switch f.Code {
			case "way-is-blocked":
				blocked = f
			case "height-not-known":
				noted = f
			}
		}
		cure := ""
		if len(blocked.Cure) > 0 {
			cure = blocked.Cure[0].Value
		}
		if (blocked.Code != "") != c.blocked || cure != c.cure {
			t.Errorf("%s: %q, cure %q, want %q", name, blocked.Text, cure, c.cure)
		}
		if (noted.Code != "") != (c.note != "") || !strings.Contains(noted.Text, c.note) {
			t.Errorf("%s: noted %q, want %q", name, noted.Text, c.note)
		}
	}
}

// A mark there may be a post or a nail: it is told, once, and not where a feature of its name is.
func TestMarkInTheWay(t *testing.T) {
	for name, c := range map[string]struct {
		more string
		want int
	}{
		"before the entrance":    {"marks: [{name: post, at: [12 ft, 5 ft]}, {name: gate, at: [30 ft, 1 ft]}]", 1},
		"beside it":              {"marks: [{name: post, at: [8.9 ft, 5 ft]}, {name: gate, at: [30 ft, 1 ft]}]", 0},
		"and a feature":          {"marks: [{name: post, at: [12 ft, 5 ft]}, {name: gate, at: [30 ft, 1 ft]}], features: [{name: post, at: [12 ft, 5 ft], radius: 4 in, height: 3 ft}]", 1},
		"and one beyond the end": {"marks: [{name: post, at: [12 ft, 5 ft]}, {name: gate, at: [12 ft, 38 ft]}]", 2},
	} {
		p := solved(t, base.with("tunnel", "{arches: 6, spacing: 5 ft, opening: {width: 4 ft, height: 6 ft 8 in}}", "site", "{start: {at: [12 ft, 9 ft]}, "+c.more+"}", "lights", "{}").text())
		told := 0
		for _, f := range p.Findings {
			if f.Code == "way-is-blocked" {
				told++
			}
		}
		if told != c.want {
			t.Errorf("%s: told %d times, want %d", name, told, c.want)
		}
	}
}

// However far apart the arches of a tunnel are whose guys are chosen, no stake of an arch between others stands within 18 in, along the tunnel, of another's line.
func TestChosenGuysKeepOffLanes(t *testing.T) {
	inner := 0
	for _, apart := range []string{"3 ft", "3 ft 10 in", "4 ft 3 in", "5 ft"} {
		p := solved(t, base.with("tunnel", "{arches: 9, spacing: "+apart+", opening: {width: 4 ft, height: 6 ft 8 in}}", "guys", "", "lights", "{}").text())
		for _, stake := range p.Stakes {
			if !stake.Guy || stake.Bay > 0 || stake.Way == ground.OneWay {
				continue
			}
			inner++
			for i, station := range p.Ground.Stations {
				if off := measure.Abs(stake.Along - station.Along); i+1 != stake.Arch && off < 18*measure.Inch-.01 {
					t.Errorf("arches every %s: %s %.1f in from arch %d's line", apart, stake.String(), off.Inches(), i+1)
				}
			}
		}
	}
	if inner == 0 {
		t.Error("no arch between others is guyed")
	}
}
