package practice

import "hoopwright/layout/measure"

// Minutes of one pair of hands for work that the spec's rates do not name. Common practice, no source.
const (
	MinutesDot     = 2   // one dot with its name
	MinutesTwoTape = 6   // one spot found by two tapes
	MinutesMeasure = 1.5 // one check distance
	MinutesFlex    = 3   // one leg bent a little and looked over, its string still on
	MinutesBurn    = 15  // strings that were kept on their legs, before one is raised
	MinutesTest    = 1   // one string tried
	MinutesTalk    = 10  // a call, a look round
	MinutesLabel   = 1   // one piece named, marked or flagged
	MinutesOut     = 4   // one stake pulled
	MinutesDown    = 8   // one arch taken down
	MinutesKnot    = 1   // a line untied at one crown, from the ladder that stands there
	MinutesUnwrap  = 5   // one stretch unwound
	MinutesCoil    = 3   // one cord or string coiled
	MinutesPlug    = 1   // one plug pushed home, covered and tied up, or one open socket covered
	MinutesLook    = 0.2 // one of them looked at and touched
	MinutesClimb   = 1.5 // a stepladder moved to the next crown, up and down, one at its foot: of both
	MinutesBag     = 1   // one bag of a man's easy load carried along the row and laid
	MinutesScrew   = 0.7 // one wood screw: its hole drilled, the bit changed, the screw driven; one holds, one drives
	MinutesUnscrew = 0.2 // one of them out
	MinutesCement  = 2   // one socket cleaned, primed with its pipe, cemented, pushed home with a quarter turn, held, wiped
	MinutesTie     = 2   // one line through a foot's bags
	MinutesEven    = 1   // one guy felt and evened
)

// MinutesSawn is what one cut through a round steel bar takes of one pair of hands at a hacksaw, its end filed: 3 minutes for 1/2 in, others by their section. Common practice, no source.
func MinutesSawn(across measure.Length) float64 {
	half := float64(across / (measure.Inch / 2))
	return 3 * half * half
}

// CementHold is for how many seconds a cemented joint is held as it is pushed home (makers' instructions, from memory).
const CementHold = 30

// CementSets is for how many minutes a cemented joint lies before its pipe is bent: what makers' tables give before water of low pressure goes through at 0 to 5 °C, the coldest that pipe is bent
// at: half an hour up to 1 1/4 in, an hour from there to 2 in, half as much again in damp air (from memory). What a bent joint bears its socket bears, as where it is dry: cement is only not to be
// stirred as it sets.
func CementSets(od measure.Length) int {
	if od <= 43*measure.Millimetre {
		return 45
	}
	return 90
}

// PairMinutes is how long a pair is left to work that another could share, before another one joins. Our own choice.
const PairMinutes = 10

// LongDay is from how many minutes on a day is called long: winter daylight. Common practice.
const LongDay = 8 * 60

// The day besides its tasks. Common practice, no source.
const (
	MinutesUnload = 30      // all hands unload and hear the dangers read aloud
	MinutesRead   = 15      // on any other day all hear its own dangers
	MinutesClear  = 30      // all hands clear up
	Lunch         = 12 * 60 // minutes after midnight
	MinutesLunch  = 45
	Evening       = 150    // minutes of an evening at the bench
	EarlyStart    = 8 * 60 // nobody is asked to come sooner
	EveningFrom   = 18*60 + 30
	NoonCall      = 12 * 60
	Gather        = 60     // until those who are rung up stand there with ladders, the leaf read aloud
	Afternoon     = 4 * 60 // from it to sunset where nobody knows when the sun sets: about 50° north at midwinter
	MinutesTieOff = 15     // before a dusk that is not the last: the newest arch is tied both ways, tools go in
)

// StretchArches is how many arches a stretch of a long tunnel has at most, where one crew follows another. Our own choice.
const StretchArches = 10
