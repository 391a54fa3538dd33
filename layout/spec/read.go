package spec

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// Read reads a spec and fills in its defaults. The file name is for messages only. An error is of type Errors and lists everything that is
// wrong, by line and column; there is no spec then.
func Read(file string, source []byte) (*Spec, error) { return ReadAmended(file, source) }

// read reads the sections. The order is such that what one names has been read before it: circuits before outlets, soil before stakes,
// the ridge before the arches that it joins and its lights, pipes and strings before the stock.
func (r *reader) read(root *yaml.Node) {
	if units, ok := firstUnits(root); ok {
		r.spec.Units = units
	}
	for _, units := range []measure.System{measure.Imperial, measure.Metric} { // examples of what is missing are in the spec's own
		if at := valueOf(root, "units"); at >= 0 && root.Content[at].Value == units.String() {
			r.spec.Units = units
		}
	}
	if root.Kind != yaml.MappingNode {
		r.failLine(root.Line, exampleOf("title", r.spec.Units), "this is no spec, which holds keys with values; `hoopwright starter` writes one to begin from")
		return
	}
	top, ok := field{reader: r, node: root}.mapping()
	if !ok {
		return
	}
	if !top.versionFits() {
		r.errors = r.errors[len(r.errors)-1:]
		return
	}
	r.readTop(top)
	r.readTunnel(top)
	r.readPower(top)
	r.readSite(top)
	r.readRidge(top)
	r.readArch(top)
	r.readHolds(top)
	r.readLights(top)
	weather, _ := top.section("weather")
	weather.all(&r.spec.Weather)
	r.readStock(top)
	r.readKept(top)
	r.readCrew(top)
	r.fillRest()
}

// tree turns the source into a tree that is fit to read: one document, of a size that a spec can have.
func (r *reader) tree(source []byte) (*yaml.Node, bool) {
	r.lines = strings.Split(string(source), "\n")
	if !r.sourceFits(source) {
		return nil, false
	}
	root, ok := r.parse(source)
	return root, ok && r.sizeFits(root)
}

// firstUnits returns the system of the first length in the tree, in the order of the file.
func firstUnits(n *yaml.Node) (measure.System, bool) {
	if n.Kind == yaml.ScalarNode {
		if len(n.Value) > longestText {
			return 0, false
		}
		return measure.SystemOf(n.Value)
	}
	for i, child := range n.Content {
		if n.Kind == yaml.MappingNode && i%2 == 0 {
			continue // a key
		}
		if s, ok := firstUnits(child); ok {
			return s, true
		}
	}
	return 0, false
}

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
		what := "the byte here is no UTF-8; save the file as UTF-8"
		if source[at] < utf8.RuneSelf {
			what = fmt.Sprintf("there is a control character here (code %d); this is no text file, or it was damaged", source[at])
		}
		r.failPart(line, at-bytes.LastIndexByte(before, '\n')-1, "", "%s", what)
	default:
		return true
	}
	return false
}

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
