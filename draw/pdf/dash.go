package pdf

import (
	"math"

	"hoopwright/draw/paper"
)

// dashPiece is a stretch of a path with the dash pattern stretched to it.
type dashPiece struct {
	path  paper.Path
	dash  []paper.Length // nil: too short for a gap, drawn solid
	phase paper.Length
}

// dashPieces breaks a path into stretches and fits the pen's pattern to each, so that every stretch begins and ends with its first, longest
// dash and dashes meet at corners. A piece of long straight edges is dashed edge by edge, any other piece as a whole.
func dashPieces(path paper.Path, pen paper.Pen) []dashPiece {
	period := paper.Length(0)
	for _, d := range pen.Dash {
		period += d
	}
	if !(period > 0) {
		return []dashPiece{{path: path}}
	}
	var out []dashPiece
	for _, piece := range split(path) {
		if edges := longEdges(piece, 2*period); edges != nil {
			for _, e := range edges {
				out = append(out, fit(paper.Polyline(e[0], e[1]), e[1].Sub(e[0]).Long(), false, pen.Dash, period))
			}
			continue
		}
		length := paper.Length(0)
		for _, pts := range piece.Flatten(0.01) {
			for i := 1; i < len(pts); i++ {
				length += pts[i].Sub(pts[i-1]).Long()
			}
		}
		closed := piece[len(piece)-1].Verb == paper.Close
		out = append(out, fit(piece, length, closed, pen.Dash, period))
	}
	return out
}

// fit stretches the pattern to the length. An open line holds n periods and one more first dash; a closed one n periods, begun amid the first dash.
func fit(path paper.Path, length paper.Length, closed bool, dash []paper.Length, period paper.Length) dashPiece {
	first := dash[0]
	if closed {
		first = 0
	}
	n := math.Round(float64((length - first) / period))
	if !(n >= 1) {
		return dashPiece{path: path}
	}
	stretch := length / (paper.Length(n)*period + first)
	fitted := make([]paper.Length, len(dash))
	for i, d := range dash {
		fitted[i] = d * stretch
	}
	piece := dashPiece{path: path, dash: fitted}
	if closed {
		piece.phase = fitted[0] / 2
	}
	return piece
}

// split cuts a path at its moves.
func split(path paper.Path) []paper.Path {
	var pieces []paper.Path
	for i, s := range path {
		if s.Verb == paper.Move || i == 0 {
			pieces = append(pieces, nil)
		}
		last := len(pieces) - 1
		pieces[last] = append(pieces[last], s)
	}
	return pieces
}

// longEdges returns the piece's edges where all are straight and at least that long, else nil.
func longEdges(piece paper.Path, least paper.Length) [][2]paper.Point {
	var edges [][2]paper.Point
	here := piece[0].To
	for _, s := range piece[1:] {
		to := s.To
		switch s.Verb {
		case paper.Close:
			to = piece[0].To
			if to == here {
				continue
			}
		case paper.Line:
		default:
			return nil
		}
		if !(to.Sub(here).Long() >= least) {
			return nil
		}
		edges = append(edges, [2]paper.Point{here, to})
		here = to
	}
	return edges
}
