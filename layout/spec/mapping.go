package spec

import (
	"cmp"
	"reflect"
	"regexp"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

type pair struct {
	name  string
	key   *yaml.Node
	value field
}

// mapping is an opened mapping whose keys are all known.
type mapping struct {
	field
	given  []string         // keys as they stand in the file, those with a spoiled value too
	fields map[string]field // by key; without spoiled values, of which an error tells already
	good   map[string]bool  // the keys that have been read without an error
	strays bool             // there are keys that the format does not have: what seems to be missing may be one of them
}

// pairs opens a mapping whose keys are the spec's own names, or known and checked by the caller. It reports keys given twice, nulls and
// quantities that a comma splits. A pair whose value is spoiled has no node.
func (f field) pairs() ([]pair, bool) {
	if !f.is(yaml.MappingNode) {
		return nil, false
	}
	var list []pair
	first := map[string]int{} // line of each key
	for i := 0; i+1 < len(f.node.Content); i += 2 {
		k, v := follow(f.node.Content[i]), follow(f.node.Content[i+1])
		if k.Kind != yaml.ScalarNode || k.ShortTag() == "!!null" || k.ShortTag() == "!!merge" || strings.TrimSpace(k.Value) == "" {
			f.failAt(k, exampleOf(f.table, f.spec.Units), "a key must be a plain name; nothing is merged in by `<<`, write the keys out")
			continue
		}
		p := pair{k.Value, k, field{f.reader, join(f.path, k.Value), under(f.table, k.Value), v}}
		if last := len(list) - 1; last >= 0 && splitByComma(k, v) && list[last].value.node != nil {
			list[last].comma(k.Value)
			list[last].value.node = nil
			continue
		}
		if line, twice := first[k.Value]; twice {
			also := ""
			if strings.HasSuffix(f.table, "[]") {
				also = ", or begin a new item with a hyphen where it is one"
			}
			p.value.failAt(k, exampleOf(p.value.table, f.spec.Units), "is given twice, first on line %d; keep one of the two%s", line, also)
			continue
		}
		first[k.Value] = k.Line
		list = append(list, p)
	}
	return list, true
}

// open readies a pair's value for reading: its place is noted, and a null is refused.
func (p *pair) open() {
	f := p.value
	f.spec.positions[f.path] = f.position(p.key)
	if f.node != nil && f.node.ShortTag() == "!!null" {
		f.null(p.key)
		p.value.node = nil
	}
}

// mapping opens a mapping and checks its keys against the table: none that the format does not have, all that must be given.
func (f field) mapping() (mapping, bool) {
	f.table = cmp.Or(sameAs[f.table], f.table)
	pairs, ok := f.pairs()
	if !ok {
		return mapping{}, false
	}
	m := mapping{field: f, fields: map[string]field{}, good: map[string]bool{}}
	known := children[f.table]
	for _, p := range pairs {
		if !slices.Contains(known, p.name) {
			p.unknown(f.table, known)
			m.strays = true
			continue
		}
		p.open()
		m.given = append(m.given, p.name)
		if p.value.node != nil {
			m.fields[p.name] = p.value
		}
	}
	for _, name := range known {
		if (f.table != exception || name == "arches") && rows[under(f.table, name)].rule.must {
			m.require(name)
		}
	}
	return m, true
}

// named opens a mapping whose keys are names of the spec's own.
func (f field) named() []pair {
	pairs, _ := f.pairs()
	if len(pairs) > mostItems {
		f.fail("names %d, more than %d", len(pairs), mostItems)
		return nil
	}
	var list []pair
	for _, p := range pairs {
		p.value.table = f.table + ".*"
		p.open()
		if p.value.node != nil && p.value.nameFits(p.key, p.name) {
			list = append(list, p)
		}
	}
	return list
}

// value returns a key's value where the mapping gives one that is fit to read. A key out of the table is a bug.
func (m mapping) value(key string) (field, bool) {
	if rows[under(m.table, key)].path == "" {
		panic("spec: no key " + under(m.table, key))
	}
	f, ok := m.fields[key]
	return f, ok
}

// has reports whether the mapping gives the key, be its value right or wrong.
func (m mapping) has(key string) bool { return slices.Contains(m.given, key) }

// among parts keys by whether the mapping gives them.
func (m mapping) among(keys ...string) (given, absent []string) {
	for _, key := range keys {
		if m.has(key) {
			given = append(given, key)
		} else {
			absent = append(absent, key)
		}
	}
	return given, absent
}

// missing reports a key that must be given.
func (m mapping) missing(key, why string) {
	f := m.child(key)
	if m.strays || m.meant[f.table] {
		return
	}
	f.fail("is missing%s", why)
}

func (m mapping) require(keys ...string) {
	_, absent := m.among(keys...)
	for _, key := range absent {
		m.missing(key, "")
	}
}

// child is the place of a key that the mapping does not give: errors show the mapping's own place.
func (m mapping) child(key string) field {
	return field{m.reader, join(m.path, key), under(m.table, key), m.node}
}

// read reads a key by its rule into what a pointer points to, and reports whether it is given and right.
func (m mapping) read(key string, into any) bool {
	if f, ok := m.value(key); ok {
		m.good[key] = rows[under(m.table, key)].rule.read(f, into)
	}
	return m.good[key]
}

// all reads into a struct the keys that its fields are named for: LateModulus is read from `late modulus`, unless the field's tag names another key. A struct is read in the same way from the keys under its
// own, a list item by item where its items have a rule. What has neither is left to its section.
func (m mapping) all(into any) {
	s := reflect.ValueOf(into).Elem()
	for i := range s.NumField() {
		key := keyOf(s.Type().Field(i))
		if f, ok := m.fields[key]; ok {
			m.good[key] = f.into(rows[under(m.table, key)].rule, s.Field(i))
		}
	}
}

// into reads a value into a field of a struct, and reports whether all of it is right.
func (f field) into(r rule, target reflect.Value) bool {
	items := rows[f.table+"[]"].rule
	switch kind := target.Kind(); {
	case r.takes != nil && r.read == nil: // its section reads it
	case kind == reflect.Pointer:
		own := reflect.New(target.Type().Elem())
		ok := f.into(r, own.Elem())
		if ok || r.read == nil {
			target.Set(own)
		}
		return ok
	case r.read != nil:
		return r.read(f, target.Addr().Interface())
	case kind == reflect.Struct:
		m, ok := f.mapping()
		if ok {
			m.all(target.Addr().Interface())
		}
		return ok
	case kind == reflect.Slice && items.read != nil:
		list, ok := f.list()
		for _, item := range list {
			own := reflect.New(target.Type().Elem())
			if items.read(item, own.Interface()) {
				target.Set(reflect.Append(target, own.Elem()))
			}
		}
		return ok
	}
	return false
}

// keyOf is the key that a field of a struct is read from.
func keyOf(f reflect.StructField) string {
	if key := f.Tag.Get("key"); key != "" {
		return key
	}
	return strings.ToLower(innerCapital.ReplaceAllString(f.Name, "$1 $2"))
}

var innerCapital = regexp.MustCompile(`([a-z])([A-Z])`)

// section opens the key's value as a mapping, and reports whether it is one; else the section gives no key.
func (m mapping) section(key string) (mapping, bool) {
	if f, ok := m.value(key); ok {
		if opened, ok := f.mapping(); ok {
			return opened, true
		}
	}
	return mapping{field: m.child(key)}, false
}

// items opens the key's value as a list. A key that is not given has no items.
func (m mapping) items(key string) []field {
	var items []field
	if f, ok := m.value(key); ok {
		items, _ = f.list()
	}
	return items
}

func (m mapping) mappings(key string) []mapping {
	var list []mapping
	for _, item := range m.items(key) {
		if opened, ok := item.mapping(); ok {
			list = append(list, opened)
		}
	}
	return list
}

// listOf reads a key's list of things with keys of their own. More is what else their section reads or checks of one; it is left out where that says so.
func listOf[T any](m mapping, key string, more func(item mapping, x *T) bool) (list []T) {
	for _, item := range m.mappings(key) {
		var x T
		if item.all(&x); more == nil || more(item, &x) {
			list = append(list, x)
		}
	}
	return list
}

// namedList reads a list of things that have names of their own, and returns the names.
func namedList[T any](m mapping, key, of string, more func(item mapping, x *T)) ([]T, names) {
	seen := names{of: of}
	return listOf(m, key, func(item mapping, x *T) bool {
		if f, ok := item.value("name"); ok && item.good["name"] {
			seen.add(f, strings.TrimSpace(f.node.Value))
		}
		if more != nil {
			more(item, x)
		}
		return true
	}), seen
}

var (
	beginsWithDigit = regexp.MustCompile(`^[0-9]`)
	thousands       = regexp.MustCompile(`^[0-9]{3}([^0-9]|$)`)
)

// splitByComma reports whether a key without a value is the rest of a quantity that a comma cut in two, as in {span: 2,3 m}.
func splitByComma(key, value *yaml.Node) bool {
	return value.ShortTag() == "!!null" && value.Value == "" && beginsWithDigit.MatchString(key.Value)
}

// comma reports a quantity that YAML has split at its comma. Before three digits the comma may have parted thousands.
func (p pair) comma(rest string) {
	first := p.value.node.Value
	if inner, ok := strings.CutPrefix(first, "("); ok {
		p.value.failWith(p.name+": ["+brief(inner+", "+strings.TrimSuffix(rest, ")"))+"]", "stands in round brackets; a list stands in square ones")
		return
	}
	whole, written, or := first+","+rest, first+"."+rest, ""
	switch {
	case !bareNumber.MatchString(first):
		whole, written = first+", "+rest, first+" "+rest
	case strings.Contains(rest, "."):
		written = first + rest
	case thousands.MatchString(rest):
		or, written = ", or "+quote(written)+" if a decimal was meant", first+rest
	}
	p.value.failWith(p.name+": "+brief(written), "YAML splits %s in two at the comma%s", quote(whole), or)
}

// unknown reports a key that the format does not have, with the nearest that it has.
func (p pair) unknown(table string, known []string) {
	units := p.value.spec.Units
	for _, mark := range []string{":", " =", "="} { // width:4 ft in braces is a key of that name
		if name, value, ok := strings.Cut(p.name, mark); ok && p.value.node != nil && p.value.node.ShortTag() == "!!null" && slices.Contains(known, name) {
			p.value.failAt(p.key, name+": "+brief(strings.TrimSpace(value)), "a colon and a blank part a key from its value")
			return
		}
	}
	if own, ok := otherwise[table][p.name]; ok {
		p.value.meant[own] = true
		p.value.failAt(p.key, exampleOf(own, units), "is no key of this format; that is `%s`", own)
	} else if own, ok := hints[table][p.name]; ok {
		p.value.failAt(p.key, own.example, "is no key of this format; %s", own.text)
	} else if home := elsewhere(p.name, table); home != "" {
		p.value.meant[home] = true
		p.value.failAt(p.key, exampleOf(home, units), "is no key of this format here; it belongs under `%s`", home[:strings.LastIndexByte(home, '.')])
	} else if near := p.value.nearest(p.name, known); near != "" {
		p.value.failAt(p.key, exampleOf(under(table, near), units), "is no key of this format; the nearest is `%s`", near)
	} else {
		p.value.failAt(p.key, exampleOf(table, units), "is no key of this format; known here: %s", strings.Join(known, ", "))
	}
}
