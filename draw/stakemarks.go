package draw

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
)

// MarkLetter returns the letter that stands for the i-th mark of the spec, from 0: A, B … Z, then A2, B2 …. L, R, G and P begin the names of stakes, I and O
// look like figures; they are left out.
func MarkLetter(i int) string {
	const letters = "ABCDEFHJKMNQSTUVWXYZ"
	s := string(letters[i%len(letters)])
	if i >= len(letters) {
		s += fmt.Sprint(i/len(letters) + 1)
	}
	return s
}

// pictured reports whether a mark lies in the picture.
func (d *stakeSheet) pictured(m ground.Mark) bool {
	return d.room.Inset(markRadius).Contains(d.m.at(m.At))
}

// markTargets draws the marks that lie on the page.
func (d *stakeSheet) markTargets(b *place.Board) {
	for _, m := range d.ground.Marks {
		if at := d.m.at(m.At); d.pictured(m) {
			b.Stroke(paper.Circle(at, markRadius), paper.Thick)
			b.CentreMark(at, markRadius-1.2)
			b.Mark(at, markRadius)
		}
	}
}

// markNames names the marks. One that lies off the page, and that a dot on it is taped from, is shown by an arrow at the edge, where a tape to it leaves the
// picture, else where that comes nearest to it; the other tapes to it bear its letter where they leave.
func (d *stakeSheet) markNames() {
	for i, m := range d.ground.Marks {
		at := d.m.at(m.At)
		letter := MarkLetter(i)
		name := letter + " " + m.Name
		if d.pictured(m) {
			d.lacks("mark "+name, slices.ContainsFunc([]string{name, letter}, func(text string) bool { // the table names a mark whose letter alone has room
				return d.b.Label(place.Label{At: at, Text: text, Lettering: paper.Strong, Clear: markRadius + 0.2, Leader: place.Bare})
			}))
			continue
		}
		if !slices.Contains(d.Marks, i) {
			continue
		}
		at, leave := d.pastRim(at), d.tapesLeave(i)
		start := nearestIn(d.room.Inset(rimInset), at)
		if len(leave) > 0 {
			start = leave[0][1]
		}
		tip, ok := d.edgeArrow(start, at, name, nearTape)
		if !ok {
			tip, ok = d.edgeArrow(start, at, letter, nearTape)
		}
		if !ok && len(leave) > 0 { // the tape itself points there
			ok = d.b.Label(place.Label{At: start, Text: letter, Lettering: paper.Strong, Toward: d.middle().Sub(start), Reach: 30, Leader: place.Bare})
			tip = start
		}
		if !ok {
			tip, ok = d.edgeArrow(start, at, letter, anywhere)
		}
		d.lacks("mark "+name, ok)
		for _, tape := range leave {
			if !ok || tape[1].Sub(tip).Long() > ownTape {
				d.tapeLetter(tape, letter)
			}
		}
	}
}

// tapeLetter sets a mark's letter where a tape to it leaves the picture, further in where that is taken.
func (d *stakeSheet) tapeLetter(tape [2]paper.Point, letter string) {
	way := tape[0].Sub(tape[1])
	for step := 0.0; step < 0.3; step += 0.05 {
		if d.b.Label(place.Label{At: tape[1].Add(way.Times(step)), Text: letter, Lettering: paper.Strong, Toward: d.middle().Sub(tape[1]), Leader: place.NoLeader}) {
			return
		}
	}
}

// How far along the rim an arrow may stand from where it belongs: near, else anywhere on the mark's side; nearer than the last, it names the tape as well.
const (
	nearTape paper.Length = 50
	anywhere paper.Length = 160
	ownTape  paper.Length = 12
	rimInset paper.Length = 0.5
)

// pastRim returns the place of a mark that lies off the picture; of one across the rim a place past it, so that an arrow points straight at the mark.
func (d *stakeSheet) pastRim(at paper.Point) paper.Point {
	if !d.room.Contains(at) {
		return at
	}
	return at.Add(at.Sub(nearestIn(d.room.Inset(markRadius), at)).Unit().Times(2 * float64(markRadius)))
}

