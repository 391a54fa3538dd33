package draw

import (
	"fmt"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// pin returns where an arch meets its side's baseline: under its stake, unless the arch is wider or narrower than most.
func (d *stakeSheet) pin(side spec.Side, arch int) paper.Point {
	out := d.ground.Baseline
	if side == spec.Left {
		out = -out
	}
	x, y, _ := d.ground.Site(arch, out, 0)
	return d.m.at(spec.Point{X: x, Y: y})
}

// rows draws the baselines, the left one thick, the arches across and the guys.
func (d *stakeSheet) rows() {
	for _, s := range d.stakes {
		if s.Guy {
			if leg, ok := d.ground.Stake(ground.Leg(s.Side, s.Arch)); ok {
				d.b.LineRound(d.at(leg), d.at(s), paper.Hidden)
			}
		}
	}
	for arch := d.First; arch <= d.Last; arch++ {
		if !d.matches(arch) {
			d.b.LineRound(d.at(d.ground.Stakes[2*arch-2]), d.at(d.ground.Stakes[2*arch-1]), paper.Thin)
		}
		if arch > d.First {
			d.b.LineRound(d.pin(spec.Left, arch-1), d.pin(spec.Left, arch), paper.Thick)
			d.b.LineRound(d.pin(spec.Right, arch-1), d.pin(spec.Right, arch), paper.Thin)
		}
	}
}

// runningDistances writes the distances along the left row of a straight tunnel, all from the one zero of its tape length. On a bend no tape can be laid
// along the row: there the ties in the table rule.
func (d *stakeSheet) runningDistances() {
	if !d.ground.Straight || len(d.ground.Stations) < 2 {
		return
	}
	var row []ground.Stake
	for _, s := range d.stakes {
		if s.Side == spec.Left {
			row = append(row, s)
		}
	}
	sortRunning(row)
	first := d.ground.Stakes[2*d.Zero-2]
	zero := d.pin(spec.Left, d.Zero)
	reach := paper.Length(0) // of the names, left of the line through L1
	r := place.Running{Origin: zero, Along: paper.Polar(1, d.m.angle(d.ground.Stations[0].Heading)), Lettering: paper.Dimension, OffPage: d.Zero < d.First}
	for _, s := range row {
		out := d.at(s).Sub(zero)
		reach = max(reach, d.clear(s)+1.2+d.names.Width(s.String())-out.X)
		r.Stops = append(r.Stops, place.Stop{At: d.at(s), Text: runningText(d.units(), s.Running-first.Running)})
	}
	r.Offset = reach + 3.5
	d.lacks("a running distance", d.b.Running(r))
	if r.OffPage {
		at := d.at(row[0])
		at.X = zero.X - r.Offset
		d.b.Label(place.Label{At: at.Add(paper.Point{Y: 9}), Text: "0 is at " + first.String(), Lettering: paper.Floor, Toward: paper.Point{X: -1}, Clear: 1.5, Leader: place.NoLeader})
	}
}

// runningText says how far along the tape a stake stands; before the zero it is measured back.
func runningText(u measure.System, running measure.Length) string {
	switch {
	case running < -measure.Millimetre/2:
		return u.Tape(-running) + " back"
	case running < measure.Millimetre/2:
		return "0"
	}
	return u.Tape(running)
}

func sortRunning(row []ground.Stake) {
	for i := 1; i < len(row); i++ {
		for k := i; k > 0 && row[k].Running < row[k-1].Running; k-- {
			row[k], row[k-1] = row[k-1], row[k]
		}
	}
}

// spans dimensions the width between the stakes at the ends, and of every arch whose width is not the usual one.
func (d *stakeSheet) spans() {
	for arch := d.First; arch <= d.Last; arch++ {
		l, r := d.ground.Stakes[2*arch-2], d.ground.Stakes[2*arch-1]
		text := d.units().Tape(ground.Between(l, r))
		first, last := arch == 1, arch == len(d.ground.Stations)
		switch {
		case first || last && len(d.ground.Stations) > 1:
			offset := paper.Length(-6.5)
			if !first {
				offset = 6.5
			}
			if !d.widthFits(arch) {
				continue
			}
			d.lacks("width at arch "+fmt.Sprint(arch), d.b.Dimension(place.Dimension{From: d.at(l), To: d.at(r), Offset: offset, Text: text, Lettering: paper.Dimension}))
		case text != d.units().Tape(2*d.ground.Baseline):
			d.b.Along(d.at(l), d.at(r), text, paper.DimSmall)
		}
	}
}

// ends draws the walk arrow with ENTRANCE, EXIT, and between pages the lines they match at.
func (d *stakeSheet) ends() {
	if d.entrance() {
		at := d.m.at(d.ground.Stations[0].At)
		foot := at.Add(paper.Point{Y: d.entranceRoom()})
		d.b.WalkArrow(foot.Sub(paper.Point{Y: 7}), foot.Sub(paper.Point{Y: 19}))
		d.entranceWord(foot.Sub(paper.Point{Y: 1}))
	} else {
		d.matchLine(d.First, -1, fmt.Sprintf("Match line: from plan %d", d.Page-1))
	}
	if d.exit() {
		last := d.ground.Stations[len(d.ground.Stations)-1]
		at := d.m.at(last.At).Add(paper.Polar(exitRoom-3, d.m.angle(last.Heading)))
		d.b.Label(place.Label{At: at, Text: "EXIT", Lettering: paper.Heading, Toward: paper.Polar(1, d.m.angle(last.Heading)), Leader: place.NoLeader})
	} else {
		d.matchLine(d.Last, 1, fmt.Sprintf("Match line: on to plan %d", d.Page+1))
	}
}

// entranceWord sets the word under the walk arrow, or beside it where a mark or an outlet stands there.
func (d *stakeSheet) entranceWord(base paper.Point) {
	const word = "ENTRANCE"
	aside := paper.Heading.Width(word)/2 + 7
	for _, by := range []paper.Point{{}, {Y: 5}, {X: aside, Y: -9}, {X: -aside, Y: -9}, {X: aside, Y: 5}, {X: -aside, Y: 5}} {
		if at := base.Add(by); d.b.FreeText(at, 0, word, paper.Heading) {
			d.b.Text(at, paper.AtMiddle, word, paper.Heading)
			return
		}
	}
	d.lacks(word, false)
}

// matches reports whether an arch is on the next page or the one before too: the pages match there.
func (d *stakeSheet) matches(arch int) bool {
	return arch == d.First && !d.entrance() || arch == d.Last && !d.exit()
}

// matchPen draws match lines.
var matchPen = paper.Pen{Width: paper.Thick.Width, Dash: paper.Centre.Dash}

// matchLine draws the line along which two pages match: across the walk through an arch's stakes, which are on both, and past the right one. Its word stands on the side away from
// this page's arches, or at an end of it.
func (d *stakeSheet) matchLine(arch int, way float64, word string) {
	l, r := d.at(d.ground.Stakes[2*arch-2]), d.at(d.ground.Stakes[2*arch-1])
	u := r.Sub(l).Unit()
	out := u.Left().Times(way)
	const past, aside = 26, 7
	p, q := l, r.Add(u.Times(past))
	if _, end, ok := cropSegment(p, q, d.room); ok {
		q = end
	}
	d.b.LineRound(p, q, matchPen)
	label := place.Label{At: l.Add(r).Times(0.5).Add(out.Times(aside)), Text: word, Lettering: paper.Strong, Toward: out, Leader: place.NoLeader}
	placed := d.b.Label(label)
	for _, end := range []paper.Point{q, l.Sub(u.Times(past)), r.Add(u.Times(past / 2))} { // a line at a slant has no room beside it
		if !placed {
			label.At, label.Toward = end, end.Sub(l.Add(r).Times(0.5)).Unit()
			placed = d.b.Label(label)
		}
	}
	if !placed {
		label.At, label.Toward, label.Leader, label.Reach = q, out, place.Bare, 40
		placed = d.b.Label(label)
	}
	d.lacks(word, placed)
}

// diagonals draws the diagonals.
func (d *stakeSheet) diagonals() {
	for _, g := range d.drawnDiagonals() {
		from, _ := d.ground.Stake(g.From)
		to, _ := d.ground.Stake(g.To)
		d.b.LineRound(d.at(from), d.at(to), paper.Hidden)
	}
}

// drawnDiagonals returns the pairs of diagonals that are drawn: of the first bay and, where it is on one page, of the whole.
func (p StakePlan) drawnDiagonals() []ground.Diagonal {
	list := p.ground.Diagonals
	var drawn []ground.Diagonal
	if p.entrance() && len(list) > 4 {
		drawn = append(drawn, list[:2]...)
	}
	if p.Of == 1 && len(list) >= 2 {
		drawn = append(drawn, list[len(list)-2:]...)
	}
	return drawn
}

// tie returns the tapes of a stake.
func (p StakePlan) tie(stake ground.StakeID) (ground.Tie, bool) {
	return p.ground.TieOf(stake, p.spec.Units)
}

// keyStakes are those that the rest of the row is set out from: where the tape's zero lies, and the ends of the row, or of as much of it as marks reach.
func (p StakePlan) keyStakes() []ground.Stake {
	var arches []int
	if p.Zero == p.First {
		arches = append(arches, p.Zero)
	}
	first, last, ok := p.ground.Anchors(p.spec.Units)
	if !ok {
		first, last = 1, len(p.ground.Stations)
	}
	for _, arch := range []int{first, last} {
		if here := arch > p.First && arch <= p.Last || arch == 1 && p.entrance(); here && !slices.Contains(arches, arch) {
			arches = append(arches, arch)
		}
	}
	var list []ground.Stake
	for _, arch := range arches {
		list = append(list, p.ground.Stakes[2*arch-2])
	}
	return list
}

// ties draws the tapes that fix the key stakes.
func (d *stakeSheet) ties() {
	marks := d.markPlaces()
	for _, s := range d.keyStakes() {
		t, ok := d.tie(s.StakeID)
		if !ok {
			continue
		}
		for _, name := range []string{t.MarkA, t.MarkB} {
			if p, q, ok := cropSegment(marks[name], d.at(s), d.room); ok {
				d.b.LineRound(p, q, paper.Tied)
			}
		}
	}
}
