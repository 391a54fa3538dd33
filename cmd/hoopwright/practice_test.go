package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The packages that decide about the tunnel and the work, and those that draw and print it: a figure of safety or of site practice is not declared there,
// but once, with its source, in layout/practice.
var withoutFigures = []string{"layout", "layout/spec", "layout/ground", "layout/arch", "layout/weather", "layout/lights", "layout/power", "layout/stock", "layout/crew", "layout/wish", "draw", "packet"}

// The files that may write figures with a unit: how many, and why they are none of practice.
var mayHaveFigures = map[string]struct {
	count int
	why   string
}{
	"draw/bulbs.go":              {4, "as a string is drawn"},
	"draw/edgestrip.go":          {1, "on paper"},
	"draw/perspective.go":        {3, "people in the picture, for scale"},
	"draw/profiledims.go":        {1, "on paper"},
	"draw/raisingfeet.go":        {1, "people in the picture"},
	"draw/raisinghung.go":        {3, "shares of a picture"},
	"layout/arch/band.go":        {2, "the step that a band is told in"},
	"layout/arch/body.go":        {2, "steps of a search"},
	"layout/arch/cold.go":        {1, "the warmth at which pipe is tested: physics"},
	"layout/arch/moves.go":       {1, "what a move is told for: an inch"},
	"layout/arch/sizespans.go":   {16, "steps of a table"},
	"layout/arch/smaller.go":     {3, "steps of a search"},
	"layout/crew/taskraise.go":   {1, "rounding"},
	"layout/ground/bends.go":     {2, "steps of a search"},
	"layout/ground/checks.go":    {1, "what a share is told for: an inch, a centimetre"},
	"layout/ground/findings.go":  {3, "what the reader takes; the step that a cure is told in"},
	"layout/ground/stakes.go":    {1, "a crown where none is known, to draw by"},
	"layout/ground/ties.go":      {1, "how a crossing is worded"},
	"layout/lights/pull.go":      {2, "the step that a sag is told in, and what the reader takes"},
	"layout/lights/rows.go":      {2, "what a tape shows at a glance: the step that marks are told in"},
	"layout/lights/rowsleft.go":  {3, "steps of a search, what the reader takes"},
	"layout/lights/stretch.go":   {1, "the bare end in the solver, to the inch: practice.SocketBare in whole centimetres would change figures"},
	"layout/lights/wrapsay.go":   {1, "what the reader takes"},
	"layout/power/assign.go":     {1, "more than any way: a search"},
	"layout/power/copper.go":     {3, "warmth of copper: physics"},
	"layout/power/runs.go":       {1, "more than any cord: a search"},
	"layout/spec/defaults.go":    {9, "what a pipe's and a string's label does not say, as they are sold"},
	"layout/spec/keys.go":        {91, "what the reader takes for possible"},
	"layout/spec/tunnel.go":      {1, "rounding"},
	"layout/stock/offer.go":      {4, "sticks as they are sold"},
	"layout/stock/pieces.go":     {1, "rounding for the reader"},
	"layout/stock/prices.go":     {1, "pipe that prices are given for: catalog"},
	"layout/stock/sundries.go":   {1, "the step that rope is sold in"},
	"layout/weather/choices.go":  {22, "bars as they are sold, steps of a search"},
	"layout/weather/cures.go":    {2, "steps of a search"},
	"layout/weather/demand.go":   {7, "gusts that are looked at, steps of a search"},
	"layout/weather/feet.go":     {2, "the step that weights are told in"},
	"layout/weather/findings.go": {1, "rounding"},
	"layout/weather/ice.go":      {1, "where a search ends"},
	"layout/weather/limits.go":   {1, "a kilometre an hour"},
	"layout/weather/tunnel.go":   {1, "the step that slopes are told apart by"},
	"layout/wish/spec.go":        {7, "answers of people, in round figures"},
	"packet/annexstrength.go":    {3, "rounding for the reader"},
	"packet/leaflights.go":       {2, "rounding for the reader"},
	"packet/leafpower.go":        {1, "volts of the units' countries"},
	"packet/leafraisehold.go":    {4, "on paper"},
	"packet/sitevisit.go":        {2, "on paper"},
}

// measured are the names of units and of quantities in layout/measure; the first also as they are called for short.
var (
	unitNames  = []string{"Inch", "Foot", "Millimetre", "Metre", "MPH", "Pound", "PoundForce", "Kilogram", "Newton", "Degree", "inch", "foot", "in", "ft"}
	quantities = []string{"Length", "Speed", "Temperature", "Mass", "Force", "Angle"}
)

