// Package finding holds what the solver has to say about a tunnel: a level, a code that stays the
// same from year to year, one plain sentence with its figures, the place in the spec that caused it, and the changes of the
// spec that cure it. What holds of all findings of a code stands in one table. It is a leaf, so that every part of layout can report without importing another.
package finding

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
)

// Level says how much a finding matters. The zero Level is invalid, so a forgotten one is caught.
type Level int

// The levels, worst first.
const (
	MustFix Level = iota + 1 // do not build
	LookAt                   // decide before building
	Note                     // good to know
)

var levelWords = map[Level]string{MustFix: "must fix", LookAt: "look at", Note: "note"}

// String returns the level in the words the sheets use.
func (l Level) String() string {
	if w, ok := levelWords[l]; ok {
		return w
	}
	return fmt.Sprintf("level %d", int(l))
}

// MarshalText writes the level's words.
func (l Level) MarshalText() ([]byte, error) {
	w, ok := levelWords[l]
	if !ok {
		return nil, fmt.Errorf("finding: no level %d", int(l))
	}
	return []byte(w), nil
}

// Position is a place in a spec file. Lines and columns count from 1, columns in characters; zero is unknown.
type Position struct {
	File         string
	Line, Column int
}

// String returns file:line:column, leaving out what is unknown.
func (p Position) String() string {
	switch {
	case p.Line == 0:
		return p.File
	case p.Column == 0:
		return fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Finding is one thing the reader of the packet should know.
type Finding struct {
	Level Level    `json:"level"`
	Code  string   `json:"code"`  // has a row in the table
	Text  string   `json:"text"`  // one plain sentence with its figures, in the packet's units
	Sheet string   `json:"sheet"` // the leaf's word, as in `packet --sheets`; Sort fills it in
	Key   string   `json:"key,omitempty"`
	Pos   Position `json:"-"` // of the key; layout.Solve fills it in
	Cure  []Change `json:"-"` // made together they cure it; none where no figure is known that does

	Else [][]Change `json:"-"` // other cures, each instead of Cure

	AcceptedBy string `json:"accepted_by,omitempty"` // who took it on, from the spec's accept
	AcceptedAs string `json:"accepted_as,omitempty"` // their reason
}

// Change puts one value into the spec.
type Change struct {
	Key   string // path, as in arch.span or site.route[1].radius
	Value string // as one would type it: 7 ft 6 in; empty takes the key out
}

var number = regexp.MustCompile(`\[\d+\]`)

// Path is the change's key, lists without their numbers.
func (c Change) Path() string { return number.ReplaceAllString(c.Key, "[]") }

// Sort gives each finding the leaf of its row, and orders the findings by level, then sheet, code and text, so that the same plan lists them the same way.
func Sort(list []Finding) {
	for i, f := range list {
		if row, ok := Of(f.Code); ok {
			list[i].Sheet = row.Leaf
		}
	}
	slices.SortStableFunc(list, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Level, b.Level), cmp.Compare(a.Sheet, b.Sheet), cmp.Compare(a.Code, b.Code), cmp.Compare(a.Text, b.Text))
	})
}

// CausesFirst returns the findings with those before the others that may be why they are there.
func CausesFirst(list []Finding) []Finding {
	cause := func(f Finding) bool { row, _ := Of(f.Code); return row.Cause }
	effect := func(f Finding) bool { return !cause(f) }
	return slices.Concat(slices.DeleteFunc(slices.Clone(list), effect), slices.DeleteFunc(slices.Clone(list), cause))
}

// MustFixes returns the codes of the findings that forbid building, each once, in order.
func MustFixes(list []Finding) []string {
	var codes []string
	for _, f := range list {
		if f.Level == MustFix && !slices.Contains(codes, f.Code) {
			codes = append(codes, f.Code)
		}
	}
	return codes
}

// Has reports whether a list holds a finding of a code.
func Has(list []Finding, code string) bool {
	return slices.ContainsFunc(list, func(f Finding) bool { return f.Code == code })
}
