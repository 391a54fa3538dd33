package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// Room on the overview, which is one page whatever the tunnel.
const (
	leastPicture       paper.Length = 74
	mostPicture        paper.Length = 96
	pictureBesideFixes paper.Length = 58 // where there is something to fix, which needs the room more
	sectionGap         paper.Length = 3.5
	columnGap          paper.Length = 6
	printingGap        paper.Length = 2
)

// overview is the packet's first page: the finished tunnel as a picture in depth, its key figures, the season's dates, the other sheets with
// who gets them, what the solver has found, and what the packet is not good for.
func (b *binder) overview() []leaf {
	page, room := b.newPage()
	room = b.overviewTitle(page, room)

	lists := paper.Rect{W: (room.W - columnGap) / 2}
	limits := b.limitsBox()
	limitsHeight := limits.height(lists.W)
	saidHeight := setHeight(b.said(), lists.W)
	strip := b.datesHeight(room.W)

	free := room.H - strip - 2*sectionGap
	wanted := max(b.contentsHeight(lists.W), headed(saidHeight)+sectionGap+limitsHeight)
	least := leastPicture
	if len(finding.MustFixes(b.plan.Findings)) > 0 {
		least = pictureBesideFixes
	}
	picture := min(mostPicture, max(least, free-wanted), free-b.contentsHeight(lists.W)) // the list of sheets is never cut
	lists.H = free - picture

	top, rest := room.SplitTop(picture)
	_, rest = rest.SplitTop(sectionGap)
	dates, rest := rest.SplitTop(strip)
	_, rest = rest.SplitTop(sectionGap)
	lists.X, lists.Y = rest.X, rest.Y

	scene, figures := top.SplitLeft(min(top.W*0.57, picture*1.12))
	_, figures = figures.SplitLeft(columnGap)
	if b.found("no-arch") || !draw.Perspective(page, scene, b.plan) {
		page.Paragraph(scene, "No arch of these figures stands, so there is nothing to show yet.", paper.Body)
	}
	b.keyFigures(page, figures)
	b.drawDates(page, dates)
	b.drawContents(page, lists)
	right := lists
	right.X += lists.W + columnGap
	above, foot := right.SplitTop(right.H - limitsHeight)
	above.H -= sectionGap
	b.drawSaid(page, above)
	limits.draw(page, foot)
	return []leaf{{page, notToScale}}
}

// found reports whether the plan has a finding of that code.
func (b *binder) found(code string) bool {
	return slices.ContainsFunc(b.plan.Findings, func(f finding.Finding) bool { return f.Code == code })
}

// overviewTitle sets the tunnel's title with its place, and what the page is for, and returns the room below.
func (b *binder) overviewTitle(page *paper.Page, room paper.Rect) paper.Rect {
	l := paper.SheetName
	if l.Width(b.spec.Title) > room.W {
		l = paper.Heading
	}
	lines := l.Wrap(b.spec.Title, room.W)
	if len(lines) > 2 {
		lines = []string{lines[0], clip(strings.Join(lines[1:], " "), l, room.W)}
	}
	y := page.Paragraph(room, strings.Join(lines, "\n"), l)
	about := fmt.Sprintf("Seen from the entrance, at an eye %s above the ground", b.spec.Units.Room(draw.EyeHeight))
	if place := b.spec.Site.Address; place != "" {
		about = place + ". " + about
	}
	page.Text(paper.Point{X: room.X, Y: y + paper.Floor.Ascent()}, paper.AtLeft, clip(about+".", paper.Floor, room.W), paper.Floor)
	_, rest := room.SplitTop(y + paper.Floor.Leading() + 2 - room.Y)
	return rest
}

// headed is the height of what stands under a heading.
func headed(h paper.Length) paper.Length { return paper.Heading.Leading() + 1 + h }

// head sets a heading at the top of a box and returns the box below it.
func head(page *paper.Page, box paper.Rect, s string) paper.Rect {
	page.Text(paper.Point{X: box.X, Y: box.Y + paper.Heading.Ascent()}, paper.AtLeft, s, paper.Heading)
	_, rest := box.SplitTop(headed(0))
	return rest
}

// contentsHeight is the height of the list of sheets with how to print them.
func (b *binder) contentsHeight(width paper.Length) paper.Length {
	lines := len(b.contents) + len(paper.Floor.Wrap(b.printing(), width))
	return headed(paper.Length(lines)*paper.Floor.Leading() + printingGap)
}

// drawContents lists the sheets: name, pages, who gets it.
func (b *binder) drawContents(page *paper.Page, box paper.Rect) {
	box = head(page, box, "The sheets, and who gets which")
	name, pages := paper.Length(0), paper.Length(0)
	for _, e := range b.contents {
		name, pages = max(name, paper.Strong.Sized(11).Width(e.name)), max(pages, paper.Floor.Width(e.pages()))
	}
	y := box.Y + paper.Floor.Ascent()
	for _, e := range b.contents {
		page.Text(paper.Point{X: box.X, Y: y}, paper.AtLeft, e.name, paper.Strong.Sized(11))
		page.Text(paper.Point{X: box.X + name + 3 + pages, Y: y}, paper.AtRight, e.pages(), paper.Floor)
		holder := box.X + name + 3 + pages + 4
		page.Text(paper.Point{X: holder, Y: y}, paper.AtLeft, clip(e.holder, paper.Floor, box.Right()-holder), paper.Floor)
		y += paper.Floor.Leading()
	}
	box.Y = y - paper.Floor.Ascent() + printingGap
	page.Paragraph(box, b.printing(), paper.Floor)
}

// pages is an entry's page or range of pages.
func (e entry) pages() string {
	if e.first >= e.last {
		return fmt.Sprint(e.first)
	}
	return fmt.Sprintf("%d–%d", e.first, e.last)
}

// framed is a heading and a text in a thick box.
type framed struct{ head, text string }

const framePad paper.Length = 2.5

func (f framed) height(width paper.Length) paper.Length {
	lines, head := paper.Floor.Wrap(f.text, width-2*framePad), paper.Strong.Wrap(f.head, width-2*framePad)
	return 2*framePad + paper.Length(len(head))*paper.Strong.Leading() + paper.Length(len(lines))*paper.Floor.Leading()
}

func (f framed) draw(page *paper.Page, box paper.Rect) {
	page.Stroke(paper.Box(box), paper.Thick)
	in := box.Inset(framePad)
	in.Y = page.Paragraph(in, f.head, paper.Strong)
	page.Paragraph(in, f.text, paper.Floor)
}

// limitsBox says what the packet is not good for, and who must check what.
func (b *binder) limitsBox() framed {
	return framed{"What this is, and is not",
		"Estimates for one season's lights. No engineer's design: it judges no code, permit, crowd, storm, snow or ice. The locating service, a licensed electrician and " +
			"the owner of the ground each have their say before it opens."}
}

// printing says how to print the packet so that it can be measured and read outdoors.
func (b *binder) printing() string {
	weight := measure.By(b.spec.Units, "32 lb", "120 g/m²")
	return "Print at 100 %, one side, matte paper of " + weight + ". In sleeves; read by a dim white lamp."
}
