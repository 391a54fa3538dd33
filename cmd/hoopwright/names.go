package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// namesVerb lists what the catalog knows, or the rows that hold some words.
func namesVerb(args []string, s streams) error {
	f := flags("names", "names [WORDS] [--units SYSTEM]", s)
	units := f.String("units", "imperial", "print figures in `SYSTEM`: imperial or metric")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	words := strings.Join(f.Args(), " ")
	system, err := systemOf(*units)
	if err != nil {
		return err
	}
	t := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
	found := 0
	for _, row := range catalog.Rows(system) {
		text := strings.Join([]string{row.Kind, row.Name, row.Description, row.Source}, "\t")
		if strings.Contains(strings.ToLower(text), strings.ToLower(words)) {
			fmt.Fprintln(t, text)
			found++
		}
	}
	if err := t.Flush(); err != nil {
		return err
	}
	if found == 0 {
		return badCall("names: nothing in the catalog holds %q", words)
	}
	return nil
}

// systemOf reads the word of a --units option.
func systemOf(word string) (measure.System, error) {
	for _, s := range []measure.System{measure.Imperial, measure.Metric} {
		if word == s.String() {
			return s, nil
		}
	}
	return 0, badCall("--units is imperial or metric, not %q", word)
}
