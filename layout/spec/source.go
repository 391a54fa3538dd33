package spec

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"hoopwright/layout/finding"
)

// sourceFits checks the bytes of the file before YAML sees them.
func (r *reader) sourceFits(source []byte) bool {
	switch at := firstOdd(source); {
	case bytes.HasPrefix(bytes.TrimLeft(source[:min(len(source), 1024)], "\ufeff \r\n"), []byte("%PDF-")):
		r.failLine(1, "", "this is a PDF, not a spec; `hoopwright recover` gets the spec out of a packet")
	case bytes.HasPrefix(source, []byte(`{\rtf`)):
		r.failLine(1, "", "this file was saved by a word processor with its formatting (RTF); save it as plain text")
	case bytes.HasPrefix(source, []byte("PK\x03\x04")):
		r.failLine(1, "", "this is a document of an office program or a zip archive, not a plain text; save it as plain text")
	case len(source) > MostBytes:
		r.failLine(1, "", "the file has %d bytes; a spec has at most %d (1 MiB)", len(source), MostBytes)
	case bytes.HasPrefix(source, []byte("\xff\xfe")) || bytes.HasPrefix(source, []byte("\xfe\xff")):
		r.failLine(1, "", "the file is in UTF-16; save it as UTF-8")
	case at >= 0:
		before := source[:at]
		line := bytes.Count(before, []byte("\n")) + 1
		column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
		what := "the byte here is no UTF-8; save the file as UTF-8"
		if source[at] < utf8.RuneSelf {
			what = fmt.Sprintf("there is a control character here (code %d); this is no text file, or it was damaged", source[at])
		}
		r.errors = append(r.errors, Error{Pos: finding.Position{File: r.spec.File, Line: line, Column: column}, Text: what})
	default:
		return true
	}
	return false
}

// firstOdd returns where the first byte is that belongs to no text, or -1.
func firstOdd(source []byte) int {
	for i := 0; i < len(source); {
		c, n := utf8.DecodeRune(source[i:])
		if c == utf8.RuneError && n == 1 || c < ' ' && c != '\n' && c != '\r' && c != '\t' || c == 0x7f {
			return i
		}
		i += n
	}
	return -1
}

// failLine reports what is wrong with a whole line. What is wrong with the file stands at line 1.
func (r *reader) failLine(line int, example, format string, args ...any) {
	pos := finding.Position{File: r.spec.File, Line: line, Column: 1}
	r.errors = append(r.errors, Error{Pos: pos, Text: fmt.Sprintf(format, args...), Example: example})
}
