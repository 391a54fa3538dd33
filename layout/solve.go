package layout

import (
	"fmt"
	"math"
	"slices"
	"time"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/cost"
	"hoopwright/layout/crew"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
	"hoopwright/layout/weather"
)

// Solve turns a spec into a plan. It never fails: what cannot be built as written is a finding, and the plan then holds the
// nearest thing that can be drawn.
//
// The order: levels and lights' weights shape each kind of arch; spans and crowns place stakes; crowns in space give the
// ridge pieces; then every string, its feed, the pieces and the work.
func Solve(s *spec.Spec) *Plan {
	p := &Plan{Spec: s}
	p.solveArches()
	s = p.Spec // with what it left open chosen

	of := p.onGround(s)
	s, found := ground.Locate(s, of.Spans[0])
	p.Spec = s
	p.note(found)
	p.Ground = ground.Lay(s, of)
	p.Stakes, p.Ties, p.Diagonals = p.Ground.Stakes, p.Ground.Ties, p.Ground.Diagonals
	p.note(slices.DeleteFunc(slices.Clone(p.Ground.Findings), func(f finding.Finding) bool { // guys above an arch that does not stand are no fault of theirs
		return f.Code == "guy-above-arch" && slices.ContainsFunc(p.Findings, func(f finding.Finding) bool { return f.Code == "no-arch" })
	}))
	p.groundFarOut()
	p.note(swapped(s))
	p.note(notKnown(s))

	p.Ridge = ridge(s, p.Arches, p.Ground)
	p.wayIn()
	p.guyRubs()
	p.guysInLanes()
	p.noRoomToRaise()
	p.waysBlocked()
	cuts := make([]measure.Length, len(p.Ridge))
	for i, r := range p.Ridge {
		cuts[i] = r.Cut
	}
	p.solveLights(lights.Input{Spec: s, Arches: p.Arches, Ground: p.Ground, Ridge: cuts}, of.Crowns)
	p.solveStock()
	p.solveCrew()
	p.Cost = cost.Of(cost.Input{Spec: p.Spec, Stock: p.Stock, Strings: p.Strings, KWh: p.Power.KWh, Crew: p.Crew})

	p.accept()
	p.sortFindings()
	p.fillEmpty()
	return p
}

// groundFarOut takes back the advice to set guy stakes farther out where the ground there is worse than where they stand: near a line, on paving, in a bed.
func (p *Plan) groundFarOut() {
	for i := range p.Findings {
		f := &p.Findings[i]
		if f.Code != "guy-pulls-down" {
			continue
		}
		n := *p.Spec
		if n.Guys.Out = weather.FarOut(&n); p.groundWorse(&n) {
			f.Cure, f.Text = nil, fmt.Sprintf("%s At %s the ground is not free: build so, or brace a bay and print again.", f.Text, n.Units.Tape(n.Guys.Out))
		}
	}
}

// groundWorse reports whether by a spec with the same arches more stakes stand where they may not than by the plan's own, or guys rub that did not.
func (p *Plan) groundWorse(s *spec.Spec) bool {
	bad := func(list []finding.Finding) (n int) {
		for _, f := range list {
			if f.Level != finding.Note {
				n++
			}
		}
		return n
	}
	_, _, will := rubs(s, p.Arches)
	_, _, does := rubs(p.Spec, p.Arches)
	return will && !does || bad(ground.Lay(s, p.onGround(s)).Findings) > bad(p.Ground.Findings)
}

