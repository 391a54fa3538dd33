package layout

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/arch"
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// wayIn tells what an end arch of other figures than the rest does to the ridge, in wind and at the saw, before anything is bought: the tunnel with all arches alike is solved beside it, held
// by the same stakes, guys and braces.
func (p *Plan) wayIn() {
	s, plain := p.Spec, *p.Spec
	ends := []int{1, s.Tunnel.Arches}
	plain.Except = nil
	var odd []int
	key := ""
	for i, e := range s.Except {
		at := fmt.Sprintf("arch.except[%d]", i)
		other := s.Given(at+".span") || s.Given(at+".sticks") || s.Given(at+".height")
		if own := slices.DeleteFunc(slices.Clone(e.Arches), func(n int) bool { return !slices.Contains(ends, n) }); other && len(own) > 0 {
			odd, key = append(odd, own...), at
			e.Arches = slices.DeleteFunc(slices.Clone(e.Arches), func(n int) bool { return slices.Contains(ends, n) })
		}
		if len(e.Arches) > 0 {
			plain.Except = append(plain.Except, e)
		}
	}
	refused := func(k *arch.Kind) bool { return k.Refused() || k.Body() == nil }
	if len(odd) == 0 || slices.ContainsFunc(p.Kinds, refused) {
		return
	}
	q := &Plan{Spec: &plain, Found: p.Found}
	q.solveArches()
	if slices.ContainsFunc(q.Kinds, refused) {
		return
	}
	q.Ground = ground.Lay(&plain, q.onGround(&plain))
	q.Ridge = ridge(&plain, q.Arches, q.Ground)
	slices.Sort(odd)
	p.note([]finding.Finding{{Level: finding.Note, Code: "way-in-differs", Key: key, Text: wayInWords(p, q, odd)}})
}

// wayInWords says what arches of other figures change against a tunnel that has none.
func wayInWords(p, plain *Plan, odd []int) string {
	u := p.Spec.Units
	var list []string
	not := func(what, is, was string) {
		if is != was {
			list = append(list, fmt.Sprintf("%s %s, not %s", what, is, was))
		}
	}
	if len(p.Ridge) > 0 {
		bay := 0
		if odd[0] != 1 {
			bay = len(p.Ridge) - 1
		}
		climbs := func(p *Plan) string { d := p.Arches[bay].Crown - p.Arches[bay+1].Crown; return u.Inches(max(d, -d)) }
		not(fmt.Sprintf("the ridge piece of bay %d is", bay+1), u.Cut(p.Ridge[bay].Cut), u.Cut(plain.Ridge[bay].Cut))
		not("it climbs", climbs(p), climbs(plain))
	}
	if !p.Weather.Calm() && !plain.Weather.Calm() {
		not("nobody is inside from gusts of", u.Speed(p.Weather.InsideGust().Called()), u.Speed(plain.Weather.InsideGust().Called()))
		not("it lies flat before", u.Speed(p.Weather.DownGust().Called()), u.Speed(plain.Weather.DownGust().Called()))
	}
	if is, was := p.sticks(), plain.sticks(); is > 0 && was > 0 {
		not("sticks of pipe are", fmt.Sprint(is), fmt.Sprint(was))
	}
	if len(list) == 0 {
		list = []string{"ridge, wind and cuts stay as they are"}
	}
	return fmt.Sprintf("%s other figures than the rest. Against all alike: %s.", say.Capital(say.Numbered("arch", odd))+say.Agree(len(odd), " has", " have"), strings.Join(list, "; "))
}

// sticks is how many sticks of pipe the cuts take; 0 where some piece finds none.
func (p *Plan) sticks() (n int) {
	in := stock.Input{Spec: p.Spec, Arches: p.Arches}
	for _, r := range p.Ridge {
		in.Ridge = append(in.Ridge, r.Cut)
	}
	list, left := stock.Make(in), 0
	for _, piece := range list.Pieces {
		if !piece.ID.Steel {
			left++
		}
	}
	for _, bar := range list.Cuts.Bars {
		if !bar.Steel() {
			n, left = n+1, left-len(bar.Pieces)
		}
	}
	if left > 0 {
		return 0
	}
	return n
}
