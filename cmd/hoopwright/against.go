package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"time"

	"hoopwright/layout"
	"hoopwright/packet"
)

// compare reports what changed from an older spec or packet to a plan, and what to buy because of it.
func compare(plan *layout.Plan, old string, asJSON bool, s streams) error {
	if old == "-" {
		return badCall("check: --against names a file; standard input is for the spec")
	}
	was, err := readWith(packet.RecoverFilled, old, s) // as it was built: newer defaults change nothing
	if err != nil {
		return err
	}
	was.Units = plan.Spec.Units // figures are set beside each other as they are printed
	c := packet.Compare(solve(was, time.Time{}), plan)
	if asJSON {
		err = printJSON(s.out, struct {
			Schema int `json:"schema"`
			packet.Comparison
		}{schema, c})
	} else {
		err = sayChanges(s.out, old, c)
	}
	if err != nil {
		return fmt.Errorf("check: %w", err)
	}
	return verdict(plan)
}

func sayChanges(w io.Writer, old string, c packet.Comparison) error {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	if len(c.Figures) == 0 {
		fmt.Fprintf(t, "No figure differs from %s.\n", old)
	} else {
		fmt.Fprintf(t, "figure\t%s\tnow\n", old)
		for _, f := range c.Figures {
			fmt.Fprintf(t, "%s\t%s\t%s\n", f.What, f.Was, f.Is)
		}
	}
	if err := t.Flush(); err != nil {
		return err
	}
	fmt.Fprintln(w)
	if len(c.Buy) == 0 {
		fmt.Fprintln(w, "Nothing to buy: the old tunnel's parts are enough.")
	} else {
		fmt.Fprintln(t, "to buy, the old tunnel's parts kept\tneed\tbuy")
		for _, b := range c.Buy {
			fmt.Fprintf(t, "%s\t%d\t%d\n", b.Item, b.Need, b.Buy)
		}
	}
	if len(c.New) > 0 {
		fmt.Fprintf(t, "\nnew findings: %s\n", strings.Join(c.New, ", "))
	}
	if len(c.Gone) > 0 {
		fmt.Fprintf(t, "\nfindings gone: %s\n", strings.Join(c.Gone, ", "))
	}
	return t.Flush()
}
