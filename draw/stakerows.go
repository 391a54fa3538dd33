package draw

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// pin returns where an arch meets its side's baseline: under its stake, unless the arch is wider or narrower than most.
func (d *stakeSheet) pin(side spec.Side, arch int) paper.Point {
	out := d.ground.Baseline
	if side == spec.Left {
		out = -out
	}
	x, y, _ := d.ground.Site(arch, out, 0)
	return d.m.at(spec.Point{X: x, Y: y})
}

// rows draws the baselines, the left one thick, the arches across and the guys.
func (d *stakeSheet) rows() {
	for _, s := range d.stakes {
		if s.Guy {
			d.b.LineRound(d.at(d.ground.Stakes[2*s.Arch-2+int(s.Side)]), d.at(s), paper.Hidden)
		}
	}
	for arch := d.First; arch <= d.Last; arch++ {
		if !d.matches(arch) {
			l, r := d.pair(arch)
			d.b.LineRound(l, r, paper.Thin)
		}
		if arch > d.First {
			d.b.LineRound(d.pin(spec.Left, arch-1), d.pin(spec.Left, arch), paper.Thick)
			d.b.LineRound(d.pin(spec.Right, arch-1), d.pin(spec.Right, arch), paper.Thin)
		}
	}
}

// spanNumbers writes the number of every span on its line, level where that is free, else along it, else at the end of a leader; one that runs along a stretch of
// something else on a dimension line of its own.
func (d *stakeSheet) spanNumbers() {
	for _, s := range d.Spans {
		if s.Text == "" {
			continue
		}
		from, to := d.spot(s.From), d.spot(s.To)
		if s.Apart != 0 && d.b.Dimension(place.Dimension{From: from, To: to, Offset: s.Apart, Text: s.Text, Lettering: paper.Dimension, Ends: place.Arrows}) {
			continue
		}
		placed := d.levelOn(from, to, s.Text, s.Across) || slices.ContainsFunc(s.Like, func(o StakeSpan) bool { return d.levelOn(d.spot(o.From), d.spot(o.To), s.Text, s.Across) }) || d.b.OnLine(from, to, s.Text, paper.Dimension) || d.b.OnLine(from, to, s.Text, paper.DimSmall)
		if !placed && !s.Across {
			d.keepArches()
		}
		d.lacks(s.Text, placed || slices.ContainsFunc([]float64{0.5, 0.35, 0.65, 0.2, 0.8}, func(share float64) bool {
			at := from.Add(to.Sub(from).Times(share))
			return d.b.Label(place.Label{At: at, Text: s.Text, Lettering: paper.DimSmall, Toward: at.Sub(d.middle()), Leader: place.Dot})
		}))
	}
}

// levelOn sets a number level on a line of straight rows, at the middle or as near it as is free, and off the lines across, whose it would seem to be. It reports
// whether it found a place.
func (d *stakeSheet) levelOn(from, to paper.Point, text string, across bool) bool {
	up, down := paper.Dimension.Extent(text)
	half := paper.Point{X: paper.Dimension.Width(text) / 2, Y: (up+down)/2 + 1}
	for _, share := range []float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74} {
		at := from.Add(to.Sub(from).Times(share))
		about := paper.Rect{X: at.X - half.X, Y: at.Y - half.Y, W: 2 * half.X, H: 2 * half.Y}
		if d.ground.Straight && (across || !d.onArch(about)) && d.b.SetFree(at.Add(paper.Point{Y: (up - down) / 2}), 0, text, paper.Dimension) {
			return true
		}
	}
	return false
}

// keepArches keeps what finds its place from now on off the lines across arches: a number there would seem to be their width.
func (d *stakeSheet) keepArches() {
	for arch := d.First; arch <= d.Last && d.ground.Straight; arch++ {
		l, r := d.pair(arch)
		d.b.Keep(paper.Rect{X: l.X, Y: l.Y, W: r.X - l.X})
	}
}

// onArch reports whether the line across an arch runs through a box.
func (d *stakeSheet) onArch(r paper.Rect) bool {
	for arch := d.First; arch <= d.Last; arch++ {
		left, right := d.pair(arch)
		if _, _, ok := cropSegment(left, right, r); ok {
			return true
		}
	}
	return false
}

// spot returns where a spot lies on paper.
func (d *stakeSheet) spot(s ground.Spot) paper.Point { return d.m.at(d.ground.At(s, d.units())) }

