package lights

import (
	"cmp"
	"math"

	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// stretchRatio returns the length of string on each length of pipe at a pitch: a helix unrolls to the long side of a right
// triangle whose short sides are the pipe's length and the turns' girths, L² = h² + (n·π·D)² with n = h/pitch.
func stretchRatio(core, pitch measure.Length) float64 {
	return math.Hypot(1, math.Pi*float64(core/pitch))
}

// turnsOf is the inverse: how often a string longer than the pipe goes round it.
func turnsOf(wound, pipe, core measure.Length) float64 {
	return math.Sqrt(float64((wound-pipe)*(wound+pipe))) / (math.Pi * float64(core))
}

// fault says what is wrong with a coil.
type fault int

const (
	sound fault = iota
	tooShort
	touching
)

// job is a wrap to be solved: a stretch of pipe and the strings for it. Pitch, count or both may be zero.
type job struct {
	pipe   measure.Length // the stretch's length, less what stays bare on it
	bare   measure.Length // of it, where the wire runs straight along the pipe
	core   measure.Length // diameter of the helix through the wire's middle
	wire   measure.Length
	string measure.Length // one string, plug to socket
	pitch  measure.Length
	count  int
	off    measure.Length // of the first string's lead, that stays off the pipe
	free   measure.Length // that hangs at both ends for the plugs, where a pitch is solved and there is so much to spare
}

// coil is a solved wrap. pitch is finite and at least the wire; the strings cover the share covers of the stretch.
type coil struct {
	pitch    measure.Length
	turns    float64
	count    int
	wound    measure.Length // string length that lies on the pipe
	leftOver measure.Length
	covers   float64
	fault    fault
}

// wind solves a wrap. A given pitch fixes the number of strings; otherwise the strings (the fewest that go round at least
// once and reach) fix the pitch at which they end at the stretch's end.
func (j job) wind() coil {
	if j.pitch > 0 {
		return j.atPitch(j.pitch, j.count)
	}
	count := cmp.Or(j.count, atLeast(j.shortest(), j.string))
	total, least := measure.Length(count)*j.string-j.off-j.bare, j.shortest()-j.bare
	if total >= least {
		total = max(total-j.free, least)
	}
	if total < least {
		c := j.atPitch(practice.LoosePitch, count)
		c.fault = tooShort
		return c
	}
	turns := turnsOf(total, j.pipe, j.core)
	return j.atPitch(j.pipe/measure.Length(turns), count)
}

// shortest is the least string that reaches: once round.
func (j job) shortest() measure.Length {
	return j.bare + measure.Length(math.Hypot(float64(j.pipe), math.Pi*float64(j.core)))
}

// longest is the most string that the stretch takes, its turns side by side.
func (j job) longest() measure.Length {
	return j.bare + j.pipe*measure.Length(stretchRatio(j.core, j.wire))
}

// atPitch winds at a pitch, but never closer than the wire is thick.
func (j job) atPitch(pitch measure.Length, count int) coil {
	c := coil{pitch: pitch, covers: 1}
	// The wire's own thickness is a pitch that just fits: let rounding not call it touching.
	if pitch < j.wire*(1-1e-9) {
		c.pitch, c.fault = j.wire, touching
	}
	ratio := measure.Length(stretchRatio(j.core, c.pitch))
	need := j.bare + j.pipe*ratio
	fewest := atLeast(need+j.off, j.string)
	if count == 0 || count > fewest {
		count = fewest
	}
	c.count = count
	total := measure.Length(count)*j.string - j.off
	c.wound = min(need, total)
	c.leftOver = total - c.wound
	if total < need*(1-1e-9) {
		c.covers = float64(total / need)
		if c.fault == sound {
			c.fault = tooShort
		}
	}
	c.turns = float64((c.wound - j.bare) / ratio / c.pitch)
	return c
}

// atLeast returns how many pieces make up a length, one at least. Rounding never adds a piece.
func atLeast(length, piece measure.Length) int {
	n := math.Ceil(float64(length/piece) * (1 - 1e-9))
	return int(max(1, min(n, mostStrings+1)))
}
