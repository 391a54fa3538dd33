package spec

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// full gives nearly every key of the format once. Place, people and figures are invented.
const full = `hoopwright: 1
title: Tidemill Lantern Walk
season: 2027
units: imperial
paper: legal
currency: USD
dates: {mark: 2027-11-06, build: 2027-11-20, open: 2027-11-26, close: 2028-01-02, down: 2028-01-08}
accept: [{finding: long-day, why: house cords are there by then, by: Ada Finch}]

tunnel: {arches: 9, spacing: 4 ft 3 in,
  ways: [{bay: 2, wall: left}],
  opening: {width: 4 ft 3 in, height: 6 ft 9 in},
  }

arch:
  pipe: pvc sch40 1/2 in
  sticks: [10 ft, [9 ft, 14 in]]
  span: 7 ft 3 in
  stake: {bar: no. 3, length: 42 in, depth: 18 in, lean: 1 deg}
  late modulus: 55 %
  joints: pinned
  except:
    - {arches: [1, last], span: 7 ft 9 in, stake: {depth: 22 in}}
    - {arches: [4 to 5], height: 7 ft 4 in, span: 7 ft, foot: {weight: 70 lb, width: 16 in, on: concrete, bar: 1/2 in}}
    - {arches: [6], pipe: {od: 1.05 in, wall: 0.12 in, take off: 9/16 in, socket: 0.72 in}, sticks: [11 ft, 11 ft]}

ridge: {pipe: pvc sch40 3/4 in}
guys: {arches: [1, last], from: 6 ft 3 in, out: 5 ft 6 in, stake: {length: 28 in}}
braces: {bays: [2], from: 4 ft 9 in, kind: line}

site:
  route: [{straight: 11 ft}, {left: 24 deg, radius: 27 ft}, {straight: rest}]
  start: {at: [21 ft, 7 ft], heading: -15 deg}
  soil: sandy
  exposure: suburban
  marks:
    - {name: mill door, at: [0 ft, 0 ft]}
    - {name: sluice post, at: [36 ft, 0 ft]}
    - {name: old willow, from: {mill door: 33 ft 2 in, sluice post: 38 ft 7 in}, side: right}
  levels: [{arch: 1, left: 0 in, right: 3 in}, {arch: last, left: -8 in, right: 10 in}]
  features:
    - {name: brick path, outline: [[10 ft, 2 ft], [30 ft, 2 ft], [30 ft, 5 ft], [10 ft, 5 ft]], hard: true}
    - {name: bench, at: [28 ft, 22 ft], radius: 3 ft, height: 34 in}
  buried: [{name: water line, line: [[0 ft, 15 ft], [42 ft, 18 ft]], keep: 26 in, marked by: the town}]
  overhead: [{name: service drop, line: [[0 ft, -6 ft], [42 ft, -5 ft]], height: 14 ft, keep: 12 ft}]
  outlets:
    - {name: mill wall, at: [2 ft, 0 ft], circuit: mill, timer: 15 A, sockets: 3, reset at: the hall, also feeds: the bell}
    - {name: sluice, at: [36 ft, 1 ft], circuit: sluice}
  cords: {keep off: [brick path], crossing: cover}
  north: 40 deg
  place: [47.61, -122.33]
  clock: UTC-3:30
  places: [{name: hall door, at: [3 ft, 1 ft], for: power off}]
  address: 3 Tidemill Road
  emergency: 911

lights:
  wraps:
    - {where: [legs above 3 ft of [1 to 4], ridge of odd], string: mini led 100 warm, count: 1, plug: crown}
    - {where: left legs tape 12 in to 4 ft, string: Porch Set, pitch: 3 in}
  rows: {first: 14 in, step: 13 in, up to: 6 ft, strings: [mini led 100 warm, mini led 100 red], walls: right, start: back, sag: 2 in, gaps: [{wall: right, bays: [4]}]}
  drops: [{where: ridge, string: drop led 100 warm, hang: 9 in, lap: 4 in}]
  strings:
    Porch Set: {length: 21 ft, lead: 1 ft, tail: 3 in, bulbs: 72, watts: 5 W, amps: 0.05 A, kind: led, volts: 120 V, weight: 0.4 lb, wire: 0.16 in, gauge: 20 AWG, colour: amber, drop: 0 in, back socket: true, most in a chain: 22, most watts: 190 W, fuse: 5 A}
    soft set: {length: 5 m, bulbs: 50, watts: 3 W, volts: 24 V, supply: {watts: 30 W, sockets: 2}, weight: 0.02 lb/ft}

power:
  circuits:
    mill: {volts: 120 V, breaker: 20 A, gfci: true, other load: 2 A, breaker no: "14"}
    sluice: {volts: 120 V, breaker: 15 A}
  continuous: 75 %
  split: left and right
  together: 6
  cords: [{gauge: 14 AWG, length: 40 ft, sockets: 5, apart: 7 ft, price: 31}]
  taps: [{sockets: 3, price: 6}, {sockets: 4}]
  timers: {amps: 10 A, sockets: 1, price: 19.5}
  evenings: {hours: 4.5, nights: 33, price: 0.18}

weather: {ice: 1/4 in, cold: 14 F, stand: 42 mph, inside: 18 mph}
stock:
  sell: [{item: PVC sch40 1/2 in, length: 10 ft, price: 4.20, limit: 40}, {item: 1/2 in, length: 20 ft}, {item: tee pvc sch40 1/2 in, price: 0}, {item: custom pipe 4, length: 12 ft}]
  own: [{item: steel bar 3/8 in, length: 42 in, count: 9}, {item: Porch Set, count: 0}, {item: zip ties 100, count: 2, dead: 0}]
  kerf: 1/16 in
  trim: 1/2 in
  spares: 8 %
store: wrapped
found: {after: trial, crown: {3: 95 1/2 in, 1: 96 in}, span: {1: 94 in}, wrapped: true}
crew: {helpers: 7, young: 2, date: 2027-11-21, days: [{date: 2027-11-19, from: 18:30, until: 21:00, work: [cutting, wrapping]}, {date: 2027-11-21, work: raising}], tools: {ladders: 3, trestles: 12, tapes: 4, sledges: 5}, ask: {name: A. Reed, phone: 555 0100}, start: 8:15, rates: {stake: 7, cut: 2.5, wrap: 14, raise: 12, ridge: 5, row: 9, drop: 4, guy: 11, cord: 8}}
`

