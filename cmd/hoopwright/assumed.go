package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"hoopwright/layout/spec"
)

// assumption is a value that a spec does not give, for JSON.
type assumption struct {
	Key   string `json:"key"`
	Value string `json:"value"`
	Why   string `json:"why"`
}

func assumed(s *spec.Spec) []assumption {
	list := []assumption{}
	for _, d := range s.Defaults {
		list = append(list, assumption{d.Key, d.Value, d.Why})
	}
	return list
}

// sayAssumed prints what the spec does not give, as a table.
func sayAssumed(w io.Writer, s *spec.Spec) error {
	if len(s.Defaults) == 0 {
		_, err := fmt.Fprintln(w, "Nothing: the spec gives every value.")
		return err
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "not in the spec\ttaken\twhy")
	for _, d := range s.Defaults {
		fmt.Fprintf(t, "%s\t%s\t%s\n", d.Key, d.Value, d.Why)
	}
	return t.Flush()
}
