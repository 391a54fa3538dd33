package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path"
	"slices"
	"strings"
	"testing"
)

// The packages in which values travel and words are made where they are printed: nothing in them takes a text apart to learn what it says.
var wordless = []string{"layout", "layout/lights", "layout/ground", "layout/stock", "layout/crew", "layout/power", "draw", "draw/place", "draw/block", "packet"}

// The calls that take a text apart, by package.
var takesApart = map[string][]string{
	"strings": {"Cut", "CutPrefix", "CutSuffix", "TrimPrefix", "TrimSuffix", "HasPrefix", "HasSuffix", "Fields", "FieldsFunc", "EqualFold", "NewReplacer", "Index", "SplitN"},
	"fmt":     {"Sscan", "Sscanf", "Sscanln"},
	"strconv": {"Atoi", "ParseInt", "ParseFloat"},
	"regexp":  {"MustCompile", "Compile"},
}

// The files that may, and why.
var mayTakeApart = map[string]string{
	"packet/recover.go":   "reads a spec out of a packet",
	"packet/leafspec.go":  "prints the spec's own source, line by line",
	"draw/block/words.go": "sets words of several letterings on a line: spaces at their ends",
}

func TestNoPhraseIsTakenApart(t *testing.T) {
	met := map[string]bool{}
	for _, pkg := range wordless {
		entries, err := os.ReadDir(path.Join("../..", pkg))
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			file := path.Join(pkg, e.Name())
			if e.IsDir() || path.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go") {
				continue
			}
			for _, call := range apart(t, file) {
				if met[file] = true; mayTakeApart[file] == "" {
					t.Errorf("%s calls %s: hand the value on instead, or say in mayTakeApart why not", file, call)
				}
			}
		}
	}
	for file, why := range mayTakeApart {
		if !met[file] {
			t.Errorf("%s is listed (%s) and takes nothing apart", file, why)
		}
	}
}

// apart lists the calls of a file that take a text apart.
func apart(t *testing.T, file string) []string {
	t.Helper()
	tree, err := parser.ParseFile(token.NewFileSet(), path.Join("../..", file), nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var calls []string
	ast.Inspect(tree, func(n ast.Node) bool {
		sel, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		if from, ok := sel.X.(*ast.Ident); ok && slices.Contains(takesApart[from.Name], sel.Sel.Name) {
			calls = append(calls, from.Name+"."+sel.Sel.Name)
		}
		return true
	})
	return calls
}
