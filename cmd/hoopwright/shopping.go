package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"

	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
	"hoopwright/packet"
)

// writeShopping writes the shopping list for a spreadsheet, as RFC 4180 has it: a header, lines that end in CR LF, quotes where a field needs
// them. Amounts are plain numbers; where no price is known, price and sum are empty.
func writeShopping(w io.Writer, p *layout.Plan) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	out.Write([]string{"where", "item", "need", "own", "buy", "unit", "price", "sum", "currency", "paid", "for", "price is"})
	for _, i := range p.Shopping {
		price, sum, currency, assumed := "", "", "", ""
		if i.Assumed {
			assumed = "assumed"
		}
		if i.Priced {
			price, sum, currency = amount(i.Price), amount(float64(i.Buy)*i.Price), p.Spec.Currency
		}
		out.Write([]string{i.Where, i.Item, strconv.Itoa(i.Need), strconv.Itoa(i.Own), strconv.Itoa(i.Buy), i.UnitWords(p.Spec.Units), price, sum, currency, "", packet.ForWhat(i, p.Spec), assumed})
	}
	for _, u := range unmetOf(p) {
		out.Write([]string{"not to be had", u.item + ", " + p.Spec.Units.Cut(u.length), strconv.Itoa(u.count), "0", "0", "piece", "", "", "", "", say.And(u.names), ""})
	}
	out.Flush()
	return out.Error()
}

// unmet is a kind of piece that no stick or bar of the shed or the stores gives.
type unmet struct {
	item   string
	length measure.Length
	count  int
	names  []string
}

// unmetOf lists the pieces that are on no bar of the cut plan, alike ones together.
func unmetOf(p *layout.Plan) (list []unmet) {
	cut := p.Cuts.Given()
	for _, piece := range p.Stock.Pieces {
		readyMade := func(i stock.Item) bool {
			return i.Kind == stock.ReadyStake && i.Of == piece.Item && same(i.Length, piece.Length)
		}
		if cut[piece.ID] || slices.ContainsFunc(p.Shopping, readyMade) {
			continue
		}
		i := slices.IndexFunc(list, func(u unmet) bool { return u.item == piece.Item && u.length == piece.Length })
		if i < 0 {
			i, list = len(list), append(list, unmet{item: piece.Item, length: piece.Length})
		}
		list[i].count++
		list[i].names = append(list[i].names, piece.ID.String())
	}
	return list
}

func amount(v float64) string { return fmt.Sprintf("%.2f", v) }
