package packet

import (
	"fmt"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
)

// folio is one sheet of paper of a leaf: what its front and its back hold. What finds no room on the front goes before what is on the back; what finds none
// there goes to a further sheet of the same leaf.
type folio struct{ front, back side }

// side is what one side of a sheet of paper holds.
type side struct {
	title   string // large in the top strip; the back's, where empty, is the front's
	more    string // the title of what of it goes on behind it; empty for the same
	toScale bool   // it has a drawing to scale: a bar to check the printer by stands in the top strip
	blocks  []block.Block
	edge    *edge // stands along the outer edge; nil for none
}

// edge is what stands along the outer edge of a side, the whole height of its body: it is folded back there and laid on the work.
type edge struct {
	name  string // as a paper note calls it
	wide  paper.Length
	paint func(page *paper.Page, box paper.Rect, left bool) // left: the outer edge is the left one
}

// cut draws the edge and returns what it leaves of the body.
func (e *edge) cut(page *paper.Page, body paper.Rect, back bool) paper.Rect {
	if e == nil {
		return body
	}
	strip, rest := body.SplitLeft(e.wide)
	if !back {
		rest, strip = body.SplitLeft(body.W - e.wide)
	}
	e.paint(page, strip, back)
	return rest
}

// leafKind is one leaf of the packet: its word on the command line, its name in bookmarks, who works from it, how its sheets of paper are made. A leaf that
// this tunnel gives nothing to do makes none.
type leafKind struct {
	word, name, holder string
	make               func(b *binder) []folio
}

// set is a side with its blocks set: the page, and what is told on it.
type set struct {
	page    *paper.Page
	kind    leafKind
	number  int // of the leaf in the packet, from 1
	sheet   int // of paper within the leaf, from 1
	sheets  int // of paper the leaf has
	back    bool
	toScale bool
	title   string
	blocks  []block.Block // as they stand, to be held to telling each fact once
}

// furthest is how many sheets of paper more than it asks for a leaf may run to before what is left is noted.
const furthest = 12

// pack sets a leaf's blocks on as many sides as they need, as loosely as the fewest sheets of paper allow. A folio of whose last side next to nothing
// stands is set more tightly too.
func (b *binder) pack(kind leafKind, number int) (sides []set, notes []block.Note) {
	for _, f := range kind.make(b) {
		if b.twoSided && len(sides)%2 == 1 {
			sides = append(sides, b.notesSide(sides[len(sides)-1]))
		}
		setting := setting{binder: b, kind: kind, number: number, before: len(sides)}
		best := setting.folio(f)
		aim := 2
		if best.thin() {
			aim = len(best.sides) - 1
		}
		for tight := block.Loose + 1; tight <= block.Tightest && len(best.sides) > aim; tight++ {
			closer := setting
			closer.tight = tight
			if closer = closer.folio(f); len(closer.sides) <= aim || (len(closer.sides)+1)/2 < (len(best.sides)+1)/2 {
				best = closer
			}
		}
		sides, notes = append(sides, best.sides...), append(notes, best.notes...)
	}
	return sides, notes
}

// setting is one folio of a leaf being set, and what came of it.
type setting struct {
	*binder
	kind   leafKind
	number int
	before int // sides of the leaf in front of it
	tight  block.Tightness
	sides  []set
	notes  []block.Note
}

// thinly is how much of a side's height may be told on it so that it is better set on the one before.
const thinly paper.Length = 20

// thin reports whether next to nothing is left for the last side.
func (s setting) thin() bool {
	n := len(s.sides)
	return n > 1 && block.Height(s.sides[n-1].blocks, s.bodyWidth()) < thinly
}

// folio sets the front, the back and what goes on behind them.
func (s setting) folio(f folio) setting {
	back := f.back
	back.blocks = append(s.side(f.front, s.kind.name), back.blocks...)
	title, own := f.front.title, len(f.back.blocks)
	for n := 0; len(back.blocks) > 0; n++ {
		if n > 2*furthest {
			for _, r := range back.blocks {
				s.notes = append(s.notes, block.Note{Block: r.Name})
			}
			break
		}
		rest := s.side(back, title)
		if title != "" && own > 0 && len(rest) >= own { // what is in front and fills a whole side more keeps its name there
			s.sides[len(s.sides)-1].title = title
		}
		if len(rest) < own && back.more != "" {
			back.title = back.more
		}
		back.blocks, back.edge = rest, nil
	}
	return s
}

// side sets one side and returns what goes on on the next.
func (s *setting) side(from side, title string) (rest []block.Block) {
	back := s.twoSided && (s.before+len(s.sides))%2 == 1
	page, box := s.newSide(back)
	box = from.edge.cut(page, box, back)
	done, rest, left := block.Fill(page, box, block.Tight(from.blocks, s.tight))
	if from.title != "" {
		title = from.title
	}
	s.sides = append(s.sides, set{page: page, kind: s.kind, number: s.number, back: back, toScale: from.toScale, title: title, blocks: done})
	s.notes = append(s.notes, left...)
	return rest
}

// notesSide is a back that nothing is told on, of the leaf whose last side is before it.
func (b *binder) notesSide(last set) set {
	page, box := b.newSide(true)
	done, _, _ := block.Fill(page, box, noteLines())
	return set{page: page, kind: last.kind, number: last.number, back: true, title: notesTitle, blocks: done}
}

// notesTitle stands over a back that nothing is told on.
const notesTitle = "Notes"

func noteLines() []block.Block {
	var list []block.Block
	for range 12 {
		list = append(list, block.Block{Name: notesTitle, Gap: 6, Body: block.Blanks{{}}})
	}
	return list
}

// place says where in the packet a side is: "leaf 3 front", "leaf 3, sheet 2, back".
func (s set) place() string {
	where := fmt.Sprintf("leaf %d ", s.number)
	if s.sheets > 1 {
		where = fmt.Sprintf("leaf %d, sheet %d of %d, ", s.number, s.sheet, s.sheets)
	}
	if s.back {
		return where + "back"
	}
	return where + "front"
}

// sheetsCounted tells every side of a leaf which sheet of paper it is on.
func sheetsCounted(sides []set) {
	sheets := 0
	for i := range sides {
		if i == 0 || !sides[i].back {
			sheets++
		}
		sides[i].sheet = sheets
	}
	for i := range sides {
		sides[i].sheets = sheets
	}
}
