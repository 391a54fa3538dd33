package main

import (
	"bytes"
	"fmt"
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

// packetVerb writes the packets of one spec or several.
func packetVerb(args []string, s streams) error {
	f := flags("packet", "packet [SPEC …] [-o FILE]", s)
	var o packetOptions
	output := f.StringP("output", "o", "", "write the packet to `FILE`, - for standard output; of several specs, into the folder of that name (default: the spec's name with .pdf)")
	f.StringSliceVar(&o.sheets, "sheets", nil, "only these `SHEETS`: "+strings.Join(packet.Words(), ", "))
	f.StringSliceVar(&o.crews, "for", nil, "only what these `CREWS` need: "+strings.Join(packet.Crews(), ", "))
	f.StringVar(&o.paper, "paper", "", "print on `SIZE`: "+say.Or(spec.Papers()))
	f.StringVar(&o.units, "units", "", "print in `SYSTEM`: imperial or metric")
	date := f.String("date", "", "the `DAY` printed as the issue date, as in 2026-11-21 (default: SOURCE_DATE_EPOCH, or today)")
	err := parseFlags(f, args)
	if err != nil {
		return err
	}
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

// packetOptions are what a call asks of every packet it makes.
type packetOptions struct {
	sheets, crews []string
	paper, units  string
	day           time.Time
}

// job is one spec and the file that its packet goes to.
type job struct{ operand, target string }

// jobs pairs each spec with its packet's file, and refuses what would write one file twice or over a spec.
func (o packetOptions) jobs(operands []string, output string, s streams) ([]job, error) {
	var jobs []job
	for _, operand := range operands {
		j := job{operand, outputName(operand, o.crews)}
		switch info, err := os.Stat(output); {
		case output == "":
		case len(operands) == 1:
			j.target = output
		case err != nil || !info.IsDir():
			return nil, badCall("packet: with %d specs -o names a folder that is there, and %s is none", len(operands), output)
		default:
			j.target = filepath.Join(output, j.target)
		}
		if j.target == "-" {
			if len(operands) > 1 {
				return nil, badCall("packet: standard input is one spec, its packet goes to standard output; give it alone")
			}
			if isTerminal(s.out) {
				return nil, badCall("packet: the packet is a PDF and would garble a terminal; name a file with -o, or send standard output to one")
			}
		}
		for _, other := range jobs {
			if other.target == j.target {
				return nil, badCall("packet: %s and %s would both be written to %s; make them one at a time with -o", other.operand, operand, j.target)
			}
		}
		jobs = append(jobs, j)
	}
	for _, j := range jobs {
		for _, other := range jobs {
			if sameFile(other.operand, j.target) {
				return nil, badCall("packet: %s is the spec itself; name another file with -o", j.target)
			}
		}
	}
	return jobs, nil
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
	plan := solve(sp)
	doc, err := packet.Bind(plan, packet.Options{Sheets: o.sheets, For: o.crews, Date: o.day})
	if err != nil {
		return badCall("packet: %v", err)
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, doc); err != nil {
		return fmt.Errorf("packet: %w", err)
	}
	if j.target == "-" {
		if _, err := s.out.Write(file.Bytes()); err != nil {
			return fmt.Errorf("cannot write to standard output: %w", err)
		}
	} else {
		if err := writeWhole(j.target, file.Bytes()); err != nil {
			return err
		}
		fmt.Fprintf(s.err, "wrote %s, %d pages\n", j.target, len(doc.Pages))
	}
	return verdict(plan)
}

// verdict turns findings that must be fixed into the exit code and a line that names them.
func verdict(plan *layout.Plan) error {
	codes := finding.MustFixes(plan.Findings)
	if len(codes) == 0 {
		return nil
	}
	return exitError{exitMustFix, "hoopwright: DO NOT BUILD yet; must fix: " + strings.Join(codes, ", ")}
}

// outputName is where the packet goes unless told: into the current folder under the spec's own name.
// A bundle for crews carries their names, so that it never takes the place of the whole packet.
func outputName(operand string, crews []string) string {
	switch {
	case operand == "-":
		return "-"
	case operand == "":
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
