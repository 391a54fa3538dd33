package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// boardLeaf hangs where everyone sees it. Its front shows what is being made and says what the organiser has to decide first; its back holds what can
// hurt someone, to be read aloud.
func (b *binder) boardLeaf() []folio {
	return []folio{{
		front: side{title: "Board. Back: read aloud daily", blocks: b.boardFront()},
		back:  side{title: "Read aloud", blocks: b.readAloud()},
	}}
}

// boardFront is the board's front with as many findings in full as it holds, in their order there; what is for planners alone stands by its title.
func (b *binder) boardFront() (front []block.Block) {
	_, body := b.newSide(false)
	all := remarksOf(b.plan.Findings)
	for i, t := range all {
		if !t.settlesSag() {
			continue
		}
		if r, ok := b.raising(); ok {
			all[i].step = r.step[crew.HangRows]
		}
	}
	slices.SortStableFunc(all, func(a, o remark) int { return cmp.Compare(a.place(), o.place()) })
	most := len(all)
	for most > 0 && all[most-1].place() == forPlanners {
		most--
	}
	top, foot := []block.Block{b.boardTitle(), b.boardPicture(), {Name: "calendar", Gap: 3.5, Body: calendar(crew.Calendar(b.spec, drives(b.plan)))}}, b.boardFoot()
	for full := most; full >= -1; full-- {
		front = append(append(top[:len(top):len(top)], boardFindings(all, full)...), foot...)
		if block.Height(front, body.W) <= body.H {
			break
		}
	}
	return front
}

// settlesSag reports whether another sag of the rows is to be settled, which is then written in where they are hung.
func (t remark) settlesSag() bool { return t.code == "rows-bow-arch" && t.level == finding.LookAt }

// Where a finding stands on the board.
const (
	datesFirst = iota
	toBuy      // what is bought hangs on it
	toSettle   // before building
	toKnow
	forPlanners // how much string or pipe is left over, how tapes are held: the crew leaf says what to do
)

func (t remark) place() int {
	row, _ := finding.Of(t.code)
	switch {
	case t.code == "days-past":
		return datesFirst
	case t.level != finding.Note && t.code != "found-off-plan" && (slices.Contains([]string{"stock", "raise", "lights", "power"}, row.Leaf) || slices.Contains(boughtFor, t.code)):
		return toBuy
	case t.level != finding.Note:
		return toSettle
	case slices.Contains([]string{"lights", "stock", "stakes", "raise"}, row.Leaf):
		return forPlanners
	}
	return toKnow
}

// buyingWaits reports whether anything has to be settled before what is bought is bought.
func buyingWaits(all []remark) bool {
	return slices.ContainsFunc(all, func(t remark) bool { return t.place() <= toBuy })
}

// boughtFor are findings of other leaves that thicker, longer or more of what is bought would cure, and a wire that the tunnel is moved away from: then all is printed again.
var boughtFor = []string{"lies-flat-early", "closes-early", "folds-under-ice", "bar-too-thick", "sleeve-longer-than-stick", "stake-bends", "stake-too-shallow", nearWire}

// boardFindings are findings, the first so many in full. Of the others notes are named in a line, for nobody has to settle them; at -1 what to look at is too.
func boardFindings(all []remark, full int) []block.Block {
	building := block.Block{Name: "before building", Gap: 3, Keep: true, Body: partHead{"Before building", "Build: yes / no. " + organiserSigns}}
	if len(all) == 0 {
		return []block.Block{building, block.Paragraph("Nothing to fix and nothing to decide.")}
	}
	var list, after []block.Block
	var titles []string
	for i, t := range all {
		switch {
		case i >= full && (t.level == finding.Note || full < 0 && t.level == finding.LookAt):
			titles = append(titles, t.title)
		case t.place() > toBuy:
			after = append(after, t.block(i < full))
		default:
			list = append(list, t.block(i < full))
		}
	}
	if buyingWaits(all) {
		list = append([]block.Block{{Name: "before buying", Gap: 3, Keep: true, Body: partHead{"Before buying", "Buy: yes / no. " + organiserSigns}}}, list...)
	}
	if len(titles) > 0 { // here, for some hang on what is bought
		head := "Noted, nothing to settle:"
		if full < 0 {
			head = "More findings, ask the planner:"
		}
		list = append(list, block.Block{Name: "titles", Gap: 1.2, Body: remarkWords(block.Figure(head) + " “" + strings.Join(titles, "”, “") + "”.")})
	}
	return append(append(list, building), after...)
}

// organiserSigns is where the organiser signs what is settled.
const organiserSigns = "Organiser ____________ on ________"

