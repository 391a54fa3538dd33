package draw

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// siteSheet is one map being drawn.
type siteSheet struct {
	*SitePlan
	b       *place.Board
	m       siteMap
	room    paper.Rect
	sec     Section
	first   bool          // the map that shows what lies off the tunnel
	later   []place.Label // the ways' names, set where no cord lies
	ways    [][]leg       // of the cords
	aside   []int         // arches whose numbers found no place on them
	under   []string      // said under the map, for it found no room on it
	texts   []string      // set on it
	missing []string      // of them, and of the cords' numbers, what found no room
}

// SiteWords says what the map writes beside its signs; the words are the caller's.
type SiteWords struct {
	Outlet   func(o spec.Outlet) string
	Place    func(p spec.SitePlace) string
	Buried   func(l spec.Buried) string
	Overhead func(l spec.Overhead) string
}

// Draw draws the i-th map in the room and returns what found no place. What is said of a place and finds no room beside it stands under the map, its name alone on it.
// Where some found none at all, they and one other come before the rest: that other with which most find room, by the shortest leaders.
func (s *SitePlan) Draw(page *paper.Page, room paper.Rect, i int, words SiteWords) []string {
	try := func(t mapTexts) (*siteSheet, mapTexts) {
		d := s.drawn(&paper.Page{}, room, i, words, t)
		for k := 0; k < 3 && len(d.under) > len(t.under); k++ { // a line more under the map moves it
			t.under = d.under
			d = s.drawn(&paper.Page{}, room, i, words, t)
		}
		d.missing = append(d.missing, d.under[len(t.under):]...)
		return d, t
	}
	best, texts := try(mapTexts{})
	lacks, all := best.missing, best.texts
	for k := 0; k < len(all) && len(lacks) > 0; k++ {
		d, t := try(mapTexts{first: append(slices.Clip(lacks), all[k])})
		if cmp.Or(len(d.missing)-len(best.missing), cmp.Compare(d.b.Led, best.b.Led)) < 0 {
			best, texts = d, t
		}
	}
	s.drawn(page, room, i, words, texts)
	return best.missing
}

// mapTexts is how a map's texts are set: those said under it, and those that come before their turn.
type mapTexts struct{ under, first []string }

// drawn draws a map with texts under it. Signs and lines that cannot move go first, then their names, hatching last.
func (s *SitePlan) drawn(page *paper.Page, room paper.Rect, i int, words SiteWords, texts mapTexts) *siteSheet {
	high := siteFoot + paper.Floor.Leading()*paper.Length(len(underLines(texts.under, room.W))) + 1
	foot := paper.Rect{X: room.X, Y: room.Bottom() - high, W: room.W, H: high}
	room.H -= high
	d := &siteSheet{SitePlan: s, b: place.NewBoard(page, room), room: room, sec: s.Sections[i], first: i == 0, under: slices.Clip(texts.under)}
	d.m = s.placed(d.sec, room)
	d.signs()
	d.stakes()
	d.guyStakes()
	d.archNumbers()
	d.walks()
	d.lines() // no cord's number lies on them
	left := d.cordTags()
	d.arches()
	for _, way := range d.ways {
		drawWay(d.b, way, room)
	}
	d.missing = append(d.missing, d.cords.tagsBeside(d.b, d.ways, left, room)...)
	d.set(slices.Concat(d.names(words), d.numbers(), d.offMap(), []naming{{"north", d.north}}), texts)
	d.hatches()
	d.signs() // again, over what runs into them
	d.guyStakes()
	d.key(foot)
	return d
}

// underLines are texts as they stand under the map.
func underLines(texts []string, width paper.Length) (lines []string) {
	for _, t := range texts {
		lines = append(lines, paper.Floor.Wrap(t, width)...)
	}
	return lines
}

// shown reports whether a place is on the map, with room for its sign.
func (d *siteSheet) shown(p spec.Point) (paper.Point, bool) {
	at := d.m.at(p)
	return at, d.room.Inset(siteInset).Contains(at)
}

// siteInset is the room of a sign at the map's edge.
const siteInset paper.Length = 4

// Where the arrows of the ways begin and end, ahead of their arch.
var wayIn, wayOut = [2]float64{-13, -3}, [2]float64{3.5, 13.5}

