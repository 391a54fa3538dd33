package layout

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// Rounds of the loop between arches and lights: weights bend the arch, and the bent arch decides where "above 3 ft" begins. Where
// sticks are given and lights go by whole legs or by tape, a sketch knows as much and one round does; the weights move an arch by
// millimetres, so the others close in two or three.
const mostRounds = 4

// solveArches solves each different arch once for the weights that hang on it.
func (p *Plan) solveArches() {
	s := p.Spec
	inputs := make([]arch.Input, s.Tunnel.Arches)
	shapes := make([]*arch.Kind, len(inputs))
	for i := range inputs {
		inputs[i] = archInput(s, i+1)
	}
	for _, k := range groupKinds(inputs) {
		k.kind = arch.Sketch(k.input)
		k.stands(shapes)
	}
	for i := range inputs {
		inputs[i].Loads = archLoads(s, i+1, shapes)
	}
	kinds := groupKinds(inputs)
	solveKinds(kinds, nil)
	shareSpans(inputs, kinds, s.Units)
	for range mostRounds - 1 {
		for _, k := range kinds {
			k.stands(shapes)
		}
		for _, k := range kinds {
			if k.kind.Refused() {
				continue // another arch is drawn in its place, and to follow that one's lights leads nowhere
			}
			for _, number := range k.input.Numbers {
				inputs[number-1].Loads = archLoads(s, number, shapes)
			}
		}
		before := kinds
		kinds = groupKinds(inputs)
		if !solveKinds(kinds, before) {
			break
		}
	}
	p.Arches, p.Kinds = make([]arch.Arch, len(inputs)), nil
	for _, k := range kinds {
		p.Kinds = append(p.Kinds, k.kind)
		for _, number := range k.input.Numbers {
			p.Arches[number-1] = arch.Arch{Number: number, Kind: k.kind}
		}
	}
	if p.changed() {
		p.solveArches()
		return
	}
	arch.SideBySide(len(kinds), func(i int) { kinds[i].kind.Stand() })
	p.solveWeather()
	arch.SideBySide(len(kinds), func(i int) {
		if k := kinds[i]; !k.untried {
			k.found = k.kind.Judge()
		}
	})
	p.noteArches(kinds)
	p.noteUntried(kinds)
}

// shareSpans has arches of the same sticks and height, whose spans differ by what hangs on them alone, share the span of the kind that most are of, as near as a tape is read.
func shareSpans(inputs []arch.Input, kinds []*alike, u measure.System) {
	lead := map[string]*alike{}
	asked := func(in arch.Input) string { return fmt.Sprintf("%v %.2f", in.Spec, in.RightGround-in.LeftGround) }
	for _, k := range kinds {
		if key := asked(k.input); !k.kind.Refused() && (lead[key] == nil || len(k.input.Numbers) > len(lead[key].input.Numbers)) {
			lead[key] = k
		}
	}
	grid := practice.Reading(u)
	for i := range inputs {
		if k := lead[asked(inputs[i])]; k != nil && inputs[i].Spec.Missing == spec.Span {
			inputs[i].Shared = measure.Length(math.Round(float64(k.kind.Span/grid))) * grid
		}
	}
}

// solveWeather puts the arches together in wind and ice.
func (p *Plan) solveWeather() {
	p.Weather = weather.Solve(&weather.Tunnel{Spec: p.Spec, Arches: p.Arches, Level: p.level})
	p.note(p.Weather.Judge())
}

// level is the ground's height under an arch's feet.
func (p *Plan) level(number int) (left, right measure.Length) { return ground.Levels(p.Spec, number) }

