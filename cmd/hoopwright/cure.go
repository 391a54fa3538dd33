package main

import (
	"regexp"
	"strconv"
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/say"
)

// cureLines says what to change in the spec, then the same as lines of YAML to paste: whole keys as one line each, a key of a list's item with the item beside it.
func cureLines(cure []finding.Change) []string {
	if len(cure) == 0 {
		return nil
	}
	var words, inItems []string
	var tree branch
	for _, c := range cure {
		key := c.Key
		if strings.Contains(key, " ") {
			key = "`" + key + "`"
		}
		if c.Value == "" {
			words = append(words, "take "+key+" out")
			continue
		}
		words = append(words, "set "+key+" to "+c.Value)
		if at := strings.LastIndexByte(c.Key, ']'); at > 0 {
			inItems = append(inItems, strings.TrimPrefix(c.Key[at+1:], ".")+": "+c.Value+"   # in "+c.Key[:at+1])
			continue
		}
		tree.put(strings.Split(c.Key, "."), c.Value)
	}
	lines := []string{"cure: " + say.And(words)}
	for _, top := range tree.inner {
		lines = append(lines, top.yaml())
	}
	return append(lines, inItems...)
}

// branch is a key of a spec with its value, or with the keys under it.
type branch struct {
	name, value string
	inner       []*branch
}

// put sets the value at a path under the branch.
func (b *branch) put(path []string, value string) {
	if len(path) == 0 {
		b.value = value
		return
	}
	for _, in := range b.inner {
		if in.name == path[0] {
			in.put(path[1:], value)
			return
		}
	}
	in := &branch{name: path[0]}
	b.inner = append(b.inner, in)
	in.put(path[1:], value)
}

var plainKey = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9 _-]*$`)

// yaml writes the branch on one line.
func (b *branch) yaml() string {
	name, value := b.name, b.value
	if !plainKey.MatchString(name) {
		name = strconv.Quote(name)
	}
	if len(b.inner) > 0 {
		var list []string
		for _, in := range b.inner {
			list = append(list, in.yaml())
		}
		value = "{" + strings.Join(list, ", ") + "}"
	}
	return name + ": " + value
}
