// Tools and materials, and what a crew must bring.

package crew

import (
	"cmp"
	"slices"

	"hoopwright/layout/measure"
)

// Thing is a tool or a material.
type Thing int

// The things that tasks use.
const (
	LongTape Thing = iota
	ShortTape
	StringLine // on the ground, with its reel
	Bricks
	WhitePaint
	Flags
	Lath     // for a gauge stick
	PlumbBob // under the end of a tape that is held up
	Pencil
	Phone
	TicketPaper
	Stakes // each by its length
	Caps
	SpareStake
	SpareCap
	Hammer
	Level
	Driver // for the screws in boards: a battery, a bit, a drill for their holes
	Ribbon
	ColouredTape
	LuggageScale
	Gloves
	EyeProtection
	StakeGrip

	Saw
	Clamp
	Scraper
	Marker
	Tarp
	Mallet
	Sticks // legs and ridge, from the cut plan
	SpareStick
	LegCouplings
	CrownTees
	CrownCrosses
	CrownCouplings
	SpareTee
	SpareCross

	Strings
	SpareString
	StringTags
	Trestles
	ZipTies
	Cutters
	TestOutlet // with ground-fault protection
	RejectBag

	GuyLine
	Tighteners
	GuyClamps  // below the knot of each guy and brace line
	SoleBoards // under rows of feet where nothing is driven
	BarSockets // that hold a bar upright on its board
	SandBags
	Braces // sticks of pipe, from the cut plan
	BraceClamps
	Webbing    // crossed braces
	BarrierNet // from guy stakes at the way in to their legs
	Bucket
	Stepladder
	CrownLine // along the crowns, where sockets are dry
	Screws
	Screwdriver
	File
	Cement
	OpeningSticks // as high and as wide as the opening

	Cords
	RibbonPosts // stand by themselves between outlets and feet
	ThreeWays
	PlugCovers
	SocketCovers // over sockets that stay open
	CordCovers
	Timers
	PortableGFCIs // in outlets without ground-fault protection
	PlugBoxes     // where three or more plugs meet low down
	Lamp
	Torch
	WindMeter
	Thermometer
	CrownStick // as high as the crowns, which are taped on it the first night
	Kettle
	Lanterns
	Mats     // where people walk and it gets muddy
	Barriers // to bar both ends
	FirstAid
	Boxes
	Bags
)

// Source is how a thing comes to the site.
type Source int

// The sources.
const (
	Fetched Source = iota // from home or borrowed: it is on the list of what to bring
	Bought                // it is on the buying list, or owned
	OnSite                // an outlet: the wrapping crew's own leaf says where it works
)

// Source returns how a thing comes to the site.
func (t Thing) Source() Source {
	switch t {
	case WhitePaint, Flags, Lath, Stakes, Caps, SpareStake, SpareCap, Ribbon, Sticks, SpareStick, LegCouplings, CrownTees, CrownCrosses, CrownCouplings,
		SpareTee, SpareCross, Strings, SpareString, StringTags, ZipTies, GuyLine, Tighteners, GuyClamps, Braces, BraceClamps, Webbing, SoleBoards, BarSockets, SandBags, CrownLine, Screws, Cement, Cords, ThreeWays,
		PlugCovers, SocketCovers, CordCovers, Timers, PortableGFCIs, PlugBoxes, Lanterns:
		return Bought
	case TestOutlet:
		return OnSite
	}
	return Fetched
}

// spent reports whether every task takes its own of the thing: what stays on the tunnel. The rest is there once for all.
func (t Thing) spent() bool {
	switch t {
	case ZipTies, SocketCovers, PlugCovers, Screws, StringTags, BarrierNet:
		return true
	}
	return false
}

// handled reports whether every crew that takes down has its own of the thing.
func (t Thing) handled() bool {
	switch t {
	case Gloves, EyeProtection, Screwdriver, Stepladder, StringLine, StakeGrip:
		return true
	}
	return false
}

// atOnce is how many of each tool of these phases are in use at the busiest moment: each job at work has those of the task that takes most, shared where fewer are at it than the task may have.
func (p Plan) atOnce(phases []Phase) map[Thing]int {
	peak := map[Thing]int{}
	for _, j := range p.Schedule.Jobs {
		for _, s := range j.Stints {
			now := map[Thing]int{}
			for _, o := range p.Schedule.Jobs {
				if k := slices.IndexFunc(o.Stints, func(x Stint) bool { return x.Day == s.Day && x.Begin <= s.Begin && s.Begin < x.End }); k >= 0 {
					for thing, n := range p.takes(o, len(o.Stints[k].Hands), phases) {
						now[thing] += n
					}
				}
			}
			for thing, n := range now {
				peak[thing] = max(peak[thing], n)
			}
		}
	}
	return peak
}

// takes is what so many people at a job use at once of the tools of these phases.
func (p Plan) takes(j Job, people int, phases []Phase) map[Thing]int {
	most := map[Thing]int{}
	for _, i := range j.Tasks {
		t := p.Tasks[i]
		if !slices.Contains(phases, t.Phase) {
			continue
		}
		all := t.Who.people()
		there := min(people, all)
		if len(t.Who.Roles) > 0 {
			there = all
		}
		for _, n := range t.Uses {
			switch {
			case n.Thing.Source() != Fetched || n.Thing.spent():
				continue
			case (n.Thing == Gloves || n.Thing == EyeProtection) && len(t.Who.Roles) == 0: // whoever is near wears them too
				n.Count = people
			case n.Thing != Bricks: // of which no pair has its own
				n.Count = (n.Count*there + all - 1) / all
			}
			most[n.Thing] = max(most[n.Thing], n.Count)
		}
	}
	return most
}

// Kit sums what the crew of these phases must bring: of tools the most that are in use at once, or that a task takes which has no time, of what is used up all of it.
func (p Plan) Kit(phases ...Phase) []Need {
	var list []Need
	for _, t := range p.Tasks {
		if !slices.Contains(phases, t.Phase) {
			continue
		}
		for _, n := range t.Uses {
			if n.Count = max(1, n.Count); t.Action == LowerArches && n.Thing.handled() {
				n.Count *= max(1, p.Lowerers)
			}
			list = gatherNeed(list, n)
		}
	}
	peak := p.atOnce(phases)
	for i, n := range list {
		if at := peak[n.Thing]; at > n.Count || at > 0 && len(p.Schedule.Left) == 0 { // fewer pairs than there may be need fewer
			list[i].Count = at
		}
	}
	slices.SortStableFunc(list, func(a, b Need) int {
		return cmp.Or(cmp.Compare(a.Thing, b.Thing), cmp.Compare(a.Length, b.Length))
	})
	return list
}

func gatherNeed(list []Need, n Need) []Need {
	n.Count = max(1, n.Count)
	k := slices.IndexFunc(list, func(o Need) bool { return o.Thing == n.Thing && (o.Length == n.Length || lengthens(n.Thing)) })
	switch {
	case k < 0:
		return append(list, n)
	case n.Thing.spent():
		list[k].Count += n.Count
	default:
		list[k].Count = max(list[k].Count, n.Count)
	}
	list[k].Length = max(list[k].Length, n.Length)
	return list
}

// lengthens reports whether the longest of a thing serves for all.
func lengthens(t Thing) bool { return t == LongTape || t == Stepladder || t == StringLine }

// one is a need of a single thing, many of a number.
func one(t Thing) Need                           { return Need{Thing: t, Count: 1} }
func many(t Thing, n int) Need                   { return Need{Thing: t, Count: n} }
func long(t Thing, n int, l measure.Length) Need { return Need{t, n, l} }
