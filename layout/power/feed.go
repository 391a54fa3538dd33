// One plan from begin to end: runs, outlets, feeders, counts. Feed makes it in each way that is open and keeps the best.

package power

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/power/sharing"
	"hoopwright/layout/spec"
)

// hair is what sums of currents and powers may be off by rounding.
const hair = 1e-9

// source is an outlet that can feed lights, with its circuit.
type source struct {
	outlet  spec.Outlet
	circuit int
	volts   measure.Voltage
	ways    [2]approach     // by wall
	most    measure.Current // through one of its sockets: what the best cord carries, and a timer that is bought
	cords   []cordKind      // thinnest first
}

// cordKind is a kind of cord with the cords of its kind that have several sockets.
type cordKind struct {
	cord   catalog.Cord
	inline []catalog.Inline
	prices []int64 // of each of inline
}

// feeding is a plan in the making.
type feeding struct {
	in      Input
	site    *site
	runs    []*run
	chains  []Chain // of the runs
	units   []unit
	sources []source
	fans    int                       // sockets of a three-way
	back    func(catalog.String) bool // whether a string's plug has a socket in its back
	prices  prices
	problem sharing.Problem
	sharing sharing.Plan
	split   spec.Split          // that is kept
	outlets map[string]atOutlet // laid so far, by what is plugged in
	walls   map[string]*walled  // the same along one wall, by what is picked for it
	unfed   []int               // units for which no circuit has the amps
	dry     []int               // units for which no outlet has a socket
	strange []int               // units that belong on no circuit here
	plan    Plan
	bound   int // fewest pieces that any choice could do with, 0 where not known
	joining joining
	turned  []stop // room for course
	calls   []call // and for line
}

// Feed plans how the strings are fed. Without circuits or outlets in the spec it makes the runs alone.
func Feed(in Input) Plan {
	back := func(l catalog.String) bool { return l.BackSocket }
	best := feedBest(in, back)
	if want := in.Spec; !best.plan.kept && best.plan.Pieces() > 0 { // nothing is gained by feeding apart what one trip darkens all the same
		whole := *want
		whole.Power.Split = spec.SplitNone
		in.Spec = &whole
		if f := feedBest(in, back); f.plan.unfed() <= best.plan.unfed() {
			best = f
			best.in.Spec, best.plan.kept = want, false
		}
	}
	best.gain()
	best.findings()
	return best.plan
}

// feedBest plans with the strings plugged end to end in each way that there is, and returns the best plan.
func feedBest(in Input, back func(catalog.String) bool) *feeding {
	s := newSite(in)
	var best *feeding
	bound := math.MaxInt
	for _, how := range joinings(s) {
		f := feed(s, how, back)
		if bound = min(bound, f.bound); best == nil || Better(f.plan, best.plan) {
			best = f
		}
	}
	n := best.plan.Pieces()
	best.plan.PiecesProven = n > 0 && n <= bound && best.plan.mark.over == 0
	return best
}

// feed plans with one way to plug strings end to end.
func feed(s *site, how joining, back func(catalog.String) bool) *feeding {
	f := &feeding{in: s.Input, site: s, joining: how, outlets: map[string]atOutlet{}, walls: map[string]*walled{}, back: back}
	f.fans = s.mostFans()
	f.prices = pricesOf(s.Spec)
	f.runs = join(s, how)
	f.makeUnits()
	if f.findSources(); len(f.sources) > 0 {
		f.assign()
	}
	f.chain()
	for d := range f.plan.Feeders {
		f.follow(&f.plan.Feeders[d])
	}
	f.plan.Turned = make([]bool, len(s.Lines))
	for _, r := range f.runs {
		for _, t := range r.seats {
			f.plan.Turned[s.lineOf[t.string]] = t.turned
		}
	}
	f.plan.Chains = f.chains
	f.circuits()
	f.count()
	f.energy()
	return f
}

// mostFans returns how many sockets the largest three-way has that the spec allows.
func (s *site) mostFans() int {
	if len(s.Spec.Power.Taps) == 0 {
		return 0
	}
	return s.Spec.Power.Taps[0].Sockets
}

// chain makes chains of the runs, as they lie, with their currents.
func (f *feeding) chain() {
	for n, r := range f.runs {
		list := f.site.strings(r.seats)
		c := Chain{Name: letters(n), Kind: r.label.Name, Volts: r.label.Volts, From: list[0].From, To: list[len(list)-1].To,
			Watts: r.watts, Amps: r.amps, EndVolts: r.label.Volts - r.lost, Drop: float64(r.lost / r.label.Volts), Limit: nearest(limits(list, f.site.mostTogether(list))...)}
		for _, s := range list {
			c.Strings = append(c.Strings, s.Name)
			c.On = append(c.On, s.Run)
		}
		f.chains = append(f.chains, c)
	}
}

// letters names the nth of anything from 0: A, B … Z, AA, AB …
func letters(n int) string {
	name := ""
	for n++; n > 0; n = (n - 1) / 26 {
		name = string(rune('A'+(n-1)%26)) + name
	}
	return name
}

// findSources finds the outlets that may feed lights.
func (f *feeding) findSources() {
	p := f.in.Spec.Power
	for _, o := range f.in.Spec.Site.Outlets {
		k := slices.IndexFunc(p.Circuits, func(c spec.Circuit) bool { return c.Name == o.Circuit })
		s := source{outlet: o, circuit: k, volts: p.Circuits[k].Volts, ways: [2]approach{f.site.approach(o, spec.Left), f.site.approach(o, spec.Right)}}
		for _, c := range cordsFor(s.volts) {
			s.cords, s.most = append(s.cords, f.kindOf(c)), max(s.most, c.Amps)
		}
		if bought := p.Timer.Amps; o.Timer == 0 && bought > 0 {
			s.most = min(s.most, bought)
		}
		f.sources = append(f.sources, s)
	}
}

// kindOf returns a kind of cord with the cords of its kind that have several sockets, the shortest first.
func (f *feeding) kindOf(c catalog.Cord) cordKind {
	out := cordKind{cord: c}
	for _, in := range f.in.Spec.Power.Inline {
		if in.Cord.Name == c.Name {
			out.inline = append(out.inline, in)
		}
	}
	slices.SortStableFunc(out.inline, func(a, b catalog.Inline) int { return cmp.Compare(a.Length, b.Length) })
	for _, in := range out.inline {
		out.prices = append(out.prices, f.prices.inline(in))
	}
	return out
}

// allowance returns what a circuit may carry for hours: the continuous share of its breaker, NEC 210.19(A)(1) and 210.20(A).
func allowance(p spec.Power, c spec.Circuit) measure.Current {
	return measure.Current(float64(p.Continuous) * float64(c.Breaker))
}