// wayArrow is where an arrow at an arch begins and ends.
func (s *SitePlan) wayArrow(m siteMap, arch int, ends [2]float64) (from, to paper.Point) {
	l, r := s.cords.pair(m, arch)
	mid, ahead := l.Add(r).Times(0.5), r.Sub(l).Unit().Left()
	return mid.Add(ahead.Times(ends[0])), mid.Add(ahead.Times(ends[1]))
}

// walks draws the ways in and out, the side ways that rows leave open, and where the walk goes on on another map.
func (d *siteSheet) walks() {
	n := len(d.plan.Ground.Stations)
	arrow := func(arch int, ends [2]float64, words string) {
		from, to := d.wayArrow(d.m, arch, ends)
		d.b.WalkArrow(from, to)
		end, away := from, from.Sub(to)
		if ends[0] > 0 {
			end, away = to, to.Sub(from)
		}
		d.later = append(d.later, place.Label{At: end, Text: words, Lettering: paper.Strong, Clear: 0.5, Toward: away, Leader: place.Bare})
	}
	in, out := "way in", "way out"
	if d.sec.First > 1 {
		in = fmt.Sprintf("from arch %d on", d.sec.First)
	}
	if d.sec.Last < n {
		out = fmt.Sprintf("goes on from arch %d", d.sec.Last)
	}
	arrow(d.sec.First, wayIn, in)
	arrow(d.sec.Last, wayOut, out)
	for bay := d.sec.First; bay < d.sec.Last; bay++ {
		for _, wall := range []spec.Side{spec.Left, spec.Right} {
			if !d.plan.Spec.IsWay(wall, bay) {
				continue
			}
			a, b := d.plan.Stakes[2*bay-2+int(wall)], d.plan.Stakes[2*bay+int(wall)]
			mid := d.m.at(a.At()).Add(d.m.at(b.At())).Times(0.5)
			l, r := d.cords.pair(d.m, bay)
			d.later = append(d.later, place.Label{At: mid, Text: "side way", Lettering: paper.Strong, Clear: 1, Pointed: true, Leader: place.Arrow, Toward: mid.Sub(l.Add(r).Times(0.5))})
		}
	}
}

// cordTags finds the cords' ways, to be drawn round the numbers that it sets on them, and returns which found no place.
func (d *siteSheet) cordTags() []int {
	if !d.Cords {
		return nil
	}
	d.b.Area = d.room
	d.ways = d.cords.ways(d.m, d.sec)
	return d.cords.tags(d.b, d.ways, d.room)
}

// siteEvery is the least distance on paper of arches that are all numbered.
const siteEvery = siteCordBay

// archNumbers sets each arch's number on it, larger than those of cords.
func (d *siteSheet) archNumbers() {
	size := paper.StakeName.Sized(16)
	if l, r := d.cords.pair(d.m, d.sec.First); r.Sub(l).Long() < siteWide {
		size = paper.CellSmall
	}
	for n := d.sec.First; n <= d.sec.Last && !d.cramped(); n++ {
		l, r := d.cords.pair(d.m, n)
		if d.cords.rightTaken(n) {
			l, r = r, l
		}
		if !numberArch(d.b, l, r, fmt.Sprint(n), size) {
			d.aside = append(d.aside, n)
		}
	}
}

// numberArch sets an arch's number on it, toward its far foot first, off an outlet or a mark that stands there, and reports whether it found a place.
func numberArch(b *place.Board, near, far paper.Point, number string, as paper.Lettering) bool {
	up, _ := as.Extent(number)
	shares := []float64{0.7, 0.3, 0.6, 0.4, 0.5, 0.8, 0.2}
	if far.Sub(near).Long() < siteWide {
		shares = []float64{0.6, 0.4, 0.5, 0.7, 0.3} // off the feet
	}
	for _, share := range shares {
		if at := near.Add(far.Sub(near).Times(share)); b.FreeText(at.Add(paper.Point{Y: up * 0.47}), 0, number, as) {
			centredText(b, at, number, as)
			return true
		}
	}
	return false
}

