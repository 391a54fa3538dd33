package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/crew"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// holdWords name the holds, without their figures: those stand on the leaf of the crew.
var holdWords = map[crew.Action]string{
	crew.TrialArch: "Trial arch measured", crew.CheckDots: "Dots checked", crew.AskOwner: "Owner asked", crew.LookUp: "Looked overhead", crew.ReadTicket: "Ticket good",
	crew.PullTest: "Stake 1 firm", crew.SetBases: "Boards, bars set", crew.MeasureWidths: "Widths", crew.WeighDown: "Bags laid", crew.TestOutlets: "TEST cuts", crew.TestStrings: "Every string lit", crew.TryWrapped: "Wrapped legs lit",
	crew.CheckDay: "Wind, cold, crew", crew.WatchLine: "Wire watcher: raises nothing", crew.MeasureBay: "Bay 1 taped", crew.SightAlong: "Caps counted",
	crew.TryOpening: "Opening tried", crew.CheckCords: "Cords checked", crew.TestLoaded: "TEST, all lit", crew.DarkWalk: "Dark walk",
}

// holdLeaves are the leaves on which the crews' holds have their figures.
var holdLeaves = map[crew.Phase]string{
	crew.Marking: "stakes", crew.Driving: "stakes", crew.Cutting: "stock", crew.Wrapping: "lights", crew.Raising: "raise", crew.Hanging: "raise", crew.Powering: "power",
}

// dayHold is a hold of the day: what it is, on which leaf its figure is found, when it comes about.
type dayHold struct {
	what  string
	leaf  int
	when  string // as printed; empty where no time is known
	timed bool
	day   int
	at    crew.Clock
}

// holds are a job's holds. One that opens a job is due as its bar begins; one that closes it, or is met piece by piece, as it ends; one between by the share of the job's work
// that is done with it, no quarter hour too soon.
func (r runSheet) holds(j crew.Job) (list []dayHold) {
	last, done, all := len(j.Tasks)-1, 0.0, 0.0
	for _, i := range j.Tasks {
		all += r.plan.Crew.Tasks[i].Minutes
	}
	opens := true
	for k, i := range j.Tasks {
		t := r.plan.Crew.Tasks[i]
		done += t.Minutes
		if opens = opens && t.Hold && t.Action != crew.SetBases && t.Action != crew.TryWrapped; !t.Hold {
			continue
		}
		h := dayHold{what: r.holdName(t), leaf: leafNumber(holdLeaves[t.Phase])}
		h.day, h.at, h.timed = j.End()
		if h.timed {
			switch begin := j.Stints[0]; {
			case t.Action == crew.TestStrings || done > all-1:
			case opens && k < last:
				h.day, h.at = begin.Day, begin.Begin
			default:
				h.day, h.at = j.Reached(done / all)
			}
			h.when = r.clockWords(h.day, h.at)
			if d := r.plan.Spec.Dates.Build; t.Action == crew.CallLocator && !d.IsZero() {
				h.when = "by " + crew.CallBy(r.plan.Spec).Format("2 Jan")
			}
		}
		list = append(list, h)
	}
	return list
}

// clockWords prints when a hold is due: the day of one before the building, the time of another, with its day where there are several.
func (r runSheet) clockWords(day int, at crew.Clock) string {
	switch d := r.Days[day].Date; {
	case day < r.Marked && d.IsZero():
		return ""
	case day < r.Marked:
		return d.Format("2 Jan")
	case !d.IsZero() && len(r.Built()) > 1:
		return d.Format("Mon ") + at.String()
	}
	return at.String()
}

// toSign lists the holds in the order of the day, to be ticked.
func (r runSheet) toSign() []block.Block {
	const columns = 3
	list := r.allHolds()
	if len(list) == 0 {
		return nil
	}
	grid := block.Columns{Gap: 2}
	for some := range slices.Chunk(list, (len(list)+columns-1)/columns) {
		column := block.Column{Share: 1}
		for _, h := range some {
			column.Blocks = append(column.Blocks, block.Block{Name: h.what, Body: h})
		}
		grid.Cols = append(grid.Cols, column)
	}
	return []block.Block{
		{Name: "holds", Gap: 3, Keep: true, Body: block.Words{Lettering: paper.Strong, Text: "Holds, black on the bars: crews bring A their signed leaf (number); tick, go on."}},
		{Name: "holds", Gap: 1, Body: grid},
	}
}

