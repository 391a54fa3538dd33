// Package weather says what wind and ice do to a tunnel as it stands, and what would hold it better. Solve raises the gusts on all arches together,
// sideways and along, until something gives, for each soil it may be, and reads off the gusts to close and to lay flat at; Judge says what is wrong, with cures; Drill is
// how it is laid flat. Bracings and Changes list what may be chosen, Price what that costs. A Kind is arches that stand alike.
//
// Gusts are m/s at the arches unless a Gust or a Forecast says otherwise; forces N, moments N·m. Wind after ASCE 7 and AS/NZS 1170.2 (wind.go), ice after ASCE 7 (ice.go). All are
// estimates to close early by.
package weather

import (
	"cmp"
	"math"
	"slices"

	"hoopwright/layout/anchor"
	"hoopwright/layout/arch"
	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Bears is what the tunnel bears in one soil, in gusts at the arches.
type Bears struct {
	Soil     anchor.Soil `json:"-"`
	Name     string      `json:"soil"`
	Damage   Limit       `json:"built"` // the first damage, as it is built
	Collapse Limit       `json:"collapse"`
}

// Forecast is the gusts to act at as a forecast gives them, 10 m up in open country; 0 where only a meter tells.
type Forecast struct {
	Inside measure.Speed `json:"inside_m_s"`
	Down   measure.Speed `json:"down_m_s"`
}

// Holding is what holds the tunnel lengthwise.
type Holding struct {
	Chosen bool          `json:"chosen"` // by the solver, for the spec leaves it open
	Guys   HoldingGuys   `json:"guys"`
	Braces HoldingBraces `json:"braces"`
	Cost   float64       `json:"cost"` // in the spec's currency, by its prices or else by our own
}

// HoldingGuys are the guys of a Holding: of no arches where there are none.
type HoldingGuys struct {
	Arches []int          `json:"arches"`
	From   measure.Length `json:"from_mm"`
	Out    measure.Length `json:"out_mm"`
}

// HoldingBraces are the braces of a Holding: in no bays where there are none.
type HoldingBraces struct {
	Bays []int          `json:"bays"`
	From measure.Length `json:"from_mm"`
	Line bool           `json:"line"`
}

// holding says what holds the tunnel lengthwise.
func (t *Tunnel) holding() Holding {
	s := t.Spec
	g, b := s.Guys, s.Braces
	return Holding{
		Chosen: s.Settled() && !s.Given("guys") && !s.Given("braces"), Cost: PriceOfBracing(s),
		Guys:   HoldingGuys{append([]int{}, g.Arches...), g.From, g.Out},
		Braces: HoldingBraces{append([]int{}, b.Bays...), b.From, b.Line},
	}
}

// Weather is what wind and ice do to the tunnel: estimates for closing early, never a rating. Gusts are those at the arches unless they are told to be forecast.
type Weather struct {
	Bears    []Bears       `json:"bears"` // one for each soil it may be, the weakest first; none where it does not stand in still air
	Exposure float64       `json:"exposure_factor"`
	Damage   measure.Speed `json:"first_damage_m_s"` // of the weakest soil
	Collapse measure.Speed `json:"collapse_m_s"`
	Inside   measure.Speed `json:"inside_m_s"` // nobody is inside from this gust on
	Down     measure.Speed `json:"down_m_s"`   // the tunnel lies flat before it
	Forecast Forecast      `json:"forecast"`
	Bracing  Holding       `json:"bracing"`

	Factor   float64           `json:"load_factor"`   // least multiple of all dead load at which it leans over along, at season's end
	Sway     [2]measure.Length `json:"sway_mm"`       // of the crown, the most of any arch, in gusts of practice.SwayGusts
	GuyPull  measure.Force     `json:"guy_pull_n"`    // the most in a guy or brace, along it, at the gust nobody is inside from
	RidgeEnd measure.Force     `json:"ridge_pull_n"`  // greatest pull or push in the ridge then, or in the line along the crowns where none joins the arches
	Uplift   measure.Force     `json:"uplift_n"`      // the most that a foot is pulled out with at the gust it lies flat before
	Held     bool              `json:"held"`          // guys or braces hold it lengthwise
	Feet     Feet              `json:"-"`             // of arches on weighted bases
	Cover    float64           `json:"cover"`         // how many times the wind's push a closed cover brings
	Ice      [2]measure.Length `json:"ice_mm"`        // least radial ice at which an arch folds or leans over: as new and late
	Test     measure.Speed     `json:"test_m_s"`      // the gust whose demand the stakes are tried with by hand
	Asks     float64           `json:"stake_asks_nm"` // N·m at its ground point: the greatest moment of any in it, or what asks as much of the ground as a guy or a brace does

	curves []*curve
	of     *Tunnel
	exact  Forecast // before rounding, at the arches where only a meter tells
}

// Calm reports that the tunnel bears no wind to speak of: there is no gust to name that it could stay open to.
func (w *Weather) Calm() bool { return w.Inside < practice.AirOfNote }

// Solve finds what the tunnel bears. It lowers its kinds' load factors along the tunnel to what they come to together.
func Solve(t *Tunnel) *Weather {
	w := &Weather{of: t}
	w.Exposure, _ = exposure(t.Spec.Site.Exposure)
	w.Bracing = t.holding()
	if t.After != nil {
		t.kinds = t.After.of.kinds
	} else if t.kinds = gather(t.Arches); len(t.kinds) == 0 {
		return w // one that nobody asked for, or that does not stand in still air
	}
	holds := t.holds()
	w.Held = len(holds) > 0
	if t.Side {
		w.Factor = bend.Most
	} else {
		w.stand(holds)
	}
	if w.Factor < 1 || t.hopeless(w, mostGust) || t.After == nil && !t.enter() {
		return w
	}
	w.blow(holds)
	w.ballast()
	for _, soil := range t.soils() {
		list := t.checks(soil, w.Feet)
		w.Bears = append(w.Bears, Bears{soil, soil.Name, t.limit(w.curves, list, false), t.limit(w.curves, list, true)})
	}
	slices.SortStableFunc(w.Bears, func(a, b Bears) int { return cmp.Compare(a.Damage.Gust, b.Damage.Gust) })
	w.limits()
	w.figures()
	return w
}

// stand finds load factors and ice.
func (w *Weather) stand(holds []hold) {
	t := w.of
	var rows []row
	for _, way := range t.ways(holds) {
		rows = append(rows, t.rows(way, holds)...)
	}
	late, most := float64(t.Spec.Arch.LateModulus), float64(bend.Most)
	if t.Rough {
		most = standsStill
	}
	factors, ices := make([]float64, len(rows)), make([][2]measure.Length, len(rows))
	arch.SideBySide(len(rows), func(i int) {
		r := rows[i]
		factors[i] = r.factor(late, most)
		if factors[i] < 1 || t.Rough {
			return
		}
		for j, left := range [2]float64{1, late} {
			weighed := r.iceUnder(min(factors[i], r[0].kind.Sideways) * left / late)
			// Ice lies lower on the legs than what else hangs there, so that a little more of it is borne; that is not counted on.
			if weighed > 0 {
				ices[i][j] = r.ice(weighed, left)
			}
		}
	})
	w.Factor, w.Ice = math.Inf(1), [2]measure.Length{mostIce, mostIce}
	for i, r := range rows {
		for _, m := range r {
			for _, number := range m.arches {
				a := t.Arches[number-1]
				w.Factor = min(w.Factor, a.Along, factors[i])
				if !t.Rough {
					a.LeansAt(factors[i])
				}
			}
		}
		for j := range w.Ice {
			w.Ice[j] = min(w.Ice[j], ices[i][j])
		}
	}
}

// blow finds what rising gusts of every way ask.
func (w *Weather) blow(holds []hold) {
	t, seen := w.of, w.watch()
	type job func() []*curve
	var jobs []job
	for state := range 2 {
		for _, way := range t.ways(holds) {
			if t.Side {
				break
			}
			for _, r := range t.rows(way, holds) {
				jobs = append(jobs, func() []*curve { return r.blow(state, seen) })
			}
		}
		if t.After != nil {
			continue
		}
		for _, k := range t.each() {
			signs := []float64{1, -1}
			if k.mirrors() {
				signs = signs[:1]
			}
			for _, sign := range signs {
				jobs = append(jobs, func() []*curve { return []*curve{k.sideways(state, sign, seen)} })
			}
		}
	}
	found := make([][]*curve, len(jobs))
	arch.SideBySide(len(jobs), func(i int) {
		if !seen.over.Load() {
			found[i] = jobs[i]()
		}
	})
	w.curves = slices.Concat(found...)
	if t.After != nil {
		w.curves = append(w.curves, slices.DeleteFunc(slices.Clone(t.After.curves), func(c *curve) bool { return c.way == Along })...)
	}
}

// heavy are feet whose weight is not yet known, and holds.
var heavy = Feet{Weight: 1e9}

// needs is the gust at the arches that no arch may fall in for the spec's aims to be reached.
func (t *Tunnel) needs() measure.Speed {
	factor, _ := exposure(t.Spec.Site.Exposure)
	aim := t.Spec.Weather
	return max(aim.Stand*measure.Speed(factor)/collapseShare, aim.Inside*measure.Speed(closes(t.Spec.Site.Exposure))/insideShare)
}

// limits sets the gusts to act at, by the weakest soil; all are whole numbers as they are printed, rounded down.
func (w *Weather) limits() {
	e, u := w.of.Spec.Site.Exposure, w.of.Spec.Units
	w.Damage, w.Collapse = mostGust, mostGust
	for _, b := range w.Bears {
		w.Damage, w.Collapse = min(w.Damage, b.Damage.Gust), min(w.Collapse, b.Collapse.Gust)
	}
	inside, down := w.shares()
	factor, forecast := exposure(e)
	if forecast {
		w.Forecast = Forecast{whole(min(practice.InsideMost, inside/measure.Speed(closes(e))), u), whole(down/measure.Speed(factor), u)}
		inside = min(inside, practice.InsideMost*measure.Speed(closes(e)))
	}
	w.Inside, w.Down = whole(min(inside, practice.InsideMost), u), whole(down, u)
}

// shares works out the gusts to act at from those of damage and collapse, before rounding.
func (w *Weather) shares() (inside, down measure.Speed) {
	e := w.of.Spec.Site.Exposure
	factor, _ := exposure(e)
	inside, down = insideShare*w.Damage, min(w.Damage, collapseShare*w.Collapse)
	w.exact = Forecast{min(practice.InsideMost, inside/measure.Speed(closes(e))), down / measure.Speed(factor)}
	return inside, down
}

// InsideGust and DownGust are the gusts to act at both ways.
func (w *Weather) InsideGust() Gust { return Gust{w.Inside, w.Forecast.Inside} }

// DownGust is the gust that the tunnel lies flat before.
func (w *Weather) DownGust() Gust { return Gust{w.Down, w.Forecast.Down} }

// figures fills in pulls, sway, covers and the stakes' test.
func (w *Weather) figures() {
	t := w.of
	for i, v := range practice.SwayGusts() {
		for _, c := range w.curves {
			w.Sway[i] = max(w.Sway[i], measure.Length(c.at(t.pressure(v)).sway)*measure.Metre)
		}
	}
	inside, down := t.pressure(w.Inside), t.pressure(w.Down)
	for _, c := range w.curves {
		d := c.at(inside)
		w.GuyPull = max(w.GuyPull, measure.Force(max(d.pull, d.brace)))
		w.RidgeEnd = max(w.RidgeEnd, measure.Force(math.Abs(d.ridge)))
		d = c.at(down)
		w.Uplift = max(w.Uplift, measure.Force(-min(d.lift[0], d.lift[1])))
	}
	w.Test = max(w.Down, practice.StakesTest)
	w.tried()
	for _, k := range t.each() {
		pushes := 0.0
		for _, l := range k.sideWind() {
			pushes += l.Push
		}
		if k.In.Spacing > 0 {
			w.Cover = max(w.Cover, dragOfWall*k.In.Spacing.Metres()*k.Crown.Metres()/pushes)
		}
	}
}

// OpensTo is the gust at the arches of whose damage practice.InsideMost is insideShare: what a tunnel bears that stays open as long as any may.
func (w *Weather) OpensTo() measure.Speed {
	return practice.InsideMost * measure.Speed(closes(w.of.Spec.Site.Exposure)) / insideShare
}

// stakeAsks returns the push, N, and the moment, N·m, that a gust asks of the stake that bears most, at the ground.
func (w *Weather) stakeAsks(v measure.Speed) (push measure.Force, moment float64) {
	q := w.of.pressure(v)
	for _, c := range w.curves {
		d := c.at(q)
		for f := range d.push {
			push, moment = max(push, measure.Force(d.push[f])), max(moment, d.moment[f])
		}
	}
	return push, moment
}

// Depth returns the least depth of the stakes for a gust in a soil, with depthFactor on its load. It reports false where no depth helps, for the arches fall by then.
func (w *Weather) Depth(soil anchor.Soil, v measure.Speed) (deep measure.Length, ok bool) {
	if len(w.curves) == 0 {
		return 0, false
	}
	others := slices.DeleteFunc(w.of.checks(soil, w.Feet), func(c check) bool { return c.cause == CauseStake })
	if v > w.of.limit(w.curves, others, true).Gust {
		return 0, false
	}
	q := w.of.pressure(v)
	for _, c := range w.curves {
		d := c.at(q)
		for f := range d.push {
			deep = max(deep, soil.Depth(c.kind.spec.Stake.Bar.Diameter, depthFactor*measure.Force(d.push[f]), depthFactor*d.moment[f]))
		}
	}
	return deep, true
}
