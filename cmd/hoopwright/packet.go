package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"hoopwright/draw/pdf"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/packet"
)

func packetVerb(args []string, s streams) error {
	f := flags("packet", s)
	var o packetOptions
	output := f.StringP("output", "o", "", "write the packet to `FILE`, - for standard output; of several specs, into the folder of that name (default: the spec's name with .pdf)")
	f.StringSliceVar(&o.sheets, "sheets", nil, "only these `SHEETS`: "+strings.Join(packet.Words(), ", "))
	f.StringSliceVar(&o.crews, "for", nil, "only what these `CREWS` need: "+strings.Join(packet.Crews(), ", "))
	f.StringVar(&o.paper, "paper", "", "print on `SIZE`: "+say.Or(spec.Papers()))
	f.StringVar(&o.units, "units", "", "print in `SYSTEM`: imperial or metric")
	f.BoolVar(&o.annex, "annex", false, "the annex too: every figure, what it bears, how it was reckoned, permission, a letter to the neighbours")
	f.BoolVar(&o.oneSided, "one-sided", false, "every side on a sheet of paper of its own (default: two-sided, turned on the long edge)")
	f.BoolVar(&o.force, "force", false, "replace an existing PDF whatever it is")
	f.BoolVarP(&o.quiet, "quiet", "q", false, "say nothing of what was written")
	date := f.String("date", "", "the `DAY` printed as the issue date, as in 2026-11-21 (default: SOURCE_DATE_EPOCH, or today)")
	err := parseFlags(f, args)
	if err != nil {
		return err
	}
	o.sheets, o.crews = trimmed(o.sheets), trimmed(o.crews)
	if o.day, err = issueDate(*date); err != nil {
		return err
	}
	operands := f.Args()
	if len(operands) == 0 {
		operands = []string{""}
	}
	jobs, err := o.jobs(operands, *output, s)
	if err != nil {
		return err
	}
	return bindAll(jobs, o, s)
}

type packetOptions struct {
	sheets, crews []string
	paper, units  string
	annex         bool
	oneSided      bool
	force, quiet  bool
	day           time.Time
}

// job is one spec and the file that its packet goes to.
type job struct{ operand, target string }

// jobs pairs each spec with its packet's file, and refuses what would write one file twice or over a spec.
func (o packetOptions) jobs(operands []string, output string, s streams) ([]job, error) {
	var jobs []job
	for _, operand := range operands {
		target, err := o.target(operand, output, len(operands), s)
		if err != nil {
			return nil, err
		}
		j := job{operand, target}
		for _, other := range jobs {
			switch {
			case other.target != j.target:
			case other.operand == operand:
				return nil, badCall("packet: %s is named twice; once is enough", operand)
			default:
				return nil, badCall("packet: %s and %s would both be written to %s; make them one at a time with -o", other.operand, operand, j.target)
			}
		}
		jobs = append(jobs, j)
	}
	for _, j := range jobs {
		for _, other := range jobs {
			if sameFile(other.operand, j.target) {
				return nil, badCall("packet: %s is what the spec is read from; name another file with -o", j.target)
			}
		}
	}
	return jobs, nil
}

// target names the file that a spec's packet goes to, one of so many: unless told, in the current folder under the spec's own name. "-" is standard output.
func (o packetOptions) target(operand, output string, of int, s streams) (string, error) {
	switch output {
	case "":
		if operand != "-" {
			return namedFor(operand, o.crews), nil
		}
		fallthrough
	case "-":
		if of > 1 {
			return "", badCall("packet: standard output holds one packet; give one spec alone")
		}
		if isTerminal(s.out) {
			return "", badCall("packet: the packet is a PDF and would garble a terminal; name a file with -o, or send standard output to one")
		}
		return "-", nil
	}
	target, folder, err := intoFolder(output, namedFor(operand, o.crews))
	if err == nil && of > 1 && !folder {
		err = badCall("packet: with %d specs -o names a folder, and %s is none; end it in a slash to make one", of, output)
	}
	return target, err
}

// bind makes one packet and writes it. What it has to say it says to s.err.
func (o packetOptions) bind(j job, s streams) error {
	sp, err := readSpec(j.operand, s)
	if err != nil {
		return err
	}
	if err := setUnits(sp, o.units); err != nil {
		return err
	}
	if o.paper != "" {
		sp.Paper = o.paper
	}
	plan := solve(sp, o.day)
	doc, notes, err := packet.Bind(plan, packet.Options{Sheets: o.sheets, For: o.crews, Date: o.day, Annex: o.annex, OneSided: o.oneSided})
	if err != nil {
		return badCall("packet: %v", err)
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, doc); err != nil {
		return fmt.Errorf("packet: %w", err)
	}
	if err := o.put(j.target, file.Bytes(), sp, s); err != nil {
		return err
	}
	if !o.quiet {
		var noRoom []string
		for _, n := range notes {
			noRoom = append(noRoom, strings.TrimSpace(n.Block+" "+n.What))
		}
		sayMade(s.err, j, plan, len(doc.Pages), noRoom)
	}
	return verdict(plan)
}

