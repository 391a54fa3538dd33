// Package spec reads the written spec of a light tunnel, version 1, into plain values with every default filled in.
//
// The reader walks the YAML tree itself, so that each message carries file, line, column and the key's path, says what is
// wrong and shows a right example; all errors of a file are reported. All defaults are filled in one place
// (defaults.go) and listed in Spec.Defaults. Whatever Read returns without error obeys the limits that the
// comments below state.
package spec

import (
	"slices"
	"strings"
	"time"

	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
)

// MostArches and MostBytes are the limits of one spec.
const (
	MostArches = 240
	MostBytes  = 1 << 20
)

// Side of the tunnel as the walker sees it, looking in from arch 1.
type Side int

const (
	Left Side = iota
	Right
)

// String returns "left" or "right".
func (s Side) String() string { return [...]string{"left", "right"}[s] }

// Other returns the other side.
func (s Side) Other() Side { return Right - s }

// Letter returns "L" or "R", the letter of stakes and legs.
func (s Side) Letter() string { return [...]string{"L", "R"}[s] }

// Point is a place on the site plan: x to the right, y ahead, level distances.
type Point struct{ X, Y measure.Length }

// Spec is a whole spec with every default filled in.
type Spec struct {
	File   string // as named on the command line
	Source []byte // the bytes that were read

	Title, Season string
	Units         measure.System
	Paper         string // letter, legal, tabloid, a4 or a3
	Currency      string
	Dates         Dates
	Accept        []Accept
	Tunnel        Tunnel
	Arch          Arch
	Except        []Except
	Ridge         Ridge
	Guys          Guys
	Braces        Braces
	Site          Site
	Lights        Lights
	Power         Power
	Weather       Weather
	Stock         Stock
	Store         Store
	Found         Found
	Crew          Crew

	Defaults []Default // what was filled in, in the order of the file format
	Texts    []Text    // titles, names and notes as given: what the packet's typefaces must be able to set

	positions map[string]finding.Position
	amended   []Amendment // what was put over the source before it was read
	settled   bool
}

// Default is a value that the spec did not give.
type Default struct {
	Key     string `json:"key"`   // path, as in arch.stake.depth
	Value   string `json:"value"` // as the packet prints it
	Why     string `json:"why"`   // the reason or source, where there is one
	Written any    `json:"-"`     // as it would stand in the spec, as Amendment has it; nil where it cannot: what is solved has no key of its own
}

// Text is a piece of the spec's own wording.
type Text struct{ Key, Value string }

// Dates are calendar days in UTC; the zero time is a date not given.
type Dates struct{ Mark, Build, Open, Close, Down time.Time }

// Accept is a finding that the organiser takes on by name.
type Accept struct{ Finding, Why, By string }

// Tunnel is the row of arches. All three figures are filled in whichever two were given.
type Tunnel struct {
	Arches        int            // 1 to 240
	Spacing       measure.Length // along the route's centreline; zero for one arch
	Length        measure.Length // first arch to last along the centreline
	OpeningWidth  measure.Length // what stays clear for people: a box on the ground line, centred
	OpeningHeight measure.Length
	Ways          []Way // in the walls, besides the two ends
}

// Way is a side way in or out: a bay of a wall that nothing closes.
type Way struct {
	Bay  int
	Wall Side
}

// Third names the one of sticks, span and height that is solved from the other two.
type Third int

const (
	Height Third = iota
	Span
	Sticks
)

// Joints says how sockets are held.
type Joints int

const (
	Dry Joints = iota
	Pinned
	Glued
)

func (j Joints) String() string { return [...]string{"dry", "pinned", "glued"}[j] }

// DryCrown reports whether sockets at the crowns are only pushed home. Cement holds couplings alone: an arch comes apart at its crown to be carried and kept, for two legs go where one
// pipe of twice their length does not, and a ridge comes out of it to be laid flat.
func (j Joints) DryCrown() bool { return j != Pinned }

