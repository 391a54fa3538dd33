package main

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// sizeWish is what the options of the verb say, as written.
type sizeWish struct {
	pipe, sticks, span, height, stake, arches, spacing, have, units string

	base     *spec.Spec     // that the options stand over
	named    bool           // the base is a spec that the caller names
	from, to measure.Length // of the spans; 0 where none are given
	own      []any          // the shed, as the spec has it
}

// ask is what they come to: a whole spec and the spans or heights to try.
type ask struct {
	spec      *spec.Spec
	spans     []measure.Length // none: about the spec's own
	heights   []measure.Length // in the place of spans
	fixedSpan bool             // the heights are over one span, and the sticks are solved
	tall      func(height measure.Length) (*spec.Spec, error)
	own       bool // somebody chose the spec's own span, so it is marked
	buys      bool // what to buy is asked for
	shed      *shed
}

// Without a spec the sizes are of a tunnel of our own: a few arches with a ridge, legs wrapped with generic strings, nothing that holds it lengthwise.
var plainSpec = map[measure.System]string{
	measure.Imperial: `{hoopwright: 1, title: sizes, units: imperial, tunnel: {arches: 6, spacing: 4 ft 6 in},
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 6 in}, lights: {wraps: [{where: legs, string: mini led 100 warm}]}}`,
	measure.Metric: `{hoopwright: 1, title: sizes, units: metric, tunnel: {arches: 6, spacing: 1.4 m},
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.4 m}, lights: {wraps: [{where: legs, string: led 100 warm 230 V}]}}`,
}

// The options that stand for a key of the spec, each with a right example.
var wishKeys = []struct{ key, option, example string }{
	{"arch.pipe", "--pipe", `--pipe "pvc sch40 3/4 in"`},
	{"arch.sticks", "--sticks", `--sticks "10 ft, 10 ft"`},
	{"arch.span", "--span", `--span "5 to 10 ft"`},
	{"arch.height", "--height", `--height "7 to 9 ft"`},
	{"arch.stake", "--stake", `--stake "3/8 in, 48 in, 20 in"`},
	{"tunnel.arches", "--arches", `--arches 8`},
	{"tunnel.spacing", "--spacing", `--spacing "4 ft 6 in"`},
	{"stock.own", "--have", `--have "40 x 10 ft, 24 x mini led 100 warm"`},
}

// badWish reports what is wrong with the option that stands for a key.
func badWish(key, format string, args ...any) error {
	said := fmt.Sprintf(format, args...)
	for _, k := range wishKeys {
		if strings.HasPrefix(key, k.key) {
			return badCall("sizes: %s: %s; write e.g. %s", k.option, said, k.example)
		}
	}
	return badCall("sizes: %s: %s", key, said)
}

// read makes the options into a spec and the spans or heights to try. A spec that is named comes first and the options stand over it.
func (w sizeWish) read(operand string, s streams) (ask, error) {
	var err error
	if w.named = operand != ""; w.named {
		w.base, err = readSpec(operand, s)
	} else {
		w.base, err = w.plain()
	}
	if err != nil {
		return ask{}, err
	}
	if w.from, w.to, err = rangeOf("arch.span", w.span, mostSpan, w.base.Units); err != nil {
		return ask{}, err
	}
	switch {
	case w.have != "" && w.height != "":
		return ask{}, badCall("sizes: --have tries its own heights; give --have or --height, not both")
	case w.have != "":
		return w.fromShed(s)
	case w.height == "":
		return w.wanted()
	case w.from < w.to:
		return ask{}, badWish("arch.span", "with --height one span is wanted, whose sticks are solved, or none")
	case w.span != "" && w.sticks != "":
		return ask{}, badCall("sizes: a height follows from --sticks and --span; give --height with one of the two")
	}
	return w.atHeights()
}

// atHeights asks for crown heights in the place of spans: of the sticks, or over one span.
func (w sizeWish) atHeights() (ask, error) {
	from, to, err := rangeOf("arch.height", w.height, mostHeight, w.base.Units)
	if err != nil {
		return ask{}, err
	}
	amendments, err := w.amend()
	if err != nil {
		return ask{}, err
	}
	a := ask{heights: arch.SpansBetween(from, to, w.base.Units), fixedSpan: w.span != "" || w.sticks == "" && w.base.Arch.Missing == spec.Sticks}
	third := "arch.span"
	if a.fixedSpan {
		third = "arch.sticks"
	}
	if w.span != "" {
		amendments = append(amendments, typed("arch.span", w.from, w.base.Units))
	}
	amendments = append(amendments, spec.Amendment{Key: "arch.except"}, spec.Amendment{Key: third})
	a.tall = func(height measure.Length) (*spec.Spec, error) {
		own, err := spec.ReadAmended(w.base.File, w.base.Source, append(slices.Clip(amendments), typed("arch.height", height, w.base.Units))...)
		if err != nil {
			return nil, amiss(err)
		}
		return own, setUnits(own, w.units)
	}
	a.spec, err = a.tall(from)
	return a, err
}

// typed amends a key with a length, to the last bit.
func typed(key string, l measure.Length, u measure.System) spec.Amendment {
	return spec.Amendment{Key: key, Value: spec.Written(l, "", u)}
}

