package spec

import "gopkg.in/yaml.v3"

// What a tree may hold once every alias is written out: enough for the largest spec, and read in well under a second.
const (
	mostNodes = 400_000
	mostDepth = 24
)

// size counts the nodes of a tree with its aliases written out. It stops beyond the limits and returns the node where that is.
func size(n *yaml.Node, depth int, count *int) (tooMuch *yaml.Node) {
	if *count++; *count > mostNodes || depth > mostDepth {
		return n
	}
	if n.Kind == yaml.AliasNode {
		if size(n.Alias, depth+1, count) != nil {
			return n
		}
		return nil
	}
	for _, child := range n.Content {
		if bad := size(child, depth+1, count); bad != nil {
			return bad
		}
	}
	return nil
}

// sizeFits checks the tree before anything follows its aliases.
func (r *reader) sizeFits(root *yaml.Node) bool {
	count := 0
	bad := size(root, 0, &count)
	if bad == nil {
		return true
	}
	text := "values are nested more than 24 deep here, or an alias contains itself"
	if count > mostNodes {
		text = "the spec with its aliases written out is too large to be one"
	}
	r.errors = append(r.errors, Error{Pos: r.position(bad), Text: text})
	return false
}