// Arch is one arch's pipe, figures and stakes.
type Arch struct {
	Pipe        catalog.Pipe
	Left, Right []measure.Length // sticks from the ground up, couplings between; nil where sticks are solved; Right is nil with one stick
	OneStick    bool             // a single stick bent over, no crown joint
	Span        measure.Length   // stake to stake at the ground, level; zero where it is solved
	Height      measure.Length   // of the crown above the ground line; zero where it is solved
	Missing     Third            // the one that is solved
	Stake       Stake
	Foot        *Foot         `key:"-"` // a base in place of a driven stake; nil where stakes are driven
	LateModulus measure.Share // stiffness left at season's end
	Joints      Joints
}

// Stake is a driven bar.
type Stake struct {
	Bar           catalog.Bar
	Length, Depth measure.Length // whole bar; part in the ground
	Lean          measure.Angle  // positive: top away from the opening
}

// Showing returns the length of bar above the ground.
func (s Stake) Showing() measure.Length { return s.Length - s.Depth }

// Except gives some arches other figures. Arch is already merged with the base.
type Except struct {
	Arches []int
	Arch   Arch
}

// Ridge is the line of pieces from crown to crown.
type Ridge struct {
	Present bool
	Pipe    catalog.Pipe
}

// Guys hold the tunnel lengthwise. No arches means none.
type Guys struct {
	Arches []int
	From   measure.Length // height on the arch where the guy is tied
	Out    measure.Length // distance along the tunnel from the arch to the guy stake
	Stake  Stake
}

// Braces hold single bays lengthwise, in each of their walls: from a leg to a peg of its own beside the neighbour's foot. No bays means none.
type Braces struct {
	Bays []int
	From measure.Length // height on the leg
	Peg  Stake          // what the braces end on
	Line bool           `key:"kind"` // two lines of webbing, crossed; else a spare stick of pipe, clamped at both ends
}

// Foot is a weighted base that a bar stands upright in, where no stake can be driven.
type Foot struct {
	Weight measure.Mass   // on each foot; zero: the least that does
	Width  measure.Length // of the base across the row, about the bar
	On     Paving
}

// Paving is what a foot stands on.
type Paving int

const (
	Asphalt Paving = iota
	Concrete
	Grass
	Deck
)

func (p Paving) String() string { return [...]string{"asphalt", "concrete", "grass", "deck"}[p] }

// Site is the ground and what is on it.
type Site struct {
	Route     []Leg
	Start     Point         `key:"-"` // centre of arch 1
	Heading   measure.Angle // 0 along +y, clockwise positive
	StartFix  Fix           // what places Start where its coordinates are not given
	Toward    *Aim          // what gives Heading where it is not given; nil for none
	Marks     []Mark
	Levels    []Level
	Soil      Soil
	Exposure  Exposure
	Features  []Feature
	Buried    []Buried
	Overhead  []Overhead
	Outlets   []Outlet
	Cords     Cords          `key:"-"`
	North     *measure.Angle // direction of north on the plan, clockwise from +y; nil where not given
	Place     *LatLong       // nil where not given
	Clock     *time.Location // what watches show at Place on the days of the spec; nil without a place
	Places    []SitePlace
	Address   string
	Emergency string // number to call
	Unknown   []Danger
}

// Danger is something of a site that nobody has looked into yet.
type Danger int

const (
	BuriedLines Danger = iota
	OverheadLines
	OutletsGFCI
	BreakerAmps
)

func (d Danger) String() string {
	return [...]string{"buried lines", "overhead lines", "gfci", "breaker"}[d]
}

// NotKnown reports whether nobody has looked into a danger.
func (s Site) NotKnown(d Danger) bool { return slices.Contains(s.Unknown, d) }

// SitePlace is a place that people may have to find: first aid, where the power is switched off.
type SitePlace struct {
	Name string
	At   Point `key:"-"`
	Fix  Fix
	For  string // a use of those below, or the spec's own words
}

// The uses of a place that the packet knows.
const (
	FirstAid = "first aid"
	WaterOff = "water off"
	PowerOff = "power off"
)

// Leg is one piece of the route's centreline: a straight, or a bend tangent to its neighbours.
type Leg struct {
	Straight measure.Length // length of a straight; zero for a bend
	Rest     bool           // a straight that takes what is left
	Turn     measure.Angle  // of a bend: right positive, left negative
	Radius   measure.Length // of the bend's centreline
}

