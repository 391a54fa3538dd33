package spec

import (
	"strings"

	"gopkg.in/yaml.v3"

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
	r.readGuys(top)
	r.readBraces(top)
	r.readLights(top)
	r.readWeather(top)
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
