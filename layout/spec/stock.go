package spec

import "fmt"

// readStock reads what stores sell and the shed holds.
func (r *reader) readStock(top mapping) {
	m, _ := top.section("stock")
	s := &r.spec.Stock
	m.all(s)
	s.Sell = listOf(m, "sell", func(item mapping, x *Sale) bool {
		item.checkLength(x.Item)
		return true
	})
	s.Own = listOf(m, "own", func(item mapping, x *Owned) bool {
		item.checkLength(x.Item)
		if f, given := item.value("dead"); given && x.Dead > x.Count {
			f.failWith(fmt.Sprintf("dead: %d", x.Count), "is more than the %d there are; count has all, the dead ones too", x.Count)
		}
		return true
	})
}

// checkLength checks that what is cut or laid has a length, and that what is counted has none.
func (m mapping) checkLength(item string) {
	_, as := m.findItem(item)
	f, given := m.value("length")
	switch {
	case as == byLength && !m.has("length"):
		m.missing("length", "; pipe, bar and cord are sold by the length")
	case as == byCount && given:
		f.failWith("{item: zip ties 100, price: 3}", "belongs to pipe, bar and cord; other things are counted")
	}
}
