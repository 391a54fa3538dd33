package spec

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
)

// reader is one reading of one spec: what was read so far and what is wrong with it.
type reader struct {
	spec   *Spec
	lines  []string // of the source: YAML drops comments that we must show
	errors Errors
	marks  names           // of the site, which tapes start from
	meant  map[string]bool // keys of the table that seem to stand elsewhere under another name: they are not missing
}

func newReader(s *Spec) *reader {
	s.positions = map[string]finding.Position{}
	return &reader{spec: s, marks: names{of: "marks"}, meant: map[string]bool{}}
}

// field is one value with the path that leads to it.
type field struct {
	*reader
	path  string // as messages show it: site.marks[2].at
	table string // the same in the table of keys: site.marks[].at
	node  *yaml.Node
}

func (r *reader) position(n *yaml.Node) finding.Position {
	return finding.Position{File: r.spec.File, Line: n.Line, Column: n.Column}
}

// fail reports what is wrong with a value, with the right example of its key.
func (f field) fail(format string, args ...any) {
	f.failWith(exampleOf(f.table, f.spec.Units), format, args...)
}

// failWith reports what is wrong with a value, with an example of its own.
func (f field) failWith(example, format string, args ...any) {
	f.failAt(f.node, example, format, args...)
}

// failAt reports what is wrong with a value, at another place than the value's own.
func (f field) failAt(n *yaml.Node, example, format string, args ...any) {
	f.errors = append(f.errors, Error{f.position(n), f.path, fmt.Sprintf(format, args...), example})
}

// What a value is, and what it should be.
var (
	isWords     = map[yaml.Kind]string{yaml.MappingNode: "is keys with values", yaml.SequenceNode: "is a list", yaml.ScalarNode: "is a plain value"}
	wantedWords = map[yaml.Kind]string{yaml.MappingNode: "keys with values are wanted", yaml.SequenceNode: "a list is wanted", yaml.ScalarNode: "a plain value is wanted"}
)

// is reports whether the value is of one kind, and fails where it is not.
func (f field) is(kind yaml.Kind) bool {
	if f.node.Kind != kind {
		f.fail("%s; %s", isWords[f.node.Kind], wantedWords[kind])
	}
	return f.node.Kind == kind
}

// list opens a list. Nulls in it are refused and left out.
func (f field) list() ([]field, bool) {
	if !f.is(yaml.SequenceNode) {
		return nil, false
	}
	if len(f.node.Content) > mostItems {
		f.fail("has %d items, more than %d", len(f.node.Content), mostItems)
		return nil, false
	}
	var items []field
	for i, n := range f.node.Content {
		item := field{f.reader, fmt.Sprintf("%s[%d]", f.path, i), f.table + "[]", follow(n)}
		f.spec.positions[item.path] = f.position(item.node)
		if item.node.ShortTag() == "!!null" {
			item.null(item.node)
			continue
		}
		items = append(items, item)
	}
	return items, true
}

// null refuses a null, and names the comment where one swallowed the value.
func (f field) null(at *yaml.Node) {
	example := exampleOf(f.table, f.spec.Units)
	if comment := f.commentAfter(at); comment != "" {
		if number := barNumber.FindStringSubmatch(comment); number != nil && strings.HasSuffix(f.table, ".bar") {
			example = "bar: no. " + number[1]
		}
		f.failAt(at, example, "has a null value: # begins a comment, so YAML takes nothing from %s", quote(comment))
		return
	}
	f.failAt(at, example, "has a null value; give it one, or leave it out")
}

// commentAfter returns the comment that stands where a key's value should.
func (f field) commentAfter(key *yaml.Node) string {
	if key.Line < 1 || key.Line > len(f.lines) {
		return ""
	}
	_, rest, ok := strings.Cut(f.lines[key.Line-1], key.Value+":")
	if rest = strings.TrimSpace(rest); ok && strings.HasPrefix(rest, "#") {
		return rest
	}
	return ""
}

// barNumber is how a bar's number is written where # does not begin a comment.
var barNumber = regexp.MustCompile(`^#\s*([0-9]+)\b`)

// mostSuggestions bounds how many errors of one file look for the nearest name; a spec with more is no spec.
const mostSuggestions = 200

