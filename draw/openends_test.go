package draw

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/dice"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// The printed place of every run's open end is where the plan has it, in space: at the named foot, at the crown, along the named leg, arch or ridge by its figure, or by the pipe that its row passes.
func TestOpenEndsAreWherePrinted(t *testing.T) {
	plans := map[string]*layout.Plan{}
	for _, name := range exampleNames {
		plans[name] = example(t, name)
	}
	for seed := range uint64(6) {
		s, err := spec.Read("thrown.yaml", []byte(dice.Modest(seed)))
		if err != nil {
			t.Fatal(err)
		}
		plans[fmt.Sprint("thrown ", seed)] = layout.Solve(s)
	}
	past := 0
	for name, p := range plans {
		for _, run := range p.Power.Chains {
			words := endWords(run)
			if _, row, ok := strings.Cut(words, "row "); ok && !strings.HasPrefix(row, fmt.Sprint(run.To.At.Part.Number)) {
				t.Errorf("%s: run %s ends on %v: “%s”", name, run.Name, run.To.At.Part, words)
			}
			off, within := offPlace(p, run, words)
			if math.IsNaN(float64(off)) || off > within {
				t.Errorf("%s: run %s ends %v at %.0f, %.0f, %.0f: %.0f mm off “%s”", name, run.Name, run.To.At, run.To.X, run.To.Y, run.To.Z, off, words)
			}
			if run.To.At.Part.Kind == lights.Arch && run.To.At.Spot == lights.Along && run.To.At.Tape > p.Arches[run.To.At.Part.Number-1].CrownTape {
				past++
			}
		}
	}
	if past == 0 {
		t.Error("no run ends beyond a crown")
	}
}

// placeForms are the words of places: a leg, with a figure up it; a crown, an arch, a ridge piece or a bay, with a figure from a crown or leg.
var placeForms = regexp.MustCompile(`^(?:([LR])(\d+)(?:, row \d+)?(?:, (.+) up)?|(crown|arch|ridge|bay) (\d+)(?:, row \d+)?(?:, (.+?)(?: of pipe)? from (?:crown \d+|([LR])(\d+)))?)$`)

// offPlace is how far a run's open end is from where words say, and how far it may be: a hand of a row, the loose end at a foot or fitting, else the rounding of the figure.
func offPlace(p *layout.Plan, run power.Chain, words string) (off, within measure.Length) {
	const rounding, loose = measure.Inch, 12 * measure.Inch
	m := placeForms.FindStringSubmatch(words)
	if m == nil {
		return measure.Length(math.NaN()), 0
	}
	number := func(text string) int { n, _ := strconv.Atoi(text); return n }
	figure, _ := measure.ParseLength(strings.NewReplacer("′-", " ft ", "″", " in").Replace(m[3] + m[6]))
	e := run.To
	from := func(q [3]measure.Length) measure.Length {
		return measure.Length(math.Sqrt(math.Pow(float64(e.X-q[0]), 2) + math.Pow(float64(e.Y-q[1]), 2) + math.Pow(float64(e.Z-q[2]), 2)))
	}
	on := func(arch int, tape measure.Length) [3]measure.Length {
		q := p.Arches[arch-1].PointAt(tape)
		x, y, z := p.Ground.Site(arch, q.X, q.Y)
		return [3]measure.Length{x, y, z}
	}
	leg := func(letter string, n int, tape measure.Length) [3]measure.Length {
		if letter == "R" {
			tape = p.Arches[n-1].Length - tape
		}
		return on(n, tape)
	}
	nearest := func(letter string, n int) measure.Length {
		best := measure.Length(math.Inf(1))
		for tape := measure.Length(0); tape < p.Arches[n-1].Length/2; tape += 10 {
			best = min(best, from(leg(letter, n, tape)))
		}
		return best
	}
	crown := func(n int) [3]measure.Length { return on(n, p.Arches[n-1].CrownTape) }
	switch n := number(m[2] + m[5]); {
	case m[3] != "":
		return from(leg(m[1], n, figure)), rounding
	case m[1] != "" && run.To.At.Part.IsRow():
		return nearest(m[1], n), practice.RowGive(p.Spec.Units) + rounding
	case m[1] != "":
		return from(leg(m[1], n, 0)), loose
	case m[4] == "arch":
		return from(on(n, figure)), rounding
	case m[4] == "crown":
		return from(crown(n)), loose
	case m[4] == "ridge":
		a, b := crown(n), crown(n+1)
		share := figure / measure.Length(math.Sqrt(math.Pow(float64(b[0]-a[0]), 2)+math.Pow(float64(b[1]-a[1]), 2)+math.Pow(float64(b[2]-a[2]), 2)))
		for i := range a {
			a[i] += share * (b[i] - a[i])
		}
		return from(a), rounding
	default: // in a bay
		return measure.Abs(nearest(m[7], number(m[8])) - figure), loose
	}
}