// boardFoot is what found no room on paper, and what the packet is not good for.
func (b *binder) boardFoot() (list []block.Block) {
	var missing []string
	for _, n := range b.notes {
		if n.What != "" {
			n.Block += ": " + n.What
		}
		missing = append(missing, n.Block)
	}
	if len(missing) > 0 {
		list = append(list, block.Block{Name: "paper notes", Gap: 1.2, Body: remarkWords(block.Figure("Paper notes.") + " No room on their leaves, write in: " + strings.Join(missing, "; ") + ".")})
	}
	text := "Estimates for one season, certified by nobody. Each agrees before buying, date: licensed electrician ______, owner of the ground ______, local authority ______."
	if open := b.unsaid(); len(open) > 0 {
		list = append(list, block.Block{Name: "whom to ring", Gap: 1, Body: open})
	}
	return append(list, block.Block{Name: "limits", Gap: 3, Body: block.Framed{Pen: paper.Thick, Blocks: []block.Block{{Body: remarkWords(text)}}}})
}

// unsaid are the numbers to ring that the foot of every side lacks.
func (b *binder) unsaid() (open block.Blanks) {
	if emergency(b.spec, "") == "" {
		open = append(open, block.Blank{Word: "Emergency number"})
	}
	if b.spec.Crew.Ask.Phone == "" {
		open = append(open, block.Blank{Word: "Organiser’s phone"})
	}
	return open
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
		if finding.Has(b.plan.Findings, "no-arch") || !draw.Perspective(page, box, b.plan, true) {
			page.Paragraph(box, "No arch of these figures stands, so there is nothing to show yet.", paper.Body)
		}
		return nil
	}}
	return block.Block{Name: "picture", Gap: 2, Facts: facts, Body: block.Columns{Gap: boardGap, Cols: []block.Column{
		{Share: 1, Blocks: []block.Block{{Name: "picture", Body: scene}}}, {Width: boardFigures, Blocks: []block.Block{{Name: "key figures", Body: figures}}}}}}
}

// boardFigures are what a reader wants to know of the tunnel at a glance.
func (b *binder) boardFigures() keyFigures {
	p, u, t := b.plan, b.spec.Units, b.spec.Tunnel
	apart := "Stake to stake"
	if !drives(p) {
		apart = "Foot to foot"
	}
	list := keyFigures{{"Arches", fmt.Sprint(t.Arches)}}
	if t.Arches > 1 {
		list = append(list, figure{"Arch to arch", u.Tape(t.Spacing)}, figure{"Length", u.Tape(t.Length)})
	}
	if len(p.Kinds) > 0 {
		list = append(list,
			figure{apart, b.across(func(k *arch.Kind) measure.Length { return k.Span })},
			figure{"Headroom", b.across(func(k *arch.Kind) measure.Length { return k.Clear })},
			figure{"Width " + u.Tape(p.Kinds[0].HeadHeight) + " up", b.across(func(k *arch.Kind) measure.Length { return k.HeadWidth })},
			figure{b.closedAs(), b.insideWords()}, figure{"Visitors inside, at most", fmt.Sprint(max(p.MostInside()-1, 1))}) // the watcher who walks is one of them
	}
	if n := len(p.Strings); n > 0 {
		list = append(list, figure{"Strings of lights", fmt.Sprint(n)}, figure{"Power, all lit", measure.Watts(p.Power.Watts)})
	}
	if c := p.Cost; c.Bought.Money > 0 {
		list = append(list, figure{"Buy now," + currencyWords(b.spec), roundly(c.Bought)})
	}
	return list
}

// keyFigures are figures one under the other, each over a rule.
type keyFigures []figure

// figure is a key figure with its label.
type figure struct{ label, value string }

// Height implements block.Body.
func (k keyFigures) Height(paper.Length) paper.Length { return 6.2 * paper.Length(len(k)) }

// Most is the height that they can use.
func (k keyFigures) Most(paper.Length) paper.Length { return 8.2 * paper.Length(len(k)) }

// Draw implements block.Body.
func (k keyFigures) Draw(page *paper.Page, box paper.Rect) []string {
	row := min(box.H, k.Most(0)) / paper.Length(len(k))
	for i, f := range k {
		y := box.Y + row*paper.Length(i)
		base := y + (row+paper.Floor.Ascent())/2
		value, room := paper.Cell, box.W-3-paper.Floor.Width(f.label+":")
		for value.Width(f.value) > room && value.Size > 11 {
			value = value.Sized(value.Size - 1)
		}
		page.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, f.label+":", paper.Floor)
		page.Text(paper.Point{X: box.Right(), Y: base}, paper.AtRight, clip(f.value, value, room), value)
		page.Line(paper.Point{X: box.X, Y: y + row}, paper.Point{X: box.Right(), Y: y + row}, paper.Thin)
	}
	return nil
}

// bodyWidth is the width of a side's body.
func (b *binder) bodyWidth() paper.Length { return b.size.W - punchMargin - edgeMargin }

// remarkWords are words that a leader reads, not a crew.
func remarkWords(text string) block.Words {
	return block.Words{Text: text, Lettering: paper.Floor, Figures: paper.Strong.Sized(11)}
}
