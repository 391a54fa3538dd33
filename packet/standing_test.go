package packet

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"
)

// row is arches as they stand at one moment: which, between which a ridge piece is in, whose heads are tied to whose feet, which are in somebody's hands. Guys are left out: what holds without them holds.
type row struct {
	stands, joined, hands map[int]bool
	ties                  map[[2]int]bool
}

func newRow() row { return row{map[int]bool{}, map[int]bool{}, map[int]bool{}, map[[2]int]bool{}} }

// cross ties a bay's two arches to each other's feet, or unties them.
func (r row) cross(bay int, on bool) {
	r.ties[[2]int{bay, bay + 1}], r.ties[[2]int{bay + 1, bay}] = on, on
}

// loose lists arches of which nothing keeps their run, as far as ridge pieces join it, from leaning toward arch 1, or away from it: a tie holds one way as long as the feet it goes to stand. Of a run of one
// arch hands do.
func (r row) loose() (list []int) {
	last := 0
	for n := range r.stands {
		last = max(last, n)
	}
	for n := 1; n <= last; n++ {
		if !r.stands[n] {
			continue
		}
		first, held := n, [2]bool{}
		for r.joined[n] && r.stands[n+1] {
			n++
		}
		for tie, on := range r.ties {
			if on && tie[0] >= first && tie[0] <= n && r.stands[tie[1]] {
				held[b2i(tie[1] > tie[0])] = true
			}
		}
		if held != [2]bool{true, true} && !(first == n && r.hands[n]) {
			list = append(list, first, n)
		}
	}
	return list
}

// numbersIn reads the numbers of a list in words.
func numbersIn(words string) (list []int) {
	for _, w := range regexp.MustCompile(`\d+`).FindAllString(words, -1) {
		n, _ := strconv.Atoi(w)
		list = append(list, n)
	}
	return list
}

// saidOn returns what a leaf says in the place of a pattern's group; empty where it does not.
func saidOn(t *testing.T, plan *layout.Plan, leaf, pattern string) string {
	t.Helper()
	all := strings.ReplaceAll(strings.Join(textsOf(leafSides(t, plan, leaf)), " "), "\u00a0", " ")
	if m := regexp.MustCompile(pattern).FindStringSubmatch(all); m != nil {
		return m[1]
	}
	return ""
}

// whatStands tells a failure.
func whatStands(t *testing.T, r row, when string) {
	t.Helper()
	if list := r.loose(); list != nil {
		t.Fatalf("%s: nothing holds the ends %v", when, list)
	}
}

// manyHands are plans that several crews raise and take down.
func manyHands(t *testing.T) []*layout.Plan {
	list := []*layout.Plan{examplePlan(t, "parkwalk")}
	for _, helpers := range []int{10, 21} {
		list = append(list, changedExample(t, "parkwalk", "helpers: 16", fmt.Sprintf("helpers: %d", helpers)))
	}
	return list
}

// In whatever order crews raise their stretches as the leaf says, at every moment each end that stands is held along the walk.
func TestRaisedEndsStand(t *testing.T) {
	t.Parallel()
	d, apart := rand.New(rand.NewPCG(60, 2)), 0
	for _, plan := range manyHands(t) {
		starts, tied := []int{}, []int{}
		var stretches []crew.Job
		for _, j := range plan.Crew.Schedule.Jobs {
			if j.Work == crew.RaiseOthers && len(j.Stints) > 0 {
				stretches = append(stretches, j)
			}
		}
		clock := func(day int, at crew.Clock) int { return day*24*60 + int(at) }
		for i, j := range stretches {
			if i > 0 {
				day, end, _ := stretches[i-1].End()
				if clock(j.Stints[0].Day, j.Stints[0].Begin) >= clock(day, end) {
					continue // it goes on from arches that stand
				}
				starts = append(starts, j.First)
			}
		}
		apart += len(starts)
		starts = append([]int{1}, starts...)
		if saidOn(t, plan, "raise", `(Builder’s line: each head-high to other’s feet)`) != "" {
			tied = append(tied, 1)
		}
		tied = append(tied, numbersIn(saidOn(t, plan, "raise", `begin ([\d, and]+) as arch 1: Guard, step 7’s ties till neighbours join`))...)
		for range 50 {
			raiseAll(t, d, len(plan.Arches), starts, tied)
		}
	}
	if apart < 5 {
		t.Errorf("only %d stretches were begun apart", apart)
	}
}

