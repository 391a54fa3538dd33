package draw

import (
	"hoopwright/draw/paper"
)

// Tag is a card to cut out and tie to a bundle of pipe: a hole, a large name, lines of what belongs to it, and at its foot which end stands down.
type Tag struct {
	Name, Of string    // ARCH 3, of 8
	Head     []string  // small, at the right of the name
	Lines    []TagLine // from top to bottom
	Down     string    // beside the arrow at the foot
}

// TagLine is a fact with the word for it.
type TagLine struct{ Word, Text string }

// Lettering of a tag: read in the hand, on a bench or at a shelf.
var (
	tagWord = paper.Strong.Sized(9)
	tagText = paper.Small
)

const (
	tagPad    paper.Length = 3
	tagHole   paper.Length = 3 // radius: a cable tie or cord goes through
	tagHead   paper.Length = 12
	tagWords  paper.Length = 18 // width of the words' column
	tagLine   paper.Length = 4.1
	tagBelow  paper.Length = 1 // under each fact
	tagBottom paper.Length = 8.5
)

// Height returns how high the tag is at a width.
func (t Tag) Height(width paper.Length) paper.Length {
	h := tagHead + tagBottom
	for _, l := range t.Lines {
		h += paper.Length(len(tagText.Wrap(l.Text, width-2*tagPad-tagWords)))*tagLine + tagBelow
	}
	return h
}

// Draw draws the tag in a box, cut along its edge.
func (t Tag) Draw(page *paper.Page, box paper.Rect) {
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
	for i, s := range t.Head {
		page.Text(paper.Point{X: box.Right() - tagPad, Y: box.Y + tagPad + 2.6 + paper.Length(i)*tagLine}, paper.AtRight, s, tagText)
	}
	y := box.Y + tagHead
	for _, l := range t.Lines {
		page.Text(paper.Point{X: box.X + tagPad, Y: y + tagText.Ascent()}, paper.AtLeft, l.Word, tagWord)
		for _, s := range tagText.Wrap(l.Text, box.W-2*tagPad-tagWords) {
			page.Text(paper.Point{X: box.X + tagPad + tagWords, Y: y + tagText.Ascent()}, paper.AtLeft, s, tagText)
			y += tagLine
		}
		y += tagBelow
	}
	tip := paper.Point{X: box.X + tagPad + 2.5, Y: box.Bottom() - 2}
	page.Line(paper.Point{X: tip.X, Y: tip.Y - 6}, paper.Point{X: tip.X, Y: tip.Y - 3}, paper.Emphasis)
	page.Fill(paper.Polygon(tip, paper.Point{X: tip.X - 2, Y: tip.Y - 3.4}, paper.Point{X: tip.X + 2, Y: tip.Y - 3.4}), paper.Black)
	page.Text(paper.Point{X: tip.X + 4.5, Y: box.Bottom() - 3.2}, paper.AtLeft, t.Down, tagWord)
}

// HeadRoom returns the width that lines of the head have beside the name.
func (t Tag) HeadRoom(width paper.Length) paper.Length {
	return width - 3*tagPad - 2*tagHole - 6 - paper.Large.Sized(20).Width(t.Name) - paper.Strong.Width(t.Of)
}

// TagText is the lettering of a tag's lines.
func TagText() paper.Lettering { return tagText }
