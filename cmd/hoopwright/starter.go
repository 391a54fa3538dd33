package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"hoopwright/examples"
)

// starterVerb writes a commented spec to begin from.
func starterVerb(args []string, s streams) error {
	f := flags("starter", "starter [FILE]   (default tunnel.yaml, - for standard output; never overwrites)", s)
	name, err := parse(f, args)
	if err != nil {
		return err
	}
	data := examples.Starter
	switch name {
	case "-":
		_, err := s.out.Write(data)
		return err
	case "":
		name = "tunnel.yaml"
	}
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return exitError{exitNoOutput, fmt.Sprintf("hoopwright: %s is there already and is left as it was; name another file", name)}
	}
	if err != nil {
		return exitError{exitNoOutput, fmt.Sprintf("hoopwright: cannot write %s: %v", name, err)}
	}
	_, err = file.Write(data)
	if e := file.Close(); err == nil {
		err = e
	}
	if err != nil {
		os.Remove(name)
		return exitError{exitNoOutput, fmt.Sprintf("hoopwright: cannot write %s: %v", name, err)}
	}
	fmt.Fprintf(s.err, "wrote %s; change it to your yard, then: hoopwright packet %s\n", name, name)
	return nil
}
