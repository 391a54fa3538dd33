package draw

import (
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/power"
	"hoopwright/layout/spec"
)

// Circuits is the circuit diagram: what is plugged into what, from each outlet outward. A row is a plug: the place where it goes in, what it is the plug of. What a row
// feeds stands below it, on a line that comes down from it.
//
// It is a body of blocks that goes on from side to side between rows.
type Circuits struct {
	plan    *layout.Plan
	rows    []plugRow
	runName paper.Length // room that the letters of runs take: of all of them alike
	high    paper.Length // of a row at the least
	later   []branch     // what they feed stands under a head of its own
}

// NewCircuits draws up the diagram; it has no rows where there are no runs of strings.
func NewCircuits(p *layout.Plan) Circuits {
	c := Circuits{plan: p, high: plugHigh}
	for _, o := range p.Spec.Site.Outlets {
		var tree []branch
		for _, f := range p.Power.Feeders {
			if f.Outlet == o.Name {
				tree = append(tree, (&planting{p, f}).roots()...)
			}
		}
		if len(tree) > 0 {
			c.rows = append(c.rows, plugRow{kind: outletRow, outlet: o})
			c.list(tree, o, nil, []string{"outlet"})
			for ; len(c.later) > 0; c.later = c.later[1:] {
				b := c.later[0]
				c.rows = append(c.rows, plugRow{kind: farRow, outlet: o, path: []string{b.row.name()}})
				c.list(b.feeds, o, nil, []string{b.row.name()})
			}
		}
	}
	var dark []branch
	for _, run := range p.Power.Chains {
		c.runName = max(c.runName, paper.CellSmall.Width(run.Name)+1.6)
		if run.Feeder == "" {
			dark = append(dark, branch{row: plugRow{kind: runRow, run: run, at: run.From.At}})
		}
	}
	if len(dark) > 0 {
		c.rows = append(c.rows, plugRow{kind: darkRow})
		c.list(dark, spec.Outlet{}, nil, nil)
	}
	return c
}

// treeDeep is how many things lie between an outlet and a plug at most on one tree: what is plugged in further on stands under a head of its own.
const treeDeep = 9

// Empty reports whether there is nothing to draw.
func (c Circuits) Empty() bool { return len(c.rows) == 0 }

// list sets branches row by row, each before what it feeds.
func (c *Circuits) list(tree []branch, o spec.Outlet, pass []bool, path []string) {
	for i, b := range tree {
		r := b.row
		r.far = len(pass) >= treeDeep && len(b.feeds) > 0 && r.kind != runRow
		r.outlet, r.pass, r.path, r.last, r.leads = o, pass, path, i == len(tree)-1, len(b.feeds) > 0 && !r.far
		if len(pass) == 0 && len(path) > 0 && path[0] == "outlet" {
			r.named = "LAST"
		}
		c.rows = append(c.rows, r)
		if r.far {
			c.later = append(c.later, b)
			continue
		}
		c.list(b.feeds, o, append(slices.Clone(pass), !r.last), append(slices.Clone(path), r.name()))
	}
}

// rowKind is what a row shows.
type rowKind int

const (
	outletRow rowKind = iota
	againRow          // an outlet that goes on from another side
	onRow             // and where it does, at the foot of that one
	darkRow           // heads the runs that nothing feeds
	farRow            // heads what is plugged into something far from the outlet
	cordRow
	tapRow
	supplyRow
	runRow
)

// head reports whether a row stands over others.
func (k rowKind) head() bool { return k <= farRow }

type plugRow struct {
	kind   rowKind
	outlet spec.Outlet
	at     lights.Place // where its plug goes in
	cord   power.Cord
	tap    power.Tap
	run    power.Chain
	open   int // sockets of a three-way or a supply that nothing is plugged into

	pass  []bool   // by level from the outlet: that line goes on to rows below
	path  []string // the outlet or what else its tree begins at, then what lies between that and its plug
	named string   // in place of where it goes in: at the outlet, where it goes in last
	last  bool     // of what is plugged in beside it
	leads bool     // something is plugged into it
	far   bool     // and that stands under a head of its own

	asked [2]paper.Length // the width, and how high rows are, that its height was last asked for at; 0 before
	tall  paper.Length    // the height
}

// depth is how many things lie between the outlet and its plug.
func (r plugRow) depth() int { return len(r.pass) }

// name is what a row's thing is called.
func (r plugRow) name() string {
	switch r.kind {
	case cordRow:
		return r.cord.Name
	case tapRow:
		return r.tap.Name
	case runRow:
		return r.run.Name
	case supplyRow:
		return "supply"
	}
	return ""
}

// branch is a row with what is plugged into it.
type branch struct {
	row   plugRow
	feeds []branch
}

// planting finds what is plugged into what on one feeder.
type planting struct {
	plan *layout.Plan
	power.Feeder
}

// roots are what is plugged into the outlet's socket.
func (t *planting) roots() []branch {
	if t.Joints[0].Arch == 0 {
		return t.at(0)
	}
	return t.onward(-1)
}

// at is what is plugged in at a joint: into its three-way, where it has one.
func (t *planting) at(i int) []branch {
	j := t.Joints[i]
	feeds := append(t.plugs(j), t.onward(i)...)
	if j.Taps == 0 {
		return feeds
	}
	tap := t.plan.Power.Taps[j.Tap-1]
	return []branch{{row: plugRow{kind: tapRow, tap: tap, open: tap.Open, at: j.End.At}, feeds: feeds}}
}

// plugs are the runs and supplies that are plugged in at a joint; a run in the back of another's plug hangs on that one.
func (t *planting) plugs(j power.Joint) (list []branch) {
	for _, p := range j.Plugs {
		var runs []branch
		for _, name := range p.Chains {
			k := slices.IndexFunc(t.plan.Power.Chains, func(c power.Chain) bool { return c.Name == name })
			runs = append(runs, branch{row: plugRow{kind: runRow, run: t.plan.Power.Chains[k], at: j.End.At}})
		}
		switch {
		case p.Supply:
			runs = []branch{{row: plugRow{kind: supplyRow, open: p.Open, at: j.End.At}, feeds: runs}}
		case len(runs) > 1:
			runs[0].feeds = runs[1:]
			runs = runs[:1]
		}
		list = append(list, runs...)
	}
	return list
}

// onward are the cords that are plugged in at a joint.
func (t *planting) onward(from int) (list []branch) {
	for i, j := range t.Joints {
		if j.From != from || j.Socket > 1 {
			continue
		}
		feeds := t.at(i)
		for next := t.next(i); next >= 0; next = t.next(next) {
			feeds = append(feeds, t.at(next)...)
		}
		for k := range j.Cords { // the last one first, each in the socket of the one before
			cord := t.plan.Power.Cords[j.Cord-1-k]
			feeds = []branch{{row: plugRow{kind: cordRow, cord: cord, at: cord.From.At}, feeds: feeds}}
		}
		list = append(list, feeds...)
	}
	return list
}

// next is the joint at the next socket in line of a joint's cord; -1 after the last.
func (t *planting) next(i int) int {
	return slices.IndexFunc(t.Joints, func(j power.Joint) bool { return j.From == i && j.Socket > 1 })
}
