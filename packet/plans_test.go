package packet

import (
	"fmt"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/examples"
	"hoopwright/layout"
)

func examplePlan(t *testing.T, name string) *layout.Plan {
	t.Helper()
	source, err := examples.Files.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return planOf(t, source)
}

// plansForSheets are the examples and some odd tunnels, invented: one arch, two, no ridge, no lights, forty.
func plansForSheets(t *testing.T) map[string]*layout.Plan {
	t.Helper()
	plans := map[string]*layout.Plan{}
	for _, name := range []string{"garden", "schoolyard", "parkwalk", "starter"} {
		plans[name] = examplePlan(t, name)
	}
	for n, more := range map[int]string{1: "", 2: "ridge: false\n", 3: "guys: {arches: [1, last], from: 5 ft, out: 5 ft}\nsite: {soil: frozen}\n", 40: ""} {
		spacing := "spacing: 4 ft 3 in"
		if n == 1 {
			spacing = "opening: {width: 4 ft}"
		}
		title := strings.Repeat("A long walk under ten thousand lights by the water and back, ", n%3+1)
		plans[fmt.Sprint(n)] = planOf(t, fmt.Appendf(nil, "hoopwright: 1\ntitle: %q\nunits: imperial\ntunnel: {arches: %d, %s}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}\n%s", title, n, spacing, more))
	}
	return plans
}

// wordsOf returns a page's texts in order.
func wordsOf(pages ...*paper.Page) []string {
	var list []string
	for _, page := range pages {
		for _, op := range page.Ops {
			if text, ok := op.(paper.Text); ok {
				list = append(list, text.String)
			}
		}
	}
	return list
}
