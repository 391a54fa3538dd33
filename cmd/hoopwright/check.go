package main

import (
	"encoding/json"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/packet"
)

// checkVerb solves a spec and reports; it writes no packet.
func checkVerb(args []string, s streams) error {
	f := flags("check", s)
	var c checking
	f.BoolVar(&c.asJSON, "json", false, "print the whole plan as JSON, lengths in millimetres")
	f.StringVar(&c.shopping, "shopping", "", "print the shopping list alone as `FORMAT`: csv, for spreadsheets")
	f.StringVar(&c.units, "units", "", "report in `SYSTEM`: imperial or metric")
	f.StringVar(&c.against, "against", "", "say what changed from `OLD`, a spec or a packet, and what to buy because of it")
	f.BoolVar(&c.assumed, "assumed", false, "list what the spec does not give: key, value taken, why")
	operand, err := parse(f, args)
	if err != nil {
		return err
	}
	if err := c.clash(); err != nil {
		return err
	}
	err = c.check(operand, s)
	if c.asJSON {
		return saidInJSON(err, s)
	}
	return err
}

type checking struct {
	asJSON, assumed          bool
	shopping, units, against string
}

func (c checking) clash() error {
	switch {
	case c.shopping != "" && c.shopping != "csv":
		return badCall("check: --shopping is csv, not %q", c.shopping)
	case c.shopping != "" && c.against != "":
		return badCall("check: --against says itself what to buy; give --shopping csv or --against, not both")
	case c.shopping != "" && c.asJSON:
		return badCall("check: --json prints the shopping list too; give --json or --shopping csv, not both")
	case c.assumed && (c.shopping != "" || c.against != ""):
		return badCall("check: --assumed is a list of its own; give it alone, or --json, which has it too")
	}
	return nil
}

func (c checking) check(operand string, s streams) error {
	sp, err := readSpec(operand, s)
	if err != nil {
		return err
	}
	if err := setUnits(sp, c.units); err != nil {
		return err
	}
	today, err := issueDate("")
	if err != nil {
		return err
	}
	plan := solve(sp, today)
	if c.against != "" {
		return compare(plan, c.against, c.asJSON, s)
	}
	switch {
	case c.shopping == "csv":
		err = writeShopping(s.out, plan)
	case c.asJSON:
		err = printJSON(s.out, struct {
			Schema int `json:"schema"`
			*layout.Plan
			Assumed []spec.Default `json:"assumed"`
		}{schema, plan, append([]spec.Default{}, plan.Spec.Defaults...)})
	case c.assumed:
		err = sayAssumed(s.out, plan.Spec)
	default:
		err = report(s.out, plan)
	}
	if err != nil {
		return fmt.Errorf("check: %w", err)
	}
	return verdict(plan)
}

func printJSON(w io.Writer, value any) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(value)
}

// fault is one thing wrong with a call or a spec, for JSON. Line and column are 0 where there is no place.
type fault struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Key     string `json:"key"`
	Text    string `json:"text"`
	Example string `json:"example"`
}

// saidInJSON prints why nothing was solved as JSON too, and keeps the exit code. What was printed already is not told again.
func saidInJSON(err error, s streams) error {
	if err == nil || asExit(err).code < exitBadCall {
		return err
	}
	e := asExit(err)
	faults := []fault{}
	for _, x := range e.spec {
		faults = append(faults, fault{x.Pos.File, x.Pos.Line, x.Pos.Column, x.Key, x.Text, x.Example})
	}
	if len(e.spec) == 0 {
		faults = append(faults, fault{Text: e.msg})
	}
	if err := printJSON(s.out, struct {
		Schema int     `json:"schema"`
		Errors []fault `json:"errors"`
	}{schema, faults}); err != nil {
		return err
	}
	return exitError{code: e.code}
}

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
	for _, line := range slices.Concat(packet.WeatherFigures(p), packet.ScheduleFigures(p), packet.MoneyFigures(p), packet.FoundFigures(p)) {
		fmt.Fprintf(t, "%s\t%s\n", line[0], line[1])
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
	for _, f := range finding.CausesFirst(p.Findings) {
		where := ""
		if f.Pos.Line > 0 {
			where = f.Pos.String() + ": "
		}
		lines := append([]string{fmt.Sprintf("%s%s [%s] %s", where, f.Level, f.Code, f.Text)}, cureLines(f.Cure)...)
		for _, other := range f.Else {
			lines = append(append(lines, "or"), cureLines(other)...)
		}
		if _, err := fmt.Fprintln(w, strings.Join(lines, "\n    ")); err != nil {
			return err
		}
	}
	return nil
}

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

// cureLines says what to change in the spec, then the same as lines of YAML to paste: whole keys as one line each, a key of a list's item with the item beside it.
func cureLines(cure []finding.Change) []string {
	if len(cure) == 0 {
		return nil
	}
	var words, inItems []string
	var tree branch
	for _, c := range cure {
		key := c.Key
		if strings.Contains(key, " ") {
			key = "`" + key + "`"
		}
		if c.Value == "" {
			words = append(words, "take "+key+" out")
			continue
		}
		words = append(words, "set "+key+" to "+c.Value)
		if at := strings.LastIndexByte(c.Key, ']'); at > 0 {
			inItems = append(inItems, strings.TrimPrefix(c.Key[at+1:], ".")+": "+c.Value+"   # in "+c.Key[:at+1])
			continue
		}
		tree.put(strings.Split(c.Key, "."), c.Value)
	}
	lines := []string{"cure: " + say.And(words)}
	for _, top := range tree.inner {
		lines = append(lines, top.yaml())
	}
	return append(lines, inItems...)
}

// branch is a key of a spec with its value, or with the keys under it.
type branch struct {
	name, value string
	inner       []*branch
}

func (b *branch) put(path []string, value string) {
	if len(path) == 0 {
		b.value = value
		return
	}
	at := slices.IndexFunc(b.inner, func(in *branch) bool { return in.name == path[0] })
	if at < 0 {
		at, b.inner = len(b.inner), append(b.inner, &branch{name: path[0]})
	}
	b.inner[at].put(path[1:], value)
}

var plainKey = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9 _-]*$`)

func (b *branch) yaml() string {
	name, value := b.name, b.value
	if !plainKey.MatchString(name) {
		name = strconv.Quote(name)
	}
	if len(b.inner) > 0 {
		var list []string
		for _, in := range b.inner {
			list = append(list, in.yaml())
		}
		value = "{" + strings.Join(list, ", ") + "}"
	}
	return name + ": " + value
}
