package main

import (
	"bytes"
	"cmp"
	"fmt"
	"os"

	"hoopwright/packet"
)

func recoverVerb(args []string, s streams) error {
	f := flags("recover", s)
	output := f.StringP("output", "o", "", "write the spec to `FILE`, - for standard output (default: the name it had)")
	filled := f.Bool("filled", false, "the spec with every default and choice written out, as the packet was built")
	operand, err := parse(f, args)
	if err != nil {
		return err
	}
	if operand == "" {
		return badCall("recover: name a packet, as in hoopwright recover garden.pdf")
	}
	file, err := readFile(operand, s.in)
	if err != nil {
		return cannotRead("recover: ", operand, err)
	}
	get := packet.Recover
	if *filled {
		get = packet.RecoverFilled
	}
	name, source, err := get(file)
	if err != nil {
		return noPacket("recover: ", operand, err)
	}
	name = cmp.Or(*output, name)
	if old, err := os.ReadFile(name); name != "-" && err == nil && bytes.Equal(old, source) {
		fmt.Fprintf(s.err, "%s is there already, the same to the byte\n", name)
		return nil
	}
	return writeNew(name, ownSpec, source, fmt.Sprintf("wrote %s, %d bytes\n", name, len(source)), s)
}

func noPacket(verb, name string, err error) error {
	return badCall("%sno spec can be got out of %s: %v; a packet that hoopwright made is wanted, whole", verb, name, err)
}
