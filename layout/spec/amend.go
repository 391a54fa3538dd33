package spec

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// Amendment puts a value in the place of what a spec says at a key, as a command's option does. Value is what YAML writes: a string, a whole
// number, a bool, or a list of these; nil takes the key out.
type Amendment struct {
	Key   string // path, as in arch.stake.depth or site.outlets[2].sockets, counted from 0; sections that are missing are made, items of lists are not
	Value any
}

// ReadAmended reads a spec as Read does, with the amendments made before anything is checked or filled in. What is wrong with an amended value is
// reported at line 0.
func ReadAmended(file string, source []byte, amendments ...Amendment) (*Spec, error) {
	r := newReader(&Spec{File: file, Source: source, amended: amendments})
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
	at, path := root, a.Key
	for {
		name, index, rest := step(at, path)
		i := valueOf(at, name)
		switch {
		case rest != "" || index >= 0:
		case i < 0 && a.Value != nil:
			at.Content = append(at.Content, keyNode(name), &value)
			return nil
		case i >= 0 && a.Value != nil:
			at.Content[i] = &value
			return nil
		case i >= 0:
			at.Content = append(at.Content[:i-1:i-1], at.Content[i+1:]...)
			return nil
		}
		if i < 0 {
			if a.Value == nil || index >= 0 {
				return nil
			}
			at.Content = append(at.Content, keyNode(name), &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map"})
			i = len(at.Content) - 1
		}
		at = own(&at.Content[i])
		if index >= 0 {
			if at.Kind != yaml.SequenceNode || index >= len(at.Content) {
				return nil // the reader says so
			}
			at = own(&at.Content[index])
		}
		if path = rest; at.Kind != yaml.MappingNode {
			return nil
		}
	}
}

// own puts a copy in the place of a node, so that what an alias repeats is left alone, and returns it.
func own(place **yaml.Node) *yaml.Node {
	inner := *follow(*place)
	inner.Anchor, inner.Content = "", slices.Clone(inner.Content)
	*place = &inner
	return &inner
}

// step splits the first key off a path: its name, the number of an item in its list or -1, and the rest. A name of the spec's own may hold dots, so the longest key that the
// mapping has is taken.
func step(mapping *yaml.Node, path string) (name string, index int, rest string) {
	end := len(path)
	if at := strings.IndexAny(path, ".["); at >= 0 {
		end = at
	}
	for i := 0; i < len(mapping.Content); i += 2 {
		known := follow(mapping.Content[i]).Value
		if len(known) > end && strings.HasPrefix(path, known) && (len(path) == len(known) || path[len(known)] == '.' || path[len(known)] == '[') {
			end = len(known)
		}
	}
	name, rest, index = path[:end], path[end:], -1
	if inner, ok := strings.CutPrefix(rest, "["); ok {
		number, after, _ := strings.Cut(inner, "]")
		if n, err := strconv.Atoi(number); err == nil {
			index, rest = n, after
		}
	}
	return name, index, strings.TrimPrefix(rest, ".")
}

func keyNode(name string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: name}
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
