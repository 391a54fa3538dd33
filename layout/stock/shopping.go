package stock

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/finding"
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
	items []Item
}

// add puts a line on the list. What the shed holds and what the store asks come from the spec's stock by the item's name.
func (b *basket) add(i Item) {
	if i.Need <= 0 {
		return
	}
	i.Own += b.owns(i)
	for _, s := range b.spec.Stock.Sell {
		if i.is(s.Item, s.Length) && s.Price != nil && (!i.Priced || i.Assumed) {
			i.Price, i.Priced, i.Assumed = *s.Price, true, false
		}
	}
	i.Buy = max(0, i.Need-i.Own)
	b.items = append(b.items, i)
}

// owns counts what the shed holds of the line.
func (b *basket) owns(i Item) (n int) {
	for _, o := range b.spec.Stock.Own {
		if i.is(o.Item, o.Length) {
			n += o.Count
		}
	}
	return n
}

// shopping writes the list in the order of the places where things are bought.
func shopping(in Input, cuts Cuts, offers []offer) []Item {
	b := &basket{spec: in.Spec}
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
	return b.items
}

// sticks lists what the cut plan takes of one material, each length once: as sold, then what the shed gives in other lengths.
func (b *basket) sticks(o offer, cuts Cuts, s *spec.Spec) {
	type line struct {
		length    measure.Length
		need, own int
	}
	var lines []line
	for _, bar := range cuts.Bars {
		if bar.Item != o.item {
			continue
		}
		k := slices.IndexFunc(lines, func(l line) bool { return l.length == bar.Stock })
		if k < 0 {
			k = len(lines)
			lines = append(lines, line{length: bar.Stock})
		}
		lines[k].need++
		if bar.Owned {
			lines[k].own++
		}
	}
	slices.SortStableFunc(lines, func(a, b line) int { return int(math.Copysign(1, float64(b.length-a.length))) })
	where, unit := wherePipe, StickOf
	if o.bar {
		where, unit = whereSteel, BarOf
	}
	for _, l := range lines {
		i := Item{Item: o.item + ", " + Sold(l.length, s.Units), Need: l.need, Own: l.own, Buy: l.need - l.own, Where: where,
			Unit: unit, Of: o.item, Length: l.length}
		for _, offered := range o.sells {
			if offered.length == l.length && offered.priced {
				i.Price, i.Priced = offered.price, true
			}
		}
		if o.assumed {
			i.Why = "the length is assumed, none was named"
		}
		b.items = append(b.items, i)
	}
}

// strings lists each kind of light string with spares.
func (b *basket) strings(in Input) {
	var done []string
	for _, s := range in.Strings {
		if slices.Contains(done, s.Kind) {
			continue
		}
		done = append(done, s.Kind)
		hang := 0
		for _, t := range in.Strings {
			if t.Kind == s.Kind {
				hang++
			}
		}
		spare := withSpares(hang, in.Spec.Stock.Spares) - hang
		b.add(Item{Item: s.Kind, Need: hang + spare, Unit: Each, Where: whereLights, Why: fmt.Sprintf("%d to hang, %d spare", hang, spare)})
	}
	b.add(Item{Item: "low-voltage supply", Need: in.Wiring.Supplies, Unit: Each, Where: whereLights, Why: "of the strings' own make; many strings come with theirs"})
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
