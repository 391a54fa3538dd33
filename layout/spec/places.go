package spec

import (
	"fmt"
	"math"
	"strings"

	"gopkg.in/yaml.v3"

	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// parts are the words of the parts that lights hang on; the longer stand before those that they contain.
var parts = []struct {
	words string
	part  Part
}{
	{"left legs", LeftLegs}, {"right legs", RightLegs}, {"legs", Legs}, {"arches", WholeArches}, {"ridge", RidgePieces},
}

// placeGrammar is what a message says of a place that it cannot read.
const placeGrammar = "a place is legs, left legs, right legs, arches or ridge, then above, below or from … to … with heights or tape … to … along the pipe, then of and the arches"

// placed is the rule of the places of lights: one or a list.
var placed = several("one place or a list: "+placeGrammar, "place", field.place)

// place reads one place: a part of the frame, perhaps a range of it, perhaps some of the arches, or of the bays for the ridge.
func (f field) place() (Place, bool) {
	text, ok := f.text(longestText)
	if !ok {
		return Place{}, false
	}
	text = strings.Join(strings.Fields(text), " ")
	before, set, some := strings.Cut(text+" ", " of ")
	p, rest, ok := f.part(strings.TrimSpace(before))
	if !ok || !f.bound(rest, &p) {
		return Place{}, false
	}
	of := archNumbers(f.spec)
	if p.Part == RidgePieces {
		of = bayNumbers(f.spec)
		if !f.spec.Ridge.Present {
			f.failWith(f.keyed("legs"), "there is no ridge to hang lights on")
			return Place{}, false
		}
	}
	if some {
		set = strings.TrimSpace(set)
		if inner, listed := strings.CutPrefix(set, "["); listed {
			set = strings.TrimSuffix(inner, "]")
		}
		words := strings.Split(set, ",")
		for i := range words {
			words[i] = strings.TrimSpace(words[i])
		}
		if p.Of, ok = f.pick(words, of); !ok {
			return Place{}, false
		}
		if len(p.Of) == of.most {
			p.Of = nil // all of them
		}
	}
	return p, true
}

func (f field) part(text string) (p Place, rest string, ok bool) {
	for _, known := range parts {
		if rest, found := strings.CutPrefix(text+" ", known.words+" "); found {
			return Place{Part: known.part}, strings.TrimSpace(rest), true
		}
	}
	var words []string
	for _, known := range parts {
		words = append(words, known.words)
	}
	head, _, _ := strings.Cut(text, " ")
	near, rest := f.nearest(text, words), ""
	if near == "" {
		near, rest = f.nearest(head, words), text[len(head):]
	}
	if near != "" {
		f.failWith(f.keyed(near+rest), "%s is no place for lights; the nearest is `%s`", quote(text), near)
	} else {
		f.fail("%s is no place for lights: %s", quote(text), placeGrammar)
	}
	return Place{}, "", false
}

func (f field) bound(text string, p *Place) bool {
	if text == "" {
		return true
	}
	word, figures, _ := strings.Cut(text, " ")
	low, high, both := strings.Cut(figures, " to ")
	switch {
	case word == "above" && figures != "" && !both:
		low, high = figures, ""
		p.Bound, p.To = ByHeight, measure.Length(math.Inf(1))
	case word == "below" && figures != "" && !both:
		low, high = "", figures
		p.Bound = ByHeight
	case word == "from" && both:
		p.Bound = ByHeight
	case word == "tape" && both:
		p.Bound = ByTape
	default:
		f.fail("cannot be read from %s on: %s", quote(text), placeGrammar)
		return false
	}
	if low != "" && !f.height(low, &p.From) || high != "" && !f.height(high, &p.To) {
		return false
	}
	if p.From >= p.To {
		f.fail("%s holds nothing; the lower figure comes first, and above nought", quote(text))
		return false
	}
	return true
}

func (f field) height(text string, into *measure.Length) bool {
	own := *f.node
	own.Value = text
	f.node = &own
	l, ok := places.of(f)
	*into = l
	return ok
}

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
