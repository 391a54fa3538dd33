package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// boardLeaf hangs where everyone sees it. Its front shows what is being made and says what the organiser has to decide first; its back holds what can
// hurt someone, to be read aloud.
func (b *binder) boardLeaf() []folio {
	front := []block.Block{b.boardTitle()}
	front = append(front, b.boardPicture(), b.boardCalendar())
	front = append(front, b.boardFindings()...)
	return []folio{{
		front: side{title: "Board", blocks: front},
		back:  side{title: "Read aloud", blocks: b.readAloud()},
	}}
}

// boardTitle is the tunnel's name and place.
func (b *binder) boardTitle() block.Block {
	text := b.spec.Title
	if b.spec.Season != "" {
		text += ", " + b.spec.Season
	}
	return block.Block{Name: "title", Body: block.Words{Text: text, Lettering: paper.Heading.Sized(18)}}
}

// Room of the picture on the board.
const (
	boardLeast   paper.Length = 62
	boardBest    paper.Length = 118
	boardGap     paper.Length = 6
	boardFigures paper.Length = 70 // width of the key figures beside it
)

// boardPicture is the tunnel lit, with its key figures beside it.
func (b *binder) boardPicture() block.Block {
	figures := b.boardFigures()
	var facts []block.Fact
	for _, f := range figures {
		facts = append(facts, block.Fact{What: f.label, Value: f.value})
	}
	scene := block.Picture{Least: boardLeast, Best: boardBest, Paint: func(page *paper.Page, box paper.Rect) []string {
		if finding.Has(b.plan.Findings, "no-arch") || !draw.Perspective(page, box, b.plan) {
			page.Paragraph(box, "No arch of these figures stands, so there is nothing to show yet.", paper.Body)
		}
		return nil
	}}
	list := block.Picture{Least: leastFigureRow * paper.Length(len(figures)), Best: mostFigureRow * paper.Length(len(figures)), Paint: func(page *paper.Page, box paper.Rect) []string {
		drawFigures(page, box, figures)
		return nil
	}}
	return block.Block{Name: "picture", Gap: 2, Facts: facts, Body: block.Columns{Gap: boardGap, Cols: []block.Column{
		{Share: 1, Blocks: []block.Block{{Name: "picture", Body: scene}}}, {Width: boardFigures, Blocks: []block.Block{{Name: "key figures", Body: list}}}}}}
}

// boardFigures are what a reader wants to know of the tunnel at a glance.
func (b *binder) boardFigures() []figure {
	p, u, t := b.plan, b.spec.Units, b.spec.Tunnel
	list := []figure{{"Arches", fmt.Sprint(t.Arches)}}
	if t.Arches > 1 {
		list = append(list, figure{"Apart", u.Tape(t.Spacing)}, figure{"Length", u.Tape(t.Length)})
	}
	if len(p.Kinds) > 0 {
		list = append(list,
			figure{"Stake to stake", b.across(func(k *arch.Kind) measure.Length { return k.Span })},
			figure{"Height at the crown", b.across(func(k *arch.Kind) measure.Length { return k.Crown })},
			figure{"Headroom there", b.across(func(k *arch.Kind) measure.Length { return k.Clear })},
			figure{"Wide, " + u.Room(p.Kinds[0].HeadHeight) + " up", b.across(func(k *arch.Kind) measure.Length { return k.HeadWidth })},
			figure{b.closedAs(), b.insideWords()}, figure{"People inside, at most", fmt.Sprint(p.MostInside())})
	}
	if n := len(p.Strings); n > 0 {
		list = append(list, figure{"Strings of lights", fmt.Sprintf("%d, %s", n, measure.Watts(p.Power.Watts))})
	}
	if c := p.Cost; c.Bought.Money+c.NextYear.Money > 0 {
		list = append(list, figure{"Buy now; next year", fmt.Sprintf("%s; %s", roundly(c.Bought), strings.TrimSpace(roundly(c.NextYear)+" "+b.spec.Currency))})
	}
	return list
}