// solveLights lays the strings and feeds them. What the spec leaves open, which end of a wrap has the prongs, from which end rows start and whether leads
// stay off the pipe, is as the power plan is best for it.
func (p *Plan) solveLights(in lights.Input, crowns []measure.Length) {
	feed := func(leads bool) power.Plan {
		in.Turn = lights.Turn{Leads: leads}
		plain := lights.Lay(in)
		in.Turn.All = true
		turned := lights.Lay(in)
		return power.Feed(power.Input{Spec: p.Spec, Strings: plain.Strings, Turned: turned.Strings, Lines: plain.Lines, Ground: p.Ground, Crowns: crowns})
	}
	p.Power = feed(false)
	leads := false
	if lights.Bridges(p.Spec) {
		if off := feed(true); power.Better(off, p.Power) {
			p.Power, leads = off, true
		}
	}
	in.Turn = lights.Turn{Leads: leads}
	p.Lights = lights.Lay(in)
	turn := lights.Turn{Leads: leads, Wraps: make([]bool, len(p.Lights.Wraps)), Paths: make([]bool, len(p.Lights.Paths))}
	for n, l := range p.Lights.Lines {
		switch {
		case n >= len(p.Power.Turned) || !p.Power.Turned[n]:
		case l.Wrap >= 0:
			turn.Wraps[l.Wrap] = true
		case l.Path >= 0:
			turn.Paths[l.Path] = true
		}
	}
	in.Turn = turn
	p.Lights = lights.Lay(in)
	p.Strings, p.Wraps = p.Lights.Strings, p.Lights.Wraps
	p.note(p.Lights.Findings)
	p.Chains, p.Cords, p.Taps, p.Circuits = p.Power.Chains, p.Power.Cords, p.Power.Taps, p.Power.Circuits
	p.note(p.Power.Findings)
}

// onGround returns what the ground asks of the arches by a spec: arches of a kind share one curve.
func (p *Plan) onGround(s *spec.Spec) ground.Arches {
	of := ground.Arches{Shapes: make([]ground.Shape, len(p.Arches)), Aside: arch.Aside(s, p.Arches)}
	for _, a := range p.Arches {
		of.Spans, of.Crowns = append(of.Spans, a.Span), append(of.Crowns, a.Crown)
	}
	for _, k := range p.Kinds {
		shape := ground.Shape{Stick: sum(k.Left) + sum(k.Right)}
		for _, q := range k.Curve {
			shape.Curve = append(shape.Curve, spec.Point{X: q.X, Y: q.Y})
		}
		for _, n := range k.Numbers {
			of.Shapes[n-1] = shape
		}
	}
	return of
}

func sum(sticks []measure.Length) (total measure.Length) {
	for _, s := range sticks {
		total += s
	}
	return total
}

// Add adds findings that are not met in solving, such as letters that a typeface lacks.
func (p *Plan) Add(found []finding.Finding) {
	p.note(found)
	p.sortFindings()
}

// Issued adds what is to be said of the spec's days on the day that the plan is printed.
func (p *Plan) Issued(day time.Time) { p.Add(crew.Past(p.Spec.Dates, day)) }

// sortFindings tells the findings where their keys stand and puts them in order.
func (p *Plan) sortFindings() {
	for i := range p.Findings {
		p.Findings[i].Pos = p.Spec.Position(p.Findings[i].Key)
	}
	finding.Sort(p.Findings)
}

func (p *Plan) note(found []finding.Finding) { p.Findings = append(p.Findings, found...) }

// A ridge piece goes up to the next step of the cutting grid only for more than this share of a step: end arches carry less and stand
// a hair higher, and no saw or socket knows the difference.
const sawSlack = 0.125

// crownsApart returns how far it is from crown to crown, bay by bay. On a bend the ridge pipe follows an arc, which is longer than its chord by (φ/2)/sin(φ/2) for a turn φ.
func crownsApart(arches []arch.Arch, g ground.Layout) (list []measure.Length) {
	for i := 0; i+1 < len(arches); i++ {
		a, b := crownAt(g, arches[i]), crownAt(g, arches[i+1])
		dx, dy, dz := float64(b[0]-a[0]), float64(b[1]-a[1]), float64(b[2]-a[2])
		level := math.Sqrt(dx*dx + dy*dy)
		if half := math.Abs(float64(g.Stations[i+1].Heading-g.Stations[i].Heading)) / 2; half > 1e-9 {
			level *= half / math.Sin(half)
		}
		list = append(list, measure.Length(math.Sqrt(level*level+dz*dz)))
	}
	return list
}

// crownLine returns the stretches of the line from crown to crown, as coarse as pieces are cut; none where there is no such line.
func (p *Plan) crownLine() (list []measure.Length) {
	if !p.Spec.CrownLine() {
		return nil
	}
	grid := p.Spec.Units.Grid()
	for _, apart := range crownsApart(p.Arches, p.Ground) {
		list = append(list, measure.RoundUp(apart-grid*sawSlack, grid))
	}
	return list
}