// Mark is a fixed point that tapes start from: by coordinates, or by tapes from other marks.
type Mark struct {
	Name string
	At   *Point // nil where From fixes it
	From []Tape // two or more
	Side Side   // of the line from the first tape's mark to the second's, on which the mark lies
}

// Tape is a level distance from a mark, or from a stake of arch 1.
type Tape struct {
	Mark     string
	Distance measure.Length
}

// The stakes of arch 1 that tapes may start from, as the spec names them. No mark takes their names.
const (
	StakeL1 = "L1"
	StakeR1 = "R1"
)

// Fix is how tapes place something. Its place is found when the arches are known; the zero Fix says that coordinates are given.
type Fix struct {
	From  []Tape  // two or more, or none
	Side  Side    // of the line from the first tape's mark to the second's
	Start *Offset // from the start, in place of tapes
}

// Taped reports whether something but marks is placed by tapes or from the start.
func (s Site) Taped() bool {
	by := func(f Fix) bool { return len(f.From) > 0 || f.Start != nil }
	return by(s.StartFix) || s.Toward != nil || slices.ContainsFunc(s.Outlets, func(o Outlet) bool { return by(o.Fix) }) ||
		slices.ContainsFunc(s.Places, func(p SitePlace) bool { return by(p.Fix) })
}

// Offset is a distance from the centre of arch 1, right and ahead as the walk begins there; left and behind are negative.
type Offset struct{ Right, Ahead measure.Length }

// Aim is a point that the walk heads for at arch 1.
type Aim struct {
	At  Point
	Fix Fix
}

// Level is the ground's height above the datum at an arch's two stakes.
type Level struct {
	Arch        int
	Left, Right measure.Length
}

// Soil is what the stakes are driven into.
type Soil int

// The soils. Unknown shows soft and sandy both.
const (
	SoilUnknown Soil = iota
	Firm
	Soft
	Sandy
	Frozen
)

func (s Soil) String() string { return [...]string{"unknown", "firm", "soft", "sandy", "frozen"}[s] }

// Exposure is what stands around the tunnel and keeps the wind off it.
type Exposure int

const (
	Open      Exposure = iota
	Shore              // open water upwind
	Suburban           // houses and trees all about
	Sheltered          // houses taller than the crown all round
	Hilltop
	WindGap // between buildings or in a valley that the wind blows through
)

func (e Exposure) String() string {
	return [...]string{"open", "shore", "suburban", "sheltered", "hilltop", "gap"}[e]
}

// Feature is something on the ground: an outline of three or more points, or a circle.
type Feature struct {
	Name    string
	Outline []Point // nil for a circle
	At      Point
	Radius  measure.Length
	Hard    bool           // no stake can be driven
	Height  measure.Length // the pipe must clear it; zero for flat
}

// Buried is a line in the ground with the distance to keep on each side.
type Buried struct {
	Name     string
	Line     []Point
	Keep     measure.Length
	MarkedBy string
}

// Overhead is a wire or branch above.
type Overhead struct {
	Name         string
	Line         []Point
	Height, Keep measure.Length
}

// Outlet is an outdoor outlet that may feed lights.
type Outlet struct {
	Name      string
	At        Point `key:"-"`
	Fix       Fix
	Circuit   string
	Sockets   int
	Timer     measure.Current // rating of a timer in front; zero for none
	ResetAt   string
	AlsoFeeds string
}

// Cords are the organiser's wishes for where cords lie.
type Cords struct {
	KeepOff  []string // names of features
	Crossing Crossing
}

// Cover reports whether cords pass ways on the ground, under a cover.
func (c Cords) Cover() bool { return c.Crossing == CrossCovered }

// Crossing is how cords pass a way.
type Crossing int

// The ways to pass one: tied along an arch but only where nothing else feeds all; so, or on the ground under a cover, wherever that saves cords.
const (
	CrossSeldom Crossing = iota
	CrossOverhead
	CrossCovered
)

