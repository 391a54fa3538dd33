package packet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/catalog"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// lighting is the wrapping crew's leaf: in front how each kind of pipe is wound, behind which string goes where.
type lighting struct {
	plan       *layout.Plan
	u          measure.System
	wide, high paper.Length // a side's body
}

func (b *binder) lighting() lighting {
	_, body := b.newSide(false)
	return lighting{b.plan, b.spec.Units, body.W, body.H}
}

// lightsLeaf makes the leaf of a tunnel that has lights.
func (b *binder) lightsLeaf() []folio {
	if len(b.plan.Strings) == 0 {
		return nil
	}
	l := b.lighting()
	strips := l.strips()
	bench, winding := l.steps()
	front := append([]block.Block{l.aloud()}, bench...)
	front = slices.Concat(front, slices.Concat(l.charts()...), l.turns(), winding)
	return []folio{{
		front: side{title: "Lights: winding", toScale: strips[0] != nil, edge: strips[0], blocks: front},
		back:  side{title: "Lights: what goes where", toScale: strips[1] != nil, edge: strips[1], blocks: l.unfolded()},
	}}
}

// wrapKind is wraps that are wound alike: one line of a chart.
type wrapKind struct {
	wrap lights.Wrap // the first
	on   []lights.Part
}

// wrapChart is wraps of one string on pipes of one sort and length: one ruler with its lines.
type wrapChart struct{ lines []wrapKind }

// wrapCharts gathers the wraps in the order they hang.
func (l lighting) wrapCharts() []wrapChart {
	var list []wrapChart
	for _, w := range l.plan.Wraps {
		i := slices.IndexFunc(list, func(c wrapChart) bool { return l.oneRuler(c.lines[0].wrap, w) })
		if i < 0 {
			i = len(list)
			list = append(list, wrapChart{})
		}
		c := &list[i]
		k := slices.IndexFunc(c.lines, func(o wrapKind) bool { return l.woundAlike(o.wrap, w) })
		if k < 0 {
			k = len(c.lines)
			c.lines = append(c.lines, wrapKind{wrap: w})
		}
		c.lines[k].on = append(c.lines[k].on, w.On)
	}
	return list
}

// near reports whether two lengths are one to a wrapper: as near as a number of grid steps, 1/8 in or 2 mm each.
func (l lighting) near(steps, a, b measure.Length) bool {
	step := measure.By(l.u, measure.Inch/8, 2)
	return math.Abs(float64(a-b)) <= float64(steps*step)+1e-6
}

// How far wraps may differ that are wound alike, in steps: what the give of flags and of a string's end takes up. Our own choice.
const (
	lengthSteps = 4 // where the pipe or what is wound of it begins and ends
	bandSteps   = 3
	tenSteps    = 1
	bulbSteps   = 1 // of bulbs at a flag
)

// oneRuler reports whether two wraps go on one chart.
func (l lighting) oneRuler(v, w lights.Wrap) bool {
	return v.On.Kind.Noun() == w.On.Kind.Noun() && v.Label.Name == w.Label.Name && len(v.Strings) == len(w.Strings) && l.near(lengthSteps, v.PipeEnd, w.PipeEnd) &&
		l.near(lengthSteps, v.From, w.From) && l.near(lengthSteps, v.To, w.To)
}

// woundAlike reports whether two wraps of one chart go on one line.
func (l lighting) woundAlike(v, w lights.Wrap) bool {
	_, vEnd := v.Wound()
	_, wEnd := w.Wound()
	return v.Crown == w.Crown && l.near(tenSteps, lights.CountTurns*v.Pitch, lights.CountTurns*w.Pitch) && l.near(lengthSteps, vEnd, wEnd) &&
		slices.EqualFunc(v.Flags, w.Flags, func(f, g lights.Flag) bool { return f.Tape == g.Tape && max(f.Bulb-g.Bulb, g.Bulb-f.Bulb) <= bulbSteps }) &&
		slices.EqualFunc(v.Bare, w.Bare, func(f, g lights.Band) bool {
			return l.near(bandSteps, f.From, g.From) && l.near(bandSteps, f.To, g.To)
		})
}

// pipesNamed is how long a list of pipes may be before the most numerous are called all the others.
const pipesNamed = 36

