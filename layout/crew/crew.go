// Package crew orders the work: the steps of the build day, who does them, how long they take at the stated rates, and where someone must
// measure before the next step.
package crew

import (
	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
)

// Step is one thing to do.
type Step struct {
	Number  int
	Phase   Phase
	Do      string // one action, with its figures
	Want    string // the value or state that shows it is done, with its limit
	Off     string // what to move when it is off
	Hold    bool   // someone must measure and sign before the next step
	People  int
	Minutes float64 // clock time with that many people at it
	Warning string  // printed before the step
	Part    Part    // of the raising, which has a picture of it; empty for all else

	Tapes    []Tape    // of stakes that are found by tapes from marks
	Readings []Reading // what is measured, marked or tried one by one
	Crowns   []int     // the arches whose crowns the readings are the running distances of
	Record   bool      // the readings are measured: each needs room for the figure found
}

// Part is a part of the raising that the raising sheet shows as a picture, with the same wanted figures.
type Part string

// The parts, in order.
const (
	Together Part = "together" // both legs into the crown fitting
	Bent     Part = "bent"     // the first arch onto its stakes
	Guyed    Part = "guyed"    // the first arch, by its guys
	Measured Part = "measured"
	Joined   Part = "joined" // arch 2 by the first ridge piece
	Row      Part = "row"    // the others
	Counted  Part = "counted"
)

// Tape is a stake with the tapes that find it: two meet at it, the third checks it. Two tapes meet twice; Lies says on which side of the line from
// the first mark to the second the stake is, "left" or "right", empty where it is on it.
type Tape struct {
	ground.Tie
	Lies string
}

// Reading is one figure of a step.
type Reading struct {
	What string // "L2", "L1 to R6", "crown 4"
	Want string
}

// Phase is a crew's job.
type Phase string

// The phases, in order.
const (
	Marking  Phase = "marking"
	Driving  Phase = "driving"
	Cutting  Phase = "cutting"
	Wrapping Phase = "wrapping"
	Raising  Phase = "raising"
	Hanging  Phase = "hanging"
	Powering Phase = "power"
)

// Plan is the build day, with the marking some days before it.
type Plan struct {
	Steps       []Step
	Tasks       []Task  // the whole job, filled by Tasks
	Blocks      []Block // the same steps by crew, with their times
	Start       string  // clock time, "09:00"; empty where not given
	Minutes     float64 // clock time of the build day, at the helpers there are; marking is another day's
	MarkMinutes float64 // clock time of the marking
	Findings    []finding.Finding

	began float64 // minutes after midnight
}