// spanLines draws the spans that are no lines of the plan already.
func (d *stakeSheet) spanLines() {
	for _, s := range d.Spans {
		if !s.Across && !s.Drawn && s.Apart == 0 {
			d.b.LineRound(d.spot(s.From), d.spot(s.To), paper.Hidden)
		}
	}
}

// crosses draws the crosses of a square that is set out with tapes.
func (d *stakeSheet) crosses(b *place.Board) {
	for _, s := range d.Spans {
		if at := d.spot(s.To); s.To.Kind == ground.AtAhead || s.To.Kind == ground.AtAside {
			for _, arm := range []paper.Point{{X: crossHalf, Y: crossHalf}, {X: crossHalf, Y: -crossHalf}} {
				b.Line(at.Sub(arm), at.Add(arm), paper.Thick)
			}
			b.Mark(at, crossHalf)
		}
	}
}

// walkArrow draws the arrow before arch 1: ahead of the stakes' names, which keep off it.
func (d *stakeSheet) walkArrow() {
	if d.entrance() {
		at := d.m.at(d.ground.Stations[0].At)
		d.b.WalkArrow(at.Add(paper.Point{Y: enterRoom - 7}), at.Add(paper.Point{Y: enterRoom - 17}))
	}
}

// ends writes ENTRANCE, EXIT, and what is said of an arch that two plans share.
func (d *stakeSheet) ends() {
	if d.entrance() {
		d.entranceWord(d.m.at(d.ground.Stations[0].At).Add(paper.Point{Y: d.entranceRoom() - 1}))
	} else {
		d.shared(d.First, -1)
	}
	if d.exit() {
		last := d.ground.Stations[len(d.ground.Stations)-1]
		on := paper.Polar(1, d.m.angle(last.Heading))
		word := place.Label{At: d.m.at(last.At).Add(on.Times(5)), Text: "EXIT", Lettering: paper.Heading, Toward: on, Leader: place.NoLeader}
		led := word
		led.Leader = place.Bare
		d.lacks(word.Text, d.b.Label(word) || d.b.Label(led))
	} else {
		d.shared(d.Last, 1)
	}
}

// entranceWord sets the word under the walk arrow, or beside it where a mark stands there.
func (d *stakeSheet) entranceWord(base paper.Point) {
	const word = "ENTRANCE"
	aside := paper.Heading.Width(word)/2 + 7
	places := []paper.Point{{}, {Y: 5}, {X: aside, Y: -9}, {X: -aside, Y: -9}, {X: aside, Y: 5}, {X: -aside, Y: 5}}
	d.lacks(word, slices.ContainsFunc(places, func(by paper.Point) bool { return d.b.SetFree(base.Add(by), 0, word, paper.Heading) }))
}

// matches reports whether an arch is on another plan too.
func (p StakePlan) matches(arch int) bool {
	return arch == p.First && !p.entrance() || arch == p.Last && !p.exit()
}

// sharedPen draws the line across an arch that two plans share.
var sharedPen = paper.Pen{Width: paper.Thick.Width, Dash: paper.Centre.Dash}

// shared draws the line through the stakes of an arch that is on the next plan or the one before too, and past the right one, with what that means: way is 1 toward the exit.
func (d *stakeSheet) shared(arch int, way float64) {
	other := d.Before
	if way > 0 {
		other = d.After
	}
	word := fmt.Sprintf("same dots on plan %d", other)
	l, r := d.pair(arch)
	u := r.Sub(l).Unit()
	out := u.Left().Times(way)
	const past, aside = 6, 3
	end := r.Add(u.Times(past))
	d.b.LineRound(l, end, sharedPen)
	placed := false
	for _, text := range []string{word, strings.Replace(word, "dots ", "dots\n", 1)} {
		for _, label := range []place.Label{{At: l.Add(r).Times(0.5).Add(out.Times(aside)), Leader: place.NoLeader}, {At: end, Leader: place.Bare, Reach: 60}, {At: l, Clear: zeroRadius, Leader: place.Bare, Reach: 90}} {
			label.Text, label.Lettering, label.Toward = text, paper.Strong, out
			placed = placed || d.b.Label(label)
		}
	}
	d.lacks(word, placed)
}

// ties draws the tapes that find dots from marks.
func (d *stakeSheet) ties() {
	for _, dot := range d.Tied {
		at := d.m.at(d.ground.Stakes[dot.Spot.Index].At())
		for _, from := range []ground.Spot{dot.From, dot.To} {
			if p, q, ok := cropSegment(d.m.at(d.ground.Marks[from.Index].At), at, d.room); ok {
				d.b.LineRound(p, q, paper.Tied)
			}
		}
	}
}
