package main

import (
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The house rules: which package may import which, by hand. A package not listed may import nothing of ours. This is policy; change it
// only with a reason.
const importRules = `
cmd/hoopwright:        packet draw/pdf layout layout/arch layout/stock layout/spec layout/finding layout/measure layout/catalog layout/say layout/wish examples
packet:                draw draw/block draw/pdf draw/paper draw/place fonts LAYOUT
draw:                  draw/paper draw/place draw/block LAYOUT
draw/block:            draw/paper draw/place
draw/pdf:              draw/paper fonts
draw/place:            draw/paper
draw/paper:            fonts
fonts:
examples:
layout:                LAYOUT
layout/wish:           layout layout/spec layout/finding layout/catalog layout/measure layout/practice layout/say
layout/power:          layout/practice layout/power/sharing layout/lights layout/arch layout/ground layout/spec layout/finding layout/catalog layout/measure layout/say
layout/stock:          layout/stock/cutting layout/lights layout/arch layout/ground layout/practice layout/spec layout/finding layout/catalog layout/measure layout/say
layout/crew:           layout/practice layout/sun layout/lights layout/arch layout/ground layout/spec layout/finding layout/catalog layout/measure layout/say
layout/dice:
layout/power/sharing:
layout/cost:           layout/stock layout/crew layout/lights layout/spec layout/catalog layout/measure
layout/stock/cutting:
layout/sun:
layout/lights:         layout/practice layout/arch layout/bend layout/ground layout/spec layout/finding layout/catalog layout/measure layout/say
layout/weather:        layout/arch layout/bend layout/anchor layout/practice layout/finding layout/catalog layout/spec layout/measure layout/say
layout/arch:           layout/practice layout/bend layout/anchor layout/finding layout/catalog layout/spec layout/measure layout/say
layout/anchor:         layout/measure
layout/bend:
layout/ground:         layout/practice layout/finding layout/spec layout/catalog layout/measure layout/say
layout/spec:           layout/sun layout/practice layout/catalog layout/finding layout/measure layout/say
layout/catalog:        layout/measure
layout/finding:        layout/measure
layout/practice:       layout/measure
layout/measure:
layout/say:
`

// Who alone may import each outside module in shipped code; tests may use others.
var outside = map[string]string{
	"github.com/go-pdf/fpdf": "draw/pdf",
	"github.com/spf13/pflag": "cmd/hoopwright",
	"gopkg.in/yaml.v3":       "layout/spec",
}

func TestImportsRunOneWay(t *testing.T) {
	allowed := map[string][]string{}
	for line := range strings.Lines(importRules) {
		name, list, ok := strings.Cut(strings.TrimSpace(line), ":")
		if ok {
			allowed[name] = strings.Fields(list)
		}
	}
	seen := map[string]bool{}
	_, files := shipped(t)
	for file, tree := range files {
		pkg := path.Dir(file)
		rules, known := allowed[pkg]
		if !known {
			t.Errorf("package %s is not in the import rules", pkg)
			continue
		}
		seen[pkg] = true
		for _, imp := range tree.Imports {
			target, _ := strconv.Unquote(imp.Path.Value)
			ours, isOurs := strings.CutPrefix(target, "hoopwright/")
			allowed := outside[target] == pkg || !strings.Contains(target, ".")
			if isOurs {
				allowed = slices.Contains(rules, ours) || slices.Contains(rules, "LAYOUT") && strings.HasPrefix(ours+"/", "layout/")
			}
			if !allowed {
				t.Errorf("%s: package %s may not import %s", file, pkg, target)
			}
		}
	}
	for pkg := range allowed {
		if !seen[pkg] {
			t.Errorf("the import rules list %s, which has no code", pkg)
		}
	}
}

func TestTopLevelIsFixed(t *testing.T) {
	fixed := []string{"DEVELOPERS.md", "README.md", "cmd", "draw", "examples", "fonts", "go.mod", "go.sum", "layout", "packet"}
	entries, err := os.ReadDir("../..")
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && path.Ext(e.Name()) != ".pdf" {
			found = append(found, e.Name())
		}
	}
	if !slices.Equal(found, fixed) {
		t.Errorf("the top level holds %v, want exactly %v", found, fixed)
	}
}
