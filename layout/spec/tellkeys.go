package spec

import (
	"regexp"
	"strings"

	"hoopwright/layout/finding"
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

// Keys returns every key of the format in its order, with limits and examples in the system's units. What a key takes and what its default is are found by the reader itself: each key's
// own example is read, and what the reader asks of it is noted.
func Keys(system measure.System) []Key {
	list := make([]Key, len(keys))
	defaults := map[string]Default{}
	read := func(source string) (rules map[string]string) {
		rules = map[string]string{}
		r := &reader{spec: &Spec{positions: map[string]finding.Position{}}, marks: names{of: "marks"}, meant: map[string]bool{}, rules: rules}
		if root, ok := r.tree([]byte(source)); ok {
			r.read(root)
		}
		for _, d := range r.spec.Defaults {
			if path := tableOf(d.Key); defaults[path].Key == "" {
				defaults[path] = d
			}
		}
		return rules
	}
	plain := exampleOf("tunnel", system) + "\nunits: " + system.String() + "\n"
	read(plain + exampleOf("arch", system))
	read(plain + "arch: {pipe: {" + exampleOf("arch.pipe.od", system) + ", " + exampleOf("arch.pipe.wall", system) + "}}")
	elsewhere := map[string]string{} // what is asked of a key in the example of another: some need company
	for i, k := range keys {
		rules := read(document(k.path, system))
		list[i] = Key{Path: k.path, Takes: rules[k.path], Example: exampleOf(k.path, system)}
		for path, rule := range rules {
			if elsewhere[path] == "" {
				elsewhere[path] = rule
			}
		}
	}
	for i := range list {
		k := &list[i]
		if k.Takes == "" {
			k.Takes = elsewhere[k.Path]
		}
		k.Default, k.Why = defaults[k.Path].Value, defaults[k.Path].Why
	}
	return list
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
		switch table = next + name[len(bare):]; {
		case table == "guys.stake":
			table = "arch.stake"
		case table == "ridge.pipe":
			table = "arch.pipe"
		}
	}
	return table
}
