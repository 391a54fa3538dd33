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
	features []spec.Feature // those near stakes
	named    []bool         // of the features, whose names stand inside them
	missing  []string       // what found no place
}

// Draw draws the picture in the room, which must be as large as the one it was fitted to, and returns the names and numbers that
// found no place. What is read goes first and keeps its place, lines then leave gaps for it; what finds its own place comes last.
func (p StakePlan) Draw(page *paper.Page, room paper.Rect) (missing []string) {
	d := &stakeSheet{StakePlan: p.placed(room), room: room}
	d.names, _ = d.nameSize()
	d.b = place.NewBoard(page, room)

	d.dots(d.b)
	d.walkArrow()
	d.stakeNames(d.names)
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
	d.siteNames()
	d.hatches()
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

// pair returns the places of an arch's two stakes on paper.
func (d *stakeSheet) pair(arch int) (left, right paper.Point) {
	return d.at(d.ground.Stakes[2*arch-2]), d.at(d.ground.Stakes[2*arch-1])
}

// outward returns the direction on paper from the walk through a stake, away from the opening.
func (d *stakeSheet) outward(s ground.Stake) paper.Point {
	l, r := d.pair(s.Arch)
	if s.Side == spec.Left {
		return r.Sub(l).Unit().Times(-1)
	}
	return r.Sub(l).Unit()
}

// dots draws the stakes: a round dot each, a diamond for guys, an open one for braces, a ring about the zero.
func (d *stakeSheet) dots(b *place.Board) {
	for _, s := range d.stakes {
		at, radius := d.at(s), guyRadius
		switch s.Kind() {
		case ground.OfGuy:
			b.Fill(diamond(at, guyRadius), paper.Black)
		case ground.OfBrace: // so near the neighbour's stake that its sign must let that be seen
			b.Stroke(diamond(at, guyRadius), paper.Thin)
		default:
			radius = stakeRadius
			b.Fill(paper.Circle(at, radius), paper.Black)
		}
		b.Mark(at, radius)
		if d.isZero(s) {
			b.Stroke(paper.Circle(at, zeroRadius), paper.Thick)
		}
	}
	d.crosses(b)
	d.markTargets(b)
}

// diamond is the sign of a guy stake, and open of a peg, so far from its middle to its corners.
func diamond(at paper.Point, half paper.Length) paper.Path {
	return paper.Polygon(at.Add(paper.Point{X: -half}), at.Add(paper.Point{Y: -half}), at.Add(paper.Point{X: half}), at.Add(paper.Point{Y: half}))
}

// Nameless returns the names of stakes that find no place in the room.
func (p StakePlan) Nameless(room paper.Rect) []string {
	_, missing := (&stakeSheet{StakePlan: p.placed(room), room: room}).nameSize()
	return missing
}

// nameSize returns the lettering in which most names find a place right beside their stakes, outside the row; of those alike the largest. With it the names that find none.
func (d *stakeSheet) nameSize() (best paper.Lettering, missing []string) {
	least := math.MaxInt
	for _, pt := range []paper.PointSize{18, 16, 14, 12} {
		trial := &stakeSheet{StakePlan: d.StakePlan, room: d.room, b: place.NewBoard(&paper.Page{}, d.room)}
		trial.dots(trial.b)
		trial.walkArrow()
		inside, adrift := trial.stakeNames(paper.StakeName.Sized(pt))
		if lacks := inside + len(d.stakes)*(adrift+len(trial.missing)); lacks < least {
			best, least, missing = paper.StakeName.Sized(pt), lacks, trial.missing
		}
		if least == 0 {
			break
		}
	}
	return best, missing
}

// nameBeside sets a stake's name right beside it on one side, if that is free.
func (d *stakeSheet) nameBeside(s ground.Stake, out paper.Point, l paper.Lettering) bool {
	w := l.Width(s.String())
	up, down := l.Extent(s.String())
	slide := func(v paper.Length) paper.Length { return max(-1, min(1, v*math.Sqrt2)) }
	centre := d.at(s).Add(out.Times(float64(d.clear(s) + 1.2)))
	centre.X += slide(out.X) * w / 2
	centre.Y += slide(out.Y)*(up+down)/2 + (up-down)/2
	return d.b.SetFree(centre, 0, s.String(), l)
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

// stakeNames sets every stake's name outside the row: pegs' first, each with a leader, for beside them stands their neighbour's; then guy stakes', straight out where that is free, else slanting, else at the end of a leader, for inside it they would seem
// to stand in the walk. A leg's name slants where straight out is not free, stands inside where nothing outside is, else as near as it is. It returns how many legs' names stand inside, and how many names
// not right beside their stakes.
func (d *stakeSheet) stakeNames(l paper.Lettering) (inside, adrift int) {
	waiting := slices.SortedStableFunc(slices.Values(d.stakes), func(a, b ground.Stake) int { return cmp.Compare(b.Kind(), a.Kind()) })
	waiting = slices.DeleteFunc(waiting, func(s ground.Stake) bool {
		return s.Kind() == ground.OfBrace && d.b.Label(place.Label{At: d.at(s), Text: s.String(), Lettering: l, Toward: d.nameWay(s, 0), Clear: guyRadius, Leader: place.Bare, Pointed: true, Reach: pegReach})
	})
	for i, turn := range []float64{0, 0.4, -0.4, 0.8, -0.8, 0, 0.4, -0.4, math.Pi} { // the last four are of legs
		waiting = slices.DeleteFunc(waiting, func(s ground.Stake) bool {
			if (s.Kind() == ground.OfLeg) != (i > 4) || !d.nameBeside(s, d.nameWay(s, turn), l) {
				return false
			}
			inside += i / 8
			return true
		})
	}
	for _, s := range waiting {
		out := d.outward(s)
		label := place.Label{At: d.at(s), Text: s.String(), Lettering: l, Toward: out, Clear: d.clear(s) + 0.2, Leader: place.Bare, Reach: 80}
		label.Beyond = s.Guy
		placed := d.b.Label(label)
		if label.Beyond = false; !placed && !d.ground.Straight { // within a bend there may be no room outside
			placed = d.b.Label(label)
		}
		d.lacks(s.String(), placed)
	}
	return inside, len(waiting)
}

// pegReach is how far from its peg a name stands at most.
const pegReach paper.Length = 12

// nameWay is the way from a stake to its name, turned so far from straight out.
func (d *stakeSheet) nameWay(s ground.Stake, turn float64) paper.Point {
	way := d.outward(s)
	if s.Kind() == ground.OfBrace { // clear of the neighbour's name
		way = way.Add(d.at(s).Sub(d.at(d.ground.Stakes[2*s.Neighbour()-2+int(s.Side)])).Unit()).Unit()
	}
	return paper.Polar(1, way.Angle()+turn)
}
