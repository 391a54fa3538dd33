package packet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/pdf"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// profileSheet makes the arch profiles of an example with parts of its text put in place of others; all invented.
func profileSheet(t *testing.T, name string, swap ...string) (*layout.Plan, pdf.Document) {
	t.Helper()
	source, err := examples.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	plan := solved(t, []byte(strings.NewReplacer(swap...).Replace(string(source))))
	return plan, sheetOf(t, plan, "arch")
}

func TestArchProfilePages(t *testing.T) {
	for _, name := range []string{"garden.yaml", "schoolyard.yaml", "parkwalk.yaml", "starter.yaml"} {
		plan, doc := profileSheet(t, name)
		if len(doc.Pages) != 4 {
			t.Errorf("%s: %d pages, want the picture, the steps, the checks, what it bears", name, len(doc.Pages))
		}
		u, first := plan.Spec.Units, plan.Kinds[0]
		text := said(doc)
		give := first.GiveOrTake(u)
		for _, want := range []string{u.Inches(first.Crown), u.Inches(first.Crown-give) + " and " + u.Inches(first.Crown+give), u.Inches(first.ShoulderWidth), "measured by"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: nowhere %q", name, want)
			}
		}
		if n := strings.Count(text, "Not to scale"); n != 3 {
			t.Errorf("%s: %d pages not to scale, want 3", name, n)
		}
		if name == "garden.yaml" && !strings.Contains(text, "3/4 in = 1 ft") {
			t.Errorf("the garden arch no longer fills its page")
		}
		if n := tickBoxes(doc); n != 5 {
			t.Errorf("%s: %d tick boxes, want one a step", name, n)
		}
	}
}

// TestManyKinds: six pictures at most, and every kind in the table of figures.
func TestManyKinds(t *testing.T) {
	var except strings.Builder
	for i := 1; i <= 9; i++ {
		fmt.Fprintf(&except, "    - {arches: [%d], span: %d in}\n", i, 78+2*i)
	}
	stake := "  stake: {bar: 3/8 in, length: 48 in, depth: 20 in}\n"
	plan, doc := profileSheet(t, "garden.yaml", "arches: 6", "arches: 12", stake, stake+"  except:\n"+except.String())
	text := said(doc)
	if pictures := len(doc.Pages) - strings.Count(text, "Not to scale"); pictures != mostProfiles {
		t.Errorf("%d pictures", pictures)
	}
	for _, k := range plan.Kinds {
		if !strings.Contains(text, strings.TrimSuffix(plan.Spec.Units.Inches(k.BendRadius), " in")) {
			t.Errorf("no figures of arches %v", k.Numbers)
		}
	}
}

// TestGroups: shapes within the give and take of each other share a picture, whatever else does not.
func TestGroups(t *testing.T) {
	kind := func(crown, span measure.Length, numbers ...int) *arch.Kind {
		return &arch.Kind{Numbers: numbers, Crown: crown, Span: span, Band: 20, Left: []measure.Length{3000}}
	}
	groups := archGroups([]*arch.Kind{kind(2400, 2100, 1, 6), kind(2410, 2100, 2, 3, 4), kind(2410, 2200, 5), kind(2430, 2100, 7)})
	var got []string
	for _, g := range groups {
		got = append(got, fmt.Sprint(g.numbers(), g[0].Numbers))
	}
	if want := []string{"[1 2 3 4 6] [1 6]", "[5] [5]", "[7] [7]"}; !slices.Equal(got, want) {
		t.Errorf("groups %q, want %q", got, want)
	}
}

// TestOneStick: there is no socket to speak of.
func TestOneStick(t *testing.T) {
	_, doc := profileSheet(t, "garden.yaml", "sticks: [10 ft, 10 ft]", "sticks: [20 ft]", "arch:\n", "ridge: false\n\narch:\n", "    - {where: ridge, string: mini led 50 warm, count: 1}\n", "")
	if text := said(doc); strings.Contains(text, "socket") || !strings.Contains(text, "Lay the stick") {
		t.Error(text)
	}
}
