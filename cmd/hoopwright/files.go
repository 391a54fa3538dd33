package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"

	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/catalog"
	"hoopwright/layout/spec"
	"hoopwright/packet"
)

// cannotRead says why a file cannot be read, and what may have been meant.
func cannotRead(verb, name string, err error) error {
	text := reason(err)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		text = "there is no such file"
		var names []string
		entries, _ := os.ReadDir(filepath.Dir(name)) // a folder that cannot be read has no names
		for _, e := range entries {
			names = append(names, e.Name())
		}
		if near := catalog.Nearest(filepath.Base(name), names); near != "" {
			text += "; did you mean " + filepath.Join(filepath.Dir(name), near) + "?"
		} else {
			text += "; `hoopwright starter` writes a spec to begin from"
		}
	case errors.Is(err, syscall.EISDIR):
		text = "it is a folder; name a file in it, as in " + filepath.Join(name, ownSpec)
	}
	return badCall("%scannot read %s: %s", verb, name, text)
}

// cannotWrite says why a file cannot be written. Names of temporary files, which nobody knows, are left out.
func cannotWrite(name string, err error) error {
	text := reason(err)
	if errors.Is(err, fs.ErrNotExist) {
		text = fmt.Sprintf("there is no folder %s; make it first, or name another", filepath.Dir(name))
	}
	return cannotPut("cannot write %s: %s", name, text)
}

// reason is why the system refuses, without the file's name.
func reason(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.Is(err, fs.ErrPermission):
		return "you have no permission there"
	case errors.As(err, &path):
		err = path.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return err.Error()
}

// isThere says that a file is not written over, where one or a folder of its name is there.
func isThere(name, example string) error {
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		return cannotPut("cannot write %s: it is a folder; name a file in it, as in %s", name, filepath.Join(name, example))
	}
	return cannotPut("%s is there already and is left as it was; name another file", name)
}

// print writes to standard output what was made.
func (s streams) print(data []byte) error {
	if _, err := s.out.Write(data); err != nil {
		return fmt.Errorf("cannot write to standard output: %w", err)
	}
	return nil
}

// writeNew writes a file that is not there yet, or standard output for -. The example is a name for it, and what is said of a file is said once it is whole.
func writeNew(name, example string, data []byte, said string, s streams) error {
	if name == "-" {
		return s.print(data)
	}
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return isThere(name, example)
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	_, err = file.Write(data)
	if err = cmp.Or(err, file.Close()); err != nil {
		os.Remove(name)
		return cannotWrite(name, err)
	}
	fmt.Fprint(s.err, said)
	return nil
}

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
