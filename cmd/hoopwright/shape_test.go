package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"
)

// What shipped code keeps to: a function is read on one screen, its branches are followed in one reading, and what is written twice is written once.
const (
	longestFunction = 60 // lines, from func to the closing brace
	mostComplex     = 25 // cognitive complexity
	longestRun      = 5  // lines that may stand in two places, white space aside
)

// The functions that are longer or more complex, with their figures, and the pairs of places that share a longer run, with its lines. The lists may only shrink: an entry that is no longer needed has
// to go, and so has a figure that is too large.
var (
	mayBeLong    = map[string]int{}
	mayBeComplex = map[string]int{
		"layout/crew/bound.go bound":          38,
		"layout/power/count.go outletsInUse":  34,
		"layout/power/feeder.go hang":         33,
		"layout/power/grow.go line":           26,
		"layout/power/piece.go number":        32,
		"layout/power/search.go outletCourse": 30,
		"layout/power/sharing/search.go made": 26,
	}
	mayBeTwice = map[string]int{}
)

func TestFunctionsAreShort(t *testing.T)     { held(t, mayBeLong, longestFunction, lengthsOf(t)) }
func TestFunctionsAreSimple(t *testing.T)    { held(t, mayBeComplex, mostComplex, complexities(t)) }
func TestNothingIsWrittenTwice(t *testing.T) { held(t, mayBeTwice, longestRun, runsOf(t)) }

// held compares figures with the limit and its exceptions.
func held(t *testing.T, except map[string]int, most int, figures map[string]int) {
	t.Helper()
	for _, name := range slices.Sorted(maps.Keys(figures)) {
		if n, allowed := figures[name], max(most, except[name]); n > allowed {
			t.Errorf("%s has %d, at most %d is wanted", name, n, allowed)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(except)) {
		switch n := figures[name]; {
		case n <= most:
			t.Errorf("%s has %d: it is no exception any more, take it off the list", name, n)
		case n < except[name]:
			t.Errorf("%s has %d: lower its figure in the list, which says %d", name, n, except[name])
		}
	}
}

// shipped parses every file of the tree that is no test.
func shipped(t *testing.T) (*token.FileSet, map[string]*ast.File) {
	t.Helper()
	root, positions, files := "../..", token.NewFileSet(), map[string]*ast.File{}
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && strings.HasPrefix(d.Name(), ".") && file != root:
			return filepath.SkipDir
		case d.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go"):
			return nil
		}
		name, err := filepath.Rel(root, file)
		if err != nil {
			return err
		}
		files[filepath.ToSlash(name)], err = parser.ParseFile(positions, file, nil, parser.SkipObjectResolution)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return positions, files
}

// perFunction measures every function and method, by its file and name.
func perFunction(t *testing.T, measure func(*token.FileSet, *ast.FuncDecl) int) map[string]int {
	t.Helper()
	positions, files := shipped(t)
	figures := map[string]int{}
	for file, tree := range files {
		for _, d := range tree.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Body != nil {
				name := file + " " + f.Name.Name
				figures[name] = max(figures[name], measure(positions, f)) // of methods of one name the larger
			}
		}
	}
	return figures
}

func lengthsOf(t *testing.T) map[string]int {
	return perFunction(t, func(positions *token.FileSet, f *ast.FuncDecl) int {
		return positions.Position(f.End()).Line - positions.Position(f.Pos()).Line + 1
	})
}

func complexities(t *testing.T) map[string]int {
	return perFunction(t, func(_ *token.FileSet, f *ast.FuncDecl) int { return complexity(f) })
}

// complexity is the cognitive complexity of a function as G. Ann Campbell defines it (Cognitive Complexity, SonarSource, 2023): one for each break in the flow, one more for each level that it is nested in;
// one for an else, for a jump to a label, for each run of like logical operators and for calling itself. Calling itself by way
// of others is not seen: that takes types.
func complexity(f *ast.FuncDecl) int {
	c := counter{name: f.Name.Name}
	if f.Recv != nil && len(f.Recv.List) > 0 && len(f.Recv.List[0].Names) > 0 {
		c.receiver = f.Recv.List[0].Names[0].Name
	}
	c.walk(f.Body, 0)
	if c.again {
		c.sum++
	}
	return c.sum
}

type counter struct {
	sum            int
	name, receiver string
	again          bool // it calls itself
}

// walk adds up what a node breaks, nested so deep. What it has counted itself it does not descend into.
func (c *counter) walk(node ast.Node, nesting int) {
	ast.Inspect(node, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.IfStmt:
			c.sum += 1 + nesting
			c.branch(n, nesting)
			return false
		case *ast.ForStmt:
			c.loop(n, n.Body, nesting)
			return false
		case *ast.RangeStmt:
			c.loop(n, n.Body, nesting)
			return false
		case *ast.SwitchStmt:
			c.loop(n, n.Body, nesting)
			return false
		case *ast.TypeSwitchStmt:
			c.loop(n, n.Body, nesting)
			return false
		case *ast.SelectStmt:
			c.loop(n, n.Body, nesting)
			return false
		case *ast.FuncLit:
			c.walk(n.Body, nesting+1)
			return false
		case *ast.BranchStmt:
			if n.Label != nil {
				c.sum++
			}
		case *ast.BinaryExpr:
			if logical(n.Op) {
				c.operators(n, token.ILLEGAL, nesting)
				return false
			}
		case *ast.CallExpr:
			c.again = c.again || c.itself(n.Fun)
		}
		return true
	})
}

