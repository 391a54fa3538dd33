package weather

import (
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Feet where no stake goes: bars upright in a board along each row, with weights on it. Buckets do only with the bar cast in.
type Feet struct {
	Weight measure.Force // on each foot, base and all
	Guy    measure.Force // on each guy's or brace's end
	Total  measure.Force // of all
	Grip   float64       // coefficient of friction reckoned with
}

// ballastFactor is on sliding and tipping: common practice, no source.
const ballastFactor = 1.5

// friction returns that of a base on what it stands on, wet: rubber on asphalt .53 and on concrete .30, wet grass .2 (Boal; Noon 1994), a wet deck as grass; in frost no more than the .2
// that EN 12195-1 gives for icy or unswept floors.
func friction(on spec.Paving, cold measure.Temperature) float64 {
	wet := map[spec.Paving]float64{spec.Asphalt: .53, spec.Concrete: .30, spec.Grass: .2, spec.Deck: .2}[on]
	if cold <= 0 {
		return min(wet, .2)
	}
	return wet
}

// slides returns how near a foot of a weight comes to sliding: H over μ times what presses it down.
func slides(push, lift, weight, grip float64) float64 { return over(push, grip*(weight+lift)) }

// tips returns how near it comes to tipping about the edge of its base.
func tips(moment, lift, weight, width float64) float64 { return over(moment, (weight+lift)*width/2) }

// over returns a load's share of what bears it, without end where nothing presses the foot down.
func over(load, borne float64) float64 {
	if borne <= 0 {
		return math.Inf(1)
	}
	return load / borne
}

// footNeeds returns the weight on a foot that keeps it from sliding and tipping.
func (t *Tunnel) footNeeds(f *spec.Foot, d *demand, factor float64) (weight float64) {
	grip := friction(f.On, t.Spec.Weather.Cold)
	for i := range d.push {
		weight = max(weight, factor*d.push[i]/grip-d.lift[i], factor*d.tip[i]/(f.Width.Metres()/2)-d.lift[i])
	}
	return weight
}

// foot returns the base of the arches that stand on one, nil where none does, and how many of them there are.
func (t *Tunnel) foot() (f *spec.Foot, arches int) {
	for _, a := range t.kinds {
		if a.spec.Foot != nil {
			f = a.spec.Foot
			arches++
		}
	}
	return f, arches
}

// tieNeeds returns the weight that holds a guy's or a brace's end, which pulls up by so much rise over run: W = V + 1.5·H/μ.
func tieNeeds(pull, slope, grip float64) float64 {
	level := pull / math.Hypot(1, slope)
	return level*slope + ballastFactor*level/grip
}

// ballast works out the weights where the spec leaves them open, at the gust that it is to bear, and what all of them come to.
func (w *Weather) ballast() {
	t := w.of
	foot, arches := t.foot()
	if foot == nil || len(w.curves) == 0 {
		return
	}
	grip := friction(foot.On, t.Spec.Weather.Cold)
	step := measure.By(t.Spec.Units, 5*measure.PoundForce, measure.Mass(2).Weight())
	up := func(n float64) measure.Force { return measure.Force(math.Ceil(n/float64(step)-1e-9)) * step }
	w.Feet = Feet{Weight: foot.Weight.Weight(), Grip: grip}
	aim, needs := t.pressure(t.aim()), t.pressure(t.needs())
	from, out := t.Spec.Held()
	ties := 0.0
	for _, c := range w.curves {
		d, last := c.at(aim), c.at(needs)
		if foot.Weight == 0 && c.kind.spec.Foot != nil {
			w.Feet.Weight = max(w.Feet.Weight, up(t.footNeeds(foot, &d, ballastFactor)), up(t.footNeeds(foot, &last, 1)))
		}
		if out > 0 {
			ties = max(ties, tieNeeds(max(d.pull, d.brace), float64(from/out), grip))
		}
	}
	w.Feet.Guy = up(ties)
	w.Feet.Total = w.Feet.Weight*measure.Force(2*arches) + w.Feet.Guy*measure.Force(2*len(t.holds()))
}

// aim is the gust at the arches that nothing may be damaged in for the spec's aims to be reached.
func (t *Tunnel) aim() measure.Speed {
	factor, _ := exposure(t.Spec.Site.Exposure)
	aim := t.Spec.Weather
	return max(aim.Stand*measure.Speed(factor), aim.Inside*measure.Speed(closes(t.Spec.Site.Exposure))/insideShare)
}
