package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// wrapGroup is wraps that one page serves: same kind of string and part, same pitch, turns and flags as printed.
type wrapGroup struct {
	key      string
	wrap     lights.Wrap // the first
	pipe     measure.Length
	on       []lights.Part
	plain    bool // some are wound one way
	other    bool // some the other way
	leftOver bool // some strings are longer than their pipe takes
}

// wrapGroups gathers the wraps in the order they hang.
func (b *binder) wrapGroups() []wrapGroup {
	var out []wrapGroup
	u := b.spec.Units
	for _, w := range b.plan.Wraps {
		g := wrapGroup{wrap: w, pipe: b.under(w.On)}
		g.key = fmt.Sprint(w.On.Kind.Noun(), w.Label.Name, u.Inches(w.Pitch), math.Round(w.Turns), g.flags(u), len(w.Strings), w.Crown, g.pipe, draw.WrapEnds(w, u))
		k := slices.IndexFunc(out, func(o wrapGroup) bool { return o.key == g.key })
		if k < 0 {
			k = len(out)
			out = append(out, g)
		}
		out[k].on = append(out[k].on, w.On)
		out[k].plain = out[k].plain || !w.Mirror
		out[k].other = out[k].other || w.Mirror
		out[k].leftOver = out[k].leftOver || b.leftOver(w)
	}
	return out
}

// leftOver reports whether a string of the wrap has length left over.
func (b *binder) leftOver(w lights.Wrap) bool {
	return slices.ContainsFunc(b.plan.Strings, func(s lights.String) bool {
		return slices.Contains(w.Strings, s.Name) && s.LeftOver >= b.spec.Units.Grid()
	})
}

// under returns the outside diameter of the pipe that a wrap lies on.
func (b *binder) under(on lights.Part) measure.Length {
	if on.Kind == lights.Ridge {
		return b.spec.Ridge.Pipe.OD
	}
	return b.plan.Arches[on.Number-1].Spec.Pipe.OD
}

// flags says the flags in words.
func (g wrapGroup) flags(u measure.System) string {
	var words []string
	for _, f := range g.wrap.Flags {
		words = append(words, fmt.Sprintf("%s bulb %d", u.Inches(f.Tape), f.Bulb))
	}
	return strings.Join(words, ", ")
}

// ends names a length's two ends.
func (g wrapGroup) ends() (start, end string) {
	switch g.wrap.On.Kind {
	case lights.Ridge:
		return "end nearer arch 1", "far end"
	case lights.Arch:
		return "left foot", "right foot"
	}
	return "foot", "crown end"
}

// title says what the group is wound on.
func (g wrapGroup) title() string {
	on := partsInRanges(g.on)
	switch g.wrap.On.Kind {
	case lights.Ridge:
		return say.Count(len(g.on), "ridge piece") + ": bay " + on
	case lights.Arch:
		return "Whole arches: " + on
	}
	return say.Count(len(g.on), "leg") + ": " + on
}

// wrapPage draws a wrap: the whole length with its flags, some turns of each hand at full size, and blanks for the first one measured.
func (f *flow) wrapPage(g wrapGroup) {
	u := f.b.spec.Units
	f.turn()
	f.text(g.title(), paper.Heading.Sized(18))
	w := g.wrap
	strung := "One string"
	if len(w.Strings) > 1 {
		strung = fmt.Sprintf("%d strings end to end", len(w.Strings))
	}
	f.text(fmt.Sprintf("%s each: %s", strung, w.Label.Name), paper.Heading)
	f.text(fmt.Sprintf("%.0f turns. Ten turns take %s, which makes one every %s or so.", w.Turns, u.Inches(10*w.Pitch), u.Inches(w.Pitch)), paper.Heading)
	f.text(g.ending(u), paper.Body)
	f.gap(2)

	blanks := (len(w.Flags) + flagsInRow - 1) / flagsInRow
	drawing := f.room
	drawing.H -= paper.Length(blanks) * 25
	f.wrapDrawing(g, drawing)
	f.gap(drawing.H)
	if blanks > 0 {
		f.firstOne(g)
	}
}

