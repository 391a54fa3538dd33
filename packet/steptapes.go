package packet

import (
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
)

// Columns of a step's tapes, from the left of its words: a tick box, the stake's name, the two tapes that meet, on which side, the check.
const (
	tapeName paper.Length = 18
	tapeLies paper.Length = 15
)

// tapeStrips sets the stakes that a step finds by tapes, one a row. Marks go by the letters of the stake plan, told above the rows.
func (s stepSheet) tapeStrips(step crew.Step, width paper.Length) []strip {
	if len(step.Tapes) == 0 {
		return nil
	}
	u, letters := s.b.spec.Units, map[string]string{}
	used := map[string]bool{}
	for _, t := range step.Tapes {
		used[t.MarkA], used[t.MarkB], used[t.MarkC] = true, true, true
	}
	var marks []string
	for i, m := range s.b.plan.Ground.Marks {
		if letters[m.Name] = draw.MarkLetter(i); used[m.Name] {
			marks = append(marks, letters[m.Name]+" "+m.Name)
		}
	}
	each := (width - wordsLeft - readingTicks - tapeName - tapeLies) / 3
	row := func(page *paper.Page, box paper.Rect, base paper.Length, l paper.Lettering, cells ...string) {
		x := box.X + wordsLeft + readingTicks
		for i, wide := range []paper.Length{tapeName, each, each, tapeLies, each} {
			page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, cells[i], l)
			x += wide
		}
	}
	legend := paper.Floor.Wrap("Tapes are held at these marks: "+strings.Join(marks, ", ")+".", width-wordsLeft)
	high := paper.Length(len(legend)) * paper.Floor.Leading()
	head := strip{height: high + paper.Floor.Leading() + 1, draw: func(page *paper.Page, box paper.Rect) {
		page.Paragraph(paper.Rect{X: box.X + wordsLeft, Y: box.Y, W: width - wordsLeft}, strings.Join(legend, "\n"), paper.Floor)
		row(page, box, box.Y+high+paper.Floor.Ascent()+0.6, paper.Strong.Sized(11), "Stake", "1st tape", "2nd tape", "Lies", "Check tape")
	}}
	list := []strip{head}
	for _, t := range step.Tapes {
		cells := []string{t.Stake.String(), letters[t.MarkA] + " " + u.Tape(t.A), letters[t.MarkB] + " " + u.Tape(t.B), t.Lies, ""}
		if t.MarkC != "" {
			cells[4] = letters[t.MarkC] + " " + u.Tape(t.C)
		}
		list = append(list, strip{height: readingRow, head: &head, draw: func(page *paper.Page, box paper.Rect) {
			page.TickBox(paper.Point{X: box.X + wordsLeft, Y: box.Y + 0.6})
			row(page, box, box.Y+0.6+(paper.TickBoxSide+paper.CellSmall.Ascent())/2, paper.CellSmall, cells...)
		}})
	}
	list[len(list)-1].height += readingPad
	return list
}
