package packet

import (
	"hoopwright/layout/crew"
)

// plainly is an action's words where no figure is in them.
func plainly(s string) func(taskWords, crew.Task) string {
	return func(taskWords, crew.Task) string { return s }
}

// doing finds how an action is said; nil where nobody has words for it.
func doing(a crew.Action) func(taskWords, crew.Task) string {
	for _, table := range []map[crew.Action]func(taskWords, crew.Task) string{doingGround, doingArches, doingLights} {
		if words := table[a]; words != nil {
			return words
		}
	}
	return nil
}
