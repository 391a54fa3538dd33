package packet

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/examples"
	"hoopwright/layout/spec"
)

// The sheets of the season keep to their live area, for small, odd and long tunnels.
func TestSeasonSheetsKeepToTheirArea(t *testing.T) {
	for name, plan := range plansForSheets(t) {
		for _, word := range []string{"raise", "watch", "takedown", "permission"} {
			pages, live := framedSheet(t, plan, word)
			keepsTo(t, name+" "+word, pages, live)
		}
	}
}

// The raising sheet fits two pages where the row is short, and says the figures that arch 1 is measured by.
func TestRaisingInTwoPages(t *testing.T) {
	for _, name := range []string{"garden", "schoolyard", "starter"} {
		plan := examplePlan(t, name)
		pages, _ := framedSheet(t, plan, "raise")
		if len(pages) > 2 {
			t.Errorf("%s: raising takes %d pages", name, len(pages))
		}
		all, u, k := strings.Join(wordsOf(pages...), " "), plan.Spec.Units, plan.Arches[0].Kind
		for _, want := range []string{u.Inches(k.Crown), u.Inches(k.Span), u.Inches(k.Clear - k.GiveOrTake(u)), u.Tape(plan.Ridge[0].Centres), "G1L"} {
			if !strings.Contains(strings.ReplaceAll(all, "\u00a0", " "), strings.ReplaceAll(want, "\u00a0", " ")) {
				t.Errorf("%s: the raising sheet lacks %s", name, want)
			}
		}
	}
}

// Every stake has a box to tick when it is pulled, and the head says how many there are.
func TestEveryStakeIsCountedOut(t *testing.T) {
	for name, plan := range plansForSheets(t) {
		pages, _ := framedSheet(t, plan, "takedown")
		words := wordsOf(pages...)
		for _, s := range plan.Stakes {
			if !slices.Contains(words, s.String()) {
				t.Errorf("%s: stake %s is not counted out", name, s.StakeID)
			}
		}
		if head := fmt.Sprintf("Stakes out: ______ of %d", len(plan.Stakes)); !slices.Contains(words, head) {
			t.Errorf("%s: the take-down lacks %q", name, head)
		}
	}
}

// A line a night: the built-in example is open from 28 November to 2 January, 36 nights by the calendar.
func TestALineANight(t *testing.T) {
	pages, _ := framedSheet(t, examplePlan(t, "garden"), "watch")
	words := wordsOf(pages...)
	nights := 0
	for _, w := range words {
		if strings.HasSuffix(w, " Nov") || strings.HasSuffix(w, " Dec") || strings.HasSuffix(w, " Jan") {
			nights++
		}
	}
	if nights != 36 || !slices.Contains(words, "Sat 28 Nov") || !slices.Contains(words, "Sat 2 Jan") {
		t.Errorf("%d nights, want 36 from Sat 28 Nov to Sat 2 Jan", nights)
	}
	if all := strings.Join(words, " "); !strings.Contains(all, "14 Quince Lane") || !strings.Contains(all, "19 mph") {
		t.Error("the address or the closing figure is missing")
	}
}

// What is printed of the spec, typed off line by line, is the spec again; its checksum stands beside it.
func TestPrintedSpecIsTheSpec(t *testing.T) {
	for _, name := range []string{"garden", "schoolyard", "parkwalk", "starter"} {
		source, err := examples.Files.ReadFile(name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		pages, _ := framedSheet(t, planOf(t, source), "rebuild")
		sum := sha256.Sum256(source)
		var typed strings.Builder
		checked, started, fresh := false, false, false
		for _, page := range pages {
			for _, op := range page.Ops {
				text, ok := op.(paper.Text)
				switch {
				case !ok:
				case text.Lettering == paper.Printed && strings.ReplaceAll(text.String, " ", "") == hex.EncodeToString(sum[:]):
					checked = true
				case checked && text.Lettering == paper.Small && (text.String == "↪" || strings.Trim(text.String, "0123456789") == "") && text.String != "":
					if fresh = text.String != "↪"; fresh && started {
						typed.WriteByte('\n')
					}
					started = true
				case checked && text.Lettering == paper.Printed:
					typed.WriteString(text.String)
				}
			}
		}
		if !checked {
			t.Errorf("%s: the checksum is not printed", name)
		}
		if got := typed.String() + "\n"; got != string(source) {
			t.Errorf("%s: what is printed is not the spec: %d characters of %d", name, len(got), len(source))
		}
	}
}

// Built again from the same spec nothing is to be bought; two more arches need what two arches are made of.
func TestCompare(t *testing.T) {
	for _, name := range []string{"garden", "schoolyard", "starter"} {
		plan := examplePlan(t, name)
		if c := Compare(plan, plan); len(c.Figures)+len(c.Buy)+len(c.New)+len(c.Gone) > 0 {
			t.Errorf("%s against itself: %+v", name, c)
		}
	}
	source := string(specs(t)["garden.yaml"])
	was, is := planOf(t, []byte(source)), planOf(t, []byte(strings.Replace(source, "arches: 6", "arches: 8", 1)))
	c := Compare(was, is)
	// By hand: two arches more are two crosses, four leg stakes with caps, four legs wound with a string each and two bays with one each.
	want := map[string]int{"cross pvc sch40 1/2 in": 2, "steel bar 3/8 in, 48 in": 4, "stake cap": 4, "mini led 100 warm": 4, "mini led 50 warm": 2}
	for _, b := range c.Buy {
		if n, ok := want[b.Item]; ok && n != b.Buy {
			t.Errorf("buy %d of %s, want %d", b.Buy, b.Item, n)
		}
		delete(want, b.Item)
		if strings.HasPrefix(b.Item, "tee ") {
			t.Errorf("the two tees are there already: %+v", b)
		}
	}
	if len(want) > 0 {
		t.Errorf("not on the list: %v", want)
	}
	if !slices.Contains(c.Figures, change(counted("arches", 6), counted("arches", 8))) {
		t.Errorf("arches 6 to 8 is not among %v", c.Figures)
	}
}

// A bundle has its crew's sheets and, of the build steps, its crew's alone.
func TestBundles(t *testing.T) {
	plan := examplePlan(t, "garden")
	doc, _, err := Bind(plan, Options{For: []string{"marking"}, Date: issued})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, p := range doc.Pages {
		names = append(names, p.Name)
	}
	if got := slices.Compact(names); !slices.Equal(got, []string{"safety", "stake", "steps"}) {
		t.Errorf("marking is handed %v", got)
	}
	words := strings.Join(wordsOf(doc.Pages...), " ")
	if !strings.Contains(words, "Call the locating service") || strings.Contains(words, "Slip the left leg over L1") {
		t.Error("the marking crew's steps are not its own")
	}
	for _, crew := range Crews() {
		if _, _, err := Bind(plan, Options{For: []string{crew}, Date: issued}); err != nil {
			t.Errorf("%s: %v", crew, err)
		}
	}
}

// The permission sheet comes on request alone.
func TestPermissionOnRequest(t *testing.T) {
	sp, err := spec.Read("garden.yaml", specs(t)["garden.yaml"])
	if err != nil {
		t.Fatal(err)
	}
	for _, page := range bound(t, "garden.yaml", sp.Source).Pages {
		if page.Name == "permission" {
			t.Error("the permission sheet is in a packet that did not ask for it")
		}
	}
}
