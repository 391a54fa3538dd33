package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// Pens of the site, by what their line means.
var (
	buriedPen   = paper.Pen{Width: 0.70, Dash: []paper.Length{6, 1.4, 1.4, 1.4}}
	overheadPen = paper.Pen{Width: 0.70, Dash: []paper.Length{9, 3}}
)

// nearFeatures are the features beside stakes of the plan.
func (p StakePlan) nearFeatures() (list []spec.Feature) {
	for _, f := range p.spec.Site.Features {
		if slices.ContainsFunc(p.stakes, func(s ground.Stake) bool { return ground.FromFeature(s, f) < practice.FeatureNear(p.spec.Units) }) {
			list = append(list, f)
		}
	}
	return list
}

func (d *stakeSheet) yard() yard { return yard{d.b, d.m, d.room} }

// siteLines draws what is on, in and over the ground.
func (d *stakeSheet) siteLines() {
	y := d.yard()
	y.rims(d.features, paper.Thick)
	for _, l := range d.spec.Site.Buried {
		y.path(d.m.points(l.Line), buriedPen)
		for _, side := range d.m.band(l) {
			y.path(side, paper.Other)
		}
	}
	for _, l := range d.spec.Site.Overhead {
		y.path(d.m.points(l.Line), overheadPen)
	}
}

func (d *stakeSheet) featureName(f spec.Feature) string {
	name := f.Name
	if f.Hard {
		name += ", hard:\nno stake here"
	}
	if f.Height > 0 {
		name += ",\n" + d.units().Room(f.Height) + " high"
	}
	return name
}

// featureNames sets the names of features inside what is seen of them, before lines cross them. The others find a place later.
func (d *stakeSheet) featureNames() {
	d.features = d.nearFeatures()
	d.named = make([]bool, len(d.features))
	for i, f := range d.features {
		if seen := cropOutline(d.m.outline(f), d.room); seen != nil {
			d.named[i] = d.nameInside(seen, d.featureName(f))
		}
	}
}

// siteNames names the features that had no room inside.
func (d *stakeSheet) siteNames() {
	for i, f := range d.features {
		if seen := cropOutline(d.m.outline(f), d.room); seen != nil && !d.named[i] {
			d.nameBy(seen, f.Name, d.featureName(f))
		}
	}
}

// lineNames says what the lines of the site are, and what they forbid: before anything else that finds its own place, for a line without a name can kill.
func (d *stakeSheet) lineNames() {
	for _, l := range d.spec.Site.Buried {
		forbids := fmt.Sprintf(": drive no\nstake within %s", d.units().Inches(l.Keep))
		sides := d.m.band(l) // of a line past the edge its band may be seen
		for _, line := range [][]paper.Point{d.m.points(l.Line), sides[0], sides[1]} {
			if d.nameLine(line, d.m.length(l.Keep), l.Name, forbids) {
				break
			}
		}
	}
	for _, l := range d.spec.Site.Overhead {
		d.nameLine(d.m.points(l.Line), 0, l.Name+", "+d.units().Room(l.Height)+" up", fmt.Sprintf(":\nkeep pipe and ladders %s off", d.units().Room(l.Keep)))
	}
}

// keepBands keeps what finds its place from now on out of the bands of buried lines: a mark's letter there would seem to name the line.
func (d *stakeSheet) keepBands() {
	const step, inner = 2, 0.75 // squares along the line that stay within its band however it slants
	for _, l := range d.spec.Site.Buried {
		keep := d.m.length(l.Keep)
		half := keep * inner
		for i, line := 1, d.m.points(l.Line); i < len(line); i++ {
			p, q, ok := cropSegment(line[i-1], line[i], d.room.Inset(-keep))
			for at := paper.Length(0); ok && at < q.Sub(p).Long(); at += step {
				c := p.Add(q.Sub(p).Unit().Times(float64(at)))
				d.b.Keep(paper.Rect{X: c.X - half, Y: c.Y - half, W: 2 * half, H: 2 * half})
			}
		}
	}
}

