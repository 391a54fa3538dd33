package spec

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// place is the rule of a place on the plan: how far right, how far ahead.
var place = ruled(func(units measure.System) string {
	return "how far right and how far ahead on the plan, each " + coordinates.in(units)
}, field.point)

func (f field) point() (Point, bool) {
	items, ok := f.list()
	if !ok || len(items) != len(f.node.Content) {
		return Point{}, false
	}
	if len(items) != 2 {
		f.fail("lists %s; two are wanted, how far right and how far ahead%s", say.Count(len(items), "figure"), commaHint(items))
		return Point{}, false
	}
	x, okX := coordinates.of(items[0])
	y, okY := coordinates.of(items[1])
	return Point{x, y}, okX && okY
}

// pointsOf is the rule of a list of at least so many places.
func pointsOf(least int) rule {
	return ruled(says(fmt.Sprintf("a list of places on the plan, %d or more", least)), func(f field) (list []Point, ok bool) {
		items, ok := f.list()
		if !ok {
			return nil, false
		}
		if len(f.node.Content) < least {
			f.fail("lists %s; %d or more are wanted", say.Count(len(f.node.Content), "point"), least)
			return nil, false
		}
		if f.flat(items) {
			return nil, false
		}
		for _, item := range items {
			if p, ok := item.point(); ok {
				list = append(list, p)
			}
		}
		return list, true
	})
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
