package weather

import (
	"math"
	"slices"

	"hoopwright/layout/anchor"
	"hoopwright/layout/arch"
	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Tunnel is the arches as they stand together, with what holds them lengthwise.
type Tunnel struct {
	Spec   *spec.Spec
	Arches []arch.Arch                                 // in order
	Level  func(arch int) (left, right measure.Length) // ground under an arch's feet above a common datum; nil: level ground

	Side  bool     // only wind across the tunnel is looked at
	Rough bool     // only whether it reaches its aims is asked: no ice, no gusts beyond those, and arches are taken to stand in any order
	After *Weather // what the same arches came to, as roughly, with something else to hold them lengthwise; nil: not known

	// Hopeless reports that a tunnel is passed over whose gusts are no higher than these, and no more of it is worked out; nil: none is.
	Hopeless func(*Weather) bool

	kinds []Arch // of each arch, as wind finds it
}

// enter works out the states of all kinds.
func (t *Tunnel) enter() bool {
	list := t.each()
	ok := make([]bool, len(list))
	arch.SideBySide(len(list), func(i int) { ok[i] = list[i].enter() })
	return !slices.Contains(ok, false)
}

// joined reports whether a ridge makes the arches lean together.
func (t *Tunnel) joined() bool { return t.Spec.Ridge.Present && len(t.Arches) > 1 }

// pressure returns q in Pa of the coldest evening's air.
func (t *Tunnel) pressure(v measure.Speed) float64 {
	return air(t.Spec.Weather.Cold) / 2 * float64(v) * float64(v)
}

// speedAt returns the wind speed of a pressure in Pa in that air.
func (t *Tunnel) speedAt(q float64) measure.Speed {
	return measure.Speed(math.Sqrt(2 * q / air(t.Spec.Weather.Cold)))
}

// soils are those the ground may be of.
func (t *Tunnel) soils() []anchor.Soil {
	if f := t.Spec.Arch.Foot; f != nil {
		return []anchor.Soil{{Name: f.On.String(), Assumed: "no stake is driven"}}
	}
	return anchor.Named(t.Spec.Site.Soil.String())
}

// each returns each kind once, in order.
func (t *Tunnel) each() (list []*Kind) {
	for _, a := range t.kinds {
		if !slices.Contains(list, a.Kind) {
			list = append(list, a.Kind)
		}
	}
	return list
}

// hold is one pair of ties from an arch's two legs: guys, or a bay's braces.
type hold struct {
	arch       int
	from       measure.Length // height on the legs
	along, out measure.Length // of the pegs, from the arch's feet: toward the far end, and away from the way
	drop       [2]measure.Length
	stiffness  float64 // N, of the tie: E·A
	pushes     float64 // N, at most
	brace      bool
}

// holds lists what holds the arches.
func (t *Tunnel) holds() (list []hold) {
	n, g, b := len(t.Arches), &t.Spec.Guys, &t.Spec.Braces
	aside := arch.Aside(t.Spec, t.Arches)
	for _, arch := range g.Arches {
		out := aside
		if n == 1 || arch == 1 || arch == n {
			out = 0
		}
		for _, way := range []measure.Length{-1, 1} {
			if n > 1 && (arch == 1 && way > 0 || arch == n && way < 0) {
				continue
			}
			list = append(list, hold{arch: arch, from: g.From, along: way * g.Out, out: out, stiffness: guyStiffness})
		}
	}
	for _, p := range t.Spec.Pairs() {
		h := hold{arch: p.Arch, from: b.From, along: p.Along, brace: true, stiffness: webbingStiffness}
		if pipe := t.kinds[p.Arch-1].spec.Pipe; !b.Line {
			h.stiffness, h.pushes = float64(pipe.Modulus)*pipe.Section(), t.strutBears(pipe)
		}
		list = append(list, h)
	}
	for i := range list {
		list[i].drop = t.drop(list[i])
		if len(list) > mostKinds { // the steeper of both, in whole steps, so that many are alike
			steep := measure.RoundUp(max(list[i].drop[0], list[i].drop[1]), 50*measure.Millimetre)
			list[i].drop = [2]measure.Length{steep, steep}
		}
	}
	return list
}

// drop returns by how much the ground at a hold's pegs lies below the arch's feet.
func (t *Tunnel) drop(h hold) (drop [2]measure.Length) {
	if t.Level == nil || t.Spec.Tunnel.Spacing <= 0 {
		return drop
	}
	l, r := t.Level(h.arch)
	at := float64(h.arch) + float64(h.along/t.Spec.Tunnel.Spacing)
	at = min(max(at, 1), float64(len(t.Arches)))
	below := min(int(at), max(len(t.Arches)-1, 1))
	share := measure.Length(at - float64(below))
	l0, r0 := t.Level(below)
	l1, r1 := t.Level(min(below+1, len(t.Arches)))
	return [2]measure.Length{l - l0 - (l1-l0)*share, r - r0 - (r1-r0)*share}
}

// ties turns a hold into ties of the arch's rod for a wind that blows way: toward the far end 1, or back −1.
func (t *Tunnel) ties(h hold, way float64) []bend.Tie {
	k := t.kinds[h.arch-1].Kind
	at := k.TiedAt(min(h.from, k.Crown))
	ends := [2]bend.Tie{
		{At: at[0], X: -h.out.Metres(), Y: -h.drop[0].Metres()},
		{At: at[1], X: k.Rod.DX + h.out.Metres(), Y: k.Rod.DY - h.drop[1].Metres()},
	}
	for i := range ends {
		ends[i].Z = way * h.along.Metres()
		p := k.Shape.At(at[i])
		length := math.Sqrt((p.X-ends[i].X)*(p.X-ends[i].X) + (p.Y-ends[i].Y)*(p.Y-ends[i].Y) + ends[i].Z*ends[i].Z)
		ends[i].Stiffness, ends[i].Pushes = h.stiffness/length, h.pushes
	}
	return ends[:]
}

// rows returns the arches that lean together in a wind that blows way, those of one kind held alike as one member. What only pulls, and lies to lee, is left out. Without a ridge each arch
// stands for itself, and where a line ties the crowns all of them hang on it as well: slack it holds none, taut it hands what the others bear badly to those that are held. Which of
// the two a gust finds nobody knows, so both are blown at and the worse counts.
func (t *Tunnel) rows(way float64, holds []hold) []row {
	ties, guys := make([][]bend.Tie, len(t.Arches)), make([]int, len(t.Arches))
	for _, h := range holds {
		if h.pushes > 0 || float64(h.along)*way < 0 {
			ties[h.arch-1] = append(ties[h.arch-1], t.ties(h, way)...)
			if !h.brace {
				guys[h.arch-1] += 2
			}
		}
	}
	var alone []row
	var together row
	for i, a := range t.kinds {
		of := member{rough: t.Rough, kind: a.Kind, ties: ties[i], guys: guys[i], arches: []int{a.Number}}
		one := of
		alone = append(alone, row{&one})
		same := slices.IndexFunc(together, func(o *member) bool { return o.kind == of.kind && slices.Equal(o.ties, of.ties) })
		if same >= 0 {
			together[same].arches = append(together[same].arches, a.Number)
		} else {
			together = append(together, &of)
		}
	}
	switch {
	case t.joined():
		return []row{together}
	case t.Spec.CrownLine():
		return append(alone, together)
	}
	return alone
}

// ways are the winds along the tunnel that differ: one where both ends are held alike.
func (t *Tunnel) ways(holds []hold) []float64 {
	n := len(t.Arches)
	for i, a := range t.kinds {
		if !t.Rough && t.kinds[n-1-i].Kind != a.Kind {
			return []float64{1, -1}
		}
	}
	for _, h := range holds {
		mirrored := func(o hold) bool {
			return o.arch == n+1-h.arch && o.along == -h.along && o.from == h.from && o.drop == h.drop
		}
		if !slices.ContainsFunc(holds, mirrored) {
			return []float64{1, -1}
		}
	}
	return []float64{1}
}