// drawFigures sets figures one under the other, each over a rule.
func drawFigures(page *paper.Page, box paper.Rect, list []figure) {
	row := min(mostFigureRow, box.H/paper.Length(len(list)))
	y := box.Y
	for _, f := range list {
		base := y + (row+paper.Floor.Ascent())/2
		value, room := paper.Cell, box.W-3-paper.Floor.Width(f.label)
		for value.Width(f.value) > room && value.Size > 11 {
			value = value.Sized(value.Size - 1)
		}
		page.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, f.label, paper.Floor)
		page.Text(paper.Point{X: box.Right(), Y: base}, paper.AtRight, clip(f.value, value, room), value)
		page.Line(paper.Point{X: box.X, Y: y + row}, paper.Point{X: box.Right(), Y: y + row}, paper.Thin)
		y += row
	}
}

// boardCalendar is the season as a strip of days.
func (b *binder) boardCalendar() block.Block {
	high := b.datesHeight(b.bodyWidth())
	return block.Block{Name: "calendar", Gap: 3.5, Body: block.Picture{Least: high, Paint: func(page *paper.Page, box paper.Rect) []string {
		b.drawDates(page, box)
		return nil
	}}}
}

// bodyWidth is the width of a side's body.
func (b *binder) bodyWidth() paper.Length { return b.size.W - punchMargin - edgeMargin }

// boardFindings are all findings, each with what cures it, what found no room on paper, and what the packet is not good for.
func (b *binder) boardFindings() []block.Block {
	list := []block.Block{block.Heading("Before building")}
	for _, level := range []finding.Level{finding.MustFix, finding.LookAt, finding.Note} {
		list = append(list, b.findingsAt(level)...)
	}
	if len(list) == 1 {
		list = append(list, block.Paragraph("Nothing to fix and nothing to decide."))
	}
	for _, n := range b.notes {
		text := "Paper note: " + n.Block + " found no room"
		if n.What != "" {
			text = "Paper note: " + n.What + " found no room on " + n.Block
		}
		list = append(list, block.Block{Name: "paper note", Gap: 1.2, Body: remarkWords(text + ".")})
	}
	return append(list, block.Block{Name: "limits", Gap: 3, Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: remarkWords(
		"Estimates for one season, certified by nobody. The locating service, a licensed electrician, the owner of the ground and the local authority have their say first.")}}}})
}

// remarkWords are words that a leader reads, not a crew.
func remarkWords(text string) block.Words {
	return block.Words{Text: text, Lettering: paper.Floor, Figures: paper.Strong.Sized(11)}
}

// findingsAt are the findings of a level, those of one code together under its title; one that somebody took on stands with their name.
func (b *binder) findingsAt(level finding.Level) []block.Block {
	var codes []string
	of := map[string][]finding.Finding{}
	for _, f := range b.plan.Findings {
		if f.Level != level {
			continue
		}
		key := f.Code + f.AcceptedBy
		if !slices.Contains(codes, key) {
			codes = append(codes, key)
		}
		of[key] = append(of[key], f)
	}
	var list []block.Block
	for _, key := range codes {
		same := of[key]
		head := say.Capital(level.String()) + ": " + titleOf(same[0].Code)
		if same[0].AcceptedBy != "" {
			head = fmt.Sprintf("Taken on by %s: %s", same[0].AcceptedBy, titleOf(same[0].Code))
		}
		found := block.Block{Name: head, Gap: 1.2, Body: remarkWords(block.Figure(head+".") + " " + findingWords(same))}
		if level == finding.Note && same[0].AcceptedBy == "" { // good to know: where room is short its title and its cure are enough
			found.Rank, found.Short = block.Should, remarkWords(block.Figure(head+".")+" "+cureWords(same[0].Cure))
		}
		list = append(list, found)
	}
	return list
}

// findingWords are the texts of findings of one code with their cures, a cure that they share once.
func findingWords(same []finding.Finding) string {
	var words []string
	cures := map[string]bool{}
	for _, f := range same {
		words = append(words, f.Text)
		if f.AcceptedAs != "" {
			words = append(words, f.AcceptedAs+". Signed ____________")
		}
	}
	for _, f := range same {
		if cure := cureWords(f.Cure); cure != "" && !cures[cure] {
			cures[cure] = true
			words = append(words, cure)
		}
	}
	return strings.Join(words, " ")
}