// arches draws each arch from foot to foot, and the guys to their stakes.
func (d *siteSheet) arches() {
	for _, k := range d.plan.Stakes {
		if !k.Guy || k.Arch < d.sec.First || k.Arch > d.sec.Last {
			continue
		}
		l, r := d.cords.pair(d.m, k.Arch)
		if k.Side == spec.Right {
			l = r
		}
		d.b.LineRound(l, d.m.at(k.At()), paper.Hidden)
	}
	for n := d.sec.First; n <= d.sec.Last; n++ {
		l, r := d.cords.pair(d.m, n)
		d.b.LineRound(l, r, paper.Thick)
	}
}

// siteWide is the least width of an arch on paper on which a large number leaves some of it to be seen.
const siteWide paper.Length = 18

// siteNarrow is the least width of an arch on paper on which its number stands.
const siteNarrow paper.Length = 7

// cramped reports whether arches are too close or too narrow to have their numbers on them.
func (d *siteSheet) cramped() bool {
	l, r := d.cords.pair(d.m, d.sec.First)
	return d.apart(d.Scale) < siteEvery || r.Sub(l).Long() < siteNarrow
}

// numbers numbers the arches beside the row where they are cramped: every tenth where they lie too close for all.
func (d *siteSheet) numbers() (list []naming) {
	for n := d.sec.First; n <= d.sec.Last && d.cramped(); n++ {
		if n == d.sec.First || n == d.sec.Last || n%10 == 0 || d.apart(d.Scale) >= siteEvery {
			d.aside = append(d.aside, n)
		}
	}
	for _, n := range d.aside {
		l, r := d.cords.pair(d.m, n)
		beside := func(foot, other paper.Point) bool {
			return d.b.Label(place.Label{At: foot, Text: fmt.Sprint(n), Lettering: paper.CellSmall, Clear: 1, Toward: foot.Sub(other), Leader: place.Bare, Reach: 110})
		}
		list = append(list, naming{fmt.Sprintf("arch %d", n), func() bool { return beside(l, r) || beside(r, l) }})
	}
	return list
}

// naming is a text to be set on the map where it finds room.
type naming struct {
	what string
	set  func() bool // reports whether it found any
}

// set sets texts, some before their turn, and keeps what found no room.
func (d *siteSheet) set(list []naming, texts mapTexts) {
	turn := func(n naming) int {
		if k := slices.Index(texts.first, n.what); k >= 0 {
			return k
		}
		return len(texts.first)
	}
	slices.SortStableFunc(list, func(a, b naming) int { return turn(a) - turn(b) })
	for _, n := range list {
		d.texts = append(d.texts, n.what)
		if !n.set() {
			d.missing = append(d.missing, n.what)
		}
	}
}

// names say what the ways, signs and lines are: first what someone must find, then what must be kept off, then the rest.
func (d *siteSheet) names(words SiteWords) (list []naming) {
	for _, l := range d.later {
		list = append(list, naming{l.Text, func() bool { return d.b.Label(l) }})
	}
	site := d.plan.Spec.Site
	name := func(p spec.Point, text, short string, l paper.Lettering, clear paper.Length) {
		if at, ok := d.shown(p); ok && text != "" {
			label := place.Label{At: at, Lettering: l, Clear: clear + 0.3, Leader: place.Bare, Toward: at.Sub(d.room.Centre())}
			list = append(list, naming{strings.ReplaceAll(text, "\n", " "), func() bool { return d.named(label, text, short) }})
		}
	}
	for _, p := range site.Places {
		name(p.At, words.Place(p), placeName(p), paper.Strong, sitePlace)
	}
	for _, o := range site.Outlets {
		name(o.At, words.Outlet(o), o.Name+" outlet", paper.Floor, siteOutlet)
	}
	list = append(list, naming{"", d.bands})
	for _, l := range site.Buried {
		list = append(list, d.along(d.m.points(l.Line), words.Buried(l), d.m.length(l.Keep))...)
	}
	for _, l := range site.Overhead {
		list = append(list, d.along(d.m.points(l.Line), words.Overhead(l), 0)...)
	}
	for _, f := range site.Features {
		if seen := cropOutline(d.m.outline(f), d.room); seen != nil {
			list = append(list, naming{f.Name, func() bool { return d.feature(seen, f.Name) }})
		}
	}
	for _, m := range d.plan.Ground.Marks {
		name(m.At, m.Name, m.Name, paper.Floor, siteMark)
	}
	return list
}

