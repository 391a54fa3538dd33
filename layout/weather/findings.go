package weather

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// The findings of the tunnel as a whole:
//
//	leans-along           must fix  less than standsStill times its own weight against leaning along the tunnel; look at below twofold
//	closes-early          must fix  nobody may be inside from less than a forecast gust of practice.InsideLeast; look at below weather.inside
//	lies-flat-early       look at   it is to be laid flat before gusts below weather.stand
//	guys-cross-the-walk   look at   a guy runs through the opening that is kept clear
//	guy-pulls-down        look at   a guy's stake stands nearer to its arch than the guy is tied high, and pulls down more than along
//	guys-at-the-way-in    note      guys stand where people come in or go out
//	brace-is-flat         look at   a crossed brace less steep than 45°
//	ridge-is-pulled       look at   a wind along the tunnel pulls at dry ridge sockets; a note where it is little
//	folds-under-ice       must fix  it does not bear the ice it is figured for as raised; look at where it no longer does at season's end
const (
	codeAlong  = "leans-along"
	codeCloses = "closes-early"
	codeDown   = "lies-flat-early"
	codeCross  = "guys-cross-the-walk"
	codeSteep  = "guy-pulls-down"
	codeFlat   = "brace-is-flat"
	codeWayIn  = "guys-at-the-way-in"
	codeRidge  = "ridge-is-pulled"
	codeIce    = "folds-under-ice"
	keyOfAims  = "weather"
)

// Judge says what is wrong with the tunnel as a whole.
func (w *Weather) Judge() []finding.Finding {
	if w.of == nil || len(w.of.kinds) == 0 {
		return nil
	}
	j := &judge{w: w, t: w.of, u: w.of.Spec.Units}
	j.leans()
	if len(w.Bears) > 0 {
		j.closes()
		j.down()
		j.ridge()
		j.ice()
	}
	j.crosses()
	j.steep()
	return j.list
}

type judge struct {
	w    *Weather
	t    *Tunnel
	u    measure.System
	list []finding.Finding
}

func (j *judge) add(level finding.Level, code, key, format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	j.list = append(j.list, finding.Finding{Level: level, Code: code, Key: key, Pos: j.t.Spec.Position(key), Text: say.Capital(text)})
}

// cure says what cures the finding added last.
func (j *judge) cure(key string, to measure.Length) {
	j.list[len(j.list)-1].Cure = []finding.Change{{Key: key, Value: j.u.Written(to)}}
}

// leans reports a tunnel that its own weight may lay over lengthwise.
func (j *judge) leans() {
	w := j.w
	if w.Factor >= arch.WantedFactor {
		return
	}
	level := finding.LookAt
	if w.Factor < standsStill {
		level = finding.MustFix
	}
	held := "nothing holds it lengthwise; ridge pieces do not, since all arches lean together"
	if w.Held {
		held = "with all that holds it"
	}
	better := "brace more bays"
	if s := j.t.Spec; len(s.Braces.Bays) >= s.Tunnel.Arches-1 {
		better = "add guys"
	}
	if level == finding.LookAt {
		better = "build so, or " + better
	}
	j.add(level, codeAlong, j.given("guys", "braces"), "at season's end the tunnel bears %.1f times its own weight and lights before it leans over along itself: %s. %g times is the least to walk under, %d is wanted: %s.",
		w.Factor, held, standsStill, arch.WantedFactor, better)
}

// called prints a gust as forecast, or as measured where no forecast tells.
func (j *judge) called(g Gust) string {
	if g.Forecast == 0 {
		return j.u.Speed(g.Local) + " measured at head height"
	}
	return j.u.Speed(g.Forecast) + " forecast"
}

// given returns the first of the keys that the spec gives, else that of the arch, which it always does.
func (j *judge) given(keys ...string) string {
	for _, key := range keys {
		if j.t.Spec.Given(key) {
			return key
		}
	}
	return "arch"
}

// gives says what gives way first, and in which soil where that is not known; in what gusts stands in the annex.
func (j *judge) gives() string {
	b := j.w.Bears[0]
	soil := ""
	if len(j.w.Bears) > 1 {
		soil = "should the soil be " + b.Soil.Name + " "
	}
	return fmt.Sprintf("%s%s (arch %d)", soil, b.Damage.Cause, b.Damage.Arch)
}

// slack is what rounding down to whole numbers may take from an aim that is met.
const slack = measure.MPH / 100

// closes reports a tunnel that people leave before the aim.
func (j *judge) closes() {
	w, aim := j.w, j.t.Spec.Weather.Inside
	inside := w.InsideGust().Called()
	if inside >= aim-slack && inside >= practice.InsideLeast-slack {
		return
	}
	level, aims := finding.LookAt, j.u.Speed(aim)+" was asked for"
	if inside < practice.InsideLeast-slack {
		level, aims = finding.MustFix, fmt.Sprintf("below %s it is no tunnel to walk in", j.u.Speed(practice.InsideLeast))
	}
	if w.Calm() {
		j.add(level, codeCloses, j.given(keyOfAims), "the tunnel bears no wind to speak of: %s.", j.gives())
		return
	}
	j.add(level, codeCloses, j.given(keyOfAims), "nobody is inside from gusts of %s on, and %s: %s.", j.called(w.InsideGust()), aims, j.gives())
}

