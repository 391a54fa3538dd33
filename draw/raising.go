package draw

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Raising makes the pictures of how arches are stood: who holds what, in which order. They keep the tunnel's proportions and are not to
// scale; a bend half made is the solved curve drawn out sideways with its length kept.
type Raising struct {
	Plan    *layout.Plan
	First   *arch.Kind // of the first arch that stands
	Wrapped bool       // lights are on the legs when it is raised
	Down    bool       // it is taken down: what moves, moves the other way
	FromFar bool       // arches are seen from the far end, their left legs on the right: those are walked in and out
}

// NewRaising returns the pictures of a plan, and false where no arch stands.
func NewRaising(plan *layout.Plan) (Raising, bool) {
	for _, a := range plan.Arches {
		if a.Kind == nil || len(a.Kind.Curve) < 2 {
			continue
		}
		r := Raising{Plan: plan, First: a.Kind}
		for _, w := range plan.Spec.Lights.Wraps {
			r.Wrapped = r.Wrapped || slices.ContainsFunc(w.Where, func(p spec.Place) bool { return p.Part != spec.RidgePieces })
		}
		return r, true
	}
	return Raising{}, false
}

// What the people who raise are called, on pictures and in words.
const (
	Foot1  = "Foot 1"
	Foot2  = "Foot 2"
	Crown  = "Crown"
	Ladder = "Ladder"
	Guard  = "Guard"

	bothFeet = "Foot 1, 2"          // of two people, one drawn for both
	lifters  = Foot2 + ", " + Crown // one drawn for both
)

const (
	helperTall = adultHeight
	underfoot  = paper.Length(5)   // under the ground line on paper: the names of what stands there
	nameRow    = paper.Length(4.5) // of people's names, over all
	nameDrop   = paper.Length(2)   // from the lowest row of names to the crown
	nameApart  = paper.Length(2.2)
)

// names is the lettering of people.
var names = paper.Floor

// scene is one picture in the making: real millimetres from a zero on the ground, y up.
type scene struct {
	*place.Board
	Raising
	ratio float64
	zero  paper.Point
	rows  int // of names
}

// newScene fits so much real width, from left to right of the zero, and height into the room under the names of so many people.
func (r Raising) newScene(page *paper.Page, room paper.Rect, left, right, high measure.Length, people ...string) *scene {
	s := &scene{Board: place.NewBoard(page, room), Raising: r, rows: 1}
	wide := -nameApart
	for _, name := range people {
		wide += names.Width(name) + nameApart
	}
	if wide > room.W {
		s.rows = 2
	}
	over := nameRow*paper.Length(s.rows) + nameDrop
	s.ratio = max(float64(left+right)/float64(room.W), float64(max(high, helperTall))/float64(room.H-underfoot-over))
	spare := (room.W - s.long(left+right)) / 2
	s.zero = paper.Point{X: room.X + spare + s.long(left), Y: room.Bottom() - underfoot}
	return s
}

func (s *scene) long(l measure.Length) paper.Length { return paper.Length(float64(l) / s.ratio) }

func (s *scene) at(x, y measure.Length) paper.Point {
	return s.zero.Add(paper.Point{X: s.long(x), Y: -s.long(y)})
}

// helper returns a person who stands at x with their hands on the points.
func (s *scene) helper(called string, x measure.Length, hands ...paper.Point) helper {
	h := helper{called: called, feet: s.at(x, 0), tall: s.long(helperTall)}
	copy(h.hands[:], hands)
	return h
}

// holds returns a person who stands at x with both hands on what is upright at another place.
func (s *scene) holds(called string, x, at measure.Length) helper {
	return s.helper(called, x, s.at(at, helperTall*0.62), s.at(at, helperTall*0.85))
}

// moves draws the arrow of what moves while it is raised; it points the other way while it is taken down.
func (s *scene) moves(from, to paper.Point) {
	if s.Down {
		from, to = to, from
	}
	s.Arrow(from, to, paper.Thick)
}

// ground draws the ground line over the picture's width.
func (s *scene) ground() {
	s.Line(paper.Point{X: s.Area.X, Y: s.zero.Y}, paper.Point{X: s.Area.Right(), Y: s.zero.Y}, paper.Thick)
}

// under names what stands at x, under the ground line.
func (s *scene) under(x measure.Length, name string) {
	half := paper.CellSmall.Width(name) / 2
	at := min(max(s.at(x, 0).X, s.Area.X+half), s.Area.Right()-half)
	s.Text(paper.Point{X: at, Y: s.zero.Y + underfoot - 0.6}, paper.AtMiddle, name, paper.CellSmall)
}

// pipe draws a line of pipe.
func (s *scene) pipe(points []paper.Point) {
	s.Stroke(paper.Polyline(points...), paper.Pen{Width: pipeOnPaper})
}

const pipeOnPaper paper.Length = 1.3

// stake draws a bare stake with its cap where it wears one.
func (s *scene) stake(x measure.Length, capped bool) {
	top := s.First.Spec.Stake.Showing()
	s.Line(s.at(x, 0), s.at(x, top), paper.Thick)
	if capped {
		s.cap(s.at(x, top))
	}
}