func (c Crossing) String() string { return [...]string{"seldom", "overhead", "cover"}[c] }

// LatLong is a place on earth in degrees.
type LatLong struct{ Lat, Long float64 }

// Lights is everything that glows.
type Lights struct {
	Wraps   []Wrap
	Rows    *Rows // nil for none
	Drops   []Drop
	Strings []catalog.String // the spec's own, hiding catalog rows of the same name
}

// Part of the frame that lights hang on.
type Part int

// The parts. Arches run foot to foot.
const (
	Legs Part = iota
	LeftLegs
	RightLegs
	WholeArches
	RidgePieces
)

func (p Part) String() string {
	return [...]string{"legs", "left legs", "right legs", "arches", "ridge"}[p]
}

// Bound says how a place is limited.
type Bound int

// The bounds: the whole part, a range of heights above the ground line, or a range of tape along the pipe.
const (
	Whole Bound = iota
	ByHeight
	ByTape
)

// Place is where lights go.
type Place struct {
	Part  Part
	Bound Bound
	From  measure.Length // 0 for "below"
	To    measure.Length // +Inf for "above"
	Of    []int          // arches, or bays for the ridge; nil for all
}

// Plug says where a wrap's prongs are.
type Plug int

// The ends: at the foot (of a ridge piece: nearer arch 1, of a whole arch: the left one), or at the crown (the far end, the right foot).
// An open one is chosen with the power plan, stretch by stretch.
const (
	PlugFoot Plug = iota
	PlugCrown
	PlugOpen
)

// Wrap winds strings round pipe. One of Pitch and Count may be zero: it is solved.
type Wrap struct {
	Where  []Place
	String catalog.String
	Pitch  measure.Length
	Count  int
	Plug   Plug
}

// Rows run along the walls at tape marks on the pipe.
type Rows struct {
	First, Step, UpTo measure.Length // tape from the ground
	Strings           []catalog.String
	Walls             []Side
	FromBack          bool `key:"start"` // start at the last arch
	Open              bool // which end they start from is left to the power plan, path by path
	Sag               measure.Length
	Gaps              []Gap
}

// Marks returns the rows' tape marks, from the ground up.
func (r *Rows) Marks() []measure.Length {
	out := []measure.Length{r.First}
	for r.Step > 0 {
		// By multiplication, so that a long column of marks does not drift; a hair over, so that the last is not lost.
		mark := r.First + r.Step*measure.Length(len(out))
		if mark > r.UpTo*(1+1e-9) {
			break
		}
		out = append(out, mark)
	}
	return out
}

// Gap is a side way out: bays of a wall without rows.
type Gap struct {
	Wall Side
	Bays []int
}

// Drop hangs strings below the pipe.
type Drop struct {
	Where  []Place
	String catalog.String
	Hang   measure.Length
	Lap    measure.Length
}

// Power is the circuits and how they are used.
type Power struct {
	Circuits   []Circuit // in the order of the spec
	Continuous measure.Share
	Split      Split
	Together   int              // most strings behind one plug of a cord
	Inline     []catalog.Inline // cords with several sockets that may be laid
	Taps       []Tap            // three-ways that may be used, most sockets first
	Timer      Timer            `key:"timers"` // bought for each outlet in use that has none
	Evenings   *Evenings
}

// Split says what one trip may not darken, which takes two circuits or GFCIs.
type Split int

// The ways to part the lights: not at all, the left wall from the right, or every other arch, so that a trip never darkens a whole bay.
const (
	SplitNone Split = iota
	SplitWalls
	SplitArches
)

func (s Split) String() string { return [...]string{"none", "left and right", "every other"}[s] }

// Tap makes several sockets of one. Price is nil where not given.
type Tap struct {
	Sockets int
	Price   *float64
}

// Timer is a timer for outdoors in an outlet's socket.
type Timer struct {
	Amps    measure.Current
	Sockets int
	Price   *float64
}

// Circuit is one breaker's wiring.
type Circuit struct {
	Name      string
	Volts     measure.Voltage
	Breaker   measure.Current
	GFCI      bool
	OtherLoad measure.Current
	BreakerNo string
}

