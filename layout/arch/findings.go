package arch

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/layout/bend"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// The findings of an arch:
//
//	no-arch                 must fix   no arch has these figures; the nearest one is drawn
//	falls-over              must fix   it does not bear its own weight, as raised or at season's end
//	opening-blocked         must fix   the box for people does not clear it (look at where the opening was not given)
//	opening-near            look at    the box clears it, by less than an arch that passes its checks may be off
//	bar-too-thick           must fix   the bar does not enter the pipe (look at where the bar was not given)
//	bends-too-tight         must fix   modulus × strain is beyond the pipe's strength; look at beyond 80 % of it
//	sleeve-longer-than-stick must fix  the bar ends in a joint (look at where neither length nor depth was given)
//	stake-bends             must fix   the foot's moment bends the bar for good (look at where the bar was not given)
//	leans-along             look at    less than twofold against leaning along the tunnel, and no guys; of an arch that no ridge joins
//	sways-sideways          look at    less than twofold against falling sideways
//	crown-pulls-apart       look at    the arch is so flat that its crown joint is in tension, and dry
//	stake-too-shallow       look at    the soil does not hold the foot in still air
const (
	codeNoArch   = "no-arch"
	codeFalls    = "falls-over"
	codeBlocked  = "opening-blocked"
	codeNear     = "opening-near"
	codeThick    = "bar-too-thick"
	codeTight    = "bends-too-tight"
	codeSleeve   = "sleeve-longer-than-stick"
	codeYields   = "stake-bends"
	codeAlong    = "leans-along"
	codeSideways = "sways-sideways"
	codePulls    = "crown-pulls-apart"
	codeShallow  = "stake-too-shallow"
)

const (
	// WantedFactor is wanted on all dead load at season's end; common practice, no source.
	WantedFactor = 2

	muchStrength = 0.8 // of the pipe's strength, from which on a bend is worth a look
)

// judge says what is wrong with the arch.
func (m *model) judge(k *Kind, fig figures) []finding.Finding {
	j := &judge{model: m, kind: k, units: m.in.Units}
	if !fig.exact {
		j.refuse(fig) // nothing else is worth saying of another arch
		return j.list
	}
	j.falls()
	j.bends()
	j.opens()
	j.bar()
	j.stake()
	return j.list
}

type judge struct {
	*model
	kind  *Kind
	units measure.System
	list  []finding.Finding
}

// add puts a finding on the list; key is a full path.
func (j *judge) add(level finding.Level, code, key, format string, args ...any) {
	f := finding.Finding{Level: level, Code: code, Key: key, Text: Named(j.in.Numbers) + ": " + fmt.Sprintf(format, args...)}
	if j.in.Position != nil {
		f.Pos = j.in.Position(key)
	}
	j.list = append(j.list, f)
}

// must is MustFix where the spec itself gives one of the keys, else LookAt.
func (j *judge) must(keys ...string) finding.Level {
	if j.in.given(keys...) {
		return finding.MustFix
	}
	return finding.LookAt
}

// refuse reports figures that no arch has.
func (j *judge) refuse(fig figures) {
	k, u, asked := j.kind, j.units, j.in.Spec
	key, _ := j.in.path([...]string{spec.Height: "span", spec.Span: "height", spec.Sticks: "height"}[asked.Missing])
	near := fmt.Sprintf("The nearest that stands is %s high over a span of %s, with %s.", u.Tape(k.Crown), u.Tape(k.Span), j.sticks())
	sum := measure.Length(0)
	for _, l := range slices.Concat(asked.Left, asked.Right) {
		sum += l
	}
	if asked.Missing == spec.Height && sum <= asked.Span {
		near = "Together they are no longer than the span. " + near
	}
	if fig.drawn {
		near = "None near them stands either; the half circle drawn is only a sketch."
	}
	switch asked.Missing {
	case spec.Height:
		j.add(finding.MustFix, codeNoArch, key, "%s do not make an arch over a span of %s. %s", j.sticks(), u.Tape(asked.Span), near)
	case spec.Span:
		j.add(finding.MustFix, codeNoArch, key, "%s do not make an arch %s high at any span. %s", j.sticks(), u.Tape(asked.Height), near)
	case spec.Sticks:
		j.add(finding.MustFix, codeNoArch, key, "no sticks make an arch %s high over a span of %s. %s", u.Tape(asked.Height), u.Tape(asked.Span), near)
	}
}