// branch counts what is within an if. An else is not nested deeper for the reader, so it costs one.
func (c *counter) branch(n *ast.IfStmt, nesting int) {
	if n.Init != nil {
		c.walk(n.Init, nesting)
	}
	c.walk(n.Cond, nesting)
	c.walk(n.Body, nesting+1)
	if n.Else != nil {
		c.sum++
	}
	switch other := n.Else.(type) {
	case *ast.IfStmt:
		c.branch(other, nesting)
	case *ast.BlockStmt:
		c.walk(other, nesting+1)
	}
}

// loop counts a loop or a switch: its head where it stands, its body one level deeper.
func (c *counter) loop(n ast.Node, body *ast.BlockStmt, nesting int) {
	c.sum += 1 + nesting
	ast.Inspect(n, func(part ast.Node) bool {
		switch part {
		case n:
			return true
		case nil:
		case body:
			c.walk(part, nesting+1)
		default:
			c.walk(part, nesting)
		}
		return false
	})
}

func logical(op token.Token) bool { return op == token.LAND || op == token.LOR }

// operators counts a run of logical operators: one each time the operator changes. Parentheses do not end it; a negation does.
func (c *counter) operators(e ast.Expr, last token.Token, nesting int) token.Token {
	b, ok := ast.Unparen(e).(*ast.BinaryExpr)
	if !ok || !logical(b.Op) {
		c.walk(e, nesting)
		return last
	}
	last = c.operators(b.X, last, nesting)
	if b.Op != last {
		c.sum++
	}
	return c.operators(b.Y, b.Op, nesting)
}

// itself reports whether what is called is the function that is being counted.
func (c *counter) itself(called ast.Expr) bool {
	switch f := called.(type) {
	case *ast.Ident:
		return c.receiver == "" && f.Name == c.name
	case *ast.SelectorExpr:
		on, ok := f.X.(*ast.Ident)
		return ok && c.receiver != "" && on.Name == c.receiver && f.Sel.Name == c.name
	}
	return false
}

// runsOf finds the longest run that each two files share, or one file with itself, by their names. Blank lines, comments, imports and lines of marks alone do not count.
func runsOf(t *testing.T) map[string]int {
	positions, files := shipped(t)
	names := slices.Sorted(maps.Keys(files))
	lines := map[string][]string{}
	at := map[string][]place{} // where each run of so many lines begins
	for _, name := range names {
		lines[name] = linesOf(t, positions, files[name], name)
		for i := range len(lines[name]) - longestRun {
			run := strings.Join(lines[name][i:i+longestRun+1], "\n")
			at[run] = append(at[run], place{name, i})
		}
	}
	longest := map[string]int{}
	for _, where := range at {
		for i, a := range where {
			for _, b := range where[:i] {
				pair := b.file + " ~ " + a.file
				longest[pair] = max(longest[pair], shared(lines[a.file][a.line:], lines[b.file][b.line:]))
			}
		}
	}
	return longest
}

type place struct {
	file string
	line int
}

// shared counts the lines that two texts begin with alike.
func shared(a, b []string) (n int) {
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	return n
}

// linesOf returns the lines of a file that count.
func linesOf(t *testing.T, positions *token.FileSet, tree *ast.File, name string) (lines []string) {
	t.Helper()
	source, err := os.ReadFile(filepath.Join("../..", name))
	if err != nil {
		t.Fatal(err)
	}
	from := positions.Position(tree.Name.End()).Line
	for _, i := range tree.Imports {
		from = max(from, positions.Position(i.End()).Line)
	}
	for _, line := range strings.Split(string(source), "\n")[from:] {
		line, _, _ = strings.Cut(line, "//")
		line = strings.Join(strings.Fields(line), " ")
		if strings.ContainsFunc(line, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }) {
			lines = append(lines, line)
		}
	}
	return lines
}

// The counter itself, on the examples of the definition.
func TestComplexityByItsDefinition(t *testing.T) {
	for _, c := range []struct {
		body string
		want int
	}{
		{`switch n { case 1: return "one"; case 2: return "a couple"; default: return "lots" }`, 1},
		{`out: for i := range max { for j := 2; j < i; j++ { if i%j == 0 { continue out } }; total += i }`, 1 + 2 + 3 + 1},
		{`if a && b && c || d || e && f {}`, 1 + 3},
		{`if a && !(b && c) {}`, 1 + 2},
		{`if a { for { select {} } } else if b { } else { if c {} }`, 1 + 2 + 3 + 1 + 1 + 2},
		{`r := func() { if a {} }; r()`, 2},
		{`return n * f(n-1)`, 1},
	} {
		tree, err := parser.ParseFile(token.NewFileSet(), "", "package p\nfunc f() { "+c.body+" }", 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := complexity(tree.Decls[0].(*ast.FuncDecl)); got != c.want {
			t.Errorf("%s: %d, want %d", c.body, got, c.want)
		}
	}
}
