package spec

import (
	"slices"
	"strings"

	"hoopwright/layout/catalog"
)

// names are the names given in one list. Each may be given once.
type names struct {
	of   string // what they name, in the plural
	list []string
	line map[string]int
}

func (n *names) add(f field, name string) {
	if line, twice := n.line[name]; twice {
		f.failWith(f.keyed(brief(name)+" 2"), "two %s are named %s, the first on line %d; names must differ", n.of, quote(name), line)
		return
	}
	if n.line == nil {
		n.line = map[string]int{}
	}
	n.line[name] = f.node.Line
	n.list = append(n.list, name)
}

func (n *names) has(name string) bool { _, ok := n.line[name]; return ok }

// oneOf reports whether a value names one of the known things of a sort, and fails where it does not.
func (f field) oneOf(sort, name string, known []string) bool {
	if slices.Contains(known, name) {
		return true
	}
	own := ""
	if sort == "circuit" {
		own = "power: {circuits: {" + brief(name) + ": " + exampleOf("power.circuits.*", f.spec.Units) + "}}"
	}
	f.unknownName(sort, name, known, own)
	return false
}

// unknownName fails because nothing of the sort has the name that a value gives. Own is how the spec describes one of its own, where it can.
func (f field) unknownName(sort, name string, known []string, own string) {
	text, better := f.noSuch(sort, name, known)
	switch {
	case own != "" && better == "" && len(known) > 0:
		text, better = text+"; describe one of your own by its figures", own
	case own != "" && better == "":
		better = own
	case better != "":
		better = f.keyed(better)
	}
	f.failWith(better, "%s", text)
}

// keyed shows another text as the value of the field's key; of an item in a list, as it is.
func (f field) keyed(text string) string {
	if strings.HasSuffix(f.table, "[]") {
		return text
	}
	return f.path[strings.LastIndexByte(f.path, '.')+1:] + ": " + text
}

const few = 12

// noSuch says that nothing of the sort has that name, and returns a name that would do, if there is one.
func (r *reader) noSuch(sort, name string, known []string) (text, better string) {
	text = "no " + sort + " is named " + quote(name)
	near := r.nearest(name, known)
	if near == "" && len([]rune(name)) <= longestName && len(r.errors) <= mostSuggestions {
		near = catalog.Alike(name, known)
	}
	switch {
	case len(known) == 0:
		return text + "; the spec names none yet", ""
	case near != "":
		return text + "; the nearest is " + quote(near), near
	case len(known) == 1:
		return text + "; there is only " + quote(known[0]), known[0]
	case len(known) <= few:
		return text + "; known are " + strings.Join(known, ", "), ""
	}
	return text + "; `hoopwright names` lists what is known", ""
}