// named sets a text beside its sign, else under the map and its short form here, and reports whether either found room.
func (d *siteSheet) named(label place.Label, text, short string) bool {
	set := func(text string, reach paper.Length) bool {
		label.Text, label.Reach = text, reach
		return d.b.Label(label)
	}
	line := strings.ReplaceAll(text, "\n", " ")
	said := slices.Contains(d.under, line)
	switch {
	case !said && (set(text, 0) || set(line, 0) || set(text, 110)):
	case !set(short, 110):
		return false
	case short != text && !said:
		d.under = append(d.under, line)
	}
	return true
}

// offMap are arrows from the map's edge to what lies off it, with what that is; those that find no room are said under the map. Over several maps the first one has them.
func (d *siteSheet) offMap() (list []naming) {
	if !d.first {
		return nil
	}
	site := d.plan.Spec.Site
	point := func(p spec.Point, name string) {
		far := measure.Length(math.Hypot(float64(p.X-site.Start.X), float64(p.Y-site.Start.Y)))
		text := fmt.Sprintf("%s, %s from arch 1", name, d.plan.Spec.Units.Room(far))
		if _, ok := d.shown(p); ok || slices.Contains(d.under, text) || len(d.Sections) > 1 && d.elsewhere(p) {
			return
		}
		list = append(list, naming{text, func() bool {
			if !d.pointed(d.m.at(p), text) {
				d.under = append(d.under, text)
			}
			return true
		}})
	}
	for _, p := range site.Places {
		point(p.At, placeName(p))
	}
	for _, o := range site.Outlets {
		point(o.At, o.Name+" outlet")
	}
	for _, m := range d.plan.Ground.Marks {
		point(m.At, m.Name)
	}
	return list
}

// pointed sets an arrow at the map's edge to a place off it, as near to where that comes nearest as no text lies in its way, with what is said of it.
func (d *siteSheet) pointed(to paper.Point, text string) bool {
	const long, step, most = 8, 4, 60
	rim := d.room.Inset(1.5)
	if inner := d.room.Inset(siteInset); rim.Contains(to) { // across the rim: past it
		to = to.Add(to.Sub(nearestIn(inner, to)).Unit().Times(long))
	}
	_, nearest, ok := cropSegment(d.room.Centre(), to, rim)
	for shift := paper.Length(0); ok && shift < most; shift += step {
		for _, side := range []paper.Length{1, -1} {
			tip := alongRim(rim, nearest, side*shift)
			u := to.Sub(tip).Unit()
			tail := tip.Sub(u.Times(long))
			before := len(d.b.Page.Ops)
			if rim.Contains(tip.Add(u.Times(2))) || !rim.Contains(tail) || d.b.OnText(tail, tip) {
				continue
			}
			d.b.Arrow(tail, tip, paper.Thin)
			if d.b.Label(place.Label{At: tail, Text: text, Lettering: paper.Floor, Leader: place.Bare, Reach: 70}) {
				return true
			}
			d.b.Page.Ops = d.b.Page.Ops[:before]
		}
	}
	return false
}

// elsewhere reports whether another map shows a place.
func (d *siteSheet) elsewhere(p spec.Point) bool {
	for i := range d.Sections[1:] {
		other := &siteSheet{SitePlan: d.SitePlan, room: d.room, m: d.placed(d.Sections[i+1], d.room)}
		if _, ok := other.shown(p); ok {
			return true
		}
	}
	return false
}

// north finds a free place for the arrow by the edges, the top right first, and reports whether there is one.
func (d *siteSheet) north() bool {
	north := d.plan.Spec.Site.North
	if north == nil {
		return true
	}
	const side, step = 29, 4 // the letter stands outside the ring
	for y := d.room.Y; y+side <= d.room.Bottom(); y += step {
		for x := d.room.Right() - side; x >= d.room.X; x -= step {
			if r := (paper.Rect{X: x, Y: y, W: side, H: side}); d.b.Free(r) {
				d.b.North(r.Centre(), d.m.angle(*north))
				return true
			}
		}
	}
	return false
}

// placeName is a place's name, or its use where it has none.
func placeName(p spec.SitePlace) string {
	if p.Name == "" {
		return p.For
	}
	return p.Name
}
