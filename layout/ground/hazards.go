package ground

import (
	"fmt"
	"math"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// slack keeps a stake that stands exactly at its limit from being called too near for the last digit's sake.
const slack measure.Length = 1e-6

// hazard is one thing on or in the ground that a stake may be too near to.
type hazard struct {
	code   string
	key    string
	level  finding.Level
	within measure.Length                    // stakes nearer than this are bothered
	beyond measure.Length                    // and not nearer than this: nearer ones are another hazard's
	gap    func(p spec.Point) measure.Length // from p to the thing, negative inside it
	near   bool                              // it says how near stakes are, not that they stand in it
	tail   func(least measure.Length) string // of its sentence, from the place or the distance on
	cost   int                               // edges that one gap looks at
	low    spec.Point
	high   spec.Point // the box outside which no stake is bothered
}

// says tells which stakes it bothers, the nearest of them so far from it.
func (h hazard) says(who []string, least measure.Length) string {
	many := "stand"
	if h.near {
		many = "stand as near as"
	}
	return fmt.Sprintf("%s %s %s", say.Some(who, mostNames), say.Agree(len(who), "stands", many), h.tail(least))
}

// boxed reports whether p is within the box.
func (h hazard) boxed(p spec.Point) bool {
	return p.X >= h.low.X && p.X <= h.high.X && p.Y >= h.low.Y && p.Y <= h.high.Y
}

// bothers returns how far the thing is from a stake at p, and whether that is too near.
func (h hazard) bothers(p spec.Point) (measure.Length, bool) {
	if !h.boxed(p) {
		return 0, false
	}
	gap := h.gap(p)
	return gap, gap < h.within-slack && gap >= h.beyond-slack
}

// hazards returns everything on the site that can bother a stake.
//
// Where the spec leaves the start out, the tunnel begins at the origin that the site's own coordinates count from: that is no
// guess, so its stakes can forbid building. A buried line's keep distance that the spec did not give never forbids building, save where the stake hits the line itself.
func hazards(s *spec.Spec) []hazard {
	u, lim := s.Units, practice.OnGround(s.Units)
	nowhere := measure.Length(math.Inf(-1))
	var list []hazard
	put := func(h hazard, rim []spec.Point, grow measure.Length) {
		h.low, h.high = box(rim, grow+h.within)
		h.cost = len(rim)
		list = append(list, h)
	}
	for i, f := range s.Site.Features {
		h := hazard{key: fmt.Sprintf("site.features[%d]", i), gap: func(p spec.Point) measure.Length { return toFeature(p, f) }}
		rim, grow := f.Outline, measure.Length(0)
		if len(rim) == 0 {
			rim, grow = []spec.Point{f.At}, f.Radius
		}
		in, edge := h, h
		in.code, in.level, in.beyond = "stake-in-feature", finding.LookAt, nowhere
		in.tail = func(measure.Length) string {
			return fmt.Sprintf("in %s: move the tunnel, or make sure that a stake may go there.", f.Name)
		}
		if f.Hard {
			in.code, in.level, in.within = "stake-in-hard-ground", finding.MustFix, 2*slack // the edge itself is hard too
			in.tail = func(measure.Length) string {
				return fmt.Sprintf("in %s, which is hard: no stake can be driven there. Move the tunnel off it.", f.Name)
			}
			edge.code, edge.level, edge.within, edge.beyond = "stake-near-hard-ground", finding.LookAt, lim.Edge, 2*slack
			edge.near, edge.tail = true, func(least measure.Length) string {
				return fmt.Sprintf("%s from the edge of %s: a bar driven there may break the edge or glance off. Keep %s away.", u.Inches(least), f.Name, u.Inches(lim.Edge))
			}
			put(edge, rim, grow)
		}
		put(in, rim, grow)
	}
	for i, b := range s.Site.Buried {
		h := hazard{
			code: "stake-near-buried-line", key: fmt.Sprintf("site.buried[%d]", i), level: finding.MustFix, within: b.Keep, beyond: nowhere,
			near: true, gap: func(p spec.Point) measure.Length { return toPath(p, b.Line) },
			tail: func(least measure.Length) string {
				return fmt.Sprintf("%s from %s: drive nothing within %s of it on either side, and have it located and marked before the first stake.", u.Tape(least), b.Name, u.Tape(b.Keep))
			},
		}
		if !s.Given(h.key + ".keep") {
			h.level, h.beyond = finding.LookAt, lim.Tape
			hit := h
			hit.level, hit.within, hit.beyond = finding.MustFix, lim.Tape, nowhere
			put(hit, b.Line, 0)
		}
		put(h, b.Line, 0)
		near := h // a dot within its tolerance puts the stake's side over
		near.code, near.level, near.within, near.beyond = "stake-beside-keep", finding.LookAt, b.Keep+lim.Good+s.Arch.Stake.Bar.Diameter/2, b.Keep
		near.tail = func(least measure.Length) string {
			return fmt.Sprintf("%s from %s, and %s is kept: a dot painted %s off, and nothing may be driven there.", u.Tape(least), b.Name, u.Tape(b.Keep), u.Inches(lim.Good))
		}
		put(near, b.Line, 0)
	}
	return list
}

// toFeature returns the distance from p to the feature, negative inside it.
func toFeature(p spec.Point, f spec.Feature) measure.Length {
	n := len(f.Outline)
	if n == 0 {
		return Distance(p, f.At) - f.Radius
	}
	gap := min(toPath(p, f.Outline), toSegment(p, f.Outline[n-1], f.Outline[0]))
	if Inside(p, f.Outline) {
		return -gap
	}
	return gap
}

// box returns the corners of the upright box around the points, grown on all sides.
func box(points []spec.Point, grow measure.Length) (low, high spec.Point) {
	inf := measure.Length(math.Inf(1))
	low, high = spec.Point{X: inf, Y: inf}, spec.Point{X: -inf, Y: -inf}
	for _, p := range points {
		low = spec.Point{X: min(low.X, p.X-grow), Y: min(low.Y, p.Y-grow)}
		high = spec.Point{X: max(high.X, p.X+grow), Y: max(high.Y, p.Y+grow)}
	}
	return low, high
}

// Clear reports whether every guy stake and peg of the spec stands where it may, with room about it to be moved a little, and none shares another's hole: what a place that is
// chosen must pass.
func Clear(s *spec.Spec, arches Arches) bool {
	t := newTunnel(s, arches)
	lim, list := practice.OnGround(s.Units), hazards(s)
	stakes := t.stakes()
	for i, peg := range stakes {
		if !peg.Guy {
			continue
		}
		for k := range 9 {
			p := peg.At()
			if k > 0 {
				sin, cos := math.Sincos(float64(k) * math.Pi / 4)
				p.X, p.Y = p.X+lim.StepOut*measure.Length(cos), p.Y+lim.StepOut*measure.Length(sin)
			}
			for _, h := range list {
				if _, yes := h.bothers(p); yes {
					return false
				}
			}
		}
		for _, other := range stakes[:i] {
			if Distance(peg.At(), other.At()) < lim.Share/2 || other.Guy && Distance(peg.At(), other.At()) < lim.Share {
				return false
			}
		}
	}
	return true
}