// named says which pipes a line stands for: where the list is long, all others of its chart or of its side.
func (c wrapChart) named(line int) string {
	on := slices.SortedStableFunc(slices.Values(c.lines[line].on), func(p, q lights.Part) int { return cmp.Compare(p.Kind, q.Kind) })
	sides := map[lights.Kind]int{}
	for _, p := range on {
		sides[p.Kind]++
	}
	name, rest := partsInRanges(on), "all others"
	switch {
	case !on[0].IsLeg():
		name = onParts(on)
	case sides[lights.LegLeft] == 0:
		rest = "all other right legs"
	case sides[lights.LegRight] == 0:
		rest = "all other left legs"
	}
	if len(name) <= pipesNamed {
		return name
	}
	for i, o := range c.lines {
		if i != line && len(o.on) >= len(on) && (rest == "all others" || o.on[0].Kind == on[0].Kind) {
			return name
		}
	}
	if len(c.lines) == 1 {
		return "all of them"
	}
	return rest
}

// under returns the outside diameter of the pipe that a wrap lies on.
func (l lighting) under(on lights.Part) measure.Length {
	if on.Kind == lights.Ridge {
		return l.plan.Spec.Ridge.Pipe.OD
	}
	return l.plan.Arches[on.Number-1].Spec.Pipe.OD
}

// wordsWide is the room for the words beside a chart.
const wordsWide paper.Length = 57

// charts draws how each kind of pipe is wound. One whose string goes on another part of such pipes too is told with its part.
func (l lighting) charts() (list [][]block.Block) {
	all := l.wrapCharts()
	for i, c := range all {
		part := slices.ContainsFunc(slices.Concat(all[:i], all[i+1:]), c.alsoOn)
		list = append(list, l.chart(c, part))
	}
	return list
}

// alsoOn reports whether two charts have the same string on pipes of one sort.
func (c wrapChart) alsoOn(o wrapChart) bool {
	w, v := c.lines[0].wrap, o.lines[0].wrap
	return w.On.Kind.Noun() == v.On.Kind.Noun() && w.Label.Name == v.Label.Name && len(w.Strings) == len(v.Strings)
}

func (l lighting) chart(c wrapChart, part bool) []block.Block {
	w := c.lines[0].wrap
	start, end := endsOf(w.On.Kind)
	head := w.PipeEnd - w.To
	chart := draw.PipeChart{Long: w.PipeEnd, Start: start + l.bareEnd(w.From), End: end + l.bareEnd(head), Units: l.u}
	for _, line := range c.lines {
		for _, f := range line.wrap.Flags {
			if !slices.Contains(chart.Marks, f.Tape) {
				chart.Marks = append(chart.Marks, f.Tape)
			}
		}
	}
	slices.Sort(chart.Marks)
	var flags []string
	for _, m := range chart.Marks {
		flags = append(flags, l.u.Inches(m))
	}
	title := fmt.Sprintf("%s: %s", say.Capital(w.On.Kind.Noun()), l.strung(w))
	if part {
		title = fmt.Sprintf("%s, %s to %s: %s", say.Capital(w.On.Kind.Noun()), l.u.BareInches(w.From), l.u.Inches(w.To), l.strung(w))
	}
	of := c.named(0) + ", " + title
	facts := []block.Fact{{What: "bare at a wrap's end, " + of, Value: l.u.Inches(head)}, {What: "bare at a wrap's beginning, " + of, Value: l.u.Inches(w.From)},
		{What: "flags for " + of, Value: strings.Join(flags, ", ")}}
	ruler := block.Picture{Least: chart.RulerHeight(l.chartWide()), Paint: chart.Ruler}
	blocks := []block.Block{{Name: title, Gap: 3, Keep: true, Facts: facts, Body: withWords(ruler, block.Words{Text: title, Lettering: paper.Strong})}}
	for i, line := range c.lines {
		blocks = append(blocks, l.line(chart, line, c.named(i), fmt.Sprintf("%s, line %d", title, i+1)))
	}
	return blocks
}

// chartWide is about the width that a chart gets: what decides its lines of figures.
func (l lighting) chartWide() paper.Length {
	return l.wide - draw.EdgeStripWide - wordsWide - chartGap
}

const chartGap paper.Length = 3

// withWords sets words at the left of a picture.
func withWords(picture block.Body, words ...block.Body) block.Body {
	var left []block.Block
	for _, w := range words {
		left = append(left, block.Block{Body: w})
	}
	return block.Columns{Gap: chartGap, Cols: []block.Column{{Width: wordsWide, Blocks: left}, {Share: 1, Blocks: []block.Block{{Body: picture}}}}}
}