// ridge returns the piece of each bay.
func ridge(s *spec.Spec, arches []arch.Arch, g ground.Layout) []RidgePiece {
	if !s.Ridge.Present {
		return nil
	}
	pieces := make([]RidgePiece, 0, len(arches))
	for i, centres := range crownsApart(arches, g) {
		takeOffs := arches[i].Spec.Pipe.TakeOff + arches[i+1].Spec.Pipe.TakeOff
		pieces = append(pieces, RidgePiece{Bay: i + 1, Centres: centres, Cut: measure.RoundUp(centres-takeOffs-s.Units.Grid()*sawSlack, s.Units.Grid())})
	}
	return pieces
}

// crownAt returns the crown fitting's centre in site coordinates: x, y, z.
func crownAt(g ground.Layout, a arch.Arch) [3]measure.Length {
	crown := a.PointAt(a.CrownTape)
	x, y, z := g.Site(a.Number, crown.X, crown.Y)
	return [3]measure.Length{x, y, z}
}

// solveStock lists the pieces, cuts them and writes the shopping list.
func (p *Plan) solveStock() {
	in := stock.Input{Spec: p.Spec, Arches: p.Arches, Stakes: p.Stakes, Strings: p.Strings, Ties: p.Lights.Ties, LegTies: p.Lights.LegTies, HungTies: p.Lights.HungTies, FootWeight: p.Weather.Feet.Weight, TieWeight: p.Weather.Feet.Guy}
	for _, r := range p.Ridge {
		in.Ridge = append(in.Ridge, r.Cut)
	}
	in.CrownStick = crew.Input{Spec: p.Spec, Arches: p.Arches}.CrownStick()
	in.Line, in.LineByBay, in.Wiring = p.crownLine(), crew.LineByBay(p.Spec), p.wiring()
	p.Stock = stock.Make(in)
	p.Cuts, p.Shopping = p.Stock.Cuts, p.Stock.Shopping
	p.wrappedOwned()
	p.keptStripped()
	p.note(p.Stock.Findings)
}

// wiring lists what the power plan needs.
func (p *Plan) wiring() stock.Wiring {
	w := stock.Wiring{
		Taps: len(p.Taps), Timers: len(p.Power.Timers), Covers: p.Power.Covers, Joints: p.Power.Covered(), Open: p.Power.Open,
		Boxes: p.Power.PlugBoxes(), Bare: len(p.Power.Bare), Supplies: p.Power.Supplies, TimerPrice: p.Spec.Power.Timer.Price,
	}
	for _, t := range p.Power.Timers {
		w.TimerAmps, w.TimerPlugs = max(w.TimerAmps, t.Size), max(w.TimerPlugs, t.Plugs)
	}
	if len(p.Spec.Power.Taps) > 0 {
		w.TapPrice = p.Spec.Power.Taps[0].Price
	}
	w.Ties = w.Joints + w.Open // every socket is tied to the pipe
	for _, c := range p.Cords {
		w.Ties += c.HungTies()
		one := stock.Wire{Of: c.Kind, Length: c.Length}
		if kind, ok := catalog.FindCord(c.Kind); ok {
			one.Assumed = kind.AssumedPrice(c.Length)
		}
		for _, inline := range p.Spec.Power.Inline {
			if c.Sockets > 1 && inline.Cord.Name == c.Kind && inline.Sockets == c.Sockets && inline.Length == c.Length {
				one = stock.Wire{Of: c.Kind, Length: c.Length, Sockets: c.Sockets, Inline: inline.Name(), Price: inline.Price, Assumed: inline.AssumedPrice()}
			}
		}
		w.Cords = append(w.Cords, one)
	}
	return w
}