// noteArches notes what was found of the kinds. What holds for several by the same key of the spec is said once, of the first, with the
// others named.
func (p *Plan) noteArches(kinds []*alike) {
	type cause struct {
		level     finding.Level
		code, key string
	}
	var order []cause
	said, also := map[cause]finding.Finding{}, map[cause][]int{}
	for _, k := range kinds {
		for _, f := range k.found {
			c := cause{f.Level, f.Code, f.Key}
			if _, ok := said[c]; ok {
				also[c] = append(also[c], k.input.Numbers...)
				continue
			}
			order = append(order, c)
			said[c] = f
		}
	}
	for _, c := range order {
		f := said[c]
		if others := also[c]; len(others) > 0 {
			slices.Sort(others)
			f.Text += " Much the same holds for " + strings.ToLower(arch.Named(slices.Compact(others))) + "."
		}
		p.Findings = append(p.Findings, f)
	}
}

// archInput gathers what the spec says of one arch; its loads come from the shape.
func archInput(s *spec.Spec, number int) arch.Input {
	left, right := ground.Levels(s, number)
	mid := (left + right) / 2
	return arch.Input{
		Spec: s.ArchOf(number), Keys: archKeys(s, number), Joined: s.Ridge.Present,
		Guyed:      guyed(s, number),
		Together:   true,
		LeftGround: left - mid, RightGround: right - mid,
		OpeningWidth: s.Tunnel.OpeningWidth, OpeningHeight: s.Tunnel.OpeningHeight,
		Wrap: lights.Standoff(s, number), Drop: lights.Hang(s, number), RidgeDrop: lights.RidgeHang(s, number),
		Spacing: s.Tunnel.Spacing,
		Units:   s.Units, Soil: s.Site.Soil, Given: s.Given, Position: s.Position,
	}
}

// guyed reports whether guys keep an arch's crown in place: through the ridge those of any arch, else its own, which hold the first and the last arch one
// way only: the line that holds them the other way may hang slack and is not counted on here.
func guyed(s *spec.Spec, number int) bool {
	if s.Ridge.Present {
		return len(s.Guys.Arches) > 0 || len(s.Braces.Bays) > 0
	}
	n := s.Tunnel.Arches
	return slices.Contains(s.Guys.Arches, number) && (n == 1 || number > 1 && number < n)
}

// archKeys returns where the spec gives the arch's figures: its exception first, if it has one, then the base.
func archKeys(s *spec.Spec, number int) []string {
	for i, e := range s.Except {
		if slices.Contains(e.Arches, number) {
			return []string{fmt.Sprintf("arch.except[%d]", i), "arch"}
		}
	}
	return []string{"arch"}
}

// archLoads is all that hangs on an arch beside its own pipe: its lights, and at the crown half of each neighbouring ridge piece with its lights. shapes
// are all arches as far as they are known.
func archLoads(s *spec.Spec, number int, shapes []*arch.Kind) []arch.Load {
	k := shapes[number-1]
	loads := append(lights.Loads(s, number, k), fittings(s, number, k)...)
	if !s.Ridge.Present {
		return loads
	}
	at := func(l arch.Load) arch.Load {
		l.From, l.To = k.CrownTape, k.CrownTape
		l.Weight, l.Run = l.Weight/2, l.Run/2
		return l
	}
	for bay := number - 1; bay <= number; bay++ {
		if bay < 1 || bay >= s.Tunnel.Arches {
			continue
		}
		centres := s.Tunnel.Spacing // near enough, on slopes and bends too
		piece := max(centres-s.ArchOf(bay).Pipe.TakeOff-s.ArchOf(bay+1).Pipe.TakeOff, 0)
		pipe := measure.Mass(float64(s.Ridge.Pipe.Mass) * centres.Metres()).Weight()
		wraps, drops := lights.RidgeLoad(s, bay, piece, lights.CrownHeight(shapes[bay-1]), lights.CrownHeight(shapes[bay]))
		loads = append(loads, at(arch.Load{Weight: pipe + wraps.Weight, Run: centres, Thick: s.Ridge.Pipe.OD + lights.Standoff(s, number)}))
		if drops.Weight > 0 {
			loads = append(loads, at(drops))
		}
	}
	return loads
}

