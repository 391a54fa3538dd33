package main

import (
	"bytes"
	"fmt"

	"hoopwright/draw/pdf"
	"hoopwright/layout/measure"
	"hoopwright/packet"
)

func writeForm(name, operand, units string, s streams) error {
	switch {
	case operand != "":
		return badCall("starter: --form %s writes the form alone; leave out %s, or call starter a second time for the spec", name, operand)
	case name == "-" && isTerminal(s.out):
		return badCall("starter: the form is a PDF and would garble a terminal; name a file, as in --form visit.pdf")
	}
	system, err := systemOf(units, measure.Imperial)
	if err != nil {
		return err
	}
	day, err := issueDate("")
	if err != nil {
		return err
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, packet.SiteVisit(system, day)); err != nil {
		return fmt.Errorf("starter: %w", err)
	}
	return writeNew(name, "visit.pdf", file.Bytes(), fmt.Sprintf("wrote %s; print it, measure the yard, then: hoopwright starter\n", name), s)
}
