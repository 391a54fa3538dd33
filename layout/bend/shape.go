package bend

import (
	"math"
	"sort"
)

// Place is a point of a solved rod.
type Place struct {
	S, X, Y   float64 // m
	Angle     float64 // rad, of the tangent
	Moment    float64 // N·m, positive where it bends the rod to rising angles
	Curvature float64 // 1/m, positive likewise; 0 on rigid stretches
}

// Shape is a rod in equilibrium.
type Shape struct {
	Thrust                float64 // N, by which the rod pushes its far foot outward; in still air the first one too
	StartThrust           float64 // N, by which it pushes its first foot outward: less by all the pushes
	StartLift, FinishLift float64 // N, upward forces of the feet on the rod
	Start, Finish         Place
	Energy                float64 // J, of bending
	Stable                bool    // least energy among shapes in its plane between the same feet
	Residual              float64 // m, by which the far end misses its foot

	spans []span
}

// span is a piece as solved: its two ends, what it is made of, the transverse force's vertical part at its left end.
type span struct {
	left, right Place
	stiff, turn float64
	lift        float64 // V at the left end
	weight      float64
	thrust      float64 // H at the left end
	push        float64
}

// shape returns the present state, an equilibrium that stable has just looked at.
func (s *Solver) shape(stable bool) *Shape {
	sh := &Shape{Stable: stable}
	s.read(sh)
	return sh
}

// read fills in places and forces from the present state, which stable or assemble has just looked at.
func (s *Solver) read(sh *Shape) {
	sh.Thrust, sh.Energy = s.now.thrust, 0
	load := s.aim.load
	sh.FinishLift = -s.now.lift
	sh.StartLift = s.weight*load - sh.FinishLift
	moment := 0.0
	if !s.rod.Start.Hinged {
		moment = s.startMoment
	}
	sh.spans = resize(sh.spans, len(s.pieces))
	x, y := 0.0, 0.0
	for i := range s.pieces {
		p := &s.pieces[i]
		sp := &sh.spans[i]
		sp.lift, sp.weight = load*p.beyond+s.now.lift, load*p.weight
		sp.thrust, sp.push = s.now.thrust-load*p.after, load*p.push
		sp.stiff, sp.turn = p.stiff, p.turn
		tl := s.now.theta[p.node] + p.offset
		sp.left = Place{S: p.s, X: x, Y: y, Angle: tl, Moment: moment}
		if p.stiff == 0 {
			sin, cos := math.Sincos(tl)
			x += p.length * cos
			y += p.length * sin
			moment += p.length * ((sp.lift-sp.weight/2)*cos - (sp.thrust+sp.push/2)*sin)
			sp.right = Place{S: p.s + p.length, X: x, Y: y, Angle: tl, Moment: moment}
			continue
		}
		tr, bubble := s.now.theta[p.node+1], s.now.bubble[i]
		sp.left.Curvature = moment/p.stiff + p.turn/p.length
		for _, q := range gauss {
			sin, cos := math.Sincos(tl*(1-q.at) + tr*q.at + bubble*4*q.at*(1-q.at))
			x += q.share * p.length * cos
			y += q.share * p.length * sin
			moment += q.share * p.length * ((sp.lift-sp.weight*q.at)*cos - (sp.thrust+sp.push*q.at)*sin)
		}
		pull := tr - tl - p.turn
		sh.Energy += p.stiff / p.length / 2 * (pull*pull + bubbleStiff*bubble*bubble)
		sp.right = Place{S: p.s + p.length, X: x, Y: y, Angle: tr, Moment: moment, Curvature: moment/p.stiff + p.turn/p.length}
	}
	sh.StartThrust = sh.spans[0].thrust
	sh.Start, sh.Finish = sh.spans[0].left, sh.spans[len(sh.spans)-1].right
	dx, dy := x-s.aim.dx, y-s.aim.dy
	sh.Residual = math.Sqrt(dx*dx + dy*dy)
}

