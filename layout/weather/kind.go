package weather

import (
	"math"
	"slices"

	"hoopwright/layout/arch"
	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Arch is one arch of the tunnel: its number and its kind.
type Arch struct {
	Number int
	*Kind
}

// Kind is a kind of arch as wind and ice find it.
type Kind struct {
	*arch.Kind
	*arch.Body
	spec   spec.Arch
	states []state
}

// state is an arch that a gust meets: as raised, or crept to its shape at season's end. A gust is short, and meets the pipe's own stiffness either way.
type state struct {
	rod   bend.Rod
	shape *bend.Shape
}

// The number of parts an arch is cut into for wind from the side, whose shapes converge with the fourth power of the parts' length, and along the tunnel, where they
// converge with the second.
const (
	sideParts  = 24
	alongParts = 40
	roughParts = 24
)

// newKind takes an arch that has been stood. It returns nil for one that is only drawn or does not stand at season's end.
func newKind(solved *arch.Kind) *Kind {
	body := solved.Body()
	if body == nil || solved.Refused() || solved.Sideways <= 1 {
		return nil
	}
	return &Kind{Kind: solved, Body: body, spec: solved.Spec}
}

// enter works out its states, and reports whether it has both.
func (k *Kind) enter() bool {
	late, err := bend.Solve(k.Aged(float64(k.spec.LateModulus)))
	if err != nil || !late.Stable {
		return false
	}
	k.states = []state{{k.Rod, k.Body.Shape}, {k.Aged(1).SetTo(late, alongParts), late}}
	return true
}

// mostKinds is how many kinds are solved in wind, one by one. Of more, those that differ least are taken for the weakest of them.
const mostKinds = 16

// gather returns a kind for each of the arches, none where one does not stand in still air: those alike within a small share of their height are one.
func gather(arches []arch.Arch) []Arch {
	list := make([]Arch, len(arches))
	kinds := map[*arch.Kind]*Kind{}
	for i, a := range arches {
		k := kinds[a.Kind]
		if k == nil {
			if k = newKind(a.Kind); k == nil {
				return nil
			}
			kinds[a.Kind] = k
		}
		list[i] = Arch{a.Number, k}
	}
	for share := measure.Share(0.002); len(kinds) > mostKinds && share < 0.1; share *= 1.5 {
		kinds = map[*arch.Kind]*Kind{}
		var groups []*Kind
		for _, a := range arches {
			if kinds[a.Kind] != nil {
				continue
			}
			i := slices.IndexFunc(groups, func(g *Kind) bool { return g.near(a.Kind, share) })
			switch k := newKind(a.Kind); {
			case i < 0:
				groups = append(groups, k)
				kinds[a.Kind] = k
			case a.Sideways < groups[i].Sideways:
				*groups[i] = *k
				fallthrough
			default:
				kinds[a.Kind] = groups[i]
			}
		}
		for i, a := range arches {
			list[i] = Arch{a.Number, kinds[a.Kind]}
		}
		if len(groups) <= mostKinds {
			break
		}
	}
	return list
}

// near reports whether two kinds are made of the same parts, and alike within a share of their height and weight.
func (k *Kind) near(o *arch.Kind, share measure.Share) bool {
	within := k.Crown * measure.Length(share)
	near := func(a, b measure.Length) bool { return max(a-b, b-a) <= within }
	heavier := math.Abs(float64(o.Weight/k.Weight) - 1)
	return k.spec.Pipe == o.Spec.Pipe && k.spec.Stake == o.Spec.Stake && k.spec.LateModulus == o.Spec.LateModulus &&
		near(k.Span, o.Span) && near(k.Length, o.Length) && near(k.Crown, o.Crown) && near(k.RightGround, o.RightGround) && near(k.CrownTape, o.CrownTape) &&
		heavier <= float64(share)
}

// strength returns which part of the pipe's strength a bend without its set takes up, 1/m.
func (k *Kind) strength(bend float64) float64 {
	pipe := k.spec.Pipe
	return float64(pipe.Modulus) * pipe.OD.Metres() / 2 * math.Abs(bend) / float64(pipe.Strength)
}

// mirrors reports whether wind from either side does the same.
func (k *Kind) mirrors() bool {
	return k.Rod.DY == 0 && measure.Abs(2*k.CrownTape-k.Length) < 1e-6
}
