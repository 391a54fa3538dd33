package layout

import (
	"fmt"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// guyRubs tells of guys that pass the leg of another arch or a row of lights so near that they rub pipe and wire through a season, or a leg inside, where people walk, and whose stakes cannot stand
// far enough aside: the worst of them, and how far along its stake would do.
func (p *Plan) guyRubs() {
	u, s := p.Spec.Units, p.Spec
	pass, near, yes := rubs(s, p.Arches)
	if !yes {
		return
	}
	guy := ground.StakeID{Arch: pass.Guy, Side: pass.Side, Guy: true, Way: ground.Toward}
	if pass.Ahead {
		guy.Way = ground.Away
	}
	f := finding.Finding{Level: finding.LookAt, Code: "guy-rubs-leg", Key: "guys.out",
		Text: fmt.Sprintf("The guy to %s passes the pipe of arch %d within %s and rubs it and its wire.", guy, pass.Leg, u.Inches(measure.Abs(near)))}
	switch {
	case pass.Row > 0:
		f.Text = fmt.Sprintf("The guy to %s passes row %d of lights within %s and rubs it.", guy, pass.Row, u.Inches(measure.Abs(near)))
	case near <= -practice.GuyClear(u):
		f.Text = fmt.Sprintf("The guy to %s passes arch %d %s inside its pipe, where people walk.", guy, pass.Leg, u.Inches(-near))
	}
	var cure []finding.Change
	if !s.Given("guys") { // what is cured is written out with what goes with it
		cure = []finding.Change{{Key: "guys.from", Value: spec.Written(s.Guys.From, "", u).(string)}}
	}
	outs := []measure.Length{weather.FarOut(s)} // first as far as cures what pulls down too
	for out := practice.GuyStep(u); out < s.Guys.Out; out += practice.GuyStep(u) {
		outs = append(outs, s.Guys.Out+out, s.Guys.Out-out)
	}
	clears := func(out measure.Length) bool {
		n := *s
		n.Guys.Out = out
		_, _, yes := rubs(&n, p.Arches)
		return !yes && weather.LaneOut(s, s.Guys.Arches, out) == out
	}
	if i := slices.IndexFunc(outs, clears); i >= 0 {
		f.Cure = append(cure, finding.Change{Key: "guys.out", Value: spec.Written(outs[i], "", u).(string)})
	}
	p.note([]finding.Finding{f})
}

// guysInLanes tells of guy stakes that stand at the feet of whoever carries another arch's bent pipe, and the nearest place where they do not and pull no steeper.
func (p *Plan) guysInLanes() {
	s, u := p.Spec, p.Spec.Units
	n := *s
	if n.Guys.Out = weather.LaneOut(s, s.Guys.Arches, s.Guys.Out); n.Guys.Out == s.Guys.Out {
		return
	}
	f := finding.Finding{Level: finding.LookAt, Code: "guy-in-lane", Key: "guys.out",
		Text: fmt.Sprintf("Guy stakes %s out stand beside other arches' lines, at the feet of whoever carries a bent pipe.", u.Tape(s.Guys.Out))}
	for most := s.Guys.Out + 3*s.Tunnel.Spacing; n.Guys.Out < most; n.Guys.Out = weather.LaneOut(s, s.Guys.Arches, n.Guys.Out+practice.GuyStep(u)) {
		if !p.groundWorse(&n) {
			f.Cure = []finding.Change{{Key: "guys.out", Value: spec.Written(n.Guys.Out, "", u).(string)}}
			break
		}
	}
	p.note([]finding.Finding{f})
}

// rubs returns the pass of a spec's guys that has least room and how far outside what it passes it is, and whether that is less than a hand.
func rubs(s *spec.Spec, arches []arch.Arch) (worst arch.Pass, near measure.Length, yes bool) {
	aside := arch.Aside(s, arches)
	worst, passes := arch.Nearest(arch.Passes(s, arches), aside)
	return worst, worst.Near(aside), passes && !worst.Clear(aside, s.Units)
}
