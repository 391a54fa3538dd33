package spec

import "testing"

// What people call a key is none itself, and leads to one.
func TestOtherwiseLeadsToKeys(t *testing.T) {
	for table, words := range otherwise {
		for word, path := range words {
			if rows[path].path == "" {
				t.Errorf("%s under %q leads to %s, which is no key", word, table, path)
			}
			if rows[under(table, word)].path != "" {
				t.Errorf("%s under %q is a key itself", word, table)
			}
		}
	}
	for table, words := range hints {
		for word := range words {
			if rows[under(table, word)].path != "" {
				t.Errorf("%s under %q is a key itself", word, table)
			}
		}
	}
}
