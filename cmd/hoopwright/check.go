package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"hoopwright/layout"
	"hoopwright/layout/say"
	"hoopwright/packet"
)

// checkVerb solves a spec and reports; it writes no packet.
func checkVerb(args []string, s streams) error {
	f := flags("check", "check [SPEC] [--json | --shopping csv] [--against OLD]", s)
	asJSON := f.Bool("json", false, "print the whole plan as JSON, lengths in millimetres")
	shopping := f.String("shopping", "", "print the shopping list alone as `FORMAT`: csv, for spreadsheets")
	units := f.String("units", "", "report in `SYSTEM`: imperial or metric")
	against := f.String("against", "", "say what changed from `OLD`, a spec or a packet, and what to buy because of it")
	operand, err := parse(f, args)
	if err != nil {
		return err
	}
	switch {
	case *shopping != "" && *shopping != "csv":
		return badCall("check: --shopping is csv, not %q", *shopping)
	case *shopping != "" && *against != "":
		return badCall("check: --against says itself what to buy; give --shopping csv or --against, not both")
	case *shopping != "" && *asJSON:
		return badCall("check: --json prints the shopping list too; give --json or --shopping csv, not both")
	}
	sp, err := readSpec(operand, s)
	if err != nil {
		return err
	}
	if err := setUnits(sp, *units); err != nil {
		return err
	}
	plan := solve(sp)
	if *against != "" {
		return compare(plan, *against, *asJSON, s)
	}
	switch {
	case *shopping == "csv":
		err = writeShopping(s.out, plan)
	case *asJSON:
		enc := json.NewEncoder(s.out)
		enc.SetIndent("", "  ")
		enc.SetEscapeHTML(false)
		err = enc.Encode(plan)
	default:
		err = report(s.out, plan)
	}
	if err != nil {
		return fmt.Errorf("check: %w", err)
	}
	return verdict(plan)
}

// report prints the key figures and every finding.
func report(w io.Writer, p *layout.Plan) error {
	u := p.Spec.Units
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintf(t, "%s\n\n", p.Spec.Title)
	fmt.Fprintln(t, "arches\tspan\tpipe\tcrown\tclear\tbend radius\tthrust\tload factor")
	for _, k := range p.Kinds {
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%s\t%s\t%s\t%.1f %s\n", say.Numbers(k.Numbers), u.Tape(k.Span), u.Tape(k.Length), u.Tape(k.Crown), u.Tape(k.Clear),
			u.Inches(k.BendRadius), u.Force(k.Thrust), k.LoadFactor, k.LoadFactorWay)
	}
	fmt.Fprintf(t, "\nstakes\t%d\nridge pieces\t%d\nstrings\t%d\nchains\t%d\nbars\t%d\n", len(p.Stakes), len(p.Ridge), len(p.Strings), len(p.Chains), len(p.Cuts.Bars))
	for _, f := range packet.WeatherFigures(p) {
		fmt.Fprintf(t, "%s\t%s\n", f[0], f[1])
	}
	for _, c := range p.Circuits {
		fmt.Fprintf(t, "circuit %s\t%.2f A of %.1f A allowed\n", c.Name, c.Amps, c.Allowed)
	}
	if err := t.Flush(); err != nil {
		return err
	}
	if cures := packet.CureLines(p); len(cures) > 0 {
		fmt.Fprintf(w, "\nto come nearer to the gusts of weather.stand and weather.inside, each line for the spec on top of those before:\n")
		for _, line := range cures {
			fmt.Fprintln(w, "  "+line)
		}
	}
	if len(p.Findings) > 0 {
		fmt.Fprintln(w)
	}
	for _, f := range p.Findings {
		where := ""
		if f.Pos.Line > 0 {
			where = f.Pos.String() + ": "
		}
		lines := append([]string{fmt.Sprintf("%s%s [%s] %s", where, f.Level, f.Code, f.Text)}, cureLines(f.Cure)...)
		if _, err := fmt.Fprintln(w, strings.Join(lines, "\n    ")); err != nil {
			return err
		}
	}
	return nil
}