// Evenings is how long the lights burn. Price is in the spec's currency a kWh, zero where not given.
type Evenings struct {
	Hours  float64
	Nights int
	Price  float64
}

// Weather is what the tunnel should be figured for.
type Weather struct {
	Ice           measure.Length      // radial, on pipe and wires
	Cold          measure.Temperature // of the coldest evening
	Stand, Inside measure.Speed       // forecast gusts that the empty tunnel shall outlast, and that people may be inside at
}

// Stock is what stores sell and the shed holds.
type Stock struct {
	Sell       []Sale
	Own        []Owned
	Kerf, Trim measure.Length
	Spares     measure.Share
}

// Sale is a thing a store sells. Length is zero for things that are counted.
type Sale struct {
	Item   string
	Length measure.Length
	Price  *float64 // nil where not given
	Limit  int      // most to be had; 0 for no limit
}

// Owned is what is in the shed, Dead of it of no use any more.
type Owned struct {
	Item        string
	Length      measure.Length
	Count, Dead int
}

// Good is how many of them can be used.
func (o Owned) Good() int { return o.Count - o.Dead }

// Store is how legs are kept over the year.
type Store int

// The ways: strings off, or on.
const (
	Stripped Store = iota
	Wrapped
)

func (s Store) String() string { return [...]string{"stripped", "wrapped"}[s] }

// Found is what was measured of arches that stood: at last season's end, or of the one that was tried before the rest is cut.
type Found struct {
	Trial   bool       `key:"after"`
	Arches  []Measured // by rising number, each once
	Wrapped bool       // the legs come out of the shed with their strings on
}

// Measured is one arch as it was found. What was not measured is zero.
type Measured struct {
	Arch        int
	Crown, Span measure.Length // as Arch.Height and Arch.Span
}

// Crew is who builds, besides the organiser.
type Crew struct {
	Helpers int
	Young   int // of them, under practice.Least years old
	Date    time.Time
	Days    []CrewDay // none: the build day, and those after it as far as need be
	Tools   Tools
	Ask     Person
	Start   time.Duration // since midnight
	Rates   Rates
}

// CrewDay is a day or an evening of work.
type CrewDay struct {
	Date        time.Time     // zero where the spec leaves it open
	From, Until time.Duration // since midnight; an until of 0 is by the light
	Work        []string      `key:"-"` // as dayWorks lists them; none: everything but the trial
}

// dayWorks are the kinds of work that a day may be for.
func dayWorks() []string {
	return []string{"trial", "marking", "driving", "cutting", "wrapping", "raising", "hanging", "power"}
}

// Tools counts the tools that there are never enough of.
type Tools struct{ Ladders, Trestles, Tapes, Sledges int }

// Person is someone to turn to; either text may be empty.
type Person struct{ Name, Phone string }

// Rates are minutes of one pair of hands for one piece of work. Common practice, no source: stated so that the spec can change them.
type Rates struct {
	Stake, Cut, Wrap, Raise, Ridge, Row, Drop, Guy, Cord float64
}

// Position returns where the key stands in the file, or else the nearest key above it.
func (s *Spec) Position(key string) finding.Position {
	for k := key; k != ""; k = k[:max(0, strings.LastIndexAny(k, ".["))] {
		if p, ok := s.positions[k]; ok {
			return p
		}
	}
	return finding.Position{File: s.File}
}

// Given reports whether the spec itself gives the key, as against a default.
func (s *Spec) Given(key string) bool {
	_, ok := s.positions[key]
	return ok
}

// Base returns the weighted base of the first arch that stands on one, nil where none does.
func (s *Spec) Base() *Foot {
	for n := range s.Tunnel.Arches {
		if f := s.ArchOf(n + 1).Foot; f != nil {
			return f
		}
	}
	return nil
}

// ArchOf returns the arch's own figures, 1 ≤ number ≤ Tunnel.Arches.
func (s *Spec) ArchOf(number int) Arch {
	for _, e := range s.Except {
		if slices.Contains(e.Arches, number) {
			return e.Arch
		}
	}
	return s.Arch
}
