package spec

import (
	"errors"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
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

var indexes = regexp.MustCompile(`\[\d\]`)

// tablePath turns the path of a value into the path of its row in the table of keys.
func tablePath(path string) string {
	table := ""
	for _, name := range strings.Split(indexes.ReplaceAllString(path, "[]"), ".") {
		bare := strings.TrimRight(name, "[]")
		next := under(table, bare)
		if rows[next].path == "" && rows[next+"[]"].path == "" && rows[table+".*"].path != "" {
			next = table + ".*"
		}
		switch table = next + name[len(bare):]; {
		case table == "guys.stake":
			table = "arch.stake"
		case table == "ridge.pipe":
			table = "arch.pipe"
		}
	}
	return table
}

// TestEveryKeyIsRead puts a list of lists in the place of every value of the full spec, in turn: the reader must complain there. It also
// checks that the full spec gives every key of the table.
func TestEveryKeyIsRead(t *testing.T) {
	const elsewhere = " tunnel.length site.route[].right site.start.toward.at arch.pipe.modulus arch.pipe.strength arch.pipe.weight arch.pipe.coupling stop ridge.pipe guys.stake "
	given := map[string]bool{}
	for _, source := range []string{quotedPlaces, tapedSite} {
		visit(parseTree(t, source), "", func(path string, _ *yaml.Node) {
			given[tablePath(path)] = true
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
	for _, k := range keys {
		for _, example := range []string{k.example, k.inMetric} {
			if example == "" {
				continue
			}
			value, path := example, k.path
			for path != "" {
				switch cut := strings.LastIndexAny(path, ".["); {
				case cut < 0:
					value, path = path+": "+value, ""
				case path[cut] == '[':
					value, path = "["+value+"]", path[:cut]
				default:
					value, path = "{"+strings.Replace(path[cut+1:], "*", "porch", 1)+": "+value+"}", path[:cut]
				}
			}
			_, err := Read("walk.yaml", []byte(value))
			var list Errors
			errors.As(err, &list)
			want := strings.ReplaceAll(strings.ReplaceAll(k.path, "[]", "[0]"), "*", "porch")
			for _, e := range list {
				named := strings.HasPrefix(e.Text, "no ") || strings.Contains(e.Text, "pick from") || strings.Contains(e.Text, "no ridge")
				if (e.Key == want || e.Key == "") && !named {
					t.Errorf("the example of %s is refused: %s", k.path, e)
				}
			}
		}
	}
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
