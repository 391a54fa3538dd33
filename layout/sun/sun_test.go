package sun

import (
	"math"
	"testing"
	"time"
)

// Times as published in almanacs and newspapers for the solstices, to the minute, by the clock of the place; from memory. They are figured for the city and by other
// methods, so two minutes are forgiven.
func TestAlmanacRows(t *testing.T) {
	for _, c := range []struct {
		name      string
		lat, long float64
		date      string
		zone      int // hours
		rise, set string
	}{
		{"London, shortest day", 51.51, -0.13, "2026-12-21", 0, "08:04", "15:53"},
		{"London, longest day, summer time", 51.51, -0.13, "2026-06-21", 1, "04:43", "21:21"},
		{"New York, shortest day", 40.71, -74.01, "2026-12-21", -5, "07:17", "16:32"},
		{"New York, longest day, summer time", 40.71, -74.01, "2026-06-21", -4, "05:25", "20:31"},
		{"Washington, shortest day", 38.90, -77.04, "2026-12-21", -5, "07:23", "16:50"},
		{"Chicago, shortest day", 41.88, -87.63, "2026-12-21", -6, "07:15", "16:23"},
		{"Berlin, shortest day", 52.52, 13.40, "2026-12-21", 1, "08:15", "15:54"},
		{"Sydney, longest day, summer time", -33.87, 151.21, "2026-12-22", 11, "05:41", "20:05"},
	} {
		date, _ := time.Parse(time.DateOnly, c.date)
		day, ok := Over(c.lat, c.long, date)
		if !ok {
			t.Errorf("%s: no day", c.name)
			continue
		}
		zone := time.FixedZone("", c.zone*3600)
		for _, e := range []struct {
			what, want string
			got        time.Time
		}{{"rise", c.rise, day.Rise}, {"set", c.set, day.Set}} {
			want, _ := time.ParseInLocation("2006-01-02 15:04", c.date+" "+e.want, zone)
			if off := e.got.Sub(want); off < -2*time.Minute || off > 2*time.Minute {
				t.Errorf("%s: %s at %s, published %s", c.name, e.what, e.got.In(zone).Format("2006-01-02 15:04:05"), e.want)
			}
		}
	}
}

// Meeus, Astronomical Algorithms, examples 25.a and 28.a (from memory): on 13 October 1992 at 0 h the apparent declination is −7.78507° and the equation of time
// +13 min 42.6 s. Dynamical time was a minute ahead, which moves neither by its last digit here.
func TestSunsPosition(t *testing.T) {
	p := positionAt(time.Date(1992, 10, 13, 0, 0, 0, 0, time.UTC))
	if got := deg(p.Declination); math.Abs(got+7.78507) > 0.0005 {
		t.Errorf("declination %.5f°", got)
	}
	if got := p.EquationOfTime.Seconds(); math.Abs(got-(13*60+42.6)) > 1 {
		t.Errorf("equation of time %.1f s", got)
	}
}

// On the equator the day is 12 hours and the time that the sun's radius and refraction take, twice 0.833° at 15° an hour over the declination's cosine, whatever the
// date (closed form; the equation of time moves by up to a quarter of a minute meanwhile); and inside the polar circle there are days without a rise.
func TestLengthOfDay(t *testing.T) {
	for month := time.January; month <= time.December; month++ {
		date := time.Date(2026, month, 11, 0, 0, 0, 0, time.UTC)
		day, ok := Over(0, 37, date)
		declination := positionAt(date.Add(10 * time.Hour)).Declination
		want := 12*60 + 2*0.833*4/math.Cos(declination)
		if got := day.Set.Sub(day.Rise).Minutes(); !ok || math.Abs(got-want) > 0.3 {
			t.Errorf("%s: the day is %.2f min, want %.2f", month, got, want)
		}
		if !day.Dawn.Before(day.Rise) || !day.Dusk.After(day.Set) {
			t.Errorf("%s: dawn %s, rise %s, set %s, dusk %s", month, day.Dawn, day.Rise, day.Set, day.Dusk)
		}
	}
	for _, date := range []time.Time{time.Date(2026, 12, 21, 0, 0, 0, 0, time.UTC), time.Date(2026, 6, 21, 0, 0, 0, 0, time.UTC)} {
		if day, ok := Over(75, 20, date); ok {
			t.Errorf("75° north on %s: %+v", date.Format(time.DateOnly), day)
		}
	}
}

// Clocks by longitude: Denver stands on its meridian, Chicago and Sydney near theirs.
func TestZone(t *testing.T) {
	for long, want := range map[float64]string{-105: "UTC-7", -87.63: "UTC-6", 151.21: "UTC+10", -0.13: "UTC", 13.4: "UTC+1"} {
		if got := Zone(long).String(); got != want {
			t.Errorf("%v: %s, want %s", long, got, want)
		}
	}
	for by, want := range map[time.Duration]string{0: "UTC", -time.Hour: "UTC-1", 5*time.Hour + 45*time.Minute: "UTC+5:45", -3*time.Hour - 30*time.Minute: "UTC-3:30"} {
		if at := time.Unix(0, 0).In(Ahead(by)); at.Location().String() != want || at.Format("-07:00") == "+00:00" && by != 0 {
			t.Errorf("%v: %s, want %s", by, at.Location(), want)
		}
	}
}
