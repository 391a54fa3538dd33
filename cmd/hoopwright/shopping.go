package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"hoopwright/layout"
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
	out.Flush()
	return out.Error()
}

func amount(v float64) string { return fmt.Sprintf("%.2f", v) }
