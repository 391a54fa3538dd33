package main

import (
	"fmt"
	"slices"

	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// sizesVerb says what given sticks make over a range of spans, so that a builder chooses before buying.
func sizesVerb(args []string, s streams) error {
	f := flags("sizes", s)
	var w sizeWish
	f.StringVar(&w.pipe, "pipe", "", "the pipe by its `NAME`; hoopwright names pipe lists them (default: the spec's, or pvc sch40 1/2 in)")
	f.StringVar(&w.sticks, "sticks", "", "left and right leg, `LENGTHS` such as \"10 ft, 10 ft\" or \"10 ft + 18 in, 10 ft + 18 in\"; one alone is bent over whole")
	f.StringVar(&w.span, "span", "", "the spans to try, stake to stake: a `RANGE` such as \"5 ft to 10 ft\", or one")
	f.StringVar(&w.stake, "stake", "", "the stakes: `BAR`, or bar, length and depth in the ground, as in \"3/8 in, 48 in, 20 in\"")
	f.StringVar(&w.arches, "arches", "", "for `N` arches: adds the sticks and strings to buy")
	f.StringVar(&w.spacing, "spacing", "", "arches this `LENGTH` apart: adds the sticks and strings to buy")
	f.StringVar(&w.have, "have", "", "the shed, `COUNTS x LENGTHS` and strings as in \"40 x 10 ft, 24 x mini led 100 warm\": says the longest tunnel they make")
	f.StringVar(&w.units, "units", "", "print in `SYSTEM`: imperial or metric")
	asCSV := f.Bool("csv", false, "print comma-separated values, units in the heads")
	operand, err := parse(f, args)
	if err != nil {
		return err
	}
	ask, err := w.read(operand, s)
	if err != nil {
		return err
	}
	c := choose(ask)
	print := c.table
	if *asCSV {
		print = c.csv
	}
	if err := print(s.out); err != nil {
		return fmt.Errorf("sizes: %w", err)
	}
	if !slices.ContainsFunc(c.sizes, arch.Size.Buildable) {
		return exitError{code: exitMustFix, msg: "none of these spans can be built; try others with --span, longer or shorter --sticks, or another --pipe"}
	}
	return nil
}

// choice is what a builder chooses from.
type choice struct {
	ask
	kind  *arch.Kind // the kind of most arches, as the spec has it
	sizes []arch.Size
	goods []good // what to buy; empty where it was not asked for
}

// choose solves the spec, then its sticks over the spans.
func choose(a ask) choice {
	a.spec.Settle() // the usual stakes, and nothing chosen for one span
	plan := layout.Solve(a.spec)
	c := choice{ask: a, kind: plan.Kinds[0]}
	for _, k := range plan.Kinds {
		if len(k.Numbers) > len(c.kind.Numbers) {
			c.kind = k
		}
	}
	if len(c.spans) == 0 {
		c.spans = withSpan(arch.SpansAbout(c.kind.Span, a.spec.Units), c.kind.Span)
	}
	c.sizes = plan.Sizes(c.kind, c.spans)
	if a.buys {
		c.goods = goodsOf(plan)
	}
	return c
}

// withSpan puts a span among rising ones, unless it is there.
func withSpan(spans []measure.Length, span measure.Length) []measure.Length {
	for i, s := range spans {
		switch {
		case same(s, span):
			return spans
		case s > span:
			return slices.Insert(spans, i, span)
		}
	}
	return append(spans, span)
}

// same reports whether two lengths are the same but for what adding up leaves.
func same(a, b measure.Length) bool {
	const hair = 0.01 * measure.Millimetre
	return a-b < hair && b-a < hair
}
