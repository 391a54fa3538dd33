package draw

import "hoopwright/draw/paper"

// figure is a standing person seen from behind, in shares of their height: x to the right of their middle, y up from the
// ground. Our own drawing.
type figure struct {
	head    [3]float64   // x, y, radius
	outline [][2]float64 // right half of the body from the neck down to between the feet; the left half mirrors it
}

var (
	adult = figure{head: [3]float64{0, 0.925, 0.068}, outline: [][2]float64{
		{0.030, 0.862}, {0.075, 0.835}, {0.125, 0.805}, {0.150, 0.740}, {0.166, 0.600}, {0.172, 0.500}, {0.160, 0.462}, {0.138, 0.470},
		{0.136, 0.520}, {0.128, 0.560}, {0.140, 0.400}, {0.122, 0.372}, {0.098, 0.370}, {0.092, 0.200}, {0.086, 0.045}, {0.104, 0.010}, {0.090, 0.000},
		{0.034, 0.000}, {0.030, 0.040}, {0.026, 0.200}, {0.008, 0.360}}}
	child = figure{head: [3]float64{0, 0.890, 0.098}, outline: [][2]float64{
		{0.035, 0.796}, {0.090, 0.770}, {0.150, 0.735}, {0.178, 0.660}, {0.196, 0.540}, {0.200, 0.450}, {0.182, 0.415}, {0.158, 0.425},
		{0.158, 0.480}, {0.150, 0.520}, {0.172, 0.350}, {0.145, 0.325}, {0.118, 0.322}, {0.110, 0.180}, {0.104, 0.050}, {0.124, 0.012}, {0.108, 0.000},
		{0.038, 0.000}, {0.034, 0.045}, {0.030, 0.180}, {0.010, 0.312}}}
)

// stand draws the figure at a height on paper with its feet at the point: a black outline that hides what is behind it.
func (f figure) stand(page *paper.Page, feet paper.Point, height paper.Length, pen paper.Pen) {
	at := func(x, y float64) paper.Point {
		return feet.Add(paper.Point{X: height * paper.Length(x), Y: -height * paper.Length(y)})
	}
	var body []paper.Point
	for _, p := range f.outline {
		body = append(body, at(p[0], p[1]))
	}
	for i := len(f.outline) - 1; i >= 0; i-- {
		body = append(body, at(-f.outline[i][0], f.outline[i][1]))
	}
	for _, path := range []paper.Path{rounded(body), paper.Circle(at(f.head[0], f.head[1]), height*paper.Length(f.head[2]))} {
		page.Fill(path, paper.White)
		page.Stroke(path, pen)
	}
}

// rounded returns a closed curve through the points: cubics whose tangents run from each point's neighbour to the next (the
// spline of Catmull and Rom, slackened).
func rounded(points []paper.Point) paper.Path {
	const slack = 1.0 / 8
	n := len(points)
	at := func(i int) paper.Point { return points[(i+n)%n] }
	path := paper.Path{{Verb: paper.Move, To: points[0]}}
	for i := range n {
		path = append(path, paper.Step{Verb: paper.Cubic,
			A: at(i).Add(at(i + 1).Sub(at(i - 1)).Times(slack)), B: at(i + 1).Sub(at(i + 2).Sub(at(i)).Times(slack)), To: at(i + 1)})
	}
	return append(path, paper.Step{Verb: paper.Close})
}
