package weather

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The findings of the tunnel as a whole:
//
//	leans-along           look at   less than twofold against leaning along the tunnel; with guys, what holds it is too little
//	closes-early          look at   nobody may be inside from less than a fresh breeze on; a note where it is the tunnel and not the house limit that closes it
//	guys-cross-the-walk   look at   a guy runs through the opening that is kept clear
//	ridge-is-pulled       look at   a wind along the tunnel pulls at dry ridge sockets; a note where it is little
//	folds-under-ice       must fix  it does not bear the ice it is figured for as raised; look at where it no longer does at season's end
const (
	codeAlong  = "leans-along"
	codeCloses = "closes-early"
	codeCross  = "guys-cross-the-walk"
	codeRidge  = "ridge-is-pulled"
	codeIce    = "folds-under-ice"
)

// muchPull is the pull on dry sockets from which on it is worth a look: ten pounds; common practice, no source.
const muchPull = 10 * measure.PoundForce

// Judge says what is wrong with the tunnel as a whole, in the weather it bears.
func (t Tunnel) Judge(w Weather) []finding.Finding {
	if len(w.Bears) == 0 {
		return nil
	}
	j := &adviser{t: t, w: w, in: t.Arches[0].built.in}
	j.leans()
	j.closes()
	j.crosses()
	j.ridge()
	j.ice()
	return j.list
}

type adviser struct {
	t    Tunnel
	w    Weather
	in   *arch.Input
	list []finding.Finding
}

func (j *adviser) add(level finding.Level, code, sheet, key, format string, args ...any) {
	f := finding.Finding{Level: level, Code: code, Sheet: sheet, Key: key, Text: sentenceCase(fmt.Sprintf(format, args...))}
	if j.in.Position != nil {
		f.Pos = j.in.Position(key)
	}
	j.list = append(j.list, f)
}

// leans reports a tunnel that its own weight may lay over lengthwise. Arches alone are judged each by itself.
func (j *adviser) leans() {
	t, w, u := j.t, j.w, j.t.Units
	if !t.Joined || len(t.Arches) < 2 {
		return
	}
	least := math.Inf(1)
	for _, a := range t.Arches {
		least = min(least, a.Along)
	}
	switch {
	case least < 1 || least >= arch.WantedFactor: // below 1 each arch is reported to fall
	case w.Guyed:
		j.add(finding.LookAt, codeAlong, "raise", "guys", "at season's end the tunnel bears %.1f times its own weight and lights before it leans over along itself, guys and all. %s to get at least %d.",
			least, sentenceCase(j.hold()), arch.WantedFactor)
	default:
		j.add(finding.LookAt, codeAlong, "raise", "guys", "at season's end the tunnel bears %.1f times its own weight and lights before it leans over along itself; ridge pieces do not help, since all arches lean together. "+
			"Guy the end arches from both legs, tied %s up: it then bears %.1f times, and each guy holds %s in gusts of %s.",
			least, u.Tape(t.Arches[0].TieHeight()), w.WithGuys, u.Force(w.GuyPull), u.Speed(HouseGust))
	}
}

// closes reports a tunnel that must close before the house limit.
func (j *adviser) closes() {
	w, u := j.w, j.t.Units
	if w.Inside >= HouseGust-measure.MPH/2 {
		return
	}
	b := w.Bears[0]
	level, key, remedy := finding.Note, "weather", j.remedy(b)
	if w.Inside < earlyGust-measure.MPH/100 {
		level = finding.LookAt
	}
	down := "It is down before gusts of " + u.Speed(w.Down) + "."
	if w.Calm() {
		j.add(finding.LookAt, codeCloses, "safety", key, "in soil that is %s the tunnel bears no wind to speak of: %s (arch %d). %s", b.Soil.Name, b.Built.Cause, b.Built.Arch, remedy)
		return
	}
	soil := ""
	if len(w.Bears) > 1 {
		soil = "should the soil be " + b.Soil.Name + ", "
	}
	j.add(level, codeCloses, "safety", key, "%sthe tunnel bears gusts of about %s before %s, %s (arch %d); so nobody is inside from %s on. %s %s",
		soil, u.Speed(b.Built.Gust), b.Built.Cause, b.Built.Way, b.Built.Arch, u.Speed(w.Inside), down, remedy)
}

// earlyGust is where a fresh breeze begins, Beaufort 5 (from memory): a tunnel that closes for less is closed on many winter evenings.
const earlyGust = 19 * measure.MPH

// remedy says what would let the tunnel bear more.
func (j *adviser) remedy(b Bears) string {
	t, u := j.t, j.t.Units
	k := t.Arches[b.Built.Arch-1].Kind
	if b.Built.Way == "along" && !j.w.Guyed && t.Joined && len(t.Arches) > 1 {
		return sentenceCase(j.hold()) + "."
	}
	lighter := ""
	if j.w.Strip > 0 {
		lighter = fmt.Sprintf(" Rows and drops off, it bears %s more.", u.Speed(j.w.Gains))
	}
	switch b.Built.Cause {
	case CauseStake:
		want := HouseGust / InsideShare
		deep := measure.Length(0)
		for _, a := range t.Arches {
			deep = max(deep, a.Depth(b.Soil, want))
		}
		return fmt.Sprintf("Stakes that are to hold until gusts of %s stop people going in are driven %s deep there.", u.Speed(HouseGust), u.Inches(measure.RoundUp(deep, grip(j.in)))) + lighter
	case CauseBar:
		if bar, ok := thicker(k.Spec.Stake.Bar, k.Spec.Pipe); ok {
			return "A bar of " + bar.Name + " bears more." + lighter
		}
		return "Lighter strings, or feet nearer to where the legs stand plumb, let it bear more." + lighter
	case CauseGuyStake:
		return "Drive the guy stakes deeper, or guy more arches." + lighter
	case CauseGuyBar:
		return "Take a thicker bar for the guy stakes, or guy more arches." + lighter
	}
	if b.Built.Way == "along" {
		return sentenceCase(j.hold()) + "." + lighter
	}
	return "Thicker pipe, or shorter sticks, let it bear more." + lighter
}