// At returns the place at s, which is brought within the rod. Where the stiffness jumps the place belongs to the stretch
// before it.
func (sh *Shape) At(s float64) Place {
	i := sort.Search(len(sh.spans)-1, func(i int) bool { return sh.spans[i].right.S >= s })
	sp := &sh.spans[i]
	h := sp.right.S - sp.left.S
	return sh.within(sp, min(max((s-sp.left.S)/h, 0), 1))
}

// within returns the place at share xi of a span, by the cubics through the angles, moments and their slopes at its ends.
func (sh *Shape) within(sp *span, xi float64) Place {
	switch xi {
	case 0:
		return sp.left
	case 1:
		return sp.right
	}
	l, r := &sp.left, &sp.right
	h := r.S - l.S
	at := Place{S: l.S + xi*h, X: l.X, Y: l.Y, Angle: l.Angle}
	at.Moment = hermite(l.Moment, r.Moment, h*sh.slope(sp, 0), h*sh.slope(sp, 1), xi)
	if sp.stiff > 0 {
		at.Angle = hermite(l.Angle, r.Angle, h*l.Curvature, h*r.Curvature, xi)
		at.Curvature = at.Moment/sp.stiff + sp.turn/h
	}
	for _, q := range gauss {
		angle := l.Angle
		if sp.stiff > 0 {
			angle = hermite(l.Angle, r.Angle, h*l.Curvature, h*r.Curvature, xi*q.at)
		}
		sin, cos := math.Sincos(angle)
		at.X += q.share * xi * h * cos
		at.Y += q.share * xi * h * sin
	}
	return at
}

// slope is dM/ds at the left (0) or right (1) end of a span.
func (sh *Shape) slope(sp *span, end int) float64 {
	angle, lift, thrust := sp.left.Angle, sp.lift, sp.thrust
	if end == 1 {
		angle, lift, thrust = sp.right.Angle, sp.lift-sp.weight, sp.thrust+sp.push
	}
	sin, cos := math.Sincos(angle)
	return lift*cos - thrust*sin
}

func hermite(a, b, da, db, t float64) float64 {
	u := 1 - t
	return u*u*(1+2*t)*a + t*t*(1+2*u)*b + u*u*t*da - t*t*u*db
}

// Tightest returns the place of greatest curvature, either way, between from and to, rigid stretches left out. ok is false
// where nothing bends there.
func (sh *Shape) Tightest(from, to float64) (at Place, ok bool) {
	try := func(p Place) {
		if !ok || math.Abs(p.Curvature) > math.Abs(at.Curvature)*(1+1e-9) { // of equals, the first
			at, ok = p, true
		}
	}
	for i := range sh.spans {
		sp := &sh.spans[i]
		h := sp.right.S - sp.left.S
		low, high := max((from-sp.left.S)/h, 0), min((to-sp.left.S)/h, 1)
		if sp.stiff == 0 || low > high {
			continue
		}
		try(sh.within(sp, low))
		try(sh.within(sp, high))
		if xi, turns := sh.peak(sp); turns && xi > low && xi < high {
			try(sh.within(sp, xi))
		}
	}
	return at, ok
}

// Strained returns the greatest bend, 1/m, that moments hold the rod in beyond the bend it has by itself.
func (sh *Shape) Strained() float64 {
	most := 0.0
	for i := range sh.spans {
		sp := &sh.spans[i]
		if sp.stiff == 0 {
			continue
		}
		most = max(most, math.Abs(sp.left.Moment)/sp.stiff, math.Abs(sp.right.Moment)/sp.stiff)
		if xi, turns := sh.peak(sp); turns {
			most = max(most, math.Abs(sh.within(sp, xi).Moment)/sp.stiff)
		}
	}
	return most
}

// peak finds where the moment of a span is greatest or least between its ends.
func (sh *Shape) peak(sp *span) (xi float64, ok bool) {
	a, b := sh.slope(sp, 0), sh.slope(sp, 1)
	if a*b >= 0 {
		return 0, false
	}
	return a / (a - b), true
}
