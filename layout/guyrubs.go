package layout

import (
	"fmt"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// guyRubs tells of guys that pass the leg of another arch so near that they rub its pipe and wire through a season, the nearest of them, and how far out their stakes would stand clear.
func (p *Plan) guyRubs() {
	u, s := p.Spec.Units, p.Spec
	near, guy, leg, found := p.nearestPass(s.Guys.Out)
	if !found || near >= practice.GuyClear(u) {
		return
	}
	f := finding.Finding{Level: finding.LookAt, Code: "guy-rubs-leg", Key: "guys.out",
		Text: fmt.Sprintf("The guy to %s passes the pipe of arch %d within %s and rubs it and its wire.", guy, leg, u.Inches(near))}
	var cure []finding.Change
	if !s.Given("guys") { // what is cured is written out with what goes with it
		cure = []finding.Change{{Key: "guys.from", Value: spec.Written(s.Guys.From, "", u).(string)}}
	}
	outs := []measure.Length{weather.OutFor(s.Guys.From, u)} // first as far as cures what pulls down too
	for out := practice.GuyStep(u); out < s.Guys.Out; out += practice.GuyStep(u) {
		outs = append(outs, s.Guys.Out+out, s.Guys.Out-out)
	}
	clears := func(out measure.Length) bool {
		near, _, _, passes := p.nearestPass(out)
		return !passes || near >= practice.GuyClear(u)
	}
	if i := slices.IndexFunc(outs, clears); i >= 0 {
		f.Cure = append(cure, finding.Change{Key: "guys.out", Value: spec.Written(outs[i], "", u).(string)})
	}
	p.note([]finding.Finding{f})
}

// nearestPass returns how near a guy whose stake stands so far out passes the middle of another arch's pipe, seen in that arch's plane at the guy's height there, which guy and which arch; on a
// bend as if the walk were straight. Not found where none passes an arch.
func (p *Plan) nearestPass(out measure.Length) (near measure.Length, guy ground.StakeID, leg int, found bool) {
	for _, s := range p.Stakes {
		if !s.Guy || s.Bay > 0 {
			continue
		}
		_, tied, ok := p.Arches[s.Arch-1].Kind.Across(s.Tied)
		if !ok {
			continue
		}
		here := p.Ground.Stations[s.Arch-1].Along
		for _, a := range p.Arches {
			share := float64(measure.Abs(p.Ground.Stations[a.Number-1].Along-here) / out)
			ahead := (p.Ground.Stations[a.Number-1].Along > here) == (s.Along > here)
			_, pipe, stands := a.Kind.Across(s.Tied * measure.Length(1-share))
			if a.Number == s.Arch || !ahead || share >= 1 || !stands {
				continue
			}
			apart := measure.Abs(tied.X + (measure.Abs(s.Offset)-tied.X)*measure.Length(share) - pipe.X)
			if !found || apart < near {
				near, guy, leg, found = apart, s.StakeID, a.Number, true
			}
		}
	}
	return near, guy, leg, found
}
