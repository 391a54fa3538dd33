package packet

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// specLeaf is the spec in print, to be typed in again if the file is lost, and what was assumed where it is silent. Where the last of the tags leave room it stands there.
func (b *binder) specLeaf() []folio {
	if b.specWithTags {
		if _, _, ok := b.specBeneath(b.tagBlocks()); ok {
			return nil
		}
	}
	head, lines, foot := b.specBlocks()
	first := block.Block{Name: "counts first", Body: block.Words{Lettering: paper.Strong, Text: b.countsFirst()}}
	return []folio{{front: side{title: "Spec", blocks: slices.Concat([]block.Block{first}, head, []block.Block{lines}, foot)}}}
}

// countsFirst says what the spec takes before it is run for another year: else what is in the shed is bought again.
func (b *binder) countsFirst() string {
	return fmt.Sprintf("From leaf %d: “good” is own, heights found: {crown: {1: __}}.", leafNumber("takedown"))
}

// ownShown shows how what is in the shed is typed, by the first leg's stick, where no line of the spec does.
func (b *binder) ownShown() string {
	if len(b.spec.Stock.Own) > 0 || len(b.plan.Stock.Kept) == 0 {
		return ""
	}
	own := fmt.Sprintf("own: [{item: %s, length: %s, count: __}, …]", b.spec.Arch.Pipe.Name, stock.Sold(b.plan.Stock.Kept[0].Length, b.spec.Units))
	if b.spec.Given("stock") {
		return "Under stock: " + own + ". "
	}
	return "stock: {" + own + "}. "
}

// specBlocks are what is said of the spec, its lines, and what was assumed.
func (b *binder) specBlocks() (head []block.Block, lines block.Block, foot []block.Block) {
	sum := sha256.Sum256(b.spec.Source)
	var groups []string
	printed, byNone := newListing(string(b.spec.Source)), ""
	if slices.ContainsFunc(printed.folded(b.bodyWidth()), func(l listed) bool { return l.sign == "=" }) {
		byNone = ", = nothing"
	}
	for i := 0; i < len(sum); i += 4 {
		groups = append(groups, fmt.Sprintf("%x", sum[i:i+4]))
	}
	head = []block.Block{{Name: "checksum", Body: block.Words{Lettering: paper.Small, Text: b.ownShown() + "PDF: `hoopwright recover`. By hand: no numbers, keep front spaces; ↪ is a space" + byNone + ". SHA-256: " + strings.Join(groups, " ")}}}
	lines = block.Block{Name: "spec", Gap: 2, Body: printed, Facts: []block.Fact{{What: "spec", Value: string(b.spec.Source)}}}
	if words := b.assumed(); len(words) > 0 {
		foot = []block.Block{block.Heading("Not in the spec, so assumed"),
			{Name: "what was assumed", Gap: 1, Facts: []block.Fact{{What: "assumed", Value: strings.Join(words, ", ")}},
				Body: block.Words{Lettering: paper.Small, Text: say.Capital(say.And(words)) + ". The PDF carries filled.yaml with every value."}}}
	}
	return head, lines, foot
}

// specBeneath sets the spec under the cards of a single sheet, in front and behind, so that nothing of it is lost when they are cut out; false where it finds no room.
func (b *binder) specBeneath(tags []block.Block) (front, back []block.Block, ok bool) {
	_, room := b.newSide(false)
	head, lines, foot := b.specBlocks()
	file := func(sides string) block.Words {
		return block.Words{Lettering: paper.Strong, Text: "Keep this spec" + sides + ". " + b.countsFirst()}
	}
	head = append([]block.Block{{Name: "where the cards end", Gap: 3, Body: file(", both sides")}}, head...)
	cards := block.Height(tags, room.W)
	front = append(slices.Clone(tags), head...)
	behind := block.Block{Name: "behind the cards", Body: block.Picture{Least: cards + head[0].Gap, Paint: func(*paper.Page, paper.Rect) []string { return nil }}}
	if !b.specWithTags || block.Height(front, room.W) > room.H {
		return nil, nil, false
	}
	if whole := slices.Concat(front, []block.Block{lines}, foot); block.Height(whole, room.W) <= room.H {
		whole[len(tags)].Body = file("")
		return whole, nil, true
	}
	back = []block.Block{behind}
	// Half of it behind: a last side with two lines on it would be lost.
	half := (lines.Body.Height(room.W) + listingLead) / 2
	first, rest, split := lines.Body.(listing).Split(room.W, min(half, room.H-block.Height(front, room.W)-lines.Gap))
	if !split {
		return nil, nil, false
	}
	part := func(l block.Body) block.Block {
		return block.Block{Name: lines.Name, Gap: lines.Gap, Body: l, Facts: lines.Facts}
	}
	front, back = append(front, part(first)), append(append(back, part(rest)), foot...)
	return front, back, block.Height(back, room.W) <= room.H
}

