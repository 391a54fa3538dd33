package draw

import (
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// SitePlan is the map of the site to scale: what stands, what lies in the ground and hangs over it, where power comes from and how cords lie. A long tunnel is
// parted over several maps; where cords would lie too close on them, the map is drawn without and they have plans of their own.
type SitePlan struct {
	Scale    paper.Scale
	Sections []Section // one a map; neighbours share an arch
	Cords    bool      // cords are drawn on it

	plan   *layout.Plan
	cords  *CordPlan
	turned bool       // ahead runs to the right
	all    bool       // the first map shows all of the site
	whole  paper.Rect // on paper, what the first map shows besides its arches, the start at the origin
}

const (
	siteMargin  paper.Length = 17  // beside the walk: names, lanes of cords
	siteEnds    paper.Length = 10  // before and past it
	siteOff     paper.Length = 6   // about what stands off it on a turned map
	siteCordBay paper.Length = 10  // distance of arches between which cords are numbered with ease: no wider map is worth less
	siteBay     paper.Length = 2   // least distance of arches on a map
	siteFoot    paper.Length = 20  // of the key under the map
	siteFar                  = 2.0 // so much smaller the whole site may be drawn than the tunnel alone would be
	siteAll                  = 120 // and down to this scale always
	siteTurn                 = 1.3 // so much larger a map is turned for: on other leaves ahead runs up
)

// NewSitePlan fits the map to a room: the largest scale at which the tunnel with its cords fits, smaller for what else the site has. Ahead runs up the page, or to
// the right where that saves parting the tunnel or shows as much so much larger.
func NewSitePlan(p *layout.Plan, series []paper.Scale, room paper.Rect) *SitePlan {
	up, right := newSitePlan(p, series, room, false), newSitePlan(p, series, room, true)
	larger := up.Scale.Ratio >= siteTurn*right.Scale.Ratio && (right.all || !up.all) && (right.Cords || !up.Cords)
	if len(right.Sections) == 1 && (larger || len(up.Sections) > 1) {
		if len(up.Sections) == 1 { // a plan of the cords of its own has more room for them
			right.Cords = up.Cords
		}
		return right
	}
	return up
}

func newSitePlan(p *layout.Plan, series []paper.Scale, room paper.Rect, turned bool) *SitePlan {
	s := &SitePlan{plan: p, cords: cordsOf(p), turned: turned}
	tunnel := Section{1, len(p.Ground.Stations)}
	beside, over := s.margins()
	room = paper.Rect{W: room.W - 2*beside, H: room.H - siteFoot - 2*over}
	fits := func(e paper.Rect) bool { return e.W <= room.W && e.H <= room.H }
	fit := func(all bool) paper.Scale {
		if k := slices.IndexFunc(series, func(sc paper.Scale) bool { return fits(s.extent(tunnel, sc, all)) }); k >= 0 {
			return series[k]
		}
		return series[len(series)-1]
	}
	s.Scale = fit(false)
	wider := fit(true)
	cordsLost := len(s.cords.cords) > 0 && s.apart(wider) < siteCordBay && s.apart(s.Scale) >= siteCordBay
	if s.all = wider.Ratio <= max(siteFar*s.Scale.Ratio, siteAll) && s.apart(wider) >= siteBay && !cordsLost; s.all {
		s.Scale = wider
	}
	s.whole = s.extent(tunnel, s.Scale, s.all)
	if e := s.above(); fits(e) {
		s.whole = e
	}
	s.Sections = []Section{tunnel}
	if s.apart(s.Scale) < siteBay || !fits(s.extent(tunnel, s.Scale, false)) {
		s.part(series, fits)
	}
	least := planSpacing
	if turned { // cords' numbers lie along them, between arches
		least = siteCordBay
	}
	s.Cords = s.apart(s.Scale) >= least || len(s.cords.cords) == 0
	return s
}

// turn is the map at a scale.
func (s *SitePlan) turn(scale paper.Scale) siteMap {
	m := newSiteMap(&s.plan.Spec.Site, scale)
	if s.turned {
		m.sin, m.cos = -m.cos, m.sin
	}
	return m
}

// Height is the room that the first map needs at its scale, with its key.
func (s *SitePlan) Height() paper.Length {
	_, over := s.margins()
	return s.whole.H + 2*over + siteFoot
}

// margins are those at the sides of what is shown, and those over and under it: they turn with the map.
func (s *SitePlan) margins() (beside, over paper.Length) {
	if s.turned {
		return siteEnds, siteMargin
	}
	return siteMargin, siteEnds
}

// apart is the distance of neighbouring arches on paper; a lone arch is as far apart as may be.
func (s *SitePlan) apart(scale paper.Scale) paper.Length {
	if len(s.plan.Ground.Stations) < 2 {
		return math.MaxFloat64
	}
	return scale.Length(float64(s.plan.Spec.Tunnel.Spacing))
}

// part cuts the tunnel into equal stretches, as few as fit at the smallest scale that keeps arches apart.
func (s *SitePlan) part(series []paper.Scale, fitting func(paper.Rect) bool) {
	n := len(s.plan.Ground.Stations)
	for _, scale := range series {
		if s.apart(scale) >= siteBay {
			s.Scale = scale
		}
	}
	for count := 2; count < n; count++ {
		s.Sections = nil
		fits := true
		for k := range count {
			sec := Section{1 + k*(n-1)/count, 1 + (k+1)*(n-1)/count}
			fits = fits && fitting(s.extent(sec, s.Scale, false))
			s.Sections = append(s.Sections, sec)
		}
		if fits {
			return
		}
	}
}

// extent is the box on paper about a stretch of arches with its guys and the outlets that feed it, or about all of the site. Where the map is turned
// what stands off the tunnel may lie in its margin, and the arrows of the ways are in the box: past the margin of a side no printer reaches.
func (s *SitePlan) extent(sec Section, scale paper.Scale, all bool) paper.Rect {
	m := s.turn(scale)
	var e box
	add := func(p paper.Point, clear paper.Length) { e.add(p, clear, clear, clear, clear) }
	for _, k := range s.plan.Stakes {
		if sec.First <= k.Arch && k.Arch <= sec.Last {
			add(m.at(k.At()), 0)
		}
	}
	for _, p := range s.cords.outletsOf(sec) {
		add(m.at(p), 0)
	}
	off := paper.Length(0)
	if s.turned {
		off = siteOff - siteEnds
		in, _ := s.wayArrow(m, sec.First, wayIn)
		_, out := s.wayArrow(m, sec.Last, wayOut)
		add(in, -siteEnds)
		add(out, -siteEnds)
	}
	if all {
		for _, p := range s.others() {
			add(m.at(p), off)
		}
	}
	return e.rect()
}

// above is what the first map shows with what hangs over the tunnel or straight beside it, as far as one keeps from it.
func (s *SitePlan) above() paper.Rect {
	m, t := s.turn(s.Scale), s.extent(Section{1, len(s.plan.Ground.Stations)}, s.Scale, false)
	const near = siteEnds * 0.6 // nothing is written beyond it: it may lie in the margin
	e := box{paper.Point{X: s.whole.X, Y: s.whole.Y}, paper.Point{X: s.whole.Right(), Y: s.whole.Bottom()}, true}
	for _, l := range s.plan.Spec.Site.Overhead {
		keep := m.length(l.Keep)
		for _, over := range []paper.Rect{{X: t.X - keep, Y: t.Y, W: t.W + 2*keep, H: t.H}, {X: t.X, Y: t.Y - keep, W: t.W, H: t.H + 2*keep}} {
			for _, p := range slices.Concat(crop(m.points(l.Line), over)...) {
				e.add(p, -near, -near, -near, -near)
			}
		}
	}
	return e.rect()
}

// others are the places of the site besides the tunnel and its cords.
func (s *SitePlan) others() (list []spec.Point) {
	site := s.plan.Spec.Site
	for _, o := range site.Outlets {
		list = append(list, o.At)
	}
	for _, p := range site.Places {
		list = append(list, p.At)
	}
	for _, m := range s.plan.Ground.Marks {
		list = append(list, m.At)
	}
	for _, f := range site.Features {
		list = append(list, f.Outline...)
		if len(f.Outline) == 0 {
			for _, d := range []spec.Point{{X: f.Radius}, {X: -f.Radius}, {Y: f.Radius}, {Y: -f.Radius}} {
				list = append(list, spec.Point{X: f.At.X + d.X, Y: f.At.Y + d.Y})
			}
		}
	}
	return list
}

// placed returns the map of a stretch with its middle in the middle of the room.
func (s *SitePlan) placed(sec Section, room paper.Rect) siteMap {
	e := s.whole
	if len(s.Sections) > 1 {
		e = s.extent(sec, s.Scale, false)
	}
	m := s.turn(s.Scale)
	m.origin = room.Centre().Sub(e.Centre())
	return m
}
