package draw

import (
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Radii of what stands on the plan, in millimetres on paper.
const (
	stakeRadius paper.Length = 1.2
	guyRadius   paper.Length = 1.9
	zeroRadius  paper.Length = 2.8
	markRadius  paper.Length = 2.6
)

// stakeSheet is a stake plan being drawn.
type stakeSheet struct {
	StakePlan
	b       *place.Board
	room    paper.Rect // of the picture, without its foot
	names   paper.Lettering
	later   []panel       // drawn last, over lines that run under them
	plugs   []spec.Outlet // the outlets in the picture
	missing []string      // what found no place
}

// Draw draws the picture in the room, which must be as large as the one it was laid out for, and returns the names and numbers that
// found no place. Lines that cannot move go first, then what is fixed to them, then what finds its own place.
func (p StakePlan) Draw(page *paper.Page, room paper.Rect) (missing []string) {
	foot := paper.Rect{X: room.X, Y: room.Bottom() - footRoom + 2, W: room.W, H: footRoom - 2}
	room.H -= footRoom
	strip, rest := room.SplitTop(p.lists().height())
	d := &stakeSheet{StakePlan: p.placed(rest), room: rest}
	p.lists().draw(page, strip)
	d.names = d.nameSize(page)
	d.b = place.NewBoard(page, room)

	d.dots(d.b)
	d.stakeNames(d.b, d.names)
	d.markTargets()
	d.outlets()
	d.rows()
	d.runningDistances()
	d.ends()
	d.spans()
	d.diagonals()
	d.ties()
	d.markNames()
	d.outletNames()
	d.siteLines()
	d.corners()
	d.siteNames()
	d.hatches()
	d.drawPanels()
	d.foot(foot)
	return d.missing
}

// lacks notes what found no place.
func (d *stakeSheet) lacks(what string, drawn bool) {
	if !drawn {
		d.missing = append(d.missing, what)
	}
}

func (d *stakeSheet) units() measure.System { return d.spec.Units }

// at returns where a stake stands on paper.
func (d *stakeSheet) at(s ground.Stake) paper.Point { return d.m.at(s.At()) }

// outward returns the direction on paper from the walk through a stake, away from the opening.
func (d *stakeSheet) outward(s ground.Stake) paper.Point {
	arch := min(max(s.Arch, 1), len(d.ground.Stations))
	l, r := d.ground.Stakes[2*arch-2], d.ground.Stakes[2*arch-1]
	out := d.at(r).Sub(d.at(l)).Unit()
	if s.Side == spec.Left {
		out = out.Times(-1)
	}
	return out
}

// dots draws the stakes: a round dot each, a diamond for guys, a ring about the zero.
func (d *stakeSheet) dots(b *place.Board) {
	for _, s := range d.stakes {
		at := d.at(s)
		if s.Guy {
			b.Fill(diamond(at), paper.Black)
			b.Mark(at, guyRadius)
			continue
		}
		b.Fill(paper.Circle(at, stakeRadius), paper.Black)
		b.Mark(at, stakeRadius)
		if d.isZero(s) {
			b.Stroke(paper.Circle(d.pin(spec.Left, d.Zero), zeroRadius), paper.Thick)
		}
	}
}

// diamond is the sign of a guy stake.
func diamond(at paper.Point) paper.Path {
	return paper.Polygon(at.Add(paper.Point{X: -guyRadius}), at.Add(paper.Point{Y: -guyRadius}), at.Add(paper.Point{X: guyRadius}), at.Add(paper.Point{Y: guyRadius}))
}

// nameSize returns the largest lettering in which the names of the legs' stakes stand outside the row, beside their stakes, save those that a guy
// stake is in the way of.
func (d *stakeSheet) nameSize(page *paper.Page) paper.Lettering {
	for _, size := range []paper.PointSize{18, 16, 14} {
		b := place.NewBoard(&paper.Page{Size: page.Size}, d.room)
		d.dots(b)
		crowded, guys := 0, 0
		for _, s := range d.stakes {
			switch {
			case s.Guy:
				guys++
			case !d.nameOutside(b, s, paper.StakeName.Sized(size)):
				crowded++
			}
		}
		if crowded <= guys {
			return paper.StakeName.Sized(size)
		}
	}
	return paper.StakeName.Sized(12)
}

// nameOutside sets a stake's name right beside it, away from the opening, if that is free.
func (d *stakeSheet) nameOutside(b *place.Board, s ground.Stake, l paper.Lettering) bool {
	out, w := d.outward(s), l.Width(s.String())
	up, down := l.Extent(s.String())
	slide := func(v paper.Length) paper.Length { return max(-1, min(1, v*math.Sqrt2)) }
	centre := d.at(s).Add(out.Times(float64(d.clear(s) + 1.2)))
	centre.X += slide(out.X) * w / 2
	centre.Y += slide(out.Y)*(up+down)/2 + (up-down)/2
	if !b.FreeText(centre, 0, s.String(), l) {
		return false
	}
	b.TurnedText(centre, 0, s.String(), l)
	return true
}

// isZero reports whether the tape's zero lies at the stake.
func (p StakePlan) isZero(s ground.Stake) bool {
	return !s.Guy && s.Side == spec.Left && s.Arch == p.Zero
}

// clear returns the radius of what is drawn at a stake.
func (d *stakeSheet) clear(s ground.Stake) paper.Length {
	switch {
	case s.Guy:
		return guyRadius
	case d.isZero(s):
		return zeroRadius + 0.4
	}
	return stakeRadius
}

// stakeNames sets every stake's name: outside the row where that is free, else as near as it is.
func (d *stakeSheet) stakeNames(b *place.Board, l paper.Lettering) {
	var crowded []ground.Stake
	for _, s := range d.stakes {
		if !d.nameOutside(b, s, l) {
			crowded = append(crowded, s)
		}
	}
	for _, s := range crowded {
		d.lacks(s.String(), b.Label(place.Label{At: d.at(s), Text: s.String(), Lettering: l, Toward: d.outward(s), Clear: d.clear(s) + 0.2, Leader: place.Bare, Reach: 30}))
	}
}
