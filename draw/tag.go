package draw

import "hoopwright/draw/paper"

// Tag is a card to cut out and tie to a bundle or a box: a hole to punch, a large name, what is in it, whose tunnel it is of.
type Tag struct{ Name, Of, What, Head string }

// TagHeight is the height of a card: the large name, two lines of what is in it, one of whose it is.
const TagHeight paper.Length = 19.5

// TagMargin is the room at the left of a card.
const (
	TagMargin paper.Length = 13  // where the words begin, clear of the hole
	tagHole   paper.Length = 2.8 // radius: a cable tie or cord goes through
	tagGone   paper.Length = 25  // at the right, for what is missing
	tagLines               = 2   // of what is in it, over whose it is
)

// Draw draws the card in a box, cut along its edge. Cards side by side share a cut.
func (t Tag) Draw(page *paper.Page, box paper.Rect) {
	page.Stroke(paper.Box(box), paper.Hidden)
	hole := paper.Point{X: box.X + TagMargin/2, Y: box.Y + 7.5}
	page.Stroke(paper.Circle(hole, tagHole), paper.Thin)
	at := func(down paper.Length) paper.Point { return paper.Point{X: box.X + TagMargin, Y: box.Y + down} }
	large, words := paper.Large.Sized(18), paper.Small.Sized(10)
	page.Text(at(7), paper.AtLeft, t.Name, large)
	page.Text(at(7).Add(paper.Point{X: large.Width(t.Name) + 2}), paper.AtLeft, t.Of, paper.Strong)
	lines, head := words.Wrap(t.What, box.W-TagMargin-2), at(TagHeight-1.5)
	for i, line := range lines {
		page.Text(at(10.9+paper.Length(i)*3.6), paper.AtLeft, line, words)
	}
	if len(lines) > tagLines { // whose it is goes behind the last line
		head.X += words.Width(lines[tagLines]) + 2
	}
	if room := box.Right() - tagGone - head.X; paper.Small.Width(t.Head) < room || len(lines) <= tagLines {
		page.Text(head, paper.AtLeft, t.Head, paper.Small)
	}
	gone := paper.Point{X: box.Right() - tagGone, Y: box.Y + TagHeight - 1.5}
	page.Text(gone, paper.AtLeft, "missing", paper.Small)
	page.Line(gone.Add(paper.Point{X: paper.Small.Width("missing") + 1}), gone.Add(paper.Point{X: tagGone - 2}), paper.Thin)
}
