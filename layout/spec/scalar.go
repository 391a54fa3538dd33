package spec

import (
	"strconv"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"
)

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
