package spec

import (
	"cmp"
	"slices"
	"strconv"

	"hoopwright/layout/measure"
)

// readKept reads how the tunnel is kept over the year, and how it was found.
func (r *reader) readKept(top mapping) {
	if i, ok := top.word("store", Stripped.String(), Wrapped.String()); ok {
		r.spec.Store = Store(i)
	}
	m, ok := top.section("found")
	if !ok {
		return
	}
	found := &r.spec.Found
	if i, ok := m.word("after", "season", "trial"); ok {
		found.Trial = i == 1
	}
	m.yes("wrapped", &found.Wrapped)
	m.measured("crown", heights, func(a *Measured, l measure.Length) { a.Crown = l })
	m.measured("span", spans, func(a *Measured, l measure.Length) { a.Span = l })
	slices.SortFunc(found.Arches, func(a, b Measured) int { return cmp.Compare(a.Arch, b.Arch) })
	for _, a := range found.Arches {
		if a.Crown == 0 {
			m.child("crown").fail("has nothing of arch %d; a span alone tells nothing of the pipe", a.Arch)
		}
	}
}

// measured reads a figure of arches by their numbers.
func (m mapping) measured(key string, b bounds[measure.Length], set func(*Measured, measure.Length)) {
	f, ok := m.value(key)
	if !ok {
		return
	}
	list := &m.spec.Found.Arches
	for _, p := range f.named() {
		n, err := strconv.Atoi(p.name)
		if most := m.spec.Tunnel.Arches; err != nil || n < 1 || most > 0 && n > most {
			p.value.failAt(p.key, exampleOf(f.table, m.spec.Units), "is no arch; the numbers are 1 to %d", max(most, 1))
			continue
		}
		v, ok := b.of(p.value)
		if !ok {
			continue
		}
		k := slices.IndexFunc(*list, func(a Measured) bool { return a.Arch == n })
		if k < 0 {
			k = len(*list)
			*list = append(*list, Measured{Arch: n})
		}
		set(&(*list)[k], v)
	}
}