// down reports a tunnel that lies flat before the aim.
func (j *judge) down() {
	w, aim := j.w, j.t.Spec.Weather.Stand
	if w.DownGust().Called() >= aim-slack || w.Calm() {
		return
	}
	first := w.Bears[0].Damage
	j.add(finding.LookAt, codeDown, j.given(keyOfAims), "from %s %s (arch %d): lay all flat before.", j.called(w.DownGust()), first.Cause, first.Arch)
}

// crosses reports guys that run through the walk: from a tie above the opening outward and down to a stake beside it.
func (j *judge) crosses() {
	t, u, guys := j.t, j.u, &j.t.Spec.Guys
	var low []int
	for _, a := range t.Arches {
		if !slices.Contains(guys.Arches, a.Number) {
			continue
		}
		in := t.kinds[a.Number-1].In
		left, right, ok := a.Across(min(guys.From, a.Crown-measure.Millimetre))
		half, edge, stake := (right.X-left.X)/2, in.OpeningWidth/2, a.Span/2
		if !ok || half >= edge || stake <= edge {
			continue
		}
		if height := guys.From * (1 - (edge-half)/(stake-half)); height < in.OpeningHeight {
			low = append(low, a.Number)
		}
	}
	if len(low) == 0 {
		return
	}
	j.add(finding.LookAt, codeCross, "guys.from", "guys tied %s up on %s come down through the opening that is kept clear for people, at the height of faces. Tie them %s up or lower, on the outside of the legs.",
		u.Tape(guys.From), say.Numbered("arch", low), u.Tape(t.Arches[0].HighestTie()))
}

// steep reports guys that pull down more than along, and crossed braces that pull along more than they hold.
func (j *judge) steep() {
	t, u := j.t, j.u
	if g := t.Spec.Guys; len(g.Arches) > 0 && g.Out < g.From {
		j.add(finding.LookAt, codeSteep, "guys.out", "a guy tied %s up, its %s %s out, pulls down on the arch %.1f times what it pulls along.",
			u.Tape(g.From), strings.TrimSuffix(t.Spec.TieEnds(), "s"), u.Tape(g.Out), float64(g.From/g.Out))
		j.cure("guys.out", FarOut(t.Spec))
	}
	if ends := slices.DeleteFunc(slices.Clone(t.Spec.Guys.Arches), func(n int) bool { return !t.Spec.Netted(n) }); len(ends) > 0 {
		j.add(finding.Note, codeWayIn, "guys", "a child, or whoever leaves in the dark, runs into the guys of %s: hang nets from guy stake to leg.", say.Numbered("arch", ends))
	}
	reach := t.Spec.Tunnel.Spacing - practice.PegShort(u)
	if b := t.Spec.Braces; len(b.Bays) > 0 && b.Line && b.From < reach {
		j.add(finding.LookAt, codeFlat, "braces.from", "crossed lines from %s to pegs %s away lie flatter than 45°, where a foot trips and a child leans. Tie them %s up or higher, or brace with pipe.", u.Tape(b.From), u.Tape(reach), u.Tape(reach))
		j.cure("braces.from", OutFor(reach, u))
	}
}

// ridge reports a pull on dry ridge sockets.
func (j *judge) ridge() {
	t, w, u := j.t, j.w, j.u
	if !w.Held || !t.joined() || !t.Spec.Arch.Joints.DryCrown() || w.RidgeEnd < arch.PullTells {
		return
	}
	level := finding.Note
	if w.RidgeEnd > practice.MuchPull {
		level = finding.LookAt
	}
	j.add(level, codeRidge, "arch.joints", "a gust of %s along the tunnel pulls at the ridge with %s. No maker says what a dry socket holds: tie the crown line, or pin the sockets.",
		j.called(w.InsideGust()), u.Force(w.RidgeEnd))
}

// ice reports a tunnel that does not bear the ice it is figured for.
func (j *judge) ice() {
	w, u, asked := j.w, j.u, j.t.Spec.Weather.Ice
	if asked <= 0 || w.Ice[1] >= asked {
		return
	}
	level, when, bears := finding.LookAt, "at season's end", w.Ice[1]
	if w.Ice[0] < asked {
		level, when, bears = finding.MustFix, "as raised", w.Ice[0]
	}
	j.add(level, codeIce, "weather.ice", "it is figured for %s of ice all round, but folds or leans over under %s, %s. Take thicker pipe, guy it, or plan to take it down before ice comes.",
		u.Size(asked), u.Size(bears), when)
}
