package spec

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/finding"
)

// Amendment puts a value in the place of what a spec says at a key, as a command's option does. Value is what YAML writes: a string, a whole
// number, a bool, or a list of these; nil takes the key out.
type Amendment struct {
	Key   string // path, as in arch.stake.depth; sections that are missing are made
	Value any
}

// ReadAmended reads a spec as Read does, with the amendments made before anything is checked or filled in. What is wrong with an amended value is
// reported at line 0.
func ReadAmended(file string, source []byte, amendments ...Amendment) (*Spec, error) {
	r := &reader{spec: &Spec{File: file, Source: source, positions: map[string]finding.Position{}}}
	if root, ok := r.tree(source); ok {
		for _, a := range amendments {
			if err := a.make(root); err != nil {
				r.errors = append(r.errors, Error{Key: a.Key, Text: err.Error()})
			}
		}
		r.read(root)
	}
	if len(r.errors) > 0 {
		return nil, r.errors.sort()
	}
	return r.spec, nil
}

// make amends the tree. A section that an alias stands for is copied first, so that nothing else changes with it.
func (a Amendment) make(root *yaml.Node) error {
	var value yaml.Node
	if a.Value != nil {
		if err := value.Encode(a.Value); err != nil {
			return fmt.Errorf("is %v, which no spec can hold: %w", a.Value, err)
		}
	}
	if root.Kind != yaml.MappingNode {
		return nil // no spec at all
	}
	section := root
	path := strings.Split(a.Key, ".")
	for _, name := range path[:len(path)-1] {
		i := valueOf(section, name)
		if i < 0 {
			if a.Value == nil {
				return nil
			}
			section.Content = append(section.Content, &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: name}, &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map"})
			i = len(section.Content) - 1
		}
		inner := *follow(section.Content[i])
		if inner.Kind != yaml.MappingNode {
			return nil // the reader says so
		}
		inner.Anchor, inner.Content = "", slices.Clone(inner.Content)
		section.Content[i] = &inner
		section = &inner
	}
	name := path[len(path)-1]
	i := valueOf(section, name)
	switch {
	case i < 0 && a.Value != nil:
		section.Content = append(section.Content, &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: name}, &value)
	case i >= 0 && a.Value != nil:
		section.Content[i] = &value
	case i >= 0:
		section.Content = append(section.Content[:i-1:i-1], section.Content[i+1:]...)
	}
	return nil
}

// valueOf returns where in a mapping's content the value of a key stands, or -1.
func valueOf(mapping *yaml.Node, name string) int {
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		if follow(mapping.Content[i]).Value == name {
			return i + 1
		}
	}
	return -1
}
