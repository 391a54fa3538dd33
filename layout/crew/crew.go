// Package crew orders the work: the tasks from the first dot of paint to the last stake out of the ground, who does them, how long they take at the stated rates, where
// someone must measure before the next one, and when each is done by the hands and the daylight there are.
package crew

import (
	"hoopwright/layout/finding"
)

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

// Plan is the whole job, and the marking and the building along their days.
type Plan struct {
	Tasks    []Task
	Schedule Schedule
	Findings []finding.Finding
}
