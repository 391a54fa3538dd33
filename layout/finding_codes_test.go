package layout_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"hoopwright/layout"
	"hoopwright/layout/finding"
)

// TestEveryCodeHasARow: each word of the form of a code in the source of layout, and what packet finds in a spec's letters, has its row in the table, and each row its user.
func TestEveryCodeHasARow(t *testing.T) {
	used := map[string]bool{}
	walk := func(file string) {
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			word, err := strconv.Unquote(lit.Value)
			if _, notDate := time.Parse(time.DateOnly, word); err != nil || notDate == nil || !strings.Contains(word, "-") || !codeShape.MatchString(word) {
				return true
			}
			if _, ok := finding.Of(word); !ok {
				t.Errorf("%s: %q has no row in the table of findings", file, word)
			}
			used[word] = true
			return true
		})
	}
	err := filepath.WalkDir(".", func(file string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(file, ".go") && !strings.HasSuffix(file, "_test.go") && file != "finding/table.go" {
			walk(file)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	walk("../packet/lettering.go")
	for _, r := range finding.Rows() {
		if !used[r.Code] {
			t.Errorf("nothing finds %s, which has a row", r.Code)
		}
	}
}

// findingsFitTable: a finding has a row, a level that its row allows, a sheet whose leaf is the row's, and a cure of the keys that the row names.
func findingsFitTable(t *testing.T, p *layout.Plan) {
	for _, f := range p.Findings {
		row, ok := finding.Of(f.Code)
		if !ok {
			t.Errorf("%s has no row", f.Code)
			continue
		}
		if !slices.Contains(row.Levels, f.Level) && f.AcceptedBy == "" {
			t.Errorf("%s is found at %v; its row allows %v: %s", f.Code, f.Level, row.Levels, f.Text)
		}
		if f.Sheet != row.Leaf {
			t.Errorf("%s is on leaf %s; its row says %s", f.Code, f.Sheet, row.Leaf)
		}
		for _, c := range f.Cure {
			if !slices.Contains(row.Cures, c.Path()) {
				t.Errorf("%s is cured at %s; its row has %v", f.Code, c.Key, row.Cures)
			}
		}
	}
}