// fittings returns the weight of the arch's couplings and of its crown fitting. No standard gives it: a fitting is reckoned as a sleeve of the pipe's own wall
// over each of its sockets and on to its middle.
func fittings(s *spec.Spec, number int, k *arch.Kind) (loads []arch.Load) {
	pipe := s.ArchOf(number).Pipe
	wider := float64((pipe.OD + pipe.Wall) / (pipe.OD - pipe.Wall)) // the middle of its wall against that of the pipe's
	for _, j := range k.Joints() {
		arm, arms := (j.To-j.From)/2, 2
		if j.Crown && s.Ridge.Present {
			for bay := number - 1; bay <= number; bay++ {
				if bay >= 1 && bay < s.Tunnel.Arches {
					arms++
				}
			}
		}
		mass := measure.Mass(float64(pipe.Mass) * wider * arm.Metres() * float64(arms))
		loads = append(loads, arch.Load{From: j.Middle(), To: j.Middle(), Weight: mass.Weight()})
	}
	return loads
}

// noteUntried says how many arches were only sketched.
func (p *Plan) noteUntried(kinds []*alike) {
	n := 0
	for _, k := range kinds {
		if k.untried {
			n += len(k.input.Numbers)
		}
	}
	if n > 0 {
		p.note([]finding.Finding{{
			Level: finding.LookAt, Code: "arches-not-tried", Key: "arch",
			Text: fmt.Sprintf("Of the other arches %d were not tried, for a dozen already have figures that make no arch; what is drawn of them is a sketch. Mend the dozen first.", n),
		}})
	}
}

// alike is the arches of one kind: their input, and once it is shaped what it came to.
type alike struct {
	key   string
	input arch.Input
	kind  *arch.Kind
	found []finding.Finding // of an arch that was tried

	untried bool // kind is a sketch
}

// stands puts the kind in the place of its arches.
func (k *alike) stands(shapes []*arch.Kind) {
	for _, number := range k.input.Numbers {
		shapes[number-1] = k.kind
	}
}

// groupKinds merges arches whose inputs are alike, in the order of their lowest numbers.
func groupKinds(inputs []arch.Input) []*alike {
	var kinds []*alike
	index := map[string]*alike{}
	for i, in := range inputs {
		var key strings.Builder
		fmt.Fprintf(&key, "%v %.2f %.2f %v %.2f %.2f %.2f", in.Spec, in.Shared, in.RightGround-in.LeftGround, in.Guyed, in.Wrap, in.Drop, in.RidgeDrop)
		for _, l := range in.Loads {
			fmt.Fprintf(&key, " %.1f-%.1f:%.3f/%.0f", l.From, l.To, l.Weight, l.Run)
		}
		k, ok := index[key.String()]
		if !ok {
			k = &alike{key: key.String(), input: in}
			index[k.key] = k
			kinds = append(kinds, k)
		}
		k.input.Numbers = append(k.input.Numbers, i+1)
	}
	return kinds
}

// enough is how many kinds that no arch has are looked for. Each takes a whole search, and who has a dozen to mend will ask again.
const enough = 12

// solveKinds shapes every kind, but for those that an earlier round solved, and reports whether there was any other. Once enough have no
// arch the rest are sketched.
func solveKinds(kinds, before []*alike) bool {
	var todo []*alike
	refused := 0
	for _, k := range kinds {
		same := func(b *alike) bool { return b.key == k.key && slices.Equal(b.input.Numbers, k.input.Numbers) }
		if i := slices.IndexFunc(before, same); i >= 0 {
			k.kind, k.untried = before[i].kind, before[i].untried
			if k.kind.Refused() {
				refused++
			}
		} else {
			todo = append(todo, k)
		}
	}
	for batch := range slices.Chunk(todo, enough) {
		if refused >= enough {
			for _, k := range batch {
				k.kind, k.untried = arch.Sketch(k.input), true
			}
			continue
		}
		arch.SideBySide(len(batch), func(i int) { batch[i].kind = arch.Shape(batch[i].input) })
		for _, k := range batch {
			if k.kind.Refused() {
				refused++
			}
		}
	}
	return len(todo) > 0
}
