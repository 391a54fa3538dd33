package packet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// archWarnings are printed before the steps.
var archWarnings = []string{
	"A bent pipe is a spring. Hold both ends until both feet stand on the ground, keep faces and bystanders out of the arch's plane, eye protection and gloves on everyone.",
	"A bare stake is a spike. Its cap comes off only as the pipe goes on.",
	"No bending of pipe colder than freezing, in gusts, in thunder or near an overhead line. Pipe that is nicked, white or cracked is not bent.",
}

// raisingWords writes how the first arch is stood.
func (b *binder) raisingWords(f *flow, k *arch.Kind) {
	f.heading("Before the first arch stands", 30)
	f.framed("Before you bend", func(f *flow) {
		for _, w := range archWarnings {
			f.text(w, paper.Strong)
		}
	})
	f.gap(3)
	for i, s := range b.raisingSteps(k) {
		f.tickStep(i+1, s)
	}
}

// raisingSteps are the steps for one arch with its figures.
func (b *binder) raisingSteps(k *arch.Kind) []string {
	u, stake, pipe := b.spec.Units, k.Spec.Stake, k.Spec.Pipe
	number := k.Numbers[0]
	stand := "plumb"
	if stake.Lean > 0 {
		stand = "leaning " + measure.Degrees(stake.Lean) + " away from the opening"
	} else if stake.Lean < 0 {
		stand = "leaning " + measure.Degrees(-stake.Lean) + " toward the opening"
	}
	steps := []string{
		fmt.Sprintf("Check stakes L%d and R%d: %s apart, middle to middle at the ground, each showing %s (%s in the ground), %s, capped.", number, number, u.Inches(k.Span), u.Inches(stake.Showing()), u.Inches(stake.Depth), stand),
		b.markWords(k),
	}
	if k.Spec.OneStick {
		steps = append(steps, fmt.Sprintf("Lay the stick of %s flat beside its stakes and mark its middle.", u.Cut(k.Left[0])))
	} else {
		steps = append(steps, "Lay the arch flat beside its stakes, left leg to the left as seen from the entrance: "+b.jointWords(k)+".",
			fmt.Sprintf("Mark every end that goes into a socket %s from the end. Drive it home with the mallet until the mark is at the socket's mouth. The pipe is now %s long, foot to foot.", u.Cut(pipe.Socket), u.Inches(k.Length)))
	}
	return append(steps, fmt.Sprintf("Three people stand it, left foot first, as the raising sheet pictures it, and one holds it plumb%s. Hold point: fill in the table before any other arch stands.", b.guyWords(number)))
}

// markWords says which marks go on the pipe.
func (b *binder) markWords(k *arch.Kind) string {
	each := measure.By(b.spec.Units, "every foot", "every 500 mm")
	s := fmt.Sprintf("Mark the legs L and R, and %s up from the end that will stand on the ground", each)
	if len(b.plan.Lights.Rows) > 0 {
		s += "; every row of lights in another colour"
	}
	return s + "."
}

// jointWords says what goes into what.
func (b *binder) jointWords(k *arch.Kind) string {
	u := b.spec.Units
	side := func(name string, sticks []measure.Length) string {
		cuts := make([]string, len(sticks))
		for i, s := range sticks {
			cuts[i] = u.Cut(s)
		}
		if len(cuts) == 1 {
			return fmt.Sprintf("%s leg one stick of %s", name, cuts[0])
		}
		return fmt.Sprintf("%s leg %s from the ground up, couplings between", name, strings.Join(cuts, " and "))
	}
	fitting := b.spec.CrownFitting(k.Numbers[0])
	s := fmt.Sprintf("%s; %s; %s at the crown", side("left", k.Left), side("right", k.Right), fitting)
	if fitting == spec.Tee || fitting == spec.Cross {
		s += ", its ridge socket square to the arch, toward arch 2"
	}
	return s
}

// guyWords says that the arch is guyed before it is left, and how.
func (b *binder) guyWords(number int) string {
	var names []string
	up := measure.Length(0)
	what := "guys are tied"
	for _, s := range b.plan.Stakes {
		if s.Guy && s.Arch == number {
			names, up = append(names, s.String()), s.Tied
			if s.Bay > 0 {
				what = "braces are clamped"
			}
		}
	}
	if len(names) == 0 {
		return ""
	}
	return fmt.Sprintf(" until its %s: from both legs, %s above the ground, to %s, just tight", what, b.spec.Units.Tape(up), strings.Join(names, ", "))
}

