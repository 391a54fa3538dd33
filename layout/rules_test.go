package layout_test

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// rules hold of every plan, whatever its spec: each is said once, here, and tried on every example and on the specs of ours.
var rules = []struct {
	name string
	hold func(t *testing.T, p *layout.Plan)
}{
	{"every arch is of one kind", kindsPartArches},
	{"an arch is as long as its sticks and joints", archAddsUp},
	{"figures of an arch agree", archFigures},
	{"arches stand along the route, on its ground", stationsFollow},
	{"stakes stand square to the route, span apart", stakesStand},
	{"ties and diagonals agree with coordinates", tapesAgree},
	{"every dot is painted once, from what is there, and checked", dotsArePainted},
	{"tasks are whole", tasksAreWhole},
	{"ridge pieces with their fittings reach from crown to crown", ridgeReaches},
	{"a tape lies over the crowns", tapeOverCrowns},
	{"every piece is cut once, or bought as it is", piecesAreCut},
	{"lines of braces reach, and do not slide", linesReach},
	{"no bar is cut beyond its length", barsHold},
	{"no more is taken than the shed holds or the store sells", stockIsThere},
	{"the cost is what the bars cost", costAddsUp},
	{"what is needed and not owned is bought", shoppingAddsUp},
	{"fittings and caps are counted", fittingsCount},
	{"lengths of string are kept", stringsAddUp},
	{"strings hang on the frame", stringsOnFrame},
	{"an arch bears what is on it", archesBear},
	{"rows stay under the crown", rowsStay},
	{"rows end at legs", rowsEndAtLegs},
	{"joined rows reach", joinedRowsReach},
	{"a wrap is a helix", wrapsUnroll},
	{"every string is in one chain, fed or told of", stringsAreFed},
	{"chains keep within their labels", chainsHold},
	{"circuits keep within their allowance", circuitsHold},
	{"what is told of an outlet is what binds first", outletsBind},
	{"findings are in order and well said", findingsAreWell},
	{"findings fit their table", findingsFitTable},
	{"must fix comes of what the spec says", mustFixIsGiven},
	{"the schedule can be kept", scheduleKeeps},
	{"tapes reach what is measured", tapesReach},
	{"a row’s line reaches", stringReaches},
	{"who saws is guarded", sawsAreGuarded},
	{"laths suffice", lathsSuffice},
	{"no number is none", numbersAreNumbers},
	{"JSON has every list", listsAreThere},
}

func TestRules(t *testing.T) {
	eachSpec(t, func(t *testing.T, text string) {
		p := solved(t, text)
		for _, r := range rules {
			t.Run(strings.ReplaceAll(r.name, " ", "-"), func(t *testing.T) { r.hold(t, p) })
		}
		if again := layout.Solve(read(t, "spec.yaml", text)); digest(p) != digest(again) {
			t.Error("the same spec gave two plans")
		}
	})
}

// near fails the test unless two lengths agree.
func near(t *testing.T, what string, got, want, within measure.Length) {
	t.Helper()
	if !(math.Abs(float64(got-want)) <= float64(within)) {
		t.Errorf("%s: %.6f mm, want %.6f", what, float64(got), float64(want))
	}
}

// has reports whether a plan has a finding of one of the codes.
func has(p *layout.Plan, codes ...string) bool {
	return slices.ContainsFunc(p.Findings, func(f finding.Finding) bool { return slices.Contains(codes, f.Code) })
}

// sheetWords are the words of `packet --sheets`.
var sheetWords = strings.Fields("day board stakes stock raise lights power nights takedown tags spec")

var (
	codeShape = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	slips     = regexp.MustCompile(`NaN|Inf|%!|\bnil\b|  |−?\d{8}`)
)

func findingsAreWell(t *testing.T, p *layout.Plan) {
	for i, f := range p.Findings {
		if !codeShape.MatchString(f.Code) || !slices.Contains(sheetWords, f.Sheet) || f.Level < finding.MustFix || f.Level > finding.Note {
			t.Errorf("finding %v: code %q, sheet %q", f.Level, f.Code, f.Sheet)
		}
		if !strings.HasSuffix(f.Text, ".") || slips.MatchString(f.Text) {
			t.Errorf("%s: %q", f.Code, f.Text)
		}
		if i > 0 && cmp.Compare(p.Findings[i-1].Level, f.Level) > 0 {
			t.Errorf("%s comes after %s", f.Code, p.Findings[i-1].Code)
		}
	}
}

// mustFixIsGiven: a value the spec did not give never causes a must fix, save that no arch stands.
func mustFixIsGiven(t *testing.T, p *layout.Plan) {
	for _, f := range p.Findings {
		if f.Level == finding.MustFix && f.Code != "no-arch" && !p.Spec.Given(f.Key) {
			t.Errorf("%s must be fixed at %q, which the spec does not give: %s", f.Code, f.Key, f.Text)
		}
	}
}

// everyValue visits every number and word of a plan, printed or not, in order. Functions and maps are left out.
func everyValue(p *layout.Plan, visit func(path string, v reflect.Value)) {
	seen := map[uintptr]bool{}
	var walk func(path string, v reflect.Value)
	walk = func(path string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() && !seen[v.Pointer()] {
				seen[v.Pointer()] = true
				walk(path, v.Elem())
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(path+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case reflect.Slice, reflect.Array:
			visit(path, reflect.ValueOf(v.Len()))
			for i := range v.Len() {
				walk(path, v.Index(i))
			}
		case reflect.Float64, reflect.Int, reflect.Int64, reflect.String, reflect.Bool:
			visit(path, v)
		}
	}
	walk("plan", reflect.ValueOf(p))
}

// numbersAreNumbers: an infinite length is the radius of what is straight; nothing is no number.
func numbersAreNumbers(t *testing.T, p *layout.Plan) {
	everyValue(p, func(path string, v reflect.Value) {
		if v.Kind() == reflect.Float64 && math.IsNaN(v.Float()) {
			t.Errorf("%s is no number", path)
		}
	})
}

// digest is the same for two plans only if every value is.
func digest(p *layout.Plan) [sha256.Size]byte {
	h := sha256.New()
	everyValue(p, func(path string, v reflect.Value) { fmt.Fprintln(h, v) })
	return [sha256.Size]byte(h.Sum(nil))
}

func listsAreThere(t *testing.T, p *layout.Plan) {
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(text, []byte("null")) {
		t.Error("there is a null in the JSON")
	}
}
