package spec

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"hoopwright/layout/finding"
)

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
