package packet

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/examples"
	"hoopwright/layout/cost"
)

// What is printed of the spec, typed off line by line, is the spec again; its checksum stands beside it.
func TestPrintedSpecIsTheSpec(t *testing.T) {
	for _, name := range []string{"garden", "schoolyard", "parkwalk", "starter"} {
		source, err := examples.Files.ReadFile(name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		doc, _, err := Bind(planOf(t, source), Options{Sheets: []string{"spec"}, Date: issued})
		if err != nil {
			t.Fatal(err)
		}
		pages := doc.Pages
		sum := sha256.Sum256(source)
		var typed strings.Builder
		stated, started := "", false
		for _, page := range pages {
			for _, op := range page.Ops {
				text, ok := op.(paper.Text)
				switch {
				case !ok:
				case text.Lettering == paper.Small && strings.Contains(text.String, "SHA-256:"):
					stated += text.String
				case text.Lettering == paper.Small && stated != "" && typed.Len() == 0 && !started && strings.Trim(text.String, "0123456789 abcdef") == "" && text.String != "1":
					stated += " " + text.String // its second line
				case text.Lettering == paper.Small && (text.String == "↪" || text.String == "=" || strings.Trim(text.String, "0123456789") == "") && text.String != "":
					if join, ok := map[string]string{"↪": " ", "=": ""}[text.String]; ok {
						typed.WriteString(join)
					} else if started {
						typed.WriteByte('\n')
					}
					started = true
				case text.Lettering == paper.Printed:
					typed.WriteString(text.String)
				}
			}
		}
		checked := strings.HasSuffix(strings.ReplaceAll(stated, " ", ""), hex.EncodeToString(sum[:]))
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
	// Two designs are weighed by money and hours, as numbers.
	for name, of := range map[string]func(cost.Cost) float64{"money to buy": func(c cost.Cost) float64 { return c.Bought.Money }, "money for power": func(c cost.Cost) float64 { return c.Power.Money },
		"money next year": func(c cost.Cost) float64 { return c.NextYear.Money }, "hours of people": func(c cost.Cost) float64 { return c.Hours.Building + c.Hours.Nights + c.Hours.TakeDown }} {
		unit := "USD"
		if name == "hours of people" {
			unit = "h"
		}
		i := slices.IndexFunc(c.Figures, func(x Change) bool { return x.What == name })
		if i < 0 || c.Figures[i].was.value != of(was.Cost) || c.Figures[i].is.value != of(is.Cost) || c.Figures[i].unit != unit || of(is.Cost) <= of(was.Cost) {
			t.Errorf("%s is not set side by side: %v", name, c.Figures)
		}
	}
}

// What was found of last year's tunnel, typed back, stands beside the plan in a comparison with it.
func TestCompareFound(t *testing.T) {
	was := examplePlan(t, "garden")
	c := Compare(was, changedExample(t, "garden", "\ncrew:", "\nfound: {crown: {1: 96 in}, span: {1: 84 in}}\ncrew:"))
	i := slices.IndexFunc(c.Figures, func(x Change) bool { return x.What == "crown found, arch 1" })
	if i < 0 || c.Figures[i].Was != absent || !strings.Contains(c.Figures[i].Is, "8′-0″, planned 8′-0 7/8″; as pipe with 23 % of its stiffness") || !slices.Contains(c.New, "found-off-plan") {
		t.Errorf("what was found is not told: %v, %v", c.Figures, c.New)
	}
}

// A bundle has its crew's sheets and no other.
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
	if got := slices.Compact(names); !slices.Equal(got, []string{"stakes"}) {
		t.Errorf("marking is handed %v", got)
	}
	words := strings.Join(wordsOf(doc.Pages...), " ")
	if !strings.Contains(words, "Call 811") || strings.Contains(words, "Slip the left leg over L1") {
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
	for _, page := range bound(t, specs(t)["garden.yaml"]).Pages {
		if page.Name == "permission" {
			t.Error("the permission sheet is in a packet that did not ask for it")
		}
	}
}
