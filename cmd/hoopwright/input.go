package main

import (
	"fmt"
	"io"
	"os"
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

func readWith(get func(file []byte) (name string, source []byte, err error), operand string, s streams) (*spec.Spec, error) {
	name, source := operand, []byte(nil)
	var err error
	switch operand {
	case "":
		name = examples.BuiltIn
		source, err = examples.Files.ReadFile(name)
	case "-":
		name = "<standard input>"
		fallthrough
	default:
		source, err = readFile(operand, s.in)
	}
	if err != nil {
		return nil, cannotRead("", name, err)
	}
	if packet.IsPDF(source) {
		from := name
		if name, source, err = get(source); err != nil {
			return nil, noPacket("", from, err)
		}
	}
	sp, err := spec.Read(name, source)
	if err != nil {
		return nil, badSpec(err)
	}
	return sp, nil
}

// mostPacket is the largest packet that is read: far above what any tunnel makes.
const mostPacket = 256 << 20

// readFile reads a file, - for standard input: a packet whole, anything else up to one byte past what a spec may have, so that the reader can say it is too long without holding it all.
func readFile(name string, stdin io.Reader) ([]byte, error) {
	from := stdin
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		from = f
	}
	data, err := io.ReadAll(io.LimitReader(from, spec.MostBytes+1))
	if err != nil || !packet.IsPDF(data) {
		return data, err
	}
	rest, err := io.ReadAll(io.LimitReader(from, mostPacket))
	if err == nil && len(rest) == mostPacket {
		err = fmt.Errorf("it is longer than %d MiB", mostPacket>>20)
	}
	return append(data, rest...), err
}

// setUnits makes the packet print in the named system; "" keeps the spec's own.
func setUnits(sp *spec.Spec, word string) (err error) {
	sp.Units, err = systemOf(word, sp.Units)
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
