package draw

import (
	"fmt"
	"math"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Profile is the picture of one arch as it stands, seen from the entrance: pipe, stakes, joints, ground, the opening for people and every
// figure that the arch is checked by.
type Profile struct {
	Kind                        *arch.Kind
	Units                       measure.System
	OpeningWidth, OpeningHeight measure.Length
	Rows                        []measure.Length // tape marks of rows of lights along the legs, rising
	RowsWord                    string           // which legs have the rows
}

// White space about the arch on paper.
const (
	ladderGap paper.Length = 3.5 // from the widest place to a ladder
	overCrown paper.Length = 2
)

// ladders returns the columns of numbers left and right of the arch; the right one may be empty.
func (p Profile) ladders() (left, right ladder) {
	left, right = p.tapeLadder(spec.Left), p.tapeLadder(spec.Right)
	if !left.same(right) {
		return left, right
	}
	left.title = "both legs"
	return left, p.rowLadder()
}

// extent returns what the arch takes, in real millimetres: how far it reaches left and right of its middle, above and below.
func (p Profile) extent() (left, right, up, down float64) {
	k := p.Kind
	half := float64(k.Spec.Pipe.OD / 2)
	curves := [][]arch.Point{k.Curve}
	if p.ages(paper.Scale{Ratio: 1}) {
		curves = append(curves, k.Season)
	}
	for _, curve := range curves {
		for _, q := range curve {
			left, right, up = max(left, float64(-q.X)+half), max(right, float64(q.X)+half), max(up, float64(q.Y)+half)
		}
	}
	if w, h := float64(p.OpeningWidth/2), float64(p.OpeningHeight); w > 0 && h > 0 { // it may not fit under the arch
		slope := float64((k.RightGround - k.LeftGround) / k.Span)
		left, right, up = max(left, w), max(right, w), max(up, h+w*math.Abs(slope))
	}
	depth := float64(k.Spec.Stake.Depth)
	down = max(depth-float64(k.LeftGround), depth-float64(k.RightGround))
	return left, right, up, down
}

// sides returns the room on paper for what stands left and right of the arch.
func (p Profile) sides() (left, right paper.Length) {
	l, r := p.ladders()
	left, right = l.width()+ladderGap, p.heightRoom()
	if r.rungs != nil {
		right += r.width() + ladderGap
	}
	return left, right
}

// Scale returns the largest scale of the series at which the picture fits the room.
func (p Profile) Scale(series []paper.Scale, room paper.Rect) paper.Scale {
	for _, s := range series {
		if p.width(s) <= room.W && p.Height(s) <= room.H {
			return s
		}
	}
	return series[len(series)-1]
}

func (p Profile) width(s paper.Scale) paper.Length {
	l, r, _, _ := p.extent()
	left, right := p.sides()
	return left + s.Length(l+r) + right
}

// Height returns how much of a page's height the picture takes at the scale.
func (p Profile) Height(s paper.Scale) paper.Length {
	_, _, up, down := p.extent()
	low := max(-p.Kind.LeftGround, -p.Kind.RightGround)
	return max(overCrown+s.Length(up)+max(s.Length(down)+1, s.Length(float64(low))+underground), paper.Dimension.Width(p.crownWords())+1)
}

// elevation is a profile on its board.
type elevation struct {
	Profile
	*place.Board
	scale      paper.Scale
	origin     paper.Point // of the arch's axes: the middle of the ground line
	room       paper.Rect
	left, edge paper.Length // the inner edges of the ladders
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

// Draw draws the picture in the room at the scale. Lines come first and words last, so that no line runs through a word.
func (p Profile) Draw(page *paper.Page, room paper.Rect, s paper.Scale) {
	l, r, up, _ := p.extent()
	left, right := p.sides()
	free := max(0, room.W-p.width(s))
	f := &elevation{Profile: p, Board: place.NewBoard(page, room), scale: s, room: room}
	f.origin = paper.Point{X: room.X + left + free/2 + s.Length(l), Y: room.Y + overCrown + s.Length(up)}
	f.left = room.X + left + free/2 - ladderGap
	f.edge = f.origin.X + s.Length(r) + ladderGap

	f.pipe()
	f.joints()
	f.stakes()
	f.bendCircles()
	leftLadder, rightLadder := p.ladders()
	f.ladder(leftLadder, spec.Left)
	f.ladder(rightLadder, spec.Right)
	f.heights(f.edge + right - p.heightRoom())
	f.feet()
	f.widths()
	f.showing()
	f.below()
	f.notes()
	f.opening()
	f.groundLine()
}

// ages reports whether the arch at season's end stands visibly apart from the arch as raised.
func (p Profile) ages(s paper.Scale) bool {
	const visible paper.Length = 0.8
	k := p.Kind
	for i := 0; i < len(k.Curve) && i < len(k.Season); i++ {
		dx, dy := float64(k.Curve[i].X-k.Season[i].X), float64(k.Curve[i].Y-k.Season[i].Y)
		if s.Length(math.Sqrt(dx*dx+dy*dy)) > visible {
			return true
		}
	}
	return false
}

// tall returns a length as it is read off a short tape, without its unit.
func (p Profile) tall(l measure.Length) string {
	return p.Units.BareInches(l)
}

// plusMinus is the band about the crown in words.
func (p Profile) plusMinus() string {
	return fmt.Sprintf("give or take %s", p.Units.Inches(p.Kind.GiveOrTake(p.Units)))
}
