package spec

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"time"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

const filledHead = "# The spec with every default and choice written out: whatever a later version takes for granted, this stays as it was built."

// Filled returns the spec as it was written with every default and choice of Spec.Defaults put in, so that it makes the same tunnel when the defaults have changed. What
// is repeated by an alias is written out. Comments are kept, blank lines and the layout are not. It is an error if the result is longer than a spec may be.
func Filled(s *Spec) ([]byte, error) {
	r := &reader{spec: &Spec{File: s.File}}
	root, ok := r.tree(s.Source)
	if !ok {
		return nil, r.errors.sort()
	}
	root = expanded(root)
	for _, a := range slices.Concat(s.amended, s.written()) {
		if err := a.make(root); err != nil {
			return nil, fmt.Errorf("spec: %s %w", a.Key, err)
		}
	}
	var out bytes.Buffer
	if !bytes.HasPrefix(s.Source, []byte(filledHead)) {
		out.WriteString(filledHead + "\n")
	}
	e := yaml.NewEncoder(&out)
	e.SetIndent(2)
	if err := e.Encode(root); err != nil {
		return nil, fmt.Errorf("spec: %w", err)
	}
	if out.Len() > MostBytes {
		return nil, fmt.Errorf("spec: with its defaults written out it has %d bytes, more than %d", out.Len(), MostBytes)
	}
	return out.Bytes(), nil
}

func (s *Spec) written() (list []Amendment) {
	for _, d := range s.Defaults {
		if d.Written != nil {
			list = append(list, Amendment{d.Key, d.Written})
		}
	}
	return list
}

// expanded returns a copy of a tree with its aliases written out.
func expanded(n *yaml.Node) *yaml.Node {
	own := *follow(n)
	own.Anchor, own.Content = "", make([]*yaml.Node, len(own.Content))
	for i, child := range follow(n).Content {
		own.Content[i] = expanded(child)
	}
	return &own
}

// Written returns a value of a spec as it is typed, for Default.Written: quantities so that they are read back the same, words as they are printed. It is nil for what no key
// takes: a pipe that the spec describes itself, and a count that is solved.
func Written(value any, printed string, units measure.System) any {
	for _, k := range sorts {
		if text, ok := k.typed(value, units); ok {
			return text
		}
	}
	switch v := value.(type) {
	case catalog.Pipe:
		if v.Source == ownSource {
			return nil
		}
		return v.Name
	case time.Time:
		return v.Format(time.DateOnly)
	case *time.Location:
		return v.String()
	case Point:
		return []any{Written(v.X, "", units), Written(v.Y, "", units)}
	case []catalog.Inline:
		list := []any{}
		for _, c := range v {
			list = append(list, priced(c.Price, map[string]any{"gauge": c.Cord.Name, "length": Written(c.Length, "", units), "sockets": c.Sockets, "apart": Written(c.Apart, "", units)}))
		}
		return list
	case []Tap:
		list := []any{}
		for _, t := range v {
			list = append(list, priced(t.Price, map[string]any{"sockets": t.Sockets}))
		}
		return list
	case []Leg:
		return []any{map[string]any{"straight": "rest"}}
	case int:
		if v == 0 && printed != "0" { // it is solved
			return nil
		}
		return v
	case []int, float64:
		return v
	case bool:
		if printed == strconv.FormatBool(v) {
			return v
		}
	}
	return printed
}

func priced(price *float64, keys map[string]any) map[string]any {
	if price != nil {
		keys["price"] = *price
	}
	return keys
}