// tapesLeave returns the tapes to a mark that leave the picture, each from its dot to where it does.
func (d *stakeSheet) tapesLeave(mark int) (list [][2]paper.Point) {
	for _, dot := range d.Tied {
		from, end, ok := cropSegment(d.at(d.ground.Stakes[dot.Spot.Index]), d.pastRim(d.m.at(d.ground.Marks[mark].At)), d.room.Inset(rimInset))
		if ok && (dot.From.Index == mark || dot.To.Index == mark) {
			list = append(list, [2]paper.Point{from, end})
		}
	}
	return list
}

// nearestIn returns the place of a box that lies nearest to a point.
func nearestIn(r paper.Rect, p paper.Point) paper.Point {
	return paper.Point{X: max(r.X, min(r.Right(), p.X)), Y: max(r.Y, min(r.Bottom(), p.Y))}
}

// edgeArrow draws an arrow with its name at the picture's edge, that points from where it stands to a place off the page: as near to where it belongs as is free, on
// the sides that the place is seen from. It returns the arrow's tip and whether it found a place.
func (d *stakeSheet) edgeArrow(start, at paper.Point, name string, most paper.Length) (tip paper.Point, ok bool) {
	const long, step = 9, 2
	inner := d.room.Inset(rimInset)
	for shift := paper.Length(0); shift < most; shift += step {
		for _, side := range []float64{1, -1} {
			tip := alongRim(inner, start, paper.Length(side)*shift)
			u := at.Sub(tip).Unit()
			tail := tip.Sub(u.Times(long))
			var e box
			e.add(tip.Sub(u.Times(2)), 1, 1, 1, 1) // a band right over the picture, of a plan not to be built, is not in its way
			e.add(tail, 1, 1, 1, 1)
			if d.room.Contains(tip.Add(u.Times(2))) || !d.room.Contains(tail) || !d.b.Free(e.rect()) {
				continue
			}
			if centre, ok := d.besideTail(tail, u, name); ok {
				d.b.Arrow(tail, tip, paper.Thick)
				d.b.TurnedText(centre, 0, name, paper.Strong)
				return tip, true
			}
		}
	}
	return start, false
}

// alongRim returns the place on a box's rim that lies so far from another along it, clockwise as seen on paper.
func alongRim(r paper.Rect, from paper.Point, way paper.Length) paper.Point {
	var at paper.Length // of from, clockwise from the top left corner
	const near = 0.01
	switch {
	case from.Y < r.Y+near:
		at = from.X - r.X
	case from.X > r.Right()-near:
		at = r.W + from.Y - r.Y
	case from.Y > r.Bottom()-near:
		at = r.W + r.H + r.Right() - from.X
	default:
		at = 2*r.W + r.H + r.Bottom() - from.Y
	}
	round := 2 * (r.W + r.H)
	at = paper.Length(math.Mod(float64(at+way+round), float64(round)))
	switch {
	case at < r.W:
		return paper.Point{X: r.X + at, Y: r.Y}
	case at < r.W+r.H:
		return paper.Point{X: r.Right(), Y: r.Y + at - r.W}
	case at < 2*r.W+r.H:
		return paper.Point{X: r.Right() - (at - r.W - r.H), Y: r.Bottom()}
	}
	return paper.Point{X: r.X, Y: r.Bottom() - (at - 2*r.W - r.H)}
}

// besideTail returns where the name of an edge arrow is free: behind its tail, else beside it.
func (d *stakeSheet) besideTail(tail, u paper.Point, name string) (baseline paper.Point, ok bool) {
	l := paper.Strong
	half := l.Width(name)/2 + 1.8
	up, down := l.Extent(name)
	drop := (up - down) / 2
	behind := (up+down)/2 + 1.8
	if u.Y < 0 {
		behind = -behind
	}
	if u.X > 0 { // the side that the arrow leans away from first
		half = -half
	}
	places := []paper.Point{{Y: -behind}, {X: half}, {X: half, Y: -behind}, {X: -half, Y: -behind}}
	if u.X > -0.2 && u.X < 0.2 {
		places = append(places, paper.Point{X: -half})
	}
	for _, by := range places {
		centre := tail.Add(by).Add(paper.Point{Y: drop})
		if d.b.FreeText(centre, 0, name, l) {
			return centre, true
		}
	}
	return tail, false
}

// middle returns the middle of this page's stakes on paper.
func (d *stakeSheet) middle() paper.Point {
	var e box
	for _, s := range d.stakes {
		e.add(d.at(s), 0, 0, 0, 0)
	}
	return e.rect().Centre()
}
