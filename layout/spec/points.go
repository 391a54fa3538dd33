package spec

import (
	"strings"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/say"
)

// point reads a place on the plan: how far right, how far ahead.
func (f field) point() (Point, bool) {
	items, ok := f.list()
	if !ok || len(items) != len(f.node.Content) {
		return Point{}, false
	}
	f.takes("how far right and how far ahead on the plan, each %s", coordinates.in(f.spec.Units))
	if len(items) != 2 {
		f.fail("lists %s; two are wanted, how far right and how far ahead%s", say.Count(len(items), "figure"), commaHint(items))
		return Point{}, false
	}
	x, okX := coordinates.of(items[0])
	y, okY := coordinates.of(items[1])
	return Point{x, y}, okX && okY
}

// point reads a key's place on the plan.
func (m mapping) point(key string, into *Point) bool {
	f, ok := m.value(key)
	if !ok {
		return false
	}
	p, ok := f.point()
	if ok {
		*into = p
	}
	return ok
}

// points reads a key's list of at least so many places.
func (m mapping) points(key string, least int) []Point {
	f, ok := m.value(key)
	if !ok {
		return nil
	}
	items, ok := f.list()
	if !ok {
		return nil
	}
	if len(f.node.Content) < least {
		f.fail("lists %s; %d or more are wanted", say.Count(len(f.node.Content), "point"), least)
		return nil
	}
	if f.flat(items) {
		return nil
	}
	var list []Point
	for _, item := range items {
		if p, ok := item.point(); ok {
			list = append(list, p)
		}
	}
	return list
}

// flat reports points whose figures stand in one list without brackets of their own.
func (f field) flat(items []field) bool {
	var pairs []string
	for i, item := range items {
		if item.node.Kind != yaml.ScalarNode {
			return false
		}
		if i%2 == 1 {
			pairs = append(pairs, "["+items[i-1].node.Value+", "+item.node.Value+"]")
		}
	}
	f.failWith(f.keyed("["+strings.Join(pairs, ", ")+"]"), "each point stands in brackets of its own, how far right and how far ahead")
	return true
}

// commaHint says what a comma too many may have parted.
func commaHint(items []field) string {
	for i, item := range items {
		switch {
		case len(items) < 3:
		case bareNumber.MatchString(item.node.Value) && item.node.Value != "0":
			return "; a comma parts the two, so a decimal takes a point: 2.3 m"
		case i > 0 && strings.HasSuffix(item.node.Value, "in") && strings.HasSuffix(items[i-1].node.Value, "ft"):
			return "; feet and inches of one figure stand together without a comma: 4 ft 6 in"
		}
	}
	return ""
}
