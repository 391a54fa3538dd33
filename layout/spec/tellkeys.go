package spec

import (
	"cmp"
	"fmt"
	"regexp"
	"strings"

	"hoopwright/layout/measure"
)

// Key is one key of the format, in words.
type Key struct {
	Path    string // [] stands for an item of a list, * for a name of the spec's own
	Takes   string // what the reader takes, with its limits
	Example string // a right one, as it stands in a spec
	Default string // what is taken where it is left out, as a packet prints it; empty where nothing is, or where it follows from the rest alone
	Why     string // of the default
}

// Keys returns every key of the format in its order, with limits and examples in the system's units. Its default is found by the reader itself, in specs that give little.
func Keys(system measure.System) []Key {
	defaults := map[string]Default{}
	read := func(source string) {
		r := newReader(&Spec{})
		if root, ok := r.tree([]byte(source)); ok {
			r.read(root)
		}
		for _, d := range r.spec.Defaults {
			if path := tableOf(d.Key); defaults[path].Key == "" {
				defaults[path] = d
			}
		}
	}
	plain := exampleOf("tunnel", system) + "\nunits: " + system.String() + "\n"
	read(plain + exampleOf("arch", system))
	read(plain + "arch: {pipe: {" + exampleOf("arch.pipe.od", system) + ", " + exampleOf("arch.pipe.wall", system) + "}}")
	list := make([]Key, len(keys))
	for i, k := range keys {
		read(document(k.path, system))
		list[i] = Key{Path: k.path, Takes: k.takes(system), Example: exampleOf(k.path, system)}
	}
	for i := range list {
		d := defaults[list[i].Path]
		list[i].Default, list[i].Why = d.Value, d.Why
	}
	return list
}

// takes says what a key takes: by its rule, or the keys or items that it has.
func (k key) takes(system measure.System) string {
	words := ""
	if k.rule.takes != nil {
		words = k.rule.takes(system)
	}
	switch known := children[cmp.Or(sameAs[k.path], k.path)]; {
	case k.rule.read != nil:
	case len(known) > 0 && known[0] != "*":
		words += "keys: " + strings.Join(known, ", ")
	case words != "":
	case len(known) > 0:
		words = fmt.Sprintf("names of your own, at most %d", mostItems)
	default:
		words = fmt.Sprintf("a list, at most %d", mostItems)
	}
	return words
}

// document is a spec with one key alone, set to its own example.
func document(path string, system measure.System) string {
	value := rows[path].example
	if system == measure.Metric && rows[path].inMetric != "" {
		value = rows[path].inMetric
	}
	for path != "" {
		switch cut := strings.LastIndexAny(path, ".["); {
		case cut < 0:
			value, path = path+": "+value, ""
		case path[cut] == '[':
			value, path = "["+value+"]", path[:cut]
		default:
			name := "porch"
			if strings.HasPrefix(path, "found.") { // arches have numbers
				name = "1"
			}
			value, path = "{"+strings.Replace(path[cut+1:], "*", name, 1)+": "+value+"}", path[:cut]
		}
	}
	if strings.HasPrefix(value, "units:") {
		return value
	}
	return value + "\nunits: " + system.String()
}

var itemNumbers = regexp.MustCompile(`\[\d+\]`)

// tableOf turns the path of a value into that of its row in the table of keys.
func tableOf(path string) string {
	table := ""
	for _, name := range strings.Split(itemNumbers.ReplaceAllString(path, "[]"), ".") {
		bare := strings.TrimRight(name, "[]")
		next := under(table, bare)
		if rows[next].path == "" && rows[next+"[]"].path == "" && rows[table+".*"].path != "" {
			next = table + ".*"
		}
		table = next + name[len(bare):]
		table = cmp.Or(sameAs[table], table)
	}
	return table
}
