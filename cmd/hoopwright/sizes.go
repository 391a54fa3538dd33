package main

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// sizesVerb says what given sticks make over a range of spans or crown heights, so that a builder chooses before buying.
func sizesVerb(args []string, s streams) error {
	f := flags("sizes", s)
	var w sizeWish
	f.StringVar(&w.pipe, "pipe", "", "the pipe by its `NAME`; hoopwright names pipe lists them (default: the spec's, or pvc sch40 1/2 in)")
	f.StringVar(&w.sticks, "sticks", "", "left and right leg, `LENGTHS` such as \"10 ft, 10 ft\" or \"10 ft + 18 in, 10 ft + 18 in\"; one alone is bent over whole")
	f.StringVar(&w.span, "span", "", "the spans to try, stake to stake: a `RANGE` such as \"5 to 10 ft\" or 5-10, or one")
	f.StringVar(&w.height, "height", "", "crown heights to try in the place of spans: a `RANGE` such as \"7 to 9 ft\"; of the sticks, or over one --span with the sticks solved. Stakes, guys and braces are chosen for each")
	f.StringVar(&w.stake, "stake", "", "the stakes: `BAR`, or bar, length and depth in the ground, as in \"3/8 in, 48 in, 20 in\"")
	f.StringVar(&w.arches, "arches", "", "for `N` arches: adds the sticks and strings to buy")
	f.StringVar(&w.spacing, "spacing", "", "arches this `LENGTH` apart: adds the sticks and strings to buy")
	f.StringVar(&w.have, "have", "", "the shed, `COUNTS x LENGTHS` and strings as in \"40 x 10 ft, 24 x mini led 100 warm\", or "+ownShed+" for that of the spec: says the longest and the tallest tunnel they make")
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
	c, err := choose(ask, s)
	if err != nil {
		return err
	}
	print := c.table
	if *asCSV {
		print = c.csv
	}
	if err := print(s.out); err != nil {
		return fmt.Errorf("sizes: %w", err)
	}
	if !slices.ContainsFunc(c.rows, row.Buildable) {
		what, option := "spans", "--span"
		if len(c.heights) > 0 {
			what, option = "heights", "--height"
		}
		return exitError{code: exitMustFix, msg: fmt.Sprintf("none of these %s can be built; try others with %s, longer or shorter --sticks, or another --pipe", what, option)}
	}
	return nil
}

type choice struct {
	ask
	kind  *arch.Kind // the kind of most arches, as the spec has it
	rows  []row
	goods []good // what to buy; empty where it was not asked for
}

// row is one span, or one crown height.
type row struct {
	arch.Size
	height measure.Length // that was tried; 0 where spans are
	factor float64        // how many times its own load it bears
	way    string
	plan   *layout.Plan // of the height, with what was chosen for it; nil where spans are tried
	kind   *arch.Kind   // of that plan
}

// choose solves the spec, then its sticks over the spans, or else the spec of each height.
func choose(a ask, s streams) (choice, error) {
	if len(a.heights) > 0 {
		return chooseHeight(a, s)
	}
	a.spec.Settle() // the usual stakes, and nothing chosen for one span
	plan := layout.Solve(a.spec)
	c := choice{ask: a, kind: usualKind(plan)}
	if len(c.spans) == 0 {
		c.spans = withSpan(arch.SpansAbout(c.kind.Span, a.spec.Units), c.kind.Span)
	}
	sizes := plan.Sizes(c.kind, c.spans)
	c.rows = make([]row, len(sizes))
	arch.SideBySide(len(sizes), func(i int) {
		c.rows[i] = row{Size: sizes[i]}
		c.rows[i].factor, c.rows[i].way = sizes[i].LoadFactor()
	})
	if a.buys {
		c.goods = goodsOf(plan)
	}
	return c, nil
}

func usualKind(plan *layout.Plan) *arch.Kind {
	return slices.MaxFunc(plan.Kinds, func(a, b *arch.Kind) int { return len(a.Numbers) - len(b.Numbers) })
}

// chooseHeight solves a spec for each height, and lets stakes, guys and braces be chosen as for a packet.
func chooseHeight(a ask, s streams) (choice, error) {
	c := choice{ask: a, rows: make([]row, len(a.heights))}
	errs := make([]error, len(a.heights))
	sideBySide(s, "solving", "heights", len(a.heights), func(i int) { c.rows[i], errs[i] = a.atHeight(a.heights[i]) })
	if err := cmp.Or(errs...); err != nil {
		return c, err
	}
	c.kind = c.rows[0].kind
	return c, nil
}

// atHeight is the row of one height. What stands is seen over the span that it has, held by what was chosen.
func (a ask) atHeight(height measure.Length) (row, error) {
	own, err := a.tall(height)
	if err != nil {
		return row{}, err
	}
	plan := layout.Solve(own)
	r := row{height: height, plan: plan, kind: usualKind(plan)}
	if r.kind.Refused() {
		r.Size.Standing = arch.NoArch
		return r, nil
	}
	r.Size = plan.Sizes(r.kind, []measure.Length{r.kind.Span})[0]
	r.factor, r.way = r.kind.LoadFactor, r.kind.LoadFactorWay
	return r, nil
}

// withSpan puts a span among rising ones, unless it is there.
func withSpan(spans []measure.Length, span measure.Length) []measure.Length {
	if slices.ContainsFunc(spans, func(s measure.Length) bool { return same(s, span) }) {
		return spans
	}
	return slices.Sorted(slices.Values(append(spans, span)))
}

// same reports whether two lengths are the same but for what adding up leaves.
func same(a, b measure.Length) bool {
	const hair = 0.01 * measure.Millimetre
	return a-b < hair && b-a < hair
}
