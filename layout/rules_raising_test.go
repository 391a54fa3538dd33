package layout_test

import (
	"fmt"
	"slices"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"
)

// atPiece is when the work on one of the pieces begins that jobs of some works do one after the other, all as long, those from the first one on; done is when it ends. The jobs are
// taken in their order along the tunnel, however the schedule has parted them.
func atPiece(s crew.Schedule, piece, first, last int, works ...crew.Work) (begin, done int, ok bool) {
	var jobs []crew.Job
	each := 0.0
	for _, j := range s.Jobs {
		if slices.Contains(works, j.Work) {
			jobs, each = append(jobs, j), each+j.Minutes*float64(j.Most)/float64(last-first+1)
		}
	}
	before := each * float64(piece-first)
	for _, j := range jobs {
		all := j.Minutes * float64(j.Most)
		if before > all-1e-6 {
			before -= all
			continue
		}
		begin, done = -1, -1
		for _, st := range j.Stints {
			for q := st.Begin; q < st.End; q += 15 {
				by := handsBy(j, minuteOf(st.Day, q+15))
				if begin < 0 && by > before+1e-6 {
					begin = minuteOf(st.Day, q)
				}
				if done < 0 && by > min(all, before+each)-1e-6 {
					done = minuteOf(st.Day, q+15)
				}
			}
		}
		return begin, done, begin >= 0 && done >= 0
	}
	return 0, 0, false
}

// archesWait holds the raising to what an arch stands on, arch by arch: its stakes are driven or its bases set and weighed down, the widths between its feet signed for, both legs wound, and its ridge piece is cut
// and wound, before hands come to it.
func archesWait(t *testing.T, p *layout.Plan) {
	s, n := p.Crew.Schedule, len(p.Arches)
	for _, a := range p.Arches {
		begin, _, ok := atPiece(s, min(a.Number, 1), 1, 1, crew.RaiseFirst)
		if a.Number > 2 {
			begin, _, ok = atPiece(s, a.Number, 3, n, crew.RaiseOthers)
		}
		if !ok { // nobody comes to it
			continue
		}
		for _, j := range s.Jobs {
			on := j.Work == crew.Drive || j.Work == crew.LayBags || j.Work == crew.WrapLegs || j.Work == crew.FirstRidge
			if !on || j.First > 0 && (a.Number < j.First || a.Number > j.Last) {
				continue
			}
			if day, end, ok := j.End(); !ok || minuteOf(day, end) > begin || slices.ContainsFunc(s.Left, func(i int) bool { return s.Jobs[i].Work == j.Work && s.Jobs[i].First == j.First }) {
				t.Errorf("arch %d is raised at minute %d, work %d under it ends on day %d at %s", a.Number, begin, j.Work, day, end)
			}
		}
		later := slices.ContainsFunc(s.Jobs, func(j crew.Job) bool { return j.Work == crew.CutRidges || j.Work == crew.WrapRidges })
		if _, done, ok := atPiece(s, a.Number, 3, n, crew.CutRidges, crew.WrapRidges); a.Number > 2 && later && (!ok || done > begin) {
			t.Errorf("arch %d is raised at minute %d, its ridge piece is ready at minute %d", a.Number, begin, done)
		}
	}
}

// feet are weighted ones of the arches of base.
const feet = "{pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in, foot: {weight: 90 lb, width: 18 in, on: asphalt, bar: 5/8 in}}"

// Rows of two and three stretches on stakes and on weighted feet, with guys where a stretch may begin: no arch is raised on what is not signed for, and some are in stretches.
func TestNoArchBeforeItsFeet(t *testing.T) {
	parted := 0
	for n, guyed := range map[int]int{6: 3, 11: 2, 14: 5} { // that arch is near the end of a first stretch
		for k, s := range []sections{base, base.with("arch", feet)} {
			s = s.with("tunnel", fmt.Sprintf("{arches: %d, spacing: 4 ft 3 in}", n), "crew", "{helpers: 7, start: 08:00}", "guys", fmt.Sprintf("{arches: [1, %d, last], from: 6 ft, out: 6 ft}", guyed))
			p := solved(t, s.text())
			if scheduleKeeps(t, p); t.Failed() {
				t.Fatalf("%d arches, on weights: %d", n, k)
			}
			for _, j := range p.Crew.Schedule.Jobs {
				if j.Work == crew.RaiseOthers && j.First > 0 {
					parted++
				}
			}
		}
	}
	if parted < 6 {
		t.Errorf("only %d stretches are raised", parted)
	}
}
