package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"hoopwright/examples"
)

// starterVerb writes a commented spec to begin from, or a blank form to measure a yard with before there is any.
func starterVerb(args []string, s streams) error {
	f := flags("starter", s)
	form := f.String("form", "", "write a blank site visit form to `FILE`, two pages to measure a yard with (- for standard output; never overwrites)")
	units := f.String("units", "", "the form's `SYSTEM`: imperial on Letter (default) or metric on A4")
	name, err := parse(f, args)
	if err != nil {
		return err
	}
	if f.Changed("form") {
		return writeForm(*form, name, *units, s)
	}
	if *units != "" {
		return badCall("starter: --units goes with --form; a spec carries its units in its quantities")
	}
	data := examples.Starter
	switch name {
	case "-":
		_, err := s.out.Write(data)
		return err
	case "":
		name = "tunnel.yaml"
	}
	if err := writeNew(name, data); err != nil {
		return err
	}
	fmt.Fprintf(s.err, "wrote %s; change it to your yard, then: hoopwright packet %s\n", name, name)
	return nil
}

// writeNew writes a file that is not there yet.
func writeNew(name string, data []byte) error {
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return exitError{code: exitNoOutput, msg: fmt.Sprintf("%s is there already and is left as it was; name another file", name)}
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	_, err = file.Write(data)
	if e := file.Close(); err == nil {
		err = e
	}
	if err != nil {
		os.Remove(name)
		return cannotWrite(name, err)
	}
	return nil
}
