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
	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/packet"
)

// packetVerb writes the packet of a spec.
func packetVerb(args []string, s streams) error {
	f := flags("packet", "packet [SPEC] [-o FILE]", s)
	output := f.StringP("output", "o", "", "write the packet to `FILE`, - for standard output (default: the spec's name with .pdf)")
	sheets := f.StringSlice("sheets", nil, "only these `SHEETS`: "+strings.Join(packet.Words(), ", "))
	paperName := f.String("paper", "", "print on `SIZE`: letter, legal, tabloid, a4 or a3")
	units := f.String("units", "", "print in `SYSTEM`: imperial or metric")
	date := f.String("date", "", "the `DAY` printed as the issue date, as in 2026-11-21 (default: SOURCE_DATE_EPOCH, or today)")
	operand, err := parse(f, args)
	if err != nil {
		return err
	}
	day, err := issueDate(*date)
	if err != nil {
		return err
	}
	target := outputName(operand, *output)
	if target == "-" && isTerminal(s.out) {
		return badCall("packet: the packet is a PDF and would garble a terminal; name a file with -o, or send standard output to one")
	}
	if sameFile(operand, target) {
		return badCall("packet: %s is the spec itself; name another file with -o", target)
	}
	sp, err := readSpec(operand, s)
	if err != nil {
		return err
	}
	if err := setUnits(sp, *units); err != nil {
		return err
	}
	if *paperName != "" {
		sp.Paper = *paperName
	}
	plan := solve(sp)
	doc, err := packet.Bind(plan, packet.Options{Sheets: *sheets, Date: day})
	if err != nil {
		return badCall("packet: %v", err)
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, doc); err != nil {
		return fmt.Errorf("packet: %w", err)
	}
	if target == "-" {
		if _, err := s.out.Write(file.Bytes()); err != nil {
			return fmt.Errorf("cannot write to standard output: %w", err)
		}
	} else {
		if err := writeWhole(target, file.Bytes()); err != nil {
			return err
		}
		fmt.Fprintf(s.err, "wrote %s, %d pages\n", target, len(doc.Pages))
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

// outputName is where the packet goes: as told, or beside nothing else in the current folder under the spec's own name.
func outputName(operand, output string) string {
	switch {
	case output != "":
		return output
	case operand == "-":
		return "-"
	case operand == "":
		return "garden.pdf"
	}
	base := filepath.Base(operand)
	return strings.TrimSuffix(base, filepath.Ext(base)) + ".pdf"
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
