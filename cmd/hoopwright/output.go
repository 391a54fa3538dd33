package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// writeWhole writes the file so that it appears whole or not at all: a temporary file in the same folder, then a rename.
// A file that is there already must be a PDF; anything else is left alone, for the name is likely a slip.
func writeWhole(name string, data []byte) error {
	if err := replaceable(name); err != nil {
		return err
	}
	fail := func(err error) error {
		return exitError{exitNoOutput, fmt.Sprintf("hoopwright: cannot write %s: %v", name, err)}
	}
	tmp, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*")
	if err != nil {
		return fail(err)
	}
	defer os.Remove(tmp.Name()) // fails once renamed, as it should
	_, err = tmp.Write(data)
	if err == nil {
		err = tmp.Chmod(0o644)
	}
	if err == nil {
		err = tmp.Sync()
	}
	if e := tmp.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(tmp.Name(), name)
	}
	if err != nil {
		return fail(err)
	}
	return nil
}

// replaceable reports why a name must not be written to.
func replaceable(name string) error {
	info, err := os.Stat(name)
	if os.IsNotExist(err) {
		return nil
	}
	if err != nil {
		return exitError{exitNoOutput, fmt.Sprintf("hoopwright: cannot write %s: %v", name, err)}
	}
	if info.IsDir() {
		return exitError{exitNoOutput, fmt.Sprintf("hoopwright: cannot write %s: it is a folder; name a file, as in -o %s", name, filepath.Join(name, "packet.pdf"))}
	}
	f, err := os.Open(name)
	if err != nil {
		return exitError{exitNoOutput, fmt.Sprintf("hoopwright: cannot replace %s: %v", name, err)}
	}
	defer f.Close()
	head := make([]byte, 5)
	n, err := io.ReadFull(f, head)
	if n > 0 && !bytes.HasPrefix(head[:n], []byte("%PDF")) || err != nil && n == 0 && info.Size() > 0 {
		return exitError{exitNoOutput, fmt.Sprintf("hoopwright: %s is there already and is not a PDF; it is left as it was. Name another file with -o", name)}
	}
	return nil
}

// isTerminal reports whether the stream is a terminal, where PDF bytes would do harm.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	null, err := os.Stat(os.DevNull) // a character device too, but nobody looks at it
	return err != nil || !os.SameFile(info, null)
}
