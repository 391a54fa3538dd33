package stock

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The places of a shopping list, in the order in which it prints.
const (
	wherePipe       = "pipe"
	whereSteel      = "steel"
	whereLights     = "lights"
	whereElectrical = "electrical"
	whereSundries   = "sundries"
)

// basket gathers the shopping list, line by line.
type basket struct {
	spec  *spec.Spec
	came  map[lights.Part]bool // legs that come out of the shed wrapped
	glued map[lights.Part]bool // and those that do with their couplings cemented
	items []Item
}

// add puts a line on the list. What the shed holds and what the store asks come from the spec's stock by the item's name.
func (b *basket) add(i Item) {
	if i.Need <= 0 {
		return
	}
	i.Own = max(i.Own+b.owns(i), i.Wrapped)
	for _, s := range b.spec.Stock.Sell {
		if i.is(s.Item, s.Length) && s.Price != nil && !i.Priced {
			i.Price, i.Priced = *s.Price, true
		}
	}
	i.Buy = max(0, i.Need-i.Own)
	b.items = append(b.items, i)
}

// owns counts what the shed holds of the line.
func (b *basket) owns(i Item) (n int) {
	for _, o := range b.spec.Stock.Own {
		if i.is(o.Item, o.Length) {
			n += o.Good()
		}
	}
	return n
}

// shopping writes the list in the order of the places where things are bought.
func shopping(in Input, list List, offers []offer) []Item {
	b, cuts := &basket{spec: in.Spec, glued: list.Cemented}, list.Cuts
	if in.Spec.Found.Wrapped {
		b.came = list.Wrapped.Legs
	}
	for _, o := range offers {
		if !o.bar {
			b.sticks(o, cuts, in.Spec)
		}
	}
	b.fittings(in)
	b.stakes(in, cuts, offers)
	b.strings(in)
	b.wiring(in)
	b.sundries(in)
	assume(in, b.items)
	return b.items
}

// sticks lists what the cut plan takes of one material, each length once: as sold, then what the shed gives in other lengths.
func (b *basket) sticks(o offer, cuts Cuts, s *spec.Spec) {
	type line struct {
		length             measure.Length
		need, own, wrapped int
	}
	var lines []line
	for _, bar := range cuts.Bars {
		if bar.Item != o.item {
			continue
		}
		l := entry(&lines, line{length: bar.Stock}, func(l line) bool { return l.length == bar.Stock })
		l.need++
		if bar.Owned {
			l.own++
		}
		if bar.Wrapped {
			l.wrapped++
		}
	}
	slices.SortStableFunc(lines, func(a, b line) int { return cmp.Compare(b.length, a.length) })
	where, unit, kind := wherePipe, StickOf, PipeStick
	if o.bar {
		where, unit, kind = whereSteel, BarOf, SteelBar
	}
	most := -1 // the length sold that is most used has the spares
	for i, l := range lines {
		sold := slices.ContainsFunc(o.sells, func(s stick) bool { return s.length == l.length })
		if sold && (most < 0 || l.need > lines[most].need) {
			most = i
		}
	}
	for k, l := range lines {
		i := Item{Item: o.item + ", " + Sold(l.length, s.Units), Kind: kind, Need: l.need, Own: l.own, Wrapped: l.wrapped, Where: where, Unit: unit, Of: o.item, Length: l.length}
		if k == most {
			i.Spare = spareSticks(o, l.need, s)
			i.Need += i.Spare
			i.Own = min(i.Need, max(i.Own, b.owns(i)))
		}
		i.Buy = i.Need - i.Own
		for _, offered := range o.sells {
			if offered.length == l.length && offered.priced {
				i.Price, i.Priced = offered.price, true
			}
		}
		b.items = append(b.items, i)
	}
}

// spareSticks is how many sticks or bars of a material are bought over what the cuts take: of the arches' pipe one for every ten arches, of steel the spec's
// share of spares; none where the spec wants no spares. Common practice, no source.
func spareSticks(o offer, used int, s *spec.Spec) int {
	const archesAStick = 10
	switch {
	case s.Stock.Spares <= 0 || o.ready:
		return 0
	case o.bar:
		return withSpares(used, s.Stock.Spares) - used
	case o.item == s.Arch.Pipe.Name:
		return (s.Tunnel.Arches + archesAStick - 1) / archesAStick
	}
	return 0
}

// strings lists each kind of light string with spares.
func (b *basket) strings(in Input) {
	var list []Item
	for _, s := range in.Strings {
		i := named(&list, Item{Item: s.Kind, Kind: LightString, Unit: Each, Where: whereLights})
		i.Need++
		if b.onLeg(s) {
			i.Wrapped++
		}
	}
	for _, i := range list {
		b.addSpared(i)
	}
	b.addSpared(Item{Item: "low-voltage supply", Kind: Supply, Need: in.Wiring.Supplies, Unit: Each, Where: whereLights})
}

// named returns the line of a list that is named as one is, which it adds where there is none.
func named(list *[]Item, one Item) *Item {
	return entry(list, one, func(i Item) bool { return i.Item == one.Item })
}

// onLeg reports whether a string comes out of the shed on its leg.
func (b *basket) onLeg(s lights.String) bool { return s.Run.Wound() && b.came[s.Run.Part] }

// addSpared puts a line on the list with the spec's share of spares over what is needed, rounded up.
func (b *basket) addSpared(i Item) {
	need := withSpares(i.Need, b.spec.Stock.Spares)
	i.Need, i.Spare = need, need-i.Need
	b.add(i)
}

// withSpares adds the share of spares, rounded up.
func withSpares(n int, share measure.Share) int {
	return n + int(math.Ceil(float64(n)*float64(share)-1e-9))
}

// bushingNote says so where the ridge pipe does not fit the crown fittings.
func bushingNote(in Input) []finding.Finding {
	n := 0
	pipe := ""
	for _, j := range bushings(in) {
		n += j.count
		pipe = j.pipe
	}
	if n == 0 {
		return nil
	}
	ridge := in.Spec.Ridge.Pipe.Name
	return []finding.Finding{{Level: finding.Note, Code: "ridge-bushing", Key: "ridge.pipe",
		Text: fmt.Sprintf("The ridge is %s and the crown fittings are %s, so %d bushings go between them; a bushing moves the socket stop, so try bay 1 before the other ridge pieces are cut, or make the ridge of the arches' pipe.", ridge, pipe, n)}}
}