// quotedPlaces is full with the places in quotes that need them.
var quotedPlaces = strings.Replace(full, "legs above 3 ft of [1 to 4]", `"legs above 3 ft of [1 to 4]"`, 1)

func mustRead(t *testing.T, source string) *Spec {
	t.Helper()
	s, err := Read("walk.yaml", []byte(source))
	if err != nil {
		t.Fatalf("%v", err)
	}
	return s
}

func equal(t *testing.T, what string, got, want any) {
	t.Helper()
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func near[T ~float64](t *testing.T, what string, got, want T) {
	t.Helper()
	if math.Abs(float64(got-want)) > 1e-6*math.Max(1, math.Abs(float64(want))) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func dayOf(text string) time.Time {
	d, err := time.Parse(time.DateOnly, text)
	if err != nil {
		panic(err)
	}
	return d
}

func TestFullSpec(t *testing.T) {
	s := mustRead(t, quotedPlaces)
	const ft, in = measure.Foot, measure.Inch
	equal(t, "title", s.Title, "Tidemill Lantern Walk")
	equal(t, "season", s.Season, "2027")
	equal(t, "paper", s.Paper, "legal")
	equal(t, "dates.close", s.Dates.Close, dayOf("2028-01-02"))
	equal(t, "accept", s.Accept, []Accept{{"long-day", "house cords are there by then", "Ada Finch"}})

	near(t, "length", s.Tunnel.Length, 8*51*in)
	near(t, "opening height", s.Tunnel.OpeningHeight, 81*in)
	equal(t, "missing", s.Arch.Missing, Height)
	equal(t, "right leg", len(s.Arch.Right), 2)
	near(t, "right leg's second piece", s.Arch.Right[1], 14*in)
	equal(t, "bar", s.Arch.Stake.Bar.Name, "3/8 in")
	near(t, "lean", s.Arch.Stake.Lean, measure.Degree)
	near(t, "late modulus", s.Arch.LateModulus, 0.55)
	equal(t, "joints", s.Arch.Joints, Pinned)

	equal(t, "first exception", s.Except[0].Arches, []int{1, 9})
	near(t, "its span", s.ArchOf(9).Span, 93*in)
	near(t, "its stake's depth", s.ArchOf(9).Stake.Depth, 22*in)
	near(t, "its stake's length, kept", s.ArchOf(9).Stake.Length, 42*in)
	equal(t, "second exception solves", s.ArchOf(4).Missing, Sticks)
	equal(t, "and has no sticks", s.ArchOf(5).Left == nil && s.ArchOf(5).Right == nil, true)
	equal(t, "third exception's pipe", s.ArchOf(6).Pipe.Name, "custom pipe 4")
	near(t, "its modulus", s.ArchOf(6).Pipe.Modulus, 400_000*measure.PSI)
	equal(t, "an arch without exception", s.ArchOf(2).Pipe.Name, "pvc sch40 1/2 in")

	equal(t, "ridge", s.Ridge.Pipe.Name, "pvc sch40 3/4 in")
	equal(t, "guys", s.Guys.Arches, []int{1, 9})
	near(t, "guy stake", s.Guys.Stake.Length, 28*in)
	near(t, "guy stake's depth, 4 in showing", s.Guys.Stake.Depth, 24*in)

	equal(t, "legs of the route", len(s.Site.Route), 3)
	near(t, "bend", s.Site.Route[1].Turn, -24*measure.Degree)
	equal(t, "rest", s.Site.Route[2].Rest, true)
	near(t, "heading", s.Site.Heading, -15*measure.Degree)
	equal(t, "third mark", s.Site.Marks[2].Side, Right)
	equal(t, "third mark's tapes", s.Site.Marks[2].From[1].Mark, "sluice post")
	equal(t, "last level", s.Site.Levels[1].Arch, 9)
	near(t, "last level left", s.Site.Levels[1].Left, -8*in)
	equal(t, "exposure", s.Site.Exposure, Suburban)
	equal(t, "braces", s.Braces, Braces{Bays: []int{2}, From: 57 * inch, Line: true, Peg: Stake{Bar: s.Arch.Stake.Bar, Length: 24 * inch, Depth: 20 * inch}})
	near(t, "stand", s.Weather.Stand, 42*measure.MPH)
	near(t, "inside", s.Weather.Inside, 18*measure.MPH)
	if f := s.Except[1].Arch.Foot; f == nil || *f != (Foot{Weight: 70 * measure.Pound, Width: 16 * inch, On: Concrete}) || s.Except[1].Arch.Stake.Depth != 0 || s.Except[1].Arch.Stake.Length != 24*inch || s.Except[0].Arch.Foot != nil {
		t.Errorf("foot %+v, stake %+v", f, s.Except[1].Arch.Stake)
	}
	equal(t, "soil", s.Site.Soil, Sandy)
	equal(t, "bench's outline", s.Site.Features[1].Outline == nil, true)
	near(t, "overhead keep", s.Site.Overhead[0].Keep, 12*ft)
	equal(t, "outlet", s.Site.Outlets[0].AlsoFeeds, "the bell")
	equal(t, "cords", s.Site.Cords, Cords{[]string{"brick path"}, CrossCovered})
	equal(t, "place", *s.Site.Place, LatLong{47.61, -122.33})
	equal(t, "clock", time.Date(2027, 11, 19, 12, 0, 0, 0, time.UTC).In(s.Site.Clock).Format("15:04 MST"), "08:30 UTC-3:30")

	equal(t, "wrap's arches", s.Lights.Wraps[0].Where[0].Of, []int{1, 2, 3, 4})
	equal(t, "wrap's bays", s.Lights.Wraps[0].Where[1].Of, []int{1, 3, 5, 7})
	equal(t, "wrap's string", s.Lights.Wraps[1].String.Name, "Porch Set")
	near(t, "its weight per length", s.Lights.Wraps[1].String.Mass, 0.4/21*measure.PoundPerFoot)
	equal(t, "rows", []any{s.Lights.Rows.Walls, s.Lights.Rows.FromBack, s.Lights.Rows.Gaps}, []any{[]Side{Right}, true, []Gap{{Right, []int{4}}}})
	equal(t, "supply", *s.Lights.Strings[1].Supply, catalog.Supply{Watts: 30, Sockets: 2})
	near(t, "its amps, from watts and volts", s.Lights.Strings[1].Amps, 3.0/24)
	near(t, "its weight", s.Lights.Strings[1].Mass, 0.02*measure.PoundPerFoot)

	equal(t, "circuits", []string{s.Power.Circuits[0].Name, s.Power.Circuits[1].BreakerNo}, []string{"mill", ""})
	equal(t, "evenings", *s.Power.Evenings, Evenings{4.5, 33, 0.18})
	near(t, "cold", s.Weather.Cold, -10)
	var items []string
	for _, x := range s.Stock.Sell {
		items = append(items, x.Item)
	}
	for _, x := range s.Stock.Own {
		items = append(items, x.Item)
	}
	equal(t, "items", items, []string{"pvc sch40 1/2 in", "steel bar 1/2 in", "tee pvc sch40 1/2 in", "custom pipe 4", "steel bar 3/8 in", "Porch Set", "zip ties 100"})
	equal(t, "prices", []any{*s.Stock.Sell[0].Price, s.Stock.Sell[1].Price == nil, *s.Stock.Sell[2].Price}, []any{4.2, true, 0.0})
	equal(t, "young", s.Crew.Young, 2)
	equal(t, "tools", s.Crew.Tools, Tools{3, 12, 4, 5})
	if d := s.Crew.Days; len(d) != 2 || d[0].Date.Day() != 19 || d[0].From != 18*time.Hour+30*time.Minute || d[0].Until != 21*time.Hour || !slices.Equal(d[0].Work, []string{"cutting", "wrapping"}) || !slices.Equal(d[1].Work, []string{"raising"}) {
		t.Errorf("days %+v", d)
	}
	equal(t, "ask", s.Crew.Ask, Person{"A. Reed", "555 0100"})
	equal(t, "places", []any{len(s.Site.Places), s.Site.Places[0].Name, s.Site.Places[0].For}, []any{1, "hall door", PowerOff})
	near(t, "a place", s.Site.Places[0].At.X, 3*measure.Foot)
	equal(t, "emergency", s.Site.Emergency, "911")
	equal(t, "start", s.Crew.Start, 8*time.Hour+15*time.Minute)
	equal(t, "rates", s.Crew.Rates, Rates{7, 2.5, 14, 12, 5, 9, 4, 11, 8})
}

func TestPositions(t *testing.T) {
	s := mustRead(t, quotedPlaces)
	for key, line := range map[string]int{"arch.stake.depth": 19, "site.marks[2].side": 39, "arch.except[0].span": 23, "power.circuits.mill.breaker": 69} {
		if !s.Given(key) || s.Position(key).Line != line {
			t.Errorf("%s: given %v at line %d, want line %d", key, s.Given(key), s.Position(key).Line, line)
		}
	}
	if s.Given("arch.height") || s.Position("arch.height").Line != 15 {
		t.Errorf("arch.height is not given, and its nearest place is line 15, not %d", s.Position("arch.height").Line)
	}
}

func TestExamples(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Read(filepath.Base(file), source); err != nil {
			t.Errorf("%v", err)
		}
	}
}

// smallest is the least that makes a spec.
const smallest = `hoopwright: 1
title: One
tunnel: {arches: 3, spacing: 1.2 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3 m, 3 m], span: 2 m}
site: {features: [{name: pond, at: [1 m, 2 m], radius: 1 m}], buried: [{name: main, line: [[0, 0], [1 m, 0]]}], overhead: [{name: drop, line: [[0, 0], [1 m, 0]], height: 5 m}], outlets: [{name: wall, at: [0, 0], circuit: c}]}
lights: {wraps: [{where: legs, string: own}], rows: {first: 300 mm, step: 300 mm, up to: 1 m, strings: own}, drops: [{where: ridge, string: own}], strings: {own: {length: 5 m, bulbs: 50, watts: 3 W, drop: 200 mm}}}
power: {circuits: {c: {volts: 230 V, breaker: 10 A}}}
`

func TestDefaults(t *testing.T) {
	s := mustRead(t, smallest)
	equal(t, "units", s.Units, measure.Metric)
	equal(t, "paper", s.Paper, "a4")
	equal(t, "bar", s.Arch.Stake.Bar.Name, "10 mm")
	near(t, "depth in unknown soil", s.Arch.Stake.Depth, 450)
	near(t, "kerf", s.Stock.Kerf, 3)
	near(t, "a string's volts", s.Lights.Strings[0].Volts, 230)
	near(t, "a string's most watts", s.Lights.Wraps[0].String.MostWatts, 400)
	near(t, "hang", s.Lights.Drops[0].Hang, 200)
	equal(t, "ridge", s.Ridge.Pipe.Name, s.Arch.Pipe.Name)
	equal(t, "helpers", s.Crew.Helpers, 4)
	equal(t, "evenings", *s.Power.Evenings, Evenings{5, 35, 0})

	var seen []string
	last := 0
	for _, d := range s.Defaults {
		if slices.Contains(seen, d.Key) {
			t.Errorf("%s is listed twice", d.Key)
		}
		if s.Given(d.Key) {
			t.Errorf("%s is listed though the spec gives it", d.Key)
		}
		if d.Value == "" || d.Why == "" {
			t.Errorf("%s has value %q, why %q", d.Key, d.Value, d.Why)
		}
		if section(d.Key) < last {
			t.Errorf("%s is listed out of the order of the format", d.Key)
		}
		seen, last = append(seen, d.Key), section(d.Key)
	}
	// Every default that the format names, for what this spec has.
	for _, key := range strings.Fields(`units paper tunnel.opening.width tunnel.opening.height arch.stake.bar arch.stake.length arch.stake.depth arch.stake.lean
		arch.joints ridge.pipe site.exposure weather.stand weather.inside site.route site.start.at site.start.heading site.soil site.features[0].hard site.features[0].height site.buried[0].keep
		site.overhead[0].keep site.outlets[0].sockets site.cords.crossing lights.wraps[0].count lights.wraps[0].plug lights.rows.walls lights.rows.start
		lights.rows.sag lights.drops[0].hang lights.drops[0].lap lights.strings.own.lead lights.strings.own.tail lights.strings.own.kind lights.strings.own.volts
		lights.strings.own.amps lights.strings.own.weight lights.strings.own.wire lights.strings.own.gauge power.circuits.c.gfci power.continuous power.split
		power.evenings.hours power.evenings.nights weather.ice weather.cold stock.kerf stock.trim stock.spares crew.helpers crew.start crew.rates.stake crew.rates.cord`) {
		if !slices.Contains(seen, key) {
			t.Errorf("%s is not listed", key)
		}
	}
	if i := slices.IndexFunc(s.Defaults, func(d Default) bool { return d.Key == "arch.late modulus" }); i < 0 || s.Defaults[i].Value != "60 %" {
		t.Errorf("arch.late modulus is not listed as 60 %%")
	}
}

// Defaults in a metric spec are round on a metric tape; those of an imperial one are the format's own.
func TestDefaultsInBothSystems(t *testing.T) {
	metric := mustRead(t, smallest)
	imperial := mustRead(t, strings.NewReplacer("title: One", "title: One\nunits: imperial").Replace(smallest))
	for _, c := range []struct {
		name             string
		of               func(*Spec) measure.Length
		metric, imperial measure.Length
	}{
		{"bar", func(s *Spec) measure.Length { return s.Arch.Stake.Length }, 900, 36 * inch},
		{"depth in unknown soil", func(s *Spec) measure.Length { return s.Arch.Stake.Depth }, 450, 18 * inch},
		{"opening's width", func(s *Spec) measure.Length { return s.Tunnel.OpeningWidth }, 915, 36 * inch},
		{"opening's height", func(s *Spec) measure.Length { return s.Tunnel.OpeningHeight }, 2030, 80 * inch},
		{"keep off a buried line", func(s *Spec) measure.Length { return s.Site.Buried[0].Keep }, 600, 24 * inch},
		{"keep off an overhead line", func(s *Spec) measure.Length { return s.Site.Overhead[0].Keep }, 3050, 10 * foot},
		{"sag", func(s *Spec) measure.Length { return s.Lights.Rows.Sag }, 25, inch},
		{"kerf", func(s *Spec) measure.Length { return s.Stock.Kerf }, 3, inch / 8},
		{"a string's wire", func(s *Spec) measure.Length { return s.Lights.Strings[0].Wire }, 4, 0.15 * inch},
		{"turns on a ridge piece", func(s *Spec) measure.Length { return practice.RidgePitch(s.Units) }, 75, 3 * inch},
	} {
		near(t, "metric: "+c.name, c.of(metric), c.metric)
		near(t, "imperial: "+c.name, c.of(imperial), c.imperial)
	}

	for _, c := range []struct {
		stake         string
		length, depth measure.Length
	}{
		{"{depth: 730 mm}", 1100, 730}, // half as much again is 1095 mm
		{"{length: 640 mm}", 640, 420}, // two thirds are 427 mm
	} {
		s := mustRead(t, strings.Replace(smallest, "span: 2 m", "span: 2 m, stake: "+c.stake, 1))
		near(t, c.stake+" length", s.Arch.Stake.Length, c.length)
		near(t, c.stake+" depth", s.Arch.Stake.Depth, c.depth)
	}

	// A figure of more than one digit in whole millimetres ends in 0 or 5.
	seen := 0
	for _, d := range metric.Defaults {
		number, ok := strings.CutSuffix(d.Value, "mm")
		number = strings.TrimRight(number, " \u00a0")
		if !ok || strings.Contains(number, ".") || len(number) < 2 {
			continue
		}
		if seen++; !strings.HasSuffix(number, "0") && !strings.HasSuffix(number, "5") {
			t.Errorf("%s is %s", d.Key, d.Value)
		}
	}
	if seen < 5 {
		t.Errorf("only %d defaults are printed in millimetres", seen)
	}
}

func TestTunnelThirds(t *testing.T) {
	for _, c := range []struct {
		tunnel          string
		arches          int
		spacing, length measure.Length
	}{
		{"{arches: 7, spacing: 4 ft 9 in}", 7, 57 * inch, 342 * inch},
		{"{arches: 7, length: 28 ft 6 in}", 7, 57 * inch, 342 * inch},
		{"{spacing: 4 ft 9 in, length: 28 ft 6 in}", 7, 57 * inch, 342 * inch},
		{"{spacing: up to 5 ft, length: 28 ft 6 in}", 7, 57 * inch, 342 * inch},
		{"{spacing: up to 57 in, length: 28 ft 6 in}", 7, 57 * inch, 342 * inch},
		{"{spacing: up to 1 m, length: 3.001 m}", 5, 750.25, 3001},
		{"{arches: 1}", 1, 0, 0},
		{"{arches: 1, spacing: 4 ft}", 1, 0, 0},
		{"{arches: 2, spacing: 12 in}", 2, 12 * inch, 12 * inch},
		{"{arches: 240, spacing: 20 ft}", 240, 240 * inch, 239 * 240 * inch},
	} {
		s := mustRead(t, "hoopwright: 1\ntitle: T\ntunnel: "+c.tunnel+"\narch: {pipe: pvc sch40 1/2 in, span: 7 ft, height: 7 ft}\n")
		equal(t, c.tunnel+" arches", s.Tunnel.Arches, c.arches)
		near(t, c.tunnel+" spacing", s.Tunnel.Spacing, c.spacing)
		near(t, c.tunnel+" length", s.Tunnel.Length, c.length)
	}
}

// What one reading returns is its own: whoever changes it changes no later reading.
func TestReadingsShareNothing(t *testing.T) {
	source := strings.Replace(quotedPlaces, "walls: right", "walls: both", 1)
	first, err := Read("walk.yaml", []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	if first.Lights.Rows == nil || len(first.Lights.Rows.Walls) != 2 {
		t.Fatalf("rows are %+v", first.Lights.Rows)
	}
	first.Lights.Rows.Walls[0] = Right
	second, err := Read("walk.yaml", []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	if second.Lights.Rows.Walls[0] != Left {
		t.Error("the walls of one reading are those of another")
	}
}
