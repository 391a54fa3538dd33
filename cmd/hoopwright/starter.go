package main

import (
	"bytes"
	"cmp"
	"fmt"

	"hoopwright/draw/pdf"
	"hoopwright/examples"
	"hoopwright/layout/measure"
	"hoopwright/layout/wish"
	"hoopwright/packet"
)

// starterVerb writes a spec to begin from: a commented one, or one made from answers; or a blank form to measure a yard with before there is any.
func starterVerb(args []string, s streams) error {
	f := flags("starter", s)
	ask := f.Bool("ask", false, "ask question by question and make the spec from the answers")
	form := f.String("form", "", "write a blank site visit form to `FILE`, two pages to measure a yard with (- for standard output; never overwrites)")
	units := f.String("units", "", "`SYSTEM` of form or questions: imperial (default) or metric")
	quiet := f.BoolP("quiet", "q", false, "say nothing of what was written")
	answers := map[string]*string{}
	for _, q := range wish.Questions(measure.Imperial) {
		answers[q.Name] = f.String(q.Name, "", q.Ask)
	}
	name, err := parse(f, args)
	if err != nil {
		return err
	}
	if f.Changed("form") {
		return writeForm(*form, name, *units, s)
	}
	a := asking{given: map[string]string{}, name: name, quiet: *quiet}
	for name, text := range answers {
		if f.Changed(name) {
			a.given[name] = *text
		}
	}
	if *ask || len(a.given) > 0 {
		if a.units, err = a.system(*units); err != nil {
			return err
		}
		return a.make(*ask, s)
	}
	if *units != "" {
		return badCall("starter: --units goes with --form or --ask; a spec carries its units in its quantities")
	}
	return begin(name, examples.Starter, *quiet, s)
}

// begin writes a new spec, to standard output for -.
func begin(name string, data []byte, quiet bool, s streams) error {
	name = cmp.Or(name, ownSpec)
	said := fmt.Sprintf("wrote %s; change it to your yard, then: hoopwright packet %s\n", name, name)
	if quiet {
		said = ""
	}
	return writeNew(name, ownSpec, data, said, s)
}

// system is the one asked for, or that of the first length among the answers.
func (a asking) system(word string) (measure.System, error) {
	for _, name := range []string{"width", "height", "length", "stick"} {
		if system, ok := measure.SystemOf(a.given[name]); ok {
			return systemOf(word, system)
		}
	}
	return systemOf(word, measure.Imperial)
}

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
