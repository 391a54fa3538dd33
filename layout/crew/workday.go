// Days and evenings of work, by daylight and by the spec.

package crew

import (
	"cmp"
	"slices"
	"time"

	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/sun"
)

// Workday is one day or evening of work.
type Workday struct {
	Date       time.Time // zero where the spec does not give it
	Begin, End Clock     // of the work; the end is what daylight, the spec or the usual day allows
	Read       Clock     // from the begin on all hear it read aloud what the day brings; 0 where they hear it as they unload
	Lunch      Clock     // all rest from then on; 0 on a day that has no lunch
	TieOff     Clock     // all make fast what stands and put tools away from then on; 0 on the last day
	Light      *Light    // nil where the place or the day is not given
	works      works
}

// Light is a day's light by the clock of the place.
type Light struct {
	Rise, Set, Dusk Clock // dusk ends civil twilight: from then on it is dark
}

type works uint32

func (w works) has(one Work) bool { return w>>one&1 == 1 }

func worksOf(list ...Work) (w works) {
	for _, one := range list {
		w |= 1 << one
	}
	return w
}

// byWord are the works of each word that a day of the spec may be for.
var byWord = map[string]works{
	"trial": worksOf(TryArch), "marking": worksOf(MarkGround), "driving": worksOf(TryStake, Drive, LayBags), "cutting": worksOf(MakeLegs, FirstRidge, CutRidges),
	"wrapping": worksOf(TryStrings, WrapLegs, FirstRidge, WrapRidges), "raising": worksOf(FirstRidge, RaiseFirst, RaiseOthers, HoldRidge), "hanging": worksOf(HangLights, TryWay), "power": worksOf(TryOutlets, Lay, HangUp, TryWay, Join, PlugIn),
}

// Sets of works: at the bench nobody needs daylight; building is all but the marking and the trial.
var (
	bench     = worksOf(MakeLegs, TryStrings, WrapLegs, FirstRidge, CutRidges, WrapRidges)
	dayFrame  = worksOf(Unload, ClearUp)
	aside     = worksOf(MarkGround, TryArch, LightUp)
	allOfWork = ^works(0)
)

// Bench reports whether nothing but bench work is done on the day, the trial of one arch, or the marking beside them.
func (d Workday) Bench() bool { return d.works&^bench&^worksOf(TryArch, MarkGround) == 0 }

// outdoors are those of some days that are no evenings at the bench.
func outdoors(days []Workday) []Workday {
	return slices.DeleteFunc(slices.Clone(days), Workday.Bench)
}

// rests reports whether nobody works in the quarter that begins then.
func (d Workday) rests(at Clock) bool {
	return at < d.Begin+d.Read || d.Lunch > 0 && at >= d.Lunch && at < d.Lunch+practice.MinutesLunch || d.TieOff > 0 && at >= d.TieOff
}

// allows reports whether a work may be done in the quarter that begins then: by the day's purpose, and outdoors by daylight alone.
func (d Workday) allows(w Work, at Clock) bool {
	return d.works.has(w) && (bench.has(w) || d.Light == nil || at+quarter <= d.Light.Set)
}

// dayOf returns the working hours of a day: to sunset where it is known, else as long as a usual day.
func (in Input) dayOf(date time.Time, of works) Workday {
	begin := Clock(in.Spec.Crew.Start.Minutes())
	d := Workday{Date: date, Begin: (begin + quarter - 1) / quarter * quarter, End: min((begin+practice.LongDay)/quarter*quarter, 24*60), works: of}
	if d.Light = lightOf(in.Spec, date); d.Light != nil {
		if end := d.Light.Set / quarter * quarter; end > d.Begin {
			d.End = end
		}
	}
	return d
}

// lightOf is a day's light; nil where the place or the day is not given, or the sun does not rise and set.
func lightOf(s *spec.Spec, date time.Time) *Light {
	place := s.Site.Place
	if place == nil || date.IsZero() {
		return nil
	}
	day, ok := sun.Over(place.Lat, place.Long, date)
	if !ok {
		return nil
	}
	clock := func(t time.Time) Clock {
		t = t.In(s.Site.Clock)
		return Clock(t.Hour()*60 + t.Minute()) // down to the minute: too early is the careful side of a sunset
	}
	return &Light{Rise: clock(day.Rise) + 1, Set: clock(day.Set), Dusk: clock(day.Dusk) + 1}
}

