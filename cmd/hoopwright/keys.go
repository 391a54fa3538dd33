package main

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// keysVerb lists the keys of a spec, from what the reader itself asks of each.
func keysVerb(args []string, s streams) error {
	f := flags("keys", s)
	units := f.String("units", "imperial", "limits and examples in `SYSTEM`: imperial or metric")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	system, err := systemOf(*units, measure.Imperial)
	if err != nil {
		return err
	}
	list := spec.Keys(system)
	wanted := keysOf(list, f.Args())
	if len(wanted) == 0 {
		hint := "; hoopwright keys lists them all"
		if near := catalog.Nearest(strings.Join(f.Args(), " "), lastNames(list)); near != "" {
			hint = fmt.Sprintf("; did you mean %s?", near)
		}
		return badCall("keys: no key holds %q%s", strings.Join(f.Args(), " "), hint)
	}
	for i, k := range wanted {
		if i > 0 {
			fmt.Fprintln(s.out)
		}
		sayKey(s, k)
	}
	return nil
}

func sayKey(s streams, k spec.Key) {
	const margin = "    "
	fmt.Fprintln(s.out, k.Path)
	fmt.Fprintln(s.out, wrapped(margin+k.Takes, margin))
	if k.Default != "" {
		text := margin + "default " + k.Default
		if k.Why != "" {
			text += " (" + k.Why + ")"
		}
		fmt.Fprintln(s.out, wrapped(text, margin))
	}
	fmt.Fprintln(s.out, margin+"e.g. "+k.Example)
}

// keysOf picks the keys of a section by its path, or else those whose path holds all the words.
func keysOf(list []spec.Key, words []string) []spec.Key {
	if len(words) == 0 {
		return list
	}
	section := strings.Join(words, " ")
	within := func(k spec.Key) bool {
		path := strings.NewReplacer("[]", "", ".*", "").Replace(k.Path)
		return k.Path == section || path == section || strings.HasPrefix(path, section+".")
	}
	if slices.ContainsFunc(list, within) {
		return slices.DeleteFunc(slices.Clone(list), func(k spec.Key) bool { return !within(k) })
	}
	return slices.DeleteFunc(slices.Clone(list), func(k spec.Key) bool {
		have := catalog.Words(strings.NewReplacer(".", " ", "[]", " ", "*", " ").Replace(k.Path))
		return slices.ContainsFunc(catalog.Words(section), func(w string) bool { return !slices.Contains(have, w) })
	})
}

func lastNames(list []spec.Key) (names []string) {
	for _, k := range list {
		names = append(names, k.Path[strings.LastIndexByte(k.Path, '.')+1:])
	}
	return names
}

// systemOf reads the word of a --units option; where none is given it is another's.
func systemOf(word string, otherwise measure.System) (measure.System, error) {
	if word == "" {
		return otherwise, nil
	}
	for _, s := range []measure.System{measure.Imperial, measure.Metric} {
		if word == s.String() {
			return s, nil
		}
	}
	return 0, badCall("--units is imperial or metric, not %q", word)
}
