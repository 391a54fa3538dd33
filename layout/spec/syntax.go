package spec

import (
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// mostRepairs bounds how many slips of one file are mended to find what else is wrong with it.
const mostRepairs = 20

// parse returns the root of the only document. A slip that has one plain remedy is reported and mended, so that the rest of the file is
// read too; any other fault of syntax ends the reading.
func (r *reader) parse(source []byte) (*yaml.Node, bool) {
	lines := strings.Split(string(source), "\n")
	for range mostRepairs {
		decoder := yaml.NewDecoder(strings.NewReader(strings.Join(lines, "\n")))
		var document, second yaml.Node
		err := decoder.Decode(&document)
		if errors.Is(err, io.EOF) {
			r.failLine(1, "", "the file is empty, or has only comments; `hoopwright starter` writes a spec to begin from")
			return nil, false
		}
		if err == nil {
			if err := decoder.Decode(&second); !errors.Is(err, io.EOF) {
				r.secondDocument(document.Content[0])
				return nil, false // half of a spec says nothing of the whole
			}
			r.nameMended(document.Content[0])
			return document.Content[0], true
		}
		if !r.mend(lines, err) {
			if len(r.errors) == 0 {
				r.failLine(1, "", "YAML cannot be read here: %s", brief(err.Error()))
			}
			return nil, false
		}
	}
	return nil, false
}

// nameMended gives the errors of mended slips their keys, now that the tree is known.
func (r *reader) nameMended(root *yaml.Node) {
	for i := range r.errors {
		if e := &r.errors[i]; e.Key == "" {
			e.Key = keyAt(root, "", e.Pos.Line, e.Pos.Column)
		}
	}
}

// keyAt returns the path of the key or the value that stands at a place of the file, or nothing.
func keyAt(n *yaml.Node, path string, line, column int) string {
	if n.Line == line && n.Column == column && n.Kind == yaml.ScalarNode {
		return path
	}
	for i, child := range n.Content {
		at := fmt.Sprintf("%s[%d]", path, i)
		if n.Kind == yaml.MappingNode {
			at = join(path, n.Content[i-i%2].Value)
		}
		if found := keyAt(child, at, line, column); found != "" {
			return found
		}
	}
	return ""
}

// secondDocument reports where a second document begins: at the first line of three hyphens after the first document's root.
func (r *reader) secondDocument(root *yaml.Node) {
	for i := root.Line; i < len(r.lines); i++ {
		if strings.HasPrefix(r.lines[i], "---") || strings.HasPrefix(r.lines[i], "...") {
			r.failLine(i+1, "", "a second document begins here; a file holds one spec")
			return
		}
	}
	r.failLine(root.Line, "", "a second document follows; a file holds one spec")
}

var yamlError = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

// fault splits YAML's message into the line it means and what it says. Its scanner counts lines from 1 and its parser from 0, and
// neither names the first.
func fault(err error) (line int, text string) {
	parts := yamlError.FindStringSubmatch(strings.ReplaceAll(err.Error(), "\n", " "))
	if parts == nil {
		return 1, err.Error()
	}
	line, _ = strconv.Atoi(parts[1])
	if strings.HasPrefix(parts[2], "did not find expected") {
		line++
	}
	return max(line, 1), parts[2]
}

// What a tree may hold once every alias is written out: enough for the largest spec, and read in well under a second.
const (
	mostNodes = 400_000
	mostDepth = 24
)

// size counts the nodes of a tree with its aliases written out. It stops beyond the limits and returns the node where that is.
func size(n *yaml.Node, depth int, count *int) (tooMuch *yaml.Node) {
	if *count++; *count > mostNodes || depth > mostDepth {
		return n
	}
	if n.Kind == yaml.AliasNode {
		if size(n.Alias, depth+1, count) != nil {
			return n
		}
		return nil
	}
	for _, child := range n.Content {
		if bad := size(child, depth+1, count); bad != nil {
			return bad
		}
	}
	return nil
}

// sizeFits checks the tree before anything follows its aliases.
func (r *reader) sizeFits(root *yaml.Node) bool {
	count := 0
	bad := size(root, 0, &count)
	if bad == nil {
		return true
	}
	text := "values are nested more than 24 deep here, or an alias contains itself"
	if count > mostNodes {
		text = "the spec with its aliases written out is too large to be one"
	}
	r.errors = append(r.errors, Error{Pos: r.position(bad), Text: text})
	return false
}