// raiseAll raises stretches that begin at these arches side by side, in an order thrown.
func raiseAll(t *testing.T, d *rand.Rand, n int, starts, tied []int) {
	r, next := newRow(), slices.Clone(starts)
	ends := append(slices.Clone(starts[1:]), n+1)
	for left := n; left > 0; left-- {
		k := d.IntN(len(starts))
		for next[k] == ends[k] {
			k = (k + 1) % len(starts)
		}
		a := next[k]
		next[k]++
		r.stands[a] = true
		switch {
		case a == starts[k]:
			r.hands[a] = true
		case a == starts[k]+1:
			r.joined[a-1] = true
			r.cross(a-1, slices.Contains(tied, a-1))
			delete(r.hands, a-1)
		default:
			r.joined[a-1] = true
		}
		whatStands(t, r, fmt.Sprintf("arch %d is up", a))
		for _, start := range starts[1:] { // both sides stand
			if r.stands[start-1] && r.stands[start] {
				r.joined[start-1] = true
				r.cross(start, false)
			}
		}
		whatStands(t, r, fmt.Sprintf("arch %d is joined to what stood", a))
	}
}

// In whatever order crews take their stretches down as the leaf says, at every moment each end that still stands is held along the walk. An arch tied to the feet of one that comes down is not: that way of it is told
// from the right one.
func TestLoweredEndsStand(t *testing.T) {
	t.Parallel()
	d := rand.New(rand.NewPCG(60, 3))
	for _, plan := range append(manyHands(t), examplePlan(t, "garden")) {
		n := len(plan.Arches)
		from := numbersIn(saidOn(t, plan, "takedown", `crews: arches ([\d, to and]+)\. First`))
		tied := numbersIn(saidOn(t, plan, "takedown", `First tie bays? ([\d, and]+): builder’s line, each arch head-high to the other’s feet`))
		parted := numbersIn(saidOn(t, plan, "takedown", `Then, as step \d+, ridge ([\d, and]+) out`))
		if saidOn(t, plan, "takedown", `(Bay 1: builder’s line, each arch head-high to the other’s feet)`) != "" {
			tied = append(tied, 1)
		}
		if from == nil {
			from = []int{n, 1}
		}
		if crews := max(1, plan.Crew.Lowerers); len(from) != 2*crews || len(parted) != crews-1 || len(tied) != crews {
			t.Fatalf("%d crews from %v, bays %v tied, ridge %v out", crews, from, tied, parted)
		}
		for range 50 {
			r := newRow()
			for a := 1; a <= n; a++ {
				r.stands[a], r.joined[a] = true, a < n
			}
			for _, bay := range tied {
				r.cross(bay, true)
			}
			for _, bay := range parted {
				r.joined[bay] = false
				whatStands(t, r, fmt.Sprintf("ridge %d is out", bay))
			}
			lowerAll(t, d, r, from, tied)
		}
	}
	wrong := newRow()
	wrong.stands = map[int]bool{40: true, 41: true, 42: true, 43: true}
	wrong.joined, wrong.ties = map[int]bool{41: true, 42: true}, map[[2]int]bool{{41, 40}: true, {41, 42}: true}
	wrong.hands[40] = true
	whatStands(t, wrong, "41 tied to 40")
	if delete(wrong.stands, 40); wrong.loose() == nil {
		t.Error("an arch tied to feet that are off is taken for held")
	}
}

// lowerAll takes stretches down side by side, each from its first number to its second, in an order thrown.
func lowerAll(t *testing.T, d *rand.Rand, r row, from, tied []int) {
	next := slices.Clone(from)
	for left := len(r.stands); left > 0; left-- {
		k := 2 * d.IntN(len(from)/2)
		for next[k] < from[k+1] {
			k = (k + 2) % len(from)
		}
		a := next[k]
		next[k]--
		if slices.Contains(tied, a-1) && a > from[k+1] { // off first: its ties
			r.cross(a-1, false)
		}
		delete(r.stands, a)
		if a > from[k+1] {
			r.joined[a-1], r.hands[a-1] = false, true // the Guard's
		}
		whatStands(t, r, fmt.Sprintf("arch %d is down", a))
	}
}
