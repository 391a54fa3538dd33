package block

import (
	"cmp"
	"fmt"

	"hoopwright/draw/paper"
)

// Step is one thing to do: a box to tick, its number, the words, for a hold a heavy frame with lines to write on.
type Step struct {
	Number int          // 0 for a line without one
	Letter string       // in place of a number, where others on the side have those
	Text   string       // with its figures marked
	Then   string       // what is wanted, or what to do if it is off: set below, indented as the text is; empty for none
	Sign   []Blank      // lines to fill in, one beside the other; none for a step without
	Hold   bool         // nobody goes on before it is signed: a heavy frame
	Aside  paper.Length // room at the right in which the lines to fill in stand, beside the words; 0: below them
	Small  bool         // words at the least size, where room is short
	NoTick bool         // no box to tick, as in a list of dangers
}

// Blank is a line to write on behind its word.
type Blank struct {
	Word  string
	Share float64 // of the width that blanks share; 0 stands for 1
}

// Room about a step.
const (
	stepTick   paper.Length = paper.TickBoxSide + 2.2
	stepNumber paper.Length = 7
	stepPad    paper.Length = 1.2 // inside a hold's frame
	blankHigh  paper.Length = 7.8 // a line to write on
	stepLeast  paper.Length = paper.TickBoxSide + 0.8
)

// indent is where the words begin.
func (s Step) indent() paper.Length {
	w := paper.Length(0)
	if !s.NoTick {
		w += stepTick
	}
	if s.label() != "" {
		w += stepNumber
	}
	return w
}

// label is its number or its letter.
func (s Step) label() string {
	if s.Number > 0 {
		return fmt.Sprint(s.Number)
	}
	return s.Letter
}

func (s Step) pad() paper.Length {
	if s.Hold {
		return stepPad
	}
	return 0
}

// parts are the step's words.
func (s Step) parts() []Words {
	list := []Words{{Text: s.Text}}
	if s.Small {
		list[0].Lettering = paper.Floor
	}
	if s.Then != "" {
		list = append(list, Words{Text: s.Then, Lettering: paper.Floor, Figures: paper.CellSmall})
	}
	return list
}

// Height implements Body.
func (s Step) Height(width paper.Length) paper.Length {
	inner := width - s.indent() - 2*s.pad() - s.Aside
	h := paper.Length(0)
	for _, w := range s.parts() {
		h += w.Height(inner)
	}
	if !s.NoTick {
		h = max(h, stepLeast)
	}
	switch {
	case len(s.Sign) > 0 && s.Aside > 0:
		h = max(h, blankHigh)
	case len(s.Sign) > 0:
		h += blankHigh
	}
	return h + 2*s.pad()
}

// Draw implements Body.
func (s Step) Draw(page *paper.Page, box paper.Rect) []string {
	box.H = s.Height(box.W)
	if s.Hold {
		page.Stroke(paper.Box(box), paper.Emphasis)
	}
	in := box.Inset(s.pad())
	x := in.X
	if !s.NoTick {
		page.TickBox(paper.Point{X: x + 0.35, Y: in.Y + 0.35})
		x += stepTick
	}
	if label := s.label(); label != "" {
		page.Text(paper.Point{X: x + stepNumber - 1.8, Y: in.Y + paper.Body.Ascent() + 0.4}, paper.AtRight, label, paper.Strong)
	}
	_, words := in.SplitLeft(s.indent())
	sign := paper.Rect{X: words.X, Y: in.Bottom() - blankHigh, W: words.W, H: blankHigh}
	if s.Aside > 0 {
		words.W -= s.Aside
		sign.X, sign.W = words.Right()+2, s.Aside-2
	}
	y := words.Y + 0.4
	for _, w := range s.parts() {
		w.Draw(page, paper.Rect{X: words.X, Y: y, W: words.W})
		y += w.Height(words.W)
	}
	drawBlanks(page, sign, s.Sign)
	return nil
}

// drawBlanks draws lines to write on, each behind its word, side by side across the box.
func drawBlanks(page *paper.Page, box paper.Rect, blanks []Blank) {
	const gap paper.Length = 3
	whole, free := 0.0, box.W-gap*paper.Length(len(blanks)-1)
	for _, b := range blanks {
		whole += b.share()
		free -= paper.Floor.Width(b.Word) + 1.5
	}
	x, base := box.X, box.Bottom()-1.8
	for _, b := range blanks {
		page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, b.Word, paper.Floor)
		x += paper.Floor.Width(b.Word) + 1.5
		line := free * paper.Length(b.share()/whole)
		page.Line(paper.Point{X: x, Y: base + 0.5}, paper.Point{X: x + line, Y: base + 0.5}, paper.Thin)
		x += line + gap
	}
}

func (b Blank) share() float64 { return cmp.Or(b.Share, 1) }

// Blanks is a line of blanks to fill in.
type Blanks []Blank

// Height implements Body.
func (Blanks) Height(paper.Length) paper.Length { return blankHigh }

// Draw implements Body.
func (b Blanks) Draw(page *paper.Page, box paper.Rect) []string {
	drawBlanks(page, paper.Rect{X: box.X, Y: box.Y, W: box.W, H: blankHigh}, b)
	return nil
}
