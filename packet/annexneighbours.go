package packet

import (
	"fmt"
	"time"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
)

// neighboursAnnex is a friendly letter of one page to whoever lives around: what it will look like, when it is lit, whom to ring, how to help.
func (b *binder) neighboursAnnex() []folio {
	d := b.spec.Dates
	blocks := []block.Block{
		{Name: "title", Body: block.Words{Text: b.spec.Title, Lettering: paper.Heading.Sized(22)}},
		{Name: "picture", Gap: 3, Body: block.Picture{Least: 70, Best: 140, Paint: func(page *paper.Page, box paper.Rect) []string {
			draw.Perspective(page, box, b.plan, false)
			return nil
		}}},
		block.Paragraph("Dear neighbours,"),
		{Name: "what", Gap: 2, Body: block.Words{Text: b.letterWhat()}},
	}
	if text := letterWhen(d.Open, d.Close, b.spec.Power.Evenings != nil, b.hoursLit()); text != "" {
		blocks = append(blocks, block.Block{Name: "when", Gap: 2, Body: block.Words{Text: text}})
	}
	if w := b.plan.Power.Watts; w > 0 {
		blocks = append(blocks, block.Block{Name: "power", Gap: 2, Body: block.Words{Text: fmt.Sprintf(
			"All the lights together use %s: about as much as %s. They go out by themselves when we close.", measure.Watts(w), likened(w))}})
	}
	blocks = append(blocks,
		block.Block{Name: "help", Gap: 2, Body: block.Words{Text: b.letterHelp()}},
		block.Block{Name: "ring", Gap: 2, Body: block.Blanks{{Word: "If anything bothers you, or looks wrong, ring"}, {Word: "phone"}}},
		block.Block{Name: "signed", Gap: 3, Body: block.Blanks{{Word: "With kind regards,"}, {Word: "date"}}},
	)
	return []folio{{front: side{title: "To our neighbours", blocks: blocks}}}
}

// letterWhat says what will stand where.
func (b *binder) letterWhat() string {
	where := ""
	if a := b.spec.Site.Address; a != "" {
		where = " at " + a
	}
	if len(b.plan.Arches) < 2 {
		return "This season a lit arch will stand" + where + ", for everyone to walk under. The picture shows it."
	}
	return fmt.Sprintf("This season a tunnel of lights, %s long, will stand%s, for everyone to walk through. The picture shows it from the entrance.", b.spec.Units.Room(b.spec.Tunnel.Length), where)
}

// hoursLit is how many hours it is lit an evening; 0 where the spec does not say.
func (b *binder) hoursLit() float64 {
	if e := b.spec.Power.Evenings; e != nil {
		return e.Hours
	}
	return 0
}

// letterWhen says on which evenings it is lit.
func letterWhen(open, close time.Time, known bool, hours float64) string {
	text := ""
	switch {
	case !open.IsZero() && !close.IsZero():
		text = fmt.Sprintf("It is lit from %s to %s", open.Format("Monday 2 January"), close.Format("Monday 2 January"))
	case !open.IsZero():
		text = "It is lit from " + open.Format("Monday 2 January")
	default:
		return ""
	}
	if known && hours > 0 {
		text += fmt.Sprintf(", about %g hours each evening", hours)
	}
	return text + ". On windy, icy or stormy evenings it stays closed."
}

// letterHelp says when hands are welcome.
func (b *binder) letterHelp() string {
	if d := b.spec.Dates.Build; !d.IsZero() {
		return fmt.Sprintf("We build it on %s and would be glad of your help, with tools or with soup.", d.Format("Monday 2 January"))
	}
	return "We would be glad of your help on the day we build it, with tools or with soup."
}

// likened says a power in things of the house. Typical powers, from memory: an LED lamp 8 W, an electric kettle 2000 W.
func likened(w measure.Power) string {
	const lamp, kettle = 8, 2000
	if float64(w) < kettle/2 {
		return fmt.Sprintf("%.0f ordinary LED lamps", max(1, float64(w)/lamp))
	}
	return fmt.Sprintf("%.1f electric kettles", float64(w)/kettle)
}
