package packet

import (
	"fmt"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/layout"
)

// edited solves an example with some of its text replaced.
func edited(t *testing.T, name string, replace ...string) *layout.Plan {
	t.Helper()
	plan := example(t, name)
	source := strings.NewReplacer(replace...).Replace(string(plan.Spec.Source))
	if source == string(plan.Spec.Source) {
		t.Fatalf("nothing to replace in %s", name)
	}
	return solved(t, []byte(source))
}

// A tick box for each place on a wall where something is plugged in, and one for each line of the three check lists (6, 5 and 5).
func TestEveryPlaceIsTicked(t *testing.T) {
	for _, name := range []string{"garden.yaml", "schoolyard.yaml", "parkwalk.yaml"} {
		plan := example(t, name)
		want := 6 + 5 + 5
		for _, f := range plan.Power.Feeders {
			for _, j := range f.Joints {
				if j.Arch > 0 {
					want++
				}
			}
		}
		if got := tickBoxes(sheetOf(t, plan, "circuit")); got != want {
			t.Errorf("%s: %d tick boxes, want %d", name, got, want)
		}
	}
}

// The garden's sheet says what its spec says of the outlets, and the load by hand: thirteen chains of 4.8 W on two 120 V circuits, the ridge's five strings of 3.5 W on one of them.
func TestCircuitSheetOfTheGarden(t *testing.T) {
	plan := example(t, "garden.yaml")
	text := said(sheetOf(t, plan, "circuit"))
	for _, want := range []string{
		"GFCI reset at: the outlet itself.", "inside the side door", "porch, breaker 7:", "garage, breaker 12:", "other load 2 A",
		// 6 × 4.8 W + 5 × 3.5 W = 46.3 W, 0.386 A of 12 A; 6 × 4.8 W = 0.24 A and 2 A of 16 A
		"0.39 A of 12 A = 3.2 %", "2.2 A of 16 A = 14 %",
		"Prongs facing prongs: stop.", "There is no adaptor", "licensed electrician", "90 days", "2027-02-19",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the sheet", want)
		}
	}
	if strings.Contains(text, "RCD") {
		t.Error("the words of another world are on the sheet")
	}
}

// unpowered is an invented tunnel of three arches with lights and no power.
const unpowered = `hoopwright: 1
title: Not wired yet
units: imperial
tunnel: {arches: 3, spacing: 4 ft, opening: {width: 4 ft, height: 6 ft 6 in}}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 3 in}
lights: {wraps: [{where: legs, string: mini led 100 warm}, {where: ridge, string: mini led 50 warm, count: 1}]}
`

// Where nothing feeds the lights the sheet says what the spec lacks and lists the chains; where there are no lights there is no sheet.
func TestNothingFeedsTheLights(t *testing.T) {
	plan := solved(t, []byte(unpowered))
	text := said(sheetOf(t, plan, "circuit"))
	for _, want := range []string{"power.circuits", "Plug nothing in from this sheet", "site.outlets", "S3 → S6"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the sheet of a tunnel without power", want)
		}
	}
	dark := solved(t, []byte(unpowered[:strings.Index(unpowered, "lights:")]))
	if doc, _, err := Bind(dark, Options{Sheets: []string{"circuit", "lights"}, Date: issued}); err == nil || !strings.Contains(err.Error(), "no lights") {
		t.Errorf("a tunnel without lights has %d pages about them, %v", len(doc.Pages), err)
	}
}

// The load bars' words and the diagrams' heads stay within the live area however long names are; what is clipped says so.
func TestLongNamesAreClipped(t *testing.T) {
	long := strings.Repeat("greenhouse ", 5) + "wall"
	doc := sheetOf(t, edited(t, "garden.yaml", "circuit: garage,", fmt.Sprintf("circuit: %q,", long), "    garage: {", fmt.Sprintf("    %q: {", long)), "circuit")
	checkInside(t, doc)
	if text := said(doc); !strings.Contains(text, "…") {
		t.Error("a name of 59 letters was not clipped")
	}
}

// checkInside reports texts that leave the live area.
func checkInside(t *testing.T, doc pdf.Document) {
	t.Helper()
	for n, page := range doc.Pages {
		for _, op := range page.Ops {
			if x, ok := op.(paper.Text); ok && x.At.X+x.Lettering.Width(x.String) > page.Size.W-edgeMargin+0.1 && x.Angle == 0 {
				t.Errorf("page %d: %q leaves the page", n+1, x.String)
			}
		}
	}
}

// The sheet says what is proven, what the season burns, by hand 75.1 W for 5 h on 36 nights, and what the cord carries.
func TestHowItWasFigured(t *testing.T) {
	text := said(sheetOf(t, example(t, "garden.yaml"), "circuit"))
	for _, want := range []string{"Fewest circuits for the amps: 2, proven", "Cords and three-ways: 6, and no fewer do from these outlets, proven", "75 W for 5 h on 36 nights", "14 kWh, 2.16 USD", "At most: cord 0.39 A of 13 A"} {
		if !strings.Contains(strings.ReplaceAll(text, "\n", " "), want) {
			t.Errorf("%q is not on the sheet", want)
		}
	}
	if got := len(sheetOf(t, example(t, "parkwalk.yaml"), "circuit").Pages); got > 25 {
		t.Errorf("%d pages for sixty arches: diagrams should follow each other on a page", got)
	}
}