// solveCrew orders the work.
func (p *Plan) solveCrew() {
	in := crew.Input{Spec: p.Spec, Arches: p.Arches, Ground: p.Ground, Lights: p.Lights, Asks: p.Weather.Asks, FootWeight: p.Weather.Feet.Weight, TieWeight: p.Weather.Feet.Guy}
	for _, r := range p.Ridge {
		in.Ridge = append(in.Ridge, crew.RidgePiece(r))
	}
	in.Line = p.crownLine()
	_, in.LegCuts = p.Cuts.Sawn()
	in.InShed, in.Cemented, in.Screws = p.Stock.Wrapped.Legs, p.Stock.Cemented, p.Stock.Screws()
	in.Stick, in.Whole, in.Steel = p.Cuts.Handled()
	in.Rope = p.Stock.LongestRope()
	on := map[string]lights.Run{}
	for _, s := range p.Strings {
		on[s.Name] = s.Run
	}
	for _, c := range p.Chains {
		chain := crew.Chain{Outlet: c.Outlet, Amps: c.Amps, To: c.To.At.Spot}
		for _, name := range c.Strings {
			chain.Runs = append(chain.Runs, on[name])
		}
		in.Chains = append(in.Chains, chain)
	}
	in.Wiring = crew.Wiring{Cords: len(p.Cords), Taps: len(p.Taps), Joints: p.Power.Covered(), Open: p.Power.Open, Over: len(p.Power.Covers),
		Boxes: p.Power.PlugBoxes(), Bare: len(p.Power.Bare), High: p.Power.High(), Loose: p.Power.Loose()}
	for i, c := range p.Cords {
		if c.Laid() {
			in.Wiring.Laid++
			in.Wiring.Posts += p.ribbonPosts(i)
		}
		if c.Hung() {
			in.Wiring.Hung, in.Wiring.HungTies = in.Wiring.Hung+1, in.Wiring.HungTies+c.HungTies()
			if c.To.At.MidBay() {
				in.Wiring.OnRows += c.HungTies()
			}
		}
	}
	for _, t := range p.Power.Timers {
		in.Wiring.Timers = append(in.Wiring.Timers, crew.Timer{Outlet: t.Outlet, Amps: t.Size})
	}
	if len(p.Weather.Bears) > 0 {
		inside := p.Weather.InsideGust()
		in.Inside, in.Felt, in.Down = inside.Called(), inside.Local, p.Weather.DownGust().Called()
	}
	p.Crew = crew.Day(in)
	p.Crew.Lowerers = p.LaidFlat().Crews
	p.note(p.Crew.Findings)
}

// ribbonPosts is how many posts a cord asks for on its way from its outlet to the feet: none where one before it goes the same way.
func (p *Plan) ribbonPosts(cord int) int {
	lead := func(c power.Cord) []power.Spot { return c.Path[:min(2, len(c.Path))] }
	c := p.Cords[cord]
	if c.From.At.Spot != lights.AtOutlet || len(lead(c)) < 2 || slices.ContainsFunc(p.Cords[:cord], func(o power.Cord) bool { return o.Laid() && slices.Equal(lead(o), lead(c)) }) {
		return 0
	}
	return practice.RibbonPosts(measure.Length(math.Hypot(float64(c.Path[1].X-c.Path[0].X), float64(c.Path[1].Y-c.Path[0].Y))))
}

// accept turns the findings that the organiser takes on into signed notes. The reader has refused those that nobody may take on.
func (p *Plan) accept() {
	for i, a := range p.Spec.Accept {
		met := false
		for j := range p.Findings {
			if f := &p.Findings[j]; f.Code == a.Finding {
				f.Level, f.AcceptedBy, f.AcceptedAs = finding.Note, a.By, a.Why
				met = true
			}
		}
		if key := fmt.Sprintf("accept[%d]", i); !met {
			p.Findings = append(p.Findings, finding.Finding{Level: finding.Note, Code: "nothing-to-accept", Key: key,
				Text: fmt.Sprintf("%s accepts the finding %s, but this plan has none of that name: take the line out, or spell it as check prints it.", a.By, a.Finding)})
		}
	}
}

// fillEmpty makes every list of the plan an empty one instead of none, so that its JSON always has arrays.
func (p *Plan) fillEmpty() {
	fill(&p.Ties)
	fill(&p.Ridge)
	fill(&p.Diagonals)
	fill(&p.Cuts.Bars)
	fill(&p.Strings)
	fill(&p.Wraps)
	fill(&p.Chains)
	fill(&p.Cords)
	fill(&p.Taps)
	fill(&p.Circuits)
	fill(&p.Shopping)
	fill(&p.Findings)
	fill(&p.Found)
	fill(&p.Weather.Bears)
}

func fill[T any](list *[]T) {
	if *list == nil {
		*list = []T{}
	}
}
