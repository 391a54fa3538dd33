package main

import (
	"fmt"
	"slices"
	"strings"
	"text/tabwriter"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// namesVerb lists what the catalog knows, or the rows that hold all of some words in whatever order. What is no thing of the catalog may be a key with words of its own, as soil is.
func namesVerb(args []string, s streams) error {
	f := flags("names", s)
	units := f.String("units", "", "print figures in `SYSTEM`: imperial or metric (default: that of the words, else imperial)")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	text := strings.Join(f.Args(), " ")
	system, err := systemOf(*units, systemIn(text))
	if err != nil {
		return err
	}
	words := catalog.Words(text)
	t := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
	found := 0
	for _, row := range catalog.Rows(system) {
		have := catalog.Words(strings.Join([]string{row.Kind, row.Name, row.Description}, " "))
		if !slices.ContainsFunc(words, func(w string) bool {
			return !slices.ContainsFunc(have, func(h string) bool { return strings.HasPrefix(h, w) })
		}) {
			fmt.Fprintln(t, strings.Join([]string{row.Kind, row.Name, row.Description, row.Source}, "\t"))
			found++
		}
	}
	if err := t.Flush(); err != nil {
		return err
	}
	if found > 0 {
		return nil
	}
	keys := keysOf(spec.Keys(system), f.Args())
	for _, k := range keys {
		sayKey(s, k)
	}
	if len(keys) == 0 {
		return badCall("names: nothing in the catalog holds %q; one of your own is described in the spec: hoopwright keys arch.pipe, hoopwright keys lights.strings", text)
	}
	return nil
}

// systemIn is the system that a text's sizes are in: 25 mm is metric, and so is what runs on 230 V.
func systemIn(text string) measure.System {
	words := catalog.Words(text)
	for i := range words {
		size := words[i]
		if i+1 < len(words) {
			size += " " + words[i+1]
		}
		for _, t := range []string{words[i], size} {
			if system, ok := measure.SystemOf(t); ok {
				return system
			}
		}
		if words[i] == "230" {
			return measure.Metric
		}
	}
	return measure.Imperial
}