// falls reports an arch that does not bear its weight, or not well.
func (j *judge) falls() {
	k := j.kind
	late := measure.Percent(j.spec.LateModulus)
	spanKey, _ := j.in.path("span", "sticks")
	raised := j.asRaised()
	switch {
	case k.LoadFactor < 1:
		when := "as raised"
		if raised {
			when = "at season's end, with " + late + " of the pipe's stiffness left,"
		}
		remedy := "take thicker pipe or shorter sticks, or hang less on it"
		if k.LoadFactorWay == "along" && !j.in.Guyed {
			remedy = "hold the tunnel with guys, or take thicker pipe or shorter sticks"
		}
		if sticks, span, ok := j.standsAs(); ok {
			remedy += fmt.Sprintf("; of the same proportions it stands with %s over %s", sticks, j.units.Room(span))
		}
		j.add(finding.MustFix, codeFalls, spanKey, "%s it bears only %.2f times its own weight and lights before it falls %s. To stand, %s.", when, k.LoadFactor, j.way(), remedy)
	case k.Along < WantedFactor && !j.in.Guyed && !(j.in.Joined && j.in.Spacing > 0): // of joined arches the tunnel's own findings tell
		hold := "guy it from both legs, both ways,"
		if j.in.Spacing > 0 {
			hold = joinThem
		}
		j.add(finding.LookAt, codeAlong, "guys", "at season's end it bears %.1f times its own weight and lights before it leans over along the tunnel. %s to get at least %d.", k.Along, say.Capital(hold), WantedFactor)
	}
	if k.LoadFactor >= 1 && k.Sideways < WantedFactor {
		j.add(finding.LookAt, codeSideways, spanKey, "at season's end it bears %.1f times its own weight and lights before it falls sideways. Thicker pipe, shorter sticks or lighter lights bring it to %d.", k.Sideways, WantedFactor)
	}
	if j.spec.Joints.DryCrown() && !j.spec.OneStick && k.Thrust < -PullTells {
		key, _ := j.in.path("joints")
		j.add(finding.LookAt, codePulls, key, "the arch is so flat that the crown joint is pulled apart with %s. Pin the crown joint, or bring the feet closer than %s.", j.units.Force(-k.Thrust), j.units.Tape(k.Span))
	}
}

// PullTells is the pull in N that a dry socket can be trusted with: half a pound; common practice, no source.
const PullTells = 2

func (j *judge) way() string {
	if j.kind.LoadFactorWay == "along" {
		return "along the tunnel"
	}
	return "sideways"
}

// asRaised reports whether the arch bears its weight with the pipe's full stiffness.
func (j *judge) asRaised() bool {
	return j.shape.Stable && (j.kind.LoadFactorWay == "sideways" || j.standsAside(j.rod, j.shape, bend.Parts, j.in.Guyed))
}

// bends reports pipe bent tightly for its strength.
func (j *judge) bends() {
	k := j.kind
	share := j.strength()
	if share < muchStrength {
		return
	}
	level := finding.LookAt
	remedy := "Thinner pipe, a wider span or longer sticks strain it less."
	if share > 1 {
		level = finding.MustFix
		remedy = "Take thinner pipe, or change span or sticks so that it bends less."
	}
	key, _ := j.in.path("span", "height", "sticks")
	j.add(level, codeTight, key, "%s from the left foot the pipe bends to a radius of %s, %s of its strength as raised. %s",
		j.units.Tape(k.BendAt), j.units.Inches(k.BendRadius), measure.Percent(measure.Share(math.Round(share*100)/100)), remedy)
}

// opens reports a box for people that does not clear.
func (j *judge) opens() {
	in, u := j.in, j.units
	w, h := in.OpeningWidth, in.OpeningHeight
	if w <= 0 || h <= 0 {
		return
	}
	o := j.kind.room
	if o.fits(w, h) {
		j.near(o)
		return
	}
	level, key := finding.LookAt, "tunnel.opening"
	if in.Given != nil && in.Given(key) {
		level = finding.MustFix
	}
	var short []string
	if o.beside < w {
		short = append(short, fmt.Sprintf("up to that height it leaves only %s about the middle", u.Tape(max(o.beside, 0))))
	}
	if o.head < h {
		short = append(short, fmt.Sprintf("over that width it hangs as low as %s", u.Tape(max(o.head, 0))))
	}
	j.add(level, codeBlocked, key, "the opening of %s by %s does not clear pipe, wraps and drops: %s. Make the opening that much smaller, or the arch wider or taller.",
		u.Room(w), u.Room(h), strings.Join(short, " and "))
}

// near reports a box that clears by less than the crew that measures the arch lets pass.
func (j *judge) near(o opening) {
	in, u := j.in, j.units
	over, beside := o.head-in.OpeningHeight, o.beside-in.OpeningWidth
	moves, _ := j.kind.Moves()
	give := Move{Crown: j.kind.GiveOrTake(u), Shoulder: Printed(moves.Give.Shoulder, u)}
	var short []string
	if over < give.Crown {
		short = append(short, fmt.Sprintf("overhead by %s, where an arch that passes its checks may be %s lower", u.Inches(u.Taped(max(over, 0))), u.Inches(give.Crown)))
	}
	if beside < give.Shoulder {
		short = append(short, fmt.Sprintf("beside it by %s in all, where one that passes may be %s narrower", u.Inches(u.Taped(max(beside, 0))), u.Inches(give.Shoulder)))
	}
	if len(short) > 0 {
		j.add(finding.LookAt, codeNear, "tunnel.opening", "the opening of %s by %s clears pipe, wraps and drops %s. Make the opening that much smaller, or the arch wider or taller.",
			u.Room(in.OpeningWidth), u.Room(in.OpeningHeight), strings.Join(short, " and "))
	}
}
