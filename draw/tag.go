package draw

import (
	"hoopwright/draw/paper"
)

// Tag is a card to cut out and tie to a bundle of pipe: a hole, a large name, a row for each pipe of it, lines of what else belongs to it, and at its foot
// which end stands down.
type Tag struct {
	Name, Of string    // ARCH 3, of 8
	Head     string    // small, at the right of the name
	Pipes    []TagPipe // in the order they are built in
	Lines    []TagLine // under them
	Down     string    // beside the arrow at the foot
}

// TagPipe is one pipe of a bundle: its name, its sticks from the foot up, the turns of its lights and the strings that they are made with. Empty is not there.
type TagPipe struct{ Name, Sticks, Turns, Strings string }

// TagLine is a fact with the word for it.
type TagLine struct{ Word, Text string }

const (
	tagPad    paper.Length = 3
	tagHole   paper.Length = 3 // radius: a cable tie or cord goes through
	tagHead   paper.Length = 12
	tagApart  paper.Length = 2.4 // between columns
	tagBottom paper.Length = 7.5
)

// tagSizes are the sizes of lettering that a tag is set in, the first in which it fits: read in the hand, on a bench or at a shelf.
var tagSizes = []paper.PointSize{11, 10, 9}

// tagSet is a tag's lettering at a size.
type tagSet struct{ word, text, figure paper.Lettering }

func tagAt(size paper.PointSize) tagSet {
	return tagSet{paper.Strong.Sized(size), paper.Small.Sized(size), paper.SmallCell.Sized(size)}
}

// columns are where the columns of pipes begin, from the left of their room: names, sticks, turns, strings.
func (t Tag) columns(l tagSet) [4]paper.Length {
	wide := [3]paper.Length{l.word.Width("pipe"), l.word.Width("sticks, foot up"), l.word.Width("turns")}
	for _, p := range t.Pipes {
		for i, s := range [3]string{p.Name, p.Sticks, p.Turns} {
			wide[i] = max(wide[i], l.figure.Width(s))
		}
	}
	var at [4]paper.Length
	for i, w := range wide {
		at[i+1] = at[i] + w + tagApart
	}
	return at
}

// rows are the lines that a tag takes under its head, and whether they keep within the width: strings wrap, sticks do not.
func (t Tag) rows(l tagSet, width paper.Length) (rows int, ok bool) {
	at := t.columns(l)
	room := width - at[3]
	rows = 1
	for _, p := range t.Pipes {
		rows += max(1, len(l.text.Wrap(p.Strings, room)))
	}
	for _, line := range t.Lines {
		rows += len(l.text.Wrap(line.Text, width-t.words(l)))
	}
	return rows, room > 12
}

// words is the width of the words before the lines.
func (t Tag) words(l tagSet) paper.Length {
	wide := paper.Length(0)
	for _, line := range t.Lines {
		wide = max(wide, l.word.Width(line.Word)+tagApart)
	}
	return wide
}

// fit returns the largest lettering in which the tag fits a height at a width, else the smallest, and the height that it needs.
func (t Tag) fit(width, height paper.Length) (set tagSet, needs paper.Length) {
	for _, size := range tagSizes {
		set = tagAt(size)
		rows, ok := t.rows(set, width-2*tagPad)
		if needs = tagHead + tagBottom + paper.Length(rows)*set.text.Leading(); ok && needs <= height {
			break
		}
	}
	return set, needs
}

// Height returns the height that the tag needs at a width, no less than the height it is given.
func (t Tag) Height(width, height paper.Length) paper.Length {
	_, needs := t.fit(width, height)
	return max(needs, height)
}

