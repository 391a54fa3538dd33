package draw

import "hoopwright/draw/paper"

// Tag is a card to cut out and tie to a bundle or a box: a hole to punch, a large name, what is in it, whose tunnel it is of.
type Tag struct{ Name, Of, What, Head string }

// TagHeight is the height of a card: the large name, two lines of what is in it, one of whose it is.
const TagHeight paper.Length = 19.5

const (
	tagHole paper.Length = 2.8 // radius: a cable tie or cord goes through
	tagLeft paper.Length = 13  // where the words begin, clear of the hole
)

// Draw draws the card in a box, cut along its edge. Cards side by side share a cut.
func (t Tag) Draw(page *paper.Page, box paper.Rect) {
	page.Stroke(paper.Box(box), paper.Hidden)
	hole := paper.Point{X: box.X + tagLeft/2, Y: box.Y + 7.5}
	page.Stroke(paper.Circle(hole, tagHole), paper.Thin)
	at := func(down paper.Length) paper.Point { return paper.Point{X: box.X + tagLeft, Y: box.Y + down} }
	large, words := paper.Large.Sized(18), paper.Small.Sized(10)
	page.Text(at(7), paper.AtLeft, t.Name, large)
	page.Text(at(7).Add(paper.Point{X: large.Width(t.Name) + 2}), paper.AtLeft, t.Of, paper.Strong)
	for i, line := range words.Wrap(t.What, box.W-tagLeft-2) {
		page.Text(at(11.2+paper.Length(i)*3.8), paper.AtLeft, line, words)
	}
	page.Text(at(TagHeight-1.5), paper.AtLeft, t.Head, paper.Small)
}