// hold says how the tunnel could be held better lengthwise.
func (j *adviser) hold() string {
	t, u := j.t, j.t.Units
	k := t.Arches[0].Kind
	high := k.HighestTie()
	switch {
	case !t.Joined && len(t.Arches) > 1:
		return joinThem
	case len(t.Arches) == 1 && !j.w.Guyed:
		return "guy it both ways, tied " + u.Tape(high) + " up on both legs"
	case !j.w.Guyed:
		return "guy the end arches, tied " + u.Tape(high) + " up on both legs"
	case t.heldOneWay():
		return "guy the other end as well"
	case high > t.Guys.From+hand:
		return "tie the guys " + u.Tape(high) + " up instead of " + u.Tape(t.Guys.From) + ", or guy more arches"
	}
	return "guy more arches, or take thicker pipe"
}

// joinThem says what holds arches that no ridge joins. Guys of an end arch alone hold it one way, and none holds the arches between.
const joinThem = "join the crowns by a ridge and guy both end arches"

// heldOneWay reports guys that hold the row against leaning one way and not the other.
func (t Tunnel) heldOneWay() bool {
	held := 0
	rows := t.rows(t.Guys.Arches)
	for _, r := range rows {
		if slices.Contains(r.tied, true) {
			held++
		}
	}
	return t.Joined && held == 1 && len(rows) == 2
}

// thicker returns the next thicker bar of the same make that enters the pipe.
func thicker(bar catalog.Bar, pipe catalog.Pipe) (catalog.Bar, bool) {
	var found []catalog.Bar
	for _, b := range catalog.Bars() {
		if b.Diameter > bar.Diameter && b.OverRibs <= pipe.ID() && strings.HasSuffix(b.Name, "mm") == strings.HasSuffix(bar.Name, "mm") {
			found = append(found, b)
		}
	}
	if len(found) == 0 {
		return catalog.Bar{}, false
	}
	return slices.MinFunc(found, func(a, b catalog.Bar) int { return cmp.Compare(a.Diameter, b.Diameter) }), true
}

// grip is the step that depths are told in: an inch or a centimetre.
func grip(in *arch.Input) measure.Length {
	if in.Units == measure.Metric {
		return 10 * measure.Millimetre
	}
	return measure.Inch
}

// crosses reports guys that run through the walk: from a tie above the opening outward and down to a stake beside it.
func (j *adviser) crosses() {
	t, u := j.t, j.t.Units
	var low []int
	for _, a := range t.Arches {
		if !slices.Contains(t.Guys.Arches, a.Number) {
			continue
		}
		left, right, ok := a.Across(min(t.Guys.From, a.Crown-measure.Millimetre))
		half, edge, stake := (right.X-left.X)/2, j.in.OpeningWidth/2, a.Span/2
		if !ok || half >= edge || stake <= edge {
			continue
		}
		if height := t.Guys.From * (1 - (edge-half)/(stake-half)); height < j.in.OpeningHeight {
			low = append(low, a.Number)
		}
	}
	if len(low) == 0 {
		return
	}
	j.add(finding.LookAt, codeCross, "raise", "guys.from", "guys tied %s up on %s come down through the opening that is kept clear for people, at the height of faces. Tie them %s up or lower, on the outside of the legs.",
		u.Tape(t.Guys.From), strings.ToLower(arch.Named(low)), u.Tape(t.Arches[0].HighestTie()))
}

// ridge reports a pull on dry ridge sockets.
func (j *adviser) ridge() {
	t, w, u := j.t, j.w, j.t.Units
	if !w.Guyed || !t.Joined || len(t.Arches) < 2 || t.Arches[0].Spec.Joints != spec.Dry || w.RidgeEnd < arch.PullTells {
		return
	}
	level := finding.Note
	if w.RidgeEnd > muchPull {
		level = finding.LookAt
	}
	j.add(level, codeRidge, "raise", "arch.joints", "a gust of %s along the tunnel pulls at the ridge with up to %s, and nobody publishes what a dry socket holds. Pin each ridge socket, or run a line along the ridge, tied off at every crown.",
		u.Speed(w.Inside), u.Force(w.RidgeEnd))
}

// ice reports a tunnel that does not bear the ice it is figured for.
func (j *adviser) ice() {
	w, u := j.w, j.t.Units
	if j.in.Ice <= 0 || w.Ice[1] >= j.in.Ice {
		return
	}
	level, when := finding.LookAt, "at season's end"
	if w.Ice[0] < j.in.Ice {
		level, when = finding.MustFix, "as raised"
	}
	bears := w.Ice[1]
	if level == finding.MustFix {
		bears = w.Ice[0]
	}
	j.add(level, codeIce, "safety", "weather.ice", "it is figured for %s of ice all round, but folds or leans over under %s, %s. Take thicker pipe, guy it, or plan to take it down before ice comes, and write that thickness in the spec.",
		u.Size(j.in.Ice), u.Size(bears), when)
}

func sentenceCase(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