// Draw draws the tag in a box, cut along its edge.
func (t Tag) Draw(page *paper.Page, box paper.Rect) {
	l, _ := t.fit(box.W, box.H)
	page.Stroke(paper.Box(box), paper.Hidden)
	hole := paper.Point{X: box.X + tagPad + tagHole + 0.5, Y: box.Y + tagPad + tagHole}
	page.Stroke(paper.Circle(hole, tagHole), paper.Thin)
	for _, d := range []paper.Point{{X: 1}, {Y: 1}} {
		page.Line(hole.Sub(d.Times(1.2)), hole.Add(d.Times(1.2)), paper.Thin)
	}
	name := paper.Point{X: hole.X + tagHole + 3, Y: box.Y + tagPad + 6.6}
	large := paper.Large.Sized(20)
	page.Text(name, paper.AtLeft, t.Name, large)
	page.Text(paper.Point{X: name.X + large.Width(t.Name) + 2, Y: name.Y}, paper.AtLeft, t.Of, paper.Strong)
	t.head(page, box)
	in := paper.Rect{X: box.X + tagPad, Y: box.Y + tagHead, W: box.W - 2*tagPad}
	y := t.pipes(page, in, l)
	for _, line := range t.Lines {
		page.Text(paper.Point{X: in.X, Y: y + l.text.Ascent()}, paper.AtLeft, line.Word, l.word)
		for _, s := range l.text.Wrap(line.Text, in.W-t.words(l)) {
			page.Text(paper.Point{X: in.X + t.words(l), Y: y + l.text.Ascent()}, paper.AtLeft, s, l.text)
			y += l.text.Leading()
		}
	}
	tip := paper.Point{X: box.X + tagPad + 2.5, Y: box.Bottom() - 1.6}
	page.Line(paper.Point{X: tip.X, Y: tip.Y - 5.6}, paper.Point{X: tip.X, Y: tip.Y - 3}, paper.Emphasis)
	page.Fill(paper.Polygon(tip, paper.Point{X: tip.X - 2, Y: tip.Y - 3.4}, paper.Point{X: tip.X + 2, Y: tip.Y - 3.4}), paper.Black)
	page.Text(paper.Point{X: tip.X + 4.5, Y: box.Bottom() - 2.6}, paper.AtLeft, t.Down, paper.Strong.Sized(11))
}

// head sets the words at the right of the name, in two lines at most.
func (t Tag) head(page *paper.Page, box paper.Rect) {
	room := box.W - 3*tagPad - 2*tagHole - 6 - paper.Large.Sized(20).Width(t.Name) - paper.Strong.Width(t.Of)
	lines := paper.Small.Wrap(t.Head, room)
	for i, s := range lines[:min(2, len(lines))] {
		if i == 1 && len(lines) > 2 {
			s += " …"
		}
		page.Text(paper.Point{X: box.Right() - tagPad, Y: box.Y + tagPad + 2.6 + paper.Length(i)*paper.Small.Leading()}, paper.AtRight, s, paper.Small)
	}
}

// pipes sets the table of pipes and returns what lies under it.
func (t Tag) pipes(page *paper.Page, in paper.Rect, l tagSet) paper.Length {
	at := t.columns(l)
	y := in.Y
	base := func() paper.Length { return y + l.text.Ascent() }
	for i, head := range [4]string{"pipe", "sticks, foot up", "turns", "prongs at"} {
		page.Text(paper.Point{X: in.X + at[i], Y: base()}, paper.AtLeft, head, l.text)
	}
	y += l.text.Leading()
	for _, p := range t.Pipes {
		for i, s := range [3]string{p.Name, p.Sticks, p.Turns} {
			if s != "" {
				page.Text(paper.Point{X: in.X + at[i], Y: base()}, paper.AtLeft, s, l.figure)
			}
		}
		lines := l.text.Wrap(p.Strings, in.W-at[3])
		for _, s := range lines {
			if s != "" {
				page.Text(paper.Point{X: in.X + at[3], Y: base()}, paper.AtLeft, s, l.text)
			}
			y += l.text.Leading()
		}
		if len(lines) == 0 {
			y += l.text.Leading()
		}
	}
	return y
}

// ShelfLabel is a label for a bundle, a box or a tote, to be cut out.
type ShelfLabel struct{ Name, What, Head string }

// ShelfLabelHeight is the height of a label.
const ShelfLabelHeight paper.Length = 17

// Draw draws the label in a box, cut along its edge.
func (l ShelfLabel) Draw(page *paper.Page, box paper.Rect) {
	page.Stroke(paper.Box(box), paper.Hidden)
	page.Text(paper.Point{X: box.X + tagPad, Y: box.Y + 8}, paper.AtLeft, l.Name, paper.StakeName)
	lines := paper.Small.Wrap(l.Head, box.W-3*tagPad-paper.StakeName.Width(l.Name))
	for i, s := range lines[:min(2, len(lines))] {
		page.Text(paper.Point{X: box.Right() - tagPad, Y: box.Y + 5 + paper.Length(i)*paper.Small.Leading()}, paper.AtRight, s, paper.Small)
	}
	page.Text(paper.Point{X: box.X + tagPad, Y: box.Y + 14}, paper.AtLeft, l.What, paper.Floor)
}
