package draw

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/ground"
)

// lists are the short lists over the picture: how the key stakes are found, and what checks them.
type lists []list

// list is a head and lines, each a word with its number.
type list struct {
	head string
	rows [][2]string
}

// Room in and between lists.
const (
	listPad  paper.Length = 2.5
	listGap  paper.Length = 3
	listLine paper.Length = 6
)

// lists returns what this page's picture needs, marks named as long as there is room and by their letters alone where there is not.
func (p StakePlan) lists() lists {
	var all lists
	for _, most := range []int{30, 18, 12, 8, 0} {
		all = nil
		for _, s := range p.keyStakes() {
			if t, ok := p.tie(s.StakeID); ok {
				all = append(all, p.tieList(t, most))
			}
		}
		if d := p.checkList(); len(d.rows) > 0 {
			all = append(all, d)
		}
		if all.width() <= p.room {
			break
		}
	}
	return all
}

// tieList says how a key stake is found: two tapes from two marks, a third to check.
func (p StakePlan) tieList(t ground.Tie, most int) list {
	l := list{head: "Find " + t.Stake.String()}
	if t.Stake == p.ground.Stakes[2*p.Zero-2].StakeID {
		l.head += ", the zero"
	}
	u := p.spec.Units
	l.rows = [][2]string{{"from " + p.markName(t.MarkA, most), u.Tape(t.A)}, {"from " + p.markName(t.MarkB, most), u.Tape(t.B)}}
	if t.MarkC != "" {
		l.rows = append(l.rows, [2]string{"check " + p.markName(t.MarkC, most), u.Tape(t.C)})
	}
	return l
}

// checkList gives the lengths of the diagonals that are drawn, and widths whose numbers have no room in the picture.
func (p StakePlan) checkList() list {
	l := list{head: "Check"}
	var widths [2][]string // names and numbers
	for _, arch := range []int{1, len(p.ground.Stations)} {
		a, b := p.ground.Stakes[2*arch-2], p.ground.Stakes[2*arch-1]
		if on := arch == 1 && p.entrance() || arch > 1 && p.exit(); on && !p.widthFits(arch) {
			widths[0], widths[1] = append(widths[0], a.String()+"–"+b.String()), append(widths[1], p.spec.Units.Tape(ground.Between(a, b)))
		}
	}
	l.pair(widths[0], widths[1])
	drawn := p.drawnDiagonals()
	for i := 0; i+1 < len(drawn); i += 2 {
		l.pair([]string{betweenStakes(drawn[i]), betweenStakes(drawn[i+1])},
			[]string{p.spec.Units.Tape(drawn[i].Distance), p.spec.Units.Tape(drawn[i+1].Distance)})
	}
	return l
}

// betweenStakes names a diagonal: L1–R2.
func betweenStakes(d ground.Diagonal) string { return fmt.Sprintf("%v–%v", d.From, d.To) }

// pair adds what is measured with its numbers, on one line where they are alike.
func (l *list) pair(names, numbers []string) {
	if len(numbers) == 2 && numbers[0] == numbers[1] {
		l.rows = append(l.rows, [2]string{strings.Join(names, ", "), numbers[0]})
		return
	}
	for i := range names {
		l.rows = append(l.rows, [2]string{names[i], numbers[i]})
	}
}

// markName is a mark's letter and its name, of most letters; with none of them the letter alone.
func (p StakePlan) markName(mark string, most int) string {
	name := []rune(mark)
	switch {
	case most == 0:
		return p.Letter(mark)
	case len(name) > most:
		name = append(name[:most-1:most-1], '…')
	}
	return p.Letter(mark) + " " + string(name)
}

func (l list) width() paper.Length {
	w := paper.Heading.Width(l.head)
	for _, r := range l.rows {
		w = max(w, paper.Body.Width(r[0])+listGap+paper.Cell.Width(r[1]))
	}
	return w + 2*listPad
}

func (l list) height() paper.Length { return listLine*paper.Length(len(l.rows)+1) + listPad }

func (all lists) width() paper.Length {
	w := -listGap
	for _, l := range all {
		w += l.width() + listGap
	}
	return w
}

// height returns the room the lists take off the top of the picture.
func (all lists) height() paper.Length {
	h := paper.Length(0)
	for _, l := range all {
		h = max(h, l.height()+listGap)
	}
	return h
}

// draw sets the lists side by side.
func (all lists) draw(page *paper.Page, strip paper.Rect) {
	x := strip.X
	for _, l := range all {
		r := paper.Rect{X: x, Y: strip.Y, W: l.width(), H: strip.H - listGap}
		page.Stroke(paper.Box(r), paper.Thin)
		y := r.Y + 5.8
		page.Text(paper.Point{X: r.X + listPad, Y: y}, paper.AtLeft, l.head, paper.Heading)
		for _, row := range l.rows {
			y += listLine
			page.Text(paper.Point{X: r.X + listPad, Y: y}, paper.AtLeft, row[0], paper.Body)
			page.Text(paper.Point{X: r.Right() - listPad, Y: y}, paper.AtRight, row[1], paper.Cell)
		}
		x = r.Right() + listGap
	}
}
