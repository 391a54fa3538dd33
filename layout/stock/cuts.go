package stock

import (
	"cmp"
	"fmt"
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock/cutting"
)

// cutAll plans the bars of every material that is cut.
func cutAll(s *spec.Spec, offers []offer, all []Piece) (Cuts, []finding.Finding) {
	cuts := Cuts{Proven: true, OneLength: true}
	var found []finding.Finding
	priced, unpriced := 0, 0
	for _, o := range offers {
		for _, l := range o.sells {
			if l.priced {
				priced++
			} else {
				unpriced++
			}
		}
	}
	cuts.ByLength = unpriced > 0
	if priced > 0 && unpriced > 0 {
		found = append(found, finding.Finding{
			Level: finding.Note, Code: "prices-missing", Key: "stock.sell",
			Text: fmt.Sprintf("%d of the %d stock lengths have no price, so the cut plan uses the least length of stock, not the least money; price them all to have the cheapest.", unpriced, priced+unpriced),
		})
	}
	for _, o := range offers {
		if o.ready {
			shed := bench{spec: s, offer: o}
			cuts.Bars = append(cuts.Bars, shed.fromShed(all)...)
			continue
		}
		if o.assumed {
			found = append(found, o.assumedNote(s))
		}
		w := bench{spec: s, offer: o, byLength: cuts.ByLength}
		cuts.OneLength = cuts.OneLength && len(o.sells) == 1
		for _, l := range o.sells {
			if c := w.cost(l); cuts.Least == 0 || c < cuts.Least {
				cuts.Least = c
			}
		}
		found = append(found, w.take(all)...)
		found = append(found, w.cut(&cuts)...)
	}
	return cuts, found
}

// lay names the pieces on each bar, in the tunnel's order for each length, and reckons their saw marks: each mark is the right
// end of its piece, and the saw takes its kerf to the right of it. Ridge pieces come last on a bar, for they wait until the first of
// them has been tried.
func (b *bench) lay(p cutting.Problem, bars []cutting.Bar, sticks []stick) []Bar {
	waiting := map[int64][]Piece{}
	for _, q := range b.pieces {
		n := b.up(q.Length)
		waiting[n] = append(waiting[n], q)
	}
	trim := b.up(b.spec.Stock.Trim)
	var laid []Bar
	for _, cut := range bars {
		from := sticks[cut.Stock]
		bar := Bar{Item: b.offer.item, Stock: from.length, Owned: from.owned}
		for _, k := range cut.Pieces {
			n := p.Pieces[k].Length
			bar.Pieces = append(bar.Pieces, waiting[n][0])
			waiting[n] = waiting[n][1:]
		}
		slices.SortStableFunc(bar.Pieces, func(q, r Piece) int { return cmp.Compare(q.turn(), r.turn()) })
		end := trim - p.Kerf
		if q := bar.Pieces[0]; len(bar.Pieces) == 1 && b.up(q.Length) == b.down(from.length) {
			end -= trim // used whole
		}
		for i := range bar.Pieces {
			q := &bar.Pieces[i]
			end += p.Kerf + b.up(q.Length)
			q.Mark = measure.Length(end) * b.grid()
		}
		last := &bar.Pieces[len(bar.Pieces)-1]
		if end == b.down(from.length) {
			last.Mark = from.length // what is left over is less than a grid step: no cut
		} else {
			bar.Offcut = max(0, from.length-last.Mark-measure.Length(p.Kerf)*b.grid())
		}
		laid = append(laid, bar)
	}
	return laid
}
