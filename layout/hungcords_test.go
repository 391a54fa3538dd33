package layout_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/dice"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Cords that go up wait till caps are counted and hang before the opening is tried, by two of age who do nothing else then; none other gives that work.
func TestCordsHangBeforeTheOpeningIsTried(t *testing.T) {
	texts := map[string]string{}
	for _, name := range []string{"garden", "starter", "schoolyard", "millwalk"} {
		data, err := examples.Files.ReadFile(name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		texts[name] = string(data)
	}
	d := rand.New(rand.NewPCG(3, 29))
	texts["crew 1"], texts["crew 2"] = base.with("crew", dice.Crew(d)).text(), base.with("crew", dice.Crew(d)).text()
	hung := 0
	for name, text := range texts {
		p := solved(t, text)
		up := goesUp(t, p)
		hung += up
		at := func(a crew.Action) (list []crew.Job) {
			for _, j := range p.Crew.Schedule.Jobs {
				if slices.ContainsFunc(j.Tasks, func(i int) bool { return p.Crew.Tasks[i].Action == a }) {
					list = append(list, j)
				}
			}
			return list
		}
		jobs := at(crew.HangCords)
		if (up > 0) != (len(jobs) == 1) {
			t.Errorf("%s: %d cords go up, %d jobs hang them", name, up, len(jobs))
		}
		if len(jobs) == 0 || len(jobs[0].Stints) == 0 {
			continue
		}
		begin := minuteOf(jobs[0].Stints[0].Day, jobs[0].Stints[0].Begin)
		day, clock, _ := jobs[0].End()
		for _, j := range at(crew.SightAlong) {
			if d, end, ok := j.End(); !ok || minuteOf(d, end) > begin {
				t.Errorf("%s: cords hang from minute %d, caps are counted on day %d at %s", name, begin, d, end)
			}
		}
		for _, j := range at(crew.TryOpening) {
			if len(j.Stints) > 0 && minuteOf(j.Stints[0].Day, j.Stints[0].Begin) < minuteOf(day, clock) {
				t.Errorf("%s: the opening is tried on day %d at %s, cords hang on day %d at %s", name, j.Stints[0].Day, j.Stints[0].Begin, day, clock)
			}
		}
		for _, st := range jobs[0].Stints {
			if n := len(st.Hands); n != p.Crew.Schedule.Hands && n%2 > 0 || n > 2*up || slices.Max(st.Hands) >= p.Crew.Schedule.Hands-p.Crew.Schedule.Young {
				t.Errorf("%s: %v hang %d cords", name, st.Hands, up)
			}
		}
		nobodyTwice(t, p.Crew.Schedule)
	}
	if hung < 4 {
		t.Errorf("only %d cords go up in all", hung)
	}
}

// goesUp counts the cords with a socket that hangs out of reach or amid a bay, fed from below, and those that pass a way where none is covered, and holds the plan to them and the length tied to what
// a straight line asks for at least, and the cord has at most.
func goesUp(t *testing.T, p *layout.Plan) (n int) {
	for _, c := range p.Power.Cords {
		up := c.Over && !p.Spec.Site.Cords.Cover()
		least := measure.Length(0)
		for _, e := range c.Places {
			high := e.Z - footBy(p, e)
			if high > 42*measure.Inch && c.From.At.Spot != lights.AtCrown || e.At.MidBay() {
				up, least = true, max(least, high)
			}
		}
		if up {
			n++
		}
		if up != c.Hung() || c.Tied < least-1e-6 || c.Tied > c.Lies+1e-6 {
			t.Errorf("%s to %v: goes up %v, hung %v, %v of %v tied, at least %v", c.Name, c.To.At, up, c.Hung(), c.Tied, c.Lies, least)
		}
		if !c.Hung() && !c.Laid() {
			t.Errorf("%s is neither laid nor hung", c.Name)
		}
	}
	return n
}

// footBy is the ground at the nearest foot of an end.
func footBy(p *layout.Plan, e lights.End) measure.Length {
	feet := slices.DeleteFunc(slices.Clone(p.Stakes), func(s ground.Stake) bool { return s.Guy || s.Arch != e.Arch })
	near := slices.MinFunc(feet, func(a, b ground.Stake) int {
		at := spec.Point{X: e.X, Y: e.Y}
		return int(ground.Distance(a.At(), at) - ground.Distance(b.At(), at))
	})
	return near.Ground
}