// legend explains the picture's words.
func (b *binder) legend(k *arch.Kind) string {
	s := "On the picture: tape runs along the pipe from the ground; up is from the ground straight up to the pipe's middle; clear is between the pipe's inner faces, lights taken off; R is the tightest bend, the chain line its circle."
	switch {
	case k.Thrust > 0:
		s += fmt.Sprintf(" The arrows: each foot pushes its stake out with %s.", b.spec.Units.Force(k.Thrust))
	case k.Thrust < 0:
		s += fmt.Sprintf(" The arrows: each foot pulls its stake in with %s.", b.spec.Units.Force(-k.Thrust))
	}
	if rise, ok := b.rises(k); ok {
		s += " " + rise
	}
	return s
}

// rises says where the ground under the arch is not level.
func (b *binder) rises(k *arch.Kind) (string, bool) {
	d := k.RightGround - k.LeftGround
	high, low := spec.Right, spec.Left
	if d < 0 {
		d, high, low = -d, spec.Left, spec.Right
	}
	if d < measure.Inch/4 {
		return "", false
	}
	return fmt.Sprintf("The %v foot stands %s higher than the %v one; heights are from a string between the two feet.", high, b.spec.Units.Inches(d), low), true
}

// bendWords says how hard the pipe is bent where it is bent hardest. The limits for buried pressure pipe are its makers' usual figures, from
// memory.
func (b *binder) bendWords() string {
	k := slices.MaxFunc(b.plan.Kinds, func(p, q *arch.Kind) int { return cmp.Compare(p.Strain, q.Strain) })
	if k.BendRadius <= 0 {
		return ""
	}
	u, pipe := b.spec.Units, k.Spec.Pipe
	s := fmt.Sprintf("The tightest bend, %s: radius %s at %s of tape from the left foot, %.0f times the pipe's diameter of %s, %.1f %% strain. "+
		"Limits published for buried pressure pipe, about 250 to 300 diameters, are for decades and do not apply to a garden arch: it works for a season and takes a set. "+
		"Mark each pipe's inside face and bend it the same way next year.",
		say.Numbered("arch", k.Numbers), u.Inches(k.BendRadius), u.Inches(k.BendAt), float64(k.BendRadius/pipe.OD), u.Size(pipe.OD), k.Strain*100)
	return s
}

// seasonWords says what the season does to the arch: creep, cold and ice.
func (b *binder) seasonWords(k *arch.Kind) string {
	u := b.spec.Units
	var words []string
	if late := k.Crown - k.SeasonCrown; u.Inches(late) != u.Inches(0) && late > 0 {
		words = append(words, fmt.Sprintf("Late in the season, with %s of the pipe's stiffness left (our assumption), the crown is about %s lower and each foot pushes %s instead of %s.", measure.Percent(k.Spec.LateModulus), u.Inches(late), u.Force(k.SeasonThrust), u.Force(k.Thrust)))
	}
	if crown, ridge, ok := b.plan.Cold(); ok && (u.Inches(crown) != u.Inches(0) || u.Inches(ridge) != u.Inches(0)) {
		shrunk := "crown " + u.Inches(crown) + " lower"
		if u.Inches(ridge) != u.Inches(0) {
			shrunk += ", the ridge " + u.Inches(ridge) + " shorter in all"
		}
		words = append(words, fmt.Sprintf("At %s the pipe has shrunk from %s: %s. Below %s pipe is stiffer and more brittle, and no figure for it is published.",
			u.Temperature(b.spec.Weather.Cold), u.Temperature(arch.WarmPipe), shrunk, u.Temperature(arch.WarmPipe)))
	}
	if w := b.plan.Weather; w.IceCrown > 0 {
		words = append(words, fmt.Sprintf("Under %s of ice all round the crown is at %s.", u.Size(b.spec.Weather.Ice), u.Inches(w.IceCrown)))
	}
	return strings.Join(words, " ")
}
