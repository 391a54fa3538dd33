package draw

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Profile is the picture of one arch as it stands, seen from the entrance: pipe, stakes, joints, ground, the opening for people, its tightest bend and
// what a raising crew measures on it.
type Profile struct {
	Kind                        *arch.Kind
	Units                       measure.System
	OpeningWidth, OpeningHeight measure.Length
	Said                        bool // another profile says what stays clear
}

// White space about the arch on paper.
const (
	aside     paper.Length = 3.5 // from the widest place to what stands beside it
	overCrown paper.Length = 2
	stakeDrop paper.Length = 7 // how much of a stake is drawn below the ground
)

// ProfileScales are the scales that an arch is drawn at, largest first: those of the series from 1:16 to 1:40 with a few between, and smaller ones for a very
// large arch.
func ProfileScales(u measure.System) []paper.Scale {
	list := []paper.Scale{{Ratio: 40, Words: "1:40"}}
	if u == measure.Metric {
		list = append(list, paper.Scale{Ratio: 30, Words: "1:30"})
	}
	list = append(list, slices.DeleteFunc(slices.Clone(Scales(u)), func(s paper.Scale) bool { return s.Ratio < 16 })...)
	slices.SortFunc(list, func(a, b paper.Scale) int { return cmp.Compare(a.Ratio, b.Ratio) })
	return list
}

// extent returns what the arch takes, in real millimetres: how far it reaches left and right of its middle and how high.
func (p Profile) extent() (left, right, up float64) {
	k := p.Kind
	half := float64(k.Spec.Pipe.OD / 2)
	for _, q := range k.Curve {
		left, right, up = max(left, float64(-q.X)+half), max(right, float64(q.X)+half), max(up, float64(q.Y)+half)
	}
	if k.Spec.Foot != nil {
		foot := float64((k.Span + k.Spec.Foot.Width) / 2)
		left, right = max(left, foot), max(right, foot)
	}
	if p.stands() { // it may not fit under the arch
		w, h := float64(p.OpeningWidth/2), float64(p.OpeningHeight)
		slope := float64((k.RightGround - k.LeftGround) / k.Span)
		left, right, up = max(left, w), max(right, w), max(up, h+w*math.Abs(slope))
	}
	return left, right, up
}

// Scale returns the largest scale of the series at which the picture fits the room.
func (p Profile) Scale(series []paper.Scale, room paper.Rect) paper.Scale {
	for _, s := range series {
		if p.Width(s) <= room.W && p.Height(s) <= room.H {
			return s
		}
	}
	return series[len(series)-1]
}

// Width returns how much of a page's width the picture takes at the scale.
func (p Profile) Width(s paper.Scale) paper.Length {
	l, r, _ := p.extent()
	return p.leftRoom(s) + s.Length(l+r) + p.heightRoom()
}

// leftRoom is the room left of the widest place: that of the left foot's name, where the feet are as wide as the arch.
func (p Profile) leftRoom(s paper.Scale) paper.Length {
	const name = 9 // from the foot to the left end of its name
	l, _, _ := p.extent()
	return max(aside, name-s.Length(l-float64(p.Kind.Span/2)))
}

// Height returns how much of a page's height the picture takes at the scale.
func (p Profile) Height(s paper.Scale) paper.Length {
	_, _, up := p.extent()
	low := max(-p.Kind.LeftGround, -p.Kind.RightGround)
	return max(overCrown+s.Length(up)+s.Length(float64(low))+underground, paper.Dimension.Width(p.crownWords())+1)
}

// elevation is a profile on its board.
type elevation struct {
	Profile
	*place.Board
	scale  paper.Scale
	origin paper.Point // of the arch's axes: the middle of the ground line
	room   paper.Rect
	lost   []string // what found no place
}

// at returns the place on paper of a point in the arch's axes.
func (f *elevation) at(x, y measure.Length) paper.Point {
	return paper.Point{X: f.origin.X + f.scale.Length(float64(x)), Y: f.origin.Y - f.scale.Length(float64(y))}
}

// on returns the place on paper of a point of the curve.
func (f *elevation) on(q arch.Point) paper.Point { return f.at(q.X, q.Y) }

// ground returns the height of the ground line at x, in the arch's axes.
func (f *elevation) ground(x measure.Length) measure.Length {
	k := f.Kind
	return (k.RightGround - k.LeftGround) * x / k.Span
}

// pipeWide returns the pipe's width on paper.
func (f *elevation) pipeWide() paper.Length { return f.scale.Length(float64(f.Kind.Spec.Pipe.OD)) }

// Draw draws the picture in the room at the scale and returns by name what found no place. Lines come first and words last, so that no line runs through a word; only
// where the bend's radius finds no place under the opening's top does that give way to it.
func (p Profile) Draw(page *paper.Page, room paper.Rect, s paper.Scale) (missing []string) {
	ops, missing := p.drawn(room, s, true)
	if len(missing) > 0 {
		if other, lost := p.drawn(room, s, false); len(lost) < len(missing) {
			ops, missing = other, lost
		}
	}
	page.Ops = append(page.Ops, ops...)
	return missing
}

func (p Profile) drawn(room paper.Rect, s paper.Scale, topFirst bool) (ops []paper.Op, lost []string) {
	l, r, up := p.extent()
	free := max(0, room.W-p.Width(s))
	page := &paper.Page{}
	f := &elevation{Profile: p, Board: place.NewBoard(page, room), scale: s, room: room}
	f.origin = paper.Point{X: room.X + p.leftRoom(s) + free/2 + s.Length(l), Y: room.Y + overCrown + s.Length(up)}
	edge := f.origin.X + s.Length(r) + aside

	f.pipe()
	f.joints()
	f.stakes()
	f.feet()
	f.crownHeight(edge + aside)
	if topFirst {
		f.openingTop()
	}
	f.keepWidth()
	f.radii()
	f.width()
	f.opening()
	if !topFirst {
		f.openingTop()
	}
	f.groundLine(room.X, edge)
	return page.Ops, f.lost
}

// groundLine draws the ground through both feet, or under their boards, and past them.
func (f *elevation) groundLine(from, to paper.Length) {
	level := func(x paper.Length) paper.Point {
		real := measure.Length(float64(x-f.origin.X) * f.scale.Ratio)
		at := f.at(real, f.ground(real))
		if f.Kind.Spec.Foot != nil {
			at.Y += boardHigh
		}
		return at
	}
	f.Ground(level(max(from, f.origin.X-f.scale.Length(float64(f.Kind.Widest/2))-8)), level(to))
}

// foot returns where a leg meets the ground.
func (f *elevation) foot(side spec.Side) paper.Point {
	if side == spec.Right {
		return f.at(f.Kind.Span/2, f.Kind.RightGround)
	}
	return f.at(-f.Kind.Span/2, f.Kind.LeftGround)
}
