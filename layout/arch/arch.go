package arch

import (
	"hoopwright/layout/anchor"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Point is a point of the solved curve in the arch's own plane: X to the right from the middle of the ground line, Y up
// from the ground line, Tape along the pipe's centre from the left ground point.
type Point struct {
	Tape, X, Y measure.Length
	Heading    measure.Angle  // of the tangent in the direction of rising tape: 0 along +X, π/2 up
	Radius     measure.Length // of the bend, +Inf where straight
}

// Arch is one arch of the tunnel: its number and what its kind was solved to.
type Arch struct {
	Number int `json:"number"`
	*Kind
}

// Kind is a solved arch. Arches with the same pipe, figures, levels and loads share one Kind. The JSON names and their
// meanings are part of the file format.
type Kind struct {
	Span          measure.Length `json:"span_mm"`        // stake to stake at the ground, level
	Length        measure.Length `json:"length_mm"`      // pipe centre, foot to foot
	Crown         measure.Length `json:"crown_mm"`       // centre of the crown fitting above the ground line
	Clear         measure.Length `json:"clear_mm"`       // underside there, wraps and drops counted
	Widest        measure.Length `json:"widest_mm"`      // greatest width between pipe centres
	BendRadius    measure.Length `json:"bend_radius_mm"` // least radius outside fittings
	BendAt        measure.Length `json:"bend_at_mm"`     // its tape from the left foot
	Strain        float64        `json:"strain"`         // od/2 over the least radius, as raised
	Thrust        measure.Force  `json:"thrust_n"`       // positive: the pipe pushes the stakes apart
	LoadFactor    float64        `json:"load_factor"`    // least multiple of all dead load that topples it, at season's end; 20 means 20 or more
	LoadFactorWay string         `json:"load_factor_way"`
	SeasonCrown   measure.Length `json:"season_crown_mm"` // with late modulus and all loads

	Numbers        []int            `json:"-"` // the arches of this kind
	Spec           spec.Arch        `json:"-"` // the figures it was solved from, the missing third filled in
	Left, Right    []measure.Length `json:"-"` // sticks as cut, from the ground up; Right is nil with one stick
	LeftGround     measure.Length   `json:"-"` // height of the left ground point above the middle of the ground line
	RightGround    measure.Length   `json:"-"` // and of the right one: the negative of it
	SeasonThrust   measure.Force    `json:"-"` // thrust at season's end; 0 where it does not stand then
	CrownTape      measure.Length   `json:"-"` // tape of the crown fitting's centre from the left foot
	Curve          []Point          `json:"-"` // as raised, left foot to right foot
	Season         []Point          `json:"-"` // the same at season's end
	WidestAt       measure.Length   `json:"-"` // the height Widest is at
	BoxWidth       measure.Length   `json:"-"` // clear inside width at the opening's height
	BoxHeight      measure.Length   `json:"-"` // least height over the opening's width, drops counted; 0 without an opening
	HeadWidth      measure.Length   `json:"-"` // clear inside width at head height (80 in or 2100 mm)
	HeadHeight     measure.Length   `json:"-"` // the height HeadWidth is taken at
	ShoulderWidth  measure.Length   `json:"-"` // clear inside width at shoulder height (5 ft or 1500 mm)
	ShoulderHeight measure.Length   `json:"-"`
	FootMoment     float64          `json:"-"` // greatest moment at a stake's ground point, N·m
	Sideways       float64          `json:"-"` // load factor in the arch's plane, season's end
	Along          float64          `json:"-"` // load factor along the tunnel, season's end; where guys hold it, with the crown kept in place
	Band           measure.Length   `json:"-"` // give or take at the crown: lean, rock of the joint, span
	Weight         measure.Force    `json:"-"` // of pipe and all that hangs on it
	PlayLean       measure.Angle    `json:"-"` // how far the pipe can lean on the bar inside it
	Footings       []Footing        `json:"-"` // what its stakes hold in still air, one for each soil it may be

	Energy   float64 `json:"-"` // stored in the bent pipe as raised, J
	Strength float64 `json:"-"` // share of the pipe's short-term strength that the tightest bend takes up: modulus × strain over strength

	tightest []Point
	room     opening
	found    figures
	built    *model // nil where it is only drawn
	moves    func() (Moves, bool)
}

// Footing is a stake against one soil, in still air.
type Footing struct {
	Soil  anchor.Soil
	Depth measure.Length // least depth that holds
}

// Load is a weight that hangs on the arch at a place along the pipe, beside the pipe's own.
type Load struct {
	From, To measure.Length // tape from the left foot; equal for a point load
	Weight   measure.Force  // whole weight over the stretch

	Run   measure.Length // length of what hangs off the arch here: row, ridge piece, drops; 0 for a wrap, which Input.Wrap counts
	Thick measure.Length // its diameter, as wind and ice meet it
	Hangs bool           // it hangs down and meets wind from every side; else it runs along the tunnel and meets a side wind only
}

// Input is everything that shapes one kind of arch.
type Input struct {
	Spec                        spec.Arch
	Numbers                     []int
	Joined                      bool           // a ridge piece ends at the crown
	Together                    bool           // how it leans along the tunnel is found with the others: Kind.Along is bend.Most until then
	Guyed                       bool           // the tunnel is held lengthwise
	Rough                       bool           // what it stands and clears is asked, no figures: it is cut into fewer parts, and load factors go to WantedFactor
	Spacing                     measure.Length // of the arches; 0 for one alone
	Shared                      measure.Length // the span that arches of these sticks and this height share where it brings the crown near enough; 0: each its own
	LeftGround, RightGround     measure.Length // heights above any common datum
	Loads                       []Load
	Wrap                        measure.Length // how far wraps stand off the pipe's surface: the wire's diameter
	Drop                        measure.Length // how far the lowest drop over the opening hangs below the pipe
	RidgeDrop                   measure.Length // the same from the ridge, at the crown alone
	OpeningWidth, OpeningHeight measure.Length
	Units                       measure.System
	Soil                        spec.Soil
	Keys                        []string                          // paths that may give this arch's figures, nearest first; nil: arch
	Given                       func(key string) bool             // whether the spec itself gives the key; nil: it gives none
	Position                    func(key string) finding.Position // nil: unknown
}