// allHolds gathers the holds of marking and building in their order: of a work by few stretches each with its arches, by many the first alone. What is done by dark comes last.
func (r runSheet) allHolds() (list []dayHold) {
	const few = 3
	for k, j := range r.Jobs {
		parts := 0
		for _, o := range r.Jobs {
			if o.Work == j.Work {
				parts++
			}
		}
		if parts > few && k > 0 && r.Jobs[k-1].Work == j.Work {
			continue
		}
		for _, h := range r.holds(j) {
			if parts > few {
				h.what += ", each"
			} else if parts > 1 {
				h.what += " " + say.Range(j.First, j.Last)
			}
			list = append(list, h)
		}
	}
	for day := range r.Days {
		if at := r.done(day); r.Ties(day) {
			list = append(list, dayHold{what: nightTied, leaf: leafNumber("raise"), when: r.clockWords(day, at), timed: true, day: day, at: at})
		}
	}
	slices.SortStableFunc(list, func(a, b dayHold) int {
		if a.timed != b.timed {
			return map[bool]int{true: -1, false: 1}[a.timed]
		}
		return cmp.Or(cmp.Compare(a.day, b.day), cmp.Compare(a.at, b.at))
	})
	return list
}

// nightTied is the hold of an evening on which arches stand and others are to come: no task of the plan, for the days alone make it.
const nightTied = "Newest tied"

func (r runSheet) holdName(t crew.Task) string {
	site := r.plan.Spec.Site
	switch name := holdWords[t.Action]; {
	case t.Action == crew.MeasureArch:
		return say.Capital(say.Numbered("arch", t.Of.Arches)) + " taped"
	case t.Action == crew.WatchLine && ownersYes(r.plan, t.Of.Overhead[0]) != "":
		return "Wire: owner’s yes, watcher"
	case t.Action == crew.CallLocator:
		if crew.LikelyNEC(r.plan.Spec) {
			return "811 called"
		}
		return "Locator rung"
	case t.Action == crew.ReadTicket && !site.NotKnown(spec.OverheadLines): // whoever reads it looks up too
		return "Ticket, overhead"
	case t.Action == crew.PullTest && site.Soil == spec.SoilUnknown:
		return name + ", soil"
	case t.Action == crew.TestOutlets && site.NotKnown(spec.BreakerAmps):
		return "TEST, breaker read"
	default:
		return name
	}
}

const (
	holdHigh paper.Length = 7.2
	holdTab  paper.Length = 5 // the leaf's number, white on black
	holdText paper.Length = paper.TickBoxSide + holdTab + 2.4
)

// lines are its words beside box, leaf and time.
func (h dayHold) lines(width paper.Length) []string {
	return paper.Floor.Wrap(h.what+".", width-holdText-h.width())
}

// width is the room for its time: times of day stand in line.
func (h dayHold) width() paper.Length {
	bold := paper.Strong.Sized(11)
	return max(bold.Width("00:00"), bold.Width(h.when)) + 1.5
}

// Height implements block.Body.
func (h dayHold) Height(width paper.Length) paper.Length {
	return max(holdHigh, paper.Length(len(h.lines(width)))*paper.Floor.Leading()+1.2)
}

// Draw implements block.Body: a box to tick, the leaf, the time, what it is.
func (h dayHold) Draw(page *paper.Page, box paper.Rect) []string {
	base := box.Y + 1.5 + paper.Floor.Ascent()
	page.TickBox(paper.Point{X: box.X + 0.35, Y: box.Y + 0.6})
	tab := paper.Rect{X: box.X + paper.TickBoxSide + 0.8, Y: box.Y + 0.9, W: holdTab, H: 5.4}
	page.Fill(paper.Box(tab), paper.Black)
	page.Text(paper.Point{X: tab.X + tab.W/2, Y: base}, paper.AtMiddle, fmt.Sprint(h.leaf), paper.CellSmall.Sized(11).In(paper.White))
	x := box.X + holdText
	page.Text(paper.Point{X: x, Y: base}, paper.AtLeft, cmp.Or(h.when, "____"), paper.Strong.Sized(11))
	box.X, box.Y = x+h.width(), base-paper.Floor.Ascent()
	page.Paragraph(box, strings.Join(h.lines(box.W), "\n"), paper.Floor)
	return nil
}
