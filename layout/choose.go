package layout

import (
	"cmp"
	"fmt"
	"math"
	"reflect"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// What the spec leaves open of stakes and of what holds the tunnel lengthwise is chosen: the cheapest that reaches the gusts of weather.stand and weather.inside, or else what
// comes nearest. Each choice is tried on a few of the arches, with the lights that they bear.

const (
	mostTried  = 4  // kinds of arch that a choice is tried on: the heaviest of as many groups
	mostSloped = 24 // kinds of the plan, up to which they are tried on its own slopes
)

// chooser tries changed specs on a plan's arches.
type chooser struct {
	plan *Plan
	tune []*arch.Kind // the kinds tried, and for each arch which of them stands for it
	of   []int
	bad  map[string]bool // codes that must be fixed whatever is chosen
	seen []screened      // specs whose arches were stood, one for all that differ in nothing but what holds them lengthwise
}

func newChooser(p *Plan) *chooser {
	c := &chooser{plan: p, of: make([]int, len(p.Arches)), bad: map[string]bool{}}
	kinds := slices.Clone(p.Kinds)
	slices.SortStableFunc(kinds, func(a, b *arch.Kind) int { return cmp.Compare(b.Weight, a.Weight) })
	each := (len(kinds) + mostTried - 1) / mostTried
	for i, k := range kinds {
		if i%each == 0 {
			c.tune = append(c.tune, k)
		}
		for _, number := range k.Numbers {
			c.of[number-1] = i / each
		}
	}
	for _, k := range c.tune {
		own := *k
		own.Stand()
		for _, f := range own.Judge() {
			c.bad[f.Code] = true
		}
	}
	return c
}

// choose settles what the spec leaves open, and reports whether the arches are to be solved again for it.
func (p *Plan) choose() (again bool) {
	s := p.Spec
	stakes := chooses(s)
	if !stakes && !s.Chooses() || slices.ContainsFunc(p.Kinds, func(k *arch.Kind) bool { return k.Refused() || k.Body() == nil }) {
		return false
	}
	c := newChooser(p)
	options := withStakes(s, false)
	if stakes = stakes && len(options) > 0; !stakes { // what is given of the stake, a short one, may leave nothing to choose
		options = []*spec.Spec{s}
	}
	p.Spec = settled(c.best(options, s.Chooses()))
	return stakes
}

// chooses reports whether the spec leaves some key of its stakes open.
func chooses(s *spec.Spec) bool {
	open := func(key string) bool { return !s.Given("arch.stake." + key) }
	return s.Arch.Foot == nil && !s.Settled() && slices.ContainsFunc([]string{"bar", "length", "depth"}, open)
}

// tried is a spec that was tried: how near it comes to its aims, and what it costs.
type tried struct {
	spec    *spec.Spec
	reaches float64
	price   float64
}

// better reports whether one comes nearer to the aims; or as near with the way in clear of guys, or else for less.
func (a tried) better(b tried) bool {
	if a.reaches != b.reaches {
		return a.reaches > b.reaches
	}
	if barred := weather.GuysAtWayIn(b.spec); weather.GuysAtWayIn(a.spec) != barred {
		return barred
	}
	return a.price < b.price
}

// best looks for the cheapest spec that reaches its aims, of those that differ in their stakes, cheapest first, and where bracing is to be chosen in that. Stakes that a side wind alone keeps from
// the aims are passed over while others reach them, and a few that pass are tried with what may hold the tunnel lengthwise.
func (c *chooser) best(options []*spec.Spec, bracing bool) *spec.Spec {
	best := tried{spec: options[0], reaches: -1}
	passed := 0
	for _, pass := range c.screen(options) {
		if best.reaches > pass.across.Reaches() {
			break // whatever holds it lengthwise, it and all that follow come no nearer
		}
		found := tried{pass.spec, 0, weather.Price(pass.spec)}
		if bracing {
			found = c.braced(pass, best)
		} else {
			found.reaches = c.tunnel(pass.spec, pass.kinds, rough, pass.across, nil).Reaches()
		}
		if best.reaches < 0 || found.better(best) {
			best = found
		}
		if passed++; best.reaches >= 1 && passed >= mostPassed || passed >= 3*mostPassed {
			break
		}
	}
	return best.spec
}

// mostPassed is how many stakes are tried beyond the cheapest that does.
const mostPassed = 2

// screened is a spec whose arches stand, and what they bear in side winds.
type screened struct {
	spec   *spec.Spec
	kinds  []*arch.Kind
	across *weather.Weather
}

// screen orders specs: those that reach the aims in side winds as they come, then the others by how near they come.
func (c *chooser) screen(options []*spec.Spec) (list []screened) {
	enough := 0
	for _, n := range options {
		pass := c.across(n)
		if pass.kinds == nil {
			continue
		}
		list = append(list, pass)
		if pass.across.Reaches() >= 1 {
			if enough++; enough > mostPassed {
				break
			}
		}
	}
	slices.SortStableFunc(list, func(a, b screened) int { return cmp.Compare(b.across.Reaches(), a.across.Reaches()) })
	return list
}

// across stands the few arches of a spec in side winds, where that is not known already; no kinds where one does not stand.
func (c *chooser) across(n *spec.Spec) screened {
	for _, pass := range c.seen {
		if reflect.DeepEqual(pass.spec.Arch, n.Arch) && reflect.DeepEqual(pass.spec.Except, n.Except) {
			pass.spec = n
			return pass
		}
	}
	pass := screened{spec: n, kinds: c.shape(n)}
	if pass.kinds != nil {
		pass.across = c.tunnel(n, pass.kinds, side, nil, nil)
	}
	c.seen = append(c.seen, pass)
	return pass
}

// braced finds the cheapest bracing that reaches the aims, or the one that comes nearest; beyond what is known already to do for less it need not look.
func (c *chooser) braced(pass screened, known tried) tried {
	best, most := tried{spec: pass.spec, reaches: -1}, 1.0
	if pass.spec.Arch.Foot == nil { // whose weights what holds it may raise
		most = pass.across.Reaches()
	}
	of := c.plan.onGround(pass.spec)
	of.Shapes = nil // their legs upright are near enough here
	arches := c.arches(pass.kinds)
	for _, b := range weather.Bracings(pass.spec, pass.kinds[c.of[0]]) {
		n := b.On(pass.spec)
		t := tried{n, most, weather.Price(n)}
		if !t.better(known) || !t.better(best) || !c.clear(n, of, arches) {
			continue
		}
		t.reaches = c.tunnel(n, pass.kinds, rough, pass.across, func(w *weather.Weather) bool { return w.Reaches() < max(known.reaches, best.reaches) }).Reaches()
		if best.reaches < 0 || t.better(best) {
			best = t
		}
	}
	return best
}

// clear reports whether what holds a spec's arches lengthwise stands where it may and keeps off the legs it passes.
func (c *chooser) clear(n *spec.Spec, of ground.Arches, arches []arch.Arch) bool {
	if _, _, yes := rubs(n, arches); yes {
		return false
	}
	of.Aside = arch.Aside(n, arches)
	return ground.Clear(n, of)
}

// solve tries a spec on the few arches, roughly, and no further than it is hopeless. It returns nil where no such arch stands.
func (c *chooser) solve(s *spec.Spec, hopeless func(*weather.Weather) bool) *weather.Weather {
	pass := c.across(s)
	if pass.kinds == nil || s.Arch.Foot == nil && hopeless(pass.across) {
		return pass.across
	}
	return c.tunnel(s, pass.kinds, rough, pass.across, hopeless)
}

// shape solves the few arches by a spec, nil where one does not stand or has something to be fixed that the others had not.
func (c *chooser) shape(s *spec.Spec) []*arch.Kind {
	kinds := make([]*arch.Kind, len(c.tune))
	ok := make([]bool, len(kinds))
	arch.SideBySide(len(kinds), func(i int) {
		in := *c.tune[i].Body().In
		in.Spec, in.Rough = s.ArchOf(c.tune[i].Numbers[0]), true
		k := arch.Shape(in)
		k.Stand()
		kinds[i] = k
		ok[i] = !k.Refused() && k.Body() != nil && !slices.ContainsFunc(k.Judge(), func(f finding.Finding) bool { return !c.bad[f.Code] })
	})
	if slices.Contains(ok, false) {
		return nil
	}
	return kinds
}

// How closely a tunnel is looked at: in side winds alone, whether it reaches its aims, or in full.
const (
	side = iota
	rough
	full
)

// tunnel puts the few arches in the places of all and solves them; across is what is known of them in side winds, hopeless what need not be known closer.
func (c *chooser) tunnel(s *spec.Spec, kinds []*arch.Kind, how int, across *weather.Weather, hopeless func(*weather.Weather) bool) *weather.Weather {
	t := &weather.Tunnel{Spec: s, Side: how == side, Rough: how != full, Hopeless: hopeless}
	if across != nil && len(across.Bears) > 0 {
		t.After = across
	}
	if len(c.plan.Kinds) <= mostSloped { // of more, the few stand where others do, on level ground
		t.Level = c.plan.level
	}
	t.Arches = c.arches(kinds)
	return weather.Solve(t)
}

// arches puts the few in the places of all.
func (c *chooser) arches(kinds []*arch.Kind) (list []arch.Arch) {
	for i, a := range c.plan.Arches {
		list = append(list, arch.Arch{Number: a.Number, Kind: kinds[c.of[i]]})
	}
	return list
}

// withStakes returns the spec with each of the stakes that there are in the place of what it leaves open of its own, or of all.
func withStakes(s *spec.Spec, all bool) (list []*spec.Spec) {
	for _, stake := range weather.Stakes(s, all) {
		list = append(list, withStake(s, stake, all))
	}
	return list
}

// withStake returns it with one of them, in exceptions too.
func withStake(s *spec.Spec, stake spec.Stake, all bool) *spec.Spec {
	n := *s
	n.Except = slices.Clone(s.Except)
	set := func(path string, a *spec.Arch) {
		open := func(key string) bool {
			return all || !s.Given("arch.stake."+key) && !s.Given(path+".stake."+key)
		}
		if a.Foot != nil {
			return
		}
		if open("bar") && stake.Bar.OverRibs <= a.Pipe.ID() {
			a.Stake.Bar = stake.Bar
		}
		if open("length") {
			a.Stake.Length = stake.Length
		}
		if open("depth") {
			a.Stake.Depth = stake.Depth
		}
	}
	set("arch", &n.Arch)
	for i := range n.Except {
		set(fmt.Sprintf("arch.except[%d]", i), &n.Except[i].Arch)
	}
	for _, peg := range []struct {
		stake *spec.Stake
		path  string
	}{{&n.Guys.Stake, "guys.stake"}, {&n.Braces.Peg, "braces.peg"}} {
		if peg.stake.Bar.Name != "" && !s.Given(peg.path+".bar") {
			peg.stake.Bar = stake.Bar
		}
	}
	return &n
}

// chosenStake lists what was chosen of a stake; of an exception's, what was not taken from the base.
func chosenStake(n *spec.Spec, path string, a spec.Arch) {
	for _, d := range []spec.Default{{Key: path + ".bar", Value: a.Stake.Bar.Name, Written: a.Stake.Bar.Name},
		{Key: path + ".length", Value: n.Units.Inches(a.Stake.Length), Written: spec.Written(a.Stake.Length, "", n.Units)},
		{Key: path + ".depth", Value: n.Units.Inches(a.Stake.Depth), Written: spec.Written(a.Stake.Depth, "", n.Units)}} {
		listed := slices.ContainsFunc(n.Defaults, func(x spec.Default) bool { return x.Key == d.Key })
		if listed && a.Foot == nil {
			d.Why = "chosen"
			n.Chosen(d)
		}
	}
}

// settled lists what was chosen among the spec's defaults, with its price.
func settled(s *spec.Spec) *spec.Spec {
	n := *s
	n.Defaults = slices.Clone(s.Defaults)
	u := n.Units
	chosenStake(&n, "arch.stake", n.Arch)
	for i, e := range n.Except {
		chosenStake(&n, fmt.Sprintf("arch.except[%d].stake", i), e.Arch)
	}
	if n.Chooses() {
		price := fmt.Sprintf("chosen, about %.0f %s", math.Ceil(weather.PriceOfBracing(&n)), cmp.Or(n.Currency, "dollars"))
		guys, braces := spec.Default{Key: "guys", Value: "none", Why: price, Written: "none"}, spec.Default{Key: "braces", Value: "none", Why: price, Written: "none"}
		if g := n.Guys; len(g.Arches) > 0 {
			guys.Value = fmt.Sprintf("%s, %s up, %s %s out", say.Numbered("arch", g.Arches), u.Tape(g.From), n.TieEnds(), u.Tape(g.Out))
			guys.Written = map[string]any{"arches": g.Arches, "from": spec.Written(g.From, "", u), "out": spec.Written(g.Out, "", u), "stake": map[string]any{"bar": g.Stake.Bar.Name,
				"length": spec.Written(g.Stake.Length, "", u), "depth": spec.Written(g.Stake.Depth, "", u), "lean": spec.Written(g.Stake.Lean, "", u)}}
		}
		if b := n.Braces; len(b.Bays) > 0 {
			braces.Value = fmt.Sprintf("pipe in %s, %s up", say.Numbered("bay", b.Bays), u.Tape(b.From))
			braces.Written = map[string]any{"bays": b.Bays, "from": spec.Written(b.From, "", u), "kind": "pipe"}
		}
		n.Chosen(guys)
		n.Chosen(braces)
	}
	n.Settle()
	return &n
}
