package packet

import (
	"fmt"
	"math"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// holdWords name the holds, without their figures: those stand on the leaf of the crew.
var holdWords = map[crew.Action]string{
	crew.TrialArch: "Trial arch measured", crew.CheckDots: "Dots checked", crew.AskOwner: "Owner asked", crew.LookUp: "Looked up: wires", crew.CallLocator: "Locator called", crew.ReadTicket: "Ticket good",
	crew.PullTest: "Stake 1 pulled", crew.MeasureWidths: "Widths of stakes", crew.TestOutlets: "Outlets trip", crew.TestStrings: "Every string lit", crew.TryWrapped: "Wrapped legs lit",
	crew.CheckDay: "Wind, cold, people", crew.WatchLine: "Wire watcher named", crew.MeasureBay: "Bay 1 measured", crew.SightAlong: "Caps counted",
	crew.TryOpening: "Sticks through", crew.CheckCords: "Cords looked at", crew.TestLoaded: "TEST, all lit", crew.DarkWalk: "Dark walk",
}

// holdLeaves are the leaves on which the crews' holds have their figures.
var holdLeaves = map[crew.Phase]string{
	crew.Marking: "stakes", crew.Driving: "stakes", crew.Cutting: "stock", crew.Wrapping: "lights", crew.Raising: "raise", crew.Hanging: "raise", crew.Powering: "power",
}

// dayHold is a hold of the day: when it comes about, what it is, on which leaf its figure is found.
type dayHold struct {
	when, what string
	leaf       int
}

// dayHolds lists the holds in the order of the day, to be ticked.
func (b *binder) dayHolds(s crew.Schedule) []block.Block {
	list := b.holdsOf(s)
	if len(list) == 0 {
		return nil
	}
	return []block.Block{
		{Name: "holds", Gap: 3, Keep: true, Body: block.Words{Lettering: paper.Strong, Text: "Holds, black on the bars: nobody goes on before the crew's leaf (number) is signed."}},
		{Name: "holds", Gap: 1, Body: holdGrid(list)},
	}
}

// holdsOf gathers the holds of marking and building, each once: of a work by stretches with the first of them.
func (b *binder) holdsOf(s crew.Schedule) []dayHold {
	var list []dayHold
	type timed struct {
		key  int
		hold dayHold
	}
	var all []timed
	for k, j := range s.Jobs {
		if k > 0 && s.Jobs[k-1].Work == j.Work {
			continue
		}
		for _, i := range j.Tasks {
			t := b.plan.Crew.Tasks[i]
			if !t.Hold {
				continue
			}
			h := dayHold{what: b.holdName(t), leaf: leafNumber(holdLeaves[t.Phase])}
			if j.First > 0 {
				h.what += ", each stretch"
			}
			key := 1 << 30 // by dark
			if day, at, ok := b.holdTime(j, i); ok {
				key = day*24*60 + int(at)
				switch d := s.Days[day].Date; {
				case day < s.Marked && d.IsZero():
				case day < s.Marked:
					h.when = d.Format("2 Jan")
				case !d.IsZero() && len(s.Built()) > 1:
					h.when = d.Format("Mon ") + at.String()
				default:
					h.when = at.String()
				}
			}
			all = append(all, timed{key, h})
		}
	}
	for len(all) > 0 { // few: take the earliest, in the order of the tasks where two are alike
		first := 0
		for i := range all {
			if all[i].key < all[first].key {
				first = i
			}
		}
		list = append(list, all[first].hold)
		all = append(all[:first], all[first+1:]...)
	}
	return list
}

// holdTime is when a hold of a job comes about, by the share of the job's work that is done with it; where the job goes on over a night, at its end.
func (b *binder) holdTime(j crew.Job, task int) (day int, at crew.Clock, ok bool) {
	day, at, ok = j.End()
	if !ok || j.Stints[0].Day != day {
		return day, at, ok
	}
	done, all := 0.0, 0.0
	for _, i := range j.Tasks {
		all += b.plan.Crew.Tasks[i].Minutes
		if i <= task {
			done = all
		}
	}
	const quarter = 15
	if begin := j.Stints[0].Begin; all > 0 {
		at = begin + crew.Clock(math.Ceil(float64(at-begin)*done/all/quarter))*quarter
	}
	return day, at, true
}

// holdName names a hold.
func (b *binder) holdName(t crew.Task) string {
	site := b.spec.Site
	switch name := holdWords[t.Action]; {
	case t.Action == crew.MeasureArch:
		return say.Capital(say.Numbered("arch", t.Of.Arches)) + " measured"
	case t.Action == crew.PullTest && site.Soil == spec.SoilUnknown:
		return name + ", soil"
	case t.Action == crew.TestOutlets && site.NotKnown(spec.BreakerAmps):
		return "Trip, breaker read"
	default:
		return name
	}
}

// holdGrid is holds in columns, each with a box to tick, read from top to bottom.
type holdGrid []dayHold

const (
	holdColumns              = 3
	holdHigh    paper.Length = 7.4
	holdGap     paper.Length = 3
	holdTab     paper.Length = 5 // the leaf's number, white on black
)

func (g holdGrid) rows() int { return (len(g) + holdColumns - 1) / holdColumns }

// column is the width of one.
func (g holdGrid) column(width paper.Length) paper.Length {
	return (width - holdGap*(holdColumns-1)) / holdColumns
}

// lines are a hold's words beside its box, leaf and time.
func (g holdGrid) lines(width paper.Length, h dayHold) []string {
	return paper.Floor.Wrap(h.what, g.column(width)-paper.TickBoxSide-holdTab-3-h.width())
}

// width is the room for its time: times of day stand in line.
func (h dayHold) width() paper.Length {
	return max(paper.Strong.Sized(11).Width("00:00"), paper.Strong.Sized(11).Width(h.when)) + 1.5
}

// row is a row's height.
func (g holdGrid) row(r int, width paper.Length) paper.Length {
	lines := 1
	for i := r; i < len(g); i += g.rows() {
		lines = max(lines, len(g.lines(width, g[i])))
	}
	return max(holdHigh, paper.Length(lines)*paper.Floor.Leading()+1.2)
}

// Height implements block.Body.
func (g holdGrid) Height(width paper.Length) (high paper.Length) {
	for r := range g.rows() {
		high += g.row(r, width)
	}
	return high
}

// Draw implements block.Body.
func (g holdGrid) Draw(page *paper.Page, box paper.Rect) []string {
	y := box.Y
	for r := range g.rows() {
		for i, x := r, box.X; i < len(g); i, x = i+g.rows(), x+g.column(box.W)+holdGap {
			g.set(page, paper.Point{X: x, Y: y}, box.W, g[i])
		}
		y += g.row(r, box.W)
	}
	return nil
}

// set draws one hold.
func (g holdGrid) set(page *paper.Page, at paper.Point, width paper.Length, h dayHold) {
	base := at.Y + 1.5 + paper.Floor.Ascent()
	page.TickBox(paper.Point{X: at.X + 0.35, Y: at.Y + 0.6})
	tab := paper.Rect{X: at.X + paper.TickBoxSide + 0.8, Y: at.Y + 0.9, W: holdTab, H: 5.4}
	page.Fill(paper.Box(tab), paper.Black)
	page.Text(paper.Point{X: tab.X + tab.W/2, Y: base}, paper.AtMiddle, fmt.Sprint(h.leaf), paper.CellSmall.Sized(11).In(paper.White))
	x := tab.Right() + 1.6
	page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, h.when, paper.Strong.Sized(11))
	for i, line := range g.lines(width, h) {
		page.Text(paper.Point{X: x + h.width(), Y: base + paper.Length(i)*paper.Floor.Leading()}, paper.AtLeft, line, paper.Floor)
	}
}