// cap draws a stake's cap with its foot at the point.
func (s *scene) cap(foot paper.Point) {
	s.Fill(paper.Box(paper.Rect{X: foot.X - 1.1, Y: foot.Y - 1.4, W: 2.2, H: 2}), paper.Black)
}

// level is how high over the picture's ground a point of the arch is, which goes from foot to foot where one of them stands higher.
func (r Raising) level(q arch.Point) measure.Length {
	left, right := r.First.Curve[0], r.First.Curve[len(r.First.Curve)-1]
	return q.Y - left.Y - (right.Y-left.Y)*(q.X-left.X)/(right.X-left.X)
}

// top is the arch's highest point over the picture's ground.
func (r Raising) top() (high measure.Length) {
	for _, q := range r.First.Curve {
		high = max(high, r.level(q))
	}
	return high
}

// curve returns the arch on paper as it stands, its left foot at x = −span/2.
func (s *scene) curve() []paper.Point {
	points := make([]paper.Point, len(s.First.Curve))
	for i, q := range s.First.Curve {
		points[i] = s.at(q.X, s.level(q))
	}
	return points
}

// bow is a line of pipe in the picture's plane, on a scene's real millimetres.
type bow [][2]measure.Length

// top is its highest point over the picture's ground.
func (b bow) top() (high measure.Length) {
	for _, q := range b {
		high = max(high, q[1])
	}
	return high
}

// drawnOut returns the arch with its right foot so many spans from the left one and lifted; its height is found so that its length stays.
func (r Raising) drawnOut(wide float64, lifted measure.Length) bow {
	curve, span := r.First.Curve, r.First.Span
	shape := func(low float64) (points bow, long float64) {
		for i, q := range curve {
			x := (q.X+span/2)*measure.Length(wide) - span/2
			y := r.level(q)*measure.Length(low) + lifted*(q.X+span/2)/span
			points = append(points, [2]measure.Length{x, y})
			if i > 0 {
				dx, dy := float64(x-points[i-1][0]), float64(y-points[i-1][1])
				long += math.Sqrt(dx*dx + dy*dy)
			}
		}
		return points, long
	}
	whole, low, high := float64(curve[len(curve)-1].Tape-curve[0].Tape), 0.0, 1.5
	for range 40 {
		if _, long := shape((low + high) / 2); long > whole {
			high = (low + high) / 2
		} else {
			low = (low + high) / 2
		}
	}
	points, _ := shape(low)
	return points
}

// bent returns a bow on paper.
func (s *scene) bent(b bow) (out []paper.Point) {
	for _, q := range b {
		out = append(out, s.at(q[0], q[1]))
	}
	return out
}

// play draws the ground and the people, then what they work at over them, their hands over that, and their names over all.
func (s *scene) play(people []helper, things func()) {
	s.ground()
	for _, h := range people {
		h.draw(s.Board)
	}
	things()
	for _, h := range people {
		h.grip(s.Board)
	}
	s.name(people...)
}

// name sets the people's names over the picture, a line from each to its head: in one row, or every second one in a row above, whose lines go down between the lower ones.
func (s *scene) name(people ...helper) {
	people = slices.Clone(people)
	slices.SortStableFunc(people, func(a, b helper) int { return cmp.Compare(a.feet.X, b.feet.X) })
	free := [2]paper.Length{s.Area.X, s.Area.X} // of each row, from there on
	for i, h := range people {
		row, wide := i%s.rows, names.Width(h.called)
		ends := [2]paper.Length{s.Area.Right(), s.Area.Right()} // of each row: what those after it leave
		for k := i + 1; k < len(people); k++ {
			ends[k%s.rows] -= names.Width(people[k].called) + nameApart
		}
		head := h.feet.Add(paper.Point{Y: -h.tall * (headAt + headRadius)})
		mid := head.X
		if row+1 < s.rows && i+1 < len(people) {
			mid = min(mid, people[i+1].feet.X-nameApart-wide/2)
		}
		mid = min(max(mid, free[row]+wide/2), ends[row]-wide/2)
		x := min(max(head.X, mid-wide/2+0.5), mid+wide/2-0.5) // where its line begins
		if row > 0 {
			x = min(max(x, free[0]), mid+wide/2-0.5, ends[0])
			free[0] = x + nameApart
		}
		free[row] = max(free[row], mid+wide/2+nameApart)
		y := s.Area.Y + nameRow*paper.Length(s.rows-row) - 1
		s.Text(paper.Point{X: mid, Y: y}, paper.AtMiddle, h.called, names)
		if from := (paper.Point{X: x, Y: y + 1.3}); head.Y > from.Y+0.8 {
			s.Line(from, head, paper.Thin)
		}
	}
}

// near returns the point that is nearest.
func near(points []paper.Point, to paper.Point) paper.Point {
	return points[nearest(points, to, func(p, q paper.Point) paper.Length { return p.Sub(q).Long() })]
}
