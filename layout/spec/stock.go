package spec

import "fmt"

// mostPieceCount of one kind that a shed holds or a store sells, and the dearest price.
const (
	mostPieceCount = 100_000
	dearest        = 100_000
)

// readStock reads what stores sell and the shed holds.
func (r *reader) readStock(top mapping) {
	m, ok := top.section("stock")
	if !ok {
		return
	}
	s := &r.spec.Stock
	for _, sale := range m.mappings("sell") {
		var x Sale
		sale.require("item")
		cut := sale.item(&x.Item)
		quantity(sale, "length", &x.Length, stockLengths)
		sale.checkLength(cut)
		sale.price(&x.Price)
		sale.count("limit", &x.Limit, 1, mostPieceCount)
		s.Sell = append(s.Sell, x)
	}
	for _, owned := range m.mappings("own") {
		var x Owned
		owned.require("item", "count")
		cut := owned.item(&x.Item)
		quantity(owned, "length", &x.Length, stockLengths)
		owned.checkLength(cut)
		owned.count("count", &x.Count, 0, mostPieceCount)
		owned.count("dead", &x.Dead, 0, mostPieceCount)
		if f, given := owned.value("dead"); given && x.Dead > x.Count {
			f.failWith(fmt.Sprintf("dead: %d", x.Count), "is more than the %d there are; count has all, the dead ones too", x.Count)
		}
		s.Own = append(s.Own, x)
	}
	quantity(m, "kerf", &s.Kerf, kerfs)
	quantity(m, "trim", &s.Trim, trims)
	quantity(m, "spares", &s.Spares, spares)
}

// checkLength checks that what is cut or laid has a length, and that what is counted has none.
func (m mapping) checkLength(as measuring) {
	f, given := m.value("length")
	switch {
	case as == byLength && !m.has("length"):
		m.missing("length", "; pipe, bar and cord are sold by the length")
	case as == byCount && given:
		f.failWith("{item: zip ties 100, price: 3}", "belongs to pipe, bar and cord; other things are counted")
	}
}