// bareEnd says what stays bare at an end, where anything does.
func (l lighting) bareEnd(bare measure.Length) string {
	if bare < l.u.Grid() {
		return ""
	}
	return ": " + l.u.Inches(bare) + " bare"
}

// endsOf names the two ends of a pipe, its zero first.
func endsOf(k lights.Kind) (start, end string) {
	switch k {
	case lights.Ridge:
		return "nearer arch 1", "far end"
	case lights.Arch:
		return "left foot", "right foot"
	}
	return "foot", "crown end"
}

// strung says what goes on one pipe; a name that the spec gave does not tell that it is a string's.
func (l lighting) strung(w lights.Wrap) string {
	name := w.Label.Name
	if slices.ContainsFunc(l.plan.Spec.Lights.Strings, func(s catalog.String) bool { return s.Name == name }) {
		name = "string " + name
	}
	if n := len(w.Strings); n > 1 {
		return fmt.Sprintf("%d × %s, one after the other", n, name)
	}
	return name
}

// line is one way the pipes of a chart are wound.
func (l lighting) line(chart draw.PipeChart, k wrapKind, on, title string) block.Block {
	w := k.wrap
	from, to := w.Wound()
	line := draw.PipeLine{From: from, To: to, Bare: w.Bare, Crown: w.Crown, Inks: draw.StringInks(w.Label), Joints: l.joints(w), Lean: lean(k.on)}
	for _, f := range w.Flags {
		line.At = append(line.At, draw.PipeMark{Tape: f.Tape, Text: fmt.Sprint(f.Bulb)})
	}
	turns, _ := w.Counted(l.u)
	counted := halves(turns)
	what, ten := l.tenTurns(w)
	text := fmt.Sprintf("%s: %s\u00a0turns\n%s%s", say.Capital(on), counted, what, block.Figure(ten))
	if w.Covers < 1-1e-6 {
		text += fmt.Sprintf("\nReaches %s of the way, as planned.", measure.Percent(measure.Share(w.Covers)))
	}
	of := on + ", " + title
	facts := []block.Fact{{What: "turns, " + of, Value: counted}, {What: "ten turns, " + of, Value: ten}}
	for i, b := range w.Bare {
		facts = append(facts, block.Fact{What: fmt.Sprintf("bare band %d, %s", i+1, of), Value: draw.BandWords(b, l.u)})
	}
	height := chart.LineHeight(l.chartWide(), line)
	picture := block.Picture{Least: height, Paint: func(page *paper.Page, box paper.Rect) []string { return chart.Line(page, box, line) }}
	return block.Block{Name: on, Gap: 1.5, Facts: facts, Body: withWords(picture, block.Words{Text: text})}
}

// tenTurns says how close turns are: what is told, and its length.
func (l lighting) tenTurns(w lights.Wrap) (what, length string) {
	turns, ten := w.Counted(l.u)
	if turns < lights.CountTurns {
		return "one every ", l.u.Inches(w.Pitch)
	}
	return fmt.Sprintf("%d turns = ", lights.CountTurns), l.u.Inches(ten)
}

// halves prints a number of turns: 48, or 48 1/2.
func halves(turns float64) string {
	if whole, part := math.Modf(turns); part != 0 {
		return fmt.Sprintf("%.0f\u00a01/2", whole)
	}
	return fmt.Sprintf("%.0f", turns)
}

// lean is which way the turns of pipes lean as they are drawn, see draw.PipeLine: a right leg's are wound the other way.
func lean(on []lights.Part) int {
	right := slices.ContainsFunc(on, func(p lights.Part) bool { return p.Kind == lights.LegRight })
	switch others := slices.ContainsFunc(on, func(p lights.Part) bool { return p.Kind != lights.LegRight }); {
	case right && others:
		return 0
	case right:
		return 1
	}
	return -1
}

// joints are the tapes at which one string ends and the next begins.
func (l lighting) joints(w lights.Wrap) (list []measure.Length) {
	for i, s := range l.plan.Strings {
		if i > 0 && s.Run.Part == w.On && s.Run.Wound() && s.From.At.Spot == lights.Along && slices.Contains(w.Strings, s.Name) && slices.Contains(w.Strings, l.plan.Strings[i-1].Name) {
			list = append(list, s.From.At.Tape)
		}
	}
	return list
}
