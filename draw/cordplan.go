package draw

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// CordPlan is the plan of the tunnel to scale with every cord outside its wall. Cords lie against the feet; they are drawn in lanes beside them so that they can be
// told apart. A long tunnel is cut into sections with match lines.
type CordPlan struct {
	Scale    paper.Scale
	Sections []Section

	plan  *layout.Plan
	cords []cordLine
	feet  map[spec.Point]ground.Stake
	first paper.Length // from the feet to the first lane
}

// Section is a run of arches that one page holds.
type Section struct{ First, Last int }

// cordLine is a cord on the plan: its way, and the lane that it takes along its wall.
type cordLine struct {
	number int
	inLine int // further cords in one line that end with it
	path   []spec.Point
	wall   spec.Side
	lane   int
	outlet bool // comes from the outlet
	from   int  // the number of the cord that feeds it, 0 for an outlet

	first, last int // arches that it passes along its wall
}

// name is its number; of cords in one line the first and the last.
func (k cordLine) name() string {
	switch k.inLine {
	case 0:
		return fmt.Sprintf("C%d", k.number)
	case 1:
		return fmt.Sprintf("C%d, C%d", k.number-1, k.number)
	}
	return fmt.Sprintf("C%d to C%d", k.number-k.inLine, k.number)
}

const (
	planLane    paper.Length = 4   // from lane to lane: room for a number on one, so that nobody scales more than he must out of what lies against the feet
	planFirst   paper.Length = 2   // from the feet to the first lane
	planMargin  paper.Length = 14  // before the first arch and past the last
	planSpacing paper.Length = 6.5 // least distance of arches on paper
)

// NewCordPlan fits the plan to a room: on one page where arches stay far enough apart, else in sections at the smallest scale that keeps them so.
func NewCordPlan(p *layout.Plan, series []paper.Scale, room paper.Rect) *CordPlan {
	c := cordsOf(p)
	n := len(p.Ground.Stations)
	apart := float64(p.Spec.Tunnel.Spacing)
	for _, s := range series {
		if n > 1 && s.Length(apart) < planSpacing {
			break
		}
		c.Scale = s
		if c.fits(Section{1, n}, room) {
			c.Sections = []Section{{1, n}}
			return c
		}
	}
	if c.Scale.Ratio == 0 {
		c.Scale = series[len(series)-1]
	}
	c.Sections = c.sections(n, room)
	return c
}

// sections cuts the tunnel into as few runs of arches as fit the room, about equally long. The arch at a match line is in both.
func (c *CordPlan) sections(n int, room paper.Rect) []Section {
	cut := func(most int) []Section {
		var out []Section
		for first := 1; ; {
			last := first
			for last < n && last-first < most && c.fits(Section{first, last + 1}, room) {
				last++
			}
			out = append(out, Section{first, last})
			if last == n {
				return out
			}
			first = max(last, first+1)
		}
	}
	few := cut(n)
	return cut((n - 1 + len(few) - 1) / len(few))
}

// whole rounds a place to the millimetre, so that a string's end at a foot is that foot.
func whole(p spec.Point) spec.Point {
	return spec.Point{X: measure.Length(math.Round(float64(p.X))), Y: measure.Length(math.Round(float64(p.Y)))}
}

// footAt returns the foot at a place, and whether there is one.
func (c *CordPlan) footAt(p spec.Point) (ground.Stake, bool) {
	f, ok := c.feet[whole(p)]
	return f, ok
}

// margins returns what the lanes beside a section take at each side of the walls.
func (c *CordPlan) margins(s Section) paper.Length {
	most := 0
	for _, k := range c.cords {
		beside := slices.ContainsFunc(k.path, func(p spec.Point) bool {
			f, ok := c.footAt(p)
			return ok && s.First <= f.Arch && f.Arch <= s.Last
		})
		if beside {
			most = max(most, k.lane+1)
		}
	}
	return planFirst + planLane*paper.Length(most)
}

// extent returns the box, turned as the map is and at full size, about a section with the outlets that feed it.
func (c *CordPlan) extent(s Section) paper.Rect {
	m := newSiteMap(&c.plan.Spec.Site, paper.Scale{Ratio: 1})
	var e box
	for _, k := range c.feet {
		if s.First <= k.Arch && k.Arch <= s.Last {
			e.add(m.at(k.At()), 0, 0, 0, 0)
		}
	}
	for _, o := range c.outletsOf(s) {
		e.add(m.at(o), 0, 0, 0, 0)
	}
	return e.rect()
}

// outletsOf returns where the outlets stand whose cords come to a section's arches first.
func (c *CordPlan) outletsOf(s Section) []spec.Point {
	var out []spec.Point
	for _, k := range c.cords {
		if f, ok := c.firstFoot(k); k.outlet && ok && s.First <= f.Arch && f.Arch <= s.Last {
			out = append(out, k.path[0])
		}
	}
	return out
}

// firstFoot is the foot that a cord comes to first, if any.
func (c *CordPlan) firstFoot(k cordLine) (ground.Stake, bool) {
	for _, p := range k.path {
		if f, ok := c.footAt(p); ok {
			return f, true
		}
	}
	return ground.Stake{}, false
}

// placed returns the map of a section at the plan's scale, its middle in the middle of a room.
func (c *CordPlan) placed(s Section, room paper.Rect) siteMap {
	return newSiteMap(&c.plan.Spec.Site, c.Scale).centred(c.extent(s).Centre(), room)
}

// fits reports whether a section fits a room at the plan's scale.
func (c *CordPlan) fits(s Section, room paper.Rect) bool {
	return c.width(s) <= room.W && c.Height([]Section{s}) <= room.H
}