// put writes a packet where it goes.
func (o packetOptions) put(target string, data []byte, sp *spec.Spec, s streams) error {
	if target == "-" {
		return s.print(data)
	}
	if !o.force {
		if err := replaceable(target, sp); err != nil {
			return err
		}
	}
	return writeWhole(target, data)
}

// verdict turns findings that must be fixed into the exit code and a line that names them.
func verdict(plan *layout.Plan) error {
	codes := finding.MustFixes(plan.Findings)
	if len(codes) == 0 {
		return nil
	}
	return exitError{code: exitMustFix, msg: "DO NOT BUILD yet; must fix: " + strings.Join(codes, ", ")}
}

// namedFor is the packet's file name: the spec's own, of standard input a plain one. A bundle for crews carries their names, so that it never takes the
// place of the whole packet.
func namedFor(operand string, crews []string) string {
	switch operand {
	case "-":
		operand = "packet"
	case "":
		operand = examples.BuiltIn
	}
	base := filepath.Base(operand)
	name := strings.TrimSuffix(base, filepath.Ext(base))
	return strings.Join(append([]string{name}, crews...), "-") + ".pdf"
}

func sameFile(a, b string) bool {
	ia, err := os.Stat(a)
	if err != nil {
		return false
	}
	ib, err := os.Stat(b)
	return err == nil && os.SameFile(ia, ib)
}

// issueDate is the day the packet prints: as told, else SOURCE_DATE_EPOCH (seconds, as reproducible builds set it), else today.
func issueDate(day string) (time.Time, error) {
	if day != "" {
		t, err := time.Parse(time.DateOnly, day)
		if err != nil {
			return t, badCall("--date is a day such as 2026-11-21, not %q", day)
		}
		return t, nil
	}
	if epoch := os.Getenv("SOURCE_DATE_EPOCH"); epoch != "" {
		seconds, err := strconv.ParseInt(epoch, 10, 64)
		if err != nil {
			return time.Time{}, badCall("SOURCE_DATE_EPOCH is a count of seconds, not %q", epoch)
		}
		return time.Unix(seconds, 0).UTC().Truncate(24 * time.Hour), nil
	}
	y, m, d := time.Now().Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC), nil
}

// ownSpec is what starter calls a spec unless told.
const ownSpec = "tunnel.yaml"

// sayMade says of a packet what a person can act on: where it is, when to close, what to look at, what was taken for granted.
func sayMade(w io.Writer, j job, plan *layout.Plan, sides int, noRoom []string) {
	where := ""
	if j.target != "-" {
		where = "wrote " + j.target + ". "
	}
	line := where + say.Count(sides, "side") + "."
	if wx := plan.Weather; len(wx.Bears) > 0 {
		switch g, u := wx.InsideGust(), plan.Spec.Units; {
		case wx.Calm():
			line += " Nobody inside in any wind."
		case g.Forecast > 0:
			line += fmt.Sprintf(" People inside below gusts of %s forecast.", u.Speed(g.Forecast))
		default:
			line += fmt.Sprintf(" People inside below gusts of %s measured at head height.", u.Speed(g.Local))
		}
	}
	var look []string
	for _, f := range plan.Findings {
		if row, ok := finding.Of(f.Code); ok && f.Level == finding.LookAt {
			look = append(look, row.Title)
		}
	}
	if len(look) > 0 {
		line += fmt.Sprintf(" %s to look at: %s.", say.Count(len(look), "thing"), strings.Join(look, "; "))
	}
	fmt.Fprintln(w, line)
	if n := len(plan.Spec.Defaults); n > 0 {
		fmt.Fprintf(w, "%s taken for granted; hoopwright check --assumed%s lists them\n", say.Count(n, "value"), strings.TrimRight(" "+j.operand, " "))
	}
	for _, what := range noRoom {
		fmt.Fprintf(w, "paper note: %s found no room\n", what)
	}
	if _, err := os.Stat(ownSpec); err == nil && j.operand == "" {
		fmt.Fprintf(w, "you have %s here; this was the built-in example. Yours: hoopwright packet %s\n", ownSpec, ownSpec)
	}
}

// trimmed takes the blanks off the words of a list, as in --sheets "stakes, stock".
func trimmed(list []string) []string {
	for i := range list {
		list[i] = strings.TrimSpace(list[i])
	}
	return list
}
