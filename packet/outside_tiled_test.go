package packet

import (
	"math"
	"testing"

	"github.com/klippa-app/go-pdfium"

	"hoopwright/layout/ground"
)

// longBend is a bend over several sheets, in metric. Invented.
const longBend = `hoopwright: 1
title: Reed bank walk
units: metric
tunnel: {arches: 36, spacing: 1.3 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m}
guys: none
site:
  route: [{straight: 12 m}, {left: 80 deg, radius: 14 m}, {straight: rest}]
  start: {at: [4 m, -3 m], heading: 33 deg}
  marks: [{name: sluice, at: [0 m, 0 m]}, {name: hut, at: [15 m, 4 m]}, {name: post, at: [-9 m, 22 m]}]
`

// measureTiles lays a ruler on every sheet of a stake plan that goes over several: each sheet's stakes stand as the ground says, to 0.1 mm; so they do across two sheets that are laid
// together by the pair of stakes they share; and through that pair runs the match line, on both. Which arches a sheet shows is the picture's own to choose and asked of it; where
// they are on paper is read off the file.
func measureTiles(t *testing.T, reader pdfium.Pdfium, source string, least int) {
	p, plan := printedSpec(t, reader, []byte(source), "stakes")
	_, body := binderOf(t, plan).newSide(false)
	tiles := newStakeLeaf(plan, body).parts
	if len(tiles) < least {
		t.Fatalf("%d sheets", len(tiles))
	}
	n := len(plan.Ground.Stations)
	var before map[ground.StakeID]spot // the stakes of the sheet before
	page := 0
	for i, tile := range tiles {
		for p.scale(page) == 0 { // a back, or a sheet of words
			page++
		}
		scale := p.scale(page)
		paths := p.drawing(page)
		page++
		legs := plan.Ground.Stakes[2*tile.First-2 : 2*tile.Last]
		var dots []spot
		for _, path := range paths {
			low, high := pathBounds(path)
			if len(path) > 30 && math.Abs(high.x-low.x-2.4) < 0.02 && math.Abs(high.y-low.y-2.4) < 0.02 {
				dots = append(dots, spot{(low.x + high.x) / 2, (low.y + high.y) / 2})
			}
		}
		if len(dots) < len(legs) { // stakes are drawn first; others end leaders or explain the sign
			t.Fatalf("sheet %d: %d dots for %d stakes", i+1, len(dots), len(legs))
		}
		here := map[ground.StakeID]spot{}
		for k, s := range legs {
			here[s.StakeID] = dots[k]
		}
		worst := 0.0
		for k, s := range legs {
			for j, other := range legs[:k] {
				worst = max(worst, math.Abs(dots[k].to(dots[j])-float64(ground.Between(s, other))/scale))
			}
		}
		if worst > 0.1 {
			t.Errorf("sheet %d, at 1:%v: two stakes are %.3f mm off on paper", i+1, scale, worst)
		}
		if i > 0 {
			matchSheets(t, plan.Ground, tile.First, scale, before, here)
			matchLine(t, i+1, plan.Ground, tile.First, here, paths)
		}
		if tile.Last < n {
			matchLine(t, i+1, plan.Ground, tile.Last, here, paths)
		}
		before = here
	}
}

// matchSheets lays a sheet on the one before it, the shared pair of stakes on itself, and measures from the stakes of the one to those of the other.
func matchSheets(t *testing.T, g ground.Layout, shared int, scale float64, before, here map[ground.StakeID]spot) {
	l, r := g.Stakes[2*shared-2].StakeID, g.Stakes[2*shared-1].StakeID
	turn := math.Atan2(before[r].y-before[l].y, before[r].x-before[l].x) - math.Atan2(here[r].y-here[l].y, here[r].x-here[l].x)
	sin, cos := math.Sincos(turn)
	worst := 0.0
	for name, at := range here {
		dx, dy := at.x-here[l].x, at.y-here[l].y
		laid := spot{before[l].x + dx*cos - dy*sin, before[l].y + dx*sin + dy*cos}
		s, _ := g.Stake(name)
		for other, q := range before {
			o, _ := g.Stake(other)
			worst = max(worst, math.Abs(laid.to(q)-float64(ground.Between(s, o))/scale))
		}
	}
	if worst > 0.2 { // the angle between short lines is known to 0.1 mm at either end
		t.Errorf("laid together at arch %d, two stakes are %.3f mm off", shared, worst)
	}
}

// matchLine looks for straight lines through both stakes of an arch: what is drawn must cover most of the way between them and go on past the right one.
func matchLine(t *testing.T, sheet int, g ground.Layout, arch int, at map[ground.StakeID]spot, paths [][]spot) {
	l, r := at[g.Stakes[2*arch-2].StakeID], at[g.Stakes[2*arch-1].StakeID]
	across := l.to(r)
	covered, past := 0.0, 0.0
	for _, path := range paths {
		if len(path) != 2 {
			continue
		}
		var from, to float64
		on := true
		for i, q := range path {
			dx, dy := q.x-l.x, q.y-l.y
			on = on && math.Abs((dx*(r.y-l.y)-dy*(r.x-l.x))/across) < 0.1
			if along := (dx*(r.x-l.x) + dy*(r.y-l.y)) / across; i == 0 {
				from = along
			} else {
				to = along
			}
		}
		if from > to {
			from, to = to, from
		}
		if on && to > 0.5 {
			covered += max(0, min(to, across)-max(from, 0))
			past = max(past, to-across)
		}
	}
	if covered < 0.6*across || past < 1 {
		t.Errorf("sheet %d: the match line through arch %d covers %.1f of %.1f mm and goes on for %.1f", sheet, arch, covered, across, past)
	}
}
