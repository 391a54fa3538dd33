package main

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"

	"hoopwright/layout/catalog"
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