// ending says where the strings start and end and which way round.
func (g wrapGroup) ending(u measure.System) string {
	start, end := g.ends()
	from, to := start, end
	if g.wrap.Crown {
		from, to = end, start
	}
	s := fmt.Sprintf("Prongs toward the %s, socket toward the %s; the pipe is bare beyond both.", from, to)
	if g.wrap.Covers < 1-1e-6 {
		s += fmt.Sprintf(" It covers %s of what was meant, as planned: it does not reach farther.", measure.Percent(measure.Share(g.wrap.Covers)))
	}
	if g.leftOver {
		s += " What is left over goes back along the pipe, tied."
	}
	return s
}

// wrapDrawing draws the run at the left and the turns beside it.
func (f *flow) wrapDrawing(g wrapGroup, room paper.Rect) {
	u := f.b.spec.Units
	series := draw.Scales(u)
	start, end := g.ends()
	run := draw.WrapRun{Wrap: g.wrap, Start: start, End: end, Units: u}
	for _, s := range series {
		if run.Scale = s; s.Ratio >= 8 && run.High()+9 <= room.H {
			break
		}
	}
	board := place.NewBoard(f.page, room)
	left, rest := room.SplitLeft(70)
	left.H -= 9
	run.Draw(board, left)
	board.Text(paper.Point{X: left.X, Y: room.Bottom() - 3}, paper.AtLeft, "Whole length, "+run.Scale.Words, paper.Floor)

	detail := draw.WrapDetail{Pipe: g.pipe, Wrap: g.wrap, Units: u}
	rest.Y += 4 // the break line's zigzag
	rest.H -= 32
	for _, s := range series {
		if detail.Scale = s; s.Length(float64(g.wrap.Pitch))*2.4 <= rest.H && s.Length(float64(g.pipe)) < 50 {
			break
		}
	}
	at := rest
	for _, mirror := range []bool{false, true} {
		if mirror && !g.other || !mirror && !g.plain {
			continue
		}
		detail.Mirror = mirror
		detail.Draw(board, at)
		way, who := "right", "Left legs"
		if mirror {
			way, who = "left", "Right legs"
		}
		if !g.wrap.On.IsLeg() {
			who = "Every one"
		}
		y := at.Bottom() + 10
		board.Text(paper.Point{X: at.X, Y: y}, paper.AtLeft, who, paper.Strong)
		for i, line := range []string{"the wire in front", "climbs to the " + way} {
			board.Text(paper.Point{X: at.X, Y: y + 5*paper.Length(i+1)}, paper.AtLeft, line, paper.Floor)
		}
		at.X += max(detail.Wide(), 50)
	}
	board.Text(paper.Point{X: rest.X, Y: room.Bottom() - 3}, paper.AtLeft, "Some turns, "+detail.Scale.Words+fullSize(detail.Scale), paper.Floor)
	f.leaves[len(f.leaves)-1].scale = "Scales beside the drawings"
}

// fullSize says what a drawing at full size is good for.
func fullSize(s paper.Scale) string {
	if s.Ratio == 1 {
		return ": lay the pipe on it"
	}
	return ""
}

// firstOne is the check of the first length wound, before the rest are.
func (f *flow) firstOne(g wrapGroup) {
	u := f.b.spec.Units
	const first = 64
	for flags := range slices.Chunk(g.wrap.Flags, flagsInRow) {
		cells, blanks := []string{fmt.Sprintf("Bulb wanted, give or take %d", practice.BulbGive)}, []string{"On the first one"}
		columns := []place.Column{{Head: "At", Width: first}}
		for _, fl := range flags {
			columns = append(columns, place.Column{Head: u.Inches(fl.Tape), Lettering: paper.Cell, Align: paper.AtMiddle, Width: (f.room.W - first) / paper.Length(len(flags))})
			cells = append(cells, fmt.Sprint(fl.Bulb))
			blanks = append(blanks, "")
		}
		f.table(place.Table{Columns: columns, RowMin: 7.5}, []place.Row{{Cells: cells}, {Cells: blanks}})
	}
}

// flagsInRow is how many flags stand side by side in the check of the first length.
const flagsInRow = 5
