package main

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"hoopwright/layout/spec"
	"hoopwright/packet"
)

// writeWhole writes the file so that it appears whole or not at all: a temporary file in the same folder, then a rename. What is no file, such as /dev/null, is written to as it is.
func writeWhole(name string, data []byte) error {
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() && !info.IsDir() {
		if err := os.WriteFile(name, data, 0o644); err != nil {
			return cannotWrite(name, err)
		}
		return nil
	}
	sweep(name)
	tmp, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*")
	if err != nil {
		return cannotWrite(name, err)
	}
	defer os.Remove(tmp.Name()) // fails once renamed, as it should
	_, err = tmp.Write(data)
	if err = cmp.Or(err, tmp.Chmod(0o644), tmp.Sync(), tmp.Close()); err == nil {
		err = os.Rename(tmp.Name(), name)
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	return nil
}

// leftOver is how old a temporary file is that nobody writes any more: a packet is written in a moment.
const leftOver = time.Minute

// sweep removes the temporary files of a name that were left by calls killed in the midst of writing.
func sweep(name string) {
	entries, _ := os.ReadDir(filepath.Dir(name)) // a folder that cannot be read keeps them
	for _, e := range entries {
		number, ours := strings.CutPrefix(e.Name(), "."+filepath.Base(name)+".")
		if info, err := e.Info(); ours && err == nil && info.Mode().IsRegular() && strings.Trim(number, "0123456789") == "" && time.Since(info.ModTime()) > leftOver {
			os.Remove(filepath.Join(filepath.Dir(name), e.Name()))
		}
	}
}

// replaceable reports why a packet must not be written to a name: something else is there, or a packet of another tunnel or season.
func replaceable(name string, sp *spec.Spec) error {
	info, err := os.Stat(name)
	switch {
	case os.IsNotExist(err):
		return nil
	case err != nil:
		return cannotWrite(name, err)
	case !info.Mode().IsRegular() || info.Size() == 0:
		return nil
	}
	kept := func(why string) error {
		return cannotPut("%s is there already and %s; it is left as it was. Name another file with -o, or replace it with --force", name, why)
	}
	old, err := readFile(name, nil)
	if err != nil {
		return cannotWrite(name, err)
	}
	if !packet.IsPDF(old) {
		return cannotPut("%s is there already and is not a PDF; it is left as it was. Name another file with -o", name)
	}
	_, source, err := packet.Recover(old)
	if err != nil {
		return kept("is no packet of ours")
	}
	was, err := spec.Read(name, source)
	switch {
	case err != nil:
		return kept("is a packet of a spec that this version cannot read")
	case was.Title != sp.Title:
		return kept(fmt.Sprintf("is the packet of another tunnel, %s", was.Title))
	case was.Season != sp.Season:
		return kept(fmt.Sprintf("is the packet of %s", cmp.Or(was.Season, "no season")))
	}
	return nil
}

// intoFolder returns the file that a packet goes to when -o names a folder, one that is there or one to be made, which ends in a slash.
func intoFolder(output, file string) (string, bool, error) {
	info, err := os.Stat(output)
	switch ends := strings.HasSuffix(output, "/") || strings.HasSuffix(output, string(filepath.Separator)); {
	case err == nil && info.IsDir():
		return filepath.Join(output, file), true, nil
	case err == nil && ends:
		return "", false, cannotPut("cannot make the folder %s: a file of that name is there", output)
	case !ends:
		return output, false, nil
	}
	if err := os.MkdirAll(output, 0o755); err != nil {
		return "", false, cannotWrite(output, err)
	}
	return filepath.Join(output, file), true, nil
}

// isTerminal reports whether the stream is a terminal, where PDF bytes would do harm.
func isTerminal(w any) bool {
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