func (w sizeWish) wanted() (ask, error) {
	amendments, err := w.amend()
	if err != nil {
		return ask{}, err
	}
	a := ask{own: w.named && w.sticks == "", buys: w.named || w.arches != "" || w.spacing != ""}
	if a.spec, err = spec.ReadAmended(w.base.File, w.base.Source, amendments...); err != nil {
		return ask{}, amiss(err)
	}
	if err := setUnits(a.spec, w.units); err != nil {
		return ask{}, err
	}
	if w.span == "" && !a.own {
		w.from, w.to = usualSpans(a.spec)
	}
	if w.to > 0 {
		a.spans = arch.SpansBetween(w.from, w.to, a.spec.Units)
	}
	return a, nil
}

func (w sizeWish) plain() (*spec.Spec, error) {
	system, err := w.system()
	if err != nil {
		return nil, err
	}
	return spec.Read("sizes", []byte(plainSpec[system]))
}

// lengthMarks part the lengths of an option.
var lengthMarks = regexp.MustCompile(`\s*(?:,|\+|-|–|\bto\b|\bx\b|×)\s*`)

// system is the one asked for, or that of the first length in the options, or of the pipe.
func (w sizeWish) system() (measure.System, error) {
	for _, text := range []string{w.sticks, w.span, w.height, w.stake, w.spacing, w.have} {
		for _, part := range lengthMarks.Split(text, -1) {
			if system, ok := measure.SystemOf(part); ok {
				return systemOf(w.units, system)
			}
		}
	}
	if p, ok := catalog.FindPipe(w.pipe); ok && strings.HasSuffix(p.Name, " mm") {
		return systemOf(w.units, measure.Metric)
	}
	return systemOf(w.units, measure.Imperial)
}

// usualSpans is what sticks are tried over unless told: from a quarter to half of their length, in round figures.
func usualSpans(s *spec.Spec) (from, to measure.Length) {
	grid := measure.By(s.Units, 6*measure.Inch, 200)
	var length measure.Length
	for _, stick := range slices.Concat(s.Arch.Left, s.Arch.Right) {
		length += stick
	}
	from = max(measure.RoundUp(length/4, grid), measure.RoundUp(leastSpan, grid))
	return from, max(measure.RoundUp(length/2, grid), from+grid)
}

// amend turns the options into amendments of the spec under them.
func (w sizeWish) amend() ([]spec.Amendment, error) {
	base := w.base
	var list []spec.Amendment
	set := func(key string, value any) { list = append(list, spec.Amendment{Key: key, Value: value}) }
	if w.pipe != "" {
		set("arch.pipe", w.pipe)
	}
	if w.sticks != "" {
		legs := w.legs()
		set("arch.sticks", legs)
		set("arch.height", nil)
		if base.Arch.Missing == spec.Span {
			set("arch.span", measure.By(base.Units, "7 ft", "2.1 m"))
		}
		if len(legs) == 1 {
			set("ridge", false)
		}
	}
	if w.stake != "" {
		parts := strings.Split(w.stake, ",")
		if len(parts) > 3 {
			return nil, badWish("arch.stake", "%q has %d parts; bar, length and depth are wanted", w.stake, len(parts))
		}
		for i, part := range parts {
			set("arch.stake."+[...]string{"bar", "length", "depth"}[i], strings.TrimSpace(part))
		}
	}
	if w.own != nil {
		set("stock.own", w.own)
		set("guys.arches", nil) // the ends: the number of arches changes
		set("braces.bays", nil)
	}
	if len(list) > 0 {
		set("arch.except", nil)
	}
	if w.arches == "" && w.spacing == "" {
		return list, nil
	}
	n, spacing := base.Tunnel.Arches, w.spacing
	if w.arches != "" {
		var err error
		if n, err = strconv.Atoi(w.arches); err != nil {
			return nil, badWish("tunnel.arches", "%q is no whole number", w.arches)
		}
	}
	if spacing == "" && base.Tunnel.Spacing > 0 {
		spacing, _ = spec.Written(base.Tunnel.Spacing, "", base.Units).(string)
	}
	set("tunnel.length", nil)
	set("tunnel.arches", n)
	switch {
	case n == 1:
		set("tunnel.spacing", nil)
	case spacing == "":
		return nil, badWish("tunnel.spacing", "the spec has one arch, so it says nothing of how far apart %d are", n)
	default:
		set("tunnel.spacing", spacing)
	}
	return list, nil
}

func (w sizeWish) legs() []any {
	var legs []any
	for leg := range strings.SplitSeq(w.sticks, ",") {
		pieces := []any{}
		for piece := range strings.SplitSeq(leg, "+") {
			pieces = append(pieces, strings.TrimSpace(piece))
		}
		if len(pieces) == 1 {
			legs = append(legs, pieces[0])
		} else {
			legs = append(legs, pieces)
		}
	}
	return legs
}

// amiss says what is wrong with an amended spec: of an option by its name, of the spec's own as ever.
func amiss(err error) error {
	var list spec.Errors
	if !errors.As(err, &list) {
		return err
	}
	var ours []string
	for _, e := range list {
		if e.Pos.Line == 0 {
			ours = append(ours, badWish(e.Key, "%s", e.Text).Error())
		}
	}
	if len(ours) == 0 {
		return badSpec(list)
	}
	return badCall("%s", strings.Join(ours, "\n"))
}