// nearest returns the known name that a mistyped one is most like, or nothing.
func (r *reader) nearest(name string, known []string) string {
	if len([]rune(name)) > longestName || len(r.errors) > mostSuggestions {
		return ""
	}
	return catalog.Nearest(name, known)
}

// follow returns the value that an alias stands for. Cycles are refused before any reading.
func follow(n *yaml.Node) *yaml.Node {
	for n.Kind == yaml.AliasNode {
		n = n.Alias
	}
	return n
}

func join(path, name string) string {
	if path == "" {
		return brief(name)
	}
	return path + "." + brief(name)
}

// scalar returns a plain value as it is written, without its quotes.
func (f field) scalar() (string, bool) {
	if !f.is(yaml.ScalarNode) {
		return "", false
	}
	if f.node.Style&yaml.TaggedStyle != 0 {
		f.failWith(f.keyed(strconv.Quote(brief(strings.TrimSpace(f.node.Tag+" "+f.node.Value)))), "carries the YAML tag %s; write the value alone, or in quotes where it begins with !", quote(f.node.Tag))
		return "", false
	}
	return strings.TrimSpace(f.node.Value), true
}

// text returns one line of text of at most so many characters.
func (f field) text(longest int) (string, bool) {
	s, ok := f.scalar()
	switch {
	case !ok:
		return "", false
	case s == "":
		f.fail("is empty")
	case strings.ContainsFunc(s, unicode.IsControl):
		f.fail("must be one line of plain text")
	case len([]rune(s)) > longest:
		f.fail("is longer than %d characters", longest)
	default:
		f.spec.Texts = append(f.spec.Texts, Text{f.path, s})
		return s, true
	}
	return "", false
}

// nameFits reports whether a key of the spec's own can stand on a label.
func (f field) nameFits(at *yaml.Node, name string) bool {
	switch {
	case strings.ContainsFunc(name, unicode.IsControl):
		f.failAt(at, "", "a name must be one line of plain text")
	case len([]rune(name)) > longestName:
		f.failAt(at, "", "a name has at most %d characters", longestName)
	default:
		f.spec.Texts = append(f.spec.Texts, Text{f.path, name})
		return true
	}
	return false
}

// texts returns one text or a list of them.
func (f field) texts() []field {
	if f.node.Kind == yaml.ScalarNode {
		return []field{f}
	}
	items, _ := f.list()
	return items
}

// Error is one thing wrong with a spec.
type Error struct {
	Pos     finding.Position
	Key     string // path of the key, as in arch.stake.depth or site.marks[2].at, counted from 0; empty for the file as a whole
	Text    string // what is wrong
	Example string // a right example, as it would stand in the file
}

// Error returns the message: file:line:column: key: what is wrong; write e.g. `right example`.
func (e Error) Error() string {
	var b strings.Builder
	b.WriteString(e.Pos.String() + ": ")
	if e.Key != "" {
		b.WriteString(e.Key + ": ")
	}
	b.WriteString(e.Text)
	if e.Example != "" {
		b.WriteString("; write e.g. `" + e.Example + "`")
	}
	return b.String()
}

// Errors is everything wrong with a spec, by line and column.
type Errors []Error

// Error returns the messages, one a line.
func (list Errors) Error() string {
	lines := make([]string, len(list))
	for i, e := range list {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// sort orders the list by place. Nothing is said twice.
func (list Errors) sort() Errors {
	slices.SortStableFunc(list, func(a, b Error) int {
		return cmp.Or(cmp.Compare(a.Pos.Line, b.Pos.Line), cmp.Compare(a.Pos.Column, b.Pos.Column), cmp.Compare(a.Key, b.Key))
	})
	return slices.CompactFunc(list, func(a, b Error) bool { return a.Pos == b.Pos && a.Key == b.Key && a.Text == b.Text })
}

// longestQuote is how much of the spec's own text a message repeats, in characters.
const longestQuote = 60

// quote sets the spec's own text between back quotes, cut short and without control characters.
func quote(text string) string { return "`" + brief(text) + "`" }

func brief(text string) string {
	runes := []rune(text)
	if len(runes) > longestQuote {
		runes = append(runes[:longestQuote-1], '…')
	}
	for i, r := range runes {
		if unicode.IsControl(r) {
			runes[i] = ' '
		}
	}
	return string(runes)
}
