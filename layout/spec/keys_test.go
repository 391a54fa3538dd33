package spec

import (
	"errors"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/measure"
)

// marshal writes a tree as a file.
func marshal(t *testing.T, n *yaml.Node) string {
	t.Helper()
	out, err := yaml.Marshal(n)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

func parseTree(t *testing.T, source string) *yaml.Node {
	t.Helper()
	var document yaml.Node
	if err := yaml.Unmarshal([]byte(source), &document); err != nil {
		t.Fatalf("%v in %s", err, source)
	}
	return document.Content[0]
}

// visit calls do for every value of a tree with its path.
func visit(n *yaml.Node, path string, do func(path string, n *yaml.Node)) {
	if path != "" {
		do(path, n)
	}
	for i, child := range n.Content {
		switch {
		case n.Kind == yaml.SequenceNode:
			visit(child, path+"["+string(rune('0'+i))+"]", do)
		case i%2 == 1:
			visit(child, join(path, n.Content[i-1].Value), do)
		}
	}
}

// TestEveryKeyIsRead puts a list of lists in the place of every value of the full spec, in turn: the reader must complain there. It also
// checks that the full spec gives every key of the table.
func TestEveryKeyIsRead(t *testing.T) {
	const elsewhere = " tunnel.length site.route[].right site.start.toward.at arch.pipe.modulus arch.pipe.strength arch.pipe.weight arch.pipe.coupling stop ridge.pipe guys.stake "
	given := map[string]bool{}
	for _, source := range []string{quotedPlaces, tapedSite} {
		visit(parseTree(t, source), "", func(path string, _ *yaml.Node) {
			given[tableOf(path)] = true
			root := parseTree(t, source)
			visit(root, "", func(p string, n *yaml.Node) {
				if p == path {
					*n = *parseTree(t, "[[[[]]]]")
				}
			})
			_, err := Read("walk.yaml", []byte(marshal(t, root)))
			var list Errors
			errors.As(err, &list)
			if !slices.ContainsFunc(list, func(e Error) bool { return strings.HasPrefix(e.Key, path) }) {
				t.Errorf("%s: a list of lists is no error; there is %v", path, list)
			}
		})
	}
	for _, k := range keys {
		if !given[k.path] && !strings.Contains(elsewhere, " "+k.path+" ") {
			t.Errorf("the full spec does not give %s", k.path)
		}
	}
}

// TestExamplesOfKeys sets every key to its own example, in both systems of units: the reader must not complain of it.
func TestExamplesOfKeys(t *testing.T) {
	for _, system := range []measure.System{measure.Imperial, measure.Metric} {
		for _, k := range keys {
			for _, e := range alone(document(k.path, system)) {
				want := strings.NewReplacer("[]", "[0]", "found.crown.*", "found.crown.1", "found.span.*", "found.span.1", "*", "porch").Replace(k.path)
				named := strings.HasPrefix(e.Text, "no ") || strings.Contains(e.Text, "pick from") || strings.Contains(e.Text, "no ridge")
				if (e.Key == want || e.Key == "") && !named {
					t.Errorf("the example of %s is refused: %s", k.path, e)
				}
			}
		}
	}
}

// alone reads a spec that is no whole one and returns what is wrong with it.
func alone(source string) Errors {
	_, err := Read("walk.yaml", []byte(source))
	var list Errors
	errors.As(err, &list)
	return list
}

var limits = regexp.MustCompile(`\), (\S+ \S+) to (\S+ \S+)$|number, (\S+) to (\S+)$`)

// What Keys says of a key is what the reader does: one and a half hundredths within its limits, which are printed round, a value is taken, a hundredth beyond them it is not, and there is something to say of every key.
func TestKeysTellTheTruth(t *testing.T) {
	for _, system := range []measure.System{measure.Imperial, measure.Metric} {
		list, limited := Keys(system), 0
		if len(list) != len(keys) {
			t.Fatalf("%d keys of %d", len(list), len(keys))
		}
		for _, k := range list {
			if k.Takes == "" {
				t.Errorf("%s: nothing is said of what it takes", k.Path)
			}
			parts := limits.FindStringSubmatch(k.Takes)
			if parts == nil || strings.HasSuffix(k.Path, ".weight") || strings.HasSuffix(k.Path, ".gauge") || strings.Contains(k.Takes, "km/h)") && system == measure.Metric || k.Path == "site.route[].radius" {
				continue // of a string's weight there are two sorts, a gauge is a whole number, speeds are printed whole, a radius alone is no bend
			}
			limited++
			for i, end := range parts[1:] {
				if end == "" {
					continue
				}
				words := strings.Fields(strings.NewReplacer("−", "-", "°", "").Replace(end)) // thousands stand apart
				number, unit := words[0], ""
				if last := len(words) - 1; last > 0 {
					number, unit = strings.Join(words[:last], ""), words[last]
				}
				v, err := strconv.ParseFloat(number, 64)
				if err != nil {
					t.Errorf("%s: limit %q: %v", k.Path, end, err)
					continue
				}
				beyond := v + max(0.01*math.Abs(v), 0.01)*float64(2*(i%2)-1)
				if strings.HasPrefix(k.Takes, "a whole") {
					beyond = v + float64(2*(i%2)-1)
				}
				within := v - 0.015*math.Abs(v)*float64(2*(i%2)-1) // as printed they are round
				if strings.HasPrefix(k.Takes, "a whole") {
					within = v
				}
				if refused(k, system, strconv.FormatFloat(within, 'f', -1, 64)+" "+unit) {
					t.Errorf("%s: within its limit %s it is refused", k.Path, end)
				}
				if v != 0 && !refused(k, system, strconv.FormatFloat(beyond, 'f', -1, 64)+" "+unit) {
					t.Errorf("%s: beyond its limit %s, %g is taken", k.Path, end, beyond)
				}
			}
		}
		if limited < 90 {
			t.Errorf("limits of %d keys alone are told", limited)
		}
	}
}

// refused reports whether the reader finds a key's value out of its limits.
func refused(k Key, system measure.System, value string) bool {
	source := strings.Replace(document(k.Path, system), strings.TrimPrefix(k.Example, k.Path[strings.LastIndexByte(k.Path, '.')+1:]+": "), strings.TrimSpace(value), 1)
	return slices.ContainsFunc(alone(source), func(e Error) bool {
		return tableOf(e.Key) == k.Path && (strings.Contains(e.Text, " is wanted") || strings.Contains(e.Text, "cannot"))
	})
}

func TestTableOfKeys(t *testing.T) {
	for _, k := range keys {
		if k.path == "" || k.example == "" {
			t.Errorf("row %+v is not whole", k)
		}
	}
	if len(rows) != len(keys) {
		t.Errorf("%d rows for %d keys: one is there twice", len(rows), len(keys))
	}
}
