package draw

import (
	"cmp"
	"math"
	"slices"

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
	crossHalf   paper.Length = 1.6
)

// stakeSheet is a stake plan being drawn.
type stakeSheet struct {
	StakePlan
	b        *place.Board
	room     paper.Rect
	names    paper.Lettering
	bar      paper.Rect     // kept for the bar of the scale; zero: it has no room
	features []spec.Feature // those near stakes
	named    []bool         // of the features, whose names stand inside them
	missing  []string       // what found no place
}

// Draw draws the picture in the room, which must be as large as the one it was fitted to, and returns the names and numbers that
// found no place. What is read goes first and keeps its place, lines then leave gaps for it; what finds its own place comes last.
func (p StakePlan) Draw(page *paper.Page, room paper.Rect) (missing []string) {
	d := &stakeSheet{StakePlan: p.placed(room), room: room}
	d.names = d.nameSize(page)
	d.b = place.NewBoard(page, room)

	d.dots(d.b)
	d.stakeNames(d.b, d.names)
	d.ends()
	d.featureNames()
	d.spanNumbers()
	d.rows()
	d.spanLines()
	d.siteLines()
	d.ties()
	d.lineNames()
	d.keepBands()
	d.markNames()
	d.scaleBar()
	d.siteNames()
	d.hatches()
	d.drawScaleBar()
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
	l, r := d.ground.Stakes[2*s.Arch-2], d.ground.Stakes[2*s.Arch-1]
	out := d.at(r).Sub(d.at(l)).Unit()
	if s.Side == spec.Left {
		out = out.Times(-1)
	}
	return out
}

// dots draws the stakes: a round dot each, a diamond for guys, an open one for braces, a ring about the zero.
func (d *stakeSheet) dots(b *place.Board) {
	for _, s := range d.stakes {
		at := d.at(s)
		switch s.Kind() {
		case ground.OfGuy:
			b.Fill(diamond(at), paper.Black)
			b.Mark(at, guyRadius)
			continue
		case ground.OfBrace: // so near the neighbour's stake that its sign must let that be seen
			b.Stroke(diamond(at), paper.Thin)
			b.Mark(at, guyRadius)
			continue
		}
		b.Fill(paper.Circle(at, stakeRadius), paper.Black)
		b.Mark(at, stakeRadius)
		if d.isZero(s) {
			b.Stroke(paper.Circle(at, zeroRadius), paper.Thick)
		}
	}
	d.crosses(b)
	d.markTargets(b)
}

// diamond is the sign of a guy stake.
func diamond(at paper.Point) paper.Path {
	return paper.Polygon(at.Add(paper.Point{X: -guyRadius}), at.Add(paper.Point{Y: -guyRadius}), at.Add(paper.Point{X: guyRadius}), at.Add(paper.Point{Y: guyRadius}))
}

// nameSize returns the largest lettering in which every stake's name finds a place, those of the legs right beside their stakes, save as many as guy
// stakes may be in the way of.
func (d *stakeSheet) nameSize(page *paper.Page) paper.Lettering {
	for _, size := range []paper.PointSize{18, 16, 14} {
		trial := &stakeSheet{StakePlan: d.StakePlan, room: d.room, b: place.NewBoard(&paper.Page{Size: page.Size}, d.room)}
		trial.dots(trial.b)
		if crowded, guys, adrift := trial.stakeNames(trial.b, paper.StakeName.Sized(size)); crowded <= guys && adrift == 0 && len(trial.missing) == 0 {
			return paper.StakeName.Sized(size)
		}
	}
	return paper.StakeName.Sized(12)
}

// nameBeside sets a stake's name right beside it on one side, if that is free.
func (d *stakeSheet) nameBeside(b *place.Board, s ground.Stake, out paper.Point, l paper.Lettering) bool {
	w := l.Width(s.String())
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

// isZero reports whether a tape's zero lies at the stake.
func (p StakePlan) isZero(s ground.Stake) bool {
	return !s.Guy && s.Side == spec.Left && s.Arch == p.Zero
}

// clear returns the radius of what is drawn at a stake.
func (d *stakeSheet) clear(s ground.Stake) paper.Length {
	switch {
	case s.Kind() == ground.OfBrace: // its name keeps off the neighbour's
		return guyRadius + 1.2
	case s.Guy:
		return guyRadius
	case d.isZero(s):
		return zeroRadius + 0.4
	}
	for _, peg := range d.stakes {
		if peg.Kind() == ground.OfBrace && d.at(peg).Sub(d.at(s)).Long() < 2*guyRadius {
			return guyRadius + 0.6 // its sign reaches past this one
		}
	}
	return stakeRadius
}

// stakeNames sets every stake's name outside the row, guy stakes' first, for inside it they would seem to stand in the walk; a leg's where that is not free inside, else as near as it is.
// It returns how many legs' names stand not outside, how many guy stakes there are, and how many legs' names stand not right beside their stakes.
func (d *stakeSheet) stakeNames(b *place.Board, l paper.Lettering) (legs, guys, adrift int) {
	var crowded []ground.Stake
	for _, s := range slices.SortedStableFunc(slices.Values(d.stakes), func(a, b ground.Stake) int { return cmp.Compare(b.Kind(), a.Kind()) }) {
		way := d.outward(s)
		if s.Kind() == ground.OfBrace { // clear of the neighbour's name
			way = way.Add(d.at(s).Sub(d.at(d.ground.Stakes[2*s.Neighbour()-2+int(s.Side)])).Unit()).Unit()
		}
		beside := d.nameBeside(b, s, way, l)
		if !beside {
			crowded = append(crowded, s)
		}
		switch {
		case s.Kind() == ground.OfGuy:
			guys++
		case !beside:
			legs++
		}
	}
	for _, s := range crowded {
		out := d.outward(s)
		placed := !s.Guy && d.nameBeside(b, s, out.Times(-1), l)
		if !s.Guy && !placed {
			adrift++
		}
		for _, reach := range []paper.Length{30, 80} {
			placed = placed || b.Label(place.Label{At: d.at(s), Text: s.String(), Lettering: l, Toward: out, Clear: d.clear(s) + 0.2, Leader: place.Bare, Reach: reach})
		}
		d.lacks(s.String(), placed)
	}
	return legs, guys, adrift
}