func TestFiguresOfPracticeStandInPractice(t *testing.T) {
	met := map[string]bool{}
	for _, pkg := range withoutFigures {
		err := filepath.WalkDir(path.Join("../..", pkg), func(file string, d fs.DirEntry, err error) error {
			if err != nil {
				return err
			}
			if d.IsDir() && filepath.ToSlash(file) != path.Join("../..", pkg) {
				return filepath.SkipDir
			}
			if d.IsDir() || path.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go") {
				return nil
			}
			name := path.Join(pkg, d.Name())
			set := token.NewFileSet()
			tree, err := parser.ParseFile(set, file, nil, 0)
			if err != nil {
				return err
			}
			list := figuresIn(tree)
			if met[name] = true; len(list) == mayHaveFigures[name].count {
				return nil
			}
			for _, at := range list {
				t.Errorf("%s:%d has a figure of its own", name, set.Position(at).Line)
			}
			t.Errorf("%s has %d figures, not the %d of mayHaveFigures: take those of practice from layout/practice, or say there why they are none", name, len(list), mayHaveFigures[name].count)
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	for file, may := range mayHaveFigures {
		if !met[file] {
			t.Errorf("%s is listed (%s) and is not there", file, may.why)
		}
	}
}

// Every way of writing a figure with a unit is found, and sums with figures of others are not.
func TestFiguresAreFound(t *testing.T) {
	for code, want := range map[string]int{
		"const x = 24 * measure.Inch": 1, "const x = measure.Inch / 4": 1, "const x = 3 * inch / 32": 1, "var x = measure.By(u, a, 600)": 1, "var x = measure.By[measure.Length](u, a, -7)": 1,
		"const x measure.Temperature = 10": 1, "var x = measure.Speed(55)/3.6": 1, "var x = []measure.Length{12, 15}": 2, "func f() measure.Length { return 150 }": 1,
		"var x = 2 * a": 0, "var x = measure.By(u, a, b)": 0, "var x = a / measure.Inch": 0, "var x measure.Length = 0": 0, "var x = measure.Length(n)": 0, "func f() int { return 3 }": 0,
	} {
		tree, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\n"+code, 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := len(figuresIn(tree)); got != want {
			t.Errorf("%s: %d figures, want %d", code, got, want)
		}
	}
}

// figuresIn returns where a file writes a number with a unit, or as a quantity.
func figuresIn(tree *ast.File) (list []token.Pos) {
	ast.Inspect(tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BinaryExpr:
			if n.Op == token.MUL && (number(n.X) && named(n.Y, unitNames) || number(n.Y) && named(n.X, unitNames)) || n.Op == token.QUO && named(n.X, unitNames) && number(n.Y) {
				list = append(list, n.Pos())
			}
		case *ast.CallExpr:
			list = append(list, inCall(n)...)
		case *ast.ValueSpec:
			if named(n.Type, quantities) {
				list = append(list, numbers(n.Values)...)
			}
		case *ast.CompositeLit:
			if array, ok := n.Type.(*ast.ArrayType); ok && named(array.Elt, quantities) {
				list = append(list, numbers(n.Elts)...)
			}
		case *ast.FuncDecl:
			if r := n.Type.Results; r != nil && n.Body != nil && len(r.List) == 1 && named(r.List[0].Type, quantities) {
				ast.Inspect(n.Body, func(n ast.Node) bool {
					if r, ok := n.(*ast.ReturnStmt); ok {
						list = append(list, numbers(r.Results)...)
					}
					_, inner := n.(*ast.FuncLit)
					return !inner
				})
			}
		}
		return true
	})
	return list
}

// inCall finds the numbers that a call makes a quantity of: measure.By(u, …, 600), measure.Speed(55).
func inCall(call *ast.CallExpr) []token.Pos {
	fun := call.Fun
	if index, ok := fun.(*ast.IndexExpr); ok {
		fun = index.X
	}
	if named(fun, []string{"By"}) || named(fun, quantities) {
		return numbers(call.Args)
	}
	return nil
}

func numbers(list []ast.Expr) (at []token.Pos) {
	for _, e := range list {
		if number(e) && !trifle.MatchString(literal(e)) {
			at = append(at, e.Pos())
		}
	}
	return at
}

// trifle is a sign or what rounding leaves.
var trifle = regexp.MustCompile(`^(-?1|1e-\d+)$`)

func literal(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.BasicLit:
		return e.Value
	case *ast.UnaryExpr:
		return e.Op.String() + literal(e.X)
	}
	return ""
}

// number reports whether an expression is a number other than none.
func number(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.BasicLit:
		return (e.Kind == token.INT || e.Kind == token.FLOAT) && strings.Trim(e.Value, "0.") != ""
	case *ast.UnaryExpr:
		return number(e.X)
	case *ast.ParenExpr:
		return number(e.X)
	case *ast.BinaryExpr:
		return number(e.X) && number(e.Y)
	}
	return false
}

// named reports whether an expression is one of some names of layout/measure, or such a name for short.
func named(e ast.Expr, names []string) bool {
	switch e := e.(type) {
	case *ast.SelectorExpr:
		from, ok := e.X.(*ast.Ident)
		return ok && from.Name == "measure" && slices.Contains(names, e.Sel.Name)
	case *ast.Ident:
		return strings.ToLower(e.Name) == e.Name && slices.Contains(names, e.Name)

	}
	return false
}
