package main

import (
	"io"
	"os"
	"strings"
	"time"

	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/spec"
	"hoopwright/packet"
)

// readSpec reads the spec that an operand names: a file, a packet for the spec in it, - for standard input, or the built-in example for none.
func readSpec(operand string, s streams) (*spec.Spec, error) {
	return readWith(packet.Recover, operand, s)
}

// readBuilt reads the spec that something was built by: of a packet the one with every default written out, so that newer defaults change nothing.
func readBuilt(operand string, s streams) (*spec.Spec, error) {
	return readWith(packet.RecoverFilled, operand, s)
}

// recovery gets a spec out of a packet.
type recovery func(file []byte) (name string, source []byte, err error)

func readWith(get recovery, operand string, s streams) (*spec.Spec, error) {
	name, source, err := source(operand, s.in)
	if err != nil {
		return nil, err
	}
	if packet.IsPDF(source) {
		if name, source, err = fromPacket(get, name, source, s); err != nil {
			return nil, err
		}
	}
	sp, err := spec.Read(name, source)
	if err != nil {
		return nil, badSpec(err)
	}
	return sp, nil
}

// fromPacket takes the spec out of a packet that stands where a spec is wanted. What was read of a long one is its start alone.
func fromPacket(get recovery, operand string, start []byte, s streams) (string, []byte, error) {
	file := start
	if len(start) > spec.MostBytes {
		from := s.in
		if operand != "<standard input>" {
			from = strings.NewReader("") // a file is read again from its beginning
		}
		rest, err := readPacket(strings.Replace(operand, "<standard input>", "-", 1), from)
		if err != nil {
			return "", nil, cannotRead("", operand, err)
		}
		if file = rest; operand == "<standard input>" {
			file = append(start, rest...)
		}
	}
	name, source, err := get(file)
	if err != nil {
		return "", nil, noPacket("", operand, err)
	}
	return name, source, nil
}

func source(operand string, stdin io.Reader) (name string, data []byte, err error) {
	switch operand {
	case "":
		data, err = examples.Files.ReadFile(examples.BuiltIn)
		return examples.BuiltIn, data, err
	case "-":
		name = "<standard input>"
		data, err = io.ReadAll(io.LimitReader(stdin, spec.MostBytes+1))
	default:
		name = operand
		data, err = readFile(operand)
	}
	if err != nil {
		return name, nil, cannotRead("", name, err)
	}
	return name, data, nil
}

// readFile reads a file up to one byte past the limit, so that the reader can say it is too long without holding it all.
func readFile(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, spec.MostBytes+1))
}

// setUnits makes the packet print in the named system; "" keeps the spec's own.
func setUnits(sp *spec.Spec, word string) error {
	if word == "" {
		return nil
	}
	system, err := systemOf(word)
	if err == nil {
		sp.Units = system
	}
	return err
}

// solve solves the spec and adds to the findings what the packet's typefaces cannot set, and what its days are on the day it is read; the zero day asks nothing.
func solve(sp *spec.Spec, day time.Time) *layout.Plan {
	plan := layout.Solve(sp)
	plan.Add(packet.Letters(sp))
	if !day.IsZero() {
		plan.Issued(day)
	}
	return plan
}
