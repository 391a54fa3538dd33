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
)

// strength is what the organiser chooses by, printed on request: what wind and ice the arches bear, how deep the stakes go, other spans.
func (b *binder) strength() []leaf {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	f := b.newFlow("For the organiser: what the arches bear, and why.", "")
	b.howItStands(f)
	b.stakeDepths(f)
	b.cureLadder(f)
	for _, s := range []string{b.bendWords(), b.seasonWords(b.plan.Kinds[0])} {
		if s != "" {
			f.gap(1.5)
			f.text(s, paper.Body)
		}
	}
	b.archSizes(f)
	return f.leaves
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
		words = append(words, fmt.Sprintf("Late in the season, with %s of the pipe's stiffness left (our assumption, or as found), the crown is about %s lower and each foot pushes %s instead of %s.", measure.Percent(k.Spec.LateModulus), u.Inches(late), u.Force(k.SeasonThrust), u.Force(k.Thrust)))
	}
	if crown, ridge, ok := b.plan.Cold(); ok && (u.Inches(crown) != u.Inches(0) || u.Inches(ridge) != u.Inches(0)) {
		shrunk := "crown " + u.Inches(crown) + " lower"
		if u.Inches(ridge) != u.Inches(0) {
			shrunk += ", the ridge " + u.Inches(ridge) + " shorter in all"
		}
		words = append(words, fmt.Sprintf("At %s the pipe has shrunk from %s: %s. Below %s pipe is stiffer and more brittle, and no figure for it is published.",
			u.Temperature(b.spec.Weather.Cold), u.Temperature(arch.WarmPipe), shrunk, u.Temperature(arch.WarmPipe)))
	}
	return strings.Join(words, " ")
}