// nameInside sets a feature's name inside what is seen of it, the nearest to its middle.
func (d *stakeSheet) nameInside(seen []paper.Point, name string) bool {
	centre := paper.Bounds(seen...).Centre()
	for _, share := range []float64{0, 0.3, 0.6} {
		for _, p := range seen {
			if d.centred(seen, centre.Add(p.Sub(centre).Times(share)), name) {
				return true
			}
		}
	}
	return false
}

// holds reports whether a box's corners lie within an outline: an odd number of its edges to the right of each. An edge of the picture that cuts an outline
// off is no edge of it: a box may come near that.
func holds(outline []paper.Point, r paper.Rect) bool {
	for _, c := range []paper.Point{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.X, Y: r.Bottom()}, {X: r.Right(), Y: r.Bottom()}} {
		in := false
		for i, p := range outline {
			q := outline[(i+1)%len(outline)]
			if (p.Y > c.Y) != (q.Y > c.Y) && c.X < p.X+(q.X-p.X)*(c.Y-p.Y)/(q.Y-p.Y) {
				in = !in
			}
		}
		if !in {
			return false
		}
	}
	return true
}

// nameBy sets a feature's name beside what is seen of it, with a leader; the short name if there is no room for more.
func (d *stakeSheet) nameBy(seen []paper.Point, short, name string) {
	centre := paper.Bounds(seen...).Centre()
	for _, text := range []string{name, short} {
		label := place.Label{At: centre, Text: text, Lettering: paper.Body, Align: paper.AtMiddle, Leader: place.Dot}
		if d.b.Label(label) {
			return
		}
		for _, p := range seen { // pointing nearer to the rim
			if label.At = centre.Add(p.Sub(centre).Times(0.7)); d.b.Label(label) {
				return
			}
		}
	}
	d.lacks(short, false)
}

// centred sets lines of text about a point, if all are free there and within an outline.
func (d *stakeSheet) centred(outline []paper.Point, at paper.Point, text string) bool {
	l := paper.Body
	lines := strings.Split(text, "\n")
	wide, high := l.Widest(lines), l.Leading()*paper.Length(len(lines))
	if !holds(outline, paper.Rect{X: at.X - wide/2, Y: at.Y - high/2, W: wide, H: high}.Inset(-1.2)) {
		return false
	}
	baseline := func(i int) paper.Point {
		return paper.Point{X: at.X, Y: at.Y + l.Ascent()/2 + l.Leading()*(paper.Length(i)-paper.Length(len(lines)-1)/2)}
	}
	for i, line := range lines {
		if !d.b.FreeText(baseline(i), 0, line, l) {
			return false
		}
	}
	for i, line := range lines {
		d.b.Text(baseline(i), paper.AtMiddle, line, l)
	}
	return true
}

// nameLine sets a line's name with what it forbids beside the longest stretch of it that is on the page, clear of its band; where there is no room for more the name
// alone, along the line, else beside it. It reports whether any of the line is on the page.
func (d *stakeSheet) nameLine(line []paper.Point, clear paper.Length, name, forbids string) bool {
	p, q, ok := d.yard().longest(line)
	if !ok {
		return false
	}
	wrapped := func(wide paper.Length) string {
		return strings.Join(paper.Body.Wrap(strings.ReplaceAll(name+forbids, "\n", " "), wide), "\n")
	}
	for _, text := range []string{name + forbids, wrapped(30), wrapped(20), name, strings.Join(paper.Words(name), "\n")} {
		if text == name && d.b.Along(p, q, name, paper.Body) {
			return true
		}
		if d.yard().named(p, q, place.Label{Text: text, Lettering: paper.Body, Reach: clear + 50}, 0.9, 0.1, 0.75, 0.25, 0.5, 0.02, 0.98, 0.35, 0.65) {
			return true
		}
	}
	d.lacks(name, false)
	return true
}

// hatches fills hard ground and the bands of buried lines. They come last: a hatch keeps off every text.
func (d *stakeSheet) hatches() {
	d.yard().hardGround(d.features)
	for _, l := range d.spec.Site.Buried {
		d.yard().band(l, -math.Pi/4, 3.5)
	}
}
