package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
)

// lighting is the wrapping crew's leaf: in front how each kind of pipe is wound, behind which string goes where.
type lighting struct {
	*binder
	u measure.System
}

// lightsLeaf makes the leaf of a tunnel that has lights.
func (b *binder) lightsLeaf() []folio {
	if len(b.plan.Strings) == 0 {
		return nil
	}
	l := lighting{b, b.spec.Units}
	strips := l.strips()
	f := folio{front: side{title: "Lights", toScale: strips[0] != nil, edge: strips[0]}, back: side{title: "Lights: what goes where", toScale: strips[1] != nil, edge: strips[1]}}
	for _, c := range l.charts() {
		f.front.blocks = append(f.front.blocks, c...)
	}
	f.front.blocks = append(f.front.blocks, l.rowMarks()...)
	f.front.blocks = append(f.front.blocks, l.dropList()...)
	f.front.blocks = append(f.front.blocks, l.turns()...)
	f.front.blocks = append(f.front.blocks, l.steps()...)
	f.front.blocks = append(f.front.blocks, l.endsElsewhere()...)
	f.back.blocks = append(f.back.blocks, l.aloud())
	f.back.blocks = append(f.back.blocks, l.rowSteps()...)
	f.back.blocks = append(f.back.blocks, l.unfolded()...)
	return []folio{f}
}

// wrapKind is wraps that are wound alike: one line of a chart.
type wrapKind struct {
	key  string
	wrap lights.Wrap // the first
	on   []lights.Part
	left int // of them whose string is longer than the pipe takes
}

// wrapChart is wraps on pipes of one sort and length, of one string: one ruler with its lines.
type wrapChart struct {
	key   string
	lines []wrapKind
}

// wrapCharts gathers the wraps in the order they hang.
func (b *binder) wrapCharts() []wrapChart {
	var list []wrapChart
	u := b.spec.Units
	for _, w := range b.plan.Wraps {
		key := fmt.Sprint(w.On.Kind.Noun(), w.Label.Name, u.Inches(w.PipeEnd), len(w.Strings))
		i := slices.IndexFunc(list, func(c wrapChart) bool { return c.key == key })
		if i < 0 {
			i = len(list)
			list = append(list, wrapChart{key: key})
		}
		list[i].add(b.kindOf(w), w)
	}
	return list
}

// kindOf is what a wrap shares with those wound alike.
func (b *binder) kindOf(w lights.Wrap) wrapKind {
	u := b.spec.Units
	key := fmt.Sprint(u.Inches(tenTurns*w.Pitch), math.Round(w.Turns), w.Crown, u.Inches(w.From), u.Inches(w.To), u.Inches(measure.Length(w.Covers)*w.To))
	for _, f := range w.Flags {
		key += fmt.Sprint(" ", u.Inches(f.Tape), ":", f.Bulb)
	}
	for _, band := range w.Bare {
		key += draw.BandWords(band, u)
	}
	return wrapKind{key: key, wrap: w}
}

// tenTurns is what a wrapper lays a tape along.
const tenTurns = 10

// add puts a wrap to its like.
func (c *wrapChart) add(k wrapKind, w lights.Wrap) {
	i := slices.IndexFunc(c.lines, func(o wrapKind) bool { return o.key == k.key })
	if i < 0 {
		i = len(c.lines)
		c.lines = append(c.lines, k)
	}
	c.lines[i].on = append(c.lines[i].on, w.On)
}

// under returns the outside diameter of the pipe that a wrap lies on.
func (b *binder) under(on lights.Part) measure.Length {
	if on.Kind == lights.Ridge {
		return b.spec.Ridge.Pipe.OD
	}
	return b.plan.Arches[on.Number-1].Spec.Pipe.OD
}

// wordsWide is the room for the words beside a chart.
const wordsWide paper.Length = 57

// charts draws how each kind of pipe is wound.
func (l lighting) charts() (list [][]block.Block) {
	for _, c := range l.wrapCharts() {
		list = append(list, l.chart(c))
	}
	return list
}

func (l lighting) chart(c wrapChart) []block.Block {
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
	noun := map[lights.Kind]string{lights.Ridge: "Ridge piece", lights.Arch: "Whole arch"}[w.On.Kind]
	if noun == "" {
		noun = "Leg"
	}
	title := fmt.Sprintf("%s: %s", noun, strung(w))
	facts := []block.Fact{{What: "bare at a wrap's end, " + strings.ToLower(noun), Value: l.u.Inches(head)}, {What: "bare at a wrap's beginning, " + strings.ToLower(noun), Value: l.u.Inches(w.From)}}
	ruler := block.Picture{Least: chart.RulerHeight(l.chartWide()), Paint: chart.Ruler}
	blocks := []block.Block{{Name: title, Gap: 3, Keep: true, Facts: facts, Body: withWords(block.Words{Text: title, Lettering: paper.Strong}, ruler)}}
	for _, line := range c.lines {
		blocks = append(blocks, l.line(chart, line))
	}
	return blocks
}

// chartWide is about the width that a chart gets: what decides its lines of figures.
func (l lighting) chartWide() paper.Length {
	return l.size.W - punchMargin - edgeMargin - draw.EdgeStripWide - wordsWide - chartGap
}

const chartGap paper.Length = 3

// withWords sets words at the left of a picture.
func withWords(words, picture block.Body) block.Body {
	return block.Columns{Gap: chartGap, Cols: []block.Column{{Width: wordsWide, Blocks: []block.Block{{Body: words}}}, {Share: 1, Blocks: []block.Block{{Body: picture}}}}}
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

// strung says what goes on one pipe.
func strung(w lights.Wrap) string {
	if n := len(w.Strings); n > 1 {
		return fmt.Sprintf("%d × %s, one after the other", n, w.Label.Name)
	}
	return "one " + w.Label.Name
}

// line is one way a chart's pipes are wound.
func (l lighting) line(chart draw.PipeChart, k wrapKind) block.Block {
	w := k.wrap
	from, to := w.Wound()
	line := draw.PipeLine{From: from, To: to, Bare: w.Bare, Signs: true, Crown: w.Crown, Inks: draw.StringInks(w.Label), Joints: l.joints(w)}
	for _, f := range w.Flags {
		line.At = append(line.At, draw.PipeMark{Tape: f.Tape, Text: fmt.Sprint(f.Bulb)})
	}
	on, ten := partsInRanges(k.on), l.u.Inches(tenTurns*w.Pitch)
	text := fmt.Sprintf("%s: %.0f turns,\nten take %s", on, w.Turns, block.Figure(ten))
	if w.Turns < tenTurns {
		ten = l.u.Inches(w.Pitch)
		text = fmt.Sprintf("%s: %.1f turns,\none every %s", on, w.Turns, block.Figure(ten))
	}
	if w.Covers < 1-1e-6 {
		text += fmt.Sprintf("\nReaches %s of the way, as planned.", measure.Percent(measure.Share(w.Covers)))
	}
	facts := []block.Fact{{What: "turns, " + on, Value: fmt.Sprintf("%.0f", w.Turns)}, {What: "ten turns, " + on, Value: ten}}
	for _, b := range w.Bare {
		facts = append(facts, block.Fact{What: "bare band for the guy, " + on, Value: draw.BandWords(b, l.u)})
	}
	height := chart.LineHeight(l.chartWide(), line)
	picture := block.Picture{Least: height, Paint: func(page *paper.Page, box paper.Rect) []string { return chart.Line(page, box, line) }}
	return block.Block{Name: on, Gap: 1.5, Facts: facts, Body: withWords(block.Words{Text: text}, picture)}
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