// Afternoon is how many minutes of daylight the shortest afternoon leaves from the noon call to sunset while the tunnel stands; where the place or the days are not known, so many as are
// taken then.
func Afternoon(s *spec.Spec) float64 {
	day, last := cmp.Or(s.Dates.Build, s.Dates.Open), cmp.Or(s.Dates.Down, s.Dates.Close)
	var sets []Clock
	for range 366 {
		light := lightOf(s, day)
		if light == nil || day.After(last) {
			break
		}
		sets, day = append(sets, light.Set), day.AddDate(0, 0, 1)
	}
	if sets == nil {
		return practice.Afternoon
	}
	return float64(max(0, slices.Min(sets)-practice.NoonCall))
}

// given makes days of those that the spec gives, the marking apart from the others.
func (in Input) given() (marking, others []Workday) {
	for _, g := range in.Spec.Crew.Days {
		w := works(0)
		for _, word := range g.Work {
			w |= byWord[word]
		}
		if len(g.Work) == 0 {
			w = allOfWork &^ aside
		}
		if w&^bench&^aside != 0 {
			w |= dayFrame
		}
		d := in.dayOf(g.Date, w)
		d.between(g)
		if w.has(MarkGround) {
			m := d
			m.works = worksOf(MarkGround)
			marking = append(marking, m)
		}
		if d.works &^= worksOf(MarkGround); d.works != 0 {
			others = append(others, d)
		}
	}
	return marking, others
}

// between sets a day's hours to those that the spec gives. Outdoors the light ends a day without an until.
func (d *Workday) between(g spec.CrewDay) {
	up := func(t time.Duration) Clock { return (Clock(t.Minutes()) + quarter - 1) / quarter * quarter }
	if g.From > 0 {
		long := d.End - d.Begin
		if d.Begin = up(g.From); d.Light == nil {
			d.End = min(d.Begin+long, 24*60)
		}
	}
	switch {
	case g.Until > 0:
		d.End = Clock(g.Until.Minutes()) / quarter * quarter
	case d.Bench() && d.End <= d.Begin: // an evening
		d.End = min(d.Begin+practice.Evening, 24*60)
	}
	d.End = max(d.End, d.Begin)
}

// most is how many days a building may take before the schedule gives up: what is left then has no time.
const most = 60

// days lists the days of marking, and those of the work; open tells that the work may go on on the days after.
func (in Input) days() (marking, others []Workday, open bool) {
	marking, others = in.given()
	if len(marking) == 0 {
		mark, _ := MarkOn(in.Spec, in.drives())
		marking = in.following(mark, worksOf(MarkGround))
	}
	if len(outdoors(others)) == 0 {
		others, open = append(others, in.following(in.first(), allOfWork&^aside)...), true
	}
	unload := slices.IndexFunc(others, func(d Workday) bool { return d.works.has(Unload) })
	for i := range others {
		if i != unload {
			others[i].Read = practice.MinutesRead
		}
	}
	return together(marking, others), others, open
}

// together has the ground marked among the other work from the first day on that is for both, at the same hours: nobody has these twice. It returns the days of marking before.
func together(marking, others []Workday) []Workday {
	for i, m := range marking {
		k := slices.IndexFunc(others, func(d Workday) bool {
			return !m.Date.IsZero() && d.Date.Equal(m.Date) && d.Begin < m.End && m.Begin < d.End
		})
		if k < 0 {
			continue
		}
		for ; k < len(others); k++ {
			others[k].works |= worksOf(MarkGround)
		}
		return marking[:i]
	}
	return marking
}

// marksAsBuilt reports whether the ground is marked on the day on which its stakes are driven or its bases set: no dot has waited, and none is checked again.
func (in Input) marksAsBuilt() bool {
	marking, others, _ := in.days()
	k := slices.IndexFunc(others, func(d Workday) bool { return d.works.has(MarkGround) })
	return len(marking) == 0 && k >= 0 && others[k].works.has(TryStake)
}

// marksBefore reports whether so many minutes of marking are over before the building, or have no day among it.
func (c calendar) marksBefore(minutes float64) bool {
	for _, d := range c.marking {
		minutes -= float64(d.End - d.Begin - practice.MinutesLunch)
	}
	return minutes <= 0 || !slices.ContainsFunc(c.others, func(d Workday) bool { return d.works.has(MarkGround) })
}

// following are as many days in a row as a building may take.
func (in Input) following(first time.Time, of works) (list []Workday) {
	for k := range most {
		date := first
		if !date.IsZero() {
			date = date.AddDate(0, 0, k)
		}
		list = append(list, in.dayOf(date, of))
	}
	return list
}