// listing is source lines in two columns, each column read to its foot.
type listing struct {
	lines []listed
}

// listed is a line, or a piece of one that goes on, with its number or the sign for what joins it to the one above.
type listed struct{ sign, text string }

const (
	listingColumns              = 2
	listingGap     paper.Length = 3
	listingNumber  paper.Length = 6.4 // room for a line's number
	listingLead    paper.Length = 3.65
)

func newListing(source string) listing {
	var l listing
	source = strings.TrimSuffix(strings.ReplaceAll(source, "\r\n", "\n"), "\n")
	for i, line := range strings.Split(source, "\n") {
		l.lines = append(l.lines, listed{fmt.Sprint(i + 1), strings.ReplaceAll(line, "\t", "    ")})
	}
	return l
}

// folded returns the lines broken to a width.
func (l listing) folded(width paper.Length) []listed {
	room := int((l.column(width) - listingNumber) / paper.Printed.Width("0"))
	var list []listed
	for _, line := range l.lines {
		list = append(list, line.folded(room)...)
	}
	return list
}

func (l listing) column(width paper.Length) paper.Length {
	return (width - listingGap*(listingColumns-1)) / listingColumns
}

// Height implements block.Body.
func (l listing) Height(width paper.Length) paper.Length {
	n := len(l.folded(width))
	return paper.Length((n+listingColumns-1)/listingColumns) * listingLead
}

// Draw implements block.Body.
func (l listing) Draw(page *paper.Page, box paper.Rect) []string {
	lines := l.folded(box.W)
	each := (len(lines) + listingColumns - 1) / listingColumns
	for i, line := range lines {
		x := box.X + paper.Length(i/each)*(l.column(box.W)+listingGap)
		base := box.Y + paper.Length(i%each)*listingLead + paper.Printed.Ascent()
		page.Text(paper.Point{X: x + listingNumber - 1.5, Y: base}, paper.AtRight, line.sign, paper.Small)
		if line.text != "" {
			page.Text(paper.Point{X: x + listingNumber, Y: base}, paper.AtLeft, line.text, paper.Printed)
		}
	}
	return nil
}

// Split goes on on the next side.
func (l listing) Split(width, height paper.Length) (first, rest block.Body, ok bool) {
	rows := int(height/listingLead) * listingColumns
	lines := l.folded(width)
	if rows < 8 || rows >= len(lines) {
		return nil, nil, false
	}
	return listing{lines[:rows]}, listing{lines[rows:]}, true
}

// folded cuts a line into pieces of so many characters: at a lone space, for which the sign stands, where one is near.
func (l listed) folded(room int) (parts []listed) {
	runes := []rune(l.text)
	for len(runes) > room {
		cut, next, sign := room, room, "="
		for k := room; k > room/2; k-- {
			if runes[k] == ' ' && runes[k-1] != ' ' && k+1 < len(runes) && runes[k+1] != ' ' {
				cut, next, sign = k, k+1, "↪"
				break
			}
		}
		parts = append(parts, listed{l.sign, string(runes[:cut])})
		runes, l.sign = runes[next:], sign
	}
	return append(parts, listed{l.sign, string(runes)})
}
