package spec

import (
	"cmp"
	"slices"
	"strconv"

	"hoopwright/layout/measure"
)

func (r *reader) readKept(top mapping) {
	top.read("store", &r.spec.Store)
	m, _ := top.section("found")
	found := &r.spec.Found
	m.all(found)
	m.measured("crown", func(a *Measured) *measure.Length { return &a.Crown })
	m.measured("span", func(a *Measured) *measure.Length { return &a.Span })
	slices.SortFunc(found.Arches, func(a, b Measured) int { return cmp.Compare(a.Arch, b.Arch) })
	for _, a := range found.Arches {
		if a.Crown == 0 {
			m.child("crown").fail("has nothing of arch %d; a span alone tells nothing of the pipe", a.Arch)
		}
	}
}

func (m mapping) measured(key string, of func(*Measured) *measure.Length) {
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
		var figure measure.Length
		if !rows[p.value.table].rule.read(p.value, &figure) {
			continue
		}
		k := slices.IndexFunc(*list, func(a Measured) bool { return a.Arch == n })
		if k < 0 {
			k, *list = len(*list), append(*list, Measured{Arch: n})
		}
		*of(&(*list)[k]) = figure
	}
}
